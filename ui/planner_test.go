package ui_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui"
	"borewalk/ui/canvas"
	"borewalk/ui/terminal"
)

var update = flag.Bool("update", false, "write the golden screens anew; look at the difference before you keep it")

// screenOf opens a demo in a window, presses the keys, and returns the planner.
func screenOf(t testing.TB, demo string, width, height int, options ui.Options, keys ...string) *ui.Planner {
	t.Helper()
	text, ok := plans.Demo(demo)
	if !ok {
		t.Fatalf("no demo %q", demo)
	}
	file, err := planfile.Read(demo, text)
	if err != nil {
		t.Fatal(err)
	}
	if options.Title == "" {
		options.Title = "demo"
	}
	terminal.NarrowAmbiguous()
	p := ui.New(file, options)
	p.Update(tea.WindowSizeMsg{Width: width, Height: height})
	press(p, keys...)
	return p
}

// press sends keys: names of bubbletea's key types, or text typed as it stands.
func press(p *ui.Planner, keys ...string) {
	named := map[string]tea.KeyType{
		"enter": tea.KeyEnter, "esc": tea.KeyEsc, "tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab, "up": tea.KeyUp, "down": tea.KeyDown,
		"left": tea.KeyLeft, "right": tea.KeyRight, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "home": tea.KeyHome, "end": tea.KeyEnd,
		"backspace": tea.KeyBackspace, "ctrl+s": tea.KeyCtrlS, "ctrl+r": tea.KeyCtrlR, "ctrl+l": tea.KeyCtrlL, "ctrl+c": tea.KeyCtrlC,
		"ctrl+u": tea.KeyCtrlU,
	}
	for _, k := range keys {
		if kind, ok := named[k]; ok {
			p.Update(tea.KeyMsg{Type: kind})
			continue
		}
		for _, r := range k {
			p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
		}
	}
}

func paste(p *ui.Planner, text string) {
	p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
}

// downTo moves the focus down until the line with it shows a text.
func downTo(t testing.TB, p *ui.Planner, text string) {
	t.Helper()
	press(p, "home")
	for range 200 {
		for _, l := range strings.Split(p.View(), "\n") {
			for i := strings.Index(l, ">"); i >= 0; i = strings.Index(l, ">") {
				l = l[i+1:]
				if strings.HasPrefix(strings.TrimLeft(l, " !"), text) {
					return
				}
			}
		}
		press(p, "down")
	}
	t.Fatalf("no line with %q on\n%s", text, p.View())
}

func TestGoldenScreens(t *testing.T) {
	tests := []struct {
		name          string
		demo          string
		width, height int
		options       ui.Options
		keys          []string
	}{
		{"first", "ottermast-2", 80, 24, ui.Options{}, nil},
		{"hole-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]"}},
		{"mud-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]", "tab", "tab"}},
		{"casing-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]]", "tab", "tab", "tab"}},
		{"table-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]", "tab", "tab", "v", "pgdown"}},
		{"window-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]", "v", "v"}},
		{"mud-140", "ottermast-2", 140, 40, ui.Options{}, []string{"]]", "tab", "tab"}},
		{"liner-140", "saltlantern-1", 140, 40, ui.Options{}, []string{"]]]]]", "tab", "tab", "tab"}},
		{"mud-100", "saltlantern-1", 100, 30, ui.Options{}, []string{"]]", "tab", "tab"}},
		{"ascii-80", "ottermast-2", 80, 24, ui.Options{ASCII: true}, []string{"]]]]", "tab", "tab", "tab"}},
		{"colour-80", "ottermast-2", 80, 24, ui.Options{Colours: 16}, []string{"]]]", "tab", "tab"}},
		{"findings-80", "saltlantern-1", 80, 24, ui.Options{}, []string{"]", "f"}},
		{"help-80", "ottermast-2", 80, 24, ui.Options{}, []string{"?"}},
		{"new-80", "ottermast-2", 80, 24, ui.Options{}, []string{"N"}},
		{"small", "ottermast-2", 60, 20, ui.Options{}, nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := screenOf(t, test.demo, test.width, test.height, test.options, test.keys...)
			golden(t, test.name, p.View())
		})
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", "screens", name+".txt")
	got += "\n"
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
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
		t.Errorf("the screen differs from %s (run the test with -update and look):\n%s", path, got)
	}
}

// Every screen must fit its window, whatever its size.
func TestViewFitsEveryWindow(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {81, 25}, {99, 24}, {100, 30}, {131, 43}, {132, 43}, {200, 60}, {1, 1}, {79, 24}, {0, 0}} {
		for _, keys := range [][]string{nil, {"tab", "tab"}, {"v"}, {"v", "v"}, {"f"}, {"?"}, {"shift+tab"}, {"w"}, {"1"}, {"S"}, {"N"}} {
			p := screenOf(t, "saltlantern-1", size[0], size[1], ui.Options{}, append([]string{"]]]"}, keys...)...)
			width, height := terminal.Size(size[0], size[1])
			lines := strings.Split(p.View(), "\n")
			if len(lines) > height {
				t.Errorf("%v after %q: %d lines", size, keys, len(lines))
			}
			for i, l := range lines {
				if w := canvas.Width(l); w > width {
					t.Errorf("%v after %q: line %d is %d wide", size, keys, i, w)
				}
			}
		}
	}
}

// Old Windows and Linux fonts lack most signs; what they have is listed here.
func TestOnlyGlyphsThatOldFontsHave(t *testing.T) {
	const allowed = "─│┌┐└┘├┤┬┴┼═║╒╓╔╕╖╗╘╙╚╛╜╝╞╟╠╡╢╣╤╥╦╧╨╩╪╫╬█▌▐▀▄░▒▓°±²³½·×µØ"
	for _, demo := range plans.Names() {
		for _, keys := range [][]string{nil, {"tab"}, {"tab", "tab"}, {"tab", "tab", "tab"}, {"shift+tab", "end"}, {"v"}, {"v", "v"}, {"f"}, {"?", "end"}, {"tab", "tab", "w"}} {
			p := screenOf(t, demo, 140, 40, ui.Options{}, append([]string{"]]]"}, keys...)...)
			for _, r := range p.View() {
				if r > 126 && !strings.ContainsRune(allowed, r) {
					t.Errorf("%s after %q shows %q", demo, keys, r)
				}
			}
		}
	}
}

func wants(t *testing.T, p *ui.Planner, texts ...string) {
	t.Helper()
	screen := p.View()
	for _, text := range texts {
		if !strings.Contains(screen, text) {
			t.Errorf("the screen lacks %q:\n%s", text, screen)
		}
	}
}

func lacks(t *testing.T, p *ui.Planner, text string) {
	t.Helper()
	if screen := p.View(); strings.Contains(screen, text) {
		t.Errorf("the screen has %q:\n%s", text, screen)
	}
}

func TestFiguresFollowEachKeystroke(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "2085")
	wants(t, p, "[2085|]", "2080.0 m", "-70.0") // the shoe follows while the entry is typed
	press(p, "esc")
	wants(t, p, "2150.0 m", "given up")
	press(p, "2085", "enter")
	wants(t, p, "not saved", "2080.0 m")
	press(p, "u")
	wants(t, p, "undid", "2155.0 m to 2085.0 m", "2150.0 m")
	lacks(t, p, "not saved")
	press(p, "r")
	wants(t, p, "redid", "2080.0 m")
}

func TestBadEntryIsSaidAtOnceAndWhatStoodBeforeCounts(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "2085 psi")
	wants(t, p, "! ", "psi is a unit of pressure", "what stood before: 2155.0 m", "2150.0 m") // as before the entry
	press(p, "enter")
	wants(t, p, "typing") // it stays open
	press(p, "backspace", "backspace", "backspace", "enter")
	wants(t, p, "2080.0 m")
	lacks(t, p, "psi is")
}

func TestLettersDoNotCommandWhileTyping(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "2085", " m", "q")
	wants(t, p, "[2085 mq|]")
}

func TestUnitsSwitchAndNothingStoredChanges(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "m")
	wants(t, p, "field units", "7070 ft")
	press(p, "m", "m")
	wants(t, p, "plan's units", "2155.0 m")
	lacks(t, p, "not saved")
}

// Opening an entry in other units and taking it unchanged must not touch it.
func TestTakingAnEntryUnchangedKeepsIt(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "m")
	downTo(t, p, "Hole TD")
	press(p, "enter", "enter")
	lacks(t, p, "not saved")
}

func TestPasteIsOneEditAndCannotCommand(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	paste(p, "2100 m")
	wants(t, p, "2095.0 m", "not saved")
	press(p, "u")
	lacks(t, p, "not saved")
	paste(p, "q\n2100\td")
	wants(t, p, "pasted text refused")
	lacks(t, p, "not saved")
	press(p, "enter")
	paste(p, "12\n13")
	wants(t, p, "pasted text refused")
}

func TestRowsAndSectionsComeAndGo(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "a")
	wants(t, p, "section 4 of 6", "needed")
	press(p, "u")
	wants(t, p, "of 5")
	press(p, "d")
	wants(t, p, "Remove section 4", "of 5")
	press(p, "enter")
	wants(t, p, "of 4", "u brings it back")
	press(p, "u")
	lacks(t, p, "not saved")
}

func TestCatalogueOffersOnlyWhatPasses(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "tab", "tab", "tab")
	downTo(t, p, "Casing OD")
	press(p, "enter")
	wants(t, p, "9 5/8 in", "clears by")
	lacks(t, p, "13 3/8 in ")
	press(p, "up", "enter")
	wants(t, p, "nominal weight", "drift")
	press(p, "enter")
	wants(t, p, "grade", "yield")
	press(p, "enter")
	wants(t, p, "9 5/8 in", "not saved")
	downTo(t, p, "Connector OD")
	lacks(t, p, "10 5/8 in") // the old pipe's connector went with it
	press(p, "u")
	lacks(t, p, "not saved")
	wants(t, p, "10 5/8 in")
}

func TestCatalogueOfBitsPipeAndLines(t *testing.T) {
	p := screenOf(t, "ottermast-2", 100, 30, ui.Options{}, "]]]")
	downTo(t, p, "Bit")
	press(p, "enter")
	wants(t, p, "12 1/4 in bit", "clears drift of section 3 string by")
	lacks(t, p, "17 1/2 in bit")
	press(p, "esc", "tab")
	downTo(t, p, "add String part")
	press(p, "up", "enter")
	downTo(t, p, "OD")
	press(p, "enter")
	wants(t, p, "> 5 7/8 in", "S135")
	press(p, "end")
	wants(t, p, "type OD instead")
	press(p, "home", "enter")
	wants(t, p, "2 3/8 in", "not saved")
	press(p, "u")
	lacks(t, p, "not saved")
	press(p, "tab", "tab", "tab", "tab")
	downTo(t, p, "Choke line ID")
	press(p, "enter")
	wants(t, p, "choke line", "type Choke line ID instead")
	lacks(t, p, "booster line")
}

func TestMovingTheDatumAsks(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "shift+tab")
	downTo(t, p, "Water depth")
	press(p, "352", "enter")
	wants(t, p, "what moves?", "move all with the seabed")
	press(p, "enter")
	press(p, "tab", "]]")
	wants(t, p, "2165.0 m")
	press(p, "u")
	wants(t, p, "2155.0 m")
	lacks(t, p, "not saved")
}

// The question about an entry is answered before the plan is saved, or the entry would be missing from the file.
func TestSavingWaitsForTheQuestionAboutAnEntry(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "shift+tab")
	downTo(t, p, "Water depth")
	press(p, "352", "ctrl+s")
	wants(t, p, "what moves?")
	lacks(t, p, "Save the plan as")
	press(p, "enter")
	wants(t, p, "352.0 m", "not saved")
}

// An entry that nobody accepted must not stay in the plan when the program is left from a window too small to see it.
func TestLeavingATooSmallWindowGivesTheEntryUp(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Rathole")
	press(p, "+")
	downTo(t, p, "Hole TD")
	press(p, "2085")
	p.Update(tea.WindowSizeMsg{Width: 60, Height: 20})
	press(p, "ctrl+c")
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	press(p, "esc")
	wants(t, p, "2155.0 m")
	lacks(t, p, "2085")
}

// What would be lost is asked about where it can be seen.
func TestATooSmallWindowShowsTheQuestion(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Rathole")
	press(p, "+", "f")
	p.Update(tea.WindowSizeMsg{Width: 60, Height: 12})
	wants(t, p, "A question is open")
	press(p, "ctrl+c")
	wants(t, p, "save and quit", "> save and quit", "stay")
	press(p, "down")
	if _, cmd := p.Update(tea.KeyMsg{Type: tea.KeyEnter}); cmd == nil || cmd() != tea.Quit() {
		t.Error("the answer does not count")
	}
}

// A save that is given up does not make a later one quit.
func TestQuittingIsForgottenWhenTheSaveIsGivenUp(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Rathole")
	press(p, "+", "q", "enter", "esc", "s", "ctrl+u", path)
	if _, cmd := p.Update(tea.KeyMsg{Type: tea.KeyEnter}); cmd != nil {
		t.Error("a plain save quits")
	}
	wants(t, p, "saved ")
}

// What another program wrote into the plan's file is replaced only when that is wanted.
func TestAFileChangedByAnotherIsAskedAbout(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "S", "ctrl+u", path, "enter")
	const theirs = "borewalk = 1\n"
	if err := os.WriteFile(path, []byte(theirs), 0o600); err != nil {
		t.Fatal(err)
	}
	downTo(t, p, "Rathole")
	press(p, "+", "s")
	wants(t, p, "changed by another program")
	press(p, "esc")
	if got, _ := os.ReadFile(path); string(got) != theirs {
		t.Errorf("the file holds %d bytes", len(got))
	}
	press(p, "s", "down", "enter")
	if f, err := planfile.Open(path); err != nil || len(f.Plan.Sections) != 5 {
		t.Error(err)
	}
}

// A move that would leave an entry where no file may hold it is refused by name.
func TestAMoveThatLeavesARangeIsRefused(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "shift+tab")
	downTo(t, p, "Water depth")
	press(p, "20", "enter", "enter")
	wants(t, p, "not done:")
	lacks(t, p, "not saved")
	wants(t, p, "342.0 m")
}

func TestEscInAQuestionKeepsTheOtherAnswers(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "N", "enter", "Testling-1", "enter", "down", "down", "enter", "esc")
	wants(t, p, "New plan", "Testling-1")
}

func TestSaveAndQuitQuits(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well.toml")
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "+", "q", "enter", "ctrl+u", path)
	if _, cmd := p.Update(tea.KeyMsg{Type: tea.KeyEnter}); cmd == nil {
		t.Error("save and quit stays")
	}
	if _, err := planfile.Open(path); err != nil {
		t.Error(err)
	}
}

func TestDepthByCarriesTheDepthOver(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Depth fixed by")
	press(p, "+")
	wants(t, p, "Shoe", "2150.0 m", "2155.0 m")
	downTo(t, p, "Shoe ")
	press(p, "2200", "enter")
	wants(t, p, "2205.0 m")
}

// A line feed counts as enter, and ctrl h as backspace, since lines send them so.
func TestOtherSpellingsOfEnterAndBackspace(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "20855")
	p.Update(tea.KeyMsg{Type: tea.KeyCtrlH})
	p.Update(tea.KeyMsg{Type: tea.KeyCtrlJ})
	wants(t, p, "2080.0 m", "not saved")
}

// In the table the arrows move through it; left goes back to the field, which is nudged with the table in sight.
func TestTheTableIsReadAndTheFieldNudgedBesideIt(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "tab", "tab")
	downTo(t, p, "Mud density")
	press(p, "v", "end")
	wants(t, p, "open hole, tool")
	press(p, "home", "left", "+")
	wants(t, p, "Mud density: 1.250 sg to 1.260 sg", "0.090 sg")
	press(p, "v", "+")
	wants(t, p, "1.270 sg", "EMW sg, TVD m")
	press(p, "uu")
	lacks(t, p, "not saved")
}

func TestFindingsJumpToTheirField(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]]", "f", "enter")
	wants(t, p, "[HOLE]", "> Bit")
	press(p, "f", "down", "enter")
	wants(t, p, "[CASING]", "> Top")
}

func TestWorkingShowsFormulaNumbersAndSource(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "tab", "tab", "right", "w")
	wants(t, p, "margin = mud - pore", "1.25", "result", "Source:", "Over pore, at TVD")
	press(p, "end")
	wants(t, p, "verify by independent calculation")
}

func TestBlockedKeysSayWhy(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "[")
	wants(t, p, "this is the first section")
	press(p, "u")
	wants(t, p, "nothing to undo")
	press(p, "right", "enter")
	wants(t, p, "a figure is computed")
}

// On a slow link an escape and the key after it arrive in one read, which the terminal code takes for alt.
func TestAltIsAnEscapeAndAKey(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "?")
	p.Update(tea.KeyMsg{Type: tea.KeyEsc, Alt: true})
	lacks(t, p, "Help")
	press(p, "?")
	p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{']'}, Alt: true})
	lacks(t, p, "Help")
	wants(t, p, "section 2 of 5")
}

func TestTooSmallIgnoresKeysAndComesBack(t *testing.T) {
	p := screenOf(t, "ottermast-2", 60, 20, ui.Options{}, "]]", "d", "d")
	wants(t, p, "60 x 20", "80 x 24")
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	wants(t, p, "section 1 of 5")
	lacks(t, p, "not saved")
}

// A section that has no depths has no findings either; that must not look like being free of them.
func TestASectionThatCannotBeWorkedOutIsMarked(t *testing.T) {
	p := screenOf(t, "ottermast-2", 100, 30, ui.Options{}, "]]]")
	downTo(t, p, "Hole TD")
	press(p, "backspace")
	wants(t, p, "[4 12 1/4!!?]", "5 8 1/2?")
}

func TestQuitAsksOnlyWhenSomethingWouldBeLost(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{})
	if _, cmd := p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'q'}}); cmd == nil || cmd() != tea.Quit() {
		t.Error("q on an unchanged plan does not quit")
	}
	p = screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "+", "q")
	wants(t, p, "not saved", "save and quit", "stay")
	press(p, "down", "down", "enter")
	wants(t, p, "not saved", "[HOLE]")
}

func TestSaveAsWritesAFileAndAsksBeforeReplacing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "well")
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	downTo(t, p, "Hole TD")
	press(p, "2085", "enter", "s")
	wants(t, p, "Save the plan as", "ottermast-2.toml")
	press(p, "ctrl+u", path, "enter")
	lacks(t, p, "not saved")
	file, err := planfile.Open(path + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	if got := file.Plan.Sections[2].TD.Text(); got != "2085 m" {
		t.Errorf("saved TD = %q, want 2085 m", got)
	}
	press(p, "S", "ctrl+u", path+".toml", "enter") // its own file: no question
	lacks(t, p, "exists already")
	other := filepath.Join(filepath.Dir(path), "other.toml")
	if err := os.WriteFile(other, []byte("x"), 0o644); err != nil {
		t.Fatal(err)
	}
	press(p, "S", "ctrl+u", other, "enter")
	wants(t, p, "exists already")
}

func TestAPlanWithoutSectionsIsStillShown(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "d", "enter", "d", "enter", "d", "enter", "d", "enter", "d", "enter")
	wants(t, p, "add Section")
	for range len(model.Topics()) {
		press(p, "tab", "v", "w", "esc", "down", "up", "right", "left", "n", "p")
	}
	for !strings.Contains(p.View(), "add Section") {
		press(p, "v")
	}
	press(p, "d")
	wants(t, p, "there is no section")
	press(p, "enter")
	wants(t, p, "section 1 of 1")
	press(p, "uuuuuu")
	wants(t, p, "of 5")
	lacks(t, p, "not saved")
}

func TestUndoingTheUnitSetShowsTheOldUnits(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "shift+tab")
	downTo(t, p, "Units")
	press(p, "+")
	wants(t, p, "field", "1207 ft")
	press(p, "u")
	wants(t, p, "368.0 m")
}

func TestNewPlanFromAFewQuestions(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "N")
	press(p, "enter", "Testling-1", "enter")
	for range 5 {
		press(p, "down")
	}
	press(p, "end", "enter")
	wants(t, p, "Testling-1", "of 5", "not saved", "prognosis")
	press(p, "]]]]", "tab", "tab", "tab")
	wants(t, p, "7 in", "liner")
}

func BenchmarkView140x40(b *testing.B) {
	p := screenOf(b, "ottermast-2", 140, 40, ui.Options{Colours: 16}, "]]", "tab", "tab")
	b.ReportAllocs()
	for b.Loop() {
		p.View()
	}
}

func TestWorkingOutTheTopOfCement(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "g")
	wants(t, p, "g: there is nothing to be worked out on this page")
	press(p, "tab", "tab", "tab", "tab", "g")
	wants(t, p, "Top ", "Displaced at", "Excess", "(now 850.0 m)", "enter takes it")
	press(p, "enter")
	wants(t, p, "not saved", "Top of the slurry")
	press(p, "u")
	lacks(t, p, "not saved")
}
