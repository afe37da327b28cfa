package calc

import (
	"borewalk/calc/mixing"
	"borewalk/model"
	"borewalk/model/quantity"
)

// mudRecipe adds what the section's mud is made from, its brine, and what of it is solid.
func (e *evaluation) mudRecipe(i int, p *page, build batch) {
	r := &e.plan.Sections[i].Recipe
	if r.Base.IsSet() && (build.Volume > 0 || build.missing.open()) {
		e.buildFigures(i, p, build)
	}
	if salt, ok := saltOf(r); ok {
		e.brineFigures(i, p, salt)
	}
	if r.Water.IsSet() {
		e.solidsFigures(i, p)
	}
}

// built returns the base fluid and the weighting material in the mud that is to be built.
func (e *evaluation) built(i int, build batch) (a mixing.Addition, missing gap) {
	if build.missing.open() {
		return a, build.missing
	}
	// Full tanks of base fluid, of which so much gives way to weighting material.
	base := mixing.Fluid{Volume: build.Volume, Density: e.plan.Sections[i].Recipe.Base.SI}
	a, err := mixing.WeightUpKeeping(base, mixing.Material{Density: e.weighting(i).Density}, build.Density)
	if err != nil {
		return a, gap{model.PathOf(i, "recipe.base"), err.Error()}
	}
	return a, gap{}
}

// buildFigures adds the base fluid and the weighting material in the mud that is to be built.
func (e *evaluation) buildFigures(i int, p *page, build batch) {
	base := e.plan.Sections[i].Recipe.Base.SI
	a, missing := e.built(i, build)
	parts := func(w *Working) {
		w.in("V", "mud to build", quantity.Volume, build.Volume)
		w.in("rho", "mud", quantity.Density, build.Density)
		w.in("rho_b", "base fluid", quantity.Density, base)
		w.in("rho_m", "weighting material", quantity.Density, e.weighting(i).Density)
		w.Source = "mass and volume balance"
		w.Note = "Products besides weighting material are part of the base fluid."
	}
	p.group = "Recipe, mud to build"
	p.put("mud.recipe.volume", "Mud to build", quantity.Volume, build.Volume, build.missing, func(w *Working) {
		w.Formula = "V = to build, by the pit budget; without a riser the heavy stock, else the spot fluid"
		parts(w)
	})
	p.also("mud.recipe.density", "at", quantity.Density, build.Density, build.missing, func(w *Working) {
		w.Formula = "density as given"
		parts(w)
	})
	p.put("mud.recipe.base", "Base fluid", quantity.Volume, a.Treated, missing, func(w *Working) {
		w.Formula = "V_b = V × (rho_m - rho) / (rho_m - rho_b)"
		parts(w)
	})
	p.put("mud.recipe.material", "Weighting material", quantity.Mass, a.Mass, missing, func(w *Working) {
		w.Formula = "m = rho_m × V × (rho - rho_b) / (rho_m - rho_b)"
		parts(w)
	})
	p.also("mud.recipe.material.sacks", "100 lb sacks", quantity.Count, a.Mass/hundredPounds, missing, func(w *Working) {
		w.Formula = "sacks = m / 100 lb"
		w.in("m", "weighting material", quantity.Mass, a.Mass)
		w.Source = "handbooks' sack"
	})
}

// saltOf returns the salt in the mud's water, and false when there is none.
func saltOf(r *model.Recipe) (mixing.Salt, bool) {
	switch r.Salt {
	case model.SaltNaCl:
		return mixing.SodiumChloride(), true
	case model.SaltKCl:
		return mixing.PotassiumChloride(), true
	case model.SaltCaCl:
		return mixing.CalciumChloride(), true
	}
	return mixing.Salt{}, false
}

// usualBrine is the volume of brine in m3 that is worked out where none is given.
const usualBrine = 100

// laliberte is where the densities of brines are from.
const laliberte = "Laliberte and Cooper, J. Chem. Eng. Data 49 (2004) 1141 (from memory), at 20 degC; within 0.2 % of handbook tables"

// brine returns a volume of the brine in section i's mud, by its salt or by its density.
func (e *evaluation) brine(i int, salt mixing.Salt, volume float64) (b mixing.Brine, missing gap) {
	r := &e.plan.Sections[i].Recipe
	var err error
	key := "recipe.salt_share"
	switch {
	case r.SaltShare.IsSet():
		b, err = salt.Dissolve(volume, r.SaltShare.SI)
	case r.BrineDensity.IsSet():
		key = "recipe.brine_density"
		b, err = salt.DissolveTo(volume, r.BrineDensity.SI)
	default:
		return b, lacks(r.SaltShare, i, key, "salt in the brine")
	}
	if err != nil {
		return b, gap{model.PathOf(i, key), err.Error()}
	}
	return b, gap{}
}

// brineFigures adds what a volume of brine is made of.
func (e *evaluation) brineFigures(i int, p *page, salt mixing.Salt) {
	r := &e.plan.Sections[i].Recipe
	volume := usual(r.Brine, usualBrine)
	b, missing := e.brine(i, salt, volume)
	parts := func(w *Working) {
		w.in("V", "brine", quantity.Volume, volume)
		w.in("share", salt.Name+" by mass", quantity.Ratio, b.Share)
		w.in("rho", "brine", quantity.Density, b.Density)
		w.Source = laliberte
		w.Note = "Pure and dry salt: by purity and crystal water more of it. Brine is lighter when it is warm."
	}
	p.group = "Brine, " + salt.Name
	p.put("mud.recipe.brine", "Brine", quantity.Density, b.Density, missing, func(w *Working) {
		w.Formula = "1 / rho = (1 - share) / rho_water + share / rho_salt, rho_salt as it is dissolved"
		parts(w)
	})
	p.also("mud.recipe.brine.volume", "volume", quantity.Volume, b.Volume, missing, func(w *Working) {
		w.Formula = "volume as given"
		parts(w)
	})
	p.put("mud.recipe.salt", "Salt for it", quantity.Mass, b.Salt, missing, func(w *Working) {
		w.Formula = "m = V × rho × share"
		parts(w)
	})
	p.put("mud.recipe.water", "Fresh water for it", quantity.Volume, b.Water, missing, func(w *Working) {
		w.Formula = "V_w = V × rho × (1 - share) / rho_water"
		parts(w)
	})
	p.also("mud.recipe.water.gain", "grows by", quantity.Ratio, b.Gain(), missing, func(w *Working) {
		w.Formula = "growth = V / V_w - 1"
		w.in("V_w", "fresh water", quantity.Volume, b.Water)
		parts(w)
	})
}

// Densities that a blank entry of the recipe means, in kg/m3: common practice, from memory.
const (
	usualOil   = 800
	usualSolid = 2600
)

// readingError is by how much a retort's reading may be out, as a share of the volume: common practice, from memory.
const readingError = 0.01

// solidsFigures adds the solids of the mud, parted by their density.
func (e *evaluation) solidsFigures(i int, p *page) {
	s := &e.plan.Sections[i]
	r := &s.Recipe
	retort := mixing.Retort{Density: s.Density.SI, Oil: r.Oil.SI, Water: r.Water.SI, OilDensity: usual(r.OilDensity, usualOil),
		High: e.weighting(i).Density, Low: usual(r.Low, usualSolid)}
	missing := lacks(s.Density, i, "density", "mud density")
	if salt, ok := saltOf(r); ok {
		b, unknown := e.brine(i, salt, 1)
		retort.Salt, retort.Share, missing = salt, b.Share, first(missing, unknown)
	}
	var parts mixing.Solids
	if !missing.open() {
		var err error
		if parts, err = retort.Part(); err != nil {
			missing = gap{model.PathOf(i, "recipe.water"), err.Error()}
		} else if parts.High < -readingError || parts.Low < -readingError {
			missing = gap{model.PathOf(i, "recipe.water"), "retort and mud density do not belong together: one kind of solids comes out below zero"}
		}
	}
	if !missing.open() {
		e.judge(model.RuleDrilledSolids, i, parts.Low, "Drilled solids in the mud, by retort", "", 0, model.PathOf(i, "recipe.water"))
	}
	shown := func(w *Working) {
		w.in("rho", "mud", quantity.Density, retort.Density)
		w.in("oil", "share", quantity.Ratio, retort.Oil)
		w.in("water", "share", quantity.Ratio, retort.Water)
		w.in("brine", "water with its salt", quantity.Ratio, parts.Brine)
		w.in("rho_o", "oil", quantity.Density, retort.OilDensity)
		w.in("rho_br", "brine", quantity.Density, parts.BrineDensity)
		w.in("rho_h", "weighting material", quantity.Density, retort.High)
		w.in("rho_l", "drilled solids", quantity.Density, retort.Low)
		w.Source = "API RP 13B-1 and 13B-2, solids by retort (from memory)"
	}
	p.group = "Solids, by retort"
	p.put("mud.recipe.solids", "Solids", quantity.Ratio, parts.All, missing, func(w *Working) {
		w.Formula = "solids = 1 - oil - brine"
		shown(w)
	})
	p.also("mud.recipe.solids.mean", "mean density", quantity.Density, parts.Mean, missing, func(w *Working) {
		w.Formula = "mean = (rho - oil × rho_o - brine × rho_br) / solids"
		shown(w)
	})
	p.put("mud.recipe.high", "Weighting material", quantity.Ratio, parts.High, missing, func(w *Working) {
		w.Formula = "high = (rho - oil × rho_o - brine × rho_br - rho_l × solids) / (rho_h - rho_l)"
		w.in("solids", "share", quantity.Ratio, parts.All)
		shown(w)
	})
	p.also("mud.recipe.high.mass", "in the mud", quantity.Concentration, parts.HighMass, missing, func(w *Working) {
		w.Formula = "mass in the volume = high × rho_h"
		w.in("high", "share", quantity.Ratio, parts.High)
		shown(w)
	})
	p.put("mud.recipe.low", "Drilled solids", quantity.Ratio, parts.Low, missing, func(w *Working) {
		w.Formula = "low = solids - high"
		w.in("solids", "share", quantity.Ratio, parts.All)
		w.in("high", "share", quantity.Ratio, parts.High)
		shown(w)
	})
	p.also("mud.recipe.low.mass", "in the mud", quantity.Concentration, parts.LowMass, missing, func(w *Working) {
		w.Formula = "mass in the volume = low × rho_l"
		w.in("low", "share", quantity.Ratio, parts.Low)
		shown(w)
	})
}
