package model

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"slices"
	"strings"
	"sync"
)

// LogRow is one line of the plan's log: an entry set, a row of a list added blank or removed when blank, or a mark. Each can be
// taken back, so that the log runs backwards and forwards; see Rewind and Replay.
type LogRow struct {
	Row
	When, Who, Why string // When as RFC 3339 in UTC
	What           string
	Path           string // of the entry or row; see Path
	Old, New       string // the entry as a file holds it; New of a mark is its name
	Hash           string // of the plan after a save, with the last row of it
}

// What a row of the log says was done.
const (
	LogSet    = "set"
	LogAdd    = "add"
	LogRemove = "remove"
	LogMark   = "mark"
)

// The marks that states are compared with, and the one that is made when a plan was changed outside the program.
const (
	MarkBaseline = "baseline"
	MarkHandover = "handover"
	MarkOutside  = "changed outside"
)

// LogGroup returns the log as a list of the file. It is none of Groups: nobody edits it, and no page shows it.
func LogGroup() *Group { return logGroup() }

var logGroup = sync.OnceValue(func() *Group {
	type d = declaration[LogRow]
	text := func(key, name, help string, at func(*LogRow) any) d {
		return d{Key: key, Label: name, Name: name, Type: TextField, Help: help, At: at}
	}
	return list("log", "Log row", "What was done to the plan.", TopicWell, nil, func(p *Plan, _ Place) *[]LogRow { return &p.Log },
		text("when", "When", "Date and time, UTC.", func(r *LogRow) any { return &r.When }),
		text("who", "Who", "Who did it.", func(r *LogRow) any { return &r.Who }),
		d{Key: "what", Label: "What", Name: "What was done", Choices: []string{LogSet, LogAdd, LogRemove, LogMark},
			Help: "An entry set, a row added or removed, or a mark.", At: func(r *LogRow) any { return &r.What }},
		text("path", "Where", "Address of the entry or of the row.", func(r *LogRow) any { return &r.Path }),
		text("old", "Old", "What stood there.", func(r *LogRow) any { return &r.Old }),
		text("new", "New", "What stands there now, or the name of a mark.", func(r *LogRow) any { return &r.New }),
		text("why", "Why", "The reason, if one was given.", func(r *LogRow) any { return &r.Why }),
		text("hash", "Hash", "What the entries come to after a save; see Hash.", func(r *LogRow) any { return &r.Hash }),
	)
})

// FileGroups returns what a plan's file holds: the groups of fields, and the log.
func FileGroups() []*Group { return append(slices.Clip(Groups()), LogGroup()) }

// LastLogged returns the index of the first row of the last edit in the log: of those that say the same of when and by whom.
func LastLogged(plan *Plan) int {
	from := len(plan.Log) - 1
	for from > 0 && plan.Log[from-1].When == plan.Log[from].When && plan.Log[from-1].Who == plan.Log[from].Who {
		from--
	}
	return max(0, from)
}

// Hash returns the SHA-256 of every entry's path and exact text, and of how many rows there are. What a file may leave out
// counts for nothing, so that a field that comes to be later leaves the hash as it was. The log is no part of it.
func Hash(plan *Plan) string {
	sum := sha256.New()
	write := func(parts ...string) {
		for _, part := range parts {
			io.WriteString(sum, part) // a hash takes whatever is written
			sum.Write([]byte{0})
		}
	}
	Walk(plan, func(g *Group, at Place) bool {
		path := string(g.RowPath(at))
		if g.List {
			write(path)
		}
		for _, f := range g.Fields {
			ref := Ref{Group: g, Field: f, Place: at}
			if text := logText(f, ref.Get(plan)); text != logText(f, Entry{}) {
				write(path, f.Key, text)
			}
		}
		return true
	})
	return hex.EncodeToString(sum.Sum(nil))
}

// ChangedOutside reports whether a plan is not what its log says that was saved last. Without a log nothing is known of that.
func ChangedOutside(plan *Plan) bool {
	n := len(plan.Log)
	return n > 0 && plan.Log[n-1].Hash != Hash(plan)
}

// logText returns an entry as the log holds it: just what a file that is read again gives back. A choice left blank is its
// default there.
func logText(f *Field, e Entry) string {
	if f.Type == ChoiceField && !e.IsSet() {
		return f.Default
	}
	return strings.TrimSpace(Clean(f.FileText(e)))
}

// logEntry reads what logText wrote.
func logEntry(f *Field, text string) (Entry, error) {
	if text == "" {
		return f.Absent(), nil
	}
	return f.Parse(text, 0)
}
