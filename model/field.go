package model

import (
	"cmp"
	"fmt"
	"strings"

	"borewalk/model/harmless"
	"borewalk/model/quantity"
)

// Topic is the page on which a field or a figure belongs; topics stand in the order in which a section is worked.
type Topic uint8

// The topics. TopicWell holds what is entered once for the well. TopicTrial has no page: what is tried of a section lies over
// its pages.
const (
	TopicWell Topic = iota
	TopicHole
	TopicString
	TopicMud
	TopicHydraulics
	TopicCasing
	TopicCement
	TopicControl
	TopicSteps
	TopicTime
	TopicBuilt
	TopicHandover
	TopicTrial
)

// Topics lists every topic that has a page, in their order.
func Topics() []Topic {
	return []Topic{TopicWell, TopicHole, TopicString, TopicMud, TopicHydraulics, TopicCasing, TopicCement, TopicControl, TopicSteps, TopicTime,
		TopicBuilt, TopicHandover}
}

// String returns the page's name.
func (t Topic) String() string {
	return [...]string{"well", "hole", "string", "mud", "hydraulics", "casing", "cement", "control", "steps", "time", "built", "handover", "trial"}[t]
}

// FieldType says what sort of entry a field takes.
type FieldType uint8

// The field types. A Choice takes one of the field's Choices.
const (
	QuantityField FieldType = iota
	TextField
	ChoiceField
)

// Moves says what a length does when the seabed or the rotary moves.
type Moves uint8

// The ways in which lengths move. WithWell and WithRock are depths, from RKB or from the prognosis' reference.
const (
	Stays     Moves = iota
	WithWell        // a depth along hole of the hole, a string or the path
	WithRock        // a true vertical depth of the prognosis or of a formation
	WithRiser       // a line that reaches from the rig to the stack
)

// Entry is the content of a field: a quantity for a QuantityField, text for the others. The zero Entry is blank.
type Entry struct {
	Quantity quantity.Value
	Text     string
}

// IsSet reports whether the entry holds anything.
func (e Entry) IsSet() bool { return e.Quantity.IsSet() || e.Text != "" }

// Field is the single declaration of something that a person can edit.
type Field struct {
	Key      string        // name in the file, within its group
	Label    string        // name on a narrow screen, 16 columns at most
	Name     string        // full name, in the trade's words
	Topic    Topic         // page
	Type     FieldType     //
	Kind     quantity.Kind // for a QuantityField
	Min, Max quantity.Value
	Default  string   // text form of what a blank entry means or a new plan starts with; empty for none
	Choices  []string // for a ChoiceField
	Help     string   // what it is, what follows from it, which way round to give it
	Required bool     // figures are blank without it
	Brief    bool     // stands in the one-line summary of its row
	Moves    Moves    // for lengths: what goes along when the datum changes
	Over     string   // for what is as built: the planned entry of its section whose place it takes
	Aside    []string // likewise: further entries of the section that follow from it, and do not count beside it

	pointer func(row any) any                // to the quantity.Value or string in its row
	when    func(plan *Plan, row any) string // why the field does not count just now; empty when it does
	inside  func(plan *Plan, at Place) string
}

// Parse reads what was typed for the field: a number without a unit takes the unit shown, and is refused when that is
// no unit, as in a file. The error says what was wrong in one line; empty text is a blank entry.
func (f *Field) Parse(text string, shown quantity.Unit) (Entry, error) {
	text = strings.TrimSpace(text)
	switch {
	case text == "":
		return Entry{}, nil
	case f.Type == ChoiceField:
		return f.parseChoice(text)
	case f.Type == TextField:
		if err := checkText(text); err != nil {
			return Entry{}, err
		}
		return Entry{Text: strings.TrimSpace(Clean(text))}, nil // what is cleaned may end in blanks
	}
	v, err := quantity.Parse(text, f.Kind, shown)
	if err != nil {
		return Entry{}, err
	}
	if err := f.check(v); err != nil {
		return Entry{}, err
	}
	return Entry{Quantity: v}, nil
}

func (f *Field) parseChoice(text string) (Entry, error) {
	for _, c := range f.Choices {
		if strings.EqualFold(c, text) {
			return Entry{Text: c}, nil
		}
	}
	return Entry{}, fmt.Errorf("%q is not one of: %s", Clean(shortened(text)), strings.Join(f.Choices, ", "))
}

func (f *Field) check(v quantity.Value) error {
	if (f.Min.IsSet() && v.SI < f.Min.SI) || (f.Max.IsSet() && v.SI > f.Max.SI) {
		return fmt.Errorf("%s is outside the range", v.Text())
	}
	return nil
}

// RangeText returns the allowed range in the units shown, such as "15.0 to 45.0 m", the choices of a ChoiceField, and
// nothing for free text.
func (f *Field) RangeText(system quantity.System) string {
	if f.Type == ChoiceField {
		return strings.Join(f.Choices, ", ")
	}
	unit := system.Unit(f.Kind)
	least, most := f.Min.IsSet(), f.Max.IsSet()
	switch {
	case least && most:
		return quantity.Format(f.Min.SI, f.Kind, unit) + " to " + quantity.FormatUnit(f.Max.SI, f.Kind, unit)
	case least:
		return "at least " + quantity.FormatUnit(f.Min.SI, f.Kind, unit)
	case most:
		return "at most " + quantity.FormatUnit(f.Max.SI, f.Kind, unit)
	}
	return ""
}

// FileText returns an entry in the form that the plan's file holds, without the quotes: "342 m", "0.957 sg", "vertical".
func (f *Field) FileText(e Entry) string {
	if f.Type == QuantityField && e.Quantity.IsSet() {
		return e.Quantity.Text()
	}
	return e.Text
}

// ScreenText returns an entry as a screen shows it, in the units of system, with the unit. In the unit in which it was
// entered it keeps the digits that were entered.
func (f *Field) ScreenText(e Entry, system quantity.System) string {
	if f.Type != QuantityField || !e.Quantity.IsSet() {
		return e.Text
	}
	unit := system.Unit(f.Kind)
	text := quantity.FormatValue(e.Quantity, f.Kind, unit)
	if symbol := unit.Symbol(); symbol != "" {
		text += " " + symbol
	}
	return text
}

// DefaultEntry returns what the field starts with in a new plan or row; a blank entry for none.
func (f *Field) DefaultEntry() Entry {
	if f.Default == "" {
		return Entry{}
	}
	e, err := f.Parse(f.Default, 0)
	if err != nil {
		panic(fmt.Sprintf("model: internal error: default of %s: %v", f.Key, err))
	}
	return e
}

// Absent returns what it means that a file leaves the entry out: the default of a choice, nothing for others.
func (f *Field) Absent() Entry {
	if f.Type == ChoiceField {
		return f.DefaultEntry()
	}
	return Entry{}
}

// Same reports whether two contents of the field mean the same: in whatever unit a quantity was entered, and whether or not a
// choice that is the default was left out.
func (f *Field) Same(a, b Entry) bool {
	if f.Type == ChoiceField {
		return cmp.Or(a.Text, f.Default) == cmp.Or(b.Text, f.Default)
	}
	return a.Text == b.Text && a.Quantity.SI == b.Quantity.SI && a.Quantity.IsSet() == b.Quantity.IsSet()
}

func (f *Field) get(row any) Entry {
	switch p := f.pointer(row).(type) {
	case *quantity.Value:
		return Entry{Quantity: *p}
	case *string:
		return Entry{Text: *p}
	}
	panic("model: internal error: field " + f.Key + " is neither a quantity nor text")
}

func (f *Field) set(row any, e Entry) {
	switch p := f.pointer(row).(type) {
	case *quantity.Value:
		*p = e.Quantity
	case *string:
		*p = e.Text
	}
}

// Clean makes text from outside harmless: control characters, which could drive a terminal, become spaces. It is
// applied to everything that is read or typed, so that no screen needs to.
func Clean(text string) string { return harmless.Text(text) }
