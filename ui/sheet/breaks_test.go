package sheet

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestPagesBreakWell holds pages to their height, headings to what stands below them, and every piece to stand once.
func TestPagesBreakWell(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const room = 20
		pieces := make([]piece, rapid.IntRange(0, 60).Draw(t, "pieces"))
		heads := -1
		for i := range pieces {
			p := &pieces[i]
			p.height, p.gap = float64(rapid.IntRange(1, 5).Draw(t, "height")), float64(rapid.IntRange(0, 1).Draw(t, "gap"))
			if p.hold = rapid.IntRange(0, 3).Draw(t, "hold") == 0; p.hold {
				heads = i
			} else if heads >= 0 && rapid.Bool().Draw(t, "again") {
				p.again = i - heads
			}
		}
		first := breakPages(pieces, room)
		if len(pieces) > 0 && (len(first) == 0 || first[0] != 0) {
			t.Fatalf("the first page begins at %v", first)
		}
		for n, from := range first {
			to := len(pieces)
			if n+1 < len(first) {
				to = first[n+1]
			}
			if from >= to {
				t.Fatalf("an empty page, %v", first)
			}
			height := 0.0
			if again := pieces[from].again; again > 0 {
				height = pieces[from-again].height
			}
			for i := from; i < to; i++ {
				height += pieces[i].height
				if i > from {
					height += pieces[i].gap
				}
			}
			if height > room {
				t.Fatalf("page %d is %g high", n+1, height)
			}
			if last := pieces[to-1]; last.hold && to < len(pieces) && !chain(pieces, to-1, room) {
				t.Fatalf("page %d ends in a heading", n+1)
			}
		}
	})
}

// chain reports whether pieces that are held together are too high for a page: then one of them ends it.
func chain(pieces []piece, at int, room float64) bool {
	from := at
	for from > 0 && pieces[from-1].hold {
		from--
	}
	height := 0.0
	for i := from; i <= min(at+1, len(pieces)-1); i++ {
		height += pieces[i].height + pieces[i].gap
	}
	if again := pieces[from].again; again > 0 {
		height += pieces[from-again].height
	}
	return height > room
}

// TestTheHeadsOfATallTableComeAgain on every page of text, and what is held together stays so.
func TestTheHeadsOfATallTableComeAgain(t *testing.T) {
	list := part{title: "Pieces", rowHead: "piece", tall: true}
	for range 150 {
		list.rows = append(list.rows, row{name: "joint", cells: []cell{{label: "length", unit: "m", value: "12.10", number: true}}})
	}
	var b strings.Builder
	if err := writeText(&b, []page{{title: "List", parts: []part{list}, foot: standing}}, stamp{well: "A-1", revision: "2", hash: "0123abcd"}); err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(b.String(), formFeed)
	if len(pages) != 3 {
		t.Fatalf("%d pages, want 3", len(pages))
	}
	rows := 0
	for n, text := range pages {
		rows += strings.Count(text, "12.10")
		if heads := strings.Count(text, "piece length\n"); heads != 1 {
			t.Errorf("the heads of the columns stand %d times on page %d", heads, n+1)
		}
		if lines := strings.Count(text, "\n"); lines > pageLines {
			t.Errorf("page %d has %d lines", n+1, lines)
		}
		if want := "A-1, rev 2, 0123abcd, " + pageOf(n+1, 3) + "\n"; !strings.HasPrefix(text, want) {
			t.Errorf("page %d begins %.40q, want %q", n+1, text, want)
		}
	}
	if rows != 150 {
		t.Errorf("%d rows are printed, want 150", rows)
	}
}
