//go:build !windows

package e2e_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"borewalk/ui/ptytest"
)

// plainOnly fails where a program has sent anything but text and ends of lines; ctrl+c and ctrl+d the terminal shows itself.
func plainOnly(t *testing.T, s *ptytest.Session) {
	t.Helper()
	out := strings.NewReplacer("^D\b\b", "").Replace(string(s.Output()))
	if i := strings.IndexFunc(out, func(r rune) bool { return unicode.IsControl(r) && r != '\n' && r != '\r' }); i >= 0 {
		t.Errorf("%q in %q", out[i:i+1], out[max(0, i-40):min(len(out), i+40)])
	}
}

// atPrompt waits until a long answer has scrolled by: its end is seen, and the prompt stands below.
func atPrompt(s *ptytest.Session, end string) {
	s.WaitFor(end+" and a prompt", func(screen string) bool {
		return strings.Contains(screen, end) && strings.HasSuffix(strings.TrimRight(screen, "\n"), "\n>")
	})
}

// A terminal that cannot place a cursor, and one that is told to, get lines of text and not one escape sequence.
func TestLinesHoldNoEscape(t *testing.T) {
	for _, test := range []struct {
		name, first string
		environment []string
		args        []string
	}{
		{"dumb", "lines mode: TERM=dumb cannot place a cursor", []string{"TERM=dumb"}, nil},
		{"wished", "borewalk, Ottermast-2, demo ottermast-2", nil, []string{"-lines"}},
		{"both", "borewalk, Ottermast-2, demo ottermast-2", []string{"TERM=dumb"}, []string{"-lines", "-section", "3"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			dir := t.TempDir()
			s := beginIn(t, dir, 80, 24, append(test.environment, "XDG_STATE_HOME="+dir), test.args...)
			s.Wait("say help for the words")
			if first, _, _ := strings.Cut(string(s.Output()), "\r\n"); !strings.HasPrefix(first, test.first) {
				t.Errorf("the first line is %q", first)
			}
			s.Type("section 3\r")
			s.Wait("page hole; 0 stop")
			s.Type("hole td 2085\r")
			s.Wait("2085.0 m, was 2155.0 m")
			s.Type("lines all\r")
			s.Wait("as a whole")
			s.Type("findings all\r")
			atPrompt(s, " ok section 5: ")
			s.Type("copy page\r")
			s.Wait("copied to")
			s.Type("print step-list\r")
			atPrompt(s, "Planning aid.")
			s.Type(ptytest.CtrlC)
			s.Wait("the plan has changes that are not saved")
			s.Type("3\r")
			s.Wait("still here")
			s.Type(ptytest.CtrlD)
			s.Wait("the plan has changes that are not saved")
			s.Type("2\r")
			if code := s.ExitCode(); code != 0 {
				t.Errorf("exit code %d, want 0", code)
			}
			plainOnly(t, s)
			if text, err := os.ReadFile(filepath.Join(dir, "borewalk", "copied.txt")); err != nil || !strings.Contains(string(text), "Hole, section 3 of 5") {
				t.Errorf("%q, %v", text, err)
			}
		})
	}
}

// Ctrl+d twice leaves with the work not saved, which is named, and the exit code tells.
func TestLinesEndWithWorkNotSaved(t *testing.T) {
	s := begin(t, 80, 24, nil, "-lines")
	s.Wait("say help for the words")
	s.Type("section[3].td = 2085 m\r")
	s.Wait("2085.0 m, was")
	s.Type(ptytest.CtrlD)
	s.Wait("quit and lose the changes")
	s.Type(ptytest.CtrlD)
	s.Wait("kept for the next start")
	s.Wait("not saved: section 3")
	if code := s.ExitCode(); code != 3 {
		t.Errorf("exit code %d, want 3", code)
	}
}

// The full screen can still be had where the terminal's name speaks against it.
func TestADumbTerminalCanBeTold(t *testing.T) {
	s := begin(t, 80, 24, []string{"TERM=dumb"}, "-lines=false")
	s.Wait("? help")
	s.Type("q")
	s.ExitCode()
}

// The mouse is left to the terminal, whose own selection works then; what is copied by key goes by the terminal, to a file as well.
func TestCopyAndNoMouse(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "no folder")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	s := beginIn(t, dir, 220, 30, []string{"XDG_STATE_HOME=" + file, "TMPDIR=" + dir})
	s.Wait("Ottermast-2")
	s.Type("c")
	s.Wait("Copy as text")
	s.Type(ptytest.Enter)
	s.Wait("may not take it; also in " + dir)
	s.Type("q")
	if code := s.ExitCode(); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
	out := string(s.Output())
	if strings.Count(out, "\x1b]52;c;") != 1 {
		t.Errorf("%d sequences for the clipboard", strings.Count(out, "\x1b]52;c;"))
	}
	for _, mode := range []string{"9", "1000", "1001", "1002", "1003", "1005", "1006", "1015", "1016"} {
		if strings.Contains(out, "\x1b[?"+mode+"h") {
			t.Errorf("mouse mode %s is turned on", mode)
		}
	}
	kept, err := filepath.Glob(filepath.Join(dir, "borewalk-copied-*.txt"))
	if err != nil || len(kept) != 1 {
		t.Fatalf("%q, %v", kept, err)
	}
	if text, err := os.ReadFile(kept[0]); err != nil || !strings.Contains(string(text), "section 1: Section name: 42 in hole") {
		t.Errorf("%q, %v", text, err)
	}
}
