package quantity

import "math"

// Value is a quantity that a person entered: its SI magnitude and the unit it
// was written in. The zero Value says that nothing was entered.
//
// Values made by [Parse], [Of] and [Nudge] are read back from their text bit
// for bit. A Value may also be put together from a computed magnitude; its text
// is then as exact as 24 decimals allow.
type Value struct {
	SI   float64
	Unit Unit
}

// IsSet reports whether a value was entered.
func (v Value) IsSet() bool { return v.Unit != 0 }

// Of returns the quantity of x units, as if the shortest decimal that reads as
// x had been typed. It returns the zero Value if x is not finite or is larger
// than 999999999999999, or if u is no unit. Decimals beyond the
// 24th are rounded.
func Of(x float64, u Unit) Value {
	if u.row().dim == noDimension {
		return Value{}
	}
	d, ok := decimalOf(x)
	if !ok {
		return Value{}
	}
	return Value{d.si(u), u}
}

// Text returns the form that a file holds and an edit box begins with: the
// shortest decimal that reads as the same SI magnitude, and the unit in ASCII,
// as in "13.625 in". It is empty if nothing was entered or the magnitude is
// not finite. A magnitude too large to be entered is written in full, and
// Parse refuses it.
func (v Value) Text() string {
	if v.Unit.row().dim == noDimension || math.IsNaN(v.SI) || math.IsInf(v.SI, 0) {
		return ""
	}
	d, _ := shortest(v.SI, v.Unit)
	if v.Unit == Bare {
		return d.text()
	}
	return d.text() + " " + v.Unit.ASCII()
}
