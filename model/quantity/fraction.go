package quantity

import (
	"math"
	"strconv"
)

// Fractions of an inch. Sizes of bits, casing and drill pipe are named in
// sixteenths or coarser; a number counts as one of them if it is no further
// off than a millionth of an inch.
const (
	sixteenths   = 16
	fractionSlop = 1e-6
	fractionMost = 1e6 // inches; beyond it nothing is a pipe
)

// isFraction reports whether x inches are a multiple of a sixteenth.
func isFraction(x float64) bool {
	n := math.Round(x * sixteenths)
	return math.Abs(x) < fractionMost && math.Abs(x-n/sixteenths) <= fractionSlop
}

// appendFraction writes x inches, a multiple of a sixteenth, in the trade's
// form: "36", "17 1/2", "5/8".
func appendFraction(dst []byte, x float64) []byte {
	n := int64(math.Round(x * sixteenths))
	if n < 0 {
		dst = append(dst, '-')
		n = -n
	}
	whole, numerator, denominator := n/sixteenths, n%sixteenths, int64(sixteenths)
	if numerator == 0 {
		return strconv.AppendInt(dst, whole, 10)
	}
	for numerator%2 == 0 {
		numerator, denominator = numerator/2, denominator/2
	}
	if whole != 0 {
		dst = strconv.AppendInt(dst, whole, 10)
		dst = append(dst, ' ')
	}
	dst = strconv.AppendInt(dst, numerator, 10)
	dst = append(dst, '/')
	return strconv.AppendInt(dst, denominator, 10)
}
