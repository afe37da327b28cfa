package calc

import (
	"math"
	"strconv"

	"borewalk/model"
)

// doneOn puts onto the clock what was done, and when the well begins. What cannot be read is a finding and does not count.
func (e *evaluation) doneOn(t *timeline) {
	t.readBeginning(e)
	for i := range e.plan.Sections {
		for r := range e.plan.Sections[i].Done {
			e.readDone(t, i, r)
		}
	}
	t.last = -1
	for k := range t.list {
		switch t.list[k].progress {
		case Done:
			t.last, t.next = k, k+1
		case GoingOn:
			t.next = k
		}
	}
	end, planned := 0.0, 0.0 // of what was done so far
	for k := range t.next {
		s := &t.list[k]
		switch s.progress {
		case ToCome:
			s.progress = Passed
		case GoingOn:
			s.progress = Passed // something later was done: its end was not written down
		case Done:
			s.stands = s.planned
			if math.IsNaN(s.from) { // not given: it stands for what was passed as well, from the end of what was done before
				s.from, s.stands.from = min(end, s.to), planned
			}
			end, planned = s.to, s.planned.to
		}
	}
}

// readBeginning reads when the well begins: as entered, else reckoned back from the first operation that was done.
func (t *timeline) readBeginning(e *evaluation) {
	if text := e.plan.Schedule.Start; text != "" {
		if t.begins, t.dated = model.ParseMoment(text); t.dated {
			return
		}
		e.note(-1, Caution, gap{"time.start", strconv.Quote(text) + " is no day and hour such as 2027-03-01 06:00: the well has no beginning"})
	}
	for i := range e.plan.Sections {
		for _, row := range e.plan.Sections[i].Done {
			s, ok := t.find(i, row.Step)
			if !ok {
				continue
			}
			if at, ok := model.ParseMoment(row.Started); ok {
				t.begins, t.dated = at.After(-s.planned.from), true
				return
			}
			if at, ok := model.ParseMoment(row.Ended); ok {
				t.begins, t.dated = at.After(-s.planned.to), true
				return
			}
		}
	}
}

// readDone puts row r of what was done in section i onto the clock. What is wrong with it is a finding, and it does not count.
func (e *evaluation) readDone(t *timeline, i, r int) {
	row := &e.plan.Sections[i].Done[r]
	path := func(key string) model.Path { return model.PathOf(i, "done["+strconv.Itoa(r+1)+"]."+key) }
	wrong := func(key, why string) { e.note(i, Caution, gap{path(key), why + ": the row does not count"}) }
	s, ok := t.find(i, row.Step)
	switch {
	case row.Step == "":
		wrong("step", "what was done is blank")
		return
	case !ok:
		wrong("step", "the section has no operation "+strconv.Quote(row.Step)+" that is to be done")
		return
	case s.progress != ToCome:
		wrong("step", "the operation stands twice among those done")
		return
	}
	from, fromSet, fromOK := e.momentOn(t, row.Started)
	to, toSet, toOK := e.momentOn(t, row.Ended)
	if !toSet {
		to = from
	}
	const shape = " is no day and hour such as 2027-03-01 06:00"
	switch {
	case !fromOK:
		wrong("started", strconv.Quote(row.Started)+shape)
	case !toOK:
		wrong("ended", strconv.Quote(row.Ended)+shape)
	case !fromSet && !toSet:
		wrong("ended", "neither beginning nor end of the operation is given")
	case fromSet && toSet && to < from:
		wrong("ended", "the operation has ended before it was started")
	case e.beforeOthers(t, s, from, to, fromSet):
		wrong("ended", "the operation stands before one that comes earlier in the list")
	default:
		s.span, s.progress = span{from, to}, GoingOn
		if !fromSet {
			s.from = math.NaN()
		}
		if toSet {
			s.progress = Done
		}
		if row.Depth.IsSet() {
			s.hole = row.Depth.SI
		}
	}
}

// beforeOthers reports whether an operation was done before another that the list has earlier, or after one that it has later.
func (e *evaluation) beforeOthers(t *timeline, s *clockedStep, from, to float64, fromSet bool) bool {
	if !fromSet {
		from = to
	}
	later := false
	for k := range t.list {
		other := &t.list[k]
		if other == s {
			later = true
			continue
		}
		if other.progress != Done && other.progress != GoingOn {
			continue
		}
		begun, ended := other.from, other.to
		if math.IsNaN(begun) {
			begun = ended
		}
		if other.progress == GoingOn {
			ended = begun
		}
		if (!later && from < ended) || (later && max(from, to) > begun) {
			return true
		}
	}
	return false
}

// momentOn returns a moment as s from the well's beginning, whether there is any, and whether it can be read.
func (e *evaluation) momentOn(t *timeline, text string) (at float64, set, ok bool) {
	if text == "" {
		return 0, false, true
	}
	m, ok := model.ParseMoment(text)
	return float64(m - t.begins), ok, ok
}
