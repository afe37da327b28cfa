package model

import (
	"slices"
	"strings"
	"sync"
)

// What is as built goes before what was planned. Which planned entry an actual takes the place of is said once, where the
// actual is declared; here that becomes the plan that counts, and the reason why the planned entry does not.

// HasActuals reports whether anything of a section is as built.
func (s *Section) HasActuals() bool { return s.Built != (Built{}) || len(s.BuiltSlurries) > 0 }

func (plan *Plan) hasActuals() bool {
	for i := range plan.Sections {
		if plan.Sections[i].HasActuals() {
			return true
		}
	}
	return false
}

// AsBuilt returns the plan that counts: what is as built stands in it in place of what was planned, and what is entered as built but
// does not count is blank. Where nothing is as built, that is the plan itself. It shares its lists with the plan and must not be changed.
func AsBuilt(plan *Plan) *Plan {
	if !plan.hasActuals() {
		return plan
	}
	counts := plan.withOwnSections()
	for i := range counts.Sections {
		for _, f := range BuiltGroup().Fields {
			actual := Ref{Group: BuiltGroup(), Field: f, Place: Place{Outer: i}}
			switch entry := actual.Get(plan); {
			case !entry.IsSet():
			case actual.Idle(plan) != "":
				actual.Set(counts, Entry{})
			case f.Over != "":
				f.planned(f.Over, i).Set(counts, entry)
			}
		}
	}
	return counts
}

// AsPlanned returns the plan as it was before anything was as built. It shares its lists with the plan and must not be changed.
func AsPlanned(plan *Plan) *Plan {
	if !plan.hasActuals() {
		return plan
	}
	was := plan.withOwnSections()
	for i := range was.Sections {
		was.Sections[i].Built, was.Sections[i].BuiltSlurries = Built{}, nil
	}
	return was
}

// withOwnSections returns a copy of the plan whose sections are its own; the lists within them are shared.
func (plan *Plan) withOwnSections() *Plan {
	copied := *plan
	copied.Sections = slices.Clone(plan.Sections)
	return &copied
}

// planned returns the entry of a section that an actual names by its path within the section: of the section itself, or of a
// single table within it.
func (f *Field) planned(path string, section int) Ref {
	group, key := SectionGroup(), path
	if table, in, nested := strings.Cut(path, "."); nested {
		group, key = within(table), in
	}
	planned := group.Field(key)
	if planned == nil || group.Nested() || planned.Type != f.Type && path == f.Over {
		panic("model: internal error: " + f.Key + " as built takes the place of " + path)
	}
	return Ref{Group: group, Field: planned, Place: Place{Outer: section}}
}

// actuals lists, for each planned field, what takes its place or decides it when it is as built.
var actuals = sync.OnceValue(func() map[*Field][]*Field {
	over := map[*Field][]*Field{}
	for _, f := range BuiltGroup().Fields {
		for _, path := range append(slices.Clone(f.Aside), f.Over) {
			if path != "" {
				planned := f.planned(path, 0).Field
				over[planned] = append(over[planned], f)
			}
		}
	}
	return over
})

// Actual returns the entry that counts in place of a planned one because it is as built, and whether there is one.
func (r Ref) Actual(plan *Plan) (Ref, bool) {
	for _, f := range actuals()[r.Field] {
		actual := Ref{Group: BuiltGroup(), Field: f, Place: Place{Outer: r.Place.Outer}}
		if actual.Get(plan).IsSet() && actual.Idle(plan) == "" {
			return actual, true
		}
	}
	return Ref{}, false
}

// AsBuilt says what counts in place of an entry that would count as planned, such as "as built: 2143 m counts"; nothing otherwise.
func (r Ref) AsBuilt(plan *Plan) string {
	actual, ok := r.Actual(plan)
	if !ok || r.idleAsPlanned(plan) != "" {
		return ""
	}
	what := actual.Field.FileText(actual.Get(plan))
	if planned := actual.Field.Over; planned == "" || actual.Field.planned(planned, 0).Field != r.Field {
		what = strings.ToLower(actual.Field.Name) + ", " + what + ","
	}
	return "as built: " + what + " counts"
}
