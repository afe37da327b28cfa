package ui

import (
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/plot"
)

// drawWindow draws the pressure window: pore, fracture, stability, mud of each section and shoes against TVD. Page says which
// picture of how many it is.
func (p *Planner) drawWindow(r canvas.Region, page string) {
	density, depth := p.system.Unit(quantity.EMW), p.system.Unit(quantity.Length)
	w := plot.Window{
		Points: p.result.Window, Section: p.section,
		EMW:   func(si float64) string { return quantity.Format(si, quantity.EMW, density) },
		Depth: func(si float64) string { return p.depthLabel(si) },
	}
	for _, t := range p.result.Traces {
		line := plot.MudLine{Section: t.Section}
		for _, m := range t.Mud {
			line.Points = append(line.Points, plot.MudPoint{TVD: m.TVD, EMW: m.EMW})
		}
		w.Mud = append(w.Mud, line)
		if t.Section == p.section {
			for _, m := range t.Pumped {
				w.Pumped = append(w.Pumped, plot.MudPoint{TVD: m.TVD, EMW: m.EMW})
			}
			for _, m := range t.Moved {
				w.Moved = append(w.Moved, plot.Band(m))
			}
		}
		if t.Shoe > 0 {
			w.Shoes = append(w.Shoes, plot.Shoe{TVD: t.Shoe, Label: quantity.Format(t.OD, quantity.Diameter, p.system.Unit(quantity.Diameter)), Test: p.testBelow(t.Section)})
		}
	}
	if p.topic == model.TopicWell || p.topic == model.TopicHole || p.topic == model.TopicControl {
		for _, s := range p.result.Seats {
			w.Seats = append(w.Seats, plot.Seat{TVD: s.TVD, Up: s.Up})
		}
	}
	if low, high, ok := w.Densities(); ok {
		w.Ticks = plot.RoundTicks(low, high, max(2, r.W()/9), density)
	}
	if top, bottom, ok := w.Depths(); ok {
		w.DepthTicks = plot.RoundTicks(top, bottom, max(2, r.H()/3), depth)
	}
	title := "EMW " + density.Symbol() + ", TVD " + depth.Symbol() + " from RKB"
	r.Text(1, 0, canvas.Cut(p.glyphs.Translate(title), r.W()-1), canvas.Heading)
	r.TextRight(0, 0, r.W(), page, canvas.Faint)
	plot.Draw(r.Sub(0, 1, r.W(), r.H()-1), w, p.glyphs)
}

// testBelow returns the test of the shoe set in a section, which the section below it carries.
func (p *Planner) testBelow(section int) float64 {
	for _, t := range p.result.Traces {
		if t.Section == section+1 {
			return t.Test
		}
	}
	return 0
}
