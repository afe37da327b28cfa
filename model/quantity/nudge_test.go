package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestNudge(t *testing.T) {
	tests := []struct {
		text string
		kind Kind
		unit Unit
		n    int
		want string
	}{
		{"1262 ft", Length, Foot, 1, "1263 ft"},
		{"1262 ft", Length, Foot, -10, "1252 ft"},
		{"1262.5 ft", Length, Foot, 1, "1263 ft"},
		{"1262.5 ft", Length, Foot, -1, "1262 ft"},
		{"1262.5 ft", Length, Foot, 2, "1264 ft"},
		{"385 m", Length, Foot, 1, "1264 ft"}, // 1263.12 ft
		{"12 in", Length, Foot, 1, "2 ft"},
		{"0.5 m", Length, Metre, -1, "0 m"},
		{"-0.5 m", Length, Metre, -1, "-1 m"},
		{"-0.5 m", Length, Metre, 1, "0 m"},
		{"10.2 ppg", Density, PoundPerGallon, 1, "10.3 ppg"},
		{"10.25 ppg", EMW, PoundPerGallon, -1, "10.2 ppg"},
		{"1.25 sg", Density, SpecificGravity, 1, "1.26 sg"},
		{"13 5/8 in", Diameter, Inch, 1, "13.75 in"},
		{"12.415 in", Diameter, Inch, -1, "12.375 in"},
		{"5000 psi", Pressure, PSI, 1, "5010 psi"},
		{"80000 psi", Stress, PSI, 1, "81000 psi"},
		{"40 degF", Temperature, Fahrenheit, 1, "41 degF"},
		{"0 degC", Temperature, Celsius, -1, "-1 degC"},
		{"35 deg", Angle, Degree, 1, "35.5 deg"},
		{"30 %", Ratio, Percent, 5, "35 %"},
		{"6", Count, Bare, 1, "7"},
		{"6", Count, Bare, 0, "6"},
		{"6.5 m", Length, Metre, 0, "6.5 m"},
		{"6.5 m", Length, PSI, 1, "6.5 m"},
		{"999999999999999 m", Length, Metre, 1, "999999999999999 m"},
		{"1 m", Length, Metre, math.MaxInt, "1 m"},
		{"1 m", Length, Metre, math.MinInt, "1 m"},
	}
	for _, tt := range tests {
		v, err := Parse(tt.text, tt.kind, 0)
		if err != nil {
			t.Fatal(err)
		}
		if got := Nudge(v, tt.kind, tt.unit, tt.n).Text(); got != tt.want {
			t.Errorf("Nudge(%s, %v, %s, %d) = %s, want %s", tt.text, tt.kind, tt.unit.ASCII(), tt.n, got, tt.want)
		}
	}
}

func TestNudgeOfNothing(t *testing.T) {
	if got := Nudge(Value{}, Length, Metre, 1); got.IsSet() {
		t.Errorf("Nudge of nothing entered = %v, want nothing", got)
	}
	computed := Value{math.Inf(1), Metre}
	if got := Nudge(computed, Length, Metre, 1); got != computed {
		t.Errorf("Nudge(%v) = %v, want it unchanged", computed, got)
	}
}

// TestNudgeReturns holds that steps up and down undo each other from a
// multiple of the step, without drift, and that the text reads back.
func TestNudgeReturns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, u := anyKindAndUnit(t)
		start := Nudge(Of(float64(rapid.IntRange(-5000, 5000).Draw(t, "x")), u), k, u, 1)
		n := rapid.IntRange(1, 40).Draw(t, "n")
		v := start
		for range n {
			v = Nudge(v, k, u, 1)
			mustReadBack(t, v, k, u)
		}
		if got := Nudge(start, k, u, n); got != v {
			t.Fatalf("%d steps of 1 lead to %s, one of %d to %s", n, v.Text(), n, got.Text())
		}
		for range n {
			v = Nudge(v, k, u, -1)
		}
		if v != start {
			t.Fatalf("%d steps up and down lead from %s to %s", n, start.Text(), v.Text())
		}
	})
}

// TestEveryStepShows holds that a nudge can be seen in the unit it was made in.
func TestEveryStepShows(t *testing.T) {
	for _, k := range Kinds() {
		for _, u := range Units(k) {
			v := Of(0, u)
			if next := Nudge(v, k, u, 1); FormatValue(v, k, u) == FormatValue(next, k, u) {
				t.Errorf("a step of %v %s in %v does not show: %s", Step(k, u), u.ASCII(), k, FormatValue(next, k, u))
			}
		}
	}
	if got := Step(Length, PSI); got != 0 {
		t.Errorf("Step(Length, PSI) = %v, want 0", got)
	}
}
