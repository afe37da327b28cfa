package sheet

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// limitsCard makes the card of a section for the driller's console: with a riser what shoe, choke and stack bear, without one what
// a shallow flow takes. why says what keeps it from being made.
func (p *printer) limitsCard(i int) (c card, why string) {
	if why = p.lacking(i, "hole.td", "the section has no depth"); why != "" {
		return card{}, why
	}
	c = card{section: i, brief: true, title: "Limits card: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	if p.plan.Sections[i].Returns == model.ToRig {
		c.tables = filled(p.chokeTable(i), p.limitsKick(i), p.limitsKill(i), p.limitsMoving(i))
	} else {
		c.tables = filled(p.limitsDynamic(i), p.limitsSand(i), p.limitsMoving(i))
	}
	c.notes = []part{{title: "Findings and cautions", remarks: p.limitsRemarks(i)}}
	return c, ""
}

// limitsKick lists mud and shoe test, and what kick is borne.
func (p *printer) limitsKick(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "Shoe, mud and kick, bit at TD", rowHead: "Limit"}
	t.entry("Mud", p.counts.Sections[i].Density, quantity.Density, "")
	p.mostMud(i, &t)
	t.figures(s, "Shoe test", shown{"", "control.test"}, shown{"in mud", "control.test.mud"})
	if figureOf(s, "control.shoe") < figureOf(s, "control.test") {
		t.figures(s, "Shoe stands", shown{"", "control.shoe"})
	}
	t.figures(s, "Drilled kick", shown{"", "control.tolerance"})
	t.figures(s, "Swabbed kick", shown{"", "control.tolerance.swabbed"})
	t.figures(s, "Least wanted", shown{"", "control.tolerance.least"}, shown{"reached, bit at", "control.tolerance.ends"})
	if f, ok := s.Find("control.tolerance.ends"); ok && len(t.rows) > 0 {
		t.remark(f.Note)
	}
	return t
}

// limitsKill lists what stands on the kill sheet, what goes with the riser, and to what the BOP is tested.
func (p *printer) limitsKill(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "Kill, riser lost, BOP test", rowHead: "What"}
	t.figures(s, "Line friction, kill rate", shown{"", "control.line"})
	t.figures(s, "ICP, planned kick", shown{"", "control.kill.initial"}, shown{"FCP", "control.kill.final"}, shown{"kill mud", "control.kill.mud"})
	if p.plan.Sections[i].Kill.DrillPipe.IsSet() && len(t.rows) > 0 {
		t.rows[len(t.rows)-1].name = "ICP, kick as read"
	}
	t.figures(s, "Riser lost, loses", shown{"", "control.riser.lost"}, shown{"EMW at TD", "control.riser.lost.emw"}, shown{"over pore", "mud.riser_margin"})
	if figureOf(s, "mud.riser_margin") < 0 {
		t.remark("the BOP is the barrier then")
	}
	for _, key := range []string{"rams", "annular", "low"} {
		key = "control.stack." + key
		if f, ok := s.Find(key); ok {
			t.figures(s, f.Name, shown{"", key}, shown{"at the pump", key + ".pump"})
		}
	}
	for _, f := range s.Figures {
		if strings.HasPrefix(f.Key, "control.due.") {
			t.due(f)
		}
	}
	return t
}

// due adds when a test falls due.
func (t *table) due(f calc.Figure) {
	if !f.OK { // the day is known, the days left are not
		falls, _, _ := strings.Cut(f.Why, ";")
		t.add(f.Name, falls)
		return
	}
	t.add(f.Name, f.Note)
	if t.set("", f.Kind, f.Value); f.Value < 0 {
		t.remark("overdue")
	}
}

// limitsSand lists the shallow sand and how the hole stands to it.
func (p *printer) limitsSand(i int) table {
	s, section := p.result.Sheet(i), &p.counts.Sections[i]
	t := table{title: "Shallow sand", rowHead: "What"}
	t.entry("Top of the sand", section.Shallow.Sand, quantity.Length, "")
	t.entry("Pilot hole", section.Shallow.Pilot, quantity.Diameter, "")
	t.figures(s, "Its pressure", shown{"", "control.sand"}, shown{"EMW", "control.sand.emw"})
	t.figures(s, "Hole over it", shown{"", "control.sand.over"})
	if figureOf(s, "control.sand.over") < 0 {
		t.remark("it flows")
	}
	t.figures(s, "Mud that holds it", shown{"", "control.sand.mud"})
	t.figures(s, "Drives, hole full of gas", shown{"", "control.sand.blown"})
	return t
}

// limitsDynamic lists the flows of the dynamic kill and how long its mud lasts.
func (p *printer) limitsDynamic(i int) table {
	s, section := p.result.Sheet(i), &p.counts.Sections[i]
	t := table{title: "Shallow flow: pump at once, never shut in", rowHead: "What"}
	if _, there := s.Find("control.dynamic.flow"); !there {
		return t
	}
	t.figures(s, "Kill flow planned", shown{"", "control.dynamic.flow"})
	over := func(name, key string) {
		t.figures(s, name, shown{"flow", key}, shown{"at kill flow, over sand", key + ".over"})
	}
	over("With kill mud", "control.dynamic.kill")
	over("With the fluid", "control.dynamic.light")
	over("In the full hole", "control.dynamic.light.full")
	t.entry("Fluid", section.Density, quantity.Density, section.Fluid)
	t.entry("Kill mud", section.Riserless.KillDensity, quantity.Density, "")
	if section.Riserless.KillDensity.IsSet() {
		t.set("aboard", quantity.Volume, given(section.Riserless.KillVolume))
	}
	t.figures(s, "Kill mud lasts", shown{"", "control.dynamic.lasts"}, shown{"of the hole", "control.dynamic.holes"}, shown{"hours wanted take", "control.dynamic.needs"})
	return t
}

// limitsMoving lists what circulating and tripping may do.
func (p *printer) limitsMoving(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "Circulating and tripping as planned", rowHead: "Limit"}
	for _, key := range []string{"hydraulics.ecd.shoe", "hydraulics.ecd.td"} {
		if f, ok := s.Find(key); ok {
			t.figures(s, f.Name, shown{"", key}, shown{"at rest", key + ".static"})
		}
	}
	t.figures(s, "Least below fracture", shown{"", "hydraulics.margin"}, shown{"at TVD", "hydraulics.margin.at"})
	t.figures(s, "Most flow", shown{"", "hydraulics.flow.most"})
	for _, way := range []string{"out", "in"} {
		key := "swab.limit." + way
		list := []shown{{"", key + ".least"}, {"bit at", key + ".bit"}}
		if f, ok := s.Find(key + ".least"); ok && f.OK && f.Note != "" { // not limited, wherever the bit is
			list = list[:1]
		}
		t.figures(s, "Fastest trip "+way, list...)
	}
	return t
}

// namedFindings is how many findings a card names, so that it stays on its page.
const namedFindings = 3

// limitsRemarks are the findings on control, shortened, and the cautions that go with a limits card.
func (p *printer) limitsRemarks(i int) []string {
	var texts, remarks []string
	stale := p.staleTest(i)
	if stale != "" {
		remarks = append(remarks, "Shoe test: "+stale)
	}
	for _, f := range p.findings(func(s int) bool { return s == i }) {
		if f.Severity != calc.OK && f.Text != stale && p.onControl()(f) {
			texts = append(texts, f.Severity.String()+": "+f.Text)
		}
	}
	switch more := len(texts) - namedFindings; {
	case len(texts) == 0:
		remarks = append(remarks, "Findings on well control: none beyond limits met. A limit met is that limit met, and no more.")
	case more > 0:
		remarks = append(remarks, fmt.Sprintf("Findings on well control: %s; and %d more, on the section sheet.", strings.Join(texts[:namedFindings], "; "), more))
	default:
		remarks = append(remarks, "Findings on well control: "+strings.Join(texts, "; ")+". See the section sheet.")
	}
	if section := &p.plan.Sections[i]; section.Returns == model.ToSeabed && !section.Shallow.Sand.IsSet() {
		remarks = append(remarks, "Shallow sand: none is entered, so no dynamic kill is worked out. That says nothing of what is there: the site survey does. A shallow flow is never shut in.")
	}
	var keys []string
	for _, f := range p.result.Sheet(i).Figures {
		if f.OK {
			keys = append(keys, f.Key)
		}
	}
	return append(append(remarks, p.cautionsOn(i, nil, keys...)...),
		"Taken down when mud, shoe test, string, pump or depth has changed.",
		"Posted by, date, time: ________________________________________")
}
