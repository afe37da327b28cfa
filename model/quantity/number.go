package quantity

import (
	"math/big"
	"strings"
)

// The number in front of a unit.
//
//	number   = [ sign ] ( decimal | fraction | digits gap fraction )
//	decimal  = digits [ mark [ digits ] ] | mark digits
//	fraction = digits "/" digits, proper, over 2, 4, 8, 16, 32 or 64
//	gap      = spaces | "-"
//	mark     = "." | ","
//
// So "13 5/8" and "13-5/8" are thirteen and five eighths, and "-5/8" is less
// than zero. The point is always a decimal sign: "7.200" is seven and a fifth.
// The comma is one too, unless the text could be grouped thousands, as "7,200"
// could: that is refused, while "0,125", "1,25" and "1234,567" are not in
// doubt. Nothing groups digits, neither comma, point nor space, and there is no
// scientific notation, which plans are not written in.

// splitNumber reads the number at the start of text and returns what follows
// it. The text has its spaces trimmed and is not empty.
func splitNumber(text string) (decimal, string, error) {
	rest := text
	negative := false
	if rest[0] == '-' || rest[0] == '+' {
		negative = rest[0] == '-'
		rest = rest[1:]
	}
	first, rest := cutSpan(rest, "0123456789.,")
	if strings.Trim(first, ".,") == "" {
		return decimal{}, "", noNumber(text)
	}
	d, rest, err := numberAfter(first, rest)
	if err != nil {
		return decimal{}, "", err
	}
	if negative {
		d.coef = new(big.Int).Neg(d.coef)
	}
	return d, rest, nil
}

// numberAfter decides by what follows the first run of digits whether it is a
// decimal, the numerator of a fraction, or the whole part before one.
func numberAfter(first, rest string) (decimal, string, error) {
	if denominator, after, ok := cutDenominator(rest); ok {
		d, err := mixedFraction("0", first, denominator)
		return d, after, err
	}
	gap, after := cutSpan(rest, " ")
	if gap == "" && strings.HasPrefix(rest, "-") {
		gap, after = "-", rest[1:]
	}
	if second, afterSecond := cutSpan(after, "0123456789.,"); gap != "" && strings.Trim(second, ".,") != "" {
		denominator, afterFraction, ok := cutDenominator(afterSecond)
		switch {
		case ok:
			d, err := mixedFraction(first, second, denominator)
			return d, afterFraction, err
		case strings.HasPrefix(strings.TrimSpace(afterSecond), "/"): // as it stands while it is typed
			return decimal{}, "", refuse(ErrNumber, "%q: the fraction is not finished; write it like 13 5/8", first+" "+second+"/")
		case gap == "-":
			return decimal{}, "", refuse(ErrNumber, "%q is a range: write one number, or a fraction such as 13-5/8", first+gap+second)
		default:
			return decimal{}, "", refuse(ErrAmbiguous, "%q: a space does not group digits; write 7200 for seven thousand two hundred, 13 5/8 for a fraction", first+" "+second)
		}
	}
	if isExponent(rest) {
		return decimal{}, "", refuse(ErrNumber, "%q: powers of ten such as 1e5 are not read; write the number in full", first+rest)
	}
	d, err := plainDecimal(first)
	return d, rest, err
}

// plainDecimal reads digits with at most one decimal sign.
func plainDecimal(text string) (decimal, error) {
	points, commas := strings.Count(text, "."), strings.Count(text, ",")
	switch {
	case points > 0 && commas > 0:
		return decimal{}, refuse(ErrAmbiguous, "%q has both point and comma; digits are not grouped, so write 1234.5", text)
	case points > 1:
		return decimal{}, refuse(ErrAmbiguous, "%q has more than one point; digits are not grouped, so write 1234567", text)
	case commas > 1:
		return decimal{}, refuse(ErrAmbiguous, "%q has more than one comma; digits are not grouped, so write 1234567", text)
	}
	mark := "."
	if commas == 1 {
		mark = ","
	}
	whole, places, _ := strings.Cut(text, mark)
	if commas == 1 && mayBeGrouped(whole, places) {
		return decimal{}, refuse(ErrAmbiguous, "%q can be read in two ways; write %s%s or %s", text, whole, places, decimalFromDigits(whole, places).text())
	}
	if len(places) > maxPlaces {
		return decimal{}, refuse(ErrDigits, "%q is too fine: at most %d digits after the decimal sign", text, maxPlaces)
	}
	return bounded(decimalFromDigits(whole, places), text)
}

// mayBeGrouped reports whether the comma between whole and places could part
// thousands: one to three digits that do not begin with zero, then three.
func mayBeGrouped(whole, places string) bool {
	return len(places) == 3 && len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0'
}

// mixedFraction reads a whole part and a proper fraction of the trade.
func mixedFraction(whole, numerator, denominator string) (decimal, error) {
	asTyped := numerator + "/" + denominator
	if strings.ContainsAny(whole+numerator+denominator, ".,") {
		return decimal{}, refuse(ErrNumber, "%q mixes a fraction with a decimal sign: write 13 5/8 or 13.625", whole+" "+asTyped)
	}
	parts := int64(0)
	for _, power := range [...]string{"2", "4", "8", "16", "32", "64"} {
		if denominator == power {
			parts = smallInteger(power)
		}
	}
	if parts == 0 {
		return decimal{}, refuse(ErrNumber, "%q is no fraction of the trade: halves, quarters, eighths, 16ths, 32nds and 64ths are read; write others as a decimal", asTyped)
	}
	if len(numerator) > 2 || smallInteger(numerator) >= parts {
		return decimal{}, refuse(ErrNumber, "%q is no less than one: write the whole part first, as in 13 5/8", asTyped)
	}
	// A 64th has six places, 1/64 = 0.015625, so that a million is a multiple
	// of every denominator and the fraction an exact decimal.
	const sixPlaces = 1_000_000
	d := decimalFromDigits(whole, "")
	d.coef.Mul(d.coef, big.NewInt(sixPlaces))
	d.coef.Add(d.coef, big.NewInt(smallInteger(numerator)*(sixPlaces/parts)))
	d.places = 6
	return bounded(d.trimmed(), whole+" "+asTyped)
}

// bounded returns d, or the error that it is too large to be entered.
func bounded(d decimal, text string) (decimal, error) {
	if !d.inBounds() {
		return decimal{}, refuse(ErrDigits, "%q is too large: write at most %d digits before the decimal sign, or take a larger unit", text, maxWhole)
	}
	return d, nil
}

// smallInteger reads one or two digits.
func smallInteger(digits string) int64 {
	n := int64(0)
	for _, c := range []byte(digits) {
		n = n*10 + int64(c-'0')
	}
	return n
}

// cutDenominator takes a slash and digits off the front of text.
func cutDenominator(text string) (digits, rest string, ok bool) {
	after, slash := strings.CutPrefix(text, "/")
	if !slash {
		return "", text, false
	}
	digits, rest = cutSpan(after, "0123456789.,")
	return digits, rest, digits != ""
}

// cutSpan takes the longest run of the given ASCII characters off the front.
func cutSpan(text, characters string) (span, rest string) {
	n := 0
	for n < len(text) && strings.IndexByte(characters, text[n]) >= 0 {
		n++
	}
	return text[:n], text[n:]
}

// isExponent reports whether text goes on as a power of ten: "e5", "E-3".
func isExponent(text string) bool {
	if text == "" || text[0] != 'e' && text[0] != 'E' {
		return false
	}
	power := strings.TrimLeft(text[1:], "+-")
	return power != "" && power[0] >= '0' && power[0] <= '9'
}

// noNumber is the error for a text that does not begin with a number.
func noNumber(text string) error {
	word := strings.ToLower(strings.TrimLeft(text, "+-"))
	for _, special := range [...]string{"nan", "inf"} {
		if strings.HasPrefix(word, special) {
			return refuse(ErrNotFinite, "%q is not a finite number: write digits, or leave the field empty", text)
		}
	}
	return refuse(ErrNumber, "%q does not begin with a number: write for example 12.5, or 13 5/8", text)
}
