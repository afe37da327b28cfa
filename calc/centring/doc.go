// Package centring gives how far centralisers hold a casing off the wall of its hole.
//
// [Side] is the load per length that pushes the pipe against the wall, [Span.Sag] how far it sags between two
// centralisers, [Bow] and [Rigid] how far a centraliser itself lets it down, and [Standoff] the share of the clearance
// that is left: 1 in the middle of the hole, 0 on its wall.
//
// All is SI: m, N, N/m, rad. Sources: API RP 10D-2 / ISO 10427-2, centralizer placement (formulas from memory; what is
// beam theory is derived anew in the tests). Left out: torque and drag of the centralisers, bending moments that carry
// over from span to span, an out-of-round hole, and the swelling of pipe by pressure.
package centring
