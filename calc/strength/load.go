package strength

import (
	"fmt"
	"math"
)

// mostLoad is a pressure in Pa, a force in N or a torque in N m that no well has, and
// tightest a curvature in rad/m; anything beyond comes from a wrong unit.
const (
	mostLoad = 1e10
	tightest = 10
)

// A Load is what acts on a string at one point.
type Load struct {
	Depth       float64 // Depth is along the hole in m; it names the point and is not used.
	Inside      float64 // Inside is the pressure inside in Pa.
	Outside     float64 // Outside is the pressure outside in Pa, from the same zero.
	Axial       float64 // Axial is the true axial force in N, tension above zero, without bending.
	Torque      float64 // Torque is the torque in N m, of either sign.
	Temperature float64 // Temperature is that of the steel in K.
	Dogleg      float64 // Dogleg is the curvature of the hole in rad/m.
}

// Check reports the first value of the load that cannot be, with the depth.
func (l Load) Check() error {
	at := func(what string, value float64, advice string) error {
		return fmt.Errorf("load at %.2f m: %s %g; %s", l.Depth, what, value, advice)
	}
	switch {
	case !(l.Inside >= 0) || l.Inside > mostLoad:
		return at("pressure inside in Pa", l.Inside, "give one from zero up and check its unit")
	case !(l.Outside >= 0) || l.Outside > mostLoad:
		return at("pressure outside in Pa", l.Outside, "give one from zero up and check its unit")
	case !(math.Abs(l.Axial) <= mostLoad):
		return at("axial force in N", l.Axial, "give a number and check its unit")
	case !(math.Abs(l.Torque) <= mostLoad):
		return at("torque in N m", l.Torque, "give a number and check its unit")
	case !(l.Dogleg >= 0) || l.Dogleg > tightest:
		return at("dogleg in rad/m", l.Dogleg, "give one from zero up and check its unit")
	}
	if err := checkTemperature(l.Temperature); err != nil {
		return fmt.Errorf("load at %.2f m: %w", l.Depth, err)
	}
	return nil
}
