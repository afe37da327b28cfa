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

// playing opens the invented job and presses keys in the player.
func playing(t testing.TB, width, height int, options ui.Options, keys ...string) *ui.Planner {
	t.Helper()
	options.Charts, options.Play = someCharts, playSomeJob
	return screenOf(t, "ottermast-2", width, height, options, append([]string{"]]", "page cement", "P"}, keys...)...)
}

func TestGoldenPlayer(t *testing.T) {
	golden(t, "player-80", still(playing(t, 80, 24, ui.Options{}, "84", "enter").View()))
	golden(t, "player-ascii-100", still(playing(t, 100, 30, ui.Options{ASCII: true}, "182.5", "enter").View()))
	golden(t, "player-140", still(playing(t, 140, 40, ui.Options{}, "235", "enter").View()))
}

func TestThePlayerStepsThroughMomentsAndEvents(t *testing.T) {
	p := playing(t, 80, 24, ui.Options{})
	wants(t, p, "Moment 1 of 65", "> weighted spacer", "Pumped   0.00 m3")
	press(p, "right")
	wants(t, p, "Moment 2 of 65", "1.00 m3")
	press(p, "pgdown")
	wants(t, p, "Moment 12 of 65")
	press(p, "pgup", "left", "left")
	wants(t, p, "Moment 1 of 65")
	press(p, "n")
	wants(t, p, "Moment 17 of 65", "> btm plug, lead", "cement job: bottom plug, lead")
	press(p, "]", "]")
	wants(t, p, "> top. displacing")
	press(p, "p")
	wants(t, p, "> tail")
	press(p, "end")
	wants(t, p, "Moment 65 of 65", "> pumps stopped", "pumps stand", "bottom landed 2126.0")
	press(p, "n")
	wants(t, p, "Moment 65 of 65")
	press(p, "home")
	wants(t, p, "Moment 1 of 65")
	press(p, "esc")
	lacks(t, p, "Moment")
	wants(t, p, "[CEMENT]", "> Placed by")
}

func TestThePlayerGoesToAVolume(t *testing.T) {
	p := playing(t, 80, 24, ui.Options{}, "100")
	wants(t, p, "go to [100|]")
	press(p, "backspace", "backspace", "5", "enter")
	wants(t, p, "15.0 m3 of 259.0")
	press(p, "1,5", "esc")
	wants(t, p, "15.0 m3 of 259.0", "Moment")
	press(p, "1.2.3", "enter")
	wants(t, p, "! ", "more than one point")
	press(p, "esc", "999", "enter")
	wants(t, p, "259.0 m3 of 259.0", "the job ends with 259.0 m3 pumped")
	press(p, "m", "100", "enter") // barrels now
	wants(t, p, "bbl of 1629", "at bbl")
}

func TestThePlayerShowsTheMoment(t *testing.T) {
	p := playing(t, 80, 24, ui.Options{}, "85", "enter")
	wants(t, p, "Level 60.0 m", "1500 L/min, returns 1800", "of tail", "10.7 m3", "last. 950    1.316   1.480  +0.164", "the cement falls freely",
		"The string is not full", "weighted spacer   1.400       -")
	press(p, "end", "left", "left")
	wants(t, p, "lead              1.500  1127.8", "top           1975.1")
}

// The same job in a hole in gauge: the moment stays, what presses changes, and back again.
func TestThePlayerTurnsTheHole(t *testing.T) {
	p := playing(t, 80, 24, ui.Options{}, "85", "enter", "h")
	wants(t, p, "cement job, hole in gauge: tail", "85.7 m3 of 259.0", "last. 950    1.416   1.480  +0.064")
	press(p, "h")
	wants(t, p, "cement job: tail", "85.7 m3 of 259.0", "last. 950    1.316   1.480  +0.164")
	press(p, "end", "h")
	wants(t, p, "hole in gauge", "Moment 65 of 65")
	chart := func() string { press(p, "v"); return strings.SplitN(p.View(), "cement job", 2)[0] }
	gauge := chart()
	if press(p, "h", "v", "v", "v", "v"); chart() == gauge {
		t.Error("the chart is the same in both holes")
	}
}

// A job that cannot be played in the other hole leaves the one shown, and says why.
func TestAHoleThatCannotBePlayedIsRefused(t *testing.T) {
	only := func(plan *model.Plan, section int, hole calc.HoleSize) (calc.Job, string, model.Path) {
		if hole == calc.InGauge {
			return calc.Job{}, "the bit has no size", ""
		}
		return playSomeJob(plan, section, hole)
	}
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{Play: only}, "]]", "page cement", "P", "right", "h")
	wants(t, p, "Moment 2 of 65", "other hole: the bit has no size")
	lacks(t, p, "hole in gauge")
}

// Where the density passes the fracture the margin says so with a sign.
func TestAMarginBelowZeroIsMarked(t *testing.T) {
	options := ui.Options{Play: func(*model.Plan, int, calc.HoleSize) (calc.Job, string, model.Path) {
		job := someJob()
		job.Dynamic, job.Points[0].Fracture = false, 1280
		return job, "", ""
	}}
	p := screenOf(t, "ottermast-2", 80, 24, options, "]]", "page cement", "P")
	wants(t, p, "!-0.010", "static", "Friction is not known")
}

// Where not all points have room those with the least margin are shown, and the head says how many there are.
func TestTheTightestPointsAreShown(t *testing.T) {
	options := ui.Options{Play: func(*model.Plan, int, calc.HoleSize) (calc.Job, string, model.Path) {
		job := someJob()
		for i := range 6 {
			name := string(rune('a'+i)) + " sand"
			job.Points = append(job.Points, calc.JobPoint{Name: name, Fracture: 1300 + 10*float64(i)})
		}
		for i := range job.Frames {
			job.Frames[i].EMW = append(job.Frames[i].EMW, 1290, 1290, 1290, 1290, 1290, 1290)
		}
		return job, "", ""
	}}
	p := screenOf(t, "ottermast-2", 80, 24, options, "]]", "page cement", "P")
	wants(t, p, "EMW sg 4 of 9", "a sand 0", "d sand 0", "displacing mud")
	lacks(t, p, "top of sand")
}

func TestPlayingIsRefusedWithAReason(t *testing.T) {
	p := playing(t, 80, 24, ui.Options{}, "esc", "[", "P")
	wants(t, p, "no job to play: the slurry has no density; see section", "2, slurry 1: Slurry density")
	press(p, "esc", "page mud", "P")
	wants(t, p, "P: a cement job is played on the cement page")
	long := ui.Options{Play: func(*model.Plan, int, calc.HoleSize) (calc.Job, string, model.Path) {
		return calc.Job{}, "the volume to be pumped is not known because the hole size is not entered: enter the hole on the hole page", ""
	}}
	p = screenOf(t, "ottermast-2", 80, 24, long, "]]", "page cement", "P")
	wants(t, p, "no job to play", "the hole page", "esc or q closes")
	empty := ui.Options{Play: func(*model.Plan, int, calc.HoleSize) (calc.Job, string, model.Path) { return calc.Job{}, "", "" }}
	p = screenOf(t, "ottermast-2", 80, 24, empty, "]]", "page cement", "P")
	wants(t, p, "no job to play: nothing is pumped")
}

// The demos' own jobs are played to their end in every unit set, and no number lacks room: it would be drawn as # signs.
func TestTheDemosArePlayed(t *testing.T) {
	for _, demo := range plans.Names() {
		for section := range 5 {
			p := screenOf(t, demo, 80, 24, ui.Options{}, strings.Repeat("]", section), "page cement", "P")
			if demo == "saltlantern-1" && section == 0 { // jetted
				wants(t, p, "no job to play: the section has no cemented string")
				continue
			}
			if !strings.Contains(p.View(), "Moment 1 of") {
				t.Errorf("%s, section %d: no job:\n%s", demo, section+1, p.View())
			}
			for range 25 {
				for range 3 {
					if screen := p.View(); strings.Contains(screen, "#") || strings.Contains(screen, "NaN") {
						t.Fatalf("%s:\n%s", demo, screen)
					}
					press(p, "m")
				}
				press(p, "pgdown")
			}
			wants(t, p, "> bled off")
			for range 4 {
				press(p, "v")
				p.View()
			}
		}
	}
}

func TestTheChartFollowsTheMoment(t *testing.T) {
	p := playing(t, 80, 24, ui.Options{}, "v")
	wants(t, p, "Cement job", "Moment 1 of 65")
	column := func() int {
		for _, l := range strings.Split(p.View(), "\n") {
			if strings.Contains(l, "pumped m3") {
				return strings.Index(l, "^")
			}
		}
		return -1
	}
	before := column()
	press(p, "n")
	if after := column(); before < 0 || after <= before {
		t.Errorf("the cursor is at %d, then at %d", before, after)
	}
	press(p, "v", "v", "v", "v") // each kind by itself, then the gauges again
	wants(t, p, "Pumped")
	wants(t, playing(t, 140, 40, ui.Options{}), "Cement job", "Pumped") // beside each other
}

// It runs by itself only when told to, stops with any step, and is silent while nothing runs.
func TestThePlayerRunsAndStops(t *testing.T) {
	p := playing(t, 80, 24, ui.Options{})
	send := func(m tea.Msg) tea.Cmd { _, cmd := p.Update(m); return cmd }
	space := tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	if send(tea.KeyMsg{Type: tea.KeyRight}) != nil {
		t.Error("a step starts something")
	}
	cmd := send(space)
	if cmd == nil {
		t.Fatal("space starts nothing")
	}
	cmd = send(cmd())
	wants(t, p, "Moment 3 of 65")
	if cmd == nil {
		t.Fatal("it does not go on")
	}
	if send(space) != nil || send(cmd()) != nil {
		t.Error("it goes on after space")
	}
	wants(t, p, "Moment 3 of 65")
	press(p, "end")
	if send(space) != nil {
		t.Error("it starts at the end")
	}
	press(p, "home")
	cmd = send(space)
	press(p, "esc")
	if send(cmd()) != nil {
		t.Error("it goes on after it was closed")
	}
}

func TestThePlayerFitsEveryWindow(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {99, 24}, {100, 30}, {131, 43}, {132, 43}, {200, 60}} {
		for _, keys := range [][]string{nil, {"end"}, {"v", "n"}, {"84", "enter"}, {"12"}} {
			for _, ascii := range []bool{false, true} {
				p := playing(t, size[0], size[1], ui.Options{ASCII: ascii}, keys...)
				lines := strings.Split(p.View(), "\n")
				if len(lines) > size[1] || strings.Contains(p.View(), "##") && !ascii {
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

func BenchmarkViewOfPlayer140x40(b *testing.B) {
	p := playing(b, 140, 40, ui.Options{Colours: 16}, "210", "enter")
	b.ReportAllocs()
	for b.Loop() {
		p.View()
	}
}
