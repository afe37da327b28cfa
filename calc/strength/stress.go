package strength

import "math"

// A Stress is the state of stress at one place of the wall, in Pa, tension above
// zero.
type Stress struct {
	Radial float64 // Radial is across the wall.
	Hoop   float64 // Hoop is around the pipe.
	Axial  float64 // Axial is along the pipe, with bending.
	Shear  float64 // Shear is from torque, between hoop and axial.
}

// VonMises returns the plain tension in Pa that strains the steel as near to yield as
// this state does:
//
//	sqrt(((hoop - radial)² + (radial - axial)² + (axial - hoop)²)/2 + 3 shear²)
//
// Source: von Mises, as in API TR 5C3 / ISO 10400, clause 6.
func (s Stress) VonMises() float64 {
	a, b, c := s.Hoop-s.Radial, s.Radial-s.Axial, s.Axial-s.Hoop
	return math.Sqrt((a*a+b*b+c*c)/2 + 3*s.Shear*s.Shear)
}

// A Place is where in the wall a stress is taken. The most strained place is one of
// these four: the square of the von Mises stress is a sum of convex functions of the
// radius and of the bending, so it is highest at an end of both.
type Place int

// The places. In a straight hole the two sides of the bend are alike.
const (
	InsideStretched  Place = iota // the inside of the wall, on the outer side of the bend
	InsideSqueezed                // the inside of the wall, on the inner side of the bend
	OutsideStretched              // the outside of the wall, on the outer side of the bend
	OutsideSqueezed               // the outside of the wall, on the inner side of the bend
)

// String names the place, and is empty for none.
func (p Place) String() string {
	switch p {
	case InsideStretched:
		return "inside wall, outer side of bend"
	case InsideSqueezed:
		return "inside wall, inner side of bend"
	case OutsideStretched:
		return "outside wall, outer side of bend"
	case OutsideSqueezed:
		return "outside wall, inner side of bend"
	}
	return ""
}

// A Point is the stress at a place.
type Point struct {
	Place    Place
	Stress   Stress
	VonMises float64 // VonMises is the stress to compare with the yield, in Pa.
}

// Triaxial returns the stresses at the four places of the wall under a load. Pressure
// gives radial and hoop stress by Lamé on the given share of the wall, taken off from
// inside; force, bending and torque act on the whole wall. API TR 5C3 takes
// [WallTolerance] for the share; common practice takes 1, the nominal wall, and a
// factor of 1.25. The axial force must be the true one, with what pressure does to
// the ends. It returns an error for a pipe, share or load that cannot be.
//
// Source: Lamé; API TR 5C3 / ISO 10400, clause 6, triaxial yield (from memory).
func Triaxial(p Pipe, share float64, l Load) ([4]Point, error) {
	var points [4]Point
	if err := checkWall(p, share); err != nil {
		return points, err
	}
	if err := l.Check(); err != nil {
		return points, err
	}
	axial := l.Axial / p.Area()
	for i := range points {
		place := Place(i)
		radius, side := p.OD/2, 1.0
		if place == InsideStretched || place == InsideSqueezed {
			radius = innerRadius(p, share)
		}
		if place == InsideSqueezed || place == OutsideSqueezed {
			side = -1
		}
		radial, hoop := lame(p, share, l.Inside, l.Outside, radius)
		s := Stress{
			Radial: radial,
			Hoop:   hoop,
			Axial:  axial + side*Modulus*l.Dogleg*radius,
			Shear:  l.Torque * radius / polar(p),
		}
		points[i] = Point{Place: place, Stress: s, VonMises: s.VonMises()}
	}
	return points, nil
}

// Worst returns the point with the highest von Mises stress, the first of equals.
func Worst(points [4]Point) Point {
	worst := points[0]
	for _, p := range points[1:] {
		if p.VonMises > worst.VonMises {
			worst = p
		}
	}
	return worst
}

// innerRadius returns the radius in m of the inside of the wall's share.
func innerRadius(p Pipe, share float64) float64 { return p.OD/2 - share*p.Wall }

// lame returns the radial and hoop stress in Pa at a radius in m of a thick cylinder
// under pressures in Pa inside and outside.
func lame(p Pipe, share, inside, outside, radius float64) (radial, hoop float64) {
	out := p.OD * p.OD / 4
	in := innerRadius(p, share)
	in *= in
	mean := (inside*in - outside*out) / (out - in)
	varying := (inside - outside) * in * out / ((out - in) * radius * radius)
	return mean - varying, mean + varying
}

// polar returns the polar moment of the wall in m⁴.
func polar(p Pipe) float64 {
	id := p.ID()
	return p.Area() * (p.OD*p.OD + id*id) / 8
}
