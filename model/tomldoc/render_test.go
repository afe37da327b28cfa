package tomldoc

import (
	"testing"

	"pgregory.net/rapid"
)

func TestQuote(t *testing.T) {
	tests := []struct{ in, want string }{
		{"", `""`},
		{"342 m", `"342 m"`},
		{`13 5/8" \ x`, `"13 5/8\" \\ x"`},
		{"a\tb\nc\rd\be\f", `"a\tb\nc\rd\be\f"`},
		{"\x00\x1b[31m\x7f\u0085", `"\u0000\u001B[31m\u007F\u0085"`},
		{"°é€", `"°é€"`},
		{"\xff", "\"\ufffd\""},
	}
	for _, test := range tests {
		if got := Quote(test.in); got != test.want {
			t.Errorf("Quote(%q) = %s, want %s", test.in, got, test.want)
		}
	}
}

// TestQuoteBack reads back what Quote writes.
func TestQuoteBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "s")
		d := mustParse(t, Quote(s)+" = "+Quote(s))
		if leaf := d.Root().Values[0]; leaf.Key != s || leaf.Value != s {
			t.Fatalf("Quote(%q) = %s reads as %q", s, Quote(s), leaf.Value)
		}
	})
}

func TestRender(t *testing.T) {
	w := Want{
		Values: []KeyText{{"borewalk", "1"}, {"title", ""}, {"odd key", `"x"`}},
		Tables: []NamedWant{
			{"empty", Want{Values: []KeyText{{"x", ""}}}},
			{"well", Want{Values: []KeyText{{"name", `"Ottermast-2"`}}}},
			{"rules", Want{Tables: []NamedWant{{"kick", Want{Values: []KeyText{{"volume", `"8 m3"`}}}}}}},
		},
		Lists: []WantList{
			{"section", []Want{
				{Values: []KeyText{{"td", `"448 m"`}}, Lists: []WantList{{"casing", []Want{{}, {}}}}},
				{},
			}},
			{"none", nil},
		},
	}
	const body = `borewalk = 1
"odd key" = "x"

[well]
name = "Ottermast-2"

[rules.kick]
volume = "8 m3"

[[section]]
td = "448 m"

[[section.casing]]

[[section.casing]]

[[section]]
`
	tests := []struct {
		name   string
		w      Want
		header string
		want   string
	}{
		{"all", w, "", body},
		{"with header", w, "A plan.\n\n# of sorts\n", "# A plan.\n#\n# of sorts\n\n" + body},
		{"nothing", Want{}, "", ""},
		{"header alone", Want{}, "A plan.", "# A plan.\n"},
	}
	for _, test := range tests {
		if got := string(Render(test.w, test.header)); got != test.want {
			t.Errorf("Render %s = \n%s\nwant\n%s", test.name, got, test.want)
		}
	}
	// What was rendered fresh is what Rewrite makes of an empty document.
	got, err := mustParse(t, "").Rewrite(w)
	if err != nil || string(got) != body {
		t.Errorf("Rewrite of nothing = %v\n%s\nwant\n%s", err, got, body)
	}
}
