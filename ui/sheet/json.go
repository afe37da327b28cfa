package sheet

import (
	"bytes"
	"encoding/json"
	"io"
	"unicode/utf16"
	"unicode/utf8"

	"borewalk/calc"
	"borewalk/model"
)

// jsonSchema is the version of the JSON form. It rises when a name goes or changes its meaning, not when one is added.
const jsonSchema = 1

type jsonFile struct {
	Borewalk jsonProgram        `json:"borewalk"`
	Plan     jsonPlan           `json:"plan"`
	Entries  ordered[jsonEntry] `json:"entries"`
	Well     *jsonSheet         `json:"well,omitempty"`
	Sections []jsonSheet        `json:"sections"`
	Findings []jsonFinding      `json:"findings"`
	Caution  string             `json:"caution"`
}

type jsonProgram struct {
	Schema  int    `json:"schema"`
	Version string `json:"version"`
}

type jsonPlan struct {
	Name     string    `json:"name"`
	Operator string    `json:"operator"`
	Revision string    `json:"revision"`
	Author   string    `json:"author"`
	Date     string    `json:"date"`
	Source   string    `json:"source"`
	Hash     string    `json:"hash"`
	Units    jsonUnits `json:"units"`
	Rules    string    `json:"rules"`
}

// jsonUnits is the unit set and the kinds that are shown otherwise.
type jsonUnits struct {
	Set string            `json:"set"`
	Own map[string]string `json:"own,omitempty"`
}

// jsonEntry is an entry as the plan's file holds it; a blank one has an empty text.
type jsonEntry struct {
	Text string   `json:"text"`
	SI   *float64 `json:"si,omitempty"`
	Kind string   `json:"kind,omitempty"`
}

type jsonSheet struct {
	Number   int                 `json:"number,omitempty"`
	Name     string              `json:"name,omitempty"`
	Figures  ordered[jsonFigure] `json:"figures"`
	Cautions []string            `json:"cautions"`
}

// jsonFigure is a figure: si in the SI unit of its kind, value in the unit shown, text to the digits of the trade.
type jsonFigure struct {
	Name   string   `json:"name"`
	Topic  string   `json:"topic"`
	Group  string   `json:"group"`
	Column string   `json:"column,omitempty"`
	Kind   string   `json:"kind"`
	SI     *float64 `json:"si,omitempty"`
	Value  *float64 `json:"value,omitempty"`
	Unit   string   `json:"unit"`
	Text   string   `json:"text"`
	OK     bool     `json:"ok"`
	Why    string   `json:"why,omitempty"`
	Mend   string   `json:"mend,omitempty"`
	Note   string   `json:"note,omitempty"`
}

// jsonFinding is a finding; section 0 is the well, and what has no limit has no numbers.
type jsonFinding struct {
	Section    int      `json:"section"`
	Severity   string   `json:"severity"`
	Key        string   `json:"key"`
	Text       string   `json:"text"`
	Where      string   `json:"where,omitempty"`
	AtSI       *float64 `json:"at_si,omitempty"`
	Kind       string   `json:"kind,omitempty"`
	Unit       string   `json:"unit,omitempty"`
	MeasuredSI *float64 `json:"measured_si,omitempty"`
	Measured   *float64 `json:"measured,omitempty"`
	LimitSI    *float64 `json:"limit_si,omitempty"`
	Limit      *float64 `json:"limit,omitempty"`
	MarginSI   *float64 `json:"margin_si,omitempty"`
	Margin     *float64 `json:"margin,omitempty"`
	Least      bool     `json:"least"`
	Own        bool     `json:"own"`
	Source     string   `json:"source"`
	Mend       string   `json:"mend,omitempty"`
}

func (p *printer) writeJSON(w io.Writer) error {
	well := &p.plan.Well
	file := jsonFile{
		Borewalk: jsonProgram{jsonSchema, p.Version},
		Plan: jsonPlan{
			Name: model.Clean(well.Name), Operator: model.Clean(well.Operator), Revision: model.Clean(well.Revision),
			Author: model.Clean(well.Author), Date: model.Clean(well.Date), Source: model.Clean(p.Source), Hash: model.Clean(p.Hash),
			Units: p.jsonUnits(), Rules: well.RuleSet,
		},
		Sections: []jsonSheet{}, Findings: []jsonFinding{}, Caution: standing,
	}
	p.counting(func(_ int, ref model.Ref) { file.Entries.add(string(ref.Path()), p.jsonEntry(ref)) })
	for _, section := range p.chosen() {
		sheet := p.jsonSheet(section)
		if section < 0 {
			file.Well = &sheet
		} else {
			file.Sections = append(file.Sections, sheet)
		}
	}
	for _, f := range p.findings(p.listed) {
		file.Findings = append(file.Findings, p.jsonFinding(f))
	}
	return p.encode(w, file)
}

// encode writes a file as JSON that a person can read as well.
func (p *printer) encode(w io.Writer, file any) error {
	text, err := marshal(file)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := json.Indent(&out, text, "", "  "); err != nil {
		return err
	}
	if text = out.Bytes(); p.ASCII {
		text = escapeJSON(text)
	}
	_, err = w.Write(text)
	return err
}

func (p *printer) jsonUnits() jsonUnits {
	units := jsonUnits{Set: p.System.Set().String(), Own: map[string]string{}}
	for kind, unit := range p.System.Overrides() {
		units.Own[kind.String()] = unit.ASCII()
	}
	return units
}

func (p *printer) jsonEntry(ref model.Ref) jsonEntry {
	entry := ref.Get(p.plan)
	e := jsonEntry{Text: model.Clean(ref.Field.FileText(entry))}
	if ref.Field.Type == model.QuantityField {
		e.Kind = ref.Field.Kind.String()
		if entry.Quantity.IsSet() {
			e.SI = number(entry.Quantity.SI)
		}
	}
	return e
}

func (p *printer) jsonSheet(section int) jsonSheet {
	s := jsonSheet{Cautions: append([]string{}, p.cautions(section)...)}
	if section >= 0 {
		s.Number, s.Name = section+1, model.Clean(p.plan.Sections[section].Name)
	}
	for _, f := range p.result.Sheet(section).Figures {
		unit := p.System.Unit(f.Kind)
		figure := jsonFigure{
			Name: model.Clean(f.Name), Topic: f.Topic.String(), Group: model.Clean(f.Group), Column: f.Column, Kind: f.Kind.String(),
			Unit: unit.ASCII(), Text: p.figureText(f), OK: f.OK, Why: model.Clean(f.Why), Mend: string(f.Mend), Note: model.Clean(f.Note),
		}
		if f.OK {
			figure.SI, figure.Value = number(f.Value), number(unit.FromSI(f.Value))
		}
		s.Figures.add(f.Key, figure)
	}
	return s
}

func (p *printer) jsonFinding(f calc.Finding) jsonFinding {
	j := jsonFinding{
		Section: f.Section + 1, Severity: f.Severity.String(), Key: f.Key, Text: model.Clean(f.Text), Where: model.Clean(f.Where),
		Least: f.Least, Own: f.Own, Source: f.Source, Mend: string(f.Mend),
	}
	if f.At > 0 {
		j.AtSI = number(f.At)
	}
	if f.HasLimit {
		unit := p.System.Unit(f.Kind)
		j.Kind, j.Unit = f.Kind.String(), unit.ASCII()
		j.MeasuredSI, j.Measured = number(f.Measured), number(unit.FromSI(f.Measured))
		j.LimitSI, j.Limit = number(f.Limit), number(unit.FromSI(f.Limit))
		j.MarginSI, j.Margin = number(f.Margin), number(unit.ScaleFromSI(f.Margin))
	}
	return j
}

// number returns a number that JSON can hold, and nothing for what is none.
func number(x float64) *float64 {
	if !finite(x) {
		return nil
	}
	return &x
}

// ordered is a JSON object that keeps the order in which its members were added: that of the sheet.
type ordered[T any] []member[T]

type member[T any] struct {
	key   string
	value T
}

func (o *ordered[T]) add(key string, value T) { *o = append(*o, member[T]{key, value}) }

// MarshalJSON implements json.Marshaler.
func (o ordered[T]) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		key, err := marshal(m.key)
		if err != nil {
			return nil, err
		}
		value, err := marshal(m.value)
		if err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// marshal leaves <, > and & as they are: the file is no part of a web page.
func marshal(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return b.Bytes(), err
}

// escapeJSON writes every character beyond ASCII as its number, which loses nothing. Such characters stand only within
// strings.
func escapeJSON(text []byte) []byte {
	const hex = "0123456789abcdef"
	out := make([]byte, 0, len(text))
	for _, ch := range string(text) {
		if ch < utf8.RuneSelf {
			out = append(out, byte(ch))
			continue
		}
		for _, unit := range utf16.AppendRune(nil, ch) {
			out = append(out, '\\', 'u', hex[unit>>12], hex[unit>>8&15], hex[unit>>4&15], hex[unit&15])
		}
	}
	return out
}
