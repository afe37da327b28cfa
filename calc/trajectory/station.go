package trajectory

import (
	"fmt"
	"math"
)

// A Station is one row of a survey or of a planned trajectory.
type Station struct {
	MD          float64 // MD is the measured depth from the rotary in metres.
	Inclination float64 // Inclination is the angle from straight down in radians, 0 to pi.
	Azimuth     float64 // Azimuth is the direction clockwise from north in radians, at most one turn either way.
}

// A Point is one place on a path.
type Point struct {
	MD          float64 // MD is the measured depth from the rotary in metres.
	TVD         float64 // TVD is the true vertical depth from the rotary in metres.
	North       float64 // North is the distance north of the rotary in metres.
	East        float64 // East is the distance east of the rotary in metres.
	Inclination float64 // Inclination is the angle from straight down in radians.
	Azimuth     float64 // Azimuth is the direction from north in radians, 0 to 2 pi; 0 on a vertical path.
	Dogleg      float64 // Dogleg is the severity in rad/m of the interval that holds or ends at the point.
}

// Departure returns the horizontal distance in metres from the rotary.
func (p Point) Departure() float64 { return math.Hypot(p.North, p.East) }

// VerticalSection returns the horizontal distance in metres from the rotary
// along the given azimuth in radians. It is negative behind the rotary.
func (p Point) VerticalSection(azimuth float64) float64 {
	sin, cos := math.Sincos(azimuth)
	return p.North*cos + p.East*sin
}

// deepestHole is the measured depth in metres beyond which a station is taken
// for a slip of the pen. It keeps every sum below far from overflow.
const deepestHole = 1e6

// check reports what is wrong with row number row of a list, given the station
// before it. The first row has none.
func (s Station) check(row int, before *Station) error {
	switch {
	case !finite(s.MD) || !finite(s.Inclination) || !finite(s.Azimuth):
		return fmt.Errorf("station %d: a value is missing or not a number; give depth, inclination and azimuth", row)
	case s.MD < 0:
		return fmt.Errorf("station %d: measured depth %.2f m lies above the rotary; count depths downwards from the rotary", row, s.MD)
	case s.MD > deepestHole:
		return fmt.Errorf("station %d: measured depth %.4g m is deeper than any hole; check the unit", row, s.MD)
	case math.Abs(s.Azimuth) > 2*math.Pi:
		return fmt.Errorf("station %d: azimuth %.4f rad is more than a full turn; check the unit", row, s.Azimuth)
	case s.Inclination < 0 || s.Inclination > math.Pi:
		return fmt.Errorf("station %d: inclination %.4f rad is outside 0 to pi; turn the azimuth instead of using a negative angle", row, s.Inclination)
	case before == nil:
		return nil
	case s.MD <= before.MD:
		return fmt.Errorf("station %d: measured depth %.2f m is not below station %d at %.2f m; sort the stations and drop repeated ones",
			row, s.MD, row-1, before.MD)
	}
	if turn := Dogleg(*before, s); turn > sharpestTurn {
		return fmt.Errorf("station %d: the hole turns by %.2f rad from station %d, which leaves the arc undetermined; put a station between",
			row, turn, row-1)
	}
	return nil
}

// finite reports whether x is an ordinary number.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
