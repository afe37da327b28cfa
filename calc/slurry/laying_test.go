package slurry

import (
	"math"
	"testing"
)

// A surface casing to 1000 m from a seabed at 400 m, 50 m of it in conductor, in
// numbers that can be followed by hand: 0.06 m³/m in gauge, 0.10 in the conductor.
func TestWhereTheExcessGoes(t *testing.T) {
	gauge := []Room{{400, 450, 0.10}, {450, 1000, 0.06}}
	// Tail 200 m, lead 350 m of open hole with 50 % excess, conductor without.
	tail, _ := WithExcess(200*0.06, 0.5, 0, 0)
	lead, _ := WithExcess(350*0.06, 0.5, 5, 0)
	laid, err := Lay(gauge, 1000, Fill{"tail", tail}, Fill{"lead", lead}, Fill{"spacer", 8})
	if err != nil {
		t.Fatal(err)
	}
	want := []Laid{
		{Fill{"tail", 18}, 700, 1000, 0},     // 18 / 0.06 = 300 m
		{Fill{"lead", 36.5}, 400, 700, 16.5}, // 250 m hold 15, the conductor 5
		{Fill{"spacer", 8}, 400, 400, 8},     // all at the seabed
	}
	for i, w := range want {
		g := laid[i]
		if g.Fill != w.Fill || math.Abs(g.Top-w.Top) > 1e-9 || math.Abs(g.Bottom-w.Bottom) > 1e-9 || math.Abs(g.Over-w.Over) > 1e-9 {
			t.Errorf("laid %d = %+v, want %+v", i, g, w)
		}
	}
	// In the hole as washed out as planned, the tops are the planned ones.
	laid, err = Lay([]Room{{400, 450, 0.10}, {450, 1000, 0.09}}, 1000, Fill{"tail", tail}, Fill{"lead", lead})
	if err != nil || math.Abs(laid[0].Top-800) > 1e-9 || math.Abs(laid[1].Top-400) > 1e-9 || laid[1].Over != 0 {
		t.Errorf("as planned: %+v, %v", laid, err)
	}
	if got, ok := ExcessOf(tail+lead, 550*0.06, 5, 0); !ok || math.Abs(got-0.5) > 1e-12 {
		t.Errorf("ExcessOf = %v, %v, want 0.5", got, ok)
	}
	if got, ok := ExcessOf(10, 20, 0, 0); !ok || got != -0.5 {
		t.Errorf("ExcessOf too little = %v, %v, want -0.5", got, ok)
	}
	for _, bad := range [][4]float64{{-1, 1, 0, 0}, {1, 0, 0, 0}, {1, 1, math.NaN(), 0}, {1, 1, 0, math.Inf(1)}, {1e308, 1e-308, 0, 0}} {
		if got, ok := ExcessOf(bad[0], bad[1], bad[2], bad[3]); ok {
			t.Errorf("ExcessOf(%v) = %v", bad, got)
		}
	}
	if got, ok := WithExcess(1, -0.1, 0, 0); ok {
		t.Errorf("WithExcess below zero = %v", got)
	}
}

func TestLayFaultsAreNamed(t *testing.T) {
	nan := math.NaN()
	cases := []struct {
		rooms []Room
		from  float64
		fill  float64
		want  string
	}{
		{nil, 0, 1, "no room"},
		{[]Room{{0, 0, 1}}, 0, 1, "length 1"},
		{[]Room{{0, nan, 1}}, 0, 1, "length 1"},
		{[]Room{{0, 10, -1}}, 5, 1, "capacity -1"},
		{[]Room{{0, 10, 1}, {11, 20, 1}}, 5, 1, "let them meet"},
		{[]Room{{0, 10, 1}}, 11, 1, "not in the hole"},
		{[]Room{{0, 10, 1}}, nan, 1, "not in the hole"},
		{[]Room{{0, 10, 1}}, 10, nan, `"x" of NaN m³`},
	}
	for _, c := range cases {
		_, err := Lay(c.rooms, c.from, Fill{"x", c.fill})
		complains(t, err, c.want)
	}
}

// By hand, in one size: pipe 0.01 inside, annulus 0.04, hole 0.055 m³/m. 5 m³ of
// slurry stand 100 m high in and around the pipe and 90.91 m without it; 2 m³ of
// spacer ahead are 50 m, 0.5 m³ behind; above are 1350 m of pipe, 13.5 m³.
func TestPlugOfOneSize(t *testing.T) {
	well := []Stretch{{0, 2000, 0.01, 0.04, 0.055}}
	b, err := Balance(well, Plug{Base: 1500, Slurry: 5, Ahead: 2, Under: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	want := Balanced{
		Behind: 0.5, Displacement: 13.2, TopIn: 1400, SpacerIn: 1350, TopOut: 1500 - 5/0.055, SpacerOut: 1500 - 7.5/0.055,
		StopInside: 1370, StopOutside: 1407.5,
	}
	near(t, b, want)
}

// A stinger of 150 m below larger pipe, and a shoe above: 8 m³ fill the stinger's
// stretch (150 m of 0.045) and 1.25 m³ of the pipe's (0.05), 25 m.
func TestPlugThroughAStinger(t *testing.T) {
	well := []Stretch{{0, 1000, 0.010, 0.030, 0.045}, {1000, 1350, 0.010, 0.040, 0.055}, {1350, 1500, 0.004, 0.041, 0.055}}
	b, err := Balance(well, Plug{Base: 1500, Slurry: 8, Ahead: 13})
	if err != nil {
		t.Fatal(err)
	}
	// Spacer: the 325 m to the shoe are exactly 13 m³ outside and 3.25 inside.
	near(t, b, Balanced{
		Behind: 3.25, Displacement: 10, TopIn: 1325, SpacerIn: 1000, TopOut: 1500 - 8/0.055, SpacerOut: 1500 - 24.25/0.055,
		StopInside: 1325, StopOutside: 1325,
	})
	if got, err := PlugVolume(well, 900, 1100); err != nil || math.Abs(got-10) > 1e-12 {
		t.Errorf("PlugVolume over the shoe = %v, %v, want 10", got, err)
	}
}

func near(t *testing.T, got, want Balanced) {
	t.Helper()
	pairs := map[string][2]float64{
		"Behind": {got.Behind, want.Behind}, "Displacement": {got.Displacement, want.Displacement},
		"TopIn": {got.TopIn, want.TopIn}, "SpacerIn": {got.SpacerIn, want.SpacerIn},
		"TopOut": {got.TopOut, want.TopOut}, "SpacerOut": {got.SpacerOut, want.SpacerOut},
		"StopInside": {got.StopInside, want.StopInside}, "StopOutside": {got.StopOutside, want.StopOutside},
	}
	for name, p := range pairs {
		if math.Abs(p[0]-p[1]) > 1e-9 {
			t.Errorf("%s = %v, want %v", name, p[0], p[1])
		}
	}
}

func TestPlugFaultsAreNamed(t *testing.T) {
	well := []Stretch{{0, 1000, 0.01, 0.04, 0.055}}
	nan := math.NaN()
	cases := []struct {
		well []Stretch
		plug Plug
		want string
	}{
		{nil, Plug{}, "no hole"},
		{[]Stretch{{0, nan, 1, 1, 3}}, Plug{}, "length 1"},
		{[]Stretch{{0, 10, 0, 1, 3}}, Plug{}, "capacities 0 inside"},
		{[]Stretch{{0, 10, 1, 1, 1.5}}, Plug{}, "must take up room"},
		{[]Stretch{{0, 10, 1, 1, 3}, {9, 20, 1, 1, 3}}, Plug{}, "let them meet"},
		{[]Stretch{{0, 1000, 1, 1, 1e308}}, Plug{}, "beyond all numbers"},
		{well, Plug{Base: 1001}, "not in the hole"},
		{well, Plug{Base: nan}, "not in the hole"},
		{well, Plug{Base: 900, Slurry: -1}, "slurry -1"},
		{well, Plug{Base: 900, Slurry: 50}, "5.00 left"},
		{well, Plug{Base: 900, Slurry: 5, Ahead: 33}, "1.00 left"},
		{well, Plug{Base: 900, Slurry: 5, Under: 8.5}, "stop less short"},
		{well, Plug{Base: 900, Slurry: 0.5, Under: 0.5}, "none of the 0.40 m³"},
	}
	for _, c := range cases {
		_, err := Balance(c.well, c.plug)
		complains(t, err, c.want)
	}
	_, err := PlugVolume(well, 900, 800)
	complains(t, err, "a top above a base")
	_, err = PlugVolume(nil, 900, 800)
	complains(t, err, "no hole")
}
