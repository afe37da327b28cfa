package state

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/friction"

	"pgregory.net/rapid"
)

// gasConstant is that of methane in J/(kg K): 8.31446 over 0.016043.
const gasConstant = 518.3

// ideal is the room of parcels of ideal gas of given masses in kg, by their fluid, at an absolute pressure one bar above the
// gauge's, with nothing below the open air's.
func ideal(masses map[int]float64, temperature func(md float64) float64) Room {
	return func(fluid int, md, pressure float64) (volume, density float64, ok bool) {
		mass, ok := masses[fluid]
		density = (max(pressure, 0) + 1e5) / (gasConstant * temperature(md))
		return mass / density, density, ok
	}
}

func always(kelvin float64) func(float64) float64 { return func(float64) float64 { return kelvin } }

// massesOf returns what the well's annulus holds of the fluids from a number on, in kg.
func massesOf(w *Well, from int) map[int]float64 {
	masses := map[int]float64{}
	for f := from; f < len(w.fluids); f++ {
		if volume := w.Volume(Annulus, f); volume > 0 {
			masses[f] = volume * w.Fluid(f).Density
		}
	}
	return masses
}

// TestParcelByHand: 10 m of gas around the string of a plain well of 1000 m, under 20 MPa at the string's end. A thousand
// metres of nothing but mud of 1000 kg/m³ stand below it, then half of them.
func TestParcelByHand(t *testing.T) {
	w := plain(t, 1000, of("mud", 1000), of("gas", 100))
	if err := w.Spot(Annulus, 990, 1000, 1); err != nil {
		t.Fatal(err)
	}
	room := ideal(map[int]float64{1: 50}, always(300))
	outlet, err := w.Settle(20e6, room)
	if err != nil {
		t.Fatal(err)
	}
	// 50 kg at about 201 bar absolute are 0.3868 m³, 7.74 m of 129.3 kg/m³, so that 9.81 kPa of gas stand above its foot.
	middle := 20e6 + 1e5 - 129.25*gravity*7.74/2
	volume := 50 * gasConstant * 300 / middle
	near(t, "volume", w.Volume(Annulus, 1), volume, 1e-5)
	near(t, "density", w.Fluid(1).Density, 50/volume, 1e-3)
	near(t, "grown", w.Account(1).Grown, volume-0.5, 1e-5)
	near(t, "outlet", outlet, 20e6-50/boreArea*gravity-1000*gravity*(1000-volume/boreArea), 1)
	near(t, "mud flows back", w.Account(0).Back, 0.5-volume, 1e-5)
	near(t, "held at the foot", pressure(t, w, Annulus, 1000), 20e6, 1e-3)

	pumped, outlet, err := w.Circulate(500*boreArea, 0, 20e6, room)
	if err != nil || pumped != 500*boreArea {
		t.Fatal(pumped, err)
	}
	middle = 20e6 + 1e5 - 500*1000*gravity - 50/boreArea*gravity/2
	volume = 50 * gasConstant * 300 / middle
	near(t, "volume half way up", w.Volume(Annulus, 1), volume, 1e-5)
	near(t, "outlet half way up", outlet, 20e6-50/boreArea*gravity-1000*gravity*(1000-volume/boreArea), 1)
	bottom := w.AppendLayers(nil, Annulus)[1].Bottom
	near(t, "foot of the gas", bottom, 500, 1e-6)
	near(t, "mud returned", w.Account(0).Returned-w.Account(0).Back, 500*boreArea+volume-0.5, 1e-5)
}

// TestThinParcelsAreTheBarometricFormula: a tall column of ideal gas at one temperature presses as p exp(-g h / (R T)), and the
// thinner the parcels, the closer.
func TestThinParcelsAreTheBarometricFormula(t *testing.T) {
	last := math.Inf(1)
	for _, parcels := range []int{1, 4, 16} {
		fluids := []Fluid{of("mud", 1000)}
		masses := map[int]float64{}
		whole := 20.1e6 * boreArea / gravity * (1 - math.Exp(-800*gravity/(gasConstant*300))) // 800 m
		for i := range parcels {
			fluids = append(fluids, of("gas", 100))
			masses[i+1] = whole / float64(parcels)
		}
		w := plain(t, 1000, fluids...)
		for i := range parcels {
			thick := 800 / float64(parcels)
			if err := w.Spot(Annulus, 1000-thick*float64(i+1), 1000-thick*float64(i), i+1); err != nil {
				t.Fatal(err)
			}
		}
		if _, err := w.Settle(20e6, ideal(masses, always(300))); err != nil {
			t.Fatal(err)
		}
		top := w.AppendLayers(nil, Annulus)[0].Bottom
		off := math.Abs(top - 200)
		t.Logf("%d parcels: %.4f m off", parcels, off)
		if !(off < last/10) {
			t.Errorf("%d parcels are %v m off, fewer %v m", parcels, off, last)
		}
		last = off
		near(t, "pressure on top of the gas", pressure(t, w, Annulus, top), 20e6-whole/boreArea*gravity, 1)
	}
}

// lined is a vertical well of 1000 m with choke lines from 400 m up: 1 m of the annulus fills 10 m of a line.
func lined(t *testing.T, r Return, model friction.Model, fluids ...Fluid) *Well {
	t.Helper()
	r.MD, r.Line = 400, bore.Profile{{Bottom: 400, Diameter: math.Sqrt(boreArea / 10 * 4 / math.Pi)}}
	const od = 0.25
	w, err := New(Layout{
		Bore:     bore.Profile{{Top: 400, Bottom: 1000, Diameter: math.Sqrt(od*od + boreArea*4/math.Pi)}},
		String:   []bore.Body{{Bottom: 1000, OD: od, ID: math.Sqrt(pipeArea * 4 / math.Pi)}},
		Return:   r,
		TVD:      func(md float64) float64 { return md },
		Friction: model,
	}, fluids, 0)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestParcelAcrossTheStack: what stands in the line has the temperature of the line. 100 kg at 5 MPa absolute and without
// weight to speak of: 400 K below the stack, 200 K above, where it is twice as dense.
func TestParcelAcrossTheStack(t *testing.T) {
	const mass = 100.0
	fluids := []Fluid{of("mud", 0), of("gas", 50)}
	temperature := func(md float64) float64 {
		if md < 400 {
			return 200
		}
		return 400
	}
	thin := 5e6 / (gasConstant * 400) // kg/m³
	weightless := func(fluid int, md, pressure float64) (volume, density float64, ok bool) {
		density = 5e6 / (gasConstant * temperature(md))
		return mass / density, density, fluid == 1
	}
	for _, below := range []float64{0, 0.1, 1, 3} { // m³ of annulus from the gas bottom up to the stack
		w := lined(t, Return{}, nil, fluids...)
		if err := w.Spot(Annulus, 990, 1000, 1); err != nil {
			t.Fatal(err)
		}
		if _, _, err := w.Circulate(600*boreArea-below, 0, 30e6, weightless); err != nil {
			t.Fatal(err)
		}
		above := (mass - below*thin) / (2 * thin)
		if space := 400 * boreArea / 10; above > space {
			near(t, "mass that fits", massesOf(w, 1)[1], below*thin+space*2*thin, 1e-6)
			near(t, "volume that fits", w.Volume(Annulus, 1), below+space, 1e-9)
			near(t, "mass that left", w.Account(1).Returned*w.Fluid(1).Density, mass-below*thin-space*2*thin, 1e-6)
			continue
		}
		near(t, "volume", w.Volume(Annulus, 1), below+above, 1e-6)
		near(t, "density", w.Fluid(1).Density, mass/(below+above), 1e-6)
	}
}

// TestRoomThatJumps: where no volume agrees with itself, the parcel's middle stands at the jump and its mass is kept.
func TestRoomThatJumps(t *testing.T) {
	w := plain(t, 1000, of("mud", 1000), of("gas", 100))
	if err := w.Spot(Annulus, 500, 600, 1); err != nil {
		t.Fatal(err)
	}
	// From its foot at 600 m it fills 80 m if its middle is above 550 m, and 120 m if it is below.
	_, err := w.Settle(20e6, func(fluid int, md, _ float64) (volume, density float64, ok bool) {
		if md < 550 {
			return 80 * boreArea, 100 / (80 * boreArea), fluid == 1
		}
		return 120 * boreArea, 100 / (120 * boreArea), fluid == 1
	})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "volume", w.Volume(Annulus, 1), 100*boreArea, 1e-3)
	near(t, "mass", massesOf(w, 1)[1], 100, 1e-9)
}

// TestLinesSideBySide: two equal lines hold twice as much, and each rubs with half the flow; the factor is on the line alone.
func TestLinesSideBySide(t *testing.T) {
	model := both{} // 1e4 Pa per m³/s and m in a pipe, 2e4 in an annulus
	for _, c := range []struct {
		r           Return
		lines, rubs float64
	}{
		{Return{}, 1, 1}, {Return{Lines: 1, Rub: 1}, 1, 1}, {Return{Lines: 2}, 2, 1},
		{Return{Lines: 2, Rub: 1.3}, 2, 1.3}, {Return{Rub: 0.8}, 1, 0.8},
	} {
		w := lined(t, c.r, model, of("mud", 1000))
		near(t, "annulus", w.Capacity(Annulus), 600*boreArea+c.lines*400*boreArea/10, 1e-9)
		near(t, "above the stack", w.Above(Annulus, 400), c.lines*400*boreArea/10, 1e-9)
		near(t, "depth in the line", w.Depth(Annulus, c.lines*100*boreArea/10), 100, 1e-9)
		if err := w.SetFlow(0.02); err != nil {
			t.Fatal(err)
		}
		line := c.rubs * 1e4 * 0.02 / c.lines * 400
		near(t, "stack", pressure(t, w, Annulus, 400), 400*1000*gravity+line, 1e-3)
		near(t, "end", pressure(t, w, Annulus, 1000), 1000*1000*gravity+line+600*2e4*0.02, 1e-3)
		outlet, err := w.Settle(30e6, ideal(nil, always(300)))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "choke", outlet, 30e6-1000*1000*gravity-line-600*2e4*0.02, 1e-3)
	}
}

// TestSettlingIsOnesOwn: a copy's gas does not move the gas of the well that it was copied from.
func TestSettlingIsOnesOwn(t *testing.T) {
	w := plain(t, 1000, of("mud", 1000), of("gas", 100))
	if err := w.Spot(Annulus, 900, 1000, 1); err != nil {
		t.Fatal(err)
	}
	v := w.Clone()
	if _, err := v.Settle(30e6, ideal(map[int]float64{1: 500}, always(300))); err != nil {
		t.Fatal(err)
	}
	if w.Fluid(1).Density != 100 || w.Account(1).Grown != 0 || v.Fluid(1).Density == 100 {
		t.Errorf("%+v and %+v, its copy %+v", w.Fluid(1), w.Account(1), v.Fluid(1))
	}
}

// TestSettleRefuses and leaves the well as it was.
func TestSettleRefuses(t *testing.T) {
	good := ideal(map[int]float64{1: 500}, always(300))
	gives := func(volume, density float64) Room {
		return func(fluid int, _, _ float64) (float64, float64, bool) { return volume, density, fluid == 1 }
	}
	for name, c := range map[string]struct {
		foot  float64
		room  Room
		spoil func(w *Well) error
		want  string
	}{
		"no foot":        {math.NaN(), good, nil, "not a number"},
		"endless foot":   {math.Inf(1), good, nil, "not a number"},
		"reverse":        {20e6, good, func(w *Well) error { return w.SetFlow(-0.01) }, "in reverse"},
		"no room":        {20e6, gives(0, 100), nil, "give both above 0"},
		"no density":     {20e6, gives(1, math.NaN()), nil, "give both above 0"},
		"endless room":   {20e6, gives(math.Inf(1), 1), nil, "give both above 0"},
		"two pieces":     {20e6, good, func(w *Well) error { return w.Spot(Annulus, 100, 200, 1) }, "stands in 2 places"},
		"a piece inside": {20e6, good, func(w *Well) error { return w.Spot(Inside, 100, 200, 1) }, "stands in 2 places"},
		"a hole in the way": {20e6, gives(5, 100), func(w *Well) error {
			w.layout.TVD = func(float64) float64 { return math.NaN() }
			return nil
		}, "finds no volume"},
	} {
		w := plain(t, 1000, of("mud", 1000), of("gas", 100))
		if err := w.Spot(Annulus, 900, 1000, 1); err != nil {
			t.Fatal(err)
		}
		if c.spoil != nil {
			if err := c.spoil(w); err != nil {
				t.Fatal(err)
			}
		}
		before := w.Clone()
		_, err := w.Settle(c.foot, c.room)
		_, _, also := w.Circulate(1, 0, c.foot, c.room)
		for _, err := range []error{err, also} {
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("%s: %v, want %q", name, err, c.want)
			}
		}
		same(t, w, before, 0)
		if !slices.Equal(w.accounts, before.accounts) || !slices.Equal(w.fluids, before.fluids) {
			t.Errorf("%s: the well has changed", name)
		}
	}
	w := plain(t, 1000, of("mud", 1000))
	if _, _, err := w.Circulate(-1, 0, 20e6, good); err == nil {
		t.Error("less than nothing was circulated")
	}
	if w.Above(9, 100) != 0 || w.Depth(-1, 100) != 0 {
		t.Error("something is there that is not")
	}
}

// firstGas is the number of the first parcel in a well with gas.
const firstGas = 4

// drawGas draws a well with one to four parcels of gas in its annulus, settled at any pressure at the end of the string, or at
// one that a choke can hold under the heaviest of the fluids.
func drawGas(t *rapid.T, held bool, temperature func(float64) float64) (w *Well, foot float64) {
	w = drawWell(t)
	if w.layout.Return.Line != nil {
		w.layout.Return.Lines = rapid.IntRange(0, 3).Draw(t, "lines")
		w.layout.Return.Rub = rapid.SampledFrom([]float64{0, 0.7, 1.4}).Draw(t, "rub")
		if err := w.now.cut(&w.layout); err != nil {
			t.Fatal(err)
		}
		w.accounts[0].Start += w.Capacity(Annulus) - w.stacks[Annulus].held()
		w.stacks[Annulus][0].volume = w.Capacity(Annulus)
	}
	parcels := rapid.IntRange(1, 4).Draw(t, "parcels")
	bottom := w.Capacity(Annulus) * rapid.Float64Range(0.5, 1).Draw(t, "gas bottom")
	for i := range parcels {
		density := rapid.Float64Range(50, 300).Draw(t, "gas density")
		w.fluids = append(w.fluids, Fluid{fmt.Sprint("gas ", i), friction.Newton(density, 2e-5)})
		w.accounts = append(w.accounts, Account{})
		top := bottom - w.Capacity(Annulus)*rapid.Float64Range(0.001, 0.1).Draw(t, "parcel")
		if err := w.Spot(Annulus, w.Depth(Annulus, top), w.Depth(Annulus, bottom), firstGas+i); err != nil {
			t.Fatal(err)
		}
		bottom = top
	}
	if err := w.SetFlow(rapid.SampledFrom([]float64{0, 0.005, 0.03}).Draw(t, "flow")); err != nil {
		t.Fatal(err)
	}
	foot = rapid.Float64Range(2e6, 1e8).Draw(t, "foot")
	if held {
		foot += 2200 * gravity * w.layout.TVD(w.End())
	}
	if _, err := w.Settle(foot, ideal(massesOf(w, firstGas), temperature)); err != nil {
		t.Fatal(err)
	}
	return w, foot
}

// hotter is a smooth temperature in K that rises with depth.
func hotter(md float64) float64 { return 280 + 0.03*md }

// TestSettled: the foot is held, the books balance, no gas is made or lost, each parcel has the density of the place where it
// stands, and settling once more changes nothing.
func TestSettled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, foot := drawGas(t, false, hotter)
		sound(t, w)
		for range rapid.IntRange(1, 6).Draw(t, "moves") {
			before := massesOf(w, firstGas)
			out := map[int]float64{}
			for f := range before {
				out[f] = w.Account(f).Returned
			}
			volume := w.Capacity(Annulus) * rapid.SampledFrom([]float64{0, 0.001, 0.1, 0.7}).Draw(t, "pumped")
			_, outlet, err := w.Circulate(volume, rapid.IntRange(0, 2).Draw(t, "fluid"), foot, ideal(before, hotter))
			if err != nil {
				t.Fatal(err)
			}
			sound(t, w)
			if p, _ := w.Pressure(Annulus, w.End()); math.Abs(p-foot) > 1e-9*foot+1e-3 {
				t.Fatalf("%v at the foot, asked for %v", p, foot)
			}
			top := w.now.channels[Annulus].top
			if p, _ := w.Pressure(Annulus, top); math.Abs(p-outlet) > 1e-3 {
				t.Fatalf("%v at the outlet, was told %v", p, outlet)
			}
			after := massesOf(w, firstGas)
			for f, mass := range before {
				left := (w.Account(f).Returned - out[f]) * w.Fluid(f).Density
				if math.Abs(after[f]+left-mass) > 1e-9*mass {
					t.Fatalf("parcel %d: %v kg, now %v and %v have left", f, mass, after[f], left)
				}
			}
			standing(t, w, after)
			again := w.Clone()
			if _, err := again.Settle(foot, ideal(after, hotter)); err != nil {
				t.Fatal(err)
			}
			alike(t, again, w)
		}
	})
}

// standing fails the test unless the gas in the well weighs what the gas law says of the places where it stands, each run of
// the annulus taken in thin slices.
func standing(t *rapid.T, w *Well, masses map[int]float64) {
	for _, l := range w.AppendLayers(nil, Annulus) {
		if l.Fluid < firstGas {
			continue
		}
		mass, from := 0.0, w.Above(Annulus, l.Top)
		const slices = 200
		for i := range slices {
			md := w.Depth(Annulus, from+l.Volume*(float64(i)+0.5)/slices)
			p, _ := w.Pressure(Annulus, md)
			_, density, _ := ideal(map[int]float64{l.Fluid: 1}, hotter)(l.Fluid, md, p)
			mass += density * l.Volume / slices
		}
		if math.Abs(mass-masses[l.Fluid]) > 0.02*mass {
			t.Fatalf("parcel from %v to %v: %v kg, by slices %v", l.Top, l.Bottom, masses[l.Fluid], mass)
		}
	}
}

// alike fails the test unless two annuli hold the same of every fluid under the same choke, but for how closely parcels settle.
func alike(t *rapid.T, a, b *Well) {
	for f := range a.fluids {
		if x, y := a.Volume(Annulus, f), b.Volume(Annulus, f); math.Abs(x-y) > 1e-6*max(a.Capacity(Annulus), 1) {
			t.Fatalf("%v m³ of fluid %d, want %v", x, f, y)
		}
	}
	if x, y := a.layout.Return.BackPressure, b.layout.Return.BackPressure; math.Abs(x-y) > 100 {
		t.Fatalf("%v Pa at the outlet, want %v", x, y)
	}
}

// TestStepsDoNotMatterToGas: while the foot is held, what is pumped at once and in parts ends alike, also when gas leaves.
func TestStepsDoNotMatterToGas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, foot := drawGas(t, true, always(320))
		v := w.Clone()
		volume := w.Capacity(Annulus) * rapid.Float64Range(0.001, 1).Draw(t, "pumped")
		if _, _, err := w.Circulate(volume, 1, foot, ideal(massesOf(w, firstGas), always(320))); err != nil {
			t.Fatal(err)
		}
		parts := rapid.IntRange(2, 30).Draw(t, "parts")
		for range parts {
			if _, _, err := v.Circulate(volume/float64(parts), 1, foot, ideal(massesOf(v, firstGas), always(320))); err != nil {
				t.Fatal(err)
			}
		}
		alike(t, v, w)
	})
}

// TestMorePressureLessGas.
func TestMorePressureLessGas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, foot := drawGas(t, true, hotter)
		masses, total := massesOf(w, firstGas), func(w *Well) (sum float64) {
			for f := firstGas; f < len(w.fluids); f++ {
				sum += w.Volume(Annulus, f)
			}
			return sum
		}
		before := total(w)
		if _, err := w.Settle(foot*rapid.Float64Range(1, 2).Draw(t, "more"), ideal(masses, hotter)); err != nil {
			t.Fatal(err)
		}
		if after := total(w); after > before*(1+1e-6) {
			t.Fatalf("%v m³ under more pressure than %v m³", after, before)
		}
	})
}
