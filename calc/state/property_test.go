package state

import (
	"math"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/friction"

	"pgregory.net/rapid"
)

// drawWell draws a well: one to four sizes of bore, one to four of string, some with
// an inner string, with a float, with a choke line, or open to the sea.
func drawWell(t *rapid.T) *Well {
	var l Layout
	md := 0.0
	for range rapid.IntRange(1, 4).Draw(t, "spans") {
		length := rapid.Float64Range(100, 1000).Draw(t, "length")
		l.Bore = append(l.Bore, bore.Span{Top: md, Bottom: md + length, Diameter: rapid.Float64Range(0.3, 0.6).Draw(t, "bore")})
		md += length
	}
	end := rapid.Float64Range(60, md).Draw(t, "end")
	at := -rapid.Float64Range(0, 300).Draw(t, "above the rotary")
	for n := rapid.IntRange(1, 4).Draw(t, "bodies"); n > 0; n-- {
		bottom := end
		if n > 1 {
			bottom = at + (end-at)*rapid.Float64Range(0.1, 0.8).Draw(t, "share")
		}
		od := rapid.Float64Range(0.12, 0.28).Draw(t, "od")
		l.String = append(l.String, bore.Body{Top: at, Bottom: bottom, OD: od, ID: od * rapid.Float64Range(0.7, 0.95).Draw(t, "id")})
		at = bottom
	}
	if rapid.IntRange(0, 3).Draw(t, "inner string") == 0 {
		top := end * rapid.Float64Range(0.1, 0.4).Draw(t, "inner top")
		od := rapid.Float64Range(0.04, 0.08).Draw(t, "inner od")
		l.Inner = []bore.Body{{Top: top, Bottom: end * rapid.Float64Range(0.5, 1).Draw(t, "inner end"), OD: od, ID: od * 0.8}}
	}
	l.Float = rapid.Bool().Draw(t, "float")
	switch rapid.IntRange(0, 2).Draw(t, "outlet") {
	case 0:
		l.Return = ToRig(3)
	case 1:
		l.Return = ToSea(min(80, end/2), 50, 1030, 3)
	case 2:
		stack := min(80, end/2)
		l.Return = Return{MD: stack, Line: bore.Profile{{Top: 0, Bottom: stack, Diameter: 0.0762}}, BackPressure: 2e6, Fluid: 3}
	}
	build := rapid.Float64Range(50, 1000).Draw(t, "kick-off")
	slant := rapid.Float64Range(0, 1).Draw(t, "slant")
	l.TVD = func(md float64) float64 { return min(md, build) + slant*max(md-build, 0) }
	l.Friction = rapid.SampledFrom(friction.Correlations()).Draw(t, "correlation")
	fluids := make([]Fluid, 4)
	for i := range fluids {
		fluids[i] = Fluid{"", friction.HerschelBulkley(
			rapid.Float64Range(900, 2200).Draw(t, "density"),
			rapid.SampledFrom([]float64{0, 5, 15}).Draw(t, "yield stress"),
			rapid.Float64Range(0.001, 0.08).Draw(t, "consistency"),
			rapid.SampledFrom([]float64{0.6, 1}).Draw(t, "index"),
		)}
	}
	w, err := New(l, fluids, 0)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// act does one thing to a well, in a number of parts.
type act struct {
	name   string
	amount float64
	fluid  int
}

func drawAct(t *rapid.T, names ...string) act {
	return act{
		rapid.SampledFrom(names).Draw(t, "act"),
		rapid.OneOf(rapid.Float64Range(0, 3), rapid.Float64Range(0, 400), rapid.SampledFrom([]float64{0, 1e-13, 1e-9, 2000})).Draw(t, "amount"),
		rapid.IntRange(0, 3).Draw(t, "fluid"),
	}
}

func (a act) do(t *rapid.T, w *Well, parts int) {
	var err error
	for range parts {
		part := a.amount / float64(parts)
		switch a.name {
		case "pump":
			_, err = w.Pump(part, a.fluid)
		case "fill":
			_, err = w.Fill(part, a.fluid)
		case "reverse":
			if _, err = w.Reverse(part, a.fluid); w.layout.Float {
				err = nil
			}
		case "lower":
			_, err = w.Lower(part)
		case "raise":
			_, err = w.Raise(part)
		case "advance":
			_, err = w.Advance(part+0.1, float64(a.fluid)*0.02, a.fluid)
		case "drop":
			err = w.Drop(Plug{Seat: w.End() * float64(a.fluid) / 3, Holds: part > 1})
		case "flow":
			err = w.SetFlow(float64(a.fluid-1) * 0.03)
		}
		if err != nil {
			t.Fatalf("%+v: %v", a, err)
		}
	}
}

// sound fails the test unless the well's books balance and its pressures hang
// together.
func sound(t *rapid.T, w *Well) {
	for f := range w.fluids {
		a := w.Account(f)
		in, out := a.Start+a.Pumped+a.Back+a.Grown, w.Held(f)+a.Returned+a.Drained
		if math.Abs(in-out) > 1e-9*max(in, 1) || min(a.Pumped, a.Back, a.Returned, a.Drained) < 0 {
			t.Fatalf("fluid %d: in %v, held or out %v: %+v", f, in, out, a)
		}
	}
	for c := range Conduit(conduits) {
		channel := &w.now.channels[c]
		at, volume := channel.top, 0.0
		layers := w.AppendLayers(nil, c)
		for i, l := range layers {
			if l.Top != at || !(l.Bottom >= l.Top) || !(l.Volume > 0) || i > 0 && l.Fluid == layers[i-1].Fluid ||
				l.Fluid == Nothing && (c != Inside || i > 0) {
				t.Fatalf("%v: layer %d of %+v", c, i, layers)
			}
			at = l.Bottom
			volume += l.Volume
		}
		if len(layers) > 0 && at != channel.bottom || math.Abs(volume-channel.capacity) > 1e-8 {
			t.Fatalf("%v from %v to %v with %v m³ holds %v m³: %+v", c, channel.top, channel.bottom, channel.capacity, volume, layers)
		}
		last := math.Inf(-1)
		for _, l := range layers {
			const near = 1e-5 // m; steepest is a narrow line at full flow
			for _, md := range []float64{l.Top, l.Top + 0.3*(l.Bottom-l.Top), l.Bottom} {
				p, ok := w.Pressure(c, md)
				below, ok2 := w.Pressure(c, min(md+near, channel.bottom))
				if !ok || !ok2 || math.IsNaN(p) || math.IsInf(p, 0) {
					t.Fatalf("%v: no pressure at %v: %v %v", c, md, p, ok)
				}
				if math.Abs(p-below) > 10+1e-7*math.Abs(p) && w.flow == 0 {
					t.Fatalf("%v: jumps from %v to %v at %v", c, p, below, md)
				}
				if rising := c != Inside && w.flow >= 0; rising && p < last-1e-3 {
					t.Fatalf("%v: falls from %v to %v at %v", c, last, p, md)
				}
				last = p
			}
		}
	}
	foot, _ := w.Pressure(Annulus, w.End())
	below, _ := w.Pressure(Pocket, w.End())
	inside, _ := w.Pressure(Inside, w.End())
	if math.Abs(foot-below) > 1e-3 {
		t.Fatalf("round the end of the string: annulus %v, pocket %v", foot, below)
	}
	if w.Empty() == 0 && math.Abs(foot-inside) > 1e-3 {
		t.Fatalf("round the end of the string: annulus %v, inside %v", foot, inside)
	}
	if p := w.PumpPressure(); !(p >= 0) {
		t.Fatalf("pump pressure %v", p)
	}
	for _, p := range w.AppendPlugs(nil) {
		if !(p.MD >= 0 && p.MD <= w.End()+joined) || !(p.ToSeat >= 0) {
			t.Fatalf("plug at %+v", p)
		}
	}
}

// TestAnySequence: whatever is done in whatever order, nothing is created or lost.
func TestAnySequence(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWell(t)
		sound(t, w)
		for range rapid.IntRange(1, 12).Draw(t, "acts") {
			drawAct(t, "pump", "pump", "fill", "reverse", "lower", "raise", "advance", "drop", "flow").do(t, w, 1)
			sound(t, w)
		}
	})
}

// TestStepsDoNotMatter: the same acts in one piece and in many end alike.
func TestStepsDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWell(t)
		names := []string{"pump", "pump", "fill", "reverse", "lower"}
		if w.layout.Float {
			names = append(names, "raise")
		}
		v := w.Clone()
		for range rapid.IntRange(1, 8).Draw(t, "acts") {
			a := drawAct(t, names...)
			if a.amount < 1e-3 { // moves of less than a micrometre are none
				continue
			}
			a.do(t, w, 1)
			a.do(t, v, rapid.IntRange(2, 30).Draw(t, "parts"))
			same(t, v, w, 1e-5)
		}
	})
}

// TestPumpAndReverse: what is pumped down and reversed out again leaves no trace.
func TestPumpAndReverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWell(t)
		w.layout.Float = false
		before := w.Clone()
		// As much as the annulus has of the fluid at its top, so that all that left
		// was that fluid.
		volume := w.Capacity(Annulus) * rapid.Float64Range(0, 1).Draw(t, "volume")
		for range 3 {
			if _, err := w.Pump(volume/3, rapid.IntRange(0, 3).Draw(t, "fluid")); err != nil {
				t.Fatal(err)
			}
		}
		if _, err := w.Reverse(volume, 0); err != nil {
			t.Fatal(err)
		}
		same(t, w, before, 1e-6)
	})
}

// TestLowerAndRaise: down and up again gives back every fluid to its place when the
// string is closed, and the volume in any case.
func TestLowerAndRaise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWell(t)
		closed := w.layout.Float
		w.layout.Return.Fluid = 0
		if err := w.Spot(Pocket, w.End(), w.End()+rapid.Float64Range(0, 500).Draw(t, "spotted"), 2); err != nil {
			t.Fatal(err)
		}
		before, pocket := w.Clone(), w.Capacity(Pocket)
		length := rapid.Float64Range(0.001, 300).Draw(t, "length")
		down, err := w.Lower(length)
		if err != nil {
			t.Fatal(err)
		}
		inner := len(w.now.inner) > 0
		up, err := w.Raise(down)
		if err != nil || math.Abs(up-down) > 2*joined && !inner {
			t.Fatalf("down %v, up %v: %v", down, up, err)
		}
		in, out := 0.0, 0.0
		for f := range w.fluids {
			in, out = in+w.Account(f).Back, out+w.Account(f).Returned
		}
		if math.Abs(in-out) > 1e-5 || math.Abs(w.Capacity(Pocket)-pocket) > 1e-5 {
			t.Fatalf("%v came back of %v; pocket %v, was %v", in, out, w.Capacity(Pocket), pocket)
		}
		if closed && out < w.Capacity(Annulus) {
			same(t, w, before, 1e-5)
		}
	})
}

// TestHeavierPushesHarder: pressure grows with any density, back pressure and flow.
func TestHeavierPushesHarder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWell(t)
		for range 4 {
			drawAct(t, "pump", "lower").do(t, w, 1)
		}
		if err := w.SetFlow(rapid.Float64Range(0, 0.08).Draw(t, "flow")); err != nil {
			t.Fatal(err)
		}
		outlet := w.now.channels[Annulus].top
		md := outlet + (w.End()-outlet)*rapid.Float64Range(0, 1).Draw(t, "at")
		p, _ := w.Pressure(Annulus, md)
		v := w.Clone()
		v.fluids = append([]Fluid(nil), w.fluids...)
		for i := range v.fluids {
			v.fluids[i].Density *= rapid.Float64Range(1, 1.5).Draw(t, "heavier")
		}
		if got, _ := v.Pressure(Annulus, md); got < p-1e-6 {
			t.Fatalf("heavier fluids: %v, lighter %v", got, p)
		}
		if err := v.SetFlow(w.flow * 1.5); err != nil {
			t.Fatal(err)
		}
		faster := v.Clone()
		faster.fluids = w.fluids
		if got, _ := faster.Pressure(Annulus, md); got < p-1e-6 {
			t.Fatalf("more flow: %v, less %v", got, p)
		}
		if err := w.SetBackPressure(w.layout.Return.BackPressure + 1e5); err != nil {
			t.Fatal(err)
		}
		if got, _ := w.Pressure(Annulus, md); math.Abs(got-p-1e5) > 1e-3 {
			t.Fatalf("a bar more at the outlet: %v, before %v", got, p)
		}
	})
}

// TestCaughtUp: with free fall on the way or not, in whatever steps, a full string
// ends as if it had been pumped by volume.
func TestCaughtUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWell(t)
		plainly, v := w.Clone(), w.Clone()
		for range rapid.IntRange(1, 4).Draw(t, "stages") {
			volume, fluid := rapid.Float64Range(0.5, 40).Draw(t, "volume"), rapid.IntRange(0, 3).Draw(t, "fluid")
			rate := rapid.Float64Range(0.005, 0.06).Draw(t, "rate")
			if _, err := plainly.Pump(volume, fluid); err != nil {
				t.Fatal(err)
			}
			for _, run := range []struct {
				w     *Well
				parts int
			}{{w, 1}, {v, 20}} {
				for range run.parts {
					s, err := run.w.Advance(volume/rate/float64(run.parts), rate, fluid)
					if err != nil || math.IsNaN(s.Pressure) || s.Level > 0 && s.Pressure != 0 {
						t.Fatalf("%+v, %v", s, err)
					}
					sound(t, run.w)
				}
			}
		}
		for _, got := range []*Well{w, v} {
			// What is lacking now has gone up the annulus before its time.
			lacking, full := got.Empty(), plainly.Clone()
			if _, err := full.Pump(lacking, 1); err != nil {
				t.Fatal(err)
			}
			if _, err := got.Pump(lacking, 1); err != nil {
				t.Fatal(err)
			}
			same(t, got, full, 1e-5)
		}
	})
}
