package killsheet

import (
	"fmt"

	"borewalk/calc/gas"
)

// Atmosphere is what a gauge pressure is below the absolute one that gas takes, in Pa.
const Atmosphere = 101325

// A Growth is the volume of gas at a second state over that at a first: [gas.Gas.Growth] of a real one.
type Growth func(from, to gas.State) (float64, error)

// Trapped is gas that stays after a kill in the stack between the preventer that was closed and the outlet below it: its volume
// in m³ and its state.
type Trapped struct {
	Volume float64
	At     gas.State
}

// Released is what becomes of trapped gas when the preventer is opened under a full riser.
type Released struct {
	InRiser   float64 // InRiser is its volume in m³ at the foot of the full riser.
	AtSurface float64 // AtSurface is its volume in m³ at the surface.
	Displaced float64 // Displaced is the mud in m³ that it drives out of the riser.
	Unloads   bool    // Unloads says that it is enough to drive out all that stands there.
}

// Release lets the gas into a riser of a volume in m³, its annulus, with the states below it, under its mud, and at
// the surface. Mud of the riser takes its place in the stack, and what it grows by is driven out at the top; strung out along the
// riser it takes longer to come and drives out as much. Source: balance of volumes.
func (t Trapped) Release(below, surface gas.State, riser float64, grow Growth) (Released, error) {
	const topic = "gas trapped in the stack"
	if err := check(topic, some("volume", t.Volume, "m³"), positive("riser", riser, "m³")); err != nil {
		return Released{}, err
	}
	if grow == nil {
		return Released{}, fmt.Errorf("%s: no law of growth; give that of a gas or the ideal one", topic)
	}
	var r Released
	for _, place := range []struct {
		state  gas.State
		volume *float64
	}{{below, &r.InRiser}, {surface, &r.AtSurface}} {
		growth, err := grow(t.At, place.state)
		if err != nil {
			return Released{}, err
		}
		if *place.volume, err = outcome(topic, t.Volume*growth); err != nil {
			return Released{}, err
		}
	}
	r.Displaced = max(0, min(r.AtSurface, riser)-t.Volume)
	r.Unloads = r.AtSurface >= riser
	return r, nil
}
