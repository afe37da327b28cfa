package calc_test

import (
	"testing"

	"borewalk/calc"
)

// TestWhatWasReadCountsUnderTheRams: SICP and the mud of the choke line, less the sea, where that is more than the prognosis gives.
func TestWhatWasReadCountsUnderTheRams(t *testing.T) {
	plan := kicked(t)
	with(t, plan, "section[4].kill.annulus", "60 bar")
	r := calc.Evaluate(plan)
	seabed := value(t, r, 0, "datum.mudline")
	want := 60e5 + 1420*9.80665*seabed - value(t, r, 0, "datum.sea_pressure")
	if got := value(t, r, 4, "control.disconnect.under"); !near(got, want, 1) {
		t.Errorf("%g Pa under the rams, want %g", got, want)
	}
	with(t, plan, "section[4].kill.annulus", "")
	if got := value(t, calc.Evaluate(plan), 4, "control.disconnect.under"); got >= want {
		t.Errorf("%g Pa under the rams without SICP", got)
	}
}

// TestAKickHigherUpMayGiveMoreAtTheWellhead: with light gas what was read above TD may press harder there than the prognosis at TD.
func TestAKickHigherUpMayGiveMoreAtTheWellhead(t *testing.T) {
	plan := kicked(t)
	for _, c := range [][2]string{{"kill.bit", "2700 m"}, {"bop_test.gas", "0.023 bar/m"}, {"kill.drill_pipe", "10 bar"}} {
		with(t, plan, "section[4]."+c[0], c[1])
	}
	before := value(t, calc.Evaluate(plan), 4, "control.anticipated")
	with(t, plan, "section[4].kill.drill_pipe", "41 bar")
	if got := value(t, calc.Evaluate(plan), 4, "control.anticipated"); got <= before {
		t.Errorf("%g Pa at the wellhead with SIDPP of 41 bar, %g by the prognosis", got, before)
	}
}

// TestAKillFlowThatThePumpsDoNotGiveHoldsNothing: what they give is compared.
func TestAKillFlowThatThePumpsDoNotGiveHoldsNothing(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[2].riserless.kill_density", "1.0646 sg")
	with(t, plan, "section[2].shallow.flow", "14900 L/min")
	r := calc.Evaluate(plan)
	need := value(t, r, 2, "control.dynamic.kill")
	if f := worst(t, r, 2, "shallow_flow"); need >= 14900e-3/60 || f.Severity == calc.OK {
		t.Errorf("%g m3/s are needed, the pumps do not give that: %+v", need, f)
	}
	if f := worst(t, r, 2, "entry"); f.Mend != "section[2].shallow.flow" {
		t.Errorf("a kill flow beyond the pumps: %+v", f)
	}
}
