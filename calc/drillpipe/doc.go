// Package drillpipe is what the body of drill pipe withstands in tension and torsion, new and worn, and how stiff one
// part of a string is beside the next.
//
// Worn pipe is reckoned as API RP 7G does: the wall is worn evenly from outside and the bore stays ([Worn]). Tension is
// the wall's area times yield ([Tension]), torsion 0.577 yield at the outside ([Torsion]), and a pull takes from the
// torsion that is left ([TorsionUnder], [TensionUnder]).
//
// Diameters are metres, stresses Pa, forces N, torques N·m. Bodies only: a tool joint may be the weaker, in torsion it
// mostly is. Not treated are pressure, bending and fatigue, slips, heat and notches.
package drillpipe
