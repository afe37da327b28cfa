package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"borewalk/plans"
)

// ran calls the program with arguments and returns what it says.
func ran(args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = run(args, &o, &e)
	return code, o.String(), e.String()
}

func TestCallsThatCannotBeFollowed(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"a.toml", "b.toml"}, `"b.toml" is too many`},
		{[]string{"-demo", "ottermast-2", "a.toml"}, "take one of them"},
		{[]string{"-new", "a.toml"}, "-new starts a new plan"},
		{[]string{"-new", "-demo", "ottermast-2"}, "-new starts a new plan"},
		{[]string{"-new", "-print", "text"}, "-new asks"},
		{[]string{"-new", "-check"}, "-new asks"},
		{[]string{"-check", "-print", "text"}, "take one of them"},
		{[]string{"-section", "-1", "-check"}, "counted from 1"},
		{[]string{"-section", "6", "-check"}, "the plan has 5"},
		{[]string{"-units", "furlongs", "-check"}, "furlongs"},
		{[]string{"-print", "pdf"}, "pdf"},
		{[]string{"-demo", "none"}, `there is no demo "none"`},
		{[]string{"none.toml"}, "none.toml: there is no such file"},
		{[]string{"-nothing"}, "-nothing"},
	} {
		code, out, errs := ran(c.args...)
		if code != exitError || out != "" || !strings.Contains(errs, c.want) {
			t.Errorf("%q: exit %d, out %q, errors %q, want exit 1 and %q", c.args, code, out, errs, c.want)
		}
	}
}

// TestACheckOfASectionCountsWhatItPrints: its own stops and the well's, not those of the others.
func TestACheckOfASectionCountsWhatItPrints(t *testing.T) {
	text, _ := plans.Demo("ottermast-2")
	path := filepath.Join(t.TempDir(), "plan.toml")
	bad := strings.Replace(string(text), `density = "1.25 sg"`, `density = "1.90 sg"`, 1)
	if bad == string(text) {
		t.Fatal("the demo's mud is not as this test has it")
	}
	if err := os.WriteFile(path, []byte(bad), 0o600); err != nil {
		t.Fatal(err)
	}
	for section, want := range map[string]int{"0": exitStop, "3": exitStop, "4": exitOK} {
		code, out, _ := ran("-check", "-section", section, path)
		if code != want || strings.Contains(out, "stop 0") == (want == exitStop) {
			t.Errorf("section %s: exit %d, want %d\n%s", section, code, want, out)
		}
	}
}

func TestHelpAndVersion(t *testing.T) {
	if code, _, errs := ran("-help"); code != exitOK || !strings.Contains(errs, "PLAN.toml") {
		t.Errorf("-help: exit %d, %q", code, errs)
	}
	if code, out, _ := ran("-version"); code != exitOK || !strings.HasPrefix(out, "borewalk ") {
		t.Errorf("-version: exit %d, %q", code, out)
	}
}
