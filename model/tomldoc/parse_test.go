package tomldoc

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"
	"time"
)

func TestParseErrors(t *testing.T) {
	tests := []struct {
		name, src string
		line      int
		want      string // in the message
	}{
		{"unit without quotes", "a = 1\nwater_depth = 342 m # pilot\n", 2, `write water_depth = "342 m"`},
		{"unit against the number", "td = 342m", 1, `put it in quotes: "342m"`},
		{"word", "name = Ottermast two\n", 1, `text must stand in quotes; write "Ottermast two"`},
		{"point first", "a = .5", 1, "write 0.5"},
		{"no value", "a =\nb = 1", 1, "a value is missing"},
		{"no equals sign", "a 1\n", 1, "the key a has no = behind it"},
		{"name with an escape", `"\n\u001b\u009b" 1`, 1, "has no = behind it"},
		{"long text", "a = " + strings.Repeat("é ", 1000), 1, `é é…"`},
		{"sentence", "\n\nthis is a note\n", 3, "put # before a remark"},
		{"key", "Ölmenge = 1", 1, "a key is missing or not plain"},
		{"twice", "[well]\nname = \"x\"\nname = \"y\"\n", 3, "well.name is set a second time"},
		{"table twice", "[well]\n[other]\n[well]\n", 3, "well is set a second time"},
		{"table and list", "[section]\n[[section]]\n", 2, "[[section]]"},
		{"list and table", "[[section]]\n[section]\n", 2, "section is set a second time"},
		{"value as table", "a = 1\n[a.b]\n", 2, "a is a value and cannot hold keys"},
		{"open text", "a = \"x\nb = 1", 1, `is not closed; end it with "`},
		{"open text, CRLF", "b = 1\r\na = \"x\r\nc = 1", 2, `is not closed; end it with "`},
		{"open literal", "a = 'x\n'", 1, "is not closed; end it with '"},
		{"open long text", "\na = \"\"\"x\n\n", 2, `end it with """`},
		{"open long literal", "\na = '''x\n\n", 2, "end it with '''"},
		{"too many quotes", `a = """x""""""`, 1, "too many quotes"},
		{"open array", "a = [1,\n2,\n", 1, "the array that begins here is not closed"},
		{"open table", "a = {b = 1,\n", 1, "the inline table that begins here is not closed"},
		{"array without comma", "a = [\n1\n2]", 3, "a comma is missing in the array"},
		{"table without comma", "a = {b = 1 c = 2}", 1, "a comma is missing in the inline table"},
		{"open header", "\n[well\nname = 1", 2, "the header is not closed; end it with ]"},
		{"half open header", "[[section]\n", 1, "end it with ]]"},
		{"header with more", "[well] name = 1", 1, "something stands behind the header"},
		{"empty header", "[]", 1, "a key is missing"},
		{"value with more", "a = \"x\" y", 1, "something stands behind the value of a"},
		{"escape", `path = "C:\wells"`, 1, `write \\ for a backslash`},
		{"short escape", `path = "\u12"`, 1, "4 hexadecimal digits"},
		{"surrogate", `path = "\ud800"`, 1, "4 hexadecimal digits"},
		{"leading zero", "a = 007", 1, "the number 007 begins with a zero too many"},
		{"underscore", "a = 1__0", 1, "the number 1__0 has an underscore in a wrong place"},
		{"too large", "\na = 99999999999999999999", 2, "is too large"},
		{"no such day", "a = 2026-02-31", 1, "2026-02-31 is not a date"},
		{"number of letters", "a = 0x", 1, ""},
		{"point last", "a = 1.", 1, "1. is not a number"},
		{"zero byte", "a = 1\nb\x00", 2, "zero byte"},
		{"UTF-16", "\xff\xfea\x00", 1, "UTF-16"},
		{"Latin 1", "a = 1\nb = \"\xe9\"", 2, "0xe9 is not UTF-8"},
		{"escape sequence", "a = \"\x1b[31m\"", 1, "control character (0x1b)"},
		{"old Mac", "a = 1\rb = 2", 1, "carriage return"},
		{"dots, then a header", "a.b = 1\n[a]\nc = 2", 2, "how a is written here is not clear enough"},
		{"a header, then dots", "[a.b]\nc = 1\n[a]\nb.d = 2", 4, "how b is written here is not clear enough"},
		{"deep array", strings.Repeat("\n", 6) + "a = " + strings.Repeat("[", 100_000), 7, "more than 32 brackets"},
		{"deep table", "a = " + strings.Repeat("{a = ", 100_000), 1, "more than 32 brackets"},
		{"deep key", strings.Repeat("a.", 100_000) + "a = 1", 1, "more than 32 parts"},
		{"deep header", "[" + strings.Repeat("a.", 100_000) + "a]", 1, "more than 32 parts"},
		{"huge", strings.Repeat("#", MaxSize+1), 0, "larger than 8 MiB"},
		{"long keys", "[" + strings.Repeat("k", 1<<20) + "]\n" + strings.Repeat("a = 1\n", 1000), 256, "too many or too long keys"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := Parse("plan.toml", []byte(test.src))
			var e *Error
			if !errors.As(err, &e) {
				t.Fatalf("Parse gives %v, want an *Error", err)
			}
			if e.Line != test.line && test.want != "" || !strings.Contains(e.Msg, test.want) {
				t.Errorf("Parse gives %q, want line %d and %q", e.Error(), test.line, test.want)
			}
			if e.File != "plan.toml" || strings.ContainsAny(e.Error(), "\n\r\x1b\u009b") || len(e.Error()) > 400 {
				t.Errorf("%q is not a short line with the name of the file", e.Error())
			}
		})
	}
}

func TestColumn(t *testing.T) {
	_, err := Parse("", []byte("\ufeff\"é\" = .5"))
	var e *Error
	if !errors.As(err, &e) || e.Column != 7 || e.Error() != "line 1: "+e.Msg {
		t.Errorf("Parse gives %#v, want column 7", err)
	}
}

func TestParseValues(t *testing.T) {
	tests := []struct {
		raw  string
		want any
	}{
		{`"342 m"`, "342 m"},
		{`""`, ""},
		{`''`, ""},
		{`'C:\wells'`, `C:\wells`},
		{`"a\tb\u00e9\U0001F6E2\e\x41\\\""`, "a\tbé\U0001F6E2\x1bA\\\""},
		{"\"\"\"\na \\\n   b\"\"\"", "a b"},
		{"\"\"\"\r\na\r\n\"\"\"", "a\r\n"},
		{`"""a"" ""\""""""`, `a"" """""`},
		{`"""""""`, `"`},
		{"'''\na''b''''", "a''b'"},
		{"12", int64(12)},
		{"+1_000", int64(1000)},
		{"0xff", int64(255)},
		{"-0.5e3", -500.0},
		{"inf", math.Inf(1)},
		{"true", true},
		{"2026-01-31T10:20:30Z", time.Date(2026, 1, 31, 10, 20, 30, 0, time.UTC)},
		{"[]", []any{}},
		{"[1, 'x', [2],]", []any{int64(1), "x", []any{int64(2)}}},
		{"[ # a remark ]\n1 # another\n,2]", []any{int64(1), int64(2)}},
		{"[{a = 1}, 2]", []any{map[string]any{"a": int64(1)}, int64(2)}},
	}
	for _, test := range tests {
		for _, tail := range []string{"", " # remark", "\n", "\r\nz = 1"} {
			d, err := Parse("plan.toml", []byte("# first\n key . 'x' = "+test.raw+tail))
			if err != nil {
				t.Errorf("Parse(%s): %v", test.raw, err)
				continue
			}
			leaf := d.Root().Tables[0].Table.Values[0]
			if moment, ok := test.want.(time.Time); ok && moment.Equal(leaf.Value.(time.Time)) {
				leaf.Value = moment
			}
			if leaf.Key != "x" || leaf.Line != 2 || leaf.Raw != test.raw || !reflect.DeepEqual(leaf.Value, test.want) {
				t.Errorf("Parse(%s) = %#v, want %#v", test.raw, leaf, test.want)
			}
		}
	}
	local := mustParse(t, "a = 1979-05-27 07:32:00 # remark\nb = 07:32:00\nc = 1979-05-27").Root()
	if local.Values[0].Raw != "1979-05-27 07:32:00" || local.Values[2].Raw != "1979-05-27" {
		t.Errorf("dates are %v", local.Values)
	}
}

func TestRoot(t *testing.T) {
	d := mustParse(t, `# notes
borewalk = 1
[well]
name = "Ottermast-2"
[well.rig]
name = "Tern"
[[section]]
name = "a"
[[section.casing]]
od = "36 in"
[section.cement]
top = "1 m"
[[section]]
[[section.casing]]
[[section.casing]]
od = "30 in"
[other]
x.y = 1
z = [{a = 1}, {b = 2}]
`)
	root := d.Root()
	if root.Origin == 0 || len(root.Values) != 1 || len(root.Tables) != 2 || len(root.Lists) != 1 {
		t.Fatalf("Root() = %+v", root)
	}
	if well := root.Tables[0]; well.Name != "well" || well.Table.Line != 3 || well.Table.Tables[0].Table.Values[0].Raw != `"Tern"` {
		t.Errorf("well = %+v", well)
	}
	sections := root.Lists[0]
	if sections.Name != "section" || sections.Line != 7 || sections.Inline || len(sections.Rows) != 2 {
		t.Fatalf("section = %+v", sections)
	}
	if c := sections.Rows[1].Lists[0].Rows; len(c) != 2 || c[1].Values[0].Value != "30 in" || c[1].Line != 15 {
		t.Errorf("casings = %+v", c)
	}
	if c := sections.Rows[0].Tables[0]; c.Name != "cement" || c.Table.Values[0].Line != 12 {
		t.Errorf("cement = %+v", c)
	}
	z := root.Tables[1].Table.Lists[0]
	if !z.Inline || z.Line != 19 || len(z.Rows) != 2 || z.Rows[1].Values[0].Key != "b" {
		t.Errorf("z = %+v", z)
	}
	seen := map[Origin]bool{}
	for _, row := range append(sections.Rows, z.Rows...) {
		if seen[row.Origin] || row.Origin == 0 {
			t.Errorf("origin %d is 0 or used twice", row.Origin)
		}
		seen[row.Origin] = true
	}
	if d.Name() != "plan.toml" {
		t.Errorf("Name() = %q", d.Name())
	}
}

func TestEmpty(t *testing.T) {
	for _, src := range []string{"", "\n", "\r\n \t\r\n", "# x", byteOrderMark, byteOrderMark + "\n"} {
		d := mustParse(t, src)
		if r := d.Root(); len(r.Values)+len(r.Tables)+len(r.Lists) != 0 {
			t.Errorf("Root of %q = %+v", src, r)
		}
		if string(d.Bytes()) != src {
			t.Errorf("Bytes of %q = %q", src, d.Bytes())
		}
	}
}
