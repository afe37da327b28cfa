//go:build !windows

// Package e2e runs the built program in a pseudo-terminal that answers no query, as a crew would use it.
package e2e_test

import (
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"borewalk/ui/ptytest"
)

// program is the path of the built program.
var program string

// build is the command that builds it; under the race detector it is built for that too.
var build = []string{"build"}

func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "borewalk-e2e")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	program = filepath.Join(dir, "borewalk")
	if out, err := exec.Command("go", append(build, "-o", program, "borewalk")...).CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "the program does not build: %v\n%s", err, out)
		os.Exit(1)
	}
	code := m.Run()
	os.RemoveAll(dir)
	os.Exit(code)
}

// TestResultsFollowTheSources looks at every file that the program is built from: kept results of tests hold until a file
// changes that a test has looked at, and what a build reads does not count by itself.
func TestResultsFollowTheSources(t *testing.T) {
	err := filepath.WalkDir("../..", func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && entry.Name() == ".git":
			return filepath.SkipDir
		case entry.IsDir():
			return nil
		}
		_, err = os.Stat(path)
		return err
	})
	if err != nil {
		t.Error(err)
	}
}

// begin starts the program in a window; environment entries come on top of a plain UTF-8 terminal.
func begin(t *testing.T, cols, rows int, environment []string, args ...string) *ptytest.Session {
	t.Helper()
	return beginIn(t, t.TempDir(), cols, rows, environment, args...)
}

// beginIn is begin in a folder of the caller's.
func beginIn(t *testing.T, dir string, cols, rows int, environment []string, args ...string) *ptytest.Session {
	t.Helper()
	return ptytest.Start(t, ptytest.Options{Path: program, Args: args, Env: environment, Dir: dir, Cols: cols, Rows: rows})
}

// typeKeys sends keys one by one, so that each is a read of its own.
func typeKeys(s *ptytest.Session, keys ...string) {
	for _, k := range keys {
		s.Type(k)
	}
}

// focus moves down the page until an entry with a name has the focus; the line below the page names it in full.
func focus(t *testing.T, s *ptytest.Session, name string) {
	t.Helper()
	for range 60 {
		if strings.Contains(s.Screen(), "── "+name+"\n") {
			return
		}
		before := s.Screen()
		s.Type(ptytest.Down)
		waitChange(t, s, before)
	}
	t.Fatalf("no entry %q:\n%s", name, s.Screen())
}

// waitChange waits until the screen is no longer as it was.
func waitChange(t *testing.T, s *ptytest.Session, before string) {
	t.Helper()
	s.WaitFor("a change of the screen", func(screen string) bool { return screen != before })
}

// The main job: open the demo, edit the shoe, see schematic and table change, save, reopen.
func TestOpenEditSeeSaveReopen(t *testing.T) {
	dir := t.TempDir()
	s := beginIn(t, dir, 80, 24, nil)
	s.Wait("Ottermast-2")
	s.Wait("section 1 of 5")
	typeKeys(s, "]", "]")
	s.Wait("section 3 of 5")
	focus(t, s, "Depth fixed by")
	s.Type("+") // the shoe is given now
	s.Wait("Depth fixed by: TD to shoe")
	focus(t, s, "Shoe depth, along hole")
	typeKeys(s, "2", "0", "8", "0")
	s.Wait("2085.0 m") // the hole's TD follows the entry while it is typed
	s.Wait(" 2080>")   // and so does the schematic
	s.Type(ptytest.Enter)
	s.Wait("not saved")
	s.Type("s")
	s.Wait("Your name or initials")
	typeKeys(s, "A", "Z")
	s.Type(ptytest.Enter)
	s.Wait("Save the plan as")
	s.Type(ptytest.Enter)
	s.Wait("saved ottermast-2.toml")
	s.WaitGone("not saved")
	s.Type("q")
	if code := s.ExitCode(); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}

	again := beginIn(t, dir, 80, 24, nil, "ottermast-2.toml")
	again.Wait("section 1 of 5")
	typeKeys(again, "]", "]")
	again.Wait("2080.0 m")
	again.Type("q")
	if code := again.ExitCode(); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
}

// A terminal that never answers must not be waited for, and must not be asked.
func TestStartAsksTheTerminalNothing(t *testing.T) {
	begun := time.Now()
	s := begin(t, 80, 24, nil)
	s.Wait("Ottermast-2")
	if took := time.Since(begun); took > 3*time.Second { // a query that is not answered costs five
		t.Errorf("the first frame took %v", took)
	}
	first := string(s.FirstOutput())
	for _, query := range []string{"\x1b]11;?", "\x1b[6n", "\x1b[c", "\x1b[>c"} {
		if strings.Contains(first, query) {
			t.Errorf("start-up sends the query %q", query)
		}
	}
	s.Type("q")
	s.ExitCode()
}

func TestSplitEscapeSequencesAreOneKey(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("── Section name")
	s.Type("\x1b")
	s.Type("[B") // the rest of the arrow comes in a read of its own
	s.Wait("── Returns to")
	if strings.Contains(s.Screen(), "typing") {
		t.Errorf("a torn key was typed:\n%s", s.Screen())
	}
	s.Type("q")
	s.ExitCode()
}

// Keys typed ahead arrive in one read, and each of them counts.
func TestTypeAheadIsKept(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("Ottermast-2")
	s.Type("]]" + strings.Repeat(ptytest.Down, 5) + "208" + "5" + ptytest.Enter)
	s.Wait("2080.0 m")
	s.Wait("not saved")
	s.Type("uq")
	if code := s.ExitCode(); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
}

func TestTerminalsWithoutColourOrUnicode(t *testing.T) {
	tests := []struct {
		name        string
		environment []string
		arguments   []string
		colour      bool
		ascii       bool
	}{
		{"xterm", nil, nil, true, false},
		{"no colour", []string{"NO_COLOR=1"}, nil, false, false},
		{"screen", []string{"TERM=screen"}, nil, false, false},
		{"vt100", []string{"TERM=vt100"}, nil, false, false},
		{"Linux console", []string{"TERM=linux"}, nil, true, false},
		{"dumb, full screen all the same", []string{"TERM=dumb"}, []string{"-lines=false"}, false, false},
		{"no name", []string{"TERM="}, nil, false, false},
		{"C locale", []string{"LANG=C"}, nil, true, true},
		{"Japanese", []string{"LANG=ja_JP.UTF-8"}, nil, true, false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			s := begin(t, 80, 24, test.environment, test.arguments...)
			s.Wait("Ottermast-2")
			s.Wait("? help")
			raw := string(s.FirstOutput())
			if got := strings.Contains(raw, "\x1b[36m"); got != test.colour {
				t.Errorf("colour = %v, want %v", got, test.colour)
			}
			if got := !strings.Contains(raw, "│"); got != test.ascii {
				t.Errorf("ASCII = %v, want %v", got, test.ascii)
			}
			for _, l := range strings.Split(s.Screen(), "\n") {
				if test.ascii && strings.IndexFunc(l, func(r rune) bool { return r > 126 }) >= 0 {
					t.Errorf("not ASCII: %q", l)
				}
			}
			typeKeys(s, ptytest.Down)
			s.Wait("> Returns to")
			s.Type("q")
			s.ExitCode()
		})
	}
}

func TestResizeAndTooSmall(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("Ottermast-2")
	s.Resize(60, 20)
	s.Wait("needs 80 x 24")
	s.Resize(140, 40)
	s.Wait("p pore")
	s.Resize(80, 24)
	s.Wait("? help")
	s.Type("q")
	s.ExitCode()
}

// A pseudo-terminal without a size must still show the program.
func TestSizeOfNothingMeans80x24(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("Ottermast-2")
	s.Resize(0, 0)
	s.Type("]")
	s.Wait("section 2 of 5")
	s.Type("q")
	s.ExitCode()
}
