package strength

import "math"

// elastic is the bulletin's constant of elastic collapse, 46.95 million psi, in Pa:
// 2E/(1 - nu²) at 30 million psi and 0.3, times 0.712 for the scatter of tests.
const elastic = 46.95e6 * psi

// Coefficients are those of collapse at one yield.
type Coefficients struct {
	Yield float64 // Yield is the yield in Pa that they belong to.
	A     float64 // A is the slope of plastic collapse.
	B     float64 // B is its constant share of yield.
	C     float64 // C is taken off plastic collapse, in Pa; the bulletin prints psi.
	F     float64 // F is the slope of transition collapse.
	G     float64 // G is its constant share of yield.
}

// CoefficientsAt returns the collapse coefficients at a yield in Pa. The bulletin
// prints A to three decimals and B to four and C in whole psi; here they are not
// rounded, which moves a rating by up to 10 psi. It reports false outside
// [LeastYield] to [MostYield].
//
// A, B and C are polynomials in the yield in psi, fitted to tests; F and G follow
// from a transition line that reaches zero at D/t = A/B and touches the elastic
// curve. Source: API Bulletin 5C3, section 1 (formulas
// from memory; the printed coefficients are in the tests).
func CoefficientsAt(yield float64) (Coefficients, bool) {
	if !(yield >= LeastYield) || yield > MostYield {
		return Coefficients{}, false
	}
	y := yield / psi // the only place in field units
	a := 2.8762 + 0.10679e-5*y + 0.21301e-10*y*y - 0.53132e-16*y*y*y
	b := 0.026233 + 0.50609e-6*y
	c := -465.93 + 0.030867*y - 0.10483e-7*y*y + 0.36989e-13*y*y*y
	ratio := b / a
	touch := 3 * ratio / (2 + ratio) // wall over diameter where the elastic curve begins
	f := elastic * touch * touch * touch / (yield * (touch - ratio) * (1 - touch) * (1 - touch))
	return Coefficients{Yield: yield, A: a, B: b, C: c * psi, F: f, G: f * ratio}, true
}

// Limits are the ratios of diameter to wall at which one regime of collapse gives way
// to the next.
type Limits struct {
	Yielding   float64 // Yielding is the most slender pipe that collapses by yield.
	Plastic    float64 // Plastic is the most slender pipe in plastic collapse.
	Transition float64 // Transition is the most slender pipe in transition; beyond it collapse is elastic.
}

// Limits returns where the regimes meet: each limit is the crossing of two
// neighbouring formulas, so that the collapse pressure has no steps. They are in
// rising order for coefficients of [CoefficientsAt]. Source: API Bulletin 5C3.
func (c Coefficients) Limits() Limits {
	e := c.B + c.C/c.Yield
	return Limits{
		Yielding:   (math.Sqrt((c.A-2)*(c.A-2)+8*e) + c.A - 2) / (2 * e),
		Plastic:    c.Yield * (c.A - c.F) / (c.C + c.Yield*(c.B-c.G)),
		Transition: (2 + c.B/c.A) / (3 * c.B / c.A),
	}
}
