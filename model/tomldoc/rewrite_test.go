package tomldoc

import (
	"strings"
	"testing"
)

// TestEnds looks at line ends, the byte order mark and the end of the file,
// which golden files cannot show.
func TestEnds(t *testing.T) {
	tests := []struct {
		name, src string
		changes   []string
		want      string
	}{
		{
			"CRLF", "borewalk = 1\r\n\r\n[well]\r\nname = \"x\" # here\r\n",
			[]string{`set well.rig "Tern"`, `add prognosis 0`, `set prognosis[0].depth "1 m"`},
			"borewalk = 1\r\n\r\n[well]\r\nname = \"x\" # here\r\nrig = \"Tern\"\r\n\r\n[[prognosis]]\r\ndepth = \"1 m\"\r\n",
		},
		{
			"no final line end", "[[prognosis]]\ndepth = \"1 m\"\n\n[[prognosis]]\ndepth = \"2 m\"",
			[]string{"move prognosis 1 0"},
			"[[prognosis]]\ndepth = \"2 m\"\n\n[[prognosis]]\ndepth = \"1 m\"",
		},
		{
			"no final line end, last removed", "[[prognosis]]\ndepth = \"1 m\"\n\n[[prognosis]]\ndepth = \"2 m\"",
			[]string{"remove prognosis[1]"},
			"[[prognosis]]\ndepth = \"1 m\"",
		},
		{
			"no final line end, one more", "[[prognosis]]\ndepth = \"1 m\"",
			[]string{"add prognosis 1", `set prognosis[1].pore "1 sg"`},
			"[[prognosis]]\ndepth = \"1 m\"\n\n[[prognosis]]\npore = \"1 sg\"",
		},
		{
			"byte order mark", byteOrderMark + "[well]\nname = 'x'\n",
			[]string{"set borewalk 1"},
			byteOrderMark + "borewalk = 1\n\n[well]\nname = 'x'\n",
		},
		{
			"mark alone", byteOrderMark,
			[]string{"set borewalk 1"},
			byteOrderMark + "borewalk = 1\n",
		},
		{
			"last key of the root", "title = 1\n\n\n[well]\nname = 1\n",
			[]string{"unset title"},
			"[well]\nname = 1\n",
		},
		{
			"only key", "title = 1\n",
			[]string{"unset title"},
			"",
		},
		{
			"key exchanged", "title = 1 # one\n[well]\nname = 1",
			[]string{"unset title", "set borewalk 1", "unset well.name", "set well.rig 2"},
			"borewalk = 1\n[well]\nrig = 2",
		},
		{
			"dotted key exchanged", "well.name = 1\n",
			[]string{"unset well.name", "set well.rig 2"},
			"well.rig = 2\n",
		},
		{
			"trailing comma", "well = {name = 1,}",
			[]string{"unset well.name"},
			"well = {}",
		},
		{
			"trailing remark above a header", "[rules]\n# margin of old\nmargin = 1\n[well]\nname = 1\n",
			[]string{"unset rules.margin"},
			"[rules]\n# margin of old\n\n[well]\nname = 1\n",
		},
		{
			"equal numbers", "borewalk = 1.0\ntitle = 0x10\nunits = nan",
			[]string{"set borewalk 1", "set title 16", "set units +nan"},
			"borewalk = 1.0\ntitle = 0x10\nunits = nan",
		},
		{
			"equal dates and arrays", "borewalk = 2026-01-31 10:00:00Z\ntitle = [ 1,{a = 'x'}]\nunits = [true]",
			[]string{"set borewalk 2026-01-31T10:00:00Z", `set title [1, {a = "x"}]`, "set units [false]"},
			"borewalk = 2026-01-31 10:00:00Z\ntitle = [ 1,{a = 'x'}]\nunits = [false]",
		},
		{
			"quoted names", "['well']\n\"name\" = 1\n",
			[]string{"set well.name 2"},
			"['well']\n\"name\" = 2\n",
		},
		{
			"dotted in braces", "rules = {kick.volume = 1}\n",
			[]string{"set rules.kick.limit 2"},
			"rules = {kick.volume = 1, kick.limit = 2}\n",
		},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d := mustParse(t, test.src)
			w := wantOf(d.Root(), planSchema())
			for _, c := range test.changes {
				change(t, &w, c)
			}
			got, err := d.Rewrite(w)
			if err != nil || string(got) != test.want {
				t.Errorf("Rewrite = %q, %v\nwant      %q", got, err, test.want)
			}
		})
	}
}

func TestRewriteRefuses(t *testing.T) {
	tests := []struct {
		name, src string
		changes   []string
		want      string
	}{
		{"no value", "a = 1", []string{"set title Ottermast"}, "internal error: Ottermast is not the text of a value"},
		{"two values", "a = 1", []string{"set title 1\nb = 2"}, "internal error"},
		{"value with a remark", "a = 1", []string{"set title 1 # x"}, "internal error"},
		{"row of a list in braces", "well = {}\nsection = [{}]", []string{"remove section[0]"}, "plan.toml:2: the rows of section stand in an array"},
		{"dots in braces", "rules = {kick.volume = 1}", []string{"unset rules.kick.volume", "set rules.kick.limit 1"}, "write it as a [rules.kick] block"},
		{"table with a list into braces", "[[section]]\ncement = {}", []string{"add section[0].cement.slurry 0"}, "plan.toml:2: cement stands in braces"},
		{"value for a table", "\nwell = 1", []string{"set well.name 1"}, "plan.toml:2: well is a value, but must be a table; write it as [well]"},
		{"list for a value", "[[title]]", []string{"set title 1"}, "plan.toml:1: title is a list, but must be a value"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			d := mustParse(t, test.src)
			w := wantOf(d.Root(), planSchema())
			for _, c := range test.changes {
				change(t, &w, c)
			}
			got, err := d.Rewrite(w)
			if err == nil || !strings.Contains(err.Error(), test.want) {
				t.Errorf("Rewrite = %q, %v; want an error with %q", got, err, test.want)
			}
		})
	}
}

// TestForeignOrigin gives rows the origins of other rows: they count as new.
func TestForeignOrigin(t *testing.T) {
	d := mustParse(t, "[[a]]\nx = 1\nmine = 1\n[[b]]\nx = 2\n")
	row := func(of Origin, x string) Want { return Want{Origin: of, Values: []KeyText{{"x", x}}} }
	a := d.Root().Lists[0].Rows[0].Origin
	got, err := d.Rewrite(Want{Lists: []WantList{
		{Name: "a", Rows: []Want{row(a, "1"), row(a, "3"), row(99, "4"), row(-1, "5")}},
		{Name: "b", Rows: []Want{row(a, "6")}},
	}})
	want := "[[a]]\nx = 1\nmine = 1\n[[a]]\nx = 3\n[[a]]\nx = 4\n[[a]]\nx = 5\n[[b]]\nx = 6\n"
	if err != nil || string(got) != want {
		t.Errorf("Rewrite = %q, %v\nwant      %q", got, err, want)
	}
}

// TestBehindApart puts a new list behind one whose last row stands apart.
func TestBehindApart(t *testing.T) {
	d := mustParse(t, "[[a]]\n[x]\n[[a.c]]\ny = 1\n[z]\n")
	row := Want{Origin: d.Root().Lists[0].Rows[0].Origin}
	got, err := d.Rewrite(Want{Lists: []WantList{{"a", []Want{row}}, {"b", []Want{{}}}}})
	want := "[[a]]\n[x]\n[[a.c]]\ny = 1\n[[b]]\n[z]\n"
	if err != nil || string(got) != want {
		t.Errorf("Rewrite = %q, %v\nwant      %q", got, err, want)
	}
}

// TestTooLarge lets a document grow beyond what could be read again.
func TestTooLarge(t *testing.T) {
	d := mustParse(t, "a = 1\n#"+strings.Repeat("x", MaxSize-20))
	if _, err := d.Rewrite(Want{Values: []KeyText{{"b", Quote("some more text")}}}); err == nil || strings.Contains(err.Error(), "internal") {
		t.Errorf("Rewrite gives %v", err)
	}
}

// TestCheck damages what Rewrite would write and sees whether that is noticed.
func TestCheck(t *testing.T) {
	const src = "borewalk = 1\nmine = 2\nfree = [1]\n[well]\nname = 'x'\n[own]\nz = 1\n[[section]]\nname = 'a'\nowner = 'Bess'\n[[own.row]]\n"
	d := mustParse(t, src)
	w := wantOf(d.Root(), planSchema())
	if err := d.check(src, &w); err != nil {
		t.Fatalf("check: %v", err)
	}
	for _, damage := range [][2]string{
		{"borewalk = 1", "borewalk = 2"},
		{"borewalk = 1", ""},
		{"borewalk = 1", "borewalk = 1\ntitle = 1"},
		{"borewalk = 1", "borewalk = 1\nnew = 1"},
		{"mine = 2", "mine = 3"},
		{"mine = 2", ""},
		{"mine = 2", "mine.x = 2"},
		{"free = [1]", "free = [{}]"},
		{"name = 'x'", ""},
		{"[well]\nname = 'x'\n", ""},
		{"[well]", "[[well]]"},
		{"z = 1", ""},
		{"z = 1", "z = 1\ny = 1"},
		{"[own]\nz = 1", ""},
		{"name = 'a'", "name = 'b'"},
		{"owner = 'Bess'", ""},
		{"owner = 'Bess'", "owner = 'Bess'\n[[section]]"},
		{"[[section]]", "[section]"},
		{"[[section]]\nname = 'a'\nowner = 'Bess'", ""},
		{"[[own.row]]", "[[own.row]]\n[[own.row]]"},
		{"[[own.row]]", "[own.row]"},
		{"[[own.row]]", "= broken"},
	} {
		text := strings.Replace(src, damage[0], damage[1], 1)
		if err := d.check(text, &w); err == nil {
			t.Errorf("check does not see %q become %q", damage[0], damage[1])
		}
	}
}

func TestNothingWanted(t *testing.T) {
	const src = "a = 1\n[b]\nc = 2\n"
	got, err := mustParse(t, src).Rewrite(Want{})
	if err != nil || string(got) != src {
		t.Errorf("Rewrite = %q, %v", got, err)
	}
}

// TestIntoBraces adds tables to a table in braces, and a list, which has no room.
func TestIntoBraces(t *testing.T) {
	value := Want{Values: []KeyText{{"x", "1"}, {"y", ""}}}
	deep := func(lists ...WantList) Want {
		inner := Want{Values: value.Values, Lists: lists, Tables: []NamedWant{{"c", value}, {"none", Want{}}}}
		return Want{Tables: []NamedWant{{"a", Want{Tables: []NamedWant{{"b", inner}}}}}}
	}
	d := mustParse(t, "a = { z = 1 }\n")
	got, err := d.Rewrite(deep())
	if want := "a = { z = 1, b = { x = 1, c = { x = 1 } } }\n"; err != nil || string(got) != want {
		t.Errorf("Rewrite = %q, %v\nwant      %q", got, err, want)
	}
	if _, err := d.Rewrite(deep(WantList{"rows", []Want{{}}})); err == nil || !strings.Contains(err.Error(), "write it as a [a] block") {
		t.Errorf("Rewrite gives %v", err)
	}
}
