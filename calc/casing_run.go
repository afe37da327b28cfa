package calc

import (
	"borewalk/calc/bore"
	"borewalk/model"
	"borewalk/model/quantity"
)

// runWeights returns what hangs from the rotary in N when the shoe of section i has come to a depth along hole in m: full of
// what surrounds it, and with the uppermost length of casing in m still empty.
//
// An empty length lacks the weight of the fluid that would fill it, on true vertical depth.
func (e *evaluation) runWeights(fluids []layer, i int, l *landing, shoe, empty float64) (full, light float64) {
	c := &e.strings[i]
	up := c.shoe - shoe // how far the string still is from its place
	for k := range c.parts {
		part := &c.parts[k]
		top, bottom := max(0, part.top-up), part.bottom-up
		if bottom <= top {
			continue
		}
		full += buoyed(fluids, e.length(top, bottom, part.pipe, part.pipe.LinearMass))
		if empty > 0 && top < empty {
			light -= bore.Area(part.pipe.ID) * (pressureIn(fluids, e.path.TVD(min(bottom, empty))) - pressureIn(fluids, e.path.TVD(top)))
		}
	}
	if top := c.top - up; top > 1e-6 { // the casing has left the rotary, with the inner string in it
		full += buoyed(fluids, e.length(0, top, l.pipe, l.mass))
		if inner := e.plan.Sections[i].Cement.InnerAboveShoe.SI; l.inner.weight > 0 {
			full += buoyed(fluids, e.length(top, shoe-inner, l.pipe, l.mass))
		}
	}
	return full, full + light
}

// unfilled returns the length in m of casing that hangs empty before it is filled while the string of section i is run.
func (e *evaluation) unfilled(i int) float64 {
	s := &e.plan.Sections[i]
	t := e.tallyOf(i)
	if s.Tally.Float == model.FloatFills || !t.kept {
		return 0
	}
	return s.Tally.FillEvery.SI * t.average
}

// runSteps is into how many even steps the way of a string is cut to find the greatest load on it.
const runSteps = 12

// runLoad is what hangs from the rotary with the shoe at a depth along hole in m: string full, and unfilled, N.
type runLoad struct {
	shoe, full, light float64
}

// runLoadAt weighs the string of section i on its way.
func (e *evaluation) runLoadAt(fluids []layer, i int, l *landing, shoe float64) runLoad {
	empty := e.unfilled(i)
	if c := &e.strings[i]; shoe > c.shoe-c.top+1e-6 {
		empty = 0 // filled before the landing string goes on
	}
	full, light := e.runWeights(fluids, i, l, shoe, empty)
	return runLoad{shoe, full, light}
}

// runFigures adds the hook load on the way in: with the shoe at the last shoe, with all casing made up, and where it is
// greatest, which it returns as what hangs from the rotary, N.
func (e *evaluation) runFigures(i int, p *page, l *landing) (greatest float64) {
	c := &e.strings[i]
	p.group = "Running in"
	last, _, ok := e.lastShoe(i)
	var atLast, madeUp, most runLoad
	if !l.missing.open() {
		fluids := e.hanging(i, nil, e.leftInHole(i))
		atLast, madeUp = e.runLoadAt(fluids, i, l, last), e.runLoadAt(fluids, i, l, c.shoe-c.top)
		most = runLoad{c.shoe, l.weight(), l.weight()} // a string that weighs less on the way is heaviest when it lands
		for k := 1; k < runSteps; k++ {
			if at := e.runLoadAt(fluids, i, l, c.shoe*float64(k)/runSteps); at.full > most.full {
				most = at
			}
		}
		if madeUp.full > most.full {
			most = madeUp
		}
	}
	if ok && last < c.shoe {
		e.runFigure(i, p, "run.last_shoe", "At the last shoe", atLast, first(l.missing, e.shoeGap(i)))
	}
	e.runFigure(i, p, "run.made_up", "All made up", madeUp, l.missing)
	e.runFigure(i, p, "run.greatest", "Greatest", most, l.missing)
	return most.full
}

func (e *evaluation) runFigure(i int, p *page, key, name string, at runLoad, missing gap) {
	c, blocks := &e.strings[i], e.plan.Rig.BlockWeight.SI
	p.put(key, name, quantity.Force, at.full+blocks, missing, func(w *Working) {
		w.Formula = "hook load = string in the well, in its fluid + blocks and top drive"
		w.in("W", "in the well", quantity.Force, at.full)
		w.in("blocks", "with top drive", quantity.Force, blocks)
		w.in("shoe", "along hole", quantity.Length, at.shoe)
		w.Source = "buoyancy factor (Bourgoyne et al., Applied Drilling Engineering, ch. 4)"
		w.Note = "String full of what surrounds it, top at the rotary; without friction. The greatest is looked for in twelve steps of the way."
	})
	p.also(key+".shoe", "shoe at", quantity.Length, at.shoe, missing, func(w *Working) {
		w.Formula = "depth of the shoe, top of the string at the rotary"
		w.in("length", "casing", quantity.Length, c.shoe-c.top)
		w.Source = "geometry, along hole"
	})
	if empty := e.unfilled(i); empty > 0 {
		p.also(key+".unfilled", "unfilled", quantity.Force, at.light+blocks, missing, func(w *Working) {
			w.Formula = "hook load = full - bore × g × (fluid × fall of the empty length); full once the landing string goes on"
			w.in("full", "hook load", quantity.Force, at.full+blocks)
			w.in("empty", "uppermost casing", quantity.Length, empty)
			w.Source = "pressure-area balance over a float that holds"
		})
	}
}

// runCharts returns the hook load of section i's string against the depth of its shoe.
func (e *evaluation) runCharts(i int) []Chart {
	if !e.landed(i) {
		return nil
	}
	l := e.readLanding(i)
	if l.missing.open() {
		return nil
	}
	c, rig := &e.strings[i], &e.plan.Rig
	blocks := rig.BlockWeight.SI
	fluids := e.hanging(i, nil, e.leftInHole(i))
	full := ChartCurve{Name: "Full", Kind: quantity.Force}
	light := ChartCurve{Name: "Unfilled", Kind: quantity.Force}
	step := func(shoe float64) {
		at := e.runLoadAt(fluids, i, &l, shoe)
		full.Points = append(full.Points, ChartPoint{shoe, at.full + blocks})
		light.Points = append(light.Points, ChartPoint{shoe, at.light + blocks})
	}
	madeUp := c.shoe - c.top
	for k := 1; k <= chartSteps; k++ {
		step(madeUp * float64(k) / chartSteps)
	}
	for k := 1; k <= chartSteps; k++ {
		step(madeUp + c.top*float64(k)/chartSteps)
	}
	chart := Chart{Key: "casing.run", Title: "Hook load on the way in, without friction", Topic: model.TopicCasing, Axis: "shoe at", Along: quantity.Length, Down: true,
		Curves: []ChartCurve{full}, Marks: []ChartMark{{"all made up", madeUp}, {"landed", c.shoe}}}
	if e.unfilled(i) > 0 {
		chart.Curves = append(chart.Curves, light)
	}
	if rig.HookLoad.IsSet() {
		chart.Curves = append(chart.Curves, ChartCurve{Name: "Rig", Kind: quantity.Force, Limit: true, Points: []ChartPoint{{0, rig.HookLoad.SI}, {c.shoe, rig.HookLoad.SI}}})
	}
	if shoe, _, ok := e.lastShoe(i); ok && shoe < c.shoe {
		chart.Marks = append([]ChartMark{{"last shoe", shoe}}, chart.Marks...)
	}
	return []Chart{chart}
}
