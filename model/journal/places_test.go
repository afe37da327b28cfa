package journal

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"borewalk/model"
)

// Where the plan's folder takes no file the state folder does, and a plan that gets a file takes its journal there; where nothing takes
// it that is said once, and that it is kept again once too.
func TestAJournalLiesWhereItCan(t *testing.T) {
	dir, state := t.TempDir(), t.TempDir()
	path := filepath.Join(dir, "well.toml")
	file := opened(t, path)
	var h model.History
	gap(t, file, &h, "31 m")
	nowhere := filepath.Join(path, "below-a-file", "well.toml")

	k := NewKeeper(state, panics(t))
	kept(t, k, drafted(nowhere, file, &h))
	if filepath.Dir(k.at) != state {
		t.Errorf("it lies at %s", k.at)
	}
	left(t, state)
	if found, _ := Find(nowhere, state); len(found) != 1 {
		t.Errorf("found %v", found)
	}
	if found, _ := Find(path, state); len(found) != 0 {
		t.Errorf("found for another plan: %v", found[0])
	}
	kept(t, k, drafted("", file, &h))
	kept(t, k, drafted(path, file, &h))
	if entries, _ := os.ReadDir(state); filepath.Dir(k.at) != dir || len(entries) > 0 {
		t.Errorf("it lies at %s, and in the state folder lies %v", k.at, entries)
	}

	k = NewKeeper(filepath.Join(path, "no-folder"), panics(t))
	for range 3 {
		kept(t, k, drafted(nowhere, file, &h))
	}
	select {
	case err := <-k.Trouble():
		if err == nil || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "not a directory") {
			t.Errorf("trouble: %v", err)
		}
	default:
		t.Error("nothing is said")
	}
	kept(t, k, drafted(nowhere, file, &h))
	select {
	case err := <-k.Trouble():
		t.Errorf("said twice: %v", err)
	default:
	}
	if unsaved, is := k.Kept(); !unsaved || is {
		t.Error("it counts as kept")
	}
	kept(t, k, drafted(path, file, &h))
	select {
	case err := <-k.Trouble():
		if err != nil {
			t.Error(err)
		}
	default:
		t.Error("that it is kept again is not said")
	}
	k = NewKeeper("", panics(t))
	kept(t, k, drafted("", file, &h))
	if err := <-k.Trouble(); err == nil || !strings.Contains(err.Error(), "HOME") {
		t.Errorf("trouble: %v", err)
	}
}

// What was left alone is not overwritten by a process that has got the same number, and what was adopted is removed once its place is
// taken.
func TestALeftJournalIsNotOverwritten(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "well.toml")
	file := opened(t, path)
	var h model.History
	gap(t, file, &h, "31 m")
	kept(t, NewKeeper("", panics(t)), drafted(path, file, &h))
	left(t, dir)
	gap(t, file, &h, "32 m")
	k := NewKeeper("", panics(t))
	kept(t, k, drafted(path, file, &h))
	found, _ := Find(path, "")
	if len(found) != 1 || gapOf(found[0].File) != "31 m" || len(hiddenIn(t, dir)) != 2 {
		t.Fatalf("found %v among %v", found, hiddenIn(t, dir))
	}
	k.Forget()
	k.Flush(10 * time.Second)
	k = NewKeeper("", panics(t))
	k.Adopt(found[0])
	kept(t, k, drafted(path, file, &h))
	if k.at == found[0].At || len(hiddenIn(t, dir)) != 1 {
		t.Errorf("adopted, it lies at %s among %v", k.at, hiddenIn(t, dir))
	}
	k.Forget()
	k.Flush(10 * time.Second)
	if names := hiddenIn(t, dir); len(names) > 0 {
		t.Errorf("there lies %v", names)
	}
}

// The beginning of work tidies: what holds no more than the file goes, what is damaged gets another name and a line, what a newer program
// wrote stays, and a date in the future is a date.
func TestTheBeginningTidies(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "well.toml")
	file := opened(t, path)
	var h model.History
	gap(t, file, &h, "31 m")
	k := NewKeeper("", panics(t))
	d := drafted(path, file, &h)
	d.When = time.Date(2999, 1, 1, 0, 0, 0, 0, time.UTC)
	kept(t, k, d)
	left(t, dir)
	before := opened(t, filepath.Join(t.TempDir(), "well.toml"))
	offered, notices := Begin(path, "", before.Plan)
	if len(offered) != 1 || offered[0].When() != "2999-01-01 00:00" || len(notices) > 0 {
		t.Fatalf("offered %v, notices %q", offered, notices)
	}
	h.Enter(file.Plan, "A. Person", time.Time{})
	if offered, notices := Begin(path, "", file.Plan); len(offered)+len(notices) > 0 || len(hiddenIn(t, dir)) > 0 {
		t.Errorf("offered %v, notices %q, there lies %v", offered, notices, hiddenIn(t, dir))
	}
	for name, test := range map[string]struct{ text, lies string }{
		"damaged": {"x\x1b[2J", filepath.Base(k.at) + ".damaged"},
		"newer":   {named + "2.\n", filepath.Base(k.at)},
	} {
		if err := os.WriteFile(k.at, []byte(test.text), 0o600); err != nil {
			t.Fatal(err)
		}
		offered, notices := Begin(path, "", file.Plan)
		if names := hiddenIn(t, dir); len(offered) > 0 || len(notices) != 1 || strings.ContainsAny(notices[0], "\n\x1b") || len(names) != 1 || names[0] != test.lies {
			t.Errorf("%s: offered %v, notices %q, there lies %v", name, offered, notices, names)
		}
		_ = os.Remove(filepath.Join(dir, test.lies))
	}
}
