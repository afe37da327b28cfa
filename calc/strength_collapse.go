package calc

import (
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/strength"
	"borewalk/model"
)

// cementing returns the load of the cement columns outside against the displacing fluid inside, the pump bled off: the
// float, or the last slurry below the inner string's end, holds what is below. Inside an inner-string job the displacing
// fluid balances at that end, where the difference is greatest.
func (e *evaluation) cementing(i int) (loadCase, bool) {
	s, c := &e.plan.Sections[i], &e.strings[i]
	if s.Method != model.Cemented || len(s.Slurries) == 0 {
		return loadCase{}, false
	}
	l := loadCase{key: "casing.collapse.cementing", name: "Cementing", words: "cement outside, pump bled off", mode: strength.InCollapse, hole: i,
		mend: model.PathOf(i, "slurry[1].density"), bottom: c.shoe - s.ShoeTrack.SI}
	if s.Cement.Placement == model.ByInnerString {
		l.bottom = c.shoe - s.Cement.InnerAboveShoe.SI
		l.missing = lacks(s.Cement.InnerAboveShoe, i, "inner_above_shoe", "end of the inner string above the shoe")
	}
	if l.bottom <= c.top {
		return loadCase{}, false
	}
	inside := or(s.Cement.Displacing.SI, e.leftInHole(i))
	l.inside.stack = e.well(i, inside)
	stack, missing := e.cementColumn(i, s.Spacers, func(slurry *model.Slurry) (float64, string) { return slurry.Density.SI, "slurry " + slurry.Name })
	l.outside.stack, l.missing = stack, first(l.missing, missing)
	return l, true
}

// cementColumn returns the column outside the string of section i: what it was run in, spacers if there are any, and below
// each slurry's top the fluid that is wanted of it.
func (e *evaluation) cementColumn(i int, spacers []model.Spacer, fluid func(*model.Slurry) (density float64, label string)) (column.Stack, gap) {
	s := &e.plan.Sections[i]
	path := func(k int, key string) model.Path { return model.PathOf(i, "slurry["+strconv.Itoa(k+1)+"]."+key) }
	for k := range s.Slurries {
		slurry := &s.Slurries[k]
		switch {
		case !slurry.Top.IsSet():
			return column.Stack{}, gap{path(k, "top"), "top of the slurry is blank"}
		case !slurry.Density.IsSet():
			return column.Stack{}, gap{path(k, "density"), "slurry density is blank"}
		case k > 0 && slurry.Top.SI <= s.Slurries[k-1].Top.SI || slurry.Top.SI >= e.strings[i].shoe:
			return column.Stack{}, gap{path(k, "top"), "the slurry's top is not below the last one's and above the shoe"}
		}
	}
	if found := s.Built.CementTop; found.IsSet() && found.SI >= e.strings[i].shoe {
		return column.Stack{}, gap{model.PathOf(i, "built.cement_top"), "the top of cement as found is not above the shoe"}
	}
	layers, missing := e.overCement(i, spacers)
	if missing.open() {
		return column.Stack{}, missing
	}
	for k := range s.Slurries {
		top, bottom := e.path.TVD(slurryTop(s, k)), e.deepest(i)
		if k+1 < len(s.Slurries) {
			bottom = e.path.TVD(slurryTop(s, k+1))
		}
		density, label := fluid(&s.Slurries[k])
		layers = below(layers, top, bottom, density, label)
	}
	stack, err := column.NewStack(0, layers...)
	if err != nil {
		return stack, gap{path(0, "top"), err.Error()}
	}
	return stack, gap{}
}

// overCement returns the layers over the cement of section i, top down to the first slurry's top: what the string was run
// in, and the spacers that stand in the annulus. What of them passes the top of the string is left out.
func (e *evaluation) overCement(i int, spacers []model.Spacer) ([]column.Layer, gap) {
	top := slurryTop(&e.plan.Sections[i], 0)
	layers := make([]column.Layer, 0, 8)
	upper := 0.0
	if !e.sections[i].rig {
		layers = append(layers, column.Layer{Top: e.datum.MSL, Bottom: e.datum.Mudline, Density: e.seawater(), Label: "sea"})
		upper = e.datum.Mudline
	}
	reach, missing := e.spacerTops(i, spacers, top)
	if missing.open() {
		return nil, missing
	}
	at := top
	if len(reach) > 0 {
		at = reach[0]
	}
	layers = below(layers, upper, e.path.TVD(at), e.leftInHole(i), "mud")
	for k := range spacers {
		bottom := top
		if k+1 < len(spacers) {
			bottom = reach[k+1]
		}
		layers = below(layers, e.path.TVD(reach[k]), e.path.TVD(bottom), spacers[k].Density.SI, "spacer")
	}
	return layers, gap{}
}

// spacerTops returns the depths along hole to which the spacers reach in the annulus above the cement.
func (e *evaluation) spacerTops(i int, spacers []model.Spacer, from float64) ([]float64, gap) {
	if len(spacers) == 0 {
		return nil, gap{}
	}
	// The job's own annulus: above a liner's top it goes on round the running pipe.
	job := e.cementOf(i)
	annuli, missing := job.planned, job.missing
	tops := make([]float64, len(spacers))
	for k := len(spacers) - 1; k >= 0; k-- {
		path := func(key string) model.Path { return model.PathOf(i, "spacer["+strconv.Itoa(k+1)+"]."+key) }
		missing = first(missing, needs(spacers[k].Volume, path("volume"), "spacer volume"), needs(spacers[k].Density, path("density"), "spacer density"))
		if missing.open() {
			return nil, missing
		}
		from, _ = bore.DepthAbove(annuli, from, spacers[k].Volume.SI)
		tops[k] = from
	}
	return tops, gap{}
}

// below adds a fluid under the layers, from where they end: what of it would stand above that, such as cement that has
// come out at the seabed, is left out.
func below(layers []column.Layer, top, bottom, density float64, label string) []column.Layer {
	if n := len(layers); n > 0 {
		top = layers[n-1].Bottom
	}
	if bottom <= top {
		return layers
	}
	return append(layers, column.Layer{Top: top, Bottom: bottom, Density: density, Label: label})
}

// lostReturns returns the load on a string while the hole of section j loses its mud at TD: the level inside falls until
// the mud balances the loss zone, and nothing stands above it. The sea does not enter, with the riser on.
func (e *evaluation) lostReturns(s *loadedString, j int) (loadCase, bool) {
	l := ofHole(j, strength.InCollapse, "casing.collapse.losses", "Losses", "lost returns")
	l.missing = first(e.columnGap(j), e.gaps.sea)
	if l.missing.open() {
		return l, true
	}
	bottom, mud := e.deepest(j), e.density(j, e.sections[j].td)
	level := min(max(bottom-e.lossPressure(j, bottom)/(mud*gravity), 0), bottom)
	l.inside.stack, _ = column.NewStack(0, column.Layer{Bottom: level, Label: "empty"},
		column.Layer{Top: level, Bottom: bottom, Density: mud, Label: "mud"})
	l.outside, l.missing = e.outsideCollapse(s)
	l.note = "Level inside = TVD of TD - pressure of the loss zone / (mud × g). A riser that is left empty may itself collapse: not looked at."
	return l, true
}

// lossPressure returns what the loss zone at the foot of section j takes: what the plan says, else a column of sea.
func (e *evaluation) lossPressure(j int, tvd float64) float64 {
	if zone := e.plan.Sections[j].Loads.LossZone; zone.IsSet() {
		return column.PressureOf(zone.SI, tvd)
	}
	return pressureAt(e.sea(tvd), tvd)
}

// emptied returns the load on a string that is empty down to where the plan says, over the drilling fluid.
func (e *evaluation) emptied(s *loadedString) (loadCase, bool) {
	i := s.section
	to := e.plan.Sections[i].Loads.Emptied
	if !to.IsSet() {
		return loadCase{}, false
	}
	l := loadCase{key: "casing.collapse.emptied", name: "Emptied", words: "emptied from above", mode: strength.InCollapse, hole: i,
		mend: model.PathOf(i, "loads.emptied")}
	bottom := e.deepest(i)
	level := min(e.path.TVD(to.SI), bottom)
	l.inside.stack, _ = column.NewStack(0, column.Layer{Bottom: level, Label: "empty"},
		column.Layer{Top: level, Bottom: bottom, Density: e.density(i, e.sections[i].td), Label: "mud"})
	l.outside, l.missing = e.outsideCollapse(s)
	return l, true
}
