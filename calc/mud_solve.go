package calc

import (
	"borewalk/model"
)

// mudProposals looks for the depth from which weighted mud can be pumped with the stock aboard, the highest density to which
// the weighting material aboard lifts the mud, and the most reserve mud that the pits hold.
func mudProposals(plan *model.Plan, i int) []Proposal {
	e := runPages(plan, i, nil)
	h, s := &e.sections[i], &e.plan.Sections[i]
	if h.missing.open() {
		return nil
	}
	propose := func(title, gives, why, note string, s search) Proposal {
		return e.proposed(i, Proposal{Title: title, Gives: gives, Note: note, Why: why}, s)
	}
	least := func(key string, limit float64) func(*Result) bool {
		return func(r *Result) bool {
			f, ok := r.Sheet(i).Find(key)
			return ok && f.OK && f.Value >= limit
		}
	}
	var list []Proposal
	if !h.rig && s.Riserless.StockVolume.IsSet() && s.WeightedDensity.IsSet() {
		const shallowest = 1 // m below the section's start, so that there is light hole to compare
		list = append(list, propose("Shallowest weighted mud that the stock lasts for", "mud.riserless.left",
			"the stock does not last however deep the weighted mud begins: look at stock, spot fluid, flow and rate of penetration",
			"down to TD, with the spot fluid", search{path: model.PathOf(i, "weighted_from"), from: h.td - shallowest, to: h.start + shallowest, keeps: least("mud.riserless.left", 0)}))
	}
	if !h.rig {
		return list
	}
	if aboard := plan.Rig.Barite; aboard.IsSet() && s.Density.IsSet() {
		path := model.PathOf(i, "treatment.density")
		ref, _ := model.Find(plan, path)
		enough := func(r *Result) bool {
			f, ok := r.Sheet(i).Find("mud.change.wanted")
			return ok && f.OK && f.Value <= aboard.SI
		}
		list = append(list, propose("Heaviest mud with the weighting material aboard", "mud.change.wanted",
			"not even the mud as it is can be treated: look at the volume treated", "of the volume treated; none is left then",
			search{path: path, from: s.Density.SI, to: ref.Field.Max.SI, keeps: enough}))
	}
	path := model.PathOf(i, "volumes.reserve")
	ref, _ := model.Find(plan, path)
	return append(list, propose("Most reserve mud that the pits hold", "mud.pits.left",
		"the pits do not hold the section's mud even without a reserve: look at what comes back with pipe and cement", "at TD, and after pipe and cement",
		search{path: path, from: 0, to: ref.Field.Max.SI, keeps: least("mud.pits.left", 0)}))
}
