package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/plot"
)

// The player shows a chart beside the gauges on a page so wide; on a narrower one the chart takes the page.
const chartBeside = 100

// draw draws the events and plugs, the gauges, and beside them or in their place a chart.
func (u *player) draw(p *Planner, r canvas.Region) {
	r.Fill(' ', canvas.Plain)
	n := len(u.chartsIn(p))
	if r.W() >= chartBeside && n > 0 {
		width := r.W() / 3
		u.drawChart(p, r.Sub(r.W()-width, 0, width, r.H()), u.chart%n)
		r.VLine(r.W()-width-1, 0, r.H(), p.glyphs.Vertical, canvas.Faint)
		r = r.Sub(0, 0, r.W()-width-1, r.H())
	} else if at := u.chart % (n + 1); at > 0 {
		u.drawChart(p, r, at-1)
		return
	}
	events := min(max(r.W()/3+3, 23), 28)
	plugs := u.frame().Plugs
	if len(plugs) > 0 {
		u.drawPlugs(p, r.Sub(0, r.H()-1-len(plugs), events, 1+len(plugs)))
		u.drawEvents(p, r.Sub(0, 0, events, r.H()-1-len(plugs)))
	} else {
		u.drawEvents(p, r.Sub(0, 0, events, r.H()))
	}
	r.VLine(events, 0, r.H(), p.glyphs.Vertical, canvas.Faint)
	u.drawGauges(p, r.Sub(events+1, 0, r.W()-events-1, r.H()))
}

// chartsIn returns the chart of the job where it has one, and in a low window what it holds by itself as well.
func (u *player) chartsIn(p *Planner) []calc.Chart {
	if p.flat() {
		return u.charts
	}
	return u.charts[:min(1, len(u.charts))]
}

// drawChart draws a chart of the job with the present volume marked.
func (u *player) drawChart(p *Planner, r canvas.Region, at int) {
	list := u.chartsIn(p)
	o := p.chartOptions(pageOf(at, len(list)))
	o.Cursor, o.HasCursor = u.frame().Pumped, true
	plot.DrawChart(r, list[at], o)
}

// doneMark stands before an event that has passed.
const doneMark = "x"

// drawEvents lists the events with the volumes at which they happen, the present one in view.
func (u *player) drawEvents(p *Planner, r canvas.Region) {
	number := func(y int, text string, style canvas.Style) { r.TextRight(r.W()-9, y, 8, text, style) }
	r.Text(0, 0, "  "+u.words().events, canvas.Heading)
	if u.pumped() {
		number(0, "at "+p.symbol(quantity.Volume), canvas.Faint)
	}
	rows, present := r.H()-1, u.frame().Event
	first := max(0, min(present-rows/2, len(u.job.Events)-rows))
	for y := 0; y < rows && first+y < len(u.job.Events); y++ {
		i := first + y
		e := u.job.Events[i]
		mark, style := " ", canvas.Plain
		switch {
		case i == present:
			mark, style = string(p.glyphs.Mark), canvas.Focus
		case i < present:
			mark = doneMark
		}
		volume := ""
		if u.pumped() && e.Frame >= 0 && e.Frame < len(u.job.Frames) {
			volume = p.amount(u.job.Frames[e.Frame].Pumped, quantity.Volume)
		}
		room := r.W() - 4 - canvas.Width(volume)
		r.Text(0, y+1, mark+" "+eventIn(p.glyphs.Translate(e.Name), room), style)
		number(y+1, volume, style)
	}
}

// eventIn returns the name of an event in so many columns, by the abbreviations of the trade where it is longer.
func eventIn(name string, room int) string {
	if canvas.Width(name) > room {
		name = strings.NewReplacer("bottom plug in csg", "btm in csg", "bottom plug", "btm plug", "top plug in csg", "top in csg", "cement at ", "cmt ", "displacement", "displ.", "at rest, ", "",
			"circulation", "circ.", "gas at last shoe", "gas at shoe", "gas at the weakest row", "gas at weakest", "kill mud", "kill", "riser gone, sea above", "riser gone").Replace(name)
	}
	return canvas.Squeeze(name, room)
}

// drawPlugs lists the plugs that are in the string with their depths.
func (u *player) drawPlugs(p *Planner, r canvas.Region) {
	r.Text(0, 0, string(p.glyphs.Plug)+" Plug", canvas.Heading)
	r.TextRight(r.W()-9, 0, 8, "MD "+p.symbol(quantity.Length), canvas.Faint)
	for i, plug := range u.frame().Plugs {
		name, depth := strings.TrimSuffix(p.glyphs.Translate(plug.Name), " plug"), p.amount(plug.MD, quantity.Length)
		landed := ""
		if plug.Landed {
			landed = " landed"
		}
		room := r.W() - 4 - len(landed) - canvas.Width(depth)
		r.Text(2, i+1, canvas.Squeeze(name, room)+landed, canvas.Plain)
		r.TextRight(r.W()-9, i+1, 8, depth, canvas.Plain)
	}
}

// drawGauges draws the figures of the moment: volumes, rates and pressures, equivalent densities, and tops in the annulus.
func (u *player) drawGauges(p *Planner, r canvas.Region) {
	gauges, half := u.gauges(p), r.W()/2
	column := 0
	for _, g := range gauges {
		if g.value != "" {
			column = max(column, len(g.name)+2)
		}
	}
	for y, g := range gauges {
		if g.value == "" {
			r.Text(1, y, canvas.Squeeze(g.name, half-2), canvas.Plain)
			r.Text(half, y, g.second, canvas.Plain)
			continue
		}
		r.Text(1, y, g.name, canvas.Plain)
		r.Text(column, y, g.value, canvas.Plain)
		r.Text(half+3, y, g.second, canvas.Plain)
	}
	const headings = 2
	y, gap := len(gauges), 0
	spare := r.H() - len(gauges) - headings - len(u.fluids)
	if spare-len(u.job.Points) >= headings {
		gap = 1 // between the blocks
	}
	points := max(1, min(len(u.job.Points), spare-headings*gap))
	u.drawPoints(p, r.Sub(0, y+gap, r.W(), 1+points))
	y += gap + 1 + points + gap
	u.drawFluids(p, r.Sub(0, y, r.W(), r.H()-y))
}

// drawPoints lists the points with density, limit and margin; where not all have room, those with the least margin.
func (u *player) drawPoints(p *Planner, r canvas.Region) {
	f := u.frame()
	rows := min(r.H()-1, len(u.job.Points))
	order := u.tightest(rows)
	column := func(y, i int, text string, style canvas.Style) { r.TextRight(r.W()-1-8*(3-i), y, 8, text, style) }
	title := "EMW " + p.symbol(quantity.EMW)
	if rows < len(u.job.Points) {
		title += fmt.Sprintf(" %d of %d", rows, len(u.job.Points))
	}
	r.Text(1, 0, title, canvas.Heading)
	for i, text := range []string{"now", "limit", "margin"} {
		column(0, i, text, canvas.Faint)
	}
	for y, i := range order {
		point := &u.job.Points[i]
		r.Text(1, y+1, u.pointIn(p, point, r.W()-26), canvas.Plain)
		now, limit, margin, style := "-", "-", "-", canvas.Plain
		if i < len(f.EMW) {
			now = p.amount(f.EMW[i], quantity.EMW)
		}
		if at, least := u.limit(i); at > 0 {
			if limit = p.amount(at, quantity.EMW); least {
				limit = ">" + limit
			}
		}
		if left, ok := u.margin(i); ok {
			margin = cmp.Or(quantity.FormatChange(left, quantity.EMW, p.system.Unit(quantity.EMW)), "0")
			if left < -noticed {
				margin, style = "!"+margin, canvas.Stop
			}
		}
		column(y+1, 0, now, canvas.Plain)
		column(y+1, 1, limit, canvas.Plain)
		column(y+1, 2, margin, style)
	}
}

// pointIn names a point with its depth along hole in so many columns. Where a drill string is in the hole there is one shoe only, and
// the names are shortened to what tells them apart.
func (u *player) pointIn(p *Planner, point *calc.JobPoint, room int) string {
	name := p.glyphs.Translate(strings.TrimPrefix(point.Name, "at "))
	depth := " " + p.depthLabel(point.MD)
	if u.job.Kind != calc.CementJob && canvas.Width(name+depth) > room {
		name = strings.NewReplacer("last shoe", "shoe", "the weakest row", "weakest", "where least is left", "least").Replace(name)
	}
	return canvas.Squeeze(name+depth, room)
}

// tightest returns the n points with the least margin, in the job's order.
func (u *player) tightest(n int) []int {
	order := make([]int, len(u.job.Points))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		left, hasLeft := u.margin(a)
		right, hasRight := u.margin(b)
		switch {
		case hasLeft && hasRight:
			return cmp.Compare(left, right)
		case hasLeft:
			return -1
		case hasRight:
			return 1
		}
		return 0
	})
	order = order[:max(0, min(n, len(order)))]
	slices.Sort(order)
	return order
}

// drawFluids explains the signs of the fluids, with density and top in the annulus; those in the well come first where not all
// have room.
func (u *player) drawFluids(p *Planner, r canvas.Region) {
	density := func(y int, text string, style canvas.Style) { r.TextRight(r.W()-16, y, 7, text, style) }
	top := func(y int, text string, style canvas.Style) { r.TextRight(r.W()-9, y, 8, text, style) }
	r.Text(1, 0, u.words().fluids, canvas.Heading)
	density(0, p.symbol(quantity.Density), canvas.Faint)
	top(0, p.symbol(quantity.Length), canvas.Faint)
	fluids := u.fluids
	if len(fluids) > r.H()-1 {
		fluids = slices.Clone(fluids)
		slices.SortStableFunc(fluids, func(a, b int) int { return cmp.Compare(u.place(a), u.place(b)) })
		fluids = fluids[:max(0, r.H()-1)]
		slices.Sort(fluids)
	}
	for y, i := range fluids {
		glyph, style := u.look(i)
		r.Put(1, y+1, glyph, style)
		r.Put(2, y+1, glyph, style)
		r.Text(4, y+1, fluidIn(p.glyphs.Translate(u.name(i)), r.W()-21), canvas.Plain)
		weight, depth := "-", "-"
		if x := u.job.Fluids[i].Density; x > 0 { // a gas has none of its own
			weight = p.amount(x, quantity.Density)
		}
		if at, ok := u.top(i); ok {
			depth = p.amount(at, quantity.Length)
		}
		density(y+1, weight, canvas.Plain)
		top(y+1, depth, canvas.Plain)
	}
}

// fluidIn returns the name of a fluid in so many columns.
func fluidIn(name string, room int) string {
	if canvas.Width(name) > room {
		name = strings.Replace(name, " in the ", " in ", 1)
	}
	return canvas.Squeeze(name, room)
}

// top returns the upper end of a fluid in the annulus, or in a riser over a closed stack, and false where it is in neither.
func (u *player) top(fluid int) (md float64, ok bool) {
	for _, stands := range [][]calc.JobStand{u.frame().Annulus, u.frame().Riser} {
		if at := standing(stands, fluid); at >= 0 && (!ok || stands[at].Top < md) {
			md, ok = stands[at].Top, true
		}
	}
	return md, ok
}

// place ranks fluids: those in the well before those that are not.
func (u *player) place(fluid int) int {
	if _, ok := u.top(fluid); ok || standing(u.frame().Inside, fluid) >= 0 {
		return 0
	}
	return 1
}

// standing returns the uppermost stand of a fluid, or -1.
func standing(stands []calc.JobStand, fluid int) int {
	return slices.IndexFunc(stands, func(s calc.JobStand) bool { return s.Fluid == fluid })
}

func (u *player) name(fluid int) string {
	if fluid < 0 || fluid >= len(u.job.Fluids) {
		return "-"
	}
	return u.job.Fluids[fluid].Name
}

// amount formats a quantity without its unit as the screen shows it.
func (p *Planner) amount(si float64, kind quantity.Kind) string {
	return quantity.Format(si, kind, p.system.Unit(kind))
}

// symbol returns the unit shown for a kind.
func (p *Planner) symbol(kind quantity.Kind) string {
	return p.glyphs.Translate(p.system.Unit(kind).Symbol())
}
