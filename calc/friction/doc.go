// Package friction gives the pressure that a fluid loses by rubbing along a pipe or an annulus.
//
// [Model] is the one door through which the rest of the program gets friction: it asks for pascals per metre of hole, given
// a fluid, a flow and the diameters. A [Fluid] has a density and the law of Herschel and Bulkley. Behind the door stand the
// [Correlations], each of which says its name and source, and the regime and Reynolds number that it finds:
//
//   - [BinghamSlot], two parameters, laminar in pipe and slot, Blasius when turbulent;
//   - [RP13D], the generalised Herschel-Bulkley fluid of API RP 13D;
//   - [DodgeMetzner], exact when laminar.
//
// Everything is SI: densities kg/m³, viscosity Pa·s, stresses Pa, flow m³/s, diameters metres.
//
// Out of scope, and named so that nobody looks for it: gel strength and the pressure to break circulation (a fluid at rest
// has no friction here), tool joints and upsets, rotation, eccentricity (every pipe hangs in the middle, which gives more
// friction than one that lies on the wall), cuttings, roughness, and the effect of pressure and temperature on the fluid.
package friction
