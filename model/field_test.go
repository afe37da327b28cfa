package model_test

import (
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"borewalk/model"
	"borewalk/model/quantity"
)

func TestEveryFieldIsDeclaredWhole(t *testing.T) {
	total := 0
	everyGroup(func(g *model.Group) {
		keys := map[string]bool{}
		for _, f := range g.Fields {
			total++
			at := g.Path() + "." + f.Key
			switch {
			case keys[f.Key]:
				t.Errorf("%s stands twice", at)
			case f.Key == "" || strings.ToLower(f.Key) != f.Key || strings.ContainsAny(f.Key, " .[]-"):
				t.Errorf("%s is no key", at)
			case f.Label == "" || utf8.RuneCountInString(f.Label) > 16:
				t.Errorf("%s: label %q has %d columns", at, f.Label, utf8.RuneCountInString(f.Label))
			case f.Label != strings.TrimSpace(f.Label) || !ascii(f.Label) || !ascii(f.Name) || !ascii(f.Help):
				t.Errorf("%s: label, name or help with spaces at its ends or beyond ASCII", at)
			case f.Name == "" || f.Help == "":
				t.Errorf("%s has no name or no help", at)
			case f.Topic != model.TopicTrial && !slices.Contains(model.Topics(), f.Topic): // trials lie over the pages
				t.Errorf("%s belongs to no page", at)
			case (f.Type == model.ChoiceField) != (len(f.Choices) > 0):
				t.Errorf("%s: choices %q", at, f.Choices)
			}
			keys[f.Key] = true
		}
	})
	if total < 150 {
		t.Errorf("only %d fields", total)
	}
}

func ascii(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r > unicode.MaxASCII || r < ' ' }) < 0
}

func TestDefaultsParseAndLieInTheirRange(t *testing.T) {
	everyGroup(func(g *model.Group) {
		for _, f := range g.Fields {
			at := g.Path() + "." + f.Key
			if f.Type == model.QuantityField && f.Kind != 0 && f.Min.IsSet() != f.Max.IsSet() {
				t.Errorf("%s has half a range", at)
			}
			if f.Min.IsSet() && !(f.Min.SI < f.Max.SI) {
				t.Errorf("%s ranges from %s to %s", at, f.Min.Text(), f.Max.Text())
			}
			for _, end := range []quantity.Value{f.Min, f.Max} {
				if !end.IsSet() {
					continue
				}
				if e, err := f.Parse(end.Text(), 0); err != nil || e.Quantity.SI != end.SI {
					t.Errorf("%s: %s lies outside its own range: %v", at, end.Text(), err)
				}
			}
			if f.Default == "" {
				continue
			}
			e, err := f.Parse(f.Default, 0)
			if err != nil || !e.IsSet() {
				t.Errorf("%s: default %q: %v", at, f.Default, err)
			}
			if e != f.DefaultEntry() {
				t.Errorf("%s: default entry %+v, parsed %+v", at, f.DefaultEntry(), e)
			}
			if f.Type == model.ChoiceField && !slices.Contains(f.Choices, f.Default) {
				t.Errorf("%s: default %q is not among %q", at, f.Default, f.Choices)
			}
		}
	})
}

func TestRangesRefuseWhatLiesOutside(t *testing.T) {
	tried := 0
	everyGroup(func(g *model.Group) {
		for _, f := range g.Fields {
			if !f.Min.IsSet() {
				continue
			}
			tried++
			width := f.Max.SI - f.Min.SI
			for _, si := range []float64{f.Min.SI - width/100, f.Max.SI + width/100} {
				v := quantity.Value{SI: si, Unit: f.Max.Unit}
				if _, err := f.Parse(v.Text(), 0); err == nil {
					t.Errorf("%s.%s takes %s", g.Path(), f.Key, v.Text())
				}
			}
		}
	})
	if tried < 80 {
		t.Errorf("only %d ranges", tried)
	}
}

func TestChoicesAreTakenInAnyCase(t *testing.T) {
	f := field(t, "section", "returns")
	for text, want := range map[string]string{"rig": "rig", " RIG ": "rig", "Seabed": "seabed", "": ""} {
		if e, err := f.Parse(text, 0); err != nil || e.Text != want {
			t.Errorf("Parse(%q) = %q, %v", text, e.Text, err)
		}
	}
	if _, err := f.Parse("deck\x1b[31m", 0); err == nil || strings.ContainsRune(err.Error(), 0x1b) {
		t.Errorf("a choice that is none: %v", err)
	}
}

// field returns a field of a top-level group or list.
func field(t *testing.T, group, key string) *model.Field {
	t.Helper()
	for _, g := range model.Groups() {
		if g.Name == group {
			if f := g.Field(key); f != nil {
				return f
			}
		}
	}
	t.Fatalf("no field %s.%s", group, key)
	return nil
}

func TestEntriesReadBackFromTheirFileText(t *testing.T) {
	for _, name := range []string{"ottermast-2", "saltlantern-1"} {
		plan := demo(t, name)
		model.Walk(plan, func(g *model.Group, at model.Place) bool {
			for _, f := range g.Fields {
				e := model.Ref{Group: g, Field: f, Place: at}.Get(plan)
				if got, err := f.Parse(f.FileText(e), 0); err != nil || got != e {
					t.Errorf("%s.%s: %q reads back as %q: %v", g.Path(), f.Key, f.FileText(e), f.FileText(got), err)
				}
			}
			return true
		})
	}
}

func TestRangeTextSpeaksTheUnitsShown(t *testing.T) {
	f := field(t, "well", "air_gap")
	if got := f.RangeText(quantity.NewSystem(quantity.Metric, nil)); got != "5.00 to 80.0 m" {
		t.Errorf("RangeText = %q", got)
	}
	if got := field(t, "section", "returns").RangeText(quantity.System{}); got != "seabed, rig" {
		t.Errorf("RangeText of a choice = %q", got)
	}
	if got := field(t, "well", "name").RangeText(quantity.System{}); got != "" {
		t.Errorf("RangeText of text = %q", got)
	}
}

func TestCleanTakesWhatDrivesATerminal(t *testing.T) {
	for text, want := range map[string]string{
		"Ottermast-2":           "Ottermast-2",
		"\x1b[2Jgone":           " [2Jgone",
		"a\tb\nc\rd\x00e\x7ff":  "a b c d e f",
		"title\x9b31m\u009bx":   "title 31m x", // an invalid byte and the C1 control
		"\u202eright to left":   " right to left",
		"zero\u200bwidth\ufeff": "zero width ",
		"Å 5° ½ øæ":             "Å 5° ½ øæ",
	} {
		if got := model.Clean(text); got != want {
			t.Errorf("Clean(%q) = %q, want %q", text, got, want)
		}
	}
	if e, err := field(t, "well", "name").Parse("\x1b]0;owned\aWell", 0); err != nil || strings.ContainsAny(e.Text, "\x1b\a") {
		t.Errorf("a name keeps controls: %q, %v", e.Text, err)
	}
}

// TestUnitsOverrideTheSet: the plan's own unit counts for its kind, and only where the plan's units are wanted.
func TestUnitsOverrideTheSet(t *testing.T) {
	var p model.Plan
	p.Units = model.Units{quantity.Length: "ft", quantity.Diameter: "mm", quantity.Density: "ppg", quantity.Volume: "no unit", quantity.Temperature: "degF"}
	own, plain := p.System(quantity.Metric, true), p.System(quantity.Metric, false)
	for _, c := range []struct {
		kind       quantity.Kind
		own, plain string
	}{
		{quantity.Length, "ft", "m"},
		{quantity.Density, "ppg", "sg"},
		{quantity.EMW, "ppg", "sg"},
		{quantity.Volume, "m3", "m3"}, // what is no unit changes nothing
		{quantity.Temperature, "degF", "degC"},
		{quantity.Pressure, "bar", "bar"},
	} {
		if got := own.Unit(c.kind).ASCII(); got != c.own {
			t.Errorf("%v = %s, want %s", c.kind, got, c.own)
		}
		if got := plain.Unit(c.kind).ASCII(); got != c.plain {
			t.Errorf("%v without own units = %s, want %s", c.kind, got, c.plain)
		}
	}
	for _, g := range model.Groups() {
		if g.Name != "units" {
			continue
		}
		for _, f := range g.Fields {
			if len(f.Choices) < 2 {
				t.Errorf("units.%s offers %q", f.Key, f.Choices)
			}
			for _, symbol := range f.Choices {
				var with model.Plan
				e, err := f.Parse(symbol, 0)
				if err != nil {
					t.Errorf("units.%s = %q: %v", f.Key, symbol, err)
				}
				model.Ref{Group: g, Field: f}.Set(&with, e)
				if got := with.System(quantity.Metric, true).Unit(f.Kind).ASCII(); got != symbol {
					t.Errorf("units.%s = %q shows %q", f.Key, symbol, got)
				}
			}
		}
	}
}
