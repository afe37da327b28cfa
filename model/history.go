package model

import (
	"reflect"
	"slices"
	"time"
)

// ChangeKind says what a Change does.
type ChangeKind uint8

// The change kinds.
const (
	SetEntry ChangeKind = iota
	AddRow
	RemoveRow
)

// Change is the smallest step of an edit: one entry replaced, or one row added or removed.
type Change struct {
	Kind     ChangeKind
	Ref      Ref   // the entry, or for rows its Group and Place
	Old, New Entry // for SetEntry
	row      any   // the row added or removed, with everything in it
}

// Edit is what a person did in one go, and takes back in one go.
type Edit struct {
	Name     string // what undo shows: "shoe of section 3: 2150 m to 2130 m"
	Changes  []Change
	When     time.Time
	Who, Why string // may be blank: who is known when the plan is saved
}

// History applies edits to a plan and takes them back, and keeps the trail of them for the plan's log. The zero History of a
// plan just read or saved is clean.
type History struct {
	done, undone []step
	saved        int // len(done) at the last save; -1 when that state can no longer be reached
	steps        int // how many there have ever been, to number them
	trail        []deed
	noted        bool // the log is to say something more, though the plan is as saved
	revision     int  // moves on with every change of what a save would write
}

// step is an edit that was done, with what the log says of it.
type step struct {
	Edit
	number int
	rows   []LogRow
}

// Do applies an edit and remembers it. Edits that had been undone are forgotten.
func (h *History) Do(plan *Plan, edit Edit) {
	h.steps++
	s := step{Edit: edit, number: h.steps}
	for i := range edit.Changes {
		s.rows = append(s.rows, applyLogged(plan, &edit.Changes[i])...)
	}
	if h.saved > len(h.done) {
		h.saved = -1
	}
	h.done = append(h.done, s)
	h.undone = nil
	h.tread(deed{number: s.number, rows: stamped(s.rows, edit.When, edit.Who, edit.Why)})
}

// Undo takes the last edit back and returns it, or false when there is none.
func (h *History) Undo(plan *Plan) (Edit, bool) { return h.UndoAt(plan, time.Time{}) }

// Redo applies the last edit that was undone and returns it, or false when there is none.
func (h *History) Redo(plan *Plan) (Edit, bool) { return h.RedoAt(plan, time.Time{}) }

// UndoAt is Undo with the time for the log.
func (h *History) UndoAt(plan *Plan, when time.Time) (Edit, bool) {
	if len(h.done) == 0 {
		return Edit{}, false
	}
	s := h.done[len(h.done)-1]
	h.done = h.done[:len(h.done)-1]
	for i := len(s.Changes) - 1; i >= 0; i-- {
		revert(plan, &s.Changes[i])
	}
	h.undone = append(h.undone, s)
	h.tread(deed{number: s.number, back: true, rows: stamped(reversed(s.rows), when, "", "")})
	return s.Edit, true
}

// RedoAt is Redo with the time for the log.
func (h *History) RedoAt(plan *Plan, when time.Time) (Edit, bool) {
	if len(h.undone) == 0 {
		return Edit{}, false
	}
	s := h.undone[len(h.undone)-1]
	h.undone = h.undone[:len(h.undone)-1]
	for i := range s.Changes {
		apply(plan, &s.Changes[i])
	}
	h.done = append(h.done, s)
	h.tread(deed{number: s.number, rows: stamped(s.rows, when, s.Who, s.Why)})
	return s.Edit, true
}

// Saved marks the present state as the one in the file. Rows that only the history holds stand nowhere in the file that was
// written, and would take another row's place in it if they came back with their old one.
func (h *History) Saved() {
	h.revision++
	h.saved, h.trail, h.noted = len(h.done), nil, false
	for _, steps := range [][]step{h.done, h.undone} {
		for _, s := range steps {
			for _, c := range s.Changes {
				forgetOrigin(c.row)
			}
		}
	}
}

// forgetOrigin makes a row, and every row within it, one that no file holds.
func forgetOrigin(row any) {
	if row == nil {
		return
	}
	v := reflect.ValueOf(row).Elem()
	detach(v)
	unfile(v)
}

var rowType = reflect.TypeFor[Row]()

// unfile takes the marks of where they stood from all rows in a value.
func unfile(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		if v.Type() == rowType {
			v.SetZero()
			return
		}
		for i := range v.NumField() {
			if mayShare(v.Field(i).Kind()) {
				unfile(v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			unfile(v.Index(i))
		}
	}
}

// Unsaved marks the plan as one that no file holds yet.
func (h *History) Unsaved() { h.saved = -1; h.revision++ }

// Revision returns a number that is another one after every change of what a save would write, and after a save.
func (h *History) Revision() int { return h.revision }

// Dirty reports whether the plan differs from its file; undoing back to the saved state makes it clean again.
func (h *History) Dirty() bool { return h.saved != len(h.done) || h.noted }

// Last returns the names of what undo and redo would act on; empty for nothing.
func (h *History) Last() (undo, redo string) {
	if n := len(h.done); n > 0 {
		undo = h.done[n-1].Name
	}
	if n := len(h.undone); n > 0 {
		redo = h.undone[n-1].Name
	}
	return undo, redo
}

// Setting returns the change that gives an entry a new content.
func Setting(plan *Plan, ref Ref, e Entry) Change {
	return Change{Kind: SetEntry, Ref: ref, Old: ref.Get(plan), New: e}
}

// Adding returns the change that puts a fresh row, with its defaults, at the given place of a list.
func Adding(g *Group, at Place) Change {
	return Change{Kind: AddRow, Ref: Ref{Group: g, Place: at}, row: g.fresh()}
}

// AddingSection returns the change that puts a prepared section at index i.
func AddingSection(i int, s Section) Change {
	return Change{Kind: AddRow, Ref: Ref{Group: SectionGroup(), Place: Place{Outer: i}}, row: &s}
}

// Removing returns the change that takes the row at the given place out of its list.
func Removing(g *Group, at Place) Change {
	return Change{Kind: RemoveRow, Ref: Ref{Group: g, Place: at}}
}

func apply(plan *Plan, c *Change) {
	switch c.Kind {
	case SetEntry:
		c.Ref.Set(plan, c.New)
	case AddRow:
		c.Ref.Group.insert(plan, c.Ref.Place, c.row)
	case RemoveRow:
		c.row = c.Ref.Group.remove(plan, c.Ref.Place)
	}
}

func revert(plan *Plan, c *Change) {
	switch c.Kind {
	case SetEntry:
		c.Ref.Set(plan, c.Old)
	case AddRow:
		c.row = c.Ref.Group.remove(plan, c.Ref.Place)
	case RemoveRow:
		c.Ref.Group.insert(plan, c.Ref.Place, c.row)
	}
}

// Fault returns the first entry that the edit would put out of its range, and false when there is none.
func (e Edit) Fault() (Ref, bool) {
	for _, c := range e.Changes {
		if c.Kind == SetEntry && c.New.Quantity.IsSet() && c.Ref.Field.check(c.New.Quantity) != nil {
			return c.Ref, true
		}
	}
	return Ref{}, false
}

// Changed reports whether an edit would change anything.
func (e Edit) Changed() bool {
	return slices.ContainsFunc(e.Changes, func(c Change) bool { return c.Kind != SetEntry || c.Old != c.New })
}
