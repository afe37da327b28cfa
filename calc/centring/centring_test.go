package centring

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(got, want, within float64) bool { return math.Abs(got-want) <= within }

// TestSagByHand: 12 m of 9 7/8 in casing, 8 5/8 in inside, under 398 N/m and without tension: I is 8.1179e-5 m⁴, E I
// 16.791 MN m², and w L⁴ / 384 E I is 1.280 mm.
func TestSagByHand(t *testing.T) {
	s := Span{12, 9.875 * 0.0254, 8.625 * 0.0254}
	sag, ok := s.Sag(398, 0)
	second := math.Pi / 64 * (math.Pow(9.875*0.0254, 4) - math.Pow(8.625*0.0254, 4))
	want := 398 * math.Pow(12, 4) / (384 * 30e6 * 6894.757293168361 * second)
	if !ok || !near(sag, want, 1e-9) || !near(sag*1000, 1.280, 0.002) {
		t.Errorf("%.6f mm, by hand %.6f", sag*1000, want*1000)
	}
}

// TestSagIsThatOfABeam lays a clamped beam under tension out in steps and relaxes it: E I y”” - T y” = w by finite
// differences, solved by elimination, independent of the closed form.
func TestSagIsThatOfABeam(t *testing.T) {
	s := Span{30, 7 * 0.0254, 6.094 * 0.0254}
	for _, tension := range []float64{-1e4, 0, 1e5, 1e6} {
		got, ok := s.Sag(300, tension)
		if !ok {
			t.Fatalf("tension %g: no sag", tension)
		}
		if want := relaxed(s, 300, tension); !near(got, want, 2e-3*want) {
			t.Errorf("tension %g N: sag %.6f m, beam in steps %.6f m", tension, got, want)
		}
	}
}

// relaxed solves the beam's equation on a grid and returns its deflection in the middle.
func relaxed(s Span, load, tension float64) float64 {
	const n = 200 // inner points; clamped: y = 0 at the ends, and the points beyond mirror those within
	h := s.Length / (n + 1)
	a := s.stiffness() / (h * h * h * h)
	b := tension / (h * h)
	m := make([][]float64, n)
	y := make([]float64, n)
	for i := range m {
		m[i] = make([]float64, n)
		y[i] = load
		put := func(k int, v float64) {
			switch {
			case k == -2 || k == n+1:
				m[i][i] += v // mirrored
			case k >= 0 && k < n:
				m[i][k] += v
			}
		}
		put(i-2, a)
		put(i-1, -4*a-b)
		put(i, 6*a+2*b)
		put(i+1, -4*a-b)
		put(i+2, a)
	}
	for i := range n {
		for k := i + 1; k < min(n, i+3); k++ {
			f := m[k][i] / m[i][i]
			for c := i; c < min(n, i+5); c++ {
				m[k][c] -= f * m[i][c]
			}
			y[k] -= f * y[i]
		}
	}
	for i := n - 1; i >= 0; i-- {
		for c := i + 1; c < min(n, i+5); c++ {
			y[i] -= m[i][c] * y[c]
		}
		y[i] /= m[i][i]
	}
	return (y[n/2-1] + y[n/2]) / 2
}

// TestSideOfASlantIsWeight, of a drop weight and pull together, of a build one against the other.
func TestSideOfASlantIsWeight(t *testing.T) {
	const inclination = math.Pi / 6
	for _, c := range []struct{ build, turn, want float64 }{
		{0, 0, 400}, {-0.001, 0, 500}, {0.001, 0, 300}, {0.004, 0, 0}, {0.009, 0, 500}, {0, 0.002, math.Hypot(400, 100)},
	} {
		if got := Side(800, 100000, inclination, c.build, c.turn); !near(got, c.want, 1e-6) {
			t.Errorf("build %g, turn %g: %.3f N/m, want %.3f", c.build, c.turn, got, c.want)
		}
	}
}

// TestForceOfTheTable: 1040 lbf for 7 in 26 lb/ft, 1600 for 9 5/8 in 40 lb/ft and 1220 for 13 3/8 in 61 lb/ft (API Spec 10D, from
// memory).
func TestForceOfTheTable(t *testing.T) {
	const lbf, lbft = 4.4482216152605, 0.45359237 / 0.3048
	for _, c := range []struct{ od, weight, want float64 }{{7, 26, 1040}, {9.625, 40, 1600}, {13.375, 61, 1220}} {
		if got := Force(c.od*0.0254, c.weight*lbft) / lbf; !near(got, c.want, 0.5) {
			t.Errorf("%g in %g lb/ft: %.1f lbf, want %.0f", c.od, c.weight, got, c.want)
		}
	}
}

func TestStandoffByHand(t *testing.T) {
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"a bow at its force", Bow(1000, 1000), 0.67},
		{"a bow without load", Bow(0, 1000), 1},
		{"a bow far overloaded", Bow(9000, 1000), 0},
		{"a bow of no force", Bow(10, 0), 0},
		{"a rigid of 12 in on 9 7/8 in in a 12 1/4 in hole", Rigid(12, 9.875, 12.25), 2.125 / 2.375},
		{"a rigid smaller than the pipe", Rigid(9, 9.875, 12.25), 0},
		{"10 mm of sag in 50 mm of clearance", Standoff(0.9, 0.010, 0.2, 0.3), 0.7},
		{"sagged to the wall", Standoff(0.9, 0.2, 0.2, 0.3), 0},
		{"no clearance", Standoff(0.9, 0, 0.3, 0.3), 0},
	} {
		if !near(c.got, c.want, 1e-12) {
			t.Errorf("%s: %g, want %g", c.what, c.got, c.want)
		}
	}
}

// TestTensionNeverSagsMore, a longer span or a heavier load never less.
func TestTensionNeverSagsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		od := rapid.Float64Range(0.1, 0.5).Draw(t, "od")
		s := Span{rapid.Float64Range(3, 40).Draw(t, "length"), od, od * rapid.Float64Range(0.7, 0.95).Draw(t, "ratio")}
		load, tension := rapid.Float64Range(1, 2000).Draw(t, "load"), rapid.Float64Range(-1e5, 2e6).Draw(t, "tension")
		sag, ok := s.Sag(load, tension)
		tighter, held := s.Sag(load, tension+rapid.Float64Range(0, 1e6).Draw(t, "more"))
		if ok && (!held || tighter > sag*(1+1e-9) || sag < 0) {
			t.Errorf("sag %g, tighter %g", sag, tighter)
		}
		longer := s
		longer.Length *= 1.1
		if more, stands := longer.Sag(load, tension); ok && stands && more < sag {
			t.Errorf("sag %g, longer %g", sag, more)
		}
	})
}

func TestRefusals(t *testing.T) {
	for _, s := range []Span{{0, 0.2, 0.1}, {10, 0.1, 0.2}, {math.NaN(), 0.2, 0.1}} {
		if sag, ok := s.Sag(100, 0); ok {
			t.Errorf("%+v sags %g", s, sag)
		}
	}
	if _, ok := (Span{40, 0.12, 0.1}).Sag(100, -1e6); ok {
		t.Error("a long thin span under compression stands")
	}
}
