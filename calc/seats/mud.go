package seats

import (
	"math"

	"borewalk/calc/column"
)

// By is what asks for a mud, or limits it.
type By uint8

// What asks, and what limits.
const (
	ByNothing      By = iota
	ByPore            // pore pressure and the trip margin: Mud = Value + Trip
	ByStability       // the wall of the hole: Mud = Value
	ByFracture        // fracture pressure less its margin: Mud = Value - Fracture
	ByKick            // the same with a kick shut in: Mud = Value - Fracture - Kick × bottom / TVD
	ByDifferential    // differential sticking: Mud = Value + Differential / (g × TVD), Value being the pore pressure
	ByRiserless       // the fluid of a hole that is open to the sea: Mud = Value
)

// String returns what it is called.
func (b By) String() string {
	switch b {
	case ByPore:
		return "pore pressure"
	case ByStability:
		return "stability"
	case ByFracture:
		return "fracture pressure"
	case ByKick:
		return "kick"
	case ByDifferential:
		return "differential sticking"
	case ByRiserless:
		return "riserless fluid"
	}
	return "nothing"
}

// A Bound is a mud that a hole needs or stands, with what it is made of, so that it can be checked by hand; see [By].
type Bound struct {
	By    By
	TVD   float64 // m, where it is met
	Value float64 // kg/m³, what the curve gives there
	Mud   float64 // kg/m³
}

// raise takes a need that is greater than those before.
func (b *Bound) raise(by By, tvd, value, mud float64) {
	if mud > b.Mud {
		*b = Bound{by, tvd, value, mud}
	}
}

// lower takes a limit that is less than those before.
func (b *Bound) lower(by By, tvd, value, mud float64) {
	if mud < b.Mud {
		*b = Bound{by, tvd, value, mud}
	}
}

// mud returns the least mud that does for all of a hole, and the most. Of equals the uppermost depth counts.
//
// A line, and a line less the hyperbola of a kick, are greatest and least at the ends of their pieces. Pore pressure with an
// allowed differential pressure is not: see stick.
func (w *well) mud(shoe, bottom float64) (least, most Bound) {
	least.Mud, most.Mud = math.Inf(-1), math.Inf(1)
	above := w.at(shoe)
	w.look(above, bottom, &least, &most)
	for i := w.below(shoe); above.tvd < bottom; i++ {
		r := w.rows[i]
		if r.tvd > bottom {
			r = w.at(bottom)
		}
		w.stick(above, r, &most)
		w.look(r, bottom, &least, &most)
		above = r
	}
	return least, most
}

// look takes what a depth needs and stands in a hole that ends at a bottom.
func (w *well) look(r row, bottom float64, least, most *Bound) {
	m := &w.margins
	least.raise(ByPore, r.tvd, r.pore, r.pore+m.Trip)
	if r.stability > 0 {
		least.raise(ByStability, r.tvd, r.stability, r.stability)
	}
	if m.Kick > 0 {
		most.lower(ByKick, r.tvd, r.fracture, r.fracture-m.Fracture-m.Kick*bottom/r.tvd)
	} else {
		most.lower(ByFracture, r.tvd, r.fracture, r.fracture-m.Fracture)
	}
	if m.Differential > 0 {
		most.lower(ByDifferential, r.tvd, r.pore, r.pore+m.Differential/(column.G*r.tvd))
	}
}

// stick takes the limit by differential sticking between two depths. Where pore pressure grows with depth by b, in equivalent
// density, it and Differential / (g × TVD) together are least where TVD² = Differential / (g × b).
func (w *well) stick(above, below row, most *Bound) {
	m := &w.margins
	growth := (below.pore - above.pore) / (below.tvd - above.tvd)
	if !(m.Differential > 0) || !(growth > 0) {
		return
	}
	if tvd := math.Sqrt(m.Differential / (column.G * growth)); tvd > above.tvd && tvd < below.tvd {
		r := between(above, below, tvd)
		most.lower(ByDifferential, tvd, r.pore, r.pore+m.Differential/(column.G*tvd))
	}
}
