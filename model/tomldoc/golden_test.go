package tomldoc

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the files in testdata/rewrite anew")

// TestGolden changes the document in the part "before" of each file by the
// commands in "change", and compares the outcome with "after", or the error
// with "error".
func TestGolden(t *testing.T) {
	files, err := filepath.Glob("testdata/rewrite/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatalf("no golden files: %v", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			parts := partsOf(string(text))
			d := mustParse(t, parts["before"])
			w := wantOf(d.Root(), planSchema())
			for command := range strings.Lines(parts["change"]) {
				change(t, &w, strings.TrimSpace(command))
			}
			name, got := "after", ""
			if out, err := d.Rewrite(w); err != nil {
				name, got = "error", err.Error()+"\n"
			} else {
				got = string(out)
			}
			if *update {
				text := fmt.Sprintf("%s-- change --\n%s-- before --\n%s-- %s --\n%s",
					parts[""], parts["change"], parts["before"], name, got)
				if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if want := parts[name]; got != want {
				t.Errorf("%s:\n%s\nwant:\n%s", name, got, want)
			}
		})
	}
}

// partsOf parts a golden file at its lines of the form "-- name --". What comes
// before the first is the part without a name.
func partsOf(text string) map[string]string {
	parts := map[string]string{}
	name := ""
	for line := range strings.Lines(text) {
		if rest, ok := strings.CutPrefix(line, "-- "); ok && strings.HasSuffix(rest, " --\n") {
			name = strings.TrimSuffix(rest, " --\n")
			continue
		}
		parts[name] += line
	}
	return parts
}
