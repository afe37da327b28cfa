package calc

import (
	"strconv"

	"borewalk/calc/strength"
	"borewalk/model"
	"borewalk/model/quantity"
)

// casingStrength adds what the parts of a string withstand, how the plan's loads use it, and judges the factors left.
func (e *evaluation) casingStrength(i int, p *page, c *casing) {
	if c.missing.open() {
		return
	}
	s := e.loaded(i)
	if s.missing.open() {
		e.note(i, Caution, s.missing)
	}
	e.ratingFigures(p, &s)
	if s.missing.open() {
		return
	}
	f := factors{s: &s, short: e.exposureGap(i)}
	e.pressureLoads(p, &f)
	e.pullFigures(p, &f)
	e.triaxialFigure(p, &f)
	e.governingFigures(p, &f)
	e.testFigure(p, &s)
	e.linerTestFigure(p, &s)
	e.judgeFactors(&f)
}

// ratingFigures adds what each part withstands new, alone and cold, and worn where the plan has wear.
func (e *evaluation) ratingFigures(p *page, s *loadedString) {
	c := s.casing
	worn := false
	p.group = "Strength, new pipe"
	for k := len(c.parts) - 1; k >= 0; k-- {
		n := strconv.Itoa(c.parts[k].row + 1)
		missing := s.missing
		var pipe strength.Pipe
		if !missing.open() {
			pipe = s.parts[k].Pipe
			worn = worn || s.parts[k].Lost > 0
		}
		e.ratingLine(p, "casing.rating."+n, "Part "+n+", collapse", pipe, missing)
		if joint := s.jointTension(k); joint < 1 {
			p.also("casing.rating."+n+".joint", "joint", quantity.Force, pipe.Area()*pipe.Yield*joint, missing, func(w *Working) {
				w.Formula = "joint = body yield × share"
				w.in("share", "maker's, as entered", quantity.Ratio, joint)
				w.Source = "as entered"
			})
		}
	}
	if !worn {
		return
	}
	p.group = "Strength, worn"
	for k := len(c.parts) - 1; k >= 0; k-- {
		n := strconv.Itoa(c.parts[k].row + 1)
		pipe, err := strength.Worn(s.parts[k].Pipe, s.parts[k].Lost)
		var missing gap
		if err != nil {
			missing = gap{partPath(s.section, &c.parts[k], "wear"), err.Error()}
		}
		e.ratingLine(p, "casing.worn."+n, "Part "+n+", collapse", pipe, missing)
	}
}

// jointTension returns the share of the body that part k's connection carries; 1 where that is not known.
func (s *loadedString) jointTension(k int) float64 {
	if k >= len(s.parts) {
		return 1
	}
	return s.parts[k].Connection.Tension
}

// ratingLine adds the ratings of one pipe.
func (e *evaluation) ratingLine(p *page, key, name string, pipe strength.Pipe, missing gap) {
	var collapse strength.CollapsePressure
	var burst, body float64
	if !missing.open() {
		collapse, _ = strength.Collapse(pipe)
		burst, _ = strength.InternalYield(pipe, strength.WallTolerance)
		body, _ = strength.BodyYield(pipe)
	}
	given := func(w *Working) {
		w.in("OD", "outside", quantity.Diameter, pipe.OD)
		w.in("t", "wall", quantity.Diameter, pipe.Wall)
		w.in("Y", "least yield", quantity.Stress, pipe.Yield)
	}
	p.put(key+".collapse", name, quantity.Pressure, collapse.Pressure, missing, func(w *Working) {
		w.Formula = collapseFormula(collapse.Regime)
		given(w)
		w.in("D/t", "slenderness", quantity.Number, pipe.Slenderness())
		if k, ok := strength.CoefficientsAt(pipe.Yield); ok && collapse.Regime != strength.Yielding && collapse.Regime != strength.Elastic {
			w.in("A", "plastic", quantity.Number, k.A)
			w.in("B", "plastic", quantity.Number, k.B)
			w.in("C", "plastic", quantity.Pressure, k.C)
			w.in("F", "transition", quantity.Number, k.F)
			w.in("G", "transition", quantity.Number, k.G)
		}
		w.Source = "API Bulletin 5C3, minimum collapse, as kept in API TR 5C3 / ISO 10400"
		w.Note = "New pipe without axial load, 0 inside. A high-collapse rating is the maker's."
	}).Note = collapse.Regime.String()
	p.also(key+".burst", "burst", quantity.Pressure, burst, missing, func(w *Working) {
		w.Formula = "p = 2 × Y × 0.875 × t / OD"
		given(w)
		w.Source = "Barlow with 12.5 % wall tolerance (API Bulletin 5C3, internal yield)"
	})
	p.also(key+".body", "body yield", quantity.Force, body, missing, func(w *Working) {
		w.Formula = "F = Y × pi × (OD - t) × t"
		given(w)
		w.Source = "API Bulletin 5C3, pipe body yield"
	})
}

// collapseFormula returns the formula of a regime.
func collapseFormula(r strength.Regime) string {
	switch r {
	case strength.Yielding:
		return "yield: p = 2 × Y × (D/t - 1) / (D/t)²"
	case strength.Plastic:
		return "plastic: p = Y × (A / (D/t) - B) - C"
	case strength.Transition:
		return "transition: p = Y × (F / (D/t) - G)"
	}
	return "elastic: p = 46.95e6 psi / (D/t × (D/t - 1)²)"
}

// factors are what the loads leave of a string's strength.
type factors struct {
	s     *loadedString
	cases []judged
	tri   triaxial
	short gap // what is missing for any of the cases
}

// judged is the least factor of one case, ready to be compared with a rule.
type judged struct {
	rule  model.RuleID
	words string
	hole  int
	mend  model.Path
	at    strain
}

// pressureLoads adds collapse and burst, case by case.
func (e *evaluation) pressureLoads(p *page, f *factors) {
	cases := e.loadCases(f.s)
	for _, mode := range [...]strength.Mode{strength.InCollapse, strength.InBurst} {
		p.group = "Collapse, least factor"
		rule := model.RuleCollapse
		if mode == strength.InBurst {
			p.group, rule = "Burst, least factor", model.RuleBurst
		}
		for k := range cases {
			l := &cases[k]
			if l.mode != mode {
				continue
			}
			var least strain
			var tri triaxial
			missing := l.missing
			if !missing.open() {
				least, tri, missing = e.worst(f.s, l)
			}
			why := func(w *Working) {
				if mode == strength.InCollapse {
					w.collapse(f.s, l, &least)
				} else {
					w.burst(f.s, l, &least)
				}
			}
			e.factorLine(p, l.key, l.name, quantity.Pressure, least, missing, why)
			if missing.open() {
				f.lacks(e, missing)
				continue
			}
			f.cases = append(f.cases, judged{rule, l.words, l.hole, l.mend, least})
			f.take(tri)
		}
	}
}

// lacks records what a case is missing.
func (f *factors) lacks(e *evaluation, missing gap) {
	f.short = first(f.short, missing)
	e.fault(missing)
}

// take keeps the lowest triaxial factor.
func (f *factors) take(t triaxial) {
	if t.factor > 0 && (f.tri.factor == 0 || t.factor < f.tri.factor) {
		f.tri = t
	}
}

// factorLine adds the least factor of a case, what acts and what it may be there, and the TVD. What loads nothing shows how
// far it is from doing so.
func (e *evaluation) factorLine(p *page, key, name string, kind quantity.Kind, at strain, missing gap, why func(*Working)) {
	acts := func(w *Working) {
		w.Formula = "load where it is nearest to the rating"
		why(w)
	}
	if !missing.open() && !at.loaded() {
		p.put(key+".load", name, kind, at.acts, missing, acts).Note = "not loaded"
		return
	}
	p.put(key, name, quantity.Number, at.factor, missing, func(w *Working) {
		w.Formula = "factor = rating / load"
		why(w)
	}).Note = at.weaker()
	p.also(key+".load", "load", kind, at.acts, missing, acts)
	p.also(key+".rating", "rating", kind, at.rating, missing, func(w *Working) {
		w.Formula = "rating of the weaker of pipe and connection there"
		why(w)
	})
	p.also(key+".at", "at TVD", quantity.Length, at.tvd, missing, func(w *Working) {
		w.Formula = "TVD at which rating / load is least"
		why(w)
	})
}

// weaker names what sets a rating, where it is not the pipe.
func (s *strain) weaker() string {
	if s.by == strength.Joint {
		return "connection"
	}
	return ""
}

// pullFigures adds tension, case by case.
func (e *evaluation) pullFigures(p *page, f *factors) {
	p.group = "Tension, least factor"
	cases := e.pullCases(f.s)
	for k := range cases {
		l := &cases[k]
		missing := l.missing
		var least strain
		if !missing.open() {
			if least = e.pull(f.s, l); least.rating == 0 {
				missing = gap{"well.geothermal_gradient", "the steel would be too hot to rate"}
			}
		}
		e.factorLine(p, l.key, l.name, quantity.Force, least, missing, func(w *Working) { w.tension(f.s, l, &least) })
		if missing.open() {
			f.lacks(e, missing)
			continue
		}
		f.cases = append(f.cases, judged{l.rule, l.words, f.s.section, l.mend, least})
		f.take(e.pulledTriaxial(f.s, l, &least))
	}
}

// triaxialFigure adds the lowest triaxial factor of all cases.
func (e *evaluation) triaxialFigure(p *page, f *factors) {
	t, missing := &f.tri, f.short
	if t.factor == 0 && !missing.open() {
		return
	}
	p.group = "Triaxial, least factor"
	why := func(w *Working) { w.triaxial(f.s, t) }
	p.put("casing.triaxial", "Von Mises", quantity.Number, t.factor, missing, func(w *Working) {
		w.Formula = "factor = yield / von Mises stress"
		why(w)
	}).Note = t.words
	p.also("casing.triaxial.stress", "stress", quantity.Stress, t.stress, missing, func(w *Working) {
		w.Formula = "stress = sqrt(((hoop - radial)² + (radial - axial)² + (axial - hoop)²) / 2)"
		why(w)
	})
	p.also("casing.triaxial.yield", "yield", quantity.Stress, t.yield, missing, func(w *Working) {
		w.Formula = "yield = Y × (1 - 0.00054 per K × (T - 294.26 K)), not above Y"
		why(w)
	})
	p.also("casing.triaxial.at", "at TVD", quantity.Length, t.tvd, missing, func(w *Working) {
		w.Formula = "TVD at which yield / stress is least"
		why(w)
	})
}
