//go:build !windows

package e2e_test

import (
	"bytes"
	"os/exec"
	"strings"
	"syscall"
	"testing"
	"time"

	"borewalk/ui/ptytest"
)

// silence is how long a program must have sent nothing to count as idle. That it sends less than it should while a test looks
// shows up in the picture, so a busy machine lets no test fail.
const silence = 100 * time.Millisecond

// cleared counts the pictures that were sent whole.
func cleared(output []byte) int { return bytes.Count(output, []byte("\x1b[2J")) }

func TestFirstPictureIsSentOnce(t *testing.T) {
	for _, size := range []struct{ cols, rows, most int }{{80, 24, 2500}, {100, 30, 3500}} {
		s := begin(t, size.cols, size.rows, nil)
		s.Wait("? help")
		sent := s.Settle(1500 * time.Millisecond) // longer than the clock of bubbletea, which looks for something to draw once a second
		if sent > size.most || cleared(s.Output()) != 1 {
			t.Errorf("%d x %d: %d bytes in %d whole pictures, want at most %d in one", size.cols, size.rows, sent, cleared(s.Output()), size.most)
		}
		s.Inspect(func(screen *ptytest.Screen) {
			if _, _, shown := screen.Cursor(); shown || !screen.Alternate() {
				t.Error("the cursor is shown, or it is not the alternate page")
			}
			if unknown := screen.Unknown(); len(unknown) > 0 {
				t.Errorf("sends %q, which an xterm would not know", unknown)
			}
		})
		s.Type("q")
		s.ExitCode()
	}
}

func TestNoSizeFromTheStart(t *testing.T) {
	s := ptytest.Start(t, ptytest.Options{Path: program, Dir: t.TempDir(), NoSize: true})
	s.Wait("Ottermast-2")
	s.Wait("? help")
	s.Settle(silence)
	if n := cleared(s.Output()); n != 1 {
		t.Errorf("%d whole pictures, want 1", n)
	}
	s.Type("]")
	s.Wait("section 2 of 5")
	s.Type("q")
	s.ExitCode()
}

func TestResizeIsOneWholePicture(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("? help")
	for i, size := range []struct{ cols, rows int }{{100, 30}, {80, 24}, {60, 20}, {80, 24}} {
		s.Settle(silence)
		before := s.Output()
		s.Resize(size.cols, size.rows)
		want := "? help"
		if size.cols < 80 {
			want = "needs 80 x 24"
		}
		s.WaitFor("a whole picture", func(screen string) bool {
			return cleared(s.Output()) > i+1 && strings.Contains(screen, want)
		})
		s.Settle(silence)
		if n := cleared(s.Output()[len(before):]); n != 1 {
			t.Errorf("%d x %d: %d whole pictures, want 1", size.cols, size.rows, n)
		}
	}
	before := cleared(s.Output())
	s.Signal(syscall.SIGWINCH) // as large as before, but smaller meanwhile
	s.WaitFor("a whole picture", func(string) bool { return cleared(s.Output()) == before+1 })
	s.Type("q")
	s.ExitCode()
}

func TestCtrlLDrawsAgain(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("? help")
	s.Settle(silence)
	want := s.Screen()
	s.Inspect(func(screen *ptytest.Screen) {
		_, _ = screen.Write([]byte("\x1b[5;5H\x1b[7ma message of the system\x1b[11;1H\x1b[J")) // what somebody else wrote
	})
	s.Type(ptytest.CtrlL)
	s.WaitFor("the picture as it was", func(screen string) bool { return screen == want })
	s.Type("q")
	s.ExitCode()
}

// Keys typed in one go share pictures.
func TestTypeAheadSharesPictures(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("? help")
	s.Type("]]" + strings.Repeat(ptytest.Down, 5)) // to a depth
	s.Wait("── Total depth")
	before := s.Settle(silence)
	s.Type("123456789012345678901234567890")
	s.Wait("123456789012345678901234567890")
	if sent := s.Settle(silence) - before; sent > 1000 {
		t.Errorf("30 digits in one write send %d bytes, want no more than two pictures", sent)
	}
	s.Type(ptytest.Esc)
	s.WaitGone("typing")
	before = s.Settle(silence)
	s.Type(strings.Repeat(ptytest.Up, 30) + strings.Repeat(ptytest.Down, 3))
	s.Wait("> Bit")
	if sent := s.Settle(silence) - before; sent > 2000 {
		t.Errorf("33 moves in one write send %d bytes, want a few pictures", sent)
	}
	s.Type("q")
	s.ExitCode()
}

// While the link is cut keys are still taken, and pictures that nobody could have seen are not sent afterwards.
func TestSlowLinkDropsPicturesAndNoKeys(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("? help")
	before := s.Settle(silence)
	release := s.Hold()
	const turns = 53 // of ten pages
	for range turns {
		s.Type(ptytest.Tab)
		s.Settle(15 * time.Millisecond) // a picture of its own for each key
	}
	release()
	s.Wait("[CEMENT]")
	if sent := s.Settle(silence) - before; sent > 30_000 { // what the system keeps, and a few pictures more
		t.Errorf("%d keys on a link that was cut send %d bytes", turns, sent)
	}
	s.Type("q")
	s.ExitCode()
}

func TestQuitOnALinkThatIsCut(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("? help")
	release := s.Hold()
	defer release()
	for range 40 {
		s.Type(ptytest.Tab)
		s.Settle(15 * time.Millisecond)
	}
	s.Type("q")
	if code := s.ExitCode(); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
}

// shell starts a shell that can stop and continue programs.
func shell(t *testing.T) *ptytest.Session {
	t.Helper()
	sh, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("there is no shell")
	}
	s := ptytest.Start(t, ptytest.Options{Path: sh, Args: []string{"-i"}, Env: []string{"PS1=shell> ", "ENV="}, Dir: t.TempDir()})
	s.Wait("shell>")
	return s
}

func TestSuspendAndComeBack(t *testing.T) {
	s := shell(t)
	s.Type(program + "\r")
	s.Wait("section 1 of 5")
	for _, section := range []string{"section 2 of 5", "section 3 of 5"} {
		s.Type(ptytest.CtrlZ)
		s.WaitFor("the shell", func(screen string) bool { return strings.HasSuffix(strings.TrimSpace(screen), "shell>") })
		s.Inspect(func(screen *ptytest.Screen) {
			if _, _, shown := screen.Cursor(); !shown || screen.Alternate() {
				t.Error("the shell has no cursor, or the alternate page")
			}
		})
		s.Type("echo typed $((40+2))\r")
		s.Wait("\ntyped 42")
		s.Settle(silence)
		before := len(s.Output())
		s.Type("fg\r")
		s.Wait("? help")
		s.Settle(silence)
		if n := cleared(s.Output()[before:]); n != 1 {
			t.Errorf("coming back sends %d whole pictures, want 1", n)
		}
		s.Type("]")
		s.Wait(section)
	}
	s.Type("q")
	s.WaitFor("the shell", func(screen string) bool { return strings.HasSuffix(strings.TrimSpace(screen), "shell>") })
	s.Type("exit\r")
	s.ExitCode()
}

// Without a shell nothing could continue the program, so it goes on by itself.
func TestSuspendWithoutAShell(t *testing.T) {
	s := begin(t, 80, 24, nil)
	s.Wait("? help")
	s.Type(ptytest.CtrlZ)
	s.Wait("not suspended")
	s.Type("]")
	s.Wait("section 2 of 5")
	s.Type("q")
	s.ExitCode()
}

func TestTheTerminalIsLeftInOrder(t *testing.T) {
	for _, onePage := range []bool{false, true} {
		sh, err := exec.LookPath("sh")
		if err != nil {
			t.Skip("there is no shell")
		}
		s := ptytest.Start(t, ptytest.Options{Path: sh, Args: []string{"-c", `printf 'old line\nold line\n'; "$0"; printf 'prompt> '; read line`, program},
			Dir: t.TempDir(), OnePage: onePage})
		s.Wait("? help")
		if strings.Contains(s.Screen(), "old line") {
			t.Errorf("one page %v: what stood on the screen shines through:\n%s", onePage, s.Screen())
		}
		s.Type("q")
		s.Wait("prompt>")
		s.Inspect(func(screen *ptytest.Screen) {
			x, y, shown := screen.Cursor()
			if line := screen.Line(y); line != "prompt>" || x != len("prompt> ") || !shown || screen.Alternate() {
				t.Errorf("one page %v: cursor at column %d, shown %v, of %q; want the prompt alone on its line", onePage, x, shown, line)
			}
			if !onePage && screen.Line(0) != "old line" {
				t.Errorf("what stood on the screen is gone:\n%s", screen)
			}
			if look := screen.Cell(0, y).Look; look != (ptytest.Look{}) {
				t.Errorf("one page %v: the prompt looks like %+v, want the terminal's own look", onePage, look)
			}
		})
	}
}
