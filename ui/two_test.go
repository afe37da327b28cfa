package ui_test

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model/anyplan"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/ui"
)

// session is a planner that may be open, with what it knows to be in the file: what it read or wrote last.
type session struct {
	computer *planlock.Computer
	planner  *ui.Planner
	knows    string
}

// Whatever two who work on one plan do, in whatever order: open it in each of the ways there are, edit, save, quit, be killed, be
// taken over, with a third program that writes the file or removes the lock: what is in the file is never overwritten by one who has
// not seen it, and one who is open for writing learns at the latest at his save that another has the plan.
func TestWhateverTwoDoNothingIsOverwrittenUnasked(t *testing.T) {
	saved, kept := 0, 0
	rapid.Check(t, func(draw *rapid.T) {
		dir, err := os.MkdirTemp("", "two")
		if err != nil {
			draw.Fatal(err)
		}
		defer os.RemoveAll(dir)
		r := &rigs{plan: filepath.Join(dir, "plan.toml"), running: map[int]bool{}}
		write := func(text string) {
			if err := os.WriteFile(r.plan, []byte(text), 0o644); err != nil {
				draw.Fatal(err)
			}
		}
		write(anyplan.Small)
		lock, _ := planlock.Path(r.plan)
		hosts := []string{"bridge", rapid.SampledFrom([]string{"bridge", "shore"}).Draw(draw, "host")}
		var sessions [2]session
		processes := 0
		for step := range rapid.IntRange(5, 20).Draw(draw, "steps") {
			i := rapid.IntRange(0, 1).Draw(draw, "who")
			s, before := &sessions[i], r.content()
			does := rapid.SampledFrom([]string{"edit", "edit and save", "edit and save", "edit and save", "save", "quit", "kill", "write", "unlock"}).Draw(draw, "does")
			if s.planner == nil {
				does = rapid.SampledFrom([]string{"look", "take", "write", "unlock"}).Draw(draw, "does")
			}
			switch does {
			case "look", "take": // answers the question, if there is one
				file, err := planfile.Open(r.plan)
				if err != nil {
					draw.Fatal(err)
				}
				processes++
				s.computer, s.knows = r.computer(hosts[i], processes), before
				s.planner = ui.New(file, ui.Options{Path: r.plan, Computer: s.computer, Name: fmt.Sprint("P", i)})
				if does == "take" {
					press(s.planner, "down")
				}
				press(s.planner, "enter", "esc") // enter begins an entry where nothing is asked
			case "edit", "save", "edit and save":
				if does != "save" {
					downTo(t, s.planner, "Hole TD")
					press(s.planner, "+")
				}
				if does == "edit" {
					break
				}
				press(s.planner, "s")
				kept++
				if now := r.content(); now != before {
					saved++
					if before != s.knows {
						draw.Fatalf("step %d: P%d overwrites what it has not seen", step, i)
					}
					if held := s.computer.Holder(r.plan, nil); held == nil || held.Owner.Pid != s.computer.Process {
						draw.Fatalf("step %d: P%d saves while another has the plan: %+v", step, i, held)
					}
					s.knows = now
				}
				press(s.planner, "esc")
			case "quit":
				s.planner.Close()
				delete(r.running, s.computer.Process)
				s.planner = nil
			case "kill":
				delete(r.running, s.computer.Process)
				s.planner = nil
			case "write":
				write(fmt.Sprintf("# %d\n%s", step, anyplan.Small))
			case "unlock":
				os.Remove(lock)
			}
			if does != "save" && does != "edit and save" && does != "write" && r.content() != before {
				draw.Fatalf("step %d: %s changes the file", step, does)
			}
		}
	})
	if saved < 20 || kept-saved < 20 {
		t.Errorf("only %d of %d saves wrote something", saved, kept)
	}
}
