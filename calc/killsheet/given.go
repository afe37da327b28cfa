package killsheet

import (
	"fmt"
	"math"
)

// A given is a value that a formula was given, with the name and the unit by which a fault is told.
type given struct {
	name  string
	value float64
	unit  string
	wants wants
}

// wants is what a value must be.
type wants int

const (
	anyNumber wants = iota
	noLessThanNothing
	moreThanNothing
)

func number(name string, value float64, unit string) given {
	return given{name, value, unit, anyNumber}
}
func some(name string, value float64, unit string) given {
	return given{name, value, unit, noLessThanNothing}
}
func positive(name string, value float64, unit string) given {
	return given{name, value, unit, moreThanNothing}
}

// String says what to give.
func (w wants) String() string {
	switch w {
	case noLessThanNothing:
		return "0 or more"
	case moreThanNothing:
		return "more than 0"
	}
	return "a number"
}

// usable reports whether the value is an ordinary number of the wanted sign.
func (g *given) usable() bool {
	switch g.wants {
	case noLessThanNothing:
		return finite(g.value) && g.value >= 0
	case moreThanNothing:
		return finite(g.value) && g.value > 0
	}
	return finite(g.value)
}

// check returns an error that names the first value that is not usable.
func check(topic string, values ...given) error {
	for i := range values {
		if g := &values[i]; !g.usable() {
			return fmt.Errorf("%s: %s of %.6g %s; give %v", topic, g.name, g.value, g.unit, g.wants)
		}
	}
	return nil
}

// outcome refuses a result that is beyond all numbers, as values in wrong units make it.
func outcome(topic string, x float64) (float64, error) {
	if !finite(x) {
		return 0, fmt.Errorf("%s: comes out as %g; check the units of what was given", topic, x)
	}
	return x, nil
}

// finite reports whether x is an ordinary number.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
