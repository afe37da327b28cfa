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
	p.also("control.line.velocity", "velocity", quantity.Velocity, l.velocity(), l.missing, func(w *Working) {
		w.Formula, w.Source = "v = flow / area", "geometry"
		l.working(w)
	})
}

// shutInFigures adds the kick on the sheet.
func (e *evaluation) shutInFigures(i int, p *page, k *killing) {
	in := &k.in
	s := &e.plan.Sections[i]
	p.group = "Kick shut in, bit at TD"
	origin := "planned"
	if s.Kill.Gain.IsSet() {
		origin = "read"
	}
	p.put("control.kill.volume", "Pit gain", quantity.Volume, in.volume, in.missing, func(w *Working) {
		w.Formula, w.Source = "as read, else the influx planned, else the least tolerance", "the plan"
		w.in("V", "gain", quantity.Volume, in.volume)
	}).Note = origin
	p.also("control.kill.top", "top of it", quantity.Length, in.top, in.missing, func(w *Working) {
		w.Formula, w.Source = "as far up the annulus as the gain fills it", "geometry"
		w.in("V", "gain", quantity.Volume, in.volume)
		w.in("height", "on TVD", quantity.Length, in.height)
	})
	p.put("control.kill.pipe", "Drill pipe (SIDPP)", quantity.Pressure, in.pipe, in.missing, func(w *Working) {
		w.Formula = "SIDPP = formation pressure - mud × g × TVD"
		in.working(w, against{})
		w.Source = "hydrostatics; as read where it was read"
		w.Note = killCaution
	})
	p.put("control.kill.choke", "Choke (SICP)", quantity.Pressure, in.choke, in.missing, func(w *Working) {
		w.Formula = "SICP = formation pressure - gas in the annulus - mud above it, up the choke line"
		in.working(w, against{})
		w.in("top", "of the influx, along hole", quantity.Length, in.top)
		w.in("height", "of the influx, TVD", quantity.Length, in.height)
		w.Source = "hydrostatics, one bubble of real gas"
		w.Note = killCaution
	})
	if s.Kill.Annulus.IsSet() {
		e.influxFigure(i, p, in)
	}
}

// influxFigure adds SICP as read, and what it says of the influx.
func (e *evaluation) influxFigure(i int, p *page, in *shutIn) {
	p.also("control.kill.choke.read", "read", quantity.Pressure, in.read, gap{}, func(w *Working) {
		w.Formula, w.Source = "as read", "the plan"
		w.in("SICP", "read", quantity.Pressure, in.read)
	})
	missing := in.missing
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
	p.group = "Kill sheet"
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
		w.Formula = "slow = recorded × mud / mud when recorded"
		if k.slowRow == 0 {
			w.Formula = "slow = friction of lines, string, bit and annulus at the kill rate, booster off"
			w.Source = by(k.line.rub)
		} else {
			w.in("in", "mud when it was recorded", quantity.Density, k.slowMud)
			w.Source = "recorded; friction taken to go with the density (common practice)"
		}
		w.in("mud", "static", quantity.Density, k.in.mud)
		w.in("flow", "kill rate", quantity.Flow, k.killFlow)
		w.Note = killCaution
	}
	p.put("control.kill.slow", "Slow pressure", quantity.Pressure, k.slow, k.missing, slow).Note = k.slowFrom()
	p.also("control.kill.flow", "flow", quantity.Flow, k.killFlow, k.missing, func(w *Working) {
		w.Formula, w.Source = "flow = rate × output", "pump output"
		w.in("output", "of the kill pump", quantity.StrokeVolume, k.stroke)
		w.in("rate", "kill rate", quantity.StrokeRate, k.killFlow/k.stroke)
	})
	p.put("control.kill.initial", "Initial (ICP)", quantity.Pressure, k.initial, k.missing, func(w *Working) {
		w.Formula = "ICP = SIDPP + overbalance + slow"
		w.in("SIDPP", "shut in", quantity.Pressure, k.in.pipe)
		w.in("overbalance", "held", quantity.Pressure, k.over)
		w.in("slow", k.slowFrom(), quantity.Pressure, k.slow)
		w.Source = "Lapeyrouse, Formulas and Calculations, ch. 4"
		w.Note = killCaution
	})
	p.put("control.kill.final", "Final (FCP)", quantity.Pressure, k.final, k.missing, func(w *Working) {
		w.Formula = "FCP = slow × kill mud / mud + overbalance"
		w.in("slow", k.slowFrom(), quantity.Pressure, k.slow)
		w.in("kill", "mud, rounded up", quantity.Density, k.mud)
		w.in("mud", "static", quantity.Density, k.in.mud)
		w.in("overbalance", "held", quantity.Pressure, k.over)
		w.Source = "Lapeyrouse, Formulas and Calculations, ch. 4"
		w.Note = "With the kill mud at the bit. " + killCaution
	})
}

// killBarite adds what brings the active system to kill mud.
func (e *evaluation) killBarite(i int, p *page, k *killing) {
	holds := e.contentsOf(i)
	system := e.treat(i, &holds)
	system.mud.Volume, system.missing = e.active(i, &holds)
	system.missing, system.path = first(system.missing, k.missing), model.PathOf(i, "kill.drill_pipe")
	if k.mud <= k.in.mud {
		return
	}
	a, missing := system.weighUp(k.mud)
	e.additionFigures(p, "control.kill.barite", "Weighting up to it", &system, a, k.mud, missing)
}
