package model

import (
	"slices"
	"time"
)

// deed is what was done to the plan since the last save and is not in its log yet: a step, or its undoing, or a mark, which has
// no number.
type deed struct {
	number int
	back   bool
	rows   []LogRow
}

// tread adds a deed to the trail. One that takes the last one back leaves none: neither has reached a file.
func (h *History) tread(d deed) {
	h.revision++
	if n := len(h.trail); n > 0 && h.trail[n-1].number == d.number && h.trail[n-1].back != d.back {
		h.trail = h.trail[:n-1]
		return
	}
	h.trail = append(h.trail, d)
}

// Mark puts a mark into the log that later states can be compared with.
func (h *History) Mark(name, note string, when time.Time) {
	h.revision++
	h.noted = true
	h.trail = append(h.trail, deed{rows: stamped([]LogRow{{What: LogMark, New: name}}, when, "", note)})
}

// Pending returns the rows that the log gets when the plan is saved.
func (h *History) Pending() []LogRow {
	var rows []LogRow
	for _, d := range h.trail {
		rows = append(rows, d.rows...)
	}
	return joined(rows)
}

// Explain gives the reason for the last edit that is not saved yet, and reports whether there is one.
func (h *History) Explain(why string) bool {
	if len(h.trail) == 0 {
		return false
	}
	h.revision++
	last := &h.trail[len(h.trail)-1]
	last.rows = slices.Clone(last.rows)
	for i := range last.rows {
		last.rows[i].Why = why
	}
	if n := len(h.done); n > 0 && !last.back && h.done[n-1].number == last.number {
		h.done[n-1].Why = why
	}
	return true
}

// ExplainRow gives the reason for what became a row that Pending returned.
func (h *History) ExplainRow(row LogRow, why string) {
	h.revision++
	for i := range h.trail {
		rows := slices.Clone(h.trail[i].rows)
		for k := range rows {
			if r := &rows[k]; r.When == row.When && r.What == row.What && r.Path == row.Path {
				r.Why = why
			}
		}
		h.trail[i].rows = rows
	}
}

// ExplainLogged gives the reason for rows that are in the log already, from one up to another, which is left out.
func (h *History) ExplainLogged(plan *Plan, from, to int, why string) {
	h.revision++
	plan.Log = slices.Clone(plan.Log) // copies of the plan share the rows
	for i := from; i < to; i++ {
		plan.Log[i].Why = why
	}
	h.noted = true
}

// Enter writes what was done since the last save into the plan's log; who saves did what nobody else is named for. The last row
// keeps what the plan is now. A plan that was changed outside the program gets a mark that says so first.
func (h *History) Enter(plan *Plan, who string, when time.Time) {
	EnterRows(plan, h.Pending(), who, when)
}

// EnterRows does what History.Enter does with rows that Pending returned, and returns how many the log got.
func EnterRows(plan *Plan, rows []LogRow, who string, when time.Time) int {
	rows = slices.Clone(rows)
	for i := range rows {
		if rows[i].Who == "" {
			rows[i].Who = who
		}
	}
	if n := len(plan.Log); n > 0 {
		trial := *plan
		trial.Log = slices.Concat(plan.Log, rows)
		if then, _ := Rewind(&trial, len(rows)); ChangedOutside(then) {
			rows = append(stamped([]LogRow{{What: LogMark, New: MarkOutside, Who: who}}, when, who, ""), rows...)
		}
	}
	if len(rows) == 0 {
		return 0
	}
	rows[len(rows)-1].Hash = Hash(plan)
	plan.Log = slices.Concat(plan.Log, rows)
	if over := len(plan.Log) - mostLogRows; over > 0 {
		plan.Log = plan.Log[over:]
	}
	return min(len(rows), len(plan.Log))
}

// Resume takes the last n rows out of the plan's log and makes them again what the log gets with the next save: the plan is not
// saved, and nothing of it can be taken back. That it was changed outside is found out anew then.
func (h *History) Resume(plan *Plan, n int) {
	n = max(0, min(n, len(plan.Log)))
	rows := slices.Clone(plan.Log[len(plan.Log)-n:])
	plan.Log = slices.Clip(plan.Log[:len(plan.Log)-n])
	if n > 0 {
		rows[n-1].Hash = ""
		if r := rows[0]; r.What == LogMark && r.New == MarkOutside {
			rows = rows[1:]
		}
	}
	*h = History{saved: -1, revision: h.revision + 1}
	if len(rows) > 0 {
		h.trail = []deed{{rows: rows}}
	}
}

// Save writes the plan by what is given, with what was done since the last save in its log, as by who saves. A plan that was not written
// is not logged either.
func (h *History) Save(plan *Plan, who string, when time.Time, write func() error) error {
	logged := plan.Log
	h.Enter(plan, who, when)
	if err := write(); err != nil {
		plan.Log = logged
		return err
	}
	h.Saved()
	return nil
}

// mostLogRows keeps a plan's file, which is read up to a size, from growing without end: the oldest rows go, and what is left is
// reversible as before. It is some thousand edits, or twenty lists of measured joints.
const mostLogRows = 20000

// stamped returns copies of rows that say when, by whom and why.
func stamped(rows []LogRow, when time.Time, who, why string) []LogRow {
	rows = slices.Clone(rows)
	for i := range rows {
		rows[i].When, rows[i].Who, rows[i].Why = "", Clean(who), Clean(why)
		if !when.IsZero() {
			rows[i].When = when.UTC().Format(time.RFC3339)
		}
	}
	return rows
}

// applyLogged makes a change and returns what the log says of it.
func applyLogged(plan *Plan, c *Change) []LogRow {
	switch c.Kind {
	case AddRow:
		apply(plan, c)
		return growth(plan, c.Ref.Group, c.Ref.Place)
	case RemoveRow:
		rows := reversed(growth(plan, c.Ref.Group, c.Ref.Place))
		apply(plan, c)
		return rows
	}
	old := logText(c.Ref.Field, c.Ref.Get(plan))
	apply(plan, c)
	if now := logText(c.Ref.Field, c.Ref.Get(plan)); now != old {
		return []LogRow{{What: LogSet, Path: string(c.Ref.Path()), Old: old, New: now}}
	}
	return nil
}

// growth returns the rows of the log by which a row of the plan, with all that is in it, comes to be from nothing.
func growth(plan *Plan, g *Group, at Place) []LogRow {
	rows := []LogRow{{What: LogAdd, Path: string(g.RowPath(at))}}
	entries := func(g *Group, at Place) {
		for _, f := range g.Fields {
			ref := Ref{Group: g, Field: f, Place: at}
			if text := logText(f, ref.Get(plan)); text != logText(f, Entry{}) {
				rows = append(rows, LogRow{What: LogSet, Path: string(ref.Path()), Old: logText(f, Entry{}), New: text})
			}
		}
	}
	entries(g, at)
	walk(plan, g.Lists, at, func(g *Group, at Place) bool {
		if g.List {
			rows = append(rows, LogRow{What: LogAdd, Path: string(g.RowPath(at))})
		}
		entries(g, at)
		return true
	})
	return rows
}

// reversed returns the rows that take back what rows of the log say.
func reversed(rows []LogRow) []LogRow {
	back := make([]LogRow, 0, len(rows))
	for i := len(rows) - 1; i >= 0; i-- {
		back = append(back, rows[i].reverse())
	}
	return back
}

// reverse returns the row that takes back what a row says.
func (r LogRow) reverse() LogRow {
	r.Old, r.New = r.New, r.Old
	switch r.What {
	case LogAdd:
		r.What = LogRemove
	case LogRemove:
		r.What = LogAdd
	}
	return r
}

// joined returns rows with those that follow each other on the same entry, by the same person, made one: of a value that was
// moved step by step only where it began and ended is kept. What ends where it began, a row added and removed again too, goes.
func joined(rows []LogRow) []LogRow {
	var kept []LogRow
	for _, r := range rows {
		n := len(kept)
		switch {
		case n == 0 || !kept[n-1].goesOn(&r):
			kept = append(kept, r)
		case r.What != LogSet || kept[n-1].Old == r.New:
			kept = kept[:n-1]
		default:
			r.Old = kept[n-1].Old
			if r.Why == "" {
				r.Why = kept[n-1].Why
			}
			kept[n-1] = r
		}
	}
	return kept
}

// goesOn reports whether another row carries on, or takes back, what a row does, so that the two can be one.
func (r *LogRow) goesOn(next *LogRow) bool {
	if r.Path != next.Path || r.Who != next.Who || r.Why != "" && next.Why != "" && r.Why != next.Why {
		return false
	}
	return r.What == LogSet && next.What == LogSet || r.What == LogAdd && next.What == LogRemove
}
