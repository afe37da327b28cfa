package ui_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model/anyplan"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/model/process"
	"borewalk/ui"
)

// rigs are computers with one plan in a folder that they share, and the processes that run on them.
type rigs struct {
	plan    string
	running map[int]bool
	now     time.Time
}

func newRigs(t testing.TB) *rigs {
	t.Helper()
	r := &rigs{plan: filepath.Join(t.TempDir(), "plan.toml"), running: map[int]bool{}, now: time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)}
	r.write(t, anyplan.Small)
	return r
}

func (r *rigs) write(t testing.TB, text string) {
	t.Helper()
	if err := os.WriteFile(r.plan, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func (r *rigs) content() string {
	text, _ := os.ReadFile(r.plan)
	return string(text)
}

// computer is one on which a process runs.
func (r *rigs) computer(name string, pid int) *planlock.Computer {
	r.running[pid] = true
	look := func(n int) (string, bool) { return "", r.running[n] }
	return &planlock.Computer{Computer: process.Computer{Host: name, Machine: name, Boot: name, Look: look}, User: "crew", Process: pid,
		Now: func() time.Time { return r.now }}
}

// opens opens the plan in a process on a computer.
func (r *rigs) opens(t testing.TB, computer string, process int, options ui.Options) *ui.Planner {
	t.Helper()
	file, err := planfile.Open(r.plan)
	if err != nil {
		t.Fatal(err)
	}
	if options.Name == "" {
		options.Name = "P" + string(rune('0'+process))
	}
	options.Path, options.Computer = r.plan, r.computer(computer, process)
	options.Clock = func() time.Time { return r.now }
	p := ui.New(file, options)
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	return p
}

// pressLooking presses keys and lets the planner glance at its file beside them, as it does in the program.
func pressLooking(p *ui.Planner, keys ...string) {
	for _, k := range keys {
		if _, cmd := p.Update(keyOf(k)); cmd != nil {
			p.Update(cmd())
		}
	}
}

// keyOf is the key that a character is typed with, or the down key.
func keyOf(k string) tea.KeyMsg {
	if k == "down" {
		return tea.KeyMsg{Type: tea.KeyDown}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}

func sized(width, height int) tea.WindowSizeMsg {
	return tea.WindowSizeMsg{Width: width, Height: height}
}

// edits changes an entry.
func edits(t testing.TB, p *ui.Planner) {
	t.Helper()
	downTo(t, p, "Hole TD")
	pressLooking(p, "+")
}

func lockOf(t testing.TB, plan string) string {
	t.Helper()
	path, err := planlock.Path(plan)
	if err != nil {
		t.Fatal(err)
	}
	return path
}

func there(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// The second who opens a plan is asked, with who has it, where and since when; closing the question leaves the plan read-only.
func TestTheSecondIsAsked(t *testing.T) {
	r := newRigs(t)
	r.opens(t, "bridge", 1, ui.Options{})
	r.now = r.now.Add(2*time.Hour + 5*time.Minute)
	tests := []struct {
		computer string
		wants    []string
	}{
		{"bridge", []string{"runs on this computer"}},
		{"shore", []string{"cannot be known from"}},
	}
	for i, test := range tests {
		p := r.opens(t, test.computer, 2+i, ui.Options{})
		wants(t, p, append(test.wants, "Another has this plan open", "P1 (crew) on bridge has it open:", "process 1, since 2026-03-01 12:00", "2 h ago",
			"look and try", "open all the same", "quit")...)
		press(p, "esc")
		wants(t, p, "plan.toml read-only")
		lacks(t, p, "Another has this plan open")
	}
	golden(t, "lock-80", r.opens(t, "bridge", 4, ui.Options{}).View())
}

// In a window too small for the pages the question is asked and answered too.
func TestTheQuestionFitsASmallWindow(t *testing.T) {
	r := newRigs(t)
	r.opens(t, "bridge", 1, ui.Options{})
	p := r.opens(t, "bridge", 2, ui.Options{})
	p.Update(tea.WindowSizeMsg{Width: 40, Height: 12})
	wants(t, p, "Another has this plan open", "> look and try")
	press(p, "down", "down")
	if _, cmd := p.Update(tea.KeyMsg{Type: tea.KeyEnter}); cmd == nil || cmd() != tea.Quit() {
		t.Error("quit does not quit")
	}
}

func TestAWrongClockIsSaidAndDecidesNothing(t *testing.T) {
	r := newRigs(t)
	r.opens(t, "bridge", 1, ui.Options{})
	r.now = r.now.Add(-3 * time.Hour)
	p := r.opens(t, "shore", 2, ui.Options{})
	wants(t, p, "Another has this plan open", "by that clock,")
	lacks(t, p, "ago")
}

// Read-only everything can be tried; it is saved under another name, and then it is a plan like any other.
func TestReadOnlyIsSavedUnderAnotherNameOnly(t *testing.T) {
	for _, how := range []string{"held", "asked for", "write-protected"} {
		t.Run(how, func(t *testing.T) {
			r := newRigs(t)
			var p *ui.Planner
			switch how {
			case "held":
				r.opens(t, "bridge", 1, ui.Options{})
				p = r.opens(t, "bridge", 2, ui.Options{})
				press(p, "enter")
			case "asked for":
				p = r.opens(t, "bridge", 2, ui.Options{ReadOnly: true})
				if there(lockOf(t, r.plan)) {
					t.Error("a lock is made")
				}
			default:
				if err := os.Chmod(r.plan, 0o444); err != nil {
					t.Fatal(err)
				}
				p = r.opens(t, "bridge", 2, ui.Options{})
			}
			wants(t, p, "read-only")
			edits(t, p)
			wants(t, p, "451.0 m", "read-only * not saved")
			for _, keys := range [][]string{{"s"}, {"S", "ctrl+u", r.plan, "enter"}, {"S", "ctrl+u", filepath.Dir(r.plan) + "/./plan.toml", "enter"}} {
				press(p, keys...)
				wants(t, p, "Not saved: read-only", "save under another name", "not saved")
				press(p, "esc")
			}
			if r.content() != anyplan.Small {
				t.Error("the plan is written")
			}
			other := filepath.Join(filepath.Dir(r.plan), "mine.toml")
			press(p, "s", "enter", "ctrl+u", other, "enter")
			wants(t, p, "saved ", "mine.toml")
			lacks(t, p, "read-only")
			if !there(other) || !there(lockOf(t, other)) {
				t.Error("no file, or no lock on it")
			}
			edits(t, p)
			press(p, "s")
			wants(t, p, "saved ")
		})
	}
}

// One who looked on while another had the plan can save it when that one has left, and not over what he wrote.
func TestReadOnlyEndsWhenTheOtherHasLeft(t *testing.T) {
	r := newRigs(t)
	one := r.opens(t, "bridge", 1, ui.Options{})
	p := r.opens(t, "bridge", 2, ui.Options{})
	press(p, "enter")
	edits(t, p)
	press(p, "s", "down", "down", "enter") // save here after all
	wants(t, p, "Another has this plan open")
	press(p, "esc")
	edits(t, one)
	edits(t, one)
	press(one, "s")
	one.Close()
	theirs := r.content()
	press(p, "s", "down", "down", "enter")
	wants(t, p, "Not saved: the file was changed by another program")
	if r.content() != theirs {
		t.Error("what the other saved is lost")
	}
	press(p, "down", "enter")
	wants(t, p, "saved ")
	lacks(t, p, "read-only")
}

// Who is taken over learns it at his next edit, and before his save writes anything; he may take the plan back, and is asked again
// about what the other has written.
func TestATakeOverIsNoticedByTheFirst(t *testing.T) {
	r := newRigs(t)
	one := r.opens(t, "bridge", 1, ui.Options{})
	two := r.opens(t, "shore", 2, ui.Options{})
	press(two, "down", "enter")
	lacks(t, two, "read-only")
	edits(t, one)
	wants(t, one, "! taken over", "another has taken the plan over; s asks")
	press(one, "s")
	wants(t, one, "Not saved: another has taken the plan over", "P2 (crew) on shore", "save over it")
	press(one, "esc")
	edits(t, two)
	edits(t, two)
	press(two, "s")
	wants(t, two, "saved ")
	theirs := r.content()
	press(one, "s")
	wants(t, one, "Not saved: another has taken the plan over")
	press(one, "down", "enter")
	wants(t, one, "Not saved: the file was changed by another program")
	if r.content() != theirs {
		t.Error("what the other saved is lost")
	}
	press(one, "down", "enter")
	wants(t, one, "saved ")
	lacks(t, one, "!  taken over")
	edits(t, two)
	wants(t, two, "! taken over")
}

// The last who opens the plan anew sees what was written while he was asked.
func TestWhatWasWrittenDuringTheQuestionIsSeen(t *testing.T) {
	r := newRigs(t)
	one := r.opens(t, "bridge", 1, ui.Options{})
	two := r.opens(t, "bridge", 2, ui.Options{})
	edits(t, one)
	press(one, "s")
	press(two, "down", "enter")
	wants(t, two, "451.0 m")
	lacks(t, two, "read-only")
}

func TestTheLockOfAKilledProcessIsTakenOverWithAWord(t *testing.T) {
	r := newRigs(t)
	r.opens(t, "bridge", 1, ui.Options{})
	delete(r.running, 1)
	p := r.opens(t, "bridge", 2, ui.Options{})
	wants(t, p, "process 1 ended without closing the plan; its lock is taken over")
	edits(t, p)
	press(p, "s")
	wants(t, p, "saved ")
	p.Close()
	if there(lockOf(t, r.plan)) {
		t.Error("the lock is left behind")
	}
}

// What is said of the lock and of the file has one line: both are found behind it.
func TestTheTakenLockAndTheNoticesOfTheFileAreBothSaid(t *testing.T) {
	r := newRigs(t)
	r.write(t, anyplan.Small+"strange = 1\n")
	r.opens(t, "bridge", 1, ui.Options{})
	delete(r.running, 1)
	p := r.opens(t, "bridge", 2, ui.Options{})
	wants(t, p, "the file needs a look (2)")
	press(p, "!")
	wants(t, p, "strange", "process 1 ended without closing the plan")
}

// The lock goes where the plan goes: none for a plan without a file, then one on its new file, moved by the next name, gone with it.
func TestTheLockFollowsTheName(t *testing.T) {
	r := newRigs(t)
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{Computer: r.computer("bridge", 1)})
	dir := t.TempDir()
	first, second := filepath.Join(dir, "first.toml"), filepath.Join(dir, "second.toml")
	press(p, "S", "ctrl+u", first, "enter")
	if !there(lockOf(t, first)) {
		t.Error("no lock on the first")
	}
	press(p, "S", "ctrl+u", second, "enter")
	if there(lockOf(t, first)) || !there(lockOf(t, second)) {
		t.Error("the lock has not moved")
	}
	press(p, "N", "end", "enter")
	wants(t, p, "a new plan")
	if there(lockOf(t, second)) {
		t.Error("the lock outlives its plan")
	}
}

// A plan is not saved onto one that another has open, unless that is wanted twice.
func TestSavingOntoAPlanThatAnotherHolds(t *testing.T) {
	r := newRigs(t)
	one := r.opens(t, "bridge", 1, ui.Options{})
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{Computer: r.computer("bridge", 2)})
	press(p, "S", "ctrl+u", r.plan, "enter")
	wants(t, p, "P1 (crew) on bridge has that plan open.", "again to replace it")
	if r.content() != anyplan.Small {
		t.Error("the plan is written")
	}
	press(p, "enter")
	wants(t, p, "saved ")
	edits(t, one)
	wants(t, one, "! taken over")
}

// Where no lock can be made the plan is opened all the same, and that is said.
func TestWhereNoLockCanBeMadeThePlanIsOpened(t *testing.T) {
	r := newRigs(t)
	if err := os.MkdirAll(filepath.Join(lockOf(t, r.plan), "in the way"), 0o755); err != nil {
		t.Fatal(err)
	}
	p := r.opens(t, "bridge", 1, ui.Options{})
	wants(t, p, "no lock can be made")
	lacks(t, p, "read-only")
	edits(t, p)
	press(p, "s")
	wants(t, p, "saved ")
	p.Close()
}

// A lock that somebody removed by hand is made anew.
func TestALockThatIsRemovedComesBack(t *testing.T) {
	r := newRigs(t)
	p := r.opens(t, "bridge", 1, ui.Options{})
	for _, does := range []func(){func() { edits(t, p) }, func() { press(p, "s") }} {
		if err := os.Remove(lockOf(t, r.plan)); err != nil {
			t.Fatal(err)
		}
		does()
	}
	wants(t, p, "saved ")
	q := r.opens(t, "bridge", 2, ui.Options{})
	wants(t, q, "Another has this plan open")
}

// A lock that is not whole names nobody and is asked about.
func TestALockThatIsNotWholeIsAskedAbout(t *testing.T) {
	r := newRigs(t)
	if err := errors.Join(os.WriteFile(lockOf(t, r.plan), nil, 0o644), os.Chtimes(lockOf(t, r.plan), r.now, r.now)); err != nil {
		t.Fatal(err)
	}
	p := r.opens(t, "bridge", 1, ui.Options{})
	wants(t, p, "names nobody", "2026-03-01 12:00", "open all the same")
	press(p, "down", "enter")
	lacks(t, p, "read-only")
	p.Close()
	if there(lockOf(t, r.plan)) {
		t.Error("the lock is left behind")
	}
}

// What a lock says comes from outside: it drives no terminal, and however long it is the answers are in sight.
func TestALockCannotDriveTheTerminal(t *testing.T) {
	r := newRigs(t)
	computer := r.computer("br\x1b[2Jidge"+strings.Repeat(" deck", 40), 1)
	if _, err := computer.Take(r.plan, "\x1b]0;x\a"); err != nil {
		t.Fatal(err)
	}
	p := r.opens(t, "shore", 2, ui.Options{})
	wants(t, p, "Another has this plan open", "look and try", "quit")
	if screen := p.View(); strings.Contains(screen, "\x1b[2J") || strings.Contains(screen, "\x1b]") {
		t.Errorf("%q", screen)
	}
}
