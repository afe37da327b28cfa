package leakoff

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const bar = 1e5

// every returns points at even steps of volume in m³, with pressures in bar.
func every(step float64, pressures ...float64) []Point {
	points := make([]Point, len(pressures))
	for k, p := range pressures {
		points[k] = Point{step * float64(k), p * bar}
	}
	return points
}

// TestReadsTests of many kinds, on a gauge read to 0.5 bar. A line rises by 10 bar from reading to reading where nothing else is said.
func TestReadsTests(t *testing.T) {
	for _, c := range []struct {
		name      string
		pressures []float64
		want      Reading // without the line
	}{
		{"a leak-off", []float64{0, 10, 20, 30, 40, 50, 57, 62, 65}, Reading{LeakOff: 5, Departed: true, Highest: 8}},
		{"an integrity test", []float64{0, 10, 20, 30, 40, 50}, Reading{LeakOff: 5, Highest: 5}},
		{"on a coarse gauge", []float64{0, 10.5, 20, 29.5, 40.5, 49.5, 57, 62, 65}, Reading{LeakOff: 5, Departed: true, Highest: 8}},
		{"breakdown and propagation", []float64{0, 10, 20, 30, 40, 47, 52, 54, 38, 35, 35, 35}, Reading{LeakOff: 4, Departed: true, Highest: 7}},
		{"breakdown at once", []float64{0, 10, 20, 30, 40, 50, 34, 31, 31}, Reading{LeakOff: 5, Departed: true, Highest: 5}},
		{"a slow first reading", []float64{0, 4, 14, 24, 34, 44, 51, 56}, Reading{From: 1, LeakOff: 5, Departed: true, Highest: 7}},
		{"three slow readings", []float64{0, 1, 3, 8, 18, 28, 38, 48, 54, 58}, Reading{From: 3, LeakOff: 7, Departed: true, Highest: 9}},
		{"three slow readings on a line of their own", []float64{0, 3, 6, 9, 19, 29, 39, 49, 55, 59}, Reading{From: 3, LeakOff: 7, Departed: true, Highest: 9}},
		{"filling without pressure", []float64{0, 0, 0, 0, 0.5, 0, 5, 15, 25, 35, 45, 45, 45}, Reading{From: 6, LeakOff: 10, Departed: true, Highest: 10}},
		{"filling that wavers", []float64{0, 1, 2, 0, 0, 4, 14, 24, 34, 44, 49, 52}, Reading{From: 5, LeakOff: 9, Departed: true, Highest: 11}},
		{"air that is pressed out", []float64{0, 0.5, 2, 4.5, 8, 12.5, 18, 24, 30, 36, 42, 48, 51, 52}, Reading{From: 5, LeakOff: 11, Departed: true, Highest: 13}},
		{"a pump that had stood still", []float64{0, 14, 24, 34, 44, 54, 60, 64}, Reading{From: 1, LeakOff: 5, Departed: true, Highest: 7}},
		{"one reading too low", []float64{0, 10, 20, 13, 40, 50, 60, 65, 68}, Reading{LeakOff: 6, LeftOut: []int{3}, Departed: true, Highest: 8}},
		{"one reading too high", []float64{0, 10, 20, 30, 45, 50, 60, 70}, Reading{LeakOff: 7, LeftOut: []int{4}, Highest: 7}},
		{"a first reading a little too low", []float64{0, 10.8, 20, 30, 40, 50}, Reading{From: 1, LeakOff: 5, Highest: 5}},
		{"just enough of a rise", []float64{0, 0.9, 1.7, 2.6}, Reading{LeakOff: 3, Highest: 3}},
		{"one reading too high among the first", []float64{0, 13, 20, 30, 40, 50, 60, 70}, Reading{From: 2, LeakOff: 7, Highest: 7}},
		{"the last reading too low", []float64{0, 10, 20, 30, 40, 50, 55}, Reading{LeakOff: 5, Unconfirmed: true, Highest: 6}},
		{"the last reading too high", []float64{0, 10, 20, 30, 40, 50, 66}, Reading{LeakOff: 5, Highest: 6}},
		{"a bend that begins within the tolerance", []float64{0, 10, 20, 30, 40, 49.6, 58.8, 67.4, 75, 81}, Reading{LeakOff: 4, Departed: true, Highest: 9}},
		{"a bend that has just begun", []float64{0, 10, 20, 30, 40, 49.4, 56}, Reading{LeakOff: 4, Unconfirmed: true, Highest: 6}},
		{"pressure from the beginning", []float64{30, 40, 50, 60, 70, 76, 80}, Reading{LeakOff: 4, Departed: true, Highest: 6}},
		{"a bend after three readings", []float64{0, 10, 20, 26, 30, 33}, Reading{LeakOff: 2, Departed: true, Highest: 5}},
	} {
		got, err := Read(every(0.05, c.pressures...), 0.5*bar)
		got.Intercept, got.Slope = 0, 0
		if err != nil || !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %+v, %v, want %+v", c.name, got, err, c.want)
		}
	}
}

// TestTolerancesByHand: what the gauge can be read to, or half a percent of the highest pressure so far.
func TestTolerancesByHand(t *testing.T) {
	got := tolerances(every(1, 60, 300, 200), 0.5*bar)
	for k, want := range []float64{0.5, 1.5, 1.5} {
		if math.Abs(got[k]/bar-want) > 1e-6 {
			t.Errorf("reading %d: %g bar, want %g", k, got[k]/bar, want)
		}
	}
}

// TestLeaningByHand: through 0, 10.6 and 19.4 goes best the line 10 + 9.7 (k - 1), from which they stray by 0.3, 0.6 and 0.3; a
// fourth may be √(1 + 1/3 + 2²/2) = 1.826 times as far off, and leans below 29.4 - 1.095. Exact readings with a tolerance of
// 1 lean below 30 - 0.183.
func TestLeaningByHand(t *testing.T) {
	for _, c := range []struct {
		pressures []float64
		want      bool
	}{
		{[]float64{0, 10.6, 19.4, 28.35}, false}, {[]float64{0, 10.6, 19.4, 28.25}, true}, {[]float64{0, 10.6, 19.4, 40}, false},
		{[]float64{0, 10, 20, 29.84}, false}, {[]float64{0, 10, 20, 29.79}, true},
	} {
		r := run{points: every(1, c.pressures...), may: []float64{bar, bar, bar, bar}}
		if got := r.leans([]int{0, 1, 2, 3}); got != c.want {
			t.Errorf("%v: %v", c.pressures, got)
		}
	}
}

// TestTheLineByHand: after two slow readings 8 bar at 0.1 m3 and 10 bar for every 0.05 m3 more, 200 bar/m3; back at no volume
// that is 8 - 20 bar. The system takes 0.005 m3/bar.
func TestTheLineByHand(t *testing.T) {
	got, err := Read(every(0.05, 0, 2, 8, 18, 28, 38, 48, 53, 56), 0.1*bar)
	if err != nil || got.From != 2 || got.LeakOff != 6 {
		t.Fatalf("%+v, %v", got, err)
	}
	for what, c := range map[string][2]float64{"slope": {got.Slope, 200 * bar}, "intercept": {got.Intercept, -12 * bar},
		"compliance": {got.Compliance(), 0.005 / bar}, "at 0.5 m3": {got.Line(0.5), 88 * bar}} {
		if math.Abs(c[0]-c[1]) > 1e-9*math.Abs(c[1]) {
			t.Errorf("%s %g, want %g", what, c[0], c[1])
		}
	}
}

// TestTheLineLeavesOutWhatIsOff: neither a misreading nor what lies past the leak-off draws at it. The readings 0, 10.3, 20, 40
// and 50 bar at steps 0, 1, 2, 4 and 5 have, by hand, the mean 24.06 at 2.4 and the slope 172.0/17.2 × 50.
func TestTheLineLeavesOutWhatIsOff(t *testing.T) {
	got, err := Read(every(1, 0, 10.3, 20, 22, 40, 50, 54, 56), 0.5*bar)
	if err != nil || got.LeakOff != 5 || !slices.Equal(got.LeftOut, []int{3}) {
		t.Fatalf("%+v, %v", got, err)
	}
	var x, y, xx, xy, n float64
	for _, k := range []int{0, 1, 2, 4, 5} {
		p := []float64{0, 10.3, 20, 22, 40, 50}[k] * bar
		x, y, xx, xy, n = x+float64(k), y+p, xx+float64(k*k), xy+float64(k)*p, n+1
	}
	slope := (n*xy - x*y) / (n*xx - x*x)
	if intercept := (y - slope*x) / n; math.Abs(got.Slope-slope) > 1e-3 || math.Abs(got.Intercept-intercept) > 1e-3 {
		t.Errorf("%g + %g V, by the sums %g + %g V", got.Intercept, got.Slope, intercept, slope)
	}
}

func TestRefusesWhatIsNoTest(t *testing.T) {
	good := every(0.05, 0, 10, 20, 30, 40)
	with := func(k int, p Point) []Point {
		list := slices.Clone(good)
		list[k] = p
		return list
	}
	for _, c := range []struct {
		name   string
		points []Point
		within float64
		want   string
	}{
		{"nothing", nil, 0, "0 readings: a test has 4 or more"},
		{"three readings", good[:3], 0, "3 readings"},
		{"a volume twice", with(2, Point{0.05, 20 * bar}), 0, "the volume of reading 3, 0.05 m3, does not rise over the 0.05 m3 before it"},
		{"a volume that falls", with(3, Point{0.01, 20 * bar}), 0, "the volume of reading 4"},
		{"a volume that is none", with(1, Point{math.NaN(), 0}), 0, "reading 2 is NaN m3"},
		{"a pressure that is none", with(4, Point{0.2, math.Inf(1)}), 0, "reading 5 is 0.2 m3 and +Inf Pa"},
		{"a gauge below nothing", good, -1, "readings within -1 Pa"},
		{"a gauge that shows nothing", good, math.NaN(), "readings within NaN Pa"},
		{"no pressure", every(0.05, 0, 0, 0, 0, 0, 0), bar, "no straight line of 3 readings"},
		{"pressure that stands", every(0.05, 50, 50, 50, 50, 50), bar, "no straight line of 3 readings"},
		{"pressure that falls", every(0.05, 50, 40, 30, 20, 10), bar, "no straight line of 3 readings"},
		{"a rise that the gauge can hardly tell", every(0.05, 0, 1.2, 2.4, 3.6, 4.8), bar, "no straight line of 3 readings"},
		{"a bend all along", every(0.05, 0, 40, 62, 74, 80, 82), 0.5 * bar, "no straight line of 3 readings"},
		{"a line after the build-up", every(0.05, 0, 15, 33, 45, 52, 58, 64, 70, 76, 82), 0.5 * bar, "reading 2 lies below the line of readings 4 to 10"},
		{"a pump that goes faster", every(0.05, 0, 10, 20, 30, 43, 53, 63, 73, 78, 81), 0.5 * bar, "reading 2 lies below the line of readings 5 to 8"},
		{"a line that two steeper readings end", every(0.05, 0, 10, 20, 30, 40, 50, 70, 85), 0.5 * bar, "and then holds or departs"},
		{"out of all proportion", []Point{{0, 0}, {1, 1e-320}, {2, 2e-320}, {3, 3e-320}}, 0, "check their units"},
		{"beyond all numbers", []Point{{0, 0}, {1e-300, 1e300}, {2e-300, 2e300}, {3e-300, 3e300}}, 0, "no straight line"},
	} {
		got, err := Read(c.points, c.within)
		if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") || !reflect.DeepEqual(got, Reading{}) {
			t.Errorf("%s: %+v, %v, want %q", c.name, got, err, c.want)
		}
	}
}

// test is a drawn test whose departure is known.
type test struct {
	points  []Point
	slow    int // readings before the line
	leakOff int
}

// draw draws a slow start of up to three readings, a line, and what departs from it: at once by half of the slope or more, and
// then ever flatter or falling. Readings are off by so many times what they may be.
func draw(t *rapid.T, off, within float64) test {
	var x test
	volume, pressure := rapid.Float64Range(0, 1).Draw(t, "first volume"), rapid.Float64Range(0, 20*bar).Draw(t, "first pressure")
	step := rapid.Float64Range(0.01, 0.2).Draw(t, "step")
	rise := rapid.Float64Range(12*bar, 40*bar).Draw(t, "rise")
	read := func(part float64) {
		wide := step * rapid.Float64Range(0.7, 1.4).Draw(t, "wide")
		volume += wide
		pressure += part * rise * wide / step
		x.points = append(x.points, Point{volume, pressure + rapid.Float64Range(-off, off).Draw(t, "off")*within})
	}
	x.slow = rapid.IntRange(0, 3).Draw(t, "slow")
	slow := 0.0
	for range x.slow {
		slow = rapid.Float64Range(slow, 0.7).Draw(t, "slow part")
		read(slow)
	}
	for range rapid.IntRange(4, 15).Draw(t, "line") {
		read(1)
	}
	x.leakOff = len(x.points) - 1
	part := 0.5
	for range rapid.IntRange(2, 8).Draw(t, "after") {
		part = rapid.Float64Range(-0.5, part).Draw(t, "part")
		read(part)
	}
	return x
}

// TestFindsTheDeparture of exact readings, to the reading, and the slow start is not on the line.
func TestFindsTheDeparture(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := draw(t, 0, 0)
		got, err := Read(x.points, 0)
		if err != nil || !got.Departed || got.LeakOff != x.leakOff || got.From < x.slow-1 {
			t.Errorf("%+v, %v, want a line from %d to %d", got, err, x.slow, x.leakOff)
		}
	})
}

// TestIsNeverAboveTheDeparture of readings that are off by what they may be.
func TestIsNeverAboveTheDeparture(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := draw(t, 1, bar)
		got, err := Read(x.points, bar)
		if err == nil && (got.LeakOff > x.leakOff || !got.Departed) {
			t.Errorf("%+v, the departure is at %d", got, x.leakOff)
		}
	})
}

// TestNoiseIsNoDeparture: readings off a straight line by no more than they may be never depart.
func TestNoiseIsNoDeparture(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		within := rapid.Float64Range(0.1*bar, 2*bar).Draw(t, "within")
		off := rapid.SampledFrom([]float64{0.5, 1}).Draw(t, "off")
		slope := rapid.Float64Range(5, 50).Draw(t, "rise") * within
		var points []Point
		for k := range rapid.IntRange(8, 40).Draw(t, "readings") {
			points = append(points, Point{float64(k), slope*float64(k) + rapid.Float64Range(-off, off).Draw(t, "off by")*within})
		}
		got, err := Read(points, within)
		if err == nil && (got.Departed || got.Unconfirmed || got.LeakOff != len(points)-1 || len(got.LeftOut) > 0) {
			t.Errorf("%+v", got)
		}
		if off == 0.5 && (err != nil || got.From != 0) {
			t.Errorf("half of what it may be: %+v, %v", got, err)
		}
	})
}

// TestLaterReadingsDoNotMoveADeparture, whatever they are.
func TestLaterReadingsDoNotMoveADeparture(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := draw(t, rapid.Float64Range(0, 2).Draw(t, "noise"), bar)
		points := x.points
		for range rapid.IntRange(0, 10).Draw(t, "later") {
			points = append(points, Point{points[len(points)-1].Volume + rapid.Float64Range(0.01, 1).Draw(t, "volume"), rapid.Float64Range(0, 900*bar).Draw(t, "pressure")})
		}
		var first Reading
		for n := fewest; n <= len(points); n++ {
			got, err := Read(points[:n], bar)
			if first.Departed {
				first.Highest = got.Highest
				if err != nil || !reflect.DeepEqual(got, first) {
					t.Fatalf("with %d readings %+v, %v, before %+v", n, got, err, first)
				}
			} else if err == nil {
				first = got
			}
		}
	})
}

// TestUnitsDoNotMatter: another unit of pressure or of volume, or a meter that does not begin at zero, moves no index.
func TestUnitsDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := draw(t, rapid.Float64Range(0, 1.5).Draw(t, "noise"), bar)
		want, err := Read(x.points, bar)
		if err != nil {
			return
		}
		pressures, volumes := rapid.SampledFrom([]float64{0.125, 1, 64}).Draw(t, "pressures"), rapid.SampledFrom([]float64{0.25, 1, 1024}).Draw(t, "volumes")
		scaled := slices.Clone(x.points)
		for k := range scaled {
			scaled[k] = Point{x.points[k].Volume * volumes, x.points[k].Pressure * pressures}
		}
		got, err := Read(scaled, bar*pressures)
		want.Slope, want.Intercept = want.Slope*pressures/volumes, want.Intercept*pressures
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%+v, %v, want %+v", got, err, want)
		}
	})
}

// TestALinePassesThemAll: there is a straight line within the tolerances of all readings on it, looked for among those through the
// ends of two tolerances, of which there is one if there is any; and none that passes the reading after a departure as well.
func TestALinePassesThemAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := draw(t, rapid.Float64Range(0, 1.5).Draw(t, "noise"), bar)
		r := run{points: x.points, may: tolerances(x.points, bar)}
		from := rapid.IntRange(0, len(x.points)-begin).Draw(t, "from")
		if !r.begins(from) {
			return
		}
		end := r.follow()
		if !passes(&r, r.on) {
			t.Errorf("no line passes %v", r.on)
		}
		next := r.last() + 1
		if on := append(slices.Clone(r.on), next); (end == departs || end == stiffens) && passes(&r, on) {
			t.Errorf("a line passes %v", on)
		}
	})
}

// passes reports whether a line through the ends of two tolerances passes all points within theirs.
func passes(r *run, on []int) bool {
	for i, a := range on {
		for _, b := range on[i+1:] {
			for _, ends := range [][2]float64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
				low, high := r.points[a].Pressure+ends[0]*r.may[a], r.points[b].Pressure+ends[1]*r.may[b]
				slope := (high - low) / (r.points[b].Volume - r.points[a].Volume)
				all := true
				for _, k := range on {
					all = all && math.Abs(low+slope*(r.points[k].Volume-r.points[a].Volume)-r.points[k].Pressure) <= r.may[k]*(1+1e-9)
				}
				if all {
					return true
				}
			}
		}
	}
	return false
}

// TestAnythingIsReadOrRefused: whatever the points are, what is read is finite, in order, and on a line that rises.
func TestAnythingIsReadOrRefused(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-100, 100), rapid.Map(rapid.IntRange(0, 8), func(n int) float64 { return float64(n) }))
		volumes := rapid.SliceOfN(number, 0, 20).Draw(t, "volumes")
		if rapid.Bool().Draw(t, "in order") {
			slices.Sort(volumes)
		}
		var points []Point
		for _, v := range volumes {
			points = append(points, Point{v, number.Draw(t, "pressure")})
		}
		got, err := Read(points, math.Abs(rapid.Float64Range(0, 2).Draw(t, "within")))
		if err != nil {
			return
		}
		for _, x := range []float64{got.Intercept, got.Slope, got.Compliance()} {
			if !finite(x) {
				t.Fatalf("%+v", got)
			}
		}
		if !(got.Slope > 0) || got.From < 0 || got.LeakOff < got.From+begin-1 || got.LeakOff >= len(points) || got.Departed && got.Unconfirmed ||
			got.Departed && got.LeakOff > len(points)-3 {
			t.Errorf("%+v of %d", got, len(points))
		}
	})
}

// BenchmarkRead reads a test of twenty readings, and one of five hundred as a recorder writes it.
func BenchmarkRead(b *testing.B) {
	for name, n := range map[string]int{"by hand": 20, "recorder": 500} {
		points := make([]Point, n)
		for k := range points {
			x := 100 * float64(k) / float64(n)
			points[k] = Point{x, bar * (min(x, 70) + 0.4*max(0, x-70) + 0.3*math.Sin(7*x))}
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if r, err := Read(points, bar/2); err != nil || !r.Departed {
					b.Fatal(r, err)
				}
			}
		})
	}
}
