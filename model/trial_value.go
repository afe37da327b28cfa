package model

import (
	"errors"
	"strings"

	"borewalk/model/quantity"
)

// TrialValue is what a trial makes of an entry: a content of its own, or for a number a difference from the plan's.
type TrialValue struct {
	Relative bool
	Entry    Entry
}

const (
	trialBlank = "blank" // empties the entry
	asWritten  = "="     // before a value that would be read otherwise: a number below zero, or the word blank
	signs      = "+-\u2212\u2010\u2011\u2013"
)

// ParseTrial reads what a trial makes of the field: "-50 m" and "+0.05 sg" are differences, "1.3 sg" is a content, as is
// "=-2 degC"; "blank" empties the entry. A number without a unit takes the unit shown, as in [Field.Parse].
func (f *Field) ParseTrial(text string, shown quantity.Unit) (TrialValue, error) {
	text = strings.TrimSpace(text)
	switch {
	case strings.EqualFold(text, trialBlank):
		if f.Type == ChoiceField && f.Default != "" {
			return TrialValue{}, errors.New("this cannot be left blank")
		}
		return TrialValue{}, nil
	case f.Type == QuantityField && strings.ContainsAny(firstRune(text), signs):
		v, err := quantity.Parse(text, f.Kind, shown)
		return TrialValue{Relative: err == nil, Entry: Entry{Quantity: v}}, err
	}
	written := strings.TrimPrefix(text, asWritten)
	e, err := f.Parse(written, shown)
	if err == nil && !e.IsSet() {
		err = errors.New("no value: write one, or " + trialBlank + " to empty the entry")
	}
	return TrialValue{Entry: e}, err
}

func firstRune(text string) string {
	for _, r := range text {
		return string(r)
	}
	return ""
}

// TrialText returns a trial's value in the form that the file holds and ParseTrial reads.
func (f *Field) TrialText(v TrialValue) string {
	text := f.FileText(v.Entry)
	switch {
	case v.Relative && !strings.HasPrefix(text, "-"):
		return "+" + text
	case v.Relative:
		return text
	case text == "":
		return trialBlank
	case strings.EqualFold(text, trialBlank), strings.HasPrefix(text, asWritten),
		f.Type == QuantityField && strings.HasPrefix(text, "-"):
		return asWritten + text
	}
	return text
}

// On returns what the value makes of an entry of a field; the error says why it can make nothing of it.
func (v TrialValue) On(f *Field, was Entry) (Entry, error) {
	if !v.Relative {
		return v.Entry, nil
	}
	if !was.Quantity.IsSet() {
		return Entry{}, errors.New("a difference needs a number to start from, and the plan's entry is blank")
	}
	sum, ok := quantity.Plus(was.Quantity, v.Entry.Quantity, f.Kind)
	if !ok {
		return Entry{}, errors.New("the difference leads to no number that can be entered")
	}
	return f.Parse(sum.Text(), 0)
}
