package catalogue

import "math"

// The strength formulas of API Bulletin 5C3, worked here a second time and in
// the bulletin's own units (in, psi, lbf), so that a wrong digit in the tables
// does not agree with itself. Elsewhere the program has its own.

// strength of plain pipe, unrounded.
type strength struct {
	regime   string
	collapse float64 // psi
	burst    float64 // psi
	body     float64 // klbf
}

// api5C3 returns the strength of pipe of outside diameter d and wall t (in) and
// yield y (psi).
func api5C3(d, t, y float64) strength {
	bore := d - 2*t
	s := strength{
		burst: 0.875 * 2 * y * t / d,
		body:  math.Pi / 4 * (d*d - bore*bore) * y / 1000,
	}
	s.regime, s.collapse = collapse5C3(d/t, y)
	return s
}

// collapse5C3 returns the regime and the collapse pressure (psi) for a ratio of
// diameter to wall and a yield (psi).
func collapse5C3(ratio, y float64) (string, float64) {
	c := constants5C3(y)
	switch {
	case ratio <= c.yieldLimit():
		return "yield", 2 * y * (ratio - 1) / (ratio * ratio)
	case ratio <= c.plasticLimit():
		return "plastic", y*(c.a/ratio-c.b) - c.c
	case ratio <= c.transitionLimit():
		return "transition", y * (c.f/ratio - c.g)
	}
	return "elastic", 46.95e6 / (ratio * (ratio - 1) * (ratio - 1))
}

// collapseConstants are the A, B, C, F and G of the bulletin at yield y.
type collapseConstants struct{ y, a, b, c, f, g float64 }

func constants5C3(y float64) collapseConstants {
	k := collapseConstants{
		y: y,
		a: 2.8762 + 0.10679e-5*y + 0.21301e-10*y*y - 0.53132e-16*y*y*y,
		b: 0.026233 + 0.50609e-6*y,
		c: -465.93 + 0.030867*y - 0.10483e-7*y*y + 0.36989e-13*y*y*y,
	}
	q := k.b / k.a
	p := 3 * q / (2 + q)
	k.f = 46.95e6 * p * p * p / (y * (p - q) * (1 - p) * (1 - p))
	k.g = k.f * q
	return k
}

func (k collapseConstants) yieldLimit() float64 {
	e := k.b + k.c/k.y
	return (math.Sqrt((k.a-2)*(k.a-2)+8*e) + k.a - 2) / (2 * e)
}

func (k collapseConstants) plasticLimit() float64 {
	return k.y * (k.a - k.f) / (k.c + k.y*(k.b-k.g))
}

func (k collapseConstants) transitionLimit() float64 {
	q := k.b / k.a
	return (2 + q) / (3 * q)
}
