package sheet

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
)

// column names a column of the CSV file. The value of an entry or figure is its value in the unit shown, that of a
// finding what was measured.
type column uint8

const (
	colRecord column = iota // about, entry, figure or finding
	colSheet                // well, or the number of the section
	colSection
	colTopic
	colGroup
	colName
	colColumn
	colKey
	colValue
	colUnit
	colValueSI
	colKind
	colOK
	colWhy
	colMend
	colNote
	colSeverity
	colBound
	colLimit
	colLimitSI
	colMargin
	colMarginSI
	colOwn
	colWhere
	colAtSI
	colSource
	columnCount
)

func columnNames() []string {
	return []string{"record", "sheet", "section", "topic", "group", "name", "column", "key", "value", "unit", "value_si", "kind",
		"ok", "why", "mend", "note", "severity", "bound", "limit", "limit_si", "margin", "margin_si", "own", "where", "at_si", "source"}
}

// record is one line of the CSV file, by column.
type record [columnCount]string

func (p *printer) writeCSV(w io.Writer) error {
	out := csv.NewWriter(w)
	if err := out.Write(columnNames()); err != nil {
		return err
	}
	for _, r := range p.records() {
		if err := out.Write(r[:]); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// records returns what the sheets are about, then every entry that counts, every figure and every finding.
func (p *printer) records() []record {
	var list []record
	for _, about := range p.about() {
		list = append(list, record{colRecord: "about", colName: about.label, colValue: p.guarded(about.value)})
	}
	p.counting(func(section int, ref model.Ref) { list = append(list, p.entryRecord(section, ref)) })
	for _, section := range p.chosen() {
		for _, f := range p.result.Sheet(section).Figures {
			list = append(list, p.figureRecord(section, f))
		}
	}
	for _, f := range p.findings(p.listed) {
		list = append(list, p.findingRecord(f))
	}
	return list
}

// about returns what the sheets were made from, and what every sheet says.
func (p *printer) about() []pair {
	well := &p.plan.Well
	return append([]pair{
		{"Well", well.Name}, {"Operator", well.Operator}, {"Revision", well.Revision}, {"Author", well.Author}, {"Date", well.Date},
		{"Rule set", well.RuleSet}}, append(p.origin(p.Hash), pair{"Caution", standing})...)
}

// listed reports whether the findings of a sheet are among those to print.
func (p *printer) listed(section int) bool { return p.Section < 0 || section == p.Section }

// on begins a record of a sheet.
func (p *printer) on(kind string, section int) record {
	r := record{colRecord: kind, colSheet: "well"}
	if section >= 0 {
		r[colSheet] = strconv.Itoa(section + 1)
		r[colSection] = p.guarded(p.plan.Sections[section].Name)
	}
	return r
}

func (p *printer) entryRecord(section int, ref model.Ref) record {
	r := p.on("entry", section)
	f, entry := ref.Field, ref.Get(p.plan)
	r[colTopic], r[colGroup], r[colName], r[colKey] = f.Topic.String(), ref.Group.Title, p.guarded(f.Name), string(ref.Path())
	if f.Type != model.QuantityField {
		r[colValue] = p.guarded(entry.Text)
		return r
	}
	r[colKind] = f.Kind.String()
	if entry.Quantity.IsSet() {
		p.measure(&r, colValue, colValueSI, entry.Quantity.SI, f.Kind)
	}
	return r
}

func (p *printer) figureRecord(section int, f calc.Figure) record {
	r := p.on("figure", section)
	r[colTopic], r[colGroup], r[colName], r[colColumn] = f.Topic.String(), p.guarded(f.Group), p.guarded(f.Name), p.guarded(f.Column)
	r[colKey], r[colKind], r[colOK] = f.Key, f.Kind.String(), strconv.FormatBool(f.OK)
	r[colWhy], r[colMend], r[colNote] = p.guarded(f.Why), string(f.Mend), p.guarded(f.Note)
	if f.OK {
		p.measure(&r, colValue, colValueSI, f.Value, f.Kind)
	}
	return r
}

func (p *printer) findingRecord(f calc.Finding) record {
	r := p.on("finding", f.Section)
	r[colName], r[colKey], r[colMend], r[colSeverity] = p.guarded(f.Text), f.Key, string(f.Mend), f.Severity.String()
	r[colOK] = strconv.FormatBool(f.Severity == calc.OK)
	r[colWhere], r[colSource] = p.guarded(f.Where), p.guarded(f.Source)
	if f.At > 0 {
		r[colAtSI] = exact(f.At)
	}
	if !f.HasLimit {
		return r
	}
	r[colKind], r[colBound], r[colOwn] = f.Kind.String(), leastOrMost(f), strconv.FormatBool(f.Own)
	p.measure(&r, colValue, colValueSI, f.Measured, f.Kind)
	p.measure(&r, colLimit, colLimitSI, f.Limit, f.Kind)
	if finite(f.Margin) {
		r[colMarginSI] = exact(f.Margin)
		r[colMargin] = plainChange(f.Margin, f.Kind, p.System.Unit(f.Kind))
	}
	return r
}

// leastOrMost says which way round a limit holds.
func leastOrMost(f calc.Finding) string {
	if f.Least {
		return "least"
	}
	return "most"
}

// guarded returns a text for a cell of a spreadsheet: what such a program would take for a formula gets an apostrophe
// before it.
func (p *printer) guarded(text string) string {
	text = p.plain(text)
	if start := strings.TrimSpace(text); start != "" && strings.ContainsRune("=+-@＝＋－＠", []rune(start)[0]) {
		return "'" + text
	}
	return text
}
