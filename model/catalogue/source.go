package catalogue

import (
	"strings"
	"sync"
)

// SourceNote says what stands behind a source key of the catalogue.
type SourceNote struct {
	Key  string // as rows carry it
	What string // publication or page, and which figures if only some
	How  string // "read", "memory" or "computed"
}

var sourceNotes = loadOnce("SOURCES.csv", parseSource)

var sourceByKey = sync.OnceValue(func() map[string]SourceNote {
	notes := make(map[string]SourceNote)
	for _, n := range sourceNotes() {
		notes[n.Key] = n
	}
	return notes
})

// Source returns the note for one key. It reports false for a key that the
// catalogue does not use.
func Source(key string) (SourceNote, bool) {
	n, ok := sourceByKey()[key]
	return n, ok
}

// Sources returns the notes for the source field of a row, which holds one key
// or several joined by "+". Unknown keys are left out.
func Sources(keys string) []SourceNote {
	var notes []SourceNote
	for key := range strings.SplitSeq(keys, "+") {
		if n, ok := Source(key); ok {
			notes = append(notes, n)
		}
	}
	return notes
}

// parseSource reads SOURCES.csv.
func parseSource(name, text string) ([]SourceNote, error) {
	t := openTable(name, text, "key", "what", "how")
	var rows []SourceNote
	for t.next() {
		rows = append(rows, SourceNote{
			Key:  t.word("key"),
			What: t.word("what"),
			How:  t.choice("how", "read", "memory", "computed"),
		})
	}
	return rows, t.err
}
