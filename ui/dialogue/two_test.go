package dialogue_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"borewalk/model/anyplan"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/model/process"
	"borewalk/ui/dialogue"
)

// rig is a computer with one plan, and the processes that run on it.
type rig struct {
	t       *testing.T
	plan    string
	running map[int]bool
	last    int // the number of a process
}

// next returns the number of a further process.
func (r *rig) next() int {
	r.last++
	return r.last
}

func newRig(t *testing.T) *rig {
	r := &rig{t: t, plan: filepath.Join(t.TempDir(), "plan.toml"), running: map[int]bool{}}
	r.write(anyplan.Small)
	return r
}

func (r *rig) write(text string) {
	r.t.Helper()
	if err := os.WriteFile(r.plan, []byte(text), 0o644); err != nil {
		r.t.Fatal(err)
	}
}

func (r *rig) content() string {
	text, _ := os.ReadFile(r.plan)
	return string(text)
}

func (r *rig) locked() bool {
	path, err := planlock.Path(r.plan)
	if err != nil {
		r.t.Fatal(err)
	}
	_, err = os.Lstat(path)
	return err == nil
}

// speaker is a session with what it said to the last line.
type speaker struct {
	*dialogue.Session
	t   *testing.T
	out *bytes.Buffer
}

// opens opens the plan in a process, and greets.
func (r *rig) opens(pid int, name string, o dialogue.Options) speaker {
	r.t.Helper()
	file, err := planfile.Open(r.plan)
	if err != nil {
		r.t.Fatal(err)
	}
	r.running[pid] = true
	now := time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)
	o.Path, o.Name, o.Clock = r.plan, name, func() time.Time { return now }
	o.Computer = &planlock.Computer{Computer: process.Computer{Host: "rig", Machine: "rig", Boot: "rig", Look: func(n int) (string, bool) { return "", r.running[n] }},
		User: "crew", Process: pid, Now: o.Clock}
	var out bytes.Buffer
	s := speaker{dialogue.New(file, &out, o), r.t, &out}
	s.Greet()
	return s
}

// says lets the session hear a line, and fails unless the answer holds what is wanted.
func (s speaker) says(line string, wanted ...string) {
	s.t.Helper()
	s.out.Reset()
	s.Hear(line)
	s.said(line, wanted...)
}

func (s speaker) said(line string, wanted ...string) {
	s.t.Helper()
	for _, want := range wanted {
		if !strings.Contains(s.out.String(), want) {
			s.t.Errorf("%s: no %q in\n%s", line, want, s.out)
		}
	}
}

const deeper = "section[1].td = 460 m"

// The second reads who has the plan, saves under another name only, and each lock goes with its owner.
func TestTwoOpenOnePlanInLines(t *testing.T) {
	r := newRig(t)
	one := r.opens(1, "AM", dialogue.Options{})
	two := r.opens(2, "BT", dialogue.Options{})
	two.said("greeting", "plan.toml, read-only", "AM (crew) on rig has it open: process 1, since 2026-03-01 12:00 UTC, just now.", "It runs on this computer.", "take over takes it from the other")
	two.says(deeper, "460.0 m, was")
	two.says("save", "not saved: read-only, another had the plan open", "take over", "save as FILE")
	if r.content() != anyplan.Small {
		t.Error("a read-only plan is written")
	}
	two.says("save as "+filepath.Join(filepath.Dir(r.plan), "mine"), "saved ")
	two.Close()
	one.says(deeper, "460.0 m, was")
	one.says("save", "saved ")
	one.says("take over", "nobody else has the plan open")
	one.Close()
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(r.plan), ".*")); len(left) > 0 {
		t.Errorf("left behind: %s", left)
	}
}

// Who takes a plan over reads what was saved meanwhile, the other is told after an edit and at a save, and overwrites nothing unasked.
func TestATakeOverInLines(t *testing.T) {
	r := newRig(t)
	one := r.opens(1, "AM", dialogue.Options{})
	two := r.opens(2, "BT", dialogue.Options{})
	one.says(deeper, "460.0 m, was")
	one.says("save", "saved ")
	two.says("take over", "the plan is taken over", "is read anew")
	two.says("section[1].td", "460.0 m")
	two.says("section[1].td = 470 m", "470.0 m, was 460.0 m")
	two.says("save", "saved ")
	theirs := r.content()

	one.says("section[1].td = 480 m", "480.0 m, was 460.0 m", "! another has taken the plan over: BT (crew)")
	one.says("save", "not saved: another has taken the plan over. BT (crew) on rig")
	one.says("save", "not saved: read-only, another has taken the plan over")
	one.says("take over", "the plan is taken over")
	one.says("save", "the file was changed by another program", "1. replace what the other has written")
	one.says("2", "1 entry differs from the file as it is now", "480.0 m, in the file 470.0 m", "1. replace")
	if r.content() != theirs {
		t.Error("what the other saved is lost")
	}
	one.says("1", "saved ")
	if !strings.Contains(r.content(), "480 m") {
		t.Error(r.content())
	}
}

// A script is not asked: it does not save over what another has open, has taken over, or has changed.
func TestAScriptSavesOverNobody(t *testing.T) {
	r := newRig(t)
	other := filepath.Join(filepath.Dir(r.plan), "other.toml")
	script := r.opens(1, "AM", dialogue.Options{Script: true})
	script.says(deeper, "460.0 m, was")
	r.write(strings.Replace(anyplan.Small, "450 m", "490 m", 1))
	theirs := r.content()
	script.says("save", "not saved: the file was changed by another program; save as FILE saves under another name")
	script.says("yes", "is no word")
	if r.content() != theirs {
		t.Error("what the other saved is lost")
	}
	r.plan = other
	r.write(anyplan.Small)
	r.opens(2, "BT", dialogue.Options{})
	script.says("save as "+other, "not saved: BT (crew) on rig has "+other+" open; choose another name")
	if r.content() != anyplan.Small || script.Refused() != 3 || !script.Lost() {
		t.Errorf("refused %d, %s", script.Refused(), r.content())
	}
}

// At a keyboard it is asked, and takes the other plan over with its lock.
func TestSavingOverAPlanThatAnotherHasOpen(t *testing.T) {
	r := newRig(t)
	one := r.opens(1, "AM", dialogue.Options{})
	mine := r.plan
	r.plan = filepath.Join(filepath.Dir(mine), "other.toml")
	r.write(anyplan.Small)
	two := r.opens(2, "BT", dialogue.Options{})
	one.says(deeper, "460.0 m, was")
	one.says("save as "+r.plan, "BT (crew) on rig has "+r.plan+" open; replace it all the same?")
	one.says("no", "left as it is")
	one.says("save as "+r.plan, "replace it all the same?")
	one.says("yes", "saved ")
	two.says(deeper, "! another has taken the plan over: AM (crew)")
	one.Close()
	two.Close()
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(r.plan), ".*")); len(left) > 0 {
		t.Errorf("left behind: %s", left)
	}
}

// What becomes of the file is said after an edit, once, and asked about at a save.
func TestTheFileIsChangedUnderneathInLines(t *testing.T) {
	r := newRig(t)
	s := r.opens(1, "AM", dialogue.Options{})
	r.write(strings.Replace(anyplan.Small, "450 m", "1480 m", 1))
	s.says(deeper, "! the file was changed by another program; save asks what to do")
	s.says("section[1].td = 470 m", "470.0 m")
	if strings.Contains(s.out.String(), "!") {
		t.Errorf("said again: %s", s.out)
	}
	if err := os.Remove(r.plan); err != nil {
		t.Fatal(err)
	}
	s.says("undo", "! the file was removed or renamed")
	s.says("save", "write it anew under its name? yes or no")
	s.says("yes", "saved ")
	if !strings.Contains(r.content(), "460 m") {
		t.Error(r.content())
	}
}

// Read-only on request makes no lock, and saves under another name only; so does a file that is write-protected. Of a program that
// has ended the lock is taken over with a word; a new plan gives the lock of the one before back.
func TestReadOnlyAndTheLocksOfTheDeadInLines(t *testing.T) {
	r := newRig(t)
	one := r.opens(1, "AM", dialogue.Options{ReadOnly: true})
	one.said("greeting", "plan.toml, read-only")
	if r.locked() {
		t.Error("a lock is made")
	}
	one.says("take over", "opened with -read-only")
	one.says("save", "not saved: read-only, the plan was opened with -read-only; save as FILE")
	one.says("save as "+r.plan, "not saved: read-only")
	r.opens(2, "BT", dialogue.Options{})
	r.running[2] = false
	three := r.opens(3, "CU", dialogue.Options{})
	three.said("greeting", "process 2 ended without closing the plan; its lock is taken over")
	for _, answer := range []string{"new", "", "", "30 m", "100 m", "", ""} {
		three.says(answer)
	}
	three.said("new", "section 1 of")
	if r.locked() {
		t.Error("a plan that is not open any more is locked")
	}
	if err := os.Chmod(r.plan, 0o444); err != nil {
		t.Fatal(err)
	}
	four := r.opens(4, "DV", dialogue.Options{})
	four.said("greeting", "read-only: the file is write-protected")
	four.says("take over", "not taken over: the file is write-protected")
	four.says("save", "not saved: read-only, the file is write-protected; save as FILE")
}
