package dialogue

import (
	"fmt"
	"slices"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/wording"
)

// setWord gives an entry a value: the entry, then the value, or = between them.
func (s *Session) setWord(rest string) {
	if left, right, ok := strings.Cut(rest, "="); ok {
		if ref, why := s.entryNamed(strings.TrimSpace(left)); why == "" {
			s.put(ref, strings.TrimSpace(right))
			return
		}
	}
	first, value, _ := strings.Cut(rest, " ")
	if n, ok := number(strings.TrimSuffix(first, ".")); ok && value != "" {
		s.numbered(n, value)
		return
	}
	if strings.ContainsAny(first, ".[") {
		if !s.obeyPath(first, value) {
			s.refuse("there is no " + first)
		}
		return
	}
	if !s.obeyLabel(rest, false) {
		s.refuse(fmt.Sprintf("%q is no entry of this page: set takes a number, a label or a path, and a value", rest))
	}
}

// blankWord empties an entry.
func (s *Session) blankWord(rest string) {
	ref, why := s.entryNamed(rest)
	if why != "" {
		s.refuse(why)
		return
	}
	s.put(ref, blankValue)
}

// blankValue is what is said for a value to empty an entry.
const blankValue = "blank"

// put gives an entry a value as it was typed. What is not good is refused with the range, and the old value keeps counting.
func (s *Session) put(ref model.Ref, text string) {
	switch {
	case !ref.Group.Has(s.plan, ref.Place):
		s.refuse("the plan has no such row any more: say entries for the new numbers")
		return
	case text == "":
		s.refuse("say a value, or blank to empty the entry")
		return
	case strings.EqualFold(text, blankValue) && ref.Field.Type == model.ChoiceField && ref.Field.Default != "":
		s.refuse("this cannot be left blank; " + s.stays(ref))
		return
	}
	entry, err := s.read(ref, text)
	if err != nil {
		s.refuse(fmt.Sprintf("not set: %v; %s", err, s.stays(ref)))
		return
	}
	if ref.Field.Same(ref.Get(s.plan), entry) && entry.Quantity.Unit == ref.Get(s.plan).Quantity.Unit {
		s.say("nothing changed: " + ref.Words() + " is " + wording.Content(s.plan, ref, s.system))
		return
	}
	s.change(ref, entry)
}

// read reads what was typed for an entry; the beginning of a choice is enough.
func (s *Session) read(ref model.Ref, text string) (model.Entry, error) {
	if strings.EqualFold(text, blankValue) {
		return model.Entry{}, nil
	}
	if ref.Field.Type == model.ChoiceField {
		if found := pick(text, ref.Field.Choices, func(c string) []string { return []string{c} }); len(found) == 1 {
			text = found[0]
		}
	}
	return ref.Field.Parse(text, s.system.Unit(ref.Field.Kind))
}

// stays says what an entry may be and that it is as it was.
func (s *Session) stays(ref model.Ref) string {
	text := ref.Words() + " stays " + wording.Content(s.plan, ref, s.system)
	if r := ref.Field.RangeText(s.system); r != "" && ref.Field.Type == model.QuantityField {
		text = "range " + r + "; " + text
	}
	return text
}

// change makes an edit of one entry, with what goes with it: moving the datum asks what moves along, and switching which
// depth is given carries the depth over.
func (s *Session) change(ref model.Ref, to model.Entry) {
	name := wording.EditName(s.plan, ref, to, s.system)
	switch {
	case calc.MovesDatum(s.plan, ref, to):
		s.askMove(ref, to, name)
	case ref.Group == model.SectionGroup() && ref.Field.Key == "depth_by":
		s.do(model.Edit{Name: name, Changes: calc.FixDepthBy(s.plan, ref, to)})
	default:
		s.do(model.Edit{Name: name, Changes: []model.Change{model.Setting(s.plan, ref, to)}})
	}
}

// askMove asks what goes along when the air gap or the water depth changes.
func (s *Session) askMove(ref model.Ref, to model.Entry, name string) {
	moves := calc.Moves()
	var choices []string
	for _, m := range moves {
		choices = append(choices, m.String())
	}
	s.choose(name+": what moves? a number, or stop", choices, func(i int) {
		s.do(model.Edit{Name: name + ", " + moves[i].String(), Changes: calc.MoveDatum(s.plan, ref, to, moves[i])})
	})
}

// do makes an edit, computes the plan anew and says what that moved. It reports whether the edit was made.
func (s *Session) do(edit model.Edit) bool {
	if ref, out := edit.Fault(); out {
		s.refuse("not done: " + ref.Words() + " would leave its range, " + ref.Field.RangeText(s.system))
		return false
	}
	edit.Changes = append(model.TrialsFollowing(s.plan, edit), edit.Changes...)
	edit.When, edit.Who = s.options.Clock(), s.options.Name
	s.around(func() model.Edit {
		s.history.Do(s.plan, edit)
		return edit
	})
	c := calc.Compare(s.before, s.plan)
	s.sayEntriesMoved(c, edit.Name)
	s.sayMoved(c)
	return true
}

// around does something with the plan, and then what follows for the session.
func (s *Session) around(act func() model.Edit) model.Edit {
	s.before = s.plan.Clone()
	entries := s.pageEntries()
	edit := act()
	if s.plan.Well.UnitSet != s.before.Well.UnitSet {
		s.set, _ = quantity.ParseSet(s.plan.Well.UnitSet)
	}
	s.evaluate()
	s.named.stale = s.named.stale || slices.ContainsFunc(edit.Changes, movesRows)
	s.renamed = !s.named.stale && !slices.Equal(entries, s.pageEntries())
	s.edited = true
	if s.options.Accepted != nil {
		s.options.Accepted()
	}
	return edit
}

// movesRows reports whether a change adds or removes a row that a number may mean.
func movesRows(c model.Change) bool { return c.Kind != model.SetEntry }

// undo takes the last edit back.
func (s *Session) undo() {
	if undo, _ := s.history.Last(); undo == "" {
		s.refuse("nothing to undo")
		return
	}
	s.turn("undid", func() model.Edit {
		edit, _ := s.history.UndoAt(s.plan, s.options.Clock())
		return edit
	})
}

// redo does again what was undone.
func (s *Session) redo() {
	if _, redo := s.history.Last(); redo == "" {
		s.refuse("nothing to redo")
		return
	}
	s.turn("redid", func() model.Edit {
		edit, _ := s.history.RedoAt(s.plan, s.options.Clock())
		return edit
	})
}

// turn goes back or forth in the history and says what that did.
func (s *Session) turn(did string, act func() model.Edit) {
	edit := s.around(act)
	s.say(did + " " + edit.Name)
	s.sayMoved(calc.Compare(s.before, s.plan))
}
