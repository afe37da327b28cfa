package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// asBuilt returns the plan that counts: what is as built stands in it in place of what was planned, and the depths of hole and
// shoe that follow from both agree. Where nothing is as built, that is the plan itself.
func asBuilt(given *model.Plan) *model.Plan {
	plan := model.AsBuilt(given)
	if plan == given {
		return given
	}
	for i := range plan.Sections {
		settleDepths(&given.Sections[i], &plan.Sections[i])
	}
	return plan
}

// settleDepths fixes a section by its TD once TD or shoe is as built. With both, the rathole is what is between them; a shoe
// alone hangs where it is in the hole as planned; below a TD alone the planned rathole stays.
func settleDepths(given, s *model.Section) {
	shoe := s.Built.Shoe
	if s.Completion == model.OpenHole || !s.Built.TD.IsSet() && !shoe.IsSet() {
		return
	}
	behind := openerBehind(s)
	if !s.Built.TD.IsSet() && given.DepthBy == model.ByShoe {
		if !given.Shoe.IsSet() || !given.Rathole.IsSet() {
			return // the hole is planned by nothing but the shoe as built
		}
		s.TD = quantity.Value{SI: given.Shoe.SI + given.Rathole.SI + behind, Unit: given.Shoe.Unit}
	}
	s.DepthBy = model.ByTD
	if shoe.IsSet() && s.TD.IsSet() {
		s.Rathole = quantity.Value{SI: s.TD.SI - behind - shoe.SI, Unit: shoe.Unit}
	}
}

// openerBehind returns how far in m full-size hole ends above the bit: not at all where the bit drills the full size.
func openerBehind(s *model.Section) float64 {
	if s.Bit.IsSet() && s.Bit.SI < s.Hole.SI {
		return s.OpenerBehind.SI
	}
	return 0
}

// planned returns the run over the plan as it was before anything was as built, to hold what came to be against it. It works out
// what it is asked for and no more.
func (e *evaluation) planned() *evaluation {
	if e.given == e.plan {
		return e
	}
	if e.before == nil {
		e.before = begin(model.AsPlanned(e.given), nil, 0)
	}
	return e.before
}

// sendToActuals makes what points at a planned entry point at the one that counts in its place.
func (e *evaluation) sendToActuals() {
	if e.given == e.plan {
		return
	}
	follow := func(path model.Path) model.Path {
		if ref, ok := model.Find(e.given, path); ok {
			if actual, ok := ref.Actual(e.given); ok {
				return actual.Path()
			}
		}
		return path
	}
	for k := range e.result.Findings {
		f := &e.result.Findings[k]
		f.Mend = follow(f.Mend)
	}
	for i := range e.result.Sections {
		for k := range e.result.Sections[i].Figures {
			if f := &e.result.Sections[i].Figures[k]; f.Mend != "" {
				f.Mend = follow(f.Mend)
			}
		}
	}
	if e.explain != nil {
		for k := range e.explain.workings {
			f := &e.explain.workings[k].Figure
			f.Mend = follow(f.Mend)
		}
	}
}
