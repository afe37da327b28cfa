package trajectory

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawStations draws a survey whose inclinations stay at or below steepest.
func drawStations(t *rapid.T, steepest float64) []Station {
	n := rapid.IntRange(1, 12).Draw(t, "n")
	stations := make([]Station, n)
	md := rapid.Float64Range(0, 1500).Draw(t, "first")
	for i := range stations {
		stations[i] = Station{
			MD:          md,
			Inclination: rapid.Float64Range(0, steepest).Draw(t, "inclination"),
			Azimuth:     rapid.Float64Range(0, 2*math.Pi).Draw(t, "azimuth"),
		}
		md += rapid.Float64Range(0.5, 400).Draw(t, "step")
	}
	return stations
}

// drawPath draws a path with stations that New accepts, and the stations.
func drawPath(t *rapid.T, steepest float64) (Path, []Station) {
	stations := drawStations(t, steepest)
	path, err := New(stations)
	if err != nil {
		t.Skip(err)
	}
	return path, stations
}

// goingDown keeps every direction on every arc between two stations below the
// level: 1.4 rad on both sides is less than half a turn apart.
const goingDown = 1.4

func apart(a, b Point) float64 {
	return math.Sqrt((a.TVD-b.TVD)*(a.TVD-b.TVD) + (a.North-b.North)*(a.North-b.North) + (a.East-b.East)*(a.East-b.East))
}

func TestTVDNeverExceedsMD(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path, _ := drawPath(t, math.Pi)
		md := rapid.Float64Range(0, 8000).Draw(t, "md")
		at := path.At(md)
		if at.TVD > md+1e-9 {
			t.Fatalf("At(%v).TVD = %v", md, at.TVD)
		}
		if got := path.TVD(md); got != at.TVD {
			t.Fatalf("TVD(%v) = %v, At gives %v", md, got, at.TVD)
		}
		if length := apart(at, Point{}); length > md+1e-9 {
			t.Fatalf("At(%v) is %v m from the rotary", md, length)
		}
		for name, v := range map[string]float64{"tvd": at.TVD, "north": at.North, "east": at.East,
			"inclination": at.Inclination, "azimuth": at.Azimuth, "dogleg": at.Dogleg} {
			if !finite(v) {
				t.Fatalf("At(%v): %s = %v", md, name, v)
			}
		}
	})
}

func TestAtStationsGivesStations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path, stations := drawPath(t, math.Pi)
		if path.IsVertical() {
			t.Skip("vertical: no stations are kept")
		}
		for i, s := range stations {
			at := path.At(s.MD)
			if at.MD != s.MD || at.Inclination != s.Inclination || at.Azimuth != turnOnce(s.Azimuth) {
				t.Fatalf("At(%v) = %+v, want station %+v", s.MD, at, s)
			}
			// The arcs meet at the station, from above and from below.
			for _, step := range []float64{-1e-6, 1e-6} {
				if i == 0 && step < 0 {
					continue
				}
				if d := apart(at, path.At(s.MD+step)); d > 1.1e-6 {
					t.Fatalf("a step of %v m at %v m moves by %v m", step, s.MD, d)
				}
			}
		}
	})
}

func TestSplittingChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path, stations := drawPath(t, goingDown)
		first, last := stations[0].MD, stations[len(stations)-1].MD
		cut := path.At(rapid.Float64Range(first, last+500).Draw(t, "cut"))
		split := make([]Station, 0, len(stations)+1)
		for _, s := range stations {
			if cut.MD < s.MD && (len(split) == 0 || split[len(split)-1].MD < cut.MD) {
				split = append(split, Station{cut.MD, cut.Inclination, cut.Azimuth})
			}
			if s.MD == cut.MD {
				t.Skip("the cut is a station")
			}
			split = append(split, s)
		}
		if last < cut.MD {
			split = append(split, Station{cut.MD, cut.Inclination, cut.Azimuth})
		}
		again, err := New(split)
		if err != nil {
			t.Fatal(err)
		}
		for range 5 {
			md := rapid.Float64Range(0, last+1000).Draw(t, "md")
			if d := apart(path.At(md), again.At(md)); d > 1e-6 {
				t.Fatalf("cut at %v m moves the point at %v m by %v m", cut.MD, md, d)
			}
		}
	})
}

// TestDirectionIsTheSlope holds position and direction together: the direction
// at a point is the rate at which the position changes.
func TestDirectionIsTheSlope(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path, stations := drawPath(t, math.Pi)
		if len(stations) < 2 || path.IsVertical() {
			t.Skip("no arc")
		}
		i := rapid.IntRange(1, len(stations)-1).Draw(t, "interval")
		length := stations[i].MD - stations[i-1].MD
		md := stations[i-1].MD + length*rapid.Float64Range(0.1, 0.9).Draw(t, "share")
		h := length * 1e-4
		a, b, at := path.At(md-h), path.At(md+h), path.At(md)
		d := direction(Station{0, at.Inclination, at.Azimuth})
		slope := vector{(b.TVD - a.TVD) / (2 * h), (b.North - a.North) / (2 * h), (b.East - a.East) / (2 * h)}
		off := math.Abs(d.down-slope.down) + math.Abs(d.north-slope.north) + math.Abs(d.east-slope.east)
		if off > 1e-6 {
			t.Fatalf("at %v m the direction is %+v and the slope %+v", md, d, slope)
		}
	})
}

func TestMDAtTVDInverts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path, _ := drawPath(t, goingDown)
		md := rapid.Float64Range(0, 9000).Draw(t, "md")
		got, ok := path.MDAtTVD(path.TVD(md))
		if !ok || math.Abs(got-md) > 1e-7 {
			t.Fatalf("MDAtTVD(TVD(%v)) = %v, %v", md, got, ok)
		}
	})
}

// TestMDAtTVDIsTheFirst compares with a plain walk down paths of any shape.
func TestMDAtTVDIsTheFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		path, stations := drawPath(t, math.Pi)
		tvd := rapid.Float64Range(0, 3000).Draw(t, "tvd")
		end := stations[len(stations)-1].MD + 100
		walked, found := 0.0, false
		const step = 1.0
		for md := 0.0; md <= end && !found; md += step {
			if path.TVD(md) >= tvd {
				walked, found = md, true
			}
		}
		got, ok := path.MDAtTVD(tvd)
		if ok && math.Abs(path.TVD(got)-tvd) > 1e-8 {
			t.Fatalf("MDAtTVD(%v) = %v, where the depth is %v", tvd, got, path.TVD(got))
		}
		if found && (!ok || got > walked || got < walked-step && path.TVD(got) < tvd-1e-8) {
			t.Fatalf("MDAtTVD(%v) = %v, %v; a walk finds it at %v", tvd, got, ok, walked)
		}
	})
}

func TestManyStations(t *testing.T) {
	const n = 100_000
	stations := make([]Station, n)
	for i := range stations {
		// A gentle spiral: both angles change at every station.
		stations[i] = Station{MD: 0.1 * float64(i), Inclination: 1.2 * float64(i) / n, Azimuth: math.Mod(float64(i)*1e-4, 2*math.Pi)}
	}
	path := mustNew(t, stations...)
	for _, i := range []int{0, 1, 2, n / 3, n / 2, n - 2, n - 1} {
		if at := path.At(stations[i].MD); at.Inclination != stations[i].Inclination {
			t.Errorf("At(station %d) = %+v, want %+v", i, at, stations[i])
		}
		md := stations[i].MD + 0.05
		if got, ok := path.MDAtTVD(path.TVD(md)); !ok || math.Abs(got-md) > 1e-7 {
			t.Errorf("MDAtTVD(TVD(%v)) = %v, %v", md, got, ok)
		}
	}
	// Every hundredth station is enough to know a hole that bends so slowly.
	var thin []Station
	for i := 0; i < n; i += 100 {
		thin = append(thin, stations[i])
	}
	thin = append(thin, stations[n-1])
	if d := apart(path.At(stations[n-1].MD), mustNew(t, thin...).At(stations[n-1].MD)); d > 0.05 {
		t.Errorf("thinning the survey moves the end by %v m", d)
	}
}
