package state

import (
	"math"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
)

// both is friction of 1e4 Pa per m³/s and metre in the string and of 2e4 outside.
type both struct{}

func (both) Pipe(_ friction.Fluid, flow, _ float64) float64       { return 1e4 * math.Abs(flow) }
func (both) Annulus(_ friction.Fluid, flow, _, _ float64) float64 { return 2e4 * math.Abs(flow) }

// TestCirculatingPressures by hand: 1000 m of 1000 kg/m³ all round, 0.02 m³/s, so
// 400 Pa/m outside and 200 Pa/m inside.
func TestCirculatingPressures(t *testing.T) {
	w := hung(t, both{})
	if err := w.Spot(Inside, 0, 1000, 0); err != nil {
		t.Fatal(err)
	}
	if err := w.SetFlow(0.02); err != nil {
		t.Fatal(err)
	}
	const water = 1000 * gravity
	near(t, "outlet", pressure(t, w, Annulus, 0), 0, 1e-6)
	near(t, "half way up", pressure(t, w, Annulus, 500), 500*(water+400), 1e-3)
	near(t, "end of the string", pressure(t, w, Annulus, 1000), 1000*(water+400), 1e-3)
	near(t, "half way down", pressure(t, w, Inside, 500), 500*water+1000*400+500*200, 1e-3)
	near(t, "top of the string", pressure(t, w, Inside, 0), 1000*(400+200), 1e-3)
	near(t, "pump", w.PumpPressure(), 1000*(400+200), 1e-3)
	near(t, "differential does not see friction", w.Differential(), 0, 1e-3)
	emw, ok := w.EMW(Annulus, 1000)
	if !ok {
		t.Fatal("no equivalent density")
	}
	near(t, "equivalent circulating density", emw, 1000+400/gravity, 1e-6)
	if err := w.SetFlow(-0.02); err != nil {
		t.Fatal(err)
	}
	near(t, "reverse, half way down inside", pressure(t, w, Inside, 500), 500*(water+200), 1e-3)
	near(t, "reverse, half way outside", pressure(t, w, Annulus, 500), 500*water+1000*200+500*400, 1e-3)
	near(t, "reverse, pump", w.PumpPressure(), 1000*(400+200), 1e-3)
}

// TestFallingPressures: while the string runs on vacuum, the pressure is nothing at
// the level and the same inside and outside its end.
func TestFallingPressures(t *testing.T) {
	w := hung(t, both{})
	for range 20 {
		s, err := w.Advance(2, 0, 0)
		if err != nil {
			t.Fatal(err)
		}
		if !(s.Level > 0) || !(s.Rate > 0) {
			t.Fatalf("nothing falls: %+v", s)
		}
		near(t, "at the level", pressure(t, w, Inside, s.Level), 0, 1e-6)
		near(t, "above the level", pressure(t, w, Inside, s.Level/2), 0, 1e-6)
		in, out := pressure(t, w, Inside, 1000), pressure(t, w, Annulus, 1000)
		near(t, "inside the end of the string", in, out, 2*finest)
		columns := gravity * (1500*200 + 1000*(800-s.Level))
		near(t, "inside, by hand", in, columns-1e4*s.Rate*(1000-s.Level), 1e-2)
	}
}

// TestDifferentialUnderTheSea: the sea stands on the annulus, and not on a string
// full of its water up to the rotary 25 m above it.
func TestDifferentialUnderTheSea(t *testing.T) {
	w, err := New(Layout{
		Bore:   bore.Profile{{Top: 300, Bottom: 900, Diameter: 0.5}},
		String: []bore.Body{{Bottom: 900, OD: 0.3, ID: 0.28}},
		Float:  true,
		Return: ToSea(300, 275, 1025, 0),
		TVD:    func(md float64) float64 { return md },
	}, []Fluid{of("sea water", 1025), of("slurry", 1600)}, 0)
	if err != nil {
		t.Fatal(err)
	}
	must(t, w, 200*math.Pi/4*(0.25-0.09), 1)
	must(t, w, w.Capacity(Inside), 0)
	near(t, "differential", w.Differential(), gravity*(1025*275+1025*400+1600*200-1025*900), 1e-3)
}
