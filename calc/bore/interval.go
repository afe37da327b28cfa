package bore

import "fmt"

// An Interval is a length of annulus in which neither diameter changes; where
// nothing hangs in the bore, Inner is zero.
type Interval struct {
	Top        float64 // Top is the measured depth of its upper end in metres.
	Bottom     float64 // Bottom is the measured depth of its lower end in metres.
	Outer      float64 // Outer is the diameter of the bore in metres.
	Inner      float64 // Inner is the outside diameter of the body in metres, 0 if there is none.
	OuterLabel string  // OuterLabel is the label of the bore.
	InnerLabel string  // InnerLabel is the label of the body.
}

// Length returns the length in metres along the hole.
func (i Interval) Length() float64 {
	if !(i.Bottom > i.Top) {
		return 0
	}
	return i.Bottom - i.Top
}

// Capacity returns the volume per length in m³/m. It is zero, never negative,
// where the body is as wide as the bore; see [Fit].
func (i Interval) Capacity() float64 { return ring(i.Outer, i.Inner) }

// Volume returns the volume in m³.
func (i Interval) Volume() float64 { return i.Capacity() * i.Length() }

// Intervals returns the bore between two measured depths in metres, cut at every
// boundary of the profile and of the bodies in it, from the top down. Parts
// outside the profile are left out, so the result is shorter than asked for where
// the profile is. Boundaries within a micrometre of each other are one, so that
// depths added up along different ways leave no slivers.
func Intervals(outer Profile, inner []Body, top, bottom float64) []Interval {
	return AppendIntervals(make([]Interval, 0, len(outer)+2*len(inner)), outer, inner, top, bottom)
}

// AppendIntervals appends to dst what [Intervals] returns.
func AppendIntervals(dst []Interval, outer Profile, inner []Body, top, bottom float64) []Interval {
	for _, span := range outer {
		from, end := max(span.Top, top), min(span.Bottom, bottom)
		for from < end { // an end that is no number ends the loop
			for len(inner) > 0 && inner[0].Bottom <= from+joined {
				inner = inner[1:]
			}
			cut := Interval{Top: from, Bottom: end, Outer: span.Diameter, OuterLabel: span.Label}
			if len(inner) > 0 {
				if body := &inner[0]; body.Top <= from+joined {
					cut.Bottom = min(end, body.Bottom)
					cut.Inner, cut.InnerLabel = body.OD, body.Label
				} else {
					cut.Bottom = min(end, body.Top)
				}
			}
			if cut.Bottom > end-joined {
				cut.Bottom = end
			}
			if !(cut.Bottom > from) {
				break
			}
			dst = append(dst, cut)
			from = cut.Bottom
		}
	}
	return dst
}

// Fit reports the first interval, from the top, in which the body is as wide as
// the bore or wider. Volumes there are zero, and nothing can be pumped past.
func Fit(intervals []Interval) error {
	for _, i := range intervals {
		if i.Inner > 0 && !(i.Inner < i.Outer) {
			return fmt.Errorf("body%s of %.4f m does not fit into bore%s of %.4f m at %.2f m; take a smaller body or a wider bore",
				named(i.InnerLabel), i.Inner, named(i.OuterLabel), i.Outer, i.Top)
		}
	}
	return nil
}
