package friction

// A Model gives friction pressure per length along the hole in Pa/m.
//
// Whoever solves for a flow relies on three promises: the answer is finite and not below zero, it is zero without flow, and
// it does not fall when the flow grows. A fluid with a yield stress may jump up from zero as soon as it moves; there is no
// other jump. Only the size of the flow counts, not its direction.
//
// Arguments that make no sense (no room, no number, a fluid with values below zero) give zero.
type Model interface {
	// Pipe is the loss in Pa/m of a flow in m³/s through a pipe of the given
	// inside diameter in metres.
	Pipe(f Fluid, flow, diameter float64) float64

	// Annulus is the loss in Pa/m of a flow in m³/s between a bore of diameter
	// outer and a body of diameter inner, both in metres.
	Annulus(f Fluid, flow, outer, inner float64) float64
}

// A Correlation is a published [Model] that says what it is and how it sees a flow.
type Correlation interface {
	Model

	// InPipe and InAnnulus are Pipe and Annulus with all that is found on the way.
	InPipe(f Fluid, flow, diameter float64) Flow
	InAnnulus(f Fluid, flow, outer, inner float64) Flow

	// Name is the short name that a person picks it by, Source what stands behind it, in one line.
	Name() string
	Source() string
}

// Correlations returns all of them, the plainest first.
func Correlations() []Correlation { return []Correlation{BinghamSlot{}, RP13D{}, DodgeMetzner{}} }

// Named returns the correlation of a name, and whether there is one.
func Named(name string) (Correlation, bool) {
	for _, c := range Correlations() {
		if c.Name() == name {
			return c, true
		}
	}
	return nil, false
}
