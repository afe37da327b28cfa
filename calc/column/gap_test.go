package column

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// plainGap looks at very many depths and at all breaks.
func plainGap(t interface{ Fatalf(string, ...any) }, upper, lower func(float64) (float64, bool), from, to float64, breaks []float64) Gap {
	least := Gap{Value: math.Inf(1)}
	look := func(tvd float64) {
		u, ok1 := upper(tvd)
		l, ok2 := lower(tvd)
		if !ok1 || !ok2 {
			t.Fatalf("no value at %v", tvd)
		}
		if u-l < least.Value {
			least = Gap{u - l, tvd}
		}
	}
	const steps = 20000
	for i := range steps + 1 {
		look(min(to, from+(to-from)*float64(i)/steps))
	}
	for _, b := range breaks {
		if b >= from && b <= to {
			look(b)
		}
	}
	return least
}

// drawHole draws a riserless hole with one to three fluids in it, and a curve with
// rows anywhere across the same depths.
func drawHole(t *rapid.T) (s Stack, c Curve, from, to float64) {
	airGap := rapid.Float64Range(0, 40).Draw(t, "air gap")
	mudline := airGap + rapid.Float64Range(20, 2500).Draw(t, "water")
	var layers []Layer
	tvd := mudline
	for range rapid.IntRange(1, 3).Draw(t, "fluids") {
		length := rapid.Float64Range(10, 1500).Draw(t, "length")
		layers = append(layers, Layer{tvd, tvd + length, rapid.Float64Range(100, 2200).Draw(t, "density"), ""})
		tvd += length
	}
	s, err := Riserless(airGap, mudline, 1030, layers...)
	if err != nil {
		t.Fatal(err)
	}
	rows := []Row{{mudline, 1000}}
	at := mudline
	for range rapid.IntRange(0, 6).Draw(t, "rows") {
		at += rapid.Float64Range(5, 900).Draw(t, "step")
		rows = append(rows, Row{at, rapid.Float64Range(900, 2300).Draw(t, "value")})
	}
	rows = append(rows, Row{max(at, tvd) + 1, rapid.Float64Range(900, 2300).Draw(t, "value")})
	c, err = NewCurve(rows)
	if err != nil {
		t.Fatal(err)
	}
	return s, c, mudline, tvd
}

func TestLeastGapAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, c, from, to := drawHole(t)
		upper, lower := c.At, s.EMW
		if rapid.Bool().Draw(t, "exchanged") {
			upper, lower = lower, upper
		}
		breaks := c.AppendBreaks(s.AppendBreaks(nil))
		got, ok := LeastGap(upper, lower, from, to, breaks)
		if !ok {
			t.Fatal("LeastGap gives nothing")
		}
		want := plainGap(t, upper, lower, from, to, breaks)
		// Never above what plain looking finds but for rounding, and below it only by
		// what fits between two looks. f" is at most 2c/z³ < 2e4/m² × 1e-4 kg/m³.
		step := (to - from) / 20000
		if got.Value > want.Value+1e-6 || got.Value < want.Value-step*step-1e-6 {
			t.Fatalf("LeastGap = %+v, looking finds %+v", got, want)
		}
		u, _ := upper(got.TVD)
		l, _ := lower(got.TVD)
		if u-l != got.Value || got.TVD < from || got.TVD > to {
			t.Fatalf("LeastGap = %+v, but there the gap is %v", got, u-l)
		}
	})
}

// TestLeastGapTurn knows where the gap turns: a + b z + c/z is least at sqrt(c/b).
func TestLeastGapTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turn := rapid.Float64Range(50, 4000).Draw(t, "turn")
		b := rapid.Float64Range(1e-4, 1).Draw(t, "b")
		c := b * turn * turn
		f := func(z float64) (float64, bool) { return 1500 + b*z + c/z, z > 0 }
		zero := func(float64) (float64, bool) { return 0, true }
		from := turn * rapid.Float64Range(0.1, 1).Draw(t, "from")
		to := turn * rapid.Float64Range(1, 3).Draw(t, "to")
		got, ok := LeastGap(f, zero, from, to, nil)
		want := 1500 + 2*b*turn
		if !ok || math.Abs(got.Value-want) > 1e-6 || math.Abs(got.TVD-turn) > 0.1 {
			t.Fatalf("LeastGap = %+v, %v, want %v at %v", got, ok, want, turn)
		}
	})
}

func TestLeastGapEdges(t *testing.T) {
	flat := func(v float64) func(float64) (float64, bool) {
		return func(float64) (float64, bool) { return v, true }
	}
	if got, ok := LeastGap(flat(3), flat(1), 10, 20, []float64{15}); !ok || got != (Gap{2, 10}) {
		t.Errorf("LeastGap of constants = %+v, %v, want 2 at the top", got, ok)
	}
	if got, ok := LeastGap(flat(3), flat(1), 10, 10, nil); !ok || got != (Gap{2, 10}) {
		t.Errorf("LeastGap at one depth = %+v, %v", got, ok)
	}
	vee := func(z float64) (float64, bool) { return math.Abs(z - 15), true }
	if got, ok := LeastGap(vee, flat(0), 0, 100, []float64{90, 15, -5, 300, math.NaN()}); !ok || got != (Gap{0, 15}) {
		t.Errorf("LeastGap at a corner = %+v, %v, want 0 at 15", got, ok)
	}
	c, err := NewCurve([]Row{{0, 1}, {50, 2}})
	if err != nil {
		t.Fatal(err)
	}
	if got, ok := LeastGap(c.At, flat(0), 0, 51, c.AppendBreaks(nil)); ok {
		t.Errorf("LeastGap past the end of a curve = %+v, want none", got)
	}
	for _, bad := range [][2]float64{{2, 1}, {math.NaN(), 1}, {0, math.Inf(1)}} {
		if got, ok := LeastGap(flat(1), flat(0), bad[0], bad[1], nil); ok || got != (Gap{}) {
			t.Errorf("LeastGap from %v to %v = %+v, want none", bad[0], bad[1], got)
		}
	}
	nan := func(float64) (float64, bool) { return math.NaN(), true }
	if got, ok := LeastGap(nan, flat(0), 0, 1, nil); ok {
		t.Errorf("LeastGap of no number = %+v, want none", got)
	}
}

// drawStack draws a stack and the layers that it was made of.
func drawStack(t *rapid.T) (Stack, []Layer, float64) {
	tvd := rapid.Float64Range(-10, 500).Draw(t, "top")
	var layers []Layer
	for range rapid.IntRange(1, 6).Draw(t, "n") {
		length := rapid.Float64Range(0.01, 1500).Draw(t, "length")
		layers = append(layers, Layer{tvd, tvd + length, rapid.Float64Range(1, 2500).Draw(t, "density"), ""})
		tvd += length
	}
	surface := rapid.Float64Range(0, 5e7).Draw(t, "surface")
	s, err := NewStack(surface, layers...)
	if err != nil {
		t.Fatal(err)
	}
	return s, layers, surface
}

func TestPressureIsContinuousAndRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, layers, surface := drawStack(t)
		at := func(tvd float64) float64 {
			p, ok := s.Pressure(tvd)
			if !ok {
				t.Fatalf("no pressure at %v", tvd)
			}
			return p
		}
		if got := at(s.Top()); got != surface {
			t.Fatalf("pressure at the top %v, want %v", got, surface)
		}
		for _, l := range layers {
			const step = 1e-6
			if d := math.Abs(at(l.Bottom-step) - at(l.Bottom)); d > 2500*G*step*1.01+1e-6 {
				t.Fatalf("pressure jumps by %v Pa at %v", d, l.Bottom)
			}
		}
		a := rapid.Float64Range(s.Top(), s.Bottom()).Draw(t, "a")
		b := rapid.Float64Range(a, s.Bottom()).Draw(t, "b")
		if at(b) < at(a) {
			t.Fatalf("pressure falls from %v at %v to %v at %v", at(a), a, at(b), b)
		}
	})
}

func TestPressureRisesWithDensity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, layers, surface := drawStack(t)
		i := rapid.IntRange(0, len(layers)-1).Draw(t, "layer")
		heavier := append([]Layer(nil), layers...)
		heavier[i].Density += rapid.Float64Range(1, 500).Draw(t, "more")
		h, err := NewStack(surface, heavier...)
		if err != nil {
			t.Fatal(err)
		}
		tvd := rapid.Float64Range(s.Top(), s.Bottom()).Draw(t, "tvd")
		light, _ := s.Pressure(tvd)
		heavy, _ := h.Pressure(tvd)
		// Heavier below the depth changes nothing there; heavier above it tells.
		if more := heavy > light; more != (tvd > layers[i].Top) && math.Abs(tvd-layers[i].Top) > 1e-6 {
			t.Fatalf("layer %d heavier: pressure at %v goes from %v to %v", i, tvd, light, heavy)
		}
	})
}

func TestRestingOnMeetsNewStack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, layers, surface := drawStack(t)
		bottom, _ := s.Pressure(s.Bottom())
		up, err := RestingOn(bottom, layers...)
		if err != nil {
			t.Fatal(err)
		}
		top, _ := up.Pressure(up.Top())
		if math.Abs(top-surface) > 1e-6 {
			t.Fatalf("from below the top pressure is %v, want %v", top, surface)
		}
	})
}

func TestDensityBelowSeaMeetsRiserless(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		airGap := rapid.Float64Range(0, 40).Draw(t, "air gap")
		mudline := airGap + rapid.Float64Range(20, 2500).Draw(t, "water")
		tvd := mudline + rapid.Float64Range(10, 5000).Draw(t, "penetration")
		mud := rapid.Float64Range(900, 2300).Draw(t, "mud")
		s, err := Riserless(airGap, mudline, 1030, Layer{mudline, tvd, mud, ""})
		if err != nil {
			t.Fatal(err)
		}
		pressure, _ := s.Pressure(tvd)
		if got, ok := DensityBelowSea(airGap, mudline, 1030, pressure, tvd); !ok || math.Abs(got-mud) > 1e-8 {
			t.Fatalf("DensityBelowSea = %v, %v, want %v", got, ok, mud)
		}
	})
}

func TestEMWInverts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		emw := rapid.Float64Range(0, 3000).Draw(t, "emw")
		tvd := rapid.Float64Range(0.1, 10000).Draw(t, "tvd")
		got, ok := EMW(PressureOf(emw, tvd), tvd)
		if !ok || math.Abs(got-emw) > 1e-12*emw {
			t.Fatalf("EMW(PressureOf(%v, %v)) = %v, %v", emw, tvd, got, ok)
		}
	})
}

func BenchmarkLeastGap(b *testing.B) {
	s, err := Riserless(26, 368, 1030, Layer{368, 1200, 1200, ""}, Layer{1200, 3300, 1400, ""})
	if err != nil {
		b.Fatal(err)
	}
	var rows []Row
	for i := range 14 {
		rows = append(rows, Row{368 + 230*float64(i), 1000 + 60*float64(i)})
	}
	c, err := NewCurve(rows)
	if err != nil {
		b.Fatal(err)
	}
	breaks := c.AppendBreaks(s.AppendBreaks(nil))
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := LeastGap(c.At, s.EMW, 368, 3300, breaks); !ok {
			b.Fatal("nothing")
		}
	}
}

func BenchmarkPressure(b *testing.B) {
	s, err := Riserless(26, 368, 1030, Layer{368, 1200, 1200, ""}, Layer{1200, 3300, 1400, ""})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		s.Pressure(2000)
	}
}
