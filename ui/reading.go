package ui

import (
	"fmt"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/wording"
)

// say adds a paragraph to a text, broken into lines of the width of the page.
func (u *menu) say(p *Planner, style canvas.Style, paragraph string) {
	for _, l := range wrap(p.glyphs.Translate(paragraph), p.pageWidth()-6) {
		u.items = append(u.items, item{text: l, style: style, dead: true})
	}
}

// showWorking opens the working of the focused line of figures, column by column. From the fields it only goes to the
// figures: the one that the focus was on last has nothing to do with the field.
func (p *Planner) showWorking() {
	if !p.figures && len(p.figureLines()) > 0 {
		p.figures = true
		p.message = "this is a figure now: up and down choose one, w shows its working"
		return
	}
	figures := p.focusedFigures()
	if len(figures) == 0 {
		p.message = noFigures
		return
	}
	u := &menu{title: "Working: " + figures[0].Name}
	for i, f := range figures {
		if i > 0 {
			u.say(p, canvas.Plain, "")
		}
		p.addWorking(u, f)
	}
	u.say(p, canvas.Plain, "")
	u.say(p, canvas.Plain, "Planning aid: verify by independent calculation.")
	u.copied = func(int) []string { return p.workingCopied(figures) }
	p.overlay = u
}

// addWorking adds to a text how a figure was got, with the numbers in the shown units so that it can be checked by hand.
func (p *Planner) addWorking(u *menu, f calc.Figure) {
	if f.Column != "" {
		u.say(p, canvas.Heading, f.Name+", "+f.Column)
	}
	if !f.OK {
		u.say(p, canvas.Caution, "Blank: "+f.Why)
		if f.Mend != "" {
			u.say(p, canvas.Plain, "Entry to mend: "+p.whereIs(f.Mend))
		}
		return
	}
	w, _ := calc.Explain(p.plan, p.sheet(), f.Key)
	u.say(p, canvas.Heading, w.Formula)
	for _, in := range w.Inputs {
		u.items = append(u.items, item{dead: true, text: "  " + pad(p.glyphs.Translate(in.Symbol), 9) + " = " +
			pad(p.exact(in.Value, in.Kind), 16) + " " + p.glyphs.Translate(in.Name)})
	}
	u.items = append(u.items, item{dead: true, style: canvas.Changed, text: "  result      " + p.exact(f.Value, f.Kind)})
	if f.Note != "" {
		u.say(p, canvas.Plain, "Where: "+f.Note)
	}
	u.say(p, canvas.Plain, "Source: "+w.Source)
	if w.Note != "" {
		u.say(p, canvas.Plain, w.Note)
	}
}

// exact formats a quantity with more digits than the trade writes, for a check by hand.
func (p *Planner) exact(si float64, kind quantity.Kind) string {
	return p.glyphs.Translate(wording.Exact(si, kind, p.system))
}

// showFindings lists the findings, worst first, those that the page in view mends before the others.
func (p *Planner) showFindings() {
	list := p.sortedFindings(calc.OK)
	if len(list) == 0 {
		p.message = "there are no findings: the rule set " + p.plan.Well.RuleSet + " compares nothing here"
		return
	}
	u := &menu{title: fmt.Sprintf("Findings, %s (ok: limit met, no more)", p.plan.Well.RuleSet), does: "goes there"}
	for _, f := range list {
		text := p.findingText(f)
		u.items = append(u.items, item{text: p.findingBrief(f), full: text + ". " + f.Source, style: severityStyle(f.Severity)})
	}
	u.pick = func(p *Planner, i int) {
		f := list[i]
		if f.Mend == "" || !p.goTo(f.Mend) {
			p.message = "there is no single entry behind this finding"
			return
		}
		p.message = p.findingText(f)
	}
	u.copied = func(i int) []string { return p.findingCopied(list[i]) }
	p.overlay = u
}

// looksAt is where the user looks, for the order of findings.
func (p *Planner) looksAt() wording.View { return wording.View{Topic: p.topic, Section: p.section} }

// sortedFindings returns the findings of a severity and above, what matters most here first.
func (p *Planner) sortedFindings(least calc.Severity) []calc.Finding {
	return wording.Findings(p.plan, p.result, p.looksAt(), least)
}

// leastBrief is the width of a page that has room for the word of a severity in a list; a narrower one has its mark.
const leastBrief = 80

// findingBrief is findingText for a list: what was measured comes first, since a narrow list cuts the end.
func (p *Planner) findingBrief(f calc.Finding) string {
	where := "well"
	if f.Section >= 0 {
		where = strconv.Itoa(f.Section + 1)
	}
	head := f.Severity.String() + " " + where + ": "
	if p.pageWidth() < leastBrief && f.Severity > calc.OK {
		head = p.severityMark(f.Severity) + " " + where + ": "
	}
	if !f.HasLimit {
		return head + f.Text
	}
	bound := ", least "
	if !f.Least {
		bound = ", most "
	}
	unit := p.system.Unit(f.Kind)
	return head + quantity.FormatUnit(f.Measured, f.Kind, unit) + bound + quantity.Format(f.Limit, f.Kind, unit) + " " + f.Text
}

// findingText puts a finding on one line: severity, section, what, measured, limit, where.
func (p *Planner) findingText(f calc.Finding) string { return wording.Finding(f, p.system) }

func severityStyle(s calc.Severity) canvas.Style {
	switch s {
	case calc.Stop:
		return canvas.Stop
	case calc.Caution:
		return canvas.Caution
	}
	return canvas.OK
}

// showNotices lists what the file holds that no field is known for.
func (p *Planner) showNotices() {
	u := &menu{title: "Notices about the file"}
	for _, n := range p.file.Notices {
		u.say(p, canvas.Plain, n)
	}
	p.overlay = u
}

// pad fills a text with blanks to a width.
func pad(text string, width int) string {
	if n := width - canvas.Width(text); n > 0 {
		return text + strings.Repeat(" ", n)
	}
	return text
}
