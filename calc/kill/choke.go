package kill

import (
	"errors"
	"fmt"
	"math"

	"borewalk/calc/gas"
	"borewalk/calc/root"
	"borewalk/calc/state"
)

// held is how closely in Pa the pressure at the end of the string is held.
const held = 0.5

// A choke holds the pressure at the end of the string.
type choke struct {
	kick    *Kick
	stack   float64   // m, above which gas is in the return line
	target  float64   // Pa at the end of the string
	mass    []float64 // kg of the parcels of the well that is being moved
	room    state.Room
	refused error // what the gas law did not like
}

// newChoke returns the choke of a job.
func newChoke(j *Job) *choke {
	c := &choke{kick: &j.Kick, stack: j.Layout.Return.MD, mass: make([]float64, j.parcels())}
	c.room = c.gives
	return c
}

// density returns the density in kg/m³ of the gas at a depth and a gauge pressure, and nothing where the gas has none. There
// is no pressure below that of the open air: a walk that comes to less is one that the choke cannot hold.
func (c *choke) density(md, pressure float64) float64 {
	temperature := c.kick.Temperature
	if md < c.stack && c.kick.LineTemperature != nil {
		temperature = c.kick.LineTemperature
	}
	density, err := c.kick.Gas.Density(gas.State{Pressure: max(pressure, 0) + atmosphere, Temperature: temperature(md)})
	if err != nil {
		c.refused = fmt.Errorf("kill: gas at %.0f m: %w", md, err)
		return 0
	}
	return density
}

// gives is the room of a parcel of known mass.
func (c *choke) gives(fluid int, md, pressure float64) (volume, density float64, ok bool) {
	if fluid < FirstGas {
		return 0, 0, false
	}
	if density = c.density(md, pressure); density == 0 {
		return 0, 0, true
	}
	return c.mass[fluid-FirstGas] / density, density, true
}

// shutIn settles the kick with the volume that it has when the well has been shut in, which is what weighs it.
func (c *choke) shutIn(w *state.Well, piece float64) error {
	_, err := w.Settle(c.target, func(fluid int, md, pressure float64) (volume, density float64, ok bool) {
		if fluid < FirstGas {
			return 0, 0, false
		}
		return piece, c.density(md, pressure), true
	})
	return c.blame(err)
}

// circulate makes a well what another one is after a volume in m³ has been pumped.
func (c *choke) circulate(to, from *state.Well, volume float64, fluid int) error {
	for i := range c.mass {
		c.mass[i] = mass(from, FirstGas+i)
	}
	outlet, err := c.try(to, from, volume, fluid, c.target)
	switch {
	case err != nil:
		return err
	case outlet < -held:
		return c.wideOpen(to, from, volume, fluid, outlet)
	case outlet < 0:
		return to.SetBackPressure(0)
	}
	return nil
}

// try is circulate with a pressure at the end of the string. It returns what the choke would have to hold.
func (c *choke) try(to, from *state.Well, volume float64, fluid int, foot float64) (outlet float64, err error) {
	to.CopyFrom(from)
	_, outlet, err = to.Circulate(volume, fluid, foot, c.room)
	return outlet, c.blame(err)
}

// blame returns an error, and instead of one that says that the gas takes no room why it does not.
func (c *choke) blame(err error) error {
	if err != nil && c.refused != nil {
		return c.refused
	}
	return err
}

// wideOpen is circulate where the choke cannot hold as little as the target: the pressure at the end of the string is then the
// one at which the outlet has none. What the outlet would have had at the target is known.
func (c *choke) wideOpen(to, from *state.Well, volume float64, fluid int, short float64) error {
	high, over, err := c.enough(to, from, volume, fluid, short)
	if err != nil {
		return err
	}
	foot, met := root.Crossing(func(foot float64) float64 {
		switch foot {
		case c.target:
			return short
		case high:
			return over
		}
		var outlet float64
		if outlet, err = c.try(to, from, volume, fluid, foot); err != nil {
			return math.NaN()
		}
		return outlet
	}, c.target, high, held)
	if err != nil {
		return err
	}
	if !met {
		if _, err := c.try(to, from, volume, fluid, foot); err != nil {
			return err
		}
	}
	return to.SetBackPressure(0)
}

// enough returns a pressure at the end of the string that leaves the outlet something, and how much. What is lacking at the
// outlet is added below; as long as that does away with half of what is lacking or more, twice what is left is. Where it does
// not, since gas that is pressed together lets mud back into a thin line, more is added every time.
func (c *choke) enough(to, from *state.Well, volume float64, fluid int, short float64) (foot, over float64, err error) {
	const most = 100
	foot, by := c.target, -short
	for range most {
		foot += by
		if over, err = c.try(to, from, volume, fluid, foot); err != nil || over >= -held {
			return foot, over, err
		}
		if over > short/2 {
			by = -2 * over
		} else {
			by = 2 * max(by, -over)
		}
		short = over
	}
	return 0, 0, errors.New("kill: no pressure at the bottom lets the outlet have none; mend the layout")
}

// mass returns the kg of a fluid in the annulus of a well.
func mass(w *state.Well, fluid int) float64 {
	return w.Volume(state.Annulus, fluid) * w.Fluid(fluid).Density
}
