package kill

import (
	"errors"
	"fmt"
	"math"

	"borewalk/calc/friction"
	"borewalk/calc/gas"
	"borewalk/calc/state"
)

// gravity is the standard acceleration of free fall in m/s², exact by definition (3rd General Conference on Weights and
// Measures, 1901), and atmosphere the standard one in Pa, exact as well (10th, 1954).
const (
	gravity    = 9.80665
	atmosphere = 101325
)

// The fluids of the well by their numbers. Every number from [FirstGas] on is a parcel of gas.
const (
	Mud = iota
	KillMud
	FirstGas
)

// viscosity is that of the gas in Pa s; see the package comment.
const viscosity = 2e-5

// A Kick is what came into the well.
type Kick struct {
	Volume    float64 // Volume is what it takes up at the bit when the well has been shut in, in m³.
	Formation float64 // Formation is the gauge pressure in Pa of the formation that gave it, at the end of the string.
	Gas       gas.Gas

	// Temperature is that of the annulus at a depth in metres along the hole, in K, and LineTemperature that of the return
	// line beside a depth; nil stands for the same.
	Temperature, LineTemperature func(md float64) float64
}

// A Job is a kick to be circulated out.
type Job struct {
	// Layout is the well: the bore from the closed stack down, the string with its end at the bottom, returns through the
	// choke line. Back pressure and what flows back are not looked at.
	Layout state.Layout

	// Mud fills the well at first. KillMud is what it is to be filled with; if its density is 0, that is worked out: the
	// column from the rotary that balances the formation, without a margin.
	Mud, KillMud friction.Fluid

	Kick           Kick
	Flow           float64 // Flow is what is pumped, in m³/s.
	Overbalance    float64 // Overbalance in Pa is held at the bottom over the formation while pumping.
	OneCirculation bool    // OneCirculation pumps kill mud from the start, and not the old mud until the gas is out.

	Steps   int       // Steps is the number of equal volumes that the job is cut into, besides the moments that stand out.
	Parcels int       // Parcels is the number of pieces that the gas is cut into; 0 stands for 6.
	Places  []float64 // Places are depths in metres of the annulus at which the pressure is followed.
}

// usual is the number of parcels if none is given.
const usual = 6

// parcels returns the number of parcels.
func (j *Job) parcels() int {
	if j.Parcels == 0 {
		return usual
	}
	return j.Parcels
}

// check reports the first thing in the job that cannot be worked with. The layout is looked at when the well is made.
func (j *Job) check() error {
	const mostSteps, mostParcels = 100_000, 1000
	const leastKick = 1e-3 // m³
	k := &j.Kick
	switch {
	case !(k.Volume >= leastKick):
		return fmt.Errorf("kill: a kick of %g m³; give %g or more", k.Volume, leastKick)
	case !above(k.Formation):
		return fmt.Errorf("kill: a formation pressure of %g Pa; give one above 0", k.Formation)
	case k.Temperature == nil:
		return errors.New("kill: no temperature of the annulus; give the function")
	case !above(j.Flow):
		return fmt.Errorf("kill: a flow of %g m³/s; give one above 0", j.Flow)
	case !(j.Overbalance >= 0) || math.IsInf(j.Overbalance, 0):
		return fmt.Errorf("kill: an overbalance of %g Pa; give 0 or more", j.Overbalance)
	case !above(j.Mud.Density):
		return fmt.Errorf("kill: a mud of %g kg/m³; give a density above 0", j.Mud.Density)
	case j.Steps < 1 || j.Steps > mostSteps:
		return fmt.Errorf("kill: %d steps; give 1 to %d", j.Steps, mostSteps)
	case j.Parcels < 0 || j.Parcels > mostParcels:
		return fmt.Errorf("kill: %d parcels of gas; give 1 to %d", j.Parcels, mostParcels)
	}
	return nil
}

// above reports whether a quantity is a number above zero.
func above(x float64) bool { return x > 0 && !math.IsInf(x, 0) }

// fluids returns the fluids of the well, the gas without density.
func (j *Job) fluids() []state.Fluid {
	list := make([]state.Fluid, 0, FirstGas+j.parcels())
	list = append(list, state.Fluid{Name: "mud", Fluid: j.Mud}, state.Fluid{Name: "kill mud", Fluid: j.KillMud})
	gas := state.Fluid{Name: "gas", Fluid: friction.Newton(0, viscosity)}
	for range j.parcels() {
		list = append(list, gas)
	}
	return list
}

// column returns the pressure in Pa of a density in kg/m³ from the rotary down to the end of the string.
func (j *Job) column(density float64) float64 {
	return density * gravity * j.height()
}

// height returns the true vertical distance in m from the rotary to the end of the string.
func (j *Job) height() float64 {
	s := j.Layout.String
	return j.Layout.TVD(s[len(s)-1].Bottom) - j.Layout.TVD(0)
}

// bottom returns the pressure in Pa at the end of the string when the well has been shut in: the formation's, or that of a
// mud that is as heavy and was swabbed.
func (j *Job) bottom() float64 { return max(j.Kick.Formation, j.column(j.Mud.Density)) }

// fill lays the kick into a well of mud: parcels of equal volume from the end of the string upwards.
func (j *Job) fill(w *state.Well) error {
	whole := w.Capacity(state.Annulus)
	if room := whole - w.Above(state.Annulus, j.Layout.Return.MD); !(j.Kick.Volume < room) {
		return fmt.Errorf("kill: a kick of %.2f m³ does not fit into the %.2f m³ of annulus between stack and bit; give a smaller one",
			j.Kick.Volume, room)
	}
	bottom, piece := w.End(), j.Kick.Volume/float64(j.parcels())
	for i := range j.parcels() {
		top := w.Depth(state.Annulus, whole-piece*float64(i+1))
		if err := w.Spot(state.Annulus, top, bottom, FirstGas+i); err != nil {
			return err
		}
		bottom = top
	}
	return nil
}

// checkPlaces reports the first place that is not in the annulus.
func (j *Job) checkPlaces(w *state.Well) error {
	for _, md := range j.Places {
		if _, ok := w.Pressure(state.Annulus, md); !ok {
			return fmt.Errorf("kill: no annulus at %.2f m; give a place between choke and bit, at %.2f m", md, w.End())
		}
	}
	return nil
}
