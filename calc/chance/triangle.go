// Package chance draws what is not known from ranges, again and again, and says how the outcomes spread.
//
// It knows no plan and is SI only. The same seed gives the same result on any number of cores: trials are cut into blocks of a fixed
// size, and each block draws from a stream of its own.
package chance

import "math"

// Triangle is the triangular distribution between Low and High with its peak at Likely: what a person can say who knows the ends and
// what is likely, and no more. Where the three are one, it is that constant.
type Triangle struct{ Low, Likely, High float64 }

// Constant returns the distribution of what is known.
func Constant(value float64) Triangle { return Triangle{value, value, value} }

// Valid reports whether the three are finite and in order.
func (t Triangle) Valid() bool {
	return t.Low <= t.Likely && t.Likely <= t.High && !math.IsInf(t.Low, 0) && !math.IsInf(t.High, 0)
}

// IsConstant reports whether there is nothing to draw.
func (t Triangle) IsConstant() bool { return t.Low == t.High }

// Mean returns (a + c + b) / 3 (Evans, Hastings and Peacock, Statistical Distributions, from memory).
func (t Triangle) Mean() float64 {
	return t.Likely + ((t.Low-t.Likely)+(t.High-t.Likely))/3 // in this order a constant stays what it is
}

// Variance returns (a² + b² + c² - ab - ac - bc) / 18 (the same source), written in differences.
func (t Triangle) Variance() float64 {
	down, up := t.Likely-t.Low, t.High-t.Likely
	return (down*down + up*up + down*up) / 18
}

// Quantile returns the value that a share of the draws stays below: the inverse of the distribution, which is two half parabolas
// that meet at Likely.
func (t Triangle) Quantile(share float64) float64 {
	width := t.High - t.Low
	if width == 0 {
		return t.Likely
	}
	if below := t.Likely - t.Low; share*width < below {
		return t.Low + math.Sqrt(share*width*below)
	}
	return t.High - math.Sqrt((1-share)*width*(t.High-t.Likely))
}
