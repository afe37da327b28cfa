package calc_test

import (
	"math"
	"strconv"
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// slow adds a recorded slow rate to section 4, with its entries by key.
func slow(t *testing.T, plan *model.Plan, entries map[string]string) {
	t.Helper()
	s := &plan.Sections[3]
	s.SlowRates = append(s.SlowRates, model.SlowRate{})
	for key, text := range entries {
		with(t, plan, "section[4].slow_rate["+strconv.Itoa(len(s.SlowRates))+"]."+key, text)
	}
}

// TestTheLatestSlowRateCounts, scaled with the mud: 30 bar in 1.40 sg are 30.43 bar in 1.42 sg.
func TestTheLatestSlowRateCounts(t *testing.T) {
	plan := kicked(t)
	slow(t, plan, map[string]string{"rate": "30 spm", "pressure": "25 bar"})
	slow(t, plan, map[string]string{"rate": "40 spm", "pressure": "50 bar"})
	slow(t, plan, map[string]string{"rate": "30 spm", "pressure": "30 bar", "mud": "1.40 sg"})
	slow(t, plan, map[string]string{"rate": "30 spm", "pressure": "70 bar", "pump": "2"})
	if got, want := value(t, calc.Evaluate(plan), 4, "control.kill.slow"), 30e5*1.42/1.40; !near(got, want, 1) {
		t.Errorf("slow circulating pressure %g Pa, want %g", got, want)
	}
}

// TestSlowRatesGiveTheLinesFriction: by choke line less by riser is what the line rubs (Lapeyrouse, subsea considerations).
func TestSlowRatesGiveTheLinesFriction(t *testing.T) {
	plan := kicked(t)
	slow(t, plan, map[string]string{"rate": "30 spm", "pressure": "30 bar"})
	slow(t, plan, map[string]string{"rate": "30 spm", "pressure": "39 bar", "path": model.ByChokeLine})
	if got := value(t, calc.Evaluate(plan), 4, "control.line"); !near(got, 9e5, 1) {
		t.Errorf("the line rubs %g Pa, 39 bar less 30 were read", got)
	}
	with(t, plan, "section[4].slow_rate[2].mud", "1.35 sg")
	want := (39e5 - 30e5*1.35/1.42) * 1.42 / 1.35
	if got := value(t, calc.Evaluate(plan), 4, "control.line"); !near(got, want, 1) {
		t.Errorf("the line rubs %g Pa, want %g: both in the same mud", got, want)
	}
	with(t, plan, "section[4].kill.line_loss", "12 bar")
	if got := value(t, calc.Evaluate(plan), 4, "control.line"); !near(got, 12e5, 1) {
		t.Errorf("the line rubs %g Pa, 12 bar are entered", got)
	}
}

// TestAtAnotherRateTheSlowPressureIsScaled: by the square of the rate from one; between two by the power that leads from one to the other.
func TestAtAnotherRateTheSlowPressureIsScaled(t *testing.T) {
	plan := kicked(t)
	slow(t, plan, map[string]string{"rate": "20 spm", "pressure": "16 bar"})
	if got, want := value(t, calc.Evaluate(plan), 4, "control.kill.slow"), 16e5*1.5*1.5; !near(got, want, 1) {
		t.Errorf("from 20 to 30 strokes %g Pa, want %g by the square", got, want)
	}
	slow(t, plan, map[string]string{"rate": "40 spm", "pressure": "48 bar"})
	r := calc.Evaluate(plan)
	if got, want := value(t, r, 4, "control.kill.slow"), 16e5*math.Pow(1.5, math.Log2(3)); !near(got, want, 1) {
		t.Errorf("between 20 and 40 strokes %g Pa, want %g", got, want)
	}
	if f := worst(t, r, 4, "slow_rate"); f.Severity == calc.OK {
		t.Errorf("a slow rate that is not recorded passes: %+v", f)
	}
}

// TestAHalfRecordedSlowRateHoldsTheSheetUp, for it might be the one that counts.
func TestAHalfRecordedSlowRateHoldsTheSheetUp(t *testing.T) {
	plan := kicked(t)
	slow(t, plan, map[string]string{"rate": "30 spm"})
	if f := figure(t, calc.Evaluate(plan), 4, "control.kill.initial"); f.OK || f.Mend != "section[4].slow_rate[1].pressure" {
		t.Errorf("ICP without its slow pressure: %+v", f)
	}
}

// TestMudAndBitMovedSinceTheSlowRate are told.
func TestMudAndBitMovedSinceTheSlowRate(t *testing.T) {
	for _, c := range []struct{ key, text, rule string }{
		{"mud", "1.30 sg", "slow_rate_mud"}, {"depth", "2500 m", "slow_rate_depth"},
	} {
		plan := kicked(t)
		slow(t, plan, map[string]string{"rate": "30 spm", "pressure": "30 bar", "mud": "1.42 sg", "depth": "3250 m"})
		if f := worst(t, calc.Evaluate(plan), 4, c.rule); f.Severity != calc.OK {
			t.Errorf("%s before: %+v", c.rule, f)
		}
		with(t, plan, "section[4].slow_rate[1]."+c.key, c.text)
		if f := worst(t, calc.Evaluate(plan), 4, c.rule); f.Severity == calc.OK {
			t.Errorf("%s: %s passes", c.rule, c.text)
		}
	}
}

// TestALineThatRubsLessThanNothing is not taken.
func TestALineThatRubsLessThanNothing(t *testing.T) {
	plan := kicked(t)
	slow(t, plan, map[string]string{"rate": "30 spm", "pressure": "30 bar"})
	slow(t, plan, map[string]string{"rate": "30 spm", "pressure": "28 bar", "path": model.ByChokeLine})
	r := calc.Evaluate(plan)
	for _, key := range []string{"control.line", "control.maasp.circulating"} {
		if f := figure(t, r, 4, key); f.OK {
			t.Errorf("%s = %g Pa with a line that rubs -2 bar", key, f.Value)
		}
	}
	if f := worst(t, r, 4, "entry"); f.Severity != calc.Stop || f.Mend != "section[4].slow_rate" {
		t.Errorf("less by the line than by the riser: %+v", f)
	}
}
