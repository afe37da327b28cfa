package calc

import (
	"strings"

	"borewalk/calc/chance"
	"borewalk/model"
	"borewalk/model/quantity"
)

// Range is an entry of a section, or the prognosis, between the ends where it may turn out to lie.
type Range struct {
	Name    string // "Washout"
	Kind    quantity.Kind
	Offset  bool // counted from the prognosis: likely is none
	Entered bool // else it is not varied
	chance.Triangle

	unit quantity.Unit // of what a trial enters
}

// The ranges of a section, in the order in which a trial draws them.
const (
	ofWashout = iota
	ofExcess
	ofLosses
	ofPore
	ofFracture
	ofIntensity
	rangeCount
)

// rangesOf reads the ranges of a section. A range that does not hold the plan's entry is not entered, and makes a gap.
func rangesOf(plan *model.Plan, section int) (ranges [rangeCount]Range, missing gap) {
	s := &plan.Sections[section]
	r := &s.Ranges
	read := func(k int, name, key string, likely quantity.Value, low, high quantity.Value) {
		ranges[k] = Range{Name: name, Triangle: chance.Triangle{Low: usual(low, likely.SI), Likely: likely.SI, High: usual(high, likely.SI)}}
		wrong := ranges[k].read(plan, section, key+"_low", key+"_high", low, high)
		missing = first(missing, wrong)
	}
	offset := func(k int, name, key string, less, more quantity.Value) {
		ranges[k] = Range{Name: name, Offset: true, Triangle: chance.Triangle{Low: -less.SI, High: more.SI}}
		wrong := ranges[k].read(plan, section, key+"_less", key+"_more", less, more)
		missing = first(missing, wrong)
	}
	read(ofWashout, "Washout", "washout", s.Washout, r.WashoutLow, r.WashoutHigh)
	read(ofExcess, "Excess", "excess", s.Cement.Excess, r.ExcessLow, r.ExcessHigh)
	read(ofLosses, "Slurry lost", "losses", s.Cement.Losses, r.LossesLow, r.LossesHigh)
	offset(ofPore, "Pore", "pore", r.PoreLess, r.PoreMore)
	offset(ofFracture, "Fracture", "fracture", r.FractureLess, r.FractureMore)
	read(ofIntensity, "Kick intensity", "intensity", s.Kick.Intensity, r.IntensityLow, r.IntensityHigh)
	return ranges, missing
}

// read says whether a range counts, and what is wrong with it.
func (r *Range) read(plan *model.Plan, section int, lowKey, highKey string, low, high quantity.Value) gap {
	path := func(key string) model.Path { return model.PathOf(section, "ranges."+key) }
	ref, _ := model.Find(plan, path(lowKey))
	r.Kind, r.unit = ref.Field.Kind, low.Unit
	if !low.IsSet() {
		r.unit = high.Unit
	}
	if !low.IsSet() && !high.IsSet() || ref.Idle(plan) != "" {
		return gap{}
	}
	switch name := strings.ToLower(r.Name); {
	case r.Low > r.Likely:
		return gap{path(lowKey), "the low end of the range lies above the plan's " + name + ": it is not varied"}
	case r.High < r.Likely:
		return gap{path(highKey), "the high end of the range lies below the plan's " + name + ": it is not varied"}
	}
	r.Entered = true
	return gap{}
}

// judgeRanges asks for ranges that hold what they are of.
func (e *evaluation) judgeRanges(i int) {
	if _, wrong := rangesOf(e.plan, i); wrong.open() {
		e.note(i, Caution, wrong)
	}
}
