package ui

import (
	"cmp"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// place names a section for a narrow list.
func place(section int) string {
	if section < 0 {
		return "well"
	}
	return strconv.Itoa(section + 1)
}

// placed begins a line of a list with the section's number, the word for it left out.
func placed(words string) string {
	if rest, ok := strings.CutPrefix(words, "section "); ok && strings.ContainsAny(words, ",:") {
		return rest
	}
	return words // the section itself
}

// entryItem puts a change of an entry on one line, with the reason that the log has for it below the page.
func (p *Planner) entryItem(e *calc.EntryChange, rows []model.LogRow) item {
	text, full := placed(e.Brief), e.Words
	if e.Section < 0 {
		text = "well " + text
	}
	switch {
	case e.Field != nil:
		change := ": " + p.contentText(e.Field, e.Old) + " to " + p.contentText(e.Field, e.New)
		text, full = text+change, full+change
	case e.Added():
		text, full = text+" added"+p.rowText(e.Row), full+" added"+p.rowText(e.Row)
	default:
		text, full = text+" removed"+p.rowText(e.Row), full+" removed"+p.rowText(e.Row)
	}
	about := model.LoggedFor(rows, cmp.Or(e.After, "-"))
	if len(about) > 0 {
		full += ". " + about[0].Who + ", " + logTime(about[0])
	}
	if why := model.Whys(about); why != "" {
		full += ": " + why
	}
	return item{text: text, full: full}
}

// contentText shows the content of an entry.
func (p *Planner) contentText(f *model.Field, e model.Entry) string {
	return cmp.Or(f.ScreenText(e, p.system), "blank")
}

// rowText shows what a row is known by.
func (p *Planner) rowText(row []calc.RowEntry) string {
	text := ""
	for _, r := range row {
		text += ", " + r.Field.ScreenText(r.Entry, p.system)
	}
	return strings.Replace(text, ",", ":", 1)
}

// changedFinding puts a finding that has come, gone or changed on one line.
func (p *Planner) changedFinding(f *calc.FindingChange) item {
	now := f.Finding()
	it := item{style: severityStyle(now.Severity), full: p.findingText(*now) + ". " + now.Source}
	switch {
	case !f.Had:
		it.text = "new: "
	case !f.Has:
		it.text, it.style = "gone: ", canvas.Plain
	case f.Before.Severity != f.After.Severity:
		it.text = "was " + f.Before.Severity.String() + ": "
	default:
		it.text = "still: "
		it.full += ". Before: " + p.findingText(f.Before)
	}
	it.text += p.findingBrief(*now)
	return it
}

// movedItem puts a figure that moved on one line.
func (p *Planner) movedItem(m *calc.FigureMove) item {
	f := m.Figure()
	change := p.shownFigure(&m.Before) + " to " + p.shownFigure(&m.After)
	if m.Before.OK && m.After.OK {
		if by := quantity.FormatChange(m.After.Value-m.Before.Value, f.Kind, p.system.Unit(f.Kind)); by != "" {
			change += " (" + by + ")"
		}
	}
	it := item{text: place(m.Section) + " " + f.Label() + ": " + change}
	where := "well"
	if m.Section >= 0 {
		where = "section " + strconv.Itoa(m.Section+1) + ", " + f.Topic.String()
	}
	if f.Group != "" {
		where += ", " + f.Group
	}
	it.full = where + ": " + f.Label() + ": " + change
	if m.HadLimit {
		it.style = severityStyle(m.Limit.Severity)
		it.full += ". " + p.limitText(m)
	}
	return it
}

// shownFigure shows the value of a figure with its unit, and that there is none.
func (p *Planner) shownFigure(f *calc.Figure) string {
	switch {
	case f.Key == "":
		return "none"
	case !f.OK:
		return "blank"
	}
	return p.show(f.Value, f.Kind)
}

// limitText says what limit a figure is held against, and how much of that is left.
func (p *Planner) limitText(m *calc.FigureMove) string {
	f := &m.Limit
	bound := "most "
	if f.Least {
		bound = "least "
	}
	text := f.Severity.String() + ", " + bound + p.show(f.Limit, f.Kind)
	if f.Limit != 0 {
		text += ", left " + p.show(m.Room(), quantity.Ratio) + " of it"
	}
	return text
}
