package calc

import (
	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/strength"
	"borewalk/model"
)

// gasGradient is the gradient of a column of gas in Pa/m where the plan gives none: 0.1 psi/ft (common practice, from
// memory).
const gasGradient = 0.1 * 6894.757293168361 / 0.3048

// gasDensity returns the density in kg/m3 of a column of gas from the hole of section j.
func (e *evaluation) gasDensity(j int) float64 {
	if own := e.plan.Sections[j].Loads.GasGradient; own.IsSet() {
		return own.SI / gravity
	}
	return gasGradient / gravity
}

// poreAt returns the pore pressure at the foot of section j in Pa.
func (e *evaluation) poreAt(j int) (pressure float64, missing gap) {
	if missing = e.prognosisGap(j); missing.open() {
		return 0, missing
	}
	tvd := e.deepest(j)
	emw, _ := e.window.pore.At(tvd)
	return column.PressureOf(emw, tvd), gap{}
}

// gasSource returns the pore pressure in Pa and the true vertical depth in the open hole of section j from which a column
// of gas presses highest: the foot of the hole, unless pore pressure falls with depth.
func (e *evaluation) gasSource(j int) (pressure, tvd float64, missing gap) {
	if pressure, missing = e.poreAt(j); missing.open() {
		return 0, 0, missing
	}
	bottom := e.deepest(j)
	tvd = bottom
	from, gas := e.path.TVD(e.openFrom(j)), e.gasDensity(j)*gravity
	look := func(at float64) {
		emw, ok := e.window.pore.At(at)
		if p := column.PressureOf(emw, at); ok && at >= from && at < bottom && p-gas*at > pressure-gas*tvd {
			pressure, tvd = p, at
		}
	}
	look(from)
	for _, at := range e.window.depths {
		look(at)
	}
	return pressure, tvd, gap{}
}

// shoeStands returns the pressure in Pa that the last shoe above section j stands, see [evaluation.shoeStrength], and its
// true vertical depth.
func (e *evaluation) shoeStands(j int) (pressure, tvd float64, ok bool) {
	shoe, _, ok := e.lastShoe(j)
	if !ok {
		return 0, 0, false
	}
	tvd = e.path.TVD(shoe)
	emw, _, ok := e.shoeStrength(j)
	return column.PressureOf(emw, tvd), tvd, ok
}

// gasColumn returns the load of gas from section j's hole up to the wellhead.
func (e *evaluation) gasColumn(i, j int) (loadCase, bool) {
	l := ofHole(j, strength.InBurst, "casing.burst.gas", "Gas", "gas to the wellhead")
	l.mend = model.PathOf(j, "hole_loads.gas_limit")
	var pore, from float64
	if pore, from, l.missing = e.gasSource(j); l.missing.open() {
		return l, true
	}
	gas := column.Layer{Bottom: from, Density: e.gasDensity(j), Label: "gas"}
	l.inside.stack, _ = column.RestingOn(pore, gas)
	if e.plan.Sections[j].Loads.GasLimit == model.GasToFailure {
		if stands, tvd, ok := e.shoeStands(j); ok && pressureAt(l.inside.stack, tvd) > stands {
			gas.Bottom = tvd
			l.inside.stack, _ = column.RestingOn(stands, gas)
			l.note = "The last shoe fails first and holds the pressure there."
		}
	}
	l.outside, l.missing = e.outsideBurst(i)
	return l, true
}

// kick returns the load of a gas kick from the foot of section j's hole, circulated to the wellhead as one bubble at
// constant pressure at TD: it swells as its pressure falls (Boyle), with mud below it. Temperature, deviation of the gas
// and friction are left out.
func (e *evaluation) kick(i, j int) (loadCase, bool) {
	s := &e.plan.Sections[j]
	volume := usual(s.Loads.KickVolume, s.Kick.Volume.SI)
	if volume == 0 {
		return loadCase{}, false
	}
	l := ofHole(j, strength.InBurst, "casing.burst.kick", "Kick", "gas kick at the wellhead")
	l.mend = model.PathOf(j, "hole_loads.kick_volume")
	l.missing = first(e.columnGap(j), e.drills[j].missing, e.boreGap(j))
	var pore float64
	if !l.missing.open() {
		pore, l.missing = e.poreAt(j)
	}
	if l.missing.open() {
		return l, true
	}
	bottom, mud := e.deepest(j), e.density(j, e.sections[j].td)
	kick := max(pore+usual(s.Loads.KickIntensity, s.Kick.Intensity.SI)*gravity*bottom, mud*gravity*bottom)
	annuli := bore.Intervals(e.bores[j], e.drills[j].bodies, e.datum.Wellhead, e.sections[j].td)
	foot := e.bubble(j, annuli, kick, volume)
	l.inside.stack, _ = column.RestingOn(kick, column.Layer{Top: e.datum.Wellhead, Bottom: foot, Density: e.gasDensity(j), Label: "gas"},
		column.Layer{Top: foot, Bottom: bottom, Density: mud, Label: "mud"})
	l.outside, l.missing = e.outsideBurst(i)
	l.note = "One bubble, pressure times volume constant, held at the wellhead by the choke."
	if stands, tvd, ok := e.shoeStands(j); ok && pressureAt(l.inside.stack, tvd) > stands {
		l.note = "The last shoe would fail first: kick tolerance limits this kick."
	}
	return l, true
}

// bubble returns the true vertical depth of the foot of a gas bubble whose top stands at the wellhead: a volume in m3 taken
// in at the kick's pressure in Pa.
func (e *evaluation) bubble(j int, annuli []bore.Interval, kick, volume float64) float64 {
	bottom, mud, gas := e.deepest(j), e.density(j, e.sections[j].td), e.gasDensity(j)
	top := e.datum.Wellhead
	lowest, highest := top, bottom // of the foot
	const halvings = 26            // of a few km: a tenth of a millimetre
	for range halvings {
		foot := (lowest + highest) / 2
		md, ok := e.path.MDAtTVD(foot)
		if !ok {
			md = e.sections[j].td
		}
		held := kick - gravity*(mud*(bottom-foot)+gas*(foot-top)/2) // pressure in the middle of the bubble
		if held > 0 && bore.Between(annuli, top, md)*held >= volume*kick {
			highest = foot
		} else {
			lowest = foot
		}
	}
	return highest
}

// pressureTest returns the load of the planned test of section i's string.
func (e *evaluation) pressureTest(i int) (loadCase, bool) {
	test := e.plan.Sections[i].Loads.TestPressure
	if !test.IsSet() {
		return loadCase{}, false
	}
	l := loadCase{key: "casing.burst.test", name: "Pressure test", words: "pressure test", mode: strength.InBurst, hole: i,
		mend: model.PathOf(i, "loads.test_pressure")}
	l.inside.stack = e.testColumn(i, test.SI)
	l.outside, l.missing = e.outsideBurst(i)
	return l, true
}

// testColumn returns the test fluid inside the string of section i from the rotary down, under a pressure at the pump.
func (e *evaluation) testColumn(i int, pressure float64) column.Stack {
	s := &e.plan.Sections[i]
	fluid := s.Loads.TestDensity.SI
	for _, other := range [...]float64{s.Cement.Displacing.SI, e.density(i, e.sections[i].td)} {
		if fluid == 0 {
			fluid = other
		}
	}
	stack, _ := column.NewStack(pressure, column.Layer{Bottom: e.deepest(i), Density: fluid, Label: "test fluid"})
	return stack
}

// tubingLeak returns the load on a production string of a leak near the wellhead: the shut-in tubing pressure on top of
// the packer fluid.
func (e *evaluation) tubingLeak(s *loadedString) (loadCase, bool) {
	i := s.section
	section := &e.plan.Sections[i]
	if section.Purpose != model.Production || !section.Loads.PackerFluid.IsSet() {
		return loadCase{}, false
	}
	l := loadCase{key: "casing.burst.leak", name: "Tubing leak", words: "tubing leak at the wellhead", mode: strength.InBurst, hole: i,
		mend: model.PathOf(i, "loads.tubing_pressure")}
	shut := section.Loads.TubingPressure.SI
	if !section.Loads.TubingPressure.IsSet() {
		last := len(e.plan.Sections) - 1
		var pore float64
		if pore, l.missing = e.poreAt(last); l.missing.open() {
			return l, true
		}
		shut = max(0, pore-e.gasDensity(last)*gravity*(e.deepest(last)-e.datum.Wellhead))
	}
	l.inside.stack, _ = column.NewStack(shut, column.Layer{Top: e.datum.Wellhead, Bottom: max(e.deepest(i), e.datum.Wellhead),
		Density: section.Loads.PackerFluid.SI, Label: "packer fluid"})
	l.outside, l.missing = e.outsideBurst(i)
	return l, true
}
