package calc

import (
	"math"

	"borewalk/calc/chance"
	"borewalk/model"
)

// Schedule is the work on the whole well on one clock, with how far its ends spread. It is worked out when asked for.
type Schedule struct {
	Begins model.Moment
	Dated  bool      // the well has a beginning
	Rows   []Planned // the operations that are done at all, in order
	Next   int       // the first row that is not done, the number of all when all are
	Why    string    // what is missing for the end of the well
	Mend   model.Path
}

// Planned is an operation on the clock, in s from the beginning of the well, weather counted. What is not known is not a number.
type Planned struct {
	Section  int
	Step     *Step
	Progress Progress

	PlannedFrom, PlannedTo float64 // before anything was done
	From, To               float64 // as done, else as likely from the last end on
	Hole                   float64 // depth of the hole at its end, as it was read where it was
	P10, P50, P90          float64 // of its end, where it is still to come
}

// scheduleTrials is how often the spread of the ends is drawn: with so many, P10 and P90 of a sum are good to about a thirtieth of its
// spread. The seed is any number: the same plan gives the same band.
const (
	scheduleTrials = 2000
	scheduleSeed   = 1
)

// ScheduleOf works out the schedule of a plan.
func ScheduleOf(plan *model.Plan) Schedule { return begin(plan, nil, 0).schedule() }

func (e *evaluation) schedule() Schedule {
	t := e.clock()
	s := Schedule{Begins: t.begins, Dated: t.dated, Next: t.next, Rows: make([]Planned, 0, len(t.list))}
	if n := len(t.sections); n > 0 {
		_, _, missing, _ := t.ends(n - 1)
		s.Why, s.Mend = missing.why, missing.path
	}
	band := t.spread()
	unless := func(missing gap, at float64) float64 {
		if missing.open() {
			return math.NaN()
		}
		return at
	}
	for k := range t.list {
		of := &t.list[k]
		row := Planned{Section: of.section, Step: of.step, Progress: of.progress, Hole: of.hole,
			PlannedFrom: unless(t.plannedBefore(k), of.planned.from), PlannedTo: unless(of.plannedGap, of.planned.to),
			From: unless(of.unbegun, of.from), To: unless(of.missing, of.to), P10: math.NaN(), P50: math.NaN(), P90: math.NaN()}
		if k >= t.next && k-t.next < len(band) {
			b := band[k-t.next]
			row.P10, row.P50, row.P90 = b.P10, b.P50, b.P90
		}
		s.Rows = append(s.Rows, row)
	}
	return s
}

// plannedBefore returns what is missing for the planned beginning of an operation.
func (t *timeline) plannedBefore(k int) gap {
	if k == 0 {
		return gap{}
	}
	return t.list[k-1].plannedGap
}

// spread returns how the ends of the operations to come spread, as far down as their durations are known: each is drawn by itself,
// the share that is lost to weather once for the whole well.
func (t *timeline) spread() []chance.Spread {
	if t.next >= len(t.list) || t.list[t.next].unbegun.open() {
		return nil
	}
	var parts []chance.Triangle
	for k := t.next; k < len(t.list) && !t.list[k].missing.open(); k++ {
		step := t.list[k].step
		parts = append(parts, chance.Triangle{Low: step.Low, Likely: step.Likely, High: step.High})
	}
	weather := chance.Triangle{Low: longer(t.lost.low), Likely: longer(t.lost.likely), High: longer(t.lost.high)}
	band := chance.Sums(parts, weather, scheduleTrials, scheduleSeed)
	from := t.list[t.next].from
	for k := range band {
		b := &band[k]
		b.P10, b.P50, b.P90, b.Mean = b.P10+from, b.P50+from, b.P90+from, b.Mean+from
	}
	return band
}

// Now returns where on the clock the work stands: when the first operation that is not done begins; not a number where that is not
// known, or nothing is left to do.
func (s *Schedule) Now() float64 {
	if s.Next >= len(s.Rows) {
		return math.NaN()
	}
	return s.Rows[s.Next].From
}

// Ahead returns the operations to come that begin in a part of the time from now: from so many s on, and before so many. Those whose
// beginning is not known are left out.
func (s *Schedule) Ahead(from, to float64) []Planned {
	now := s.Now()
	var list []Planned
	for _, row := range s.Rows[s.Next:] {
		if row.From >= now+from && row.From < now+to {
			list = append(list, row)
		}
	}
	return list
}

// Ends returns the last row of a section, and whether it has any.
func (s *Schedule) Ends(section int) (row Planned, ok bool) {
	for _, r := range s.Rows {
		if r.Section == section {
			row, ok = r, true
		}
	}
	return row, ok
}
