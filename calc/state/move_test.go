package state

import (
	"math"
	"strings"
	"testing"

	"borewalk/calc/bore"
)

// drill is a riser well of 1000 m with 600 m of one pipe in it.
func drill(t *testing.T, float bool) *Well {
	t.Helper()
	w, err := New(Layout{
		Bore:   bore.Profile{{Bottom: 300, Diameter: 0.5, Label: "riser"}, {Top: 300, Bottom: 1000, Diameter: 0.3, Label: "hole"}},
		String: []bore.Body{{Top: -50, Bottom: 600, OD: 0.2, ID: 0.15}},
		Float:  float,
		Return: ToRig(1),
		TVD:    func(md float64) float64 { return md },
	}, []Fluid{of("mud", 1200), of("trip tank", 1200), of("pill", 1400)}, 0)
	if err != nil {
		t.Fatal(err)
	}
	if err := w.Spot(Pocket, 600, 700, 2); err != nil {
		t.Fatal(err)
	}
	return w
}

// TestLowerClosed by hand: 100 m of 0.2 m pipe push pi/4 0.04 100 m³ out; the pill of
// 100 m in 0.3 m hole stands 0.09/0.05 times as high round the pipe.
func TestLowerClosed(t *testing.T) {
	w := drill(t, true)
	if down, err := w.Lower(100); err != nil || math.Abs(down-100) > 1e-6 {
		t.Fatalf("Lower = %v, %v", down, err)
	}
	near(t, "end", w.End(), 700, 1e-9)
	near(t, "returned", w.Account(0).Returned, math.Pi/4*0.2*0.2*100, 1e-9)
	near(t, "empty", w.Empty(), math.Pi/4*0.15*0.15*100, 1e-9)
	near(t, "level", w.Level(), 100, 1e-6)
	top, _ := w.Top(Annulus, 2)
	near(t, "top of the pill", top, 700-100*0.09/0.05, 1e-6)
	near(t, "pill left below", w.Volume(Pocket, 2), 0, 1e-9)
	if filled, err := w.Fill(10, 0); err != nil || math.Abs(filled-math.Pi/4*0.15*0.15*100) > 1e-9 {
		t.Errorf("Fill = %v, %v", filled, err)
	}
	near(t, "level when filled", w.Level(), 0, 0)
	if up, err := w.Raise(100); err != nil || math.Abs(up-100) > 1e-6 {
		t.Fatalf("Raise = %v, %v", up, err)
	}
	near(t, "back from the trip tank", w.Account(1).Back, math.Pi/4*0.2*0.2*100, 1e-9)
	near(t, "pulled with the pipe", w.Account(0).Drained, math.Pi/4*0.15*0.15*100, 1e-9)
	near(t, "pill below again", w.Volume(Pocket, 2), math.Pi/4*0.3*0.3*100, 1e-9)
}

// TestLowerOpen by hand: the steel alone is pushed out, and the pill goes up inside
// and outside by the ratio of 0.0225 to 0.09 - 0.0225.
func TestLowerOpen(t *testing.T) {
	w := drill(t, false)
	if _, err := w.Lower(100); err != nil {
		t.Fatal(err)
	}
	near(t, "returned", w.Account(0).Returned, math.Pi/4*(0.04-0.0225)*100, 1e-9)
	near(t, "level", w.Level(), 0, 0)
	near(t, "pill inside", w.Volume(Inside, 2), math.Pi/4*0.0225*100, 1e-9)
	near(t, "pill outside", w.Volume(Annulus, 2), math.Pi/4*(0.09-0.0225)*100, 1e-9)
	if _, err := w.Raise(100); err != nil {
		t.Fatal(err)
	}
	near(t, "back from the trip tank", w.Account(1).Back, math.Pi/4*(0.04-0.0225)*100, 1e-9)
	near(t, "pill below again", w.Volume(Pocket, 2), math.Pi/4*0.09*100, 1e-9)
}

// TestWiderInside: where the pipe that comes in at the top holds more than the
// pocket loses, the annulus gives the rest, and the outlet gives it back.
func TestWiderInside(t *testing.T) {
	w, err := New(Layout{
		Bore:   bore.Profile{{Bottom: 500, Diameter: 0.5}, {Top: 500, Bottom: 1000, Diameter: 0.15}},
		String: []bore.Body{{Top: -200, Bottom: 400, OD: 0.35, ID: 0.33}, {Top: 400, Bottom: 600, OD: 0.1, ID: 0.08}},
		Return: ToRig(1),
		TVD:    func(md float64) float64 { return md },
	}, []Fluid{of("mud", 1200), of("trip tank", 1200), of("pill", 1400)}, 0)
	if err != nil {
		t.Fatal(err)
	}
	if err := w.Spot(Pocket, 600, 1000, 2); err != nil {
		t.Fatal(err)
	}
	if _, err := w.Lower(50); err != nil {
		t.Fatal(err)
	}
	// What comes in holds 0.1089, what goes away above the end 0.0225, the rest is
	// mud; the pipe that comes in displaces 0.1225, and its bore lies within that.
	near(t, "pill inside", w.Volume(Inside, 2), math.Pi/4*0.0225*50, 1e-9)
	near(t, "returned", w.Account(0).Returned, math.Pi/4*(0.1225-0.1089)*50, 1e-9)
	near(t, "mud", w.Held(0)+w.Account(0).Returned, w.Account(0).Start, 1e-9)
}

func TestMovesStopAtTheEnds(t *testing.T) {
	w := drill(t, true)
	if down, err := w.Lower(1e6); err != nil || math.Abs(down-400) > 1e-5 {
		t.Errorf("Lower to the bottom = %v, %v, want 400", down, err)
	}
	near(t, "pocket on bottom", w.Capacity(Pocket), 0, 1e-6)
	if down, err := w.Lower(5); down != 0 || err != nil {
		t.Errorf("Lower on bottom = %v, %v", down, err)
	}
	if up, err := w.Raise(1e6); err != nil || math.Abs(up-1000) > 1e-5 {
		t.Errorf("Raise out of the hole = %v, %v, want 1000", up, err)
	}
	near(t, "hole", w.Capacity(Pocket), math.Pi/4*(0.25*300+0.09*700), 1e-4)
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		if _, err := w.Lower(bad); err == nil {
			t.Errorf("Lower(%v) is no error", bad)
		}
		if _, err := w.Raise(bad); err == nil {
			t.Errorf("Raise(%v) is no error", bad)
		}
	}
}

func TestStringThatDoesNotPass(t *testing.T) {
	w, err := New(Layout{
		Bore:   bore.Profile{{Bottom: 500, Diameter: 0.5}, {Top: 500, Bottom: 510, Diameter: 0.2}, {Top: 510, Bottom: 1000, Diameter: 0.5}},
		String: []bore.Body{{Bottom: 300, OD: 0.3, ID: 0.2}, {Top: 300, Bottom: 400, OD: 0.15, ID: 0.1}},
		TVD:    func(md float64) float64 { return md },
	}, []Fluid{of("mud", 1200)}, 0)
	if err != nil {
		t.Fatal(err)
	}
	if down, err := w.Lower(200); err != nil || math.Abs(down-200) > 1e-6 {
		t.Fatalf("Lower to the restriction = %v, %v", down, err)
	}
	before := w.Clone()
	// The wide part would stand below the restriction, but has to go through it.
	down, err := w.Lower(400)
	if err == nil || down != 0 || !strings.Contains(err.Error(), "from 500.00 m to 510.00 m") {
		t.Errorf("Lower through the restriction = %v, %v", down, err)
	}
	same(t, w, before, 0)
}

// TestBandsStayFew: pulled open in many small lifts with one fluid inside and another
// outside, the string leaves two bands in the pocket, not hundreds.
func TestBandsStayFew(t *testing.T) {
	w := drill(t, false)
	if err := w.Spot(Inside, 0, 600, 2); err != nil {
		t.Fatal(err)
	}
	for range 200 {
		if _, err := w.Raise(1); err != nil {
			t.Fatal(err)
		}
	}
	layers := w.AppendLayers(nil, Pocket)
	if len(layers) > 4 {
		t.Errorf("%d layers: %+v", len(layers), layers)
	}
	near(t, "pill in the pocket", w.Volume(Pocket, 2), math.Pi/4*(0.09*100+0.0225*200), 1e-6)
}

// TestPocketTakesMoreThanTheAnnulusHolds: in one long lift of a wide string, what
// flows in at the outlet goes down the whole annulus and into the pocket.
func TestPocketTakesMoreThanTheAnnulusHolds(t *testing.T) {
	for _, float := range []bool{false, true} {
		w, err := New(Layout{
			Bore:   bore.Profile{{Bottom: 1000, Diameter: 0.3}},
			String: []bore.Body{{Bottom: 600, OD: 0.28, ID: 0.05}},
			Float:  float,
			Return: ToRig(1),
			TVD:    func(md float64) float64 { return md },
		}, []Fluid{of("mud", 1200), of("trip tank", 1200)}, 0)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Raise(400); err != nil {
			t.Fatal(err)
		}
		steel := 0.28 * 0.28
		if !float {
			steel -= 0.05 * 0.05
		}
		near(t, "back from the trip tank", w.Account(1).Back, math.Pi/4*steel*400, 1e-4)
		near(t, "pocket", w.Volume(Pocket, 0)+w.Volume(Pocket, 1), math.Pi/4*0.09*800, 1e-4)
		near(t, "annulus", w.Volume(Annulus, 1), w.Capacity(Annulus), 1e-4)
	}
}
