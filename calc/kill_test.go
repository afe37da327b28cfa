package calc_test

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// kicked is section 4 of the shallow demo with a kick that has come in: 30 bar on the drill pipe, 8 m3.
func kicked(t *testing.T) *model.Plan {
	t.Helper()
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[4].kill.drill_pipe", "30 bar")
	with(t, plan, "section[4].kill.gain", "8 m3")
	return plan
}

// TestTheKillSheetByHand: 30 bar over 2962 m of TVD is 103.3 kg/m3, so 1.53 sg; pressures and strokes follow.
func TestTheKillSheetByHand(t *testing.T) {
	r := calc.Evaluate(kicked(t))
	tvd := value(t, r, 4, "hole.td.tvd")
	exact := 1420 + 30e5/(9.80665*tvd)
	slow := value(t, r, 4, "control.kill.slow")
	for _, c := range []struct {
		key          string
		want, within float64
	}{
		{"control.kill.mud.exact", exact, 1e-6},
		{"control.kill.mud", 1530, 1e-6},
		{"control.kill.pipe", 30e5, 1},
		{"control.kill.initial", 30e5 + slow, 1},
		{"control.kill.final", slow * 1530 / 1420, 1},
		{"control.kill.step.0", 30e5 + slow, 1},
		{"control.kill.step.10", slow * 1530 / 1420, 1},
		{"control.kill.way.string", value(t, r, 4, "volume.string"), 0.1},
		{"control.kill.way.riser", value(t, r, 4, "volume.riser"), 1e-6},
		{"control.kill.way.line", math.Pi / 4 * math.Pow(3*inch, 2) * 360, 1e-9},
	} {
		if got := value(t, r, 4, c.key); !near(got, c.want, c.within) {
			t.Errorf("%s = %g, want %g", c.key, got, c.want)
		}
	}
	whole := 0.0
	for _, part := range []string{"string", "open", "cased", "line"} {
		whole += value(t, r, 4, "control.kill.way."+part)
	}
	if got := value(t, r, 4, "control.kill.way.whole"); !near(got, whole, 1e-9) {
		t.Errorf("the parts of the way are %g m3, the whole %g", whole, got)
	}
}

// TestTheChokeGaugeFallsByTheLinesFriction in steps of the pump's rate, by its square from what was measured: Lapeyrouse, subsea
// considerations. Where it is worked out the mud's flow says how it comes.
func TestTheChokeGaugeFallsByTheLinesFriction(t *testing.T) {
	plan := kicked(t)
	workedOut := calc.Evaluate(plan)
	shut := value(t, workedOut, 4, "control.kill.choke")
	quarter, whole := shut-value(t, workedOut, 4, "control.kill.start.1"), shut-value(t, workedOut, 4, "control.kill.start.4")
	if line := value(t, workedOut, 4, "control.line"); !near(whole, line, 10) || quarter <= line/16 || quarter >= line {
		t.Errorf("of %g Pa the line rubs %g at a quarter of the rate, %g at all of it", line, quarter, whole)
	}
	with(t, plan, "section[4].kill.line_loss", "16 bar")
	r := calc.Evaluate(plan)
	for n, falls := range []float64{0, 1, 4, 9, 16} {
		key := "control.kill.start." + string(rune('0'+n))
		if got := value(t, r, 4, key); !near(got, shut-falls*1e5, 10) {
			t.Errorf("step %d: %g Pa, want %g", n, got, shut-falls*1e5)
		}
	}
	if got := value(t, r, 4, "control.line"); !near(got, 16e5, 1) {
		t.Errorf("line friction %g Pa", got)
	}
	with(t, plan, "section[4].kill.line_loss_mud", "1.3 sg")
	if got := value(t, calc.Evaluate(plan), 4, "control.line"); !near(got, 16e5*1.42/1.30, 1) {
		t.Errorf("line friction %g Pa, measured in 1.30 sg", got)
	}
}

// played plays the kick of section 4 by the planned method or the other.
func played(t *testing.T, plan *model.Plan, other bool) calc.Job {
	t.Helper()
	job, why, _ := calc.PlayKill(plan, 3, other)
	if why != "" {
		t.Fatal(why)
	}
	return job
}

// held returns the equivalent density at TD of a frame.
func held(j *calc.Job, f *calc.JobFrame) float64 { return f.EMW[len(j.Points)-1] }

// TestTheBottomIsHeldThroughTheKill: while the choke has anything to hold, the pressure at TD is the formation's and what the annulus
// rubs, whatever the gas does: the same from the first moment that is pumped to the last.
func TestTheBottomIsHeldThroughTheKill(t *testing.T) {
	plan := kicked(t)
	for _, other := range []bool{false, true} {
		job := played(t, plan, other)
		formation := job.Points[len(job.Points)-1].Pore
		target, looked := 0.0, 0
		for k := range job.Frames {
			f := &job.Frames[k]
			got := held(&job, f)
			if f.Rate > 0 && target == 0 {
				target = got
				if target < formation || target > formation+50 {
					t.Fatalf("%.4f kg/m3 are held, the formation has %.4f", target, formation)
				}
			}
			switch {
			case f.Rate > 0 && f.Choke > 1:
				looked++
				if math.Abs(got-target) > 1e-3 {
					t.Fatalf("frame %d holds %.4f kg/m3 at TD, not %.4f", k, got, target)
				}
			case got < formation-1e-3:
				t.Fatalf("frame %d holds %.4f kg/m3 at TD, the formation has %.4f", k, got, formation)
			}
		}
		if looked < 100 {
			t.Errorf("only %d moments with the choke at work", looked)
		}
	}
}

// TestTheStandpipeFollowsTheSchedule: kept to the sheet's steps while kill mud goes down the string, the bottom stays as it is held: the
// two were worked out apart. The kill mud's rounding up adds what it weighs, which is taken off here.
func TestTheStandpipeFollowsTheSchedule(t *testing.T) {
	plan := kicked(t)
	with(t, plan, "section[4].kill.method", model.WaitAndWeight)
	r, job := calc.Evaluate(plan), played(t, plan, false)
	string0 := value(t, r, 4, "control.kill.way.string")
	rounding := (value(t, r, 4, "control.kill.mud") - value(t, r, 4, "control.kill.mud.exact")) * 9.80665 * value(t, r, 4, "hole.td.tvd")
	for n := 1; n < 10; n++ {
		want := value(t, r, 4, "control.kill.step."+string(rune('0'+n)))
		volume := value(t, r, 4, "control.kill.step."+string(rune('0'+n))+".volume")
		k := slices.IndexFunc(job.Frames, func(f calc.JobFrame) bool { return f.Rate > 0 && f.Pumped >= volume })
		if k < 1 || volume > string0 {
			t.Fatalf("no frame at %g m3", volume)
		}
		a, b := &job.Frames[k-1], &job.Frames[k]
		got := a.Pressure + (b.Pressure-a.Pressure)*(volume-a.Pumped)/(b.Pumped-a.Pumped)
		if math.Abs(got-want) > rounding*volume/string0+0.3e5 {
			t.Errorf("%d tenths down: standpipe %.3g Pa, sheet %.3g", n, got, want)
		}
	}
}

// TestOneAndTwoCirculationsAgree until kill mud comes to the bit, and so at the shoe, which the gas has passed by then.
func TestOneAndTwoCirculationsAgree(t *testing.T) {
	plan := kicked(t)
	two, one := played(t, plan, false), played(t, plan, true)
	string0 := value(t, calc.Evaluate(plan), 4, "control.kill.way.string")
	at := func(j *calc.Job, volume float64) *calc.JobFrame {
		k := slices.IndexFunc(j.Frames, func(f calc.JobFrame) bool { return f.Pumped >= volume })
		return &j.Frames[k]
	}
	for _, share := range []float64{0.1, 0.5, 0.9} {
		a, b := at(&two, share*string0), at(&one, share*string0)
		slope := 0.02 * a.Choke // the frames stand a little apart
		if math.Abs(a.Choke-b.Choke) > slope || math.Abs(a.Gas-b.Gas) > 0.02*a.Gas {
			t.Errorf("at %.0f %% of the string: choke %.4g and %.4g Pa, gas %.4g and %.4g m3", 100*share, a.Choke, b.Choke, a.Gas, b.Gas)
		}
	}
	r := calc.Evaluate(plan)
	if a, b := value(t, r, 4, "control.out.choke"), value(t, r, 4, "control.out.choke.other"); b > a {
		t.Errorf("the choke is higher by one circulation: %g than by two: %g", b, a)
	}
}

// TestTheFiguresOfAKickAreThoseOfThePlay: few steps give the peaks of many.
func TestTheFiguresOfAKickAreThoseOfThePlay(t *testing.T) {
	for name, sections := range map[string][]int{"ottermast-2": {3, 4, 5}, "saltlantern-1": {3, 4, 5, 6}} {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for _, section := range sections {
			job, why, _ := calc.PlayKill(plan, section-1, false)
			if why != "" {
				t.Fatal(why)
			}
			var choke, gas, shoe float64
			for k := range job.Frames {
				f := &job.Frames[k]
				choke, gas, shoe = max(choke, f.Choke), max(gas, f.Gas), max(shoe, f.EMW[0])
			}
			for _, c := range []struct {
				key  string
				want float64
			}{{"control.out.choke", choke}, {"control.out.gas", gas}, {"control.out.shoe", shoe}} {
				if got := value(t, r, section, c.key); math.Abs(got-c.want) > 0.002*c.want {
					t.Errorf("%s section %d %s = %g, played %g", name, section, c.key, got, c.want)
				}
			}
		}
	}
}

// TestGasThatIsOutIsOut: what came in leaves, the well ends full of kill mud, and each moment's stands fill the annulus without a gap.
func TestGasThatIsOutIsOut(t *testing.T) {
	job := played(t, kicked(t), false)
	last := &job.Frames[len(job.Frames)-1]
	if last.Gas != 0 || last.Choke > 1e5 {
		t.Errorf("ends with %g m3 of gas and %g Pa on the choke", last.Gas, last.Choke)
	}
	for k := range job.Frames {
		for n, s := range job.Frames[k].Annulus {
			if n > 0 && math.Abs(s.Top-job.Frames[k].Annulus[n-1].Bottom) > 1e-6 {
				t.Fatalf("frame %d has a gap at %g m", k, s.Top)
			}
		}
	}
	if top := job.Frames[0].Annulus; len(top) != 2 {
		t.Errorf("shut in with %d stands in the annulus, want mud over gas", len(top))
	}
}

// TestWithoutAStackNothingIsKilled: a riserless section says why.
func TestWithoutAStackNothingIsKilled(t *testing.T) {
	if _, why, mend := calc.PlayKill(demo(t, "ottermast-2"), 1, false); why == "" || mend == "" {
		t.Error("a shallow flow is shut in")
	}
	if _, why, _ := calc.PlayDisconnect(demo(t, "ottermast-2"), 1); why == "" {
		t.Error("a riser is let go that is not there")
	}
}

// TestADisconnectLosesTheRisersColumn: what TD has lost is the figure's.
func TestADisconnectLosesTheRisersColumn(t *testing.T) {
	plan := demo(t, "ottermast-2")
	job, why, _ := calc.PlayDisconnect(plan, 3)
	if why != "" || len(job.Frames) != 3 {
		t.Fatalf("%s, %d frames", why, len(job.Frames))
	}
	r := calc.Evaluate(plan)
	lost := (held(&job, &job.Frames[0]) - held(&job, &job.Frames[2])) * 9.80665 * value(t, r, 4, "hole.td.tvd")
	if want := value(t, r, 4, "control.riser.lost"); !near(lost, want, 1) {
		t.Errorf("TD loses %g Pa, the figure says %g", lost, want)
	}
}

// TestTwoLinesShareTheFlow: two alike rub as one does at half the flow, and hold twice as much.
func TestTwoLinesShareTheFlow(t *testing.T) {
	plan := kicked(t)
	with(t, plan, "rig.kill_length", "360 m")
	one := calc.Evaluate(plan)
	with(t, plan, "section[4].kill.line", model.ByBothLines)
	both := calc.Evaluate(plan)
	with(t, plan, "section[4].kill.line", model.ByChokeLine)
	with(t, plan, "section[4].kill.rate", "15 spm")
	half := calc.Evaluate(plan)
	if a, b := value(t, both, 4, "control.line"), value(t, half, 4, "control.line"); !near(a, b, 1e-3*b) {
		t.Errorf("both lines rub %g Pa, one at half the rate %g", a, b)
	}
	if a, b := value(t, both, 4, "control.kill.way.line"), 2*value(t, one, 4, "control.kill.way.line"); !near(a, b, 1e-9) {
		t.Errorf("both lines hold %g m3, want %g", a, b)
	}
}

// TestThePlayIsTheSheetsAtTheStart: with the pump at the kill rate the choke has fallen by the line's friction and the standpipe has come
// to ICP; at the end, with the choke wide open, the standpipe is FCP and what the line rubs more than there is to give away.
func TestThePlayIsTheSheetsAtTheStart(t *testing.T) {
	plan := kicked(t)
	r, job := calc.Evaluate(plan), played(t, plan, false)
	k := slices.IndexFunc(job.Frames, func(f calc.JobFrame) bool { return f.Rate > 0 })
	first, last := &job.Frames[k], &job.Frames[len(job.Frames)-1]
	for n := len(job.Frames) - 1; last.Rate == 0; n-- {
		last = &job.Frames[n]
	}
	if want := value(t, r, 4, "control.kill.start.4"); math.Abs(first.Choke-want) > 1e5 {
		t.Errorf("the choke begins with %.4g Pa, the sheet has %.4g", first.Choke, want)
	}
	if want := value(t, r, 4, "control.kill.initial"); math.Abs(first.Pressure-want) > 1e3 {
		t.Errorf("the standpipe begins with %.4g Pa, ICP is %.4g", first.Pressure, want)
	}
	if want := value(t, r, 4, "control.kill.final") + value(t, r, 4, "control.line"); math.Abs(last.Pressure-want) > 2e5 {
		t.Errorf("the standpipe ends with %.4g Pa, FCP and the line are %.4g", last.Pressure, want)
	}
}

// TestSICPAsReadCounts: for the pump's start, the shoe and the kick's size on its way, where it is more than the gain gives.
func TestSICPAsReadCounts(t *testing.T) {
	plan := kicked(t)
	before := calc.Evaluate(plan)
	worked := value(t, before, 4, "control.kill.choke")
	with(t, plan, "section[4].kill.annulus", "60 bar")
	r := calc.Evaluate(plan)
	if got := value(t, r, 4, "control.kill.start.0"); !near(got, 60e5, 1) {
		t.Errorf("the pump is started from %g Pa", got)
	}
	if a, b := value(t, before, 4, "control.out.choke"), value(t, r, 4, "control.out.choke"); worked > 60e5 || b <= a {
		t.Errorf("the choke comes to %g Pa with 60 bar read, to %g without", b, a)
	}
	if job := played(t, plan, false); !near(job.Frames[0].Choke, 60e5, 5e3) {
		t.Errorf("the play begins with %g Pa on the choke", job.Frames[0].Choke)
	}
	with(t, plan, "section[4].kill.annulus", "90 bar")
	if f := worst(t, calc.Evaluate(plan), 4, "shut_in_shoe"); f.Severity != calc.Stop {
		t.Errorf("90 bar on the choke over 1.42 sg are 1.87 sg at a shoe of 1.774: %+v", f)
	}
}

// TestKillMudThatTheShoeDoesNotStandStops.
func TestKillMudThatTheShoeDoesNotStandStops(t *testing.T) {
	plan := kicked(t)
	with(t, plan, "section[4].kill.drill_pipe", "110 bar")
	if f := worst(t, calc.Evaluate(plan), 4, "kill_mud_shoe"); f.Severity != calc.Stop {
		t.Errorf("kill mud of 1.80 sg at a shoe of 1.774: %+v", f)
	}
}

// TestAKickHigherUp: with the bit at a depth the sheet is that depth's.
func TestAKickHigherUp(t *testing.T) {
	plan := kicked(t)
	deep := calc.Evaluate(plan)
	with(t, plan, "section[4].kill.bit", "2700 m")
	r := calc.Evaluate(plan)
	for _, key := range []string{"control.kill.way.string", "control.kill.way.open"} {
		if a, b := value(t, deep, 4, key), value(t, r, 4, key); b >= a {
			t.Errorf("%s = %g at 2700 m, %g at TD", key, b, a)
		}
	}
	if a, b := value(t, deep, 4, "control.kill.mud.exact"), value(t, r, 4, "control.kill.mud.exact"); b <= a {
		t.Errorf("30 bar at 2700 m want %g kg/m3, at TD %g", b, a)
	}
	if job := played(t, plan, false); job.Points[len(job.Points)-1].MD != 2700 {
		t.Errorf("the play ends at %g m", job.Points[len(job.Points)-1].MD)
	}
	with(t, plan, "section[4].kill.bit", "1000 m")
	if f := figure(t, calc.Evaluate(plan), 4, "control.kill.pipe"); f.OK || f.Mend != "section[4].kill.bit" {
		t.Errorf("a kick in the casing: %+v", f)
	}
}

// TestTheMoreSICPShowsTheLargerTheKick, to as much gas as the annulus holds; beyond that nothing is played, and it says why.
func TestTheMoreSICPShowsTheLargerTheKick(t *testing.T) {
	plan := kicked(t)
	with(t, plan, "section[4].kill.gain", "3 m3")
	last := 0.0
	for _, read := range []string{"50 bar", "66 bar", "90 bar", "110 bar"} {
		with(t, plan, "section[4].kill.annulus", read)
		got := value(t, calc.Evaluate(plan), 4, "control.out.choke")
		if got <= last {
			t.Errorf("with %s read the choke comes to %g Pa, with less to %g", read, got, last)
		}
		last = got
	}
	if f := worst(t, calc.Evaluate(plan), 4, "kill_shoe_read"); f.Severity != calc.Stop {
		t.Errorf("a kick read that breaks the shoe on its way out: %+v", f)
	}
	with(t, plan, "section[4].kill.annulus", "400 bar")
	r := calc.Evaluate(plan)
	if f := figure(t, r, 4, "control.out.choke"); f.OK || f.Mend != "section[4].kill.annulus" {
		t.Errorf("400 bar on the choke: %+v", f)
	}
	if f := worst(t, r, 4, "entry"); f.Severity != calc.Stop {
		t.Errorf("400 bar on the choke: %+v", f)
	}
}

// TestTheToleranceOfTheKickRead: what is borne of it falls as SIDPP rises, and its volume is the one that SICP asks for.
func TestTheToleranceOfTheKickRead(t *testing.T) {
	plan := kicked(t)
	last := math.Inf(1)
	for _, read := range []string{"10 bar", "30 bar", "45 bar", "60 bar"} {
		with(t, plan, "section[4].kill.drill_pipe", read)
		f := worst(t, calc.Evaluate(plan), 4, "influx_tolerance")
		if f.Measured >= last {
			t.Errorf("with SIDPP of %s %g m3 are left, with less %g", read, f.Measured, last)
		}
		last = f.Measured
	}
	if last >= 0 {
		t.Errorf("8 m3 of gas with SIDPP of 60 bar leave %g m3", last)
	}
}

// TestWhatIsKeptOverComesWithThePump: at rest the choke shows SICP.
func TestWhatIsKeptOverComesWithThePump(t *testing.T) {
	plan := kicked(t)
	before := calc.Evaluate(plan)
	with(t, plan, "section[4].kill.overbalance", "7 bar")
	r := calc.Evaluate(plan)
	for key, want := range map[string]float64{"control.kill.start.0": 0, "control.kill.start.4": 7e5, "control.kill.initial": 7e5} {
		if got := value(t, r, 4, key) - value(t, before, 4, key); !near(got, want, 1) {
			t.Errorf("%s rises by %g Pa, want %g", key, got, want)
		}
	}
}

// TestTheShoeBearsLessWhileItIsCirculated: by line and annulus. What is borne as a kick is not broken by one of that size that is played.
func TestTheShoeBearsLessWhileItIsCirculated(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	static, circulating := value(t, r, 4, "control.maasp"), value(t, r, 4, "control.maasp.circulating")
	if static-circulating <= value(t, r, 4, "control.line") {
		t.Errorf("%g Pa at rest, %g while it is pumped: the annulus above the shoe is left out", static, circulating)
	}
	with(t, plan, "section[4].kill.gain", strconv.FormatFloat(value(t, r, 4, "control.tolerance"), 'f', 3, 64)+" m3")
	if f := worst(t, calc.Evaluate(plan), 4, "kill_shoe"); f.Severity != calc.OK {
		t.Errorf("a kick as large as is borne: %+v", f)
	}
}
