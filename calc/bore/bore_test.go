package bore

import (
	"math"
	"strings"
	"testing"

	"borewalk/model/handbook"
)

const (
	inch   = 0.0254
	foot   = 0.3048
	gallon = 231 * inch * inch * inch
	barrel = 42 * gallon
)

type capacities struct {
	Example []struct {
		ID, Source, Where, Note string
		Seen                    bool
		TolerancePct            float64 `toml:"tolerance_pct"`
		Given, Expected         map[string]float64
	}
	Sections, String []map[string]any
	Pipe             []pipe
	Disputed         []pipe
}

type pipe struct {
	ID, Source, Where string
	Seen              bool
	IDIn              float64 `toml:"id_in"`
	Capacity          float64 `toml:"capacity_bbl_per_ft"`
	Digits            int
	Recomputed        float64 `toml:"recomputed_bbl_per_ft"`
}

// near fails the test unless got is within pct per cent of the value called name.
func near(t *testing.T, c map[string]any, name string, got float64) {
	t.Helper()
	want, ok := c[name].(float64)
	if !ok {
		t.Fatalf("%s is not in the test data", name)
	}
	if math.Abs(got-want) > want*c["tolerance_pct"].(float64)/100 {
		t.Errorf("%s = %v, want %v (%s)", name, got, want, c["source"])
	}
}

func TestPublishedCapacities(t *testing.T) {
	for _, ex := range handbook.Load[capacities](t, "testdata/capacities.toml").Example {
		i := Interval{Bottom: ex.Given["length_ft"] * foot, Outer: ex.Given["hole_in"] * inch, Inner: ex.Given["pipe_od_in"] * inch}
		got := map[string]float64{
			"capacity_m3_per_m":   i.Capacity(),
			"capacity_bbl_per_ft": i.Capacity() * foot / barrel,
			"capacity_gal_per_ft": i.Capacity() * foot / gallon,
			"capacity_ft3_per_ft": i.Capacity() / (foot * foot),
			"length_ft_per_bbl":   barrel / i.Capacity() / foot,
			"length_ft_per_gal":   gallon / i.Capacity() / foot,
			"volume_bbl":          i.Volume() / barrel,
			"volume_ft3":          i.Volume() / (foot * foot * foot),
		}
		if len(ex.Expected) == 0 {
			t.Errorf("%s: nothing expected", ex.ID)
		}
		for name, want := range ex.Expected {
			value, ok := got[name]
			if !ok || math.Abs(value-want) > want*ex.TolerancePct/100 {
				t.Errorf("%s: %s = %v, want %v within %v %% (%s)", ex.ID, name, value, want, ex.TolerancePct, ex.Source)
			}
		}
	}
}

func TestPublishedSections(t *testing.T) {
	for _, c := range handbook.Load[capacities](t, "testdata/capacities.toml").Sections {
		f := func(name string) float64 { return c[name].(float64) }
		shoe := f("cased_pipe_length_ft") * foot
		collars := shoe + f("open_hole_pipe_length_ft")*foot
		bottom := collars + f("collar_length_ft")*foot
		outer := Profile{{0, shoe, f("casing_id_in") * inch, "casing"}, {shoe, bottom, f("hole_in") * inch, "hole"}}
		inner := []Body{{0, collars, f("pipe_od_in") * inch, 0, "pipe"}, {collars, bottom, f("collar_od_in") * inch, 0, "collars"}}
		cut := Intervals(outer, inner, 0, bottom)
		if len(cut) != 3 {
			t.Fatalf("Intervals gives %d, want 3: %+v", len(cut), cut)
		}
		near(t, c, "cased_pipe_annulus_bbl", Between(cut, 0, shoe)/barrel)
		near(t, c, "open_hole_pipe_annulus_bbl", cut[1].Volume()/barrel)
		near(t, c, "collar_annulus_bbl", Between(cut, bottom, collars)/barrel)
		near(t, c, "total_annulus_bbl", Volume(cut)/barrel)
	}
}

func TestPublishedString(t *testing.T) {
	for _, c := range handbook.Load[capacities](t, "testdata/capacities.toml").String {
		f := func(name string) float64 { return c[name].(float64) }
		collars := f("pipe_length_ft") * foot
		bottom := collars + f("collar_length_ft")*foot
		bodies := []Body{
			{0, collars, f("pipe_od_in") * inch, f("pipe_id_in") * inch, "pipe"},
			{collars, bottom, f("collar_od_in") * inch, f("collar_id_in") * inch, "collars"},
		}
		near(t, c, "pipe_volume_bbl", Volume(Inside(bodies, 0, collars))/barrel)
		near(t, c, "collar_volume_bbl", Volume(Inside(bodies, collars, bottom))/barrel)
		near(t, c, "string_volume_bbl", Volume(Inside(bodies, 0, bottom))/barrel)
		near(t, c, "pipe_displacement_bbl", OpenEnd(bodies, 0, collars)/barrel)
		near(t, c, "collar_displacement_bbl", OpenEnd(bodies, collars, bottom)/barrel)
		near(t, c, "string_displacement_bbl", OpenEnd(bodies, 0, bottom)/barrel)
		closed := Volume(Inside(bodies, 0, bottom)) + OpenEnd(bodies, 0, bottom)
		if got := ClosedEnd(bodies, 0, bottom); math.Abs(got-closed) > 1e-12 {
			t.Errorf("ClosedEnd = %v, want bore and steel %v", got, closed)
		}
	}
}

func TestPipeTables(t *testing.T) {
	data := handbook.Load[capacities](t, "testdata/capacities.toml")
	for _, p := range data.Pipe {
		got := Area(p.IDIn*inch) * foot / barrel
		// Half a unit of the last place, and the trade's 1029.4 for 1029.41.
		if math.Abs(got-p.Capacity) > 0.5*math.Pow10(-p.Digits)+2e-5*p.Capacity {
			t.Errorf("%s: capacity %v bbl/ft, want %v to %d places (%s)", p.ID, got, p.Capacity, p.Digits, p.Source)
		}
	}
	for _, p := range data.Disputed {
		got := Area(p.IDIn*inch) * foot / barrel
		if math.Abs(got-p.Recomputed) > 1e-9 || math.Abs(got-p.Capacity) < 0.001 {
			t.Errorf("%s: capacity %v bbl/ft, want %v and not the printed %v", p.ID, got, p.Recomputed, p.Capacity)
		}
	}
}

func TestEnlarged(t *testing.T) {
	if got := Area(Enlarged(0.4445, 0.3)) / Area(0.4445); math.Abs(got-1.3) > 1e-12 {
		t.Errorf("Enlarged by 30 %% holds %v times the volume", got)
	}
	gauge := Interval{Bottom: 1, Outer: 0.4445, Inner: 0.346}
	wide := gauge
	wide.Outer = EnlargedAround(gauge.Outer, gauge.Inner, 0.6)
	if got := wide.Volume() / gauge.Volume(); math.Abs(got-1.6) > 1e-12 {
		t.Errorf("EnlargedAround by 60 %% holds %v times the annulus", got)
	}
	cases := []struct{ got, want float64 }{
		{Enlarged(0.3, -1), 0},
		{Enlarged(0.3, math.NaN()), 0},
		{Enlarged(-0.3, 0.1), 0},
		{Enlarged(0.3, 0), 0.3},
		{EnlargedAround(0.3, 0, 0.21), 0.33},
		{EnlargedAround(0.3, 0.4, 1), 0.3},
		{EnlargedAround(0.3, 0.2, -2), 0.2},
		{EnlargedAround(math.NaN(), 0, 1), 0},
		{Area(-1), 0},
		{Area(math.NaN()), 0},
		{Area(2), math.Pi},
	}
	for i, c := range cases {
		if !(math.Abs(c.got-c.want) < 1e-15) {
			t.Errorf("case %d: got %v, want %v", i, c.got, c.want)
		}
	}
}

// well is a riser, a casing and an open hole, with a tapered string in them.
func well() (Profile, []Body) {
	return Profile{{0, 365, 0.4953, "riser"}, {365, 955, 0.451, "casing"}, {955, 1500, 0.4445, "hole"}},
		[]Body{{0, 1200, 0.127, 0.1086, "pipe"}, {1200, 1300, 0.2032, 0.0714, "collars"}}
}

func TestIntervals(t *testing.T) {
	outer, inner := well()
	got := Intervals(outer, inner, -50, 9999)
	want := []Interval{
		{0, 365, 0.4953, 0.127, "riser", "pipe"},
		{365, 955, 0.451, 0.127, "casing", "pipe"},
		{955, 1200, 0.4445, 0.127, "hole", "pipe"},
		{1200, 1300, 0.4445, 0.2032, "hole", "collars"},
		{1300, 1500, 0.4445, 0, "hole", ""},
	}
	if len(got) != len(want) {
		t.Fatalf("Intervals gives %d, want %d: %+v", len(got), len(want), got)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("interval %d = %+v, want %+v", i, got[i], want[i])
		}
	}
	// A string that starts inside, a gap in it, and a cut that ends inside.
	gap := []Body{{400, 500, 0.1, 0, "a"}, {600, 700, 0.2, 0, "b"}}
	cut := Intervals(outer, gap, 450, 650)
	if len(cut) != 3 || cut[0].InnerLabel != "a" || cut[1].Inner != 0 || cut[1].Top != 500 || cut[1].Bottom != 600 || cut[2].Bottom != 650 {
		t.Errorf("Intervals over a gap = %+v", cut)
	}
	// The end of the body differs from the end of the span by rounding alone.
	if cut := Intervals(outer, []Body{{0, 955 + 1e-9, 0.1, 0, ""}, {955 + 1e-9, 1500 - 1e-10, 0.2, 0, ""}}, 0, 1500); len(cut) != 3 {
		t.Errorf("rounded ends leave slivers: %+v", cut)
	}
	if cut := Intervals(outer, inner, 900, 900); len(cut) != 0 {
		t.Errorf("an empty stretch gives %+v", cut)
	}
	if cut := Intervals(nil, inner, 0, 100); len(cut) != 0 {
		t.Errorf("no bore gives %+v", cut)
	}
	nan := math.NaN()
	for _, odd := range [][]Body{{{0, nan, 0.1, 0, ""}}, {{nan, 10, 0.1, 0, ""}}, {{500, 400, 0.1, 0, ""}}} {
		if v := Volume(Intervals(outer, odd, 0, 1500)); !(v >= 0) {
			t.Errorf("Volume with %+v = %v", odd, v)
		}
	}
}

func TestProfileAtAndLeast(t *testing.T) {
	outer, _ := well()
	for md, want := range map[float64]string{0: "riser", 364: "riser", 365: "casing", 955: "hole", 1500: "hole"} {
		if got, ok := outer.At(md); !ok || got.Label != want {
			t.Errorf("At(%v) = %+v, %v, want %s", md, got, ok, want)
		}
	}
	for _, md := range []float64{-0.1, 1500.1, math.NaN()} {
		if got, ok := outer.At(md); ok {
			t.Errorf("At(%v) = %+v, want none", md, got)
		}
	}
	if _, ok := (Profile{}).At(0); ok {
		t.Error("At finds a span in an empty profile")
	}
	if got, ok := outer.Least(0, 955); !ok || got.Label != "casing" {
		t.Errorf("Least(0, 955) = %+v, %v, want the casing", got, ok)
	}
	if got, ok := outer.Least(0, 956); !ok || got.Label != "hole" {
		t.Errorf("Least(0, 956) = %+v, %v, want the hole", got, ok)
	}
	if got, ok := outer.Least(1500, 1600); ok {
		t.Errorf("Least below the well = %+v, want none", got)
	}
}

func TestChecksNameTheFault(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	profiles := []struct {
		p    Profile
		want []string
	}{
		{Profile{}, []string{"no spans"}},
		{Profile{{0, nan, 1, ""}}, []string{"bore span 1", "not a number"}},
		{Profile{{10, 10, 1, "riser"}}, []string{"bore span 1", `"riser"`, "10.00 m"}},
		{Profile{{0, 10, 1, ""}, {10, 20, 0, ""}}, []string{"bore span 2", "diameter", "10.00 m"}},
		{Profile{{0, 10, inf, ""}}, []string{"bore span 1", "diameter"}},
		{Profile{{0, 10, 1, ""}, {11, 20, 1, ""}}, []string{"bore span 2", "11.00 m", "10.00 m"}},
		{Profile{{0, 10, 1, ""}, {9, 20, 1, ""}}, []string{"bore span 2", "let them meet"}},
	}
	for _, c := range profiles {
		complains(t, c.p.Check(), c.want)
	}
	hung := []struct {
		b    []Body
		want []string
	}{
		{[]Body{{0, inf, 1, 0, ""}}, []string{"string span 1", "not a number"}},
		{[]Body{{5, 4, 1, 0, ""}}, []string{"string span 1", "below its top"}},
		{[]Body{{0, 4, 1, 1, "pipe"}}, []string{"string span 1", `"pipe"`, "no wall"}},
		{[]Body{{0, 4, 1, nan, ""}}, []string{"no wall"}},
		{[]Body{{0, 4, 0, 0, ""}}, []string{"no wall"}},
		{[]Body{{0, 4, 1, 0, ""}, {3, 6, 1, 0, ""}}, []string{"string span 2", "3.00 m", "4.00 m"}},
	}
	for _, c := range hung {
		complains(t, CheckBodies(c.b), c.want)
	}
	outer, inner := well()
	if err := outer.Check(); err != nil {
		t.Errorf("Check of a good profile says %v", err)
	}
	if err := CheckBodies(inner); err != nil {
		t.Errorf("CheckBodies of a good string says %v", err)
	}
	if err := Fit(Intervals(outer, inner, 0, 1500)); err != nil {
		t.Errorf("Fit of a string that fits says %v", err)
	}
	wide := []Body{{0, 1200, 0.447, 0.4, "casing joint"}}
	complains(t, Fit(Intervals(outer, wide, 0, 1500)), []string{`"casing joint"`, `"hole"`, "0.4470 m", "955.00 m"})
	tight := []Body{{0, 1200, 0.451, 0.4, "casing joint"}} // as wide as the bore: does not pass either
	cut := Intervals(outer, tight, 0, 1500)
	complains(t, Fit(cut), []string{`"casing joint"`, `"casing"`, "0.4510 m", "365.00 m"})
	if got := Between(cut, 365, 955); got != 0 {
		t.Errorf("volume where nothing fits = %v, want 0", got)
	}
}

func complains(t *testing.T, err error, want []string) {
	t.Helper()
	if err == nil {
		t.Errorf("no error, want one that holds %q", want)
		return
	}
	for _, part := range want {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("the error says %q, want it to hold %q", err, part)
		}
	}
}

func TestDepthAboveAndBelow(t *testing.T) {
	outer, inner := well()
	cut := Intervals(outer, inner, 0, 1500)
	all := Volume(cut)
	open := Between(cut, 1300, 1500)
	cases := []struct {
		name         string
		from, volume float64
		up           bool
		depth, left  float64
	}{
		{"open hole filled to the collars", 1500, open, true, 1300, 0},
		{"half of it", 1500, open / 2, true, 1400, 0},
		{"all of it upwards", 1500, all, true, 0, 0},
		{"all of it downwards", 0, all, false, 1500, 0},
		{"more than all upwards", 1500, all + 2, true, 0, 2},
		{"more than all downwards", 0, all + 2, false, 1500, 2},
		{"from below the bottom", 1700, open / 2, true, 1400, 0},
		{"from above the top", -20, Between(cut, 0, 100), false, 100, 0},
		{"from above the top upwards", -20, 5, true, -20, 5},
		{"nothing", 700, 0, true, 700, 0},
		{"less than nothing", 700, -3, false, 700, 0},
		{"no number", 700, math.NaN(), false, 700, 0},
		{"downwards within", 1350, open / 2, false, 1450, 0},
	}
	for _, c := range cases {
		find := DepthBelow
		if c.up {
			find = DepthAbove
		}
		depth, left := find(cut, c.from, c.volume)
		if math.Abs(depth-c.depth) > 1e-9 || math.Abs(left-c.left) > 1e-9 {
			t.Errorf("%s: reaches %v with %v left, want %v with %v", c.name, depth, left, c.depth, c.left)
		}
	}
	if depth, left := DepthAbove(nil, 10, 1); depth != 10 || left != 1 {
		t.Errorf("DepthAbove in nothing = %v, %v", depth, left)
	}
	// Intervals without room are passed on the way up.
	blocked := []Interval{{0, 10, 0.3, 0, "", ""}, {10, 20, 0.3, 0.4, "", ""}, {20, 30, 0.3, 0, "", ""}}
	if depth, left := DepthAbove(blocked, 30, 15*Area(0.3)); math.Abs(depth-5) > 1e-9 || left != 0 {
		t.Errorf("DepthAbove past a blocked interval = %v, %v, want 5", depth, left)
	}
}
