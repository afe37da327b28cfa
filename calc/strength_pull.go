package calc

import (
	"borewalk/calc/strength"
	"borewalk/model"
)

// Pulls that count where the plan gives none (common practice, from memory).
const (
	usualOverpull = 50e3 * gravity // N
	usualPeak     = 1.0            // m/s
)

// pullCase is one way in which the string is pulled: the same force on top of its buoyed weight at every depth, or one
// that goes with the part.
type pullCase struct {
	key, name, words string
	adds             string // what comes on top, for the working
	extra            func(k int) float64
	bends            bool // the dogleg's bending is added
	rule             model.RuleID
	mend             model.Path
	missing          gap
}

// pullCases returns the tensions that the plan gives for a string.
func (e *evaluation) pullCases(s *loadedString) []pullCase {
	i := s.section
	loads := &e.plan.Sections[i].Loads
	overpull, peak := usual(loads.Overpull, usualOverpull), usual(loads.Peak, usualPeak)
	cases := []pullCase{
		{key: "casing.tension.hanging", name: "Hanging", words: "buoyed weight alone", adds: "nothing", extra: func(int) float64 { return 0 },
			rule: model.RuleHangingTension, mend: model.PathOf(i, "casing[1].grade")},
		{key: "casing.tension.pulled", name: "Overpull, stuck", words: "overpull on the buoyed weight", adds: "overpull, drag included",
			extra: func(int) float64 { return overpull }, bends: true, rule: model.RuleTension, mend: model.PathOf(i, "loads.overpull")},
		{key: "casing.tension.shock", name: "Stopped, running", words: "stopped at once while running", adds: "shock, v × area × sqrt(E × steel)",
			extra: func(k int) float64 { f, _ := strength.Shock(s.parts[k].Pipe.Area(), peak); return f }, bends: true,
			rule: model.RuleTension, mend: model.PathOf(i, "loads.peak_speed")},
	}
	if bump, ok := e.bump(s); ok {
		cases = append(cases, bump)
	}
	return cases
}

// bump returns the tension as the plug lands: what the gauge shows then, with the pump stopped, pulls on the string with the
// bore of the part that the plug closes. That the cement outside buoys the string up is left out.
func (e *evaluation) bump(s *loadedString) (pullCase, bool) {
	i := s.section
	section := &e.plan.Sections[i]
	cement, counts := e.cementing(i)
	if !counts || section.Cement.Placement == model.ByInnerString {
		return pullCase{}, false
	}
	l := pullCase{key: "casing.tension.bump", name: "Plug bumped", words: "plug bumped", adds: "pressure at the gauge as the plug lands × bore",
		bends: true, rule: model.RuleTension, mend: model.PathOf(i, "pumping.bump_over"), missing: cement.missing}
	pressure := e.bumpPressure(i, &cement)
	l.extra = func(k int) float64 {
		force, _ := strength.EndLoad(pressure, s.parts[k].Pipe.ID())
		return force
	}
	return l, true
}

// bumpPressure returns the pressure in Pa at the gauge as the plug of section i lands, in the hole as planned or in gauge,
// whichever is more. Without friction it is what holds the cement up and the bump over it.
func (e *evaluation) bumpPressure(i int, cement *loadCase) float64 {
	over := e.plan.Sections[i].Cement.BumpOver.SI
	if w := e.workedJob(i); !first(w.static, w.pumping).open() {
		return max(w.result.final, w.result.gauge.final) + over
	}
	collar := e.path.TVD(cement.bottom)
	return max(0, cement.outside.at(collar)-cement.inside.at(collar)) + over
}

// pull works out where a tension brings the string nearest to failure.
func (e *evaluation) pull(s *loadedString, l *pullCase) (least strain) {
	for k := range s.casing.parts {
		places := e.places(s, k, s.casing.top, s.casing.shoe, nil)
		for _, md := range places {
			if at := e.pulled(s, l, k, md); least.rating == 0 || at.worse(&least) {
				least = at
			}
		}
	}
	return least
}

// pulled returns the tension of a case at one depth in part k against the weaker of body and connection there.
func (e *evaluation) pulled(s *loadedString, l *pullCase, k int, md float64) strain {
	part := &s.parts[k]
	tvd := e.path.TVD(md)
	at := strain{part: k, md: md, tvd: tvd, hanging: e.hangs(s, k, md)}
	at.load = strength.Load{Depth: md, Axial: at.hanging + l.extra(k), Temperature: e.heat.steel(tvd)}
	at.acts = at.load.Axial
	if l.bends {
		at.load.Dogleg = e.bend(s, k, md)
		bending, _ := strength.BendingPull(part.Pipe, at.load.Dogleg)
		at.acts += bending
	}
	yield, _ := part.Derating.Yield(part.Pipe.Yield, at.load.Temperature)
	at.rating = part.Pipe.Area() * yield
	if part.Connection.Tension < 1 {
		at.rating, at.by = at.rating*part.Connection.Tension, strength.Joint
	}
	if at.acts > 0 {
		at.factor = at.rating / at.acts
	}
	return at
}

// pulledTriaxial looks at the stress in the wall where a tension is worst: the same fluid inside and outside.
func (e *evaluation) pulledTriaxial(s *loadedString, l *pullCase, at *strain) (tri triaxial) {
	pressure := pressureAt(s.fluid, at.tvd)
	load := at.load
	load.Inside, load.Outside = pressure, pressure
	load.Axial -= pressure * s.parts[at.part].Pipe.Area()
	r, err := s.parts[at.part].Ratings(load)
	if err != nil {
		return triaxial{}
	}
	shown := *at
	shown.load = load
	tri.look(&shown, &r)
	tri.name, tri.words, tri.hole = l.name, l.words, s.section
	return tri
}
