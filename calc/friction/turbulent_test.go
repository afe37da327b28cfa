package friction

import (
	"math"
	"testing"
)

// colebrook returns the Fanning factor of a smooth pipe, 1/√f = -4 log(1.255 / (Re √f)), by halving.
// Source: Colebrook 1939; from memory.
func colebrook(re float64) float64 {
	low, high := 1e-4, 0.1
	for range 200 {
		f := (low + high) / 2
		if 1/math.Sqrt(f)+4*math.Log10(1.255/(re*math.Sqrt(f))) > 0 {
			low = f
		} else {
			high = f
		}
	}
	return low
}

// TestWaterAgainstColebrook: the smooth turbulent pipe, where every correlation is near Colebrook's.
func TestWaterAgainstColebrook(t *testing.T) {
	const d = 0.1
	water := Newton(1000, 0.001)
	for _, c := range []struct {
		re     float64
		within map[string]float64
	}{
		{5000, map[string]float64{"Bingham slot": 0.02, "RP 13D": 0.02, "Dodge-Metzner": 0.002}},
		{1e4, map[string]float64{"Bingham slot": 0.03, "RP 13D": 0.03, "Dodge-Metzner": 0.002}},
		{1e5, map[string]float64{"Bingham slot": 0.03, "RP 13D": 0.03, "Dodge-Metzner": 0.002}},
		{1e6, map[string]float64{"Bingham slot": 0.15, "RP 13D": 0.15, "Dodge-Metzner": 0.002}},
	} {
		v := c.re * 0.001 / (1000 * d)
		want := 2 * colebrook(c.re) * 1000 * v * v / d
		for _, m := range Correlations() {
			flow := m.InPipe(water, v*math.Pi/4*d*d, d)
			if flow.Regime != Turbulent || math.Abs(flow.Reynolds-c.re) > 1e-6*c.re || math.Abs(flow.Loss/want-1) > c.within[m.Name()] {
				t.Errorf("%s at %g: %+v, %.4f of Colebrook", m.Name(), c.re, flow, flow.Loss/want)
			}
		}
	}
	// By hand: at 1e5 Colebrook's smooth factor is 0.0045 (0.018 as Darcy has it, the Moody chart).
	if f := colebrook(1e5); math.Abs(f-0.0045) > 0.00002 {
		t.Errorf("Colebrook at 1e5: %.5f", f)
	}
}

// TestDodgeMetznerFactor: the factor solves its own equation, put in as published, for power laws.
func TestDodgeMetznerFactor(t *testing.T) {
	const d = 0.1
	for _, n := range []float64{0.4, 0.6, 0.8, 1, 1.2} {
		f := PowerLaw(1200, 0.05*math.Pow(200, 1-n), n)
		for _, v := range []float64{4, 8, 15} {
			flow := DodgeMetzner{}.InPipe(f, v*math.Pi/4*d*d, d)
			if flow.Regime != Turbulent {
				t.Errorf("n %g at %g m/s: %+v", n, v, flow)
				continue
			}
			// Metzner and Reed: Re = rho v^(2-n) dⁿ / (8^(n-1) K ((3n+1)/(4n))ⁿ).
			re := 1200 * math.Pow(v, 2-n) * math.Pow(d, n) / (math.Pow(8, n-1) * f.Consistency() * math.Pow((3*n+1)/(4*n), n))
			fanning := flow.Loss * d / (2 * 1200 * v * v)
			left, right := 1/math.Sqrt(fanning), 4/math.Pow(n, 0.75)*math.Log10(re*math.Pow(fanning, 1-n/2))-0.4/math.Pow(n, 1.2)
			if math.Abs(flow.Reynolds/re-1) > 1e-9 || math.Abs(left-right) > 1e-6*left {
				t.Errorf("n %g at %g m/s: Re %g and %g, 1/√f %g and %g", n, v, flow.Reynolds, re, left, right)
			}
		}
	}
}

// TestRP13DByHand: a power law of n 0.7, K 0.4 Pa·s^0.7, 1200 kg/m³, at 3 m/s in 0.1 m. The rate is 240 × 3.1 / 2.8 =
// 265.714 1/s, the stress 0.4 × 265.714^0.7 = 0.4 × 49.7841 = 19.9136 Pa, Re = 8 × 1200 × 9 / 19.9136 = 4338.7.
// Rc = 3470 - 959 = 2511; a = (3.93 - 0.154902) / 50 = 0.0755020, b = (1.75 + 0.154902) / 7 = 0.272129.
// Laminar 16 / Re = 0.00368771, transition 16 Re / Rc² = 0.0110101, turbulent 0.0755020 / 4338.7^0.272129 = 0.0755020 /
// 9.76858 = 0.00772906. Between: 0.0110101 / 0.00772906 = 1.42450, to the -8th 0.0589786, so 0.00772906 / 1.0589786^0.125 =
// 0.00767389. All: 0.00368771 / 0.00767389 = 0.480552, to the 12th 0.000151667, so 0.00767399. The loss is 2 × 0.00767399 ×
// 1200 × 9 / 0.1 = 1657.58 Pa/m.
func TestRP13DByHand(t *testing.T) {
	got := RP13D{}.InPipe(PowerLaw(1200, 0.4, 0.7), 3*math.Pi/4*0.01, 0.1)
	if math.Abs(got.Loss-1657.58) > 0.01 || math.Abs(got.Reynolds-4338.7) > 0.05 || got.Regime != Turbulent || math.Abs(got.Velocity-3) > 1e-12 {
		t.Errorf("%+v", got)
	}
}

// TestRegimes: every correlation says laminar, transition and turbulent in this order as the flow grows, and at rest without.
func TestRegimes(t *testing.T) {
	for _, m := range Correlations() {
		for _, f := range []Fluid{Newton(1000, 0.001), Bingham(1250, 0.018, 10), HerschelBulkley(1250, 2, 0.3, 0.65)} {
			seen := map[Regime]bool{}
			last, reynolds := Still, 0.0
			for v := 1e-4; v < 100; v *= 1.02 {
				flow := m.InAnnulus(f, v*math.Pi/4*(0.09-0.0225), 0.3, 0.15)
				if flow.Regime < last || flow.Reynolds <= reynolds || flow.Loss != m.Annulus(f, v*math.Pi/4*(0.09-0.0225), 0.3, 0.15) {
					t.Fatalf("%s: %+v after %v at %g", m.Name(), flow, last, reynolds)
				}
				last, reynolds = flow.Regime, flow.Reynolds
				seen[last] = true
			}
			if len(seen) != 3 {
				t.Errorf("%s: regimes %v", m.Name(), seen)
			}
			if flow := m.InPipe(f, 0, 0.1); flow != (Flow{}) || flow.Regime.String() != "at rest" {
				t.Errorf("%s without flow: %+v", m.Name(), flow)
			}
		}
	}
}

// TestNames: each correlation is found by its name, and says where it comes from.
func TestNames(t *testing.T) {
	for _, c := range Correlations() {
		if found, ok := Named(c.Name()); !ok || found != c || c.Source() == "" {
			t.Errorf("%q, source %q", c.Name(), c.Source())
		}
	}
	if c, ok := Named("nothing"); ok {
		t.Errorf("found %v", c)
	}
}

// TestFluidsThatAreNone rub nowhere, and Check says why.
func TestFluidsThatAreNone(t *testing.T) {
	for name, f := range map[string]Fluid{
		"index too small": PowerLaw(1000, 1, 0.05), "index too large": PowerLaw(1000, 1, 2), "consistency below zero": PowerLaw(1000, -1, 1),
		"yield below zero": Bingham(1000, 0.01, -1), "no number": Bingham(1000, math.NaN(), 1),
	} {
		if f.Check() == nil {
			t.Errorf("%s: no complaint", name)
		}
		for _, c := range Correlations() {
			if loss := c.Pipe(f, 0.01, 0.1); loss != 0 {
				t.Errorf("%s: %g Pa/m by %s", name, loss, c.Name())
			}
		}
	}
	if Bingham(math.Inf(1), 0.01, 1).Check() == nil {
		t.Error("an endless density")
	}
	bare := Fluid{Density: 1000}
	if bare.Check() != nil || (RP13D{}).Pipe(bare, 0.01, 0.1) != 0 || bare.PlasticViscosity() != 0 || !bare.IsBingham() {
		t.Error("a density alone")
	}
}

// TestTheFieldLine: plastic viscosity and yield point are those of the stresses at 511 and 1022 1/s.
func TestTheFieldLine(t *testing.T) {
	f := HerschelBulkley(1250, 2, 0.5, 0.6)
	if got, want := f.PlasticViscosity()*511+f.YieldPoint(), f.Stress(511); math.Abs(got-want) > 1e-12*want {
		t.Errorf("at 511 1/s %g, want %g", got, want)
	}
	if got, want := f.PlasticViscosity()*1022+f.YieldPoint(), f.Stress(1022); math.Abs(got-want) > 1e-12*want {
		t.Errorf("at 1022 1/s %g, want %g", got, want)
	}
	if up := PowerLaw(1250, 0.001, 1.3); up.YieldPoint() != 0 || math.Abs(up.PlasticViscosity()-up.Stress(1022)/1022) > 1e-15 {
		t.Errorf("bent upwards: %g Pa·s, %g Pa", up.PlasticViscosity(), up.YieldPoint())
	}
	if got, want := (BinghamSlot{}).Pipe(f, 0.02, 0.1), (BinghamSlot{}).Pipe(Bingham(1250, f.PlasticViscosity(), f.YieldPoint()), 0.02, 0.1); got != want {
		t.Errorf("Bingham slot of the fluid %g, of its line %g", got, want)
	}
}
