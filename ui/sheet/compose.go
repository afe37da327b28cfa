package sheet

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"borewalk/model"
	"borewalk/model/quantity"
)

// compose returns the content of the sheet of a section, or of the well for section -1.
func (p *printer) compose(section int) page {
	if section < 0 {
		return p.wellPage()
	}
	return p.sectionPage(section)
}

func (p *printer) wellPage() page {
	s := page{title: "Well sheet: " + p.wellName(), foot: standing}
	s.head = append([]pair{{"Revision", dash(p.plan.Well.Revision)}}, p.printedFrom()...)
	for _, g := range model.Groups() {
		if g != model.SectionGroup() && g.On(model.TopicWell) {
			s.parts = append(s.parts, p.wellEntries(g)...)
		}
	}
	s.parts = append(s.parts, p.figureParts(-1, model.TopicWell)...)
	s.parts = append(s.parts, p.findingsPart(-1))
	if len(p.plan.Sections) > 0 {
		s.parts = append(s.parts, p.overview())
	}
	s.parts = append(s.parts, p.cautionsPart(-1))
	s.parts = p.illustrated(-1, s.parts)
	return s
}

func (p *printer) sectionPage(i int) page {
	section, well := &p.plan.Sections[i], &p.plan.Well
	s := page{title: fmt.Sprintf("Section sheet %d of %d: %s", i+1, len(p.plan.Sections), dash(section.Name)), foot: standing}
	s.head = append([]pair{
		{"Well", p.wellName()},
		{"Operator", dash(well.Operator)},
		{"Revision", dash(well.Revision)},
		{"Author", dash(well.Author)},
		{"Date", dash(well.Date)},
		{"Rule set", dash(well.RuleSet)},
	}, p.printedFrom()...)
	for _, topic := range model.Topics() {
		if topic != model.TopicWell {
			s.parts = append(s.parts, p.sectionEntries(i, topic)...)
			s.parts = append(s.parts, p.figureParts(i, topic)...)
		}
	}
	s.parts = append(s.parts, p.findingsPart(i), p.cautionsPart(i))
	s.parts = p.illustrated(i, s.parts)
	return s
}

// illustrated adds the pictures of a section, or of the well for section -1: in a PDF before all else, in text behind it, where
// they are in nobody's way who has the sheet read aloud.
func (p *printer) illustrated(section int, parts []part) []part {
	if p.Format == PDF {
		return append(p.pictures(section), parts...)
	}
	return append(parts, p.pictures(section)...)
}

// printedFrom says what a paper was made from, and when.
func (p *printer) printedFrom() []pair { return append(p.origin(p.shortHash()), p.printed()...) }

// origin says what a sheet was made from, and in which units it is written.
func (p *printer) origin(hash string) []pair {
	return []pair{
		{"Source", dash(p.Source)},
		{"Input hash", dash(hash)},
		{"Units", p.unitsText()},
		{"Program", strings.TrimSpace("borewalk " + p.Version)},
	}
}

// unitsText names the unit set and the kinds that are shown otherwise.
func (p *printer) unitsText() string {
	text := p.System.Set().String()
	own := p.System.Overrides()
	for i, kind := range slices.SortedFunc(maps.Keys(own), cmp.Compare[quantity.Kind]) {
		if i == 0 {
			text += "; but "
		} else {
			text += ", "
		}
		text += kind.String() + " in " + own[kind].Symbol()
	}
	return text
}

func (p *printer) wellName() string {
	if p.plan.Well.Name == "" {
		return "unnamed well"
	}
	return p.plan.Well.Name
}

// sheetName returns how a finding names the sheet it belongs to.
func sheetName(section int) string {
	if section < 0 {
		return "well"
	}
	return fmt.Sprintf("section %d", section+1)
}

// dash stands for a blank.
func dash(text string) string {
	if strings.TrimSpace(text) == "" {
		return "-"
	}
	return text
}

// capital begins a heading with a capital letter.
func capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
