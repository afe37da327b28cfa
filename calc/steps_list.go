package calc

import (
	"slices"
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
)

// changedSteps returns the list as the plan's rows change it: names, times and notes first, then own operations, then places.
// What a row cannot be applied to is a finding.
func (e *evaluation) changedSteps(i int, list []Step) []Step {
	for k := range list {
		e.timeStep(i, &list[k])
	}
	rows := e.plan.Sections[i].Steps
	own := 0
	for r := range rows {
		row := &rows[r]
		if row.Own() {
			own++
			list = append(list, ownStep(row, own, list))
		} else if k := stepAt(list, row.Step); k >= 0 {
			changeStep(&list[k], row)
		} else {
			e.note(i, Caution, gap{stepPath(i, r, "step"), "the list has no operation " + strconv.Quote(row.Step) + ": the row changes nothing"})
			continue
		}
		s := &list[stepAt(list, rowKey(row, own))]
		s.Row = r
		e.givenTime(i, r, row, s)
	}
	return e.movedSteps(i, list, rows)
}

// rowKey returns the key of the operation that a row means, the latest own one being the given.
func rowKey(row *model.StepRow, own int) string {
	if row.Own() {
		return "own." + strconv.Itoa(own)
	}
	return row.Step
}

func stepPath(i, row int, key string) model.Path {
	return model.PathOf(i, "step["+strconv.Itoa(row+1)+"]."+key)
}

func stepAt(list []Step, key string) int {
	return slices.IndexFunc(list, func(s Step) bool { return s.Key == key })
}

// ownStep returns an operation of the plan's own, at the end of a list.
func ownStep(row *model.StepRow, n int, list []Step) Step {
	s := Step{Key: "own." + strconv.Itoa(n), Name: row.Name, Who: row.Who, Note: row.Note, Own: true, Struck: row.Struck == model.Struck}
	if s.Name == "" {
		s.Name = "Operation " + strconv.Itoa(n)
	}
	if row.Stop != "" {
		s.Stops = []string{row.Stop}
	}
	if len(list) > 0 {
		last := &list[len(list)-1]
		s.From, s.To, s.HoleFrom, s.HoleTo = last.To, last.To, last.HoleTo, last.HoleTo
	}
	return s
}

func changeStep(s *Step, row *model.StepRow) {
	if row.Name != "" {
		s.Name = row.Name
	}
	if row.Who != "" {
		s.Who = row.Who
	}
	if row.Stop != "" {
		s.Stops = append(slices.Clone(s.Stops), row.Stop)
	}
	s.Note, s.Struck = row.Note, row.Struck == model.Struck
}

// givenTime gives a step the durations of its row. An own operation without any is missing them.
func (e *evaluation) givenTime(i, r int, row *model.StepRow, s *Step) {
	if row.Likely.IsSet() {
		e.spread(i, s, row.Likely.SI, "as entered", gap{})
	} else if s.Own {
		e.spread(i, s, 0, "as entered", gap{stepPath(i, r, "likely"), "duration of the operation is blank"})
	}
	if row.Low.IsSet() {
		s.Low = row.Low.SI
	}
	if row.High.IsSet() {
		s.High = row.High.SI
	}
	if s.Timed && (s.Low > s.Likely || s.High < s.Likely) {
		e.note(i, Caution, gap{stepPath(i, r, "likely"), "low, likely and high duration are not in order: they count as put in order"})
		v := []float64{s.Low, s.Likely, s.High}
		slices.Sort(v)
		s.Low, s.Likely, s.High = v[0], v[1], v[2]
	}
}

// movedSteps puts operations where the plan's rows say, one row after the other. The string and the hole are where the work
// puts them: an operation that is moved is done where the string hangs by then, so only one that moves neither may be moved.
func (e *evaluation) movedSteps(i int, list []Step, rows []model.StepRow) []Step {
	own := 0
	for r := range rows {
		row := &rows[r]
		if row.Own() {
			own++
		}
		from := stepAt(list, rowKey(row, own))
		if row.After == "" || from < 0 {
			continue
		}
		path := stepPath(i, r, "after")
		s := list[from]
		if s.From != s.To || !s.Flat() {
			e.note(i, Caution, gap{path, "an operation that moves the string cannot stand elsewhere: its place is not changed"})
			continue
		}
		rest := slices.Delete(slices.Clone(list), from, from+1)
		to := stepAt(rest, row.After) + 1
		if to == 0 && row.After != model.FirstStep {
			e.note(i, Caution, gap{path, "the list has no operation " + strconv.Quote(row.After) + ": the place is not changed"})
			continue
		}
		s.From, s.HoleFrom = e.placeBefore(i, rest, to)
		s.To, s.HoleTo = s.From, s.HoleFrom
		list = slices.Insert(rest, to, s)
	}
	return list
}

// placeBefore returns where string end and hole stand before the operation at a place of a list.
func (e *evaluation) placeBefore(i int, list []Step, at int) (end, hole float64) {
	if at == 0 {
		return 0, e.sections[i].start
	}
	return list[at-1].To, list[at-1].HoleTo
}

// spread gives a step its likely duration, and the low and high ones by the section's shares.
func (e *evaluation) spread(i int, s *Step, likely float64, by string, missing gap) {
	r := &e.plan.Sections[i].Rates
	s.By, s.Timed, s.Why, s.Mend = by, !missing.open(), missing.why, string(missing.path)
	if !s.Timed {
		s.Low, s.Likely, s.High = 0, 0, 0
		return
	}
	s.Likely = likely
	s.Low, s.High = likely*usual(r.Low, model.UsualLow), likely*usual(r.High, model.UsualHigh)
}

// hours is how many seconds an hour has, for durations that are written in hours.
const hours = 3600.0

// hoursOr returns an entry in s, or so many hours where it is blank.
func hoursOr(v quantity.Value, otherwise float64) float64 { return usual(v, otherwise*hours) }
