package planfile_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/model/planfile"
)

// saveLogged saves as the planner does.
func saveLogged(t rapid.TB, f *planfile.File, h *model.History, path, who string) {
	t.Helper()
	h.Enter(f.Plan, who, time.Unix(0, 0))
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	h.Saved()
}

func edit(t rapid.TB, plan *model.Plan, path model.Path, text string) model.Edit {
	t.Helper()
	ref, ok := model.Find(plan, path)
	if !ok {
		t.Fatalf("no %s", path)
	}
	e, err := ref.Field.Parse(text, 0)
	if err != nil {
		t.Fatal(err)
	}
	return model.Edit{When: time.Unix(60, 0), Changes: []model.Change{model.Setting(plan, ref, e)}}
}

// TestTheLogStandsInTheFile: rows of the log are written behind everything else, are read back as they were, and say nothing where
// nothing was done.
func TestTheLogStandsInTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.toml")
	if err := os.WriteFile(path, []byte(small), 0o644); err != nil {
		t.Fatal(err)
	}
	f, err := planfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	var h model.History
	saveLogged(t, f, &h, path, "A. Person")
	if got, _ := os.ReadFile(path); string(got) != small {
		t.Fatalf("nothing was done, and the file is\n%s", got)
	}
	h.Do(f.Plan, edit(t, f.Plan, "well.water_depth", "350 m"))
	h.Explain(`of "today"`)
	saveLogged(t, f, &h, path, "A. Person")
	got, _ := os.ReadFile(path)
	want := strings.Replace(small, `"342,5 m"`, `"350 m"`, 1) + `[[log]]
when = "1970-01-01T00:01:00Z"
who = "A. Person"
what = "set"
path = "well.water_depth"
old = "342.5 m"
new = "350 m"
why = "of \"today\""
hash = "` + model.Hash(f.Plan) + "\"\n"
	if string(got) != want {
		t.Fatalf("saved\n%s\nwant\n%s", got, want)
	}
	h.Do(f.Plan, model.Edit{Changes: []model.Change{model.Adding(model.SectionGroup(), model.Place{Outer: 2})}})
	saveLogged(t, f, &h, path, "B. Person")
	again, err := planfile.Open(path)
	if err != nil || len(again.Notices) != 2 { // the two unknown keys
		t.Fatal(err, again.Notices)
	}
	text, _ := os.ReadFile(path)
	if first, last := strings.Index(string(text), "[[log]]"), strings.LastIndex(string(text), "[[section]]"); last > first {
		t.Errorf("a section stands behind the log:\n%s", text)
	}
	then, misfits := model.Rewind(again.Plan, len(again.Plan.Log))
	if opened := read(t, small).Plan; model.Hash(then) != model.Hash(opened) || len(misfits) > 0 {
		t.Errorf("rewound from the file: %v", misfits)
	}
}

// TestAFileChangedSinceItsLogEndedIsNoticed: comments and unknown keys change nothing, an entry does.
func TestAFileChangedSinceItsLogEndedIsNoticed(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.toml")
	f := read(t, "borewalk = 1\n\n[well]\nair_gap = \"26 m\"\n")
	var h model.History
	h.Do(f.Plan, edit(t, f.Plan, "well.water_depth", "350 m"))
	saveLogged(t, f, &h, path, "A. Person")
	text, _ := os.ReadFile(path)
	for change, notices := range map[string]int{"26 m": 0, "26.0 m": 0, "27 m": 1} {
		f, err := planfile.Read("plan.toml", []byte("# mine\n"+strings.Replace(string(text), "26 m", change, 1)))
		if err != nil || len(f.Notices) != notices {
			t.Errorf("%s: %v, notices %q", change, err, f.Notices)
		}
	}
}

func TestFaultsInTheLogAreNamed(t *testing.T) {
	for text, want := range map[string]string{
		"[[log]]\nwhat = \"broke\"\n":   "test.toml:3: log[1].what = \"broke\"",
		"[log]\nwhat = \"set\"\n":       "write each row under [[log]]",
		"[[log]]\nwho = 7\n":            "wants text in quotes",
		"[[log]]\n[[log.log]]\na = 1\n": "",
	} {
		_, err := planfile.Read("test.toml", []byte("borewalk = 1\n"+text))
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// FuzzLog reads rows of a log that anybody may have written, rewinds over them and replays them: nothing breaks, and the log is
// written again as it was.
func FuzzLog(f *testing.F) {
	f.Add("set", "section[2].casing[1].size", "20 in", "18 in")
	f.Add("add", "section[2]", "", "")
	f.Add("remove", "section[2].casing[1]", "", "")
	f.Add("mark", "", "", "handover")
	f.Add("set", "section[9999999999999999999].x[", "1e9 m", "\x00\"")
	f.Fuzz(func(t *testing.T, what, path, old, now string) {
		text := small
		for _, pair := range [][2]string{{what, path}, {"add", path}, {"remove", path}} {
			text += fmt.Sprintf("\n[[log]]\nwhat = %q\npath = %q\nold = %q\nnew = %q\n", pair[0], pair[1], old, now)
		}
		file, err := planfile.Read("fuzz.toml", []byte(text))
		if err != nil {
			return
		}
		if got, err := file.Bytes(); err != nil || string(got) != text {
			t.Fatalf("%v\n%q\n%q", err, got, text)
		}
		then, _ := model.Rewind(file.Plan, len(file.Plan.Log))
		if len(then.Log) > 0 {
			t.Fatal("rows are left")
		}
		again, _ := model.Replay(then, file.Plan.Log)
		for _, plan := range []*model.Plan{then, again} {
			text, err := planfile.New(plan).Bytes()
			if err != nil {
				t.Fatal(err)
			}
			if _, err := planfile.Read("again.toml", text); err != nil {
				t.Fatal(err)
			}
		}
	})
}

func BenchmarkReadWithALog(b *testing.B) {
	const row = `
[[log]]
when = "2026-03-01T06:00:00Z"
who = "A. Person"
what = "set"
path = "section[2].casing[1].size"
old = "20 in"
new = "18 in"
`
	text := small + strings.Repeat(row, 5000)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, err := planfile.Read("log", []byte(text)); err != nil {
			b.Fatal(err)
		}
	}
}
