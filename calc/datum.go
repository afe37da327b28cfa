package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// Datum holds the fixed depths of the well in m below the rotary (RKB).
type Datum struct {
	OK       bool
	MSL      float64 // air gap
	Mudline  float64
	LPTop    float64 // top of the low-pressure housing
	Wellhead float64 // top of the high-pressure housing: the wellhead datum
	BOPTop   float64 // top of the BOP stack: the riser's length
}

// datumGaps say what is missing for each of the fixed depths.
type datumGaps struct {
	mudline, sea, lp, wellhead, bop gap
}

func (e *evaluation) readDatum() {
	p, g := e.plan, &e.gaps
	g.mudline = first(needs(p.Well.AirGap, "well.air_gap", "air gap"), needs(p.Well.WaterDepth, "well.water_depth", "water depth"))
	g.lp = first(g.mudline, needs(p.Wellhead.LPAboveMudline, "wellhead.lp_above_mudline", "height of the low-pressure housing"))
	g.wellhead = first(g.mudline, needs(p.Wellhead.DatumAboveMudline, "wellhead.datum_above_mudline", "height of the high-pressure housing"))
	g.bop = first(g.wellhead, needs(p.Rig.BOPHeight, "rig.bop_height", "height of the BOP stack"))
	d := Datum{OK: !g.mudline.open(), MSL: p.Well.AirGap.SI}
	d.Mudline = d.MSL + p.Well.WaterDepth.SI
	d.LPTop = d.Mudline - p.Wellhead.LPAboveMudline.SI
	d.Wellhead = d.Mudline - p.Wellhead.DatumAboveMudline.SI
	d.BOPTop = d.Wellhead - p.Rig.BOPHeight.SI
	if !g.lp.open() && !g.wellhead.open() && d.LPTop < d.Wellhead {
		g.lp = gap{"wellhead.lp_above_mudline", "the low-pressure housing stands above the high-pressure one"}
	}
	if !g.bop.open() && d.BOPTop <= 0 {
		g.bop = gap{"rig.bop_height", "the BOP stack reaches above the rotary"}
	}
	e.datum = d
	e.readHeat()
	e.readOcean()
	for _, missing := range [...]gap{g.mudline, g.sea, g.lp, g.wellhead, g.bop} {
		if missing.open() {
			e.fault(missing)
		}
	}
}

func (e *evaluation) wellPage() {
	p := e.page(-1, model.TopicWell)
	d, w := e.datum, e.plan.Well
	const geometry = "geometry"
	p.group = "Datum"
	p.put("datum.mudline", "Mudline from RKB", quantity.Length, d.Mudline, e.gaps.mudline, func(k *Working) {
		k.Formula = "mudline = air gap + water depth"
		k.in("air gap", "rotary above MSL", quantity.Length, w.AirGap.SI)
		k.in("water depth", "at MSL", quantity.Length, w.WaterDepth.SI)
		k.Source = geometry
		k.Note = "Correct a tagged depth by the tide of that minute before it is entered."
	})
	p.put("datum.wellhead", "Wellhead datum", quantity.Length, d.Wellhead, e.gaps.wellhead, func(k *Working) {
		k.Formula = "datum = mudline - height of the high-pressure housing"
		k.in("mudline", "from RKB", quantity.Length, d.Mudline)
		k.in("height", "housing top above mudline", quantity.Length, e.plan.Wellhead.DatumAboveMudline.SI)
		k.Source = geometry
	})
	p.put("datum.lp_housing", "LP housing top", quantity.Length, d.LPTop, e.gaps.lp, func(k *Working) {
		k.Formula = "LP top = mudline - height of the low-pressure housing"
		k.in("mudline", "from RKB", quantity.Length, d.Mudline)
		k.in("height", "housing top above mudline", quantity.Length, e.plan.Wellhead.LPAboveMudline.SI)
		k.Source = geometry
	})
	p.put("datum.bop_top", "Riser, RKB to BOP", quantity.Length, d.BOPTop, e.gaps.bop, func(k *Working) {
		k.Formula = "riser = wellhead datum - height of the BOP stack"
		k.in("datum", "wellhead", quantity.Length, d.Wellhead)
		k.in("height", "stack above datum", quantity.Length, e.plan.Rig.BOPHeight.SI)
		k.Source = geometry
	})
	p.put("datum.sea_pressure", "Sea at mudline", quantity.Pressure, e.seaPressure(), e.gaps.sea, func(k *Working) {
		k.Formula = "p = rho × g × water depth"
		k.in("rho", "seawater", quantity.Density, e.seawater())
		k.in("water depth", "at MSL", quantity.Length, w.WaterDepth.SI)
		k.Source = "hydrostatics, g = 9.80665 m/s² (standard gravity, CGPM 1901)"
	})
	e.seaFigures(p)
	e.lineFigures(p)
	e.pumpFigures(p)
	e.seatFigures(p)
}
