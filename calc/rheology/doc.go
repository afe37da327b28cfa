// Package rheology makes a law of flow out of the readings of a rotational viscometer: Bingham, power law, or Herschel and
// Bulkley. Begin with [Bingham], [PowerLaw] and [HerschelBulkley], which fit one to readings at any speeds; [Field] gives
// plastic viscosity and yield point as the trade writes them.
//
// The viscometer is the usual one with rotor R1, bob B1 and spring F1. Its readings are dial degrees at revolutions a
// minute, the trade's own measures; everything else is SI.
//
// Out of scope: slip at the wall and ends of the bob, the correction of the shear rate for fluids that are not Newtonian,
// gels, temperature and pressure.
package rheology
