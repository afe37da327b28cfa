package sheet

import (
	"fmt"
	"io"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// WriteTopic prints what one page has of a section, or of the well for section -1, as text without page breaks: entries, figures,
// findings beyond limits met that its entries mend, and the cautions that belong to them. Format and paper in o do not count. The
// error is that of w, or says that there is no such section.
func WriteTopic(w io.Writer, plan *model.Plan, result *calc.Result, topic model.Topic, o Options) error {
	p, err := newPrinter(plan, result, o)
	if err != nil {
		return err
	}
	s := page{title: capital(topic.String()) + ", well: " + p.wellName(), foot: standing}
	s.head = []pair{{"Well", p.wellName()}, {"Revision", dash(plan.Well.Revision)}}
	if i := o.Section; i >= 0 {
		s.title = fmt.Sprintf("%s, section %d of %d: %s", capital(topic.String()), i+1, len(plan.Sections), dash(plan.Sections[i].Name))
		s.parts = p.sectionEntries(i, topic)
	}
	s.parts = append(s.parts, p.planEntries(topic)...)
	s.head = append(s.head, p.printedFrom()...)
	s.parts = append(s.parts, p.figureParts(o.Section, topic)...)
	s.parts = append(s.parts, p.beyondMet("Findings of the page", o.Section, p.entersIn(topic)))
	printed, keys := map[quantity.Kind]bool{}, []string(nil)
	for _, f := range result.Sheet(o.Section).Figures {
		if f.Topic == topic && f.OK {
			printed[f.Kind], keys = true, append(keys, f.Key)
		}
	}
	s.parts = append(s.parts, part{title: "Cautions", remarks: p.cautionsOn(o.Section, printed, keys...)})
	s.each(p.plain)
	var t textSheet
	t.page(s)
	_, err = io.WriteString(w, t.String())
	return err
}

// planEntries returns what the plan has once of a topic's entries.
func (p *printer) planEntries(topic model.Topic) (parts []part) {
	for _, g := range model.Groups() {
		switch {
		case g == model.SectionGroup() || !g.On(topic):
		case topic == model.TopicWell || g.List:
			parts = append(parts, p.wellEntries(g)...)
		default:
			parts = append(parts, part{title: g.Title, pairs: p.pairs(g, model.Place{}, topic)})
			for _, list := range g.Lists {
				parts = append(parts, p.listParts(list.Title, list, model.Place{})...)
			}
		}
	}
	return parts
}
