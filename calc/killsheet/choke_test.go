package killsheet

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/column"
)

// TestTheStackFeelsNothing of the pump that is brought up: what the casing gauge shows, the line's column and its loss make the
// same pressure at the stack at every step; what the open choke cannot give is told.
func TestTheStackFeelsNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sicp, rate := rapid.Float64Range(0, 1e7).Draw(t, "SICP"), rapid.Float64Range(0.005, 0.05).Draw(t, "rate")
		loss := rapid.Float64Range(0, 1e7).Draw(t, "loss")
		power := rapid.SampledFrom([]float64{1, Square, Turbulent}).Draw(t, "power")
		mud, height := rapid.Float64Range(1000, 2000).Draw(t, "mud"), rapid.Float64Range(100, 3000).Draw(t, "height")
		n := rapid.IntRange(1, 20).Draw(t, "steps")
		line := mud * column.G * height
		list := must(BringUp(sicp, rate, n, PowerLaw(loss, rate, power)))(t)
		if len(list) != n+1 || list[0] != (ChokeStep{Casing: sicp}) {
			t.Fatalf("%+v", list)
		}
		near(t, "last rate", list[n].Rate, rate, 1e-12)
		for k, at := range list {
			share := float64(k) / float64(n)
			near(t, "rate", at.Rate, rate*share, 1e-12)
			near(t, "loss", at.Loss, loss*math.Pow(share, power), 1e-9)
			near(t, "stack", at.Casing+line+at.Loss-at.Excess, sicp+line, 1e-12)
			if at.Casing > 0 && at.Excess > 0 {
				t.Errorf("%+v has an excess though the choke can be opened", at)
			}
		}
	})
}

// TestBringingUpByHand: 3 MPa, a loss of 4 MPa at 20 l/s by the square, four steps of 5 l/s.
func TestBringingUpByHand(t *testing.T) {
	list := must(BringUp(3e6, 0.02, 4, PowerLaw(4e6, 0.02, Square)))(t)
	for k, want := range []ChokeStep{
		{Casing: 3e6}, {0.005, 0.25e6, 2.75e6, 0}, {0.01, 1e6, 2e6, 0}, {0.015, 2.25e6, 0.75e6, 0}, {0.02, 4e6, 0, 1e6},
	} {
		near(t, "rate", list[k].Rate, want.Rate, 1e-12)
		near(t, "loss", list[k].Loss, want.Loss, 1e-12)
		near(t, "casing", list[k].Casing, want.Casing, 1e-12)
		near(t, "excess", list[k].Excess, want.Excess, 1e-12)
	}
}

// TestTheChokeLineScales as its two laws say, and twice the length loses twice as much.
func TestTheChokeLineScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := ChokeLine{rapid.Float64Range(10, 4000).Draw(t, "length"), rapid.Float64Range(0.03, 0.15).Draw(t, "bore")}
		mud, other := rapid.Float64Range(900, 2200).Draw(t, "mud"), rapid.Float64Range(900, 2200).Draw(t, "other")
		flow, faster := rapid.Float64Range(0.001, 0.1).Draw(t, "flow"), rapid.Float64Range(0, 0.1).Draw(t, "faster")
		loss := must(line.Loss(mud, flow))(t)
		scaled := must(AtRate(must(AtDensity(loss, mud, other))(t), flow, faster, Turbulent))(t)
		near(t, "scaled", scaled, must(line.Loss(other, faster))(t), 1e-9)
		line.Length *= 2
		near(t, "twice as long", must(line.Loss(mud, flow))(t), 2*loss, 1e-12)
		near(t, "velocity", must(line.Velocity(flow))(t)*math.Pi/4*line.Diameter*line.Diameter, flow, 1e-12)
	})
}

func TestALawThatFails(t *testing.T) {
	lost := errors.New("lost")
	if list, err := BringUp(1e6, 0.01, 3, func(float64) (float64, error) { return 0, lost }); !errors.Is(err, lost) {
		t.Errorf("%v, %v", list, err)
	}
	if list, err := BringUp(1e6, 0.01, 0, PowerLaw(1e5, 0.01, Square)); err == nil {
		t.Errorf("no steps: %v", list)
	}
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		if list, err := BringUp(1e6, 0.01, 3, func(float64) (float64, error) { return bad, nil }); err == nil {
			t.Errorf("a loss of %v: %v", bad, list)
		}
	}
}
