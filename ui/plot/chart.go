package plot

import (
	"math"
	"slices"
	"strings"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// ChartOptions say how a chart is drawn.
type ChartOptions struct {
	Glyphs    canvas.Glyphs
	Page      string                                                 // which chart of how many; written beside the title
	Unit      func(k quantity.Kind) string                           // the unit shown
	Ticks     func(low, high float64, n int, k quantity.Kind) []Tick // about n round places between two values
	Value     func(si float64, k quantity.Kind) string               // a value in the unit shown, without the unit
	Place     func(si float64) string                                // a place along the axis in the unit shown, without the unit
	Cursor    float64                                                // a place along the axis to be marked when HasCursor is set
	HasCursor bool
}

// DrawChart draws a chart into a region of any size: title, one panel for each kind of quantity, the axis that they share, and
// the letters explained below. Limits have capital letters. Depths run down, everything else to the right. Without a curve it
// says so.
func DrawChart(r canvas.Region, c calc.Chart, o ChartOptions) {
	d := &charting{Chart: c, ChartOptions: o, r: r}
	d.title()
	if !d.read() || r.W() < leastColumns || r.H() < rowsForLegend {
		const nothing = "nothing to draw"
		r.Text(max((r.W()-len(nothing))/2, 0), r.H()/2, nothing, canvas.Plain)
		return
	}
	d.inHead = !c.Down && d.headingsHold(r.W()-usualSide)
	foot := 0
	if !d.inHead {
		foot = min(len(d.legendLines(r.W(), true)), max(1, (r.H()-rowsForPanels)/4)) // a high and narrow picture has rows for all its letters
	}
	body := r.Sub(0, 1, r.W(), r.H()-1-foot)
	met := false
	if c.Down {
		met = d.drawDown(body)
	} else {
		met = d.drawAlong(body)
	}
	legend := d.legendLines(r.W(), met)
	for i := range min(foot, len(legend)) {
		r.Text(0, r.H()-foot+i, legend[i], canvas.Plain)
	}
}

// charting is one chart being drawn.
type charting struct {
	calc.Chart
	ChartOptions
	r        canvas.Region
	panels   []panel
	from, to float64 // of the axis
	inHead   bool    // the letters are explained in the headings of the panels
}

func (d *charting) title() {
	page := d.Glyphs.Translate(d.Page)
	room := d.r.W() - 1
	if page != "" {
		room -= canvas.Width(page) + 2
		d.r.TextRight(0, 0, d.r.W(), page, canvas.Faint)
	}
	d.r.Text(1, 0, canvas.Squeeze(d.Glyphs.Translate(d.Title), room), canvas.Heading)
}

// read sorts the curves into panels by kind, each with a letter of its own, and reports whether there is something to draw.
func (d *charting) read() bool {
	d.from, d.to = math.Inf(1), math.Inf(-1)
	var taken []rune
	for _, c := range d.Curves {
		s := series{name: d.Glyphs.Translate(c.Name), points: c.Points, single: c.Single, level: c.Level, rank: mud, style: canvas.Mud}
		s.letter = letterFor(c.Name, taken)
		taken = append(taken, s.letter)
		if c.Limit {
			s.letter, s.rank, s.style = s.letter-'a'+'A', upperLimit, canvas.Fracture
		}
		at := slices.IndexFunc(d.panels, func(p panel) bool { return p.kind == c.Kind })
		if at < 0 {
			at = len(d.panels)
			d.panels = append(d.panels, panel{kind: c.Kind, down: d.Down, low: math.Inf(1), high: math.Inf(-1)})
		}
		d.panels[at].curves = append(d.panels[at].curves, s)
		for _, p := range c.Points {
			if known(p.At) && known(p.Value) {
				d.from, d.to = min(d.from, p.At), max(d.to, p.At)
				d.panels[at].low, d.panels[at].high = min(d.panels[at].low, p.Value), max(d.panels[at].high, p.Value)
			}
		}
	}
	d.panels = slices.DeleteFunc(d.panels, func(p panel) bool { return !(p.high >= p.low) })
	for i := range d.panels {
		d.panels[i].from, d.panels[i].to = d.from, d.to
		d.panels[i].round(d.Value)
	}
	return d.to > d.from
}

// letterFor returns the first letter of a name that no other curve has, else any that is free.
func letterFor(name string, taken []rune) rune {
	for _, ch := range name + "abcdefghijklmnopqrstuvwyz" {
		if ch >= 'A' && ch <= 'Z' {
			ch += 'a' - 'A'
		}
		if ch >= 'a' && ch <= 'z' && ch != 'x' && !slices.Contains(taken, ch) {
			return ch
		}
	}
	return 'z'
}

// legendLines explains the letters, that of a curve on a limit too when there is one, on as many lines as it takes.
func (d *charting) legendLines(width int, met bool) (lines []string) {
	line := ""
	for i := range d.panels {
		for _, sign := range d.panels[i].signs(met && i == len(d.panels)-1) {
			if line != "" && canvas.Width(line)+2+canvas.Width(sign) > width {
				lines, line = append(lines, line), ""
			}
			if line != "" {
				line += "  "
			}
			line += sign
		}
	}
	return append(lines, line)
}

// signs explains the letters of a panel.
func (p *panel) signs(met bool) (signs []string) {
	for _, s := range p.curves {
		signs = append(signs, string(s.letter)+" "+s.name)
	}
	if met {
		signs = append(signs, string(crossingLetter)+" near a limit")
	}
	return signs
}

// heading names what a panel shows, with its unit, and where there is room with its letters.
func (d *charting) heading(p *panel, met bool) string {
	name := p.kind.String()
	if p.kind == quantity.EMW {
		name = "EMW"
	}
	name = d.Glyphs.Translate(name + " " + d.Unit(p.kind))
	if !d.inHead {
		return name
	}
	return name + ": " + strings.Join(p.signs(met), "  ")
}

// usualSide is the room that the values at the left take at most as a rule.
const usualSide = 8

// headingsHold reports whether the headings of all panels have room for the letters.
func (d *charting) headingsHold(width int) bool {
	d.inHead = true
	return !slices.ContainsFunc(d.panels, func(p panel) bool { return canvas.Width(d.heading(&p, true)) > width })
}

// axisName names the axis that the panels share, with its unit.
func (d *charting) axisName() string { return d.Glyphs.Translate(d.Axis + " " + d.Unit(d.Along)) }

// inRange returns the marks that lie on the axis.
func (d *charting) inRange() (marks []calc.ChartMark) {
	for _, m := range d.Marks {
		if m.At >= d.from && m.At <= d.to {
			marks = append(marks, m)
		}
	}
	return marks
}
