// Package pump is the arithmetic of reciprocating mud pumps: what one stroke
// delivers, and what follows from it for volumes, flows and times.
//
// A stroke, as counters on a rig count it, is one full turn of the crank: each of
// the three plungers of a [Triplex] has delivered once, each of the two pistons of
// a [Duplex] twice, once on either face. All lengths are metres, volumes m³, flows
// m³/s, times seconds, and stroke rates strokes per second and pump.
//
// Efficiency is the volumetric efficiency as a fraction: what comes out of the
// pump over what the pistons sweep, usually 0.90 to 0.98 (common practice), best
// taken from a measured displacement. It is not the mechanical efficiency. Limits
// of pressure and power are not treated here.
package pump
