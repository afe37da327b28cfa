// Package spaceout is where the tool joints of drill pipe stand against the rams of a subsea stack.
//
// The rig goes up and down with tide and heave and carries the string; the stack stays. Seen from the rotary the rams
// therefore move: on high water they are deeper ([Sweep]). [Joints] lists the tool joints of a string that hangs from the
// rotary, [Ram.Nearest] finds the one that is nearest to a ram wherever tide and heave bring it, and [Lift] how far the
// string must be picked up so that no ram can close on a tool joint. A string that has been hung off on a ram stands still
// with the stack; [Hang] spaces it out above.
//
// Depths are metres along the string below the rotary, lengths metres. A tool joint lies half above and half below the
// place where two joints of pipe meet. Stretch, bending and the height of a ram block are not treated: keep a distance for
// them.
package spaceout
