// Package nozzle is the hydraulics of a bit: what its nozzles take of the pressure, and what they make of it.
//
// Start with [Read], which makes a [Set] of nozzles out of "3x16 2x18", and [Drop]. [Optimum] splits a pressure between the bit
// and everything else, and [Neighbours] finds nozzles that can be bought for an area that was wanted.
//
// Everything is SI: areas m², flow m³/s, density kg/m³, pressure Pa, velocity m/s. The trade's constants (10858, 12031, 1714,
// 1930) are conversions of units and not used.
//
// Out of scope: wear and plugging of nozzles, a centre jet that flows otherwise, and what the jet does to the rock.
package nozzle
