package planfile_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/tomldoc"
	"borewalk/plans"
)

// oneLine says what is wrong with a message: it must fit a line or a few, drive no terminal, and be short.
func oneLine(message string) string {
	for _, line := range strings.Split(message, "\n") { // a line for each fault
		for _, r := range line {
			if unicode.In(r, unicode.Cc, unicode.Bidi_Control) || r == unicode.ReplacementChar {
				return fmt.Sprintf("%q holds %U", line, r)
			}
		}
		if len(line) > 600 {
			return fmt.Sprintf("%d bytes in a line: %.100s", len(line), line)
		}
	}
	return ""
}

// with returns the small plan with a value in place of its water depth.
func with(value string) string {
	return strings.Replace(small, `"342,5 m"`, value, 1)
}

func TestHostileFilesAreRefusedInOneLine(t *testing.T) {
	if with(`"x"`) == small {
		t.Fatal("the small plan has no such water depth any more")
	}
	rows := func(header string, n int) string { return small + strings.Repeat("\n"+header+"\n", n) }
	wide := utf16.Encode([]rune(small))
	var little, big bytes.Buffer
	little.WriteString("\xff\xfe")
	big.WriteString("\xfe\xff")
	for _, c := range wide {
		little.Write([]byte{byte(c), byte(c >> 8)})
		big.Write([]byte{byte(c >> 8), byte(c)})
	}
	const deep = 100_000
	for _, c := range []struct{ name, text, want string }{
		{"nothing", "", "the file is empty"},
		{"blanks", strings.Repeat(" \n", 1<<20), "the file is empty"},
		{"no plan", "a = 1", "not a plan"},
		{"UTF-16", little.String(), "UTF-16"},
		{"UTF-16 the other way round", big.String(), "UTF-16"},
		{"UTF-16 without a mark", little.String()[2:], "zero byte"},
		{"zero bytes", small + "\x00", "zero byte"},
		{"a picture", "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "PNG"},
		{"line ends of old", strings.ReplaceAll(small, "\n", "\r"), ":1: a carriage return stands alone"},
		{"bytes of another code page", small + "# \xc6\xd8", "0xc6 is not UTF-8"},
		{"escape in a remark", small + "# \x1b[2J", "control character (0x1b)"},
		{"escape in a text", with("\"\x1b]0;x\a\""), "control character (0x1b)"},
		{"written escapes in a number", with(`"\u001b[2J\u202e\u009b2J 12 m"`), "invisible character"},
		{"written escapes in a choice", small + "[trajectory]\nmethod = \"\\u001b[2J\u202e\u009b2J\"\n", "is not one of: vertical"},
		{"written escapes in a key twice", small + strings.Repeat("\"\\u001b[2J\u202e\u009b2J\" = 1\n", 2), "set a second time"},
		{"written escapes before junk", small + "\"\\u001b[2J\u202e\u009b2J\" = \"x\" y\n", "something stands behind the value"},
		{"written escapes in the version", "borewalk = \"\\u001b[2J\u202e\"", "version of the format"},
		{"a version without end", "borewalk = \"" + strings.Repeat("x", 1<<20) + "\"", "version of the format"},
		{"a key twice", "borewalk = 1\nborewalk = 1\n", "borewalk is set a second time"},
		{"a table twice", small + "[well]\nname = \"x\"\n", "well is set a second time"},
		{"a list for a table", small + "[[rig]]\n", "rig"},
		{"a table for a list", small + "[formation]\nname = \"x\"\n", "formation"},
		{"brackets", small + "x = " + strings.Repeat("[", deep), "more than 32 brackets"},
		{"closed brackets", small + "x = " + strings.Repeat("[", deep) + strings.Repeat("]", deep), "more than 32 brackets"},
		{"braces", small + "x = " + strings.Repeat("{a=", deep), "more than 32 brackets"},
		{"points", small + strings.Repeat("a.", deep) + "b = 1", "more than 32 parts"},
		{"points in a header", small + "[" + strings.Repeat("a.", deep) + "b]", "more than 32 parts"},
		{"brackets of headers", small + strings.Repeat("[", deep), "key is missing"},
		{"an open text", small + "x = \"" + strings.Repeat("a", deep), "not closed"},
		{"an open text of lines", small + "x = \"\"\"" + strings.Repeat("a\n", deep), "not closed"},

		{"nan", with("nan"), "wants text in quotes"},
		{"-inf", with("-inf"), "wants text in quotes"},
		{"a bare number", with("1e308"), "wants text in quotes"},
		{"too large a number for TOML", with("1e999999999"), "too large to be read"},
		{"400 digits", with(strings.Repeat("9", 400)), "too large to be read"},
		{"NaN in quotes", with(`"NaN m"`), "not a finite number"},
		{"inf in quotes", with(`"+inf m"`), "not a finite number"},
		{"Infinity in quotes", with(`"-Infinity"`), "not a finite number"},
		{"powers of ten", with(`"1e308 m"`), "write the number in full"},
		{"small powers of ten", with(`"1e-308 m"`), "write the number in full"},
		{"a power without end", with(`"1e999999999 m"`), "write the number in full"},
		{"400 digits in quotes", with(`"` + strings.Repeat("9", 400) + ` m"`), "at most 64 bytes"},
		{"40 digits", with(`"` + strings.Repeat("9", 40) + ` m"`), "too large"},
		{"40 places", with(`"0.` + strings.Repeat("0", 40) + `1 m"`), "too fine"},
		{"hexadecimal", with(`"0x10 m"`), "unknown unit"},
		{"below zero", with(`"-5 m"`), "outside the range"},
		{"nothing at all", with(`"0 m"`), "outside the range"},
		{"another kind", with(`"5 sg"`), "sg"},
		{"a long text", small + "[rig]\nname = \"" + strings.Repeat("x", 1<<20) + "\"\n", "1048576 characters, and an entry at most 4000"},

		{"sections", rows("[[section]]", 500), "section has 50"},
		{"formations", rows("[[formation]]", 10_000), "at most 1000 are taken"},
		{"surveys", rows("[[trajectory.survey]]", 100_000), "trajectory.survey has 100000 rows, and at most 3000 are taken"},
		{"casings", rows("[[section]]\n", 1) + strings.Repeat("[[section.casing]]\n", 10_000), "casing has 1000"},
		{"trials", rows("[[trial]]", 10_000), "trial has 10000 rows"},
		{"joints in all", rows("[[section]]\n"+strings.Repeat("[[section.joint]]\n", 1900), 6), "the lists section.joint have more than 8000 rows in all"},
		{"keys", small + "[x]\n" + lines("k%d=1\n", 600_000), "too many or too long keys"},
		{"tables", small + lines("[x%d]\n", 600_000), "too many or too long keys"},
		{"rows", small + strings.Repeat("[[x]]\n", 600_000), "too many or too long keys"},
		{"values", small + "x = [" + strings.Repeat("1,", 600_000) + "]\n", "too many values in arrays"},
		{"inline tables", small + "x = [" + strings.Repeat("{},", 600_000) + "]\n", "too many"},
		{"more than a plan", strings.Repeat("#", tomldoc.MaxSize+1), "larger than 8 MiB"},
	} {
		if c.name == "a picture" {
			c.want = "not"
		}
		_, err := planfile.Read("plan.toml", []byte(c.text))
		switch {
		case err == nil:
			t.Errorf("%s: is read", c.name)
		case !strings.HasPrefix(err.Error(), "plan.toml") || !strings.Contains(err.Error(), c.want):
			t.Errorf("%s: %.300s, want %q", c.name, err, c.want)
		default:
			if fault := oneLine(err.Error()); fault != "" {
				t.Errorf("%s: %s", c.name, fault)
			}
		}
	}
}

// lines returns n lines, each with its number.
func lines(format string, n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}

// TestStrangeFilesThatAreRead: what is odd but clear is read, and a plan that is saved unchanged is the file byte for byte.
func TestStrangeFilesThatAreRead(t *testing.T) {
	const mark = "\ufeff"
	long := strings.Repeat("x", 1<<20)
	for name, text := range map[string]string{
		"a byte order mark":         mark + small,
		"CRLF":                      strings.ReplaceAll(small, "\n", "\r\n"),
		"CRLF behind a mark":        mark + strings.ReplaceAll(small, "\n", "\r\n"),
		"mixed line ends":           strings.Replace(small, "\n", "\r\n", 2),
		"no newline at the end":     strings.TrimRight(small, "\n"),
		"marks in a remark":         small + "# \u009b2J \u202e \u200b \U000e0041\n",
		"a remark without end":      small + "# " + long,
		"a key without end":         small + "[x]\n" + long + " = 1\n",
		"a text without end":        small + "[x]\nx = \"" + long + "\"\n",
		"written escapes in a text": small + "[rig]\nname = \"\\u001b[2J\\u202e\u009b2J\\u0000\\u0007\"\n",
		"combining marks":           small + "[rig]\nname = \"e" + strings.Repeat("\u0301", 3000) + "\"\n",
		"written escapes in a key":  small + "[\"\\u001b[2J\u202e\"]\n\"\\u0007\" = \"\\u001b\"\n",
		"blank lines":               small + strings.Repeat("\n", 1<<20),
		"unknown keys":              small + "[x]\n" + lines("k%d = 1\n", 20_000),
		"depths in reverse":         small + "[[formation]]\ntop = \"3000 m\"\n[[formation]]\ntop = \"0 m\"\n",
	} {
		f, err := planfile.Read("plan.toml", []byte(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, notice := range f.Notices {
			if fault := oneLine(notice); fault != "" {
				t.Errorf("%s: %s", name, fault)
			}
		}
		if fault := oneLine(f.Plan.Rig.Name); fault != "" && !strings.Contains(name, "combining") {
			t.Errorf("%s: the rig: %s", name, fault)
		}
		path := filepath.Join(t.TempDir(), "plan.toml")
		if err := f.Save(path); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if got, _ := os.ReadFile(path); string(got) != text {
			t.Errorf("%s: was not kept: %d bytes of %d", name, len(got), len(text))
		}
		f.Plan.Well.Operator = "another"
		if err := f.Save(path); err != nil {
			t.Errorf("%s, changed: %v", name, err)
			continue
		}
		again, err := planfile.Open(path)
		if err != nil || again.Plan.Well.Operator != "another" {
			t.Errorf("%s, changed: %v", name, err)
		}
		got, _ := os.ReadFile(path)
		if strings.HasPrefix(text, mark) != strings.HasPrefix(string(got), mark) {
			t.Errorf("%s: the byte order mark was not kept", name)
		}
	}
}

// TestHugeFilesTakeLittleMemory: whatever a file holds, what is put aside while it is read is bounded.
func TestHugeFilesTakeLittleMemory(t *testing.T) {
	huge := filepath.Join(t.TempDir(), "huge.toml")
	if err := os.WriteFile(huge, []byte(small), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(huge, 100<<20); err != nil {
		t.Skip(err)
	}
	const most = 60 << 20 // a few times what may be read
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, err := planfile.Open(huge)
	runtime.ReadMemStats(&after)
	if err == nil || !strings.Contains(err.Error(), "larger than 8 MiB") {
		t.Errorf("100 MB of plan: %v", err)
	}
	if taken := after.TotalAlloc - before.TotalAlloc; taken > most {
		t.Errorf("100 MB of plan: %d MB put aside", taken>>20)
	}
}

// TestAPlanAsLargeAsItMayBe: every list of a well of five sections as long as it may be is read, saved and read again, and so is a
// log of months; one row more is refused.
func TestAPlanAsLargeAsItMayBe(t *testing.T) {
	source, _ := plans.Demo("ottermast-2")
	f, err := planfile.Read("demo", source)
	if err != nil {
		t.Fatal(err)
	}
	fill(f.Plan)
	f.Plan.Log = make([]model.LogRow, 2000)
	for i := range f.Plan.Log {
		f.Plan.Log[i] = model.LogRow{When: "2026-01-01T10:00:00Z", Who: "AB", What: model.LogSet, Path: "section[3].density", Old: "1.31 sg", New: "1.32 sg"}
	}
	path := filepath.Join(t.TempDir(), "plan.toml")
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	again, err := planfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if model.Hash(again.Plan) != model.Hash(f.Plan) {
		t.Error("another plan is read than was saved")
	}
	again.Plan.Formations = append(again.Plan.Formations, model.Formation{})
	if err := again.Save(path); err == nil || !strings.Contains(err.Error(), "at most") {
		t.Errorf("a row too many: %v", err)
	}
}

// fill makes every list of a plan but the log, of sections and of trials as long as it may be, with copies of its last row.
func fill(plan *model.Plan) {
	var in func(groups []*model.Group, at model.Place)
	in = func(groups []*model.Group, at model.Place) {
		for _, g := range groups {
			if g.List && g != model.SectionGroup() && g != model.TrialGroup() && g.Parent != model.TrialGroup() {
				there := g.Len(plan, at)
				more := g.Most() - there
				if g.Nested() {
					more = g.MostInAll()/g.Parent.Len(plan, model.Place{}) - there
				}
				g.Append(plan, at, more)
				for i := range more {
					for _, field := range g.Fields {
						entry := field.Absent()
						if there > 0 {
							entry = model.Ref{Group: g, Field: field, Place: g.At(at, there-1)}.Get(plan)
						}
						model.Ref{Group: g, Field: field, Place: g.At(at, there+i)}.Set(plan, entry)
					}
				}
			}
			for i := range g.Len(plan, at) {
				place := at
				if g.List {
					place = g.At(at, i)
				}
				in(g.Lists, place)
			}
		}
	}
	in(model.Groups(), model.Place{})
}
