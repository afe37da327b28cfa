package schematic

import (
	"slices"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/ui/canvas"
)

func TestPictures(t *testing.T) {
	ascii := options(2)
	ascii.Glyphs = canvas.ASCIIGlyphs()
	marked := options(3)
	marked.HasMark, marked.Mark = true, 2700
	whole := options(0)
	whole.Whole = true
	linear := options(4)
	linear.TrueScale = true
	for _, test := range []struct {
		name string
		w, h int
		o    Options
	}{
		{"riserless_20x18", 20, 18, options(0)},
		{"section3_20x18", 20, 18, options(2)},
		{"section3_32x34", 32, 34, options(2)},
		{"section3_ascii_32x34", 32, 34, ascii},
		{"marked_20x18", 20, 18, marked},
		{"liner_32x34", 32, 34, options(4)},
		{"whole_20x18", 20, 18, whole},
		{"true_scale_32x34", 32, 34, linear},
	} {
		golden(t, test.name, picture(deviatedWell(), test.o, test.w, test.h))
	}
}

func TestPicturesWithoutDepths(t *testing.T) {
	blank := deviatedWell()
	blank.Datum.OK = false
	noSections := deviatedWell()
	noSections.Sections, noSections.Bottom = nil, noSections.Datum.Mudline
	for name, s := range map[string]calc.Sketch{"no datum": blank, "no sections": noSections} {
		if got := picture(s, options(0), 20, 18); !strings.Contains(got, "no depth yet") {
			t.Errorf("%s: the picture does not say that there is no depth yet:\n%s", name, got)
		}
	}
	halfDone := deviatedWell()
	for i := 2; i < 5; i++ {
		halfDone.Sections[i] = calc.SketchSection{}
	}
	halfDone.Bottom = 990
	golden(t, "section3_blank_20x18", picture(halfDone, options(2), 20, 18))
}

// The row of a depth and the column of a wall stay the same while one walks from section to section.
func TestNothingMovesBetweenSections(t *testing.T) {
	s := deviatedWell()
	first, last := newDrawing(canvas.New(32, 34).All(), s, options(0)), newDrawing(canvas.New(32, 34).All(), s, options(4))
	if first.axis != last.axis || !slices.Equal(first.wall, last.wall) || !slices.Equal(first.scale.stops, last.scale.stops) {
		t.Errorf("columns %v and %v, stops %v and %v: want the same", first.columns, last.columns, first.scale, last.scale)
	}
}

func TestLegendExplainsEverySign(t *testing.T) {
	g := canvas.UnicodeGlyphs()
	legend := strings.Join(Legend(g), "\n")
	for _, ch := range []rune{g.WallSet, g.WallPlanned, g.WallLater, g.ShoeLeft, g.HangerLeft, g.HostLeft, g.Rock, g.Washout, g.Sea,
		g.Seabed, g.Stack, g.Wellhead, g.Landed, g.Mark, g.FillMud, g.FillSpacer, g.FillLead, g.FillTail, g.FillDisplacer, g.FillGas, g.FillOtherMud, g.Plug} {
		if !strings.ContainsRune(legend, ch) {
			t.Errorf("the legend does not explain %q", ch)
		}
	}
	for _, line := range Legend(g) {
		if n := canvas.Width(line); n > 76 {
			t.Errorf("legend line of %d columns, want at most 76: %q", n, line)
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	s, o := deviatedWell(), options(2)
	c := canvas.New(32, 34)
	b.ReportAllocs()
	for b.Loop() {
		Draw(c.All(), s, o)
	}
}
