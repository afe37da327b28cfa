package schematic

import (
	"math"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/ui/canvas"

	"pgregory.net/rapid"
)

// plausibleWell draws a well that could be drilled: every section below the one before, every string inside the one
// before, liners hung above the last shoe.
func plausibleWell(t *rapid.T) calc.Sketch {
	length := func(name string, from, to float64) float64 { return rapid.Float64Range(from, to).Draw(t, name) }
	s := calc.Sketch{Datum: calc.Datum{OK: true, MSL: length("air gap", 10, 40)}}
	s.Datum.Mudline = s.Datum.MSL + length("water", 60, 3000)
	s.Datum.LPTop, s.Datum.Wellhead = s.Datum.Mudline-2, s.Datum.Mudline-3
	s.Datum.BOPTop = s.Datum.Wellhead - 14
	s.Bottom = s.Datum.Mudline
	size, shoe := 0.9144, s.Datum.Mudline
	for i := range rapid.IntRange(0, 7).Draw(t, "sections") {
		x := calc.SketchSection{OK: true, Riser: i > 1, Start: s.Bottom, Hole: size, Bit: size, String: true, OD: 0.85 * size,
			Top: s.Datum.Wellhead, Washout: length("washout", 0, 1), Filled: i == 0}
		x.Opened = x.Start + length("length", 30, 2500)
		x.TD, x.Shoe = x.Opened, x.Opened-length("rathole", 0, 8)
		if rapid.Bool().Draw(t, "pilot") {
			x.Bit, x.TD = 0.7*size, x.Opened+length("pilot hole", 5, 60)
		}
		if i > 1 && rapid.Bool().Draw(t, "liner") {
			x.Liner, x.Top = true, max(shoe-length("lap", 30, 150), s.Datum.Mudline+1)
		}
		if rapid.Bool().Draw(t, "cemented") {
			x.Cement = x.Shoe - length("cement", 0, 800)
		}
		size, shoe, s.Bottom = 0.7*size, x.Shoe, x.TD
		s.Sections = append(s.Sections, x)
	}
	return s
}

// anySketch draws a sketch of any numbers at all, as a plan half entered may give.
func anySketch(t *rapid.T) calc.Sketch {
	n := rapid.OneOf(rapid.Float64Range(-100, 9000), rapid.Float64(), rapid.Just(0.0))
	number := func() float64 { return n.Draw(t, "number") }
	yes := func() bool { return rapid.Bool().Draw(t, "yes") }
	s := calc.Sketch{Bottom: number(), Datum: calc.Datum{OK: rapid.IntRange(0, 9).Draw(t, "datum") > 0,
		MSL: number(), Mudline: number(), LPTop: number(), Wellhead: number(), BOPTop: number()}}
	for range rapid.IntRange(0, 10).Draw(t, "sections") {
		s.Sections = append(s.Sections, calc.SketchSection{OK: yes(), Riser: yes(), Start: number(), Opened: number(), TD: number(),
			Hole: number(), Bit: number(), Washout: number(), String: yes(), Liner: yes(), Filled: yes(), Top: number(), Shoe: number(),
			OD: number(), Cement: number()})
	}
	return s
}

func anyOptions(t *rapid.T, sections int) Options {
	o := options(rapid.IntRange(-1, sections+1).Draw(t, "section"))
	o.Whole, o.TrueScale, o.HasMark = rapid.Bool().Draw(t, "whole"), rapid.Bool().Draw(t, "true"), rapid.Bool().Draw(t, "marked")
	o.Mark = rapid.Float64Range(-10, 9000).Draw(t, "mark")
	return o
}

func TestDrawKeepsToItsRegion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(rapid.Custom(plausibleWell), rapid.Custom(anySketch)).Draw(t, "well")
		w, h := rapid.IntRange(0, 60).Draw(t, "w"), rapid.IntRange(0, 50).Draw(t, "h")
		c := canvas.New(w+4, h+2)
		c.All().Fill('@', canvas.Plain)
		o := anyOptions(t, len(s.Sections))
		if rapid.Bool().Draw(t, "job") {
			o.State = anyState(t)
		}
		Draw(c.All().Sub(2, 1, w, h), s, o)
		for y, line := range strings.Split(c.Plain(), "\n") {
			row := []rune(line)
			if len(row) != w+4 || string(row[:2]) != "@@" || string(row[w+2:]) != "@@" {
				t.Fatalf("row %d is %q: the frame around the region is broken", y, line)
			}
			if (y == 0 || y == h+1) && strings.Trim(line, "@") != "" {
				t.Fatalf("row %d is %q: the frame around the region is broken", y, line)
			}
		}
	})
}

func TestRowNeverRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(rapid.Custom(plausibleWell), rapid.Custom(anySketch)).Draw(t, "well")
		rows := rapid.IntRange(0, 50).Draw(t, "rows")
		scale := NewScale(s, rows, rapid.Bool().Draw(t, "true"))
		depth := rapid.Float64Range(-10, 20000)
		a, b := depth.Draw(t, "a"), depth.Draw(t, "b")
		if a, b = min(a, b), max(a, b); scale.Row(a) > scale.Row(b) {
			t.Fatalf("Row(%g) = %d is below Row(%g) = %d", a, scale.Row(a), b, scale.Row(b))
		}
		if row := scale.Row(b); row < 0 || row > max(rows-1, 0) {
			t.Fatalf("Row(%g) = %d, want a row of %d", b, row, rows)
		}
	})
}

// landmarkDepths returns the depths that the picture shows, without those that lie within a hand's breadth of another.
func landmarkDepths(s calc.Sketch) []float64 {
	depths := []float64{0, s.Datum.MSL, s.Datum.Mudline}
	for _, x := range s.Sections {
		depths = append(depths, x.Shoe)
		if x.TD > x.Shoe+0.1 {
			depths = append(depths, x.TD)
		}
		if hungDeep(s.Datum, &x) {
			depths = append(depths, x.Top)
		}
	}
	return depths
}

func TestLandmarksStandOnTheirOwnRowsWhenRowsAllow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.Custom(plausibleWell).Draw(t, "well")
		depths := landmarkDepths(s)
		rows := len(depths) + 2*len(s.Sections) + 5
		scale := NewScale(s, rows, false)
		for i, a := range depths {
			for _, b := range depths[i+1:] {
				if d := a - b; (d > 0.1 || d < -0.1) && scale.Row(a) == scale.Row(b) {
					t.Fatalf("%g and %g m share row %d of %d", a, b, scale.Row(a), rows)
				}
			}
		}
		above := s.Datum.Mudline
		for i, x := range s.Sections {
			if n := scale.Row(x.Shoe) - scale.Row(above); n < 2 {
				t.Fatalf("string %d has %d rows of %d below the shoe above, want 2", i, n, rows)
			}
			above = x.Shoe
		}
	})
}

func TestTrueScaleIsLinearBelowTheMudline(t *testing.T) {
	s := deviatedWell()
	scale := NewScale(s, 36, true)
	top, bottom := scale.Row(s.Datum.Mudline), scale.Row(s.Bottom)
	for _, part := range []float64{0.25, 0.5, 0.75} {
		md := s.Datum.Mudline + part*(s.Bottom-s.Datum.Mudline)
		want := float64(top) + part*float64(bottom-top)
		if got := float64(scale.Row(md)); got < want-0.5 || got > want+0.5 {
			t.Errorf("Row(%g) = %g, want %g to the nearest", md, got, want)
		}
	}
}

func TestEverySetShoeIsSeen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.Custom(plausibleWell).Draw(t, "well")
		o := anyOptions(t, len(s.Sections))
		o.TrueScale = false
		h := len(landmarkDepths(s)) + 2*len(s.Sections) + 5
		w := rapid.IntRange(20, 60).Draw(t, "w")
		lines := strings.Split(picture(s, o, w, h), "\n")
		scale := NewScale(s, h, false)
		for i, x := range s.Sections {
			if !o.Whole && i > o.Section {
				break
			}
			line := lines[scale.Row(x.Shoe)]
			if !strings.ContainsRune(line, o.Glyphs.ShoeLeft) || !strings.ContainsRune(line, o.Glyphs.ShoeRight) {
				t.Fatalf("section %d: no shoe on row %d %q of\n%s", i, scale.Row(x.Shoe), line, strings.Join(lines, "\n"))
			}
		}
	})
}

// A larger string is never drawn inside a smaller one.
func TestStringsNestBySize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.Custom(plausibleWell).Draw(t, "well")
		c := newColumns(s, rapid.Bool().Draw(t, "wide"), rapid.IntRange(0, 60).Draw(t, "width"))
		for i := 1; i < len(s.Sections); i++ {
			if c.wall[i] > c.wall[i-1] {
				t.Fatalf("columns %v: string %d stands outside string %d", c.wall, i, i-1)
			}
		}
	})
}

// anyState draws a moment of a job of any numbers at all.
func anyState(t *rapid.T) *State {
	depth := func() float64 {
		return rapid.OneOf(rapid.Float64Range(-10, 9000), rapid.Just(math.NaN()), rapid.Just(math.Inf(1))).Draw(t, "depth")
	}
	stands := func() (list []calc.JobStand) {
		for range rapid.IntRange(0, 4).Draw(t, "stands") {
			list = append(list, calc.JobStand{Top: depth(), Bottom: depth(), Fluid: rapid.IntRange(-1, 3).Draw(t, "fluid")})
		}
		return list
	}
	return &State{
		Job: &calc.Job{Kind: calc.JobKind(rapid.IntRange(0, 2).Draw(t, "kind")), Fluids: []calc.JobFluid{{}, {Role: calc.GasRole}, {Role: calc.SeaRole}}},
		Frame: &calc.JobFrame{Level: depth(), Inside: stands(), Annulus: stands(), Between: stands(), Pocket: stands(), Riser: stands(),
			Parted: rapid.Bool().Draw(t, "parted"), Plugs: []calc.JobPlug{{MD: depth()}}},
		RunTo: depth(), Fill: letters,
	}
}

// letters draws the fluids of a job as A, B, C and so on.
func letters(fluid int) (rune, canvas.Style) { return 'A' + rune(fluid), canvas.Plain }
