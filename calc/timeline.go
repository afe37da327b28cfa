package calc

import (
	"slices"

	"borewalk/model"
)

// days is how many seconds a day has, for what is reckoned by days.
const days = 24 * hours

// span is between two times, in s from the beginning of the well.
type span struct{ from, to float64 }

func (s span) long() float64 { return s.to - s.from }

// clockedStep is one operation of the well on its clock, with weather.
type clockedStep struct {
	section    int
	step       *Step
	planned    span // as planned before anything was done
	plannedGap gap
	span           // as it was done, else as it is expected from what was done
	unbegun    gap // for its beginning
	missing    gap // for its end
	progress   Progress
	stands     span    // of one that is done: the part of the plan that it stands for
	hole       float64 // depth of the hole at its end, as it was read where it was
}

// Progress says how far an operation is.
type Progress uint8

// How far an operation is. Passed is one that comes before what was done, without a record of its own.
const (
	ToCome Progress = iota
	Passed
	Done
	GoingOn
)

// timeline is the well's operations one after the other, those that are struck left out.
type timeline struct {
	begins   model.Moment
	dated    bool
	lost     lostTime
	list     []clockedStep
	sections []sectionSpan
	next     int // the first that is not done, the number of all when all are
	last     int // the last that is done, -1 for none
}

// sectionSpan says which of the well's operations are those of a section, and what is missing for them.
type sectionSpan struct {
	from, to int
	missing  gap
}

// lostTime is the share of all time that is lost to weather.
type lostTime struct{ low, likely, high float64 }

// longer returns by what share weather lengthens the work: of lost time w it is w / (1 - w).
func longer(lost float64) float64 { return lost / (1 - lost) }

// clock puts the operations of the whole well on one clock, once.
func (e *evaluation) clock() *timeline {
	if e.clocked == nil {
		t := &timeline{lost: e.lostTime(), last: -1}
		e.clocked = t
		for i := range e.plan.Sections {
			o := e.operationsOf(i)
			s := sectionSpan{from: len(t.list), missing: first(e.sections[i].missing, o.missing)}
			for k := range o.list {
				if step := &o.list[k]; step.Counts() {
					t.list = append(t.list, clockedStep{section: i, step: step, hole: step.HoleTo})
				}
			}
			s.to = len(t.list)
			t.sections = append(t.sections, s)
		}
		t.plan()
		e.doneOn(t)
		t.expect()
	}
	return e.clocked
}

// lostTime returns the shares that are lost to weather, in order.
func (e *evaluation) lostTime() lostTime {
	s := &e.plan.Schedule
	v := []float64{usual(s.WeatherLow, s.WeatherLikely.SI), s.WeatherLikely.SI, usual(s.WeatherHigh, s.WeatherLikely.SI)}
	if !slices.IsSorted(v) {
		e.note(-1, Caution, gap{"time.weather", "low, likely and high share of weather are not in order: they count as put in order"})
		slices.Sort(v)
	}
	return lostTime{v[0], v[1], v[2]}
}

// plan puts every operation where it is planned.
func (t *timeline) plan() {
	at, missing, section := 0.0, gap{}, -1
	for k := range t.list {
		s := &t.list[k]
		for section < s.section { // sections without any operation as well
			section++
			missing = first(missing, t.sections[section].missing)
		}
		missing = first(missing, s.step.untimed())
		s.planned.from = at
		at += s.step.Likely * (1 + longer(t.lost.likely))
		s.planned.to, s.plannedGap = at, missing
	}
}

// untimed returns what is missing for the duration of an operation.
func (s *Step) untimed() gap { return gap{why: s.Why, path: model.Path(s.Mend)} }

// expect puts every operation where it was done, and those to come behind the last of them.
func (t *timeline) expect() {
	at, missing, section := 0.0, gap{}, -1
	for k := range t.list {
		s := &t.list[k]
		for section < s.section {
			section++
			missing = first(missing, t.sections[section].missing)
		}
		likely := s.step.Likely * (1 + longer(t.lost.likely))
		s.unbegun = missing
		switch s.progress {
		case Done:
			s.unbegun, missing = gap{}, gap{}
		case Passed:
			s.span = span{at, at}
		case GoingOn:
			s.to, s.unbegun = s.from+likely, gap{}
			missing = s.step.untimed()
		case ToCome:
			s.span = span{at, at + likely}
			missing = first(missing, s.step.untimed())
		}
		at, s.missing = s.to, missing
	}
}

// ends returns when the work on a section has ended, and what is missing to know it.
func (t *timeline) ends(i int) (at float64, planned float64, missing, plannedGap gap) {
	k := t.sections[i].to - 1
	if k < 0 {
		return 0, 0, t.missingTo(i), t.missingTo(i)
	}
	s := &t.list[k]
	rest := gap{}
	for j := s.section + 1; j <= i; j++ {
		rest = first(rest, t.sections[j].missing)
	}
	return s.to, s.planned.to, first(s.missing, rest), first(s.plannedGap, rest)
}

// missingTo returns what is missing for the operations down to those of a section.
func (t *timeline) missingTo(i int) (missing gap) {
	for j := range i + 1 {
		missing = first(missing, t.sections[j].missing)
	}
	return missing
}

// begin returns when the work on a section begins.
func (t *timeline) begin(i int) (at, planned float64, missing, plannedGap gap) {
	at, planned, missing, plannedGap = t.before(i)
	if k := t.sections[i].from; k < t.sections[i].to {
		if s := &t.list[k]; s.progress == Done || s.progress == GoingOn {
			at, missing = s.from, gap{}
		}
	}
	return at, planned, missing, plannedGap
}

// before returns when the section above has ended.
func (t *timeline) before(i int) (at, planned float64, missing, plannedGap gap) {
	if i == 0 {
		return 0, 0, gap{}, gap{}
	}
	return t.ends(i - 1)
}

// find returns the first of some operations that a section has, in the order given.
func (t *timeline) find(i int, keys ...string) (*clockedStep, bool) {
	part := t.list[t.sections[i].from:t.sections[i].to]
	for _, key := range keys {
		if k := slices.IndexFunc(part, func(s clockedStep) bool { return s.step.Key == key }); k >= 0 {
			return &part[k], true
		}
	}
	return nil, false
}

// now returns the section in which the work stands, the number of all sections when it is done.
func (t *timeline) now() int {
	if t.next < len(t.list) {
		return t.list[t.next].section
	}
	if t.last < 0 {
		return 0
	}
	return len(t.sections)
}

// date returns the moment of a time on the well's clock, nothing where the well has no beginning.
func (t *timeline) date(at float64, missing gap) string {
	if !t.dated || missing.open() {
		return ""
	}
	return t.begins.After(at).String()
}
