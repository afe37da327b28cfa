package ui_test

import (
	"bytes"
	"encoding/base64"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui"
)

// copier is a planner on the demo whose terminal and state folder can be looked at.
func copier(t *testing.T, env map[string]string) (p *ui.Planner, terminal *bytes.Buffer) {
	t.Helper()
	source, _ := plans.Demo(plans.Default)
	file, err := planfile.Read("demo", source)
	if err != nil {
		t.Fatal(err)
	}
	terminal = &bytes.Buffer{}
	p = ui.New(file, ui.Options{Title: "demo", Terminal: terminal, System: "linux", Env: func(name string) string { return env[name] }})
	return p, terminal
}

// sent is the text that the terminal was given for its clipboard last.
func sent(t *testing.T, terminal *bytes.Buffer) string {
	t.Helper()
	all := terminal.String()
	code, _, ok := strings.Cut(all[strings.LastIndex(all, "\x1b]52;c;")+len("\x1b]52;c;"):], "\a")
	text, err := base64.StdEncoding.DecodeString(code)
	if !ok || err != nil {
		t.Fatalf("%q: %v", all, err)
	}
	return string(text)
}

func TestCopy(t *testing.T) {
	folder := t.TempDir()
	p, terminal := copier(t, map[string]string{"XDG_STATE_HOME": folder, "TERM": "xterm"})
	path := filepath.Join(folder, "borewalk", "copied.txt")
	for _, step := range []struct {
		name string
		keys []string
		want []string
	}{
		{"entry", []string{"]", "]", "c", "enter"}, []string{"section 3: Section name: 17-1/2 in hole"}},
		{"figure", []string{"right", "c", "enter"}, []string{"section 3, hole, Depths: Section starts: 955.0 m, TVD 955.0 m"}},
		{"working", []string{"down", "c", "down", "enter"}, []string{"section 3, hole, Depths\n", "MD, along hole = 2155.0000 m\n", "source: minimum curvature"}},
		{"finding at the foot", []string{"left", "c", "down", "enter"}, []string{"caution section 3: no flow keeps all its limits", "\nSource: "}},
		{"finding in the list", []string{"f", "down", "c", "esc"}, []string{"Weighting material over the active system at the shoe test -18.8 t, least 0.0\nSource: "}},
		{"the working that is open", []string{"right", "w", "c", "esc"}, []string{"section 3, hole, Depths\n", "result = 2155.0000 m\n"}},
		{"page", []string{"tab", "tab", "c", "end", "enter"}, []string{"Mud, section 3 of 5", "Mud density:       1.250 sg", "Over pore        0.080 sg", "Pressures and equivalent mud weights: for the", "Planning aid."}},
	} {
		press(p, "esc")
		terminal.Reset()
		press(p, step.keys...)
		got := sent(t, terminal)
		kept, err := os.ReadFile(path)
		if err != nil || string(kept) != got {
			t.Errorf("%s: the file has %q, %v", step.name, kept, err)
		}
		for _, want := range append(step.want, model.Hash(demoPlan(t))[:8], "lanning aid") {
			if !strings.Contains(got, want) {
				t.Errorf("%s: no %q in\n%s", step.name, want, got)
			}
		}
		if strings.ContainsAny(got, "\x1b\a") {
			t.Errorf("%s: %q", step.name, got)
		}
	}
}

// demoPlan is the plan that copier opens.
func demoPlan(t *testing.T) *model.Plan {
	t.Helper()
	source, _ := plans.Demo(plans.Default)
	file, err := planfile.Read("demo", source)
	if err != nil {
		t.Fatal(err)
	}
	return file.Plan
}

// The path is shown whole wherever it has room, and what could not be done is said.
func TestCopySaysWhatCameOfIt(t *testing.T) {
	long := filepath.Join(t.TempDir(), strings.Repeat("deep", 25))
	p, terminal := copier(t, map[string]string{"XDG_STATE_HOME": long})
	press(p, "c", "enter")
	screen := p.View()
	flat := ""
	for line := range strings.Lines(screen) {
		if _, box, ok := strings.Cut(line, "││"); ok {
			flat += strings.NewReplacer("│", "", "\n", "", " ", "").Replace(box)
		}
	}
	for _, want := range []string{"senttotheterminal,whichmaynottakeit", long + "/borewalk/copied.txt"} {
		if !strings.Contains(flat, want) {
			t.Errorf("no %q:\n%s", want, screen)
		}
	}
	press(p, "esc")
	if strings.Contains(p.View(), "Copied") {
		t.Error("esc does not close it")
	}
	if terminal.Len() == 0 {
		t.Error("nothing was sent")
	}

	t.Setenv("TMPDIR", filepath.Join(long, "none"))
	p, _ = copier(t, nil)
	press(p, "c", "enter")
	if screen := p.View(); !strings.Contains(screen, "not written to a file") || !strings.Contains(screen, "set HOME") {
		t.Errorf("%s", screen)
	}
}
