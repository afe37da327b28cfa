package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/slurry"
	"borewalk/model"
)

// kept is what of a stock stays aboard in a section for trouble, kg or m3, and by what.
type kept struct {
	amount  float64
	formula string
	source  string
	missing gap
}

// What practice keeps aboard.
const (
	plugsKept   = 2                                         // cement plugs
	plugLength  = 100.0                                     // m of hole each
	neatWater   = 0.44                                      // of the mass of class G cement (API Spec 10A, from memory)
	pillsKept   = 300 * 42 * 231 * 0.0254 * 0.0254 * 0.0254 // m3: 300 bbl of mud with material against losses
	pillLoading = 30 / 0.35                                 // kg/m3: 30 lb in a barrel of such mud (common practice, from memory)
)

// keptOf returns what of a stock is to stay aboard while section i is worked: as entered, else by practice.
func (e *evaluation) keptOf(i int, stock *model.Stock) kept {
	if least := stock.Least(); least.IsSet() {
		return kept{amount: least.SI, formula: "as given", source: "as entered"}
	}
	switch stock.Item {
	case model.Barite:
		return e.bariteKept(i)
	case model.DryCement:
		return e.cementKept(i)
	case model.KillMudStock:
		return e.killMudKept(i)
	case model.LostCirculation:
		return kept{amount: pillsKept * pillLoading, formula: "m = 300 bbl of mud × 30 lb in each barrel", source: "stock for 300 bbl: drillingforgas.com, contingency stock levels; 30 lb in a barrel from memory"}
	}
	return kept{formula: "none: the plan gives nothing, and practice has nothing for it", source: "common practice"}
}

// bariteKept returns the weighting material that lifts the active system by the step in hand, and no less than the least aboard.
func (e *evaluation) bariteKept(i int) kept {
	k := kept{amount: e.limit(model.RuleWeightLeast, 0), formula: "the least weighting material aboard", source: model.Rules()[model.RuleWeightLeast].Source}
	if !e.sections[i].rig {
		return k
	}
	s := &e.plan.Sections[i]
	holds := e.contentsOf(i)
	t := e.treat(i, &holds)
	t.mud.Volume, t.missing = e.active(i, &holds)
	t.missing = first(t.missing, lacks(s.Density, i, "density", "mud density"))
	a, missing := t.weighUp(s.Density.SI + usual(s.Treatment.Step, usualStep))
	if k.missing = missing; a.Mass > k.amount {
		k.amount, k.formula = a.Mass, "m that lifts the active system by the step in hand, which is more than the least aboard"
	}
	return k
}

// cementKept returns neat cement for plugs in the hole of the section, in gauge, no longer than its open hole.
func (e *evaluation) cementKept(i int) kept {
	h := &e.sections[i]
	length := min(plugsKept*plugLength, h.td-e.openFrom(i))
	yield := 1.0/slurry.CementDensity + neatWater/slurry.FreshWater // m3 of slurry for each kg of cement
	return kept{amount: length * bore.Area(h.size) / yield, missing: h.missing,
		formula: "m = 2 × 100 m, or all open hole where that is less, × pi/4 × hole² / (1 / 3140 kg/m3 + 0.44 / 998 kg/m3), neat class G, hole in gauge",
		source:  "a company's published standard: cement for two plugs of 100 m in the hole"}
}

// killMudKept returns the kill mud that is aboard while a hole is drilled without a riser.
func (e *evaluation) killMudKept(i int) kept {
	h := &e.sections[i]
	k := kept{formula: "none: counts without a riser, where there is kill mud", source: "common practice"}
	if r := &e.plan.Sections[i].Riserless; !h.rig && r.KillDensity.IsSet() {
		k.amount, k.missing = e.limit(model.RuleKillMud, 0)*e.newHole(i), h.missing
		k.formula, k.source = "V = new hole in gauge × the share asked for", model.Rules()[model.RuleKillMud].Source
	}
	return k
}
