package root

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Roots known otherwise: the square root of two, Dottie's number (OEIS A003957), and Lambert's W at 1 (OEIS A030178).
func TestKnownRoots(t *testing.T) {
	for name, c := range map[string]struct {
		f         func(float64) float64
		low, high float64
		want      float64
	}{
		"square root of 2": {func(x float64) float64 { return x*x - 2 }, 0, 2, math.Sqrt2},
		"cos x = x":        {func(x float64) float64 { return x - math.Cos(x) }, 0, 1, 0.739085133215160641655312},
		"x exp x = 1":      {func(x float64) float64 { return x*math.Exp(x) - 1 }, 0, 1, 0.567143290409783872999968},
		"steep at an end":  {func(x float64) float64 { return math.Pow(x, 15) - 1e-6 }, 0, 4, math.Pow(1e-6, 1.0/15)},
	} {
		if got, met := Crossing(c.f, c.low, c.high, 1e-13); !met || math.Abs(got-c.want) > 1e-6*c.want {
			t.Errorf("%s: %v, %v, want %v", name, got, met, c.want)
		}
	}
}

// The crossing of any rising cubic lies where the function says, and between the ends.
func TestCrossingOfAnyRisingFunction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(-10, 10).Draw(t, "at")
		bend, slope := rapid.Float64Range(0, 5).Draw(t, "bend"), rapid.Float64Range(0.01, 100).Draw(t, "slope")
		low, high := at-rapid.Float64Range(0.01, 50).Draw(t, "below"), at+rapid.Float64Range(0.01, 50).Draw(t, "above")
		got, met := Crossing(func(x float64) float64 { return slope*(x-at) + bend*math.Pow(x-at, 3) }, low, high, 1e-9)
		if !met || math.Abs(got-at) > 1e-6 || got < low || got > high {
			t.Fatalf("%v, %v, want %v between %v and %v", got, met, at, low, high)
		}
	})
}

// A function that jumps over nothing is closed in on from below, and that is said.
func TestAJumpIsNoCrossing(t *testing.T) {
	jump := func(x float64) float64 {
		if x < 0.3 {
			return x - 1
		}
		return x + 1
	}
	if got, met := Crossing(jump, 0, 1, 1e-6); met || got >= 0.3 || 0.3-got > 1e-6 {
		t.Errorf("%v, %v", got, met)
	}
}

func TestWhereThereIsNoCrossing(t *testing.T) {
	for name, f := range map[string]func(float64) float64{
		"above": func(float64) float64 { return 1 }, "below": func(float64) float64 { return -1 },
		"falling": func(x float64) float64 { return 0.5 - x }, "no number": func(float64) float64 { return math.NaN() },
		"a hole": func(x float64) float64 {
			if x > 0.1 && x < 0.9 {
				return math.NaN()
			}
			return x - 0.5
		},
	} {
		if got, met := Crossing(f, 0, 1, 1e-9); met || !math.IsNaN(got) {
			t.Errorf("%s: %v, %v", name, got, met)
		}
	}
	if got, met := Crossing(func(x float64) float64 { return x }, 0, 1, 1e-9); !met || got != 0 {
		t.Errorf("at the end: %v, %v", got, met)
	}
}
