package ui_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui"
	"borewalk/ui/terminal"
)

var update = flag.Bool("update", false, "write the golden screens anew; look at the difference before you keep it")

// screenOf opens a demo in a window, presses the keys, and returns the planner.
func screenOf(t testing.TB, demo string, width, height int, options ui.Options, keys ...string) *ui.Planner {
	t.Helper()
	text, ok := plans.Demo(demo)
	if !ok {
		t.Fatalf("no demo %q", demo)
	}
	file, err := planfile.Read(demo, text)
	if err != nil {
		t.Fatal(err)
	}
	if options.Title == "" {
		options.Title = "demo"
	}
	if options.Name == "" {
		options.Name = "A. Person"
	}
	if options.Clock == nil {
		options.Clock = func() time.Time { return time.Date(2026, 3, 1, 6, 0, 0, 0, time.UTC) }
	}
	terminal.NarrowAmbiguous()
	p := ui.New(file, options)
	p.Update(tea.WindowSizeMsg{Width: width, Height: height})
	press(p, keys...)
	return p
}

// press sends keys: names of bubbletea's key types, or text typed as it stands; "page mud" turns to a page, which a narrow window may shorten to four letters.
func press(p *ui.Planner, keys ...string) {
	named := map[string]tea.KeyType{
		"enter": tea.KeyEnter, "esc": tea.KeyEsc, "tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab, "up": tea.KeyUp, "down": tea.KeyDown,
		"left": tea.KeyLeft, "right": tea.KeyRight, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "home": tea.KeyHome, "end": tea.KeyEnd,
		"backspace": tea.KeyBackspace, "ctrl+s": tea.KeyCtrlS, "ctrl+r": tea.KeyCtrlR, "ctrl+l": tea.KeyCtrlL, "ctrl+c": tea.KeyCtrlC,
		"ctrl+u": tea.KeyCtrlU,
	}
	for _, k := range keys {
		if page, ok := strings.CutPrefix(k, "page "); ok {
			for n := 0; !strings.Contains(p.View(), "["+strings.ToUpper(page)[:min(4, len(page))]); n++ {
				if n > len(model.Topics()) {
					panic("no page " + page)
				}
				p.Update(tea.KeyMsg{Type: tea.KeyTab})
			}
			continue
		}
		if kind, ok := named[k]; ok {
			p.Update(tea.KeyMsg{Type: kind})
			continue
		}
		for _, r := range k {
			p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
		}
	}
}

func paste(p *ui.Planner, text string) {
	p.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
}

// downTo moves the focus down until the line with it shows a text.
func downTo(t testing.TB, p *ui.Planner, text string) {
	t.Helper()
	press(p, "home")
	for range 200 {
		for _, l := range strings.Split(p.View(), "\n") {
			for i := strings.Index(l, ">"); i >= 0; i = strings.Index(l, ">") {
				l = l[i+1:]
				if strings.HasPrefix(strings.TrimLeft(l, " !"), text) {
					return
				}
			}
		}
		press(p, "down")
	}
	t.Fatalf("no line with %q on\n%s", text, p.View())
}

func TestGoldenScreens(t *testing.T) {
	// A hole that ends higher changes figures and brings findings, and what is being typed is not good.
	typing := []string{"]]", "down", "down", "down", "down", "down", "2085", "enter", "down", "300"}
	tests := []struct {
		name          string
		demo          string
		width, height int
		options       ui.Options
		keys          []string
	}{
		{"first", "ottermast-2", 80, 24, ui.Options{Demo: true}, nil},
		{"hole-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]"}},
		{"mud-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]", "page mud"}},
		{"casing-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]]", "page casing"}},
		{"table-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]", "page mud", "v", "pgdown"}},
		{"window-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]", "v", "v"}},
		{"mud-140", "ottermast-2", 140, 40, ui.Options{}, []string{"]]", "page mud"}},
		{"liner-140", "saltlantern-1", 140, 40, ui.Options{}, []string{"]]]]]", "page casing"}},
		{"mud-100", "saltlantern-1", 100, 30, ui.Options{}, []string{"]]", "page mud"}},
		{"ascii-80", "ottermast-2", 80, 24, ui.Options{ASCII: true}, []string{"]]]]", "page casing"}},
		{"colour-80", "ottermast-2", 80, 24, ui.Options{Colours: 16}, []string{"]]]", "page mud"}},
		{"findings-80", "saltlantern-1", 80, 24, ui.Options{}, []string{"]", "f"}},
		{"help-80", "ottermast-2", 80, 24, ui.Options{}, []string{"?"}},
		{"new-80", "ottermast-2", 80, 24, ui.Options{}, []string{"N"}},
		{"alone-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]", "page mud", "down", "+", "z"}},
		{"keys-of-trials-80", "ottermast-2", 80, 24, ui.Options{ASCII: true}, []string{"]]", "T", "?"}},
		{"small", "ottermast-2", 60, 20, ui.Options{}, nil},
		{"typing-plain-80", "ottermast-2", 80, 24, ui.Options{}, typing},
		{"typing-16-colours-80", "ottermast-2", 80, 24, ui.Options{Colours: 16}, typing},
		{"typing-ascii-plain-80", "ottermast-2", 80, 24, ui.Options{ASCII: true}, typing},
		{"copy-80", "ottermast-2", 80, 24, ui.Options{}, []string{"]]", "page mud", "right", "c"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := screenOf(t, test.demo, test.width, test.height, test.options, test.keys...)
			golden(t, test.name, p.View())
		})
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", "screens", name+".txt")
	got += "\n"
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("the screen differs from %s (run the test with -update and look):\n%s", path, got)
	}
}

func wants(t *testing.T, p *ui.Planner, texts ...string) {
	t.Helper()
	screen := p.View()
	for _, text := range texts {
		if !strings.Contains(screen, text) {
			t.Errorf("the screen lacks %q:\n%s", text, screen)
		}
	}
}

func lacks(t *testing.T, p *ui.Planner, text string) {
	t.Helper()
	if screen := p.View(); strings.Contains(screen, text) {
		t.Errorf("the screen has %q:\n%s", text, screen)
	}
}

func TestTooSmallIgnoresKeysAndComesBack(t *testing.T) {
	p := screenOf(t, "ottermast-2", 60, 20, ui.Options{}, "]]", "d", "d")
	wants(t, p, "60 x 20", "80 x 24")
	p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	wants(t, p, "section 1 of 5")
	lacks(t, p, "not saved")
}

func BenchmarkView140x40(b *testing.B) {
	p := screenOf(b, "ottermast-2", 140, 40, ui.Options{Colours: 16}, "]]", "page mud")
	b.ReportAllocs()
	for b.Loop() {
		p.View()
	}
}
