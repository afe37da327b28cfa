package model

import (
	"cmp"
	"strings"
)

// RowsSince returns how many rows of a log follow the last mark of a name. Without a mark the baseline is where the log begins; a
// handover that was signed marks itself.
func RowsSince(log []LogRow, mark string) (n int, ok bool) {
	for i := len(log) - 1; i >= 0; i-- {
		switch r := &log[i]; {
		case r.What == LogMark && r.New == mark:
			return len(log) - 1 - i, true
		case mark == MarkHandover && r.What == LogAdd && strings.HasPrefix(r.Path, handoverRows):
			for i++; i < len(log) && strings.HasPrefix(log[i].Path, r.Path+"."); i++ { // what was signed
			}
			return len(log) - i, true
		}
	}
	return len(log), mark == MarkBaseline
}

// What the paths of handovers and of the status of the well begin with.
const (
	handoverRows = "handover["
	statusRows   = "status."
)

// ChangesSince returns what a log says was changed since the last handover, a line each, the earliest first. Without a handover it is
// everything. How the well stands, and the handovers themselves, are no changes to the plan.
func ChangesSince(plan *Plan, log []LogRow) (lines []string) {
	n, ok := RowsSince(log, MarkHandover)
	if !ok {
		n = len(log)
	}
	rows := log[len(log)-n:]
	for _, l := range LogLines(rows) {
		r := &rows[l.Row]
		if r.What == LogMark || strings.HasPrefix(r.Path, handoverRows) || strings.HasPrefix(r.Path, statusRows) {
			continue
		}
		line := r.Words(plan)
		if r.Why != "" {
			line += " (" + r.Why + ")"
		}
		lines = append(lines, line)
	}
	return lines
}

// Words puts a row of the log in words: "section 3: Hole TD: 2155 m to 2170 m".
func (r *LogRow) Words(plan *Plan) string {
	where := PathWords(plan, Path(r.Path))
	switch r.What {
	case LogMark:
		return "mark: " + r.New
	case LogAdd:
		return where + " added"
	case LogRemove:
		return where + " removed"
	}
	return where + r.Change()
}

// Change says what stood in an entry, and what stands there now.
func (r *LogRow) Change() string {
	return ": " + cmp.Or(r.Old, "blank") + " to " + cmp.Or(r.New, "blank")
}
