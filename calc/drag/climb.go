package drag

import "math"

// climb goes up one element. Along the hole, upwards, the forces on a short length ds balance when
//
//	dT/ds = w cos I + axial × friction × N
//	N     = | -T × curvature + w × (straight down, across the string) |
//
// N being the sum of two vectors: the tension pulls towards the inside of the bend, the weight down. The weight is added
// up exactly, as buoyed weight times fall; the friction by the classical Runge-Kutta method of fourth order, in steps of
// a few degrees. In a straight element N does not change and one step is exact.
type climb struct {
	e   *Element
	a   arc
	rub float64
}

// side returns N at an angle up the arc, given by sine and cosine, under a tension.
func (c *climb) side(sin, cos, tension float64) float64 {
	if c.e.Unsupported {
		return 0
	}
	w := c.e.Weight
	curvature := 0.0
	if c.a.turn > 0 {
		curvature = c.a.turn / c.e.Length
	}
	inward := w*(cos*c.a.inward-sin*c.a.along) - tension*curvature
	if c.a.across == 0 {
		return math.Abs(inward)
	}
	across := w * c.a.across
	return math.Sqrt(inward*inward + across*across) // forces on a metre are nowhere near what a square could not hold
}

// up returns tension and torque at the upper end from those at the lower end, and fills in the load if one is wanted.
func (c *climb) up(op Operation, tension, torque float64, load *Load) (float64, float64) {
	if load != nil {
		load.Lower = Place{Tension: tension}
		load.SideAt = c.e.Length
	}
	switch {
	case c.e.Length == 0:
		tension, torque = c.round(op, tension, torque)
	case c.a.turn == 0:
		side := c.side(0, 1, tension)
		rub := c.rub * side * c.e.Length
		tension += c.e.Weight*c.a.along*c.e.Length + op.Axial*rub
		torque += op.Turning * rub * c.e.Radius
		if load != nil {
			load.Lower.Side, load.Upper.Side, load.Side, load.SideAt = side, side, side, c.e.Length/2
		}
	default:
		tension, torque = c.bend(op, tension, torque, load)
	}
	if load != nil {
		load.Upper.Tension, load.Torque = tension, torque
	}
	return tension, torque
}

// round goes round a kink, where the tension alone presses on the wall: a rope round a post.
func (c *climb) round(op Operation, tension, torque float64) (float64, float64) {
	if c.e.Unsupported {
		return tension, torque
	}
	pull := math.Abs(tension)
	rise := math.Copysign(1, tension) * op.Axial * c.rub * c.a.turn
	if op.Axial == 0 {
		return tension, torque + op.Turning*c.rub*pull*c.a.turn*c.e.Radius
	}
	upper := tension * math.Exp(rise)
	return upper, torque + op.Turning/op.Axial*(upper-tension)*c.e.Radius
}

// bend goes up an arc, in steps.
func (c *climb) bend(op Operation, tension, torque float64, load *Load) (float64, float64) {
	steps, angle := c.a.steps()
	step := c.e.Length / float64(steps)
	radius := c.e.Length / c.a.turn
	pull, turning := op.Axial*c.rub, op.Turning*c.rub*c.e.Radius
	start, rubbed := tension, 0.0 // the tension at the lower end, and what friction has added since
	sin, cos := 0.0, 1.0
	for n := range steps {
		sinM, cosM, sinU, cosU := c.a.sinM, c.a.cosM, c.a.sinU, c.a.cosU
		if n > 0 {
			sinM, cosM = math.Sincos((float64(n) + 0.5) * angle)
			sinU, cosU = math.Sincos(float64(n+1) * angle)
		}
		hung := start + c.lifted(radius, sinM, cosM)
		above := start + c.lifted(radius, sinU, cosU)
		n1 := c.side(sin, cos, tension)
		n2 := c.side(sinM, cosM, hung+rubbed+pull*n1*step/2)
		n3 := c.side(sinM, cosM, hung+rubbed+pull*n2*step/2)
		n4 := c.side(sinU, cosU, above+rubbed+pull*n3*step)
		pressed := (n1 + 2*n2 + 2*n3 + n4) / 6 * step
		rubbed += pull * pressed
		tension = above + rubbed
		torque += turning * pressed
		sin, cos = sinU, cosU
		if load == nil {
			continue
		}
		if n == 0 {
			load.Lower.Side, load.Side = n1, n1
		}
		load.Upper.Side = c.side(sin, cos, tension)
		if load.Upper.Side > load.Side {
			load.Side, load.SideAt = load.Upper.Side, c.e.Length-float64(n+1)*step
		}
	}
	return tension, torque
}

// lifted returns the buoyed weight that hangs between the lower end and an angle up the arc, in N.
func (c *climb) lifted(radius, sin, cos float64) float64 {
	return c.e.Weight * radius * (sin*c.a.along + (1-cos)*c.a.inward)
}
