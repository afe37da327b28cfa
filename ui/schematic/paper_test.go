package schematic

import (
	"math"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/ui/vector/vectortest"

	"pgregory.net/rapid"
)

func paperOptions(section int) PaperOptions {
	return PaperOptions{Section: section, Depth: metres, Unit: "m", Size: func(m float64) string { return inches(m) + " in" }}
}

func drawn(t interface {
	Helper()
	Fatal(...any)
}, s calc.Sketch, o PaperOptions, w, h float64) *vectortest.Record {
	t.Helper()
	r := new(vectortest.Record)
	d, ok := Drawing(s, o, w, h)
	if ok != s.Datum.OK {
		t.Fatal("a drawing of a well without a seabed, or none of one with it")
	}
	if ok {
		d.Draw(r)
	}
	return r
}

// TestTheDrawingOnPaperSaysWhatIsThere: each section at work has every depth and name on it, none on another, nothing beyond the edges.
func TestTheDrawingOnPaperSaysWhatIsThere(t *testing.T) {
	well := deviatedWell()
	well.Sections[2].Cement, well.Sections[4].Cement = 1500, 3145
	for section := range well.Sections {
		r := drawn(t, well, paperOptions(section), 178, 118)
		if fault := r.Fault(178, 118); fault != "" {
			t.Errorf("section %d: %s", section+1, fault)
		}
		var words []string
		for _, text := range r.Texts {
			words = append(words, text.Text)
		}
		all := strings.Join(words, "\n") + "\n"
		for i, want := range []string{"30 in shoe", "20 in shoe", "13 5/8 in shoe", "9 5/8 in shoe", "7 in shoe"} {
			switch {
			case i == section:
				want += ", to be set"
			case i > section:
				want += ", to come"
			}
			if !strings.Contains(all, "\n"+want+"\n") {
				t.Errorf("section %d: it does not say %q:\n%s", section+1, want, all)
			}
		}
		if set := strings.Contains(all, "cement, 13 5/8 in"); set != (section >= 2) {
			t.Errorf("section %d: the cement of the third string is named, %t", section+1, set)
		}
		if riser := strings.Contains(all, "top of BOP"); riser != (section >= 2) {
			t.Errorf("section %d: the BOP is named, %t", section+1, riser)
		}
		for _, depth := range []string{"25", "412", "985", "4117"} {
			if !strings.Contains(all, "\n"+depth+"\n") {
				t.Errorf("section %d: depth %s is not written", section+1, depth)
			}
		}
	}
}

// TestDeeperIsLowerOnPaper: the scale never turns, and keeps to the rows of the one on a screen.
func TestDeeperIsLowerOnPaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := NewScale(rapid.Custom(plausibleWell).Draw(t, "well"), rapid.IntRange(2, 60).Draw(t, "rows"), false)
		last := 0.0
		for md := 0.0; md < 9000; md += 37 {
			at := s.Between(md)
			if at < last {
				t.Fatalf("%g m stands higher than what is above it", md)
			}
			if row := s.Row(md); math.Abs(float64(row)-at) > 0.5 && row != int(at)+1 {
				t.Fatalf("%g m stands at %g, and on row %d", md, at, row)
			}
			last = at
		}
	})
}

// TestAnyWellStaysOnItsPaper, whatever its numbers, and no label lies on another.
func TestAnyWellStaysOnItsPaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.OneOf(rapid.Custom(plausibleWell), rapid.Custom(anySketch)).Draw(t, "well")
		o := paperOptions(rapid.IntRange(-1, len(s.Sections)+1).Draw(t, "section"))
		o.Whole = rapid.Bool().Draw(t, "whole")
		o.Depth = func(m float64) string { return strings.Repeat("8", min(9, len(metres(m)))) }
		w, h := rapid.Float64Range(150, 200).Draw(t, "w"), rapid.Float64Range(60, 250).Draw(t, "h")
		if fault := drawn(t, s, o, w, h).Fault(w, h); fault != "" {
			t.Fatal(fault)
		}
	})
}
