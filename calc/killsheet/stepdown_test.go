package killsheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/bore"
	"borewalk/calc/column"
)

// near fails the test unless got is want to a share of it, or to a hair of nothing.
func near(t interface {
	Helper()
	Errorf(string, ...any)
}, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)+1e-9) {
		t.Errorf("%s = %v, want %v", what, got, want)
	}
}

// build is a path straight down to a kick-off and then on a slant whose cosine is given.
func build(kickOff, cosine float64) func(md float64) float64 {
	return func(md float64) float64 { return min(md, kickOff) + max(0, md-kickOff)*cosine }
}

// drawString draws a string of one to four bores with a path that goes down all the way, and the pressures of a kill.
func drawString(t *rapid.T) StepDown {
	s := StepDown{
		TVD:         build(rapid.Float64Range(10, 2000).Draw(t, "kick-off"), rapid.Float64Range(0.05, 1).Draw(t, "cosine")),
		SIDPP:       rapid.Float64Range(1e5, 1e7).Draw(t, "SIDPP"),
		Overbalance: rapid.Float64Range(0, 2e6).Draw(t, "overbalance"),
		Slow:        rapid.Float64Range(1e6, 1e7).Draw(t, "slow"),
	}
	at := 0.0
	for range rapid.IntRange(1, 4).Draw(t, "bores") {
		length := rapid.Float64Range(50, 2000).Draw(t, "length")
		s.Inside = append(s.Inside, bore.Interval{Top: at, Bottom: at + length, Outer: rapid.Float64Range(0.05, 0.15).Draw(t, "bore")})
		at += length
	}
	s.Final = s.Slow * rapid.Float64Range(1, 1.3).Draw(t, "heavier")
	return s
}

// TestTheFormationIsHeld: with kill mud of the exact density, schedule less friction and the two columns in the string make the
// formation's pressure and the overbalance at every step.
func TestTheFormationIsHeld(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawString(t)
		mud := rapid.Float64Range(1000, 2000).Draw(t, "mud")
		tvd := s.TVD(s.bit())
		kill := must(KillDensity(mud, s.SIDPP, s.Overbalance, tvd))(t)
		s.Final = must(Final(s.Slow, kill, mud))(t)
		want := mud*column.G*tvd + s.SIDPP + s.Overbalance
		near(t, "kill mud alone", kill*column.G*tvd, want, 1e-12)
		for _, at := range must(s.Steps(17))(t) {
			friction := s.Slow + (s.Final-s.Slow)*at.MD/s.bit()
			near(t, "bottom hole", at.Pressure-friction+column.G*(kill*at.TVD+mud*(tvd-at.TVD)), want, 1e-12)
			near(t, "static", at.Static+friction, at.Pressure, 1e-12)
			near(t, "volume", at.Volume, bore.Between(s.Inside, 0, at.MD), 1e-9)
		}
	})
}

// TestTheScheduleEnds at the initial and the final pressure, and falls all the way where the static part falls faster than
// friction rises.
func TestTheScheduleEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawString(t)
		list := must(s.Steps(rapid.IntRange(1, 60).Draw(t, "steps")))(t)
		near(t, "first", list[0].Pressure, must(Initial(s.SIDPP, s.Overbalance, s.Slow))(t), 1e-12)
		near(t, "last", list[len(list)-1].Pressure, s.Final, 1e-9)
		near(t, "bit", list[len(list)-1].MD, s.bit(), 1e-9)
		steepest := 1.0 // the least that a metre along hole goes down by
		if deepest := s.bit(); s.TVD(deepest) < deepest {
			steepest = s.TVD(deepest) - s.TVD(deepest-1)
		}
		if (s.Final-s.Slow)/s.bit() >= (s.SIDPP+s.Overbalance)/s.TVD(s.bit())*steepest {
			return
		}
		for k := 1; k < len(list); k++ {
			if list[k].Pressure > list[k-1].Pressure {
				t.Errorf("%v after %v", list[k], list[k-1])
			}
		}
	})
}

// TestTheStraightLineIsExact in a vertical string of one bore.
func TestTheStraightLineIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawString(t)
		s.TVD, s.Inside = build(1e6, 1), s.Inside[:1]
		over, under, err := s.Straight()
		if err != nil || over.Above() > 1e-6 || under.Above() < -1e-6 {
			t.Errorf("over %+v, under %+v, %v", over, under, err)
		}
		list := must(s.Steps(10))(t)
		for k, at := range list {
			near(t, "line", at.Pressure, list[0].Pressure+(list[10].Pressure-list[0].Pressure)*float64(k)/10, 1e-9)
		}
	})
}

// TestTheStraightLineInASlantedHole, in closed form: in one bore the line is off most at the kick-off, by the static pressure
// times K (1/TVD - 1/MD), and never below. The kick-off lies between two looks, nearer to the one or to the other.
func TestTheStraightLineInASlantedHole(t *testing.T) {
	for _, kickOff := range []float64{1000.3, 1001.37} {
		s := StepDown{Inside: []bore.Interval{{Bottom: 4000, Outer: 0.1}}, TVD: build(kickOff, 0.5),
			SIDPP: 4e6, Overbalance: 1e6, Slow: 3e6, Final: 3.3e6}
		over, under, err := s.Straight()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "over", over.Above(), 5e6*kickOff*(1/(kickOff+(4000-kickOff)/2)-1.0/4000), 1e-9)
		near(t, "where", over.MD, kickOff, 1e-8)
		if under.Above() < -1e-6 {
			t.Errorf("under %+v", under)
		}
	}
}

// TestTheStraightLineInATaperedString, by hand: 1000 m of a bore of twice the area above 1000 m more. Two thirds of the volume
// fill half the depth, so that the line, falling 3 MPa in all, is half a MPa too low there.
func TestTheStraightLineInATaperedString(t *testing.T) {
	wide := 0.1 * math.Sqrt2
	s := StepDown{Inside: []bore.Interval{{Bottom: 1000, Outer: wide}, {Top: 1000, Bottom: 2000, Outer: 0.1}}, TVD: build(1e6, 1),
		SIDPP: 4e6, Slow: 3e6, Final: 4e6}
	over, under, err := s.Straight()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "under", under.Above(), -0.5e6, 1e-9)
	near(t, "where", under.MD, 1000, 1e-9)
	if over.Above() > 1e-6 {
		t.Errorf("over %+v", over)
	}
}

// TestNothingIsFurtherOffTheLine than what was found, looked for by volume where the search goes by depth.
func TestNothingIsFurtherOffTheLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawString(t)
		over, under, err := s.Straight()
		if err != nil {
			t.Fatal(err)
		}
		list := must(s.Steps(500))(t)
		first, last := list[0].Pressure, list[500].Pressure
		widest := 0.0
		for _, in := range s.Inside {
			widest = max(widest, in.Capacity())
		}
		// Of two places that are nearly as bad the one may be found that is not: by less than a look can hide.
		steepest := (s.SIDPP+s.Overbalance)/s.TVD(s.bit()) + math.Abs(last-first)*widest/bore.Volume(s.Inside)
		slack := steepest*s.bit()/looks + 1e-6
		for k, at := range list {
			above := first + (last-first)*float64(k)/500 - at.Pressure
			if above > over.Above()+slack || above < under.Above()-slack {
				t.Errorf("%v above at %v, found %v and %v", above, at, over.Above(), under.Above())
			}
		}
	})
}

// TestHorizontalHole: the static part is gone at the bend, and the pressure rises with friction from there.
func TestHorizontalHole(t *testing.T) {
	s := StepDown{Inside: []bore.Interval{{Bottom: 4000, Outer: 0.1}}, TVD: build(2000, 0), SIDPP: 4e6, Slow: 3e6, Final: 3.4e6}
	list := must(s.Steps(4))(t)
	for k, want := range []float64{7e6, 5.1e6, 3.2e6, 3.3e6, 3.4e6} {
		near(t, "pressure", list[k].Pressure, want, 1e-12)
	}
	if at := must(s.At(bore.Area(0.1) * 1000))(t); at != list[1] {
		t.Errorf("%+v, want %+v", at, list[1])
	}
}

func TestStringsThatMakeNoSchedule(t *testing.T) {
	good := StepDown{Inside: []bore.Interval{{Bottom: 2000, Outer: 0.1}}, TVD: build(1e6, 1), SIDPP: 1e6, Slow: 1e6, Final: 1e6}
	for name, spoil := range map[string]func(s *StepDown){
		"a gap": func(s *StepDown) {
			s.Inside = []bore.Interval{{Bottom: 10, Outer: 0.1}, {Top: 11, Bottom: 2000, Outer: 0.1}}
		},
		"not from above": func(s *StepDown) { s.Inside = []bore.Interval{{Top: 5, Bottom: 2000, Outer: 0.1}} },
		"no room":        func(s *StepDown) { s.Inside = []bore.Interval{{Bottom: 2000, Outer: 0.1, Inner: 0.1}} },
		"no length":      func(s *StepDown) { s.Inside = []bore.Interval{{Outer: 0.1}} },
		"no string":      func(s *StepDown) { s.Inside = nil },
		"no path":        func(s *StepDown) { s.TVD = nil },
		"a path up":      func(s *StepDown) { s.TVD = func(md float64) float64 { return -md } },
		"a path unknown": func(s *StepDown) { s.TVD = func(float64) float64 { return math.NaN() } },
		"unknown midway": func(s *StepDown) {
			s.TVD = func(md float64) float64 { return max(md, 2000) * math.Sqrt(math.Abs(md-1000)-10) }
		},
		"no SIDPP":        func(s *StepDown) { s.SIDPP = -1 },
		"no slow":         func(s *StepDown) { s.Slow = math.NaN() },
		"too wide a bore": func(s *StepDown) { s.Inside = []bore.Interval{{Bottom: 2000, Outer: 1e200}} },
	} {
		s := good
		spoil(&s)
		if list, err := s.Steps(4); err == nil {
			t.Errorf("%s: %+v", name, list)
		}
		if over, under, err := s.Straight(); err == nil {
			t.Errorf("%s: %+v, %+v", name, over, under)
		}
	}
	for _, n := range []int{0, -1, mostSteps + 1} {
		if list, err := good.Steps(n); err == nil {
			t.Errorf("%d steps: %d", n, len(list))
		}
	}
	if at, err := (&StepDown{}).At(0); err == nil {
		t.Errorf("nothing: %+v", at)
	}
	whole := bore.Volume(good.Inside)
	for _, v := range []float64{-1, whole * 1.01, math.NaN()} {
		if at, err := good.At(v); err == nil {
			t.Errorf("%v m³: %+v", v, at)
		}
	}
}

// joints is a string as a tally gives it, on a path that builds.
func joints() StepDown {
	s := StepDown{TVD: build(1000, 0.6), SIDPP: 4e6, Slow: 3e6, Final: 3.3e6}
	for k := range 150 {
		s.Inside = append(s.Inside, bore.Interval{Top: float64(k) * 30, Bottom: float64(k+1) * 30, Outer: 0.1 + 0.0001*float64(k%7)})
	}
	return s
}

func BenchmarkSteps(b *testing.B) {
	s := joints()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Steps(20); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkStraight(b *testing.B) {
	s := joints()
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := s.Straight(); err != nil {
			b.Fatal(err)
		}
	}
}
