package dialogue

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/wording"
)

// pageNamed returns the page of a name said in full.
func pageNamed(name string) (model.Topic, bool) {
	for _, t := range model.Topics() {
		if strings.EqualFold(t.String(), strings.TrimSpace(name)) {
			return t, true
		}
	}
	return 0, false
}

// goPage goes to a page by the beginning of its name, or names the pages.
func (s *Session) goPage(rest string) {
	var names []string
	for _, t := range model.Topics() {
		names = append(names, t.String())
	}
	if rest == "" {
		s.say("pages: " + strings.Join(names, ", "))
		return
	}
	switch found := pick(rest, model.Topics(), func(t model.Topic) []string { return []string{t.String()} }); len(found) {
	case 1:
		s.turnTo(found[0])
	default:
		s.refuse(fmt.Sprintf("%q names no page, or several: they are %s", rest, strings.Join(names, ", ")))
	}
}

// turnTo goes to a page.
func (s *Session) turnTo(t model.Topic) {
	s.topic = t
	s.nameEntries()
	s.where()
}

// goSection goes to a section, or lists them.
func (s *Session) goSection(rest string) {
	n, ok := number(rest)
	switch {
	case rest == "":
		s.sections()
	case !ok:
		s.refuse("section takes a number; without it the sections are listed")
	case n < 1 || n > len(s.plan.Sections):
		s.refuse(fmt.Sprintf("there is no section %d: the plan has %d", n, len(s.plan.Sections)))
	default:
		s.section = n - 1
		if s.sheet() < 0 { // the pages of the well are no section's
			s.topic = model.TopicHole
		}
		s.turnTo(s.topic)
	}
}

// sections lists the sections with their holes and their worst findings.
func (s *Session) sections() {
	if len(s.plan.Sections) == 0 {
		s.say("no section yet: add section")
	}
	for i := range s.plan.Sections {
		section := &s.plan.Sections[i]
		text := fmt.Sprintf("section %d: %s", i+1, section.Name)
		if section.Name == "" && section.Hole.IsSet() {
			text += quantity.FormatUnit(section.Hole.SI, quantity.Diameter, s.system.Unit(quantity.Diameter)) + " hole"
		}
		_, count := s.result.Worst(i)
		s.say(fmt.Sprintf("%s; %d stop, %d caution", text, count[calc.Stop], count[calc.Caution]))
	}
}

// step goes to a section below or above.
func (s *Session) step(by int) {
	if to := s.section + by; to < 0 || to >= len(s.plan.Sections) {
		s.refuse("there is no further section that way")
		return
	}
	s.goSection(fmt.Sprint(s.section + by + 1))
}

// pageEntries returns the entries of the page that count, in their order.
func (s *Session) pageEntries() (refs []model.Ref) {
	for _, l := range model.Page(s.plan, s.topic, s.section) {
		if l.Kind == model.PageEntry {
			refs = append(refs, l.Ref)
		}
	}
	return refs
}

// nameEntries has numbers mean the entries of the page.
func (s *Session) nameEntries() {
	s.named = list{}
	for _, ref := range s.pageEntries() {
		s.named.items = append(s.named.items, item{ref: &ref})
	}
}

// entries lists the entries of the page that are set or needed, or all.
func (s *Session) entries(rest string) {
	all, _ := s.asked(rest)
	s.nameEntries()
	said := s.sayEntries(func(ref model.Ref) bool { return all || ref.Get(s.plan).IsSet() || ref.Field.Required })
	if blank := len(s.named.items) - said; blank > 0 {
		s.say(fmt.Sprintf("blank entries: %d; say entries all to hear them", blank))
	}
}

// sayEntries says the entries of the page that are wanted, each with its number, those of a table or a row behind its name. It returns
// how many there were.
func (s *Session) sayEntries(wanted func(model.Ref) bool) (said int) {
	n, head, open := 0, "", false
	for _, l := range model.Page(s.plan, s.topic, s.section) {
		switch l.Kind {
		case model.PageTable:
			head, open = l.Ref.Group.Title, false
		case model.PageRow:
			head, open = rowName(l.Ref.Group, l.Ref.Place), false
		case model.PageEntry:
			n++
			if !wanted(l.Ref) {
				continue
			}
			if head != "" && !open && l.Level > 0 {
				s.say(head + ":")
				open = true
			}
			s.say(fmt.Sprintf("%d. %s: %s", n, label(l.Ref), wording.Content(s.plan, l.Ref, s.system)))
			said++
		}
	}
	return said
}

// rowName names a row of a list: "casing 2".
func rowName(g *model.Group, at model.Place) string {
	return fmt.Sprintf("%s %d", strings.ToLower(g.Title), g.Index(at)+1)
}

// figures lists the figures of the page.
func (s *Session) figures(rest string) {
	if _, left := s.asked(rest); left != "" {
		s.working(left)
		return
	}
	s.named = list{}
	for _, l := range wording.FigureLines(s.result.Sheet(s.sheet()), s.topic) {
		if l.Heading != "" {
			s.say(l.Heading + ":")
			continue
		}
		if len(l.Figures) == 0 {
			continue
		}
		s.named.items = append(s.named.items, item{figures: l.Figures, sheet: s.sheet()})
		s.say(fmt.Sprintf("%d. %s", len(s.named.items), wording.Figures(l.Figures, s.system)))
	}
	if len(s.named.items) == 0 {
		s.say("there is no figure on this page")
	}
}

// findings lists the findings, the worst first.
func (s *Session) findings(rest string) {
	all, _ := s.asked(rest)
	least := calc.Caution
	if all {
		least = calc.OK
	}
	s.named = list{}
	for _, f := range wording.Findings(s.plan, s.result, s.view(), least) {
		s.named.items = append(s.named.items, item{finding: &f})
		s.say(fmt.Sprintf("%d. %s", len(s.named.items), wording.Finding(f, s.system)))
	}
	if len(s.named.items) == 0 {
		s.say("no finding beyond ok; that says only that the limits compared were met")
	}
}

// units chooses what units are said.
func (s *Session) units(rest string) {
	switch set, err := quantity.ParseSet(rest); {
	case rest == "":
	case strings.EqualFold(rest, "plan"):
		s.set, _ = quantity.ParseSet(s.plan.Well.UnitSet)
	case err != nil:
		s.refuse(err.Error() + ", or plan")
		return
	default:
		s.set = set
	}
	s.evaluate()
	if s.ownUnits() {
		s.say("said in the plan's units, " + s.set.String())
	} else {
		s.say("said in " + s.set.String() + " units; what is stored does not change")
	}
}

// notices says what was noticed about the file.
func (s *Session) notices() {
	for _, n := range s.file.Notices {
		s.say(n)
	}
	if len(s.file.Notices) == 0 {
		s.say("the file holds nothing unknown")
	}
}
