//go:build !windows

package e2e_test

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"borewalk/model/anyplan"
	"borewalk/ui/ptytest"
)

// sharedPlan writes a plan into a folder of its own.
func sharedPlan(t *testing.T) (dir, path string) {
	t.Helper()
	dir = t.TempDir()
	path = filepath.Join(dir, "plan.toml")
	put(t, path, anyplan.Small)
	return dir, path
}

func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func content(path string) string {
	text, _ := os.ReadFile(path)
	return string(text)
}

func locked(dir string) bool {
	_, err := os.Lstat(filepath.Join(dir, ".plan.toml.borewalk-lock"))
	return err == nil
}

// opens opens the plan as somebody.
func opens(t *testing.T, dir, name string, more ...string) *ptytest.Session {
	t.Helper()
	s := beginIn(t, dir, 80, 24, nil, append(more, "-name", name, "plan.toml")...)
	s.Wait("Testling-1")
	return s
}

// deepens makes an edit.
func deepens(t *testing.T, s *ptytest.Session) {
	t.Helper()
	focus(t, s, "Total depth of the bit, along hole")
	s.Type("+")
	s.Wait("* not saved")
}

func leaves(t *testing.T, s *ptytest.Session) {
	t.Helper()
	if code := s.ExitCode(); code != 0 {
		t.Errorf("exit code %d", code)
	}
}

// The second is asked, looks on read-only and saves under another name, while the first goes on; each lock goes with its owner.
func TestTwoOpenOnePlan(t *testing.T) {
	dir, path := sharedPlan(t)
	one := opens(t, dir, "AM")
	two := opens(t, dir, "BT")
	two.Wait("Another has this plan open")
	two.Wait("AM (")
	two.Type(ptytest.Enter) // look and try
	two.WaitGone("Another has this plan open")
	two.Wait("plan.toml read-only")
	deepens(t, two)
	two.Type("s")
	two.Wait("Not saved: read-only")
	if content(path) != anyplan.Small {
		t.Error("a read-only plan is written")
	}
	two.Type(ptytest.Enter)
	two.Wait("Save the plan as")
	typeKeys(two, "\x15", "mine.toml", ptytest.Enter)
	two.Wait("saved mine.toml")
	two.WaitGone("read-only")

	deepens(t, one)
	one.Type("s")
	one.Wait("saved plan.toml")
	one.Type("q")
	leaves(t, one)
	two.Type("q")
	leaves(t, two)
	if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) > 0 {
		t.Errorf("left behind: %s", left)
	}
}

// A take-over is noticed by the first, at an edit or at a save, and nothing of the other's is overwritten unasked.
func TestATakeOverIsNoticed(t *testing.T) {
	dir, path := sharedPlan(t)
	one := opens(t, dir, "AM")
	two := opens(t, dir, "BT")
	two.Wait("open all the same")
	typeKeys(two, ptytest.Down, ptytest.Enter)
	two.WaitGone("Another has this plan open")
	deepens(t, two)
	two.Type("s")
	two.Wait("saved plan.toml")
	theirs := content(path)

	deepens(t, one)
	one.Wait("! taken over")
	one.Type("s")
	one.Wait("Not saved: another has taken the plan over")
	one.Wait("BT (")
	typeKeys(one, ptytest.Down, ptytest.Enter) // takes it back
	one.Wait("Not saved: the file was changed by another program")
	if content(path) != theirs {
		t.Error("what the other saved is lost")
	}
	typeKeys(one, ptytest.Down, ptytest.Down, ptytest.Enter)
	one.Wait("What changed from the file as it is now")
	one.Type("q")
	one.Wait("Not saved: the file was changed by another program")
	one.Type("q")
	one.WaitGone("Not saved:")
	one.Type("q")
	one.Wait("quit and lose the changes")
	typeKeys(one, ptytest.Down, ptytest.Enter)
	leaves(t, one)

	deepens(t, two)
	two.Type("s") // the lock was taken back and then left: it is made anew
	two.Wait("saved plan.toml")
	two.Type("q")
	leaves(t, two)
}

// What a killed program leaves behind is taken over with a word, and gone after the next clean exit.
func TestTheLockOfAKilledProgram(t *testing.T) {
	dir, _ := sharedPlan(t)
	one := opens(t, dir, "AM")
	if !locked(dir) {
		t.Fatal("no lock")
	}
	one.Signal(syscall.SIGKILL)
	one.ExitCode()
	if !locked(dir) {
		t.Fatal("no lock is left to take over")
	}
	two := opens(t, dir, "BT")
	two.Wait("its lock is taken over")
	deepens(t, two)
	two.Type("s")
	two.Wait("saved plan.toml")
	two.Type("q")
	leaves(t, two)
	if locked(dir) {
		t.Error("the lock is left behind")
	}
}

// What happens to the file between two edits is said after the second.
func TestTheFileIsChangedUnderneath(t *testing.T) {
	dir, path := sharedPlan(t)
	s := opens(t, dir, "AM")
	deepens(t, s)
	put(t, path, strings.Replace(anyplan.Small, "450 m", "1480 m", 1))
	s.Type("+")
	s.Wait("the file was changed by another program; s asks what to do")
	s.Wait("! file changed")
	put(t, path, anyplan.Small)
	s.Type("+")
	s.WaitGone("! file changed") // it is as it was
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	s.Type("+")
	s.Wait("! file removed")
	if err := os.Mkdir(path, 0o755); err != nil {
		t.Fatal(err)
	}
	s.Type("+")
	s.Wait("! file replaced")
	s.Type("s")
	s.Wait("Not saved: a folder")
	s.Type(ptytest.Enter)
	s.Wait("Save the plan as")
	typeKeys(s, "\x15", "mine.toml", ptytest.Enter)
	s.Wait("saved mine.toml")
	s.Type("q")
	leaves(t, s)
}

// Asked for, a plan is opened read-only without a question, and keeps nobody away.
func TestReadOnlyOnRequest(t *testing.T) {
	dir, _ := sharedPlan(t)
	one := opens(t, dir, "AM", "-read-only")
	one.Wait("plan.toml read-only")
	if locked(dir) {
		t.Error("a lock is made")
	}
	two := opens(t, dir, "BT")
	two.Wait("? help")
	if strings.Contains(two.Screen(), "Another") {
		t.Error(two.Screen())
	}
	one.Type("s")
	one.Wait("The plan was opened with -read-only")
	one.Type("q")
	one.WaitGone("Not saved")
	one.Type("q")
	leaves(t, one)
	two.Type("q")
	leaves(t, two)
}
