package dialogue_test

import (
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/quantity"
	"borewalk/plans"
	"borewalk/ui/dialogue"
	"borewalk/ui/sheet"
)

// everyEntry calls visit for each entry of a plan.
func everyEntry(plan *model.Plan, visit func(model.Ref)) {
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			visit(model.Ref{Group: g, Field: f, Place: at})
		}
		return true
	})
}

// TestEveryEntryIsReachedByItsPath: it is said with what it holds, and what it holds can be said back.
func TestEveryEntryIsReachedByItsPath(t *testing.T) {
	for _, name := range plans.Names() {
		d := open(t, name, dialogue.Options{})
		hash, n := model.Hash(d.plan), 0
		set, _ := quantity.ParseSet(d.plan.Well.UnitSet)
		system := d.plan.System(set, true)
		everyEntry(d.plan, func(ref model.Ref) {
			n++
			path := string(ref.Path())
			want := ref.Field.ScreenText(ref.Get(d.plan), system)
			if want == "" {
				want = "blank"
			}
			if got := d.hear(path); !strings.Contains(got, ref.Words()+": ") || !strings.Contains(got, want) {
				t.Fatalf("%s: %q, want %q", path, got, want)
			}
			text := ref.Field.FileText(ref.Get(d.plan))
			if text == "" && !(ref.Field.Type == model.ChoiceField && ref.Field.Default != "") {
				text = "blank"
			}
			if text == "" {
				return
			}
			if got := d.hear(path + " = " + text); !strings.HasPrefix(got, "nothing changed: ") {
				t.Fatalf("%s = %s: %q", path, text, got)
			}
		})
		if n < 1000 || model.Hash(d.plan) != hash {
			t.Errorf("%s: %d entries, or the plan is another now", name, n)
		}
	}
}

// TestAnyEntryIsSetByItsPath: to another content, which is then the plan's, and undo gives the plan back.
func TestAnyEntryIsSetByItsPath(t *testing.T) {
	d := open(t, plans.Default, dialogue.Options{})
	d.plan.Sections = d.plan.Sections[:2] // fewer are worked out sooner
	var refs []model.Ref
	everyEntry(d.plan, func(ref model.Ref) { refs = append(refs, ref) })
	rapid.Check(t, func(t *rapid.T) {
		ref := rapid.SampledFrom(refs).Draw(t, "entry")
		hash, was := model.Hash(d.plan), ref.Get(d.plan)
		to := another(t, ref, was)
		if ref.Field.Same(was, to) {
			return
		}
		got := d.hear(string(ref.Path()) + " = " + ref.Field.FileText(to))
		if strings.Contains(got, "what moves?") {
			got = d.hear("3")
		}
		if now := ref.Get(d.plan); !ref.Field.Same(now, to) {
			t.Fatalf("%s is %q, want %q: %s", ref.Path(), ref.Field.FileText(now), ref.Field.FileText(to), got)
		}
		if got := d.hear("undo"); !strings.HasPrefix(got, "undid ") || model.Hash(d.plan) != hash {
			t.Fatalf("%s: undo: %s", ref.Path(), got)
		}
	})
}

// another draws a content that an entry may have.
func another(t *rapid.T, ref model.Ref, was model.Entry) model.Entry {
	f := ref.Field
	switch f.Type {
	case model.ChoiceField:
		return model.Entry{Text: rapid.SampledFrom(f.Choices).Draw(t, "choice")}
	case model.TextField:
		return model.Entry{Text: rapid.StringMatching(`[a-z]{3,9}( [a-z]{1,9}){0,2}`).Draw(t, "text")}
	}
	unit := was.Quantity.Unit
	if !was.IsSet() {
		unit = f.Min.Unit
		if !f.Min.IsSet() {
			set, _ := quantity.ParseSet("metric")
			unit = quantity.NewSystem(set, nil).Unit(f.Kind)
		}
	}
	least, most := 0.0, 100.0
	if f.Min.IsSet() {
		least = unit.FromSI(f.Min.SI)
	}
	if f.Max.IsSet() {
		most = unit.FromSI(f.Max.SI)
	}
	v := quantity.Of(float64(rapid.IntRange(int(least)+1, max(int(least)+1, int(most))).Draw(t, "number")), unit)
	entry, err := f.Parse(v.Text(), unit)
	if err != nil { // a range without a whole number
		return was
	}
	return entry
}

// said fails where an answer holds what could drive a terminal, or what only an eye can read.
func said(t interface{ Fatalf(string, ...any) }, text string) {
	for _, r := range text {
		drawn := r >= 0x2500 && r <= 0x259f
		if r != '\n' && (drawn || unicode.IsControl(r) || r == unicode.ReplacementChar) {
			t.Fatalf("%U in %q", r, text)
		}
	}
}

// TestPapersAreSaid without their drawings.
func TestPapersAreSaid(t *testing.T) {
	d := open(t, plans.Default, dialogue.Options{})
	d.hear("lines all", "section 4")
	for _, paper := range sheet.PaperNames() {
		got := d.hear("print " + paper)
		said(t, got)
		if strings.Count(got, "\n") < 8 && !strings.HasPrefix(got, "nothing to print as ") {
			t.Errorf("%s: %s", paper, got)
		}
	}
}

// small is a session on a new plan of one section, which is worked out soon.
func small() *talk {
	d := &talk{plan: model.NewPlan(model.Start{Name: "Testling-1", UnitSet: "metric", Programme: model.ProgrammeUsual,
		AirGap: quantity.Of(26, quantity.Metre), WaterDepth: quantity.Of(342, quantity.Metre), Sections: quantity.Of(1, quantity.Bare)})}
	d.Session = dialogue.New(planfile.New(d.plan), &d.out, dialogue.Options{Disk: &d.disk})
	return d
}

// FuzzHear: whatever lines are typed, nothing breaks, nothing that is said drives a terminal, and no answer is longer than asked.
func FuzzHear(f *testing.F) {
	for _, seed := range []string{
		"entries\n1\n1 \x1b[2J\x1b]0;x\a\n", "section 1\nmud\nfigures all\nworking 1\ncopy working 1", "save\nstop\nsave as x\nA\nquit\n2",
		"section[1].td = 600 m\nundo\nredo\nchanges\nmoved 3", "well.name = \xff\xfe\x9b31m\nwhere\nprint sheets\nmore all", "add section\nremove section 1\nyes\nentries",
		"well.water_depth = 400 m\n9\n1\nmore", "find \u202emud\ngo 1\n1 blank", "new\n\nfield\n80 ft\n1200\n3\n\nquit", "print step-list as csv to a b.csv\nprint as to",
		"[.=\nsection[-1].td\nsection[99999999999999999999].td = 1\nset = =\n=", "lines 2\nhelp\nmore\nmore 1\nlines 0", "proposals\ntake 1\ntake 1", "casing\nadd pup joint 2\nremove pup joint 1\n3 4 m",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d := small()
		for i, line := range strings.Split(text, "\n") {
			if i == 8 {
				break
			}
			before := d.out.Len()
			d.Hear(line)
			got := d.out.String()[before:]
			said(t, got)
			if strings.Count(got, "\n") > 30 && !strings.Contains(text, "lines") && !strings.ContainsAny(text, "0123456789") && !strings.Contains(strings.ToLower(text), "all") {
				t.Fatalf("%q: %s", line, got)
			}
		}
		d.Lose()
		said(t, d.out.String())
	})
}
