package calc

import (
	"math"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// killVolumes adds volumes, strokes and minutes of the kill pump from part to part of the way.
func (e *evaluation) killVolumes(i int, p *page, k *killing) {
	p.group = "Ways of the kill mud"
	shoe, _, cased := e.lastShoe(i)
	if !cased {
		shoe = e.datum.Mudline
	}
	line := k.line.volume()
	riser := bore.Volume(between(e.riserAnnulus(i, k), 0, e.datum.BOPTop))
	inside := bore.Volume(k.inside)
	openHole := bore.Between(k.annulus, shoe, math.Inf(1))
	behindPipe := bore.Between(k.annulus, e.datum.BOPTop, shoe)
	for _, way := range []struct {
		key, name string
		volume    float64
		missing   gap
		formula   string
	}{
		{"string", "Surface to bit", inside, gap{}, "V = sum of pi/4 × ID² × L down the string"},
		{"open", "Bit to shoe", openHole, gap{}, "V = sum of pi/4 × (hole² - string²) × L"},
		{"cased", "Shoe to BOP", behindPipe, gap{}, "V = sum of pi/4 × (bore² - string²) × L"},
		{"line", lineWord(k.line.name), line, k.line.missing, "V = pi/4 × ID² × L"},
		{"annulus", "Bottoms-up, choke", openHole + behindPipe + line, k.line.missing, "V = bit to shoe + shoe to BOP + line"},
		{"whole", "Surface to choke", inside + openHole + behindPipe + line, k.line.missing, "V = surface to bit + bottoms-up to the choke"},
		{"riser", "Riser, apart", riser, gap{}, "V = sum of pi/4 × (riser² - string²) × L, closed off while the well is killed"},
	} {
		key := "control.kill.way." + way.key
		why := func(w *Working) {
			w.Formula = way.formula
			w.in("V", way.name, quantity.Volume, way.volume)
			w.in("output", "of the kill pump", quantity.StrokeVolume, k.stroke)
			w.in("flow", "kill rate", quantity.Flow, k.killFlow)
			w.Source = "geometry; tool joints and surface lines left out"
			w.Note = "A second person reproduces strokes before they are pumped by."
		}
		missing := first(k.missing, way.missing)
		p.put(key, way.name, quantity.Volume, way.volume, missing, why)
		p.also(key+".strokes", "strokes", quantity.Strokes, way.volume/k.stroke, missing, why)
		p.also(key+".time", "minutes", quantity.Time, way.volume/k.killFlow, missing, why)
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
	missing := first(k.missing, k.line.missing)
	shut := k.in.choke
	if k.in.read > 0 {
		shut = k.in.read
	}
	steps := make([]killsheet.ChokeStep, startSteps+1)
	if !missing.open() {
		list, err := killsheet.BringUp(shut+k.over, k.killFlow, startSteps, killsheet.PowerLaw(k.line.loss, k.killFlow, killsheet.Square))
		if err != nil {
			missing = gap{model.PathOf(p.section, "kill.line_loss"), err.Error()}
		} else {
			steps = list
		}
	}
	for n := range steps {
		step := &steps[n]
		key := "control.kill.start." + strconv.Itoa(n)
		why := func(w *Working) {
			w.Formula = "gauge = SICP + overbalance - friction of the line at the rate, not below none"
			w.in("SICP", "shut in", quantity.Pressure, shut)
			w.in("overbalance", "held", quantity.Pressure, k.over)
			w.in("friction", "at this rate, by its square", quantity.Pressure, step.Loss)
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
		p.also(key+".over", "too much on the well", quantity.Pressure, step.Excess, missing, why)
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
	p.put("control.kill.straight", "Straight line over", quantity.Pressure, over.Above(), missing, straight)
	p.also("control.kill.straight.under", "and under", quantity.Pressure, -under.Above(), missing, straight)
}
