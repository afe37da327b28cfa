package drag_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/drag"
)

// anyString draws a string whose elements meet, in a hole that turns anyhow.
func anyString(t *rapid.T) []drag.Element {
	way := func(name string) drag.Direction {
		return drag.Direction{Inclination: rapid.Float64Range(0, 1.7).Draw(t, name), Azimuth: rapid.Float64Range(0, 6.28).Draw(t, name+" azimuth")}
	}
	at := drag.Direction{}
	elements := make([]drag.Element, rapid.IntRange(1, 12).Draw(t, "elements"))
	for k := range elements {
		next := at
		if rapid.Bool().Draw(t, "bends") {
			next = way("inclination")
		}
		elements[k] = drag.Element{Length: rapid.Float64Range(1, 800).Draw(t, "length"), Upper: at, Lower: next,
			Weight: rapid.Float64Range(50, 2500).Draw(t, "weight"), Radius: 0.09, Friction: rapid.Float64Range(0, 0.5).Draw(t, "friction")}
		at = next
	}
	return elements
}

func drawn(t *rapid.T, elements []drag.Element) drag.String {
	s, err := drag.New(elements)
	if err != nil {
		t.Skip(err.Error())
	}
	return s
}

// TestFrictionHoldsBack: pulling up takes no less than turning in place, letting down no more, and both as much where
// there is no friction; what is added by turning in place is the weight that hangs.
func TestFrictionHoldsBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		elements := anyString(rt)
		s := drawn(rt, elements)
		up, _ := s.Top(drag.PickingUp())
		still, torque := s.Top(drag.Rotating())
		down, _ := s.Top(drag.SlackingOff())
		slack := 1e-9 * (math.Abs(up) + math.Abs(still) + math.Abs(down))
		if up < still-slack || down > still+slack || torque < 0 {
			rt.Errorf("up %g, still %g, down %g N, torque %g N m", up, still, down, torque)
		}
		hangs := 0.0
		for k := range elements {
			hangs += elements[k].Weight * fall(&elements[k])
			elements[k].Friction = 0
		}
		slack = 1e-9 * 2500 * 800 * float64(len(elements))
		if math.Abs(still-hangs) > slack {
			rt.Errorf("turned in place it pulls %g N, it weighs %g N", still, hangs)
		}
		smooth := drawn(rt, elements)
		for _, op := range []drag.Operation{drag.PickingUp(), drag.Rotating(), drag.SlackingOff()} {
			if got, torque := smooth.Top(op); math.Abs(got-hangs) > slack || torque != 0 {
				rt.Errorf("%+v without friction: %g N and %g N m, it weighs %g N", op, got, torque, hangs)
			}
		}
	})
}

// fall returns by how much an element goes down: for an arc, length × tan(d/2)/(d/2) × the mean of the cosines.
func fall(e *drag.Element) float64 {
	dot := math.Cos(e.Upper.Inclination)*math.Cos(e.Lower.Inclination) +
		math.Sin(e.Upper.Inclination)*math.Sin(e.Lower.Inclination)*math.Cos(e.Upper.Azimuth-e.Lower.Azimuth)
	mean := (math.Cos(e.Upper.Inclination) + math.Cos(e.Lower.Inclination)) / 2
	if d := math.Acos(min(1, max(-1, dot))); d > 1e-4 {
		return e.Length * mean * math.Tan(d/2) / (d / 2)
	}
	return e.Length * mean
}

// TestLoadsGrowWithWeight: twice the weight everywhere is twice the tension and twice the torque, and a hole twice as large,
// with the same turns, holds twice the load.
func TestLoadsGrowWithWeight(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		elements := anyString(rt)
		by := rapid.Float64Range(0.3, 3).Draw(rt, "by")
		longer := rapid.Bool().Draw(rt, "longer")
		scaled := make([]drag.Element, len(elements))
		for k, e := range elements {
			if longer {
				e.Length *= by
			} else {
				e.Weight *= by
			}
			scaled[k] = e
		}
		one, other := drawn(rt, elements), drawn(rt, scaled)
		for _, op := range []drag.Operation{drag.PickingUp(), drag.SlackingOff(), drag.Rotating()} {
			tension, torque := one.Top(op)
			tension2, torque2 := other.Top(op)
			scale := 0.0
			for k := range elements {
				scale += elements[k].Weight * elements[k].Length
			}
			if scale = math.Abs(tension) + scale; math.Abs(tension2-by*tension) > 1e-9*by*scale || math.Abs(torque2-by*torque) > 1e-9*by*scale {
				rt.Errorf("%+v: %g N and %g N m, scaled by %g: %g and %g", op, tension, torque, by, tension2, torque2)
			}
		}
	})
}

// TestMoreFrictionHoldsBackMore along the whole string.
func TestMoreFrictionHoldsBackMore(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		elements := anyString(rt)
		rough := make([]drag.Element, len(elements))
		for k, e := range elements {
			e.Friction += 0.1
			rough[k] = e
		}
		up, _ := drawn(rt, elements).Top(drag.PickingUp())
		rougher, _ := drawn(rt, rough).Top(drag.PickingUp())
		if rougher < up-1e-9*math.Abs(up) && up >= 0 {
			lowest := 0.0
			for _, l := range drawn(rt, elements).Loads(nil, drag.PickingUp()) {
				lowest = min(lowest, l.Lower.Tension)
			}
			if lowest == 0 { // a string in tension throughout
				rt.Errorf("pulled with %g N, with more friction %g N", up, rougher)
			}
		}
	})
}

// TestOpenWaterDoesNotRub: what hangs free weighs its weight.
func TestOpenWaterDoesNotRub(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		elements := anyString(rt)
		for k := range elements {
			elements[k].Unsupported = true
		}
		s := drawn(rt, elements)
		up, _ := s.Top(drag.PickingUp())
		still, torque := s.Top(drag.Rotating())
		if math.Abs(up-still) > 1e-9*math.Abs(still) || torque != 0 {
			rt.Errorf("up %g N, still %g N, torque %g N m", up, still, torque)
		}
	})
}
