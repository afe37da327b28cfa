package nozzle

import "math"

// What is lost outside the bit goes with a power m of the flow: parasitic = p1 (q / q1)^m. Of a limited pressure the bit then
// has most power when the rest is 1/(m+1) of it, and its jets press most when that is 2/(m+2), as setting the derivative of
// (P - parasitic) q, or of its root times q, to zero shows. Source: Kendall and Goins, "Design and operation of jet-bit programs
// for maximum hydraulic horsepower, impact force, or jet velocity", Trans. AIME 219 (1960); from memory.

// Slope returns the power m with which the parasitic loss grows between two flows. It is not a number where the flows are the
// same or a loss is none.
func Slope(flow1, loss1, flow2, loss2 float64) float64 {
	if !(flow1 > 0) || !(flow2 > 0) || flow1 == flow2 || !(loss1 > 0) || !(loss2 > 0) {
		return math.NaN()
	}
	return math.Log(loss1/loss2) / math.Log(flow1/flow2)
}

// PowerShare returns the share of the pressure that is parasitic when the bit has most power.
func PowerShare(m float64) float64 { return 1 / (m + 1) }

// ImpactShare returns the share of the pressure that is parasitic when the jets press most.
func ImpactShare(m float64) float64 { return 2 / (m + 2) }

// FlowFor returns the flow in m³/s at which the parasitic loss is a wanted one, from what it is at one flow. That loss, and not
// the pump's pressure, stands below the wanted one: a well-known handbook example has it otherwise and finds a flow too low.
func FlowFor(wanted, flow, loss, m float64) float64 { return flow * math.Pow(wanted/loss, 1/m) }

// Split is a flow and what the bit takes of the pressure at it, and whether the flow had to stay at an end of its range.
type Split struct {
	Flow, Bit float64
	Bound     bool
}

// Optimum splits a pressure limit in Pa between the bit and the rest so that the rest is the wanted share of it, with the flow
// kept between two others: beyond them the bit takes what the nearer one leaves. flow and loss are the parasitic loss at one
// flow and m its slope. It reports false where nothing is left for the bit.
func Optimum(share, limit, flow, loss, m, least, most float64) (s Split, ok bool) {
	if !(limit > 0) || !(flow > 0) || !(loss > 0) || !(m > 0) || !(most >= least) {
		return s, false
	}
	s.Flow = FlowFor(share*limit, flow, loss, m)
	if within := min(max(s.Flow, least), most); within != s.Flow {
		s.Flow, s.Bound = within, true
	}
	s.Bit = limit - loss*math.Pow(s.Flow/flow, m)
	return s, s.Bit > 0
}
