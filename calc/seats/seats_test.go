package seats

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewalk/calc/column"
)

func close(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance }

// flat returns a curve that is the same at all depths.
func flat(emw float64) Curve { return func(float64) (float64, bool) { return emw, true } }

// line returns a curve with a value at the rotary and so much more per metre.
func line(at0, growth float64) Curve {
	return func(tvd float64) (float64, bool) { return at0 + growth*tvd, true }
}

// table returns the curve through rows, given as depth and value in turn.
func table(t testing.TB, pairs ...float64) column.Curve {
	t.Helper()
	var rows []column.Row
	for i := 0; i+1 < len(pairs); i += 2 {
		rows = append(rows, column.Row{TVD: pairs[i], Value: pairs[i+1]})
	}
	curve, err := column.NewCurve(rows)
	if err != nil {
		t.Fatal(err)
	}
	return curve
}

// through returns the curve through rows.
func through(t testing.TB, pairs ...float64) Curve { return table(t, pairs...).At }

// depthsOf returns the seats of a proposal, and its first shoe before them.
func depthsOf(p Proposal) (depths []float64) {
	for i, h := range p.Holes {
		if i == 0 {
			depths = append(depths, h.Shoe)
		}
		depths = append(depths, h.Bottom)
	}
	return depths
}

func expect(t *testing.T, what string, p Proposal, tolerance float64, want ...float64) {
	t.Helper()
	if got := depthsOf(p); !slices.EqualFunc(got, want, func(a, b float64) bool { return close(a, b, tolerance) }) {
		t.Errorf("%s: %v, want %v; %+v", what, got, want, p)
	}
}

// failing is a test of either kind.
type failing interface {
	Helper()
	Fatal(args ...any)
}

func must(t failing) func(Proposal, error) Proposal {
	return func(p Proposal, err error) Proposal {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
}

// straight is pore pressure 950 + 0.1 z against fracture pressure 1100 + 0.2 z, from 200 to 4000 m. With margins of 20 and 30 a
// hole from s to b can be drilled where 970 + 0.1 b <= 1070 + 0.2 s, so b <= 1000 + 2 s.
func straight() (Window, Margins) {
	return Window{Pore: line(950, 0.1), Fracture: line(1100, 0.2), Top: 200, Bottom: 4000}, Margins{Trip: 20, Fracture: 30}
}

// TestStraightLinesByHand: up from 4000 m the shoes are at (4000 - 1000) / 2 = 1500 and at 250 m, from where 200 m lies within
// a hole; down from 200 m the seats are at 1400 and 3800 m.
func TestStraightLinesByHand(t *testing.T) {
	w, m := straight()
	up := must(t)(BottomUp(w, m))
	expect(t, "up", up, 1e-6, 200, 250, 1500, 4000)
	down := must(t)(TopDown(w, m, 200))
	expect(t, "down", down, 1e-6, 200, 1400, 3800, 4000)
	if !up.Whole || up.Reached != 200 || !down.Whole || down.Reached != 4000 {
		t.Errorf("up %+v, down %+v", up, down)
	}
	last := up.Holes[2] // 970 + 400 = 1370 is what the fracture pressure at 1500 m, 1400, leaves
	if last.Stop.Reason != Closed {
		t.Errorf("%+v", last)
	}
	check := func(what string, b Bound, by By, tvd, value, mud float64) {
		t.Helper()
		if b.By != by || !close(b.TVD, tvd, 1e-6) || !close(b.Value, value, 1e-6) || !close(b.Mud, mud, 1e-6) {
			t.Errorf("%s: %+v, want %v at %g m, %g, mud %g", what, b, by, tvd, value, mud)
		}
	}
	check("least", last.Least, ByPore, 4000, 1350, 1370)
	check("most", last.Most, ByFracture, 1500, 1400, 1370)
	check("needs", last.Stop.Needs, ByPore, 4000, 1350, 1370)
	check("stands", last.Stop.Stands, ByFracture, 1500, 1400, 1370)
	check("down, least", down.Holes[2].Least, ByPore, 4000, 1350, 1370)
	check("down, most", down.Holes[2].Most, ByFracture, 3800, 1860, 1830)
	if reasons := [3]Reason{up.Holes[0].Stop.Reason, down.Holes[0].Stop.Reason, down.Holes[2].Stop.Reason}; reasons != [3]Reason{AtTop, Closed, AtBottom} {
		t.Errorf("reasons %v", reasons)
	}
	expect(t, "down from 1000 m", must(t)(TopDown(w, m, 1000)), 1e-6, 1000, 3000, 4000)
}

// TestKickByHand: with a kick of 20 a hole can be drilled where 970 + 0.1 b <= 1070 + 0.2 s - 20 b / s. Up from 4000 m:
// 0.2 s² - 300 s - 80000 = 0. Down from 200 m: b = (100 + 0.2 s) / (0.1 + 20 / s).
func TestKickByHand(t *testing.T) {
	w, m := straight()
	m.Kick = 20
	up := must(t)(BottomUp(w, m))
	shoe := (300 + math.Sqrt(90000+4*0.2*80000)) / 0.4
	above := up.Holes[len(up.Holes)-1]
	if !close(above.Shoe, shoe, 1e-5) || above.Most.By != ByKick || !close(above.Most.TVD, shoe, 1e-5) ||
		!close(above.Most.Mud, above.Most.Value-30-20*4000/shoe, 1e-6) {
		t.Errorf("up: %+v, want a shoe at %g m", above, shoe)
	}
	for _, from := range []float64{500, 1000, 1500} {
		down := must(t)(TopDown(w, m, from))
		if seat := (100 + 0.2*from) / (0.1 + 20/from); !close(down.Holes[0].Bottom, seat, 1e-5) {
			t.Errorf("down from %g m: %+v, want a seat at %g m", from, down, seat)
		}
	}
}

// TestConstantGradients: with 1000 for pore and 1500 for fracture pressure one hole does for all, as long as the margins leave
// anything; if they do not, none does. A kick of k needs shoes that follow each other as k to what is left.
func TestConstantGradients(t *testing.T) {
	w := Window{Pore: flat(1000), Fracture: flat(1500), Top: 300, Bottom: 3000}
	for _, trip := range []float64{0, 100, 300} {
		for _, fracture := range []float64{0, 200, 300} {
			m := Margins{Trip: trip, Fracture: fracture}
			up, down := must(t)(BottomUp(w, m)), must(t)(TopDown(w, m, 300))
			if trip+fracture <= 500 {
				expect(t, "up", up, 0, 300, 3000)
				expect(t, "down", down, 0, 300, 3000)
				continue
			}
			for _, p := range []Proposal{up, down} {
				if len(p.Holes) != 0 || p.Whole || p.Stop.Reason != Closed || p.Stop.Needs.Mud != 1000+trip || p.Stop.Stands.Mud != 1500-fracture {
					t.Errorf("margins %g and %g: %+v", trip, fracture, p)
				}
			}
			if up.Reached != 3000 || down.Reached != 300 {
				t.Errorf("reached %g and %g", up.Reached, down.Reached)
			}
		}
	}
	m := Margins{Trip: 50, Fracture: 50, Kick: 200} // 400 are left: each shoe half as deep as the next
	expect(t, "up", must(t)(BottomUp(w, m)), 1e-5, 300, 375, 750, 1500, 3000)
	expect(t, "down", must(t)(TopDown(w, m, 300)), 1e-5, 300, 600, 1200, 2400, 3000)
}

// TestAWindowThatCloses: pore pressure grows by 0.2 and fracture pressure by 0.1 from 1000 and 1300, so that they meet at
// 3000 m. Down from a shoe each hole gets half of what is left to there; up from below there is none.
func TestAWindowThatCloses(t *testing.T) {
	w := Window{Pore: line(1000, 0.2), Fracture: line(1300, 0.1), Top: 1000, Bottom: 3500}
	up := must(t)(BottomUp(w, Margins{}))
	if len(up.Holes) != 0 || up.Whole || up.Reached != 3500 || up.Stop.Reason != Closed || up.Stop.Needs != (Bound{ByPore, 3500, 1700, 1700}) {
		t.Errorf("up: %+v", up)
	}
	down := must(t)(TopDown(w, Margins{}, 1000))
	for i, h := range down.Holes {
		if want := 3000 - 2000/math.Pow(2, float64(i+1)); !close(h.Bottom, want, 1e-5) {
			t.Errorf("hole %d ends at %g, want %g", i+1, h.Bottom, want)
		}
	}
	if down.Whole || len(down.Holes) != 10 || down.Stop.Reason != Closed || !close(down.Reached, 3000-2000/1024., 1e-3) ||
		!(down.Stop.Needs.Mud > down.Stop.Stands.Mud) {
		t.Errorf("down: %d holes, %+v", len(down.Holes), down)
	}
}

// TestANarrowWindow: pore pressure 1000 + 0.1 z with 1 left above it takes a hole every 10 m.
func TestANarrowWindow(t *testing.T) {
	w := Window{Pore: line(1000, 0.1), Fracture: line(1001, 0.1), Top: 1000, Bottom: 2000}
	up, down := must(t)(BottomUp(w, Margins{})), must(t)(TopDown(w, Margins{}, 1000))
	if up.Whole || up.Stop.Reason != TooMany || len(up.Holes) != mostHoles || !close(up.Reached, 1800, 1e-3) {
		t.Errorf("up: %d holes to %g, %v", len(up.Holes), up.Reached, up.Stop)
	}
	if down.Whole || down.Stop.Reason != TooMany || len(down.Holes) != mostHoles || !close(down.Reached, 1200, 1e-3) {
		t.Errorf("down: %d holes to %g, %v", len(down.Holes), down.Reached, down.Stop)
	}
}

// TestTheRiserlessHoleIsNoneOfThem: a hole of a metre that is open to the sea comes before as many holes with mud as there may be.
func TestTheRiserlessHoleIsNoneOfThem(t *testing.T) {
	w := Window{Pore: line(1000, 0.1), Fracture: line(1001, 0.1), Riserless: through(t, 1000, 1100.5, 1201, 1200), Top: 1000, Bottom: 1201}
	for _, p := range []Proposal{must(t)(BottomUp(w, Margins{})), must(t)(TopDown(w, Margins{}, 1000))} {
		if !p.Whole || len(p.Holes) != mostHoles+1 || !p.Holes[0].Riserless {
			t.Errorf("%v, %v", depthsOf(p), p.Stop)
		}
	}
	w.Riserless = through(t, 1000, 1100.6, 1201, 1200) // too heavy before a metre is drilled
	if p := must(t)(TopDown(w, Margins{}, 1000)); p.Holes[0].Riserless {
		t.Errorf("%+v", p.Holes[0])
	}
}

// TestAStretchOnWhichNothingIsLeft: a weak zone at 2000 m stands exactly the 1300 that a shale from 2500 m on needs, so that a
// hole that reaches up past it has one mud. It ends only where fracture pressure is less: 950 m.
func TestAStretchOnWhichNothingIsLeft(t *testing.T) {
	w := Window{Pore: flat(1000), Fracture: through(t, 900, 1200, 1000, 1400, 2000, 1300, 3000, 1500), Stability: through(t, 2500, 1300, 3000, 1300),
		Depths: []float64{1000, 2000, 2500}, Top: 900, Bottom: 3000}
	p := must(t)(BottomUp(w, Margins{}))
	expect(t, "up", p, 1e-6, 900, 950, 3000)
	if h := p.Holes[1]; h.Most.Mud != 1300 || h.Least.Mud != 1300 {
		t.Errorf("%+v", h)
	}
}

// TestAWeakZoneBelowTheShoe: what is weaker below the shoe limits as well. Fracture pressure falls from 1500 at 1000 m to 1300
// at 1500 m and is 1600 at 2000 m. A hole to 2500 m, where pore pressure and margin are 1360, must begin below where 1360 is
// stood again: 1500 + 500 × 60 / 300 = 1600 m.
func TestAWeakZoneBelowTheShoe(t *testing.T) {
	w := Window{Pore: through(t, 1000, 1100, 2500, 1350), Fracture: through(t, 1000, 1500, 1500, 1300, 2000, 1600, 2500, 1700),
		Depths: []float64{1000, 1500, 2000, 2500}, Top: 1000, Bottom: 2500}
	p := must(t)(BottomUp(w, Margins{Trip: 10}))
	expect(t, "up", p, 1e-6, 1000, 1600, 2500)
	if h := p.Holes[1]; h.Most.By != ByFracture || !close(h.Most.TVD, 1600, 1e-6) {
		t.Errorf("%+v", h)
	}
	h, err := Between(w, Margins{Trip: 10}, 1000, 2500)
	if err != nil || h.Stop.Reason != Closed || h.Stop.Stands != (Bound{ByFracture, 1500, 1300, 1300}) {
		t.Errorf("%+v, %v", h, err)
	}
}

// TestStabilityThatBeginsAtOnce: a shale from 2000 to 2400 m needs 1500, and nothing above and below it is known. The hole above
// ends at its top, and the seats up and down come to lie there as fracture pressure at 2000 m, 1520, stands it.
func TestStabilityThatBeginsAtOnce(t *testing.T) {
	w := Window{Pore: flat(1030), Fracture: through(t, 1000, 1420, 2000, 1520, 3000, 1620), Stability: through(t, 2000, 1500, 2400, 1500),
		Depths: []float64{1000, 2000, 2400, 3000}, Top: 1000, Bottom: 3000}
	m := Margins{Trip: 20, Fracture: 30} // stands 1500 from 2100 m on: too deep
	down := must(t)(TopDown(w, m, 1000))
	if down.Whole || down.Stop.Reason != Closed || len(down.Holes) != 1 || !close(down.Reached, 2000, 1e-6) || down.Stop.Needs.By != ByStability {
		t.Errorf("down: %+v", down)
	}
	if s := down.Holes[0].Stop; s.Needs != (Bound{ByStability, 2000, 1500, 1500}) || !close(s.Stands.Mud, 1390, 1e-9) {
		t.Errorf("stopped by %+v", s)
	}
	up := must(t)(BottomUp(w, m))
	if up.Whole || len(up.Holes) != 1 || !close(up.Reached, 2100, 1e-6) {
		t.Errorf("up: %+v", up)
	}
	m.Fracture = 20
	down = must(t)(TopDown(w, m, 1000))
	expect(t, "down", down, 1e-6, 1000, 2000, 3000)
	m.Fracture = 10 // 1500 is stood from 1900 m on
	expect(t, "up", must(t)(BottomUp(w, m)), 1e-6, 1000, 1900, 3000)
}

// TestDifferentialSticking: over a pore pressure of 1000 all the way 10 MPa leave 1000 + 10e6 / (g z). Where pore pressure is
// 1000 + 0.2 (z - 1000), mud is limited most at the root of 10e6 / (0.2 g): 2258 m.
func TestDifferentialSticking(t *testing.T) {
	w := Window{Pore: flat(1000), Fracture: flat(2500), Stability: through(t, 3000, 1400, 4000, 1400), Depths: []float64{3000}, Top: 500, Bottom: 4000}
	m := Margins{Differential: 10e6}
	down := must(t)(TopDown(w, m, 500))
	// At 10e6 / (400 g) = 2549 m mud of 1400 presses as much: no hole gets through what needs it.
	if down.Whole || !close(down.Reached, 3000, 1e-6) || down.Stop.Stands.By != ByDifferential {
		t.Errorf("%+v", down)
	}
	w = Window{Pore: line(800, 0.2), Fracture: flat(2500), Top: 1000, Bottom: 4000}
	h, err := Between(w, m, 1000, 4000)
	z := math.Sqrt(10e6 / (0.2 * column.G))
	if err != nil || h.Most.By != ByDifferential || !close(h.Most.TVD, z, 1e-6) || !close(h.Most.Mud, 800+0.2*z+10e6/(column.G*z), 1e-9) {
		t.Errorf("%+v, want %g m", h, z)
	}
	for tvd := 1000.0; tvd <= 4000; tvd++ { // pressures, one by one
		pore, _ := w.Pore(tvd)
		if column.PressureOf(h.Most.Mud, tvd)-column.PressureOf(pore, tvd) > 10e6+1e-3 {
			t.Errorf("over 10 MPa at %g m", tvd)
		}
	}
}

// TestOpenToTheSea: pore pressure is a little under the sea's down to 1000 m and grows by 0.2 below that. The sea does for it to
// where 1025 (z - 25) / z is 795 + 0.2 z, with 4 asked for over it to where that is 799 + 0.2 z. Mud of 1600 from the seabed at
// 325 m is too heavy for the fracture pressure before it is too light.
func TestOpenToTheSea(t *testing.T) {
	sea := func(tvd float64) (float64, bool) { return 1025 * (tvd - 25) / tvd, true }
	w := Window{Pore: through(t, 385, 950, 1000, 995, 3000, 1395), Fracture: through(t, 385, 1100, 1000, 1500, 3000, 1900), Riserless: sea,
		Depths: []float64{385, 1000, 3000}, Top: 385, Bottom: 3000}
	m := Margins{Trip: 20, Fracture: 30}
	// 1025 - 25625 / z = 795 + 0.2 z: 0.2 z² - 230 z + 25625 = 0
	deepest := (230 + math.Sqrt(230*230-0.8*25625)) / 0.4
	down := must(t)(TopDown(w, m, 385))
	if h := down.Holes[0]; !h.Riserless || !close(h.Bottom, deepest, 1e-5) || h.Stop.Reason != FluidEnds || h.Stop.Needs.By != ByPore ||
		h.Stop.Stands.By != ByRiserless || !close(h.Stop.Needs.Mud, h.Stop.Stands.Mud, 1e-6) {
		t.Errorf("%+v, want riserless to %g m", h, deepest)
	}
	m.Riserless = 4
	deepest = (226 + math.Sqrt(226*226-0.8*25625)) / 0.4
	if h := must(t)(TopDown(w, m, 385)).Holes[0]; !close(h.Bottom, deepest, 1e-5) {
		t.Errorf("%+v, want riserless to %g m", h, deepest)
	}
	// The last shoe: 1415 = fracture - 30 at 1000 × 0.65 x + 1100: z = 385 + 345 × 615 / 400 = 915.4 m, within reach of the sea.
	up := must(t)(BottomUp(w, m))
	expect(t, "up", up, 1e-3, 385, 915.4375, 3000)
	if !up.Holes[0].Riserless || up.Holes[1].Riserless || !up.Whole {
		t.Errorf("%+v", up)
	}
	w.Riserless = func(tvd float64) (float64, bool) { return (1025*300 + 1600*(tvd-325)) / tvd, true }
	down = must(t)(TopDown(w, m, 385))
	if h := down.Holes[0]; !h.Riserless || h.Stop.Stands.By != ByFracture {
		t.Errorf("%+v", h)
	} else if fluid, _ := w.Riserless(h.Bottom); !close(fluid, 1100+(h.Bottom-385)*400/615, 1e-6) {
		t.Errorf("%+v: fluid %g", h, fluid)
	}
	w.Riserless = flat(900)                                                            // too light from the start
	expect(t, "too light", must(t)(TopDown(w, Margins{}, 385)), 1e-6, 385, 1525, 3000) // 1100 = 795 + 0.2 z
}

// TestTolerance: a further condition that no hole may be longer than 700 m takes holes of 700 m from whichever end; one that
// never holds stops all.
func TestTolerance(t *testing.T) {
	w, m := straight()
	m.Tolerance = func(shoe, bottom, mud float64) bool {
		if pore, _ := w.Pore(bottom); !(bottom > shoe) || !close(mud, pore+20, 1e-9) {
			t.Fatalf("asked of a hole from %g to %g m with mud of %g", shoe, bottom, mud)
		}
		return bottom-shoe <= 700
	}
	up := must(t)(BottomUp(w, m))
	expect(t, "up", up, 0.1, 200, 500, 1200, 1900, 2600, 3300, 4000)
	expect(t, "down", must(t)(TopDown(w, m, 200)), 0.1, 200, 900, 1600, 2300, 3000, 3700, 4000)
	if r := up.Holes[2].Stop.Reason; r != KickTolerance {
		t.Errorf("stopped by %v", r)
	}
	if h, err := Between(w, m, 3000, 4000); err != nil || h.Stop.Reason != KickTolerance {
		t.Errorf("%+v, %v", h, err)
	}
	closed := Margins{Trip: 20, Fracture: 1000, Tolerance: m.Tolerance}
	if p := must(t)(BottomUp(w, closed)); p.Stop.Reason != Closed {
		t.Errorf("%+v", p)
	}
	m.Tolerance = func(float64, float64, float64) bool { return false }
	for _, p := range []Proposal{must(t)(BottomUp(w, m)), must(t)(TopDown(w, m, 200))} {
		if len(p.Holes) > 0 || p.Whole || p.Stop.Reason != KickTolerance {
			t.Errorf("%+v", p)
		}
	}
}

// TestWrongInput: each is answered by one line that says where.
func TestWrongInput(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good, _ := straight()
	for what, c := range map[string]struct {
		change func(*Window, *Margins)
		says   string
	}{
		"no curve":       {func(w *Window, _ *Margins) { w.Fracture = nil }, "fracture pressure is missing"},
		"short curve":    {func(w *Window, _ *Margins) { w.Pore = through(t, 300, 1000, 4000, 1300) }, "pore pressure has no value at 200.00 m"},
		"no number":      {func(w *Window, _ *Margins) { w.Stability = flat(nan) }, "stability has no value"},
		"no sea":         {func(w *Window, _ *Margins) { w.Riserless = flat(inf) }, "riserless fluid has no value"},
		"upside down":    {func(w *Window, _ *Margins) { w.Bottom = 100 }, "is no well"},
		"above":          {func(w *Window, _ *Margins) { w.Top = 0 }, "is no well"},
		"not a depth":    {func(w *Window, _ *Margins) { w.Top = nan }, "is no well"},
		"endless":        {func(w *Window, _ *Margins) { w.Bottom = inf }, "is no well"},
		"margin":         {func(_ *Window, m *Margins) { m.Trip = -1 }, "trip margin is -1"},
		"kick":           {func(_ *Window, m *Margins) { m.Kick = nan }, "kick is NaN"},
		"riserless":      {func(_ *Window, m *Margins) { m.Riserless = inf }, "margin of the riserless fluid"},
		"shoe below TD":  {func(w *Window, _ *Margins) { w.Bottom = 450 }, "is not within the well"},
		"shoe above top": {func(w *Window, _ *Margins) { w.Top = 600 }, "is not within the well"},
	} {
		w, m := good, Margins{}
		c.change(&w, &m)
		_, err1 := TopDown(w, m, 500)
		_, err2 := Between(w, m, 500, 1000)
		_, err3 := BottomUp(w, m)
		for i, err := range []error{err1, err2, err3} {
			if ofTheShoe := strings.HasPrefix(what, "shoe"); ofTheShoe && i == 2 {
				continue
			}
			if err == nil || !strings.Contains(err.Error(), c.says) || strings.Contains(err.Error(), "\n") {
				t.Errorf("%s: %v, want %q", what, err, c.says)
			}
		}
	}
}

// TestNames: each reason and each bound is called something of its own.
func TestNames(t *testing.T) {
	seen := map[string]bool{}
	for r := Free; r <= TooMany; r++ {
		seen[r.String()] = true
	}
	for b := ByPore; b <= ByRiserless; b++ {
		seen["by "+b.String()] = true
	}
	if len(seen) != int(TooMany)+1+int(ByRiserless) {
		t.Errorf("%v", seen)
	}
}
