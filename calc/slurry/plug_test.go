package slurry

import (
	"math"
	"testing"
)

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
