package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// Move says what happens to the plan's depths when the air gap or the water depth is changed.
type Move uint8

// The ways to move.
const (
	KeepRKB          Move = iota // every depth from RKB stays as it is written; the lines to the stack still follow it
	KeepBelowMudline             // holes and strings go with the seabed; the prognosis and the formations stay
	MoveAll                      // holes, strings, prognosis and formations all go with the seabed
)

// String describes the move in a few words.
func (m Move) String() string {
	return [...]string{"keep depths from RKB", "keep holes and strings below mudline", "move all with the seabed"}[m]
}

// Moves returns the ways to move in the order in which they are offered.
func Moves() []Move { return []Move{MoveAll, KeepBelowMudline, KeepRKB} }

// MovesDatum reports whether giving an entry a new content moves the seabed or the rotary under a plan that has depths to move.
func MovesDatum(plan *model.Plan, ref model.Ref, to model.Entry) bool {
	return ref.Group.Name == "well" && (ref.Field.Key == "water_depth" || ref.Field.Key == "air_gap") && to.IsSet() &&
		ref.Get(plan).IsSet() && len(plan.Sections) > 0
}

// MoveDatum returns the changes that follow from giving ref, which is the air gap or the water depth, a new value: that
// change first, then every depth that moves with it.
//
// With MoveAll the equivalent densities of the prognosis are reckoned again, so that the pressure at each depth below
// the mudline changes by the added sea alone: a pressure stays what it is when only the rotary rises.
func MoveDatum(plan *model.Plan, ref model.Ref, to model.Entry, how Move) []model.Change {
	changes := []model.Change{model.Setting(plan, ref, to)}
	old := ref.Get(plan)
	by := to.Quantity.SI - old.Quantity.SI
	if by == 0 || !old.IsSet() || !to.IsSet() {
		return changes
	}
	deeperSea := 0.0
	if ref.Field.Key == "water_depth" {
		deeperSea = by
	}
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			r := model.Ref{Group: g, Field: f, Place: at}
			if v := r.Get(plan).Quantity; v.IsSet() {
				if shift := shiftOf(plan, r, v, how, by, deeperSea); shift != 0 {
					changes = append(changes, model.Setting(plan, r, model.Entry{Quantity: shifted(v, shift)}))
				}
			}
		}
		return true
	})
	changes = append(changes, moveTrials(plan, func(r model.Ref, v quantity.Value) float64 { return shiftOf(plan, r, v, how, by, deeperSea) })...)
	if how == MoveAll {
		changes = append(changes, moveDensities(plan, by, deeperSea)...)
	}
	return changes
}

// shiftOf returns how far one entry with a content moves, in m. What stands above the wellhead, such as a survey station at the rotary,
// is not the well's and stays.
func shiftOf(plan *model.Plan, r model.Ref, v quantity.Value, how Move, by, deeperSea float64) float64 {
	const aboveWell = 20 // m of housings above the mudline, at the most
	mudline := plan.Well.AirGap.SI + plan.Well.WaterDepth.SI
	switch r.Field.Moves {
	case model.WithRiser:
		return by
	case model.WithWell:
		if how != KeepRKB && v.SI >= mudline-aboveWell {
			return by
		}
	case model.WithRock:
		switch {
		case how != MoveAll || plan.Prognosis.DepthFrom == model.FromMudline:
			return 0
		case plan.Prognosis.DepthFrom == model.FromMSL:
			return deeperSea // the air gap does not touch depths from the sea's surface
		}
		return by
	}
	return 0
}

// moveTrials returns the changes by which the depths that trials give go along with the plan's; a difference from the plan's needs none.
func moveTrials(plan *model.Plan, shift func(model.Ref, quantity.Value) float64) (changes []model.Change) {
	list := model.TrialChangeList()
	for k := range plan.Trials {
		for n, c := range plan.Trials[k].Changes {
			ref, ok := model.TrialEntry(plan, c.Path)
			if !ok {
				continue
			}
			value, err := ref.Field.ParseTrial(c.Value, 0)
			if err != nil || value.Relative || !value.Entry.Quantity.IsSet() {
				continue
			}
			if by := shift(ref, value.Entry.Quantity); by != 0 {
				value.Entry.Quantity = shifted(value.Entry.Quantity, by)
				at := model.Ref{Group: list, Field: list.Field("value"), Place: model.Place{Outer: k, Inner: n}}
				changes = append(changes, model.Setting(plan, at, model.Entry{Text: ref.Field.TrialText(value)}))
			}
		}
	}
	return changes
}

// shifted returns a quantity moved by a length in m, in the unit in which it was entered, to the millimetre.
func shifted(v quantity.Value, by float64) quantity.Value {
	return rounded(v.SI+by, 0.001, v.Unit)
}

// rounded returns an SI value to the nearest multiple of a step in SI, entered in a unit, with the decimals that the
// step needs there.
func rounded(si, step float64, unit quantity.Unit) quantity.Value {
	scale := unit.ScaleFromSI(step)
	digits := 1.0
	for digits*scale < 1 {
		digits *= 10
	}
	x := unit.FromSI(si) * digits
	if x < 0 {
		return quantity.Of(float64(int64(x-0.5))/digits, unit)
	}
	return quantity.Of(float64(int64(x+0.5))/digits, unit)
}

// moveDensities returns the changes that keep the prognosis' pressures: p' = p + sea × g × added depth.
func moveDensities(plan *model.Plan, by, deeperSea float64) []model.Change {
	from := evaluation{plan: plan, result: &Result{}}
	from.readDatum()
	if from.gaps.mudline.open() {
		return nil
	}
	var changes []model.Change
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		if g.Path() != "prognosis.row" {
			return true
		}
		depth := plan.Window[at.Outer].Depth
		if !depth.IsSet() {
			return true
		}
		before := from.toRKB(depth.SI)
		after := before + by
		if plan.Prognosis.DensityFrom == model.FromMSL {
			before, after = before-from.datum.MSL, before-from.datum.MSL+deeperSea
		}
		if before <= 0 || after <= 0 {
			return true
		}
		for _, key := range [...]string{"pore", "fracture", "stability", "overburden"} {
			r := model.Ref{Group: g, Field: g.Field(key), Place: at}
			v := r.Get(plan).Quantity
			if !v.IsSet() {
				continue
			}
			moved := (v.SI*before + from.seawater()*deeperSea) / after
			changes = append(changes, model.Setting(plan, r, model.Entry{Quantity: rounded(moved, 0.1, v.Unit)}))
		}
		return true
	})
	return changes
}

// FixDepthBy returns the changes that go with choosing whether the hole's TD or the shoe is given: the depth that is to
// be given takes the value that it had as a result, so that nothing moves; what is as built has no part in it.
func FixDepthBy(plan *model.Plan, ref model.Ref, to model.Entry) []model.Change {
	changes := []model.Change{model.Setting(plan, ref, to)}
	i := ref.Place.Outer
	key, figure := "td", "hole.td"
	if to.Text == model.ByShoe {
		key, figure = "shoe", "hole.shoe"
	}
	f, ok := runTopic(model.AsPlanned(plan), i, model.TopicHole).Find(figure)
	field := ref.Group.Field(key)
	if !ok || !f.OK || field == nil {
		return changes
	}
	given := model.Ref{Group: ref.Group, Field: field, Place: ref.Place}
	unit := plan.Well.WaterDepth.Unit
	return append(changes, model.Setting(plan, given, model.Entry{Quantity: rounded(f.Value, 0.001, unit)}))
}
