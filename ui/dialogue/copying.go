package dialogue

import (
	"bytes"
	"fmt"
	"strings"

	"borewalk/model"
	"borewalk/ui/clip"
	"borewalk/ui/sheet"
	"borewalk/ui/wording"
)

// copy writes something to a file, to be taken elsewhere: what a number of the last list means, an entry, the working of a figure, or
// the page.
func (s *Session) copy(rest string) {
	first, behind, _ := strings.Cut(rest, " ")
	switch {
	case rest == "" || strings.EqualFold(rest, "page"):
		s.copyPage()
	case strings.EqualFold(first, "working"):
		it, why := s.figureMeant(behind)
		if why != "" {
			s.refuse(why)
			return
		}
		s.keep(clip.Text(append([]string{wording.Place(it.sheet, it.figures[0])}, s.workingOf(it)...), s.plan, s.options.Clock()))
	default:
		s.copyNamed(rest)
	}
}

// copyNamed copies what a number of the last list means, or an entry or a figure of the page.
func (s *Session) copyNamed(rest string) {
	if n, ok := number(rest); ok {
		it, why := s.item(n)
		if why != "" {
			s.refuse(why)
			return
		}
		s.keep(clip.Text(s.linesOf(it), s.plan, s.options.Clock()))
		return
	}
	ref, why := s.entryNamed(rest)
	if why == "" {
		s.keep(clip.Text(s.linesOf(item{ref: &ref}), s.plan, s.options.Clock()))
		return
	}
	it, not := s.figureMeant(rest)
	if not != "" {
		s.refuse(why)
		return
	}
	s.keep(clip.Text(s.linesOf(it), s.plan, s.options.Clock()))
}

// linesOf returns what is copied of something.
func (s *Session) linesOf(it item) []string {
	switch {
	case it.ref != nil:
		return []string{it.ref.Words() + ": " + wording.Content(s.plan, *it.ref, s.system)}
	case it.figures != nil:
		return []string{wording.Place(it.sheet, it.figures[0]) + ": " + wording.Figures(it.figures, s.system)}
	case it.finding != nil:
		return []string{wording.Finding(*it.finding, s.system), "Source: " + it.finding.Source}
	}
	return []string{it.proposal.Title + ": " + s.settings(*it.proposal)}
}

// copyPage copies the page's sheet.
func (s *Session) copyPage() {
	o := s.printing(sheet.Sheets, sheet.Text)
	o.Section = s.sheet()
	var b bytes.Buffer
	if err := sheet.WriteTopic(&b, s.plan, s.result, s.topic, o); err != nil {
		s.refuse(err.Error())
		return
	}
	s.keep(b.String())
}

// keep writes a copied text to its file and says where that is.
func (s *Session) keep(text string) {
	path, err := s.disk.Keep(text)
	if err != nil {
		s.refuse("not copied: " + model.Clean(err.Error()))
		return
	}
	s.say(fmt.Sprintf("%d lines copied to %s", strings.Count(text, "\n"), path))
}
