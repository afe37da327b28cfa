package pump

import (
	"fmt"
	"math"
)

// Triplex returns the volume in m³ that one stroke of a single-acting triplex pump
// delivers: three liners of the given bore swept once over the stroke length, both
// in metres, 3 pi/4 D² L times the efficiency. An efficiency lies above 0 and not
// above 1. Source: drilling handbooks throughout (common practice).
func Triplex(liner, stroke, efficiency float64) (float64, error) {
	if err := check(liner, stroke, efficiency); err != nil {
		return 0, fmt.Errorf("triplex pump: %w", err)
	}
	return 3 * math.Pi / 4 * liner * liner * stroke * efficiency, nil
}

// Duplex returns the volume in m³ that one stroke of a double-acting duplex pump
// delivers: two liners of the given bore, swept forwards over the whole bore and
// backwards over the bore less the rod, 2 pi/4 (2 D² - d²) L times the efficiency,
// lengths in metres. The rod runs through one face of the piston only and must be
// thinner than the liner. Source: Bourgoyne et al., Applied Drilling Engineering,
// chapter 1 (from memory).
func Duplex(liner, rod, stroke, efficiency float64) (float64, error) {
	if err := check(liner, stroke, efficiency); err != nil {
		return 0, fmt.Errorf("duplex pump: %w", err)
	}
	if !(rod >= 0) || !(rod < liner) {
		return 0, fmt.Errorf("duplex pump: rod of %g m in a liner of %g m; give a rod thinner than the liner", rod, liner)
	}
	return 2 * math.Pi / 4 * (2*liner*liner - rod*rod) * stroke * efficiency, nil
}

// widest is a liner bore or stroke length in metres that no pump has; anything
// above it comes from a wrong unit.
const widest = 10

// check reports what is wrong with the measures that both kinds of pump have.
func check(liner, stroke, efficiency float64) error {
	switch {
	case !(liner > 0) || liner > widest:
		return fmt.Errorf("liner bore %g m; give one above zero and check its unit", liner)
	case !(stroke > 0) || stroke > widest:
		return fmt.Errorf("stroke length %g m; give one above zero and check its unit", stroke)
	case !(efficiency > 0) || efficiency > 1:
		return fmt.Errorf("efficiency %g; give a fraction above 0 and up to 1", efficiency)
	}
	return nil
}
