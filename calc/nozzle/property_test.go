package nozzle

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// What a nozzle loses, an area found for that loss loses again; twice the flow takes four times the pressure.
func TestDropAndAreaAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rho, q := rapid.Float64Range(800, 2500).Draw(t, "rho"), rapid.Float64Range(0.001, 0.2).Draw(t, "q")
		area, cd := rapid.Float64Range(1e-5, 1e-2).Draw(t, "area"), rapid.Float64Range(0.5, 1).Draw(t, "cd")
		drop := Drop(rho, q, area, cd)
		if got := Area(rho, q, drop, cd); math.Abs(got-area) > 1e-12*area {
			t.Fatalf("area %v, again %v", area, got)
		}
		if got := Drop(rho, 2*q, area, cd); math.Abs(got-4*drop) > 1e-12*got {
			t.Fatalf("twice the flow: %v, want %v", got, 4*drop)
		}
		// The power of the jets of an ideal nozzle is half their impact times their velocity.
		v := Velocity(q, area)
		if got, want := Power(Drop(rho, q, area, 1), q), Impact(rho, q, v)*v/2; math.Abs(got-want) > 1e-12*want {
			t.Fatalf("power %v, want %v", got, want)
		}
	})
}

// The split found is that which no other flow betters, looked for numerically.
func TestTheOptimumIsOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		limit, m := rapid.Float64Range(5e6, 5e7).Draw(t, "limit"), rapid.Float64Range(1.1, 2).Draw(t, "m")
		flow, loss := rapid.Float64Range(0.01, 0.1).Draw(t, "flow"), rapid.Float64Range(1e6, 3e7).Draw(t, "loss")
		least := rapid.Float64Range(0.005, 0.05).Draw(t, "least")
		most := least + rapid.Float64Range(0, 0.1).Draw(t, "range")
		bit := func(q float64) float64 { return limit - loss*math.Pow(q/flow, m) }
		for name, c := range map[string]struct {
			share float64
			worth func(q float64) float64
		}{
			"power":  {PowerShare(m), func(q float64) float64 { return Power(bit(q), q) }},
			"impact": {ImpactShare(m), func(q float64) float64 { return q * math.Sqrt(max(bit(q), 0)) }}, // rho q v is this times a constant
		} {
			split, ok := Optimum(c.share, limit, flow, loss, m, least, most)
			if !ok {
				if bit(least) > 0 {
					t.Fatalf("%s: no split although %v Pa are left at the least flow", name, bit(least))
				}
				continue
			}
			if math.Abs(split.Bit-bit(split.Flow)) > 1e-6*limit || split.Flow < least || split.Flow > most {
				t.Fatalf("%s: %+v between %v and %v", name, split, least, most)
			}
			best := c.worth(split.Flow)
			for k := range 401 {
				if q := least + (most-least)*float64(k)/400; bit(q) > 0 && c.worth(q) > best*(1+1e-9) {
					t.Fatalf("%s: %v at %v is more than %v at %v", name, c.worth(q), q, best, split.Flow)
				}
			}
		}
	})
}

func TestTwoRatesGiveTheSlopeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, q, loss := rapid.Float64Range(0.5, 2.5).Draw(t, "m"), rapid.Float64Range(0.01, 0.1).Draw(t, "q"), rapid.Float64Range(1e5, 1e7).Draw(t, "loss")
		other := q * rapid.Float64Range(0.2, 0.9).Draw(t, "other")
		if got := Slope(q, loss, other, loss*math.Pow(other/q, m)); math.Abs(got-m) > 1e-9 {
			t.Fatalf("slope %v, want %v", got, m)
		}
		if got := FlowFor(loss*math.Pow(other/q, m), q, loss, m); math.Abs(got-other) > 1e-9*other {
			t.Fatalf("flow %v, want %v", got, other)
		}
	})
}

// No set of the kind lies nearer than the two that are found: every one is looked at.
func TestNoSetIsNearer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "n")
		area := rapid.Float64Range(1e-5, 8e-3).Draw(t, "area")
		if rapid.Bool().Draw(t, "exactly") {
			area = Set{{n, rapid.IntRange(Least, Most).Draw(t, "size")}}.Area()
		}
		below, above := Neighbours(n, area)
		var all []float64
		for size := Least; size <= Most; size++ {
			for k := range n + 1 {
				if size < Most || k == 0 {
					all = append(all, Set{{n - k, size}, {k, size + 1}}.Area())
				}
			}
		}
		slices.Sort(all)
		for _, a := range all {
			if a <= area && (below == nil || a > below.Area()*(1+1e-12)) || a >= area && (above == nil || a < above.Area()*(1-1e-12)) {
				t.Fatalf("%d nozzles of %v m² are nearer to %v than %q and %q", n, a, area, below, above)
			}
		}
		for _, set := range []Set{below, above} {
			if set != nil && (set.Count() != n || len(set) > 2) {
				t.Fatalf("%q is no set of %d", set, n)
			}
		}
	})
	for _, area := range []float64{0, -1, math.NaN()} {
		if below, above := Neighbours(3, area); below != nil || above != nil {
			t.Errorf("an area of %v has the neighbours %q and %q", area, below, above)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, text := range []string{"3x16 2x18", "16 16 18", "3 x 16, 2 x 18", "x", "×", "3x16/32", "", "1e3", "30x64"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		set, err := Read(text)
		if err != nil {
			if set != nil || len(err.Error()) > 200 {
				t.Fatalf("%q: %v with the error %v", text, set, err)
			}
			return
		}
		again, err := Read(set.String())
		if err != nil || again.Area() != set.Area() || again.Count() != set.Count() {
			t.Fatalf("%q is %q, which is read as %q, %v", text, set, again, err)
		}
		if area := set.Area(); !(area >= 0) || (area == 0) != (set.Count() == 0) {
			t.Fatalf("%q has %v m²", text, area)
		}
	})
}
