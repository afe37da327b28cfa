package quantity

import (
	"math"
	"math/big"
)

// Step returns by how much one press of + or - moves a quantity of kind k in
// unit u: one foot, a tenth of a ppg, an eighth of an inch. The steps are
// those in which the trade plans, from memory. Step returns 0 if u is no unit
// of the kind.
func Step(k Kind, u Unit) float64 {
	if !u.Fits(k) {
		return 0
	}
	switch k {
	case Diameter:
		switch u {
		case Inch:
			return 0.125
		case Millimetre:
			return 1
		case Centimetre:
			return 0.1
		case Metre:
			return 0.001
		case Foot:
			return 0.01
		}
	case Stress: // grades of steel, not gauge readings
		switch u {
		case PSI:
			return 1000
		case KSI:
			return 1
		case Megapascal:
			return 5
		}
	case Count:
		return 1
	}
	return u.row().step
}

// Nudge returns v moved by n natural steps in unit u, down if n is negative.
// The result is a multiple of the step and is in unit u; the first step from a
// number between two multiples leads to the next one. The multiple is an exact
// decimal: ten nudges of 0.1 ppg make 1 ppg and ten back undo them.
//
// Nudge returns v as it is if n is zero, if nothing was entered, if u is no
// unit of kind k, or if the result would be too large to be entered.
func Nudge(v Value, k Kind, u Unit, n int) Value {
	if n == 0 || !v.IsSet() || !v.Unit.Fits(k) || !u.Fits(k) || math.IsNaN(v.SI) || math.IsInf(v.SI, 0) {
		return v
	}
	step, ok := decimalOf(Step(k, u))
	if !ok {
		return v
	}
	from, _ := shortest(v.SI, u)
	places := max(from.places, step.places)
	position := new(big.Int).Mul(from.coef, pow10(places-from.places))
	size := new(big.Int).Mul(step.coef, pow10(places-step.places))

	// steps becomes the floor of position/size going up, its ceiling going
	// down, so that the first step ends on the next multiple either way.
	steps, rest := new(big.Int).DivMod(position, size, new(big.Int))
	if n < 0 && rest.Sign() != 0 {
		steps.Add(steps, big.NewInt(1))
	}
	steps.Add(steps, big.NewInt(int64(n)))

	to := decimal{steps.Mul(steps, size), places}.trimmed()
	if !to.inBounds() {
		return v
	}
	return Value{to.si(u), u}
}
