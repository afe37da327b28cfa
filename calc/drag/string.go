package drag

import (
	"fmt"
	"math"
)

// A String is elements made ready, from the top down. It is not changed by what is asked of it.
type String struct {
	elements []Element
	arcs     []arc
}

// New makes a string of elements, from the top down. They are kept, not copied. An error names the element, counted from
// 1, and what is wrong with it.
func New(elements []Element) (String, error) {
	s := String{elements: elements, arcs: make([]arc, len(elements))}
	for k := range elements {
		if err := elements[k].check(k + 1); err != nil {
			return String{}, err
		}
		if s.arcs[k] = elements[k].shape(); s.arcs[k].turn > sharpestTurn {
			return String{}, fmt.Errorf("string element %d: it turns by %.2f rad, which leaves the arc undetermined; put a station between", k+1, s.arcs[k].turn)
		}
	}
	return s, nil
}

// A Place is what the string bears at a place: effective tension in N, compression below zero, and the force in N/m that
// presses it to the wall.
type Place struct {
	Tension, Side float64
}

// A Load is what an element bears.
type Load struct {
	Upper, Lower Place
	Torque       float64 // at its upper end, N m
	Side         float64 // greatest force to the wall within it, N/m; a kink has none per length
	SideAt       float64 // how far below its upper end that is, m
}

// Top returns the effective tension in N and the torque in N m at the top of the string.
func (s String) Top(op Operation) (tension, torque float64) {
	return s.top(op, span{})
}

// span is a run of elements, from one up to but not another, with a friction factor in place of their own.
type span struct {
	from, to int
	friction float64
}

func (s String) top(op Operation, other span) (tension, torque float64) {
	tension, torque = -op.BitWeight, op.BitTorque
	for k := len(s.elements) - 1; k >= 0; k-- {
		c := climb{e: &s.elements[k], a: s.arcs[k], rub: s.elements[k].Friction}
		if k >= other.from && k < other.to {
			c.rub = other.friction
		}
		tension, torque = c.up(op, tension, torque, nil)
	}
	return tension, torque
}

// Loads appends to dst what each element bears, from the top down.
func (s String) Loads(dst []Load, op Operation) []Load {
	first := len(dst)
	for range s.elements {
		dst = append(dst, Load{})
	}
	tension, torque := -op.BitWeight, op.BitTorque
	for k := len(s.elements) - 1; k >= 0; k-- {
		c := climb{e: &s.elements[k], a: s.arcs[k], rub: s.elements[k].Friction}
		tension, torque = c.up(op, tension, torque, &dst[first+k])
	}
	return dst
}

// Elements returns the elements, from the top down.
func (s String) Elements() []Element { return s.elements }

// mostTurn is the turn in rad that one step of the integration takes at most: three degrees, with which a bend is right to
// a millionth, and to some newtons where the string goes from one side of the hole to the other within a step.
const mostTurn = math.Pi / 60
