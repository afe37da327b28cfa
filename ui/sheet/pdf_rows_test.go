package sheet

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

// TestRowsThatDoNotFitAPage are broken over pages, whatever they hold, and no piece is higher than a page.
func TestRowsThatDoNotFitAPage(t *testing.T) {
	long := strings.Repeat("word ", 800)
	words := part{title: "Words", rowHead: "name"}
	for range 3 {
		words.rows = append(words.rows, row{name: long[:400], cells: []cell{{label: "one", value: long}, {label: "two", value: long}, {label: "three", value: "3 m", number: true}}})
	}
	numbers := part{title: "Numbers", rowHead: "name"}
	for range 120 {
		numbers.rows = append(numbers.rows, row{name: "row", cells: []cell{{label: "depth", value: "1200 m", number: true}, {label: "note", value: "dry"}}})
	}
	paper := page{title: "Long", head: []pair{{"Entry", long}}, parts: []part{words, numbers}, foot: standing}
	sheet := newPDFSheet(newPen(time.Time{}), &paper)
	for i, p := range sheet.pieces {
		if p.height > bodyHeight {
			t.Errorf("piece %d is %g mm high", i, p.height)
		}
	}
	var b bytes.Buffer
	if err := writePDF(&b, []page{paper}, stamp{well: long, revision: long, hash: long, printed: long}, time.Time{}); err != nil || b.Len() == 0 {
		t.Errorf("%d bytes, %v", b.Len(), err)
	}
	heads := 0
	for _, from := range breakPages(sheet.pieces, bodyHeight) {
		if sheet.pieces[from].again > 0 {
			heads++
		}
	}
	if heads < 2 { // 120 rows of 4 mm take two pages and more
		t.Errorf("the heads of the columns come again on %d pages", heads)
	}
}
