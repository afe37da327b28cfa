package state

// An Account is what became of one fluid, all in m³. At any moment
//
//	Start + Pumped + Back + Grown = held + Returned + Drained
type Account struct {
	Start    float64 // Start was in the well when it was made, or was spotted.
	Pumped   float64 // Pumped went in at the pump's side.
	Back     float64 // Back flowed in at the outlet when the string was moved.
	Returned float64 // Returned left the annulus at the outlet.
	Drained  float64 // Drained left the string at its top: reversed out, or pulled with the pipe.
	Grown    float64 // Grown is what [Well.Settle] and [Well.Circulate] gave it where it gives way, below zero if they took more.
}

// Account returns the account of a fluid, empty for a number that no fluid has.
func (w *Well) Account(fluid int) Account {
	if w.known(fluid) != nil {
		return Account{}
	}
	return w.accounts[fluid]
}

// Held returns the volume in m³ of a fluid in the whole well.
func (w *Well) Held(fluid int) float64 {
	volume := 0.0
	for c := range w.stacks {
		volume += w.stacks[c].of(fluid)
	}
	return volume
}

// Volume returns the volume in m³ of a fluid in one conduit.
func (w *Well) Volume(c Conduit, fluid int) float64 {
	if c < 0 || int(c) >= conduits {
		return 0
	}
	return w.stacks[c].of(fluid)
}
