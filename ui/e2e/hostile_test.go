//go:build !windows

package e2e_test

import (
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui/ptytest"
)

// driving is text that would drive a terminal, turn what is shown around, or hide in it.
const driving = "\x1b[2J\x1b]0;owned\a\x1b[31m\u009b5m\u0090q\u202eright\u200b\u2066\ufeffto\r\n\tleft\x00\x7f" + "e\u0301\u0301\u0301 漢字 🛢 \U000e0041ﷺ"

// hostilePlan writes the demo with such text in every text, among unknown keys, and in a remark, into a file that is called so too.
func hostilePlan(t *testing.T) (dir, name string) {
	t.Helper()
	source, _ := plans.Demo("ottermast-2")
	file, err := planfile.Read("demo", source)
	if err != nil {
		t.Fatal(err)
	}
	model.Walk(file.Plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			ref := model.Ref{Group: g, Field: f, Place: at}
			if old := ref.Get(file.Plan); f.Type == model.TextField && g.Name != "change" && f.Key != "step" && f.Key != "section" {
				ref.Set(file.Plan, model.Entry{Text: driving + old.Text})
			}
		}
		return true
	})
	text, err := file.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	text = append(text, "\n# \u009b2J \u202e\n[\"\\u001b[2J\u009b2J\u202e\"]\n\"\\u0007\" = \"\\u001b]0;owned\\u0007\"\n"...)
	dir, name = t.TempDir(), "\x1b[2J\u009b2J\u202e\u200bplan\r.toml"
	if err := os.WriteFile(filepath.Join(dir, name), text, 0o600); err != nil {
		t.Skip("no such name can be given to a file here:", err)
	}
	return dir, name
}

// TestNothingOfTheCommandLineDrivesTheTerminal: what is quoted of it, file names above all, is harmless.
func TestNothingOfTheCommandLineDrivesTheTerminal(t *testing.T) {
	dir, name := hostilePlan(t)
	word := strings.ReplaceAll(driving, "\x00", "")
	if err := os.Symlink("loop.toml", filepath.Join(dir, "loop.toml")); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{
		{word}, {word + ".toml"}, {"-" + word}, {"-demo", word}, {"-print", word}, {"-paper", word}, {"-units", word}, {"-section", word}, {"-since", word, "-paper", "change-note"}, {"plan.toml", word},
		{"-paper", "comparison", "-against", word}, {"-check", word}, {"-check", "loop.toml"}, {"-check", "."}, {"-check", "/dev/zero"}, {"-check", name}, {"-print", "text", name}, {"-print", "markdown", name},
		{"-print", "csv", name}, {"-print", "json", name},
	} {
		run := exec.Command(program, args...)
		run.Dir = dir
		out, err := run.CombinedOutput()
		for _, r := range strings.NewReplacer("\n", "", "\t", "", "\f", "", "\r\n", "").Replace(string(out)) { // papers have pages, and CSV its own line ends
			if unicode.In(r, unicode.Cc, unicode.Bidi_Control) || r == utf8.RuneError || r == 0x200b || r == 0xfeff {
				t.Errorf("%q sends %U", args, r)
				break
			}
		}
		if known := strings.Contains(strings.Join(args, " "), name); known != (err == nil || run.ProcessState.ExitCode() == 2) {
			t.Errorf("%q: %v, %.200s", args, err, out)
		}
	}
}

// sequence is a control sequence, and what of it says which one.
var (
	sequence = regexp.MustCompile("\x1b(?:\\[[0-9;?>=]*[ -/]*[@-~]|\\][^\x07\x1b]*(?:\x07|\x1b\\\\)|[PX^_][^\x1b]*\x1b\\\\|[ -/]*[0-~])|[\x00-\x1f\x7f]")
	digits   = regexp.MustCompile(`[0-9]+`)
)

// sent returns the control sequences in an output, without their numbers, and the text between them.
func sent(output string) (controls map[string]bool, text string) {
	controls = map[string]bool{}
	text = sequence.ReplaceAllStringFunc(output, func(s string) string {
		controls[digits.ReplaceAllString(s, "n")] = true
		return ""
	})
	return controls, text
}

// walkAll turns to every page, view and overlay that the keys of a page reach, edits an entry, and saves.
func walkAll(s *ptytest.Session) {
	key := func(screen string) string { return screen[strings.LastIndexByte(screen, '\n')+1:] }
	page := func() {
		s.WaitFor("a page", func(screen string) bool { return strings.Contains(key(screen), "? help") })
	}
	open := func(keys string) {
		s.Type(keys)
		s.WaitFor("what "+keys+" opens", func(screen string) bool { return !strings.Contains(key(screen), "? help") })
		s.Type(ptytest.Esc)
		page()
	}
	page()
	for range 12 { // once round the pages
		for _, keys := range []string{"v", "v", "v", "v", ptytest.End, ptytest.Tab} {
			s.Type(keys)
			s.Settle(20 * time.Millisecond) // so that each is drawn; where two keys make one frame there is but less to see
		}
	}
	for _, keys := range []string{"?", "f", "C", "L", "H", "T", "O", "S", "!", "W"} {
		open(keys)
	}
	open(ptytest.Right + "w")
	typeKeys(s, ptytest.Left, ptytest.Home)
	for range 3 {
		typeKeys(s, "+", ptytest.Down)
	}
	typeKeys(s, "s", ptytest.Paste(driving), ptytest.Enter)
	s.Wait("saved ")
	typeKeys(s, "q")
	s.ExitCode()
}

// A plan whose every text is hostile, in a file with a hostile name, is walked through page by page: the terminal receives the sequences
// that a walk through the demo sends it, and no other.
func TestNothingOfAPlanDrivesTheTerminal(t *testing.T) {
	source, _ := plans.Demo("ottermast-2")
	tame := t.TempDir()
	if err := os.WriteFile(filepath.Join(tame, "plan.toml"), append(source, "# a remark\n[unknown]\nkey = 1\n"...), 0o600); err != nil {
		t.Fatal(err)
	}
	demo := beginIn(t, tame, 140, 40, nil, "plan.toml")
	walkAll(demo)
	usual, _ := sent(string(demo.Output()))
	for _, mode := range []struct {
		name string
		args []string
	}{{"Unicode", nil}, {"ASCII", []string{"-ascii"}}} {
		t.Run(mode.name, func(t *testing.T) {
			dir, name := hostilePlan(t)
			hostile := beginIn(t, dir, 140, 40, nil, append(mode.args, name)...)
			walkAll(hostile)
			hostile.Inspect(func(s *ptytest.Screen) {
				if unknown := s.Unknown(); len(unknown) > 0 {
					t.Errorf("the screen does not know %q", unknown)
				}
			})
			controls, text := sent(string(hostile.Output()))
			for c := range maps.Keys(controls) {
				if !usual[c] {
					t.Errorf("the terminal receives %q", c)
				}
			}
			for _, r := range text {
				if unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) || r == utf8.RuneError || len(mode.args) > 0 && r >= 0x7f {
					t.Fatalf("the terminal receives %U", r)
				}
			}
			if !strings.Contains(text, "left") {
				t.Error("nothing of the hostile text is seen: the walk shows nothing")
			}
		})
	}
}
