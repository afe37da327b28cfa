package tripping

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/bore"
	"borewalk/model/handbook"
)

const (
	inch    = 0.0254
	foot    = 0.3048
	barrel  = 42 * 231 * inch * inch * inch
	pound   = 0.45359237
	ppg     = pound / (231 * inch * inch * inch)
	gravity = 9.80665
	psi     = pound * gravity / (inch * inch)
)

// example is a worked example in field units.
type example struct {
	ID, Source, Where, Note string
	Seen                    bool
	TolerancePct            float64 `toml:"tolerance_pct"`
	Given, Expected         map[string]float64
}

type published struct {
	Pulled, Slug []example
}

// compare holds what was got to the printed answers.
func (ex example) compare(t *testing.T, got map[string]float64) {
	t.Helper()
	for name, want := range ex.Expected {
		if value, ok := got[name]; !ok || !handbook.Within(value, want, ex.TolerancePct) {
			t.Errorf("%s: %s = %v, want %v within %v %% (%s)", ex.ID, name, value, want, ex.TolerancePct, ex.Source)
		}
	}
}

func TestPublishedPulling(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/tripping.toml").Pulled {
		g := ex.Given
		p := Pipe{Steel: g["pipe_displacement_bbl_per_ft"] * barrel / foot, Bore: g["pipe_capacity_bbl_per_ft"] * barrel / foot}
		wet := p.Bore > 0
		length, hole := g["stands"]*g["stand_length_ft"]*foot, g["casing_capacity_bbl_per_ft"]*barrel/foot
		drop, ok := p.Drop(wet, length, hole)
		if !ok {
			t.Fatalf("%s: nothing drops", ex.ID)
		}
		ex.compare(t, map[string]float64{
			"volume_pulled_bbl": p.Leaves(wet) * length / barrel,
			"hp_decrease_psi":   drop * g["mud_weight_ppg"] * ppg * gravity / psi,
		})
		if back, ok := p.LengthFor(wet, drop, hole); !ok || math.Abs(back-length) > 1e-9 {
			t.Errorf("%s: %g m drop it so far, %g m were pulled", ex.ID, back, length)
		}
	}
}

// upright is a path straight down.
type upright struct{}

func (upright) TVD(md float64) float64              { return md }
func (upright) MDAtTVD(tvd float64) (float64, bool) { return tvd, true }

func TestPublishedSlugs(t *testing.T) {
	for _, ex := range handbook.Load[published](t, "testdata/tripping.toml").Slug {
		g := ex.Given
		capacity := g["capacity_bbl_per_ft"] * barrel / foot
		s := String{Inside: []bore.Interval{{Bottom: 5000, Outer: math.Sqrt(capacity * 4 / math.Pi)}}, Path: upright{}, Fluid: g["mud_weight_ppg"] * ppg}
		dry := g["dry_ft"] * foot
		if volume, ok := g["slug_bbl"]; ok {
			height := volume * barrel / capacity
			density, _ := SlugDensity(s.Fluid, height, dry)
			ex.compare(t, map[string]float64{"slug_ft": height / foot, "slug_weight_ppg": density / ppg})
			s.Slug = density
			if at, ok := s.Dry(volume * barrel); !ok || math.Abs(at.Dry-dry) > 1e-6 {
				t.Errorf("%s: that slug empties %.2f m, want %.2f", ex.ID, at.Dry, dry)
			}
			continue
		}
		s.Slug = g["slug_weight_ppg"] * ppg
		at, ok := s.Volume(dry)
		if !ok {
			t.Fatalf("%s: no slug", ex.ID)
		}
		ex.compare(t, map[string]float64{"slug_ft": (at.Foot - at.Dry) / foot, "slug_bbl": at.Volume / barrel, "gain_bbl": s.Gain(at) / barrel})
	}
}

// TestNoFluidIsLostWhileTheLevelFalls: what stands in the well is the same before and after, counted below the level round
// the steel (dry) or round the whole string (wet).
func TestNoFluidIsLostWhileTheLevelFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hole := rapid.Float64Range(0.02, 0.3).Draw(t, "hole")
		p := Pipe{Steel: hole * rapid.Float64Range(0.01, 0.4).Draw(t, "steel"), Bore: hole * rapid.Float64Range(0.01, 0.5).Draw(t, "bore")}
		wet := rapid.Bool().Draw(t, "wet")
		const depth = 3000.0
		pulled := rapid.Float64Range(0, 300).Draw(t, "pulled")
		drop, ok := p.Drop(wet, pulled, hole)
		if !ok {
			t.Fatal("no room")
		}
		if drop > depth-pulled {
			t.Skip("the level falls below the string")
		}
		area := p.Leaves(wet)
		before := hole*depth - area*depth
		after := hole*(depth-drop) - area*(depth-pulled-drop)
		if math.Abs(before-after) > 1e-9*before {
			t.Errorf("%g m3 before, %g m3 after", before, after)
		}
		if dry, _ := p.Drop(false, pulled, hole); drop < dry {
			t.Errorf("wet %g m, dry %g m", drop, dry)
		}
	})
}

func TestPullingWithoutRoom(t *testing.T) {
	p := Pipe{Steel: 0.02, Bore: 0.01}
	for name, ok := range map[string]bool{
		"dry in a hole as small as its steel": second(p.Drop(false, 10, 0.02)),
		"wet in a hole as small as the pipe":  second(p.Drop(true, 10, 0.03)),
		"no number":                           second(p.Drop(true, math.NaN(), 1)),
		"no steel leaves":                     second(Pipe{}.LengthFor(false, 1, 1)),
		"a drop that is no number":            second(p.LengthFor(true, math.NaN(), 1)),
		"a slug as heavy as the fluid":        second(SlugHeight(1200, 1200, 50)),
		"a slug without height":               second(SlugDensity(1200, 0, 50)),
	} {
		if ok {
			t.Errorf("%s gives a number", name)
		}
	}
}

func second(_ float64, ok bool) bool { return ok }

// slanted is a path that goes down by a share of its length below a depth.
type slanted struct{ from, share float64 }

func (s slanted) TVD(md float64) float64 {
	if md <= s.from {
		return md
	}
	return s.from + (md-s.from)*s.share
}

func (s slanted) MDAtTVD(tvd float64) (float64, bool) {
	if tvd <= s.from {
		return tvd, true
	}
	return s.from + (tvd-s.from)/s.share, true
}

// TestASettledSlugBalances the fluid outside, in a string of two bores on a slant, and the volume that empties so far is
// found again.
func TestASettledSlugBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := String{
			Inside: []bore.Interval{{Bottom: 400, Outer: 0.13}, {Top: 400, Bottom: 4000, Outer: 0.1}},
			Path:   slanted{rapid.Float64Range(10, 1000).Draw(t, "from"), rapid.Float64Range(0.3, 1).Draw(t, "share")},
			Fluid:  rapid.Float64Range(1000, 2000).Draw(t, "fluid"),
		}
		s.Slug = s.Fluid * rapid.Float64Range(1.05, 1.4).Draw(t, "heavier")
		dry := rapid.Float64Range(0, 200).Draw(t, "dry")
		at, ok := s.Volume(dry)
		if !ok {
			t.Skip("the slug is longer than the string")
		}
		foot := s.Path.TVD(at.Foot)
		inside, outside := s.Slug*(foot-s.Path.TVD(dry)), s.Fluid*foot
		if math.Abs(inside-outside) > 1e-6*outside+1e-9 {
			t.Errorf("inside %g kg/m2, outside %g kg/m2", inside, outside)
		}
		if back, ok := s.Dry(at.Volume); !ok || math.Abs(back.Dry-dry) > 1e-6 {
			t.Errorf("%g m3 empty %g m, want %g m", at.Volume, back.Dry, dry)
		}
	})
}

func TestASlugThatTheStringCannotHold(t *testing.T) {
	s := String{Inside: []bore.Interval{{Bottom: 500, Outer: 0.1}}, Path: upright{}, Fluid: 1200, Slug: 1300}
	if at, ok := s.Volume(100); ok {
		t.Errorf("%+v, though the slug is 1200 m long", at)
	}
	if at, ok := s.Dry(100); ok {
		t.Errorf("%+v of 100 m3 in a string of 4 m3", at)
	}
	s.Slug = 1200
	if at, ok := s.Dry(1); ok {
		t.Errorf("%+v of a slug that is no heavier", at)
	}
	if at, ok := (String{Path: upright{}, Fluid: 1200, Slug: 1300}).Volume(10); ok {
		t.Errorf("%+v in no string", at)
	}
}
