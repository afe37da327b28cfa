package ui

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestThePromisesAreHeld: each row of the table of what the terminal is promised says by what it is held, and every test, fuzz target and
// benchmark that DEVELOPERS.md names is there.
func TestThePromisesAreHeld(t *testing.T) {
	text, err := os.ReadFile("../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	for n := 1; n <= 44; n++ {
		row := regexp.MustCompile(fmt.Sprintf(`(?m)^\| %d \| [^|]+ \| [^|]{12,} \|$`, n))
		if len(row.FindAll(text, -1)) != 1 {
			t.Errorf("promise %d has no row that says what holds it", n)
		}
	}
	known := testNames(t, "..")
	for _, name := range regexp.MustCompile("`((?:Test|Fuzz|Benchmark)[A-Za-z0-9_]+)`").FindAllSubmatch(text, -1) {
		if !known[string(name[1])] {
			t.Errorf("DEVELOPERS.md names %s, which is not there", name[1])
		}
	}
}

// testNames returns the names of all tests, fuzz targets and benchmarks below a folder.
func testNames(t *testing.T, root string) map[string]bool {
	t.Helper()
	names, declared := map[string]bool{}, regexp.MustCompile(`(?m)^func ((?:Test|Fuzz|Benchmark)[A-Za-z0-9_]+)\(`)
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		for _, name := range declared.FindAllSubmatch(text, -1) {
			names[string(name[1])] = true
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return names
}
