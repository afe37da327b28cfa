package sheet

import (
	"encoding/csv"
	"io"
	"strconv"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// difference is one thing that changed, for another program: an entry, a row that was added or removed, a finding, a figure, or a row
// of the log. Numbers stand in the unit shown and in SI; what there is none of is left out.
type difference struct {
	Record   string   `json:"record"`
	Section  int      `json:"section,omitempty"` // counted from 1; 0 for the well
	Key      string   `json:"key"`               // the path of an entry, the key of a figure or of a rule
	Name     string   `json:"name"`
	How      string   `json:"how,omitempty"`
	Before   string   `json:"before"`
	After    string   `json:"after"`
	Unit     string   `json:"unit,omitempty"`
	BeforeSI *float64 `json:"before_si,omitempty"`
	AfterSI  *float64 `json:"after_si,omitempty"`
	Limit    *float64 `json:"limit_si,omitempty"`
	Margin   *float64 `json:"margin_si,omitempty"`
	When     string   `json:"when,omitempty"`
	Who      string   `json:"who,omitempty"`
	Why      string   `json:"why,omitempty"`
}

// differences lists everything that changed, and for a change note every row of the log.
func (p *printer) differences(c *calc.Comparison) (list []difference) {
	for _, e := range c.Entries {
		if p.listed(e.Section) {
			list = append(list, p.entryDifference(&e))
		}
	}
	for _, f := range c.Findings {
		if p.listed(f.Finding().Section) {
			list = append(list, p.findingDifference(&f))
		}
	}
	for _, m := range c.Figures {
		if p.listed(m.Section) {
			list = append(list, p.figureDifference(&m))
		}
	}
	if p.Paper == ChangeNote {
		for _, r := range p.Against.Log {
			list = append(list, difference{Record: "log", How: r.What, Key: r.Path, Name: r.Words(p.plan), Before: r.Old, After: r.New, When: r.When, Who: r.Who, Why: r.Why})
		}
	}
	return list
}

func (p *printer) entryDifference(e *calc.EntryChange) difference {
	d := difference{Record: "entry", Section: e.Section + 1, Key: string(e.After), Name: e.Words}
	d.Who, d.Why = p.reasons(e)
	if e.Field == nil {
		d.Record, d.How = "row", model.LogAdd
		if d.Before, d.After = p.contents(e); e.Gone() {
			d.How, d.Key = model.LogRemove, string(e.Before)
		}
		return d
	}
	d.Before, d.After = e.Field.FileText(e.Old), e.Field.FileText(e.New)
	if e.Field.Type == model.QuantityField {
		unit := p.System.Unit(e.Field.Kind)
		d.Before, d.BeforeSI = shownValue(e.Old.Quantity.SI, e.Old.IsSet(), e.Field.Kind, unit)
		d.After, d.AfterSI = shownValue(e.New.Quantity.SI, e.New.IsSet(), e.Field.Kind, unit)
		d.Unit = unit.ASCII()
	}
	return d
}

func (p *printer) findingDifference(f *calc.FindingChange) difference {
	now := f.Finding()
	unit := p.System.Unit(now.Kind)
	d := difference{Record: "finding", Section: now.Section + 1, Key: now.Key, Name: now.Text, How: howChanged(f)}
	if now.HasLimit {
		d.Before, d.BeforeSI = shownValue(f.Before.Measured, f.Had && f.Before.HasLimit, now.Kind, unit)
		d.After, d.AfterSI = shownValue(f.After.Measured, f.Has && f.After.HasLimit, now.Kind, unit)
		d.limit(now)
		d.Unit = unit.ASCII()
	}
	return d
}

func (p *printer) figureDifference(m *calc.FigureMove) difference {
	f := m.Figure()
	unit := p.System.Unit(f.Kind)
	d := difference{Record: "figure", Section: m.Section + 1, Key: f.Key, Name: f.Label(), Unit: unit.ASCII()}
	d.Before, d.BeforeSI = shownValue(m.Before.Value, m.Before.OK, f.Kind, unit)
	d.After, d.AfterSI = shownValue(m.After.Value, m.After.OK, f.Kind, unit)
	if m.HadLimit {
		d.limit(&m.Limit)
	}
	return d
}

// limit notes what a difference is held against.
func (d *difference) limit(f *calc.Finding) {
	if finite(f.Limit) && finite(f.Margin) {
		limit, margin := f.Limit, f.Margin
		d.Limit, d.Margin = &limit, &margin
	}
}

// shownValue returns a magnitude in the unit shown and in SI; nothing where there is none.
func shownValue(si float64, ok bool, kind quantity.Kind, unit quantity.Unit) (string, *float64) {
	if !ok || !finite(si) {
		return "", nil
	}
	return plainNumber(si, kind, unit), &si
}

// changesCSV writes a record for each difference.
func (p *printer) changesCSV(w io.Writer, c *calc.Comparison) error {
	out := csv.NewWriter(w)
	records := [][]string{{"record", "section", "key", "name", "how", "before", "after", "unit", "before_si", "after_si", "limit_si", "margin_si", "when", "who", "why"}}
	number := func(x *float64) string {
		if x == nil {
			return ""
		}
		return exact(*x)
	}
	for _, d := range p.differences(c) {
		section := "well"
		if d.Section > 0 {
			section = strconv.Itoa(d.Section)
		}
		before, after := d.Before, d.After
		if d.BeforeSI == nil {
			before = p.guarded(before)
		}
		if d.AfterSI == nil {
			after = p.guarded(after)
		}
		records = append(records, []string{d.Record, section, p.guarded(d.Key), p.guarded(d.Name), d.How, before, after, d.Unit,
			number(d.BeforeSI), number(d.AfterSI), number(d.Limit), number(d.Margin), p.guarded(d.When), p.guarded(d.Who), p.guarded(d.Why)})
	}
	if err := out.WriteAll(records); err != nil {
		return err
	}
	out.Flush()
	return out.Error()
}

// jsonChanges is a change note or a comparison in JSON.
type jsonChanges struct {
	Borewalk jsonProgram  `json:"borewalk"`
	Well     string       `json:"well"`
	Hash     string       `json:"hash"`
	Against  string       `json:"against"`
	Changes  []difference `json:"changes"`
	Misfits  []string     `json:"misfits,omitempty"`
	Caution  string       `json:"caution"`
}

func (p *printer) changesJSON(w io.Writer, c *calc.Comparison) error {
	file := jsonChanges{Borewalk: jsonProgram{jsonSchema, p.Version}, Well: p.plain(p.wellName()), Hash: model.Clean(p.Hash), Against: p.plain(p.Against.Name),
		Changes: []difference{}, Caution: standing}
	for _, d := range p.differences(c) {
		for _, text := range []*string{&d.Key, &d.Name, &d.Before, &d.After, &d.When, &d.Who, &d.Why} {
			*text = p.plain(*text)
		}
		file.Changes = append(file.Changes, d)
	}
	for _, m := range p.Against.Misfits {
		file.Misfits = append(file.Misfits, p.plain(m.String()))
	}
	return p.encode(w, file)
}
