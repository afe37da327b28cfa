package calc_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// apart lists the figures of two results that differ by more than rounding, those of the page on what was built left out.
func apart(a, b *calc.Result) (list []string) {
	for i := -1; i < len(a.Sections); i++ {
		other := b.Sheet(i)
		for _, f := range a.Sheet(i).Figures {
			if f.Topic == model.TopicBuilt {
				continue
			}
			g, ok := other.Find(f.Key)
			if !ok || f.OK != g.OK || math.Abs(f.Value-g.Value) > 1e-6*math.Max(1, math.Abs(f.Value)) {
				list = append(list, strings.Repeat("s", i+1)+":"+f.Key)
			}
		}
		for _, f := range other.Figures {
			if _, ok := a.Sheet(i).Find(f.Key); !ok && f.Topic != model.TopicBuilt {
				list = append(list, strings.Repeat("s", i+1)+":"+f.Key)
			}
		}
	}
	return list
}

// TestAShoeSetHighIsAsIfPlannedThere: a shoe 70 m high, in the hole as drilled, gives everywhere what planning it there by hand
// gives: a rathole that is 70 m longer.
func TestAShoeSetHighIsAsIfPlannedThere(t *testing.T) {
	was := calc.Evaluate(demo(t, "ottermast-2"))
	planned := value(t, was, 2, "hole.shoe")
	shoe := quantity.Of(math.Round(planned-70), quantity.Metre)

	built, byHand := demo(t, "ottermast-2"), demo(t, "ottermast-2")
	entry(t, built, "section[2].built.shoe").Set(built, model.Entry{Quantity: shoe})
	rathole := byHand.Sections[1].Rathole.SI + planned - shoe.SI
	byHand.Sections[1].Rathole = quantity.Value{SI: rathole, Unit: quantity.Metre}
	now := calc.Evaluate(built)
	if off := apart(now, calc.Evaluate(byHand)); len(off) > 0 {
		t.Errorf("%d figures differ from those planned by hand, such as %s", len(off), off[0])
	}
	if got := value(t, now, 2, "hole.rathole") - value(t, was, 2, "hole.rathole"); math.Abs(got-(planned-shoe.SI)) > 1e-9 {
		t.Errorf("the pocket grows by %g m, want %g", got, planned-shoe.SI)
	}
	for section, key := range map[int]string{2: "cement.volume", 3: "control.tolerance", 4: "volume.hole"} {
		before, after := figure(t, was, section, key), figure(t, now, section, key)
		if section != 4 && before.Value == after.Value {
			t.Errorf("section %d %s does not follow the shoe", section, key)
		}
	}
	if f := found(now, 1, "shoe_off"); f.Severity != calc.Caution || math.Abs(f.Measured-(planned-shoe.SI)) > 1e-9 || f.Mend != "section[2].built.shoe" {
		t.Errorf("the shoe off plan is found as %+v", f)
	}
	if got := value(t, now, 2, "built.shoe.off"); math.Abs(got-(shoe.SI-planned)) > 1e-9 {
		t.Errorf("the difference is %g, want %g", got, shoe.SI-planned)
	}
	if value(t, now, 2, "built.need.2") != value(t, was, 2, "cement.slurry.2.volume") || value(t, now, 2, "built.need.2.now") != value(t, now, 2, "cement.slurry.2.volume") {
		t.Error("what was ordered, or what the hole asks for, is not that of the cement page")
	}
}

// found returns the finding of a rule in a section, counted from 0.
func found(r *calc.Result, section int, key string) (worst calc.Finding) {
	for _, f := range r.Findings {
		if f.Section == section && f.Key == key && (worst.Key == "" || f.Severity > worst.Severity) {
			worst = f
		}
	}
	return worst
}

// noted returns whether there is a caution about an entry.
func noted(r *calc.Result, path model.Path) bool {
	for _, f := range r.Findings {
		if f.Mend == path && f.Severity > calc.OK {
			return true
		}
	}
	return false
}

// TestUndoTakesAnActualBack: an actual is an entry like any other.
func TestUndoTakesAnActualBack(t *testing.T) {
	plan := demo(t, "ottermast-2")
	was := calc.Evaluate(plan)
	var h model.History
	ref := entry(t, plan, "section[3].built.td")
	h.Do(plan, model.Edit{Changes: []model.Change{model.Setting(plan, ref, model.Entry{Quantity: quantity.Of(2171, quantity.Metre)})}})
	now := calc.Evaluate(plan)
	if got := value(t, now, 3, "hole.td"); got != 2171 {
		t.Errorf("TD is %g", got)
	}
	if got := value(t, now, 4, "hole.start"); got != 2171 {
		t.Errorf("the next section starts at %g", got)
	}
	if got := plan.Sections[2].TD.SI; got != 2155 {
		t.Errorf("the planned TD became %g", got)
	}
	h.Undo(plan)
	if off := apart(calc.Evaluate(plan), was); len(off) > 0 {
		t.Errorf("%d figures are not what they were, such as %s", len(off), off[0])
	}
}

// TestBuiltAsPlannedChangesNothing: what came to be as it was planned leaves every figure as it was, whichever of it is entered
// and however the section's depth is given.
func TestBuiltAsPlannedChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(plans.Names()).Draw(t, "plan")
		text, _ := plans.Demo(name)
		file, err := planfile.Read(name, text)
		if err != nil {
			t.Fatal(err)
		}
		plan := file.Plan
		i := rapid.IntRange(0, len(plan.Sections)-1).Draw(t, "section")
		s := &plan.Sections[i]
		was := calc.Evaluate(plan)
		if shoe, _ := was.Sheet(i).Find("hole.shoe"); rapid.Bool().Draw(t, "by shoe") && shoe.OK {
			s.DepthBy, s.Shoe = model.ByShoe, quantity.Value{SI: shoe.Value, Unit: quantity.Metre}
		}
		was = calc.Evaluate(plan)
		take := func(what string, to *quantity.Value, key string) {
			if f, _ := was.Sheet(i).Find(key); f.OK && rapid.Bool().Draw(t, what) {
				*to = quantity.Value{SI: f.Value, Unit: quantity.Metre}
			}
		}
		take("TD", &s.Built.TD, "hole.td")
		take("shoe", &s.Built.Shoe, "hole.shoe")
		take("top", &s.Built.Top, "casing.top")
		if rapid.Bool().Draw(t, "mud") {
			s.Built.Density = s.Density
		}
		if rapid.Bool().Draw(t, "test") {
			s.Built.TestPressure = s.Loads.TestPressure
		}
		if off := apart(calc.Evaluate(plan), was); len(off) > 0 {
			t.Fatalf("section %d: %d figures are not what they were, such as %s", i+1, len(off), off[0])
		}
	})
}

// TestDepthByDoesNotFightWhatIsBuilt: TD and shoe hold alone and together, however the plan gives the depth.
func TestDepthByDoesNotFightWhatIsBuilt(t *testing.T) {
	for _, c := range []struct {
		by, td, shoe      string
		wantTD, wantShoe  float64
		wantStart, behind float64
	}{
		{by: model.ByTD, wantTD: 2155, wantShoe: 2150},
		{by: model.ByTD, td: "2160 m", wantTD: 2160, wantShoe: 2155},
		{by: model.ByTD, shoe: "2100 m", wantTD: 2155, wantShoe: 2100},
		{by: model.ByTD, td: "2160 m", shoe: "2142 m", wantTD: 2160, wantShoe: 2142},
		{by: model.ByShoe, wantTD: 2145, wantShoe: 2140},
		{by: model.ByShoe, td: "2160 m", wantTD: 2160, wantShoe: 2155},
		{by: model.ByShoe, shoe: "2100 m", wantTD: 2145, wantShoe: 2100},
		{by: model.ByShoe, td: "2160 m", shoe: "2142 m", wantTD: 2160, wantShoe: 2142},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, "section[3].shoe", "2140 m")
		with(t, plan, "section[3].depth_by", c.by)
		with(t, plan, "section[3].built.td", c.td)
		with(t, plan, "section[3].built.shoe", c.shoe)
		r := calc.Evaluate(plan)
		td, shoe, start := value(t, r, 3, "hole.td"), value(t, r, 3, "casing.shoe"), value(t, r, 4, "hole.start")
		if math.Abs(td-c.wantTD) > 1e-9 || math.Abs(shoe-c.wantShoe) > 1e-9 || start != td {
			t.Errorf("by %s, TD %q, shoe %q: TD %g, shoe %g, next from %g", c.by, c.td, c.shoe, td, shoe, start)
		}
	}
}

// TestAnImpossibleActualIsNamed: what cannot be worked out sends to the entry that counts, not to the planned one.
func TestAnImpossibleActualIsNamed(t *testing.T) {
	for path, text := range map[string]string{"section[3].built.shoe": "2160 m", "section[3].built.td": "900 m"} {
		plan := demo(t, "ottermast-2")
		with(t, plan, path, text)
		r := calc.Evaluate(plan)
		if f := figure(t, r, 3, "casing.shoe"); f.OK || f.Mend != model.Path(path) {
			t.Errorf("%s = %s: the shoe is %+v", path, text, f)
		}
		if !noted(r, model.Path(path)) {
			t.Errorf("%s = %s is not found", path, text)
		}
		for _, fault := range sound(plan, r) {
			t.Errorf("%s = %s: %s", path, text, fault)
		}
	}
}

// TestMeasuredMudAndHoleCount: mud at TD and mean diameter go before the planned mud and washout; a caliper goes before both.
func TestMeasuredMudAndHoleCount(t *testing.T) {
	plan := demo(t, "ottermast-2")
	was := calc.Evaluate(plan)
	with(t, plan, "section[4].built.density", "1.50 sg")
	with(t, plan, "section[4].built.diameter", "13 in")
	r := calc.Evaluate(plan)
	if got := value(t, r, 4, "built.density.off"); math.Abs(got-(1500-plan.Sections[3].Density.SI)) > 1e-6 {
		t.Errorf("mud off by %g", got)
	}
	if was, now := value(t, was, 4, "control.tolerance"), value(t, r, 4, "control.tolerance"); was == now {
		t.Error("the kick tolerance does not follow the mud")
	}
	// pi/4 × (13 in)² over the length of new hole: the bit drills the full size.
	want := math.Pi / 4 * math.Pow(13*0.0254, 2) * value(t, r, 4, "hole.length")
	if got := value(t, r, 4, "hole.volume"); math.Abs(got-want) > 1e-9*want {
		t.Errorf("the hole holds %g, want %g", got, want)
	}
	if got := value(t, r, 4, "built.diameter"); math.Abs(math.Pi/4*got*got*value(t, was, 4, "hole.length")-value(t, was, 4, "hole.volume")) > 1e-9 {
		t.Errorf("the planned mean diameter is %g", got)
	}
	plan.Sections[3].Caliper = []model.CaliperRow{{Depth: quantity.Of(1000, quantity.Metre), Diameter: quantity.Of(12.5, quantity.Inch)}}
	if got := value(t, calc.Evaluate(plan), 4, "hole.volume"); got >= want {
		t.Errorf("beside a caliper the mean diameter counts: %g", got)
	}
}

// TestTheHostAsRunKeepsTheNextLinersHanger: the couplings that slips keep off are those of the joints measured, hung to the shoe as set.
func TestTheHostAsRunKeepsTheNextLinersHanger(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[5].tally.slips", "2 m")
	coupling := func() float64 { return value(t, calc.Evaluate(plan), 5, "hanger.slips.coupling") }
	planned := coupling()
	host := value(t, calc.Evaluate(plan), 4, "tally.shoe")

	plan.Sections[3].Joints = nil
	for range 300 {
		plan.Sections[3].Joints = append(plan.Sections[3].Joints, model.Joint{Length: quantity.Of(11.7, quantity.Metre), Rejected: model.JointSound})
	}
	measured := coupling()
	with(t, plan, "section[4].built.shoe", "3230 m")
	built := calc.Evaluate(plan)
	shoe, now := value(t, built, 4, "tally.shoe"), value(t, built, 5, "hanger.slips.coupling")
	if math.Abs(shoe-3230) > 11.7 || shoe == host {
		t.Errorf("the host is tallied to %g, its shoe is at 3230", shoe)
	}
	if planned == measured {
		t.Error("measured joints leave the couplings where they were")
	}
	// Couplings stand a whole number of joints above the lowest of them, which moves with the tallied shoe.
	float, ok := built.Sheet(3).Find("tally.landing_collar")
	if !ok {
		float = figure(t, built, 4, "tally.float")
	}
	if off := math.Mod(float.Value-now, 11.7); math.Min(off, 11.7-off) > 1e-6 {
		t.Errorf("the coupling at %g is no whole number of joints above %g", now, float.Value)
	}
}
