package ui_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"borewalk/model/journal"
	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui"
)

// crashing is a run of the planner on a file, with a journal.
type crashing struct {
	*ui.Planner
	t      *testing.T
	keeper *journal.Keeper
}

// work opens a file, or a demo where it is blank, with what earlier runs left of it, and presses keys.
func work(t *testing.T, path, state string, left []*journal.Found, keys ...string) crashing {
	t.Helper()
	text, _ := plans.Demo(plans.Default)
	file, err := planfile.Read("demo", text)
	if path != "" {
		file, err = planfile.Open(path)
	}
	if err != nil {
		t.Fatal(err)
	}
	keeper := journal.NewKeeper(state, func(fault any, stack []byte) { t.Errorf("%v\n%s", fault, stack) })
	s := crashing{ui.New(file, ui.Options{Path: path, Title: "demo", Name: "A. Person", Journal: keeper, Left: left,
		Clock: func() time.Time { return time.Date(2026, 3, 1, 6, 0, 0, 0, time.UTC) }}), t, keeper}
	t.Cleanup(func() { keeper.Flush(10 * time.Second) }) // before the folders go
	press(s.Planner, keys...)
	return s
}

// left returns the one journal in a folder after a session has ended, nil for none.
func (s crashing) left(folder string) *journal.Found {
	s.t.Helper()
	if !s.keeper.Flush(10 * time.Second) {
		s.t.Fatal("the journal is not written")
	}
	entries, _ := os.ReadDir(folder)
	var found *journal.Found
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".journal") {
			continue
		}
		f, err := journal.Read(filepath.Join(folder, e.Name()))
		if err != nil || found != nil {
			s.t.Fatal(err, " or there is more than one")
		}
		found = f
	}
	return found
}

// demoFile writes the demo to a file.
func demoFile(t *testing.T) (path, dir string) {
	dir = t.TempDir()
	path = filepath.Join(dir, "well.toml")
	text, _ := plans.Demo(plans.Default)
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	return path, dir
}

// deeper makes section 3 end deeper and types at the next entry.
func deeper(t *testing.T, s crashing) {
	press(s.Planner, "]]")
	downTo(t, s.Planner, "Hole TD")
	press(s.Planner, "2085", "enter")
	downTo(t, s.Planner, "Rathole")
	press(s.Planner, "12")
}

func TestWhatWasNotSavedIsOfferedAndRecovered(t *testing.T) {
	path, dir := demoFile(t)
	before := work(t, path, "", nil)
	deeper(t, before)
	f := before.left(dir)
	if f == nil || f.Pending != 1 {
		t.Fatalf("journal %+v", f)
	}
	s := work(t, path, "", []*journal.Found{f})
	golden(t, "recovery-80", s.View())
	press(s.Planner, "enter")
	wants(t, s.Planner, "not saved", "[12|]", "was being typed")
	press(s.Planner, "enter")
	wants(t, s.Planner, "2073.0 m") // the shoe, from both
	f = s.left(dir)
	if f == nil || f.Pending != 2 || f.Typing != "" {
		t.Fatalf("journal %+v", f)
	}
	press(s.Planner, "s")
	wants(t, s.Planner, "saved ")
	if s.left(dir) != nil {
		t.Error("a journal is left after a save")
	}
	log := logOf(t, path)
	if len(log) != 2 || log[0].Path != "section[3].td" || log[0].Hash != "" || log[1].Path != "section[3].rathole" || log[1].Hash == "" || log[0].Who != "A. Person" {
		t.Errorf("log %+v", log)
	}
	if file, err := planfile.Open(path); err != nil || len(file.Notices) > 0 {
		t.Errorf("%v, notices %v", err, file.Notices)
	}
}

// A file that another has written since is told of before, and not replaced unasked after.
func TestRecoveringDoesNotOverwriteAnother(t *testing.T) {
	path, dir := demoFile(t)
	before := work(t, path, "", nil)
	deeper(t, before)
	text, _ := os.ReadFile(path)
	theirs := strings.Replace(string(text), "rathole = ", "rathole  = ", 1)
	if theirs == string(text) {
		t.Fatal("the demo has no rathole")
	}
	if err := os.WriteFile(path, []byte(theirs), 0o600); err != nil {
		t.Fatal(err)
	}
	s := work(t, path, "", []*journal.Found{before.left(dir)})
	wants(t, s.Planner, "The file was changed since")
	press(s.Planner, "enter", "enter", "s")
	wants(t, s.Planner, "changed by another program")
	if now, _ := os.ReadFile(path); string(now) != theirs {
		t.Error("the file was replaced")
	}
}

func TestTheDifferenceIsShownBeforeItIsDecided(t *testing.T) {
	path, dir := demoFile(t)
	before := work(t, path, "", nil)
	deeper(t, before)
	s := work(t, path, "", []*journal.Found{before.left(dir)}, "down", "enter")
	wants(t, s.Planner, "3: Hole TD: 2155.0 m to 2085.0 m")
	press(s.Planner, "esc")
	wants(t, s.Planner, "recover them")
	press(s.Planner, "up", "enter")
	wants(t, s.Planner, "2085.0 m")
}

// Work is thrown away only when that was said twice, and left alone it lies there still, however the question is closed.
func TestDiscardingAsksAndLeavingAloneKeeps(t *testing.T) {
	for name, test := range map[string]struct {
		keys []string
		kept bool
	}{
		"discard":                   {[]string{"down", "down", "enter", "down", "enter"}, false},
		"discard, not meant":        {[]string{"down", "down", "enter", "enter", "down", "down", "down", "enter"}, true},
		"discard, esc, leave alone": {[]string{"down", "down", "enter", "esc", "esc"}, true},
		"leave alone":               {[]string{"end", "enter"}, true},
		"esc":                       {[]string{"esc"}, true},
	} {
		path, dir := demoFile(t)
		before := work(t, path, "", nil)
		deeper(t, before)
		f := before.left(dir)
		s := work(t, path, "", []*journal.Found{f}, test.keys...)
		lacks(t, s.Planner, "Changes that were not saved")
		lacks(t, s.Planner, "* not saved")
		if _, err := os.Lstat(f.At); (err == nil) != test.kept {
			t.Errorf("%s: kept %v, want %v", name, !test.kept, test.kept)
		}
	}
}

// A plan without a file is kept in the state folder, and comes back without a file, under its title.
func TestAPlanWithoutAFileIsKeptToo(t *testing.T) {
	state := t.TempDir()
	before := work(t, "", state, nil, "N", "enter", "Testling-1", "enter", "end", "enter")
	f := before.left(state)
	if f == nil || f.Plan != "" || f.Title != "new" {
		t.Fatalf("journal %+v", f)
	}
	s := work(t, "", state, []*journal.Found{f, f})
	wants(t, s.Planner, "changes to new", "from the plan that is open")
	press(s.Planner, "enter")
	wants(t, s.Planner, "Testling-1", "new * not saved")
	press(s.Planner, "s")
	wants(t, s.Planner, "Save the plan as")
	press(s.Planner, "esc", "N", "down", "enter", "esc")
	if s.left(state) == nil {
		t.Error("giving up a new plan loses the one that is open")
	}
}

// What is taken back leaves nothing to keep, and what is typed and given up neither.
func TestNothingIsKeptOfWhatIsAsSaved(t *testing.T) {
	path, dir := demoFile(t)
	s := work(t, path, "", nil)
	if s.left(dir) != nil {
		t.Error("kept before anything was done")
	}
	deeper(t, s)
	press(s.Planner, "esc", "u")
	if s.left(dir) != nil {
		t.Error("kept what was taken back")
	}
	press(s.Planner, "12")
	if f := s.left(dir); f == nil || f.Typed != "12" || f.Pending != 0 {
		t.Errorf("an entry being typed: %+v", f)
	}
	press(s.Planner, "esc")
	if s.left(dir) != nil {
		t.Error("kept what was given up")
	}
	press(s.Planner, "enter")
	if s.left(dir) != nil {
		t.Error("kept an entry that was only looked at")
	}
	press(s.Planner, "esc", "C", "end", "up", "enter", "night", "enter")
	if f := s.left(dir); f == nil || f.Pending != 1 {
		t.Errorf("a mark: %+v", f)
	}
}

// Where nothing can be kept that is said once, with the reason, and stands among the notices; work goes on.
func TestAJournalThatFailsIsSaidOnce(t *testing.T) {
	path, dir := demoFile(t)
	file, _ := demoFile(t)
	s := work(t, path, filepath.Join(file, "below-a-file"), nil)
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	hear := s.Init()
	deeper(t, s)
	s.Update(hear())
	wants(t, s.Planner, "not kept against a crash", "* not saved, not kept", "2085.0 m")
	press(s.Planner, "enter", "!")
	wants(t, s.Planner, "save often")
	press(s.Planner, "esc", "s")
	wants(t, s.Planner, "the file was removed")
	press(s.Planner, "down", "enter") // write it anew
	wants(t, s.Planner, "Not saved: no such file or directory", "another folder")
	wants(t, s.Planner, "* not saved")
}
