package calc

import (
	"math"
	"slices"

	"borewalk/calc/column"
	"borewalk/calc/downhole"
	"borewalk/calc/water"
	"borewalk/model"
	"borewalk/model/quantity"
)

// Where the plan does not say: what the solids of a mud weigh, common practice, from memory, and the temperature at which it
// is weighed.
const (
	meanSolids   = 3500.0
	usualWeighed = 293.15
)

// mudOf returns the mud of section i as its recipe has it, and what is missing for it.
func (e *evaluation) mudOf(i int) (downhole.Mud, gap) {
	s := &e.plan.Sections[i]
	if missing := e.columnGap(i); missing.open() {
		return downhole.Mud{}, missing
	}
	r := downhole.Recipe{Density: e.density(i, e.sections[i].td), Temperature: usual(s.Downhole.WeighedAt, usualWeighed)}
	fresh := 1.0 // of a volume of brine
	if salt, ok := saltOf(&s.Recipe); ok {
		b, missing := e.brine(i, salt, 1)
		if missing.open() {
			return downhole.Mud{}, missing
		}
		r.Brine, r.SaltShare, fresh = b.Density, b.Share, b.Water
	}
	r.BrineShare = s.Recipe.Water.SI / fresh
	if s.Recipe.Oil.SI > 0 {
		r.OilShare, r.OilDensity, r.Oil = s.Recipe.Oil.SI, s.Recipe.OilDensity.SI, oilOf(&s.Downhole)
	}
	if !s.Recipe.Water.IsSet() {
		var ok bool
		if r, ok = r.Complete(usual(s.Downhole.Solids, meanSolids)); !ok {
			return downhole.Mud{}, gap{model.PathOf(i, "recipe.water"), "no share of water gives the mud's density with such oil, salt and solids: enter the share"}
		}
	}
	mud, err := downhole.New(r)
	if err != nil {
		return mud, gap{model.PathOf(i, "recipe.water"), "mud at depth: " + err.Error()}
	}
	return mud, gap{}
}

// oilOf returns the law that the oil of a mud follows.
func oilOf(d *model.Downhole) downhole.Oil {
	const press, warming = 1e7, 10 // Pa and K that the entries are for
	oil := downhole.Oil{Base: downhole.Mineral, Compressibility: d.OilPress.SI / press, Expansion: d.OilWarming.SI / warming}
	switch d.Oil {
	case model.DieselOil:
		oil.Base = downhole.Diesel
	case model.OlefinOil:
		oil.Base = downhole.Olefin
	}
	return oil
}

// settled is a mud at rest in the undisturbed temperature: its pressure at true vertical depths, from the surface down.
type settled struct {
	tvd, pressure []float64
	mud           downhole.Mud
}

// settleStep is how far apart in m the pressures of a column are summed at most; four times as fine changes no equivalent
// density by 0.01 kg/m3.
const settleStep = 750

// settleMud sums the column of section i's mud at the given depths and wherever the temperature turns: from the rotary, or
// under the sea.
func (e *evaluation) settleMud(i int, mud downhole.Mud, depths ...float64) settled {
	_, bottom := e.tvdRange(e.datum.Mudline, e.sections[i].td)
	top, pressure := 0.0, 0.0
	if !e.sections[i].rig {
		top, pressure = e.datum.Mudline, e.seaPressure()
	}
	list := e.heat.corners(append(make([]float64, 0, len(depths)+16), depths...))
	list = append(list, top, bottom)
	list = slices.DeleteFunc(list, func(tvd float64) bool { return !(tvd >= top && tvd <= bottom) })
	slices.Sort(list)
	c := settled{tvd: slices.Compact(list), mud: mud}
	c.pressure = make([]float64, len(c.tvd))
	density := func(tvd, p float64) float64 { return mud.Density(e.heat.at(tvd), p) }
	for k, tvd := range c.tvd {
		if k > 0 {
			from := c.tvd[k-1]
			pressure = column.Settle(pressure, from, tvd, int(math.Ceil((tvd-from)/settleStep)), density)
		}
		c.pressure[k] = pressure
	}
	return c
}

// at returns the pressure at one of the depths that were asked for, not a number elsewhere.
func (c *settled) at(tvd float64) float64 {
	if k, ok := slices.BinarySearch(c.tvd, tvd); ok {
		return c.pressure[k]
	}
	return math.NaN()
}

// atDepth reports whether the plan wants the density of section i's mud at depth.
func (e *evaluation) atDepth(i int) bool {
	return e.plan.Sections[i].Downhole.By == model.DensityAtDepth
}

// keptNote says what the figures of a mud at depth do not touch.
const keptNote = "margins keep to the entered density"

// downholeFigures adds the equivalent static density of a mud that is squeezed and warmed, where the plan wants it.
func (e *evaluation) downholeFigures(i int, p *page) {
	if !e.atDepth(i) {
		return
	}
	mud, missing := e.mudOf(i)
	missing = first(missing, e.openHoleGap(i), e.heat.sea, e.heat.rock)
	if !e.sections[i].rig {
		missing = first(missing, e.gaps.sea)
	}
	var top, bottom float64
	var hot settled
	var plain column.Stack
	if !missing.open() {
		top, bottom = e.path.TVD(e.openFrom(i)), e.path.TVD(e.sections[i].td)
		hot = e.settleMud(i, mud, e.openDepths(i, top, bottom)...)
		plain = e.well(i, mud.Recipe().Density)
		if math.IsNaN(hot.pressure[len(hot.pressure)-1]) {
			missing = gap{model.PathOf(i, "downhole.density"), "pressure or temperature is beyond what the mud's water or oil is known for"}
		}
	}
	p.group = "Mud at depth, at rest"
	level := func(key, name string, tvd float64) {
		var value float64
		if !missing.open() {
			value, _ = column.EMW(hot.at(tvd), tvd)
		}
		p.put(key, name, quantity.EMW, value, missing, func(w *Working) { e.settling(w, i, &hot, tvd) }).Note = keptNote
		p.also(key+".over", "over entered", quantity.EMW, value-emw(plain, tvd), missing, func(w *Working) {
			w.Formula = "over = at depth - entered density's"
			w.in("at depth", "equivalent static", quantity.EMW, value)
			w.in("entered", "equivalent static", quantity.EMW, emw(plain, tvd))
			w.Source = "hydrostatics"
			w.Note = "For comparison: findings and margins elsewhere use the entered density throughout."
		})
	}
	level("mud.downhole.shoe", "ESD "+e.topName(i), top)
	level("mud.downhole.td", "ESD at TD", bottom)
	var there float64
	if !missing.open() {
		there = mud.Density(e.heat.at(bottom), hot.at(bottom))
	}
	p.put("mud.downhole.density", "Density at TD", quantity.Density, there, missing, func(w *Working) { e.swelling(w, &hot, bottom) })
	e.downholeMargins(i, p, &hot, top, bottom, missing)
}

// openDepths returns where the equivalent density of a mud at depth is held against the prognosis.
func (e *evaluation) openDepths(i int, top, bottom float64) []float64 {
	depths := []float64{top, bottom}
	if !e.prognosisGap(i).open() {
		for _, tvd := range e.window.depths {
			if tvd > top && tvd < bottom {
				depths = append(depths, tvd)
			}
		}
	}
	return depths
}

// downholeMargins adds what the mud at depth leaves to the prognosis, at its rows and the ends of the open hole.
func (e *evaluation) downholeMargins(i int, p *page, hot *settled, top, bottom float64, missing gap) {
	missing = first(missing, e.windowGap(i))
	margin := func(key, name, symbol string, limit column.Curve, sign float64) {
		least, at := math.Inf(1), top
		if !missing.open() {
			for k, tvd := range hot.tvd {
				value, ok := limit.At(tvd)
				own, also := column.EMW(hot.pressure[k], tvd)
				if ok && also && tvd >= top && tvd <= bottom && sign*(own-value) < least {
					least, at = sign*(own-value), tvd
				}
			}
		}
		p.put(key, name, quantity.EMW, least, missing, func(w *Working) {
			w.Formula = "margin = mud at depth - " + symbol
			if sign < 0 {
				w.Formula = "margin = " + symbol + " - mud at depth"
			}
			own, _ := column.EMW(hot.at(at), at)
			value, _ := limit.At(at)
			w.in("mud", "equivalent static at depth", quantity.EMW, own)
			w.in(symbol, "prognosis there", quantity.EMW, value)
			w.in("TVD", "where it is least", quantity.Length, at)
			w.Source = "hydrostatics; looked for at the rows of the prognosis and the ends of the open hole"
			w.Note = "For comparison: findings use the entered density."
		}).Note = keptNote
	}
	margin("mud.downhole.pore", "Over pore", "pore", e.window.pore, 1)
	margin("mud.downhole.fracture", "Below fracture", "fracture", e.window.fracture, -1)
}

// settling writes down how the pressure of a mud at depth was summed.
func (e *evaluation) settling(w *Working, i int, hot *settled, tvd float64) {
	w.Formula = "dp/dz = g × rho(p, T(z)), summed from the rotary down; ESD = p / (g × TVD)"
	if !e.sections[i].rig {
		w.Formula = "dp/dz = g × rho(p, T(z)), summed from the mudline down under the sea; ESD = p / (g × TVD)"
		w.in("sea", "pressure at the mudline", quantity.Pressure, e.seaPressure())
	}
	e.contents(w, hot)
	w.in("T0", "surface, static", quantity.Temperature, e.heat.at(hot.tvd[0]))
	w.in("Tm", "seabed, static", quantity.Temperature, e.heat.seabed)
	w.in("T", "static there", quantity.Temperature, e.heat.at(tvd))
	w.in("p", "pressure there", quantity.Pressure, hot.at(tvd))
	w.in("TVD", "from RKB", quantity.Length, tvd)
}

// swelling writes down the density of a mud at one depth.
func (e *evaluation) swelling(w *Working, hot *settled, tvd float64) {
	w.Formula = "rho = rho0 / (1 + fo × (ro0/ro - 1) + fw × (rw0/rw - 1))"
	e.contents(w, hot)
	r := hot.mud.Recipe()
	p, t := hot.at(tvd), e.heat.at(tvd)
	if r.OilShare > 0 {
		oil0, _ := r.Oil.Density(r.Temperature, 0)
		oil, _ := r.Oil.Density(t, p)
		w.in("ro0", "oil, as weighed", quantity.Density, oil0)
		w.in("ro", "oil, there", quantity.Density, oil)
	}
	brine0, _ := water.Brine(r.Brine, r.SaltShare, r.Temperature, 0)
	brine, _ := water.Brine(r.Brine, r.SaltShare, t, p)
	w.in("rw0", "water with its salt, as weighed", quantity.Density, brine0)
	w.in("rw", "water with its salt, there", quantity.Density, brine)
	w.in("T", "static there", quantity.Temperature, t)
	w.in("p", "pressure there", quantity.Pressure, p)
}

// contents puts what a mud is made of into a working, with the sources of its parts.
func (e *evaluation) contents(w *Working, hot *settled) {
	r := hot.mud.Recipe()
	w.in("rho0", "mud, as weighed", quantity.Density, r.Density)
	w.in("Tw", "weighed at", quantity.Temperature, r.Temperature)
	w.in("fo", "oil, by volume", quantity.Ratio, r.OilShare)
	w.in("fw", "water with its salt, by volume", quantity.Ratio, r.BrineShare)
	w.in("salt", "in the water, by mass", quantity.Ratio, r.SaltShare)
	w.Source = "compositional model, Hoberock et al., Oil and Gas Journal, March 1982; water by IAPWS-IF97, brine by Laliberte and Cooper (2004), warmed and pressed as Batzle and Wang (Geophysics 1992) have it; oil by Sorelle et al. (SPE 11118) or API RP 13D (2006), or its own law; all but IF97 from memory"
	w.Note = "The mud stands still long enough to take the temperature of sea and rock. Solids give nothing, gas and cuttings are left out."
}
