package ui

import (
	"cmp"
	"math"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/strip"
)

// stringPictures are the drawings of the string page that are no charts, with what keeps one from being made.
type stringPictures struct {
	stack calc.Stack
	strip calc.Strip
	faint string // why there is no stack-up
	loose string // why there is no strip
}

// ownPictures returns how many pictures of the page are no charts; they come before these.
func (p *Planner) ownPictures() int {
	if p.topic != model.TopicString || len(p.plan.Sections) == 0 {
		return 0
	}
	p.chartsHere()
	if p.charts.own == nil {
		own := &stringPictures{}
		var err error
		if own.stack, err = calc.StackUp(p.plan, p.section); err != nil {
			own.faint = err.Error()
		}
		if own.strip, err = calc.SpaceStrip(p.plan, p.section); err != nil {
			own.loose = err.Error()
		}
		p.charts.own = own
	}
	if p.charts.own.loose != "" {
		return 1
	}
	return 2
}

// drawOwn draws one of the pictures that are no charts.
func (p *Planner) drawOwn(r canvas.Region, at int, page string) {
	if at == 0 {
		p.drawStack(r, page)
	} else {
		p.drawStrip(r, page)
	}
}

// stackColumn is a column of the stack-up.
type stackColumn struct {
	head  string
	kind  quantity.Kind
	value func(*calc.StackRow) float64
	wide  bool // only where there is room
}

func stackColumns() []stackColumn {
	return []stackColumn{
		{"from bit", quantity.Length, func(r *calc.StackRow) float64 { return r.Up }, false},
		{"OD", quantity.Diameter, func(r *calc.StackRow) float64 { return r.OD }, true},
		{"widest", quantity.Diameter, func(r *calc.StackRow) float64 { return r.Widest }, false},
		{"ID", quantity.Diameter, func(r *calc.StackRow) float64 { return r.Drift }, false},
		{"comes by", quantity.Diameter, func(r *calc.StackRow) float64 { return r.Reached }, true},
		{"neck", quantity.Diameter, func(r *calc.StackRow) float64 { return r.Neck }, false},
		{"left", quantity.Diameter, func(r *calc.StackRow) float64 { return r.Clearance }, true},
	}
}

// Measures of the stack-up in columns.
const (
	stackDrawing = 10 // of the silhouette, with the mark of the neutral point
	stackNumber  = 9
	stackName    = 12 // at least
)

// drawStack draws the string top down: each part's silhouette, what is to the top of it from the bit, diameters and neck.
func (p *Planner) drawStack(r canvas.Region, page string) {
	own := p.charts.own
	r.TextRight(0, 0, r.W(), page, canvas.Faint)
	if own.faint != "" {
		r.Text(1, 0, "Stack-up", canvas.Heading)
		r.Text(1, 2, canvas.Cut(p.glyphs.Translate("blank: "+own.faint), r.W()-1), canvas.Caution)
		return
	}
	title := "Stack-up, bit at " + p.depthLabel(own.stack.TD) + " " + p.system.Unit(quantity.Length).Symbol() + ", sizes in " + p.system.Unit(quantity.Diameter).Symbol()
	r.Text(1, 0, canvas.Cut(p.glyphs.Translate(title), r.W()-canvas.Width(page)-2), canvas.Heading)
	var columns []stackColumn
	room := (r.W() - stackDrawing - stackName) / stackNumber
	for _, c := range stackColumns() {
		if (room >= len(stackColumns()) || !c.wide) && len(columns) < room {
			columns = append(columns, c)
		}
	}
	for k, c := range columns {
		r.TextRight(stackDrawing+k*stackNumber, 1, stackNumber-1, c.head, canvas.Faint)
	}
	foot := "widest: over blades or tool joints · left: what the narrowest bore above leaves beside that"
	if n := len(stackColumns()) - len(columns); n > 0 {
		foot = itoa(n) + " more columns in a wider window, or with z"
	}
	r.Text(1, r.H()-1, canvas.Cut(p.glyphs.Translate(foot), r.W()-1), canvas.Faint)
	p.drawStackRows(r.Sub(0, 2, r.W(), r.H()-3), columns)
}

// drawStackRows draws the parts; where they do not fit, the upper ones are left out.
func (p *Planner) drawStackRows(r canvas.Region, columns []stackColumn) {
	stack := &p.charts.own.stack
	widest := 0.0
	for k := range stack.Rows {
		widest = max(widest, stack.Rows[k].Widest)
	}
	rows := r.H()
	note := ""
	if !math.IsNaN(stack.Neutral) {
		note = "< neutral point at " + p.depthLabel(stack.Neutral) + " " + p.system.Unit(quantity.Length).Symbol()
		rows--
	}
	tall := max(1, min(2, rows/max(1, len(stack.Rows))))
	shown, y := min(len(stack.Rows), rows/tall), 0
	for k := shown - 1; k >= 0; k-- {
		row := &stack.Rows[k]
		for range tall {
			p.drawSilhouette(r, y, row, widest)
			y++
		}
		at := y - tall
		if row.Top <= stack.Neutral && stack.Neutral <= row.Top+row.Length {
			r.Text(stackDrawing-1, at, "<", canvas.Changed)
		}
		for c, column := range columns {
			r.TextRight(stackDrawing+c*stackNumber, at, stackNumber-1, quantity.Format(column.value(row), column.kind, p.system.Unit(column.kind)), canvas.Plain)
		}
		x := stackDrawing + len(columns)*stackNumber + 1
		r.Text(x, at, canvas.Cut(p.glyphs.Translate(cmp.Or(row.Name, row.Item)), r.W()-x), canvas.Plain)
	}
	if note != "" {
		r.Text(1, min(y, r.H()-1), canvas.Cut(p.glyphs.Translate(note), r.W()-1), canvas.Plain)
	}
}

// drawSilhouette draws one line of a part: its body, and blades or tool joints beyond it.
func (p *Planner) drawSilhouette(r canvas.Region, y int, row *calc.StackRow, widest float64) {
	const half = (stackDrawing - 2) / 2
	at := func(d float64) int {
		if !(d > 0) || !(widest > 0) {
			return 0
		}
		return max(1, int(math.Round(half*d/widest)))
	}
	body, out := at(row.OD), at(row.Widest)
	for x := range out {
		glyph := p.glyphs.Dark
		if x >= body {
			glyph = p.glyphs.Light
		}
		r.Put(half-1-x, y, glyph, canvas.Plain)
		r.Put(half+x, y, glyph, canvas.Plain)
	}
}

// drawStrip draws where tool joints stand against the rams.
func (p *Planner) drawStrip(r canvas.Region, page string) {
	own := p.charts.own
	unit := p.system.Unit(quantity.Length)
	r.TextRight(0, 0, r.W(), page, canvas.Faint)
	title := "Space-out, bit at " + p.depthLabel(own.strip.Bit) + " " + unit.Symbol() + " from RKB"
	r.Text(1, 0, canvas.Cut(p.glyphs.Translate(title), r.W()-canvas.Width(page)-2), canvas.Heading)
	lines := strip.Lines(&own.strip, func(m float64) string { return quantity.Format(m, quantity.Length, unit) }, r.H()-2)
	for k, line := range lines {
		r.Text(1, 1+k, canvas.Cut(p.glyphs.Translate(line), r.W()-1), canvas.Plain)
	}
	r.Text(1, r.H()-1, canvas.Cut("== ram  .. tide, heave  [] joint  ## across", r.W()-1), canvas.Faint)
}
