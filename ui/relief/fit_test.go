package relief

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

func plain(s calc.Severity) string { return [...]string{"", "!", "!!"}[s] }

// TestFitKeepsToItsSize: whatever is said, no line is wider than it may be, every row has a line, there are no more lines than fit while that
// can be, and nothing is left out where there is room.
func TestFitKeepsToItsSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := make([]Row, rapid.IntRange(1, 8).Draw(t, "rows"))
		said := 0
		for k := range rows {
			rows[k] = Row{Label: "Label", Each: rapid.Bool().Draw(t, "each"), Least: rapid.IntRange(0, 3).Draw(t, "least")}
			for range rapid.IntRange(1, 5).Draw(t, "items") {
				text := strings.Join(rapid.SliceOfN(rapid.StringMatching(`[a-z0-9.]{1,12}`), 1, 9).Draw(t, "words"), " ")
				rows[k].Items = append(rows[k].Items, Item{text, calc.Severity(rapid.IntRange(0, 2).Draw(t, "severity"))})
				said += len(strings.Fields(text))
			}
		}
		width, height := rapid.IntRange(24, 100).Draw(t, "width"), rapid.IntRange(1, 60).Draw(t, "height")
		set := Fit(rows, width, height, ";", plain)
		lines, words, cuts := 0, 0, 0
		for k := range set {
			if len(set[k]) == 0 || set[k][0].Label != "Label" {
				t.Fatalf("row %d: %v", k, set[k])
			}
			lines += len(set[k])
			for _, l := range set[k] {
				text := l.Text()
				if canvas.Width(text) > width {
					t.Fatalf("%q is wider than %d", text, width)
				}
				if strings.HasSuffix(text, cut) {
					cuts++
				}
				for _, w := range strings.Fields(strings.TrimSuffix(text, cut)) {
					if strings.Trim(w, "!;") != "" {
						words++
					}
				}
			}
		}
		if lines > height && lines > len(rows) {
			t.Fatalf("%d lines of %d rows, %d fit", lines, len(rows), height)
		}
		if cuts == 0 && words != said {
			t.Fatalf("%d words of %d, and no row says that it is cut", words, said)
		}
	})
}

// TestRowsKeepTheirLeast: the rows with more than their least are cut, the later one first where they are alike.
func TestRowsKeepTheirLeast(t *testing.T) {
	long := Item{Text: strings.Repeat("word ", 20)} // three lines of 40 columns
	rows := []Row{{Label: "a", Items: []Item{long}}, {Label: "b", Items: []Item{long}, Least: 3}, {Label: "c", Items: []Item{long}}}
	for _, c := range []struct{ height, a, b, c int }{{9, 3, 3, 3}, {8, 3, 3, 2}, {7, 2, 3, 2}, {5, 1, 3, 1}, {4, 1, 2, 1}, {1, 1, 1, 1}} {
		set := Fit(rows, 40, c.height, ";", plain)
		if len(set[0]) != c.a || len(set[1]) != c.b || len(set[2]) != c.c {
			t.Errorf("in %d lines: %d, %d, %d, want %d, %d, %d", c.height, len(set[0]), len(set[1]), len(set[2]), c.a, c.b, c.c)
		}
	}
}

// TestAReasonStandsOnceAmongTheRows: most rows are blank for one reason as long as no section is in work.
func TestAReasonStandsOnceAmongTheRows(t *testing.T) {
	plan := new(model.Plan)
	said := map[string]int{}
	for _, r := range Rows(plan, calc.Evaluate(plan), quantity.System{}, nil) {
		for _, it := range r.Items {
			if strings.HasPrefix(it.Text, "blank: ") {
				said[it.Text]++
			}
		}
	}
	if len(said) == 0 {
		t.Error("nothing is blank")
	}
	for text, n := range said {
		if n != 1 {
			t.Errorf("%q stands there %d times", text, n)
		}
	}
}
