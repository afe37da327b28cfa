package drag

import (
	"fmt"
	"math"
)

// A Direction is the way of the hole at a place: inclination from straight down, 0 to pi, and azimuth, in rad.
type Direction struct {
	Inclination, Azimuth float64
}

// An Element is a length of string of one weight in a piece of hole that is straight or one arc, as minimum curvature has
// it. An element without length whose ends differ in direction is a kink of the hole.
type Element struct {
	Length      float64   // m along the hole
	Upper       Direction // at its upper end
	Lower       Direction // at its lower end
	Weight      float64   // buoyed, N/m; below zero where it floats
	Radius      float64   // at which it touches the wall, m: half the tool joint's diameter
	Friction    float64   // friction factor
	Unsupported bool      // there is no wall: it hangs in open water
}

// sharpestTurn is the greatest turn within an element in rad: towards half a turn its plane is undetermined.
const sharpestTurn = 3.0

// straightEnough is the turn in rad within an element below which it is straight.
const straightEnough = 1e-9

// check says what is wrong with an element.
func (e *Element) check(number int) error {
	for _, v := range [...]float64{e.Length, e.Upper.Inclination, e.Upper.Azimuth, e.Lower.Inclination, e.Lower.Azimuth, e.Weight, e.Radius, e.Friction} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Errorf("string element %d: a value is missing or not a number", number)
		}
	}
	switch {
	case e.Length < 0:
		return fmt.Errorf("string element %d: length %g m is below zero", number, e.Length)
	case e.Upper.Inclination < 0 || e.Upper.Inclination > math.Pi || e.Lower.Inclination < 0 || e.Lower.Inclination > math.Pi:
		return fmt.Errorf("string element %d: inclination is outside 0 to pi", number)
	case e.Radius < 0 || e.Friction < 0:
		return fmt.Errorf("string element %d: radius %g m or friction factor %g is below zero", number, e.Radius, e.Friction)
	}
	return nil
}

// arc is the shape of an element, seen from its lower end: the shares of straight down that lie along the string there,
// towards the inside of the bend that it makes upwards, and across the plane of the bend.
type arc struct {
	along, inward, across float64
	turn                  float64 // rad from end to end; zero where it is straight

	sinM, cosM, sinU, cosU float64 // of the angles up the arc at the middle and the end of the first step, mostly the only one
}

// steps returns in how many steps an arc is gone up, and the angle of each.
func (a *arc) steps() (n int, angle float64) {
	n = int(math.Ceil(a.turn / mostTurn))
	return n, a.turn / float64(n)
}

// shape returns the arc between the ends of an element.
func (e *Element) shape() arc {
	up, low := e.Upper, e.Lower
	sinUp, sinLow := math.Sin(up.Inclination), math.Sin(low.Inclination)
	build, around := math.Sin((low.Inclination-up.Inclination)/2), math.Sin((low.Azimuth-up.Azimuth)/2)
	turn := 2 * math.Asin(math.Sqrt(min(build*build+sinUp*sinLow*around*around, 1)))
	a := arc{along: math.Cos(low.Inclination)}
	if turn < straightEnough {
		a.inward = sinLow
		return a
	}
	a.turn = turn
	sine, half := math.Sin(turn), math.Sin(turn/2)
	// cos(upper) - cos(turn) cos(lower), without the loss of digits of a small turn
	a.inward = (2*math.Sin((up.Inclination+low.Inclination)/2)*build + 2*half*half*a.along) / sine
	a.across = sinUp * sinLow * math.Sin(low.Azimuth-up.Azimuth) / sine
	_, angle := a.steps()
	a.sinM, a.cosM = math.Sincos(0.5 * angle)
	a.sinU, a.cosU = math.Sincos(angle)
	return a
}
