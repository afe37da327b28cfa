package friction

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// slid adds up the velocity that a law gives between wall and middle, layer by layer, when the stress grows evenly from the
// middle to a stress at the wall, and returns the mean velocity in m/s over the cross section: of a pipe of the given
// diameter, or of a slot of that width. Nothing of it is taken from the program but the law itself.
func slid(f Fluid, wall, across float64, round bool) float64 {
	const layers = 20000
	half := across / 2
	dy := half / layers
	rate := func(y float64) float64 { // 1/s at a distance from the middle
		over := wall*y/half - f.Yield()
		if over <= 0 {
			return 0
		}
		return math.Pow(over/f.Consistency(), 1/f.Index())
	}
	velocity, flow := 0.0, 0.0
	for k := layers - 1; k >= 0; k-- { // from the wall, where the fluid stands, inwards
		y := (float64(k) + 0.5) * dy
		mean := velocity + rate(y)*dy/2
		velocity += rate(y) * dy
		if round {
			flow += mean * 2 * math.Pi * y * dy
		} else {
			flow += mean * dy
		}
	}
	if round {
		return flow / (math.Pi * half * half)
	}
	return flow / half
}

// TestLaminarAgainstIntegration: for a stress at the wall the profile is added up to a flow; for that flow the exact
// correlation must find the stress again.
func TestLaminarAgainstIntegration(t *testing.T) {
	const d = 0.1
	for _, n := range []float64{0.3, 0.5, 0.75, 1, 1.3} {
		for _, yield := range []float64{0, 0.5, 8} {
			for _, over := range []float64{1.02, 1.3, 3, 40} {
				k := 0.6 * math.Pow(300, 0.5-n)          // some thickness at some rate
				f := HerschelBulkley(1e-12, yield, k, n) // so light that it stays laminar
				wall := over * max(yield, 0.5)
				name := fmt.Sprintf("n %g, yield %g Pa, %g at the wall", n, yield, wall)
				v := slid(f, wall, d, true)
				got := DodgeMetzner{}.InPipe(f, v*math.Pi/4*d*d, d)
				if got.Regime != Laminar || math.Abs(got.Loss-4*wall/d) > 1e-6*got.Loss {
					t.Errorf("pipe, %s: %+v, want %.8g Pa/m", name, got, 4*wall/d)
				}
				// An annulus between 0.8 m and 0.7 m is a slot of 0.05 m.
				v = slid(f, wall, d/2, false)
				got = DodgeMetzner{}.InAnnulus(f, v*math.Pi/4*(0.64-0.49), 0.8, 0.7)
				if got.Regime != Laminar || math.Abs(got.Loss-4*wall/d) > 1e-6*got.Loss {
					t.Errorf("slot, %s: %+v, want %.8g Pa/m", name, got, 4*wall/d)
				}
			}
		}
	}
}

// TestBuckinghamReiner: for n = 1 the exact pipe obeys the equation of Buckingham (1921) and Reiner: 8 v / d = wall / mu ×
// (1 - 4/3 y + y⁴/3), y the yield over the wall's stress (any textbook; from memory).
func TestBuckinghamReiner(t *testing.T) {
	f := Bingham(10, 0.03, 9)
	for _, flow := range []float64{1e-5, 1e-3, 0.02} {
		v := Velocity(flow, 0.1, 0)
		wall := DodgeMetzner{}.Pipe(f, flow, 0.1) * 0.1 / 4
		y := 9 / wall
		if got, want := wall/0.03*(1-4*y/3+y*y*y*y/3), 8*v/0.1; math.Abs(got-want) > 1e-8*want {
			t.Errorf("flow %g: %g 1/s, want %g", flow, got, want)
		}
	}
}

// TestLimits: without yield RP 13D and the exact correlation are the power law, for n = 1 RP 13D is Bingham in pipe and slot,
// and for both all are Hagen and Poiseuille: 32 mu v / d² in a pipe, 48 mu v / D² in a slot.
func TestLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Float64Range(LeastIndex, MostIndex).Draw(t, "n")
		k := rapid.Float64Range(0.001, 2).Draw(t, "K")
		yield := rapid.Float64Range(0, 20).Draw(t, "yield")
		v := rapid.Float64Range(1e-4, 3).Draw(t, "v")
		const outer, inner = 0.3, 0.2
		pipe, slot := v*math.Pi/4*inner*inner, v*math.Pi/4*(outer*outer-inner*inner)
		same := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-9*want {
				t.Fatalf("%s: %.12g, want %.12g Pa/m", what, got, want)
			}
		}
		// A density of almost nothing keeps it laminar.
		power, bingham, newton := PowerLaw(1e-6, k, n), Bingham(1e-6, k, yield), Newton(1e-6, k)
		for _, c := range []Correlation{RP13D{}, DodgeMetzner{}} {
			same(c.Name()+", power law, pipe", c.Pipe(power, pipe, inner), 4/inner*k*math.Pow(8*v/inner*(3*n+1)/(4*n), n))
			same(c.Name()+", power law, slot", c.Annulus(power, slot, outer, inner), 4/(outer-inner)*k*math.Pow(12*v/(outer-inner)*(2*n+1)/(3*n), n))
		}
		same("Bingham, pipe", RP13D{}.Pipe(bingham, pipe, inner), BinghamSlot{}.Pipe(bingham, pipe, inner))
		same("Bingham, slot", RP13D{}.Annulus(bingham, slot, outer, inner), BinghamSlot{}.Annulus(bingham, slot, outer, inner))
		for _, c := range Correlations() {
			same(c.Name()+", Newton, pipe", c.Pipe(newton, pipe, inner), 32*k*v/(inner*inner))
			same(c.Name()+", Newton, slot", c.Annulus(newton, slot, outer, inner), 48*k*v/((outer-inner)*(outer-inner)))
		}
	})
}

// TestApproximationOfTheWall: with the factors of RP 13D for the yield the loss is from 3 % below the exact one to (4/3)ⁿ and
// (3/2)ⁿ times that, which it tends to at no flow; where the stress is five times the yield it is within 3 %.
func TestApproximationOfTheWall(t *testing.T) {
	for _, n := range []float64{0.4, 0.6, 0.8, 1} {
		f := HerschelBulkley(1e-12, 5, 0.5*math.Pow(100, 1-n)/10, n)
		for v := 1e-6; v < 20; v *= 3 {
			for _, c := range []struct {
				name      string
				near, is  float64
				most, gap float64
			}{
				{"pipe", RP13D{}.Pipe(f, v*math.Pi/4*0.01, 0.1), DodgeMetzner{}.Pipe(f, v*math.Pi/4*0.01, 0.1), math.Pow(4.0/3, n), 0.1},
				{"slot", RP13D{}.Annulus(f, v*math.Pi/4*(0.09-0.04), 0.3, 0.2), DodgeMetzner{}.Annulus(f, v*math.Pi/4*(0.09-0.04), 0.3, 0.2), math.Pow(1.5, n), 0.1},
			} {
				share, wall := c.near/c.is, c.is*c.gap/4
				if share < 1-0.03 || share > c.most*1.000001 || wall > 25 && math.Abs(share-1) > 0.03 {
					t.Errorf("%s, n %g, %g m/s, wall %.3g Pa: %.4f of the exact loss", c.name, n, v, wall, share)
				}
			}
		}
	}
}
