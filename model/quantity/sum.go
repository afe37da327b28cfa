package quantity

import "math/big"

// sumPlaces is how many decimals a sum of quantities in two units keeps: a
// millionth of a unit is far below what anyone enters.
const sumPlaces = 6

// Plus returns v moved by the number of another quantity of kind k, taken as a
// difference: 50 degF moved by "-18 degF" is 32 degF. The sum is in the unit of
// v and is exact where both are in one unit, so that 1.25 sg and 0.05 sg make
// 1.3 sg. It reports false if either was not entered or is of another kind, or
// if the sum is too large to be entered.
func Plus(v, by Value, k Kind) (Value, bool) {
	if !v.Unit.Fits(k) || !by.Unit.Fits(k) || !writable(v.SI) || !writable(by.SI) {
		return Value{}, false
	}
	from, _ := shortest(v.SI, v.Unit)
	step, _ := shortest(by.SI, by.Unit)
	if by.Unit != v.Unit {
		step = step.in(by.Unit, v.Unit)
	}
	places := max(from.places, step.places)
	sum := decimal{new(big.Int).Mul(from.coef, pow10(places-from.places)), places}
	sum.coef.Add(sum.coef, new(big.Int).Mul(step.coef, pow10(places-step.places)))
	if sum = sum.trimmed(); !sum.inBounds() {
		return Value{}, false
	}
	return Value{sum.si(v.Unit), v.Unit}, true
}

// in returns a difference in one unit as one in another, rounded.
func (d decimal) in(from, to Unit) decimal {
	num, den := from.row().ratio()
	over, under := to.row().ratio()
	x := new(big.Rat).SetFrac(d.coef, pow10(d.places))
	x.Mul(x, new(big.Rat).SetFrac(num, den))
	x.Mul(x, new(big.Rat).SetFrac(under, over))
	x.Mul(x, new(big.Rat).SetInt(pow10(sumPlaces)))
	half := big.NewRat(1, 2)
	if x.Sign() < 0 {
		half.Neg(half)
	}
	x.Add(x, half)
	return decimal{new(big.Int).Quo(x.Num(), x.Denom()), sumPlaces}.trimmed()
}
