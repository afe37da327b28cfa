package ui_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"borewalk/model/anyplan"
	"borewalk/model/planfile"
	"borewalk/ui"
)

// What another does to the file is said after the next edit, with a sign in the header that stays, and asked about by a save before
// anything is overwritten.
func TestWhatAnotherDoesToTheFileIsSaidEarlyAndAskedAbout(t *testing.T) {
	theirs := strings.Replace(anyplan.Small, "450 m", "480 m", 1)
	tests := []struct {
		name             string
		do               func(r *rigs) error
		said, sign, asks string
		offers           []string
	}{
		{"changed", func(r *rigs) error { return os.WriteFile(r.plan, []byte(theirs+"\n"), 0o644) },
			"the file was changed by another program", "! file changed", "the file was changed by another program",
			[]string{"save under another name", "replace what the other has written", "look at what differs", "save mine under another name, then read"}},
		{"removed", func(r *rigs) error { return os.Remove(r.plan) },
			"the file was removed or renamed", "! file removed", "the file was removed or renamed", []string{"save under another name", "write it anew"}},
		{"a folder in its place", func(r *rigs) error { return errors.Join(os.Remove(r.plan), os.Mkdir(r.plan, 0o755)) },
			"a folder, or what is no ordinary file", "! file replaced", "a folder, or what is no ordinary", []string{"save under another name"}},
		{"a link in its place", func(r *rigs) error {
			return errors.Join(os.Rename(r.plan, r.plan+".old"), os.Symlink(r.plan+".old", r.plan))
		}, "the name leads to another file now", "! file elsewhere", "the name leads to another file now", []string{"save under another name", "replace what", "look at"}},
		{"made read-only", func(r *rigs) error { return os.Chmod(r.plan, 0o444) },
			"the file was made read-only", "! write-protected", "the file was made read-only", []string{"save under another name"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			r := newRigs(t)
			p := r.opens(t, "bridge", 1, ui.Options{})
			if err := test.do(r); err != nil {
				t.Fatal(err)
			}
			before := r.content()
			edits(t, p)
			wants(t, p, "451.0 m", "! "+test.said, test.sign, "* not saved")
			pressLooking(p, "down")
			wants(t, p, test.sign)
			lacks(t, p, test.said)
			press(p, "s")
			wants(t, p, append(test.offers, "Not saved: "+test.asks, "do not save now", test.sign)...)
			press(p, "esc", "s", "end", "enter") // do not save now
			lacks(t, p, "Not saved:")
			if r.content() != before {
				t.Error("what the other did is overwritten")
			}
			press(p, "s", "enter", "ctrl+u", filepath.Join(filepath.Dir(r.plan), "mine.toml"), "enter")
			wants(t, p, "saved ")
			lacks(t, p, test.sign)
		})
	}
}

// A file that is written anew with the same content, or touched, is no alarm.
func TestTheSameContentIsNoAlarm(t *testing.T) {
	r := newRigs(t)
	p := r.opens(t, "bridge", 1, ui.Options{})
	r.write(t, anyplan.Small)
	if err := os.Chtimes(r.plan, time.Time{}, time.Now().Add(time.Hour)); err != nil {
		t.Fatal(err)
	}
	edits(t, p)
	lacks(t, p, "!  ")
	lacks(t, p, "file changed")
	press(p, "s")
	wants(t, p, "saved ")
}

// A glance that was begun before a save and comes back after it says nothing: the file was changed by the save itself.
func TestAGlanceFromBeforeASaveIsForgotten(t *testing.T) {
	r := newRigs(t)
	p := r.opens(t, "bridge", 1, ui.Options{})
	downTo(t, p, "Hole TD")
	_, glance := p.Update(keyOf("+"))
	if glance == nil {
		t.Fatal("no glance after an edit")
	}
	press(p, "s")
	wants(t, p, "saved ")
	p.Update(glance())
	lacks(t, p, "file changed")
	if _, glance = p.Update(keyOf("j")); glance != nil {
		t.Error("a glance without an edit")
	}
}

func TestLookingAtWhatDiffersGoesBackToTheQuestion(t *testing.T) {
	r := newRigs(t)
	p := r.opens(t, "bridge", 1, ui.Options{})
	edits(t, p)
	r.write(t, strings.Replace(anyplan.Small, "450 m", "480 m", 1))
	press(p, "s", "down", "down", "enter")
	wants(t, p, "What changed from the file as it is now", "480.0 m to 451.0 m")
	press(p, "esc")
	wants(t, p, "Not saved: the file was changed by another program")
	r.write(t, "not a plan")
	press(p, "enter")
	wants(t, p, "plan.toml")
	if r.content() != "not a plan" {
		t.Error("written over")
	}
}

// Reading the file anew throws nothing away: where something is not saved it is saved under another name first.
func TestReadingAnewLosesNothing(t *testing.T) {
	theirs := strings.Replace(anyplan.Small, "450 m", "480 m", 1)
	r := newRigs(t)
	p := r.opens(t, "bridge", 1, ui.Options{})
	r.write(t, theirs)
	press(p, "s")
	wants(t, p, "Not saved: the file was changed", "read the file anew")
	lacks(t, p, "save mine")
	press(p, "down", "down", "down", "enter")
	wants(t, p, "read anew", "480.0 m")
	lacks(t, p, "not saved")

	edits(t, p)
	r.write(t, anyplan.Small)
	mine := filepath.Join(filepath.Dir(r.plan), "mine.toml")
	press(p, "s", "down", "down", "down", "enter", "esc") // the name is not given: nothing is read
	wants(t, p, "481.0 m", "* not saved")
	press(p, "s", "down", "down", "down", "enter", "ctrl+u", mine, "enter")
	wants(t, p, "450.0 m", "plan.toml")
	lacks(t, p, "not saved")
	if f, err := planfile.Open(mine); err != nil || f.Plan.Sections[0].TD.Text() != "481 m" {
		t.Errorf("what was not saved is lost: %v", err)
	}
	if there(lockOf(t, mine)) || !there(lockOf(t, r.plan)) {
		t.Error("the lock is not on the plan that is shown")
	}
}

// A look from outside at a plan can be renewed, and stays read-only.
func TestReadOnlyStaysSoWhenReadAnew(t *testing.T) {
	r := newRigs(t)
	one := r.opens(t, "bridge", 1, ui.Options{})
	two := r.opens(t, "bridge", 2, ui.Options{})
	press(two, "enter")
	edits(t, one)
	press(one, "s")
	press(two, "s", "down", "enter")
	wants(t, two, "read-only", "451.0 m")
	press(two, "s")
	wants(t, two, "Another had the plan open", "save here after all")
}

func TestASaveThatPartsHardLinksSaysSo(t *testing.T) {
	r := newRigs(t)
	if err := os.Link(r.plan, r.plan+".other"); err != nil {
		t.Skip("no hard links here: ", err)
	}
	p := r.opens(t, "bridge", 1, ui.Options{})
	press(p, "s")
	wants(t, p, "saved ")
	p.Update(sized(200, 40))
	wants(t, p, "hard links, keep what it held before")
}

// However long the name of the file, what the header has to say of it can be read.
func TestTheSignsOutlastALongName(t *testing.T) {
	r := newRigs(t)
	long := filepath.Join(filepath.Dir(r.plan), strings.Repeat("programme-", 12)+".toml")
	if err := os.Rename(r.plan, long); err != nil {
		t.Fatal(err)
	}
	r.plan = long
	p := r.opens(t, "bridge", 1, ui.Options{ReadOnly: true})
	r.write(t, anyplan.Small+"\n")
	edits(t, p)
	wants(t, p, "p.. read-only * not saved ! file changed")
}

// Where nothing can be written the plan is opened, worked out and edited; what cannot be kept is said, and another name offered.
func TestWhereNothingCanBeWrittenThePlanIsOpened(t *testing.T) {
	r := newRigs(t)
	long := filepath.Join(filepath.Dir(r.plan), strings.Repeat("n", 248)+".toml") // no room for the names of lock and temporary file
	if err := os.Rename(r.plan, long); err != nil {
		t.Skip("no such long name here: ", err)
	}
	r.plan = long
	p := r.opens(t, "bridge", 1, ui.Options{})
	wants(t, p, "no lock can be made, others are not told")
	edits(t, p)
	wants(t, p, "451.0 m")
	press(p, "s")
	wants(t, p, "Not saved", "save under another name", "* not saved")
	press(p, "enter", "ctrl+u", filepath.Join(filepath.Dir(long), "short.toml"), "enter")
	wants(t, p, "saved ")
	lacks(t, p, "* not saved")
}

// TestAFailedSaveIsSaidOnce, in the question for the name, which is where another is typed.
func TestAFailedSaveIsSaidOnce(t *testing.T) {
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "S", "ctrl+u", filepath.Join(t.TempDir(), "no", "plan.toml"), "enter")
	wants(t, p, "Save the plan as", "Type another name")
	if n := strings.Count(p.View(), "not saved: "); n != 1 {
		t.Errorf("said %d times:\n%s", n, p.View())
	}
}
