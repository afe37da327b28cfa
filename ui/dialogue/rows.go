package dialogue

import (
	"fmt"
	"strings"

	"borewalk/model"
)

// rowList is a list that rows can be added to, with the place of a row that would come behind its last.
type rowList struct {
	group *model.Group
	end   model.Place
}

// lists returns the lists of the page, and the sections.
func (s *Session) lists() []rowList {
	all := []rowList{{model.SectionGroup(), model.Place{Outer: len(s.plan.Sections)}}}
	for _, l := range model.Page(s.plan, s.topic, s.section) {
		if l.Kind == model.PageAdd && l.Ref.Group != model.SectionGroup() {
			all = append(all, rowList{l.Ref.Group, l.Ref.Place})
		}
	}
	return all
}

// row returns the list that a text means, and which row of it, from 0; a number that is not said is -1.
func (s *Session) row(text string) (l rowList, i int, why string) {
	if strings.ContainsAny(text, ".[") {
		return s.rowAt(model.Path(text))
	}
	name, i := text, -1
	if cut := strings.LastIndex(text, " "); cut > 0 {
		if n, ok := number(text[cut+1:]); ok {
			name, i = text[:cut], n-1
		}
	}
	found := pick(name, s.lists(), func(l rowList) []string { return []string{l.group.Title, strings.ReplaceAll(l.group.Name, "_", " ")} })
	if len(found) != 1 {
		return l, 0, fmt.Sprintf("%q is no list of this page; the lists are %s", name, s.listNames())
	}
	if l = found[0]; i > l.group.Index(l.end) || i < -1 {
		return l, 0, fmt.Sprintf("there is no %s", rowName(l.group, l.group.At(l.end, i)))
	}
	return l, i, ""
}

// rowAt returns the list or the row that a path means.
func (s *Session) rowAt(path model.Path) (l rowList, i int, why string) {
	if g, at, ok := model.FindRow(s.plan, path); ok {
		return rowList{g, g.At(at, g.Len(s.plan, at))}, g.Index(at), ""
	}
	if g, at, ok := model.FindList(s.plan, path); ok {
		return rowList{g, g.At(at, g.Len(s.plan, at))}, -1, ""
	}
	return l, 0, fmt.Sprintf("there is no list or row %s", path)
}

// listNames names the lists of the page with how many rows they have.
func (s *Session) listNames() string {
	var names []string
	for _, l := range s.lists() {
		names = append(names, fmt.Sprintf("%s (%d)", strings.ToLower(l.group.Title), l.group.Index(l.end)))
	}
	return strings.Join(names, ", ")
}

// add adds a row to a list, at its end or where a number says; a section below the one being worked.
func (s *Session) add(rest string) {
	if rest == "" {
		s.say("lists: " + s.listNames())
		return
	}
	l, i, why := s.row(rest)
	if why != "" {
		s.refuse(why)
		return
	}
	section := l.group == model.SectionGroup()
	switch {
	case i < 0 && section:
		i = min(s.section+1, len(s.plan.Sections))
	case i < 0:
		i = l.group.Index(l.end)
	}
	at := l.group.At(l.end, i)
	if !s.do(model.Edit{Name: "add " + rowName(l.group, at), Changes: []model.Change{model.Adding(l.group, at)}}) {
		return
	}
	if section {
		s.section = at.Outer
		s.turnTo(model.TopicHole)
		return
	}
	s.nameEntries()
	s.sayEntries(func(ref model.Ref) bool { return ref.Group == l.group && ref.Place == at })
}

// remove takes a row away. A section goes with all that is in it, so that it is asked about first.
func (s *Session) remove(rest string) {
	l, i, why := s.row(rest)
	switch {
	case rest == "":
		s.refuse("remove takes a list and a number; the lists are " + s.listNames())
		return
	case why != "":
		s.refuse(why)
		return
	case i < 0:
		s.refuse("say which row by its number")
		return
	case i >= l.group.Index(l.end):
		s.refuse("there is no " + rowName(l.group, l.group.At(l.end, i)))
		return
	}
	at := l.group.At(l.end, i)
	if l.group != model.SectionGroup() {
		s.takeAway(l.group, at)
		return
	}
	s.confirm(fmt.Sprintf("remove section %d, with its string? yes or no", i+1), func() { s.takeAway(l.group, at) })
}

func (s *Session) takeAway(g *model.Group, at model.Place) {
	s.do(model.Edit{Name: "remove " + rowName(g, at), Changes: []model.Change{model.Removing(g, at)}})
}
