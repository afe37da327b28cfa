package sheet

import (
	"io"
	"slices"
	"strings"
)

// Measures of a page of text, in lines.
const (
	pageLines = 60            // of a page
	longPage  = 66            // of a sheet of letter paper at six lines to the inch: for what must stand on one page
	bodyLines = pageLines - 2 // without the running head and the blank below it
	longBody  = longPage - 1  // without the running head, for there is no room for a blank
	smallPart = bodyLines / 5 // a part up to this height is not parted
)

// formFeed begins every page but the first.
const formFeed = "\f"

// writeText writes papers, each from a new page on, and every page with the same line at its head.
func writeText(w io.Writer, papers []page, s stamp) error {
	var pages [][]string
	for _, paper := range papers {
		var t textSheet
		t.page(paper)
		pages = append(pages, t.broken(paper.whole)...)
	}
	var b strings.Builder
	for n, lines := range pages {
		if n > 0 {
			b.WriteString(formFeed)
		}
		b.WriteString(s.line(n+1, len(pages)) + "\n")
		b.WriteString(strings.Join(lines, "\n") + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// broken returns the lines of each page below the running head; whole is a paper to be kept on one page.
func (t *textSheet) broken(whole bool) (pages [][]string) {
	head, room := []string{""}, bodyLines
	if whole {
		head, room = nil, longBody
	}
	first := breakPages(t.pieces, float64(room))
	for n, from := range first {
		to := len(t.pieces)
		if n+1 < len(first) {
			to = first[n+1]
		}
		lines := slices.Clone(head)
		if again := t.pieces[from].again; again > 0 {
			lines = append(lines, t.lines[from-again]...)
		}
		for i := from; i < to; i++ {
			if i > from {
				lines = append(lines, make([]string, int(t.pieces[i].gap))...)
			}
			lines = append(lines, t.lines[i]...)
		}
		pages = append(pages, lines)
	}
	return pages
}
