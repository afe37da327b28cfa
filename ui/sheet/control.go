package sheet

import (
	"strings"

	"borewalk/calc"
	"borewalk/model"
)

// What the papers of well control share: the kill sheet, the limits card and the shoe test sheet.

// chokeTable lists what may stand at the choke with the pump off and at the kill rate, and all that limits it, each with where.
func (p *printer) chokeTable(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "Choke, most (MAASP), with this mud and no gas above the shoe", rowHead: "Limit"}
	p.mostAtChoke(i, &t, "Pump off", "At the kill rate")
	for _, f := range s.Figures {
		if strings.HasPrefix(f.Key, "control.maasp.") && f.Column == "" {
			t.figures(s, f.Name, shown{"", f.Key}, shown{"at TVD", f.Key + ".at"})
		}
	}
	return t
}

// mostAtChoke adds what may stand at the choke with the pump off and at the kill rate.
func (p *printer) mostAtChoke(i int, t *table, off, on string) {
	s := p.result.Sheet(i)
	most, ok := s.Find("control.maasp")
	if !ok || !most.OK {
		return
	}
	t.add(off, "the least: "+most.Note)
	t.set("", most.Kind, most.Value)
	t.figures(s, on, shown{"", "control.maasp.circulating"})
	if figureOf(s, "control.maasp.circulating") < 0 {
		t.remark("the line's friction alone is more than the well bears")
	}
}

// mostMud adds the most mud, and by what where the shoe test does not decide.
func (p *printer) mostMud(i int, t *table) {
	s := p.result.Sheet(i)
	t.figures(s, "Most mud", shown{"", "control.mud.most"})
	if f, ok := s.Find("control.maasp.shoe"); ok && f.OK && !strings.HasPrefix(f.Note, "shoe test") {
		t.remark("by " + f.Note)
	}
}

// staleTest says why the measured shoe test of a section may no longer hold; empty where nothing says so.
func (p *printer) staleTest(i int) string {
	for _, f := range p.findings(func(s int) bool { return s == i }) {
		if (f.Mend == model.PathOf(i, "shoe_test.shoe") || f.Mend == model.PathOf(i, "shoe_test.date")) && !f.HasLimit {
			return f.Text
		}
	}
	return ""
}

// onControl tells the findings on well control, those too that are put right on another page.
func (p *printer) onControl() func(calc.Finding) bool {
	return either(p.entersIn(model.TopicControl), byRules(model.RuleUSMostPressure, model.RuleRiserMargin, model.RuleStackRating,
		model.RuleStackTestRating, model.RuleShallowFlow, model.RuleShallowMud))
}
