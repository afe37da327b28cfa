package friction

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func drawFluid(t *rapid.T) Fluid {
	return HerschelBulkley(
		rapid.Float64Range(0, 2500).Draw(t, "density"),
		rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(0, 50)).Draw(t, "yield stress"),
		rapid.Float64Range(0, 0.3).Draw(t, "consistency"),
		rapid.OneOf(rapid.Just(1.0), rapid.Float64Range(LeastIndex, MostIndex)).Draw(t, "index"),
	)
}

// TestKeepsItsPromises: never below zero, no jump but the one from rest, never
// falling with flow, density or a narrower way, and blind to direction.
func TestKeepsItsPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(Correlations()).Draw(t, "correlation")
		f := drawFluid(t)
		outer := rapid.Float64Range(0.03, 0.8).Draw(t, "outer")
		inner := outer * rapid.Float64Range(0, 0.98).Draw(t, "inner")
		flow := rapid.Float64Range(1e-6, 0.2).Draw(t, "flow")
		more := flow * rapid.Float64Range(1, 3).Draw(t, "more")
		loss := m.Annulus(f, flow, outer, inner)
		if !(loss >= 0) || math.IsInf(loss, 0) {
			t.Fatalf("loss = %v", loss)
		}
		const nothing = 1e-30 // Pa/m: of what is less, rounding may leave any part where a consistency is next to the least number there is
		grown := loss*(1-1e-12) - nothing
		if got := m.Annulus(f, more, outer, inner); got < grown {
			t.Fatalf("flow %v loses %v, flow %v only %v", flow, loss, more, got)
		}
		heavy := f
		heavy.Density *= 1.2
		if got := m.Annulus(heavy, flow, outer, inner); got < grown {
			t.Fatalf("density %v loses %v, %v only %v", f.Density, loss, heavy.Density, got)
		}
		stiff := HerschelBulkley(f.Density, f.Yield()+1, f.Consistency(), f.Index())
		if got := m.Annulus(stiff, flow/1e4, outer, inner); got < m.Annulus(f, flow/1e4, outer, inner) {
			t.Fatalf("creeping flow: more yield point loses less")
		}
		if got := m.Annulus(f, -flow, outer, inner); got != loss {
			t.Fatalf("backwards %v, forwards %v", got, loss)
		}
		// A step of a millionth of the flow moves the loss by no more than some
		// hundred millionths: the passage between the regimes has a slope, no jump.
		if got := m.Annulus(f, flow*(1+1e-6), outer, inner); got-loss > 1e-4*loss+1e-9 {
			t.Fatalf("jumps from %v to %v at flow %v", loss, got, flow)
		}
	})
}

func BenchmarkAnnulus(b *testing.B) {
	laws := map[string]Fluid{"Bingham": Bingham(1500, 0.05, 8), "Herschel-Bulkley": HerschelBulkley(1500, 5, 0.4, 0.7)}
	for _, m := range Correlations() {
		for law, f := range laws {
			b.Run(m.Name()+"/"+law, func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					m.Annulus(f, 0.04, 0.3148, 0.1492)
				}
			})
		}
	}
}
