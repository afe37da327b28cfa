// Package thermal gives the temperature of a mud that is pumped round a well.
//
// Start with [Circulation]: the well as a row of cells from the rotary down, each with
// what passes heat between string and annulus and between annulus and what is outside,
// the sea or the rock. [Film], [Shell] and [Rock] make those. [Empirical] is a second
// opinion from measurements in many wells.
//
// Temperatures are in K, lengths along hole in metres. The package knows no well and no
// plan.
package thermal
