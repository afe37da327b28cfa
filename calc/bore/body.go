package bore

import (
	"fmt"
	"math"
)

// A Body is a length of one size of what hangs in the hole.
type Body struct {
	Top    float64 // Top is the measured depth of its upper end in metres.
	Bottom float64 // Bottom is the measured depth of its lower end in metres.
	OD     float64 // OD is the effective outside diameter in metres.
	ID     float64 // ID is the effective inside diameter in metres, 0 for a solid one.
	Label  string  // Label names it to a person.
}

// CheckBodies reports the first body that is not usable: a value that is no
// number, an end above its beginning, diameters that leave no wall, or bodies out
// of order or overlapping by more than a micrometre. Gaps between bodies are
// allowed, and so is an empty list: an empty hole.
func CheckBodies(bodies []Body) error {
	for i, b := range bodies {
		if err := checkLength("string", i+1, b.Label, b.Top, b.Bottom); err != nil {
			return err
		}
		if !(b.OD > 0) || !(b.ID >= 0) || !(b.ID < b.OD) || math.IsInf(b.OD, 0) {
			return fmt.Errorf("string span %d%s at %.2f m: outside %g m and inside %g m leave no wall; mend the diameters",
				i+1, named(b.Label), b.Top, b.OD, b.ID)
		}
		if i > 0 && b.Top < bodies[i-1].Bottom-joined {
			return fmt.Errorf("string span %d%s begins at %.2f m, above the end of span %d at %.2f m; sort the spans and part them",
				i+1, named(b.Label), b.Top, i, bodies[i-1].Bottom)
		}
	}
	return nil
}

// Inside returns the bore of the string between two measured depths in metres, as
// intervals with nothing inside. Gaps between bodies are left out.
func Inside(bodies []Body, top, bottom float64) []Interval {
	return AppendInside(nil, bodies, top, bottom)
}

// AppendInside appends to dst what [Inside] returns.
func AppendInside(dst []Interval, bodies []Body, top, bottom float64) []Interval {
	for _, b := range bodies {
		if from, to := max(b.Top, top), min(b.Bottom, bottom); from < to {
			dst = append(dst, Interval{Top: from, Bottom: to, Outer: b.ID, OuterLabel: b.Label})
		}
	}
	return dst
}

// ClosedEnd returns the volume in m³ that the string takes up between two measured
// depths in metres with its bore shut: steel and bore together.
func ClosedEnd(bodies []Body, top, bottom float64) float64 {
	volume := 0.0
	for _, b := range bodies {
		volume += Area(b.OD) * overlap(b.Top, b.Bottom, top, bottom)
	}
	return volume
}

// OpenEnd returns the volume in m³ that the string takes up between two measured
// depths in metres with its bore open to the fluid: the steel alone.
func OpenEnd(bodies []Body, top, bottom float64) float64 {
	volume := 0.0
	for _, b := range bodies {
		volume += ring(b.OD, b.ID) * overlap(b.Top, b.Bottom, top, bottom)
	}
	return volume
}

// overlap returns the length in metres that two stretches share.
func overlap(topA, bottomA, topB, bottomB float64) float64 {
	if from, to := max(topA, topB), min(bottomA, bottomB); from < to {
		return to - from
	}
	return 0
}
