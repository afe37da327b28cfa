// Package strip draws the space-out strip as lines of plain text: rams and tool joints to scale, as the string hangs from the
// rig and, beside it, as it is hung off. The screen and the printed sheet show the same lines.
package strip

import (
	"math"
	"strings"

	"borewalk/calc"
)

// cellWidth is how wide each of the two drawings is, in columns.
const cellWidth = 30

// Lines returns the strip, top down, at most so many lines: the depth at the left, as depth writes it, then the drawings. "||" is
// the body of the pipe, "[]" a tool joint, "==" a ram at mean sea level, ".." where tide and heave bring it, "##" where it
// would meet a tool joint. The names of rams may hold any text.
func Lines(s *calc.Strip, depth func(float64) string, most int) []string {
	high, deep, any := ends(s.Marks)
	if !any || most < 3 {
		return nil
	}
	step := scale((deep - high) / float64(most-2))
	high = math.Floor(high/step) * step
	var list []string
	wide := 0
	for n := range most - 1 {
		wide = max(wide, len(depth(high+float64(n)*step)))
	}
	head := strings.Repeat(" ", wide) + " " + pad("from the rig", cellWidth)
	if len(s.Hung) > 0 {
		head += "hung off"
	}
	list = append(list, strings.TrimRight(head, " "))
	for n := 0; n < most-1 && high+float64(n)*step < deep+step; n++ {
		from := high + float64(n)*step
		label := depth(from)
		line := strings.Repeat(" ", wide-len(label)) + label + " " + pad(cell(s.Marks, from, step), cellWidth)
		if len(s.Hung) > 0 {
			line += cell(s.Hung, from, step)
		}
		list = append(list, strings.TrimRight(line, " "))
	}
	return list
}

// ends returns the depths between which rams get.
func ends(marks []calc.StripMark) (high, deep float64, any bool) {
	high, deep = math.Inf(1), math.Inf(-1)
	for _, m := range marks {
		if m.Ram {
			high, deep, any = min(high, m.Shallowest), max(deep, m.Deepest), true
		}
	}
	return high, deep, any && !math.IsNaN(deep-high) && !math.IsInf(deep-high, 0)
}

// scale returns a round length in m for a line that is at least so long.
func scale(least float64) float64 {
	for _, step := range []float64{0.25, 0.5, 1, 2, 5, 10} {
		if step >= least {
			return step
		}
	}
	return max(20, least)
}

// cell draws what is between two depths.
func cell(marks []calc.StripMark, from, step float64) string {
	body, side, name := "||", "  ", ""
	in := func(top, bottom float64) bool { return top < from+step && bottom > from }
	for _, m := range marks {
		if !m.Ram && in(m.Shallowest, m.Deepest) {
			body = "[]"
		}
	}
	for _, m := range marks {
		switch {
		case !m.Ram:
		case m.Depth >= from && m.Depth < from+step:
			side, name = "==", name+" "+m.Name
			if m.Holds {
				name += ", holds"
			}
		case side == "  " && !m.Annular && in(m.Shallowest, m.Deepest):
			side = ".."
		}
		if m.Ram && !m.Annular && !m.Holds && meets(marks, m, in) {
			side = "##"
		}
	}
	return side + body + side + name
}

// meets reports whether between two depths a ram gets across a tool joint.
func meets(marks []calc.StripMark, ram calc.StripMark, in func(top, bottom float64) bool) bool {
	for _, m := range marks {
		top, bottom := max(m.Shallowest, ram.Shallowest), min(m.Deepest, ram.Deepest)
		if !m.Ram && top < bottom && in(top, bottom) {
			return true
		}
	}
	return false
}

// pad fills or cuts text to a width.
func pad(text string, width int) string {
	r := []rune(text)
	if len(r) > width-1 {
		return string(r[:width-1]) + " "
	}
	return text + strings.Repeat(" ", width-len(r))
}
