package ui_test

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"borewalk/ui"
	"borewalk/ui/canvas"
	"borewalk/ui/ptytest"
)

// wire is a planner with the terminal that it is shown on.
type wire struct {
	*ui.Planner
	painter canvas.Painter
	frame   canvas.Frame
}

// sent returns the bytes that the terminal is sent for the picture as it is now.
func (w *wire) sent() int {
	w.Draw()
	w.Taken(&w.frame)
	return len(w.painter.Paint(&w.frame))
}

// press returns the bytes that each key costs.
func (w *wire) press(keys ...string) (bytes []int) {
	for _, k := range keys {
		press(w.Planner, k)
		bytes = append(bytes, w.sent())
	}
	return bytes
}

// middle returns the median and the value that 95 of 100 do not exceed (nearest rank), and the largest.
func middle(bytes []int) (median, most95, most int) {
	slices.Sort(bytes)
	rank := func(percent int) int { return bytes[max(0, (len(bytes)*percent+99)/100-1)] }
	return rank(50), rank(95), rank(100)
}

// numbers finds the places of numbers on a screen.
func numbers(screen string) map[string]bool {
	found := map[string]bool{}
	for y, line := range strings.Split(screen, "\n") {
		for _, at := range anyNumber.FindAllStringIndex(line, -1) {
			found[fmt.Sprint(y, " ", canvas.Width(line[:at[1]]), " ", line[at[0]:at[1]])] = true
		}
	}
	return found
}

var anyNumber = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)

// A key sends what it changes. The bounds are what was measured and a little room for a word more in a text; what exceeds them by
// much is something that is sent for nothing.
func TestWhatAKeySends(t *testing.T) {
	toDepth := append([]string{"]", "]"}, times(5, "down")...)
	var edit []string
	for _, digits := range []string{"152", "735", "734", "895", "093", "889", "271", "495", "274", "975"} {
		edit = append(edit, "backspace", "backspace", "backspace", digits[:1], digits[1:2], digits[2:])
	}
	for _, test := range []struct {
		name                 string
		before, keys         []string
		median, most95, most [2]int // at 80 x 24 and at 100 x 30
	}{
		{"moving the focus", []string{"]", "]"}, append(times(9, "down"), times(9, "up")...), [2]int{150, 150}, [2]int{340, 360}, [2]int{340, 360}},
		{"moving among the figures", []string{"]", "]", "right"}, append(times(9, "down"), times(9, "up")...), [2]int{105, 110}, [2]int{170, 170}, [2]int{170, 170}},
		{"a depth typed anew", append(toDepth, "enter"), edit, [2]int{110, 110}, [2]int{200, 210}, [2]int{200, 210}},
		{"a digit that changes only its field", []string{"page well", "down", "down", "down", "down", "down", "enter", "2"}, times(8, "3"), [2]int{30, 30}, [2]int{30, 30}, [2]int{30, 30}},
		{"a step of the hole's size", append(toDepth, "home", "down", "down"), times(8, "+"), [2]int{135, 170}, [2]int{470, 500}, [2]int{470, 500}},
		{"a page turned", nil, times(10, "tab"), [2]int{1000, 1250}, [2]int{1300, 1800}, [2]int{1300, 1800}},
	} {
		for i, size := range []struct{ w, h int }{{80, 24}, {100, 30}} {
			w := wire{Planner: screenOf(t, "ottermast-2", size.w, size.h, ui.Options{Colours: 16}, test.before...)}
			w.sent()
			median, most95, most := middle(w.press(test.keys...))
			t.Logf("%s at %d x %d: %d / %d / %d bytes", test.name, size.w, size.h, median, most95, most)
			if median > test.median[i] || most95 > test.most95[i] || most > test.most[i] {
				t.Errorf("%s at %d x %d sends %d / %d / %d bytes (median, 95 %%, most), want at most %d / %d / %d", test.name, size.w, size.h,
					median, most95, most, test.median[i], test.most95[i], test.most[i])
			}
		}
	}
}

// Numbers that change cost little more than their digits, whichever entry is stepped: not the lines that they stand on.
func TestWhatANumberSends(t *testing.T) {
	const perNumber, besides = 20, 330 // bytes: a number with the change beside it; the message, the counts, the schematic
	for _, size := range []struct{ w, h int }{{80, 24}, {100, 30}} {
		w := wire{Planner: screenOf(t, "ottermast-2", size.w, size.h, ui.Options{Colours: 16}, "]", "]")}
		var most, mostNumbers int
		for _, page := range []string{"hole", "mud", "cement", "time"} {
			press(w.Planner, "page "+page, "home")
			for range 24 {
				press(w.Planner, "down")
				w.sent()
				before := numbers(w.View())
				press(w.Planner, "+")
				changed := 0
				for number := range numbers(w.View()) {
					if !before[number] {
						changed++
					}
				}
				sent := w.sent()
				if sent > perNumber*changed+besides {
					t.Errorf("%d x %d, page %s: %d numbers changed for %d bytes:\n%s", size.w, size.h, page, changed, sent, w.View())
				}
				if changed > mostNumbers {
					most, mostNumbers = sent, changed
				}
				press(w.Planner, "u")
			}
		}
		t.Logf("%d x %d: most numbers %d for %d bytes", size.w, size.h, mostNumbers, most)
	}
}

func TestFirstPictureIsSmall(t *testing.T) {
	for _, test := range []struct{ w, h, most int }{{80, 24, 2300}, {100, 30, 3200}, {132, 43, 6500}} {
		for _, demo := range []string{"ottermast-2", "saltlantern-1"} {
			w := wire{Planner: screenOf(t, demo, test.w, test.h, ui.Options{Colours: 16})}
			if sent := w.sent(); sent > test.most {
				t.Errorf("%s at %d x %d: the first picture takes %d bytes, want at most %d", demo, test.w, test.h, sent, test.most)
			} else {
				t.Logf("%s at %d x %d: %d bytes", demo, test.w, test.h, sent)
			}
		}
	}
}

// BenchmarkPicture draws the picture, compares it with the one before and writes what differs.
func BenchmarkPicture132x43(b *testing.B) {
	w := wire{Planner: screenOf(b, "ottermast-2", 132, 43, ui.Options{Colours: 16}, "]", "]")}
	b.ReportAllocs()
	for b.Loop() {
		press(w.Planner, "down")
		w.sent()
	}
}

// Whatever is pressed, the picture that grew from differences is the one that is drawn.
func TestPicturesGrowRight(t *testing.T) {
	pressed := []string{"up", "down", "down", "left", "right", "enter", "esc", "tab", "shift+tab", "pgdown", "home", "]", "[", "+", "-", "a", "d", "u",
		"v", "w", "f", "m", "o", "?", "P", "V", "W", "L", "H", "C", "1", "2", ".", "backspace"}
	for seed := range uint64(4) {
		random := rand.New(rand.NewPCG(seed, 7))
		width, height := 80+random.IntN(60), 24+random.IntN(20)
		w := wire{Planner: screenOf(t, "ottermast-2", width, height, ui.Options{Colours: 16 * int(seed%2), ASCII: seed == 3, Charts: someCharts, Play: playSomeJob})}
		grown := ptytest.NewScreen(width, height)
		var trail []string
		for range 150 {
			w.Draw()
			w.Taken(&w.frame)
			_, _ = grown.Write(w.painter.Paint(&w.frame))
			whole := ptytest.NewScreen(width, height)
			_, _ = whole.Write(new(canvas.Painter).Paint(&w.frame))
			for y := range height {
				for x := range width {
					got, want := grown.Cell(x, y), whole.Cell(x, y)
					if got.Text != want.Text || got.Text != " " && got.Look != want.Look || got.Look.Reverse != want.Look.Reverse {
						t.Fatalf("seed %d after %q: column %d of line %d is %+v, want %+v:\n%s", seed, trail, x, y, got, want, grown)
					}
				}
			}
			if plain := escapes.ReplaceAllString(w.View(), ""); grown.String() != plain {
				t.Fatalf("seed %d after %q: shows\n%s\nwant\n%s", seed, trail, grown, plain)
			}
			key := pressed[random.IntN(len(pressed))]
			trail = append(trail, key)
			press(w.Planner, key)
		}
	}
}

var escapes = regexp.MustCompile(`\x1b\[[0-9;]*m`)
