package relief

import (
	"strings"

	"borewalk/calc"
	"borewalk/ui/canvas"
)

// Line is a line of a row: its label where it begins, and what is said on it.
type Line struct {
	Label string
	Items []Item
}

// Text returns what is said on a line.
func (l Line) Text() string {
	text := ""
	for _, it := range l.Items {
		text += it.Text
	}
	return text
}

// cut stands behind a row that is cut short.
const cut = " .."

// Fit sets rows in lines of a width, at most so many: where there are more, the rows that take most are cut short, first those with
// more than their least, the later ones first. Each row says one line, and one that is cut says so. Mark is put before an item that
// something is found about, between behind one that is followed by another.
func Fit(rows []Row, width, height int, between string, mark func(calc.Severity) string) [][]Line {
	set := make([][]Line, len(rows))
	total := 0
	for k, r := range rows {
		set[k] = r.wrapped(width, between, mark)
		total += len(set[k])
	}
	for _, kept := range []bool{true, false} {
		for total > height {
			longest, most := -1, 0
			for k := range set {
				least := 1
				if kept {
					least = max(1, rows[k].Least)
				}
				if n := len(set[k]); n > least && n-least >= most {
					longest, most = k, n-least
				}
			}
			if longest < 0 {
				break
			}
			set[longest] = shortened(set[longest], width)
			total--
		}
	}
	return set
}

// wrapped sets a row in lines of a width, broken between words.
func (r Row) wrapped(width int, between string, mark func(calc.Severity) string) []Line {
	lines := []Line{{Label: r.Label}}
	used := 0
	add := func(text string, severity calc.Severity) {
		l := &lines[len(lines)-1]
		if n := len(l.Items); n > 0 && l.Items[n-1].Severity == severity {
			l.Items[n-1].Text += text
		} else {
			l.Items = append(l.Items, Item{text, severity})
		}
		used += canvas.Width(text)
	}
	for k, it := range r.Items {
		words := strings.Fields(mark(it.Severity) + " " + it.Text)
		if r.Each && k > 0 {
			lines, used = append(lines, Line{}), 0
		}
		for n, word := range words {
			if last := n == len(words)-1 && k < len(r.Items)-1; last && !r.Each {
				word += between
			}
			lead := ""
			if used > 0 {
				lead = " "
			}
			over := used + canvas.Width(lead) + canvas.Width(word) - width
			if r.Each && used > 0 && over+canvas.Width(cut) > 0 {
				add(cut, calc.OK)
				break
			}
			if used > 0 && over > 0 {
				lines, used, lead = append(lines, Line{}), 0, ""
			}
			add(lead, calc.OK)
			add(canvas.Clip(word, width), it.Severity)
		}
	}
	return lines
}

// shortened leaves out the last line and says so on the one before.
func shortened(lines []Line, width int) []Line {
	lines = lines[:len(lines)-1]
	last := &lines[len(lines)-1]
	room := width - canvas.Width(cut)
	var kept []Item
	for _, it := range last.Items {
		if it.Text = canvas.Clip(it.Text, room); it.Text == "" {
			continue
		}
		room -= canvas.Width(it.Text)
		kept = append(kept, it)
	}
	if n := len(kept); n > 0 {
		kept[n-1].Text = strings.TrimSuffix(kept[n-1].Text, cut)
	}
	last.Items = append(kept, Item{Text: cut})
	return lines
}
