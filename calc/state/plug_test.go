package state

import (
	"math"
	"testing"
)

func TestPlugsRide(t *testing.T) {
	w := hung(t, nil)
	if err := w.Drop(Plug{Name: "dart"}); err != nil {
		t.Fatal(err)
	}
	must(t, w, 3, 1)
	if err := w.Drop(Plug{Name: "plug", Seat: 900, Holds: true}); err != nil {
		t.Fatal(err)
	}
	must(t, w, 6, 0)
	plugs := w.AppendPlugs(nil)
	near(t, "dart", plugs[0].MD, 9/pipeArea, 1e-6)
	near(t, "dart, to the end", plugs[0].ToSeat, 1000*pipeArea-9, 1e-9)
	near(t, "plug", plugs[1].MD, 6/pipeArea, 1e-6)
	near(t, "plug, to its seat", plugs[1].ToSeat, 900*pipeArea-6, 1e-9)
	pumped, err := w.Pump(100, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "until the bump", pumped, 900*pipeArea-6, 1e-9)
	// The dart rides 100 m ahead of the plug, just to the end, and leaves there.
	if plugs = w.AppendPlugs(nil); len(plugs) != 1 || !plugs[0].Landed || plugs[0].MD != 900 || !w.Bumped() {
		t.Errorf("after the bump: %+v", plugs)
	}
	if pumped, err := w.Reverse(5, 0); pumped != 0 || err != nil {
		t.Errorf("Reverse against a landed plug = %v, %v", pumped, err)
	}
}

func TestPlugsComeBack(t *testing.T) {
	w := hung(t, nil)
	if err := w.Drop(Plug{Name: "ball", Seat: 500, Holds: true}); err != nil {
		t.Fatal(err)
	}
	must(t, w, 5, 0)
	if _, err := w.Reverse(4, 0); err != nil {
		t.Fatal(err)
	}
	near(t, "on its way back", w.AppendPlugs(nil)[0].MD, 1/pipeArea, 1e-6)
	if _, err := w.Reverse(2, 0); err != nil {
		t.Fatal(err)
	}
	if plugs := w.AppendPlugs(nil); len(plugs) != 0 {
		t.Errorf("reversed out: %+v", plugs)
	}
}

// TestBurstPlugLetsPass: a plug that does not hold stays on its seat.
func TestBurstPlugLetsPass(t *testing.T) {
	w := hung(t, nil)
	if err := w.Drop(Plug{Seat: 500}); err != nil {
		t.Fatal(err)
	}
	must(t, w, 40, 0)
	if p := w.AppendPlugs(nil)[0]; !p.Landed || p.MD != 500 || w.Bumped() {
		t.Errorf("%+v, bumped %v", p, w.Bumped())
	}
}

// TestPlugInAMovedString: the seat goes with the string, and so does a landed plug.
func TestPlugInAMovedString(t *testing.T) {
	w := drill(t, false)
	if err := w.Drop(Plug{Seat: 500, Holds: true}); err != nil {
		t.Fatal(err)
	}
	must(t, w, 2, 0)
	if _, err := w.Lower(100); err != nil {
		t.Fatal(err)
	}
	p := w.AppendPlugs(nil)[0]
	near(t, "seat", p.Seat, 600, 1e-6)
	near(t, "plug", p.MD, 2/(math.Pi/4*0.15*0.15), 1e-6) // open string: fluid came in below it
	near(t, "to its seat", p.ToSeat, 600*math.Pi/4*0.15*0.15-2, 1e-6)
	if _, err := w.Pump(100, 0); err != nil || !w.Bumped() {
		t.Fatal(err, w.Bumped())
	}
	// Shut by the plug, the string now goes down closed.
	out := w.Account(0).Returned + w.Account(1).Returned
	if _, err := w.Lower(50); err != nil {
		t.Fatal(err)
	}
	near(t, "pushed out", w.Account(0).Returned+w.Account(1).Returned-out, math.Pi/4*0.04*50, 1e-6)
	near(t, "landed plug", w.AppendPlugs(nil)[0].MD, 650, 1e-6)
	near(t, "level", w.Level(), 50, 1e-6)
}

func TestPlugWithoutASeatInTheString(t *testing.T) {
	w := hung(t, nil)
	for _, seat := range []float64{-1, 1001, math.NaN(), math.Inf(1)} {
		if err := w.Drop(Plug{Seat: seat}); err == nil {
			t.Errorf("a seat at %v: no error", seat)
		}
	}
}

// TestPlugInAClosedString: new pipe comes in above a plug, empty, and goes again.
func TestPlugInAClosedString(t *testing.T) {
	w := drill(t, true)
	area := math.Pi / 4 * 0.15 * 0.15
	if err := w.Drop(Plug{Seat: 500}); err != nil {
		t.Fatal(err)
	}
	must(t, w, 2, 0)
	if _, err := w.Lower(100); err != nil {
		t.Fatal(err)
	}
	near(t, "plug lowered", w.AppendPlugs(nil)[0].MD, 2/area+100, 1e-6)
	if _, err := w.Raise(150); err != nil {
		t.Fatal(err)
	}
	near(t, "plug raised", w.AppendPlugs(nil)[0].MD, 2/area-50, 1e-6)
	if _, err := w.Raise(70); err != nil {
		t.Fatal(err)
	}
	if plugs := w.AppendPlugs(nil); len(plugs) != 0 {
		t.Errorf("pulled with its pipe: %+v", plugs)
	}
}
