package pump

import "math"

// Strokes returns the number of strokes that deliver a volume in m³ at an output
// in m³ per stroke. It is not rounded: the caller knows whether to stop short or
// to go over. It reports false unless the output is above zero and the volume not
// below.
func Strokes(volume, output float64) (float64, bool) { return share(volume, output) }

// Volume returns the volume in m³ that a number of strokes delivers at an output
// in m³ per stroke. It reports false where either is below zero.
func Volume(strokes, output float64) (float64, bool) {
	if !(strokes >= 0) || !(output >= 0) {
		return 0, false
	}
	return finite(strokes * output)
}

// Time returns the time in seconds that a volume in m³ takes at a flow in m³/s. It
// reports false unless the flow is above zero and the volume not below.
func Time(volume, flow float64) (float64, bool) { return share(volume, flow) }

// Rate returns the strokes per second at which each of a number of equal pumps must
// run to give a flow in m³/s together, at an output in m³ per stroke. It reports
// false unless there is a pump, the output is above zero and the flow not below.
func Rate(flow, output float64, pumps int) (float64, bool) {
	if pumps < 1 {
		return 0, false
	}
	return share(flow, output*float64(pumps))
}

// Flow returns the flow in m³/s of a number of equal pumps at a rate in strokes per
// second each and an output in m³ per stroke. No pump gives no flow. It reports
// false where an argument is below zero.
func Flow(rate, output float64, pumps int) (float64, bool) {
	if !(rate >= 0) || !(output >= 0) || pumps < 0 {
		return 0, false
	}
	return finite(rate * output * float64(pumps))
}

// share divides what is asked for by what one unit gives.
func share(asked, each float64) (float64, bool) {
	if !(asked >= 0) || !(each > 0) {
		return 0, false
	}
	return finite(asked / each)
}

// finite hands x on unless it is not an ordinary number.
func finite(x float64) (float64, bool) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, false
	}
	return x, true
}
