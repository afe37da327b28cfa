package journal

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
)

// opened writes a demo into a folder and opens it.
func opened(t testing.TB, path string) *planfile.File {
	t.Helper()
	text, _ := plans.Demo(plans.Default)
	if err := os.WriteFile(path, text, 0o640); err != nil {
		t.Fatal(err)
	}
	file, err := planfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// gap sets the air gap, as a person does.
func gap(t testing.TB, file *planfile.File, h *model.History, text string) {
	t.Helper()
	ref, _ := model.Find(file.Plan, "well.air_gap")
	entry, err := ref.Field.Parse(text, 0)
	if err != nil {
		t.Fatal(err)
	}
	h.Do(file.Plan, model.Edit{Name: text, Changes: []model.Change{model.Setting(file.Plan, ref, entry)}})
}

func gapOf(file *planfile.File) string { return file.Plan.Well.AirGap.Text() }

// drafted is a draft of a plan with its history.
func drafted(path string, file *planfile.File, h *model.History) Draft {
	return Draft{Path: path, Title: "a demo", File: file.Copy(), Rows: h.Pending(), Who: "A. Person", When: time.Date(2026, 3, 1, 6, 0, 0, 0, time.UTC)}
}

// kept keeps a draft and waits for it.
func kept(t testing.TB, k *Keeper, d Draft) {
	t.Helper()
	k.Keep(d)
	if !k.Flush(10 * time.Second) {
		t.Fatal("the keeper does not come to an end")
	}
}

// one is a plan in a folder of its own with one edit, which is kept.
func one(t testing.TB) (path string, file *planfile.File, h *model.History, k *Keeper) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "well.toml")
	file, h, k = opened(t, path), new(model.History), NewKeeper("", panics(t))
	gap(t, file, h, "31 m")
	kept(t, k, drafted(path, file, h))
	return path, file, h, k
}

// left makes every process count as ended that wrote a journal: it says that it was written by another.
func left(t testing.TB, folder string) {
	t.Helper()
	list, _ := filepath.Glob(filepath.Join(folder, "*"+ending))
	hidden, _ := filepath.Glob(filepath.Join(folder, ".*"+ending))
	for _, path := range append(list, hidden...) {
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		h, body, err := decode(src)
		if err != nil {
			t.Fatal(err)
		}
		h.Born = "before"
		src, _ = encode(h, body)
		if err := os.WriteFile(path, src, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

func panics(t testing.TB) func(any, []byte) {
	return func(fault any, stack []byte) { t.Errorf("panic: %v\n%s", fault, stack) }
}

func hiddenIn(t *testing.T, dir string) (names []string) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), ".") {
			names = append(names, e.Name())
		}
	}
	return names
}
