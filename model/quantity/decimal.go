package quantity

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"sync"
)

// How an entered number becomes SI, and comes back.
//
// A typed number is a decimal: an integer divided by a power of ten. A unit is
// a ratio of integers. Their product is a ratio of integers too, and is rounded
// to float64 once, at the end. The way back looks for the decimal with the
// fewest places that leads forward to the same float64. Since the typed number
// itself is such a decimal, the search ends no later than there; a shorter one
// that is found first is the same quantity.

// The numbers that can be entered: up to 999999999999999 either side of zero,
// with up to 24 digits after the decimal sign. That is beyond every instrument
// and keeps the work small for whatever text arrives. The largest is a whole
// number so that no rounding on the way back can need a sixteenth digit.
const (
	maxWhole  = 15
	maxPlaces = 24
)

// decimal is the number coef / 10^places, with places from 0 to maxPlaces.
type decimal struct {
	coef   *big.Int
	places int
}

// pow10 returns 10^n as an integer.
func pow10(n int) *big.Int {
	return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil)
}

// largest has the largest numbers that can be entered, by their places.
var largest = sync.OnceValue(func() (most [maxPlaces + 1]*big.Int) {
	whole := pow10(maxWhole)
	whole.Sub(whole, big.NewInt(1))
	for places := range most {
		most[places] = new(big.Int).Mul(whole, pow10(places))
	}
	return most
})

// decimalOf returns the shortest decimal that reads as x, rounded to maxPlaces.
// It reports false if x is not finite or too large to be entered.
func decimalOf(x float64) (decimal, bool) {
	if !writable(x) {
		return decimal{}, false
	}
	text := strconv.FormatFloat(x, 'f', -1, 64)
	if _, places, _ := strings.Cut(text, "."); len(places) > maxPlaces {
		text = strconv.FormatFloat(x, 'f', maxPlaces, 64)
	}
	whole, places, _ := strings.Cut(text, ".")
	d := decimalFromDigits(whole, places)
	return d, d.inBounds()
}

// decimalFromDigits joins the digits before and after a decimal sign. There is
// at least one digit and nothing but digits, after an optional minus.
func decimalFromDigits(whole, places string) decimal {
	coef, ok := new(big.Int).SetString(whole+places, 10)
	if !ok {
		coef = new(big.Int)
	}
	return decimal{coef, len(places)}.trimmed()
}

// trimmed returns the same number without trailing zeros after the sign.
func (d decimal) trimmed() decimal {
	ten, rest := big.NewInt(10), new(big.Int)
	for d.places > 0 {
		tenth, _ := new(big.Int).QuoRem(d.coef, ten, rest)
		if rest.Sign() != 0 {
			break
		}
		d.coef, d.places = tenth, d.places-1
	}
	return d
}

// inBounds reports whether the number is one that can be entered.
func (d decimal) inBounds() bool {
	return d.places <= maxPlaces && d.coef.CmpAbs(largest()[d.places]) <= 0
}

// text writes the number in full, with a decimal point where it needs one.
func (d decimal) text() string {
	digits := new(big.Int).Abs(d.coef).String()
	sign := ""
	if d.coef.Sign() < 0 {
		sign = "-"
	}
	if d.places == 0 {
		return sign + digits
	}
	if short := d.places + 1 - len(digits); short > 0 {
		digits = strings.Repeat("0", short) + digits
	}
	point := len(digits) - d.places
	return sign + digits[:point] + "." + digits[point:]
}

// ratio returns the SI magnitude of one unit as a fraction, with pi to 59
// places where the unit has it.
func (r *unitRow) ratio() (num, den *big.Int) {
	num, den = big.NewInt(r.num), big.NewInt(r.den)
	if r.pi {
		pi, _ := new(big.Int).SetString(piDigits, 10)
		num.Mul(num, pi)
		den.Mul(den, pow10(piPlaces))
	}
	return num, den
}

// si returns the SI magnitude of d in unit u: the exact product, rounded once.
func (d decimal) si(u Unit) float64 {
	row := u.row()
	if si, ok := d.divided(row); ok {
		return si
	}
	return d.rounded(row)
}

// divided returns what rounded does, for nearly all that is ever typed, by one division: of integers that a float64 holds as
// they are, which IEEE 754 rounds once. It reports false for the others.
func (d decimal) divided(row *unitRow) (si float64, ok bool) {
	const exact = 1 << 53
	if row.pi || row.zero != 0 || row.num == 0 || !d.coef.IsInt64() {
		return 0, false
	}
	coef, den := d.coef.Int64(), row.den
	for range d.places {
		if den > exact/10 {
			return 0, false
		}
		den *= 10
	}
	if den > exact || max(coef, -coef) > exact/row.num || coef == math.MinInt64 {
		return 0, false
	}
	return float64(coef*row.num) / float64(den), true
}

// rounded returns the exact product of the number and the unit, rounded once.
func (d decimal) rounded(row *unitRow) float64 {
	num, den := row.ratio()
	coef, power := d.coef, pow10(d.places)
	if row.zero != 0 {
		coef = new(big.Int).Mul(coef, big.NewInt(100))
		coef.Add(coef, new(big.Int).Mul(big.NewInt(row.zero), power))
		power.Mul(power, big.NewInt(100))
	}
	num.Mul(num, coef)
	den.Mul(den, power)
	nearest, _ := new(big.Rat).SetFrac(num, den).Float64()
	return nearest
}

// shortest returns the decimal with the fewest places whose SI magnitude in
// unit u is exactly si. If no decimal that can be entered is that close, as for
// very small or very large computed numbers, it returns the nearest one of
// maxPlaces places and reports false.
// The caller sees to it that si is finite and u a unit.
func shortest(si float64, u Unit) (decimal, bool) {
	row := u.row()
	num, den := row.ratio()
	exact := new(big.Rat).SetFloat64(si)
	exact.Mul(exact, new(big.Rat).SetFrac(den, num))
	exact.Sub(exact, big.NewRat(row.zero, 100))

	// A candidate further off than this in plain floating point cannot round
	// to si; it saves the exact comparison for the few that may. Five
	// roundings of half a unit in the last place are below 1e-15 relative.
	tolerance := 1e-14 * (math.Abs(si) + math.Abs(float64(row.zero)/100*row.scale()))

	away := big.NewInt(int64(exact.Sign()))
	scaled, rest := new(big.Int).Set(exact.Num()), new(big.Int)
	ten := big.NewInt(10)
	var nearest decimal
	for places := 0; places <= maxPlaces; places++ {
		inner, _ := new(big.Int).QuoRem(scaled, exact.Denom(), rest)
		outer := new(big.Int).Add(inner, away)
		if rest.Lsh(rest, 1).CmpAbs(exact.Denom()) > 0 {
			inner, outer = outer, inner // nearer one first
		}
		nearest = decimal{inner, places}
		for _, coef := range [...]*big.Int{inner, outer} {
			candidate := decimal{coef, places}
			rough, _ := coef.Float64()
			if math.Abs(u.ToSI(rough/math.Pow10(places))-si) <= tolerance && candidate.inBounds() && candidate.si(u) == si {
				return candidate, true
			}
		}
		scaled.Mul(scaled, ten)
	}
	return nearest.trimmed(), false
}
