// Package seats finds where casing may be set, from pore pressure, fracture pressure and the stability of the hole against true
// vertical depth. What it returns is a suggestion with its reasons. Formations to be cased off, sizes that must pass each
// other, wear, testing and what the rig holds are not looked at, and a person decides.
//
// A hole between a shoe and its bottom can be drilled where one mud does for all of it: the least that pore pressure and
// stability ask for anywhere in it is no more than what fracture pressure, a kick and differential sticking leave anywhere in
// it ([Between]). [BottomUp] begins at the bottom of the well and sets each shoe as shallow as its hole allows, which needs
// the least casing. [TopDown] begins at a shoe and drills each hole as deep as it allows. Both find the fewest holes with mud,
// if no further condition is asked for; a well of as few has each of its seats between those of the two.
//
// The mud is taken to stand up to the rotary and to be of one density, so that its equivalent density is the same at all
// depths. The uppermost hole may be open to the sea instead, full of a fluid that is given.
//
// Depths are true vertical depths in metres below the rotary, densities equivalent densities in kg/m³ counted from the rotary,
// pressures Pa. Curves are straight between the depths that are named, in equivalent density. Circulation, surge and swab are
// left to the margins, gas in a kick to a condition of the caller's.
//
// Sources: the ways up and down the window, the kick at the shoe and the limit by differential sticking are common practice;
// A. Ghalambor and B. Guo, drilling engineering lecture slides (2005), for the last two.
package seats
