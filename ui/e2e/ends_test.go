//go:build !windows

package e2e_test

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"borewalk/model"
	"borewalk/model/journal"
	"borewalk/model/planfile"
	"borewalk/ui/ptytest"
)

var (
	trials = flag.Int("trials", 200, "how many times the program is ended at random")
	seed   = flag.Uint64("seed", uint64(time.Now().UnixNano()), "of the random trials")
)

// promise is the age from which a change survives a kill: a second, and as much again twice for a machine that is busy with other tests.
// Endings that the program learns of lose nothing.
const promise = 3 * time.Second

// TestHoweverItEndsNothingTypedIsLost starts the program on a plan, types random edits, undoes, redoes and saves, and ends it at a random
// moment in a random way. Then the file must hold, whole, a state that was saved or was being saved; file and journal together must give
// back everything that was accepted before, or, after a kill, some seconds before; and the next start leaves no litter.
//
//	go test ./ui/e2e -run HoweverItEnds -trials 5000 -seed 7
func TestHoweverItEndsNothingTypedIsLost(t *testing.T) {
	t.Logf("-seed %d", *seed)
	count := *trials
	if len(build) > 1 { // under the race detector
		count /= 10
	}
	t.Run("trials", func(t *testing.T) {
		for i := range count {
			t.Run(strconv.Itoa(i), func(t *testing.T) {
				t.Parallel()
				newTrial(t, rand.New(rand.NewPCG(*seed, uint64(i)))).run()
			})
		}
	})
	if t.Failed() {
		t.Logf("again with -seed %d", *seed)
	}
}

// small is a plan that is worked out in no time: its name is what the trials edit.
const small = "# a plan of the crew's, with a comment to be kept\nborewalk = 1\n\n[well]\nname = \"0\"\nunits = \"metric\"\n"

// state is the plan after one key of a trial.
type state struct {
	name  string
	seen  time.Time // when the screen showed it; zero for not
	saved bool      // the key was a save
}

// ending is a way to end the program.
type ending struct {
	name  string
	how   func(*ptytest.Session)
	tells bool // the program learns of it
}

var endings = []ending{
	{"kill", func(s *ptytest.Session) { s.Signal(syscall.SIGKILL); s.ExitCode() }, false},
	{"hang-up", func(s *ptytest.Session) { s.Signal(syscall.SIGHUP); s.ExitCode() }, true},
	{"terminate", func(s *ptytest.Session) { s.Signal(syscall.SIGTERM); s.ExitCode() }, true},
	{"close", func(s *ptytest.Session) { s.Close() }, true},
}

// trial is one run of the program, and what it must have kept.
type trial struct {
	t      *testing.T
	random *rand.Rand
	place  workplace
	s      *ptytest.Session
	end    ending
	states []state // the first is the file's
	done   []string
	undone []string
	next   int // a number that no edit has had
}

func newTrial(t *testing.T, random *rand.Rand) *trial {
	w := &trial{t: t, random: random, place: workplace{dir: t.TempDir(), state: t.TempDir()}, end: endings[random.IntN(len(endings))],
		states: []state{{name: "0", saved: true, seen: time.Now()}}, next: 1}
	w.place.plan = filepath.Join(w.place.dir, "well.toml")
	if err := os.WriteFile(w.place.plan, []byte(small), 0o600); err != nil {
		t.Fatal(err)
	}
	return w
}

func (w *trial) run() {
	w.s = beginIn(w.t, w.place.dir, 80, 24, w.place.env(), "-name", "AZ", "well.toml")
	w.s.Wait("? help")
	w.s.Type(ptytest.ShiftTab + ptytest.Down)
	w.s.Wait("> Well  ")
	for range w.random.IntN(6) {
		w.press(true)
	}
	switch k := w.random.IntN(8); {
	case k == 0 && !w.end.tells: // everything becomes old enough
		w.pause(promise)
	case k == 1: // in the middle of saves
		for range 1 + w.random.IntN(4) {
			w.edit(false)
			w.save(false)
		}
	default:
		for range w.random.IntN(3) {
			w.press(false)
		}
	}
	w.pause(time.Duration(w.random.IntN(40)) * time.Millisecond)
	ended := time.Now()
	w.end.how(w.s)
	w.check(ended)
}

// pause lets a random moment come: it waits for nothing.
func (w *trial) pause(d time.Duration) { <-time.After(d) }

// press makes a random change, and waits until the screen shows it where that is asked for.
func (w *trial) press(wait bool) {
	switch k := w.random.IntN(6); {
	case k == 0 && len(w.done) > 0:
		last := len(w.done) - 1
		w.undone = append(w.undone, w.name())
		w.typed("u", w.done[last], wait)
		w.done = w.done[:last]
	case k == 1 && len(w.undone) > 0:
		last := len(w.undone) - 1
		w.done = append(w.done, w.name())
		w.typed("r", w.undone[last], wait)
		w.undone = w.undone[:last]
	case k == 2:
		w.save(wait)
	default:
		w.edit(wait)
	}
}

func (w *trial) name() string { return w.states[len(w.states)-1].name }

func (w *trial) edit(wait bool) {
	w.done, w.undone = append(w.done, w.name()), nil
	name := strconv.Itoa(w.next)
	w.next++
	w.typed(name+ptytest.Enter, name, wait)
}

// typed types keys that make the well's name another one, which the first line begins with.
func (w *trial) typed(keys, name string, wait bool) {
	w.states = append(w.states, state{name: name})
	w.s.Type(keys)
	if wait {
		w.s.WaitFor("the name "+name, func(screen string) bool {
			return strings.HasPrefix(screen, " "+name+" ") && !strings.Contains(screen, "typing: ")
		})
		w.see()
	}
}

func (w *trial) save(wait bool) {
	w.states = append(w.states, state{name: w.name(), saved: true})
	w.s.Type("s")
	if wait {
		w.s.WaitFor("a saved plan", func(screen string) bool { return !strings.Contains(screen, "* not saved") })
		w.see()
	}
}

// see notes that all up to now was seen.
func (w *trial) see() {
	for i := range w.states {
		if w.states[i].seen.IsZero() {
			w.states[i].seen = time.Now()
		}
	}
}

// from returns the first state that may have come back: the last that the program was bound to keep.
func (w *trial) from(bound func(state) bool) int {
	first := 0
	for i, s := range w.states {
		if bound(s) {
			first = i
		}
	}
	return first
}

func (w *trial) check(ended time.Time) {
	file, err := planfile.Open(w.place.plan)
	if err != nil {
		w.fail("the file does not open: %v", err)
	}
	saved := w.from(func(s state) bool { return s.saved && !s.seen.IsZero() })
	if model.ChangedOutside(file.Plan) || !slices.ContainsFunc(w.states[saved:], func(s state) bool { return s.saved && s.name == file.Plan.Well.Name }) {
		w.fail("the file holds %q, with %d rows of its log", file.Plan.Well.Name, len(file.Plan.Log))
	}
	left, notices := journal.Begin(w.place.plan, filepath.Join(w.place.state, "borewalk"), file.Plan)
	if len(left) > 1 || len(notices) > 0 {
		w.fail("%d journals, %q", len(left), notices)
	}
	got := file
	if len(left) > 0 {
		got = left[0].File
	}
	kept := w.from(func(s state) bool {
		return !s.seen.IsZero() && (s.saved || w.end.tells || ended.Sub(s.seen) >= promise)
	})
	if !slices.ContainsFunc(w.states[kept:], func(s state) bool { return s.name == got.Plan.Well.Name }) {
		w.fail("%q comes back, which is older than %q", got.Plan.Well.Name, w.states[kept].name)
	}
	w.litter(len(left), w.end.tells)
	if len(left) > 0 && w.random.IntN(10) == 0 {
		w.recover(got.Plan.Well.Name)
	}
}

// litter looks for what should not lie about once the next start has tidied: the lock goes with the program, unless it was killed.
func (w *trial) litter(journals int, left bool) {
	entries, err := os.ReadDir(w.place.dir)
	if err != nil {
		w.fail("%v", err)
	}
	for _, e := range entries {
		switch name := e.Name(); {
		case name == "well.toml":
		case strings.HasSuffix(name, ".journal"):
			journals--
		case name == ".well.toml.borewalk-lock" && !left:
		default:
			w.fail("there lies %s", name)
		}
	}
	if journals != 0 {
		w.fail("there lie %v", entries)
	}
}

// recover opens the plan again, recovers, saves, and looks at the file.
func (w *trial) recover(name string) {
	s := beginIn(w.t, w.place.dir, 80, 24, w.place.env(), "-name", "AZ", "well.toml")
	s.Wait("> recover them")
	s.Type(ptytest.Enter)
	s.Wait("recovered what was not saved")
	s.Type(ptytest.Esc) // what was being typed
	s.WaitGone("typing: ")
	s.Type("s")
	s.WaitGone("* not saved")
	s.Type("q")
	s.ExitCode()
	file, err := planfile.Open(w.place.plan)
	if err != nil || file.Plan.Well.Name != name || model.ChangedOutside(file.Plan) {
		w.fail("recovered and saved, the file is %v, %v", file, err)
	}
	w.litter(0, true)
}

// fail ends the trial and says what was done in it.
func (w *trial) fail(format string, args ...any) {
	w.t.Helper()
	var done []string
	for _, s := range w.states {
		text := s.name
		if s.saved {
			text += " saved"
		}
		if s.seen.IsZero() {
			text += " unseen"
		}
		done = append(done, text)
	}
	w.t.Fatalf("%s: %s\nstates: %s", w.end.name, fmt.Sprintf(format, args...), strings.Join(done, ", "))
}
