package model

import (
	"fmt"
	"slices"
)

// Misfit is a row of the log that does not fit the plan, as happens where a file was changed outside the program.
type Misfit struct {
	Row int // index in the log
	Why string
}

// String says which row does not fit, and why.
func (m Misfit) String() string { return fmt.Sprintf("log row %d: %s", m.Row+1, m.Why) }

// Rewind returns the plan as it was before the last n rows of its log, and what of the log did not fit on the way. What does not
// fit is left as it is; an entry that is not what the log says is set to what it was before all the same. The plan itself stays.
func Rewind(plan *Plan, n int) (*Plan, []Misfit) {
	then := plan.Clone()
	n = max(0, min(n, len(plan.Log)))
	keep := len(plan.Log) - n
	then.Log = slices.Clip(then.Log[:keep])
	var misfits []Misfit
	for i := len(plan.Log) - 1; i >= keep; i-- {
		if why := obey(then, plan.Log[i].reverse()); why != "" {
			misfits = append(misfits, Misfit{Row: i, Why: why})
		}
	}
	return then, misfits
}

// Replay returns the plan as it is after rows of a log, which it has in its own then, and which of them did not fit.
func Replay(plan *Plan, rows []LogRow) (*Plan, []Misfit) {
	then := plan.Clone()
	then.Log = slices.Concat(plan.Log, rows)
	var misfits []Misfit
	for i, r := range rows {
		if why := obey(then, r); why != "" {
			misfits = append(misfits, Misfit{Row: len(plan.Log) + i, Why: why})
		}
	}
	return then, misfits
}

// obey does to a plan what a row of the log says, and returns what does not fit.
func obey(plan *Plan, r LogRow) string {
	switch r.What {
	case LogMark:
		return ""
	case LogSet:
		return obeySet(plan, r)
	case LogAdd, LogRemove:
		return obeyRow(plan, r)
	}
	return fmt.Sprintf("%q is nothing that is done", Clean(r.What))
}

func obeySet(plan *Plan, r LogRow) string {
	ref, ok := Find(plan, Path(r.Path))
	if !ok {
		return Clean(r.Path) + " is no entry of the plan"
	}
	entry, err := logEntry(ref.Field, r.New)
	if err != nil {
		return fmt.Sprintf("%s: %v", ref.Path(), err)
	}
	found := logText(ref.Field, ref.Get(plan))
	ref.Set(plan, entry)
	if was, err := logEntry(ref.Field, r.Old); err != nil || logText(ref.Field, was) != found {
		return fmt.Sprintf("%s is %s, and %s by the log", ref.Path(), blankly(found), blankly(r.Old))
	}
	return ""
}

// obeyRow adds a blank row or takes one away.
func obeyRow(plan *Plan, r LogRow) string {
	g, at, ok := FindRow(plan, Path(r.Path))
	if !ok || r.What == LogRemove && g.Index(at) == g.Len(plan, at) {
		return Clean(r.Path) + " is no row of the plan"
	}
	if r.What == LogAdd {
		g.insert(plan, at, g.blank())
		return ""
	}
	filled := len(growth(plan, g, at)) > 1
	g.remove(plan, at)
	if filled {
		return string(g.RowPath(at)) + " was not blank"
	}
	return ""
}

func blankly(text string) string {
	if text == "" {
		return "blank"
	}
	return Clean(text)
}
