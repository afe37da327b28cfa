package calc_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// source is one parsed Go file that is no test, with the folder that it stands in, counted from the module's root.
type source struct {
	folder, name string
	file         *ast.File
	set          *token.FileSet
}

// sources parses the module's Go files but for tests.
func sources(t *testing.T) (list []source) {
	t.Helper()
	root := ".."
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && path != root && (strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata") {
			return filepath.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		folder, _ := filepath.Rel(root, filepath.Dir(path))
		list = append(list, source{filepath.ToSlash(folder), path, file, set})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(list) < 50 {
		t.Fatalf("only %d files", len(list))
	}
	return list
}

// within reports whether a folder is another or stands in it.
func within(folder, of string) bool { return folder == of || strings.HasPrefix(folder, of+"/") }

// imports returns the paths that a file imports.
func (s source) imports() (paths []string) {
	for _, i := range s.file.Imports {
		path, _ := strconv.Unquote(i.Path.Value)
		paths = append(paths, path)
	}
	return paths
}

// floors lists what each floor may import of this module; the longest folder that holds a file decides.
var floors = map[string][]string{
	".":              {"ui", "calc", "model", "plans"},
	"ui":             {"ui", "calc", "model", "plans"},
	"calc":           {"calc", "model"},
	"calc/state":     {"calc/bore", "calc/column", "calc/friction"}, // fluids in a well: made of the others
	"calc/swab":      {"calc/friction", "calc/root"},
	"calc/kill":      {"calc/state", "calc/friction", "calc/gas", "calc/root"}, // a kick goes round a well on state
	"calc/drag":      {"calc/root"},
	"calc/seats":     {"calc/column"},
	"calc/tripping":  {"calc/bore"},
	"calc/killsheet": {"calc/bore", "calc/column", "calc/gas", "calc/root"},
	"calc/downhole":  {"calc/water"}, // muds are made with water
	"calc/influx":    {"calc/column", "calc/gas", "calc/root"},
	"model":          {"model"},
	"model/planfile": {"model"},
	"model/anyplan":  {"model", "plans"},
	"plans":          {},
}

// floorOf returns what the files of a folder may import of this module: what the longest folder in floors that holds it may,
// and the physics below calc, unless it is named there, nothing.
func floorOf(folder string) (allowed []string, ok bool) {
	best := ""
	for name, list := range floors {
		if (name == folder || within(folder, name) || name == ".") && len(name) > len(best) {
			best, allowed, ok = name, list, true
		}
	}
	if best == "." && folder != "." {
		return nil, false
	}
	if best == "calc" && folder != "calc" {
		return nil, true
	}
	return allowed, ok
}

// TestImportsRunDownwards: ui knows calc, calc knows model, nobody knows who is above; the plain physics below calc knows
// neither a plan nor its neighbours.
func TestImportsRunDownwards(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range sources(t) {
		allowed, ok := floorOf(s.folder)
		if !ok {
			t.Errorf("%s stands on no floor", s.name)
			continue
		}
		seen[strings.SplitN(s.folder, "/", 2)[0]] = true
		for _, path := range s.imports() {
			own, ours := strings.CutPrefix(path, "borewalk/")
			if !ours {
				continue
			}
			if own == "model/handbook" || own == "model/anyplan" {
				t.Errorf("%s imports %s, which is for tests", s.name, path)
			}
			may := false
			for _, a := range allowed {
				may = may || within(own, a)
			}
			if !may {
				t.Errorf("%s imports %s", s.name, path)
			}
		}
	}
	for _, folder := range []string{"calc", "model", "plans"} {
		if !seen[folder] {
			t.Errorf("there is no %s", folder)
		}
	}
}

// TestThePhysicsTouchesNothing: no files, no clock, no chance but what calc/chance draws from a seed, no processes and no printing in
// calc and below.
func TestThePhysicsTouchesNothing(t *testing.T) {
	allowed := map[string]bool{"cmp": true, "errors": true, "fmt": true, "math": true, "slices": true, "sort": true, "strconv": true, "strings": true, "maps": true}
	chance := map[string]bool{"math/rand/v2": true, "runtime": true, "sync": true, "sync/atomic": true}
	for _, s := range sources(t) {
		if !within(s.folder, "calc") {
			continue
		}
		for _, path := range s.imports() {
			if !strings.HasPrefix(path, "borewalk/") && !allowed[path] && !(s.folder == "calc/chance" && chance[path]) {
				t.Errorf("%s imports %s", s.name, path)
			}
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			if sel, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := sel.X.(*ast.Ident); ok && x.Name == "fmt" && (strings.HasPrefix(sel.Sel.Name, "Print") || strings.HasPrefix(sel.Sel.Name, "Fprint") ||
					strings.HasPrefix(sel.Sel.Name, "Scan") || strings.HasPrefix(sel.Sel.Name, "Fscan")) {
					t.Errorf("%s: fmt.%s", s.set.Position(n.Pos()), sel.Sel.Name)
				}
			}
			return true
		})
	}
}

// TestThePhysicsHasNoState: no variable outlives a call in calc and below, and everything happens in one goroutine. calc/chance
// has several, by way of a wait group, and what it gives does not depend on how many.
func TestThePhysicsHasNoState(t *testing.T) {
	for _, s := range sources(t) {
		if !within(s.folder, "calc") {
			continue
		}
		for _, d := range s.file.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.VAR {
				t.Errorf("%s: a variable of the package", s.set.Position(g.Pos()))
			}
			if f, ok := d.(*ast.FuncDecl); ok && f.Recv == nil && f.Name.Name == "init" {
				t.Errorf("%s: an init function", s.set.Position(f.Pos()))
			}
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			switch n.(type) {
			case *ast.GoStmt, *ast.ChanType, *ast.SendStmt, *ast.SelectStmt:
				t.Errorf("%s: goroutine or channel", s.set.Position(n.Pos()))
			}
			return true
		})
	}
}

// TestNothingRunsBesideButAtTheTerminal: no goroutine is started but by the pseudo-terminal of the tests, by the journal, which must not
// keep the keys waiting for the disk, where the terminal is read and written, and where the program or the dialogue is left, which must
// not hang on anything. Other work beside the keys is a command of the program's loop, in ui. The race detector is let look there alone.
func TestNothingRunsBesideButAtTheTerminal(t *testing.T) {
	for _, s := range sources(t) {
		if within(s.folder, "ui/ptytest") || within(s.folder, "ui/leaving") || within(s.folder, "model/journal") || within(s.folder, "ui/terminal") || within(s.folder, "ui/dialogue") {
			continue
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			if _, ok := n.(*ast.GoStmt); ok {
				t.Errorf("%s: a goroutine: have the race detector look at it", s.set.Position(n.Pos()))
			}
			return true
		})
	}
}

// TestTheTopOfTheHouse: the module's name sorts before the libraries', so that imports stand in one order, and nothing
// but the floors stands at the top.
func TestTheTopOfTheHouse(t *testing.T) {
	text, err := os.ReadFile("../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	first, _, _ := strings.Cut(string(text), "\n")
	name, ok := strings.CutPrefix(first, "module ")
	if !ok || name != "borewalk" || name >= "github.com/charmbracelet/bubbletea" {
		t.Errorf("first line of go.mod: %q", first)
	}
	entries, err := os.ReadDir("..")
	if err != nil {
		t.Fatal(err)
	}
	expected := map[string]bool{"main.go": true, "ui": true, "model": true, "calc": true, "plans": true, "go.mod": true, "go.sum": true,
		"README.md": true, "DEVELOPERS.md": true}
	for _, e := range entries {
		if !expected[e.Name()] && !strings.HasPrefix(e.Name(), ".") && e.Name() != "borewalk" {
			t.Errorf("%s stands at the top", e.Name())
		}
	}
}

// TestAFileIsATopic: long files want splitting, and a file's name says what it is about.
func TestAFileIsATopic(t *testing.T) {
	for _, s := range sources(t) {
		base := filepath.Base(s.name)
		for _, vague := range []string{"util", "helper", "common", "misc", "types", "manager"} {
			if strings.Contains(base, vague) {
				t.Errorf("%s says nothing", s.name)
			}
		}
		if lines := s.set.File(s.file.Pos()).LineCount(); lines > 500 {
			t.Errorf("%s has %d lines", s.name, lines)
		}
	}
}
