package dialogue_test

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"borewalk/model/anyplan"
	"borewalk/model/journal"
	"borewalk/model/planfile"
	"borewalk/ui/dialogue"
)

// crashing is a run of the dialogue on a plan, with a journal.
type crashing struct {
	speaker
	keeper *journal.Keeper
}

// work opens the plan after those before were killed, with what they left of it.
func (r *rig) work(left ...*journal.Found) crashing {
	r.t.Helper()
	clear(r.running)
	keeper := journal.NewKeeper("", func(fault any, stack []byte) { r.t.Errorf("%v\n%s", fault, stack) })
	r.t.Cleanup(func() { keeper.Flush(10 * time.Second) }) // before the folders go
	return crashing{r.opens(r.next(), "A. Person", dialogue.Options{Journal: keeper, Left: left}), keeper}
}

// left returns the one journal that lies beside the plan, nil for none.
func (s crashing) left(r *rig) *journal.Found {
	s.t.Helper()
	if !s.keeper.Flush(10 * time.Second) {
		s.t.Fatal("the journal is not written")
	}
	paths, _ := filepath.Glob(filepath.Join(filepath.Dir(r.plan), ".*.journal"))
	if len(paths) == 0 {
		return nil
	}
	f, err := journal.Read(paths[0])
	if err != nil || len(paths) > 1 {
		s.t.Fatal(paths, err)
	}
	return f
}

func depth(f *planfile.File) string { return f.Plan.Sections[0].TD.Text() }

// Whatever was answered is in the journal: an edit, undo, redo, a reason. A save and undoing all leave none.
func TestWhatWasAnsweredIsKept(t *testing.T) {
	r := newRig(t)
	s := r.work()
	for _, step := range []struct{ line, want string }{
		{deeper, "460 m"}, {"section[1].td = 470 m", "470 m"}, {"undo", "460 m"}, {"redo", "470 m"}, {"why softer than thought", "470 m"},
		{"save", ""}, {"undo", "460 m"}, {"redo", ""}, {"section[1].td = 480 m", "480 m"}, {"where", "480 m"},
	} {
		s.says(step.line)
		f := s.left(r)
		if got := ""; f != nil {
			if got = depth(f.File); got != step.want {
				t.Errorf("%s: the journal holds %s, want %q", step.line, got, step.want)
			}
		} else if step.want != "" {
			t.Errorf("%s: no journal, want %s", step.line, step.want)
		}
		if f != nil && step.line[:3] == "why" && (f.Pending == 0 || f.File.Plan.Log[f.Pending-1].Why != "softer than thought") {
			t.Errorf("the reason is not kept: %+v", f.File.Plan.Log)
		}
	}
}

// What an earlier run left is named in one line, can be looked at and taken up, and is the file's after a save.
func TestWhatWasNotSavedIsRecoveredInLines(t *testing.T) {
	r := newRig(t)
	before := r.work()
	before.says(deeper)
	f := before.left(r)
	if f == nil {
		t.Fatal("no journal")
	}
	f.Typing, f.Typed = "section[1].rathole", "7"
	s := r.work(f)
	line := "The program ended with changes to the plan that were not saved: 2026-03-01 12:00 UTC, by A. Person, on this computer. 1 entry differs from the file; " +
		"section 1: Rathole below the shoe, full size [7] was being typed. The file is as it was when the changes were begun. Say recover, differs, discard, or later.\n"
	s.said("greeting", line)
	s.says("differs", "when the program ended, and what it is now:\nsection 1: Total depth of the bit, along hole: 460.0 m, now 450.0 m\n")
	s.says("section[1].td = 455 m", "455.0 m")
	s.says("recover", "not recovered: it would take the place of what you have entered since")
	s.says("undo", "450.0 m")
	s.says("recover", "recovered what was not saved; save saves it\nsection 1: Rathole below the shoe, full size [7] was being typed: it is not set\n")
	s.says("section[1].td", "460.0 m")
	if s.left(r) == nil || !s.Lost() {
		t.Error("what was recovered is not kept, or counts as saved")
	}
	s.says("recover", "nothing was left unsaved")
	s.says("save", "saved ")
	if s.left(r) != nil || !strings.Contains(r.content(), "460 m") || !strings.Contains(r.content(), "A. Person") {
		t.Errorf("a journal is left, or\n%s", r.content())
	}
}

// What is left is thrown away after asking, in a script at once, and stays where it is told to, or nothing is said.
func TestWhatWasNotSavedIsDiscardedInLines(t *testing.T) {
	r := newRig(t)
	s := r.work()
	s.says(deeper)
	f := s.left(r)
	put := r.work(f)
	put.says("later", "asked again at the next start")
	put.says("differs", "460.0 m, now 450.0 m")
	again := r.work(f)
	again.says("discard", "discard 1 changed entry for good? yes or no")
	again.says("no", "left as it is")
	if s.left(r) == nil {
		t.Fatal("it is gone")
	}
	again.says("discard")
	again.says("yes", "discarded what was not saved")
	if s.left(r) != nil {
		t.Error("it lies there still")
	}
	s.says("section[1].td = 470 m")
	r.opens(1, "A. Person", dialogue.Options{Script: true, Left: []*journal.Found{s.left(r)}}).says("discard", "discarded what was not saved")
	if s.left(r) != nil {
		t.Error("it lies there still")
	}
}

// A file that was changed since is said, and a save asks before it takes its place.
func TestRecoveringFromAnotherFileInLines(t *testing.T) {
	r := newRig(t)
	before := r.work()
	before.says(deeper)
	f := before.left(r)
	r.write(strings.Replace(anyplan.Small, "36 in", "42 in", 1))
	s := r.work(f)
	s.said("greeting", "2 entries differ", "The file was changed since the changes were begun")
	s.says("recover", "recovered")
	s.says("save", "the file was changed by another program", "1. replace what the other has written")
	if strings.Contains(r.content(), "460 m") {
		t.Error("it is written unasked")
	}
}

// However the dialogue ends, what is not saved is kept and that is said; left on purpose it leaves nothing.
func TestEndsOfADialogueAndItsJournal(t *testing.T) {
	for _, test := range []struct {
		name  string
		lines []string // the last ones; then the input ends
		sig   syscall.Signal
		kept  bool
		want  string
	}{
		{"the input ends", []string{deeper, "", ""}, 0, true, "the input has ended; changes not saved, kept for the next start: 1\nnot saved: section 1: Total depth of the bit"},
		{"hung up", []string{deeper}, syscall.SIGHUP, true, "ended by a signal, hangup; changes not saved, kept for the next start: 1\nnot saved: "},
		{"terminated", []string{deeper}, syscall.SIGTERM, true, "kept for the next start: 1\n"},
		{"saved", []string{deeper, "save"}, syscall.SIGTERM, false, "saved "},
		{"told to lose", []string{deeper, "quit", "2"}, 0, false, "2. quit and lose"},
		{"a fault", []string{deeper, "section[1].td = 13 m"}, 0, true, "460.0 m"},
	} {
		t.Run(test.name, func(t *testing.T) {
			r := newRig(t)
			keeper := journal.NewKeeper("", func(fault any, stack []byte) { t.Errorf("%v\n%s", fault, stack) })
			file, err := planfile.Open(r.plan)
			if err != nil {
				t.Fatal(err)
			}
			var out bytes.Buffer
			accepted := 0
			d := dialogue.New(file, &out, dialogue.Options{Path: r.plan, Name: "A", Journal: keeper, Accepted: func() {
				if accepted++; accepted > 1 {
					panic("a fault in an edit")
				}
			}})
			lines, typing := io.Pipe()
			signals := make(chan os.Signal)
			go func() {
				for _, l := range test.lines {
					if l == "" {
						break
					}
					_, _ = typing.Write([]byte(l + "\n"))
				}
				if test.sig != 0 {
					_, _ = typing.Write([]byte("where\n")) // once this is taken the lines before it are answered
					signals <- test.sig
					return
				}
				typing.Close()
			}()
			end := d.Run(lines, dialogue.Signals{Dialogue: signals})
			found, _ := filepath.Glob(filepath.Join(filepath.Dir(r.plan), ".*.journal"))
			if end.Kept != test.kept || end.Lost || test.kept != (len(found) == 1) || !strings.Contains(out.String(), test.want) {
				t.Errorf("end %+v, journals %v\n%s", end, found, out.String())
			}
			if (end.Fault != nil) != (test.name == "a fault") || test.sig != 0 && end.Signal != test.sig {
				t.Errorf("end %+v", end)
			}
		})
	}
}

// Where nothing can be kept that is said with the next answer, and at the end what is lost.
func TestWhatCannotBeKeptIsSaid(t *testing.T) {
	r := newRig(t)
	file, err := planfile.Open(r.plan)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	keeper := journal.NewKeeper("", func(fault any, stack []byte) { t.Errorf("%v\n%s", fault, stack) })
	s := crashing{speaker{dialogue.New(file, &out, dialogue.Options{Title: "demo", Journal: keeper}), t, &out}, keeper} // a plan without a file, and no folder
	s.says(deeper, "460.0 m")
	keeper.Flush(10 * time.Second)
	s.says("where", "changes are not kept against a crash, so save often: there is no folder for it")
	s.says("where", "section 1")
	if strings.Contains(out.String(), "crash") {
		t.Error("said again")
	}
	s.Lose()
	s.said("the end", "changes not saved and lost: 1\nlost: section 1")
}

// Who begins a new plan hears first of what was left, and can answer that; a script's first line is an answer to the first question.
func TestWhatWasNotSavedBeforeANewPlan(t *testing.T) {
	r := newRig(t)
	s := r.work()
	s.says(deeper)
	left := []*journal.Found{s.left(r)}
	one := r.opens(1, "AM", dialogue.Options{Fresh: true, Left: left})
	one.said("greeting", "Say recover, differs, discard, or later.\nsay new to begin the new plan\n")
	one.says("recover", "recovered what was not saved")
	r.opens(2, "BT", dialogue.Options{Fresh: true, Left: left, Script: true}).said("greeting", "Say recover", "question 1 of 6")
}
