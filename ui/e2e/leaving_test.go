//go:build !windows

package e2e_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/creack/pty"

	"borewalk/model/journal"
	"borewalk/plans"
	"borewalk/ui/ptytest"
)

// workplace is a folder with a plan, and another for the program's state.
type workplace struct{ dir, plan, state string }

func newWorkplace(t *testing.T) workplace {
	t.Helper()
	w := workplace{dir: t.TempDir(), state: t.TempDir()}
	w.plan = filepath.Join(w.dir, "well.toml")
	text, _ := plans.Demo(plans.Default)
	if err := os.WriteFile(w.plan, text, 0o600); err != nil {
		t.Fatal(err)
	}
	return w
}

// env is the environment in which the program finds the state folder.
func (w workplace) env(more ...string) []string {
	return append([]string{"XDG_STATE_HOME=" + w.state}, more...)
}

// open starts the program on the plan.
func (w workplace) open(t *testing.T, more ...string) *ptytest.Session {
	t.Helper()
	s := beginIn(t, w.dir, 80, 24, w.env(more...), "-name", "AZ", "well.toml")
	s.Wait("Ottermast-2")
	return s
}

// found returns the one journal that was left of the plan, nil for none.
func (w workplace) found(t *testing.T) *journal.Found {
	t.Helper()
	found, damaged := journal.Find(w.plan, filepath.Join(w.state, "borewalk"))
	if len(damaged) > 0 || len(found) > 1 {
		t.Fatalf("found %d, damaged %v", len(found), damaged)
	}
	if len(found) == 0 {
		return nil
	}
	return found[0]
}

// deepen makes section 3 end at 2085 m and begins to type at the entry below.
func deepen(s *ptytest.Session) {
	s.Type("]]" + strings.Repeat(ptytest.Down, 5) + "2085" + ptytest.Enter + ptytest.Down + "7.5")
	s.Wait("[7.5|]")
}

// However the program is ended, what was accepted and what was being typed is kept, the terminal is as it was, and it ends at once,
// with a status that says so; the next start offers it, once.
func TestASignalKeepsEverythingAndRestoresTheTerminal(t *testing.T) {
	for _, sig := range []syscall.Signal{syscall.SIGHUP, syscall.SIGINT, syscall.SIGQUIT, syscall.SIGTERM} {
		t.Run(sig.String(), func(t *testing.T) {
			w := newWorkplace(t)
			shell := beginIn(t, w.dir, 80, 24, nil)
			shell.Wait("Ottermast-2")
			s := w.open(t)
			deepen(s)
			if s.Modes() != shell.Modes() {
				t.Fatal("the modes of two running programs differ")
			}
			s.Signal(sig)
			if code := s.ExitCode(); code != 128+int(sig) {
				t.Errorf("exit code %d, want %d", code, 128+int(sig))
			}
			if s.Modes() == shell.Modes() {
				t.Error("the terminal is left raw")
			}
			s.Wait("open the plan again to recover it")
			if strings.Contains(s.Screen(), "Hole TD") {
				t.Errorf("the program's screen is left:\n%s", s.Screen())
			}
			f := w.found(t)
			if f == nil || f.File.Plan.Sections[2].TD.Text() != "2085 m" || f.Typing != "section[3].rathole" || f.Typed != "7.5" {
				t.Fatalf("journal %+v", f)
			}
			s = w.open(t)
			s.Wait("1 entry differs")
			s.Type(ptytest.Enter)
			s.Wait("[7.5|]")
			s.Type(ptytest.Enter)
			s.Wait("well.toml * not saved")
			s.Type("s")
			s.Wait("saved well.toml")
			s.Type("q")
			if code := s.ExitCode(); code != 0 {
				t.Errorf("exit code %d, want 0", code)
			}
			s = w.open(t)
			s.Wait("? help") // no question after a clean exit
			s.Type("q")
			s.ExitCode()
		})
	}
}

// Leaving with the changes lost on purpose, or with none, leaves nothing behind, and a kill when nothing is unsaved only the lock.
func TestNothingIsLeftBehindOnPurpose(t *testing.T) {
	for name, end := range map[string]func(*ptytest.Session){
		"told to lose": func(s *ptytest.Session) {
			deepen(s)
			s.Type(ptytest.Enter)
			s.WaitGone("typing")
			s.Type("q" + ptytest.Down + ptytest.Enter)
			s.ExitCode()
		},
		"saved, then killed": func(s *ptytest.Session) {
			deepen(s)
			s.Type(ptytest.CtrlS)
			s.Wait("saved well.toml")
			s.Signal(syscall.SIGTERM)
			s.ExitCode()
		},
		"unchanged, then killed": func(s *ptytest.Session) {
			s.Signal(syscall.SIGKILL)
			s.ExitCode()
		},
	} {
		t.Run(name, func(t *testing.T) {
			w := newWorkplace(t)
			end(w.open(t))
			if f := w.found(t); f != nil {
				t.Errorf("left behind: %s", f.At)
			}
			want := []string{w.plan}
			if name == "unchanged, then killed" { // who is killed cannot give his lock back
				want = []string{filepath.Join(w.dir, ".well.toml.borewalk-lock"), w.plan}
			}
			if got, _ := filepath.Glob(filepath.Join(w.dir, "*")); !slices.Equal(got, want) {
				t.Errorf("there lie %v", got)
			}
		})
	}
}

// A window that is closed ends the program, with the hang-up signal or, for a program that is not the terminal's own, without it.
func TestAClosedTerminalEndsTheProgram(t *testing.T) {
	t.Run("hung up", func(t *testing.T) {
		w := newWorkplace(t)
		s := w.open(t)
		deepen(s)
		if code := s.Close(); code <= 0 {
			t.Errorf("exit code %d", code)
		}
		if f := w.found(t); f == nil || f.Typed != "7.5" {
			t.Errorf("journal %+v", f)
		}
	})
	t.Run("without a signal", func(t *testing.T) {
		w := newWorkplace(t)
		owner, line, err := pty.Open()
		if err != nil {
			t.Skip("no pseudo-terminals: ", err)
		}
		program := exec.Command(program, "-name", "AZ", "well.toml")
		program.Dir, program.Stdin, program.Stdout, program.Stderr = w.dir, line, line, line
		program.Env = append(w.env(), "TERM=xterm", "LANG=C.UTF-8")
		program.SysProcAttr = &syscall.SysProcAttr{Setsid: true} // a session whose terminal this is not
		if err := program.Start(); err != nil {
			t.Fatal(err)
		}
		line.Close()
		until(t, owner, "? help")
		if _, err := owner.WriteString("]]" + strings.Repeat(ptytest.Down, 5) + "2085" + ptytest.Enter); err != nil {
			t.Fatal(err)
		}
		until(t, owner, "not saved")
		owner.Close()
		if code := ends(t, program); code != 1 {
			t.Errorf("exit code %d, want 1", code)
		}
		if f := w.found(t); f == nil || f.File.Plan.Sections[2].TD.Text() != "2085 m" {
			t.Errorf("journal %+v", f)
		}
	})
}

// until reads what a program sends until a text is among it.
func until(t *testing.T, f *os.File, text string) {
	t.Helper()
	var all strings.Builder
	buf := make([]byte, 1<<16)
	for !strings.Contains(all.String(), text) {
		n, err := f.Read(buf)
		if err != nil {
			t.Fatalf("no %q: %v", text, err)
		}
		all.Write(buf[:n])
	}
}

// ends waits for a program to end, and returns its exit code.
func ends(t *testing.T, program *exec.Cmd) int {
	t.Helper()
	over := time.AfterFunc(20*time.Second, func() { _ = program.Process.Kill() })
	defer over.Stop()
	_ = program.Wait()
	return program.ProcessState.ExitCode()
}

// A terminal that takes no more bytes keeps the program from drawing, and not from ending.
func TestATerminalThatTakesNothingIsLeft(t *testing.T) {
	w := newWorkplace(t)
	program := exec.Command(program, "-name", "AZ", "well.toml")
	program.Dir, program.Env = w.dir, append(w.env(), "TERM=xterm-256color", "LANG=C.UTF-8")
	owner, err := pty.StartWithSize(program, &pty.Winsize{Cols: 200, Rows: 60})
	if err != nil {
		t.Skip("no pseudo-terminals: ", err)
	}
	defer owner.Close()
	until(t, owner, "? help")
	stuff(t, owner)
	if err := program.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if code := ends(t, program); code != 128+int(syscall.SIGTERM) {
		t.Errorf("exit code %d", code)
	}
}

// stuff types without reading what comes of it, a key for each screen that is drawn, until the screens are far more than the buffer of
// a terminal holds.
func stuff(t *testing.T, owner *os.File) {
	t.Helper()
	frames := time.NewTicker(20 * time.Millisecond)
	defer frames.Stop()
	for range 80 {
		<-frames.C
		if _, err := owner.WriteString(ptytest.Tab); err != nil {
			t.Fatal(err)
		}
	}
}

// faultyProgram builds the program with the faults that a test can ask for.
var faultyProgram = sync.OnceValues(func() (string, error) {
	path := filepath.Join(filepath.Dir(program), "faulty")
	return path, exec.Command("go", append(build, "-tags=faults", "-o", path, "borewalk")...).Run()
})

// A panic, wherever it is, ends the program in order: the work is kept, the terminal is as it was, and the screen names a report, which
// says where it was and nothing of the plan.
func TestAPanicIsReportedAndKeepsEverything(t *testing.T) {
	path, err := faultyProgram()
	if err != nil {
		t.Fatal(err)
	}
	open := func(t *testing.T, w workplace, fault string) *ptytest.Session {
		s := ptytest.Start(t, ptytest.Options{Path: path, Args: []string{"-name", "AZ", "well.toml"}, Dir: w.dir, Env: w.env("BOREWALK_FAULT=" + fault)})
		s.Wait("? help")
		deepen(s)
		return s
	}
	for _, fault := range []string{"update", "view", "command", "batch"} {
		t.Run(fault, func(t *testing.T) {
			w := newWorkplace(t)
			s := open(t, w, fault)
			raw := s.Modes()
			s.Type(ptytest.CtrlX)
			if code := s.ExitCode(); code != 1 {
				t.Errorf("exit code %d, want 1", code)
			}
			if s.Modes() == raw {
				t.Error("the terminal is left raw")
			}
			s.Wait("A fault of the program; the report is ")
			s.Wait("open the plan again to recover it")
			reports, _ := filepath.Glob(filepath.Join(w.state, "borewalk", "fault-*.txt"))
			if len(reports) != 1 {
				t.Fatalf("reports %v", reports)
			}
			text, _ := os.ReadFile(reports[0])
			for _, want := range []string{"borewalk ", "plan well.toml", "panic: a fault in ", "faulty_on.go:"} {
				if !strings.Contains(string(text), want) {
					t.Errorf("the report lacks %q:\n%s", want, text)
				}
			}
			if strings.Contains(string(text), "Ottermast") || strings.Contains(string(text), "2085") {
				t.Errorf("the report holds what is in the plan:\n%s", text)
			}
			if f := w.found(t); f == nil || f.Typed != "7.5" || f.File.Plan.Sections[2].TD.Text() != "2085 m" {
				t.Errorf("journal %+v", f)
			}
		})
	}
	t.Run("hang", func(t *testing.T) { // the loop never comes back, and a signal ends it all the same
		w := newWorkplace(t)
		s := open(t, w, "hang")
		raw := s.Modes()
		s.Type(ptytest.CtrlX)
		s.Signal(syscall.SIGTERM)
		if code := s.ExitCode(); code != 128+int(syscall.SIGTERM) {
			t.Errorf("exit code %d", code)
		}
		s.Wait("open the plan again to recover it")
		if s.Modes() == raw || w.found(t) == nil {
			t.Error("the terminal is left raw, or nothing is kept")
		}
	})
}

// A plan that is printed or checked while changes to it lie unsaved says so on one line, and prints what the file holds.
func TestPrintingTellsOfWhatWasNotSaved(t *testing.T) {
	w := newWorkplace(t)
	s := w.open(t)
	deepen(s)
	s.Signal(syscall.SIGTERM)
	s.ExitCode()
	f := w.found(t)
	for _, option := range []string{"-check", "-print=text"} {
		command := exec.Command(program, option, "-section", "3", "well.toml")
		command.Dir, command.Env = w.dir, append(os.Environ(), w.env()...)
		var errs, out strings.Builder
		command.Stderr, command.Stdout = &errs, &out
		_ = command.Run()
		if f == nil || strings.Count(errs.String(), "\n") != 1 || !strings.Contains(errs.String(), f.At) || !strings.Contains(errs.String(), "not saved") {
			t.Errorf("%s says %q of %+v", option, errs.String(), f)
		}
		if out.Len() == 0 || strings.Contains(out.String(), "2085.0") {
			t.Errorf("%s prints what is not saved", option)
		}
	}
	if again := w.found(t); again == nil {
		t.Error("printing has removed the journal")
	}
}
