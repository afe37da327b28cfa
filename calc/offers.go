package calc

import (
	"math"

	"borewalk/model"
	"borewalk/model/catalogue"
)

// Offer is a casing from the catalogue that could be chosen for a part of a string. Clearance is what its connector
// leaves in the narrowest bore above, in m; zero when nothing stands above.
type Offer struct {
	Casing    catalogue.Casing
	Connector float64
	Clearance float64
	Bounded   bool // something stands above, so that Clearance counts
}

// Offers returns the casings of the catalogue whose connector passes every bore above section i and the section's hole,
// in the order of the catalogue: by size, weight and grade. There are none when the bores cannot be worked out.
func Offers(plan *model.Plan, i int) []Offer {
	if i < 0 || i >= len(plan.Sections) {
		return nil
	}
	e := bareGeometry(plan)
	if e.boreGap(i).open() {
		return nil
	}
	hole := e.sections[i].size
	bores := e.passages(i, e.sections[i].opened)
	narrowest, bounded := least(bores, e.sections[i].opened)
	filled := plan.Sections[i].Method != model.Cemented
	var offers []Offer
	for _, od := range catalogue.CasingSizes() {
		for _, weight := range catalogue.CasingWeights(od) {
			for _, row := range catalogue.CasingGrades(od, weight) {
				widest := max(row.OD, row.CouplingOD)
				fits := hole == 0 || widest < hole || (filled && row.OD <= hole)
				if !fits || (bounded && widest > narrowest.diameter) {
					continue
				}
				offer := Offer{Casing: row, Connector: widest, Bounded: bounded}
				if bounded {
					offer.Clearance = narrowest.diameter - widest
				}
				offers = append(offers, offer)
			}
		}
	}
	return offers
}

// bareGeometry works out holes and strings alone.
func bareGeometry(plan *model.Plan) *evaluation {
	e := &evaluation{plan: asBuilt(plan), given: plan, result: &Result{Sections: make([]Sheet, len(plan.Sections))}}
	e.readDatum()
	e.readHoles()
	e.readCasings()
	return e
}

// LeastBore returns the guaranteed diameter in m of the narrowest bore above the open hole of section i, which its bit must
// pass, and what it is. It reports false when nothing stands above or when that cannot be worked out.
func LeastBore(plan *model.Plan, i int) (diameter float64, name string, ok bool) {
	if i < 0 || i >= len(plan.Sections) {
		return 0, "", false
	}
	e := bareGeometry(plan)
	for j := range i {
		if c := &e.strings[j]; c.present && c.missing.open() {
			return 0, "", false
		}
	}
	narrowest, ok := least(e.passages(i, math.Inf(1)), math.Inf(1))
	return narrowest.diameter, narrowest.name, ok
}
