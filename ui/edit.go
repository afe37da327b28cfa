package ui

import (
	"cmp"
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/wording"
)

// editing is an entry being typed. The plan holds it while it is good, so that everything on the screen follows each
// keystroke; was is put back while it is not, and when it is given up.
type editing struct {
	ref   model.Ref
	input textinput.Model
	was   model.Entry
	shown string       // what stood in the line when it was opened
	plain *calc.Result // of the plan without what is typed
	fault string       // what is wrong with the text as it stands; empty when it is good
}

// enter edits the focused field, offers its choices, or opens or closes a row.
func (p *Planner) enter() {
	l := p.focused()
	switch l.kind {
	case lineHeading, lineRow:
		p.open[openKey(l.group, l.place)] = !l.open
	case lineAdd:
		p.addRow()
	case lineField:
		p.beginEdit(l.ref)
	}
}

func (p *Planner) beginEdit(ref model.Ref) {
	switch {
	case ref.Field.Type == model.ChoiceField:
		p.overlay = newChoice(p, ref)
	case isCasingSize(ref):
		p.overlay = newCatalogue(p, ref)
	default:
		if isStepNow(ref) {
			if u := newStepNow(p, ref); u != nil {
				p.overlay = u
				return
			}
		}
		if sizes, ok := p.sizesFor(ref); ok {
			p.overlay = newSizes(p, ref, sizes)
			return
		}
		p.startTyping(ref, p.typedText(ref))
	}
}

// typedText returns an entry as it is put in the edit line: in the shown unit when that loses nothing, else as entered.
func (p *Planner) typedText(ref model.Ref) string {
	entry := ref.Get(p.plan)
	if ref.Field.Type != model.QuantityField {
		return entry.Text
	}
	if !entry.IsSet() {
		return ""
	}
	shown := ref.Field.ScreenText(entry, p.system)
	if back, err := quantity.Parse(shown, ref.Field.Kind, p.system.Unit(ref.Field.Kind)); err == nil && back.SI == entry.Quantity.SI {
		return shown
	}
	return entry.Quantity.Text()
}

func (p *Planner) startTyping(ref model.Ref, text string) {
	p.edit = &editing{ref: ref, input: newInput(text), was: ref.Get(p.plan), shown: p.typedText(ref), plain: p.result}
	p.message = ""
}

// typeInto begins an entry in the focused field with what was typed on the page.
func (p *Planner) typeInto(text string) {
	l := p.focused()
	if p.figures || l.kind != lineField || l.ref.Field.Type == model.ChoiceField {
		p.message = "go to a field that takes a number first"
		return
	}
	p.startTyping(l.ref, text)
	p.tryEntry()
}

// typing gives a key to the entry being typed.
func (p *Planner) typing(m tea.KeyMsg) {
	e := p.edit
	if m.Paste {
		p.pasteInto(string(m.Runes))
		return
	}
	switch m.String() {
	case "enter":
		p.accept()
	case "tab":
		if p.accept() && p.overlay == nil {
			p.moveBy(1)
		}
	case "esc", "ctrl+c":
		p.giveUp()
	case "ctrl+s":
		if p.accept() && p.overlay == nil { // a question about the entry comes first
			p.save(stay)
		} else if p.overlay != nil {
			p.message = "answer first, then save"
		}
	case "up":
		p.stepEntry(1)
	case "down":
		p.stepEntry(-1)
	default:
		e.input, _ = e.input.Update(m)
		p.tryEntry()
	}
}

// tryEntry puts the text as it stands into the plan when it is a good entry, so that all figures follow it.
func (p *Planner) tryEntry() {
	e := p.edit
	entry, err := e.ref.Field.Parse(e.input.Value(), p.system.Unit(e.ref.Field.Kind))
	if err != nil {
		e.fault = withRange(err, e.ref.Field, p.system)
		// What was good on the way, such as the 7,20 of 7,200, was not meant: the value before the entry counts.
		e.ref.Set(p.plan, e.was)
		p.evaluate()
		return
	}
	before := p.result
	e.fault = ""
	e.ref.Set(p.plan, entry)
	p.evaluate()
	p.followChange(before)
}

// withRange says what is wrong with an entry, and what may be entered.
func withRange(err error, f *model.Field, system quantity.System) string {
	r := f.RangeText(system)
	switch text := err.Error(); {
	case r == "":
		return text
	case strings.HasSuffix(text, " the range"):
		return text + " " + r
	default:
		return text + "; range " + r
	}
}

// accept takes the entry over and reports whether it did; an entry that is not good stays open.
func (p *Planner) accept() bool {
	e := p.edit
	p.tryEntry()
	if e.fault != "" {
		return false
	}
	entry := e.ref.Get(p.plan)
	e.ref.Set(p.plan, e.was)
	p.edit, p.plain = nil, e.plain
	if e.ref.Field.Type == model.QuantityField && entry.IsSet() && p.typedSame(e, entry) {
		entry = e.was
	}
	p.change(e.ref, entry)
	return true
}

// typedSame reports whether the text is just the old value as it was shown, so that the user's own unit is kept.
func (p *Planner) typedSame(e *editing, entry model.Entry) bool {
	return e.was.IsSet() && entry.Quantity.SI == e.was.Quantity.SI
}

func (p *Planner) giveUp() {
	e := p.edit
	e.ref.Set(p.plan, e.was)
	p.edit = nil
	p.evaluate()
	p.message = "entry given up; " + e.ref.Field.Name + " is as it was"
}

// change makes an edit of one entry, with what goes with it: moving the datum asks what moves along, and switching which
// depth is given carries the depth over.
func (p *Planner) change(ref model.Ref, to model.Entry) {
	switch {
	case ref.Get(p.plan) == to:
		p.evaluate()
	case calc.MovesDatum(p.plan, ref, to):
		p.evaluate()
		p.overlay = newMove(p, ref, to)
	case ref.Group == model.SectionGroup() && ref.Field.Key == "depth_by":
		p.do(model.Edit{Name: p.editName(ref, to), Changes: calc.FixDepthBy(p.plan, ref, to)})
	default:
		p.do(model.Edit{Name: p.editName(ref, to), Changes: []model.Change{model.Setting(p.plan, ref, to)}})
	}
}

// do makes an edit and computes the plan anew.
func (p *Planner) do(edit model.Edit) {
	if !edit.Changed() {
		p.evaluate()
		return
	}
	if ref, out := edit.Fault(); out {
		p.evaluate()
		p.message = "not done: " + ref.Words() + " would leave its range, " + ref.Field.RangeText(p.system)
		return
	}
	if why := edit.Overfull(p.plan); why != "" {
		p.evaluate()
		p.message = "not done: " + why
		return
	}
	edit.Changes = append(model.TrialsFollowing(p.plan, edit), edit.Changes...)
	units := p.plan.Well.UnitSet
	before, was := p.result, cmp.Or(p.plain, p.result) // while it was typed the entry was in the result already
	edit.When, edit.Who = p.now(), p.options.Name
	p.history.Do(p.plan, edit)
	p.edited = true
	p.followUnits(units)
	p.evaluate()
	p.followChange(before)
	p.message = edit.Name
	if f, worse := p.broughtSince(was); worse {
		p.message += ", " + p.severityMark(f.Severity) + " " + p.findingText(f)
		p.alarm = alarm{p.message, f.Severity}
	}
}

// alarm is a message that tells of a finding.
type alarm struct {
	message  string
	severity calc.Severity
}

// broughtSince returns the worst finding that the plan did not have before, or had with less severity.
func (p *Planner) broughtSince(before *calc.Result) (calc.Finding, bool) {
	type subject struct {
		section   int
		key, text string
	}
	had := map[subject]calc.Severity{}
	for i := range before.Findings {
		f := &before.Findings[i]
		about := subject{f.Section, f.Key, f.Text}
		had[about] = max(had[about], f.Severity)
	}
	for _, f := range p.sortedFindings(calc.Caution) {
		if f.Severity > had[subject{f.Section, f.Key, f.Text}] {
			return f, true
		}
	}
	return calc.Finding{}, false
}

// followUnits shows the plan's unit set when it is no longer what it was before an edit.
func (p *Planner) followUnits(before string) {
	if p.plan.Well.UnitSet != before {
		p.set, _ = quantity.ParseSet(p.plan.Well.UnitSet)
	}
}

// editName says what an edit does, for undo to show: "section 3 hole TD: 2155.0 m to 2085.0 m".
func (p *Planner) editName(ref model.Ref, to model.Entry) string {
	return wording.EditName(p.plan, ref, to, p.system)
}

// stepEntry moves the entry being typed by its natural step, everything following live.
func (p *Planner) stepEntry(n int) {
	e := p.edit
	if e.ref.Field.Type != model.QuantityField {
		return
	}
	entry, err := e.ref.Field.Parse(e.input.Value(), p.system.Unit(e.ref.Field.Kind))
	if err != nil || !entry.IsSet() {
		return
	}
	e.input.SetValue(quantity.Nudge(entry.Quantity, e.ref.Field.Kind, p.system.Unit(e.ref.Field.Kind), n).Text())
	e.input.CursorEnd()
	p.tryEntry()
}

// nudge moves the focused field by its natural step, or to the next of its choices, as one edit.
func (p *Planner) nudge(n int) {
	ref := p.focused().ref
	if ref.Field.Type == model.ChoiceField {
		p.change(ref, nextChoice(ref, p.plan, n))
		return
	}
	old := ref.Get(p.plan)
	unit := p.system.Unit(ref.Field.Kind)
	moved := quantity.Nudge(old.Quantity, ref.Field.Kind, unit, n)
	entry, err := ref.Field.Parse(moved.Text(), unit)
	if err != nil {
		p.message = "cannot go further: range " + ref.Field.RangeText(p.system)
		return
	}
	p.change(ref, entry)
}

func nextChoice(ref model.Ref, plan *model.Plan, n int) model.Entry {
	choices := ref.Field.Choices
	if ref.Field.Default == "" {
		choices = append([]string{""}, choices...) // what has no default can be left blank
	}
	at := 0
	for i, c := range choices {
		if c == ref.Get(plan).Text {
			at = i
		}
	}
	return model.Entry{Text: choices[(at+n+len(choices))%len(choices)]}
}

// blank empties the focused field.
func (p *Planner) blank() {
	l := p.focused()
	if l.kind != lineField || l.ref.Field.Type == model.ChoiceField && l.ref.Field.Default != "" {
		p.message = "this cannot be left blank"
		return
	}
	p.change(l.ref, model.Entry{})
}

// paste puts pasted text into the focused field as one edit.
func (p *Planner) paste(text string) {
	l := p.focused()
	if p.figures || l.kind != lineField || l.ref.Field.Type == model.ChoiceField {
		p.message = "nothing here takes pasted text; go to a field first"
		return
	}
	p.startTyping(l.ref, p.typedText(l.ref))
	p.pasteInto(text)
	if p.edit.fault == "" {
		p.accept()
	} else {
		fault := p.edit.fault
		p.giveUp()
		p.message = fault
	}
}

// pasteInto replaces the entry being typed by pasted text. In a number field it must be a good entry as a whole, else it
// is refused with the reason and the entry stays as it was; in a text field it is taken as one line.
func (p *Planner) pasteInto(text string) {
	e := p.edit
	text = strings.TrimSpace(model.Clean(text))
	if e.ref.Field.Type == model.QuantityField {
		if _, err := e.ref.Field.Parse(text, p.system.Unit(e.ref.Field.Kind)); err != nil {
			e.fault = "pasted text refused: " + err.Error()
			return
		}
		e.input.SetValue(text)
	} else {
		e.input.SetValue(e.input.Value() + text)
	}
	e.input.CursorEnd()
	p.tryEntry()
}

// newRow returns the list at the focus, nil for none, and where in it a row is added.
func (p *Planner) newRow() (g *model.Group, at model.Place) {
	l, g := p.focused(), p.listAt()
	switch {
	case g == nil || g == model.SectionGroup():
		return g, model.Place{Outer: min(p.section+1, len(p.plan.Sections))}
	case l.kind == lineAdd:
		return g, l.place
	}
	return g, g.At(l.place, g.Index(l.place)+1)
}

// addRow adds a row to the list at the focus, or a section.
func (p *Planner) addRow() {
	if why := p.noList(); why != "" { // enter adds one too
		p.message = why
		return
	}
	g, at := p.newRow()
	p.do(model.Edit{Name: "add " + strings.ToLower(g.Title), Changes: []model.Change{model.Adding(g, at)}})
	p.open[openKey(g, at)] = true
	if g == model.SectionGroup() {
		p.section = at.Outer
		p.focusLine(p.lines(), 0)
		return
	}
	lines := p.lines()
	for i, row := range lines {
		if row.kind == lineRow && row.group == g && row.place == at {
			if i+1 < len(lines) && lines[i+1].kind == lineField { // so that what is typed next goes into it
				i++
			}
			p.focusLine(lines, i)
			return
		}
	}
}

// removeRow takes the row at the focus away. A section goes with all that is in it, so that it is asked about first.
func (p *Planner) removeRow() {
	g := p.listAt()
	if g != model.SectionGroup() {
		p.takeAway(g, p.focused().place)
		return
	}
	at := model.Place{Outer: p.section}
	p.overlay = &menu{
		title: fmt.Sprintf("Remove section %d, with its string?", p.section+1),
		items: []item{{text: "keep it"}, {text: "remove it; u brings it back"}},
		pick: func(p *Planner, i int) {
			if i == 1 {
				p.takeAway(g, at)
			}
		},
	}
}

func (p *Planner) takeAway(g *model.Group, at model.Place) {
	name := fmt.Sprintf("remove %s %d", strings.ToLower(g.Title), g.Index(at)+1)
	p.do(model.Edit{Name: name, Changes: []model.Change{model.Removing(g, at)}})
	p.message = name + "; u brings it back"
	if g != model.SectionGroup() {
		p.goToRow(g, at)
	}
}
