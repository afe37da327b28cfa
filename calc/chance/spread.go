package chance

import (
	"math"
	"slices"
)

// Spread is how an outcome spreads over the trials: a tenth of them give less than P10, half less than P50, a tenth more than P90.
type Spread struct {
	P10, P50, P90, Mean float64
	Known               int // of the trials that have the outcome
}

// SpreadOf returns the spread of an outcome, over the trials that have it. Without any its values are not numbers.
func SpreadOf(values []float64) Spread {
	sorted := known(values)
	s := Spread{Mean: mean(sorted), Known: len(sorted)}
	slices.Sort(sorted)
	s.P10, s.P50, s.P90 = Percentile(sorted, 0.1), Percentile(sorted, 0.5), Percentile(sorted, 0.9)
	return s
}

// Percentile returns the value below which a share of sorted values lies, on the straight line between the two nearest: of n values
// the k-th, from none, stands at the share k / (n - 1) (definition 7 of Hyndman and Fan 1996, Sample quantiles in statistical
// packages).
func Percentile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	whole, part := math.Modf(share * float64(len(sorted)-1))
	k := int(whole)
	if k+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[k] + part*(sorted[k+1]-sorted[k])
}

// known returns the values that are numbers, in their order.
func known(values []float64) []float64 {
	return slices.DeleteFunc(slices.Clone(values), math.IsNaN)
}

// mean adds in order, so that the same trials give the same to the last bit, and keeps a constant what it is.
func mean(values []float64) float64 {
	if len(values) == 0 {
		return math.NaN()
	}
	m := 0.0
	for n, value := range values {
		m += (value - m) / float64(n+1)
	}
	return m
}

// Odds is the share of trials in which something holds, and between what that share would lie with endless trials, 19 times in 20.
type Odds struct{ Share, Low, High float64 }

// OddsOf returns the odds of what held in so many of the trials, with the score interval (Wilson 1927, Probable inference, the law of
// succession, and statistical inference), which stays within 0 and 1. Without trials they are not numbers.
func OddsOf(held, trials int) Odds {
	if trials == 0 {
		return Odds{math.NaN(), math.NaN(), math.NaN()}
	}
	const z = 1.959964 // of the normal distribution, for 95 %
	n := float64(trials)
	p := float64(held) / n
	middle := (p + z*z/(2*n)) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	return Odds{p, max(middle-half, 0), min(middle+half, 1)}
}

// AtLeast returns the odds that an outcome is no less than a limit; a trial without the outcome does not hold it.
func AtLeast(values []float64, limit float64) Odds {
	return counted(values, func(v float64) bool { return v >= limit })
}

// AtMost returns the odds that an outcome is no more than a limit; a trial without the outcome does not hold it.
func AtMost(values []float64, limit float64) Odds {
	return counted(values, func(v float64) bool { return v <= limit })
}

func counted(values []float64, holds func(float64) bool) Odds {
	held := 0
	for _, v := range values {
		if holds(v) {
			held++
		}
	}
	return OddsOf(held, len(values))
}
