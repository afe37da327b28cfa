package slurry

import (
	"errors"
	"fmt"
	"math"
)

// A Stretch is a length of hole with pipe in it in which nothing changes.
type Stretch struct {
	Top     float64 // Top is the measured depth of its upper end in metres.
	Bottom  float64 // Bottom is the measured depth of its lower end in metres.
	Inside  float64 // Inside is the capacity of the pipe in m³/m.
	Annulus float64 // Annulus is the capacity around it in m³/m, washout included.
	Hole    float64 // Hole is the capacity without the pipe in m³/m, washout included.
}

// A Plug is what is pumped through open-ended pipe to set a balanced plug.
type Plug struct {
	Base   float64 // Base is the measured depth in metres of the pipe's end and the plug's bottom.
	Slurry float64 // Slurry is its volume in m³.
	Ahead  float64 // Ahead is the spacer pumped before it in m³, 0 for none.
	Under  float64 // Under is the volume in m³ by which the displacement stops short, so that no mud is pushed after; 0 for none.
}

// A Balanced is how a plug is set and where it stands.
//
// In balance, slurry and spacer stand equally high inside and outside the pipe, so
// that neither side pushes when it is pulled. Then the pipe leaves, dry and slowly:
// what it held and what its steel took up is filled, and the tops fall. Mixing with
// the mud, and what clings to the pipe, is not counted.
type Balanced struct {
	Behind       float64 // Behind is the spacer in m³ to pump after the slurry.
	Displacement float64 // Displacement is the mud in m³ to pump after that, Under taken off.
	TopIn        float64 // TopIn is the top of the slurry in metres in balance, with the pipe in.
	SpacerIn     float64 // SpacerIn is the top of the spacer in metres in balance, with the pipe in.
	TopOut       float64 // TopOut is the top of the slurry in metres with the pipe out.
	SpacerOut    float64 // SpacerOut is the top of the spacer in metres with the pipe out.
	StopInside   float64 // StopInside is the top of the slurry inside in metres when pumping stops, above TopIn by what Under is.
	StopOutside  float64 // StopOutside is the top of the slurry outside in metres when pumping stops, below TopIn.
}

// Balance returns how a plug is balanced in a hole given as stretches from the top,
// at which pumped volumes begin, down to its base or below it. A tapered string, a
// stinger or a casing shoe is a further stretch each. Below the base nothing moves:
// the plug must stand on something.
//
// The slurry is counted by the volume of pipe and annulus up to its top, the
// spacer behind by the volume of the pipe beside the spacer ahead, the displacement
// by that of the pipe above. An error says which of them does not fit.
func Balance(hole []Stretch, plug Plug) (Balanced, error) {
	if err := checkStretches(hole); err != nil {
		return Balanced{}, fmt.Errorf("balanced plug: %w", err)
	}
	inside := rooms(hole, func(s Stretch) float64 { return s.Inside })
	outside := rooms(hole, func(s Stretch) float64 { return s.Annulus })
	both := rooms(hole, func(s Stretch) float64 { return s.Inside + s.Annulus })
	empty := rooms(hole, func(s Stretch) float64 { return s.Hole })
	top := hole[0].Top
	switch {
	case !depthIn(both, plug.Base):
		return Balanced{}, fmt.Errorf("balanced plug: base at %.2f m is not in the hole from %.2f to %.2f m; set it inside", plug.Base, top, hole[len(hole)-1].Bottom)
	case !notNegative(plug.Slurry) || !notNegative(plug.Ahead) || !notNegative(plug.Under):
		return Balanced{}, fmt.Errorf("balanced plug: slurry %g, spacer %g, short by %g m³; give 0 or more each", plug.Slurry, plug.Ahead, plug.Under)
	}
	var b Balanced
	var left float64
	if b.TopIn, left = rise(both, plug.Base, plug.Slurry); left > 0 {
		return Balanced{}, fmt.Errorf("balanced plug: %.2f m³ of slurry come up to %.2f m with %.2f left; pump less", plug.Slurry, top, left)
	}
	if b.SpacerIn, left = rise(outside, b.TopIn, plug.Ahead); left > 0 {
		return Balanced{}, fmt.Errorf("balanced plug: %.2f m³ of spacer come up to %.2f m with %.2f left; pump less", plug.Ahead, top, left)
	}
	b.Behind = held(inside, b.SpacerIn, b.TopIn)
	full := held(inside, top, b.SpacerIn)
	if b.Displacement = full - plug.Under; b.Displacement < 0 {
		return Balanced{}, fmt.Errorf("balanced plug: stopping %.2f m³ short of a displacement of %.2f m³; stop less short", plug.Under, full)
	}
	out := held(outside, b.TopIn, plug.Base)
	if plug.Under > out {
		return Balanced{}, fmt.Errorf("balanced plug: stopping %.2f m³ short leaves none of the %.2f m³ that belong outside the pipe; stop less short", plug.Under, out)
	}
	b.StopInside, _ = rise(inside, b.TopIn, plug.Under)
	b.StopOutside, _ = rise(outside, plug.Base, out-plug.Under)
	b.TopOut, _ = rise(empty, plug.Base, plug.Slurry)
	b.SpacerOut, _ = rise(empty, b.TopOut, plug.Ahead+b.Behind)
	return b, nil
}

// PlugVolume returns the slurry in m³ of a plug that, with the pipe out, reaches
// from its base up to a top, both measured depths in metres in the hole.
func PlugVolume(hole []Stretch, top, base float64) (float64, error) {
	if err := checkStretches(hole); err != nil {
		return 0, fmt.Errorf("balanced plug: %w", err)
	}
	empty := rooms(hole, func(s Stretch) float64 { return s.Hole })
	if !depthIn(empty, top) || !depthIn(empty, base) || top > base {
		return 0, fmt.Errorf("balanced plug: from %.2f to %.2f m is not in the hole from %.2f to %.2f m; give a top above a base, both inside",
			top, base, hole[0].Top, hole[len(hole)-1].Bottom)
	}
	return held(empty, top, base), nil
}

// checkStretches reports the first stretch that is not usable.
func checkStretches(hole []Stretch) error {
	const rounding = 1e-9 // of the sums of capacities that a caller worked out
	if len(hole) == 0 {
		return errors.New("there is no hole; give at least one length of it")
	}
	volume := 0.0
	for i, s := range hole {
		if err := checkLength(i, s.Top, s.Bottom); err != nil {
			return err
		}
		switch {
		case !positive(s.Inside) || !positive(s.Annulus) || !positive(s.Hole):
			return fmt.Errorf("length %d of hole at %.2f m: capacities %g inside, %g outside, %g m³/m without pipe; give all above zero",
				i+1, s.Top, s.Inside, s.Annulus, s.Hole)
		case s.Inside+s.Annulus > s.Hole*(1+rounding):
			return fmt.Errorf("length %d of hole at %.2f m: with pipe it holds %g m³/m, without %g; the pipe must take up room",
				i+1, s.Top, s.Inside+s.Annulus, s.Hole)
		case i > 0 && math.Abs(s.Top-hole[i-1].Bottom) > joined:
			return apart(i, s.Top, hole[i-1].Bottom)
		}
		volume += s.Hole * (s.Bottom - s.Top)
	}
	if !positive(volume) {
		return errors.New("the hole's volume grows beyond all numbers; check the units of depth and capacity")
	}
	return nil
}

// rooms returns the stretches with one of their capacities.
func rooms(hole []Stretch, capacity func(Stretch) float64) []Room {
	list := make([]Room, len(hole))
	for i, s := range hole {
		list[i] = Room{s.Top, s.Bottom, capacity(s)}
	}
	return list
}
