package model

import "borewalk/model/quantity"

// startCement gives a new section's string a cement job of start values: to the seabed without a riser, a stretch above
// the shoe with one, to the top of a liner. last is the depth of the last shoe's section.
func (s *Section) startCement(mudline, last float64, round func(float64) quantity.Value) {
	flow, length := quantity.CementRate, quantity.Length
	s.PV, s.YP = must("15 cP", quantity.Viscosity), must("6 Pa", quantity.YieldPoint)
	s.Cement.MixRate = must("800 L/min", flow)
	s.Cement.LineTime = must("0.3 h", quantity.Hours)
	s.Cement.Wait = must("12 h", quantity.Hours)
	tail := startSlurry("tail", "1.9 sg", round(s.TD.SI-300))
	density := must("1.03 sg", quantity.Density)
	switch {
	case s.Returns == ToSeabed:
		s.Cement.Placement = ByInnerString
		s.Cement.InnerAboveShoe = must("12 m", length)
		s.Cement.DisplaceRate = must("1000 L/min", flow)
		s.Cement.Excess = must("100 %", quantity.Ratio)
		lead := startSlurry("lead", "1.6 sg", round(mudline))
		lead.Bentonite = must("4 %", quantity.Ratio)
		tail.Top = round(max(s.TD.SI-100, (mudline+s.TD.SI)/2))
		s.Slurries = []Slurry{lead, tail}
	case s.Completion == WithLiner:
		s.Cement.DisplaceRate = must("800 L/min", flow)
		tail.Top = s.Top
	default:
		s.Cement.DisplaceRate = must("1500 L/min", flow)
		tail.Top = round(max(s.TD.SI-300, last+100))
	}
	if s.Returns != ToSeabed {
		s.Cement.Excess = must("30 %", quantity.Ratio)
		s.Slurries = []Slurry{tail}
		density = quantity.Nudge(s.Density, quantity.Density, s.Density.Unit, 5)
	}
	s.Spacers = []Spacer{{Name: "spacer", Volume: must("10 m3", quantity.Volume), Density: density,
		PV: must("20 cP", quantity.Viscosity), YP: must("6 Pa", quantity.YieldPoint)}}
}

// startSlurry returns a class G slurry whose water follows from its density; what only a laboratory knows are start values.
func startSlurry(name, density string, top quantity.Value) Slurry {
	return Slurry{Name: name, Density: must(density, quantity.Density), Top: top, GivenBy: ByRecipe, Class: "G",
		Thickening: must("6 h", quantity.Hours), StrengthTime: must("10 h", quantity.Hours),
		PV: must("50 cP", quantity.Viscosity), YP: must("8 Pa", quantity.YieldPoint)}
}
