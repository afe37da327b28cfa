package calc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

const tonneForce = 9806.65

// smooth takes all friction off a section, counted from 1.
func smooth(t testing.TB, plan *model.Plan, section string) {
	t.Helper()
	for _, key := range []string{"riser", "cased", "open"} {
		with(t, plan, "section["+section+"].drag."+key, "0")
	}
}

// TestWithoutFrictionTheStringWeighsWhatItWeighs: all that moves it agrees with the hook load that knows no friction, through
// air, sea and mud, upright or slanted; and with friction turning it in place does.
func TestWithoutFrictionTheStringWeighsWhatItWeighs(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		before := calc.Evaluate(plan)
		for s := range plan.Sections {
			smooth(t, plan, string(rune('1'+s)))
		}
		r := calc.Evaluate(plan)
		for s := 1; s <= len(plan.Sections); s++ {
			want := value(t, r, s, "string.hook_load")
			for _, key := range []string{"drag.pick_up", "drag.slack_off", "drag.rotating"} {
				if got := value(t, r, s, key); !near(got, want, 1e-6*want) {
					t.Errorf("section %d %s = %.3f N without friction, it weighs %.3f N", s, key, got, want)
				}
			}
			if got := value(t, before, s, "drag.rotating"); !near(got, want, 1e-6*want) {
				t.Errorf("section %d turned in place %.3f N, it weighs %.3f N", s, got, want)
			}
			if got := value(t, r, s, "drag.torque.off_bottom"); got != 0 {
				t.Errorf("section %d turns with %g N m without friction", s, got)
			}
		}
	})
}

// frictionHoldsTheStringBack whatever is entered.
func frictionHoldsTheStringBack(t *rapid.T, _ *model.Plan, r *calc.Result) {
	for i := range r.Sections {
		up, ok := r.Sheet(i).Find("drag.pick_up")
		still, _ := r.Sheet(i).Find("drag.rotating")
		down, _ := r.Sheet(i).Find("drag.slack_off")
		torque, _ := r.Sheet(i).Find("drag.torque.off_bottom")
		if !ok || !up.OK {
			continue
		}
		slack := 1e-6 * (1 + math.Abs(up.Value) + math.Abs(still.Value))
		if up.Value < still.Value-slack || down.Value > still.Value+slack || torque.Value < 0 {
			t.Errorf("section %d: up %g, still %g, down %g N, torque %g N m", i+1, up.Value, still.Value, down.Value, torque.Value)
		}
		free, known := r.Sheet(i).Find("string.hook_load")
		inclination, _ := r.Sheet(i).Find("hole.inclination")
		if known && free.OK && inclination.Value < math.Pi/2 && math.Abs(free.Value-still.Value) > slack*10 {
			t.Errorf("section %d: still %g, without friction %g N", i+1, still.Value, free.Value)
		}
	}
}

// TestTheWorkingOfAHookLoadAddsUp goes up the string with the numbers that the working shows: straight lengths by
// m g L (cos I + axial mu sin I), the build by the balance of forces in a thousand steps.
func TestTheWorkingOfAHookLoadAddsUp(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for _, key := range []string{"drag.pick_up", "drag.slack_off", "drag.rotating", "drag.drilling", "drag.sliding"} {
		for s := 3; s <= 5; s++ {
			w, ok := calc.Explain(plan, s-1, key)
			if !ok {
				t.Fatalf("there is no %s", key)
			}
			got, blocks, lengths := addUp(w.Inputs, func(shown, sum float64) {
				if math.Abs(shown-sum) > 20 { // N
					t.Errorf("section %d %s: %.1f N at the top of a length, the sum is %.1f N", s, key, shown, sum)
				}
			})
			if lengths < 6 || math.Abs(got+blocks-w.Figure.Value) > 20 {
				t.Errorf("section %d %s: %d lengths give %.1f N, the figure is %.1f N", s, key, lengths, got+blocks, w.Figure.Value)
			}
		}
	}
}

// addUp goes through the inputs of a hook load; each length ends with the tension at its top.
func addUp(inputs []calc.Input, at func(shown, sum float64)) (tension, blocks float64, lengths int) {
	var axial, length, mass, lower, upper, mu float64
	for _, in := range inputs {
		switch in.Symbol {
		case "axial":
			axial = in.Value
		case "WOB":
			tension = -in.Value
		case "blocks":
			blocks = in.Value
		case "L":
			length, mu = in.Value, 0
		case "m":
			mass = in.Value
		case "I":
			upper = in.Value
			if in.Name == "inclination" {
				lower = in.Value
			}
		case "mu":
			mu = in.Value
		case "T":
			const steps = 1000
			for k := range steps {
				inc := lower + (upper-lower)*(float64(k)+0.5)/steps
				w, ds := mass*9.80665, length/steps
				side := math.Abs(w*math.Sin(inc) - tension*(lower-upper)/length)
				tension += (w*math.Cos(inc) + axial*mu*side) * ds
			}
			lengths++
			at(in.Value, tension)
		}
	}
	return tension, blocks, lengths
}

// TestTheBucklingMarginByHand: 5 7/8 in pipe on the low side of a 12 1/4 in hole at 32 degrees, sliding with 12 tf.
func TestTheBucklingMarginByHand(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[4].string_loads.bit_weight", "12 tf")
	r := calc.Evaluate(plan)
	const e = 30e6 * 6894.757293168361
	od, id := 5.875*inch, 5.153*inch
	w := 39.3 * 9.80665 * (1 - 1420.0/7850)
	limit := 2 * math.Sqrt(e*math.Pi/64*(math.Pow(od, 4)-math.Pow(id, 4))*w*math.Sin(32*math.Pi/180)/((12.25-7)/2*inch))
	// what stands below: 140 m of 84.8 kg/m, 55 m of 222.9, 32 m of 240, let down at 32 degrees with a friction factor of 0.24
	below := (140*84.8 + 55*222.9 + 32*240) * 9.80665 * (1 - 1420.0/7850) * (math.Cos(32*math.Pi/180) - 0.24*math.Sin(32*math.Pi/180))
	want := limit + below - 12*tonneForce
	if got := value(t, r, 4, "drag.buckling"); !near(got, want, 50) {
		t.Errorf("margin %g N, by hand %g N", got, want)
	}
	if got := value(t, r, 4, "drag.buckling.at"); !near(got, 3250-0.35-32-55-140, 1e-6) {
		t.Errorf("least at %g m", got)
	}
}

// TestTooMuchWeightBucklesPipe: more weight than collars and heavy-weight have leaves pipe beyond the limit, first as a wave.
func TestTooMuchWeightBucklesPipe(t *testing.T) {
	plan := demo(t, "ottermast-2")
	last, lastHelix := 0.0, 0.0
	for _, weight := range []string{"12 tf", "30 tf", "40 tf", "55 tf"} {
		with(t, plan, "section[4].string_loads.bit_weight", weight)
		r := calc.Evaluate(plan)
		beyond, helix, left := value(t, r, 4, "drag.beyond"), value(t, r, 4, "drag.beyond.helix"), value(t, r, 4, "drag.buckling")
		if beyond < last || helix < lastHelix || helix > beyond || (left < 0) != (beyond > 0) {
			t.Errorf("%s: %g m beyond, %g m as a helix, margin %g N", weight, beyond, helix, left)
		}
		if f := worst(t, r, 4, "buckling"); (f.Severity == calc.Caution) != (left < 0) || f.Severity == calc.Stop {
			t.Errorf("%s: %v, margin %g N", weight, f.Severity, left)
		}
		last, lastHelix = beyond, helix
	}
	if last == 0 || lastHelix == 0 {
		t.Errorf("55 tf leave %g m beyond, %g m as a helix", last, lastHelix)
	}
}

// TestMoreFrictionMoreDrag.
func TestMoreFrictionMoreDrag(t *testing.T) {
	plan := demo(t, "ottermast-2")
	up, down, torque := 0.0, math.Inf(1), 0.0
	for _, mu := range []string{"0.1", "0.2", "0.3", "0.5"} {
		with(t, plan, "section[5].drag.open", mu)
		r := calc.Evaluate(plan)
		if a, b, c := value(t, r, 5, "drag.pick_up"), value(t, r, 5, "drag.slack_off"), value(t, r, 5, "drag.torque.off_bottom"); a <= up || b >= down || c <= torque {
			t.Errorf("friction %s: up %g, down %g N, torque %g N m", mu, a, b, c)
		} else {
			up, down, torque = a, b, c
		}
	}
	entry(t, plan, "section[5].drag.open").Set(plan, model.Entry{})
	blank := value(t, calc.Evaluate(plan), 5, "drag.pick_up")
	with(t, plan, "section[5].drag.open", "0.3")
	if got := value(t, calc.Evaluate(plan), 5, "drag.pick_up"); got != blank {
		t.Errorf("blank friction gives %g N, 0.3 %g N", blank, got)
	}
}

// TestWhatAReadingMatchesGivesIt: entered, the friction factor found for a reading makes the model show the reading.
func TestWhatAReadingMatchesGivesIt(t *testing.T) {
	for s := 3; s <= 5; s++ {
		plan := demo(t, "ottermast-2")
		r := calc.Evaluate(plan)
		tried := 0
		for _, f := range r.Sheet(s - 1).Figures {
			key, ok := strings.CutSuffix(f.Key, ".friction")
			if !ok {
				continue
			}
			tried++
			trial := demo(t, "ottermast-2")
			bore := map[string]string{"open hole": "open", "cased": "cased"}[f.Note]
			entry(t, trial, "section["+string(rune('0'+s))+"].drag."+bore).Set(trial, model.Entry{Quantity: quantity.Of(f.Value, quantity.Bare)})
			if more := value(t, calc.Evaluate(trial), s, key+".more"); math.Abs(more) > 2 {
				t.Errorf("section %d %s: with a friction factor of %g still %g more is read", s, key, f.Value, more)
			}
		}
		if tried < 6 {
			t.Errorf("section %d: %d readings", s, tried)
		}
	}
}

func TestReadingsThatCannotBe(t *testing.T) {
	for _, c := range []struct{ path, text, blank, mend string }{
		{"section[4].drag_reading[2].depth", "", "drag.reading.2.pick_up", "section[4].drag_reading[2].depth"},
		{"section[4].drag_reading[2].depth", "4000 m", "drag.reading.2.pick_up", "section[4].drag_reading[2].depth"},
		{"section[4].drag_reading[2].pick_up", "900 tf", "drag.reading.2.pick_up.friction", "section[4].drag_reading[2].pick_up"},
		{"section[4].drag_reading[2].slack_off", "150 tf", "drag.reading.2.slack_off.friction", "section[4].drag_reading[2].slack_off"},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, c.path, c.text)
		if f := figure(t, calc.Evaluate(plan), 4, c.blank); f.OK || f.Mend != model.Path(c.mend) {
			t.Errorf("%s = %q: %s = %g, mend %s", c.path, c.text, c.blank, f.Value, f.Mend)
		}
	}
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[4].drag_reading[2].torque", "")
	if _, ok := calc.Evaluate(plan).Sheet(3).Find("drag.reading.2.torque"); ok {
		t.Error("a torque that was not read is compared")
	}
}

// TestAMatchIsProposed: the deepest reading gives friction factors to take, rounded to a hundredth.
func TestAMatchIsProposed(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	matches := func(section int) []calc.Proposal {
		return slices.DeleteFunc(calc.Proposals(plan, section, model.TopicString), func(p calc.Proposal) bool { return p.By == "" })
	}
	list := matches(3)
	if len(list) != 3 {
		t.Fatalf("%d proposals", len(list))
	}
	for k, key := range []string{"pick_up", "slack_off", "torque"} {
		p := list[k]
		mu := value(t, r, 4, "drag.reading.3."+key+".friction")
		if !p.OK || string(p.Ref.Path()) != "section[4].drag.open" || math.Abs(p.Entry.Quantity.SI-mu) > 0.0051 {
			t.Errorf("%s: %+v, the match is %g", key, p, mu)
		}
		p.Ref.Set(plan, p.Entry)
		if got := value(t, calc.Evaluate(plan), 4, "drag.reading.3."+key); got != p.Value {
			t.Errorf("%s: %g is promised, %g comes", key, p.Value, got)
		}
	}
	with(t, plan, "section[4].drag_reading[3].pick_up", "900 tf")
	if p := matches(3)[0]; p.OK || p.Why == "" {
		t.Errorf("900 tf are matched: %+v", p)
	}
	if list := matches(0); len(list) != 0 {
		t.Errorf("without readings %d proposals", len(list))
	}
}

func TestDragCharts(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for i := range plan.Sections {
			charts := calc.Charts(plan, i, model.TopicString)
			if len(charts) != 3 {
				t.Fatalf("section %d: %d charts", i+1, len(charts))
			}
			td := value(t, r, i+1, "hole.td")
			for _, c := range []struct {
				chart      int
				curve, key string
			}{{0, "Picking up", "drag.pick_up"}, {0, "Rotating", "drag.rotating"}, {0, "Slacking off", "drag.slack_off"}, {1, "Off bottom", "drag.torque.off_bottom"},
				{1, "Drilling", "drag.torque.drilling"}} {
				got, ok := curve(&charts[c.chart], c.curve).At(td)
				if want := value(t, r, i+1, c.key); !ok || !near(got, want, 20) { // N: arcs whole or in pieces
					t.Errorf("section %d %s at TD = %g, %s is %g", i+1, c.curve, got, c.key, want)
				}
			}
			blocks := plan.Rig.BlockWeight.SI
			for _, c := range []struct{ curve, key string }{{"Picking up", "drag.pick_up"}, {"Slacking off", "drag.slack_off"}, {"Drilling", "drag.drilling"}, {"Sliding", "drag.sliding"}} {
				at := curve(&charts[2], c.curve)
				if want := value(t, r, i+1, c.key) - blocks; len(at.Points) == 0 || !near(at.Points[0].Value, want, 1) {
					t.Errorf("section %d tension %s: %d points, want %g N at the top", i+1, c.curve, len(at.Points), want)
				}
			}
			for _, p := range curve(&charts[2], "Buckling").Points {
				if !(p.Value < 0) || p.At < 0 || p.At > td {
					t.Errorf("section %d buckles at %g N, %g m", i+1, p.Value, p.At)
				}
			}
			for k := range charts {
				for _, c := range charts[k].Curves {
					for n, p := range c.Points {
						if math.IsNaN(p.Value) || math.IsInf(p.Value, 0) || n > 0 && p.At < c.Points[n-1].At {
							t.Errorf("section %d %s %s: point %+v", i+1, charts[k].Key, c.Name, p)
						}
					}
				}
			}
		}
	})
}

// curve returns a curve of a chart by its name; an empty one where there is none.
func curve(chart *calc.Chart, name string) *calc.ChartCurve {
	for k := range chart.Curves {
		if chart.Curves[k].Name == name {
			return &chart.Curves[k]
		}
	}
	return &calc.ChartCurve{}
}

// TestLimitsOfRigAndPipe: the findings turn where rating, top drive and planned overpull are passed.
func TestLimitsOfRigAndPipe(t *testing.T) {
	for _, c := range []struct{ path, fine, short, key string }{
		{"rig.hook_load", "173.5 tf", "172 tf", "pick_up_rating"},
		{"rig.top_drive_torque", "17.6 kN-m", "17.4 kN-m", "top_drive_torque"},
		{"section[4].string_loads.overpull", "144 tf", "145 tf", "pick_up_overpull"},
	} {
		for text, want := range map[string]calc.Severity{c.fine: calc.OK, c.short: calc.Caution} {
			plan := demo(t, "ottermast-2")
			with(t, plan, c.path, text)
			if f := worst(t, calc.Evaluate(plan), 4, c.key); f.Severity != want {
				t.Errorf("%s = %s: %v, margin %g", c.path, text, f.Severity, f.Margin)
			}
		}
	}
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	od, id := (5.153+0.8*(5.875-5.153))*inch, 5.153*inch
	want := 0.9*math.Pi/4*(od*od-id*id)*135e3*6894.757293168361 - (value(t, r, 4, "drag.pick_up") - plan.Rig.BlockWeight.SI)
	if got := value(t, r, 4, "drag.overpull"); !near(got, want, 1000) {
		t.Errorf("overpull left %g N, by hand %g N", got, want)
	}
	// The worked difference in the trade's unit: 0.9 × 302.3 - 127.8.
	if got := value(t, r, 4, "drag.overpull") / tonneForce; !near(got, 144.3, 0.1) {
		t.Errorf("overpull left %.1f tf, by hand 144.3 tf", got)
	}
}

// TestTheOverpullWithDragIsThatOfTheClass and of the share of yield: without friction it is what the pipe leaves by its weight.
func TestTheOverpullWithDragIsThatOfTheClass(t *testing.T) {
	for _, class := range []string{model.ClassNew, model.ClassPremium, model.Class2} {
		plan := demo(t, "ottermast-2")
		smooth(t, plan, "4")
		with(t, plan, "rig.hook_load", "2000 tf")
		least, part := math.Inf(1), ""
		for k, row := range plan.Sections[3].String {
			if row.Item == model.ItemPipe {
				part = string(rune('1' + k))
				with(t, plan, "section[4].string["+part+"].class", class)
			}
		}
		r := calc.Evaluate(plan)
		for _, f := range r.Sheet(3).Figures {
			if strings.HasPrefix(f.Key, "string.class.") && strings.HasSuffix(f.Key, ".overpull") {
				least = min(least, f.Value)
			}
		}
		if got := value(t, r, 4, "drag.overpull"); !near(got, least, 10) {
			t.Errorf("%s: %.0f N, without friction %.0f N", class, got, least)
		}
		if f, _ := r.Sheet(3).Find("drag.overpull"); !strings.HasSuffix(f.Note, ", 90 % of "+class) {
			t.Errorf("%s: its basis reads %q", class, f.Note)
		}
	}
}

// TestAPathThatBeginsWithAKink: a survey whose first station is inclined bends the string at one point.
func TestAPathThatBeginsWithAKink(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "trajectory.method", "survey list")
	row := func(md, inc float64) model.Survey {
		return model.Survey{Depth: quantity.Of(md, quantity.Metre), Inclination: quantity.Of(inc, quantity.Degree), Azimuth: quantity.Of(118, quantity.Degree)}
	}
	plan.Surveys = []model.Survey{row(1100, 5), row(1400, 5), row(3000, 5)}
	r := calc.Evaluate(plan)
	for _, fault := range sound(plan, r) {
		t.Error(fault)
	}
	up, still := value(t, r, 4, "drag.pick_up"), value(t, r, 4, "drag.rotating")
	// Below the kink a straight slant at 5 degrees, then a rope round a post of 5 degrees, then upright.
	const sin, cos = 0.08715574274765817, 0.9961946980917455
	buoyancy := 9.80665 * (1 - 1420.0/7850)
	tension, at := 0.0, 3250.0
	for _, part := range []struct{ length, mass float64 }{{0.35, 0}, {32, 240}, {55, 222.9}, {140, 84.8}, {3250 - 227.35 - 1100, 39.3}} {
		open := min(part.length, max(0, at-2150))
		tension += part.mass * buoyancy * (part.length*cos + (open*0.24+(part.length-open)*0.18)*sin)
		at -= part.length
	}
	want := tension*math.Exp(0.18*5*math.Pi/180) + 1100*39.3*buoyancy + plan.Rig.BlockWeight.SI
	if !near(up, want, 20) || up <= still {
		t.Errorf("picking up %g N, by hand %g N; still %g N", up, want, still)
	}
}

// TestNothingPressedHasNoPlace: in an upright hole no pipe is pressed to the wall, and no depth is given for it.
func TestNothingPressedHasNoPlace(t *testing.T) {
	r := calc.Evaluate(demo(t, "ottermast-2"))
	for _, way := range []string{"drag.side", "drag.side.pick_up"} {
		for s, pressed := range map[int]bool{1: false, 4: true} {
			force := figure(t, r, s, way)
			if at, found := r.Sheet(s - 1).Find(way + ".at"); (force.Value > 0) != pressed || found != pressed || (force.Note == "") != pressed {
				t.Errorf("section %d %s: %g N at %g m, %q", s, way, force.Value, at.Value, force.Note)
			}
		}
	}
}

// TestReadingsAgainstOneAnother: what goes up pulls no less than what turns, that no less than what goes down, and none less
// than the blocks weigh.
func TestReadingsAgainstOneAnother(t *testing.T) {
	for _, c := range []struct{ up, down, still, mend string }{
		{"170 tf", "130 tf", "150 tf", ""},
		{"150 tf", "150 tf", "150 tf", ""},
		{"149 tf", "130 tf", "150 tf", "pick_up"},
		{"170 tf", "151 tf", "150 tf", "slack_off"},
		{"129 tf", "130 tf", "", "pick_up"},
		{"", "40 tf", "", "slack_off"},
		{"40 tf", "", "", "pick_up"},
		{"", "", "40 tf", "rotating"},
	} {
		plan := demo(t, "ottermast-2")
		const row = "section[4].drag_reading[2]."
		with(t, plan, "rig.block_weight", "45 tf")
		for key, text := range map[string]string{"pick_up": c.up, "slack_off": c.down, "rotating": c.still} {
			with(t, plan, row+key, text)
		}
		var mends []string
		for _, f := range calc.Evaluate(plan).Findings {
			if f.Key == "entry" && f.Severity == calc.Caution && strings.HasPrefix(string(f.Mend), row) {
				mends = append(mends, strings.TrimPrefix(string(f.Mend), row))
			}
		}
		if got := strings.Join(mends, " "); got != c.mend {
			t.Errorf("up %q, down %q, still %q: to mend %q, want %q", c.up, c.down, c.still, got, c.mend)
		}
	}
}
