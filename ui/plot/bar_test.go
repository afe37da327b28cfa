package plot

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"

	"pgregory.net/rapid"
)

// flowBar is an invented range of flow: a tool from 2300 to 4900, pressure at 4325, pumps at 4325 and a limit not known.
func flowBar(planned float64) calc.Bar {
	return calc.Bar{Title: "Flow range", Kind: quantity.Flow, Planned: planned, HasPlanned: planned > 0,
		Limits: []calc.BarLimit{{Name: "rotary tool", At: 2300}, {Name: "pump pressure", At: 4100, Most: true},
			{Name: "ECD margin", At: 4325, Most: true, Note: "at last shoe"}, {Name: "rotary tool", At: 4900, Most: true}},
		Blank: []string{"cleaning: the angle of rest is blank"}}
}

func barPicture(b calc.Bar, g canvas.Glyphs, w, h int) string {
	at := canvas.New(w, h)
	o := chartOptions(g)
	DrawBar(at.All(), b, BarOptions{Glyphs: g, Page: "1 of 4", Unit: "L/min", Value: func(x float64, k quantity.Kind) string { return o.Place(x) }, Ticks: o.Ticks})
	return at.Plain()
}

// golden compares a picture with the one kept, or writes it.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s:\n%s\nwant:\n%s", name, got, want)
	}
}

func TestBarPictures(t *testing.T) {
	g := canvas.UnicodeGlyphs()
	golden(t, "bar_50.txt", barPicture(flowBar(4000), g, 50, 14))
	golden(t, "bar_beyond.txt", barPicture(flowBar(4600), g, 50, 14))
	golden(t, "bar_narrow.txt", barPicture(flowBar(4000), g, 30, 9))
	golden(t, "bar_ascii.txt", barPicture(flowBar(1000), canvas.ASCIIGlyphs(), 70, 14))
	none := flowBar(4000)
	none.Limits[0].At = 4200
	golden(t, "bar_none.txt", barPicture(none, g, 50, 14))
	golden(t, "bar_blank.txt", barPicture(calc.Bar{Title: "Flow range", Blank: []string{"pumps: there is no pump"}}, g, 50, 8))
}

// What the bar shows under a column is what its limits say of the value there.
func TestTheBarSaysWhatTheLimitsSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := calc.Bar{Title: "any", Planned: rapid.Float64Range(0, 100).Draw(t, "planned"), HasPlanned: rapid.Bool().Draw(t, "has")}
		for range rapid.IntRange(1, 5).Draw(t, "limits") {
			b.Limits = append(b.Limits, calc.BarLimit{Name: "l", At: rapid.Float64Range(1, 100).Draw(t, "at"), Most: rapid.Bool().Draw(t, "most")})
		}
		w := rapid.IntRange(20, 90).Draw(t, "w")
		row := []rune(strings.Split(barPicture(b, canvas.ASCIIGlyphs(), w, 20), "\n")[4])
		top := b.Planned
		if !b.HasPlanned {
			top = 0
		}
		for _, l := range b.Limits {
			top = max(top, l.At)
		}
		for k, ch := range row {
			x := top * 1.1 * float64(k-1) / float64(w-3)
			beyond, short := false, false
			for _, l := range b.Limits {
				beyond, short = beyond || l.Most && x > l.At, short || !l.Most && x < l.At
			}
			switch want := map[bool]rune{true: 'x', false: '.'}[beyond]; {
			case ch == '|' || ch == ' ' && (k == 0 || k == w-1):
			case !beyond && !short && ch != '=', (beyond || short) && ch != want:
				t.Fatalf("column %d, value %v: %q", k, x, ch)
			}
		}
	})
}

// By hand: 29 steps to 5390, so 2300 at 12, planned 4000 at 22 over the 4100 there, 4325 at 23, 4900 at 26.
func TestABarInOneLine(t *testing.T) {
	line, to := BarLine(flowBar(4000), 30)
	if want := "............|=========o|xx|xxx"; line != want || math.Abs(to-5390) > 1e-9 {
		t.Errorf("%q to %v, want %q to 5390", line, to, want)
	}
	if line, _ := BarLine(calc.Bar{}, 30); line != "" {
		t.Errorf("nothing is drawn as %q", line)
	}
}

func TestBarsStayInTheirRegion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.OneOf(rapid.Float64Range(-10, 9000), rapid.Float64(), rapid.Just(math.NaN()), rapid.Just(math.Inf(1)))
		b := calc.Bar{Title: "any", Planned: number.Draw(t, "planned"), HasPlanned: rapid.Bool().Draw(t, "has"), Blank: []string{"x"}}
		for range rapid.IntRange(0, 5).Draw(t, "limits") {
			b.Limits = append(b.Limits, calc.BarLimit{Name: "limit", At: number.Draw(t, "at"), Most: rapid.Bool().Draw(t, "most"), Note: "n"})
		}
		w, h := rapid.IntRange(0, 70).Draw(t, "w"), rapid.IntRange(0, 20).Draw(t, "h")
		at := canvas.New(w+2, h+2)
		at.All().Fill('@', canvas.Plain)
		o := chartOptions(canvas.UnicodeGlyphs())
		DrawBar(at.All().Sub(1, 1, w, h), b, BarOptions{Glyphs: canvas.UnicodeGlyphs(), Page: "1", Value: o.Value, Ticks: o.Ticks})
		for y, l := range strings.Split(at.Plain(), "\n") {
			row := []rune(l)
			if len(row) != w+2 || row[0] != '@' || row[w+1] != '@' || (y == 0 || y == h+1) && strings.Trim(l, "@") != "" {
				t.Fatalf("row %d is %q", y, l)
			}
		}
	})
}
