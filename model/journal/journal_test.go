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
)

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
	path, _, _, k := one(t)
	dir := filepath.Dir(path)
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
	path, _, _, k := one(t)
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
