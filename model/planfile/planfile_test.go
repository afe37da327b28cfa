package planfile_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
)

func read(t *testing.T, text string) *planfile.File {
	t.Helper()
	f, err := planfile.Read("test.toml", []byte(text))
	if err != nil {
		t.Fatalf("Read: %v", err)
	}
	return f
}

func TestDemosReadAndRewriteByteForByte(t *testing.T) {
	for _, name := range plans.Names() {
		text, ok := plans.Demo(name)
		if !ok {
			t.Fatalf("no demo %q", name)
		}
		f := read(t, string(text))
		if len(f.Notices) > 0 {
			t.Errorf("%s: notices %q, want none", name, f.Notices)
		}
		got, err := f.Bytes()
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, text) {
			t.Errorf("%s: an unchanged plan is written differently", name)
		}
	}
}

// A plan written afresh, without the text it came from, must mean the same.
func TestFreshTextMeansTheSame(t *testing.T) {
	for _, name := range plans.Names() {
		text, _ := plans.Demo(name)
		f := read(t, string(text))
		fresh, err := planfile.New(f.Plan).Bytes()
		if err != nil {
			t.Fatal(err)
		}
		again := read(t, string(fresh))
		model.Walk(f.Plan, func(g *model.Group, at model.Place) bool {
			for _, field := range g.Fields {
				ref := model.Ref{Group: g, Field: field, Place: at}
				if want, got := ref.Get(f.Plan), ref.Get(again.Plan); got != want {
					t.Errorf("%s: %s = %+v, want %+v", name, ref.Path(), got, want)
				}
			}
			return true
		})
	}
}

const small = `# my own heading
borewalk = 1
[well]
name = "Test" # trailing
air_gap = "26 m"   # from the rig move
water_depth = "342,5 m"
my_note = "kept"
[strange]
key = 3

[[section]]
hole = '36"'

# about the second section
[[section]]
hole = "26 in"
[[section.casing]]
size = "20 in"
`

func TestSaveKeepsWhatIsTheUsers(t *testing.T) {
	f := read(t, small)
	ref, ok := model.Find(f.Plan, "well.water_depth")
	if !ok {
		t.Fatal("no water_depth")
	}
	entry, err := ref.Field.Parse("350 m", 0)
	if err != nil {
		t.Fatal(err)
	}
	var h model.History
	h.Do(f.Plan, model.Edit{Name: "depth", Changes: []model.Change{model.Setting(f.Plan, ref, entry)}})
	got, err := f.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Replace(small, `"342,5 m"`, `"350 m"`, 1)
	if string(got) != want {
		t.Errorf("Bytes() =\n%s\nwant\n%s", got, want)
	}
	h.Undo(f.Plan)
	if got, _ := f.Bytes(); string(got) != small {
		t.Errorf("after undo Bytes() =\n%s\nwant the text as read", got)
	}
}

func TestRowsComeAndGo(t *testing.T) {
	f := read(t, small)
	var h model.History
	section := model.SectionGroup()
	h.Do(f.Plan, model.Edit{Name: "remove", Changes: []model.Change{model.Removing(section, model.Place{Outer: 0})}})
	h.Do(f.Plan, model.Edit{Name: "add", Changes: []model.Change{model.Adding(section, model.Place{Outer: 1})}})
	got, err := f.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(got), `'36"'`) || !strings.Contains(string(got), "# about the second section") {
		t.Errorf("Bytes() =\n%s\nwant the first section gone, the second with its comment", got)
	}
	if again := read(t, string(got)); len(again.Plan.Sections) != 2 || again.Plan.Sections[1].Rathole.Text() != "5 m" {
		t.Errorf("read back: %d sections, want 2 with the defaults in the second", len(again.Plan.Sections))
	}
	h.Undo(f.Plan)
	h.Undo(f.Plan)
	if got, _ := f.Bytes(); string(got) != small {
		t.Errorf("after undo Bytes() =\n%s\nwant the text as read", got)
	}
}

// A row that comes back by undo after a save must not take the comments of the row that has its place in the file now.
func TestUndoAfterASave(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.toml")
	const text = "borewalk = 1\n\n# one\n[[formation]]\nname = \"A\"\nmine = 1\n\n# two\n[[formation]]\nname = \"B\"\nmine = 2\n\n# three\n[[formation]]\nname = \"C\"\nmine = 3\n"
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	f, err := planfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	var formations *model.Group
	for _, g := range model.Groups() {
		if g.Name == "formation" {
			formations = g
		}
	}
	var h model.History
	h.Do(f.Plan, model.Edit{Changes: []model.Change{model.Removing(formations, model.Place{Outer: 0})}})
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	h.Saved()
	h.Undo(f.Plan)
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	got, _ := os.ReadFile(path)
	for _, whole := range []string{"# two\n[[formation]]\nname = \"B\"\nmine = 2\n", "# three\n[[formation]]\nname = \"C\"\nmine = 3\n"} {
		if !strings.Contains(string(got), whole) {
			t.Errorf("saved\n%s\nwithout\n%s", got, whole)
		}
	}
	if again := read(t, string(got)); len(again.Plan.Formations) != 3 || again.Plan.Formations[0].Name != "A" {
		t.Errorf("saved\n%s\nwant A, B, C", got)
	}
}

func TestFaultsNameFileLineKeyAndWhatIsAllowed(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"empty", "  \n", "test.toml: the file is empty"},
		{"no plan", "x = 1\n", "test.toml: not a plan: there is no line borewalk = 1"},
		{"newer", "borewalk = 2\n", "test.toml:1: borewalk = 2: this program reads version 1"},
		{"other kind", "borewalk = 1\n[well]\nair_gap = \"26 psi\"\n", "test.toml:3: well.air_gap = \"26 psi\":"},
		{"other kind named", "borewalk = 1\n[well]\nair_gap = \"26 psi\"\n", "pressure"},
		{"no unit", "borewalk = 1\n[well]\nair_gap = \"26\"\n", "test.toml:3: well.air_gap = \"26\":"},
		{"bare number", "borewalk = 1\n[well]\nair_gap = 26\n", "wants text in quotes with its unit, such as \"26 m\""},
		{"range", "borewalk = 1\n[well]\nair_gap = \"2600 m\"\n", "allowed is 5 m to 80 m"},
		{"choice", "borewalk = 1\n[well]\nunits = \"furlongs\"\n", "is not one of: metric, field, si"},
		{"table for list", "borewalk = 1\n[section]\nhole = \"26 in\"\n", "write each row under [[section]]"},
		{"list for table", "borewalk = 1\n[[well]]\nname = \"x\"\n", "write [well] once"},
		{"binary", "borewalk = 1\n\x00", "zero byte"},
		{"inline table of lists", "borewalk = 1\nrig = {name = \"x\"}\n", "rig is written as an inline table: write it under [rig]"},
		{"list as value", "borewalk = 1\nsection = []\n", "section is written as a value"},
		{"inner list as value", "borewalk = 1\n[[section]]\ncasing = []\n", "section[1].casing is written as a value"},
		{"syntax", "borewalk = \n", "test.toml:1"},
	}
	for _, test := range tests {
		_, err := planfile.Read("test.toml", []byte(test.text))
		if err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: Read = %v, want %q in it", test.name, err, test.want)
		}
	}
}

// Tables that a file leaves out mean their defaults, and reading them adds nothing to the file.
func TestTablesThatAreNotThereMeanTheirDefaults(t *testing.T) {
	const text = "borewalk = 1\n"
	f := read(t, text)
	if f.Plan.Well.RuleSet != model.SetPractice || f.Plan.Well.UnitSet != "metric" || f.Plan.Trajectory.Method != model.Vertical {
		t.Errorf("rules %q, units %q, path %q", f.Plan.Well.RuleSet, f.Plan.Well.UnitSet, f.Plan.Trajectory.Method)
	}
	if got, err := f.Bytes(); err != nil || string(got) != text {
		t.Errorf("Bytes() = %q, %v", got, err)
	}
}

func TestUnknownKeysAreKeptAndNamed(t *testing.T) {
	f := read(t, "borewalk = 1\n[well]\nwater_dpeth = \"342 m\"\n[wel]\n")
	if len(f.Notices) != 2 || !strings.Contains(f.Notices[0], "test.toml:3: well.water_dpeth") ||
		!strings.Contains(f.Notices[0], "nearest known key is water_depth") {
		t.Errorf("Notices = %q", f.Notices)
	}
}

func TestSaveReplacesWholeFilesAndKeepsPermissions(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.toml")
	if err := os.WriteFile(path, []byte(small), 0o640); err != nil {
		t.Fatal(err)
	}
	f, err := planfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(path)
	if err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("mode = %v, %v, want 0640", info.Mode(), err)
	}
	entries, _ := os.ReadDir(filepath.Dir(path))
	if len(entries) != 1 {
		t.Errorf("%d files left in the folder, want 1", len(entries))
	}
	if err := f.Save(filepath.Join(path, "below", "a", "file")); err == nil {
		t.Error("saving below a file succeeded, want an error")
	}
	if got, _ := os.ReadFile(path); string(got) != small {
		t.Errorf("the file changed after a failed save")
	}
}

func TestOpenRefusesWhatIsNoFile(t *testing.T) {
	dir := t.TempDir()
	for _, path := range []string{dir, filepath.Join(dir, "none.toml")} {
		if _, err := planfile.Open(path); err == nil || !strings.HasPrefix(err.Error(), path+": ") {
			t.Errorf("Open(%q) = %v, want an error that begins with the path", path, err)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, name := range plans.Names() {
		text, _ := plans.Demo(name)
		f.Add(text)
	}
	f.Add([]byte(small))
	for _, text := range []string{
		"\ufeff" + small, strings.ReplaceAll(small, "\n", "\r\n"), strings.TrimRight(small, "\n"), small + "\x00", "\xff\xfeb\x00", with("nan"), with(`"NaN m"`), with(`"1e999999999 m"`),
		small + "[rig]\nname = \"\\u001b[2J\\u202e\u009b2J\u200b\"\n", small + "[\"\\u001b[2J\u202e\"]\n\"\\u0007\" = 1\n", small + "x = " + strings.Repeat("[", 40), small + "[" + strings.Repeat("a.", 40) + "b]\n",
		small + strings.Repeat("[[section.casing]]\n", 201), small + "[trajectory]\nmethod = \"\\u001b\"\n", small + "[[section.joint]]\nlength = \"-12 m\"\n",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		file, err := planfile.Read("fuzz.toml", src)
		if err != nil {
			if fault := oneLine(err.Error()); fault != "" {
				t.Fatal(fault)
			}
			return
		}
		for _, notice := range file.Notices {
			if fault := oneLine(notice); fault != "" {
				t.Fatal(fault)
			}
		}
		text, err := file.Bytes()
		if err != nil {
			t.Fatalf("cannot be written again: %v", err)
		}
		if !bytes.Equal(text, src) {
			t.Fatalf("an unchanged plan is written differently:\n%q\n%q", src, text)
		}
	})
}

func BenchmarkRead(b *testing.B) {
	text, _ := plans.Demo(plans.Default)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := planfile.Read("demo", text); err != nil {
			b.Fatal(err)
		}
	}
}

// A table within a row of a list is read into that row, changed where it stands, and appears when it is filled.
func TestATableWithinARow(t *testing.T) {
	const text = "borewalk = 1\n\n[[section]]\nhole = \"26 in\"\n\n[section.tally]\nhanger = \"3.5 m\" # drawing\n\n[[section]]\nhole = \"17.5 in\"\n"
	f, err := planfile.Read("plan.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if got := f.Plan.Sections[0].Tally; got.Hanger.SI != 3.5 || got.Float != model.FloatHolds || f.Plan.Sections[1].Tally.Hanger.IsSet() {
		t.Errorf("read %+v", got)
	}
	if got, err := f.Bytes(); err != nil || string(got) != text {
		t.Errorf("Bytes() = %v\n%s", err, got)
	}
	for path, to := range map[model.Path]string{"section[1].tally.hanger": "3.6 m", "section[2].tally.hanger": "2.5 m"} {
		ref, ok := model.Find(f.Plan, path)
		if !ok {
			t.Fatalf("no %s", path)
		}
		e, err := ref.Field.Parse(to, 0)
		if err != nil {
			t.Fatal(err)
		}
		ref.Set(f.Plan, e)
	}
	want := strings.Replace(text, `"3.5 m"`, `"3.6 m"`, 1) + "\n[section.tally]\nhanger = \"2.5 m\"\n"
	if got, err := f.Bytes(); err != nil || string(got) != want {
		t.Errorf("Bytes() = %v\n%s\nwant\n%s", err, got, want)
	}
	if _, ok := model.Find(f.Plan, "section[3].tally.hanger"); ok {
		t.Error("a table within a row that is not there is found")
	}
}

// TestTheHashIsOfEntriesNotOfTheFile: comments, blanks, the order of keys and tables, and keys that are not known change nothing.
func TestTheHashIsOfEntriesNotOfTheFile(t *testing.T) {
	want := model.Hash(read(t, small).Plan)
	for _, same := range []string{
		strings.ReplaceAll(small, "# my own heading", "# another\n\n# and one more"),
		strings.Replace(small, "name = \"Test\" # trailing\nair_gap = \"26 m\"   # from the rig move", "air_gap = \"26.0 m\"\nname='Test'", 1),
		strings.Replace(small, "[strange]\nkey = 3\n", "[odd]\nkey = 4\n", 1),
	} {
		if same == small || model.Hash(read(t, same).Plan) != want {
			t.Errorf("the hash changed with what is no entry:\n%s", same)
		}
	}
	for _, other := range []string{
		strings.Replace(small, `"26 m"`, `"26.1 m"`, 1), strings.Replace(small, `"Test"`, `"test"`, 1), small + "\n[[section.casing]]\n", small + "\n[[section]]\n",
	} {
		if other == small || model.Hash(read(t, other).Plan) == want {
			t.Errorf("the hash is that of another plan:\n%s", other)
		}
	}
}

// TestRowsWithinARowComeBackAfterASave: what stood within a section that was removed, and comes back after a save, takes nothing
// from what stands within another by then.
func TestRowsWithinARowComeBackAfterASave(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.toml")
	const text = "borewalk = 1\n\n[[section]]\nname = \"A\"\n\n# one\n[[section.slow_rate]]\nrate = \"20 spm\"\nmine = 1\n\n" +
		"[[section]]\nname = \"B\"\n\n# two\n[[section.slow_rate]]\nrate = \"30 spm\"\nmine = 2\n"
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	f, err := planfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	var h model.History
	h.Do(f.Plan, model.Edit{Changes: []model.Change{model.Removing(model.SectionGroup(), model.Place{})}})
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	h.Saved()
	h.Undo(f.Plan)
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	got, _ := os.ReadFile(path)
	if !strings.Contains(string(got), "# two\n[[section.slow_rate]]\nrate = \"30 spm\"\nmine = 2\n") {
		t.Errorf("saved\n%s\nwant the second section's row as it was", got)
	}
}

// TestTrialsAreSavedUndoneAndKeptAsTheyStand: a trial added and changed is written behind what is there, and undo leaves the text as
// it was; one that the file holds keeps its words, wrong ones too.
func TestTrialsAreSavedUndoneAndKeptAsTheyStand(t *testing.T) {
	const text = small + "\n[[trial]] # why not\nname = \"wide\"\nsection = \"2\"\n\n[[trial.change]]\npath = \"section[2].no_such\" # mine\nvalue = \"+ 1 furlong\"\n"
	f := read(t, text)
	var h model.History
	h.Do(f.Plan, model.Edit{Changes: []model.Change{model.AddingTrial(f.Plan, model.Trial{Name: "deep", Section: "1", Changes: []model.TrialChange{{Path: "section[1].td", Value: "-50 m"}}})}})
	h.Do(f.Plan, model.Edit{Changes: []model.Change{model.AddingTrialChange(f.Plan, 0, model.TrialChange{Path: "section[2].hole", Value: "24 in"})}})
	got, err := f.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	want := text + "\n[[trial.change]]\npath = \"section[2].hole\"\nvalue = \"24 in\"\n" +
		"\n[[trial]]\nname = \"deep\"\nsection = \"1\"\n\n[[trial.change]]\npath = \"section[1].td\"\nvalue = \"-50 m\"\n"
	if string(got) != want {
		t.Errorf("Bytes() =\n%s\nwant\n%s", got, want)
	}
	h.Undo(f.Plan)
	h.Undo(f.Plan)
	if got, _ := f.Bytes(); string(got) != text {
		t.Errorf("after undo Bytes() =\n%s\nwant the text as read", got)
	}
}
