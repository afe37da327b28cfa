//go:build !windows

package e2e_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/creack/pty"

	"borewalk/ui/ptytest"
)

// speak starts the dialogue in lines on the plan, at its prompt.
func (w workplace) speak(t *testing.T) *ptytest.Session {
	t.Helper()
	s := beginIn(t, w.dir, 200, 24, w.env(), "-lines", "-name", "AZ", "well.toml")
	s.Wait("say help for the words")
	return s
}

func (w workplace) lock() bool {
	_, err := os.Lstat(filepath.Join(w.dir, ".well.toml.borewalk-lock"))
	return err == nil
}

// A dialogue that is ended by a signal, a closed window or the end of its input keeps what was answered, says so, and gives its lock back;
// the next start names it in a line, recovers it, and leaves nothing behind.
func TestHoweverADialogueEndsItsWorkIsKept(t *testing.T) {
	for _, test := range []struct {
		name string
		how  func(*ptytest.Session)
		code int // -1 for whatever a terminal that is gone leaves
		said string
	}{
		{"hang-up", func(s *ptytest.Session) { s.Signal(syscall.SIGHUP) }, 129, "ended by a signal, hangup; changes not saved, kept for the next start: 1"},
		{"terminate", func(s *ptytest.Session) { s.Signal(syscall.SIGTERM) }, 143, "kept for the next start: 1"},
		{"ctrl+d", func(s *ptytest.Session) {
			s.Type(ptytest.CtrlD)
			s.Wait("2. quit and lose")
			s.Type(ptytest.CtrlD)
		}, 3, "the input has ended; changes not saved, kept for the next start: 1"},
		{"closed", nil, -1, ""},
	} {
		t.Run(test.name, func(t *testing.T) {
			w := newWorkplace(t)
			s := w.speak(t)
			s.Type("section[3].td = 2085 m\r")
			s.Wait("2085.0 m, was 2155.0 m")
			if !w.lock() {
				t.Error("no lock while the plan is open")
			}
			if test.how == nil {
				s.Close()
			} else {
				test.how(s)
				if code := s.ExitCode(); code != test.code {
					t.Errorf("exit code %d, want %d", code, test.code)
				}
				s.Wait(test.said)
				s.Wait("not saved: section 3: Total depth of the bit")
			}
			if w.lock() {
				t.Error("the lock is left")
			}
			if f := w.found(t); f == nil || f.File.Plan.Sections[2].TD.Text() != "2085 m" {
				t.Fatalf("journal %+v", f)
			}
			again := w.speak(t)
			again.Wait("1 entry differs from the file.")
			again.Type("recover\r")
			again.Wait("recovered what was not saved")
			again.Type("save\r")
			again.Wait("saved well.toml")
			again.Type("quit\r")
			if code := again.ExitCode(); code != 0 {
				t.Errorf("exit code %d", code)
			}
			if left, _ := filepath.Glob(filepath.Join(w.dir, "*")); len(left) != 1 || !strings.Contains(content(w.plan), "2085 m") {
				t.Errorf("there lie %v", left)
			}
			plainOnly(t, again)
		})
	}
}

// A kill costs nothing either that is a second old, and its lock is taken over.
func TestAKilledDialogue(t *testing.T) {
	w := newWorkplace(t)
	s := w.speak(t)
	s.Type("section[3].td = 2085 m\r")
	s.Wait("2085.0 m, was 2155.0 m")
	for f, _ := filepath.Glob(filepath.Join(w.dir, ".*.journal")); len(f) == 0; f, _ = filepath.Glob(filepath.Join(w.dir, ".*.journal")) {
		s.Type("where\r")
		s.Wait("page hole")
	}
	s.Signal(syscall.SIGKILL)
	s.ExitCode()
	again := w.speak(t)
	again.Wait("ended without closing the plan; its lock is taken over")
	again.Wait("1 entry differs from the file.")
	again.Type("discard\r")
	again.Wait("discard 1 changed entry for good?")
	again.Type("yes\r")
	again.Wait("discarded what was not saved")
	again.Type("quit\r")
	again.ExitCode()
	if left, _ := filepath.Glob(filepath.Join(w.dir, "*")); len(left) != 1 {
		t.Errorf("there lie %v", left)
	}
}

// A terminal that takes no more bytes does not keep a signal from ending the dialogue, with its work kept and its lock gone.
func TestADialogueWhoseTerminalTakesNothing(t *testing.T) {
	w := newWorkplace(t)
	program := exec.Command(program, "-lines", "-name", "AZ", "well.toml")
	program.Dir, program.Env = w.dir, append(w.env(), "TERM=dumb", "LANG=C.UTF-8")
	owner, err := pty.StartWithSize(program, &pty.Winsize{Cols: 200, Rows: 24})
	if err != nil {
		t.Skip("no pseudo-terminals: ", err)
	}
	defer owner.Close()
	until(t, owner, "say help for the words")
	if _, err := owner.WriteString("section[3].td = 2085 m\rlines all\r"); err != nil {
		t.Fatal(err)
	}
	until(t, owner, "answers are said as a whole")
	if _, err := owner.WriteString("print sheets\r"); err != nil { // far more than the buffer of a terminal holds
		t.Fatal(err)
	}
	until(t, owner, "Ottermast-2") // it is at it, and nothing is read any more
	if err := program.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if code := ends(t, program); code != 143 {
		t.Errorf("exit code %d", code)
	}
	if w.lock() || w.found(t) == nil {
		t.Error("the lock is left, or nothing is kept")
	}
}

// One full screen and one in lines are two on one plan.
func TestTwoOnOnePlanInLinesAndFullScreen(t *testing.T) {
	dir, path := sharedPlan(t)
	one := opens(t, dir, "AM")
	two := beginIn(t, dir, 250, 24, nil, "-lines", "-name", "BT", "plan.toml")
	two.Wait("AM (")
	two.Wait("The plan is read-only here")
	two.Type("section[1].td = 460 m\r")
	two.Wait("460.0 m, was 450.0 m")
	two.Type("save\r")
	two.Wait("not saved: read-only")
	two.Type("take over\r")
	two.Wait("the plan is taken over")
	two.Type("save\r")
	two.Wait("saved plan.toml")
	theirs := content(path)
	focus(t, one, "Total depth of the bit, along hole")
	one.Type("+")
	one.Wait("! taken over")
	one.Type("s")
	one.Wait("Not saved: another has taken the plan over")
	one.Type("q")
	one.WaitGone("Not saved:")
	one.Type("q" + ptytest.Down + ptytest.Enter)
	leaves(t, one)
	two.Type("quit\r")
	leaves(t, two)
	if locked(dir) || content(path) != theirs {
		t.Error("the lock is left, or what was saved is lost")
	}
}
