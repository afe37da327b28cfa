package bore

import "math"

// Area returns the area in m² of a circle of diameter d metres, pi/4 d². It is
// zero for a diameter that is not above zero.
func Area(d float64) float64 {
	if !(d > 0) {
		return 0
	}
	return math.Pi / 4 * d * d
}

// ring returns the area in m² between an outer and an inner diameter in metres,
// and zero where the inner is not the smaller one. Factored, so that a narrow
// annulus keeps its digits.
func ring(outer, inner float64) float64 {
	if !(inner > 0) {
		return Area(outer)
	}
	if !(outer > inner) {
		return 0
	}
	return math.Pi / 4 * (outer - inner) * (outer + inner)
}

// Enlarged returns the diameter in metres of a hole that holds (1+ratio) times
// the volume of a hole of diameter d metres: what a caliper or an excess given on
// hole volume means. A ratio of -1 or less leaves no hole and gives zero.
func Enlarged(d, ratio float64) float64 {
	if !(d > 0) || !(ratio > -1) {
		return 0
	}
	return d * math.Sqrt(1+ratio)
}

// EnlargedAround returns the diameter in metres of a hole whose annulus around a
// body of diameter inner holds (1+ratio) times the annulus in a hole of diameter
// d: what an excess given on annular volume means, which is how cement is
// ordered. Where inner is not the smaller one there is no annulus to enlarge, and
// d comes back. A ratio below -1 leaves the bare body.
func EnlargedAround(d, inner, ratio float64) float64 {
	switch {
	case !(inner > 0):
		return Enlarged(d, ratio)
	case !(d > inner):
		return max(d, 0)
	case !(ratio > -1):
		return inner
	}
	return math.Sqrt(inner*inner + (1+ratio)*(d-inner)*(d+inner))
}
