package calc_test

import (
	"math"
	"slices"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

func TestOffersPassTheBoresAboveAndFitTheHole(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		for i := range plan.Sections {
			offers := calc.Offers(plan, i)
			if len(offers) == 0 {
				t.Errorf("section %d: nothing is offered", i+1)
			}
			filled := plan.Sections[i].Method != model.Cemented
			for _, o := range offers {
				if o.Casing.OD >= plan.Sections[i].Hole.SI && !filled {
					t.Errorf("section %d: %g in casing in a %g in hole", i+1, o.Casing.OD/inch, plan.Sections[i].Hole.SI/inch)
				}
				if o.Bounded && !(o.Clearance >= 0) || math.IsNaN(o.Connector) || o.Connector < o.Casing.OD {
					t.Errorf("section %d: offer %+v", i+1, o)
				}
			}
			// What is offered is also accepted once it is chosen.
			for _, o := range []calc.Offer{offers[0], offers[len(offers)/2], offers[len(offers)-1]} {
				with := *plan
				with.Sections = slices.Clone(plan.Sections)
				with.Sections[i].Casing = []model.CasingPart{{Grade: o.Casing.Grade, DriftClass: model.APIDrift,
					Size: quantity.Value{SI: o.Casing.OD, Unit: quantity.Metre}, Weight: quantity.Value{SI: o.Casing.NominalWeight, Unit: quantity.KilogramPerMetre}}}
				r := calc.Evaluate(&with)
				for _, key := range []string{"connector_passes", "hole_takes_string"} {
					for _, f := range findings(r, i+1, key) {
						if f.Severity == calc.Stop {
							t.Errorf("section %d: %g in is offered and stops at %s", i+1, o.Casing.OD/inch, key)
						}
					}
				}
			}
		}
	})
}

func TestOffersForTheProductionString(t *testing.T) {
	has := func(offers []calc.Offer, od, weight float64) bool {
		return slices.ContainsFunc(offers, func(o calc.Offer) bool {
			return near(o.Casing.OD, od*inch, 1e-4) && near(o.Casing.NominalWeight, weight*0.45359237/foot, 0.01)
		})
	}
	offers := calc.Offers(demo(t, "ottermast-2"), 3)
	if !has(offers, 9.875, 62.8) || !has(offers, 9.625, 53.5) || !has(offers, 7, 32) {
		t.Error("9 7/8, 9 5/8 and 7 in pass 13 5/8 in casing and fit a 12 1/4 in hole")
	}
	if has(offers, 13.375, 72) || has(offers, 13.625, 88.2) {
		t.Error("13 3/8 in does not fit a 12 1/4 in hole")
	}
	for _, o := range offers {
		if !o.Bounded || !near(o.Clearance, 12.25*inch-o.Connector, 1e-9) {
			t.Errorf("clearance of %g in = %g in", o.Casing.OD/inch, o.Clearance/inch)
		}
	}
}

func TestOffersWhereNothingStandsAbove(t *testing.T) {
	offers := calc.Offers(demo(t, "ottermast-2"), 0)
	for _, o := range offers {
		if o.Bounded || math.IsInf(o.Clearance, 0) {
			t.Errorf("the first string has nothing above: %+v", o)
			break
		}
	}
	plan := demo(t, "ottermast-2")
	for _, i := range []int{-1, 5, 99} {
		if got := calc.Offers(plan, i); got != nil {
			t.Errorf("section %d is not there, but %d casings are offered", i, len(got))
		}
	}
	if got := calc.Offers(&model.Plan{}, 0); got != nil {
		t.Errorf("a plan without sections is offered %d casings", len(got))
	}
}
