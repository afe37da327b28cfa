// Package swab gives the pressure that a string makes by moving along its hole: it presses on the hole on its way down
// (surge) and draws at it on its way up (swab), because the fluid that it displaces must pass it.
//
// A [String] is laid out with [String.Add], length by length from the top down. [String.Rise] is the pressure on top of the
// fluid at rest, below zero for swab; [String.Limit] the speed at which that takes all the room that is left.
//
// The string moves steadily, in the middle of its hole, and does not turn. The fluid does not give: inertia, the stretch
// of string and hole and the fluid's own spring, which soften or sharpen a peak, are left out, and so is the gel that must
// be broken first ([Gel]). Bit, opener and stabilisers, past which a balled assembly swabs most, count as what is laid out
// for them.
//
// Everything is SI: metres along hole, m/s, m³/s, Pa. Speeds are above zero on the way down, flows above zero up the annulus.
//
// Sources: J. A. Burkhardt, Wellbore pressure surges produced by pipe movement, Journal of Petroleum Technology, 1961;
// Bourgoyne, Chenevert, Millheim and Young, Applied Drilling Engineering (1986), chapter 4, surge pressures due to vertical
// pipe movement. Both from memory.
package swab
