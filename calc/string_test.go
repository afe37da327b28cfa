package calc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

const (
	lbf, ftlbf    = 4.4482216152605, 4.4482216152605 * 0.3048
	poundsPerFoot = 0.45359237 / 0.3048
	weightInMud12 = 1 - 12*119.826427/7850.0
)

// TestCollarsNeeded, after Lapeyrouse, Formulas and Calculations, length of bottom-hole assembly for a weight on bit, from
// memory: 50000 lbf and 15 % more, collars of 147 lb/ft in 12 ppg, factor 0.8168: 479 ft.
func TestCollarsNeeded(t *testing.T) {
	plan := demo(t, "saltlantern-1") // vertical
	s := &plan.Sections[4]
	collar := model.StringPart{Item: model.ItemCollar, Size: quantity.Of(8, quantity.Inch), ID: quantity.Of(3, quantity.Inch),
		LinearMass: quantity.Of(147, quantity.PoundPerFoot), Length: quantity.Of(400, quantity.Foot)}
	s.String = []model.StringPart{s.String[0], collar, s.String[len(s.String)-1]}
	with(t, plan, "section[5].density", "12 ppg")
	with(t, plan, "section[5].string_loads.bit_weight", "50 klbf")
	with(t, plan, "limits.bit_weight_share", "86.9565 %") // 1 / 1.15
	r := calc.Evaluate(plan)
	if got := value(t, r, 5, "string.bha.needed") / foot; !near(got, 479, 0.5) {
		t.Errorf("%.1f ft of collars, want 479", got)
	}
	// With 400 ft the neutral point is above them: 50000 / (147 × 0.8168) = 416.4 ft; the pipe carries 1973 lbf at 24.996 lb/ft in mud.
	if f := figure(t, r, 5, "string.bha.neutral"); f.Note != "in drill pipe" {
		t.Errorf("neutral point %q", f.Note)
	}
	if f := worst(t, r, 5, "neutral_point"); f.Severity != calc.Caution || f.Margin > 0 {
		t.Errorf("drill pipe in compression: %+v", f)
	}
	per := 147 * poundsPerFoot * 9.80665 * weightInMud12
	pipe := s.String[2].LinearMass.SI * 9.80665 * weightInMud12
	want := 1.1*foot + 400*foot + (50000*lbf-per*400*foot)/pipe
	if got := value(t, r, 5, "string.bha.neutral.up"); !near(got, want, 0.01) {
		t.Errorf("neutral point %.3f m from the bit, by hand %.3f m", got, want)
	}
	if used := value(t, r, 5, "string.bha.collars.used"); !near(used, 50000*lbf/(per*400*foot), 1e-6) {
		t.Errorf("used %.4f", used)
	}
}

// TestNeutralPointStepByStep adds the weight up the deviated hole centimetre by centimetre.
func TestNeutralPointStepByStep(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for _, section := range []int{3, 4, 5} {
		r := calc.Evaluate(plan)
		s := &plan.Sections[section-1]
		want := s.StringLoads.BitWeight.SI
		factor := 1 - s.Density.SI/7850
		cosine := math.Cos(32 * math.Pi / 180) // the BHA hangs in the tangent
		sum, up := 0.0, 0.0
		for k := range s.String {
			for at := 0.0; at < s.String[k].Length.SI && sum < want; at += 0.01 {
				sum += 0.01 * s.String[k].LinearMass.SI * 9.80665 * factor * cosine
				up += 0.01
			}
		}
		if got := value(t, r, section, "string.bha.neutral.up"); !near(got, up, 0.1) {
			t.Errorf("section %d: neutral point %.2f m from the bit, step by step %.2f m", section, got, up)
		}
	}
}

// TestThePartsWeighTheString: the weights of the parts in mud are the string's, and hook loads follow by the loads.
func TestThePartsWeighTheString(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for i := range plan.Sections {
			sum := 0.0
			for _, f := range r.Sheet(i).Figures {
				if strings.HasPrefix(f.Key, "string.part.") && strings.HasSuffix(f.Key, ".buoyed") && f.OK {
					sum += f.Value
				}
			}
			if got := value(t, r, i+1, "string.weight.buoyed"); !near(sum, got, 1e-6*got) {
				t.Errorf("section %d: the parts weigh %g N in mud, the string %g N", i+1, sum, got)
			}
			hook, loads := value(t, r, i+1, "string.hook_load"), &plan.Sections[i].StringLoads
			if got := value(t, r, i+1, "string.bha.hook.drilling"); !near(got, hook-loads.BitWeight.SI, 1) {
				t.Errorf("section %d: drilling %g N", i+1, got)
			}
			if got := value(t, r, i+1, "string.bha.hook.pulled"); !near(got, hook+loads.Overpull.SI, 1) {
				t.Errorf("section %d: pulled %g N", i+1, got)
			}
		}
	})
}

// TestMudInsideARiserlessStringWeighs: 11 ppg down 6 5/8 in pipe of 5.901 in bore through 82 ft of air and 5240 ft of sea of
// 8.6 ppg. In gallons of bore per foot (ID²/24.51, common practice) 1.4207 × (82 × 11 + 5240 × 2.4) = 19.15 klbf is added to
// what steel alone weighs in air, sea and mud; every figure of the hook load has it.
func TestMudInsideARiserlessStringWeighs(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	r := calc.Evaluate(plan)
	w, _ := calc.Explain(plan, 1, "string.weight.buoyed")
	steel, hanging, inside := 0.0, 0.0, 0.0
	for _, in := range w.Inputs {
		switch in.Symbol {
		case "Wh":
			hanging = in.Value
		case "fluid":
			steel += hanging * (1 - in.Value/7850)
		case "Wf":
			inside += in.Value
		}
	}
	const lbf = 4.4482216152605
	area := 5.901 * 5.901 / 24.51
	if want := area * (82*11 + 5240*2.4) * lbf; !near(inside, want, 5e-3*want) {
		t.Errorf("the mud inside adds %.0f lbf, by hand %.0f lbf", inside/lbf, want/lbf)
	}
	want := steel + inside
	loads, blocks := &plan.Sections[1].StringLoads, plan.Rig.BlockWeight.SI
	for key, load := range map[string]float64{"string.weight.buoyed": want, "string.hook_load": want + blocks, "drag.rotating": want + blocks,
		"string.bha.hook.drilling": want + blocks - loads.BitWeight.SI, "string.bha.hook.pulled": want + blocks + loads.Overpull.SI} {
		if got := value(t, r, 2, key); !near(got, load, 1e-6*load) {
			t.Errorf("%s is %.0f lbf, want %.0f lbf", key, got/lbf, load/lbf)
		}
	}
	// Drilled with the sea, it is full of what surrounds it, but for the air.
	with(t, plan, "section[2].density", "1.03 sg")
	entry(t, plan, "section[2].weighted_from").Set(plan, model.Entry{})
	with(t, plan, "well.seawater", "1.03 sg")

	w, _ = calc.Explain(plan, 1, "string.weight.buoyed")
	for _, in := range w.Inputs {
		if in.Symbol == "Wf" && in.Name == "of the fluid inside" {
			inside = in.Value
			break
		}
	}
	if want := math.Pi / 4 * 5.901 * 5.901 * inch * inch * 82 * 0.3048 * 1030 * 9.80665; !near(inside, want, 5e-3*want) {
		t.Errorf("sea water in the air gap weighs %.0f N, by hand %.0f N", inside, want)
	}
}

// TestClassesOfPipe: 5 in 19.50 lb/ft S135 in the demo's lower string. API RP 7G: new 712070 lbf and 74100 ft lbf, premium 560764
// and 58113 (from memory).
func TestClassesOfPipe(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	n := slices.IndexFunc(plan.Sections[5].String, func(p model.StringPart) bool { return p.Item == model.ItemPipe })
	row := "section[6].string[" + string(rune('1'+n)) + "]"
	key := "string.class." + string(rune('1'+n))
	for _, c := range []struct {
		class            string
		tension, torsion float64
	}{{"new", 712070, 74100}, {"premium", 560764, 58113}} {
		with(t, plan, row+".class", c.class)
		r := calc.Evaluate(plan)
		if got := value(t, r, 6, key+".tension") / lbf; !near(got, c.tension, 1e-3*c.tension) {
			t.Errorf("%s: tension %.0f lbf, want %.0f", c.class, got, c.tension)
		}
		if got := value(t, r, 6, key+".torsion") / ftlbf; !near(got, c.torsion, 1e-3*c.torsion) {
			t.Errorf("%s: torsion %.0f ft lbf, want %.0f", c.class, got, c.torsion)
		}
		pull, tension := value(t, r, 6, key+".pull"), value(t, r, 6, key+".tension")
		if got := value(t, r, 6, key+".torsion.under"); !near(got, value(t, r, 6, key+".torsion")*math.Sqrt(1-math.Pow(pull/tension, 2)), 1) {
			t.Errorf("%s: torsion under pull %g", c.class, got)
		}
		if got := value(t, r, 6, key+".overpull"); !near(got, 0.9*tension-(pull-plan.Sections[5].StringLoads.Overpull.SI), 1) {
			t.Errorf("%s: overpull %g", c.class, got)
		}
	}
	with(t, plan, "section[6].string_loads.overpull", "250 tf")
	if f := worst(t, calc.Evaluate(plan), 6, "pipe_tension"); f.Severity != calc.Stop {
		t.Errorf("250 tf over: %+v", f)
	}
	with(t, plan, row+".grade", "")
	with(t, plan, row+".id", "4.276 in")
	if f := figure(t, calc.Evaluate(plan), 6, key+".tension"); f.OK {
		t.Errorf("pipe of no grade bears %g N", f.Value)
	}
}

// TestJointsCounted: 10 joints of 5.5 m are 55 m, to the figure; without the length of one there is no string.
func TestJointsCounted(t *testing.T) {
	plan := demo(t, "ottermast-2")
	want := value(t, calc.Evaluate(plan), 1, "string.weight.air")
	with(t, plan, "section[1].string[3].length", "")
	with(t, plan, "section[1].string[3].count", "10")
	if f := figure(t, calc.Evaluate(plan), 1, "string.weight.air"); f.OK || f.Mend != "section[1].string[3].joint_every" {
		t.Errorf("counted without a length: %+v", f)
	}
	with(t, plan, "section[1].string[3].joint_every", "5.5 m")
	if got := value(t, calc.Evaluate(plan), 1, "string.weight.air"); !near(got, want, 1e-6*want) {
		t.Errorf("counted %g N, as a length %g N", got, want)
	}
}

// TestToolJointsInTheStackOneByOne walks the string joint by joint, from the bit up, in the demo: joints of a third of a
// stand, tool joints of 0.5 m, a ram 5.4 m above the datum, tide from -0.9 to 0.95 m and 0.5 m of heave.
func TestToolJointsInTheStackOneByOne(t *testing.T) {
	plan := demo(t, "ottermast-2")
	for _, bit := range []string{"950 m", "947 m", "951.3 m"} {
		with(t, plan, "section[3].space_out.bit", bit)
		r := calc.Evaluate(plan)
		at := plan.Sections[2].SpaceOut.Bit.SI
		for k := range plan.Sections[2].String {
			at -= plan.Sections[2].String[k].Length.SI
		}
		least := math.Inf(1)
		ram := 26 + 342 - 3.2 - 5.4
		for ; at > 0; at -= 28.4 / 3 {
			for move := -0.9 - 0.5; move <= 0.95+0.5+1e-9; move += 0.005 {
				off := max(at-0.25-(ram+move), ram+move-(at+0.25))
				least = min(least, off)
			}
		}
		got := value(t, r, 3, "spaceout.ram.3")
		if least > 0.001 && !near(got, least, 0.006) || least < -0.2 && got > 0 {
			t.Errorf("bit at %s: tool joint %.3f m off, joint by joint %.3f m", bit, got, least)
		}
	}
}

// TestAJointUpTheStackLooksTheSame, and what the lift figure says is clear.
func TestAJointUpTheStackLooksTheSame(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	entry := entry(t, plan, "section[5].space_out.bit")
	for _, bit := range []float64{4400, 4403.3, 4409} {
		entry.Set(plan, model.Entry{Quantity: quantity.Of(bit, quantity.Metre)})
		before := calc.Evaluate(plan)
		entry.Set(plan, model.Entry{Quantity: quantity.Of(bit-45*foot, quantity.Metre)})
		after := calc.Evaluate(plan)
		for _, key := range []string{"spaceout.ram.2", "spaceout.ram.4", "spaceout.ram.6", "spaceout.lift"} {
			if a, b := value(t, before, 5, key), value(t, after, 5, key); !near(a, b, 1e-6) {
				t.Errorf("bit at %g m: %s %g m, a joint higher %g m", bit, key, a, b)
			}
		}
		entry.Set(plan, model.Entry{Quantity: quantity.Of(value(t, before, 5, "spaceout.lift.bit"), quantity.Metre)})
		if f := worst(t, calc.Evaluate(plan), 5, "ram_joint"); f.Severity != calc.OK {
			t.Errorf("bit at %g m, picked up: %+v", bit, f)
		}
	}
	with(t, plan, "rig.heave", "5 m")
	if f := figure(t, calc.Evaluate(plan), 5, "spaceout.lift"); f.OK {
		t.Errorf("with 5 m of heave clear at %g m", f.Value)
	}
}

// TestHungOffInTheDemo by hand: the ram is 4.2 m above the datum at 360.6 m; a tool joint of 0.5 m rests on it, and the upper pipe
// ram, 1.2 m above, is 0.7 m off it. With the datum 1 m deeper the bit hangs 1 m deeper, on as many joints.
func TestHungOffInTheDemo(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	if got := value(t, r, 3, "spaceout.hung.ram.3"); !near(got, 0.7, 1e-9) {
		t.Errorf("upper pipe ram %g m off, want 0.7", got)
	}
	bit := value(t, r, 3, "spaceout.hung")
	joints := (bit - 193.45 - (360.6 - 0.25)) / (28.4 / 3)
	if !near(joints, math.Round(joints), 1e-6) || bit > 947 || bit < 947-28.4/3 {
		t.Errorf("hangs with %g joints below the ram, bit at %g m", joints, bit)
	}
	up := value(t, r, 3, "spaceout.hung.stick_up")
	if high := value(t, r, 3, "spaceout.hung.stick_up.high"); !near(up-high, 0.95+0.5, 1e-9) {
		t.Errorf("stick-up %g m, rig up %g m", up, high)
	}
	// The upper pipe ram just at the joint: a pup from aboard makes room.
	with(t, plan, "rig.ram[3].height", "4.5 m")
	r = calc.Evaluate(plan)
	if got := value(t, r, 3, "spaceout.hung.ram.3"); got > 0 {
		t.Errorf("a ram in the joint that hangs is %g m off", got)
	}
	with(t, plan, "rig.ram[3].height", "13.9 m") // where the next joint would be
	r = calc.Evaluate(plan)
	if pup, off := value(t, r, 3, "spaceout.hung.pup"), value(t, r, 3, "spaceout.hung.ram.3"); !(pup > 0) || off < 0.5 {
		t.Errorf("pup of %g m, ram %g m off", pup, off)
	}
}

// TestWithoutRamsNothingIsSpacedOut, without a height it is blank and said so.
func TestWithoutRamsNothingIsSpacedOut(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "rig.ram[2].height", "")
	r := calc.Evaluate(plan)
	if f := figure(t, r, 3, "spaceout.bit"); f.OK || f.Mend != "rig.ram[2].height" {
		t.Errorf("a ram without a height: %+v", f)
	}
	plan.Rams = nil
	if _, ok := calc.Evaluate(plan).Sheet(2).Find("spaceout.bit"); ok {
		t.Error("spaced out without rams")
	}
	if _, err := calc.SpaceStrip(plan, 2); err == nil {
		t.Error("a strip without rams")
	}
}

// TestStringProposals: the proposed collars keep the share and a little less does not, and with the proposed bit depth no ram
// meets a tool joint.
func TestStringProposals(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[4].string_loads.bit_weight", "14 tf")
	with(t, plan, "section[4].space_out.bit", "2150 m")
	list := calc.Proposals(plan, 3, model.TopicString)
	if len(list) < 2 || !list[0].OK || !list[1].OK {
		t.Fatalf("%+v", list)
	}
	collars, bit := list[0], list[1]
	if collars.Ref.Path() != "section[4].string[5].length" || bit.Ref.Path() != "section[4].space_out.bit" {
		t.Fatalf("%s, %s", collars.Ref.Path(), bit.Ref.Path())
	}
	needed := value(t, calc.Evaluate(plan), 4, "string.bha.needed")
	if got := collars.Entry.Quantity.SI; got < needed-1e-6 || got > needed+1 {
		t.Errorf("%g m of collars proposed, needed %g m", got, needed)
	}
	bit.Ref.Set(plan, bit.Entry)
	if f := worst(t, calc.Evaluate(plan), 4, "ram_joint"); f.Severity != calc.OK {
		t.Errorf("with the bit there: %+v", f)
	}
	collars.Ref.Set(plan, collars.Entry)
	if f := worst(t, calc.Evaluate(plan), 4, "bit_weight_share"); f.Severity != calc.OK {
		t.Errorf("with them: %+v", f)
	}
	with(t, plan, "section[4].string[5].length", "")
	with(t, plan, "section[4].string[5].count", "4")
	with(t, plan, "section[4].string[5].joint_every", "9.4 m")
	list = calc.Proposals(plan, 3, model.TopicString)
	if !list[0].OK || list[0].Ref.Path() != "section[4].string[5].count" || list[0].Entry.Quantity.SI != math.Ceil(needed/9.4) {
		t.Errorf("by joints: %+v", list[0])
	}
}

// TestStepsInStiffness: 9 1/2 × 3 in collars are 83.3 in³, 5 1/2 × 3 1/4 in heavy-weight 14.34 in³, by hand: 5.81.
func TestStepsInStiffness(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	if got := value(t, r, 1, "string.bha.bending.3"); !near(got, 5.81, 0.01) {
		t.Errorf("ratio %g, want 5.81", got)
	}
	if f := worst(t, r, 1, "bending_ratio"); f.Severity != calc.Caution {
		t.Errorf("%+v", f)
	}
}

// TestTheJarKeepsOffTheNeutralPoint: with more weight the point rises into it.
func TestTheJarKeepsOffTheNeutralPoint(t *testing.T) {
	plan := demo(t, "ottermast-2")
	if f := worst(t, calc.Evaluate(plan), 3, "jar_neutral"); f.Severity != calc.OK {
		t.Errorf("%+v", f)
	}
	with(t, plan, "section[3].string_loads.bit_weight", "13.5 tf")
	r := calc.Evaluate(plan)
	if f := worst(t, r, 3, "jar_neutral"); f.Severity != calc.Caution {
		t.Errorf("%+v", f)
	}
	if f := figure(t, r, 3, "string.bha.jar.6.off"); f.Value >= 0 {
		t.Errorf("the jar is %g m off", f.Value)
	}
}

// TestTheLeastBoreOfTheString is that of the row whose bore is least.
func TestTheLeastBoreOfTheString(t *testing.T) {
	plan := demo(t, "ottermast-2")
	if got := value(t, calc.Evaluate(plan), 5, "string.bha.drift"); !near(got, 2.25*inch, 1e-9) {
		t.Errorf("least bore %g m", got)
	}
	stack, err := calc.StackUp(plan, 4)
	if err != nil || len(stack.Rows) != len(plan.Sections[4].String) {
		t.Fatalf("%v, %d rows", err, len(stack.Rows))
	}
	last := math.Inf(-1)
	for _, r := range stack.Rows[1:] { // from the bit up more and more comes by
		if r.Reached < last {
			t.Errorf("part %d: %g m, below it %g m", r.Number, r.Reached, last)
		}
		last = r.Reached
	}
	if _, err := calc.StackUp(plan, 9); err == nil {
		t.Error("a string of no section")
	}
}
