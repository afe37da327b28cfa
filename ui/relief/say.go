package relief

import (
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// said puts a statement in words; one whose first figure or entry is blank says nothing, and goes to what is gone.
func (p page) said(text string, gone *blanks) string {
	words := ""
	for k, segment := range strings.Split(text, "|") {
		said, ok := p.filled(segment, k == 0, gone)
		if !ok && k == 0 {
			return ""
		}
		if ok {
			words += said
		}
	}
	return words
}

// filled puts figures, notes and entries into a part of a statement, and reports whether all of them are there. Of the first part the
// first that is not is noted as gone.
func (p page) filled(text string, first bool, gone *blanks) (string, bool) {
	words := ""
	for {
		before, rest, found := strings.Cut(text, "{")
		words += before
		if !found {
			return words, true
		}
		var key string
		key, text, _ = strings.Cut(rest, "}")
		value, ok := p.value(key, first, gone)
		if !ok {
			return "", false
		}
		words += value
	}
}

// value returns what a key of a statement stands for.
func (p page) value(key string, first bool, gone *blanks) (string, bool) {
	if entry, ok := strings.CutPrefix(key, "="); ok {
		return p.entry(entry, first, gone)
	}
	key, noted := strings.CutSuffix(key, "#")
	f, ok := p.result.Well.Find("handover." + key)
	switch {
	case !ok:
		return "", false
	case !f.OK:
		if first && f.Column == "" {
			gone.add(f.Name, f.Why)
		}
		return "", false
	case noted:
		return f.Note, f.Note != ""
	}
	return p.text(f), true
}

// entry returns an entry of the status as it is shown.
func (p page) entry(key string, first bool, gone *blanks) (string, bool) {
	ref := model.Ref{Group: model.StatusGroup(), Field: model.StatusGroup().Field(key)}
	e := ref.Get(p.plan)
	if ref.Idle(p.plan) != "" {
		return "", false
	}
	if !e.IsSet() && first {
		gone.add(ref.Field.Label, "not said")
	}
	return ref.Field.ScreenText(e, p.system), e.IsSet()
}

// text returns a figure with its unit.
func (p page) text(f calc.Figure) string {
	return quantity.FormatUnit(f.Value, f.Kind, p.system.Unit(f.Kind))
}
