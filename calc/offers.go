package calc

import (
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
	e := &evaluation{plan: plan, result: &Result{Sections: make([]Sheet, len(plan.Sections))}}
	e.readDatum()
	e.readHoles()
	e.readCasings()
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
