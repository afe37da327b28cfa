package sheet

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"borewalk/model"
	"borewalk/model/quantity"
)

// Paper says which papers are printed.
type Paper uint8

// The papers.
const (
	Sheets          Paper = iota // the sheets of the well and of every section
	CementCard                   // what is carried to a cement job
	RunningList                  // every piece of a string as it is run
	StrengthTable                // loads and ratings of a string
	MudSheet                     // recipe, volumes and treatment of a mud
	TripSheet                    // what the hole takes while the drill string is pulled
	BHASheet                     // a drill string part by part, its limits and its space-out
	HydraulicsSheet              // what circulating takes, at the planned and the highest flow
	KillSheet                    // how a kick is circulated out, pre-recorded, with room for what is read
	LimitsCard                   // for the driller's console: what the well bears, on one page
	ShoeTestSheet                // to what a shoe is tested, what was read, and what follows
	ChangeNote                   // what was changed since a mark in the log, by whom and why, and what it does
	ComparisonPaper              // what differs from another plan
	OddsSheet                    // how outcomes spread over the ranges of a section, and the odds that limits are met
	TrialsSheet                  // what-ifs of a section beside the plan
	AsBuiltSheet                 // what a section came to be beside what was planned, with room for what is not known yet
	LookAhead                    // what is to be done next, when, and before what somebody is called
	HandoverPage                 // what a relief reads first, on one page, and the numbers behind it
	StepList                     // the operations of a section in order, with what the crew needs for each, to be ticked and initialled
	Chapter                      // a section's chapter of a drilling programme
)

// PaperNames returns the names of the papers, in the order of the constants.
func PaperNames() []string {
	return []string{
		"sheets",
		"cement-card",
		"running-list",
		"strength-table",
		"mud-sheet",
		"trip-sheet",
		"bha-sheet",
		"hydraulics-sheet",
		"kill-sheet",
		"limits-card",
		"shoe-test-sheet",
		"change-note",
		"comparison",
		"odds-sheet",
		"trials",
		"as-built-sheet",
		"look-ahead",
		"handover",
		"step-list",
		"chapter",
	}
}

// ParsePaper reads the name of a paper in any case, with spaces or hyphens. The error lists them.
func ParsePaper(name string) (Paper, error) {
	for i, known := range PaperNames() {
		if strings.EqualFold(strings.ReplaceAll(strings.TrimSpace(name), " ", "-"), known) {
			return Paper(i), nil
		}
	}
	return Sheets, fmt.Errorf("%q is no paper: take %s", model.Clean(name), strings.Join(PaperNames(), ", "))
}

// card is a paper made of tables of numbers, for one section.
type card struct {
	section int
	title   string
	tables  []table
	notes   []part // what is to be read with the numbers
	tallest bool   // its tall table is what the paper is for and comes first
	brief   bool   // a page and no more: its head is short
	also    []pair // further lines of its head
	lead    []part // a page of its own before the rest
	laid    []part // the parts in their order, where tables and other parts are mixed; the tables are then for programs alone
}

// table is what stands under one heading of a card: a line for each row, a value for each column.
type table struct {
	title, rowHead string
	columns        []heading
	rows           []line
	tall           bool     // more rows than a page has
	byHand         []string // further columns, left to be filled in on paper
	form           bool     // filled in by hand throughout: there are no numbers for a program in it
}

type heading struct {
	label string
	kind  quantity.Kind
}

// line is a row of a table: SI values by column, not a number for a blank, and what is noted. In a tall table it may be of
// something that the rows around it are of as well.
type line struct {
	name   string
	values []float64
	note   string
	of     string
	told   bool // nothing is written beside it by hand
}

// cards returns the cards of the chosen sections. None is an error that says why.
func (p *printer) cards() ([]card, error) {
	var list []card
	why := "the plan has no section"
	for i := range p.plan.Sections {
		if !p.listed(i) {
			continue
		}
		c, reason := p.card(i)
		if reason != "" {
			why = fmt.Sprintf("section %d: %s", i+1, reason)
			continue
		}
		list = append(list, c)
	}
	if len(list) == 0 {
		return nil, fmt.Errorf("nothing to print as %s: %s", strings.ReplaceAll(PaperNames()[p.Paper], "-", " "), why)
	}
	return list, nil
}

// card makes the paper of a section; why says what keeps it from being made.
func (p *printer) card(i int) (c card, why string) {
	switch p.Paper {
	case RunningList:
		return p.runningCard(i)
	case StrengthTable:
		return p.strengthCard(i)
	case MudSheet:
		return p.mudCard(i)
	case TripSheet:
		return p.tripCard(i)
	case BHASheet:
		return p.bhaCard(i)
	case HydraulicsSheet:
		return p.hydraulicsCard(i)
	case KillSheet:
		return p.killCard(i)
	case LimitsCard:
		return p.limitsCard(i)
	case ShoeTestSheet:
		return p.shoeTestCard(i)
	case OddsSheet:
		return p.oddsCard(i)
	case TrialsSheet:
		return p.trialsCard(i)
	case AsBuiltSheet:
		return p.asBuiltCard(i)
	case LookAhead:
		return p.lookAheadCard(i)
	case HandoverPage:
		return p.handoverCard(i)
	case StepList:
		return p.stepListCard(i)
	case Chapter:
		return p.chapterCard(i)
	}
	return p.cementCard(i)
}

// writeCards prints cards in the format asked for.
func (p *printer) writeCards(w io.Writer) error {
	list, err := p.cards()
	if err != nil {
		return err
	}
	switch p.Format {
	case CSV:
		if p.Paper == RunningList {
			return p.tallCSV(w, list)
		}
		return p.cardsCSV(w, list)
	case JSON:
		return p.cardsJSON(w, list)
	}
	var pages []page
	for _, c := range list {
		if len(c.lead) > 0 {
			pages = append(pages, page{title: c.title, foot: standing, head: p.cardHead(&c), parts: c.lead, whole: true})
			c.title += ", behind it"
		}
		pages = append(pages, p.cardPage(c))
	}
	return p.writePages(w, pages)
}

// cardPage sets a card as a page; a tall table comes last, behind what is to be read with it, unless the paper is for it. One to
// be filled in stays where it is.
func (p *printer) cardPage(c card) page {
	s := page{title: c.title, foot: standing, head: p.cardHead(&c), whole: c.brief, parts: c.laid}
	if len(c.laid) > 0 {
		return s
	}
	var tall []part
	for k := range c.tables {
		t := &c.tables[k]
		if set := p.tablePart(t); t.tall && !t.form {
			tall = append(tall, set)
		} else {
			s.parts = append(s.parts, set)
		}
	}
	if c.tallest {
		s.parts = slices.Concat(tall, s.parts, c.notes)
	} else {
		s.parts = slices.Concat(s.parts, c.notes, tall)
	}
	return s
}

// tablePart sets a table as a part.
func (p *printer) tablePart(t *table) part {
	set := part{title: t.title, rowHead: t.rowHead, tall: t.tall}
	if t.tall {
		set.rows = p.tallRows(*t)
		return set
	}
	for _, l := range t.rows {
		set.rows = append(set.rows, p.cardRow(t, l))
	}
	return set
}

// cardHead says what a card is of and what it was made from.
func (p *printer) cardHead(c *card) []pair {
	revision, date := dash(p.plan.Well.Revision), dash(p.plan.Well.Date)
	section := fmt.Sprintf("%d of %d: %s", c.section+1, len(p.plan.Sections), dash(p.plan.Sections[c.section].Name))
	if c.brief {
		from := "date " + date + ", " + dash(p.Source) + ", units " + p.unitsText()
		if p.Format == Markdown { // elsewhere it is at the head of the page
			from = strings.Join(slices.DeleteFunc([]string{"revision " + revision, "hash " + dash(p.shortHash()), p.printedText(), from},
				func(text string) bool { return text == "" }), ", ")
		}
		return []pair{{"Section", section}, {"Plan", from}}
	}
	return append([]pair{{"Well", p.wellName()}, {"Rig", dash(p.plan.Rig.Name)}, {"Section", section}, {"Revision", revision}, {"Date", date}}, slices.Concat(p.printedFrom(), c.also)...)
}

// toWrite is where a reading is written by hand, in a line of its own labels.
const toWrite = "________"

func (p *printer) cardRow(t *table, l line) row {
	r := row{name: l.name}
	for k, h := range t.columns {
		if value := l.values[k]; finite(value) {
			r.cells = append(r.cells, cell{label: h.label, value: quantity.FormatUnit(value, h.kind, p.System.Unit(h.kind)), number: true})
		} else {
			r.cells = append(r.cells, cell{label: h.label, value: "-", number: true, spare: true})
		}
	}
	for _, label := range t.byHand {
		if !l.told {
			r.cells = append(r.cells, cell{label: label, value: toWrite})
		}
	}
	if l.note != "" {
		r.cells = append(r.cells, cell{label: "note", value: l.note})
	}
	return r
}

// cardsCSV writes one record for each value: section, table, row, column, value, unit, value in SI, note, number of the row in its
// table, since names may come again, and what the row is of.
func (p *printer) cardsCSV(w io.Writer, list []card) error {
	out := csv.NewWriter(w)
	records := [][]string{{"section", "table", "row", "column", "value", "unit", "value_si", "note", "row_number", "of"}}
	for _, c := range list {
		for _, t := range c.tables {
			for n, l := range t.rows {
				for k, h := range t.columns {
					if !finite(l.values[k]) {
						continue
					}
					unit := p.System.Unit(h.kind)
					records = append(records, []string{fmt.Sprint(c.section + 1), p.guarded(t.title), p.guarded(l.name), p.guarded(h.label),
						plainNumber(l.values[k], h.kind, unit), unit.ASCII(), exact(l.values[k]), p.guarded(l.note), fmt.Sprint(n + 1), p.guarded(l.of)})
				}
			}
		}
	}
	if err := out.WriteAll(records); err != nil {
		return err
	}
	out.Flush()
	return out.Error()
}

// The form of a card in JSON.
type (
	jsonCards struct {
		Borewalk jsonProgram `json:"borewalk"`
		Well     string      `json:"well"`
		Hash     string      `json:"hash"`
		Cards    []jsonCard  `json:"cards"`
		Caution  string      `json:"caution"`
	}
	jsonCard struct {
		Section int         `json:"section"`
		Title   string      `json:"title"`
		Tables  []jsonTable `json:"tables"`
	}
	jsonTable struct {
		Title string     `json:"title"`
		Rows  []jsonLine `json:"rows"`
	}
	jsonLine struct {
		Name   string               `json:"name"`
		Values map[string]jsonValue `json:"values"`
		Note   string               `json:"note,omitempty"`
		Of     string               `json:"of,omitempty"`
	}
	jsonValue struct {
		SI   float64 `json:"si"`
		Unit string  `json:"unit"`
		Text string  `json:"text"`
	}
)

func (p *printer) cardsJSON(w io.Writer, list []card) error {
	file := jsonCards{Borewalk: jsonProgram{jsonSchema, p.Version}, Well: model.Clean(p.wellName()), Hash: model.Clean(p.Hash), Caution: standing}
	for _, c := range list {
		to := jsonCard{Section: c.section + 1, Title: p.plain(c.title)}
		for _, t := range c.tables {
			if t.form {
				continue
			}
			set := jsonTable{Title: p.plain(t.title), Rows: []jsonLine{}}
			for _, l := range t.rows {
				set.Rows = append(set.Rows, p.jsonLine(t.columns, l))
			}
			to.Tables = append(to.Tables, set)
		}
		file.Cards = append(file.Cards, to)
	}
	return p.encode(w, file)
}

func (p *printer) jsonLine(columns []heading, l line) jsonLine {
	to := jsonLine{Name: p.plain(l.name), Values: map[string]jsonValue{}, Note: p.plain(l.note), Of: p.plain(l.of)}
	for k, h := range columns {
		if unit := p.System.Unit(h.kind); finite(l.values[k]) {
			to.Values[cmp.Or(h.label, "value")] = jsonValue{SI: l.values[k], Unit: unit.ASCII(), Text: plainNumber(l.values[k], h.kind, unit)}
		}
	}
	return to
}

// signed is where a paper is signed.
func signed() part {
	return part{title: "Worked out by, reproduced by, time", remarks: []string{"______________________   ______________________   __________"}}
}

// nothing is the value of a cell with nothing in it.
func nothing() float64 { return math.NaN() }
