package mixing

// A Dump is mud that is pumped down once and left at the seabed while a hole is drilled: flow in m³/s, rate of penetration
// in m/s, and the pumps on through each connection of a stand in m, for a time in s.
type Dump struct {
	Flow, ROP         float64
	Stand, Connection float64 // both 0 where connections are not counted
}

// PerMetre returns the mud in m³ for each metre of hole, Q (1/ROP + t/stand): connections counted by their share of a
// stand. It is 0 without a flow and not a number without a rate of penetration. Source: flow by time.
func (d Dump) PerMetre() float64 { return d.Flow * d.slowness() }

// Time returns the time in s in which a length of hole in m is drilled.
func (d Dump) Time(length float64) float64 { return length * d.slowness() }

// slowness returns the time for each metre in s/m.
func (d Dump) slowness() float64 {
	s := 1 / d.ROP
	if d.Stand > 0 {
		s += d.Connection / d.Stand
	}
	return s
}
