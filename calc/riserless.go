package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/mixing"
	"borewalk/model"
	"borewalk/model/quantity"
)

// dumping is what a riserless section pumps to the seabed: depths along hole in m, volumes in m3.
type dumping struct {
	from, td float64 // weighted from, to TD
	flow     mixing.Dump
	missing  gap // for flow and share
	share    float64
	shareGap gap
	volume   float64 // of weighted mud
	spot     float64 // volume of the spot fluid
	spotCut  float64 // part of the stock in it; 0 where it is not cut from the stock
	spotGap  gap
}

// weighted reports whether weighted mud is pumped at all.
func (d *dumping) weighted() bool { return d.from < d.td }

// used returns the stock that the weighted hole takes.
func (d *dumping) used() float64 { return d.share * d.volume }

// spotStock returns the stock that the spot fluid takes.
func (d *dumping) spotStock() float64 { return d.spotCut * d.spot }

// ends returns the depth at which a stock is used up.
func (d *dumping) ends(stock float64) float64 { return d.from + stock/(d.share*d.flow.PerMetre()) }

// runsOut returns the depth at which a stock is used up, or TD where it lasts.
func (d *dumping) runsOut(stock float64) float64 {
	if stock >= d.used() {
		return d.td
	}
	return d.ends(stock)
}

// newHole returns the volume of the new hole of section i in gauge.
func (e *evaluation) newHole(i int) float64 {
	h := &e.sections[i]
	return bore.Area(h.size)*(h.opened-h.start) + bore.Area(h.bit)*(h.td-h.opened)
}

// readDumping works out what section i pumps to the seabed.
func (e *evaluation) readDumping(i int) dumping {
	h, s := &e.sections[i], &e.plan.Sections[i]
	r := &s.Riserless
	d := dumping{from: h.td, td: h.td, missing: h.missing, spotGap: h.missing, share: 1}
	if h.missing.open() {
		return d
	}
	if s.SpotDensity.IsSet() {
		d.spotGap = lacks(r.SpotFactor, i, "riserless.spot_factor", "volume of the spot fluid")
		d.spot = r.SpotFactor.SI * e.newHole(i)
	}
	sea := e.seawater()
	if r.StockDensity.IsSet() && s.SpotDensity.IsSet() {
		d.spotGap = first(d.spotGap, e.gaps.sea)
		if share, err := mixing.Cut(sea, r.StockDensity.SI, s.SpotDensity.SI); err == nil {
			d.spotCut = share
		}
	}
	if !s.WeightedFrom.IsSet() || s.WeightedFrom.SI >= h.td {
		return d
	}
	d.from = max(s.WeightedFrom.SI, h.start)
	d.flow = mixing.Dump{Flow: s.Flow.SI, ROP: s.ROP.SI, Stand: e.plan.Rig.StandLength.SI, Connection: r.Connection.SI}
	d.missing = first(lacks(s.WeightedDensity, i, "weighted_density", "density of the weighted mud"), e.flowGap(i), lacks(s.ROP, i, "rop", "rate of penetration"))
	if r.Connection.IsSet() {
		d.missing = first(d.missing, needs(e.plan.Rig.StandLength, "rig.stand_length", "stand length"))
	}
	if !d.missing.open() {
		d.volume = d.flow.PerMetre() * (d.td - d.from)
	}
	if d.shareGap = first(e.gaps.sea, lacks(s.WeightedDensity, i, "weighted_density", "density of the weighted mud")); r.StockDensity.IsSet() && !d.shareGap.open() {
		var err error
		if d.share, err = mixing.Cut(sea, r.StockDensity.SI, s.WeightedDensity.SI); err != nil {
			d.shareGap = gap{model.PathOf(i, "riserless.stock_density"), err.Error()}
		}
	}
	return d
}

// riserlessFigures adds what a section without a riser pumps to the seabed, judges it, and returns the mud to be made.
func (e *evaluation) riserlessFigures(i int, p *page, holds *contents) batch {
	s, r := &e.plan.Sections[i], &e.plan.Sections[i].Riserless
	d := e.readDumping(i)
	if d.weighted() {
		e.weightedFigures(i, p, &d)
	}
	p.group = "Riserless fluids"
	if r.Sweep.IsSet() || r.SweepEvery.IsSet() {
		e.sweepFigures(i, p, &d)
	}
	if s.SpotDensity.IsSet() {
		e.spotFigures(i, p, &d, holds)
	}
	if r.KillDensity.IsSet() || r.KillVolume.IsSet() {
		e.killFigures(i, p)
	}
	e.judgeRiserlessPits(i, p, &d)
	return e.riserlessBatch(i, &d)
}

// riserlessBatch returns the mud that a section without a riser has to make: the heavy stock, else the spot fluid.
func (e *evaluation) riserlessBatch(i int, d *dumping) batch {
	s, r := &e.plan.Sections[i], &e.plan.Sections[i].Riserless
	switch {
	case r.StockDensity.IsSet() && r.StockVolume.IsSet():
		return batch{Fluid: mixing.Fluid{Volume: r.StockVolume.SI, Density: r.StockDensity.SI}}
	case s.SpotDensity.IsSet():
		return batch{mixing.Fluid{Volume: d.spot, Density: s.SpotDensity.SI}, d.spotGap}
	}
	return batch{missing: gap{model.PathOf(i, "spot_density"), "no mud is to be made"}}
}

// weightedFigures adds the mud that is pumped and dumped from a depth on, and how long a stock lasts.
func (e *evaluation) weightedFigures(i int, p *page, d *dumping) {
	s, r := &e.plan.Sections[i], &e.plan.Sections[i].Riserless
	p.group = "Weighted mud, dumped"
	pace := func(w *Working) {
		w.in("L", "weighted hole", quantity.Length, d.td-d.from)
		w.in("ROP", "mean", quantity.ROP, s.ROP.SI)
		if r.Connection.SI > 0 {
			w.in("connection", "pumps on", quantity.Time, r.Connection.SI)
			w.in("stand", "hole for each", quantity.Length, e.plan.Rig.StandLength.SI)
		}
		w.Source = "flow by time"
		w.Note = "Connections by their share of a stand, pumps on."
	}
	p.put("mud.riserless.time", "Drilled weighted", quantity.Hours, d.flow.Time(d.td-d.from), d.missing, func(w *Working) {
		w.Formula = "time = L × (1 / ROP + connection / stand)"
		pace(w)
	})
	p.also("mud.riserless.length", "hole", quantity.Length, d.td-d.from, d.missing, func(w *Working) {
		w.Formula, w.Source = "hole = TD - weighted from", "geometry"
		w.in("TD", "bit", quantity.Length, d.td)
		w.in("from", "weighted", quantity.Length, d.from)
	})
	p.put("mud.riserless.volume", "Weighted mud", quantity.Volume, d.volume, d.missing, func(w *Working) {
		w.Formula = "V = flow × L × (1 / ROP + connection / stand)"
		w.in("flow", "through the bit", quantity.Flow, s.Flow.SI)
		pace(w)
	})
	p.also("mud.riserless.volume.length", "by length", quantity.Capacity, d.flow.PerMetre(), d.missing, func(w *Working) {
		w.Formula = "by length = flow × (1 / ROP + connection / stand)"
		w.in("flow", "through the bit", quantity.Flow, s.Flow.SI)
		pace(w)
	})
	if !r.StockDensity.IsSet() && !r.StockVolume.IsSet() {
		return
	}
	e.cutFigures(i, p, d)
	e.stockFigures(i, p, d)
}

// cut shows how the part of the heavy stock in a mix was got.
func (e *evaluation) cut(w *Working, i int, mix float64) {
	w.in("mix", "as pumped", quantity.Density, mix)
	w.in("sea", "seawater", quantity.Density, e.seawater())
	w.in("heavy", "stock", quantity.Density, e.plan.Sections[i].Riserless.StockDensity.SI)
	w.Source = "mass and volume balance"
}

// cutFigures adds the part of the stock in what is pumped, and the rates of stock and sea water.
func (e *evaluation) cutFigures(i int, p *page, d *dumping) {
	s := &e.plan.Sections[i]
	if !s.Riserless.StockDensity.IsSet() {
		return
	}
	rates := first(d.shareGap, e.flowGap(i))
	p.put("mud.riserless.share", "Stock in the mix", quantity.Ratio, d.share, d.shareGap, func(w *Working) {
		w.Formula = "share = (mix - sea) / (heavy - sea)"
		e.cut(w, i, s.WeightedDensity.SI)
	})
	flows := func(w *Working) {
		w.in("flow", "through the bit", quantity.Flow, s.Flow.SI)
		w.in("share", "of stock", quantity.Ratio, d.share)
		w.Source = "volume balance"
	}
	p.put("mud.riserless.rate", "Rate of stock", quantity.Flow, d.share*s.Flow.SI, rates, func(w *Working) {
		w.Formula = "rate = share × flow"
		flows(w)
	})
	p.also("mud.riserless.rate.sea", "seawater", quantity.Flow, (1-d.share)*s.Flow.SI, rates, func(w *Working) {
		w.Formula = "seawater = (1 - share) × flow"
		flows(w)
	})
}

// stockFigures adds what of the stock is needed, what is left of it, and where it ends.
func (e *evaluation) stockFigures(i int, p *page, d *dumping) {
	r := &e.plan.Sections[i].Riserless
	missing := first(d.missing, d.shareGap)
	needed := first(missing, d.spotGap)
	need := d.used() + d.spotStock()
	parts := func(w *Working) {
		w.in("weighted", "mud", quantity.Volume, d.volume)
		w.in("share", "of stock in it", quantity.Ratio, d.share)
		w.in("spot", "fluid", quantity.Volume, d.spot)
		w.in("spot share", "of stock in it", quantity.Ratio, d.spotCut)
		w.Source = "volume balance"
		w.Note = "Spot fluid counts where it can be cut from the stock. Dead volume in the pits is left out."
	}
	p.put("mud.riserless.need", "Stock needed", quantity.Volume, need, needed, func(w *Working) {
		w.Formula = "need = weighted × share + spot × spot share"
		parts(w)
	})
	p.also("mud.riserless.need.spot", "for the spot", quantity.Volume, d.spotStock(), d.spotGap, func(w *Working) {
		w.Formula = "for the spot = spot × spot share"
		parts(w)
	})
	if !r.StockVolume.IsSet() {
		return
	}
	p.put("mud.riserless.left", "Stock left at TD", quantity.Volume, r.StockVolume.SI-need, needed, func(w *Working) {
		w.Formula = "left = stock - weighted × share - spot × spot share"
		w.in("stock", "aboard", quantity.Volume, r.StockVolume.SI)
		parts(w)
	})
	ends := func(w *Working) {
		w.in("from", "weighted", quantity.Length, d.from)
		w.in("stock", "aboard", quantity.Volume, r.StockVolume.SI)
		w.in("share", "of stock", quantity.Ratio, d.share)
		w.in("by length", "weighted mud", quantity.Capacity, d.flow.PerMetre())
		w.Source = "volume balance"
	}
	below := func(f *Figure, depth float64) {
		if f.OK && depth > d.td {
			f.Note = "would end there, below TD"
		}
	}
	alone, kept := d.ends(r.StockVolume.SI), d.ends(r.StockVolume.SI-d.spotStock())
	below(p.put("mud.riserless.ends", "Stock ends at", quantity.Length, alone, missing, func(w *Working) {
		w.Formula = "depth = from + stock / (share × by length)"
		ends(w)
	}), alone)
	below(p.also("mud.riserless.ends.spot", "spot kept back", quantity.Length, kept, needed, func(w *Working) {
		w.Formula = "depth = from + (stock - spot) / (share × by length)"
		ends(w)
		w.in("spot", "stock in it", quantity.Volume, d.spotStock())
	}), kept)
	if !needed.open() {
		e.judge(model.RuleStockLasts, i, r.StockVolume.SI-need, "Stock left at TD, spot fluid counted", "", d.runsOut(r.StockVolume.SI), model.PathOf(i, "riserless.stock_volume"))
	}
}

// sweepFigures adds how many sweeps there are and what they take.
func (e *evaluation) sweepFigures(i int, p *page, d *dumping) {
	h, r := &e.sections[i], &e.plan.Sections[i].Riserless
	missing := first(h.missing, lacks(r.SweepEvery, i, "riserless.sweep_every", "hole between sweeps"))
	light := d.from - h.start
	count := math.Ceil(light/r.SweepEvery.SI - 1e-9)
	counted := func(w *Working) {
		w.in("L", "hole before weighted mud", quantity.Length, light)
		w.in("every", "hole between sweeps", quantity.Length, r.SweepEvery.SI)
		w.Source = "common practice"
	}
	p.put("mud.riserless.sweeps", "Sweeps", quantity.Count, count, missing, func(w *Working) {
		w.Formula = "number = L / every, rounded up: the last one at its end"
		counted(w)
	})
	volume := first(missing, lacks(r.Sweep, i, "riserless.sweep", "volume of a sweep"))
	p.also("mud.riserless.sweeps.volume", "in all", quantity.Volume, count*r.Sweep.SI, volume, func(w *Working) {
		w.Formula = "V = number × sweep"
		w.in("number", "of sweeps", quantity.Count, count)
		w.in("sweep", "each", quantity.Volume, r.Sweep.SI)
		counted(w)
	})
}

// spotFigures adds the volume of the spot fluid and how large a hole it still fills up to where the returns leave.
func (e *evaluation) spotFigures(i int, p *page, d *dumping, holds *contents) {
	h, s := &e.sections[i], &e.plan.Sections[i]
	gauge := e.newHole(i)
	p.put("mud.riserless.spot", "Spot fluid", quantity.Volume, d.spot, d.spotGap, func(w *Working) {
		w.Formula = "V = factor × new hole in gauge"
		w.in("factor", "as given", quantity.Ratio, s.Riserless.SpotFactor.SI)
		w.in("hole", "new, in gauge", quantity.Volume, gauge)
		w.Source = "common practice"
	})
	missing := first(d.spotGap, holds.bores)
	cased := bore.Between(holds.well, 0, h.start) // nothing of it above where the returns leave
	fills := (d.spot-cased)/gauge - 1
	p.also("mud.riserless.spot.fills", "fills excess", quantity.Ratio, fills, missing, func(w *Working) {
		w.Formula = "excess = (spot - well above the section) / new hole in gauge - 1"
		w.in("spot", "fluid", quantity.Volume, d.spot)
		w.in("above", "up to where returns leave", quantity.Volume, cased)
		w.in("hole", "new, in gauge", quantity.Volume, gauge)
		w.Source = "volume balance"
		w.Note = "How much larger than gauge the new hole may be and still be full of it; string out, no mixing."
	})
	if !missing.open() {
		e.judge(model.RuleSpotFills, i, fills, "Excess of hole that the spot fluid still fills", "", h.td, model.PathOf(i, "riserless.spot_factor"))
	}
	if d.spotCut > 0 {
		p.also("mud.riserless.spot.stock", "stock in it", quantity.Ratio, d.spotCut, d.spotGap, func(w *Working) {
			w.Formula = "share = (mix - sea) / (heavy - sea)"
			e.cut(w, i, s.SpotDensity.SI)
		})
	}
}

// killFigures adds the kill mud against the new hole, and its column under the sea.
func (e *evaluation) killFigures(i int, p *page) {
	h, r := &e.sections[i], &e.plan.Sections[i].Riserless
	path := model.PathOf(i, "riserless.kill_volume")
	missing := first(h.missing, lacks(r.KillVolume, i, "riserless.kill_volume", "volume of the kill mud"))
	gauge := e.newHole(i)
	p.put("mud.riserless.kill", "Kill mud", quantity.Ratio, r.KillVolume.SI/gauge, missing, func(w *Working) {
		w.Formula = "share = kill mud / new hole in gauge"
		w.in("kill", "mud aboard", quantity.Volume, r.KillVolume.SI)
		w.in("hole", "new, in gauge", quantity.Volume, gauge)
		w.Source = "common practice"
	})
	if !missing.open() {
		e.judge(model.RuleKillMud, i, r.KillVolume.SI/gauge, "Kill mud aboard, of the new hole in gauge", "", h.td, path)
	}
	missing = first(h.missing, e.pathGap, e.gaps.sea, lacks(r.KillDensity, i, "riserless.kill_density", "density of the kill mud"))
	var stack column.Stack
	var bottom float64
	if !missing.open() {
		bottom = e.path.TVD(h.td)
		stack = e.underSea(r.KillDensity.SI, bottom)
	}
	p.also("mud.riserless.kill.emw", "EMW at TD", quantity.EMW, emw(stack, bottom), missing, func(w *Working) {
		e.mixture(r.KillDensity.SI, false)(w, bottom)
		w.in("TVD", "from RKB", quantity.Length, bottom)
	})
	if !first(missing, e.prognosisGap(i)).open() {
		m := e.leastMargins(stack, e.openFrom(i), h.td)
		e.judgeMargin(model.RuleKillFracture, i, m.fracture.value, "Column of kill mud below fracture", m.fracture.tvd, model.PathOf(i, "riserless.kill_density"))
	}
}

// judgeRiserlessPits compares what is to be aboard at once with the pits: kill mud, and the stock or the spot fluid.
func (e *evaluation) judgeRiserlessPits(i int, p *page, d *dumping) {
	r, rig := &e.plan.Sections[i].Riserless, &e.plan.Rig
	spot := d.spot
	if d.spotCut > 0 {
		spot = 0 // it is in the stock
	}
	aboard := r.KillVolume.SI + r.StockVolume.SI + spot
	if aboard == 0 {
		return
	}
	capacity := rig.ActivePits.SI + rig.ReservePits.SI
	missing := first(needs(rig.ActivePits, "rig.active_pits", "volume of the active pits"), needs(rig.ReservePits, "rig.reserve_pits", "volume of the reserve pits"), d.spotGap)
	p.put("mud.riserless.pits", "Pits left over", quantity.Volume, capacity-aboard, missing, func(w *Working) {
		w.Formula = "left = active + reserve pits - kill mud - stock - spot fluid that is not cut from it"
		w.in("pits", "active and reserve", quantity.Volume, capacity)
		w.in("kill", "mud", quantity.Volume, r.KillVolume.SI)
		w.in("stock", "aboard", quantity.Volume, r.StockVolume.SI)
		w.in("spot", "not cut from it", quantity.Volume, spot)
		w.Source = "volume balance"
		w.Note = "Sweeps are mixed as they go and need room on top."
	})
	if !missing.open() {
		e.judge(model.RulePitsHold, i, capacity-aboard, "Pits left over kill mud, stock and spot fluid", "", 0, model.PathOf(i, "riserless.stock_volume"))
	}
}
