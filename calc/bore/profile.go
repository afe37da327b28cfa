package bore

import (
	"errors"
	"fmt"
	"math"
	"sort"
)

// joined is the gap or overlap in metres that two neighbouring lengths may show
// and still count as touching: a micrometre, the rounding of depths that were
// added up along different ways.
const joined = 1e-6

// A Span is a length of bore of one diameter: riser, inside of a casing, open hole.
type Span struct {
	Top      float64 // Top is the measured depth of its upper end in metres.
	Bottom   float64 // Bottom is the measured depth of its lower end in metres.
	Diameter float64 // Diameter is the effective inner diameter in metres.
	Label    string  // Label names it to a person.
}

// A Profile is the bore from the top down: spans in order, each beginning where
// the one before it ends.
type Profile []Span

// Check reports the first span that is not usable: a value that is no number, an
// end above its beginning, a diameter of zero or less, a gap or an overlap of more
// than a micrometre. An empty profile is an error too.
func (p Profile) Check() error {
	if len(p) == 0 {
		return errors.New("bore has no spans; give at least one")
	}
	for i, s := range p {
		if err := checkLength("bore", i+1, s.Label, s.Top, s.Bottom); err != nil {
			return err
		}
		if !(s.Diameter > 0) || math.IsInf(s.Diameter, 0) {
			return fmt.Errorf("bore span %d%s at %.2f m: diameter %g m; give one above zero", i+1, named(s.Label), s.Top, s.Diameter)
		}
		if i > 0 && math.Abs(s.Top-p[i-1].Bottom) > joined {
			return fmt.Errorf("bore span %d%s begins at %.2f m but span %d ends at %.2f m; let them meet",
				i+1, named(s.Label), s.Top, i, p[i-1].Bottom)
		}
	}
	return nil
}

// checkLength reports whether a length of bore or body has usable ends.
func checkLength(what string, row int, label string, top, bottom float64) error {
	switch {
	case math.IsNaN(top) || math.IsInf(top, 0) || math.IsNaN(bottom) || math.IsInf(bottom, 0):
		return fmt.Errorf("%s span %d%s: a depth is missing or not a number; give top and bottom", what, row, named(label))
	case bottom <= top:
		return fmt.Errorf("%s span %d%s: its bottom at %.2f m is not below its top at %.2f m; give it a length", what, row, named(label), bottom, top)
	}
	return nil
}

// named returns a label in quotes after a space, or nothing.
func named(label string) string {
	if label == "" {
		return ""
	}
	return fmt.Sprintf(" %q", label)
}

// At returns the span that holds a measured depth in metres. A depth at which two
// spans meet belongs to the lower one; the bottom of the last span belongs to it.
// It reports false above, below and in gaps.
func (p Profile) At(md float64) (Span, bool) {
	i := sort.Search(len(p), func(i int) bool { return p[i].Bottom > md })
	if i == len(p) {
		if i == 0 || md != p[i-1].Bottom {
			return Span{}, false
		}
		i--
	}
	if !(p[i].Top <= md) {
		return Span{}, false
	}
	return p[i], true
}

// Least returns the narrowest span between two measured depths in metres, the
// uppermost of equals: the one that decides what passes. Spans that touch the
// stretch at an end only do not count. It reports false if there is none.
func (p Profile) Least(top, bottom float64) (Span, bool) {
	var least Span
	found := false
	for _, s := range p {
		if s.Bottom > top && s.Top < bottom && (!found || s.Diameter < least.Diameter) {
			least, found = s, true
		}
	}
	return least, found
}
