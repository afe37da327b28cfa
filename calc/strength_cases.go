package calc

import (
	"strconv"

	"borewalk/calc/column"
	"borewalk/calc/steel"
	"borewalk/calc/strength"
	"borewalk/model"
)

// steelDensity is that of the string, kg/m3.
const steelDensity = steel.Density

// side is the pressure on one side of a string: a column of fluids, or the pore pressure of the prognosis where that is
// given, with the column above it.
type side struct {
	stack column.Stack
	pore  *column.Curve
}

// at returns the pressure in Pa at a true vertical depth.
func (s *side) at(tvd float64) float64 {
	if s.pore != nil {
		if emw, ok := s.pore.At(tvd); ok {
			return column.PressureOf(emw, tvd)
		}
	}
	return pressureAt(s.stack, tvd)
}

// appendBreaks appends the true vertical depths at which the pressure's slope may change.
func (s *side) appendBreaks(dst []float64) []float64 {
	dst = s.stack.AppendBreaks(dst)
	if s.pore != nil {
		dst = s.pore.AppendBreaks(dst)
	}
	return dst
}

// loadCase is one way in which pressures load a string, between two depths along hole.
type loadCase struct {
	key, name       string
	words           string // in a finding, after the mode: "lost returns in section 4"
	mode            strength.Mode
	inside, outside side
	top, bottom     float64
	hole            int // section whose hole loads the string; the string's own for its own loads
	mend            model.Path
	missing         gap
	note            string
}

// deepest returns the greatest true vertical depth down to the TD of section i.
func (e *evaluation) deepest(i int) float64 {
	_, bottom := e.tvdRange(e.datum.Mudline, e.sections[i].td)
	return bottom
}

// loadCases returns the pressure loads that the plan gives for a string: its own, then those of the holes below it.
func (e *evaluation) loadCases(s *loadedString) []loadCase {
	i := s.section
	cases := make([]loadCase, 0, 8)
	add := func(made loadCase, counts bool) {
		if !counts {
			return
		}
		if made.bottom == 0 {
			made.bottom = s.casing.shoe
		}
		made.top = s.casing.top
		cases = append(cases, made)
	}
	add(e.cementing(i))
	add(e.emptied(s))
	add(e.pressureTest(i))
	add(e.tubingLeak(s))
	for j, bottom := range e.exposed(i) {
		made, counts := e.lostReturns(s, j)
		made.bottom = bottom
		add(made, counts)
		made, counts = e.gasColumn(i, j)
		made.bottom = bottom
		add(made, counts)
		made, counts = e.kick(i, j)
		made.bottom = bottom
		add(made, counts)
	}
	return cases
}

// exposed yields the later sections whose holes are drilled through the string of section i with returns to the rig, and
// the depth along hole down to which they press on it: a string set in between covers it from its top, and one that lands in
// the wellhead leaves only the housing.
func (e *evaluation) exposed(i int) func(yield func(int, float64) bool) {
	return func(yield func(int, float64) bool) {
		bottom := e.strings[i].shoe
		for j := i + 1; j < len(e.plan.Sections) && bottom > e.strings[i].top; j++ {
			if e.sections[j].missing.open() {
				return
			}
			if e.sections[j].rig && !yield(j, bottom) {
				return
			}
			switch c := &e.strings[j]; {
			case !c.present:
			case c.missing.open() || !c.liner && e.plan.Sections[j].Hung == model.InWellhead:
				return
			default:
				bottom = min(bottom, c.top)
			}
		}
	}
}

// exposureGap says what is missing for knowing which holes press on the string of section i, and how far down.
func (e *evaluation) exposureGap(i int) gap {
	for j := i + 1; j < len(e.plan.Sections); j++ {
		c := &e.strings[j]
		if missing := first(e.sections[j].missing, c.missing); missing.open() {
			return missing
		}
		if c.present && !c.liner && e.plan.Sections[j].Hung == model.InWellhead {
			break
		}
	}
	return gap{}
}

// ofHole returns a load case that the hole of section j lays on a string.
func ofHole(j int, mode strength.Mode, key, name, words string) loadCase {
	number := strconv.Itoa(j + 1)
	return loadCase{key: key + "." + number, name: name + ", hole " + number, words: words + " in section " + number, mode: mode, hole: j,
		mend: model.PathOf(j, "density")}
}

// sea returns the sea's gradient from MSL down to a depth.
func (e *evaluation) sea(bottom float64) column.Stack {
	stack, _ := column.NewStack(0, column.Layer{Top: e.datum.MSL, Bottom: max(bottom, e.datum.Mudline), Density: e.seawater(), Label: "sea"})
	return stack
}

// outsideBurst returns what holds the string of section i from outside when pressure inside loads it.
func (e *evaluation) outsideBurst(i int) (side, gap) {
	out := side{stack: e.sea(e.deepest(i))}
	if e.plan.Sections[i].Loads.OutsideBurst != model.OutsidePore {
		return out, e.gaps.sea
	}
	out.pore = &e.window.pore
	return out, first(e.gaps.sea, e.window.missing)
}

// outsideCollapse returns what presses on the string of section i once the cement has set.
func (e *evaluation) outsideCollapse(s *loadedString) (side, gap) {
	section := &e.plan.Sections[s.section]
	if section.Loads.OutsideCollapse != model.OutsideMixWater || section.Method != model.Cemented || len(section.Slurries) == 0 {
		return side{stack: s.fluid}, gap{}
	}
	const freshWater = 1000 // kg/m3
	stack, missing := e.cementColumn(s.section, nil, func(slurry *model.Slurry) (float64, string) {
		if slurry.MixDensity.IsSet() {
			return slurry.MixDensity.SI, "mix water"
		}
		return freshWater, "mix water"
	})
	return side{stack: stack}, missing
}
