package quantity

import (
	"math"
	"strconv"
)

// blank stands where there is no number to show.
const blank = "-"

// Format returns an SI magnitude as a number in unit u, without the unit, to
// the digits that the trade writes for that kind. See [AppendFormat].
func Format(si float64, k Kind, u Unit) string {
	return string(AppendFormat(make([]byte, 0, 24), si, k, u))
}

// FormatUnit returns the number as [Format] does, followed by a space and the
// unit as a screen shows it. It returns "-" alone where there is no number.
func FormatUnit(si float64, k Kind, u Unit) string {
	text := AppendFormat(make([]byte, 0, 32), si, k, u)
	if symbol := u.Symbol(); symbol != "" && string(text) != blank {
		text = append(append(text, ' '), symbol...)
	}
	return string(text)
}

// FormatChange returns an SI difference as a number in unit u with its sign,
// as in "+18.0" or "-0.10". The digits are those of the difference itself, not
// of the quantities it lies between. It is "" if the difference is zero at
// those digits, and "-" where there is no number. A diameter in inches is
// written in decimals, and a difference of temperature knows no zero point.
func FormatChange(dsi float64, k Kind, u Unit) string {
	x := u.ScaleFromSI(dsi)
	if !u.Fits(k) || !writable(x) {
		return blank
	}
	text := strconv.AppendFloat(make([]byte, 0, 24), math.Abs(x), 'f', decimalsFor(k, u, x), 64)
	switch {
	case isZero(text):
		return ""
	case x < 0:
		return "-" + string(text)
	default:
		return "+" + string(text)
	}
}

// AppendFormat appends an SI magnitude as a number in unit u, without the
// unit, to the digits that the trade writes for a quantity of kind k. Digits
// are never grouped and zero has no sign. A diameter in inches that is a
// multiple of a sixteenth is written as a fraction, "13 5/8". Where there is
// no number to write it appends "-": for NaN and infinities, for magnitudes of
// 1e15 units and more, and if u is no unit of kind k.
func AppendFormat(dst []byte, si float64, k Kind, u Unit) []byte {
	x := u.FromSI(si)
	if !u.Fits(k) || !writable(x) {
		return append(dst, blank...)
	}
	if k == Diameter && u == Inch && isFraction(x) {
		return appendFraction(dst, x)
	}
	start := len(dst)
	dst = strconv.AppendFloat(dst, x, 'f', decimalsFor(k, u, x), 64)
	if dst[start] == '-' && isZero(dst[start+1:]) {
		dst = append(dst[:start], dst[start+1:]...)
	}
	return dst
}

// FormatValue returns the number of v in unit u, without the unit. In the unit
// it was entered in, a value shows every digit that was entered, up to four
// more than the trade writes, so that a typed half foot is not rounded away;
// in another unit it is written as [Format] does. It returns "" if nothing was
// entered.
func FormatValue(v Value, k Kind, u Unit) string {
	if !v.IsSet() {
		return ""
	}
	formatted := Format(v.SI, k, u)
	if v.Unit != u || formatted == blank || u == Inch && k == Diameter && isFraction(u.FromSI(v.SI)) {
		return formatted
	}
	usual := decimalsFor(k, u, u.FromSI(v.SI))
	d, exact := shortest(v.SI, u)
	if exact && d.places > usual && d.places <= usual+4 {
		return d.text()
	}
	return formatted
}

// writable reports whether x is a number that a person could have entered.
func writable(x float64) bool { return math.Abs(x) < 1e15 } // false for NaN

// isZero reports whether a number without a sign has no digit but zeros.
func isZero(text []byte) bool {
	for _, c := range text {
		if c >= '1' && c <= '9' {
			return false
		}
	}
	return true
}

// decimalsFor returns how many decimals the trade writes for x in unit u.
func decimalsFor(k Kind, u Unit, x float64) int {
	x = math.Abs(x)
	d := digitsFor(k, u)
	// Half of the last fine digit is what rounding may add: 999.96 bbl is
	// 1000 bbl, not 1000.0.
	if d.below > 0 && x+0.5*math.Pow10(-int(d.fine)) >= d.below {
		return int(d.coarse)
	}
	return int(d.fine)
}

// digitsFor returns the digits of a unit for kind k. Counts are whole, other
// bare numbers are not. Diameters are finer than lengths: pipe is listed to a
// thousandth of an inch or a tenth of a millimetre (API Spec 5CT). Pipe is tallied
// to the hundredth, at any depth.
func digitsFor(k Kind, u Unit) digits {
	switch k {
	case Count:
		return digits{}
	case TallyLength:
		if u == Metre || u == Foot {
			return digits{fine: 2}
		}
	case Diameter:
		switch u {
		case Inch:
			return digits{fine: 3}
		case Millimetre:
			return digits{fine: 1}
		case Centimetre:
			return digits{fine: 2}
		case Metre, Foot:
			return digits{fine: 4}
		}
	}
	return u.row().digits
}

// Differs reports whether two SI magnitudes differ by more than they are shown to in unit u: the numbers are written otherwise, and
// so is their difference.
func Differs(a, b float64, k Kind, u Unit) bool {
	return a != b && FormatChange(b-a, k, u) != "" && Format(a, k, u) != Format(b, k, u)
}
