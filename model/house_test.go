package model_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// TestModelKnowsNobodyAbove: the plan knows neither what is computed from it nor a screen; only the plan's file is
// written, in planfile, and files are read, in infile.
func TestModelKnowsNobodyAbove(t *testing.T) {
	files := 0
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		files++
		folder := filepath.ToSlash(filepath.Dir(path))
		reader, disk := folder == "planfile" || folder == "jointfile", folder == "planfile" || folder == "infile"
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range file.Imports {
			name, _ := strconv.Unquote(i.Path.Value)
			switch {
			case folder == "anyplan" && (name == "borewalk/plans" || name == "borewalk/model"): // for tests, which begin with a demo
			case strings.HasPrefix(name, "borewalk/") && !strings.HasPrefix(name, "borewalk/model/") && name != "borewalk/model":
				t.Errorf("%s imports %s", path, name)
			case name == "borewalk/model" && !reader:
				t.Errorf("%s imports %s", path, name)
			case strings.Contains(name, "charmbracelet"):
				t.Errorf("%s imports %s", path, name)
			case (name == "os" || strings.HasPrefix(name, "net") || strings.HasPrefix(name, "math/rand")) && !disk:
				t.Errorf("%s imports %s", path, name)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if files < 30 {
		t.Errorf("only %d files", files)
	}
}
