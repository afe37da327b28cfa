package swab

import (
	"math"

	"borewalk/calc/friction"
)

// Reach is a length of annulus with one bore and one body in it. Diameters are in metres.
type Reach struct {
	Bottom, Length float64 // along hole
	Outer, Inner   float64 // bore and body
	ID             float64 // of the body
	Joint, Share   float64 // of the body's tool joints, and the share of the length that is as wide; none without a share
}

// Bore is a length of the inside of a string.
type Bore struct {
	Length, ID   float64
	Joint, Share float64 // bore of the tool joints and their share of the length
}

// String is a string in its hole with what it moves in.
type String struct {
	Fluid friction.Fluid
	Model friction.Model
	Bores []Bore                     // its inside, which counts for an open end and for gel
	Bit   func(flow float64) float64 // loss in Pa of a flow through the bit; nil where it passes what the bore passes

	reaches []reach
}

// reach is a Reach with what its bodies displace and drag along.
type reach struct {
	Reach
	body, joint section
}

// section is what a plane across a string meets, in m².
type section struct {
	closed  float64 // area of body or tool joint
	steel   float64 // less the bore of the body: what enters a string passes every plane of its bore alike
	dragged float64 // clinging times the annulus beside it
}

// felt returns the flow in m³/s of a move that the wall beside a section feels: what the section displaces at its speed or
// what goes through besides, and what clings to it.
func (x *section) felt(m Move, through float64) float64 {
	if m.fills() {
		return m.Speed * (x.steel + x.dragged)
	}
	return m.Speed*(x.closed+x.dragged) + through
}

// End says what the foot of a string does with the fluid below it.
type End uint8

// The ends.
const (
	Closed  End = iota // shut by a float, or plugged: the whole body displaces
	Filling            // takes in what its bore passes over, without loss: the steel displaces
	Open               // the flow divides so that both ways lose the same
)

// Move is how a string moves. What is pumped through it goes down the string and comes up past it; then the end does not
// matter, the pump holds the fluid in the bore.
type Move struct {
	Speed  float64
	Pumped float64
	End    End
}

// Add lays a length of annulus below the others. A length without a body, or with none that fits, loses nothing.
func (s *String) Add(r Reach) {
	x := reach{Reach: r}
	if r.Inner > 0 && r.Inner < r.Outer {
		x.body = across(r.Outer, r.Inner, r.ID)
		if r.Joint > r.Inner && r.Joint < r.Outer && r.Share > 0 {
			x.joint = across(r.Outer, r.Joint, r.ID)
		} else {
			x.Share = 0
		}
	}
	s.reaches = append(s.reaches, x)
}

// across returns the section of a body of a bore in a hole.
func across(outer, od, id float64) section {
	closed := area(od)
	return section{closed, closed - area(id), friction.Clinging(od/outer) * (area(outer) - closed)}
}

// Lengths returns the annulus as it was laid out, from the top down.
func (s *String) Lengths() []Reach {
	list := make([]Reach, len(s.reaches))
	for k := range s.reaches {
		list[k] = s.reaches[k].Reach
	}
	return list
}

// area returns the area in m² of a circle of a diameter in m.
func area(d float64) float64 { return math.Pi / 4 * d * d }

// Rise returns the pressure in Pa that a move adds to the fluid at rest at a depth along hole; below the foot of the string
// it is that at the foot.
func (s *String) Rise(m Move, md float64) float64 {
	through := s.through(m)
	sum := 0.0
	for k := range s.reaches {
		r := &s.reaches[k]
		if top := r.Bottom - r.Length; md > top {
			sum += s.loss(r, m, through) * min(r.Length, md-top)
		}
	}
	return sum
}

// Gradient returns the pressure in Pa/m that a move loses along the reach that was laid out as number k, from 0.
func (s *String) Gradient(m Move, k int) float64 {
	return s.loss(&s.reaches[k], m, s.through(m))
}

// loss returns the pressure in Pa/m that a move loses along a reach, below zero where the fluid runs down past the string. The
// flow past a plane is what the section there displaces: beside a tool joint that of the joint.
func (s *String) loss(r *reach, m Move, through float64) float64 {
	if r.body.closed == 0 {
		return 0
	}
	body := s.rub(r.body.felt(m, through), r.Outer, r.Inner)
	if r.Share == 0 {
		return body
	}
	return body + r.Share*(s.rub(r.joint.felt(m, through), r.Outer, r.Joint)-body)
}

// rub returns the loss in Pa/m of a flow that is felt in the annulus, with its sign.
func (s *String) rub(flow, outer, inner float64) float64 {
	return math.Copysign(s.Model.Annulus(s.Fluid, math.Abs(flow), outer, inner), flow)
}

// fills reports whether the body takes in what its bore passes over.
func (m Move) fills() bool { return m.End == Filling && m.Pumped == 0 }
