package killsheet

// On a subsea stack mud comes back through the long thin choke line, whose loss presses on the well as the choke does. When the
// pump is brought up with the casing gauge held at SICP, as on land, the well bears the loss on top. So the gauge is let fall by
// the loss at each rate. Source: Lapeyrouse, chapter 4, subsea considerations; the balance of pressures at the stack.

// A ChokeStep is one line of bringing the pump up.
type ChokeStep struct {
	Rate   float64 // Rate is that of the pump in m³/s.
	Loss   float64 // Loss is that of the choke line at the rate, in Pa.
	Casing float64 // Casing is what the casing gauge is to show, in Pa.
	Excess float64 // Excess is what the well bears too much because the choke is wide open, in Pa.
}

// PowerLaw returns the law of a loss in Pa that was found at one rate in m³/s and goes with a power of it, [Square] or
// [Turbulent]; with the power of 1, equal steps of the rate are equal steps of pressure.
func PowerLaw(loss, rate, power float64) func(rate float64) (float64, error) {
	return func(to float64) (float64, error) { return AtRate(loss, rate, to, power) }
}

// BringUp returns the schedule of the casing gauge in equal steps of the pump from rest to a rate in m³/s, from SICP in Pa with
// the pump off. The law gives the choke line's loss in Pa at a rate, and must not fall with it.
func BringUp(sicp, rate float64, steps int, loss func(rate float64) (float64, error)) ([]ChokeStep, error) {
	const topic = "bringing the pump up"
	if err := checkSteps(topic, steps); err != nil {
		return nil, err
	}
	if err := check(topic, some("SICP", sicp, "Pa"), positive("slow rate", rate, "m³/s")); err != nil {
		return nil, err
	}
	list := make([]ChokeStep, steps+1)
	for k := range list {
		at := rate * float64(k) / float64(steps)
		p, err := loss(at)
		if err == nil {
			err = check(topic, some("choke line loss", p, "Pa"))
		}
		if err != nil {
			return nil, err
		}
		list[k] = chokeStep(sicp, at, p)
	}
	return list, nil
}

// chokeStep parts a loss into what the choke can be opened for and what is too much.
func chokeStep(sicp, rate, loss float64) ChokeStep {
	return ChokeStep{Rate: rate, Loss: loss, Casing: max(0, sicp-loss), Excess: max(0, loss-sicp)}
}
