package journal

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/process"
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

func TestAJournalGivesBackWhatWasKept(t *testing.T) {
	for _, named := range []bool{true, false} {
		dir, state := t.TempDir(), filepath.Join(t.TempDir(), "deep", "borewalk")
		path := filepath.Join(dir, "well.toml")
		file, about, where := opened(t, path), path, dir
		if !named {
			about, where = "", state
		}
		var h model.History
		k := NewKeeper(state, panics(t))
		gap(t, file, &h, "31 m")
		kept(t, k, drafted(about, file, &h))
		gap(t, file, &h, "32 m")
		d := drafted(about, file, &h)
		d.Typing, d.Typed = "well.name", "Nowhere\x1b[2J"
		kept(t, k, d)
		if found, damaged := Find(about, state); len(found)+len(damaged) > 0 {
			t.Fatalf("the journal of a process that runs is offered: %v %v", found, damaged)
		}
		left(t, where)
		found, damaged := Find(about, state)
		if len(found) != 1 || len(damaged) > 0 {
			t.Fatalf("found %v, damaged %v", found, damaged)
		}
		f := found[0]
		if gapOf(f.File) != "32 m" || f.Pending != 1 || f.When() != "2026-03-01 06:00" || f.Who != "A. Person" || f.Typing != "well.name" ||
			strings.ContainsRune(f.Typed, 0x1b) || f.Process.Life() != process.Gone || filepath.Dir(f.At) != where {
			t.Errorf("found %+v", f)
		}
		own := process.Own()
		if own.Began = "before"; f.Process != own {
			t.Errorf("process %+v, want %+v", f.Process, own)
		}
		if named != (f.Title == "") || named != (f.Plan != "") || !f.Same(file.Text()) || f.Same([]byte("x")) || f.Same(nil) {
			t.Errorf("found %+v", f)
		}
		if err := f.Discard(); err != nil {
			t.Error(err)
		}
		if found, _ := Find(about, state); len(found) > 0 {
			t.Error("a discarded journal is found")
		}
	}
}

// Earlier programs wrote heads without the marks of the computer: what they kept is offered as of a process that may run elsewhere.
func TestAHeadWithoutMarksIsRead(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "well.toml")
	file := opened(t, path)
	body, err := file.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	own := process.Own()
	src, err := encode(head{Plan: path, Written: "2026-03-01T06:00:00Z", Host: own.Host, Pid: own.Pid, Born: own.Boot + ":" + own.Began}, body)
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"machine", "boot", "space"} {
		src = bytes.Replace(src, []byte(mark+key+" = \"\"\n"), nil, 1)
	}
	if bytes.Contains(src, []byte(mark+"machine")) {
		t.Fatal("the head has marks")
	}
	if err := os.WriteFile(filepath.Join(dir, ".well.toml."+own.Tag()+ending), src, 0o600); err != nil {
		t.Fatal(err)
	}
	found, damaged := Find(path, "")
	if len(found) != 1 || len(damaged) > 0 || found[0].Process.Life() != process.Elsewhere || found[0].Process.Host != own.Host {
		t.Errorf("found %+v, damaged %v", found, damaged)
	}
}

// A journal is a plan's file too: whoever has lost the program's help can open it under another name.
func TestAJournalOpensAsAPlan(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "well.toml")
	file := opened(t, path)
	var h model.History
	gap(t, file, &h, "31 m")
	k := NewKeeper("", panics(t))
	kept(t, k, drafted(path, file, &h))
	plan, err := planfile.Open(k.at)
	if err != nil || gapOf(plan) != "31 m" || len(plan.Notices) > 0 {
		t.Fatalf("%v, %v", err, plan)
	}
	k.Forget()
	k.Flush(10 * time.Second)
	if names := hiddenIn(t, dir); len(names) > 0 {
		t.Errorf("forgotten, there lies %v", names)
	}
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

// Where the plan's folder takes no file the state folder does, and a plan that gets a file takes its journal there; where nothing takes
// it that is said once, and that it is kept again once too.
func TestAJournalLiesWhereItCan(t *testing.T) {
	dir, state := t.TempDir(), t.TempDir()
	path := filepath.Join(dir, "well.toml")
	file := opened(t, path)
	var h model.History
	gap(t, file, &h, "31 m")
	nowhere := filepath.Join(path, "below-a-file", "well.toml")

	k := NewKeeper(state, panics(t))
	kept(t, k, drafted(nowhere, file, &h))
	if filepath.Dir(k.at) != state {
		t.Errorf("it lies at %s", k.at)
	}
	left(t, state)
	if found, _ := Find(nowhere, state); len(found) != 1 {
		t.Errorf("found %v", found)
	}
	if found, _ := Find(path, state); len(found) != 0 {
		t.Errorf("found for another plan: %v", found[0])
	}
	kept(t, k, drafted("", file, &h))
	kept(t, k, drafted(path, file, &h))
	if entries, _ := os.ReadDir(state); filepath.Dir(k.at) != dir || len(entries) > 0 {
		t.Errorf("it lies at %s, and in the state folder lies %v", k.at, entries)
	}

	k = NewKeeper(filepath.Join(path, "no-folder"), panics(t))
	for range 3 {
		kept(t, k, drafted(nowhere, file, &h))
	}
	select {
	case err := <-k.Trouble():
		if err == nil || strings.Contains(err.Error(), "\n") || !strings.Contains(err.Error(), "not a directory") {
			t.Errorf("trouble: %v", err)
		}
	default:
		t.Error("nothing is said")
	}
	kept(t, k, drafted(nowhere, file, &h))
	select {
	case err := <-k.Trouble():
		t.Errorf("said twice: %v", err)
	default:
	}
	if unsaved, is := k.Kept(); !unsaved || is {
		t.Error("it counts as kept")
	}
	kept(t, k, drafted(path, file, &h))
	select {
	case err := <-k.Trouble():
		if err != nil {
			t.Error(err)
		}
	default:
		t.Error("that it is kept again is not said")
	}
	k = NewKeeper("", panics(t))
	kept(t, k, drafted("", file, &h))
	if err := <-k.Trouble(); err == nil || !strings.Contains(err.Error(), "HOME") {
		t.Errorf("trouble: %v", err)
	}
}

// What was left alone is not overwritten by a process that has got the same number, and what was adopted is removed once its place is
// taken.
func TestALeftJournalIsNotOverwritten(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "well.toml")
	file := opened(t, path)
	var h model.History
	gap(t, file, &h, "31 m")
	kept(t, NewKeeper("", panics(t)), drafted(path, file, &h))
	left(t, dir)
	gap(t, file, &h, "32 m")
	k := NewKeeper("", panics(t))
	kept(t, k, drafted(path, file, &h))
	found, _ := Find(path, "")
	if len(found) != 1 || gapOf(found[0].File) != "31 m" || len(hiddenIn(t, dir)) != 2 {
		t.Fatalf("found %v among %v", found, hiddenIn(t, dir))
	}
	k.Forget()
	k.Flush(10 * time.Second)
	k = NewKeeper("", panics(t))
	k.Adopt(found[0])
	kept(t, k, drafted(path, file, &h))
	if k.at == found[0].At || len(hiddenIn(t, dir)) != 1 {
		t.Errorf("adopted, it lies at %s among %v", k.at, hiddenIn(t, dir))
	}
	k.Forget()
	k.Flush(10 * time.Second)
	if names := hiddenIn(t, dir); len(names) > 0 {
		t.Errorf("there lies %v", names)
	}
}

// A journal that holds no more than the file is no reason to ask: the process ended between saving and clearing up.
func TestMoreThanTheFile(t *testing.T) {
	file := opened(t, filepath.Join(t.TempDir(), "well.toml"))
	var h model.History
	gap(t, file, &h, "31 m")
	f := &Found{File: file.Copy()}
	model.EnterRows(f.File.Plan, h.Pending(), "", time.Time{})
	if !f.More(file.Plan) {
		t.Error("a further row of the log is nothing")
	}
	h.Enter(file.Plan, "A. Person", time.Time{})
	if f.More(file.Plan) {
		t.Error("what was saved counts as more than the file")
	}
	f.Typing = "well.name"
	if !f.More(file.Plan) {
		t.Error("what was being typed is nothing")
	}
	f.Typing = ""
	file.Plan.Log[0].Why = "because"
	if !f.More(file.Plan) {
		t.Error("another reason is nothing")
	}
	file.Plan.Log[0].Why = ""
	gap(t, file, &h, "32 m")
	if !f.More(file.Plan) {
		t.Error("another entry is nothing")
	}
}

// What cannot be read is said in one line and kept under another name; what a newer program wrote is left to that.
func TestDamagedJournals(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "well.toml")
	file := opened(t, path)
	var h model.History
	gap(t, file, &h, "31 m")
	k := NewKeeper("", panics(t))
	kept(t, k, drafted(path, file, &h))
	good, err := os.ReadFile(k.at)
	if err != nil {
		t.Fatal(err)
	}
	tests := map[string]struct {
		text []byte
		want string
	}{
		"empty":       {nil, "does not begin"},
		"text":        {[]byte("hello"), "does not begin"},
		"cut short":   {good[:len(good)-1], "not the"},
		"half a head": {good[:200], "head does not end"},
		"a bit":       {bytes.Replace(good, []byte("31 m"), []byte("32 m"), 1), "not the"},
		"torn head":   {bytes.Replace(good, []byte(mark+"who"), []byte("who"), 1), "torn"},
		"no TOML":     {bytes.Replace(good, []byte("size ="), []byte("size"), 1), "cannot be read"},
		"no plan":     {must(encode(head{}, []byte("x = 1\n"))), "not a plan"},
		"newer":       {bytes.Replace(good, []byte("journal 1."), []byte("journal 2."), 1), "newer"},
	}
	for name, test := range tests {
		if err := os.WriteFile(k.at, test.text, 0o600); err != nil {
			t.Fatal(err)
		}
		found, damaged := Find(path, "")
		if len(found) > 0 || len(damaged) != 1 {
			t.Errorf("%s: found %v, damaged %v", name, found, damaged)
			continue
		}
		if text := damaged[0].Why.Error(); !strings.Contains(text, test.want) || strings.Contains(text, "\n") || !strings.HasPrefix(text, k.at) {
			t.Errorf("%s: %s", name, text)
		}
		if errors.Is(damaged[0].Why, ErrNewer) != (name == "newer") {
			t.Errorf("%s: newer", name)
		}
	}
	_, damaged := Find(path, "")
	aside, err := damaged[0].SetAside()
	if _, gone := os.Lstat(k.at); err != nil || !os.IsNotExist(gone) {
		t.Errorf("set aside at %s: %v", aside, err)
	}
	if _, damaged := Find(path, ""); len(damaged) > 0 {
		t.Error("what was set aside is found")
	}
}

func must(text []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return text
}

// The beginning of work tidies: what holds no more than the file goes, what is damaged gets another name and a line, what a newer program
// wrote stays, and a date in the future is a date.
func TestTheBeginningTidies(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "well.toml")
	file := opened(t, path)
	var h model.History
	gap(t, file, &h, "31 m")
	k := NewKeeper("", panics(t))
	d := drafted(path, file, &h)
	d.When = time.Date(2999, 1, 1, 0, 0, 0, 0, time.UTC)
	kept(t, k, d)
	left(t, dir)
	before := opened(t, filepath.Join(t.TempDir(), "well.toml"))
	offered, notices := Begin(path, "", before.Plan)
	if len(offered) != 1 || offered[0].When() != "2999-01-01 00:00" || len(notices) > 0 {
		t.Fatalf("offered %v, notices %q", offered, notices)
	}
	h.Enter(file.Plan, "A. Person", time.Time{})
	if offered, notices := Begin(path, "", file.Plan); len(offered)+len(notices) > 0 || len(hiddenIn(t, dir)) > 0 {
		t.Errorf("offered %v, notices %q, there lies %v", offered, notices, hiddenIn(t, dir))
	}
	for name, test := range map[string]struct{ text, lies string }{
		"damaged": {"x\x1b[2J", filepath.Base(k.at) + ".damaged"},
		"newer":   {named + "2.\n", filepath.Base(k.at)},
	} {
		if err := os.WriteFile(k.at, []byte(test.text), 0o600); err != nil {
			t.Fatal(err)
		}
		offered, notices := Begin(path, "", file.Plan)
		if names := hiddenIn(t, dir); len(offered) > 0 || len(notices) != 1 || strings.ContainsAny(notices[0], "\n\x1b") || len(names) != 1 || names[0] != test.lies {
			t.Errorf("%s: offered %v, notices %q, there lies %v", name, offered, notices, names)
		}
		_ = os.Remove(filepath.Join(dir, test.lies))
	}
}

// A panic while a draft is written is told to the program, which goes on.
func TestAPanicInTheKeeperIsReported(t *testing.T) {
	var fault any
	k := NewKeeper(t.TempDir(), func(f any, stack []byte) { fault = f })
	kept(t, k, Draft{}) // without a file to write
	if err := <-k.Trouble(); err == nil || fault == nil {
		t.Errorf("trouble %v, fault %v", err, fault)
	}
	file := opened(t, filepath.Join(t.TempDir(), "well.toml"))
	kept(t, k, drafted("", file, new(model.History)))
	if err := <-k.Trouble(); err != nil {
		t.Error(err)
	}
}

// FuzzRead: whatever a file holds, a journal is read whole or refused in one line.
func FuzzRead(f *testing.F) {
	body := []byte("borewalk = 1\n")
	good, err := encode(head{Plan: "/plans/well.toml", Written: "2026-03-01T06:00:00Z", Pid: 7, Typing: "well.name", Text: "x\ny"}, body)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(good)
	f.Add(good[:len(good)-3])
	f.Add([]byte(first + last))
	f.Add([]byte(first + mark + "size = -1\n" + last))
	path := filepath.Join(f.TempDir(), "x")
	f.Fuzz(func(t *testing.T, src []byte) {
		if err := os.WriteFile(path, src, 0o600); err != nil {
			t.Fatal(err)
		}
		found, err := Read(path)
		if (found == nil) == (err == nil) {
			t.Fatalf("%v, %v", found, err)
		}
		if err != nil {
			if strings.Contains(err.Error(), "\n") {
				t.Errorf("more than one line: %v", err)
			}
			return
		}
		found.More(found.File.Plan)
		found.Same(src)
		found.Process.Runs()
		for _, text := range []string{found.When(), found.Who, found.Title, found.Typed} {
			if model.Clean(text) != text {
				t.Errorf("%q may drive a terminal", text)
			}
		}
	})
}

// BenchmarkHandOver is what the event loop does for each edit; BenchmarkWrite what is done beside it, but for the disk.
func BenchmarkHandOver(b *testing.B) {
	file := opened(b, filepath.Join(b.TempDir(), "well.toml"))
	var h model.History
	gap(b, file, &h, "31 m")
	for b.Loop() {
		drafted("", file, &h)
	}
}

func BenchmarkWrite(b *testing.B) {
	file := opened(b, filepath.Join(b.TempDir(), "well.toml"))
	var h model.History
	gap(b, file, &h, "31 m")
	for b.Loop() {
		d := drafted("", file, &h)
		if _, err := d.text(); err != nil {
			b.Fatal(err)
		}
	}
}

// A journal that was adopted takes the place of what was kept here before: neither is left, whether the keeper had the time to remove
// the one before or not.
func TestAdoptingLeavesNoJournalBehind(t *testing.T) {
	for _, save := range []bool{true, false} {
		dir := t.TempDir()
		path := filepath.Join(dir, "well.toml")
		file := opened(t, path)
		var h model.History
		gap(t, file, &h, "31 m")
		one, two := NewKeeper("", panics(t)), NewKeeper("", panics(t))
		kept(t, one, drafted(path, file, &h))
		left(t, dir)
		found, _ := Find(path, "")
		kept(t, two, drafted(path, file, &h))
		two.Forget()
		two.Adopt(found[0])
		want := 1
		if two.Keep(drafted(path, file, &h)); save {
			two.Forget()
			want = 0
		}
		if !two.Flush(10 * time.Second) {
			t.Fatal("not done")
		}
		if list, _ := filepath.Glob(filepath.Join(dir, ".*"+ending)); len(list) != want {
			t.Errorf("saved %v: there lie %v", save, list)
		}
	}
}
