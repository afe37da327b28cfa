package influx

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestShutInIsWhereAnInfluxBegins: its bubble is the one that Press brings up from the bottom. Above the place, which is in the first
// cell, the steps are others.
func TestShutInIsWhereAnInfluxBegins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.OneOf(rapid.Custom(anyInflux), rapid.Just(Simple(150, AtEnds))).Draw(t, "influx")
		s := anyShut(t, f, 105)
		influx := s.w.below(s.at.MD) * rapid.Float64Range(1e-3, 0.999).Draw(t, "share")
		got, err := s.w.ShutIn(s.formation, influx)
		l, also := s.w.Press(s.formation, s.at, influx, s.loss)
		if err != nil || also != nil {
			t.Fatal(err, also)
		}
		if want := l.Bottom; got != want && (got.Top >= s.w.Cells[0].Bottom || !alikeBubbles(got, want)) {
			t.Errorf("%+v, pressed %+v", got, want)
		}
	})
}

// alikeBubbles reports whether two bubbles are the same but for the steps that they were made in.
func alikeBubbles(a, b Bubble) bool {
	const share = 1e-5
	return near(a.Top, b.Top, 1e-9) && near(a.TopTVD, b.TopTVD, 1e-9) && near(a.Volume, b.Volume, 1e-9) && a.Bottom == b.Bottom &&
		a.BottomTVD == b.BottomTVD && a.BottomPressure == b.BottomPressure && near(a.TopPressure, b.TopPressure, share) && near(a.Mass, b.Mass, share)
}

// TestALiquidShutIn in a plain annulus: height times area is its volume, on a slant the length is; its mass and the pressures at its
// ends go by its density.
func TestALiquidShutIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area, length := rapid.Float64Range(0.005, 0.2).Draw(t, "area"), rapid.Float64Range(100, 6000).Draw(t, "length")
		slant := rapid.SampledFrom([]float64{0, 0, 30, 60}).Draw(t, "inclination")
		oil, mud := rapid.Float64Range(600, 1300).Draw(t, "oil"), rapid.Float64Range(1000, 2000).Draw(t, "mud")
		w := &Well{Mud: mud, Fluid: Liquid(oil), Cells: laid(leg{length, slant, area})}
		formation := mud*gravity*w.bottom().BottomTVD + rapid.Float64Range(1, 1e7).Draw(t, "above the mud")
		influx := area * length * rapid.Float64Range(1e-3, 0.999).Draw(t, "share")
		got, err := w.ShutIn(formation, influx)
		if err != nil {
			t.Fatal(err)
		}
		upright := math.Cos(slant * math.Pi / 180)
		if !near(got.Height()*area, influx*upright, 1e-9) || !near((got.Bottom-got.Top)*area, influx, 1e-9) || got.Bottom != length {
			t.Errorf("%v m³ stand %v m high from %v to %v m: %+v", influx, got.Height(), got.Top, got.Bottom, got)
		}
		if !near(got.Volume, influx, 1e-9) || !near(got.Mass, influx*oil, 1e-9) || got.BottomPressure != formation ||
			math.Abs(got.TopPressure-formation+oil*gravity*got.Height()) > 1e-9*formation {
			t.Errorf("%v m³ of %v kg/m³ on %v Pa: %+v", influx, oil, formation, got)
		}
	})
}

// TestAnInfluxFillsItsAnnuli, summed in slices of a decimetre and less: what stands between its top and the bottom is the gain.
func TestAnInfluxFillsItsAnnuli(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		collars := rapid.Float64Range(10, 500).Draw(t, "collars")
		w := &Well{Mud: 1400, Fluid: anyInflux(t), Cells: laid(leg{3000 - collars, 0, 0.055}, leg{collars, 0, 0.025})}
		gain := rapid.Float64Range(0.1, 20).Draw(t, "gain")
		got, err := w.ShutIn(45e6, gain)
		if err != nil {
			t.Fatal(err)
		}
		const slices = 20000
		room, along := 0.0, (3000-got.Top)/slices
		for k := range slices {
			area := 0.055
			if got.Top+along*(float64(k)+0.5) > 3000-collars {
				area = 0.025
			}
			room += area * along
		}
		if !near(room, gain, 1e-3) {
			t.Errorf("%v m³ above %v m for a gain of %v m³", room, got.Top, gain)
		}
	})
}

// TestMoreThanTheHoleHolds is an error, and what nearly fills it is none.
func TestMoreThanTheHoleHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShut(t, anyInflux(t), 105)
		hole := s.w.below(0)
		if got, err := s.w.ShutIn(s.formation, hole*rapid.Float64Range(1+1e-9, 10).Draw(t, "more")); err == nil || got != (Bubble{}) {
			t.Errorf("more than %v m³: %+v", hole, got)
		}
		if got, err := s.w.ShutIn(s.formation, hole*(1-1e-9)); err != nil || !(got.Top < 1e-3) {
			t.Errorf("%v m³: %+v, %v", hole, got, err)
		}
	})
}

// TestShutInRefuses what cannot be, and leaves no numbers.
func TestShutInRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, spoil := range map[string]func(w *Well, formation, influx *float64){
		"no cells":                 func(w *Well, _, _ *float64) { w.Cells = nil },
		"no mud":                   func(w *Well, _, _ *float64) { w.Mud = 0 },
		"nothing that flows":       func(w *Well, _, _ *float64) { w.Fluid = Influx{} },
		"a gap":                    func(w *Well, _, _ *float64) { w.Cells[3].Top++ },
		"no formation":             func(_ *Well, formation, _ *float64) { *formation = 0 },
		"a formation of no number": func(_ *Well, formation, _ *float64) { *formation = nan },
		"mud that does not rise":   func(_ *Well, formation, _ *float64) { *formation = 10e6 },
		"no influx":                func(_ *Well, _, influx *float64) { *influx = 0 },
		"less than none":           func(_ *Well, _, influx *float64) { *influx = -1 },
		"an influx of no number":   func(_ *Well, _, influx *float64) { *influx = nan },
		"an endless influx":        func(_ *Well, _, influx *float64) { *influx = inf },
	} {
		w, formation, influx := slanted(Gas(natural(t, 0.65))), 40e6, 5.0
		if _, err := w.ShutIn(formation, influx); err != nil {
			t.Fatal(err)
		}
		spoil(w, &formation, &influx)
		if got, err := w.ShutIn(formation, influx); err == nil || got != (Bubble{}) {
			t.Errorf("%s: %+v", name, got)
		}
	}
}
