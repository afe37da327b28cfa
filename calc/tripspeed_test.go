package calc_test

import (
	"math"
	"strconv"
	"testing"

	"borewalk/calc"
	"borewalk/calc/friction"
	"borewalk/model"
)

// TestSwabByHand: the laminar loss of a thick mud beside every part of the string, 48 PV v / gap² + 6 YP / gap, with the flow
// that the whole pipe displaces and that clings to it, tool joints left out.
func TestSwabByHand(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for path, text := range map[string]string{"section[4].rheology.given": model.ByPVYP, "section[4].rheology.friction": model.FrictionBinghamSlot,
		"section[4].pv": "80 cP", "section[4].yp": "20 Pa",
		"section[4].swab.out": "30 m/min"} {
		with(t, plan, path, text)
	}
	for k := range plan.Sections[3].String {
		with(t, plan, "section[4].string["+strconv.Itoa(k+1)+"].joint_length", "0 m")
	}
	r := calc.Evaluate(plan)
	const speed = 0.5
	type span struct{ from, to, bore float64 }
	bores := []span{{0, 352.3, 19.5}, {352.3, 364.8, 18.75}, {364.8, 365.65, 18.51}, {365.65, 2150, 12.375}, {2150, 2155, 17.5}, {2155, 3250, 12.25}}
	for _, c := range []struct {
		key string
		bit float64
	}{{"td", 3250}, {"shoe", 2150}} {
		sum, bottom := 0.0, c.bit
		for k := range plan.Sections[3].String {
			row := &plan.Sections[3].String[k]
			top := bottom - row.Length.SI
			if !row.Length.IsSet() {
				top = 0
			}
			if body := row.Size.SI / inch; !row.Cuts() {
				for _, b := range bores {
					length := math.Min(bottom, b.to) - math.Max(top, b.from)
					if length <= 0 {
						continue
					}
					gap := (b.bore - body) * inch
					felt := speed*body*body/(b.bore*b.bore-body*body) + friction.Clinging(body/b.bore)*speed
					sum += (48*0.080*felt/(gap*gap) + 6*20/gap) * length
				}
			}
			bottom = top
		}
		got := value(t, r, 4, "swab.out."+c.key+".pressure")
		if !near(got, -sum, 1e-4*sum) {
			t.Errorf("bit at %.0f m: %.3f bar, by hand -%.3f bar", c.bit, got/bar, sum/bar)
		}
		tvd := buildTVD(c.bit)
		if emw, want := value(t, r, 4, "swab.out."+c.key), 1420-sum/(g*tvd); !near(emw, want, 0.05) {
			t.Errorf("bit at %.0f m: %.2f kg/m3, by hand %.2f", c.bit, emw, want)
		}
	}
}

// TestThePlannedSpeedAtTheLimitIsJustMet: entered as planned, the fastest speed out leaves nothing over, and the swab at the
// place that limits it has come down to pore pressure and margin.
func TestThePlannedSpeedAtTheLimitIsJustMet(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	for section := 4; section <= 6; section++ {
		for _, way := range []struct{ key, rule, margin string }{{"out", "pulling_speed", "swab_margin"}, {"in", "trip_in_speed", "surge_margin"}} {
			r := calc.Evaluate(plan)
			limit := value(t, r, section, "swab.limit."+way.key+".least")
			if limit >= 5 || limit == 0 {
				continue
			}
			ref := entry(t, plan, "section["+strconv.Itoa(section)+"].swab."+way.key)
			e := ref.Get(plan)
			was := e
			e.Quantity.SI = limit
			ref.Set(plan, e)
			if f := worst(t, calc.Evaluate(plan), section, way.rule); math.Abs(f.Measured) > 1e-9 {
				t.Errorf("section %d, %s: %g m/s over the limit %g", section, way.key, f.Measured, limit)
			}
			e.Quantity.SI = limit * 1.1
			ref.Set(plan, e)
			if f := worst(t, calc.Evaluate(plan), section, way.rule); f.Severity != calc.Caution {
				t.Errorf("section %d, %s at a tenth more than allowed: %v", section, way.key, f.Severity)
			}
			ref.Set(plan, was)
			with(t, plan, "section["+strconv.Itoa(section)+"].swab."+way.margin, "0.03 sg")
			if less := value(t, calc.Evaluate(plan), section, "swab.limit."+way.key+".least"); less > limit {
				t.Errorf("section %d, %s: a wider margin leaves %g m/s, before %g", section, way.key, less, limit)
			}
			with(t, plan, "section["+strconv.Itoa(section)+"].swab."+way.margin, "")
		}
	}
}

// TestWhatMovesSwab: faster and in thicker mud more, without a float less, with the pumps on less; surge with them more.
func TestWhatMovesSwab(t *testing.T) {
	for _, c := range []struct {
		path, text, key string
		more            bool
	}{
		{"section[4].swab.out", "60 m/min", "swab.out.td.pressure", true},
		{"section[4].swab.float", model.NoFloat, "swab.out.td.pressure", false},
		{"section[4].swab.flow_out", "1000 L/min", "swab.out.td.pressure", false},
		{"section[4].swab.in", "60 m/min", "swab.in.td.pressure", true},
		{"section[4].swab.float", model.NoFloat, "swab.in.td.pressure", false},
		{"section[4].swab.flow_in", "1000 L/min", "swab.in.td.pressure", true},
	} {
		before, after := changed(t, "ottermast-2", c.path, c.text, 4, c.key)
		before, after = math.Abs(before), math.Abs(after)
		if c.more && after <= before || !c.more && after > before {
			t.Errorf("%s = %s: %s from %.0f to %.0f Pa", c.path, c.text, c.key, before, after)
		}
	}
}

// TestAPumpedTripCanPressOnTheHole: with much flow the hole is pressed on even while the
// string is pulled.
func TestAPumpedTripCanPressOnTheHole(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[4].swab.flow_out", "3400 L/min")
	with(t, plan, "section[4].swab.out", "3 m/min")
	if p := value(t, calc.Evaluate(plan), 4, "swab.out.td.pressure"); p <= 0 {
		t.Errorf("%g Pa", p)
	}
}

// TestGelByHand: 4 × gel × L / d beside and in each part, from the numbers that the working shows.
func TestGelByHand(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[4].rheology.gel_30min", "10 Pa")
	r := calc.Evaluate(plan)
	for s := 3; s <= 4; s++ {
		w, ok := calc.Explain(plan, s-1, "swab.gel")
		if !ok || !w.Figure.OK {
			t.Fatalf("section %d has no gel: %+v", s, w.Figure)
		}
		gel, length, outer, held, sum := 0.0, 0.0, 0.0, 0.0, 0.0
		inside := true
		joint := 0.0
		for _, in := range w.Inputs {
			switch in.Symbol {
			case "gel":
				gel = in.Value
			case "L":
				sum += held * 4 * gel * length
				length, held = in.Value, 0
				inside = in.Name == "in the string"
			case "ID":
				held = 1 / in.Value
			case "D":
				outer = in.Value
			case "d":
				held = 1 / (outer - in.Value)
			case "j":
				joint = in.Value
			case "share":
				narrow := 1 / joint
				if !inside {
					narrow = 1 / (outer - joint)
				}
				held += in.Value * (narrow - held)
			}
		}
		sum += held * 4 * gel * length
		if got := value(t, r, s, "swab.gel"); !near(got, sum, 1e-9*sum) || got < 1e5 {
			t.Errorf("section %d: %g Pa, by hand %g Pa", s, got, sum)
		}
		if in, out := value(t, r, s, "swab.gel.inside"), value(t, r, s, "swab.gel.outside"); !near(in+out, sum, 1e-9*sum) {
			t.Errorf("section %d: %g Pa in the string, %g Pa in the annulus", s, in, out)
		}
		tvd := value(t, r, s, "hole.td.tvd")
		want := value(t, r, s, "mud.emw.td") + value(t, r, s, "swab.gel.outside")/(g*tvd)
		if got := value(t, r, s, "swab.gel.td"); !near(got, want, 1e-6) {
			t.Errorf("section %d: %g kg/m3, by hand %g", s, got, want)
		}
	}
}

// TestTheTripChartsMeetTheFigures at their ends.
func TestTheTripChartsMeetTheFigures(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	r := calc.Evaluate(plan)
	for s := 3; s <= 6; s++ {
		found := 0
		for _, c := range calc.Charts(plan, s-1, model.TopicHydraulics) {
			first, last, _ := c.Ends()
			at := func(curve int, place float64) float64 {
				v, ok := c.Curves[curve].At(place)
				if !ok {
					t.Fatalf("section %d, %s: %s ends before %g", s, c.Key, c.Curves[curve].Name, place)
				}
				return v
			}
			want := map[string]float64{}
			switch c.Key {
			case "swab.depth":
				want = map[string]float64{"swab.limit.out.td": at(0, last), "swab.limit.in.td": at(1, last), "swab.limit.out.shoe": at(0, first), "swab.limit.in.shoe": at(1, first)}
			case "swab.window":
				want = map[string]float64{"swab.out.td": at(1, last), "swab.in.td": at(3, last), "swab.out.shoe": at(1, first), "swab.in.shoe": at(3, first),
					"mud.emw.td": at(2, last), "mud.pore.td": at(0, last)}
			case "swab.speed":
				speed := value(t, r, s, "swab.limit.out.td")
				if speed >= last {
					break
				}
				if rise := at(0, speed); !(rise > 0) {
					t.Errorf("section %d: no swab at %g m/s", s, speed)
				}
			}
			for key, got := range want {
				if figure := value(t, r, s, key); !near(got, figure, 1e-6*figure) {
					t.Errorf("section %d, %s: %s is %g in the chart, %g as figure", s, c.Key, key, got, figure)
				}
			}
			if len(c.Key) > 5 && c.Key[:5] == "swab." {
				found++
			}
		}
		if found != 3 {
			t.Errorf("section %d has %d charts of the trip", s, found)
		}
	}
}

// TestNoTripSpeedWithoutAPlannedOne: without a planned speed the fastest stands, and nothing is judged.
func TestNoTripSpeedWithoutAPlannedOne(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[4].swab.out", "")
	r := calc.Evaluate(plan)
	if f := figure(t, r, 4, "swab.out.td"); f.OK || f.Mend != "section[4].swab.out" {
		t.Errorf("%+v", f)
	}
	if f := figure(t, r, 4, "swab.limit.out.td"); !f.OK {
		t.Errorf("the limit goes with the plan: %+v", f)
	}
	if n := len(findings(r, 4, "pulling_speed")); n != 0 {
		t.Errorf("%d findings on a speed that is not planned", n)
	}
}

// TestThePlannedPullOfTheSaltSectionIsSlowEnough, and what was planned before tool joints counted by their own section is not.
func TestThePlannedPullOfTheSaltSectionIsSlowEnough(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	if f := worst(t, calc.Evaluate(plan), 6, "pulling_speed"); f.Severity != calc.OK {
		t.Errorf("as planned: %v %s", f.Severity, f.Text)
	}
	with(t, plan, "section[6].swab.out", "50 ft/min")
	if f := worst(t, calc.Evaluate(plan), 6, "pulling_speed"); f.Severity == calc.OK {
		t.Error("50 ft/min is let pass")
	}
}

// TestTheGelThatWasUsedIsTheOneToMend.
func TestTheGelThatWasUsedIsTheOneToMend(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for _, key := range []string{"gel_30min", "gel_10min", "gel_10s"} {
		path := "section[4].rheology." + key
		with(t, plan, path, "10 Pa")
		if f := worst(t, calc.Evaluate(plan), 4, "gel_break"); f.Mend != model.Path(path) {
			t.Errorf("%s is used, %s is to be mended", path, f.Mend)
		}
		entry(t, plan, path).Set(plan, model.Entry{})
	}
}

// TestWithoutARiserNoMarginIsKeptFromSurge unless the plan enters one: near the seabed there is next to none.
func TestWithoutARiserNoMarginIsKeptFromSurge(t *testing.T) {
	const none = "no margin is left at rest"
	plan := demo(t, "saltlantern-1")
	keys := []string{"swab.limit.in.td", "swab.limit.in.shoe", "casing.surge.closed"}
	r := calc.Evaluate(plan)
	blank := map[string]float64{}
	for _, key := range keys {
		f := figure(t, r, 2, key)
		if blank[key] = f.Value; f.Note == none {
			t.Errorf("%s: %s", key, f.Note)
		}
	}
	with(t, plan, "section[2].swab.surge_margin", "0 sg")
	with(t, plan, "section[2].loads.surge_margin", "0 sg")
	r = calc.Evaluate(plan)
	for _, key := range keys {
		if got := value(t, r, 2, key); got != blank[key] {
			t.Errorf("%s is %g m/s without a margin, %g m/s where it is blank", key, got, blank[key])
		}
	}
	with(t, plan, "section[2].swab.surge_margin", "0.5 sg")
	with(t, plan, "section[2].loads.surge_margin", "0.5 sg")
	r = calc.Evaluate(plan)
	for _, key := range keys {
		if f := figure(t, r, 2, key); f.Value != 0 || f.Note != none {
			t.Errorf("%s with half a sg: %g m/s, %q", key, f.Value, f.Note)
		}
	}
}

// TestASpeedThatNothingLimitsSaysSo: in a thin mud the search ends at its fastest.
func TestASpeedThatNothingLimitsSaysSo(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for key, text := range map[string]string{"rheology.given": model.ByPVYP, "pv": "1 cP", "yp": "0 Pa", "rheology.friction": model.FrictionBinghamSlot} {
		with(t, plan, "section[3]."+key, text)
	}
	r := calc.Evaluate(plan)
	for key, want := range map[string]string{"swab.limit.out.td": "or more: not limited by swab", "swab.limit.in.td": "or more: not limited by surge"} {
		if f := figure(t, r, 3, key); (f.Value >= 5) != (f.Note == want) || f.Value < 5 {
			t.Errorf("%s: %g m/s, %q", key, f.Value, f.Note)
		}
	}
}
