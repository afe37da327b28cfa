package influx

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/gas"
)

// a shut is a well shut in under a place.
type shut struct {
	w         *Well
	formation float64
	at        Place
	loss      float64
}

func (s shut) tolerance(t *rapid.T) Tolerance {
	got, err := s.w.Tolerance(s.formation, s.at, s.loss)
	if err != nil {
		t.Fatalf("%v: %+v", err, s)
	}
	return got
}

func anyGas(t *rapid.T) Influx {
	g, err := gas.Natural(rapid.Float64Range(0.57, 0.9).Draw(t, "gravity"), gas.DranchukAbouKassem)
	if err != nil {
		t.Fatal(err)
	}
	return Gas(g)
}

// anyInflux draws one that keeps its content at every depth.
func anyInflux(t *rapid.T) Influx {
	switch rapid.IntRange(0, 3).Draw(t, "law") {
	case 0:
		return Simple(rapid.Float64Range(0, 400).Draw(t, "density"), InTheMiddle)
	case 1:
		return Liquid(rapid.Float64Range(600, 1050).Draw(t, "density"))
	}
	return anyGas(t)
}

// anyShut draws a well down to an inclination, with a place that stands more than the mud alone.
func anyShut(t *rapid.T, f Influx, steepest float64) shut {
	legs := []leg{{rapid.Float64Range(700, 2500).Draw(t, "casing"), rapid.Float64Range(0, 30).Draw(t, "above"), 0.06}}
	for range rapid.IntRange(1, 7).Draw(t, "legs") {
		legs = append(legs, leg{rapid.Float64Range(10, 700).Draw(t, "length"), rapid.Float64Range(0, steepest).Draw(t, "inclination"),
			rapid.SampledFrom([]float64{0.012, 0.02, 0.03, 0.05, 0.1}).Draw(t, "area")})
	}
	w := &Well{Mud: rapid.Float64Range(1100, 2000).Draw(t, "mud"), Fluid: f, Cells: laid(legs...)}
	end := w.Cells[len(w.Cells)-1]
	s := shut{w: w, formation: w.Mud * gravity * end.BottomTVD * rapid.Float64Range(1, 1.2).Draw(t, "above the mud")}
	s.at.MD = w.Cells[0].Bottom * rapid.Float64Range(0.8, 1).Draw(t, "place")
	tvd := s.at.MD * w.Cells[0].BottomTVD / w.Cells[0].Bottom
	s.loss = rapid.SampledFrom([]float64{0, 0, 3e5}).Draw(t, "loss")
	s.at.Stands = s.formation - w.Mud*gravity*(end.BottomTVD-tvd) + s.loss + rapid.Float64Range(1, 1.2e7).Draw(t, "room")
	return s
}

// TestTheToleranceTakesWhatThePlaceStands and no less; where the hole may be full it takes no more.
func TestTheToleranceTakesWhatThePlaceStands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.OneOf(rapid.Custom(anyInflux), rapid.Just(Simple(150, AtEnds))).Draw(t, "influx")
		s := anyShut(t, f, 88)
		got := s.tolerance(t)
		l, err := s.w.Press(s.formation, s.at, got.Volume, s.loss)
		const slack = 200 // Pa
		switch {
		case err != nil:
			t.Fatal(err)
		case got.Case == None:
			t.Errorf("none, though there is room: %+v", got)
		case got.Case == Whole && f.law == boyleAtEnds: // its ends need not agree where it fills the hole
		case got.Case == Whole && !(l.Pressure <= s.at.Stands+slack):
			t.Errorf("a full hole presses with %v of %v Pa", l.Pressure, s.at.Stands)
		case got.Case != Whole && math.Abs(l.Pressure-s.at.Stands) > slack:
			t.Errorf("it presses with %v of %v Pa, %+v\n%+v", l.Pressure, s.at.Stands, got, l)
		}
		if more, err := s.w.Press(s.formation, s.at, got.Volume*1.01, s.loss); err != nil || more.Pressure < l.Pressure-slack {
			t.Errorf("more presses less: %v of %v Pa, %v", more.Pressure, l.Pressure, err)
		}
	})
}

// TestNoPlaceOnTheWayIsWorse: the bubble of the tolerance, moved up the hole in short steps of another making, never presses on the
// place with more than that stands, but for what lengths of hole that count as one may differ.
func TestNoPlaceOnTheWayIsWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShut(t, anyInflux(t), 88)
		s.loss = 0
		got := s.tolerance(t)
		kept := 0.0
		pieces := metres(s.w, s.at.MD, 10)
		end := s.w.Cells[len(s.w.Cells)-1]
		// up returns what the place feels from a bubble with its foot at the bottom of a piece, and false if it has passed.
		up := func(from int, volume, content float64) (presses, held float64, under bool) {
			foot := pieces[from]
			line := s.formation - s.w.Mud*gravity*(end.BottomTVD-foot.tvd-foot.down)
			room := 0.0
			for i := from; i >= 0; i-- {
				x := pieces[i]
				first, err := s.w.Fluid.weighs(line, x.temperature)
				middle := line - first*gravity*x.down/2
				d, also := s.w.Fluid.weighs(middle, x.temperature)
				if err != nil || also != nil {
					t.Fatal(err, also)
				}
				keeps := s.w.Fluid.keeps(middle, d)
				share := min(1, (volume-room)/(x.area*x.length), (content-held)/(keeps*x.area*x.length))
				line -= share * d * gravity * x.down
				room += share * x.area * x.length
				held += share * keeps * x.area * x.length
				if share < 1 {
					return line - s.w.Mud*gravity*(x.tvd+x.down*(1-share)-pieces[0].tvd), held, true
				}
			}
			return line, held, false
		}
		_, kept, _ = up(len(pieces)-1, got.Volume, math.Inf(1))
		for from := len(pieces) - 1; from >= 0; from -= 1 + len(pieces)/100 {
			presses, _, under := up(from, math.Inf(1), kept)
			if !under {
				break
			}
			if slack := 2e3 + 3e-3*(s.at.Stands-got.Mud); presses > s.at.Stands+slack {
				t.Fatalf("with its foot at %.0f m it presses with %.0f of %.0f Pa (mud alone %.0f): %+v\n%+v", pieces[from].md, presses, s.at.Stands, got.Mud, got, s.w.Cells)
			}
		}
	})
}

// TestToleranceGoes as it must: down as the formation presses harder, up as the place stands more, down as friction grows. Heavier
// mud helps against a formation that stays, since it carries less of it up to the place; where the formation is as strong as the
// mud, as in a swabbed kick, it leaves less room.
func TestToleranceGoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShut(t, anyInflux(t), 80)
		got := s.tolerance(t).Volume
		not := func(what string, more, less float64) {
			if more < less*(1-1e-5)-1e-6 {
				t.Errorf("%s: %v m³, before %v m³", what, less, more)
			}
		}
		with := func(change func(*shut)) float64 {
			c := s
			w := *s.w
			c.w = &w
			change(&c)
			v, err := c.w.Tolerance(c.formation, c.at, c.loss)
			if err != nil {
				t.Fatal(err)
			}
			return v.Volume
		}
		not("a stronger formation", got, with(func(c *shut) { c.formation *= 1.01 }))
		not("a stronger place", with(func(c *shut) { c.at.Stands += 2e5 }), got)
		not("more friction", got, with(func(c *shut) { c.loss += 2e5 }))
		not("heavier mud, the formation as before", with(func(c *shut) { c.w.Mud += 10 }), got)
		not("heavier mud, the formation with it", got, with(func(c *shut) { c.formation *= (c.w.Mud + 10) / c.w.Mud; c.w.Mud += 10 }))
	})
}

// TestCutCellsChangeNothing.
func TestCutCellsChangeNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShut(t, anyInflux(t), 80)
		want := s.tolerance(t)
		load, err := s.w.Press(s.formation, s.at, want.Volume/2, s.loss)
		if err != nil {
			t.Fatal(err)
		}
		cut := *s.w
		cut.Cells = nil
		for _, c := range s.w.Cells {
			md := c.Top + (c.Bottom-c.Top)*rapid.Float64Range(0.05, 0.95).Draw(t, "cut")
			above, below := c, c
			above.Bottom, above.BottomTVD, above.BottomTemperature = md, c.tvd(md), c.temperature(md)
			below.Top, below.TopTVD, below.TopTemperature = md, c.tvd(md), c.temperature(md)
			cut.Cells = append(cut.Cells, above, below)
		}
		s.w = &cut
		got := s.tolerance(t)
		again, err := cut.Press(s.formation, s.at, want.Volume/2, s.loss)
		if err != nil || math.Abs(got.Volume-want.Volume) > 1e-4*want.Volume+1e-6 || math.Abs(again.Pressure-load.Pressure) > 300 {
			t.Errorf("%v m³ and %v Pa, cut %v m³ and %v Pa, %v", want.Volume, load.Pressure, got.Volume, again.Pressure, err)
		}
	})
}

// TestBubblesAddUp: of whatever decides, the pressures at the ends are the weight of the gas apart, the worst takes the room, the
// volumes are those of the hole, and no case alone bears less than all together.
func TestBubblesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShut(t, anyInflux(t), 80)
		s.loss = 0
		got := s.tolerance(t)
		for _, b := range []Bubble{got.Bottom, got.Worst} {
			if room := s.w.below(b.Top) - s.w.below(b.Bottom); math.Abs(room-b.Volume) > 1e-9*room+1e-9 {
				t.Errorf("%v m³ in %v m³ of hole", b.Volume, room)
			}
			if math.Abs(b.BottomPressure-s.formation+s.w.Mud*gravity*(s.w.bottom().BottomTVD-b.BottomTVD)) > 100 {
				t.Errorf("its foot is not carried by the mud: %+v", b)
			}
		}
		if b := got.Worst; got.Case != Whole {
			adds := s.w.Mud*gravity*b.Height() - (b.BottomPressure - b.TopPressure)
			if math.Abs(got.Mud+adds-s.at.Stands) > 10 {
				t.Errorf("it adds %v Pa to %v of %v: %+v", adds, got.Mud, s.at.Stands, b)
			}
		}
		if got.Volume > min(got.ByBottom, got.ByPlace)+1e-9 || got.Bottom.Bottom != s.w.bottom().Bottom || got.Volume > s.w.below(s.at.MD)+1e-9 {
			t.Errorf("%+v", got)
		}
		if s.w.Fluid.law == realGas && math.Abs(got.Bottom.Mass-got.Worst.Mass) > 1e-9*got.Worst.Mass+1e-6 {
			t.Errorf("%v kg at the bottom, %v kg above", got.Bottom.Mass, got.Worst.Mass)
		}
	})
}

// TestHoleThatClimbs gives numbers, and the tolerance still takes what the place stands.
func TestHoleThatClimbs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShut(t, anyInflux(t), 105)
		got, err := s.w.Tolerance(s.formation, s.at, s.loss)
		if err != nil {
			t.Fatal(err)
		}
		l, err := s.w.Press(s.formation, s.at, got.Volume, s.loss)
		if err != nil || !(got.Volume >= 0 && got.Volume <= s.w.below(s.at.MD)+1e-6) || math.IsNaN(l.Pressure) {
			t.Fatalf("%+v, %+v, %v", got, l, err)
		}
		if got.Case != Whole && !(l.Pressure > s.at.Stands-200) {
			t.Errorf("it presses with %v of %v Pa: %+v %+v\n%+v", l.Pressure, s.at.Stands, got, l, s.w.Cells)
		}
	})
}

// TestAnythingGivesNumbersOrAnError: whatever is put in, nothing is endless or no number.
func TestAnythingGivesNumbersOrAnError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShut(t, anyInflux(t), 120)
		wild := rapid.SampledFrom([]float64{0, -1, 1e-300, 1, 1e3, 9.9e4, 9.9e9, 1e300, math.MaxFloat64, math.Inf(1), math.Inf(-1), math.NaN()})
		influx := 1.0
		c := &s.w.Cells[rapid.IntRange(0, len(s.w.Cells)-1).Draw(t, "cell")]
		entries := []*float64{&s.formation, &s.at.MD, &s.at.Stands, &s.loss, &influx, &s.w.Mud, &s.w.Fluid.density,
			&c.Top, &c.Bottom, &c.TopTVD, &c.BottomTVD, &c.Area, &c.TopTemperature, &c.BottomTemperature}
		for range rapid.IntRange(1, 3).Draw(t, "entries") {
			*rapid.SampledFrom(entries).Draw(t, "entry") = wild.Draw(t, "wild")
		}
		tolerance, err := s.w.Tolerance(s.formation, s.at, s.loss)
		load, also := s.w.Press(s.formation, s.at, influx, s.loss)
		shut, too := s.w.ShutIn(s.formation, influx)
		values := []float64{tolerance.Volume, tolerance.Mud, tolerance.ByBottom, tolerance.ByPlace, load.Pressure, load.Mud}
		for _, b := range []Bubble{tolerance.Bottom, tolerance.Worst, load.Bottom, load.AtPlace, load.Worst, shut} {
			values = append(values, b.Top, b.Bottom, b.TopTVD, b.BottomTVD, b.TopPressure, b.BottomPressure, b.Volume, b.Mass)
		}
		for _, x := range values {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%+v, %v\n%+v, %v\n%+v, %v", tolerance, err, load, also, shut, too)
			}
		}
		if tolerance.Volume < 0 {
			t.Errorf("%+v", tolerance)
		}
	})
}
