package quantity

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxText is the longest text that is read, in bytes. The longest that
// Value.Text writes is 52: sign, 15 digits, point, 24 digits, space, unit.
const maxText = 64

// Parse reads a quantity of kind k as a person or a file writes it: a number
// and a unit, "1262 ft", "13 5/8 in", "1,25 sg". A number without a unit is in
// the unit shown; if shown is no unit of the kind, the unit must be written.
//
// The number may have a decimal point or comma, or be a fraction of the trade;
// number.go holds the exact rules and spelling.go those of units. The result is
// the exact value rounded to float64 once. Text that is empty, too long, not a
// number, open to two readings, or in a unit of another kind is refused with an
// error that wraps a [Fault] and says how to write it.
func Parse(text string, k Kind, shown Unit) (Value, error) {
	if len(text) > maxText {
		return Value{}, refuse(ErrTooLong, "a quantity has at most %d bytes, this text has %d", maxText, len(text))
	}
	cleaned, err := clean(text)
	if err != nil {
		return Value{}, err
	}
	if cleaned == "" {
		return Value{}, refuse(ErrEmpty, "no value entered for %s: write a number with its unit", k)
	}
	d, rest, err := splitNumber(cleaned)
	if err != nil {
		return Value{}, err
	}
	u, err := unitAfter(rest, k, shown)
	if err != nil {
		return Value{}, err
	}
	if k == Count && d.places > 0 {
		return Value{}, refuse(ErrWhole, "%s is not a whole number: a count has no decimals", d.text())
	}
	return Value{d.si(u), u}, nil
}

// unitAfter reads what follows the number.
func unitAfter(rest string, k Kind, shown Unit) (Unit, error) {
	if rest == "" && shown.Fits(k) {
		return shown, nil
	}
	return ParseUnit(rest, k)
}

// clean returns the text in the few characters that the readers know: the
// signs and spaces that word processors put in are replaced by plain ones, and
// spaces at the ends are dropped. Control characters are refused, tabs apart.
func clean(text string) (string, error) {
	if !utf8.ValidString(text) {
		return "", refuse(ErrNumber, "%q is not valid text: type the number again", text)
	}
	var stray rune
	cleaned := strings.Map(func(r rune) rune {
		switch {
		case r == '\u2212' || r == '\u2010' || r == '\u2011' || r == '\u2013': // minus, hyphens, en dash
			return '-'
		case r == '\t' || unicode.Is(unicode.Zs, r): // no-break, thin and figure space among them
			return ' '
		case !unicode.IsPrint(r):
			stray = r
		}
		return r
	}, text)
	if stray != 0 {
		return "", refuse(ErrNumber, "%q has an invisible character, %U: type the number again", text, stray)
	}
	return strings.TrimSpace(cleaned), nil
}
