package clip_test

import (
	"encoding/base64"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/ui/clip"
)

// environment is one that has the variables given and no others.
func environment(set map[string]string) func(string) string {
	return func(name string) string { return set[name] }
}

// decoded is what a terminal makes of sequences that set its clipboard: the text, and how many there were.
func decoded(t interface{ Fatalf(string, ...any) }, sequence string) (text string, n int) {
	for _, part := range strings.Split(sequence, "\x1b]52;c;")[1:] {
		code, _, ok := strings.Cut(part, "\a")
		plain, err := base64.StdEncoding.DecodeString(code)
		if !ok || err != nil || n > 0 && text != string(plain) {
			t.Fatalf("%q: %v", sequence, err)
		}
		text, n = string(plain), n+1
	}
	return text, n
}

// unwrapped is what GNU screen passes on: what stands in the device control strings, put together.
func unwrapped(t interface{ Fatalf(string, ...any) }, sequence string) string {
	text := ""
	for sequence != "" {
		rest, ok := strings.CutPrefix(sequence, "\x1bP")
		inner, after, closed := strings.Cut(rest, "\x1b\\")
		if !ok || !closed {
			t.Fatalf("not wrapped: %q", sequence)
		}
		if len(inner) > 768 { // GNU screen drops longer ones
			t.Fatalf("a string of %d bytes", len(inner))
		}
		text, sequence = text+inner, after
	}
	return text
}

func TestTheSequenceDecodedGivesTheText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringN(0, 400, -1).Draw(t, "text")
		bare, err := clip.Sequence(text, environment(map[string]string{"TERM": "xterm"}))
		if got, n := decoded(t, bare); err != nil || got != text || n != 1 {
			t.Fatalf("bare: %q, %d, %v", got, n, err)
		}
		screen, err := clip.Sequence(text, environment(map[string]string{"TERM": "xterm", "STY": "1.pts"}))
		if got, n := decoded(t, unwrapped(t, screen)); err != nil || got != text || n != 1 {
			t.Fatalf("screen: %q, %d, %v", got, n, err)
		}
		tmux, err := clip.Sequence(text, environment(map[string]string{"TERM": "screen", "TMUX": "/tmp/x"}))
		if got, n := decoded(t, tmux); err != nil || got != text || n != 2 {
			t.Fatalf("tmux: %q, %d, %v", got, n, err)
		}
	})
}

func TestWhatStandsBetween(t *testing.T) {
	const bare, wrapped, strung = "\x1b]52;c;YQ==\a", "\x1bPtmux;\x1b\x1b]52;c;YQ==\a\x1b\\", "\x1bP\x1b]52;c;YQ==\a\x1b\\"
	for _, test := range []struct {
		env  map[string]string
		want string
	}{
		{map[string]string{"TERM": "xterm-256color"}, bare},
		{nil, bare},
		{map[string]string{"TERM": "xterm", "TMUX": "/tmp/x"}, bare + wrapped},
		{map[string]string{"TERM": "tmux-256color"}, bare + wrapped},
		{map[string]string{"TERM": "screen", "TMUX": "/tmp/x", "STY": "1"}, bare + wrapped},
		{map[string]string{"TERM": "screen-256color"}, strung},
		{map[string]string{"TERM": "xterm", "STY": "1.pts-0"}, strung},
	} {
		if got, err := clip.Sequence("a", environment(test.env)); err != nil || got != test.want {
			t.Errorf("%v: %q, %v, want %q", test.env, got, err, test.want)
		}
	}
}

func TestATextTooLongIsNotSent(t *testing.T) {
	env := environment(nil)
	if _, err := clip.Sequence(strings.Repeat("x", 56244), env); err != nil {
		t.Error(err)
	}
	if s, err := clip.Sequence(strings.Repeat("x", 60000), env); !errors.Is(err, clip.ErrTooLong) || s != "" {
		t.Errorf("%d bytes, %v", len(s), err)
	}
}

func TestWhereATextIsKept(t *testing.T) {
	state, temporary := t.TempDir(), t.TempDir()
	t.Setenv("TMPDIR", temporary)
	file := filepath.Join(state, "not a folder")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		name, folder string
		env          map[string]string
	}{
		{"state folder", filepath.Join(state, "borewalk"), map[string]string{"XDG_STATE_HOME": state}},
		{"again", filepath.Join(state, "borewalk"), map[string]string{"XDG_STATE_HOME": state}},
		{"no home", temporary, nil},
		{"nothing can be written there", temporary, map[string]string{"XDG_STATE_HOME": file}},
	} {
		path, err := clip.Keep(test.name, environment(test.env), "linux")
		if err != nil || filepath.Dir(path) != test.folder {
			t.Errorf("%s: %s, %v", test.name, path, err)
			continue
		}
		info, err := os.Stat(path)
		if got, _ := os.ReadFile(path); err != nil || string(got) != test.name || info.Mode().Perm() != 0o600 {
			t.Errorf("%s: %q, %v, %v", test.name, got, info.Mode(), err)
		}
	}
	if left, _ := os.ReadDir(filepath.Join(state, "borewalk")); len(left) != 1 {
		t.Errorf("%d files in the state folder", len(left))
	}
	t.Setenv("TMPDIR", file)
	if path, err := clip.Keep("x", environment(nil), "linux"); err == nil || !strings.Contains(err.Error(), "set HOME") {
		t.Errorf("%q, %v", path, err)
	}
}

func TestTextSaysWhereItIsFrom(t *testing.T) {
	plan := &model.Plan{}
	plan.Well.Name, plan.Well.Revision = "Testling-1", "B"
	got := clip.Text([]string{"Mud at TD: 1.250 sg\x1b[2J"}, plan, time.Date(2026, 3, 1, 6, 0, 0, 0, time.UTC))
	want := "Mud at TD: 1.250 sg [2J\nFrom Testling-1, revision B, plan hash " + model.Hash(plan)[:8] +
		", copied 2026-03-01 06:00 +00:00.\nPlanning aid: verify by independent calculation.\n"
	if got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
