package ui_test

import (
	"bytes"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui"
)

// TestAFullListSaysThatItIs: where a plan takes no further row the key says why, nothing is done, and nothing breaks.
func TestAFullListSaysThatItIs(t *testing.T) {
	source, _ := plans.Demo("ottermast-2")
	file, err := planfile.Read("demo", source)
	if err != nil {
		t.Fatal(err)
	}
	plan := file.Plan
	last := plan.Sections[len(plan.Sections)-1]
	for len(plan.Sections) < model.SectionGroup().Most() {
		plan.Sections = append(plan.Sections, last)
	}
	for len(plan.Trials) < model.TrialGroup().Most() {
		plan.Trials = append(plan.Trials, model.Trial{Name: "of another", Section: "none"})
	}
	for len(plan.Handovers) < model.HandoverList().Most() {
		plan.Handovers = append(plan.Handovers, model.Handover{From: "A", To: "B", Time: "2027-01-01 06:00"})
	}
	for len(plan.Sections[0].Steps) < model.StepList().Most() {
		plan.Sections[0].Steps = append(plan.Sections[0].Steps, model.StepRow{Step: "drill"})
	}
	before := model.Hash(plan)
	p := ui.New(file, ui.Options{Title: "demo", Charts: someCharts, Play: playSomeJob, Name: "AB"})
	p.Update(tea.WindowSizeMsg{Width: 140, Height: 40})
	for _, c := range []struct {
		name string
		keys []string
	}{
		{"a section", []string{"page hole", "a"}},
		{"a trial", []string{"page hole", "T", "a", "t", "r", "y", "enter"}},
		{"a handover", []string{"H", "s", "A", "enter", "B", "enter"}},
		{"an operation", []string{"W", "a", "x", "enter"}},
	} {
		press(p, c.keys...)
		if screen := p.View(); !strings.Contains(screen, "at most") {
			t.Errorf("%s: it is not said that there is no room:\n%s", c.name, screen)
		}
		press(p, "esc", "esc", "esc")
		p.View()
		if model.Hash(plan) != before {
			t.Fatalf("%s was added", c.name)
		}
	}
}

// TestALongTextKeepsItsEnd: an entry of a file is not cut by opening it.
func TestALongTextKeepsItsEnd(t *testing.T) {
	source, _ := plans.Demo("ottermast-2")
	long := "the beginning" + strings.Repeat(" word", 300) + " the end"
	file, err := planfile.Read("demo", bytes.Replace(source, []byte(`"Ottermast"`), []byte(`"`+long+`"`), 1))
	if err != nil {
		t.Fatal(err)
	}
	p := ui.New(file, ui.Options{Title: "demo"})
	p.Update(tea.WindowSizeMsg{Width: 140, Height: 40})
	press(p, "page well")
	downTo(t, p, "Field")
	press(p, "enter", "!", "enter")
	if got := file.Plan.Well.Field; got != long+"!" {
		t.Errorf("%d characters of %d: %s", len(got), len(long)+1, got)
	}
}
