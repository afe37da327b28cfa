package ui

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/schematic"
)

// View implements tea.Model.
func (p *Planner) View() string {
	p.draw()
	return p.grid.Render(p.palette)
}

// draw draws the state on the grid.
func (p *Planner) draw() {
	p.drawn = new(drawn)
	defer func() { p.drawn = nil }()
	p.grid.Resize(p.width, p.height)
	all := p.grid.All()
	if p.tooSmall() {
		p.drawTooSmall(all)
		return
	}
	l := p.layout()
	p.drawHeader(all, l)
	if u, ok := p.overlay.(*handing); ok {
		u.drawWhole(p, all)
		return
	}
	if l.schematic.w > 0 {
		p.drawSchematic(l.schematic.of(all))
		all.VLine(l.schematic.w, l.schematic.y, l.schematic.h, p.glyphs.Vertical, canvas.Faint)
	}
	switch {
	case p.overlay != nil:
		p.overlay.draw(p, l.page.of(all))
	case p.view == viewTable:
		p.drawTable(l.page.of(all))
	case p.view == viewPicture:
		p.drawPicture(l.page.of(all))
	default:
		p.drawFields(l.fields.of(all))
		all.VLine(l.figures.x-1, l.figures.y, l.figures.h, p.glyphs.Vertical, canvas.Faint)
		p.drawFigures(l.figures.of(all))
		if l.plot.w > 0 {
			all.VLine(l.plot.x-1, l.plot.y, l.plot.h, p.glyphs.Vertical, canvas.Faint)
			p.drawPicture(l.plot.of(all))
		}
	}
	p.drawFooter(all, l)
}

func (p *Planner) tooSmall() bool { return p.width < leastWidth || p.height < leastHeight }

func (p *Planner) drawTooSmall(r canvas.Region) {
	for i, l := range wrap(fmt.Sprintf("The window is %d x %d; the planner needs %d x %d. Make it larger; nothing is lost. ctrl c quits.",
		p.width, p.height, leastWidth, leastHeight), max(1, r.W())) {
		r.Text(0, i, l, canvas.Plain)
	}
	if p.overlay == nil {
		return
	}
	lines := []string{"A question is open: make the window larger to see it."}
	if u, ok := p.overlay.(*menu); ok && u.small {
		lines = []string{u.title + ":"}
		for i, it := range u.items {
			mark := "  "
			if i == u.at {
				mark = string(p.glyphs.Mark) + " "
			}
			lines = append(lines, mark+it.text)
		}
	}
	for i, l := range lines {
		r.Text(0, r.H()-len(lines)+i, p.glyphs.Translate(canvas.Clip(l, r.W())), canvas.Plain)
	}
}

// drawHeader draws the title, the sections and the pages; over a page alone the title names it.
func (p *Planner) drawHeader(r canvas.Region, l layout) {
	state := canvas.Cut(p.glyphs.Translate(p.standing(r.W()/2)), r.W()/2)
	room := r.W() - canvas.Width(state) - 3
	section := ""
	if n := len(p.plan.Sections); n > 0 {
		section = fmt.Sprintf("   section %d of %d   %s", p.section+1, n, p.plan.Sections[p.section].Name)
	}
	if l.page.y == titleRows {
		section = strings.Replace(section, "   ", "   ["+strings.ToUpper(p.topic.String())+"]   ", 1)
	}
	// A long name of the well leaves room to see which section is open.
	name := canvas.Cut(p.glyphs.Translate(p.name()), max(room-1-canvas.Width(section), room/3))
	r.Text(0, 0, canvas.Cut(" "+name+p.glyphs.Translate(section), room), canvas.Title)
	r.TextRight(0, 0, r.W()-1, state, canvas.Changed)
	if l.page.y == headerRows {
		p.drawSections(r.Sub(0, 1, r.W(), 1))
		p.drawPages(r.Sub(0, 2, r.W(), 1))
	}
}

// state says on papers where the plan stands: what it came from, and whether something is not saved.
func (p *Planner) state() string {
	state := p.called()
	if p.history.Dirty() {
		state = strings.TrimSpace(state + " * not saved")
	}
	return state
}

// drawSections draws a tag for each section with its hole size, and the count of findings.
func (p *Planner) drawSections(r canvas.Region) {
	_, count := p.result.Worst(-1)
	counts := fmt.Sprintf("stop %d  caution %d  ok %d", count[calc.Stop], count[calc.Caution], count[calc.OK])
	style := canvas.OK
	switch {
	case count[calc.Stop] > 0:
		style = canvas.Stop
	case count[calc.Caution] > 0:
		style = canvas.Caution
	}
	r.TextRight(0, 0, r.W()-1, counts, style)
	x, room := 1, r.W()-canvas.Width(counts)-4
	first := 0
	for first < p.section && p.sectionTags(first, p.section) > room {
		first++
	}
	for i := first; i < len(p.plan.Sections); i++ {
		tag := p.sectionTag(i)
		if x+canvas.Width(tag) > room {
			r.Text(x, 0, "..", canvas.Plain)
			break
		}
		style := canvas.Plain
		if i == p.section {
			style = canvas.Focus
		}
		x = r.Text(x, 0, tag, style) + 1
	}
}

func (p *Planner) sectionTags(from, to int) (width int) {
	for i := from; i <= to; i++ {
		width += canvas.Width(p.sectionTag(i)) + 1
	}
	return width
}

// sectionTag names a section by its hole, the one being worked in brackets, with a mark for its worst finding.
func (p *Planner) sectionTag(i int) string {
	s := &p.plan.Sections[i]
	text := fmt.Sprint(i + 1)
	if s.Hole.IsSet() {
		text += " " + quantity.Format(s.Hole.SI, quantity.Diameter, p.system.Unit(quantity.Diameter))
	}
	if worst, _ := p.result.Worst(i); worst > calc.OK {
		text += p.severityMark(worst)
	}
	if !p.result.Sketch.Sections[i].OK {
		text += "?" // neither depths nor findings
	}
	if i == p.section {
		return "[" + text + "]"
	}
	return " " + text + " "
}

func (p *Planner) severityMark(s calc.Severity) string {
	if s == calc.Stop {
		return "!!"
	}
	return "!"
}

// drawPages draws the names of the pages on the rule above them, the open one in capitals, and the units shown. In a narrow window
// the names stand without the rule between them, then without the units, then close together.
func (p *Planner) drawPages(r canvas.Region) {
	r.HLine(0, 0, r.W(), p.glyphs.Horizontal, canvas.Faint)
	units := " " + p.set.String() + " units "
	if p.ownUnits() {
		units = " plan's units "
	}
	const left, right = 2, 1
	room := r.W() - left - right
	if namesWidth() > room {
		p.drawPagesClose(r)
		return
	}
	if namesWidth() > room-len(units) {
		units = ""
	}
	x, between := left, min(1, (room-len(units)-namesWidth())/(len(model.Topics())+1))
	for _, t := range model.Topics() {
		name, style := " "+t.String()+" ", canvas.Plain
		if t == p.topic {
			name, style = "["+strings.ToUpper(t.String())+"]", canvas.Heading
		}
		x = r.Text(x, 0, name, style) + between
	}
	if units != "" {
		r.TextRight(x, 0, r.W()-right-between-x, units, canvas.Faint)
	}
}

// drawPagesClose draws the names of the pages where they have no room with their brackets: a blank apart, the units left out, and
// as many as fit from the first that lets the open one be seen.
func (p *Planner) drawPagesClose(r canvas.Region) {
	first, topics := 0, model.Topics()
	for first < int(p.topic) && closeWidth(topics[first:p.topic+1]) > r.W()-len("..") {
		first++
	}
	x := 0
	for _, t := range topics[first:] {
		name, style := shortPage(t), canvas.Plain
		if t == p.topic {
			name, style = "["+strings.ToUpper(name)+"]", canvas.Heading
		} else {
			name = " " + name
		}
		if x+len(name) > r.W() {
			r.Text(r.W()-len(".."), 0, "..", canvas.Plain)
			return
		}
		x = r.Text(x, 0, name, style)
	}
}

// closeWidth returns the columns that pages take when drawn close.
func closeWidth(topics []model.Topic) (width int) {
	for _, t := range topics {
		width += len(shortPage(t)) + 1
	}
	return width + 1
}

// shortPage returns the name of a page where there is little room.
func shortPage(t model.Topic) string {
	if t == model.TopicHydraulics {
		return "hydr"
	}
	return t.String()
}

// namesWidth returns the columns that the names of the pages take.
func namesWidth() (width int) {
	for _, t := range model.Topics() {
		width += len(t.String()) + len("[]")
	}
	return width
}

func (p *Planner) drawSchematic(r canvas.Region) {
	o := schematic.Options{
		Section: p.section, Whole: p.whole, TrueScale: p.scale, Glyphs: p.glyphs,
		Depth: func(m float64) string { return p.depthLabel(m) },
		Size: func(m float64) string {
			return quantity.Format(m, quantity.Diameter, p.system.Unit(quantity.Diameter))
		},
	}
	o.Mark, o.HasMark = p.markedDepth()
	switch u := p.overlay.(type) {
	case *player:
		o.State, o.HasMark = u.state(), false
	case *walking:
		o.State, o.HasMark, o.Section = u.state(), false, u.section
	}
	schematic.Draw(r, p.result.Sketch, o)
}

// depthLabel writes a depth to the whole unit, for labels.
func (p *Planner) depthLabel(m float64) string {
	return fmt.Sprintf("%.0f", p.system.Unit(quantity.Length).FromSI(m))
}

// markedDepth returns the depth along hole of the entry in focus, to be marked on the schematic.
func (p *Planner) markedDepth() (float64, bool) {
	ref := p.focused().ref
	if p.edit != nil {
		ref = p.edit.ref
	}
	if p.figures && p.edit == nil {
		if f, ok := p.focusedFigure(); ok && f.OK && f.Kind == quantity.Length && strings.HasPrefix(f.Group, "Depths") {
			return f.Value, true
		}
		return 0, false
	}
	if ref.Field == nil || ref.Field.Kind != quantity.Length || ref.Field.Type != model.QuantityField {
		return 0, false
	}
	if ref.Field.Moves == model.WithWell {
		return ref.Get(p.plan).Quantity.SI, ref.Get(p.plan).IsSet()
	}
	switch ref.Field.Key {
	case "water_depth", "air_gap":
		return p.result.Datum.Mudline, p.result.Datum.OK
	}
	return p.markedInSection(ref.Field.Key)
}

// markedInSection returns the depth that a length of the section being worked is measured from or to.
func (p *Planner) markedInSection(key string) (float64, bool) {
	sections := p.result.Sketch.Sections
	if p.section >= len(sections) {
		return 0, false
	}
	s := &sections[p.section]
	switch key {
	case "rathole", "shoe_track":
		return s.Shoe, s.String
	case "opener_behind":
		return s.Opened, s.OK
	}
	return 0, false
}
