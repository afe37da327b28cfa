package mixing

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

const (
	foot = 12 * inch
	gpm  = gallon / 60
)

// Riserless hole with mud that is dumped: 1150 gpm for 11 hours are about 18000 bbl (common practice, worked by hand:
// 1150 × 60 × 11 / 42 = 18071).
func TestElevenHoursAtTheFlow(t *testing.T) {
	d := Dump{Flow: 1150 * gpm, ROP: 110 * foot / 3600}
	length := 11 * 110 * foot
	if got := d.PerMetre() * length / barrel; math.Abs(got-1150*60*11/42.0) > 1e-6 {
		t.Errorf("%v bbl, want 18071", got)
	}
	if got := d.Time(length); math.Abs(got-11*3600) > 1e-6 {
		t.Errorf("%v s, want 11 h", got)
	}
	// Ten minutes with the pumps on for each stand of 90 ft: 1210/90 of them on top.
	d.Stand, d.Connection = 90*foot, 600
	if got, want := d.Time(length), 11*3600+1210.0/90*600; math.Abs(got-want) > 1e-6 {
		t.Errorf("%v s, want %v", got, want)
	}
}

// 10 m³ of hole, 60 % of the solids taken out, 5 % of them in the mud: 4 m³ stay, in 76 m³ of fresh mud. The hole takes
// 6 m³ of that besides the solids that stay in it, 70 are too much (by hand).
func TestThinningByHand(t *testing.T) {
	got := Thin(10, 0.6, 0.05, 0)
	for _, c := range []struct{ got, want float64 }{{got.Kept, 4}, {got.Built, 76}, {got.Surplus, 70}} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("Thin = %+v, want 4, 76 and 70", got)
		}
	}
	if got := Thin(10, 0.6, 0.05, 70); math.Abs(got.Surplus) > 1e-9 {
		t.Errorf("70 m³ lost leave %v", got.Surplus)
	}
}

func TestThinningKeepsTheShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hole, removal := rapid.Float64Range(0, 500).Draw(t, "hole"), rapid.Float64Range(0, 1).Draw(t, "removal")
		share, lost := rapid.Float64Range(0.01, 0.2).Draw(t, "share"), rapid.Float64Range(0, 500).Draw(t, "lost")
		d := Thin(hole, removal, share, lost)
		same(t, "solids", d.Kept, share*(d.Kept+d.Built))
		if better := Thin(hole, min(removal+0.1, 1), share, lost); better.Built > d.Built || better.Surplus > d.Surplus {
			t.Fatalf("%+v, with better equipment %+v", d, better)
		}
		if d.Surplus < 0 || d.Surplus > d.Built {
			t.Fatalf("%+v", d)
		}
	})
}
