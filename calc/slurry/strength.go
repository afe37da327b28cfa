package slurry

import (
	"errors"
	"fmt"
)

// A Reading is one line of a laboratory's table of compressive strength.
type Reading struct {
	Time     float64 // Time is the time since mixing in seconds.
	Strength float64 // Strength is the compressive strength in Pa.
}

// WaitFor returns the time in seconds after mixing at which the cement first has a
// wanted compressive strength in Pa, from readings of a test, linear in time
// between them. The test must have been run at the coldest temperature along the
// cement that matters: for a surface casing that of the seabed, not of the shoe. A
// warmer test gives too short a wait.
//
// Before the first reading nothing is known, so what it already exceeds counts as
// reached only then. Strength may fall again later; the first time counts. It is an
// error if the wanted strength is above all readings, or if the readings are not in
// order of time.
func WaitFor(readings []Reading, strength float64) (float64, error) {
	if err := checkReadings(readings); err != nil {
		return 0, err
	}
	if !notNegative(strength) {
		return 0, fmt.Errorf("strength of cement: wanted %g Pa; give 0 or more", strength)
	}
	best := 0.0
	for i, r := range readings {
		best = max(best, r.Strength)
		if r.Strength < strength {
			continue
		}
		if i == 0 {
			return r.Time, nil
		}
		before := readings[i-1] // weaker than wanted, or the loop had ended there
		share := (strength - before.Strength) / (r.Strength - before.Strength)
		return before.Time + share*(r.Time-before.Time), nil
	}
	return 0, fmt.Errorf("strength of cement: %.0f Pa is not reached, the test ends with at most %.0f; ask for a longer test or wish for less", strength, best)
}

// StrengthAt returns the compressive strength in Pa at a time in seconds after
// mixing, linear between readings. It reports false before the first and after the
// last, and where the readings are not usable.
func StrengthAt(readings []Reading, time float64) (float64, bool) {
	if checkReadings(readings) != nil {
		return 0, false
	}
	for i, r := range readings {
		switch {
		case r.Time == time:
			return r.Strength, true
		case r.Time > time && i > 0:
			before := readings[i-1]
			share := (time - before.Time) / (r.Time - before.Time)
			return before.Strength + share*(r.Strength-before.Strength), true
		case r.Time > time:
			return 0, false
		}
	}
	return 0, false
}

// checkReadings reports the first reading that is not usable.
func checkReadings(readings []Reading) error {
	if len(readings) == 0 {
		return errors.New("strength of cement: there are no readings; give at least one")
	}
	for i, r := range readings {
		switch {
		case !notNegative(r.Time) || !notNegative(r.Strength):
			return fmt.Errorf("strength of cement: reading %d has %g s and %g Pa; give 0 or more", i+1, r.Time, r.Strength)
		case i > 0 && !(r.Time > readings[i-1].Time):
			return fmt.Errorf("strength of cement: reading %d at %.0f s is not later than the one before; sort them", i+1, r.Time)
		}
	}
	return nil
}
