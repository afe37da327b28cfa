package calc_test

import (
	"math"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// pumped enters what was pumped of each slurry of section 3 of a plan, in m3.
func pumped(plan *model.Plan, volumes ...float64) {
	plan.Sections[2].BuiltSlurries = nil
	for _, v := range volumes {
		plan.Sections[2].BuiltSlurries = append(plan.Sections[2].BuiltSlurries, model.BuiltSlurry{Volume: quantity.Of(v, quantity.CubicMetre)})
	}
}

// TestTheTopByVolume: slurries pumped as planned into a hole that takes no excess stand at the planned top, once the plug has bumped;
// a volume lost takes it down by what the annulus holds there, and a top found says what is not accounted for.
func TestTheTopByVolume(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].excess", "0 %")
	was := calc.Evaluate(plan)
	pumped(plan, value(t, was, 3, "cement.slurry.1.volume"), value(t, was, 3, "cement.slurry.2.volume"))
	with(t, plan, "section[3].built.bumped", model.PlugBumped)
	r := calc.Evaluate(plan)
	planned := plan.Sections[2].Slurries[0].Top.SI
	if got := value(t, r, 3, "built.volume_top"); math.Abs(got-planned) > 1e-3 {
		t.Errorf("the cement stands at %g, want %g", got, planned)
	}

	with(t, plan, "section[3].built.lost", "5 m3")
	with(t, plan, "section[3].built.cement_top", "1700 m")
	r = calc.Evaluate(plan)
	lost := value(t, r, 3, "built.volume_top.lost")
	if lost <= planned {
		t.Fatalf("5 m3 less stand at %g, nothing lost at %g", lost, planned)
	}
	// Put back where it was found lacking, the volume lost is that of the annulus in between.
	with(t, plan, "section[3].built.cement_top", quantity.Value{SI: lost, Unit: quantity.Metre}.Text())
	if got := value(t, calc.Evaluate(plan), 3, "built.unaccounted"); math.Abs(got-5) > 1e-3 {
		t.Errorf("with the top found at %g, %g m3 are not accounted for; 5 were lost", lost, got)
	}

	// Without a plug that bumped, what the displacement has not filled stays inside: 2 m3 short leave 2 m3 more in the string.
	with(t, plan, "section[3].built.bumped", model.PlugMissed)
	with(t, plan, "section[3].pumping.compressibility", "")
	with(t, plan, "section[3].built.lost", "")
	to := value(t, calc.Evaluate(plan), 3, "cement.displacement")
	with(t, plan, "section[3].built.displaced", quantity.Of(to-2, quantity.CubicMetre).Text())
	short := calc.Evaluate(plan)
	with(t, plan, "section[3].built.displaced", "")
	with(t, plan, "section[3].built.lost", "2 m3")
	if a, b := value(t, short, 3, "built.volume_top"), value(t, calc.Evaluate(plan), 3, "built.volume_top.lost"); math.Abs(a-b) > 1e-3 {
		t.Errorf("2 m3 left inside stand at %g, 2 m3 lost at %g", a, b)
	}
}

// TestTheTopFoundIsJudgedAndLoads: the rules on the top of cement, and the loads on the string, take the top as found; the volumes of the
// job do not.
func TestTheTopFoundIsJudgedAndLoads(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "well.rules", model.SetNorway)
	was := calc.Evaluate(plan)
	shoe := value(t, was, 3, "casing.shoe")
	with(t, plan, "section[3].built.cement_top", quantity.Of(shoe-40, quantity.Metre).Text())
	r := calc.Evaluate(plan)
	if f := found(r, 2, "cement_height"); f.Severity == calc.OK || math.Abs(f.Measured-40) > 1e-6 || f.Mend != "section[3].built.cement_top" {
		t.Errorf("40 m of cement are judged as %+v", f)
	}
	if a, b := value(t, was, 3, "cement.volume"), value(t, r, 3, "cement.volume"); a != b {
		t.Errorf("the job asks for %g where it asked for %g", b, a)
	}
	if a, b := value(t, was, 3, "casing.collapse.cementing"), value(t, r, 3, "casing.collapse.cementing"); a >= b {
		t.Errorf("with 40 m of cement outside the collapse factor is %g, with the planned %g", b, a)
	}
	with(t, plan, "section[3].built.cement_top", quantity.Of(shoe+40, quantity.Metre).Text())
	r = calc.Evaluate(plan)
	if !noted(r, "section[3].built.cement_top") {
		t.Error("cement below the shoe is not found")
	}
	for _, fault := range sound(plan, r) {
		t.Error(fault)
	}
}

// TestTheJobAsBuiltIsJudged: housing, plug and returns.
func TestTheJobAsBuiltIsJudged(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[1].built.tilt", "0.6 deg")
	with(t, plan, "section[1].built.tilt_across", "-0.8 deg")
	with(t, plan, "section[1].built.returns", model.ReturnsNone)
	with(t, plan, "section[3].built.bumped", model.PlugMissed)
	with(t, plan, "section[3].built.bump_pressure", "120 bar")
	r := calc.Evaluate(plan)
	// At small angles the two go together as the sides of a right angle: 0.6, 0.8, 1.0.
	if got := value(t, r, 1, "built.tilt") * 180 / math.Pi; math.Abs(got-1) > 1e-4 {
		t.Errorf("the housing is %g deg off the vertical", got)
	}
	for key, want := range map[string]calc.Severity{"housing_tilt": calc.OK, "cement_returns": calc.Caution} {
		if f := found(r, 0, key); f.Key == "" || f.Severity != want && math.Abs(f.Margin) > 1e-4 {
			t.Errorf("%s is found as %+v", key, f)
		}
	}
	with(t, plan, "section[1].built.tilt_across", "-1.8 deg")
	with(t, plan, "section[1].built.returns", model.ReturnsPartial)
	again := calc.Evaluate(plan)
	if a, b := found(again, 0, "housing_tilt"), found(again, 0, "cement_returns"); a.Severity != calc.Caution || b.Severity != calc.OK {
		t.Errorf("found as %+v and %+v", a, b)
	}
	if f := found(r, 2, "plug_bumped"); f.Severity != calc.Caution {
		t.Errorf("a plug that did not bump is found as %+v", f)
	}
	bump, lift := value(t, r, 3, "built.bump"), value(t, r, 3, "cement.pump.final")
	if got := value(t, r, 3, "built.bump.over"); math.Abs(got-(120e5-lift)) > 1 || bump != value(t, r, 3, "cement.pump.bump") {
		t.Errorf("120 bar are %g over a lift of %g; planned %g", got, lift, bump)
	}
}

// TestDaysAsBuilt: days are counted from the first, and what comes before its time is noted.
func TestDaysAsBuilt(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for key, day := range map[string]string{"started": "2026-02-27", "reached": "2026-03-02", "landed": "2026-03-01", "tested": "soon"} {
		with(t, plan, "section[3].built."+key, day)
	}
	r := calc.Evaluate(plan)
	if got := value(t, r, 3, "built.days.reached"); got != 3 {
		t.Errorf("TD was reached after %g days", got)
	}
	if !noted(r, "section[3].built.landed") || !noted(r, "section[3].built.tested") || noted(r, "section[3].built.reached") {
		t.Error("a day out of order or no day is not found, or one in order is")
	}
}

// TestStaleIsNamedWithWhatChanged: what was measured in another mud, at another depth or too long ago.
func TestStaleIsNamedWithWhatChanged(t *testing.T) {
	plan := demo(t, "ottermast-2")
	s := &plan.Sections[3]
	metre, sg := quantity.Metre, func(kg float64) quantity.Value { return quantity.Value{SI: kg, Unit: quantity.SpecificGravity} }
	mud := s.Density.SI
	s.SlowRates = []model.SlowRate{{Rate: quantity.Of(25, quantity.StrokePerMinute), Pressure: quantity.Of(20, quantity.Bar), Mud: sg(mud), Depth: quantity.Of(2300, metre)}}
	s.DragReadings = []model.DragReading{{Depth: quantity.Of(3000, metre), PickUp: quantity.Of(200, quantity.TonneForce), Mud: sg(mud)}}
	s.ShoeTest.Pressure, s.ShoeTest.Mud, s.ShoeTest.Shoe = quantity.Of(80, quantity.Bar), sg(1300), quantity.Of(2150, metre)
	s.StackTest.Tested, s.StackTest.Until = "2026-03-01", "2026-03-31"
	stale := func() map[string]bool {
		r := calc.Evaluate(plan)
		for _, fault := range sound(plan, r) {
			t.Error(fault)
		}
		keys := map[string]bool{}
		for _, key := range []string{"shoe_test", "slow_rate.1.mud", "slow_rate.1.depth", "drag.1.mud", "cement_top", "stack.tested"} {
			if _, ok := r.Sheet(3).Find("built.stale." + key); ok {
				keys[key] = true
			}
		}
		return keys
	}
	if got := stale(); len(got) != 2 || !got["slow_rate.1.depth"] || !got["stack.tested"] {
		t.Errorf("before anything changed: %v", got)
	}
	s.Built.Density = sg(mud + 100)
	with(t, plan, "section[3].built.shoe", "2100 m")
	s.BuiltSlurries = []model.BuiltSlurry{{Volume: quantity.Of(20, quantity.CubicMetre)}}
	if got := stale(); len(got) != 6 {
		t.Errorf("with mud and shoe changed: %v", got)
	}
	r := calc.Evaluate(plan)
	if got := value(t, r, 4, "built.stale.drag.1.mud"); math.Abs(got-100) > 1e-6 {
		t.Errorf("the mud of the drag reading is off by %g", got)
	}
	s.ShoeTest.Shoe = quantity.Value{}
	s.ShoeTest.Date, plan.Sections[2].Built.Cemented = "2026-03-01", "2026-03-04"
	if got := value(t, calc.Evaluate(plan), 4, "built.stale.shoe_test"); got != 3 {
		t.Errorf("a shoe test is dated %g days before the string was cemented, want 3", got)
	}
	if !noted(r, "section[4].drag_reading[1].mud") {
		t.Error("no finding says that the drag reading is of another mud")
	}
}

// TestRowsAreStaleInOneFinding: slow rates of several rows, all recorded in another mud, are one thing to do and said once.
func TestRowsAreStaleInOneFinding(t *testing.T) {
	plan := demo(t, "ottermast-2")
	s := &plan.Sections[3]
	for _, rate := range []float64{20, 25, 33} { // none at the kill rate, of which the control page has its own finding
		s.SlowRates = append(s.SlowRates, model.SlowRate{Rate: quantity.Of(rate, quantity.StrokePerMinute), Pressure: quantity.Of(20, quantity.Bar),
			Mud: quantity.Value{SI: s.Density.SI - 60, Unit: quantity.SpecificGravity}})
	}
	var said []string
	for _, f := range calc.Evaluate(plan).Findings {
		if f.Section == 3 && strings.Contains(f.Text, "in another mud") {
			said = append(said, f.Text)
		}
	}
	if len(said) != 1 || !strings.HasSuffix(said[0], "(3 rows)") {
		t.Errorf("said %q", said)
	}
}
