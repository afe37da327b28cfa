// Package downhole gives the density of a mud where it is: under pressure, and warm or
// cold.
//
// Start with [Mud]. A mud is water, oil and solids. Its water ([water.Brine]) and its
// oil ([Oil]) change volume, each by its own law; solids do not, nothing dissolves in
// anything and nothing is lost, so that the mass stays and the density follows. This is
// the compositional model of Hoberock, Thomas and Nickens, Here's how compressibility
// and temperature affect bottom-hole mud pressure, Oil and Gas Journal, March 1982, and
// of Sorelle, Jardiolin, Buckley and Barrios, SPE 11118 (1982), both from memory.
//
// What it leaves out: gas, cuttings, sag of weighting material, and what the base fluid
// at hand has of its own. A laboratory's table of the mud itself is better.
//
// Temperatures are in K, pressures gauge in Pa, densities in kg/m³. The column of such a
// mud is summed in calc/column.
package downhole
