package column

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestSettleKnowsClosedForms: a fluid of constant density, and one whose density grows with pressure, rho = a (1 + p/K),
// for which p = K (exp(a g z / K) - 1).
func TestSettleKnowsClosedForms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(800, 2300).Draw(t, "density")
		top := rapid.Float64Range(0, 500).Draw(t, "top")
		depth := rapid.Float64Range(1, 9000).Draw(t, "depth")
		modulus := rapid.Float64Range(1e9, 3e9).Draw(t, "modulus")
		if got, want := Settle(1e5, top, top+depth, 1, func(_, _ float64) float64 { return a }), 1e5+a*G*depth; math.Abs(got-want) > 1e-9*want {
			t.Errorf("constant: %v, want %v", got, want)
		}
		got := Settle(0, top, top+depth, 4, func(_, p float64) float64 { return a * (1 + p/modulus) })
		if want := modulus * math.Expm1(a*G*depth/modulus); math.Abs(got-want) > 1e-7*want {
			t.Errorf("compressible: %v, want %v", got, want)
		}
	})
}

// TestSettleOfNothing: no step and a column upside down have no pressure, one without height keeps it.
func TestSettleOfNothing(t *testing.T) {
	heavy := func(_, _ float64) float64 { return 1000 }
	if !math.IsNaN(Settle(0, 0, 10, 0, heavy)) || !math.IsNaN(Settle(0, 10, 0, 1, heavy)) || !math.IsNaN(Settle(0, 0, math.NaN(), 1, heavy)) {
		t.Error("a column that is none has a pressure")
	}
	if got := Settle(5, 10, 10, 3, heavy); got != 5 {
		t.Errorf("no height: %v, want 5", got)
	}
	if got := Settle(5, 0, 10, 3, func(_, _ float64) float64 { return math.NaN() }); !math.IsNaN(got) {
		t.Errorf("no density: %v", got)
	}
}
