package ui

import (
	"slices"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
	"borewalk/model/quantity"
)

// bindings returns every key of the pages, in the order of the help.
func bindings() []binding {
	bind := func(group, keys, shown, help, short string, act func(*Planner) tea.Cmd, blocked func(*Planner) string) binding {
		return binding{Binding: key.NewBinding(key.WithKeys(arriving(keys)...), key.WithHelp(shown, help)),
			short: short, group: group, act: act, blocked: blocked}
	}
	do := func(f func(*Planner)) func(*Planner) tea.Cmd {
		return func(p *Planner) tea.Cmd { f(p); return nil }
	}
	const moving, editing, looking, file = "Moving", "Editing", "Looking", "Plan"
	return []binding{
		bind(moving, "up k", "up", "field or figure above", "", do(func(p *Planner) { p.move(-1) }), nil),
		bind(moving, "down j", "down", "field or figure below", "", do(func(p *Planner) { p.move(1) }), nil),
		bind(moving, "right", "right", "to the figures, the next chart, or further columns", "right figures", do((*Planner).right), (*Planner).noRight),
		bind(moving, "left", "left", "to the fields, the chart before, or the columns before", "left fields", do((*Planner).left), (*Planner).noLeft),
		bind(moving, "pgdown", "page down", "a screen down", "", do(func(p *Planner) { p.move(p.rows() - 1) }), nil),
		bind(moving, "pgup", "page up", "a screen up", "", do(func(p *Planner) { p.move(1 - p.rows()) }), nil),
		bind(moving, "home", "home", "first on the page", "", do(func(p *Planner) { p.move(-1 << 20) }), nil),
		bind(moving, "end", "end", "last on the page", "", do(func(p *Planner) { p.move(1 << 20) }), nil),
		bind(moving, "tab", "tab", "next page", "tab page", do(func(p *Planner) { p.turn(1) }), nil),
		bind(moving, "shift+tab", "shift tab", "page before", "", do(func(p *Planner) { p.turn(-1) }), nil),
		bind(moving, "] > n", "] or n", "next section", "[ ] section", do(func(p *Planner) { p.walk(1) }), (*Planner).noneBelow),
		bind(moving, "[ < p", "[ or p", "section above", "", do(func(p *Planner) { p.walk(-1) }), (*Planner).noneAbove),

		bind(editing, "enter", "enter", "edit the field, choose, or open a row", "enter edit", do((*Planner).enter), (*Planner).notEditable),
		bind(editing, "+ =", "+", "a step up", "+ - step", do(func(p *Planner) { p.nudge(1) }), (*Planner).notNumber),
		bind(editing, "-", "-", "a step down", "", do(func(p *Planner) { p.nudge(-1) }), (*Planner).notNumber),
		bind(editing, "backspace delete", "delete", "blank the field", "", do((*Planner).blank), (*Planner).notEditable),
		bind(editing, "a", "a", "add a row below, or a section on the hole page", "a add", do((*Planner).addRow), (*Planner).noList),
		bind(editing, "d", "d", "remove the row or section", "d remove", do((*Planner).removeRow), (*Planner).noRow),
		bind(editing, "g", "g", "work out an entry to its limit: collars, nozzles, stock, cement", "g solve", do((*Planner).showProposals), (*Planner).noProposals),
		bind(editing, "i", "i", "casing, control: read measured joints, a shoe test from a file", "i file", do((*Planner).askList), (*Planner).noFile),
		bind(editing, "u", "u", "undo", "u undo", do((*Planner).undo), (*Planner).nothingToUndo),
		bind(editing, "ctrl+r r", "r or ctrl r", "redo", "", do((*Planner).redo), (*Planner).nothingToRedo),
		bind(editing, "Y", "Y", "say why for the last edit; it stands in the log", "", do((*Planner).askWhy), (*Planner).nothingToExplain),

		bind(looking, "v", "v", "fields, table with all columns, charts and drawings or pressure window", "v view", do((*Planner).turnView), nil),
		bind(looking, "P", "P", "cement, control page: play job or kick", "P play", do((*Planner).playJob), (*Planner).noJob),
		bind(looking, "E", "E", "control page: emergency disconnect", "E disconnect", do((*Planner).showDisconnect), (*Planner).noDisconnect),
		bind(looking, "W", "W", "walk through the operations of the section, one by one", "W walk", do((*Planner).openWalk), (*Planner).noWalk),
		bind(looking, "L", "L", "look-ahead: what is done in the next 24 h or 7 days, with stop points", "L look-ahead", do((*Planner).showLookAhead), nil),
		bind(looking, "w", "w", "working of the figure: formula, numbers, source", "w working", do((*Planner).showWorking), nil),
		bind(looking, "f", "f", "findings; enter goes to the field", "f findings", do((*Planner).showFindings), nil),
		bind(looking, "V", "V", "vary this: a figure against an entry, or against two", "V vary", (*Planner).vary, (*Planner).noVary),
		bind(looking, "U", "U", "odds: how outcomes spread over the ranges on the control page", "U odds", (*Planner).showOdds, (*Planner).noOdds),
		bind(looking, "T", "T", "trials: what-ifs of the section side by side; one is promoted", "T trials", (*Planner).showTrials, (*Planner).noTrials),
		bind(looking, "H", "H", "handover: what a relief reads first, and signs", "H handover", do((*Planner).showHandover), nil),
		bind(looking, "m", "m", "units: the plan's, metric, field, SI", "m units", do((*Planner).turnUnits), nil),
		bind(looking, "b", "b", "make the present figures the baseline of changes", "b baseline", do((*Planner).takeBaseline), nil),
		bind(looking, "C", "C", "what changed, against a mark, a save or another plan; the log", "C changes", do((*Planner).askChanges), nil),
		bind(looking, "c", "c", "copy as text: figure, entry, finding, working, the page's sheet", "c copy", do((*Planner).askCopy), nil),
		bind(looking, "t", "t", "schematic: true depth scale on or off", "", do((*Planner).turnScale), nil),
		bind(looking, "o", "o", "schematic: whole well or up to this section", "", do((*Planner).turnWhole), nil),
		bind(looking, "z", "z", "the page alone, without header and schematic, or with them again", "z page alone", do(func(p *Planner) { p.alone = !p.alone }), nil),
		bind(looking, "!", "!", "notices about the file", "", do((*Planner).showNotices), (*Planner).noNotices),
		bind(looking, "ctrl+l", "ctrl l", "draw the screen again", "", func(*Planner) tea.Cmd { return tea.ClearScreen }, nil),
		bind(looking, "ctrl+z", "ctrl z", "back to the shell; its command fg returns", "", (*Planner).suspend, (*Planner).noSuspend),
		bind(looking, "? f1", "?", "this help", "? help", do((*Planner).showHelp), nil),

		bind(file, "s ctrl+s", "s or ctrl s", "save", "s save", do(func(p *Planner) { p.save(stay) }), nil),
		bind(file, "S", "S", "save under another name", "S save as", do(func(p *Planner) { p.saveAs(stay) }), nil),
		bind(file, "O", "O", "print a paper to a file: sheets, chapter, lists, cards, notes", "O print", do((*Planner).askPrint), (*Planner).nothingToPrint),
		bind(file, "N", "N", "start a new plan", "N new", do((*Planner).askNew), nil),
		bind(file, "q ctrl+c", "q", "quit", "q quit", (*Planner).leave, nil),
	}
}

// command acts on a key pressed on a page. A digit, or a paste, begins an entry in the focused field.
func (p *Planner) command(m tea.KeyMsg) tea.Cmd {
	switch {
	case m.Paste:
		p.paste(string(m.Runes))
	case m.Type == tea.KeyRunes && startsEntry(m.Runes):
		p.typeInto(string(m.Runes))
	case m.Type == tea.KeyEsc:
		p.message = "nothing is open that esc could leave; q quits"
	default:
		return p.obey(p.keys, m)
	}
	return nil
}

// startsEntry reports whether typed characters begin a number, so that no key has to be pressed first.
func startsEntry(typed []rune) bool {
	return len(typed) > 0 && (typed[0] >= '0' && typed[0] <= '9' || typed[0] == '.' || typed[0] == ',')
}

func (p *Planner) nothingToUndo() string {
	if undo, _ := p.history.Last(); undo == "" {
		return "nothing to undo"
	}
	return ""
}

func (p *Planner) nothingToRedo() string {
	if _, redo := p.history.Last(); redo == "" {
		return "nothing to redo"
	}
	return ""
}

func (p *Planner) noneBelow() string {
	if p.section >= len(p.plan.Sections)-1 {
		return "this is the last section; a on the hole page adds one"
	}
	return ""
}

func (p *Planner) noneAbove() string {
	if p.section == 0 {
		return "this is the first section"
	}
	return ""
}

func (p *Planner) notEditable() string {
	if p.figures {
		return "a figure is computed, not entered; w shows its working, V the entries that move it, left goes to the fields"
	}
	if p.view != viewFields && p.focused().kind != lineField {
		return "no field has the focus; v goes back to the fields"
	}
	return ""
}

func (p *Planner) notNumber() string {
	if why := p.notEditable(); why != "" {
		return why
	}
	l := p.focused()
	if l.ref.Field == nil || l.ref.Field.Type == model.TextField {
		return "not a number; enter edits it"
	}
	if l.ref.Field.Type == model.QuantityField && !l.ref.Get(p.plan).IsSet() {
		return "the field is blank; type a value"
	}
	return ""
}

// noRows says why rows cannot be added or removed: not where they are not in sight.
func (p *Planner) noRows() string {
	if p.view != viewFields {
		return "the rows are out of sight; v goes back to the fields"
	}
	if p.figures {
		return "go to the fields first (left)"
	}
	return ""
}

func (p *Planner) noList() string {
	if why := p.noRows(); why != "" {
		return why
	}
	g, at := p.newRow()
	if g == nil {
		return "there is no list here to add to"
	}
	return model.Edit{Changes: []model.Change{model.Adding(g, at)}}.Overfull(p.plan)
}

func (p *Planner) noRow() string {
	if why := p.noRows(); why != "" {
		return why
	}
	g := p.listAt()
	if g == nil {
		return "this is not a row of a list"
	}
	if g == model.SectionGroup() && len(p.plan.Sections) == 0 {
		return "there is no section to remove"
	}
	if l := p.focused(); l.kind == lineAdd {
		return "go to the row first"
	}
	return ""
}

func (p *Planner) noNotices() string {
	if len(p.file.Notices) == 0 {
		return "the file holds nothing unknown"
	}
	return ""
}

// turn goes to another page.
func (p *Planner) turn(by int) {
	n := len(model.Topics())
	p.topic, p.column = model.Topic((int(p.topic)+by+n)%n), 0
}

// walk goes to another section.
func (p *Planner) walk(by int) {
	p.section = max(0, min(p.section+by, len(p.plan.Sections)-1))
	if p.topic == model.TopicWell {
		p.topic = model.TopicHole
	}
}

// turnView shows the next view. The table is there to be read, so that it takes the focus; left gives it back to the field,
// which can then be nudged with the table in sight.
func (p *Planner) turnView() {
	p.view = (p.view + 1) % viewCount
	p.figures, p.column = p.view == viewTable && len(p.figureLines()) > 0, 0
}

// turnScale draws the schematic to scale, or so that every section can be seen.
func (p *Planner) turnScale() {
	p.scale = !p.scale
	p.message = "schematic: stretched so that every section is seen"
	if p.scale {
		p.message = "schematic: true depth scale below the seabed"
	}
}

// turnWhole draws the whole well, or no more than is there when the section is worked.
func (p *Planner) turnWhole() {
	p.whole = !p.whole
	p.message = "schematic: up to this section"
	if p.whole {
		p.message = "schematic: the whole well"
	}
}

// turnUnits shows the next set of units; nothing stored changes.
func (p *Planner) turnUnits() {
	sets := quantity.Sets()
	p.set = sets[(int(p.set)+1)%len(sets)]
	p.system = p.plan.System(p.set, p.ownUnits())
	p.message = "shown in " + p.set.String() + " units; what is stored does not change"
	if p.ownUnits() {
		p.message = "shown in the plan's units (" + p.set.String() + ")"
	}
}

func (p *Planner) takeBaseline() {
	p.baseline = p.result
	p.message = "changes are now counted from here"
}

func (p *Planner) undo() {
	units := p.plan.Well.UnitSet
	edit, _ := p.history.UndoAt(p.plan, p.now())
	p.edited = true
	p.followUnits(units)
	p.evaluate()
	p.goToEdit(edit)
	p.message = "undid " + edit.Name
}

func (p *Planner) redo() {
	units := p.plan.Well.UnitSet
	edit, _ := p.history.RedoAt(p.plan, p.now())
	p.edited = true
	p.followUnits(units)
	p.evaluate()
	p.goToEdit(edit)
	p.message = "redid " + edit.Name
}

// goToEdit brings what an edit changed into focus among the fields when it is on the page that is open, so that the next key does
// not act on something else. Who reads figures goes on reading them.
func (p *Planner) goToEdit(edit model.Edit) {
	first := slices.IndexFunc(edit.Changes, func(c model.Change) bool { return c.Ref.Group.Topic != model.TopicTrial })
	if first < 0 {
		return
	}
	view, figures, c := p.view, p.figures, edit.Changes[first]
	g := c.Ref.Group
	inSection := g == model.SectionGroup() || g.Parent == model.SectionGroup()
	topic := g.Topic
	if c.Kind == model.SetEntry {
		topic = c.Ref.Field.Topic
	}
	switch {
	case topic != p.topic:
		return
	case c.Kind != model.SetEntry && g == model.SectionGroup():
		p.section = max(0, min(c.Ref.Place.Outer, len(p.plan.Sections)-1))
		p.focusLine(p.lines(), 0)
	case inSection && c.Ref.Place.Outer != p.section:
		return
	case c.Kind == model.SetEntry:
		p.goTo(c.Ref.Path())
	default:
		p.goToRow(g, c.Ref.Place)
	}
	p.view, p.figures = view, figures
}
