package calc

import (
	"math"
	"slices"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/gas"
	"borewalk/calc/influx"
	"borewalk/model"
	"borewalk/model/quantity"
)

// usualGravity is that of a gas where the plan gives none (common practice, from memory).
const usualGravity = 0.65

// kick is the influx that a section is planned for, with its bit at a depth.
type kick struct {
	missing   gap
	noGas     gap     // what is missing for the influx itself
	bit, tvd  float64 // bit along hole, and the TVD at the foot of the hole
	mud       float64
	pore      float64 // EMW at the foot; not a number where the intensity is counted from the mud and no prognosis reaches
	formation float64 // EMW that flows, no less than the mud's
	fluid     influx.Influx
	gas       gas.Gas // a real one; the zero value where one density is taken
	real      bool
	well      influx.Well
}

// pressure returns that of the formation in Pa.
func (k *kick) pressure() float64 { return column.PressureOf(k.formation, k.tvd) }

// kickAt returns the kick of section i with its bit at a depth along hole and a formation that flows with an intensity in kg/m3.
func (e *evaluation) kickAt(i int, bit, intensity float64) kick {
	s := &e.plan.Sections[i]
	k := kick{bit: bit, mud: s.Density.SI, missing: first(e.columnGap(i), e.drills[i].missing, e.boreGap(i), e.gaps.wellhead)}
	if k.missing.open() {
		return k
	}
	k.tvd = e.path.TVD(bit)
	base := k.mud
	if s.Kick.Over != model.OverMud {
		if k.missing = e.prognosisGap(i); k.missing.open() {
			return k
		}
		base, _ = e.window.pore.At(k.tvd)
		k.pore = base
	}
	k.formation = max(base+intensity, k.mud)
	if k.noGas = e.kickFluid(i, &k); !k.noGas.open() {
		k.well.Mud, k.well.Fluid = k.mud, k.fluid
		k.well.Cells, k.noGas = e.kickCells(i, bit)
	}
	return k
}

// kickFluid takes the influx as real gas, or of one density.
func (e *evaluation) kickFluid(i int, k *kick) gap {
	s := &e.plan.Sections[i].Kick
	if s.Density.IsSet() {
		k.fluid = influx.Simple(s.Density.SI, influx.AtEnds)
		return gap{}
	}
	g, missing := e.kickGas(i)
	k.gas, k.real, k.fluid = g, true, influx.Gas(g)
	return first(missing, e.heat.rock, e.heat.sea)
}

// kickGas returns the gas that a section is planned for.
func (e *evaluation) kickGas(i int) (gas.Gas, gap) {
	s := &e.plan.Sections[i].Kick
	g, err := gas.Natural(usual(s.Gravity, usualGravity), gasEquation(s.Equation))
	if err != nil {
		return gas.Gas{}, gap{model.PathOf(i, "kick.gravity"), err.Error()}
	}
	return g, gap{}
}

// gasEquation returns the equation of the compressibility factor that a plan names.
func gasEquation(name string) gas.Equation {
	for _, by := range [...]gas.Equation{gas.HallYarborough, gas.BrillBeggs} {
		if by.String() == name {
			return by
		}
	}
	return gas.DranchukAbouKassem
}

// annulusOf returns the annulus of section i from a depth down to the bit, at a depth along hole, as intervals.
func (e *evaluation) annulusOf(i int, from, bit float64) ([]bore.Interval, gap) {
	annuli := bore.Intervals(e.bores[i], lifted(e.drills[i].bodies, e.sections[i].td-bit), from, bit)
	if err := bore.Fit(annuli); err != nil {
		return nil, gap{model.PathOf(i, "hole"), "the drill string does not fit: " + err.Error()}
	}
	return annuli, gap{}
}

// kickCells lays the annulus of section i from the stack to the bit in straight lengths: cut where the path bends and where the
// temperature turns.
func (e *evaluation) kickCells(i int, bit float64) ([]influx.Cell, gap) {
	annuli, missing := e.annulusOf(i, e.datum.BOPTop, bit)
	if missing.open() {
		return nil, missing
	}
	cuts := e.bendsBetween(e.datum.BOPTop, bit)
	for _, tvd := range e.heat.corners(nil) {
		if md, ok := e.path.MDAtTVD(tvd); ok && md > e.datum.BOPTop && md < bit {
			cuts = append(cuts, md)
		}
	}
	slices.Sort(cuts)
	cells := make([]influx.Cell, 0, len(annuli)+len(cuts))
	const sliver = 0.01 // m
	for _, a := range annuli {
		top := a.Top
		for _, md := range append(cuts[:len(cuts):len(cuts)], a.Bottom) {
			if md < top+sliver || md > a.Bottom || md < a.Bottom && md > a.Bottom-sliver {
				continue
			}
			cells = append(cells, e.kickCell(top, md, a.Capacity()))
			top = md
		}
	}
	return cells, gap{}
}

// kickCell is a straight length of annulus.
func (e *evaluation) kickCell(top, bottom, area float64) influx.Cell {
	c := influx.Cell{Top: top, Bottom: bottom, TopTVD: e.path.TVD(top), BottomTVD: e.path.TVD(bottom), Area: area}
	c.TopTemperature, c.BottomTemperature = e.heat.at(c.TopTVD), e.heat.at(c.BottomTVD)
	return c
}

// bendsBetween returns depths along hole between which the path is nearly straight: its stations, and between two of them that
// bend, one each so many metres.
func (e *evaluation) bendsBetween(top, bottom float64) (cuts []float64) {
	if e.path.IsVertical() {
		return nil
	}
	const every, mostCuts = 40.0, 32
	last := top
	for _, p := range e.bends {
		if p.MD <= top || len(cuts) >= mostCuts {
			last = max(last, min(p.MD, bottom))
			continue
		}
		to := min(p.MD, bottom)
		if n := math.Ceil((to - last) / every); p.Dogleg > 0 && n > 1 {
			for k := 1.0; k < n; k++ {
				cuts = append(cuts, last+(to-last)*k/n)
			}
		}
		if last = to; to >= bottom {
			break
		}
		cuts = append(cuts, to)
	}
	return cuts
}

// kickPlace is a place in the open hole that a kick may break.
type kickPlace struct {
	influx.Place
	tvd float64
	emw float64 // that it stands
}

// kickPlaces returns the last shoe of section i and, where rock below it has less room over the mud than the shoe, those rows down
// to the bit.
func (e *evaluation) kickPlaces(i int, bit float64) (shoe kickPlace, weaker []kickPlace) {
	t, mud := &e.tests[i], e.plan.Sections[i].Density.SI
	strength, _, _ := e.shoeStrength(i)
	shoe = kickPlace{influx.Place{MD: t.shoe, Stands: column.PressureOf(strength, t.tvd)}, t.tvd, strength}
	if e.windowGap(i).open() {
		return shoe, nil
	}
	room := shoe.Stands - column.PressureOf(mud, t.tvd)
	stands := e.stands(i)
	for _, at := range e.openPlaces(i, bit, nil) {
		emw, ok := stands(at.tvd)
		if p := column.PressureOf(emw, at.tvd); ok && at.md > t.shoe && at.md < bit && p-column.PressureOf(mud, at.tvd) < room {
			weaker = append(weaker, kickPlace{influx.Place{MD: at.md, Stands: p}, at.tvd, emw})
		}
	}
	return shoe, weaker
}

// against is what presses on the rock beside the influx: friction of line and annulus above while its top is there, and what is kept
// back for working the choke all the time.
type against struct {
	line, allowance float64
	above           func(md float64) float64 // friction of the annulus from a depth along hole to the stack; nil where it does not count
	missing         gap
}

// against returns it for section i.
func (e *evaluation) against(i int) (a against) {
	s := &e.plan.Sections[i].Kick
	a.allowance = s.Allowance.SI + e.plan.Sections[i].Kill.Overbalance.SI
	if s.Line == model.LineNot {
		return a
	}
	line := e.killLine(i)
	a.line, a.missing = line.loss, first(line.missing, e.annulusRubs(i).missing)
	a.above = e.annulusRubs(i).above
	return a
}

// tolerance returns what a place bears of a kick.
func (k *kick) tolerance(at kickPlace, a against) (influx.Tolerance, gap) {
	at.Stands -= a.allowance
	loss := a.line
	if a.above != nil {
		loss += a.above(at.MD)
	}
	t, err := k.well.Tolerance(k.pressure(), at.Place, loss)
	if err != nil {
		return t, gap{why: err.Error()}
	}
	return t, gap{}
}

// kickIn adds what a kick is to a working.
func (k *kick) working(w *Working, a against) {
	w.in("pf", "formation, EMW at TD", quantity.EMW, k.formation)
	w.in("TVD", "of the foot", quantity.Length, k.tvd)
	w.in("mud", "static", quantity.Density, k.mud)
	if a.line > 0 {
		w.in("line", "friction of the choke line", quantity.Pressure, a.line)
	}
	if a.allowance > 0 {
		w.in("allowance", "for working the choke, and overbalance held", quantity.Pressure, a.allowance)
	}
}
