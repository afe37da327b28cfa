package drillpipe

// Shares of the new wall that remain in a class of used pipe, worn evenly outside. Source: API RP 7G, classification of
// used drill pipe (from memory: 80 % for premium class, 70 % for class 2).
const (
	New     = 1.0
	Premium = 0.8
	Class2  = 0.7
)

// Worn returns the outside diameter in m of a body whose wall is worn evenly from outside to a share of the new one; the
// bore stays. It reports false where the diameters leave no wall or the share is not above 0 and at most 1.
func Worn(od, id, share float64) (float64, bool) {
	if !walled(od, id) || !(share > 0 && share <= 1) {
		return 0, false
	}
	return id + share*(od-id), true
}
