package calc

import (
	"math"
	"slices"

	"borewalk/model"
	"borewalk/model/quantity"
)

// Span is the row of contents with which an entry is tried, rising: multiples of the natural step of a unit, evenly spaced,
// and among them the plan's own content as it stands.
type Span struct {
	Ref     model.Ref
	Entries []model.Entry
	Now     int // which of them is the plan's own; -1 when it is blank or lies beyond the ends

	unit   quantity.Unit
	now    model.Entry
	first  int // of the spacing from zero, where the span begins
	stride int // natural steps from one content to the next
	count  int
}

// usualReach is how far a span goes to either side of the plan's own content, as a share of that.
const usualReach = 0.2

// leastContents is how many contents a span has where the natural step would cover the reach with fewer.
const leastContents = 11

// NewSpan returns at most about so many contents around the plan's own, or over the whole range of a blank entry. It reports false for
// what cannot be varied: an entry that is no number, or blank without a range.
func NewSpan(plan *model.Plan, ref model.Ref, unit quantity.Unit, count int) (Span, bool) {
	if ref.Field == nil || ref.Field.Type != model.QuantityField || !unit.Fits(ref.Field.Kind) {
		return Span{}, false
	}
	s := Span{Ref: ref, unit: unit, now: ref.Get(plan), count: max(count, 3)}
	var centre, reach float64
	switch {
	case s.now.IsSet():
		centre = unit.FromSI(s.now.Quantity.SI)
		reach = usualReach * math.Abs(centre)
	case ref.Field.Min.IsSet() && ref.Field.Max.IsSet():
		low, high := s.bounds()
		centre, reach = (low+high)/2, (high-low)/2
	default:
		return Span{}, false
	}
	s.stride = 1
	for float64(s.stride*s.count/2)*s.step() < reach*(1-1e-9) {
		s.stride = larger(s.stride)
	}
	s.count = max(min(s.count, leastContents), min(s.count, 2*int(math.Ceil(reach/(float64(s.stride)*s.step())-1e-9))+1))
	s.centre(centre)
	for s.stride > 1 && len(s.Entries) < 3 {
		s.stride = smaller(s.stride)
		s.centre(centre)
	}
	return s, len(s.Entries) > 1
}

// larger and smaller go up and down the row 1, 2, 5, 10, 20, 50 ...
func larger(stride int) int {
	if lead := leading(stride); lead == 2 {
		return stride / 2 * 5
	}
	return stride * 2
}

func smaller(stride int) int {
	if lead := leading(stride); lead == 5 {
		return stride / 5 * 2
	}
	return max(1, stride/2)
}

func leading(n int) int {
	for n >= 10 {
		n /= 10
	}
	return n
}

// Wider returns the span with its contents further apart, around one of them.
func (s Span) Wider(at int) Span { return s.spaced(larger(s.stride), at) }

// Closer returns the span with its contents nearer to each other, around one of them.
func (s Span) Closer(at int) Span { return s.spaced(smaller(s.stride), at) }

// spaced returns the span with another spacing; where that leaves fewer than three contents in the entry's range it stays.
func (s Span) spaced(stride, at int) Span {
	changed := s
	changed.stride = stride
	changed.centre(s.unit.FromSI(s.Entries[at].Quantity.SI))
	if len(changed.Entries) < min(3, len(s.Entries)) {
		return s
	}
	return changed
}

// Moved returns the span so many contents further up, or down for a negative number; at the end of the entry's range it stays.
func (s Span) Moved(by int) Span {
	s.first += by
	s.fill()
	return s
}

// Nearest returns which of the contents lies nearest to an SI value.
func (s Span) Nearest(si float64) (at int) {
	for k, e := range s.Entries {
		if math.Abs(e.Quantity.SI-si) < math.Abs(s.Entries[at].Quantity.SI-si) {
			at = k
		}
	}
	return at
}

// step is the natural step of the entry in the span's unit.
func (s *Span) step() float64 { return quantity.Step(s.Ref.Field.Kind, s.unit) }

// bounds returns the ends of the entry's range in the span's unit; infinite where there are none.
func (s *Span) bounds() (low, high float64) {
	low, high = math.Inf(-1), math.Inf(1)
	if v := s.Ref.Field.Min; v.IsSet() {
		low = s.unit.FromSI(v.SI)
	}
	if v := s.Ref.Field.Max; v.IsSet() {
		high = s.unit.FromSI(v.SI)
	}
	return low, high
}

// centre puts the middle of the span at a number of its unit.
func (s *Span) centre(x float64) {
	s.first = int(math.Round(x/(s.step()*float64(s.stride)))) - s.count/2
	s.fill()
}

// fill works out the contents from where the span begins, within the entry's range.
func (s *Span) fill() {
	const rounding = 1e-9
	spacing := s.step() * float64(s.stride)
	low, high := s.bounds()
	least, most := math.Ceil(low/spacing-rounding), math.Floor(high/spacing+rounding)
	s.first = int(max(least, min(float64(s.first), most-float64(s.count-1))))
	last := int(min(most, float64(s.first+s.count-1)))
	s.Entries, s.Now = make([]model.Entry, 0, s.count+1), -1
	for k := s.first; k <= last; k++ {
		v := quantity.Nudge(quantity.Of(0, s.unit), s.Ref.Field.Kind, s.unit, k*s.stride)
		e := model.Entry{Quantity: v}
		if _, out := (model.Edit{Changes: []model.Change{{Kind: model.SetEntry, Ref: s.Ref, New: e}}}).Fault(); !out {
			s.Entries = append(s.Entries, e)
		}
	}
	s.includeNow(spacing, spacing*rounding)
}

// includeNow puts the plan's own content among the others where it lies between them or less than a spacing beyond, in place of
// one that is the same to within a tolerance; both in the span's unit.
func (s *Span) includeNow(spacing, tolerance float64) {
	if !s.now.IsSet() || len(s.Entries) == 0 {
		return
	}
	own := s.unit.FromSI(s.now.Quantity.SI)
	number := func(k int) float64 { return s.unit.FromSI(s.Entries[k].Quantity.SI) }
	last := len(s.Entries) - 1
	if own <= number(0)-spacing || own >= number(last)+spacing {
		return
	}
	at := 0
	for at <= last && number(at) < own-tolerance {
		at++
	}
	if s.Now = at; at <= last && number(at) <= own+tolerance {
		s.Entries[at] = s.now
		return
	}
	s.Entries = slices.Insert(s.Entries, at, s.now)
}
