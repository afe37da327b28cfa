package ui_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
	"borewalk/ui"
)

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
	wants(t, p, "Remove section 4", "of 5", "> keep it")
	press(p, "down", "enter")
	wants(t, p, "of 4", "u brings it back")
	press(p, "u")
	lacks(t, p, "not saved")
}

func TestCatalogueOffersOnlyWhatPasses(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "page casing")
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
	press(p, "page well")
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

// A move that would leave an entry where no file may hold it is refused by name.
func TestAMoveThatLeavesARangeIsRefused(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "shift+tab")
	downTo(t, p, "Water depth")
	press(p, "20", "enter", "enter")
	wants(t, p, "not done:")
	lacks(t, p, "not saved")
	wants(t, p, "342.0 m")
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
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud")
	downTo(t, p, "Mud density")
	press(p, "v", "end")
	wants(t, p, "open hole, MWD/LWD")
	press(p, "home", "left", "+")
	wants(t, p, "Mud density: 1.250 sg to 1.260 sg", "0.090 sg")
	press(p, "v", "+")
	wants(t, p, "1.270 sg", "EMW sg, TVD m")
	press(p, "uu")
	lacks(t, p, "not saved")
}

func TestFindingsJumpToTheirField(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]]", "f", "enter") // those of the page that is open come first
	wants(t, p, "[HOLE]", ">!Bit")
	toFinding(t, p, "Force of a joint on the wall")
	wants(t, p, "[WELL]", ">!Path")
	toFinding(t, p, "Velocity of the mud")
	wants(t, p, "[HYDR]", ">!Booster")
	press(p, "page casing", "f", "enter")
	wants(t, p, "[CASING]", ">!Top")
}

// TestThePagesOwnFindingsComeFirst: within a severity, those that the page in view mends stand before the others, whichever section
// they are of, and none is lost.
func TestThePagesOwnFindingsComeFirst(t *testing.T) {
	listed := regexp.MustCompile(`[ >] caution \d:`)
	cautions := func(p *ui.Planner) int { return len(listed.FindAllString(p.View(), -1)) }
	p := screenOf(t, "ottermast-2", 140, 60, ui.Options{}, "]]", "page control", "f")
	inOrder(t, p, "no flow keeps all its limits", "Planned shoe test over fracture", "Collapse of")
	all := cautions(p)
	press(p, "esc", "page well", "f")
	inOrder(t, p, "caution 3: -18.8 t", "caution 4: 1.1 tf", "no flow keeps all its limits", "ok 3:")
	if got := cautions(p); got != all || !strings.Contains(p.View(), fmt.Sprintf("caution %d", all)) {
		t.Errorf("%d cautions are listed, %d on another page:\n%s", got, all, p.View())
	}
}

// TestTheFootShowsThePagesOwnFinding before another page's that is as bad.
func TestTheFootShowsThePagesOwnFinding(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "page control")
	wants(t, p, "caution section 4: Force of a joint on the wall")
	downTo(t, p, "Shoe test")
	press(p, "1.8", "enter", "down")
	wants(t, p, "caution section 4: Planned shoe test over fracture")
	press(p, "page well")
	wants(t, p, "caution section 4: Force of a joint on the wall")
}

// inOrder wants texts on the screen from its top to its bottom.
func inOrder(t *testing.T, p *ui.Planner, texts ...string) {
	t.Helper()
	rest := p.View()
	for _, text := range texts {
		_, below, found := strings.Cut(rest, text)
		if !found {
			t.Fatalf("the screen lacks %q, in that place:\n%s", text, p.View())
		}
		rest = below
	}
}

// toFinding opens the findings and takes the first in which a text stands.
func toFinding(t *testing.T, p *ui.Planner, text string) {
	t.Helper()
	press(p, "f")
	for range 100 {
		_, below, _ := strings.Cut(p.View(), "└──") // the one in focus stands below the box in full
		if strings.Contains(strings.Join(strings.Fields(below), " "), text) {
			press(p, "enter")
			return
		}
		press(p, "down")
	}
	t.Fatalf("no finding with %q on\n%s", text, p.View())
}

func TestWorkingShowsFormulaNumbersAndSource(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page mud", "right", "w")
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

// A section that has no depths has no findings either; that must not look like being free of them.
func TestASectionThatCannotBeWorkedOutIsMarked(t *testing.T) {
	p := screenOf(t, "ottermast-2", 100, 30, ui.Options{}, "]]]")
	downTo(t, p, "Hole TD")
	press(p, "backspace")
	wants(t, p, "[4 12 1/4!!?]", "5 8 1/2?")
}

func TestAPlanWithoutSectionsIsStillShown(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "d", "down", "enter", "d", "down", "enter", "d", "down", "enter", "d", "down", "enter", "d", "down", "enter")
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

func TestWorkingOutTheTopOfCement(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page casing", "g")
	wants(t, p, "g: there is nothing to be worked out on this page")
	press(p, "page cement", "g")
	wants(t, p, "Top ", "Displaced at", "Excess", "(now 850.0 m)", "enter takes it")
	press(p, "enter")
	wants(t, p, "not saved", "Top of the slurry")
	press(p, "u")
	lacks(t, p, "not saved")
}

// TestFrictionIsOfferedFromReadings: one line for each gauge of the deepest reading, and taking one is an edit.
func TestFrictionIsOfferedFromReadings(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "page string", "g")
	wants(t, p, "Friction, open 0.270 by picking up", "by slacking off", "by torque")
	press(p, "down", "down", "enter")
	wants(t, p, "> Friction, open    0.270")
}

// TestNozzlesSayWhatTheyAreFor: proposals that come to the same nozzles can be told apart.
func TestNozzlesSayWhatTheyAreFor(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "page hydraulics", "g")
	wants(t, p, "for most power, Flow", "for most impact, Flow", "for the wanted standpipe")
}

// TestAnEditSaysWhichFindingItBrings: the message of an edit does not hide what the edit leads to.
func TestAnEditSaysWhichFindingItBrings(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "page hydraulics")
	downTo(t, p, "Flow")
	press(p, "7000", "enter")
	wants(t, p, "section 4 Flow: 3400 L/min to 7000 L/min, !! stop")
	press(p, "u", "3405", "enter")
	wants(t, p, "section 4 Flow: 3400 L/min to 3405 L/min")
	lacks(t, p, "3405 L/min,")
}

// TestARowIsNeverCutWithinANumber: what a row of a list has no room for is left out, number by number.
func TestARowIsNeverCutWithinANumber(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]]", "page string")
	wants(t, p, "+ heavy-weight 5 1/2 in", "+ rotary steerable ..")
	for width := 80; width <= 200; width += 3 {
		p.Update(tea.WindowSizeMsg{Width: width, Height: 40})
		for _, line := range strings.Split(p.View(), "\n") {
			_, row, found := strings.Cut(line, "+ heavy-weight 5 1/2 in")
			if !found {
				continue
			}
			row, _, _ = strings.Cut(row, "│")
			if row = strings.TrimSpace(row); row != ".." && row != "" && row != "140.0 m" {
				t.Errorf("%d columns: heavy-weight 5 1/2 in %s", width, row)
			}
		}
	}
}

// TestThePageNamesFitAnyWindow: the open page is always named, and names that have no room are marked as left out.
func TestThePageNamesFitAnyWindow(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]")
	for width := 80; width <= 120; width += 4 {
		p.Update(tea.WindowSizeMsg{Width: width, Height: 24})
		for _, topic := range model.Topics() {
			press(p, "page "+topic.String())
			line := strings.Split(p.View(), "\n")[2]
			if strings.Contains(line, "##") || !strings.Contains(line, "["+strings.ToUpper(topic.String())[:min(4, len(topic.String()))]) {
				t.Errorf("%d columns: %q", width, line)
			}
		}
	}
}

// TestThePlannedEntryStaysVisible: beside what is as built the planned entry stands in brackets and says what counts.
func TestThePlannedEntryStaysVisible(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page built")
	downTo(t, p, "Hole TD")
	press(p, "2161", "enter", "page hole")
	wants(t, p, "(2155.0 m)")
	downTo(t, p, "Hole TD")
	wants(t, p, "as built: 2161 m counts")
	press(p, "u")
	lacks(t, p, "(2155.0 m)")
	lacks(t, p, "as built: 2161 m counts")
}
