// Package sheet prints a plan: one sheet for the well and one for each section, as text for paper and screen readers, as
// Markdown, as CSV for a spreadsheet and as JSON for another program.
//
// Start with [Write]; [Check] prints the findings alone. A [Paper] is a card for one job, made of what calc plays. The sheets are made from what model declares as fields and calc
// as figures and findings, so a new field or figure is printed without a change here. There is no formula in this
// package, and nothing in a sheet is a verdict: a finding says which limit was compared.
package sheet

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// Format is what the sheets are written as.
type Format uint8

// The formats.
const (
	Text     Format = iota // lines of at most 80 columns, on pages parted by form feeds
	Markdown               // GitHub flavour, with tables
	CSV                    // one row for each figure, entry and finding
	JSON                   // everything, for another program
	PDF                    // pages of A4
)

// formatNames returns the names of the formats, in the order of the constants.
func formatNames() []string { return []string{"text", "markdown", "csv", "json", "pdf"} }

// String returns the name of the format, as ParseFormat reads it.
func (f Format) String() string {
	if names := formatNames(); int(f) < len(names) {
		return names[f]
	}
	return "unknown"
}

// ParseFormat reads the name of a format: text, markdown, csv, json or pdf, in any case. The error lists them.
func ParseFormat(name string) (Format, error) {
	for i, known := range formatNames() {
		if strings.EqualFold(strings.TrimSpace(name), known) {
			return Format(i), nil
		}
	}
	return Text, fmt.Errorf("%q is no format of a sheet: take %s", model.Clean(name), strings.Join(formatNames(), ", "))
}

// Options says what is printed, how, and what it was made from.
type Options struct {
	Format  Format
	Paper   Paper
	System  quantity.System // units shown
	Section int             // index of the only section to print; -1 prints the well and every section
	ASCII   bool            // no character beyond ASCII
	Source  string          // what was read: the name of a file or of a demo plan
	Version string          // of the program
	Hash    string          // of the plan's entries
	Printed time.Time       // when; zero says nothing of it
	Against Against         // for a change note and a comparison
	Changes []string        // in the plan since the last handover, a line each; none where that is not kept
	Undrawn bool            // without drawings, to be read aloud
}

// Write prints the sheets of a plan and of the result that was computed from it, or another paper. The error is that of w,
// or says that there is no such section or nothing to put on the paper.
func Write(w io.Writer, plan *model.Plan, result *calc.Result, o Options) error {
	p, err := newPrinter(plan, result, o)
	if err != nil {
		return err
	}
	switch o.Paper {
	case Sheets:
	case ChangeNote, ComparisonPaper:
		return p.writeChanges(w)
	default:
		return p.writeCards(w)
	}
	switch o.Format {
	case CSV:
		return p.writeCSV(w)
	case JSON:
		return p.writeJSON(w)
	}
	return p.writePages(w, p.sheets())
}

// writePages prints pages in a format that is read by people.
func (p *printer) writePages(w io.Writer, pages []page) error {
	for i := range pages {
		if p.Undrawn {
			pages[i].parts = slices.DeleteFunc(pages[i].parts, func(p part) bool { return p.drawing != nil || len(p.drawn) > 0 })
		}
		pages[i].each(p.plain)
	}
	switch p.Format {
	case Text:
		return writeText(w, pages, p.stamp().each(p.plain))
	case Markdown:
		return writeMarkdown(w, pages)
	case PDF:
		return writePDF(w, pages, p.stamp().each(p.plain), p.Printed)
	}
	return fmt.Errorf("format %d is not known: take %s", p.Format, strings.Join(formatNames(), ", "))
}

// printer holds what every part of a sheet is made from.
type printer struct {
	plan   *model.Plan // as entered
	counts *model.Plan // with what is as built in place of what was planned
	result *calc.Result
	Options
	glyphs   canvas.Glyphs
	schedule *calc.Schedule // once it is asked for
}

func newPrinter(plan *model.Plan, result *calc.Result, o Options) (*printer, error) {
	switch {
	case plan == nil || result == nil:
		return nil, errors.New("there is no plan to print")
	case len(plan.Sections) != len(result.Sections):
		return nil, errors.New("the figures are not those of this plan: compute it anew")
	case o.Section < -1 || o.Section >= len(plan.Sections):
		return nil, fmt.Errorf("there is no section %d: the plan has %d", o.Section+1, len(plan.Sections))
	}
	p := &printer{plan: plan, counts: model.AsBuilt(plan), result: result, Options: o, glyphs: canvas.UnicodeGlyphs()}
	if o.ASCII {
		p.glyphs = canvas.ASCIIGlyphs()
	}
	return p, nil
}

// chosen returns the sheets to print, by section; -1 is the well.
func (p *printer) chosen() []int {
	if p.Section >= 0 {
		return []int{p.Section}
	}
	list := []int{-1}
	for i := range p.plan.Sections {
		list = append(list, i)
	}
	return list
}

// plain makes a text fit for print: without control characters, and in ASCII if that is wished.
func (p *printer) plain(text string) string { return p.glyphs.Translate(model.Clean(text)) }

// sheets returns the chosen sheets.
func (p *printer) sheets() []page {
	var pages []page
	for _, section := range p.chosen() {
		pages = append(pages, p.compose(section))
	}
	return pages
}
