package state

import (
	"math"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
)

// TestFreeFallInTheJob: the demo's job goes on vacuum while heavy fluid is in the
// casing, returns outrun the pump, and later lag behind it; at the bump all is as if
// it had been pumped by volume.
func TestFreeFallInTheJob(t *testing.T) {
	plainly := ottermast(t, 0.3)
	want := cementUp(t, plainly, 0.5)
	for _, piece := range []float64{0.25, 1, 5} {
		w := ottermast(t, 0.3)
		deepest, faster, slower, pulled := 0.0, false, false, false
		got := playJob(t, w, piece, func(s Step) {
			deepest = max(deepest, s.Level)
			faster = faster || s.Returned > 1.05*s.Pumped
			slower = slower || s.Returned < 0.95*s.Pumped && s.Level > 0
			pulled = pulled || s.Level > 0 && s.Pressure != 0 || s.Level == 0 && w.Balance() < -finest
		})
		if deepest < 50 || deepest > shoe || !faster || !slower || pulled {
			t.Errorf("in pieces of %v m³: level down to %v m, faster %v, slower %v, pulled %v", piece, deepest, faster, slower, pulled)
		}
		near(t, "displacement", got, want, 1e-6)
		same(t, w, plainly, 1e-6)
	}
}

// same fails the test unless two wells hold the same.
func same(t interface{ Fatalf(string, ...any) }, a, b *Well, within float64) {
	for c := range Conduit(conduits) {
		x, y := a.AppendLayers(nil, c), b.AppendLayers(nil, c)
		x, y = thick(x), thick(y)
		if len(x) != len(y) {
			t.Fatalf("%v: %+v, want %+v", c, x, y)
		}
		for i := range x {
			if x[i].Fluid != y[i].Fluid || math.Abs(x[i].Bottom-y[i].Bottom) > within || math.Abs(x[i].Volume-y[i].Volume) > within {
				t.Fatalf("%v: layer %d is %+v, want %+v", c, i, x[i], y[i])
			}
		}
	}
}

// thick leaves out layers that are nothing but rounding.
func thick(layers []Layer) []Layer {
	var kept []Layer
	for _, l := range layers {
		if l.Volume <= nothing {
			continue
		}
		if n := len(kept); n > 0 && kept[n-1].Fluid == l.Fluid {
			kept[n-1].Bottom = l.Bottom
			kept[n-1].Volume += l.Volume
			continue
		}
		kept = append(kept, l)
	}
	return kept
}

// linear is friction in proportion to flow, in the annulus alone.
type linear struct{ perMetre float64 }

func (linear) Pipe(friction.Fluid, float64, float64) float64 { return 0 }
func (l linear) Annulus(_ friction.Fluid, flow, _, _ float64) float64 {
	return l.perMetre * math.Abs(flow)
}

// hung is a plain well of 1000 m with 200 m of a fluid of 1500 kg/m³ at the top of a
// string that is otherwise, as the annulus, full of 1000 kg/m³.
func hung(t testing.TB, model friction.Model) *Well {
	t.Helper()
	const od, depth = 0.25, 1000
	w, err := New(Layout{
		Bore:     bore.Profile{{Bottom: depth, Diameter: math.Sqrt(od*od + boreArea*4/math.Pi)}},
		String:   []bore.Body{{Bottom: depth, OD: od, ID: math.Sqrt(pipeArea * 4 / math.Pi)}},
		TVD:      func(md float64) float64 { return md },
		Friction: model,
	}, []Fluid{of("light", 1000), of("heavy", 1500)}, 0)
	if err != nil {
		t.Fatal(err)
	}
	if err := w.Spot(Inside, 0, 200, 1); err != nil {
		t.Fatal(err)
	}
	return w
}

// TestFallsToTheBalance: 200 m of 1500 on light fluid of 1000 balance with a level
// 200 × (1500 - 1000) / 1000 = 100 m down, with friction or without.
func TestFallsToTheBalance(t *testing.T) {
	for name, c := range map[string]struct {
		model   friction.Model
		seconds float64
	}{
		"no friction":     {nil, 1},
		"linear friction": {linear{1e4}, 3600},
		"water":           {friction.BinghamSlot{}, 3600},
	} {
		w := hung(t, c.model)
		near(t, name+": balance before", w.Balance(), -200*500*gravity, 1e-3)
		var s Step
		returned := 0.0
		for range 10 {
			var err error
			if s, err = w.Advance(c.seconds/10, 0, 0); err != nil {
				t.Fatal(err)
			}
			returned += s.Returned
		}
		near(t, name+": level", s.Level, 100, 0.01)
		near(t, name+": returned", returned, 100*pipeArea, 0.01*pipeArea)
		near(t, name+": pressure at the end", pressure(t, w, Inside, 1000), 1000*1000*gravity, 150)
		near(t, name+": pressure at the level", pressure(t, w, Inside, w.Level()), 0, 1e-6)
	}
}

// TestFallsAsTheFormulaSays: with friction R q in the annulus alone the level goes
// down as 100 m (1 - exp(-t/T)) with T = A R / (rho g), and the shorter the steps,
// the closer.
func TestFallsAsTheFormulaSays(t *testing.T) {
	const perMetre, minutes = 3e3, 5.0
	constant := pipeArea * perMetre * 1000 / (1000 * gravity) // s
	last := math.Inf(1)
	for _, n := range []int{5, 25, 125, 625} {
		w := hung(t, linear{perMetre})
		for range n {
			if _, err := w.Advance(constant/float64(n), 0, 0); err != nil {
				t.Fatal(err)
			}
		}
		off := math.Abs(w.Level() - 100*(1-math.Exp(-1)))
		t.Logf("%d steps: off by %.4f m", n, off)
		if !(off < last) {
			t.Errorf("%d steps are off by %v m, fewer steps by %v m", n, off, last)
		}
		last = off
		near(t, "flow", w.Flow(), (200*500-1000*w.Level())*gravity/(perMetre*1000), 1e-4)
	}
	if last > 0.05 {
		t.Errorf("625 steps are off by %v m", last)
	}
}

// TestYieldHolds: columns that differ by less than the yield point can hold stay.
func TestYieldHolds(t *testing.T) {
	w := hung(t, friction.BinghamSlot{})
	for i := range w.fluids {
		w.fluids[i].Fluid = friction.Bingham(w.fluids[i].Density, w.fluids[i].PlasticViscosity(), 100)
	}
	s, err := w.Advance(600, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	if s.Level != 0 || s.Returned != 0 || s.Pressure != 0 {
		t.Errorf("held by its yield point: %+v", s)
	}
}

// TestNothingFalls: with light fluid going in, time makes no difference.
func TestNothingFalls(t *testing.T) {
	w, v := hung(t, linear{1e4}), hung(t, linear{1e4})
	if err := w.Spot(Inside, 0, 200, 0); err != nil {
		t.Fatal(err)
	}
	v.CopyFrom(w)
	if _, err := w.Advance(1000, 0.02, 0); err != nil {
		t.Fatal(err)
	}
	for range 777 {
		s, err := v.Advance(1000/777.0, 0.02, 0)
		if err != nil || s.Level != 0 || math.Abs(s.Rate-0.02) > 1e-12 {
			t.Fatalf("%+v, %v", s, err)
		}
		near(t, "pump", s.Pressure, 1e4*0.02*1000, 1e-3)
	}
	same(t, w, v, 1e-7)
}

// TestEmptyStringIsFilled: a string run in empty stands until the pump has filled
// it to the balance, and is full when its volume has gone in.
func TestEmptyStringIsFilled(t *testing.T) {
	w := hung(t, linear{1e4})
	w.stacks[Inside] = w.stacks[Inside][:0]
	near(t, "level of an empty string", w.Level(), 1000, 0)
	s, err := w.Advance(100, 0.15, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "level", s.Level, 500, 1e-6)
	if s.Returned != 0 || s.Rate != 0 || s.Pressure != 0 {
		t.Errorf("half full: %+v", s)
	}
	if s, err = w.Advance(101, 0.15, 0); err != nil {
		t.Fatal(err)
	}
	near(t, "level when full", s.Level, 0, 0)
	near(t, "returned when full", s.Returned, 0.15, 1e-9)
}

func TestAdvanceRefuses(t *testing.T) {
	w := hung(t, nil)
	for _, c := range []struct {
		seconds, rate float64
		fluid         int
	}{{0, 1, 0}, {-1, 1, 0}, {math.NaN(), 1, 0}, {math.Inf(1), 1, 0}, {1, -1, 0}, {1, math.NaN(), 0}, {1, math.Inf(1), 0}, {1, 1, 2}, {1, 1, -1}} {
		if s, err := w.Advance(c.seconds, c.rate, c.fluid); err == nil || s != (Step{}) {
			t.Errorf("Advance(%v, %v, %v) = %+v, %v, want an error", c.seconds, c.rate, c.fluid, s, err)
		}
	}
}

func BenchmarkCementJob(b *testing.B) {
	start := ottermast(b, 0.3)
	// Twelve intervals: a landing string and a casing of more than one size.
	start.now.str = []bore.Body{
		{Top: -10, Bottom: 200, OD: 5.875 * inch, ID: 5.153 * inch},
		{Top: 200, Bottom: tallied, OD: 6.625 * inch, ID: 5.9 * inch},
		{Top: tallied, Bottom: 500, OD: 13.625 * inch, ID: 12.375 * inch},
		{Top: 500, Bottom: 1400, OD: 13.375 * inch, ID: 12.415 * inch},
		{Top: 1400, Bottom: shoe, OD: 13.625 * inch, ID: 12.375 * inch},
	}
	if err := start.now.cut(&start.layout); err != nil {
		b.Fatal(err)
	}
	for c := range start.stacks {
		start.stacks[c] = append(start.stacks[c][:0], slug{mud, start.now.channels[c].capacity})
	}
	for i := range 5 { // and ten fluids, or stacks as high
		start.Spot(Annulus, float64(100+300*i), float64(200+300*i), []int{spacer, heavy}[i%2])
	}
	leadVolume, tailVolume := ordered()
	total := 16 + leadVolume + tailVolume + 141.4
	w := start.Clone()
	steps, sum := 0, 0.0
	b.ReportAllocs()
	for b.Loop() {
		w.CopyFrom(start)
		steps = 0
		playJob(b, w, total/500, func(s Step) {
			p, _ := w.Pressure(Annulus, oldShoe)
			q, _ := w.Pressure(Annulus, shoe)
			sum += p + q + s.Pressure
			steps++
		})
	}
	b.ReportMetric(float64(steps), "steps")
	if math.IsNaN(sum) {
		b.Fatal("no number")
	}
}
