package schematic

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"borewalk/calc"
	"borewalk/ui/canvas"
)

var update = flag.Bool("update", false, "write the pictures in testdata anew")

const inch = 0.0254

// deviatedWell is an invented well of five sections: conductor, surface casing, two strings under the riser, the first
// of them in a hole opened behind a pilot bit, and a liner.
func deviatedWell() calc.Sketch {
	full := func(top, shoe, od float64) []calc.SketchPart {
		return []calc.SketchPart{{Top: top, Bottom: shoe, OD: od * inch, ID: (od - 1) * inch}}
	}
	return calc.Sketch{
		Datum:  calc.Datum{OK: true, MSL: 25, Mudline: 412, LPTop: 410.5, Wellhead: 409.5, BOPTop: 395},
		Bottom: 4120,
		Sections: []calc.SketchSection{
			{OK: true, Start: 412, Opened: 490, TD: 490, Hole: 36 * inch, Bit: 36 * inch, Washout: 0.5, String: true,
				Top: 410.5, Shoe: 487, OD: 30 * inch, Parts: full(410.5, 487, 30), Name: "conductor"},
			{OK: true, Start: 490, Opened: 990, TD: 990, Hole: 26 * inch, Bit: 26 * inch, Washout: 0.3, String: true,
				Top: 409.5, Shoe: 985, OD: 20 * inch, Parts: full(409.5, 985, 20), Name: "surface"},
			{OK: true, Riser: true, Start: 990, Opened: 2155, TD: 2180, Hole: 17.5 * inch, Bit: 12.25 * inch, Washout: 0.1,
				String: true, Top: 411, Shoe: 2152, OD: 13.625 * inch, Parts: full(411, 2152, 13.625), Name: "intermediate"},
			{OK: true, Riser: true, Start: 2180, Opened: 3300, TD: 3300, Hole: 12.25 * inch, Bit: 12.25 * inch, Washout: 0.05,
				String: true, Top: 412, Shoe: 3295, OD: 9.625 * inch, Parts: full(412, 3295, 9.625), Name: "production"},
			{OK: true, Riser: true, Start: 3300, Opened: 4120, TD: 4120, Hole: 8.5 * inch, Bit: 8.5 * inch, Washout: 0,
				String: true, Liner: true, Top: 3145, Shoe: 4117, OD: 7 * inch, Parts: full(3145, 4117, 7), Name: "liner"},
		},
	}
}

func options(section int) Options {
	return Options{Section: section, Depth: metres, Size: inches, Glyphs: canvas.UnicodeGlyphs()}
}

func metres(m float64) string { return strconv.FormatFloat(m, 'f', 0, 64) }

func inches(m float64) string {
	eighths := int(math.Round(m / inch * 8))
	text := strconv.Itoa(eighths / 8)
	if n := eighths % 8; n > 0 {
		text += " " + [...]string{1: "1/8", 2: "1/4", 3: "3/8", 4: "1/2", 5: "5/8", 6: "3/4", 7: "7/8"}[n]
	}
	return text
}

func picture(s calc.Sketch, o Options, w, h int) string {
	c := canvas.New(w, h)
	Draw(c.All(), s, o)
	return c.Plain()
}

// golden compares a picture with the one kept in testdata.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name+".txt")
	if *update {
		if err := os.WriteFile(path, []byte(got+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got+"\n" != string(want) {
		t.Errorf("%s: got\n%s\nwant\n%s", name, got, want)
	}
}
