package influx

import (
	"errors"
	"math"
	"testing"

	"borewalk/calc/gas"
)

// near reports whether two numbers are the same to a share.
func near(got, want, share float64) bool { return math.Abs(got-want) <= share*math.Abs(want) }

// built is an invented well of 17 1/2 in: straight down to 1100 m, built at 2.5 degrees in 30 m to 32 degrees, held to 2155 m, with
// pipe of 5 7/8 in, 110 m of heavy weight, 55 m of collars and 28 m of tools at the bottom.
func built(mud float64, f Influx) *Well {
	pipe := ring(17.5, 5.875)
	legs := []leg{{950, 0, pipe}, {150, 0, pipe}}
	for i := range 16 {
		legs = append(legs, leg{24, 2*float64(i) + 1, pipe})
	}
	legs = append(legs, leg{478, 32, pipe}, leg{110, 32, ring(17.5, 5.5)}, leg{55, 32, ring(17.5, 8)}, leg{28, 32, ring(17.5, 9.5)})
	return &Well{Mud: mud, Fluid: f, Cells: laid(legs...)}
}

// TestAgainstAnotherProgram: an invented well's tolerances by the simple model, as another program gives them. That has tool
// joints in the annulus as well.
func TestAgainstAnotherProgram(t *testing.T) {
	const shoe = 950
	for _, c := range []struct{ mud, stands, want float64 }{{1250, 1480, 15.7}, {1250, 1400, 9.8}, {1300, 1480, 11.2}} {
		w := built(c.mud, Simple(200, AtEnds))
		formation := max(1170+60, c.mud) * gravity * w.bottom().BottomTVD
		got, err := w.Tolerance(formation, Place{MD: shoe, Stands: c.stands * gravity * shoe}, 0)
		if err != nil || got.Case != AtPlace || !near(got.Volume, c.want, 0.02) {
			t.Errorf("mud %v, shoe %v: %.2f m³, %v, want %v", c.mud, c.stands, got.Volume, err, c.want)
		}
	}
	for _, c := range []struct{ stands, want float64 }{{1480, 21.2e5}, {1400, 14.0e5}} {
		if got, ok := MAASP(c.stands, 1250, shoe); !ok || !near(got, c.want, 0.02) {
			t.Errorf("%v: %v Pa, want %v", c.stands, got, c.want)
		}
	}
}

// TestBoyleByHand in a plain hole straight down. The height is what the place has room for over what the influx lacks; its volume
// goes to the bottom by the pressures at the ends, or by those in the middle, where half the height at the bottom counts as
// well: V pf - V² rho g / (2 A) = what is kept.
func TestBoyleByHand(t *testing.T) {
	const area, mud, influx, shoe, td = 0.05, 1400.0, 200.0, 1500.0, 3000.0
	const formation, stands = 45e6, 29e6
	alone := formation - mud*gravity*(td-shoe)
	height := (stands - alone) / ((mud - influx) * gravity)
	there := height * area
	kept := there * (stands + influx*gravity*height/2)
	weight := influx * gravity / area
	middle := (formation - math.Sqrt(formation*formation-2*weight*kept)) / weight
	for name, c := range map[string]struct {
		f    Influx
		want float64
	}{
		"at the ends":   {Simple(influx, AtEnds), there * stands / formation},
		"in the middle": {Simple(influx, InTheMiddle), middle},
		"a liquid":      {Liquid(influx), there},
	} {
		w := &Well{Mud: mud, Fluid: c.f, Cells: laid(leg{shoe, 0, 0.06}, leg{td - shoe, 0, area})}
		got, err := w.Tolerance(formation, Place{shoe, stands}, 0)
		if err != nil || !near(got.ByPlace, c.want, 1e-9) || !near(got.ByBottom, there, 1e-9) || !near(got.Mud, alone, 1e-12) {
			t.Errorf("%s: %+v, %v, want %v m³ by the place, %v m³ by the bottom", name, got, err, c.want, there)
		}
	}
}

// TestALongCollarOnTheWay: a liquid is longest where the hole is narrow. A bubble that the narrow length holds as a whole is as
// long there as the place has room for; a longer one when it fills that and stands out of it by the rest.
func TestALongCollarOnTheWay(t *testing.T) {
	const wide, narrow, length, shoe, td = 0.06, 0.02, 100.0, 500.0, 2000.0
	const mud, oil = 1300.0, 800.0
	w := &Well{Mud: mud, Fluid: Liquid(oil), Cells: laid(leg{1000, 0, wide}, leg{length, 0, narrow}, leg{td - 1000 - length, 0, wide})}
	formation := mud * gravity * td
	for height, want := range map[float64]float64{80: 80 * narrow, 150: 100*narrow + 50*wide} {
		got, err := w.Tolerance(formation, Place{shoe, mud*gravity*shoe + (mud-oil)*gravity*height}, 0)
		if err != nil || got.Case != OnTheWay || !near(got.Volume, want, 1e-9) || !near(got.Worst.Height(), height, 1e-9) {
			t.Errorf("%v m high: %+v, %v, want %v m³", height, got, err, want)
		}
		if l, err := w.Press(formation, Place{MD: shoe}, want, 0); err != nil || l.Case != OnTheWay || !near(l.Worst.Height(), height, 1e-6) {
			t.Errorf("%v m³: %+v, %v", want, l, err)
		}
	}
}

// TestCollarsAtTheBottomDecide where the bubble is short and a loss does not press: more loss then changes nothing at first.
func TestCollarsAtTheBottomDecide(t *testing.T) {
	w := slanted(Simple(200, InTheMiddle))
	w.Cells[8].Area, w.Cells[9].Area = 0.004, 0.004
	at := Place{MD: 1800}
	l, err := w.Press(39e6, at, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	at.Stands = l.Mud + 12e5
	quiet, err := w.Tolerance(39e6, at, 0)
	loud, also := w.Tolerance(39e6, at, 1e5)
	if err != nil || also != nil || quiet.Case != AtBottom || loud.Case != AtBottom || quiet.Volume != loud.Volume || !(loud.ByPlace < quiet.ByPlace) {
		t.Errorf("%+v, %v\n%+v, %v", quiet, err, loud, also)
	}
	if some, err := w.Press(39e6, at, quiet.Volume, 0); err != nil || some.Case != AtBottom || !near(some.Pressure, at.Stands, 1e-9) {
		t.Errorf("%+v, %v", some, err)
	}
}

// TestNoneAndWhole: where mud alone, or with the loss, is too much there is no tolerance; where the place stands a column of gas
// the hole may be full of it.
func TestNoneAndWhole(t *testing.T) {
	for name, f := range map[string]Influx{"gas": Gas(natural(t, 0.65)), "simple": Simple(200, AtEnds), "middle": Simple(200, InTheMiddle), "brine": Liquid(1200)} {
		w := slanted(f)
		const formation = 38e6
		l, err := w.Press(formation, Place{MD: 1800}, 0, 0)
		if err != nil || l.Pressure != l.Mud {
			t.Fatalf("%s: %+v, %v", name, l, err)
		}
		for _, c := range []struct{ stands, loss float64 }{{l.Mud - 1, 0}, {l.Mud + 1e5, 1.1e5}} {
			if got, err := w.Tolerance(formation, Place{1800, c.stands}, c.loss); err != nil || got.Case != None || got.Volume != 0 || got.Mud != l.Mud {
				t.Errorf("%s: %+v, %v", name, got, err)
			}
		}
		got, err := w.Tolerance(formation, Place{1800, formation}, 0)
		if hole := w.below(1800); err != nil || got.Case != Whole || !near(got.Volume, hole, 1e-12) || !near(got.ByBottom, hole, 1e-12) || !near(got.ByPlace, hole, 1e-12) {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
		if full, err := w.Press(formation, Place{MD: 1800}, 2*got.Volume, 3e5); err != nil || full.Case != Whole || !near(full.Pressure, got.Worst.TopPressure+3e5, 1e-9) {
			t.Errorf("%s: %+v, %v", name, full, err)
		}
	}
}

// TestALiquidHeavierThanTheMud takes weight off the place: it may fill the hole.
func TestALiquidHeavierThanTheMud(t *testing.T) {
	w := slanted(Liquid(1500))
	got, err := w.Tolerance(40e6, Place{1800, 25e6}, 0)
	l, also := w.Press(40e6, Place{MD: 1800}, 10, 0)
	if err != nil || also != nil || got.Case != Whole || !(l.Pressure < l.Mud) {
		t.Errorf("%+v, %v; %+v, %v", got, err, l, also)
	}
}

// TestThinGasIsSimple: in a shallow hole of one temperature a real gas is nearly one of the density that it has in the middle, and
// goes to the bottom by Boyle's law.
func TestThinGasIsSimple(t *testing.T) {
	g := natural(t, 0.57)
	w := &Well{Mud: 1100, Fluid: Gas(g), Cells: laid(leg{200, 0, 0.05}, leg{200, 0, 0.05})}
	for i := range w.Cells {
		w.Cells[i].TopTemperature, w.Cells[i].BottomTemperature = 400, 400
	}
	const formation, shoe = 4.4e6, 200
	at := Place{MD: shoe, Stands: 3e6}
	real, err := w.Tolerance(formation, at, 0)
	if err != nil {
		t.Fatal(err)
	}
	density, err := g.Density(gas.State{Pressure: (real.Worst.TopPressure+real.Worst.BottomPressure)/2 + 101325, Temperature: 400})
	w.Fluid = Simple(density, InTheMiddle)
	simple, also := w.Tolerance(formation, at, 0)
	if err != nil || also != nil || real.Case != AtPlace || !near(real.Volume, simple.Volume, 0.02) || !near(real.Worst.Height(), simple.Worst.Height(), 1e-3) {
		t.Errorf("%+v\n%+v, %v, %v", real, simple, err, also)
	}
}

// TestRefusals: what cannot be is said, and leaves no numbers.
func TestRefusals(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := func() (*Well, float64, Place, float64) {
		return slanted(Gas(natural(t, 0.65))), 38e6, Place{1800, 30e6}, 5e5
	}
	for name, spoil := range map[string]func(w *Well, formation *float64, at *Place, loss *float64){
		"no cells":                 func(w *Well, _ *float64, _ *Place, _ *float64) { w.Cells = nil },
		"no mud":                   func(w *Well, _ *float64, _ *Place, _ *float64) { w.Mud = 0 },
		"mud in other units":       func(w *Well, _ *float64, _ *Place, _ *float64) { w.Mud = 1.25e6 },
		"no influx":                func(w *Well, _ *float64, _ *Place, _ *float64) { w.Fluid = Influx{} },
		"Boyle nobody knows":       func(w *Well, _ *float64, _ *Place, _ *float64) { w.Fluid = Simple(200, InTheMiddle+1) },
		"a gas as heavy as mud":    func(w *Well, _ *float64, _ *Place, _ *float64) { w.Fluid = Simple(1350, AtEnds) },
		"a liquid of no density":   func(w *Well, _ *float64, _ *Place, _ *float64) { w.Fluid = Liquid(nan) },
		"a gap":                    func(w *Well, _ *float64, _ *Place, _ *float64) { w.Cells[3].Top++ },
		"a step in TVD":            func(w *Well, _ *float64, _ *Place, _ *float64) { w.Cells[3].TopTVD -= 2 },
		"no length":                func(w *Well, _ *float64, _ *Place, _ *float64) { w.Cells[0].Top = w.Cells[0].Bottom },
		"more TVD than hole":       func(w *Well, _ *float64, _ *Place, _ *float64) { w.Cells[9].BottomTVD += 40 },
		"no annulus":               func(w *Well, _ *float64, _ *Place, _ *float64) { w.Cells[5].Area = 0 },
		"a depth that is none":     func(w *Well, _ *float64, _ *Place, _ *float64) { w.Cells[9].Bottom = nan },
		"an endless hole":          func(w *Well, _ *float64, _ *Place, _ *float64) { w.Cells[9].Bottom = inf },
		"no formation":             func(_ *Well, p *float64, _ *Place, _ *float64) { *p = 0 },
		"a formation of no number": func(_ *Well, p *float64, _ *Place, _ *float64) { *p = nan },
		"mud that does not rise":   func(_ *Well, p *float64, _ *Place, _ *float64) { *p = 10e6 },
		"a place above the hole":   func(_ *Well, _ *float64, at *Place, _ *float64) { at.MD = -1 },
		"a place at the bottom":    func(w *Well, _ *float64, at *Place, _ *float64) { at.MD = w.Cells[9].Bottom },
		"a place nowhere":          func(_ *Well, _ *float64, at *Place, _ *float64) { at.MD = nan },
		"a gain for a loss":        func(_ *Well, _ *float64, _ *Place, loss *float64) { *loss = -1 },
		"an endless loss":          func(_ *Well, _ *float64, _ *Place, loss *float64) { *loss = inf },
	} {
		w, formation, at, loss := good()
		spoil(w, &formation, &at, &loss)
		if got, err := w.Tolerance(formation, at, loss); err == nil || got != (Tolerance{}) {
			t.Errorf("%s: %+v", name, got)
		}
		if got, err := w.Press(formation, at, 5, loss); err == nil || got != (Load{}) {
			t.Errorf("%s: %+v", name, got)
		}
	}
	for _, stands := range []float64{nan, inf, -inf} {
		w, formation, at, loss := good()
		at.Stands = stands
		if got, err := w.Tolerance(formation, at, loss); err == nil || got != (Tolerance{}) {
			t.Errorf("a place that stands %v Pa: %+v", stands, got)
		}
	}
	for _, influx := range []float64{-1, nan, inf} {
		w, formation, at, loss := good()
		if got, err := w.Press(formation, at, influx, loss); err == nil || got != (Load{}) {
			t.Errorf("%v m³: %+v", influx, got)
		}
	}
}

// TestOutsideTheGas: where the gas has no density, its error comes up, with the depth.
func TestOutsideTheGas(t *testing.T) {
	for name, spoil := range map[string]func(w *Well){
		"no temperature":  func(w *Well) { w.Cells[9].BottomTemperature = 0 },
		"cold on the way": func(w *Well) { w.Cells[3].BottomTemperature = 100 },
		"no gas":          func(w *Well) { w.Fluid = Gas(gas.Gas{}) },
	} {
		w := slanted(Gas(natural(t, 0.65)))
		spoil(w)
		var outside *gas.OutsideError
		if got, err := w.Tolerance(36e6, Place{1800, 30e6}, 0); !errors.As(err, &outside) || got != (Tolerance{}) {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
		if got, err := w.Press(36e6, Place{MD: 1800}, 50, 0); !errors.As(err, &outside) || got != (Load{}) {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
		if got, err := w.ShutIn(40e6, w.below(1800)); !errors.As(err, &outside) || got != (Bubble{}) {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

// TestNothingIsAllocated, so that curves cost nothing but their sums.
func TestNothingIsAllocated(t *testing.T) {
	w, at := bench(t)
	if n := testing.AllocsPerRun(10, func() {
		_, err := w.Tolerance(benchFormation, at, 5e5)
		_, also := w.Press(benchFormation, at, 6, 5e5)
		_, too := w.ShutIn(41e6, 6)
		if err != nil || also != nil || too != nil {
			t.Fatal(err, also, too)
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
