package ui

import (
	"flag"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui/canvas"
	"borewalk/ui/schematic"
)

// README holds parts that are made from the program, so that the two cannot part.
func TestREADMEShowsTheProgramAsItIs(t *testing.T) {
	const path = "../README.md"
	old, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	text := string(old)
	for _, part := range []struct{ name, content string }{
		{"screen", "```text\n" + demoScreen(t) + "\n```"},
		{"legend", "- " + strings.Join(schematic.Legend(canvas.UnicodeGlyphs()), "\n- ")},
		{"keys", keysTable()},
	} {
		text = replacePart(t, text, part.name, part.content)
	}
	if text == string(old) {
		return
	}
	if flag.Lookup("update").Value.String() == "true" {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	t.Error("README.md is not as the program is: run go test ./ui -update")
}

func replacePart(t *testing.T, text, name, content string) string {
	t.Helper()
	begin, end := "<!-- "+name+": begin (made by go test ./ui -update) -->", "<!-- "+name+": end -->"
	head, rest, ok := strings.Cut(text, begin)
	_, tail, closed := strings.Cut(rest, end)
	if !ok || !closed {
		t.Fatalf("README.md has lost its part %q", name)
	}
	return head + begin + "\n" + content + "\n" + end + tail
}

func demoScreen(t *testing.T) string {
	t.Helper()
	source, _ := plans.Demo(plans.Default)
	file, err := planfile.Read("demo", source)
	if err != nil {
		t.Fatal(err)
	}
	p := New(file, Options{Title: "demo"})
	for _, r := range "]]" {
		p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	p.Update(tea.KeyMsg{Type: tea.KeyTab})
	p.Update(tea.KeyMsg{Type: tea.KeyTab})
	return p.View()
}

// keysTable is the table of keys for the README, from the bindings that the program obeys.
func keysTable() string {
	var b strings.Builder
	b.WriteString("| key | what it does |\n| --- | --- |\n")
	for _, k := range bindings() {
		b.WriteString("| `" + k.Help().Key + "` | " + k.Help().Desc + " |\n")
	}
	return strings.TrimSuffix(b.String(), "\n")
}
