package state

import (
	"math"
	"strings"
	"testing"

	"borewalk/calc/bore"
)

func TestLayoutsThatDoNotFit(t *testing.T) {
	good := func() (Layout, []Fluid) {
		return Layout{
			Bore:   bore.Profile{{Bottom: 1000, Diameter: 0.4}},
			String: []bore.Body{{Bottom: 500, OD: 0.2, ID: 0.1}, {Top: 500, Bottom: 800, OD: 0.15, ID: 0.1}},
			TVD:    func(md float64) float64 { return md },
		}, []Fluid{of("mud", 1200)}
	}
	l, f := good()
	if _, err := New(l, f, 0); err != nil {
		t.Fatal(err)
	}
	nan := math.NaN()
	for want, spoil := range map[string]func(l *Layout, f *[]Fluid){
		"no true vertical depth":   func(l *Layout, _ *[]Fluid) { l.TVD = nil },
		"depth at 1000.00 m is no": func(l *Layout, _ *[]Fluid) { l.TVD = func(md float64) float64 { return math.Sqrt(999 - md) } },
		"no fluids":                func(_ *Layout, f *[]Fluid) { *f = nil },
		`fluid 0 "mud"`:            func(_ *Layout, f *[]Fluid) { (*f)[0].Density = nan },
		"no spans":                 func(l *Layout, _ *[]Fluid) { l.Bore = nil },
		"string has no length":     func(l *Layout, _ *[]Fluid) { l.String = nil },
		"has a gap from 450.00":    func(l *Layout, _ *[]Fluid) { l.String[0].Bottom = 450 },
		"has no bore":              func(l *Layout, _ *[]Fluid) { l.String[1].ID = 0 },
		"reach the rotary":         func(l *Layout, _ *[]Fluid) { l.String[0].Top = 3 },
		"bottom of the hole":       func(l *Layout, _ *[]Fluid) { l.String[1].Bottom = 1001 },
		"above the rotary; lower":  func(l *Layout, _ *[]Fluid) { l.String = []bore.Body{{Top: -9, Bottom: -1, OD: 0.2, ID: 0.1}} },
		"does not fit into 0.4000": func(l *Layout, _ *[]Fluid) { l.String[0].OD = 0.4 },
		"not inside the string":    func(l *Layout, _ *[]Fluid) { l.Inner = []bore.Body{{Top: 10, Bottom: 900, OD: 0.05, ID: 0.04}} },
		"inner string at 11.00 m has": func(l *Layout, _ *[]Fluid) {
			l.Inner = []bore.Body{{Top: 10, Bottom: 11, OD: 0.05, ID: 0.04}, {Top: 11, Bottom: 20, OD: 0.05}}
		},
		"between the strings at 600": func(l *Layout, _ *[]Fluid) { l.Inner = []bore.Body{{Top: 600, Bottom: 700, OD: 0.1, ID: 0.04}} },
		"above the bore":             func(l *Layout, _ *[]Fluid) { l.Bore[0].Top = 300 },
		"below the end of the":       func(l *Layout, _ *[]Fluid) { l.Return.MD = 850 },
		"back pressure is not":       func(l *Layout, _ *[]Fluid) { l.Return.BackPressure = nan },
		"fluid has number 1, which":  func(l *Layout, _ *[]Fluid) { l.Return.Fluid = 1 },
		"return line ends at 200":    func(l *Layout, _ *[]Fluid) { l.Return.Line = bore.Profile{{Bottom: 200, Diameter: 0.1}} },
		"-1 return lines side by":    func(l *Layout, _ *[]Fluid) { l.Return.Lines = -1 },
		"99 return lines side by":    func(l *Layout, _ *[]Fluid) { l.Return.Lines = 99 },
		"a factor of -1 on the":      func(l *Layout, _ *[]Fluid) { l.Return.Rub = -1 },
		"a factor of NaN on the":     func(l *Layout, _ *[]Fluid) { l.Return.Rub = nan },
		"return line: bore span 1":   func(l *Layout, _ *[]Fluid) { l.Return.Line = bore.Profile{{Bottom: 200}} },
	} {
		l, f := good()
		spoil(&l, &f)
		if _, err := New(l, f, 0); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want an error with %q, got %v", want, err)
		}
	}
	if _, err := New(l, f, 1); err == nil {
		t.Error("full of a fluid that is not there: no error")
	}
}

func TestSpot(t *testing.T) {
	w := hung(t, nil)
	if err := w.Spot(Annulus, 300, 500, 1); err != nil {
		t.Fatal(err)
	}
	if err := w.Spot(Annulus, 400, 2000, 0); err != nil {
		t.Fatal(err)
	}
	want := []Layer{{0, 300, 0, 300 * boreArea}, {300, 400, 1, 100 * boreArea}, {400, 1000, 0, 600 * boreArea}}
	got := w.AppendLayers(nil, Annulus)
	if len(got) != len(want) {
		t.Fatalf("layers %+v, want %+v", got, want)
	}
	for i := range want {
		if got[i].Fluid != want[i].Fluid || math.Abs(got[i].Bottom-want[i].Bottom) > 1e-9 || math.Abs(got[i].Volume-want[i].Volume) > 1e-9 {
			t.Errorf("layer %d: %+v, want %+v", i, got[i], want[i])
		}
	}
	near(t, "heavy", w.Account(1).Start, 100*boreArea+200*pipeArea, 1e-9)
	near(t, "held", w.Held(0)+w.Held(1), w.Capacity(Inside)+w.Capacity(Annulus), 1e-9)
	for name, err := range map[string]error{
		"no such fluid":   w.Spot(Annulus, 0, 1, 7),
		"no such conduit": w.Spot(9, 0, 1, 0),
		"upside down":     w.Spot(Annulus, 10, 1, 0),
		"no depth":        w.Spot(Annulus, math.NaN(), 1, 0),
	} {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// TestInnerString: a surface casing cemented to the seabed through drill pipe hung
// in it, by the demo well Ottermast-2's figures and plain arithmetic.
func TestInnerString(t *testing.T) {
	const seabed, top, shoe, foot, bottom = 368.0, 364.8, 950.0, 932.0, 955.0
	w, err := New(Layout{
		Bore:   bore.Profile{{Top: seabed, Bottom: 444, Diameter: 33 * inch}, {Top: 444, Bottom: bottom, Diameter: 24 * inch}},
		String: []bore.Body{{Bottom: top, OD: 5.875 * inch, ID: 5.153 * inch}, {Top: top, Bottom: shoe, OD: 18.625 * inch, ID: 17.755 * inch}},
		Inner:  []bore.Body{{Top: top, Bottom: foot, OD: 5.875 * inch, ID: 5.153 * inch}},
		Return: ToSea(seabed, 342, 1030, 0),
		TVD:    func(md float64) float64 { return md },
	}, []Fluid{of("sea water", 1030), of("slurry", 1560)}, 0)
	if err != nil {
		t.Fatal(err)
	}
	pipe, casing := square(5.153, 0), square(17.755, 0)
	annulus := (444-seabed)*square(33, 18.625) + (shoe-444)*square(24, 18.625)
	near(t, "inside", w.Capacity(Inside), foot*pipe+(shoe-foot)*casing, 1e-9)
	near(t, "between", w.Capacity(Between), (foot-top)*square(17.755, 5.875), 1e-9)
	near(t, "annulus", w.Capacity(Annulus), annulus, 1e-9)
	sea := 1030 * 9.80665 * 342
	near(t, "pressure at the seabed", pressure(t, w, Annulus, seabed), sea, 1e-3)
	near(t, "balance of sea water", w.Balance(), -1030*9.80665*26, 1e-3) // the string is full to the rotary
	must(t, w, annulus+(shoe-foot)*casing, 1)
	must(t, w, foot*pipe, 0)
	near(t, "slurry at the seabed", w.Account(1).Returned, 0, 1e-9)
	near(t, "top of slurry", w.AppendLayers(nil, Annulus)[0].Bottom, shoe, 1e-6)
	mark, _ := w.Top(Inside, 1)
	near(t, "top of slurry inside", mark, foot, 1e-6)
	atShoe := sea + 1560*9.80665*(shoe-seabed)
	near(t, "pressure at the shoe", pressure(t, w, Annulus, shoe), atShoe, 1e-3)
	atFoot := atShoe - 1560*9.80665*(shoe-foot)
	near(t, "pressure at the inner string's end", pressure(t, w, Inside, foot), atFoot, 1e-3)
	near(t, "between, at its foot", pressure(t, w, Between, foot), atFoot, 1e-3)
	near(t, "between, at its top", pressure(t, w, Between, top), atFoot-1030*9.80665*(foot-top), 1e-3)
	must(t, w, 1, 0)
	near(t, "slurry to the seabed", w.Account(1).Returned, 1, 1e-9)
	near(t, "between stands", w.Volume(Between, 0), w.Capacity(Between), 1e-9)
}

// TestThroughTheChokeLine: the annulus ends at the stack and goes on in a line.
func TestThroughTheChokeLine(t *testing.T) {
	w, err := New(Layout{
		Bore:     bore.Profile{{Bottom: 350, Diameter: 0.5}, {Top: 350, Bottom: 1000, Diameter: 0.3}},
		String:   []bore.Body{{Bottom: 1000, OD: 0.1, ID: 0.08}},
		Return:   Return{MD: 350, Line: bore.Profile{{Bottom: 350, Diameter: 0.0762}}, BackPressure: 3e6},
		TVD:      func(md float64) float64 { return md },
		Friction: linear{0},
	}, []Fluid{of("mud", 1200), of("gas", 200)}, 0)
	if err != nil {
		t.Fatal(err)
	}
	line := math.Pi / 4 * 0.0762 * 0.0762
	near(t, "annulus", w.Capacity(Annulus), 350*line+650*math.Pi/4*0.08, 1e-9)
	if err := w.Spot(Annulus, 340, 360, 1); err != nil {
		t.Fatal(err)
	}
	near(t, "gas", w.Volume(Annulus, 1), 10*line+10*math.Pi/4*0.08, 1e-9)
	near(t, "pressure at the end", pressure(t, w, Annulus, 1000), 3e6+gravity*(1200*980+200*20), 1e-3)
	must(t, w, 340*line, 0)
	top, _ := w.Top(Annulus, 1)
	near(t, "gas at the choke", top, 0, 1e-6)
}

// TestReverse: what is pumped down the annulus comes up the string, and pressures
// begin at the string's top.
func TestReverse(t *testing.T) {
	w := hung(t, linear{1e4})
	if _, err := w.Reverse(3, 1); err != nil {
		t.Fatal(err)
	}
	near(t, "heavy out of the string", w.Account(1).Drained, 3, 1e-9)
	mark := w.AppendLayers(nil, Annulus)
	near(t, "heavy in the annulus", mark[0].Bottom, 3/boreArea, 1e-6)
	if err := w.SetFlow(-0.02); err != nil {
		t.Fatal(err)
	}
	inside := gravity * (1500*(200-3/pipeArea) + 1000*(800+3/pipeArea))
	annulus := gravity * (1500*3/boreArea + 1000*(1000-3/boreArea))
	near(t, "top of the string", pressure(t, w, Inside, 0), 0, 1e-6)
	near(t, "end of the string", pressure(t, w, Annulus, 1000), inside, 1e-3)
	near(t, "pump at the outlet", w.PumpPressure(), inside-annulus+1e4*0.02*1000, 1e-3)
	near(t, "outlet", pressure(t, w, Annulus, 0), w.Balance(), 1e-3)
	w.layout.Float = true
	if _, err := w.Reverse(1, 0); err == nil {
		t.Error("Reverse against a float is no error")
	}
}

func TestClonesGoTheirOwnWay(t *testing.T) {
	w := ottermast(t, 0.3)
	v := w.Clone()
	cementUp(t, v, 5)
	u := ottermast(t, 0.3)
	same(t, w, u, 0)
	if got := len(w.AppendPlugs(nil)); got != 0 || w.Account(lead) != (Account{}) {
		t.Errorf("the first well has %d plugs and pumped %+v", got, w.Account(lead))
	}
	w.CopyFrom(v)
	w.CopyFrom(w)
	same(t, w, v, 0)
	near(t, "balance", w.Balance(), v.Balance(), 0)
}

// TestOutsideTheWell: what is not there is said to be not there.
func TestOutsideTheWell(t *testing.T) {
	w := hung(t, nil)
	for _, c := range []struct {
		c  Conduit
		md float64
	}{{Annulus, -1}, {Annulus, 1001}, {Pocket, 900}, {Between, 500}, {-1, 500}, {9, 500}, {Inside, math.NaN()}} {
		if p, ok := w.Pressure(c.c, c.md); ok || p != 0 {
			t.Errorf("Pressure(%v, %v) = %v, %v", c.c, c.md, p, ok)
		}
		if p, ok := w.EMW(c.c, c.md); ok || p != 0 {
			t.Errorf("EMW(%v, %v) = %v, %v", c.c, c.md, p, ok)
		}
	}
	if _, ok := w.EMW(Annulus, 0); ok {
		t.Error("an equivalent density at the rotary")
	}
	if w.Capacity(9) != 0 || w.Volume(9, 0) != 0 || w.AppendLayers(nil, 9) != nil || w.Account(9) != (Account{}) ||
		w.Fluid(-1) != (Fluid{}) || w.Held(9) != 0 {
		t.Error("something is there that is not")
	}
	if _, ok := w.Top(9, 0); ok {
		t.Error("a top in no conduit")
	}
	if _, ok := w.Top(Annulus, 1); ok {
		t.Error("a top of what is not in the annulus")
	}
	if w.Fluid(1).Name != "heavy" {
		t.Errorf("fluid 1 is %q", w.Fluid(1).Name)
	}
	names := ""
	for c := range Conduit(5) {
		names += c.String() + ", "
	}
	if want := "inside, annulus, pocket, between the strings, no conduit, "; names != want {
		t.Errorf("conduits are %q, want %q", names, want)
	}
	for name, err := range map[string]error{
		"flow":          w.SetFlow(math.NaN()),
		"back pressure": w.SetBackPressure(math.Inf(1)),
		"volume": func() error {
			_, err := w.Pump(-1, 0)
			return err
		}(),
		"an ocean": func() error {
			_, err := w.Pump(1e7, 0)
			return err
		}(),
		"fill": func() error {
			_, err := w.Fill(math.NaN(), 0)
			return err
		}(),
		"fluid": func() error {
			_, err := w.Reverse(1, 5)
			return err
		}(),
	} {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
