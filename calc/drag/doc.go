// Package drag is the friction of a string on the wall of its hole: hook loads while it is picked up, slacked off and
// turned, the torque that turns it, the force that presses it to the wall, and the compression at which it buckles.
//
// The string is soft: it has weight and tension but no stiffness, lies on the wall everywhere and follows the hole. Per
// length the wall carries what the tension in a bend and the weight across the hole leave over, the friction is that
// force times a friction factor, and its direction is against the movement. Start with [New], then ask [String.Top] for
// what the rig feels, [String.Loads] for what each length bears, and [Pipe.Limit] for buckling.
//
// Tension is the effective tension: the true force in the steel, plus pressure outside times the outside area, less
// pressure inside times the bore. It goes with the buoyed weight, is zero at a free lower end whatever the pressure there,
// does not step where diameters change while the fluid inside and outside is the same, and decides whether pipe buckles.
// At the rotary, where there is no pressure, it is the true force.
//
// All is SI: m, N, N/m, N m, rad. Inclination is counted from straight down; elements go from the top down. Left out:
// the stiffness of collars in tight bends, what flow and pressure inside do, acceleration, the extra wall force of pipe
// that has buckled, and the little kinks of a drilled hole that a planned path does not have.
//
// Sources: C. A. Johancsik, D. B. Friesen and R. Dawson, Torque and drag in directional wells, J. Pet. Tech., June 1984
// (SPE 11380); M. C. Sheppard, C. Wick and T. Burgess, Designing well paths to reduce drag and torque, SPE Drilling
// Engineering, December 1987 (SPE 15463), for three dimensions and for effective tension; both from memory. What the
// package computes is derived from the balance of forces and checked in the tests against closed forms.
package drag
