package catalogue

import (
	"strings"
	"testing"
)

// rowSources returns the source fields of every row, with their seen words.
func rowSources() [][2]string {
	var all [][2]string
	add := func(source, seen string) { all = append(all, [2]string{source, seen}) }
	for _, c := range casingRows() {
		add(c.Source, c.Seen)
		add(c.DimsSource, c.DimsSeen)
	}
	for _, p := range drillPipes() {
		add(p.Source, p.Seen)
	}
	for _, h := range heavyWeights() {
		add(h.Source, h.Seen)
	}
	for _, c := range collars() {
		add(c.Source, c.Seen)
	}
	for _, b := range bits() {
		add(b.Source, b.Seen)
		add(b.ToleranceSource, b.ToleranceSeen)
	}
	for _, l := range conduits() {
		add(l.Source, l.Seen)
	}
	return all
}

func TestEverySourceIsKnownAndUsed(t *testing.T) {
	used := make(map[string]bool)
	for _, row := range rowSources() {
		keys := strings.Split(row[0], "+")
		read := false
		for _, key := range keys {
			used[key] = true
			n, ok := Source(key)
			if !ok {
				t.Errorf("source %q has no note", key)
			}
			read = read || n.How == "read"
		}
		if row[1] == Seen && !read {
			t.Errorf("a row of %q is marked seen, but none of its sources was read", row[0])
		}
		if len(Sources(row[0])) != len(keys) {
			t.Errorf("Sources(%q) = %v, want %d notes", row[0], Sources(row[0]), len(keys))
		}
	}
	for _, n := range sourceNotes() {
		if !used[n.Key] {
			t.Errorf("source %q is not used by any row", n.Key)
		}
	}
	if len(sourceByKey()) != len(sourceNotes()) {
		t.Error("a source key is listed twice")
	}
}

func TestUnknownSource(t *testing.T) {
	if n, ok := Source("NOWHERE"); ok {
		t.Errorf("Source(NOWHERE) = %v, want none", n)
	}
	if n := Sources(""); n != nil {
		t.Errorf("Sources of nothing = %v, want none", n)
	}
}
