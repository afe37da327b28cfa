package ui_test

import (
	"bytes"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui"
	"borewalk/ui/sheet"
)

// place is a screen of the program, reached by keys from the third section of a demo.
type place struct {
	name  string
	keys  []string
	moves string // the key that moves the focus; empty where nothing has it
}

// everywhere opens a demo and looks at each page in each of its views, and at all that opens over them.
func everywhere(t *testing.T, demo string, width, height int, options ui.Options, look func(place, *ui.Planner)) {
	t.Helper()
	p := at(t, demo, width, height, options, place{})
	for _, topic := range model.Topics() {
		page := topic.String()
		press(p, "page "+page, "home")
		look(place{page, nil, "down"}, p)
		press(p, "right")
		look(place{page + ", figures", nil, "down"}, p)
		press(p, "left", "v")
		look(place{page + ", table", nil, "down"}, p)
		press(p, "left", "v")
		look(place{page + ", picture", nil, ""}, p)
		press(p, "v")
	}
	for _, where := range overlayPlaces() {
		look(where, at(t, demo, width, height, options, where))
	}
}

// overlayPlaces are what opens over the pages.
func overlayPlaces() []place {
	return []place{
		{"help", []string{"?"}, ""},
		{"help, searched", []string{"?", "/", "undo", "enter"}, ""},
		{"findings", []string{"f"}, "down"},
		{"working", []string{"page mud", "right", "w"}, ""},
		{"changes", []string{"page mud", "down", "+", "C", "down", "down", "enter"}, "down"},
		{"what to compare", []string{"page mud", "down", "+", "C"}, "down"},
		{"log", []string{"page mud", "down", "+", "+", "C", "end", "up", "up", "enter"}, ""},
		{"trials", []string{"T"}, "down"},
		{"entry of a trial", []string{"T", "a", "slim", "enter", "c"}, "down"},
		{"look-ahead", []string{"L"}, ""},
		{"walk", []string{"W"}, ""},
		{"handover", []string{"H"}, ""},
		{"handed over by", []string{"H", "s"}, ""},
		{"papers", []string{"O"}, "down"},
		{"cement job", []string{"page cement", "P", "n", "n"}, ""},
		{"kick", []string{"]", "page control", "P", "n"}, ""},
		{"disconnect", []string{"]", "page control", "E"}, ""},
		{"odds", []string{"U"}, "down"},
		{"what to vary", []string{"page mud", "down", "V"}, "down"},
		{"new plan", []string{"N"}, "down"},
		{"save as", []string{"S"}, ""},
		{"entry typed", []string{"page mud", "down", "1.3"}, ""},
		{"entry at fault", []string{"page mud", "down", "1.3 psi"}, ""},
		{"choice", []string{"page hole", "down", "enter"}, "up"},
		{"proposals", []string{"page cement", "g"}, ""},
		{"leaving", []string{"page mud", "down", "+", "q"}, "down"},
		{"changed", []string{"page mud", "down", "+"}, "down"},
		{"stop", []string{"page hydraulics", "down", "down", "home", "7000", "enter"}, "down"},
		{"refused", []string{"page mud", "u"}, "down"},
	}
}

// at opens a demo at a place.
func at(t testing.TB, demo string, width, height int, options ui.Options, where place) *ui.Planner {
	t.Helper()
	options.Play, options.PlayKill, options.PlayDisconnect = playSomeJob, playSomeKick, showSomeDisconnect
	return screenOf(t, demo, width, height, options, append([]string{"]]"}, where.keys...)...)
}

// body returns a screen without its foot, which names the focus once more.
func body(p *ui.Planner) string {
	lines := strings.Split(p.View(), "\n")
	return strings.Join(lines[:len(lines)-5], "\n")
}

// focusMarks counts the lines on which the mark of the focus stands at the left of a pane.
func focusMarks(screen string) int { return strings.Count(screen, "|>") }

// TestASCIIAndTheFocusWithoutColour: by the flag nothing but ASCII is shown, and one mark shows the focus and moves with it.
func TestASCIIAndTheFocusWithoutColour(t *testing.T) {
	everywhere(t, "ottermast-2", 80, 24, ui.Options{ASCII: true}, func(where place, p *ui.Planner) {
		before := p.View()
		if at := strings.IndexFunc(before, func(r rune) bool { return r > 126 }); at >= 0 {
			t.Errorf("%s shows %q:\n%s", where.name, []rune(before[at:])[0], before)
		}
		if where.moves == "" || strings.Contains(before, "no figures") {
			return
		}
		if n := focusMarks(body(p)); n != 1 {
			t.Errorf("%s: %d marks of the focus:\n%s", where.name, n, before)
		}
		was := body(p)
		press(p, where.moves)
		if n := focusMarks(body(p)); (n != 1 || body(p) == was) && !strings.Contains(p.View(), "ends here") {
			t.Errorf("%s: after %s %d marks of the focus, the screen is as it was: %v\n%s", where.name, where.moves, n, body(p) == was, p.View())
		}
	})
}

// Old Windows and Linux fonts lack most signs; what they have is listed here.
const oldFonts = "─│┌┐└┘├┤┬┴┼═║╒╓╔╕╖╗╘╙╚╛╜╝╞╟╠╡╢╣╤╥╦╧╨╩╪╫╬█▌▐▀▄░▒▓°±²³½·×µØ"

func TestOnlyGlyphsThatOldFontsHave(t *testing.T) {
	for _, demo := range plans.Names() {
		everywhere(t, demo, 140, 40, ui.Options{}, func(where place, p *ui.Planner) {
			for _, r := range p.View() {
				if r > 126 && !strings.ContainsRune(oldFonts, r) {
					t.Errorf("%s, %s shows %q", demo, where.name, r)
				}
			}
		})
	}
}

// TestPapersHaveOnlyGlyphsThatOldFontsHave where they are printed as text.
func TestPapersHaveOnlyGlyphsThatOldFontsHave(t *testing.T) {
	for _, demo := range plans.Names() {
		text, _ := plans.Demo(demo)
		file, err := planfile.Read(demo, text)
		if err != nil {
			t.Fatal(err)
		}
		result, set := calc.Evaluate(file.Plan), quantity.Metric
		for n, name := range sheet.PaperNames() {
			var b bytes.Buffer
			options := sheet.Options{Format: sheet.Text, Paper: sheet.Paper(n), System: file.Plan.System(set, true), Section: 2, Against: sheet.Against{Plan: file.Plan, Name: "itself"}}
			if err := sheet.Write(&b, file.Plan, result, options); err != nil {
				if strings.Contains(err.Error(), "nothing to print") { // a handover that nobody has begun
					continue
				}
				t.Fatalf("%s, %s: %v", demo, name, err)
			}
			if at := strings.IndexFunc(b.String(), func(r rune) bool { return r > 126 && !strings.ContainsRune(oldFonts, r) }); at >= 0 {
				t.Errorf("%s, %s has %q", demo, name, []rune(b.String()[at:])[0])
			}
		}
	}
}

// TestColourTellsNothingAlone: wherever one goes and whatever one changes, lines that differ in colour differ in what is written.
func TestColourTellsNothingAlone(t *testing.T) {
	seen := map[string]string{}
	look := func(name string, p *ui.Planner) {
		for _, coloured := range strings.Split(body(p), "\n") {
			plain := withoutColour(coloured)
			if before, ok := seen[plain]; ok && before != coloured {
				t.Errorf("%s: another line reads the same and has other colours:\n%q\n%q", name, before, coloured)
			}
			seen[plain] = coloured
		}
	}
	everywhere(t, "ottermast-2", 80, 24, ui.Options{Colours: 16}, func(where place, p *ui.Planner) {
		look(where.name, p)
		for _, key := range []string{"down", "down", "up"} {
			press(p, key)
			look(where.name+" "+key, p)
		}
	})
}

// TestEachStateIsWritten: what is told of the state of things stands there in signs or words, without colour.
func TestEachStateIsWritten(t *testing.T) {
	for _, test := range []struct {
		name string
		keys []string
		sign string // that is there then, and not before
	}{
		{"a change not saved", []string{"page mud", "down", "+"}, "* not saved"},
		{"a figure that rose", []string{"page mud", "down", "+"}, "+0.010"},
		{"a column that changed", []string{"page mud", "down", "+", "v"}, "~1.260 sg"},
		{"a stop of a section", []string{"page hydraulics", "7000", "enter"}, "[3 17 1/2!!]"},
		{"a stop at its entry", []string{"page hydraulics", "7000", "enter", "down"}, "!!Flow"},
		{"an entry at fault", []string{"page mud", "down", "1.3 psi"}, ">!Mud density"},
		{"an entry planned and built otherwise", []string{"page built", "down", "down", "2161", "enter", "page hole"}, "(2155.0 m)"},
		{"a section that cannot be worked out", []string{"page hole", "down", "down", "down", "down", "down", "backspace"}, "!!?]"},
	} {
		p := screenOf(t, "ottermast-2", 100, 30, ui.Options{}, "]]")
		if strings.Contains(p.View(), test.sign) {
			t.Errorf("%s: %q is there before", test.name, test.sign)
		}
		press(p, test.keys...)
		if !strings.Contains(p.View(), test.sign) {
			t.Errorf("%s: %q is not there:\n%s", test.name, test.sign, p.View())
		}
	}
}

// withoutColour takes the sequences of colour out of a screen.
func withoutColour(screen string) string {
	var b strings.Builder
	for {
		head, rest, found := strings.Cut(screen, "\x1b[")
		b.WriteString(head)
		if !found {
			return b.String()
		}
		_, screen, _ = strings.Cut(rest, "m")
	}
}
