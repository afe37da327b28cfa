package sheet

import (
	"cmp"
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/relief"
)

// Measures of the page that a relief reads first: as many lines as a page of paper has, and the columns that the longest label of its
// rows leaves.
const (
	reliefPage  = bodyLines
	reliefWidth = pageWidth - len("Next 24 h: ")
)

// handoverCard makes the handover of the section in work; why says what keeps it from being made.
func (p *printer) handoverCard(i int) (c card, why string) {
	if at, ok := p.plan.InWork(); !ok {
		return card{}, p.toMend("no section is in work", "status.section")
	} else if at != i {
		return card{}, fmt.Sprintf("section %d is the one in work (status.section)", at+1)
	}
	c = card{section: i, brief: true, title: "Handover: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	c.lead = p.reliefLead(&c)
	c.tables = filled(append(p.presentTables(), p.stringList(i), p.tallyLeft(i), p.stackMatrix(i), p.stocks(i))...)
	c.notes = p.reliefNotes()
	return c, ""
}

// presentTables lists the figures of the handover, a table for each group; a blank says why, once where the line above says the same.
func (p *printer) presentTables() (tables []table) {
	group, why := "", ""
	for _, f := range p.result.Well.Figures {
		if f.Topic != model.TopicHandover {
			continue
		}
		if f.Group != group {
			group, why = f.Group, ""
			tables = append(tables, table{title: group, rowHead: "Figure"})
		}
		t := &tables[len(tables)-1]
		if f.Column == "" {
			t.add(f.Name, f.Note)
			switch {
			case f.OK:
			case f.Why == why:
				t.remark("blank")
			default:
				t.remark("blank: " + f.Why)
			}
			why = f.Why
		}
		if f.OK {
			t.set(f.Column, f.Kind, f.Value)
		}
	}
	return tables
}

// reliefLead returns the page that is read first: its rows are cut to what the rest leaves of it.
func (p *printer) reliefLead(c *card) []part {
	rows := relief.Rows(p.plan, p.result, p.System, p.Changes)
	for k := range rows {
		rows[k].Each = false
	}
	first := part{title: "Read first, at the present depth", pairs: []pair{{"-", "-"}}}
	rest := []part{
		{title: "Cautions", remarks: []string{
			"For mud, depth and readings as entered, and for no others. Strokes and kill figures are worked out by the relief before he sees the program's.",
			p.reliefCaution(c.section),
		}},
		{title: "Handed over by, taken over by, day and time", remarks: p.signatures()},
	}
	if len(p.Changes) == 0 {
		rest = append([]part{{title: "Changed since the last handover, by hand", remarks: []string{strings.Repeat("_", pageWidth-indent)}}}, rest...)
	}
	var taken textSheet
	taken.page(page{title: c.title, foot: standing, head: p.cardHead(c), parts: append([]part{first}, rest...)})
	room := reliefPage - strings.Count(taken.String(), "\n") + len(first.pairs)
	first.pairs = nil
	for _, lines := range relief.Fit(rows, reliefWidth, room, ";", foundMark) {
		text := ""
		for _, l := range lines {
			text += " " + l.Text()
		}
		first.pairs = append(first.pairs, pair{lines[0].Label, strings.TrimSpace(text)})
	}
	return append([]part{first}, rest...)
}

// reliefCaution is what goes wrong when a limit of a section is taken for more than it is.
func (p *printer) reliefCaution(i int) string {
	if p.plan.Sections[i].Returns == model.ToSeabed {
		return "A shallow flow is never shut in: it is pumped dead, or left."
	}
	return "MAASP and kick tolerance compare; neither is a reason to bleed a well or to drill on. Gas above the shoe ends MAASP."
}

// foundMark is put before what something is found about.
func foundMark(s calc.Severity) string { return [...]string{"", "!", "!!"}[s] }

// signatures are the lines on which a handover is signed, with the names and the hour as entered.
func (p *printer) signatures() []string {
	h, _, ok := p.plan.LastHandover()
	if !ok {
		h = &model.Handover{}
	}
	line := func(name string) string { return cmp.Or(name, "name") + ": ______________________" }
	return []string{line(h.From) + "  " + line(h.To), cmp.Or(h.Time, "day and time: ____________________")}
}

// stringList lists the drill string, bottom up.
func (p *printer) stringList(i int) table {
	t := table{title: "String, bottom up", rowHead: "Part"}
	stack, err := calc.StackUp(p.plan, i)
	if err != nil {
		return t
	}
	for k := range stack.Rows {
		r := &stack.Rows[k]
		t.add(fmt.Sprint(r.Number)+" "+cmp.Or(r.Name, r.Item), "")
		t.set("length", quantity.Length, r.Length)
		t.set("OD", quantity.Diameter, r.OD)
		t.set("ID", quantity.Diameter, r.ID)
	}
	return t
}

// tallyLeft lists what of the string of the section is to be run and what is left on deck.
func (p *printer) tallyLeft(i int) table {
	s := p.result.Sheet(i)
	t := table{title: "Tally of the section's string", rowHead: "What"}
	t.figures(s, "Joints", shown{"to run", "tally.joints"}, shown{"left on deck", "tally.joints.left"})
	t.figures(s, "Length", shown{"", "tally.length"}, shown{"shoe at", "tally.shoe"})
	return t
}

// stackMatrix lists the preventers with what each is tested to, with room for the day.
func (p *printer) stackMatrix(i int) table {
	t := table{title: "Preventers, highest first", rowHead: "Preventer", byHand: []string{"tested on"}}
	if p.plan.Sections[i].Returns != model.ToRig {
		return t
	}
	for k := range p.plan.Rams {
		ram := &p.plan.Rams[k]
		high := "control.stack.rams"
		if ram.Closes == model.RamAnnular {
			high = "control.stack.annular"
		}
		t.add(cmp.Or(ram.Name, "preventer "+fmt.Sprint(k+1)), ram.Closes)
		t.set("high", quantity.Pressure, p.value(i, high))
		t.set("low", quantity.Pressure, p.value(i, "control.stack.low"))
		t.set("above datum", quantity.Length, given(ram.Height))
	}
	return t
}

// stocks lists what is aboard beside the least that the rules ask for.
func (p *printer) stocks(i int) table {
	t := table{title: "Stock aboard and least", rowHead: "Stock"}
	if v := p.plan.Rig.Barite; v.IsSet() {
		t.add("Weighting material", "")
		t.set("", quantity.Mass, v.SI)
		if rule := model.Rules()[model.RuleWeightLeast]; rule.In(p.plan.Well.RuleSet) {
			limit, _ := p.plan.Limit(rule)
			t.set("least", quantity.Mass, limit.SI)
		}
	}
	riserless := &p.plan.Sections[i].Riserless
	t.entry("Heavy mud", riserless.StockVolume, quantity.Volume, "")
	t.entry("Kill mud", riserless.KillVolume, quantity.Volume, "")
	return t
}

// reliefNotes are what the first page may have cut: entries, findings and steps in full.
func (p *printer) reliefNotes() []part {
	status := model.StatusGroup()
	notes := []part{{title: "Status, as entered", pairs: p.pairs(status, model.Place{}, model.TopicHandover)}}
	for _, list := range status.Lists {
		notes = append(notes, p.listParts(list.Title, list, model.Place{})...)
	}
	notes = append(notes, p.listParts("Handovers", model.HandoverList(), model.Place{})...)
	found := part{title: "Findings at the present depth"}
	for _, it := range relief.Found(p.plan, p.result, p.System) {
		found.items = append(found.items, item{mark: it.Severity.String(), text: it.Text})
	}
	if len(found.items) == 0 {
		found.remarks = []string{"None beyond limits met. A limit met is that limit met, and no more."}
	}
	return append(notes, found, p.comes())
}

// comes lists the operations of the next 24 h with their stop points.
func (p *printer) comes() part {
	to := part{title: "Next 24 h, stop points"}
	list, why := p.result.StepsAhead(p.plan, relief.Ahead)
	if why != "" {
		to.remarks = []string{"Blank: " + why + "."}
	}
	for _, a := range list {
		it := item{mark: "till " + quantity.FormatUnit(a.To, quantity.Hours, p.System.Unit(quantity.Hours)), text: a.Step.Name}
		if !a.Timed {
			it.mark = "till -"
		}
		for _, stop := range a.Step.Stops {
			it.lines = append(it.lines, "Stop: "+stop)
		}
		to.items = append(to.items, it)
	}
	return to
}
