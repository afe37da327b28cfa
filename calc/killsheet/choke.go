package killsheet

import (
	"fmt"
	"math"

	"borewalk/calc/column"
)

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
// [Turbulent].
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

// ChokeOpening returns the schedule of the casing gauge in equal steps of pressure, from SICP to SICP less the choke line's loss
// at the slow rate, with the rate in m³/s at which each is reached if the loss goes with a power of it. Source: Lapeyrouse,
// chapter 4, subsea considerations, adjusting choke line pressure loss; the rates by the power.
func ChokeOpening(sicp, loss, rate, power float64, steps int) ([]ChokeStep, error) {
	const topic = "choke opening"
	if err := checkSteps(topic, steps); err != nil {
		return nil, err
	}
	if err := check(topic, some("SICP", sicp, "Pa"), some("choke line loss", loss, "Pa"), positive("slow rate", rate, "m³/s"),
		positive("power of the rate", power, "")); err != nil {
		return nil, err
	}
	list := make([]ChokeStep, steps+1)
	for k := range list {
		share := float64(k) / float64(steps)
		list[k] = chokeStep(sicp, rate*math.Pow(share, 1/power), loss*share)
	}
	return list, nil
}

// chokeStep parts a loss into what the choke can be opened for and what is too much.
func chokeStep(sicp, rate, loss float64) ChokeStep {
	return ChokeStep{Rate: rate, Loss: loss, Casing: max(0, sicp-loss), Excess: max(0, loss-sicp)}
}

// StackPressure returns the pressure in Pa at the stack, under what a gauge at rest shows and a line full of a fluid in kg/m³
// that stands a height in m from the stack's outlet up to the gauge.
func StackPressure(gauge, density, height float64) (float64, error) {
	const topic = "pressure at the stack"
	if err := check(topic, some("gauge", gauge, "Pa"), some("fluid in the line", density, "kg/m³"),
		some("height of the line", height, "m")); err != nil {
		return 0, err
	}
	return outcome(topic, gauge+density*column.G*height)
}

// KillLineGauge returns what the kill line's gauge shows in Pa while nothing flows in the kill line. Whatever the choke line
// loses, it is the pressure at the stack ([StackPressure]) less the line's own column; held steady while the pump comes up, it
// takes the choke line's loss off by itself. It is an error where the column weighs more than that pressure: the line would not
// stand full and its gauge show nothing. Source: common practice; the balance of two columns.
func KillLineGauge(stack, density, height float64) (float64, error) {
	const topic = "kill line gauge"
	if err := check(topic, some("pressure at the stack", stack, "Pa"), some("fluid in the line", density, "kg/m³"),
		some("height of the line", height, "m")); err != nil {
		return 0, err
	}
	gauge := stack - density*column.G*height
	if gauge < 0 {
		return 0, fmt.Errorf("%s: %g m of %.0f kg/m³ weigh more than the %.0f Pa at the stack; fill the line with a lighter fluid",
			topic, height, density, stack)
	}
	return outcome(topic, gauge)
}
