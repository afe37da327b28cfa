package calc

import (
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// killSheetFigures adds the kill sheet of section i.
func (e *evaluation) killSheetFigures(i int, p *page) {
	k := e.killOf(i)
	e.lineFigure(i, p, k)
	e.shutInFigures(i, p, k)
	e.circulatingPressures(i, p, k)
	e.otherRates(i, p, k)
	e.killVolumes(i, p, k)
	e.startFigures(p, k)
	e.stepFigures(p, k)
	e.playedFigures(i, p, k)
	e.trappedFigures(i, p, k)
	e.judgeKill(i, k)
	if missing := e.slowRowGap(i); missing.open() {
		e.fault(missing)
	}
}

// lineFigure adds the friction of the line at the kill rate, measured and worked out.
func (e *evaluation) lineFigure(i int, p *page, k *killing) {
	l := k.line
	p.group = "Line at the kill rate"
	p.put("control.line", "Line friction", quantity.Pressure, l.loss, l.missing, func(w *Working) {
		w.Formula = "friction = read × mud / mud that it was read in"
		if l.at == 0 {
			w.Formula = "friction in a pipe of the line's bore and length"
			if fluid, missing := e.drillingFluid(i, e.sections[i].td); !missing.open() {
				w.fluid(fluid)
			}
		}
		l.working(w)
	}).Note = note(l.name, l.from)
	p.also("control.line.model", "worked out", quantity.Pressure, l.model, l.noModel, func(w *Working) {
		w.Formula = "friction in a pipe of the line's bore and length"
		l.working(w)
		w.Source = by(l.rub)
	})
	byFormula, missing := l.byFormula(e.plan.Sections[i].Density.SI)
	p.also("control.line.formula", "by formula", quantity.Pressure, byFormula, first(l.missing, missing), func(w *Working) {
		w.Formula = "friction = 0.000061 × mud × L × Q^1.86 / ID^4.86, in psi, ppg, ft, gpm and in"
		l.working(w)
		w.Source = "Lapeyrouse, Formulas and Calculations, subsea considerations; it knows no viscosity"
	})
	p.also("control.line.velocity", "velocity", quantity.Velocity, l.velocity(), l.missing, func(w *Working) {
		w.Formula, w.Source = "v = flow / area", "geometry"
		l.working(w)
	})
}

// shutInFigures adds the kick on the sheet.
func (e *evaluation) shutInFigures(i int, p *page, k *killing) {
	in := &k.in
	s := &e.plan.Sections[i]
	p.group = "Kick shut in"
	origin := "planned"
	if s.Kill.Gain.IsSet() {
		origin = "read"
	}
	p.put("control.kill.pipe", "SIDPP", quantity.Pressure, in.pipe, in.missing, func(w *Working) {
		w.Formula = "SIDPP = formation pressure - mud × g × TVD"
		in.working(w, against{})
		w.Source = "hydrostatics; as read where it was read"
		w.Note = killCaution
	})
	p.put("control.kill.choke", "SICP", quantity.Pressure, in.choke, first(in.missing, in.noGas), func(w *Working) {
		w.Formula = "SICP = formation pressure - gas in the annulus - mud above it, up the choke line"
		in.working(w, against{})
		w.in("top", "of the influx, along hole", quantity.Length, in.top)
		w.in("height", "of the influx, TVD", quantity.Length, in.height)
		w.Source = "hydrostatics, one bubble of real gas"
		w.Note = killCaution
	})
	if s.Kill.Annulus.IsSet() {
		p.also("control.kill.choke.read", "read", quantity.Pressure, in.read, gap{}, func(w *Working) {
			w.Formula, w.Source = "as read", "the plan"
			w.in("SICP", "read", quantity.Pressure, in.read)
		})
	}
	p.group = "Influx"
	p.put("control.kill.volume", "Pit gain", quantity.Volume, in.volume, in.missing, func(w *Working) {
		w.Formula, w.Source = "as read, else the influx planned, else the least tolerance", "the plan"
		w.in("V", "gain", quantity.Volume, in.volume)
	}).Note = origin
	p.also("control.kill.top", "top of it", quantity.Length, in.top, first(in.missing, in.noGas), func(w *Working) {
		w.Formula, w.Source = "as far up the annulus as the gain fills it", "geometry"
		w.in("V", "gain", quantity.Volume, in.volume)
		w.in("height", "on TVD", quantity.Length, in.height)
	})
	if s.Kill.Annulus.IsSet() {
		e.influxFigure(i, p, in)
	}
	e.risingFigures(i, p, in)
}

// risingFigures adds how fast gas is expected to rise while the well stays shut in, and how fast it does by the pressure's rise.
func (e *evaluation) risingFigures(i int, p *page, in *shutIn) {
	kill := &e.plan.Sections[i].Kill
	missing := in.missing
	var expected, measured float64
	if !missing.open() {
		var err error
		if expected, err = killsheet.EmpiricalRise(in.mud); err != nil {
			missing = gap{model.PathOf(i, "density"), err.Error()}
		}
	}
	p.group = "Gas rising, shut in"
	p.put("control.kill.rise", "Gas rises", quantity.Velocity, expected, missing, func(w *Working) {
		w.Formula = "v = 12 ft/s × exp(-0.37 gal/lb × mud)"
		w.in("mud", "static", quantity.Density, in.mud)
		w.Source = "drillingformulas.com, gas migration rate in a shut-in well; constants from memory"
		w.Note = "By the mud's weight alone: bubbles in a large or slanted hole have been seen to rise several times as fast. " + killCaution
	})
	if !kill.Rise.IsSet() || !kill.RiseTime.IsSet() {
		return
	}
	if !missing.open() {
		var err error
		if measured, err = killsheet.MigrationRate(in.mud, kill.Rise.SI, kill.RiseTime.SI); err != nil {
			missing = gap{model.PathOf(i, "kill.rise"), err.Error()}
		}
	}
	p.also("control.kill.rise.read", "by the gauge", quantity.Velocity, measured, missing, func(w *Working) {
		w.Formula = "v = rise / (mud × g × time)"
		w.in("rise", "of the choke pressure", quantity.Pressure, kill.Rise.SI)
		w.in("time", "within", quantity.Time, kill.RiseTime.SI)
		w.in("mud", "static", quantity.Density, in.mud)
		w.Source = "drillingformulas.com, actual gas migration rate"
		w.Note = "Pressure everywhere in the well rises with it: volume is bled by the operator's procedure, not by this. " + killCaution
	})
}

// influxFigure adds what SICP as read says of the influx.
func (e *evaluation) influxFigure(i int, p *page, in *shutIn) {
	missing := first(in.missing, in.noGas)
	if in.read < in.pipe && !missing.open() {
		missing = gap{model.PathOf(i, "kill.annulus"), "SICP is read below SIDPP: check gauges, cuttings in the annulus and influx in the string"}
	}
	var density float64
	if !missing.open() {
		var err error
		if density, err = killsheet.InfluxDensity(in.mud, in.pipe, in.read, in.height); err != nil {
			missing = gap{model.PathOf(i, "kill.annulus"), err.Error()}
		}
	}
	f := p.put("control.kill.influx", "Influx weighs", quantity.Density, density, missing, func(w *Working) {
		w.Formula = "rho = mud - (SICP - SIDPP) / (g × height)"
		w.in("mud", "static", quantity.Density, in.mud)
		w.in("SICP", "read", quantity.Pressure, in.read)
		w.in("SIDPP", "read or planned", quantity.Pressure, in.pipe)
		w.in("height", "of the gain round the BHA, TVD", quantity.Length, in.height)
		w.Source = "Bourgoyne et al., Applied Drilling Engineering, ch. 4, from memory"
		w.Note = "The hole may be larger, the gain smaller than they are taken: treat it as gas."
	})
	if f.OK {
		f.Note = "as " + killsheet.KindOf(density).String()
	}
}

// circulatingPressures adds kill mud and the pressures at the standpipe.
func (e *evaluation) circulatingPressures(i int, p *page, k *killing) {
	p.group = "Kill mud"
	kill := func(w *Working) {
		w.Formula = "kill = mud + SIDPP / (g × TVD), rounded up"
		w.in("mud", "static", quantity.Density, k.in.mud)
		w.in("SIDPP", "shut in", quantity.Pressure, k.in.pipe)
		w.in("TVD", "of the bit", quantity.Length, k.in.tvd)
		w.in("exact", "before rounding", quantity.Density, k.exact)
		w.Source = "Lapeyrouse, Formulas and Calculations, ch. 4; the balance of two columns"
		w.Note = killCaution
	}
	p.put("control.kill.mud", "Kill mud", quantity.Density, k.mud, k.missing, kill)
	p.also("control.kill.mud.exact", "exact", quantity.Density, k.exact, k.missing, kill)
	e.killBarite(i, p, k)
	slow := func(w *Working) {
		switch {
		case k.scaled:
			w.Formula = "slow = recorded × mud / mud when recorded × (rate / rate recorded)^power"
			w.Source = "the power that leads from the next rate below to the next above, 2 beyond them (common practice)"
		case k.slowRow == 0:
			w.Formula = "slow = friction of lines, string, bit and annulus at the kill rate, booster off"
			w.Source = by(k.line.rub)
		default:
			w.Formula = "slow = recorded × mud / mud when recorded"
			w.in("in", "mud when it was recorded", quantity.Density, k.slowMud)
			w.Source = "recorded; friction taken to go with the density (common practice)"
		}
		w.in("mud", "static", quantity.Density, k.in.mud)
		w.in("flow", "kill rate", quantity.Flow, k.killFlow)
		w.Note = killCaution
	}
	p.group = "Slow pressure"
	p.put("control.kill.slow", "SCR pressure", quantity.Pressure, k.slow, k.missing, slow).Note = k.slowFrom()
	p.also("control.kill.flow", "flow", quantity.Flow, k.killFlow, k.missing, func(w *Working) {
		w.Formula, w.Source = "flow = rate × output", "pump output"
		w.in("output", "of the kill pump", quantity.StrokeVolume, k.stroke)
		w.in("rate", "kill rate", quantity.StrokeRate, k.killFlow/k.stroke)
	})
	p.group = "Standpipe, kill rate"
	p.put("control.kill.initial", "ICP", quantity.Pressure, k.initial, k.missing, func(w *Working) {
		w.Formula = "ICP = SIDPP + overbalance + slow"
		w.in("SIDPP", "shut in", quantity.Pressure, k.in.pipe)
		w.in("overbalance", "held", quantity.Pressure, k.over)
		w.in("slow", k.slowFrom(), quantity.Pressure, k.slow)
		w.Source = "Lapeyrouse, Formulas and Calculations, ch. 4"
		w.Note = killCaution
	})
	p.put("control.kill.final", "FCP", quantity.Pressure, k.final, k.missing, func(w *Working) {
		w.Formula = "FCP = slow × kill mud / mud + overbalance"
		w.in("slow", k.slowFrom(), quantity.Pressure, k.slow)
		w.in("kill", "mud, rounded up", quantity.Density, k.mud)
		w.in("mud", "static", quantity.Density, k.in.mud)
		w.in("overbalance", "held", quantity.Pressure, k.over)
		w.Source = "Lapeyrouse, Formulas and Calculations, ch. 4"
		w.Note = "With the kill mud at the bit. " + killCaution
	})
}

// killSystem returns the active system of section i as it is weighted up to kill mud.
func (e *evaluation) killSystem(i int, k *killing, holds *contents) treating {
	system := e.treat(i, holds)
	system.mud.Volume, system.missing = e.active(i, holds)
	system.missing, system.path = first(system.missing, k.missing), model.PathOf(i, "kill.drill_pipe")
	return system
}

// killBarite adds what brings the active system to kill mud.
func (e *evaluation) killBarite(i int, p *page, k *killing) {
	if k.mud <= k.in.mud {
		return
	}
	holds := e.contentsOf(i)
	system := e.killSystem(i, k, &holds)
	a, missing := system.weighUp(k.mud)
	p.group = "Active system to kill mud"
	e.additionFigures(p, "control.kill.barite", "Weight-up", &system, a, k.mud, missing)
}
