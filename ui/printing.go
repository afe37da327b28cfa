package ui

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"borewalk/model"
	"borewalk/model/infile"
	"borewalk/model/planfile"
	"borewalk/ui/sheet"
)

// askPrint asks which paper is to be printed.
func (p *Planner) askPrint() {
	names := sheet.PaperNames()
	u := &menu{title: "Print a paper of section " + fmt.Sprint(p.section+1)}
	for _, name := range names {
		u.items = append(u.items, item{text: strings.ReplaceAll(name, "-", " ")})
	}
	u.pick = func(p *Planner, i int) { p.askPrintAs(sheet.Paper(i)) }
	p.overlay = u
}

// askPrintAs asks for the format of a paper.
func (p *Planner) askPrintAs(paper sheet.Paper) {
	u := &menu{title: "Print as"}
	endings := []string{".txt", ".md", ".csv", ".json", ".pdf"}
	for f := range endings {
		u.items = append(u.items, item{text: sheet.Format(f).String()})
	}
	u.pick = func(p *Planner, i int) { p.askPrintTo(paper, sheet.Format(i), endings[i]) }
	p.overlay = u
}

// askPrintTo asks for the file. One that exists is replaced only when its name is given twice.
func (p *Planner) askPrintTo(paper sheet.Paper, format sheet.Format, ending string) {
	name := strings.TrimSuffix(fileName(p.plan.Well.Name), ".toml") + "-" + fmt.Sprint(p.section+1) + "-" + sheet.PaperNames()[paper] + ending
	asked := ""
	p.overlay = newPrompt("Print "+strings.ReplaceAll(sheet.PaperNames()[paper], "-", " ")+" to", "Name of the file.", name, func(p *Planner, path string) string {
		if path == "" {
			return "Type a name, or press esc."
		}
		if filepath.Ext(path) == ".toml" || p.ownFile(path) {
			return "That is the name of a plan; print to another name."
		}
		if _, err := os.Lstat(path); !errors.Is(err, os.ErrNotExist) && asked != path {
			asked = path
			return path + " exists already. Press enter again to replace it."
		}
		var b bytes.Buffer
		if err := sheet.Write(&b, p.plan, p.result, p.printing(paper, format)); err != nil {
			return model.Clean(err.Error())
		}
		if err := planfile.Replace(path, b.Bytes(), 0o644); err != nil {
			return model.Clean(fmt.Sprintf("%s: not printed: %v", path, infile.Reason(err)))
		}
		p.message = "printed to " + model.Clean(path)
		return ""
	})
}

// printing says what a paper is printed from: the plan as it stands, held against the beginning of its log where it is compared.
func (p *Planner) printing(paper sheet.Paper, format sheet.Format) sheet.Options {
	o := sheet.Options{Format: format, Paper: paper, System: p.system, Section: p.section, ASCII: p.options.ASCII, Source: p.state(), Version: p.options.Version,
		Hash: model.Hash(p.plan), Printed: p.options.Now(), Changes: p.changesSince()}
	if paper == sheet.ChangeNote || paper == sheet.ComparisonPaper {
		rows := p.logged()
		from := p.back("the plan as its log began", len(rows))
		o.Against = sheet.Against{Plan: from.plan, Name: from.name, Log: rows, Misfits: from.misfits}
	}
	return o
}

func (p *Planner) nothingToPrint() string {
	if len(p.plan.Sections) == 0 {
		return "there is no section"
	}
	return ""
}
