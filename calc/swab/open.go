package swab

import (
	"math"

	"borewalk/calc/root"
)

// through returns the flow in m³/s that leaves the foot of the string, measured against the string: what is pumped, and
// through an open end less than nothing on the way down.
//
// The annulus then carries what body and tool joint displace, each at its place, and what leaves the foot; the bore carries what enters the foot;
// and the pressure at the foot is that of either way. The more enters, the less the annulus loses and the more the bore
// does, so that there is one such flow; it is closed in on from both sides. A fluid with a yield point that the annulus does
// not overcome stands still in the bore: the end is then as good as closed. Where it would stand still in a length of the
// annulus, it counts as just moving there, which is the careful side.
//
// Source: Bourgoyne et al., Applied Drilling Engineering, chapter 4, open pipe (from memory); the shares solved for here
// and not taken in proportion to areas.
func (s *String) through(m Move) float64 {
	if m.End != Open || m.Pumped != 0 || m.Speed == 0 {
		return m.Pumped
	}
	sign := math.Copysign(1, m.Speed)
	most := 0.0
	for k := range s.reaches {
		r := &s.reaches[k]
		most = max(most, r.body.closed+r.body.dragged, r.joint.closed+r.joint.dragged)
	}
	down := Move{Speed: math.Abs(m.Speed), End: Open}
	lacks := func(enters float64) float64 { return s.up(enters) - s.atFoot(down, -enters) }
	trickle, all := most*down.Speed*1e-9, most*down.Speed*1.001 // with all, nothing runs up past the string any more
	const near = 1.0                                            // Pa
	enters, _ := root.Crossing(lacks, trickle, all, near)
	if math.IsNaN(enters) {
		return 0
	}
	return -sign * enters
}

// atFoot returns the pressure in Pa at the foot of the string by way of the annulus.
func (s *String) atFoot(m Move, through float64) (sum float64) {
	for k := range s.reaches {
		r := &s.reaches[k]
		sum += s.loss(r, m, through) * r.Length
	}
	return sum
}

// up returns the loss in Pa of a flow in m³/s in at the bit and up the bore of the string.
func (s *String) up(flow float64) (sum float64) {
	for k := range s.Bores {
		b := &s.Bores[k]
		body := s.Model.Pipe(s.Fluid, flow, b.ID)
		if b.Share > 0 && b.Joint > 0 && b.Joint < b.ID {
			body += b.Share * (s.Model.Pipe(s.Fluid, flow, b.Joint) - body)
		}
		sum += body * b.Length
	}
	if s.Bit != nil {
		sum += s.Bit(flow)
	}
	return sum
}
