package ui

import (
	"cmp"

	"borewalk/calc"
	"borewalk/model/quantity"
)

// figureChange says by how much a figure of a trial is more or less than the plan's.
func (p *Planner) figureChange(f calc.ComparedFigure, cell int) string {
	was, now := f.Cells[0].Figure, f.Cells[cell].Figure
	switch {
	case was.OK && now.OK:
		return quantity.FormatChange(now.Value-was.Value, f.Kind, p.system.Unit(f.Kind))
	case now.OK:
		return "new"
	case was.OK:
		return "gone"
	}
	return ""
}

// findingChange says what becomes of a finding with a trial, by its cell; nothing when it stays or is no finding.
func (u *trials) findingChange(p *Planner, row trialRow, cell int) string {
	if row.kind != rowFinding || u.compared.Trials[cell-1].Result == nil {
		return ""
	}
	was, now := row.finding.Severities[0], row.finding.Severities[cell]
	switch {
	case now == was:
		return ""
	case was == calc.OK:
		return "+ comes " + p.findingMark(now)
	case now == calc.OK:
		return "- goes " + p.findingMark(was)
	case now > was:
		return "+ worse " + p.findingMark(now)
	}
	return "- eased " + p.findingMark(now)
}

func (u *trials) below() (title, detail string) {
	title = "trials: nothing of the plan is changed until p promotes one"
	if t, ok := u.focused(); ok {
		if title = "trial " + t.Name; t.Note != "" {
			title += ": " + t.Note
		}
	}
	return title, u.detail
}

// say puts the row in focus in words, for the trial in focus.
func (u *trials) say(p *Planner) {
	u.detail = ""
	t, ok := u.focused()
	if !ok {
		return
	}
	switch row := u.rows[u.at]; row.kind {
	case rowNote:
		u.detail = cmp.Or(t.Note, "no note; enter writes one, n changes the name")
	case rowAdd:
		u.detail = "enter or c: choose an entry and what it is in this trial"
	case rowEntry:
		u.detail = u.entryWords(p, row.entry, t)
	case rowFigure:
		u.detail = u.figureWords(p, row.figure)
	case rowFinding:
		u.detail = cmp.Or(u.findingChange(p, row, u.trial+1), "stays as it is in the plan") + ": " + p.findingText(row.finding.Finding)
	}
	if t.Why != "" && u.rows[u.at].kind != rowEntry {
		u.detail = "not worked out: " + t.Why
	}
}

// entryWords says what the trial in focus makes of an entry.
func (u *trials) entryWords(p *Planner, e calc.ComparedEntry, t *calc.Trial) string {
	text := e.Path
	if e.Ref.Field != nil {
		text = e.Ref.Words() + ", plan " + cmp.Or(e.Ref.Field.ScreenText(e.Ref.Get(u.plan), p.system), "blank")
	}
	n := e.Tried[u.trial]
	if n < 0 {
		return text + "; this trial leaves it, enter changes it here too"
	}
	c, written := &t.Changes[n], u.plan.Trials[t.Number].Changes[n].Value
	switch {
	case c.Fault != "":
		return "!! " + text + ": " + c.Fault + " (" + written + ")"
	case c.Idle != "":
		return "! " + text + ": " + written + " does not count: " + c.Idle
	}
	return text + ", here " + cmp.Or(c.Ref.Field.ScreenText(c.To, p.system), "blank") + " (" + written + ")"
}

// figureWords says what a figure is in the plan and in the trial in focus.
func (u *trials) figureWords(p *Planner, f calc.ComparedFigure) string {
	said := func(c calc.FigureCell) string {
		if !c.Figure.OK {
			return "blank " + c.Figure.Why
		}
		text := p.cell(c.Figure)
		if c.Figure.Note != "" {
			text += " " + c.Figure.Note
		}
		if c.Severity > calc.OK {
			text += " " + p.severityMark(c.Severity) + " " + c.Severity.String()
		}
		return text
	}
	text := f.Topic.String() + ", " + f.Group + ": " + figureName(f.Figure) + ", plan " + said(f.Cells[0])
	if cell := u.trial + 1; u.compared.Trials[u.trial].Result != nil {
		text += ", here " + said(f.Cells[cell])
		if change := p.figureChange(f, cell); change != "" {
			text += " [" + change + "]"
		}
	}
	return text
}
