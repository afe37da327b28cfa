package dialogue

import (
	"bytes"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"

	"borewalk/model"
	"borewalk/ui/sheet"
)

// print prints a paper of the section being worked, or on a page of the well the sheets of them all: said here, or to a file.
func (s *Session) print(rest string) {
	if rest == "" {
		s.say("papers: " + strings.Join(sheet.PaperNames(), ", "))
		s.say("formats: text, markdown, csv, json, pdf")
		return
	}
	rest, path := cutBehind(rest, " to ")
	rest, as := cutBehind(rest, " as ")
	paper, format, why := paperNamed(rest, as, path)
	if why != "" {
		s.refuse(why)
		return
	}
	write := func() { s.printTo(paper, format, path) }
	if path != "" && s.disk.Exists(path) {
		s.confirm(path+" exists already; replace it? yes or no", write)
		return
	}
	write()
}

// cutBehind takes off a text what stands behind the last of some sign words in it.
func cutBehind(text, sign string) (before, behind string) {
	if i := strings.LastIndex(strings.ToLower(text), sign); i >= 0 {
		return text[:i], strings.TrimSpace(text[i+len(sign):])
	}
	return text, ""
}

// paperNamed reads the name of a paper and of a format, which may be told by the ending of a file's name.
func paperNamed(name, as, path string) (paper sheet.Paper, format sheet.Format, why string) {
	i := chosen(name, sheet.PaperNames())
	if i < 0 {
		return 0, 0, fmt.Sprintf("%q names no paper, or several; say print for their names", name)
	}
	if as == "" {
		as = map[string]string{".md": "markdown", ".csv": "csv", ".json": "json", ".pdf": "pdf"}[strings.ToLower(filepath.Ext(path))]
	}
	if as != "" {
		var err error
		if format, err = sheet.ParseFormat(as); err != nil {
			return 0, 0, err.Error()
		}
	}
	if format == sheet.PDF && path == "" {
		return 0, 0, "a PDF goes to a file: print " + sheet.PaperNames()[i] + " to NAME.pdf"
	}
	return sheet.Paper(i), format, ""
}

// printTo prints a paper to a file, or says it.
func (s *Session) printTo(paper sheet.Paper, format sheet.Format, path string) {
	var b bytes.Buffer
	o := s.printing(paper, format)
	o.Undrawn = path == ""
	if err := sheet.Write(&b, s.plan, s.result, o); err != nil {
		s.refuse(err.Error())
		return
	}
	if path == "" {
		s.sayText(b.String())
		return
	}
	if err := s.disk.Write(path, b.Bytes()); err != nil {
		s.refuse(err.Error())
		return
	}
	s.say("printed to " + path)
}

// sayText says a text line by line: without its blank lines, its rules and the breaks between its pages, and with a comma where blanks
// set columns apart.
func (s *Session) sayText(text string) {
	for line := range strings.Lines(strings.ReplaceAll(text, "\f", "\n")) {
		if line = strings.TrimSpace(line); strings.Trim(line, "-= ") != "" {
			s.say(columns.ReplaceAllStringFunc(line, func(gap string) string {
				if strings.HasPrefix(gap, ":") {
					return ": "
				}
				return ", "
			}))
		}
	}
}

// columns is what sets columns of a text apart.
var columns = regexp.MustCompile(`:?  +`)

// printing says what a paper is printed from: the plan as it stands, held against the beginning of its log where it is compared.
func (s *Session) printing(paper sheet.Paper, format sheet.Format) sheet.Options {
	plan := s.withLog()
	o := sheet.Options{Format: format, Paper: paper, System: s.system, Section: s.section, ASCII: s.options.ASCII, Source: s.state(),
		Version: s.options.Version, Hash: model.Hash(s.plan), Printed: s.options.Clock(), Changes: model.ChangesSince(s.plan, plan.Log)}
	if paper == sheet.Sheets && s.sheet() < 0 { // the well and every section
		o.Section = -1
	}
	if paper == sheet.ChangeNote || paper == sheet.ComparisonPaper {
		then, misfits := model.Rewind(plan, len(plan.Log))
		o.Against = sheet.Against{Plan: then, Name: "the plan as its log began", Log: plan.Log, Misfits: misfits}
	}
	return o
}
