package trajectory

import (
	"math"
	"strings"
	"testing"

	"borewalk/model/handbook"
)

const (
	foot   = 0.3048
	degree = math.Pi / 180
)

// An example is a worked example from print.
type example struct {
	ID           string
	Source       string
	Where        string
	Note         string
	Seen         bool
	TolerancePct float64 `toml:"tolerance_pct"`
	Given        map[string]float64
	Expected     map[string]float64
	Recomputed   map[string]float64
}

// An inside is a point within an arc, in any one unit of length.
type inside struct {
	ID        string
	Stations  [][3]float64
	MD        float64
	At        [3]float64 // depth, north, east
	AnglesDeg [2]float64 `toml:"angles_deg"`
}

type surveys struct {
	Example   []example
	Disputed  []example
	Inside    []inside
	Ottermast []inside
}

// figures works an example out by every means this package has and returns what
// the input allows, by the names used in the test data.
func figures(t *testing.T, given map[string]float64) map[string]float64 {
	t.Helper()
	if kickoff, ok := given["kickoff_ft"]; ok {
		inclination := given["inclination_deg"] * degree
		// The hole of the example turns at one point: the inclined first station
		// below the rotary is just that kink.
		path := mustNew(t, Station{MD: kickoff * foot, Inclination: inclination})
		at := path.At(given["md_ft"] * foot)
		return map[string]float64{"hold_tvd_ft": at.TVD / foot, "hold_departure_ft": at.Departure() / foot}
	}
	a := Station{given["md1_ft"] * foot, given["inc1_deg"] * degree, given["azi1_deg"] * degree}
	b := Station{given["md2_ft"] * foot, given["inc2_deg"] * degree, given["azi2_deg"] * degree}
	path := mustNew(t, a, b)
	top, end := path.At(a.MD), path.At(b.MD)
	factor := RatioFactor(Dogleg(a, b))
	out := map[string]float64{
		"dogleg_deg":             Dogleg(a, b) / degree,
		"ratio_factor":           factor,
		"north_ft":               end.North / foot,
		"east_ft":                end.East / foot,
		"tvd_ft":                 (end.TVD - top.TVD) / foot,
		"severity_deg_per_100ft": end.Dogleg / degree * 100 * foot,
	}
	for _, name := range []string{"north_ft", "east_ft", "tvd_ft"} {
		out["balanced_"+name] = out[name] / factor
	}
	return out
}

func mustNew(t *testing.T, stations ...Station) Path {
	t.Helper()
	path, err := New(stations)
	if err != nil {
		t.Fatal(err)
	}
	return path
}

// within reports whether got is within pct per cent of want.

func TestPublishedSurveys(t *testing.T) {
	data := handbook.Load[surveys](t, "testdata/surveys.toml")
	for _, ex := range data.Example {
		t.Run(ex.ID, func(t *testing.T) {
			got := figures(t, ex.Given)
			if len(ex.Expected) == 0 {
				t.Fatal("nothing expected")
			}
			for name, want := range ex.Expected {
				value, ok := got[name]
				if !ok || !handbook.Within(value, want, ex.TolerancePct) {
					t.Errorf("%s = %v, want %v within %v %% (%s)", name, value, want, ex.TolerancePct, ex.Source)
				}
			}
		})
	}
	for _, ex := range data.Disputed {
		t.Run(ex.ID, func(t *testing.T) {
			got := figures(t, ex.Given)
			for name, want := range ex.Recomputed {
				if !handbook.Within(got[name], want, ex.TolerancePct) {
					t.Errorf("%s = %v, want %v: %s", name, got[name], want, ex.Note)
				}
				if handbook.Within(got[name], ex.Expected[name], ex.TolerancePct) {
					t.Errorf("%s = %v meets the wrong printed answer: %s", name, got[name], ex.Note)
				}
			}
		})
	}
}

func TestInsideTheArc(t *testing.T) {
	for _, c := range handbook.Load[surveys](t, "testdata/surveys.toml").Inside {
		stations := make([]Station, len(c.Stations))
		for i, s := range c.Stations {
			stations[i] = Station{s[0], s[1] * degree, s[2] * degree}
		}
		at := mustNew(t, stations...).At(c.MD)
		got := [3]float64{at.TVD, at.North, at.East}
		for i := range got {
			if math.Abs(got[i]-c.At[i]) > 1e-6 {
				t.Errorf("%s: At = %.9f, want %.9f", c.ID, got, c.At)
				break
			}
		}
		angles := [2]float64{at.Inclination / degree, at.Azimuth / degree}
		for i := range angles {
			if math.Abs(angles[i]-c.AnglesDeg[i]) > 1e-7 {
				t.Errorf("%s: angles %.9f deg, want %.9f", c.ID, angles, c.AnglesDeg)
				break
			}
		}
	}
}

func TestOttermast(t *testing.T) {
	built, err := BuildAndHold(1100, 2.5*degree/30, 32*degree, 118*degree)
	if err != nil {
		t.Fatal(err)
	}
	listed := mustNew(t, Station{368, 0, 0}, Station{1100, 0, 118 * degree},
		Station{1484, 32 * degree, 118 * degree}, Station{3690, 32 * degree, 118 * degree})
	for name, path := range map[string]Path{"built": built, "listed": listed} {
		for _, c := range handbook.Load[surveys](t, "testdata/surveys.toml").Ottermast {
			at := path.At(c.MD)
			for i, got := range []float64{at.TVD, at.North, at.East} {
				if math.Abs(got-c.At[i]) > 2e-6 {
					t.Errorf("%s: At(%v) = %.6f %.6f %.6f, want %.6f", name, c.MD, at.TVD, at.North, at.East, c.At)
					break
				}
			}
			if got := path.TVD(c.MD); got != at.TVD {
				t.Errorf("%s: TVD(%v) = %v, but At gives %v", name, c.MD, got, at.TVD)
			}
		}
		if got := path.At(1300).Dogleg / degree * 30; math.Abs(got-2.5) > 1e-9 {
			t.Errorf("%s: severity in the build = %v deg/30 m, want 2.5", name, got)
		}
		if got := path.At(1300).VerticalSection(118 * degree); math.Abs(got-path.At(1300).Departure()) > 1e-9 {
			t.Errorf("%s: vertical section along the azimuth = %v, want the departure", name, got)
		}
		if path.IsVertical() {
			t.Errorf("%s: IsVertical = true", name)
		}
	}
	if n := len(listed.Stations()); n != 4 {
		t.Errorf("Stations gives %d, want 4", n)
	}
}

func TestVertical(t *testing.T) {
	var zero Path
	listed := mustNew(t, Station{368, 0, 0}, Station{1000, 0, 2}, Station{4000, 0, 1})
	held, err := BuildAndHold(500, 0, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	for name, path := range map[string]Path{"zero": zero, "Vertical": Vertical(), "listed": listed, "held": held} {
		if !path.IsVertical() {
			t.Errorf("%s: IsVertical = false", name)
		}
		for _, md := range []float64{-10, 0, 100, 368, 2500, 9000} {
			if got := path.At(md); got != (Point{MD: md, TVD: md}) {
				t.Errorf("%s: At(%v) = %+v, want straight below the rotary", name, md, got)
			}
			if got := path.TVD(md); got != md {
				t.Errorf("%s: TVD(%v) = %v", name, md, got)
			}
			if got, ok := path.MDAtTVD(md); ok != (md >= 0) || ok && got != md {
				t.Errorf("%s: MDAtTVD(%v) = %v, %v", name, md, got, ok)
			}
		}
	}
}

func TestLevelAndClimbing(t *testing.T) {
	// A quarter circle of 100 m radius from 1000 m to level, then level.
	quarter := 100 * math.Pi / 2
	level := mustNew(t, Station{1000, 0, 0}, Station{1000 + quarter, math.Pi / 2, 0})
	if got := level.TVD(1000 + quarter + 500); math.Abs(got-1100) > 1e-6 {
		t.Errorf("TVD in the level hole = %v, want 1100", got)
	}
	if md, ok := level.MDAtTVD(1100.1); ok {
		t.Errorf("MDAtTVD below the level hole = %v, want none", md)
	}
	if md, ok := level.MDAtTVD(1100 * (1 - 1e-15)); !ok || math.Abs(md-1000-quarter) > 0.01 {
		t.Errorf("MDAtTVD at the level = %v, %v, want %v", md, ok, 1000+quarter)
	}
	// 60 degrees down to 60 degrees up on a radius of 100 m: the lowest point is
	// in the middle, 100 (1 - cos 60) = 50 m below the ends of the arc.
	length := 100 * math.Pi / 3
	dip := mustNew(t, Station{1000, math.Pi / 3, 0}, Station{1000 + length, 2 * math.Pi / 3, 0})
	lowest := 1000 + 100*(1-math.Sin(math.Pi/3))
	if got := dip.TVD(1000 + length/2); math.Abs(got-lowest) > 1e-9 {
		t.Errorf("TVD of the lowest point = %v, want %v", got, lowest)
	}
	if md, ok := dip.MDAtTVD(lowest - 1e-6); !ok || md > 1000+length/2 || math.Abs(dip.TVD(md)-lowest) > 1e-5 {
		t.Errorf("MDAtTVD(just above the lowest point) = %v, %v", md, ok)
	}
	if md, ok := dip.MDAtTVD(lowest + 1e-6); ok {
		t.Errorf("MDAtTVD below the lowest point = %v, want none", md)
	}
}

func TestNewSaysWhatIsWrong(t *testing.T) {
	nan := math.NaN()
	cases := []struct {
		name     string
		stations []Station
		want     []string
	}{
		{"none", nil, []string{"no stations", "give at least one"}},
		{"not a number", []Station{{0, 0, 0}, {100, nan, 0}}, []string{"station 2", "not a number"}},
		{"infinite", []Station{{math.Inf(1), 0, 0}}, []string{"station 1", "not a number"}},
		{"above", []Station{{-1, 0, 0}}, []string{"station 1", "above the rotary"}},
		{"too deep", []Station{{0, 0, 0}, {2e6, 0, 0}}, []string{"station 2", "check the unit"}},
		{"degrees", []Station{{0, 0, 0}, {10, 0.1, 118}}, []string{"station 2", "azimuth", "check the unit"}},
		{"negative inclination", []Station{{0, 0, 0}, {10, -0.1, 0}}, []string{"station 2", "inclination"}},
		{"inclination in degrees", []Station{{0, 0, 0}, {10, 0.1, 0}, {20, 4, 0}}, []string{"station 3", "inclination"}},
		{"repeated", []Station{{0, 0, 0}, {10, 0.1, 0}, {10, 0.2, 0}}, []string{"station 3", "station 2", "10.00 m"}},
		{"half a turn", []Station{{0, 0, 0}, {10, math.Pi, 0}}, []string{"station 2", "put a station between"}},
	}
	for _, c := range cases {
		path, err := New(c.stations)
		if err == nil {
			t.Errorf("%s: New gives no error", c.name)
			continue
		}
		for _, part := range c.want {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%s: New says %q, want it to hold %q", c.name, err, part)
			}
		}
		if !path.IsVertical() {
			t.Errorf("%s: New returns a path with its error", c.name)
		}
	}
}

func TestBuildAndHoldSaysWhatIsWrong(t *testing.T) {
	cases := []struct {
		kickoff, rate, inclination, azimuth float64
		want                                string
	}{
		{math.NaN(), 0.001, 0.5, 0, "not a number"},
		{-1, 0.001, 0.5, 0, "above the rotary"},
		{100, 0, 0.5, 0, "rate above zero"},
		{100, -0.001, 0.5, 0, "rate above zero"},
		{100, 1e-12, 0.5, 0, "deeper than any hole"},
		{100, 0.001, -0.5, 0, "inclination"},
		{100, 0.001, 32, 0, "inclination"},
		{100, 0.001, 0.5, 118, "azimuth"},
	}
	for _, c := range cases {
		_, err := BuildAndHold(c.kickoff, c.rate, c.inclination, c.azimuth)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("BuildAndHold(%v, %v, %v, %v) says %v, want %q", c.kickoff, c.rate, c.inclination, c.azimuth, err, c.want)
		}
	}
}

func TestDepthsThatAreNoNumbers(t *testing.T) {
	path := mustNew(t, Station{100, 0, 0}, Station{500, 1, 1})
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got := path.At(bad); got != (Point{}) {
			t.Errorf("At(%v) = %+v, want the rotary", bad, got)
		}
		if got := path.TVD(bad); got != 0 {
			t.Errorf("TVD(%v) = %v, want 0", bad, got)
		}
		if got, ok := path.MDAtTVD(bad); ok {
			t.Errorf("MDAtTVD(%v) = %v, want none", bad, got)
		}
	}
}

func TestRatioFactorSeriesMeetsFormula(t *testing.T) {
	if got := RatioFactor(0); got != 1 {
		t.Errorf("RatioFactor(0) = %v, want 1", got)
	}
	for _, d := range []float64{1e-300, 1e-9, 1e-5, 0.001, 0.01, 0.0199999, 0.02, 0.0200001, 0.1, 1, 2.9} {
		want := 1.0
		if d > 1e-12 {
			want = math.Tan(d/2) / (d / 2)
		}
		if got := RatioFactor(d); math.Abs(got-want) > 4e-16*want {
			t.Errorf("RatioFactor(%v) = %.17g, want %.17g", d, got, want)
		}
	}
}
