//go:build unix

package terminal

import (
	"fmt"
	"os"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"borewalk/ui/canvas"
	"borewalk/ui/ptytest"
)

// wire is an output to a pipe, and the screen at its other end.
type wire struct {
	*Output
	t      *testing.T
	from   *os.File
	screen *ptytest.Screen
	canvas *canvas.Canvas
}

func newWire(t *testing.T) *wire {
	from, to, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	w := &wire{Output: NewOutput(to), t: t, from: from, screen: ptytest.NewScreen(40, 5), canvas: canvas.New(40, 5)}
	t.Cleanup(func() {
		from.Close()
		w.Output.Close()
		to.Close()
	})
	return w
}

// write writes as bubbletea does.
func (w *wire) write(sequences ...string) {
	for _, s := range sequences {
		if _, err := w.WriteString(s); err != nil {
			w.t.Error(err)
		}
	}
}

func (w *wire) show(text string) {
	w.canvas.Resize(40, 5)
	w.canvas.All().Text(0, 0, text, canvas.Focus)
	palette := canvas.NewPalette(16)
	w.Show(w.canvas, &palette)
}

// read reads until the terminal shows a line or was sent a sequence.
func (w *wire) read(want string) string {
	w.t.Helper()
	var all []byte
	buf := make([]byte, 4096)
	for !strings.Contains(string(all), want) && w.screen.Line(0) != want {
		_ = w.from.SetReadDeadline(time.Now().Add(10 * time.Second))
		n, err := w.from.Read(buf)
		if err != nil {
			w.t.Fatalf("after %q: %v, want %q", all, err, want)
		}
		all = append(all, buf[:n]...)
		_, _ = w.screen.Write(buf[:n])
	}
	return string(all)
}

func TestPicturesGoPastBubbletea(t *testing.T) {
	w := newWire(t)
	w.show("too early")
	w.write(ansi.HideCursor, ansi.SetModeAltScreenSaveCursor, ansi.EraseEntireScreen, ansi.CursorHomePosition, ansi.SetModeBracketedPaste)
	w.show("depth 2085")
	got := w.read("depth 2085")
	for _, want := range []string{ansi.HideCursor, ansi.SetModeAltScreenSaveCursor, ansi.SetModeBracketedPaste} {
		if !strings.Contains(got, want) {
			t.Errorf("sends %q, want %q in it", got, want)
		}
	}
	if strings.Contains(got, "early") || strings.Count(got, ansi.EraseEntireScreen) != 1 {
		t.Errorf("sends %q, want the screen cleared once and no picture before it is taken", got)
	}
	_, _ = w.Write([]byte(ansi.CursorHomePosition + "\r " + ansi.EraseLineRight)) // bubbletea's picture of nothing
	w.write("\x1b]52;c;Zmlm\a")
	w.show("depth 2086")
	if got, want := w.read("depth 2086"), "\x1b]52;c;Zmlm\a\b\x1b[7m6\x1b[m"; got != want {
		t.Errorf("sends %q, want %q", got, want)
	}
	w.show("depth 2086")
	w.write(ansi.EraseEntireScreen, ansi.CursorHomePosition)
	w.show("depth 2087")
	if got := w.read("depth 2087"); !strings.Contains(got, "\x1b[2J") || !strings.Contains(got, "depth 208") {
		t.Errorf("sends %q after an erased screen, want all of it", got)
	}
}

func TestLeavingDropsThePictureAndWaits(t *testing.T) {
	w := newWire(t)
	w.write(ansi.SetModeAltScreenSaveCursor)
	w.show("first")
	w.read("first")
	w.show("second")
	w.show("third")
	w.write(ansi.EraseEntireLine, "\r", ansi.ResetModeBracketedPaste, ansi.ShowCursor, ansi.ResetModeAltScreenSaveCursor)
	w.show("too late") // all is sent by now: reading it takes no waiting
	_ = w.from.SetReadDeadline(time.Now().Add(10 * time.Second))
	buf := make([]byte, 4096)
	n, _ := w.from.Read(buf)
	got := string(buf[:n])
	if !strings.HasSuffix(got, ansi.ShowCursor+"\x1b[999H"+ansi.EraseEntireLine+ansi.ResetModeAltScreenSaveCursor) {
		t.Errorf("sends %q, want it to end with the alternate screen left on a clean line", got)
	}
	if strings.Contains(got, "late") {
		t.Errorf("sends %q, want no picture after it was left", got)
	}
	if !w.Taken() || w.Taken() {
		t.Error("Taken is not true once after the screen was entered")
	}
	w.write(ansi.SetModeAltScreenSaveCursor)
	w.show("back")
	if got := w.read("back"); !strings.Contains(got, "\x1b[2J") {
		t.Errorf("sends %q on coming back, want the screen cleared", got)
	}
	if !w.Taken() {
		t.Error("Taken is not true after coming back")
	}
}

// What is written to the terminal after it was left, by the shell or by this program, comes after all that was sent before.
func TestLeavingWaitsForWhatIsBeingSent(t *testing.T) {
	w := newWire(t)
	painting, gate := make(chan struct{}), make(chan struct{})
	w.paint = func(*canvas.Frame) []byte {
		close(painting)
		<-gate
		return []byte("picture")
	}
	w.write(ansi.SetModeAltScreenSaveCursor)
	w.show("any")
	<-painting
	left := make(chan struct{})
	go func() {
		w.write(ansi.ResetModeAltScreenSaveCursor)
		close(left)
	}()
	select {
	case <-left:
		t.Error("the terminal is left before all is sent")
	case <-time.After(letGo / 20):
	}
	close(gate)
	<-left
	if got := w.read(ansi.ResetModeAltScreenSaveCursor); !strings.Contains(got, "picture\x1b[999H") {
		t.Errorf("sends %q, want the picture before the screen is left", got)
	}
}

// Pictures that come one upon the other share what is sent: between two there is a pause, in which the newer replaces the older.
func TestPauseBetweenPictures(t *testing.T) {
	w := newWire(t)
	w.write(ansi.SetModeAltScreenSaveCursor)
	painted := make(chan time.Time, 1)
	paint := w.paint
	w.paint = func(f *canvas.Frame) []byte {
		painted <- time.Now()
		return paint(f)
	}
	w.show("first")
	before := <-painted
	for n := range 4 {
		w.show(fmt.Sprintf("picture %d", n))
		now := <-painted
		if after := now.Sub(before); after < pause {
			t.Errorf("a picture %v after the one before, want at least %v between them", after, pause)
		}
		before = now
	}
}

// A terminal that takes nothing keeps nobody waiting while pictures come; then it gets the newest.
func TestSlowTerminalGetsTheNewest(t *testing.T) {
	w := newWire(t)
	w.write(ansi.SetModeAltScreenSaveCursor, strings.Repeat("\a", 1<<20)) // more than a pipe holds
	for n := range 1000 {
		w.show(fmt.Sprintf("picture %d", n))
	}
	_, got, _ := strings.Cut(w.read("picture 999"), "\a\x1b[m")
	if n := strings.Count(got, "m"); n > 10 {
		t.Errorf("sends %q for a thousand pictures, want one or two", got)
	}
}

func TestTerminalThatTakesNothingIsLeft(t *testing.T) {
	w := newWire(t)
	w.write(ansi.SetModeAltScreenSaveCursor, strings.Repeat("\a", 1<<20))
	w.show("never seen")
	left := make(chan struct{})
	go func() {
		defer close(left)
		w.write(ansi.ResetModeAltScreenSaveCursor)
		w.drain() // as Close does
	}()
	select {
	case <-left:
	case <-time.After(20 * letGo):
		t.Error("waits for ever")
	}
}

// A fault while painting stops the pictures and is told; the terminal can still be left in order.
func TestFaultWhilePainting(t *testing.T) {
	w := newWire(t)
	failed := make(chan struct{})
	var times atomic.Int32
	w.Failed = func(fault any, stack []byte) {
		if times.Add(1) == 1 && fault == "broken" && strings.Contains(string(stack), "painted") {
			close(failed)
		}
	}
	w.paint = func(*canvas.Frame) []byte { panic("broken") }
	w.write(ansi.SetModeAltScreenSaveCursor)
	w.show("never seen")
	select {
	case <-failed:
	case <-time.After(10 * time.Second):
		t.Fatal("Failed is not called with the fault and its place")
	}
	w.show("never seen either")
	w.write(ansi.ShowCursor, ansi.ResetModeAltScreenSaveCursor)
	w.read(ansi.ResetModeAltScreenSaveCursor)
	if n := times.Load(); n != 1 {
		t.Errorf("Failed is called %d times, want once", n)
	}
}
