package steel

import "math"

// The sizes in metres at which the API drift allowance changes, and how far a size
// may be off and still count as that size: metric catalogues round to 0.1 mm.
const (
	inch          = 0.0254
	mediumFrom    = 9.625 * inch
	mediumTo      = 13.625 * inch
	sizeTolerance = 1e-4
)

// Drift returns the diameter in metres of the mandrel that must pass a casing of the
// given outside and inside diameters in metres: the inside diameter less 1/8 in for
// sizes below 9-5/8 in, less 5/32 in from 9-5/8 to 13-3/8 in, less 3/16 in from
// 16 in. A bit passes when its true diameter is not above it.
//
// The 13-5/8 in of the trade, between two classes, is taken with the lower one;
// other sizes between it and 16 in with the upper one, which is the careful side.
// The special (alternate) drift of some weights is larger and must be looked up and
// ordered. It reports false where the diameters leave no wall or no drift.
//
// Source: API Spec 5CT, drift requirements (from memory; agrees with published
// tables of sizes, see the tests).
func Drift(od, id float64) (float64, bool) {
	if Area(od, id) == 0 {
		return 0, false
	}
	allowance := inch / 8
	switch {
	case od > mediumTo+sizeTolerance:
		allowance = inch * 3 / 16
	case od > mediumFrom-sizeTolerance:
		allowance = inch * 5 / 32
	}
	drift := id - allowance
	return max(drift, 0), drift > 0 && !math.IsInf(drift, 0)
}
