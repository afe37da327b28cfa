package spaceout

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// TestByHand: pipe of 10 m joints from 500 m up, tool joints of 0.6 m: at 350 m one reaches from 349.7 to 350.3. A ram at
// 352 m on a tide from 1 m below to 1 m above with 0.5 m of heave gets from 350.5 to 353.5, 0.2 m off. It is clear by 0.5 m
// when the string is 0.3 m higher: then 349.4 to 350.0.
func TestByHand(t *testing.T) {
	pipes := []Pipe{{0, 500, 10, 0.6}}
	ram := Sweep(352, 1, 1, 0.5)
	if !near(ram.Shallowest, 350.5) || !near(ram.Deepest, 353.5) {
		t.Errorf("the ram gets from %g to %g", ram.Shallowest, ram.Deepest)
	}
	joints := Joints(pipes, 340, 365)
	if len(joints) != 3 { // 360, 350 and 340
		t.Fatalf("%v", joints)
	}
	off, j, ok := ram.Nearest(joints)
	if !ok || !near(off, 0.2) || !near(j.Top, 349.7) || !near(j.Bottom, 350.3) {
		t.Errorf("%g m off %v, want 0.2", off, j)
	}
	if lift, ok := Lift(pipes, []Ram{ram}, 0.5, 10); !ok || !near(lift, 0.3) {
		t.Errorf("lift %g, %v, want 0.3", lift, ok)
	}
	if lift, ok := Lift(pipes, []Ram{ram, Sweep(361.5, 1, 1, 0.5)}, 0.5, 10); !ok || !near(lift, 0.8) {
		// The second gets from 360.0 to 363.0: across the joint that ends at 360.3 until that is 0.8 m higher.
		t.Errorf("lift %g, %v, want 0.8", lift, ok)
	}
	if _, ok := Lift(pipes, []Ram{Sweep(352, 3, 3, 2)}, 0.5, 10); ok {
		t.Error("a ram that sweeps 10 m cannot be clear of joints every 10 m")
	}
}

func drawPipes(t *rapid.T) []Pipe {
	top, bottom := 0.0, rapid.Float64Range(400, 3000).Draw(t, "bottom")
	tool := rapid.Float64Range(0.3, 1).Draw(t, "tool")
	every := rapid.Float64Range(8, 14).Draw(t, "every")
	return []Pipe{{top, bottom, every, tool}}
}

func drawRam(t *rapid.T) Ram {
	return Sweep(rapid.Float64Range(100, 300).Draw(t, "ram"), rapid.Float64Range(0, 1.5).Draw(t, "low"), rapid.Float64Range(0, 1.5).Draw(t, "high"),
		rapid.Float64Range(0, 1.5).Draw(t, "heave"))
}

// TestAJointLengthChangesNothing: picked up by the length of a joint the string stands as before.
func TestAJointLengthChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pipes, ram := drawPipes(t), drawRam(t)
		off, _, ok := ram.Nearest(Joints(pipes, 0, 3000))
		up := []Pipe{pipes[0]}
		up[0].Bottom -= up[0].Every
		again, _, ok2 := ram.Nearest(Joints(up, 0, 3000))
		if !ok || !ok2 || !near(off, again) {
			t.Errorf("%g m off, a joint higher %g m", off, again)
		}
	})
}

// TestTideMovesTheRamOneToOne: a rise of the sea without more range is the same as a deeper ram, and as a string that is
// lifted by as much.
func TestTideMovesTheRamOneToOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pipes := drawPipes(t)
		depth, rise := rapid.Float64Range(100, 300).Draw(t, "ram"), rapid.Float64Range(-2, 2).Draw(t, "rise")
		risen := Sweep(depth, -rise, rise, 0)
		if !near(risen.Shallowest, depth+rise) || !near(risen.Deepest, depth+rise) {
			t.Fatalf("a ram at %g m is between %g and %g m after a rise of %g m", depth, risen.Shallowest, risen.Deepest, rise)
		}
		off, _, _ := risen.Nearest(Joints(pipes, 0, 3000))
		lifted := []Pipe{pipes[0]}
		lifted[0].Bottom -= rise
		same, _, _ := Ram{depth, depth}.Nearest(Joints(lifted, 0, 3000))
		if !near(off, same) {
			t.Errorf("risen %g m off, lifted %g m", off, same)
		}
	})
}

// TestTheSweepIsEveryMomentOfIt: the distance over tide and heave is the least of the distances at moments between.
func TestTheSweepIsEveryMomentOfIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pipes, ram := drawPipes(t), drawRam(t)
		joints := Joints(pipes, 0, 3000)
		off, _, _ := ram.Nearest(joints)
		least := math.Inf(1)
		for k := range 2001 {
			at := ram.Shallowest + (ram.Deepest-ram.Shallowest)*float64(k)/2000
			if d, _, _ := (Ram{at, at}).Nearest(joints); d < least {
				least = d
			}
		}
		if off > 0 && !near(off, least) || off < 0 && least > 0.005 {
			t.Errorf("%g m off, moment by moment %g m", off, least)
		}
	})
}

// TestTheLiftIsTheLeast: after it all rams are clear, and at none of many lesser ones they are.
func TestTheLiftIsTheLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pipes := drawPipes(t)
		rams := []Ram{drawRam(t), drawRam(t), drawRam(t)}
		clear := rapid.Float64Range(0, 1).Draw(t, "clear")
		most := pipes[0].Every
		clearAt := func(lift float64) bool {
			up := []Pipe{pipes[0]}
			up[0].Bottom -= lift
			for _, r := range rams {
				if off, _, _ := r.Nearest(Joints(up, 0, 3000)); off < clear-1e-4 {
					return false
				}
			}
			return true
		}
		lift, ok := Lift(pipes, rams, clear, most)
		if ok && !clearAt(lift) {
			t.Errorf("not clear after %g m", lift)
		}
		end := lift
		if !ok {
			end = most
		}
		for k := range 500 {
			x := (end - 0.01) * float64(k) / 500
			if x >= 0 && clearAt(x+0) && x < end-0.01 && !nearlyClear(pipes, rams, clear, x) {
				t.Fatalf("lift %g, %v; but %g m does as well", lift, ok, x)
			}
		}
	})
}

// nearlyClear reports whether a lift is at the very edge of being clear, where rounding decides.
func nearlyClear(pipes []Pipe, rams []Ram, clear, lift float64) bool {
	up := []Pipe{pipes[0]}
	up[0].Bottom -= lift
	for _, r := range rams {
		if off, _, _ := r.Nearest(Joints(up, 0, 3000)); off < clear+1e-4 {
			return true
		}
	}
	return false
}

// TestHungByHand: on a ram at 350 m with 10 m joints and 0.6 m tool joints the joint that hangs reaches from 349.4 to 350 and
// the next from 339.4 to 340. A ram at 349.2 m is 0.2 m off; one at 340.2 m is 0.2 m off the next. A pup of 3 m puts that one
// to 336.4 to 337 and itself between: then the ram at 340.2 is 3.2 m off, its pup's joint being at 346.4 to 347.
func TestHungByHand(t *testing.T) {
	h := Hanging{Ram: 350, Others: []float64{340.2}, Every: 10, Tool: 0.6, Clear: 0.5, StickUp: 2}
	got, ok := Hang(h)
	if !ok || got.Clear || !near(got.Off[0], 0.2) || len(got.Used) != 0 {
		t.Errorf("without pups %+v", got)
	}
	h.Pups = []Pup{{1, 1}, {3, 1}}
	got, ok = Hang(h)
	// 1 m: joints 348.4 to 349 and 338.4 to 339, 1.2 m off; the shorter of the two that clear it.
	if !ok || !got.Clear || !near(got.Off[0], 1.2) || !near(got.Pup(), 1) {
		t.Errorf("with pups %+v", got)
	}
	// Top: 349.7 - 1 = 348.7 to be filled to 2 m above the rotary: 36 joints, 11.3 m stick up; 35 leave 1.3 m.
	if got.Joints != 36 || !near(got.StickUp, 11.3) {
		t.Errorf("%d joints, stick-up %g, want 36 and 11.3", got.Joints, got.StickUp)
	}
}

func TestHungIsWhatItSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := Hanging{Ram: rapid.Float64Range(50, 2500).Draw(t, "ram"), Every: rapid.Float64Range(8, 14).Draw(t, "every"), Tool: rapid.Float64Range(0.3, 1).Draw(t, "tool"),
			Clear: rapid.Float64Range(0, 1).Draw(t, "clear"), StickUp: rapid.Float64Range(0, 5).Draw(t, "stick up")}
		for range rapid.IntRange(0, 4).Draw(t, "others") {
			h.Others = append(h.Others, h.Ram+rapid.Float64Range(-6, 3).Draw(t, "other"))
		}
		for range rapid.IntRange(0, 3).Draw(t, "pups") {
			h.Pups = append(h.Pups, Pup{rapid.Float64Range(1, 6).Draw(t, "pup"), rapid.IntRange(0, 2).Draw(t, "count")})
		}
		got, ok := Hang(h)
		if !ok {
			t.Fatal("no string")
		}
		top := h.Ram - h.Tool/2 - got.Pup() - float64(got.Joints)*h.Every
		if !near(-top, got.StickUp) || got.StickUp < h.StickUp-1e-4 || got.StickUp >= h.StickUp+h.Every+1e-4 && got.Joints > 0 {
			t.Errorf("%d joints and %g m of pups end %g m above the rotary, said %g", got.Joints, got.Pup(), -top, got.StickUp)
		}
		for k, off := range got.Off {
			if got.Clear && off < h.Clear-1e-5 {
				t.Errorf("clear, but %g m off ram %d", off, k)
			}
		}
		if plain, _ := Hang(Hanging{h.Ram, h.Others, h.Every, h.Tool, nil, h.Clear, h.StickUp}); plain.Clear && (len(got.Used) > 0 || !got.Clear) {
			t.Error("a pup where none is needed")
		}
	})
}

func TestNoSense(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, h := range []Hanging{{}, {Ram: nan, Every: 10}, {Ram: 100, Every: 0}, {Ram: 100, Every: 1, Tool: 2}, {Ram: inf, Every: 10}, {Ram: 1e9, Every: 1}, {Ram: 100, Every: 10, StickUp: nan}} {
		if got, ok := Hang(h); ok {
			t.Errorf("%+v hangs: %+v", h, got)
		}
	}
	for _, p := range []Pipe{{}, {0, 100, 0, 1}, {0, 100, nan, 1}, {100, 0, 10, 1}, {0, nan, 10, 1}, {0, 100, 10, -1}} {
		if got := Joints([]Pipe{p}, 0, 100); len(got) != 0 {
			t.Errorf("%+v has joints: %v", p, got)
		}
	}
	if got := Joints([]Pipe{{0, 1e6, 0.001, 0}}, 0, 1e6); len(got) > mostJoints {
		t.Errorf("%d joints", len(got))
	}
}
