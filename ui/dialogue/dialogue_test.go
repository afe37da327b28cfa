package dialogue_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"
	"time"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/plans"
	"borewalk/ui/dialogue"
)

// memory is a disk that keeps nothing beyond a test.
type memory struct {
	files map[string]string
	saved []string
	fails error
	kept  string
}

func (m *memory) Save(_ *planfile.File, path string, over bool) error {
	if m.fails != nil && !over {
		return m.fails
	}
	m.saved = append(m.saved, path)
	return nil
}
func (m *memory) Exists(path string) bool { _, ok := m.files[path]; return ok }
func (m *memory) Write(path string, content []byte) error {
	if m.files == nil {
		m.files = map[string]string{}
	}
	m.files[path] = string(content)
	return nil
}
func (m *memory) Keep(text string) (string, error) { m.kept = text; return "/state/copied.txt", nil }

// talk is a session with what it said.
type talk struct {
	*dialogue.Session
	plan *model.Plan
	out  bytes.Buffer
	disk memory
}

func open(t testing.TB, name string, o dialogue.Options) *talk {
	t.Helper()
	source, ok := plans.Demo(name)
	if !ok {
		t.Fatal("no demo ", name)
	}
	file, err := planfile.Read(name, source)
	if err != nil {
		t.Fatal(err)
	}
	d := &talk{plan: file.Plan}
	o.Disk, o.Clock = &d.disk, func() time.Time { return time.Date(2026, 3, 1, 6, 0, 0, 0, time.UTC) }
	d.Session = dialogue.New(file, &d.out, o)
	return d
}

// hear lets the session hear lines and returns what it said to the last.
func (d *talk) hear(lines ...string) string {
	for _, l := range lines {
		d.out.Reset()
		d.Hear(l)
	}
	return d.out.String()
}

// TestAnswers: what is said to a line, after the lines before it.
func TestAnswers(t *testing.T) {
	tests := []struct {
		name  string
		lines []string
		want  []string // what must be in the last answer
		not   string   // what must not
	}{
		{"where", []string{"section 3", "cement", "where"}, []string{"section 3 of 5, 17 1/2 in hole, page cement; 0 stop, 24 caution\n"}, ""},
		{"the well", []string{"well"}, []string{"the well, page well; 0 stop, 24 caution\n"}, ""},
		{"beginnings", []string{"sec 3", "pag cem"}, []string{"page cement"}, ""},
		{"a beginning of several", []string{"pr"}, []string{"pr begins more than one word: previous, proposals, print"}, ""},
		{"a wrong word", []string{"fidings"}, []string{"the nearest is findings"}, ""},
		{"a wrong page", []string{"page chalk"}, []string{"names no page", "cement, control"}, ""},
		{"no section", []string{"section 9"}, []string{"there is no section 9: the plan has 5"}, ""},
		{"next", []string{"next", "next"}, []string{"section 3 of 5"}, ""},
		{"no next", []string{"section 5", "next"}, []string{"no further section"}, ""},
		{"entries", []string{"section 3", "entries"}, []string{"3. Hole size: 17 1/2 in\n", "6. Hole TD: 2155.0 m\n", "blank entries: 2; say entries all"}, "4. "},
		{"all entries", []string{"section 3", "entries all 40"}, []string{"3. Hole size: 17 1/2 in\n", ": blank\n"}, "blank entries"},
		{"rows", []string{"section 3", "casing", "entries 60"}, []string{"casing part 1:\n"}, ""},
		{"a number", []string{"section 3", "entries", "6"}, []string{"section 3: Total depth of the bit, along hole: 2155.0 m; range "}, ""},
		{"what", []string{"section 3", "what hole td"}, []string{"Total depth of the bit, along hole: 2155.0 m", "path: section[3].td\n"}, ""},
		{"set by number", []string{"section 3", "entries", "6 2160 m"}, []string{"section 3: Total depth of the bit, along hole: 2160.0 m, was 2155.0 m\n", "Hole TD: 2160.0 m, was 2155.0 m"}, ""},
		{"set by label", []string{"section 3", "hole td 2160"}, []string{"Total depth of the bit, along hole: 2160.0 m, was 2155.0 m\n"}, ""},
		{"set by beginnings", []string{"section 3", "mud", "mud den 1.3"}, []string{"section 3: Mud density: 1.300 sg, was 1.250 sg\n", "was ok, now caution"}, ""},
		{"set by path", []string{"section[3].density = 10.8 ppg"}, []string{"section 3: Mud density: 1.294 sg, was 1.250 sg\n"}, ""},
		{"set in another unit", []string{"units field", "section[3].density = 10.8"}, []string{"10.80 ppg, was 10.43 ppg"}, ""},
		{"a comma", []string{"section[3].density = 1,3 sg"}, []string{"1.300 sg, was"}, ""},
		{"open to two readings", []string{"section[3].td = 2,155 m"}, []string{"not set: ", "Total depth of the bit, along hole stays 2155.0 m"}, ""},
		{"out of range", []string{"section[3].td = 99999 m"}, []string{"not set: 99999 m is outside the range; range ", "stays 2155.0 m"}, "2155.0 m, was"},
		{"no number", []string{"section[3].td = deep"}, []string{"not set: ", "range ", "stays 2155.0 m"}, ""},
		{"no such path", []string{"section[3].desnity = 1.3 sg"}, []string{"there is no section[3].desnity; the nearest is section[3].density"}, ""},
		{"no such row", []string{"section[9].td = 3 m"}, []string{"the plan has no row for section[9].td"}, ""},
		{"a choice by its beginning", []string{"section 3", "section[3].depth_by = sh"}, []string{"Depth fixed by: shoe, was TD", "other entries of the page count now"}, ""},
		{"no such choice", []string{"section[3].depth_by = bit"}, []string{"not one of: TD, shoe"}, ""},
		{"the same again", []string{"section[3].td = 2155 m"}, []string{"nothing changed: "}, ""},
		{"blank", []string{"section[3].td = blank"}, []string{"Total depth of the bit, along hole: blank, was 2155.0 m\n", "new: stop section 3: "}, ""},
		{"undo", []string{"section[3].td = 2160 m", "undo"}, []string{"undid section 3 Hole TD: 2155.0 m to 2160.0 m\n", "Hole TD"}, ""},
		{"redo", []string{"section[3].td = 2160 m", "undo", "redo"}, []string{"redid section 3 Hole TD: 2155.0 m to 2160.0 m\n"}, ""},
		{"nothing to undo", []string{"undo"}, []string{"nothing to undo"}, ""},
		{"figures", []string{"section 3", "mud", "figures"}, []string{"Margin, least in open hole:\n1. Over pore: 0.080 sg, at TVD 2033.4 m\n", "EMW from RKB:\n4. Mud at last shoe: 1.250 sg, pressure 116 bar\n"}, ""},
		{"a figure is not set", []string{"section 3", "mud", "figures", "4 1.3 sg"}, []string{"4 is no entry"}, ""},
		{"working by number", []string{"section 3", "mud", "figures", "working 1"}, []string{"Over pore: ", "source: ", "result = 0.08"}, ""},
		{"working by name", []string{"section 3", "mud", "working over pore"}, []string{"Over pore: ", "source: "}, ""},
		{"findings", []string{"section 3", "findings 4"}, []string{"1. caution section 3: ", "3 of 24; say more"}, "4. "},
		{"a finding", []string{"section 3", "findings", "2"}, []string{"source: ", "entry to mend: "}, ""},
		{"go to what mends it", []string{"section 3", "findings", "go 2"}, []string{"the well, page well; ", ". Weighting mat.: 150.0 t\n"}, ""},
		{"find", []string{"section 3", "find mud density"}, []string{"1. mud, entry: Mud density: 1.250 sg\n"}, ""},
		{"set what was found", []string{"section 3", "find mud density", "1 1.3 sg"}, []string{"section 3: Mud density: 1.300 sg, was 1.250 sg"}, ""},
		{"no label is cut", []string{"section 3", "lines all", "find planned shoe test"}, []string{": Planned shoe test within the fracture prognosis: blank"}, "shoe tes:"},
		{"find nothing", []string{"find kite"}, []string{"nothing of this section or the well holds \"kite\""}, ""},
		{"lists", []string{"section 3", "casing", "add"}, []string{"lists: section (5), casing part (1)"}, ""},
		{"add", []string{"section 3", "casing", "lines all", "add casing"}, []string{"section 3, casing part 2 added", "casing part 2:\n", ". Casing OD: "}, ""},
		{"numbers after a row", []string{"section 3", "casing", "entries", "remove casing 1", "1"}, []string{"rows have come or gone"}, ""},
		{"remove what is not there", []string{"section 3", "casing", "remove casing 7"}, []string{"there is no casing part 7"}, ""},
		{"remove a section", []string{"remove section 5", "yes", "where"}, []string{"of 4"}, ""},
		{"keep a section", []string{"remove section 5", "no", "where"}, []string{"of 5"}, ""},
		{"the datum asks", []string{"well.water_depth = 350 m"}, []string{"what moves?", "1. move all with the seabed\n", "3. keep depths from RKB\n"}, "was 342"},
		{"the datum moves", []string{"well.water_depth = 350 m", "1", "section[3].td"}, []string{"2163.0 m"}, ""},
		{"the datum stays", []string{"well.water_depth = 350 m", "stop", "well.water_depth"}, []string{"342.0 m"}, ""},
		{"a wrong answer asks again", []string{"well.water_depth = 350 m", "7", "3", "section[3].td"}, []string{"2155.0 m"}, ""},
		{"changes", []string{"section[3].density = 1.3 sg", "changes"}, []string{"changed since the baseline: entries 1, ", "section 3: Mud density: 1.300 sg, was 1.250 sg"}, ""},
		{"no changes", []string{"changes"}, []string{"nothing differs since the baseline"}, ""},
		{"a later baseline", []string{"section[3].density = 1.3 sg", "baseline", "changes"}, []string{"nothing differs"}, ""},
		{"moved elsewhere", []string{"section[3].density = 1.3 sg", "section 3", "mud", "lines all", "moved"}, []string{"Over pore: 0.130 sg, was 0.080 sg"}, ""},
		{"more", []string{"section 3", "findings 4", "more 3"}, []string{"4. caution", "5. caution", "5 of 24; say more"}, "6. "},
		{"no more", []string{"more"}, []string{"that was all"}, ""},
		{"a paper", []string{"section 4", "print limits card"}, []string{"Limits card: Ottermast-2, section 4\n", "say more"}, ""},
		{"a paper to a file", []string{"section 4", "print limits card to card.md"}, []string{"printed to card.md"}, ""},
		{"no such paper", []string{"print kite"}, []string{"names no paper"}, ""},
		{"a PDF here", []string{"print limits-card as pdf"}, []string{"a PDF goes to a file"}, ""},
		{"proposals", []string{"section 3", "hydraulics", "proposals"}, []string{"1. "}, ""},
		{"a proposal", []string{"section 3", "hydraulics", "proposals", "1"}, []string{": "}, "there is no number"},
		{"take a proposal", []string{"section 3", "cement", "lines all", "proposals", "take 1", "undo"}, []string{"undid section 3 "}, ""},
		{"what is no proposal", []string{"section 3", "entries", "take 1"}, []string{"1 is no proposal"}, ""},
		{"the sheets of all", []string{"well", "lines all", "print sheets"}, []string{"Well sheet: Ottermast-2\n", "Section sheet 5 of 5"}, "─"},
		{"go to a figure", []string{"section 3", "find left over pore", "go 1"}, []string{"page mud"}, ""},
		{"units", []string{"units field", "section[3].td"}, []string{"7070 ft"}, ""},
		{"no such units", []string{"units furlongs"}, []string{"metric, field or si, or plan"}, ""},
		{"copy an entry", []string{"section 3", "copy hole td"}, []string{"3 lines copied to /state/copied.txt"}, ""},
		{"help", []string{"help undo"}, []string{"undo: take the last edit back\n"}, ""},
		{"a remark", []string{"# nothing"}, []string{""}, "nothing"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d := open(t, plans.Default, dialogue.Options{Title: "demo"})
			got := d.hear(test.lines...)
			for _, want := range test.want {
				if !strings.Contains(got, want) {
					t.Errorf("no %q in\n%s", want, got)
				}
			}
			if test.not != "" && strings.Contains(got, test.not) {
				t.Errorf("%q in\n%s", test.not, got)
			}
		})
	}
}

// TestAnAnswerIsNoLongerThanAsked, whatever it is, but for questions.
func TestAnAnswerIsNoLongerThanAsked(t *testing.T) {
	for _, line := range []string{"help", "entries all", "figures", "findings all", "find mud", "print step-list", "section[3].density = 1.4 sg", "undo", "print"} {
		d := open(t, plans.Default, dialogue.Options{})
		d.hear("section 3", "mud", "section[3].td = 2160 m", "lines 5")
		first := d.hear(line)
		if n := strings.Count(first, "\n"); n > 5 {
			t.Errorf("%s: %d lines", line, n)
		}
		whole := strings.Split(strings.TrimSuffix(first, "\n"), "\n")
		for range 2000 {
			last := whole[len(whole)-1]
			if !strings.HasSuffix(last, "; say more") {
				break
			}
			next := strings.Split(strings.TrimSuffix(d.hear("more"), "\n"), "\n")
			if len(next) > 5 {
				t.Errorf("%s: more says %d lines", line, len(next))
			}
			whole = append(whole[:len(whole)-1], next...)
		}
		again := open(t, plans.Default, dialogue.Options{})
		again.hear("section 3", "mud", "section[3].td = 2160 m", "lines all")
		if got, want := strings.Join(whole, "\n")+"\n", again.hear(line); got != want {
			t.Errorf("%s: in parts\n%s\nin one\n%s", line, got, want)
		}
	}
}

// TestWhatAnEditSays is what the plan gives: every finding beyond ok that came, went or changed is said.
func TestWhatAnEditSays(t *testing.T) {
	d := open(t, plans.Default, dialogue.Options{})
	before := d.plan.Clone()
	got := d.hear("lines all", "section[4].density = 1.85 sg")
	c := calc.Compare(before, d.plan)
	n := 0
	for _, f := range c.Findings {
		if f.Worst() == calc.OK {
			continue
		}
		n++
		if !strings.Contains(got, f.Finding().Text) {
			t.Errorf("nothing is said of %+v", f)
		}
	}
	if n == 0 {
		t.Error("a mud above the fracture is found nowhere")
	}
}

func TestSaving(t *testing.T) {
	accepted := 0
	d := open(t, plans.Default, dialogue.Options{Title: "demo", Accepted: func() { accepted++ }})
	for _, step := range []struct{ line, want string }{
		{"section[3].td = 2160 m", "2160.0 m, was"},
		{"save", "save the plan as? a name ending in .toml, nothing for ottermast-2.toml, or stop"},
		{"", "your name or initials"},
		{"A. Person", "saved ottermast-2.toml"},
		{"changes saved", "nothing differs since it was last saved"},
		{"section[3].td = 2165 m", "2165.0 m, was 2160.0 m"},
		{"changes saved", "Total depth of the bit, along hole: 2165.0 m, was 2160.0 m"},
		{"why survey", "why is noted"},
		{"quit", "the plan has changes that are not saved"},
		{"3", "still here"},
		{"quit", "1. save and quit"},
		{"1", "saved ottermast-2.toml"},
	} {
		if got := d.hear(step.line); !strings.Contains(got, step.want) {
			t.Errorf("%q: %q, want %q", step.line, got, step.want)
		}
	}
	if d.Lost() || len(d.disk.saved) != 2 || accepted != 2 {
		t.Errorf("lost %v, saved %q, %d accepted", d.Lost(), d.disk.saved, accepted)
	}
	if n := len(d.plan.Log); n != 2 || d.plan.Log[1].Why != "survey" || d.plan.Log[1].Who != "A. Person" {
		t.Errorf("log %+v", d.plan.Log)
	}
}

// TestAFileChangedByAnother is replaced only after asking, and what could not be saved is not taken for saved.
func TestAFileChangedByAnother(t *testing.T) {
	d := open(t, plans.Default, dialogue.Options{Path: "a.toml", Name: "A"})
	d.disk.fails = planfile.ErrChanged
	d.hear("section[3].td = 2160 m")
	if got := d.hear("save"); !strings.Contains(got, "the file was changed by another program; save as FILE saves under another name\nwhat to do?") {
		t.Error(got)
	}
	if d.hear("3"); len(d.disk.saved) > 0 || len(d.plan.Log) > 0 || !d.Lost() {
		t.Errorf("saved %q, log %d", d.disk.saved, len(d.plan.Log))
	}
	if d.hear("save", "1"); len(d.disk.saved) != 1 || d.Lost() {
		t.Errorf("saved %q", d.disk.saved)
	}
	d.disk.fails = errors.New("the disk is full")
	if got := d.hear("section[3].td = 2165 m", "save"); !strings.Contains(got, "the disk is full") || !d.Lost() {
		t.Error(got)
	}
	d.disk.files = map[string]string{"b.toml": ""}
	if got := d.hear("save as b"); !strings.Contains(got, "b.toml exists already; replace it?") {
		t.Error(got)
	}
}

func TestCopying(t *testing.T) {
	d := open(t, plans.Default, dialogue.Options{})
	for _, step := range []struct{ line, want string }{
		{"copy mud density", "section 3: Mud density: 1.250 sg\nFrom Ottermast-2, revision 1, plan hash " + model.Hash(d.plan)[:8] + ", copied 2026-03-01 06:00 +00:00.\nPlanning aid"},
		{"copy over pore", "section 3, mud, Margin, least in open hole: Over pore: 0.080 sg, at TVD 2033.4 m\nFrom "},
		{"copy working over pore", "section 3, mud, Margin, least in open hole\nOver pore: "},
		{"copy page", "Mud, section 3 of 5"},
	} {
		d.hear("section 3", "mud", step.line)
		if !strings.HasPrefix(d.disk.kept, step.want) {
			t.Errorf("%s: %q", step.line, d.disk.kept)
		}
	}
	if d.hear("findings", "copy 1"); !strings.Contains(d.disk.kept, "caution section 3") || !strings.Contains(d.disk.kept, "\nSource: ") {
		t.Errorf("%q", d.disk.kept)
	}
}

func TestANewPlan(t *testing.T) {
	d := open(t, plans.Default, dialogue.Options{Fresh: true})
	d.Greet()
	for _, step := range []struct{ line, want string }{
		{"Testling-1", "question 2 of 6"},
		{"2", "question 3 of 6"},
		{"9000", "range"},
		{"80 ft", "question 4 of 6"},
		{"1200", "question 5 of 6"},
		{"3", "question 6 of 6"},
		{"", "section 1 of 3"},
		{"well.air_gap", "80.0 ft"},
		{"quit", "changes that are not saved"},
	} {
		if got := d.hear(step.line); !strings.Contains(got, step.want) {
			t.Errorf("%q: %q, want %q", step.line, got, step.want)
		}
	}
}

// TestLongLinesAreBrokenBetweenWords, so that none is cut by a narrow terminal, and nothing is lost.
func TestLongLinesAreBrokenBetweenWords(t *testing.T) {
	narrow, wide := open(t, plans.Default, dialogue.Options{Width: 40}), open(t, plans.Default, dialogue.Options{})
	for _, line := range []string{"section 3", "lines all", "help", "findings", "what hole td", "section[3].td = 1e9"} {
		got, want := narrow.hear(line), wide.hear(line)
		if strings.Join(strings.Fields(got), " ") != strings.Join(strings.Fields(want), " ") {
			t.Errorf("%s: %s", line, got)
		}
		for l := range strings.Lines(got) {
			if len(l) > 41 && strings.Contains(l, " ") {
				t.Errorf("%s: %q", line, l)
			}
		}
	}
}
