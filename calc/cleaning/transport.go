package cleaning

import "math"

// Transport returns the share of the fluid's mean velocity with which cuttings rise in an upright hole: 1 less the slip over
// the velocity, both in m/s. It is zero where cuttings do not rise and where nothing flows. Source: transport ratio of Sifferman
// and others, Drill cutting transport in full-scale vertical annuli, 1974 (from memory).
func Transport(velocity, slip float64) float64 {
	if !(velocity > 0) || !(slip >= 0) {
		return 0
	}
	return max(1-slip/velocity, 0)
}

// Feed returns the volume in m³ of rock that the bit makes in a second, from the penetration rate in m/s and the diameters in
// m of the hole and of what of it was already there: zero without a pilot. Loose porosity is left out: the rock is dense.
func Feed(rop, hole, before float64) float64 {
	if !(rop > 0) || !(hole > before) {
		return 0
	}
	return rop * math.Pi / 4 * (hole - before) * (hole + before)
}

// Concentration returns the share by volume of cuttings in an annulus that a feed in m³/s rises in with a flow of mud in m³/s,
// at a transport ratio: what enters leaves, so that
//
//	feed = share × transport × (flow + feed)
//
// It is 1 where nothing is carried away. Source: mass balance.
func Concentration(feed, flow, transport float64) float64 {
	if !(feed > 0) {
		return 0
	}
	if !(transport > 0) || !(flow >= 0) {
		return 1
	}
	return min(feed/(transport*(flow+feed)), 1)
}

// Loaded returns the density in kg/m³ of a mud with a share of cuttings in it.
func Loaded(mud, rock, share float64) float64 { return mud + share*(rock-mud) }

// FastestROP returns the penetration rate in m/s at which the share of cuttings reaches a limit, all else as in
// [Concentration]: infinite where the limit is never reached. Area is that of the rock cut, m².
func FastestROP(limit, flow, transport, area float64) float64 {
	if !(area > 0) || !(limit > 0) || !(transport > 0) || !(flow > 0) {
		return 0
	}
	if limit*transport >= 1 {
		return math.Inf(1)
	}
	return limit * transport * flow / (1 - limit*transport) / area
}

// CarryingIndex returns the cuttings carrying index of an upright or nearly upright hole:
//
//	CCI = k v W / 400000     k = 511^(1-n) (PV + YP)     n = 3.322 log10((2 PV + YP) / (PV + YP))
//
// in equivalent cP, ft/min and ppg, for a plastic viscosity in Pa·s, a yield point in Pa, a velocity in m/s and a density in
// kg/m³. Half and less is poor, one and more good; for holes below some 35 degrees. Source: L. Robinson, as given on
// drillingformulas.com, cutting carrying index.
func CarryingIndex(plastic, yield, velocity, density float64) float64 {
	pv, yp := plastic/centipoise, yield/poundPer100SquareFoot
	if !(pv > 0) || !(yp >= 0) || !(velocity > 0) || !(density > 0) {
		return 0
	}
	n := math.Log2((2*pv + yp) / (pv + yp))
	return math.Pow(511, 1-n) * (pv + yp) * (velocity / foot * 60) * (density / poundPerGallon) / 400000
}
