package ui_test

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/plans"
	"borewalk/ui"
	"borewalk/ui/canvas"
)

// killing opens the control page of section 4 with the invented kick and disconnect, and presses keys there.
func killing(t testing.TB, width, height int, options ui.Options, keys ...string) *ui.Planner {
	t.Helper()
	options.Charts = someCharts
	if options.PlayKill == nil {
		options.PlayKill = playSomeKick
	}
	options.PlayDisconnect = showSomeDisconnect
	return screenOf(t, "ottermast-2", width, height, options, append([]string{"]]]", "page control"}, keys...)...)
}

func TestGoldenKick(t *testing.T) {
	golden(t, "kick-80", still(killing(t, 80, 24, ui.Options{}, "P", "h", "115", "enter").View()))
	golden(t, "kick-ascii-80", still(killing(t, 80, 24, ui.Options{ASCII: true}, "P", "135", "enter").View()))
	golden(t, "parted-80", still(killing(t, 80, 24, ui.Options{}, "E", "end").View()))
}

func TestTheKickIsSteppedThrough(t *testing.T) {
	p := killing(t, 80, 24, ui.Options{}, "P")
	wants(t, p, "kick, driller's: shut in", "Moment 1 of 64", "Stage     pumps stand", "Pit gain  8.00 m3   Gas 8.00 m3")
	press(p, "right")
	wants(t, p, "> first circ.", "Stage     0.00 m3", "Rate      480 L/min, mud", "Standpipe 27.0 bar  Choke 4.0 bar")
	press(p, "pgdown")
	wants(t, p, "Stage     61.6 m3 3852 stk", "Pit gain  14.8 m3   Gas 14.8 m3", "shoe 2150    1.500   1.560  +0.060", "weak. 2480   1.480   1.540  +0.060",
		"TD 3250      1.460  >1.460       0", "** gas                   -  1721.3", ",, mud in riser      1.420    0.00")
	press(p, "n")
	wants(t, p, "kick, driller's: gas out", "Gas 0.00 m3", "The choke is wide open", "TD 3250      1.490  >1.460  +0.030")
	press(p, "n")
	wants(t, p, "> second circ.", "Stage     0.00 m3", "kill mud", "-- kill mud          1.460       -")
	press(p, "]")
	wants(t, p, "> done", "pumps stand", "-- kill mud          1.460   364.8")
	lacks(t, p, "wide open")
	press(p, "[", "home", "100", "enter")
	wants(t, p, "Pumped    104.8 m3 of 369.8")
	press(p, "esc")
	wants(t, p, "[CONTROL]")
	lacks(t, p, "Moment")
}

// The same kick by the other method: the moment stays, and back again.
func TestTheKickIsTurnedToTheOtherMethod(t *testing.T) {
	p := killing(t, 80, 24, ui.Options{}, "P", "100", "enter", "h")
	wants(t, p, "kick, wait and weight (not as planned): first circulation", "Pumped    104.8 m3 of 184.9", "480 L/min, kill mud")
	press(p, "h")
	wants(t, p, "kick, driller's: first circulation", "Pumped    104.8 m3 of 369.8", "480 L/min, mud")
	press(p, "end", "h")
	wants(t, p, "not as planned", "Moment 33 of 33")
	chart := func() string { press(p, "v"); return strings.SplitN(p.View(), "── kick", 2)[0] }
	other := chart()
	wants(t, p, "Kick circulated out", "pressure bar")
	if press(p, "h", "v", "v", "v", "v"); chart() == other {
		t.Error("the chart is the same by both methods")
	}
}

func TestAMethodThatCannotBePlayedIsRefused(t *testing.T) {
	only := func(plan *model.Plan, section int, other bool) (calc.Job, string, model.Path) {
		if other {
			return calc.Job{}, "the string is too short", ""
		}
		return playSomeKick(plan, section, other)
	}
	p := killing(t, 80, 24, ui.Options{PlayKill: only}, "P", "right", "h")
	wants(t, p, "driller's", "Moment 2 of 64", "no kick to play by the other method: the string is too short")
}

// Where the rock gives way, or more would come in, the moment says so.
func TestAKickBeyondItsLimitsSaysSo(t *testing.T) {
	beyond := func(point int, emw float64) ui.Options {
		return ui.Options{PlayKill: func(plan *model.Plan, section int, other bool) (calc.Job, string, model.Path) {
			job := someKick(other)
			job.Frames[0].EMW[point] = emw
			return job, "", ""
		}}
	}
	wants(t, killing(t, 80, 24, beyond(1, 1550), "P"), "Above what the rock stands at the weakest row: losses.", "!-0.010")
	wants(t, killing(t, 80, 24, beyond(2, 1455), "P"), "Below the formation's pressure at TD: more comes in.", "!-0.005")
	p := killing(t, 80, 24, beyond(2, 1459.99), "P") // a choke holds its pressure nearly
	lacks(t, p, "more comes in")
	lacks(t, p, "!0")
}

func TestTheDisconnectIsShownFromTheKickAndFromThePage(t *testing.T) {
	p := killing(t, 80, 24, ui.Options{}, "P", "right", "E")
	wants(t, p, "emergency disconnect: connected, hung off", "State 1 of 3", "The kick is left out", "q to the kick", "Riser  full of mud", "hung off in the stack",
		"shoe 2150    1.420  >1.168  +0.252")
	press(p, "n")
	wants(t, p, "> sheared and sealed", "cut in the stack", "closed over the cut", "Riser  full of mud")
	press(p, "right")
	wants(t, p, "> riser gone", "Riser  gone", "least 2900   1.355  >1.380 !-0.025", "The mud left does not hold the formation", "where least is left: the closed stack does.", "~~ sea               1.030    26.0")
	press(p, "v", "h", "5", " ", "right") // none of which a state has
	wants(t, p, "State 3 of 3", "Riser  gone")
	lacks(t, p, "go to")
	press(p, "esc")
	wants(t, p, "kick, driller's: first circulation", "Moment 2 of 64")
	press(p, "E", "E")
	wants(t, p, "Moment 2 of 64")
	press(p, "esc", "E", "end")
	wants(t, p, "State 3 of 3")
	lacks(t, p, "to the kick")
	press(p, "q")
	wants(t, p, "[CONTROL]", "P play")
	lacks(t, p, "State")
}

func TestKicksAreRefusedWithAReason(t *testing.T) {
	p := killing(t, 80, 24, ui.Options{}, "page mud", "P")
	wants(t, p, "P: a cement job is played on the cement page, a kick on the control page")
	press(p, "E")
	wants(t, p, "E: an emergency disconnect is shown on the control page")
	press(p, "page control", "[", "P")
	wants(t, p, "no kick to play: no slow rate is recorded; see section", "3: Rate of the kill pump")
	press(p, "esc", "E")
	wants(t, p, "no emergency disconnect to play: there is no riser to", "let go; see section 3: Returns to")
	for _, riserless := range []string{"P", "E"} { // by what calc itself says
		wants(t, screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "page control", riserless), "to play: ", "riser", "section 1: Returns to")
	}
}

// The demos' own kicks are played to their end by both methods and in every unit set, and no number lacks room: it would be drawn as #
// signs.
func TestTheDemosKicksArePlayed(t *testing.T) {
	room := func(p *ui.Planner) {
		for range 3 {
			if screen := p.View(); strings.Contains(screen, "#") || strings.Contains(screen, "NaN") {
				t.Fatalf("no room, or no number:\n%s", screen)
			}
			press(p, "m")
		}
	}
	for _, demo := range plans.Names() {
		for section := 2; section < 5; section++ {
			p := screenOf(t, demo, 80, 24, ui.Options{}, strings.Repeat("]", section), "page control", "P")
			for range 2 {
				press(p, "home")
				for range 25 {
					room(p)
					press(p, "pgdown")
				}
				wants(t, p, "> done")
				press(p, "h")
			}
			press(p, "E")
			for range 3 {
				room(p)
				press(p, "n")
			}
			wants(t, p, "> riser gone")
		}
	}
}

func TestKicksFitEveryWindow(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {99, 24}, {100, 30}, {131, 43}, {132, 43}, {200, 60}} {
		for _, keys := range [][]string{{"P"}, {"P", "144", "enter"}, {"P", "v", "n"}, {"E"}, {"E", "end", "v"}} {
			for _, ascii := range []bool{false, true} {
				p := killing(t, size[0], size[1], ui.Options{ASCII: ascii}, keys...)
				lines := strings.Split(p.View(), "\n")
				if len(lines) > size[1] || !strings.Contains(lastLine(p), "q closes") {
					t.Errorf("%v after %q:\n%s", size, keys, p.View())
				}
				for _, l := range lines {
					if canvas.Width(l) > size[0] {
						t.Errorf("%v after %q: %q is too wide", size, keys, l)
					}
				}
			}
		}
	}
}

// A kick that runs by itself stops when the disconnect is shown over it.
func TestTheDisconnectStopsTheKick(t *testing.T) {
	p := killing(t, 80, 24, ui.Options{}, "P")
	_, cmd := p.Update(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
	if cmd == nil {
		t.Fatal("space starts nothing")
	}
	press(p, "E")
	if _, again := p.Update(cmd()); again != nil {
		t.Error("it goes on behind the disconnect")
	}
	press(p, "esc")
	wants(t, p, "Moment 1 of 64")
}
