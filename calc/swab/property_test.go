package swab

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/friction"
)

// anyString draws a string of one or two sizes in a hole of one or two.
func anyString(t *rapid.T, yield float64) *String {
	index := 1.0 // without yield, so that nothing jumps: a power law has a yield point of its own to the plainest correlation
	if yield > 0 {
		index = rapid.SampledFrom([]float64{1, 0.7}).Draw(t, "index")
	}
	s := &String{Model: rapid.SampledFrom(friction.Correlations()).Draw(t, "correlation"), Fluid: friction.HerschelBulkley(
		rapid.Float64Range(900, 2200).Draw(t, "density"), yield, rapid.Float64Range(0.001, 0.08).Draw(t, "consistency"), index)}
	bottom := 0.0
	for range rapid.IntRange(1, 3).Draw(t, "lengths") {
		r := Reach{Length: rapid.Float64Range(1, 2000).Draw(t, "length"), Outer: rapid.Float64Range(0.15, 0.6).Draw(t, "outer")}
		r.Inner = r.Outer * rapid.Float64Range(0.2, 0.92).Draw(t, "ratio")
		r.ID = r.Inner * rapid.Float64Range(0.2, 0.9).Draw(t, "bore")
		if rapid.Bool().Draw(t, "joints") {
			r.Joint, r.Share = r.Inner*1.06, 0.05
		}
		bottom += r.Length
		r.Bottom = bottom
		s.Add(r)
		s.Bores = append(s.Bores, Bore{Length: r.Length, ID: r.ID})
	}
	return s
}

func anyYield(t *rapid.T) float64 {
	return rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(0, 20)).Draw(t, "yield stress")
}

func anyEnd(t *rapid.T) End { return rapid.SampledFrom([]End{Closed, Filling, Open}).Draw(t, "end") }

// TestSurgeMirrorsSwab, rises with speed, and is nothing at rest.
func TestSurgeMirrorsSwab(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		end, yield := anyEnd(t), 0.0
		if end != Open { // where a length of annulus stands still beside an open end, the pressure there is only bounded
			yield = anyYield(t)
		}
		s := anyString(t, yield)
		speed := rapid.Float64Range(0.001, 2).Draw(t, "speed")
		down, up := s.Rise(Move{Speed: speed, End: end}, math.Inf(1)), s.Rise(Move{Speed: -speed, End: end}, math.Inf(1))
		if down != -up {
			t.Errorf("down %g Pa, up %g Pa", down, up)
		}
		if rest := s.Rise(Move{End: end}, math.Inf(1)); rest != 0 {
			t.Errorf("%g Pa at rest", rest)
		}
		if more := s.Rise(Move{Speed: 1.3 * speed, End: end}, math.Inf(1)); more < down*(1-1e-6)-2 {
			t.Errorf("%g Pa, faster %g Pa", down, more)
		}
	})
}

// TestAnOpenEndNeverPressesMore than a closed one, and both ways to it lose the same where anything enters.
func TestAnOpenEndNeverPressesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyString(t, anyYield(t))
		m := Move{Speed: rapid.Float64Range(0.001, 2).Draw(t, "speed"), End: Open}
		shut, open := s.Rise(Move{Speed: m.Speed}, math.Inf(1)), s.Rise(m, math.Inf(1))
		if open > shut*(1+1e-12) || open < -1 {
			t.Errorf("closed %g Pa, open %g Pa", shut, open)
		}
		enters := -s.through(m)
		if enters < 0 {
			t.Errorf("%g m3/s leave", -enters)
		}
	})
}

// TestOpenEndsBalance to within what the search allows: without a yield stress no way jumps.
func TestOpenEndsBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyString(t, 0)
		m := Move{Speed: rapid.Float64Range(0.001, 2).Draw(t, "speed"), End: Open}
		enters := -s.through(m)
		outside, inside := s.atFoot(m, -enters), s.up(enters)
		if math.Abs(outside-inside) > 1e-6*inside+5 {
			t.Errorf("%g m3/s enter: %g Pa outside, %g Pa inside", enters, outside, inside)
		}
	})
}

// TestALimitTakesTheRoom of one place and no more of the others.
func TestALimitTakesTheRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyString(t, 0)
		foot := s.reaches[len(s.reaches)-1].Bottom
		places := []Place{
			{foot * rapid.Float64Range(0.1, 0.9).Draw(t, "depth"), rapid.Float64Range(1e4, 1e6).Draw(t, "room")},
			{foot * 1.1, rapid.Float64Range(1e4, 1e6).Draw(t, "room")},
		}
		sign := rapid.SampledFrom([]float64{1, -1}).Draw(t, "way")
		const fastest = 5.0
		speed, at := s.Limit(Move{Speed: sign}, places, fastest)
		if speed < 0 || speed > fastest {
			t.Fatalf("%g m/s", speed)
		}
		for k, p := range places {
			left := p.Room - sign*s.Rise(Move{Speed: sign * speed}, p.MD)
			if left < -101 || speed < fastest && k == at && left > 101 {
				t.Errorf("at %g m/s place %d has %g Pa left; place %d limits", speed, k, left, at)
			}
		}
	})
}

// TestLimitsAtTheEnds: no room leaves no speed, much room any.
func TestLimitsAtTheEnds(t *testing.T) {
	s := String{Model: friction.BinghamSlot{}, Fluid: friction.Bingham(1200, 0.02, 5)}
	s.Add(Reach{Bottom: 1000, Length: 1000, Outer: 0.3, Inner: 0.2})
	for _, c := range []struct {
		room, want float64
	}{{-1, 0}, {0, 0}, {1000, 0}, {1e12, 3}} {
		if got, _ := s.Limit(Move{Speed: -1}, []Place{{1000, c.room}}, 3); got != c.want {
			t.Errorf("room of %g Pa: %g m/s, want %g", c.room, got, c.want)
		}
	}
	if got, _ := s.Limit(Move{Speed: 1}, nil, 3); got != 3 {
		t.Errorf("no place: %g m/s", got)
	}
}

func BenchmarkLimit(b *testing.B) {
	s := String{Model: friction.BinghamSlot{}, Fluid: friction.Bingham(1420, 0.026, 8.6)}
	bottom := 0.0
	for _, r := range []Reach{{Length: 350, Outer: 0.495, Inner: 0.149, ID: 0.13, Joint: 0.178, Share: 0.05}, {Length: 20, Outer: 0.476, Inner: 0.149, ID: 0.13, Joint: 0.178, Share: 0.05},
		{Length: 1780, Outer: 0.314, Inner: 0.149, ID: 0.13, Joint: 0.178, Share: 0.05}, {Length: 900, Outer: 0.318, Inner: 0.149, ID: 0.13, Joint: 0.178, Share: 0.05},
		{Length: 110, Outer: 0.318, Inner: 0.14, ID: 0.08}, {Length: 55, Outer: 0.318, Inner: 0.2, ID: 0.07}, {Length: 30, Outer: 0.318, Inner: 0.21, ID: 0.07}} {
		bottom += r.Length
		r.Bottom = bottom
		s.Add(r)
	}
	places := []Place{{2150, 20e5}, {2500, 22e5}, {3250, 21e5}}
	b.ReportAllocs()
	for b.Loop() {
		s.Limit(Move{Speed: -1}, places, 5)
	}
}
