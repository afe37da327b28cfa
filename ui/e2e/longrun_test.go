//go:build !windows

package e2e_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"borewalk/plans"
	"borewalk/ui/ptytest"
)

// The keys of a long watch, those weighted that do something to the plan. Left out are those that end the program or write
// files: q, s, S, O, N, and ctrl+z.
var watchKeys = []string{
	ptytest.Up, ptytest.Down, ptytest.Down, ptytest.Left, ptytest.Right, ptytest.Enter, ptytest.Enter, ptytest.Enter, ptytest.Esc + " ", ptytest.Tab,
	ptytest.ShiftTab, ptytest.PgUp, ptytest.PgDn, ptytest.Home, ptytest.End, ptytest.Backspace, ptytest.Delete, ptytest.CtrlL, ptytest.CtrlR, ptytest.CtrlLeft,
	"]", "[", "+", "-", "+", "-", "+", "7" + ptytest.Enter, "a", "d", "u", "r", "v", "w", "f", "m", "b", "t", "o", "?", "P", "E", "V", "W", "L", "U", "T", "H", "C", "Y", "g", "i", "c", "/",
	"n", "p", "1", "2", "9", ".", ",", " ", "0", "j", "k", "h", "x", "!", "é", "\x00", "\x1b[", "\x1b[1;", "\x1bOz",
	ptytest.Paste("12 m"), ptytest.Paste("x\ny q\r"), ptytest.Paste("13 5/8"), ptytest.Paste("1,5 sg"), ptytest.Paste(""), ptytest.Paste("\x1b[31mred"),
}

// Those that move and change entries alone: of all keys, most open something in which the others are but letters.
var editKeys = []string{
	ptytest.Up, ptytest.Down, ptytest.Down, ptytest.PgDn, ptytest.PgUp, ptytest.Left, ptytest.Tab, "]", "[", "+", "-", "+", "=", "7" + ptytest.Enter, "12.5" + ptytest.Enter,
	ptytest.Paste("1,5") + ptytest.Enter, ptytest.Delete, "a", "d", "u", "r",
}

// TestALongWatch: ten thousand keys in bursts, with pastes and resizes between. Nothing breaks, no screen shows what is no number,
// memory stays where it was, and undo all the way back gives the plan that was opened, byte for byte.
func TestALongWatch(t *testing.T) {
	keys, seed := 10000, uint64(7)
	if text := os.Getenv("LONG_WATCH_SEED"); text != "" { // for more of them by hand
		seed, _ = strconv.ParseUint(text, 10, 64)
	}
	t.Logf("LONG_WATCH_SEED=%d", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	dir := t.TempDir()
	source, _ := plans.Demo(plans.Default)
	if err := os.WriteFile(filepath.Join(dir, "plan.toml"), source, 0o600); err != nil {
		t.Fatal(err)
	}
	s := ptytest.Start(t, ptytest.Options{Path: program, Args: []string{"plan.toml"}, Dir: dir, Limit: 2 * time.Minute})
	s.Wait("Ottermast-2")
	early := 0
	for n := 0; n < keys; {
		var burst strings.Builder
		from := watchKeys
		if random.IntN(2) == 0 {
			burst.WriteString(strings.Repeat(ptytest.Esc, 4))
			from = editKeys
		}
		for range 1 + random.IntN(30) {
			burst.WriteString(from[random.IntN(len(from))])
			n++
		}
		s.Type(burst.String())
		if random.IntN(4) == 0 {
			s.Resize(60+random.IntN(100), 18+random.IntN(30))
		}
		s.Settle(20 * time.Millisecond)
		if screen := s.Screen(); noNumber.MatchString(screen) {
			t.Fatalf("after %d keys, the last of them %q:\n%s", n, burst.String(), screen)
		}
		if early == 0 && n > keys/5 {
			early = memory(t, s.Pid())
		}
	}
	late := memory(t, s.Pid())
	s.Resize(100, 30)
	for range 4 {
		s.Type(ptytest.Esc)
		s.Settle(100 * time.Millisecond)
	}
	undone := 0
	for ; !strings.Contains(s.Screen(), "nothing to undo"); undone += 25 {
		if undone > keys {
			t.Fatalf("undo comes to no end:\n%s", s.Screen())
		}
		s.Type(strings.Repeat("u", 25))
		s.Settle(100 * time.Millisecond)
	}
	t.Logf("%d kB after %d keys, %d kB after %d; up to %d undone", early, keys/5, late, keys, undone)
	if undone < 200 {
		t.Errorf("but %d edits undone", undone)
	}
	if late-early > 12000 { // what odds and jobs leave comes and goes with the collector; a key that leaves 1.5 kB for good is seen
		t.Errorf("memory went from %d to %d kB", early, late)
	}
	s.Type("S")
	s.Settle(100 * time.Millisecond)
	if strings.Contains(s.Screen(), "Your name") {
		s.Type("A. Person" + ptytest.Enter)
	}
	s.Wait("Save the plan as")
	s.Type(ptytest.CtrlU + "back.toml" + ptytest.Enter)
	s.Wait("saved back.toml")
	got, err := os.ReadFile(filepath.Join(dir, "back.toml"))
	if err != nil {
		t.Fatal(err)
	}
	// Marks, such as a handover's, are no edits of the plan: they stay in its log, which stands behind everything else.
	if plan, _, _ := bytes.Cut(got, []byte("\n[[log]]")); !bytes.Equal(bytes.TrimSpace(plan), bytes.TrimSpace(source)) {
		t.Errorf("undo all the way back does not give the opened plan:\n%s", got)
	}
	s.Type("q")
	if code := s.ExitCode(); code != 0 {
		t.Errorf("exit code %d, want 0", code)
	}
	s.Inspect(func(screen *ptytest.Screen) {
		if unknown := screen.Unknown(); len(unknown) > 0 {
			t.Errorf("sent to the terminal: %q", unknown)
		}
	})
}

// noNumber is how Go writes what is no number; an influx is none of that.
var noNumber = regexp.MustCompile(`NaN|\bInf\b`)

// memory returns the resident memory of a process, in kB; 0 where the system does not say.
func memory(t *testing.T, pid int) int {
	t.Helper()
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if os.IsNotExist(err) {
		return 0
	}
	_, after, _ := strings.Cut(string(status), "VmRSS:")
	fields := strings.Fields(after)
	if err != nil || len(fields) == 0 {
		t.Fatalf("no memory of process %d: %v", pid, err)
	}
	kB, err := strconv.Atoi(fields[0])
	if err != nil {
		t.Fatal(err)
	}
	return kB
}
