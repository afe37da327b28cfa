package calc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// sound reports what is wrong with a result as such, whatever plan it came from: a value that is no number, a blank
// without a reason, an address that leads nowhere, a key that stands twice.
func sound(plan *model.Plan, r *calc.Result) (faults []string) {
	finite := func(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
	leads := func(path model.Path) bool {
		if path == "" {
			return true
		}
		if _, ok := model.Find(plan, path); ok {
			return true
		}
		_, _, ok := model.FindList(plan, path)
		return ok
	}
	for i := -1; i < len(r.Sections); i++ {
		seen := map[string]bool{}
		for _, f := range r.Sheet(i).Figures {
			switch {
			case seen[f.Key]:
				faults = append(faults, "key stands twice: "+f.Key)
			case f.Key == "" || f.Group == "" || f.Name == "":
				faults = append(faults, "figure without key, group or name: "+f.Key)
			case !finite(f.Value):
				faults = append(faults, "not finite: "+f.Key)
			case f.OK && f.Why != "":
				faults = append(faults, "computed and blank at once: "+f.Key)
			case !f.OK && f.Why == "":
				faults = append(faults, "blank without a reason: "+f.Key)
			case !leads(f.Mend):
				faults = append(faults, f.Key+" leads nowhere: "+string(f.Mend))
			}
			seen[f.Key] = true
		}
	}
	for _, f := range r.Findings {
		switch {
		case !finite(f.Measured) || !finite(f.Limit) || !finite(f.Margin) || !finite(f.At):
			faults = append(faults, "finding without a number: "+f.Key+", "+f.Text)
		case f.Section < -1 || f.Section >= len(plan.Sections):
			faults = append(faults, "finding of no section: "+f.Key)
		case f.Text == "" || f.Source == "":
			faults = append(faults, "finding without text or source: "+f.Key)
		case f.Mend == "" || !leads(f.Mend):
			faults = append(faults, "finding "+f.Key+" leads nowhere: "+string(f.Mend))
		case f.HasLimit && !consistent(f):
			faults = append(faults, "margin and severity disagree: "+f.Key)
		}
	}
	for _, p := range r.Window {
		if !finite(p.TVD) || !finite(p.Pore) || !finite(p.Fracture) || !finite(p.Stability) {
			faults = append(faults, "window point without a number")
		}
	}
	return faults
}

// consistent reports whether a finding's margin is measured against its limit the right way round and goes with its
// severity; what rounding may leave is far below what anyone enters.
func consistent(f calc.Finding) bool {
	margin := f.Measured - f.Limit
	if !f.Least {
		margin = -margin
	}
	if math.Abs(margin-f.Margin) > 1e-9*math.Max(1, math.Abs(margin)) {
		return false
	}
	if f.Margin >= 0 {
		return f.Severity == calc.OK
	}
	return f.Severity != calc.OK || f.Margin > -1e-2
}

// eachRef calls visit for every entry of the plan.
func eachRef(plan *model.Plan, visit func(model.Ref)) {
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			visit(model.Ref{Group: g, Field: f, Place: at})
		}
		return true
	})
}

// computed returns every computed figure by section and key.
func computed(r *calc.Result) map[string]float64 {
	all := map[string]float64{}
	for i := -1; i < len(r.Sections); i++ {
		for _, f := range r.Sheet(i).Figures {
			if f.OK {
				all[strings.Repeat("s", i+1)+":"+f.Key] = f.Value
			}
		}
	}
	return all
}

// TestEveryEntryCanBeBlank: without an entry the result is sound, and no figure that needs it takes another value.
func TestEveryEntryCanBeBlank(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		t.Parallel() // nearly two thousand runs
		plan := demo(t, name)
		before := computed(calc.Evaluate(plan))
		var refs []model.Ref
		eachRef(plan, func(r model.Ref) {
			if r.Get(plan).IsSet() && (r.Field.Required || r.Field.Type != model.ChoiceField || r.Field.Default == "") { // a choice left out of a file takes its default
				refs = append(refs, r)
			}
		})
		needed := 0
		for _, ref := range refs {
			counts := ref.Field.Required && ref.Idle(plan) == ""
			old := ref.Get(plan)
			ref.Set(plan, model.Entry{})
			r := calc.Evaluate(plan)
			for _, fault := range sound(plan, r) {
				t.Errorf("%s blank: %s", ref.Path(), fault)
			}
			if counts {
				needed++
				neverAnotherNumber(t, ref, before, r)
			}
			ref.Set(plan, old)
		}
		if len(refs) < 300 || needed < 30 {
			t.Errorf("only %d entries, %d of them required", len(refs), needed)
		}
	})
}

// neverAnotherNumber: without an entry that figures need, a figure is blank or unchanged. A number that silently follows from
// zero would be believed.
func neverAnotherNumber(t *testing.T, ref model.Ref, before map[string]float64, r *calc.Result) {
	t.Helper()
	var changed []string
	after := computed(r)
	for key, v := range after {
		if was, ok := before[key]; ok && math.Abs(v-was) > 1e-9*math.Max(1, math.Abs(was)) {
			changed = append(changed, key)
		}
	}
	if len(changed) > 0 {
		slices.Sort(changed)
		t.Errorf("%s blank: %d figures take another value, such as %s", ref.Path(), len(changed), changed[0])
	}
	if (len(changed) > 0 || len(after) < len(before)) && !slices.ContainsFunc(r.Findings, func(f calc.Finding) bool { return f.Key == "entry" && f.Severity == calc.Stop }) {
		t.Errorf("%s blank: no finding says so", ref.Path())
	}
}

// TestAStringThatCannotBeWorkedOutBlanksWhatStandsInIt: the sections below must not be computed as if it were not there.
func TestAStringThatCannotBeWorkedOutBlanksWhatStandsInIt(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].casing[1].weight", "500 kg/m") // no such casing, and no ID of its own
	r := calc.Evaluate(plan)
	for _, key := range []string{"volume.bottoms_up", "volume.hole", "volume.bottoms_up_rig", "string.passes.bit", "casing.passes.connector",
		"casing.volume.annulus.open"} {
		if f, ok := r.Sheet(3).Find(key); ok && f.OK {
			t.Errorf("section 4 %s = %g although the string of section 3 is not known", key, f.Value)
		}
	}
	if offers := calc.Offers(plan, 3); len(offers) > 0 {
		t.Errorf("%d casings are offered for section 4 although the string of section 3 is not known", len(offers))
	}
}

// TestOnlyWhatNeedsAnEntryIsBlankWithoutIt names figures that do not depend on an entry and must stay.
func TestOnlyWhatNeedsAnEntryIsBlankWithoutIt(t *testing.T) {
	for _, c := range []struct {
		path    string
		section int
		stay    []string
		goes    []string
	}{
		{"section[3].flow", 3, []string{"volume.string", "volume.string.strokes", "volume.bottoms_up.strokes", "volume.bottoms_up_rig"},
			[]string{"volume.bottoms_up_rig.time", "volume.bottoms_up_rig.strokes"}},
		{"section[3].density", 3, []string{"mud.pore.td", "mud.fracture.shoe", "hole.td.tvd", "volume.bottoms_up_rig", "string.weight.air", "casing.weight.air"},
			[]string{"mud.margin.pore", "mud.riser_off", "string.weight.buoyed", "string.hook_load", "casing.weight.buoyed"}},
		{"section[3].casing[1].weight", 3, []string{"volume.bottoms_up_rig", "mud.margin.pore", "string.weight.buoyed"},
			[]string{"casing.weight.air", "casing.volume.inside", "casing.volume.annulus.open"}},
		{"section[4].td", 3, []string{"volume.bottoms_up_rig", "casing.weight.buoyed", "mud.margin.pore"}, nil},
		{"section[4].td", 4, nil, []string{"hole.td", "hole.td.tvd", "casing.shoe", "volume.string", "mud.margin.pore"}},
		{"section[4].td", 5, nil, []string{"hole.start", "volume.string", "mud.margin.pore"}},
		{"prognosis.row[10].pore", 3, []string{"mud.emw.shoe", "mud.emw.td", "mud.riser_off", "mud.margin.shoe_test", "volume.bottoms_up"},
			[]string{"mud.margin.pore", "mud.pore.td"}},
		{"rig.pump[1].liner", 3, []string{"volume.bottoms_up", "volume.bottoms_up.time"}, []string{"volume.bottoms_up.strokes"}},
		{"rig.pump[1].liner", 0, []string{"line.riser"}, []string{"line.riser.strokes", "pump.1.output"}},
		{"well.seawater", 0, []string{"datum.mudline", "datum.wellhead", "line.riser"}, []string{"datum.sea_pressure"}},
		{"well.seawater", 3, []string{"hole.td.tvd", "volume.bottoms_up", "mud.emw.td"}, []string{"mud.riser_off"}},
		{"well.water_depth", 0, []string{"pump.1.output"}, []string{"datum.mudline", "datum.sea_pressure"}},
		{"trajectory.kick_off", 3, []string{"volume.bottoms_up", "volume.string", "hole.volume", "casing.weight.air"},
			[]string{"hole.td.tvd", "mud.emw.td", "string.weight.buoyed"}},
		{"section[3].shoulder", 3, []string{"volume.bottoms_up", "hole.shoe"}, []string{"casing.top", "casing.length", "casing.volume.inside"}},
		{"section[5].top", 5, []string{"hole.shoe", "volume.bottoms_up"}, []string{"casing.lap", "casing.volume.inside", "casing.top"}},
	} {
		plan := demo(t, "ottermast-2")
		entry(t, plan, c.path).Set(plan, model.Entry{})
		r := calc.Evaluate(plan)
		for _, key := range c.stay {
			if f, ok := r.Sheet(c.section - 1).Find(key); !ok || !f.OK {
				t.Errorf("%s blank: section %d %s goes blank without need: %s", c.path, c.section, key, f.Why)
			}
		}
		for _, key := range c.goes {
			f, ok := r.Sheet(c.section - 1).Find(key)
			if !ok {
				t.Errorf("%s blank: section %d %s is gone instead of blank", c.path, c.section, key)
			} else if f.OK {
				t.Errorf("%s blank: section %d %s is still computed", c.path, c.section, key)
			} else if f.Mend != model.Path(c.path) {
				t.Errorf("%s blank: section %d %s sends to %s", c.path, c.section, key, f.Mend)
			}
		}
	}
}

// TestAnIdleEntryChangesNothing: what the editor says does not count does not count. One entry of every row is tried at a time,
// since each costs a run of the whole plan; where something changes, each of them is tried alone.
func TestAnIdleEntryChangesNothing(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		before := computed(calc.Evaluate(plan))
		tried := 0
		for _, turn := range idleTurns(plan) {
			tried += len(turn)
			for _, most := range []bool{false, true} {
				if changed, asleep := filled(plan, before, turn, most); asleep && changed == "" {
					continue
				}
				for _, ref := range turn {
					if changed, _ := filled(plan, before, []model.Ref{ref}, most); changed != "" {
						t.Errorf("%s, at its most %v, does not count, but changes %s", ref.Path(), most, changed)
					}
				}
			}
		}
		if tried < 300 {
			t.Errorf("only %d idle entries", tried)
		}
	})
}

// idleTurns returns the numbers of the plan that do not count, in turns that take one of every row.
func idleTurns(plan *model.Plan) (turns [][]model.Ref) {
	type row struct {
		group *model.Group
		at    model.Place
	}
	seen := map[row]int{}
	eachRef(plan, func(ref model.Ref) {
		if ref.Field.Type != model.QuantityField || ref.Idle(plan) == "" || !ref.Field.Max.IsSet() {
			return
		}
		turn := seen[row{ref.Group, ref.Place}]
		seen[row{ref.Group, ref.Place}]++
		if turn == len(turns) {
			turns = append(turns, nil)
		}
		turns[turn] = append(turns[turn], ref)
	})
	return turns
}

// filled blanks entries or gives them the most that they take, and returns a figure that changes with that, and whether none of
// them counts even then. The plan is left as it was.
func filled(plan *model.Plan, before map[string]float64, refs []model.Ref, most bool) (changed string, asleep bool) {
	olds := make([]model.Entry, len(refs))
	for k, ref := range refs {
		olds[k] = ref.Get(plan)
		ref.Set(plan, model.Entry{})
		if most {
			ref.Set(plan, model.Entry{Quantity: ref.Field.Max})
		}
	}
	asleep = !slices.ContainsFunc(refs, func(ref model.Ref) bool { return ref.Idle(plan) == "" })
	after := computed(calc.Evaluate(plan))
	for key, was := range before {
		if now, ok := after[key]; !ok || now != was {
			changed = key
		}
	}
	if changed == "" && len(after) != len(before) {
		changed = "how many figures there are"
	}
	for k, ref := range refs {
		ref.Set(plan, olds[k])
	}
	return changed, asleep
}
