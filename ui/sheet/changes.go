package sheet

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"strconv"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// Against is what a plan is compared with.
type Against struct {
	Plan    *model.Plan
	Name    string         // "the baseline, 2026-03-01", or the name of a file
	Log     []model.LogRow // what was done since, as far as it is known
	Misfits []model.Misfit // what of the log did not fit on the way back
}

// writeChanges prints a change note or a comparison.
func (p *printer) writeChanges(w io.Writer) error {
	if p.Against.Plan == nil {
		return errors.New("there is nothing to compare the plan with")
	}
	c := calc.Compare(p.Against.Plan, p.plan)
	switch p.Format {
	case CSV:
		return p.changesCSV(w, &c)
	case JSON:
		return p.changesJSON(w, &c)
	}
	return p.writePages(w, []page{p.changesPage(&c)})
}

// changesPage sets what changed as a page: entries, findings, figures, and for a change note the log.
func (p *printer) changesPage(c *calc.Comparison) page {
	s := page{title: "Comparison: " + p.wellName(), foot: standing}
	if p.Paper == ChangeNote {
		s.title = "Change note: " + p.wellName()
	}
	s.head = append([]pair{
		{"Compared with", p.Against.Name}, {"Sections", p.sectionsText()}, {"Revision", dash(p.plan.Well.Revision)}, {"Author", dash(p.plan.Well.Author)}, {"Date", dash(p.plan.Well.Date)},
	}, p.printedFrom()...)
	if len(p.Against.Misfits) > 0 {
		misfits := part{title: "Not as logged: the file was changed outside the program"}
		for _, m := range p.Against.Misfits {
			misfits.remarks = append(misfits.remarks, capital(m.String())+".")
		}
		s.parts = append(s.parts, misfits)
	}
	s.parts = append(s.parts, p.entriesChanged(c), p.findingsChanged(c), p.figuresMoved(c))
	if p.Paper == ChangeNote {
		s.parts = append(s.parts, p.logPart(), signed())
	}
	return s
}

func (p *printer) sectionsText() string {
	if p.Section < 0 {
		return "the well and all of them"
	}
	return fmt.Sprintf("%d of %d alone", p.Section+1, len(p.plan.Sections))
}

// entriesChanged lists what was entered otherwise, with who did it last and every reason that was given.
func (p *printer) entriesChanged(c *calc.Comparison) part {
	list := part{rowHead: "Entry"}
	for _, e := range c.Entries {
		if !p.listed(e.Section) {
			continue
		}
		r := row{name: capital(e.Words)}
		switch was, now := p.contents(&e); {
		case e.Field == nil && e.Added():
			r.cells = []cell{{label: "added", value: dash(now)}}
		case e.Field == nil:
			r.cells = []cell{{label: "removed", value: dash(was)}}
		default:
			r.cells = []cell{{label: "was", value: dash(was)}, {label: "now", value: dash(now)}}
		}
		if who, why := p.reasons(&e); who != "" {
			r.cells = append(r.cells, cell{label: "by", value: who})
			if why != "" {
				r.cells = append(r.cells, cell{label: "why", value: why})
			}
		}
		list.rows = append(list.rows, r)
	}
	list.title = "Entries changed: " + strconv.Itoa(len(list.rows))
	if len(list.rows) == 0 {
		list.remarks = []string{"None."}
	}
	return list
}

// contents shows what stood in an entry and what stands there now, or what a row is known by; blank for nothing.
func (p *printer) contents(e *calc.EntryChange) (was, now string) {
	if e.Field != nil {
		return e.Field.ScreenText(e.Old, p.System), e.Field.ScreenText(e.New, p.System)
	}
	text := ""
	for _, r := range e.Row {
		text = joined(text, r.Field.ScreenText(r.Entry, p.System))
	}
	if e.Added() {
		return "", text
	}
	return text, ""
}

// reasons says who changed an entry last, and every reason that the log has for it.
func (p *printer) reasons(e *calc.EntryChange) (who, why string) {
	about := model.LoggedFor(p.Against.Log, cmp.Or(e.After, e.Before))
	if len(about) == 0 {
		return "", ""
	}
	return about[0].Who, model.Whys(about)
}

// findingsChanged lists the findings that have come, gone or changed, those beyond a limit that is met in full.
func (p *printer) findingsChanged(c *calc.Comparison) part {
	list, met := part{}, 0
	for _, f := range c.Findings {
		now := f.Finding()
		if !p.listed(now.Section) {
			continue
		}
		if f.Worst() == calc.OK {
			met++
			continue
		}
		it := p.findingItem(*now, howChanged(&f)+", "+sheetName(now.Section))
		if f.Had && f.Has && f.Before.HasLimit {
			it.lines = append(it.lines, "Before: "+p.limitText(f.Before))
		}
		list.items = append(list.items, it)
	}
	list.title = "Findings changed: " + strconv.Itoa(len(list.items))
	if len(list.items) == 0 {
		list.remarks = []string{"None beyond limits met. A limit met is that limit met, and no more."}
	}
	if met > 0 {
		list.remarks = append(list.remarks, fmt.Sprintf("%d limits that are met came or went with what they are asked of.", met))
	}
	return list
}

// howChanged says what became of a finding.
func howChanged(f *calc.FindingChange) string {
	switch {
	case !f.Had:
		return "new " + f.After.Severity.String()
	case !f.Has:
		return "gone, was " + f.Before.Severity.String()
	case f.Before.Severity == f.After.Severity:
		return f.After.Severity.String() + " as before"
	}
	return f.Before.Severity.String() + " to " + f.After.Severity.String()
}

// How many figures a page lists: of those held against a limit the nearest to it, of the others those that moved most.
const (
	limitedListed = 60
	othersListed  = 40
)

// figuresMoved lists the figures that moved.
func (p *printer) figuresMoved(c *calc.Comparison) part {
	list := part{rowHead: "Figure"}
	var left [2]int // without a limit, with one
	for _, m := range c.Figures {
		if !p.listed(m.Section) {
			continue
		}
		with, most := 0, othersListed
		if m.HadLimit {
			with, most = 1, limitedListed
		}
		if left[with]++; left[with] <= most {
			list.rows = append(list.rows, p.movedRow(&m))
		}
	}
	list.title = "Figures moved: " + strconv.Itoa(left[0]+left[1])
	switch more := left[0] + left[1] - len(list.rows); {
	case len(list.rows) == 0:
		list.remarks = []string{"None by more than it is shown to."}
	case more > 0:
		list.remarks = []string{fmt.Sprintf("The nearest to their limits first, then those that moved most. %d more stand in the CSV and JSON forms.", more)}
	}
	return list
}

func (p *printer) movedRow(m *calc.FigureMove) row {
	f := m.Figure()
	unit := p.System.Unit(f.Kind)
	name := capital(sheetName(m.Section)) + ", " + f.Topic.String()
	if f.Group != "" {
		name += ", " + f.Group
	}
	r := row{name: name + ": " + f.Label(), cells: []cell{
		{label: "was", value: p.figureText(m.Before), number: true}, {label: "now", value: p.figureText(m.After), number: true},
	}}
	if change := p.moveText(m); change != "" {
		r.cells = append(r.cells, cell{label: "by", value: change, number: true})
	}
	if m.HadLimit {
		l := &m.Limit
		r.cells = append(r.cells, cell{label: "limit", value: p.boundText(*l)}, cell{label: "margin", value: marginText(*l, unit)})
	}
	return r
}

// moveText is by how much a figure moved; blank where it was not there or is not.
func (p *printer) moveText(m *calc.FigureMove) string {
	if !m.Before.OK || !m.After.OK {
		return ""
	}
	return quantity.FormatChange(m.After.Value-m.Before.Value, m.After.Kind, p.System.Unit(m.After.Kind))
}

// logPart lists the log since then, the earliest first.
func (p *printer) logPart() part {
	rows := p.Against.Log
	list := part{title: "The log since then", rowHead: "When"}
	for _, l := range model.LogLines(rows) {
		r := rows[l.Row]
		what := r.Words(p.plan)
		if n := l.Last - l.First; n > 0 {
			what += fmt.Sprintf(", with %d entries", n)
		}
		line := row{name: dash(r.When), cells: []cell{{label: "by", value: dash(r.Who)}, {value: what}}}
		if r.Why != "" {
			line.cells = append(line.cells, cell{label: "why", value: r.Why})
		}
		list.rows = append(list.rows, line)
	}
	if len(rows) == 0 {
		list.remarks = []string{"Nothing is logged."}
	}
	return list
}
