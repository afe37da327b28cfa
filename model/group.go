package model

import (
	"slices"
	"strings"

	"borewalk/model/quantity"
)

// Group is a set of fields that stand together in the file: a single table such as [well], or a list of rows such as
// [[section]], which may hold lists and single tables of its own.
type Group struct {
	Name   string // in the file, within its parent
	Title  string // on the screen: "Pump", "Section"
	Parent *Group // nil at the top of the file
	Fields []*Field
	Lists  []*Group // lists and single tables within this group
	List   bool
	Topic  Topic  // page on which rows of the list are added, or on which a table within a row stands
	Help   string // what a row, or a table within one, is

	row    func(plan *Plan, at Place) any
	count  func(plan *Plan, at Place) int
	grow   func(plan *Plan, at Place, n int)
	insert func(plan *Plan, at Place, row any)
	remove func(plan *Plan, at Place) any
	within func(parent any) any // for a single table within a row: where it lies in that row
	fresh  func() any
	origin func(row any) *int
}

// Place says which row of a list, and for a list within a section's row, which row of that. Both count from zero.
type Place struct {
	Outer, Inner int
}

// Nested reports whether the group's rows stand within rows of another list, so that Place.Inner counts them.
func (g *Group) Nested() bool { return g.List && g.Parent != nil && g.Parent.List }

// Path returns the group's full name in the file, such as "section.casing".
func (g *Group) Path() string {
	if g.Parent == nil {
		return g.Name
	}
	return g.Parent.Path() + "." + g.Name
}

// Len returns the number of rows of a list, at the given place of its parent, and 1 for a single table.
func (g *Group) Len(plan *Plan, at Place) int {
	if !g.List {
		return 1
	}
	return g.count(plan, at)
}

// At returns the place of row i of the list, beneath the same outer row as at.
func (g *Group) At(at Place, i int) Place {
	if g.Nested() {
		return Place{Outer: at.Outer, Inner: i}
	}
	return Place{Outer: i}
}

// Index returns which row of the list a place means.
func (g *Group) Index(at Place) int {
	if g.Nested() {
		return at.Inner
	}
	return at.Outer
}

// Has reports whether the plan holds the row that a place means.
func (g *Group) Has(plan *Plan, at Place) bool {
	if !g.List {
		return g.Parent == nil || g.Parent.Has(plan, at)
	}
	if g.Nested() && !g.Parent.Has(plan, Place{Outer: at.Outer}) {
		return false
	}
	i := g.Index(at)
	return i >= 0 && i < g.count(plan, at)
}

// Origin returns the row's mark of where it stood in its file, for the file reader to set and the writer to use.
func (g *Group) Origin(plan *Plan, at Place) *int { return g.origin(g.row(plan, at)) }

// Append adds n blank rows to the end of a list, for a reader to fill.
func (g *Group) Append(plan *Plan, at Place, n int) { g.grow(plan, at, n) }

// setDefaults gives a blank row, and the single tables within it, what a new one starts with.
func (g *Group) setDefaults(row any) {
	for _, f := range g.Fields {
		f.set(row, f.DefaultEntry())
	}
	for _, in := range g.Lists {
		if in.within != nil {
			in.setDefaults(in.within(row))
		}
	}
}

// blank returns a row with nothing in it: as one of which a file says nothing.
func (g *Group) blank() any {
	row := g.fresh()
	g.setAbsent(row)
	return row
}

func (g *Group) setAbsent(row any) {
	for _, f := range g.Fields {
		f.set(row, f.Absent())
	}
	for _, in := range g.Lists {
		if in.within != nil {
			in.setAbsent(in.within(row))
		}
	}
}

// Field returns the group's field with the given key, or nil.
func (g *Group) Field(key string) *Field {
	for _, f := range g.Fields {
		if f.Key == key {
			return f
		}
	}
	return nil
}

// Ref is one field of one row: the address of a single entry of the plan.
type Ref struct {
	Group *Group
	Field *Field
	Place Place
}

// Get returns the entry.
func (r Ref) Get(plan *Plan) Entry { return r.Field.get(r.Group.row(plan, r.Place)) }

// Set replaces the entry, without a record of it; edits that can be undone go through History.
func (r Ref) Set(plan *Plan, e Entry) { r.Field.set(r.Group.row(plan, r.Place), e) }

// Idle says why the entry does not count just now, such as that the shoe follows from the total depth; it returns
// nothing when the entry counts.
func (r Ref) Idle(plan *Plan) string {
	if why := r.idleAsPlanned(plan); why != "" {
		return why
	}
	return r.AsBuilt(plan)
}

// idleAsPlanned is Idle for what of the plan keeps an entry from counting, whatever is as built.
func (r Ref) idleAsPlanned(plan *Plan) string {
	switch {
	case r.Field.inside != nil:
		return r.Field.inside(plan, r.Place)
	case r.Field.when != nil:
		return r.Field.when(plan, r.Group.row(plan, r.Place))
	}
	return ""
}

// Idle says why a row of a list would not count, were there one at a place: nothing of it does, by the row that holds it.
func (g *Group) Idle(plan *Plan, at Place) (why string) {
	for _, f := range g.Fields {
		if f.inside == nil {
			return ""
		}
		if why = f.inside(plan, at); why == "" {
			return ""
		}
	}
	return why
}

// declaration is a field of rows of type T, before its type is forgotten.
type declaration[T any] struct {
	Key, Label, Name string
	Topic            Topic
	Type             FieldType
	Kind             quantity.Kind
	Range            string // "15 m to 45 m"
	Default          string
	Choices          []string
	Help             string
	Required, Brief  bool
	Moves            Moves
	Over             string
	Aside            []string
	At               func(*T) any
	When             func(*Plan, *T) string
	Inside           func(*Plan, Place) string // for tables within a row, in place of When: what counts is said by the row
}

func (d declaration[T]) field() *Field {
	f := &Field{
		Key: d.Key, Label: d.Label, Name: d.Name, Topic: d.Topic, Type: d.Type, Kind: d.Kind,
		Default: d.Default, Choices: d.Choices, Help: d.Help, Required: d.Required, Brief: d.Brief, Moves: d.Moves,
		Over: d.Over, Aside: d.Aside,
		pointer: func(row any) any { return d.At(row.(*T)) }, inside: d.Inside,
	}
	if d.Choices != nil {
		f.Type = ChoiceField
	}
	if d.When != nil {
		f.when = func(plan *Plan, row any) string { return d.When(plan, row.(*T)) }
	}
	if d.Range != "" {
		f.Min, f.Max = parseRange(d.Key, d.Range, d.Kind)
	}
	return f
}

func parseRange(key, text string, kind quantity.Kind) (least, most quantity.Value) {
	from, to, ok := strings.Cut(text, " to ")
	least, err := quantity.Parse(from, kind, 0)
	if err == nil && ok {
		most, err = quantity.Parse(to, kind, 0)
	}
	if err != nil || !ok {
		panic("model: internal error: range of " + key + ": " + text)
	}
	return least, most
}

// table declares a single table of the file.
func table[T any](name, title string, at func(*Plan) *T, fields ...declaration[T]) *Group {
	g := &Group{
		Name: name, Title: title,
		row:    func(plan *Plan, _ Place) any { return at(plan) },
		fresh:  func() any { return new(T) },
		origin: func(any) *int { return new(int) },
	}
	for _, d := range fields {
		g.Fields = append(g.Fields, d.field())
	}
	return g
}

// part declares a single table within each row of a list, of rows of type P.
func part[T, P any](name, title, help string, topic Topic, parent *Group, at func(*P) *T, fields ...declaration[T]) *Group {
	g := table(name, title, nil, fields...)
	g.Parent, g.Topic, g.Help = parent, topic, help
	g.within = func(row any) any { return at(row.(*P)) }
	g.row = func(plan *Plan, p Place) any { return g.within(parent.row(plan, p)) }
	parent.Lists = append(parent.Lists, g)
	return g
}

// rowOf is met by a pointer to any row type T.
type rowOf[T any] interface {
	*T
	rowOrigin() *int
}

// list declares a list of rows. parent is nil for a list at the top of the file.
func list[T any, R rowOf[T]](name, title, help string, topic Topic, parent *Group, at func(*Plan, Place) *[]T,
	fields ...declaration[T]) *Group {
	g := &Group{Name: name, Title: title, Parent: parent, List: true, Topic: topic, Help: help}
	for _, d := range fields {
		g.Fields = append(g.Fields, d.field())
	}
	if parent != nil {
		parent.Lists = append(parent.Lists, g)
	}
	g.row = func(plan *Plan, p Place) any { return &(*at(plan, p))[g.Index(p)] }
	g.count = func(plan *Plan, p Place) int { return len(*at(plan, p)) }
	g.grow = func(plan *Plan, p Place, n int) {
		s := at(plan, p)
		*s = append(*s, make([]T, n)...)
	}
	g.insert = func(plan *Plan, p Place, row any) {
		s := at(plan, p)
		*s = slices.Insert(slices.Clip(*s), g.Index(p), *row.(*T))
	}
	g.remove = func(plan *Plan, p Place) any {
		s := at(plan, p)
		row := (*s)[g.Index(p)]
		*s = slices.Delete(slices.Clone(*s), g.Index(p), g.Index(p)+1)
		return &row
	}
	g.fresh = func() any {
		row := new(T)
		g.setDefaults(row)
		return row
	}
	g.origin = func(row any) *int { return R(row.(*T)).rowOrigin() }
	return g
}

// On reports whether a group at the top of the file stands on a page: a list by where its rows are added, a table by any of its fields.
func (g *Group) On(topic Topic) bool {
	if g.List {
		return g.Topic == topic
	}
	return slices.ContainsFunc(g.Fields, func(f *Field) bool { return f.Topic == topic })
}
