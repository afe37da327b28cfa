package calc

import (
	"borewalk/calc/mixing"
	"borewalk/model"
	"borewalk/model/quantity"
)

// treating is the mud of a section that is weighted up or diluted, and with what.
type treating struct {
	missing  gap // for the mud
	mud      mixing.Fluid
	material mixing.Material
	path     model.Path // of the wanted density, where a treatment cannot be made
	keep     bool
}

// usualStep is the step of density in kg/m3 to have weighting material for where the plan does not say: about 1 ppg.
const usualStep = 120

// active returns the volume of mud that is treated when the whole system is: in the pits, round and in the string with the
// bit at TD, and in the lines; without a riser what is in the pits.
func (e *evaluation) active(i int, holds *contents) (float64, gap) {
	surface, missing := e.surfaceMud(i)
	if !e.sections[i].rig {
		return surface, missing
	}
	return surface + holds.inside() + holds.outside() + e.lineVolume(), first(missing, holds.missing, e.gaps.bop)
}

// weighting returns the weighting material of the rig, with the base fluid that section i pours in with it.
func (e *evaluation) weighting(i int) mixing.Material {
	s := &e.plan.Sections[i]
	m := mixing.Material{Density: usual(e.plan.Rig.WeightingDensity, mixing.Barite), Wetting: s.Treatment.Wetting.SI, LiquidDensity: s.Recipe.Base.SI}
	if !s.Recipe.Base.IsSet() {
		m.LiquidDensity = e.seawater()
	}
	if !(m.LiquidDensity > 0) {
		m.Wetting = 0
	}
	return m
}

// treat returns the mud of section i as it is to be treated.
func (e *evaluation) treat(i int, holds *contents) treating {
	s := &e.plan.Sections[i]
	t := treating{material: e.weighting(i), path: model.PathOf(i, "treatment.density"), keep: s.Treatment.Keep == model.VolumeKept}
	if s.Treatment.Volume.IsSet() {
		t.mud.Volume = s.Treatment.Volume.SI
	} else {
		t.mud.Volume, t.missing = e.active(i, holds)
	}
	t.mud.Density = s.Density.SI
	t.missing = first(t.missing, lacks(s.Density, i, "density", "mud density"))
	return t
}

// weighUp brings the mud to a density, and says what keeps it from that.
func (t *treating) weighUp(density float64) (a mixing.Addition, missing gap) {
	if t.missing.open() {
		return a, t.missing
	}
	var err error
	if t.keep {
		a, err = mixing.WeightUpKeeping(t.mud, t.material, density)
	} else {
		a, err = mixing.WeightUp(t.mud, t.material, density)
	}
	if err != nil {
		return a, gap{t.path, err.Error()}
	}
	return a, gap{}
}

// changeFigures adds what it takes to bring a section's mud to other densities: a step, the shoe test, and what is wanted.
func (e *evaluation) changeFigures(i int, p *page, holds *contents) {
	t := e.treat(i, holds)
	s := &e.plan.Sections[i]
	if e.sections[i].rig {
		e.activeFigure(i, p, holds)
		e.weightInHand(i, p, holds, &t)
	}
	if s.Treatment.Density.IsSet() {
		e.wantedFigures(i, p, &t)
	}
	if s.Treatment.SecondDensity.IsSet() {
		e.blendFigures(i, p, &t)
	}
}

// activeFigure adds the active system.
func (e *evaluation) activeFigure(i int, p *page, holds *contents) {
	volume, missing := e.active(i, holds)
	surface, _ := e.surfaceMud(i)
	p.group = "Weighting up"
	p.put("mud.change.active", "Active system", quantity.Volume, volume, missing, func(w *Working) {
		w.Formula = "V = active pits + inside the string + annulus and riser + lines, bit at TD"
		w.in("pits", "while drilling", quantity.Volume, surface)
		w.in("inside", "the string", quantity.Volume, holds.inside())
		w.in("annulus", "and riser", quantity.Volume, holds.outside())
		w.in("lines", "choke, kill, booster", quantity.Volume, e.lineVolume())
		w.Source = "geometry"
	})
}

// weightInHand adds the weighting material that lifts the active system by a step and to the shoe test, and compares what
// is aboard.
func (e *evaluation) weightInHand(i int, p *page, holds *contents, t *treating) {
	system := *t
	system.mud.Volume, system.missing = e.active(i, holds)
	system.missing = first(system.missing, lacks(e.plan.Sections[i].Density, i, "density", "mud density"))
	step := usual(e.plan.Sections[i].Treatment.Step, usualStep)
	system.path = model.PathOf(i, "treatment.step")
	aboard := e.plan.Rig.Barite
	weigh := func(key, name string, density float64, rule model.RuleID, what string) {
		a, missing := system.weighUp(density)
		e.additionFigures(p, key, name, &system, a, density, missing)
		if aboard.IsSet() && !missing.open() {
			e.judge(rule, i, aboard.SI-a.Mass, what, "", 0, "rig.barite")
		}
	}
	weigh("mud.change.step", "Up by the step", system.mud.Density+step, model.RuleWeightStep, "Weighting material over a step of the active system")
	if test, _, ok := e.shoeTest(i); ok && test > system.mud.Density {
		system.path = e.testEntry(i)
		weigh("mud.change.test", "To the shoe test", test, model.RuleWeightToTest, "Weighting material over the active system at the shoe test")
	}
	if aboard.IsSet() && (i == 0 || !e.sections[i-1].rig) { // once for the well
		e.judge(model.RuleWeightLeast, i, aboard.SI, "Weighting material aboard", "", 0, "rig.barite")
	}
}

// hundredPounds is the sack of the handbooks in kg.
const hundredPounds = 45.359237

// additionFigures adds a line for one weight-up: material, sacks, the density reached, the volume gained or dumped, and the
// time of mixing.
func (e *evaluation) additionFigures(p *page, key, name string, t *treating, a mixing.Addition, density float64, missing gap) {
	const source = "Bourgoyne et al., Applied Drilling Engineering, ch. 2 (from memory); mass and volume balance"
	shown := func(w *Working) {
		w.in("V", "mud", quantity.Volume, t.mud.Volume)
		w.in("rho1", "mud", quantity.Density, t.mud.Density)
		w.in("rho2", "wanted", quantity.Density, density)
		w.in("rho_m", "weighting material", quantity.Density, t.material.Density)
		if t.material.Wetting > 0 {
			w.in("x", "liquid with it, by mass", quantity.MixWater, t.material.Wetting)
			w.in("rho_l", "that liquid", quantity.Density, t.material.LiquidDensity)
		}
		w.Source = source
	}
	p.put(key, name, quantity.Mass, a.Mass, missing, func(w *Working) {
		w.Formula = "m = V × (rho2 - rho1) / (1 + x rho_l - rho2 × (1/rho_m + x)), x = 0 without liquid"
		if t.keep {
			w.Formula = "m = dumped / (1/rho_m + x), dumped = V × (rho2 - rho1) / ((1 + x rho_l) / (1/rho_m + x) - rho1)"
		}
		shown(w)
	})
	p.also(key+".sacks", "100 lb sacks", quantity.Count, a.Mass/hundredPounds, missing, func(w *Working) {
		w.Formula = "sacks = m / 100 lb"
		w.in("m", "weighting material", quantity.Mass, a.Mass)
		w.Source = "handbooks' sack"
	})
	p.also(key+".density", "to", quantity.Density, density, missing, func(w *Working) {
		w.Formula = "density as wanted"
		shown(w)
	})
	gain, column, formula := a.Gain, "gained", "gained = m × (1/rho_m + x)"
	if t.keep {
		gain, column, formula = a.Discard, "dumped first", "dumped = V × (rho2 - rho1) / ((1 + x rho_l) / (1/rho_m + x) - rho1)"
	}
	p.also(key+".volume", column, quantity.Volume, gain, missing, func(w *Working) {
		w.Formula = formula
		w.in("m", "weighting material", quantity.Mass, a.Mass)
		shown(w)
	})
	if rate := e.plan.Rig.WeightingRate; rate.IsSet() {
		p.also(key+".time", "mixing", quantity.Hours, a.Mass/rate.SI, missing, func(w *Working) {
			w.Formula = "time = m / rate"
			w.in("m", "weighting material", quantity.Mass, a.Mass)
			w.in("rate", "of mixing", quantity.MassRate, rate.SI)
			w.Source = "common practice"
		})
	}
}

// wantedFigures adds the treatment that brings the mud to the density wanted: up with weighting material, down with base
// fluid.
func (e *evaluation) wantedFigures(i int, p *page, t *treating) {
	s := &e.plan.Sections[i]
	wanted := s.Treatment.Density.SI
	p.group = "Treatment"
	if wanted >= t.mud.Density || t.missing.open() {
		a, missing := t.weighUp(wanted)
		e.additionFigures(p, "mud.change.wanted", "Weighting material", t, a, wanted, missing)
		if t.material.Wetting > 0 {
			p.put("mud.change.wetting", "Liquid with it", quantity.Volume, a.Wetting, missing, func(w *Working) {
				w.Formula = "V = m × x"
				w.in("m", "weighting material", quantity.Mass, a.Mass)
				w.in("x", "liquid, by mass", quantity.MixWater, t.material.Wetting)
				w.Source = "common practice"
			})
		}
		e.afterFigure(p, t, a.Result.Volume, missing)
		return
	}
	e.diluteFigures(i, p, t, wanted)
}

// diluted returns the base fluid that thins the mud of section i down to a density.
func (e *evaluation) diluted(i int, t *treating, wanted float64) (d mixing.Dilution, missing gap) {
	base := e.plan.Sections[i].Recipe.Base
	if missing = lacks(base, i, "recipe.base", "base fluid to dilute with"); missing.open() {
		return d, missing
	}
	var err error
	if t.keep {
		d, err = mixing.DiluteKeeping(t.mud, base.SI, wanted)
	} else {
		d, err = mixing.Dilute(t.mud, base.SI, wanted)
	}
	if err != nil {
		return d, gap{t.path, err.Error()}
	}
	return d, gap{}
}

// diluteFigures adds the base fluid that thins the mud down.
func (e *evaluation) diluteFigures(i int, p *page, t *treating, wanted float64) {
	base := e.plan.Sections[i].Recipe.Base
	d, missing := e.diluted(i, t, wanted)
	why := func(formula string) func(*Working) {
		return func(w *Working) {
			w.Formula = formula
			w.in("V", "mud", quantity.Volume, t.mud.Volume)
			w.in("rho1", "mud", quantity.Density, t.mud.Density)
			w.in("rho2", "wanted", quantity.Density, wanted)
			w.in("rho_b", "base fluid", quantity.Density, base.SI)
			w.Source = "mass and volume balance"
		}
	}
	formula := "V_b = V × (rho1 - rho2) / (rho2 - rho_b)"
	if t.keep {
		formula = "V_b = V × (rho1 - rho2) / (rho1 - rho_b)"
	}
	p.put("mud.change.base", "Base fluid to add", quantity.Volume, d.Added, missing, why(formula))
	if t.keep {
		p.also("mud.change.base.discard", "dumped first", quantity.Volume, d.Discard, missing, why("dumped = V × (rho1 - rho2) / (rho1 - rho_b)"))
	}
	e.afterFigure(p, t, d.Result.Volume, missing)
}

// afterFigure adds the volume after a treatment.
func (e *evaluation) afterFigure(p *page, t *treating, volume float64, missing gap) {
	p.put("mud.change.after", "Volume after", quantity.Volume, volume, missing, func(w *Working) {
		w.Formula = "V after = V - dumped + added"
		w.in("V", "mud", quantity.Volume, t.mud.Volume)
		w.in("V after", "treated", quantity.Volume, volume)
		w.Source = "volume balance"
	})
}

// blendFigures adds what the mud and a second one make together, and the part of the second that the wanted density needs.
func (e *evaluation) blendFigures(i int, p *page, t *treating) {
	treatment := &e.plan.Sections[i].Treatment
	second := mixing.Fluid{Volume: treatment.SecondVolume.SI, Density: treatment.SecondDensity.SI}
	p.group = "Blend with a second mud"
	parts := func(w *Working) {
		w.in("V1", "mud", quantity.Volume, t.mud.Volume)
		w.in("rho1", "mud", quantity.Density, t.mud.Density)
		w.in("V2", "second mud", quantity.Volume, second.Volume)
		w.in("rho2", "second mud", quantity.Density, second.Density)
		w.Source = "mass and volume balance"
	}
	if treatment.SecondVolume.IsSet() {
		var mix mixing.Fluid
		missing := t.missing
		if !missing.open() {
			var err error
			if mix, err = mixing.Mix(t.mud, second); err != nil {
				missing = gap{model.PathOf(i, "treatment.second_volume"), err.Error()}
			}
		}
		p.put("mud.change.blend", "Blend", quantity.Density, mix.Density, missing, func(w *Working) {
			w.Formula = "rho = (V1 × rho1 + V2 × rho2) / (V1 + V2)"
			parts(w)
		})
		p.also("mud.change.blend.volume", "volume", quantity.Volume, mix.Volume, missing, func(w *Working) {
			w.Formula = "V = V1 + V2"
			parts(w)
		})
	}
	if !treatment.Density.IsSet() {
		return
	}
	wanted, missing := treatment.Density.SI, t.missing
	var share float64
	if !missing.open() {
		var err error
		if share, err = mixing.Cut(min(t.mud.Density, second.Density), max(t.mud.Density, second.Density), wanted); err != nil {
			missing = gap{model.PathOf(i, "treatment.second_density"), err.Error()}
		}
		if second.Density < t.mud.Density {
			share = 1 - share
		}
	}
	formula := func(text string) func(*Working) {
		return func(w *Working) {
			w.Formula = text
			w.in("wanted", "density", quantity.Density, wanted)
			parts(w)
		}
	}
	p.put("mud.change.part", "Second mud, share", quantity.Ratio, share, missing, formula("share = (wanted - rho1) / (rho2 - rho1)"))
	p.also("mud.change.part.volume", "to V1", quantity.Volume, t.mud.Volume*share/(1-share), missing, formula("V = V1 × share / (1 - share)"))
}
