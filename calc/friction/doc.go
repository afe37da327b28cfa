// Package friction gives the pressure that a fluid loses by rubbing along a pipe
// or an annulus.
//
// [Model] is the one door through which the rest of the program gets friction: it
// asks for pascals per metre of hole, given a fluid, a flow and the diameters.
// [Bingham] is the model that stands behind it: two parameters, laminar in pipe
// and slot, smooth turbulent, and a passage between the two. A better model can
// take its place without anything above noticing.
//
// Everything is SI: densities kg/m³, plastic viscosity Pa·s, yield point Pa, flow
// m³/s, diameters metres.
//
// Out of scope, and named so that nobody looks for it: gel strength and the
// pressure to break circulation (a fluid at rest has no friction here), tool
// joints and upsets, rotation, eccentricity (every pipe hangs in the middle, which
// gives more friction than one that lies on the wall), cuttings, roughness, and
// the effect of pressure and temperature on the fluid.
package friction
