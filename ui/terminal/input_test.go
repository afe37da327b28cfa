//go:build unix

package terminal

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/creack/pty"
	"github.com/muesli/cancelreader"

	"borewalk/ui/ptytest"
	_ "borewalk/ui/quiet"
)

// TestMain lets the test run itself as a program that lists the keys it is given.
func TestMain(m *testing.M) {
	if os.Getenv("TERMINAL_TEST_PROGRAM") == "" {
		os.Exit(m.Run())
	}
	in, err := Stdin()
	if err == nil {
		_, err = tea.NewProgram(listing(nil), tea.WithInput(in)).Run()
	}
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
}

// listing shows the keys that came, one a line.
type listing []string

func (l listing) Init() tea.Cmd { return nil }

func (l listing) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if msg == (resumed{}) {
		return append(l, "resumed"), nil
	}
	key, ok := msg.(tea.KeyMsg)
	switch {
	case !ok:
		return l, nil
	case key.Paste && len(key.Runes) > 60:
		return append(l, fmt.Sprintf("paste of %d characters", len(key.Runes))), nil
	case key.Paste:
		return append(l, fmt.Sprintf("paste of %q", string(key.Runes))), nil
	case key.String() == "q":
		return l, tea.Quit
	case key.String() == "s":
		return l, tea.Exec(nothing{}, func(error) tea.Msg { return resumed{} })
	}
	return append(l, "key "+key.String()), nil
}

func (l listing) View() string {
	return fmt.Sprintf("%d so far\n%s\n", len(l), strings.Join(l, "\n"))
}

// resumed is sent when bubbletea has the terminal again.
type resumed struct{}

// nothing is a program to be run while bubbletea lets go of the terminal.
type nothing struct{}

// Run takes a moment. bubbletea v1.3.10 never draws again when it gets the terminal back before its drawing loop has ended;
// on the alternate page it waits 10 ms itself.
func (nothing) Run() error {
	time.Sleep(50 * time.Millisecond)
	return nil
}

func (nothing) SetStdin(io.Reader)  {}
func (nothing) SetStdout(io.Writer) {}
func (nothing) SetStderr(io.Writer) {}

// begin starts the program.
func begin(t *testing.T) *ptytest.Session {
	s := ptytest.Start(t, ptytest.Options{Path: os.Args[0], Env: []string{"TERMINAL_TEST_PROGRAM=1"}})
	s.Wait("0 so far")
	return s
}

// end quits the program and sees that it has shown these keys and no others.
func end(t *testing.T, s *ptytest.Session, want ...string) {
	t.Helper()
	s.Wait(fmt.Sprintf("%d so far", len(want)))
	s.Type("q")
	if got := s.ExitCode(); got != 0 {
		t.Errorf("exit code = %d, want 0", got)
	}
	lines := strings.Join(want, "\n")
	if got := s.Screen(); !strings.Contains(got, fmt.Sprintf("%d so far\n%s\n", len(want), lines)) {
		t.Errorf("screen is\n%s\nwant\n%s", strings.TrimSpace(got), lines)
	}
}

// TestSplitKey sends ctrl+right in two pieces. Should the machine be so busy that the gap grows longer than the time of
// patience, it begins again.
func TestSplitKey(t *testing.T) {
	for range 20 {
		s := begin(t)
		start := time.Now()
		s.Type("\x1b[1;")
		time.Sleep(patience / 2) // the gap is what is tested
		s.Type("5C")
		if time.Since(start) < patience {
			end(t, s, "key ctrl+right")
			return
		}
	}
	t.Skip("the machine is too busy to send two pieces within the time of patience")
}

func TestLoneEsc(t *testing.T) {
	s := begin(t)
	s.Type(ptytest.Esc)
	s.Wait("key esc")
	s.Type("[")
	s.Wait("key [")
	end(t, s, "key esc", "key [")
}

func TestHalfAKey(t *testing.T) {
	s := begin(t)
	s.Type("\x1b[1;")
	s.Settle(3 * patience) // until it is sure that nothing follows
	s.Type("7")
	s.Wait("key 7")
	end(t, s, "key 7")
}

// TestPaste pastes more than bubbletea reads at once, with an Esc, half a sequence and a command in it.
func TestPaste(t *testing.T) {
	text := strings.Repeat("7200 ft\tq\x1b[", 20) + "13\u00bd in"
	s := begin(t)
	s.Type(ptytest.Paste(text) + ptytest.Up)
	end(t, s, fmt.Sprintf("paste of %d characters", len([]rune(text))), "key up")
}

// TestSplitPaste cuts a paste within its beginning, its text and its end.
func TestSplitPaste(t *testing.T) {
	s := begin(t)
	for _, part := range []string{"\x1b[200~7,", "200\x1b", "\x1b[2", "01~"} {
		s.Type(part)
		s.Settle(patience * 3 / 2)
	}
	s.Type(ptytest.Down)
	end(t, s, `paste of "7,200\x1b"`, "key down")
}

// TestLettingGo sees that reading can be cancelled and begun again, as bubbletea does to run another program.
func TestLettingGo(t *testing.T) {
	s := begin(t)
	s.Type("s")
	s.Wait("resumed")
	s.Type(ptytest.CtrlRight)
	end(t, s, "resumed", "key ctrl+right")
}

func TestCancel(t *testing.T) {
	owner, f, err := pty.Open()
	if err != nil {
		t.Skip(err)
	}
	defer owner.Close()
	defer f.Close()
	r, err := cancelreader.NewReader(newKeyboard(f))
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	ended := make(chan error)
	go func() {
		_, err := r.Read(make([]byte, 256))
		ended <- err
	}()
	if !r.Cancel() {
		t.Error("Cancel() = false, want true")
	}
	select {
	case err := <-ended:
		if !errors.Is(err, cancelreader.ErrCanceled) {
			t.Errorf("Read() = %v, want %v", err, cancelreader.ErrCanceled)
		}
	case <-time.After(10 * time.Second):
		t.Error("Read() goes on after Cancel()")
	}
}

// TestKeyboardIsAFile sees that bubbletea finds all it needs to treat the keyboard as a terminal.
func TestKeyboardIsAFile(t *testing.T) {
	owner, f, err := pty.Open()
	if err != nil {
		t.Skip(err)
	}
	defer owner.Close()
	var k cancelreader.File = newKeyboard(f)
	if k.Fd() != f.Fd() || k.Name() != f.Name() {
		t.Errorf("file %d %q, want %d %q", k.Fd(), k.Name(), f.Fd(), f.Name())
	}
	if err := k.Close(); err != nil {
		t.Error(err)
	}
	if _, err := f.Read(nil); err == nil {
		t.Error("the file is open after Close()")
	}
}
