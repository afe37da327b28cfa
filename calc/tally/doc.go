// Package tally is the plain arithmetic of running lists: what stands where in a
// casing string, which joints and pups make it close, how far its landing string
// sticks up, and where a liner's hanger may stand in its host.
//
// Start with [Run], which hangs a list of items from its landing shoulder and
// gives the depth of everything in it. [Close] chooses the joints and the pups so
// that the shoe comes to stand where it is wanted; its answer is again a list for
// [Run]. [Land] does the same for the string that carries the casing to the
// wellhead, with the tide. [Place] says where the top of a liner may stand so that
// slips and packer keep off the couplings of the string around them.
//
// Lists run bottom up, the order in which pipe goes into the hole. Lengths and
// depths are metres, volumes m³, depths measured along the hole from the rotary
// table at mean sea level. The length of a piece is its made-up length, what it
// adds to the string; see [MadeUp] for pipe that was strapped with its threads.
// Stretch, temperature and the tilt of the rig are not treated: a list is steel as
// it lies on deck.
//
// Sums that decide a choice are made in whole nanometres, so that lengths written
// in millimetres, in hundredths of a foot or in parts of an inch add up exactly,
// and ties are ties.
package tally
