package listfile

import (
	"errors"
	"fmt"
	"strings"
	"unicode"

	"borewalk/model/quantity"
)

// Units reads a unit that a column can be in, as [quantity.ParseUnit] does.
type Units func(text string) (quantity.Unit, error)

// UnitsOf returns the units of a kind.
func UnitsOf(k quantity.Kind) Units {
	return func(text string) (quantity.Unit, error) { return quantity.ParseUnit(text, k) }
}

// Heads reports whether a cell can be a heading: it holds no digits but those of a unit.
func (u Units) Heads(cell string) bool {
	for _, word := range u.words(cell) {
		if u.has(word) {
			cell = strings.Replace(cell, word, "", 1)
		}
	}
	return !strings.ContainsAny(cell, "0123456789")
}

// Named returns the unit that a heading names, as in "length (ft)", "m" or "p/bar", and the one shown where it names none. It
// refuses two units, and what may be meant for a unit and is none that the column can be in.
func (u Units) Named(heading string, shown quantity.Unit) (quantity.Unit, error) {
	var named quantity.Unit
	for _, word := range u.words(heading) {
		unit, err := u(word)
		if err != nil {
			continue
		}
		if named != 0 && unit != named {
			return 0, fmt.Errorf("heading %q names %s and %s; name one unit", Short(heading), named.ASCII(), unit.ASCII())
		}
		named = unit
	}
	if named != 0 {
		return named, nil
	}
	if err := u.doubt(heading); err != nil {
		return 0, fmt.Errorf("heading %q: %w", Short(heading), err)
	}
	return shown, nil
}

// doubt is the error for a heading without a unit that has one of another kind, one that only the case of its letters makes
// wrong, or anything else in brackets. Two letters may be a word as well.
func (u Units) doubt(heading string) error {
	for _, word := range u.words(heading) {
		_, err := u(word)
		if u.has(strings.ToLower(word)) || len(word) > 2 && errors.Is(err, quantity.ErrKind) {
			return err
		}
	}
	if inside, ok := bracketed(heading); ok {
		_, err := u(inside)
		return err
	}
	return nil
}

// words returns what can be a unit in a heading: what stands in brackets, each word, and what follows a stroke. Between words
// "in" is no inch, and "ft/in" is no inch either.
func (u Units) words(heading string) []string {
	var list []string
	if inside, ok := bracketed(heading); ok {
		list = append(list, inside)
	}
	heading = strings.ReplaceAll(heading, " in ", " ")
	for _, word := range strings.FieldsFunc(heading, func(c rune) bool { return unicode.IsSpace(c) || strings.ContainsRune("()[],;:", c) }) {
		list = append(list, word)
		if above, below, ok := strings.Cut(word, "/"); ok && !u.has(above) {
			list = append(list, below)
		}
	}
	return list
}

// has reports whether a text is a unit that the column can be in.
func (u Units) has(text string) bool {
	_, err := u(text)
	return err == nil
}

// bracketed returns what stands in the first brackets of a heading.
func bracketed(heading string) (inside string, ok bool) {
	open := strings.IndexAny(heading, "([")
	if open < 0 {
		return "", false
	}
	inside = heading[open+1:]
	if end := strings.IndexAny(inside, ")]"); end >= 0 {
		inside = inside[:end]
	}
	return strings.TrimSpace(inside), true
}
