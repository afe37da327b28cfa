package ptytest

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
	"time"
)

// shell starts a script in a pseudo-terminal.
func shell(t *testing.T, opt Options, script string) *Session {
	t.Helper()
	path, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("there is no shell")
	}
	opt.Path, opt.Args = path, []string{"-c", script}
	return Start(t, opt)
}

func TestSessionTypes(t *testing.T) {
	s := shell(t, Options{}, "exec cat")
	s.Type("top of lead\n")
	s.WaitFor("the line twice, typed and printed", func(screen string) bool {
		return strings.HasPrefix(screen, "top of lead\ntop of lead\n")
	})
	s.Type(CtrlD)
	if got := s.ExitCode(); got != 0 {
		t.Errorf("exit code = %d, want 0", got)
	}
}

func TestSessionShowsWhatCameLast(t *testing.T) {
	s := shell(t, Options{Cols: 30, Rows: 3}, `printf '\033[2J\033[2;5Hcement\033[1;1Hlast'; exit 3`)
	s.Wait("last")
	if got, want := s.Screen(), "last\n    cement\n"; got != want {
		t.Errorf("screen = %q, want %q", got, want)
	}
	if got, want := s.Line(1), "    cement"; got != want {
		t.Errorf("line 1 = %q, want %q", got, want)
	}
	if got := s.ExitCode(); got != 3 {
		t.Errorf("exit code = %d, want 3", got)
	}
	if got, want := s.Bytes(), len("\x1b[2J\x1b[2;5Hcement\x1b[1;1Hlast"); got != want {
		t.Errorf("bytes = %d, want %d", got, want)
	}
}

func TestSessionWaitGone(t *testing.T) {
	s := shell(t, Options{}, `printf 'ready'; read line; printf '\033[2Jdone'; read line`)
	s.Wait("ready")
	s.Type("\n")
	s.WaitGone("ready")
	s.Wait("done")
}

func TestSessionSize(t *testing.T) {
	s := shell(t, Options{Cols: 100, Rows: 30}, `stty size; read line; stty size; read line`)
	s.Wait("30 100")
	s.Resize(132, 43)
	s.Type("\n")
	s.Wait("43 132")
}

func TestSessionNoSize(t *testing.T) {
	s := shell(t, Options{NoSize: true}, `stty size; read line`)
	s.Wait("0 0")
}

func TestSessionEnvironment(t *testing.T) {
	dir := t.TempDir()
	s := shell(t, Options{Dir: dir, Env: []string{"TERM=screen", "PLAN=demo"}}, `echo "$TERM $LANG $PLAN"; test -d "$HOME" && pwd`)
	s.Wait("screen C.UTF-8 demo")
	if got := s.ExitCode(); got != 0 {
		t.Errorf("exit code = %d, want 0", got)
	}
}

func TestSessionQueries(t *testing.T) {
	const ask = `stty raw -echo; printf '\033[6n'; dd bs=1 count=6 2>/dev/null | tr -d '\033'; printf ' answered'`
	s := shell(t, Options{Answer: true}, ask)
	s.Wait("[1;1R answered")
	silent := shell(t, Options{}, `printf '\033]11;?\033\\\\'; printf 'asked'; read line`)
	silent.Wait("asked")
	if got, want := strings.Join(silent.Queries(), ", "), "OSC 11"; got != want {
		t.Errorf("queries = %q, want %q", got, want)
	}
	if got := string(silent.FirstOutput()); !strings.HasPrefix(got, "\x1b]11;?") {
		t.Errorf("first output = %q, want it to begin with the query", got)
	}
}

func TestSessionHangUp(t *testing.T) {
	s := shell(t, Options{}, `trap 'exit 7' HUP; echo ready; while :; do read line || exit 8; done`)
	s.Wait("ready")
	if got := s.Close(); got != 7 && got != 8 { // some shells notice that reading fails before they run the trap
		t.Errorf("exit code = %d, want 7", got)
	}
}

func TestSessionSignal(t *testing.T) {
	s := shell(t, Options{}, `echo ready; exec cat`)
	s.Wait("ready")
	s.Signal(syscall.SIGTERM)
	if got := s.ExitCode(); got != -1 {
		t.Errorf("exit code = %d, want -1", got)
	}
}

func TestSessionSettle(t *testing.T) {
	s := shell(t, Options{}, `printf 'abc'; read line; printf 'd'; read line`)
	s.Wait("abc")
	if got := s.Settle(50 * time.Millisecond); got != 3 {
		t.Errorf("bytes = %d, want 3", got)
	}
	s.Type("\n")
	s.Wait("d")
	if got, want := s.Settle(50*time.Millisecond), len("abc\r\nd"); got != want {
		t.Errorf("bytes = %d, want %d", got, want)
	}
}

// refusal is a test that records its failure.
type refusal struct {
	testing.TB
	text string
}

func (r *refusal) Helper() {}
func (r *refusal) Fatal(args ...any) {
	r.text = fmt.Sprint(args...)
	panic(r)
}

// TestSessionFails sees that a wait in vain fails and shows the screen, at the limit and when the program has ended.
func TestSessionFails(t *testing.T) {
	for script, want := range map[string]string{
		`printf 'only this'; exec cat`: "in vain",
		`printf 'only this'`:           "the program ended",
	} {
		s := shell(t, Options{Limit: time.Second}, script)
		s.Wait("only this")
		r := &refusal{TB: t}
		s.t = r
		func() {
			defer func() { _ = recover() }()
			s.Wait("another thing")
		}()
		s.t = t
		for _, part := range []string{want, `"another thing"`, "|only this\n", "cursor at column 9 of line 0"} {
			if !strings.Contains(r.text, part) {
				t.Errorf("failure %q lacks %q", r.text, part)
			}
		}
	}
}

func TestSessionNoProgram(t *testing.T) {
	r := &refusal{TB: t}
	func() {
		defer func() { _ = recover() }()
		Start(r, Options{Path: t.TempDir() + string(os.PathSeparator) + "nothing"})
	}()
	if want := "nothing in a pseudo-terminal"; !strings.Contains(r.text, want) {
		t.Errorf("failure %q lacks %q", r.text, want)
	}
}
