package tally

import (
	"fmt"
	"math"
)

// A Fill is what one piece takes in and pushes out while it is run.
type Fill struct {
	Inside       float64 // Inside is the volume in m³ that fills the piece.
	Displaced    float64 // Displaced is the volume in m³ that comes out of the hole for it.
	InsideSum    float64 // InsideSum is the volume in m³ inside the string so far.
	DisplacedSum float64 // DisplacedSum is the volume in m³ displaced so far.
}

// Fills returns for each piece of a list, from the lowest on, what it takes to fill
// and what it displaces, for pipe of an outside and an inside diameter in metres.
// With a float that holds, the string displaces all of its outside and must be
// filled from the top; without, only its steel. Couplings and thicker pieces are
// taken as plain pipe. An error says that the diameters are impossible.
func Fills(l List, od, id float64, float bool) ([]Fill, error) {
	if !(id > 0) || !(od > id) || od > 10 {
		return nil, fmt.Errorf("pipe of %g m outside and %g m inside; give both and check their units", od, id)
	}
	fills := make([]Fill, len(l.Pieces))
	var sum Fill
	for n, p := range l.Pieces {
		inside := math.Pi / 4 * id * id * p.Length
		displaced := math.Pi / 4 * od * od * p.Length
		if !float {
			displaced -= inside
		}
		sum.InsideSum += inside
		sum.DisplacedSum += displaced
		fills[n] = Fill{inside, displaced, sum.InsideSum, sum.DisplacedSum}
	}
	return fills, nil
}
