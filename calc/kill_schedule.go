package calc

import (
	"math"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// way is a part of what mud goes through while a kick is circulated out.
type way struct {
	key, name string
	volume    float64
	missing   gap
	formula   string
	parts     []bore.Interval
}

// ways returns the parts of the way from the pump to the choke, with their sums, and the riser apart.
func (e *evaluation) ways(i int, k *killing) []way {
	shoe, _, cased := e.lastShoe(i)
	if !cased {
		shoe = e.datum.Mudline
	}
	rig := &e.plan.Rig
	lines := bore.Area(rig.SurfaceID.SI) * rig.SurfaceLength.SI
	openHole, behindPipe := between(k.annulus, shoe, math.Inf(1)), between(k.annulus, e.datum.BOPTop, shoe)
	riser := e.riserAnnulus(i, k)
	inside, up := bore.Volume(k.inside), bore.Volume(openHole)+bore.Volume(behindPipe)+k.line.volume()
	return []way{
		{"lines", "Pump to rotary", lines, gap{}, "V = pi/4 × ID² × L of the lines at surface", []bore.Interval{{Bottom: rig.SurfaceLength.SI, Outer: rig.SurfaceID.SI, OuterLabel: "lines"}}},
		{"string", "Surface to bit", inside, gap{}, "V = sum of pi/4 × ID² × L down the string", k.inside},
		{"open", "Bit to shoe", bore.Volume(openHole), gap{}, "V = sum of pi/4 × (hole² - string²) × L", openHole},
		{"cased", "Shoe to BOP", bore.Volume(behindPipe), gap{}, "V = sum of pi/4 × (bore² - string²) × L", behindPipe},
		{"line", lineWord(k.line.name), k.line.volume(), k.line.missing, "V = pi/4 × ID² × L", nil},
		{"annulus", "Bottoms-up, choke", up, k.line.missing, "V = bit to shoe + shoe to BOP + line", nil},
		{"whole", "Surface to choke", inside + up, k.line.missing, "V = surface to bit + bottoms-up to the choke", nil},
		{"riser", "Riser, apart", bore.Volume(riser), gap{}, "V = sum of pi/4 × (riser² - string²) × L, closed off while the well is killed", riser},
	}
}

// killVolumes adds volumes, strokes and minutes of the kill pump from part to part of the way.
func (e *evaluation) killVolumes(i int, p *page, k *killing) {
	p.group = "Volumes and strokes"
	for _, part := range e.ways(i, k) {
		key, missing := "control.kill.way."+part.key, first(k.missing, part.missing)
		p.put(key, part.name, quantity.Volume, part.volume, missing, func(w *Working) {
			w.Formula = part.formula
			w.intervals(part.parts)
			w.Source = "geometry; tool joints left out"
			w.Note = "Lines at surface stand apart: count strokes from when kill mud is at the rotary, or add theirs."
		})
		p.also(key+".strokes", "strokes", quantity.Strokes, part.volume/k.stroke, missing, func(w *Working) {
			w.Formula = "strokes = volume / output"
			w.in("V", part.name, quantity.Volume, part.volume)
			w.in("output", "of the kill pump", quantity.StrokeVolume, k.stroke)
			w.Source = "common practice"
			w.Note = "A second person reproduces strokes before they are pumped by."
		})
		p.also(key+".time", "minutes", quantity.Time, part.volume/k.killFlow, missing, func(w *Working) {
			w.Formula = "time = volume / flow"
			w.in("V", part.name, quantity.Volume, part.volume)
			w.in("flow", "kill rate", quantity.Flow, k.killFlow)
			w.Source = "common practice"
		})
	}
}

// lineWord names a way of the returns as a line of figures begins.
func lineWord(name string) string {
	return map[string]string{model.ByChokeLine: "Choke line", model.ByKillLine: "Kill line", model.ByBothLines: "Both lines"}[name]
}

// riserAnnulus returns the riser round the string.
func (e *evaluation) riserAnnulus(i int, k *killing) []bore.Interval {
	if k.missing.open() {
		return nil
	}
	return bore.Intervals(e.bores[i], e.drills[i].bodies, 0, e.datum.BOPTop)
}

// startSteps is in how many steps the pump is brought up on the sheet.
const startSteps = 4

// startFigures adds how the choke gauge is let fall while the pump is brought up: by the friction of the line.
func (e *evaluation) startFigures(p *page, k *killing) {
	p.group = "Pump brought up, choke gauge"
	missing := first(k.missing, k.in.noGas, k.line.missing)
	if k.in.hasRead {
		missing = first(k.missing, k.line.missing)
	}
	shut := k.in.shown()
	steps := make([]killsheet.ChokeStep, startSteps+1)
	if !missing.open() {
		list, err := killsheet.BringUp(shut+k.over, k.killFlow, startSteps, k.line.law())
		if err != nil {
			missing = gap{model.PathOf(p.section, "kill.line_loss"), err.Error()}
		} else {
			steps = list
			steps[0].Casing = shut // what is held over comes in with the pump
		}
	}
	for n := range steps {
		step := &steps[n]
		key := "control.kill.start." + strconv.Itoa(n)
		why := func(w *Working) {
			w.Formula = "gauge = SICP + overbalance - friction of the line at the rate, not below none"
			w.in("SICP", "shut in", quantity.Pressure, shut)
			w.in("overbalance", "held", quantity.Pressure, k.over)
			w.in("friction", "at this rate", quantity.Pressure, step.Loss)
			k.line.working(w)
			w.Source = "Lapeyrouse, Formulas and Calculations, subsea considerations: choke pressure while the pump is brought up"
			w.Note = "The gauge of the static kill line, where that is open to the well, stays as it was. " + killCaution
		}
		name := "At rest"
		if n > 0 {
			name = "Step " + strconv.Itoa(n)
		}
		p.put(key, name, quantity.Pressure, step.Casing, missing, why)
		p.also(key+".rate", "rate", quantity.StrokeRate, step.Rate/k.stroke, missing, why)
		p.also(key+".over", "too much", quantity.Pressure, step.Excess, missing, why)
	}
}

// sheetSteps is in how many steps kill mud goes down the string on the sheet.
const sheetSteps = 10

// stepFigures adds the standpipe's pressure while kill mud goes down the string.
func (e *evaluation) stepFigures(p *page, k *killing) {
	p.group = "Standpipe, kill mud to the bit"
	missing := k.missing
	steps := make([]killsheet.Step, sheetSteps+1)
	var over, under killsheet.Deviation
	if !missing.open() {
		list, err := k.step.Steps(sheetSteps)
		if err == nil {
			steps = list
			over, under, err = k.step.Straight()
		}
		if err != nil {
			missing = gap{model.PathOf(p.section, "kill.drill_pipe"), err.Error()}
		}
	}
	for n := range steps {
		at := &steps[n]
		key := "control.kill.step." + strconv.Itoa(n)
		why := func(w *Working) {
			w.Formula = "p = SIDPP × (1 - TVD / TVD bit) + overbalance + slow + (slow in kill mud - slow) × MD / MD bit"
			w.in("SIDPP", "shut in", quantity.Pressure, k.in.pipe)
			w.in("overbalance", "held", quantity.Pressure, k.over)
			w.in("slow", "in the old mud", quantity.Pressure, k.slow)
			w.in("slow", "in kill mud", quantity.Pressure, k.rubs)
			w.in("MD", "kill mud down to", quantity.Length, at.MD)
			w.in("TVD", "of that", quantity.Length, at.TVD)
			w.Source = "kill sheets for deviated wells, common practice, from memory; the static part is the balance of two columns"
			w.Note = killCaution
		}
		p.put(key, strconv.Itoa(10*n)+" % down", quantity.Pressure, at.Pressure, missing, why)
		p.also(key+".strokes", "strokes", quantity.Strokes, at.Volume/k.stroke, missing, why)
		p.also(key+".volume", "pumped", quantity.Volume, at.Volume, missing, why)
	}
	straight := func(w *Working) {
		w.Formula = "straight line from ICP to FCP - the schedule, the most above it and below it"
		w.in("above at", "kill mud down to", quantity.Length, over.MD)
		w.in("below at", "kill mud down to", quantity.Length, under.MD)
		w.Source = "the schedule step by step"
		w.Note = "What a sheet for vertical wells would press too much on the hole, or leave too little."
	}
	p.group = "A straight line in its place"
	p.put("control.kill.straight", "Line over", quantity.Pressure, over.Above(), missing, straight)
	p.also("control.kill.straight.under", "under", quantity.Pressure, -under.Above(), missing, straight)
}
