package slurry

import (
	"errors"
	"fmt"
	"math"
)

// A Job is a volume of slurry to be pumped, and what is lost and kept on the way.
type Job struct {
	Volume  float64 // Volume is the slurry in m³ that goes into the well.
	Tub     float64 // Tub is the slurry in m³ that stays behind in mixing tub and lines.
	Tank    float64 // Tank is the mix fluid in m³ that pumps cannot take out of its tank: the dead volume.
	Reserve float64 // Reserve is what is to be aboard on top of the need, as a fraction: 1 doubles it.
}

// A Batch is what a job needs.
type Batch struct {
	Mixed    float64 // Mixed is the slurry to be mixed in m³.
	Cement   float64 // Cement is the cement in it in kg, not rounded.
	Sacks    float64 // Sacks is that cement in sacks of 94 lb, rounded up to whole ones.
	Aboard   float64 // Aboard is the sacks to be aboard, the reserve included, rounded up to whole ones.
	MixFluid float64 // MixFluid is the mix fluid that goes into the slurry in m³.
	Prepared float64 // Prepared is the mix fluid to be made up in m³, the dead volume included.
	Reserve  float64 // Reserve is that of the job.
}

// Batch returns what a job needs of a slurry whose yield and mix fluid are known,
// from a recipe or from a laboratory sheet. Rounding sacks up does not change the
// volume pumped. An error names the value that is not usable.
func (s Slurry) Batch(job Job) (Batch, error) {
	switch {
	case !positive(s.Yield):
		return Batch{}, fmt.Errorf("cement job: yield %g m³/kg; give one above zero", s.Yield)
	case !notNegative(s.MixFluid):
		return Batch{}, fmt.Errorf("cement job: mix fluid %g m³/kg; give 0 or more", s.MixFluid)
	case !notNegative(job.Volume):
		return Batch{}, fmt.Errorf("cement job: slurry volume %g m³; give 0 or more", job.Volume)
	case !notNegative(job.Tub):
		return Batch{}, fmt.Errorf("cement job: slurry left in the tub %g m³; give 0 or more", job.Tub)
	case !notNegative(job.Tank):
		return Batch{}, fmt.Errorf("cement job: dead volume of the mix fluid tank %g m³; give 0 or more", job.Tank)
	case !notNegative(job.Reserve):
		return Batch{}, fmt.Errorf("cement job: reserve %g; give a fraction of 0 or more", job.Reserve)
	}
	b := Batch{Mixed: job.Volume + job.Tub, Reserve: job.Reserve}
	b.Cement = b.Mixed / s.Yield
	b.Sacks = Sacks(b.Cement)
	b.Aboard = Sacks(b.Cement * (1 + job.Reserve))
	b.MixFluid = b.Cement * s.MixFluid
	b.Prepared = b.MixFluid + job.Tank
	if !notNegative(b.Aboard) || !notNegative(b.Prepared) {
		return Batch{}, errors.New("cement job: the sums grow beyond all numbers; check the units of volume and yield")
	}
	return b, nil
}

// Sacks returns the whole sacks of 94 lb that hold a mass of cement in kg. What is
// over a whole sack by less than a millionth of one is rounding and opens no new
// sack. A mass that is not above zero, or no number, needs none.
func Sacks(cement float64) float64 {
	const rounding = 1e-6
	if !(cement > 0) {
		return 0
	}
	return math.Max(math.Ceil(cement/Sack-rounding), 0)
}

// Volume returns the slurry in m³ that a mass of cement in kg makes, the opposite
// of [Slurry.Batch]. It reports false where an argument is not usable.
func (s Slurry) Volume(cement float64) (float64, bool) {
	if !positive(s.Yield) || !notNegative(cement) {
		return 0, false
	}
	volume := cement * s.Yield
	return volume, notNegative(volume)
}

// A Need is what a job takes of one component.
type Need struct {
	Part           // Part is the mass and absolute volume to be used.
	Aboard float64 // Aboard is the mass in kg to have aboard: whole sacks of cement, the reserve on all.
}

// Needs returns what a batch of the recipe takes of each component: cement, powders,
// water, liquids. Powders follow the cement mixed; water and liquids the mix fluid
// made up, its dead volume included, since it is treated as a whole.
func (r Recipe) Needs(b Batch) ([]Need, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	if !notNegative(b.Cement) || !notNegative(b.Prepared) || !notNegative(b.Reserve) || !notNegative(b.Aboard) {
		return nil, fmt.Errorf("cement job: batch of %g kg of cement with %g m³ of mix fluid; take one that was worked out", b.Cement, b.Prepared)
	}
	var needs []Need
	for _, p := range r.dry(b.Cement) {
		needs = append(needs, Need{p, p.Mass * (1 + b.Reserve)})
	}
	needs[0].Aboard = b.Aboard * Sack
	wetting := 0.0 // the cement whose mix fluid fills the tank
	if fluid := r.content().fluid; fluid > 0 {
		wetting = b.Prepared / fluid
	}
	for _, p := range r.wet(wetting) {
		needs = append(needs, Need{p, p.Mass * (1 + b.Reserve)})
	}
	for _, n := range needs {
		if !notNegative(n.Aboard) || !notNegative(n.Volume) {
			return nil, fmt.Errorf("cement job:%s grows beyond all numbers; check the units", named(n.Label))
		}
	}
	return needs, nil
}
