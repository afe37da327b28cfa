// Package cleaning tells how well a flow of mud brings cuttings up a hole: how fast they slip through the fluid, what of its
// velocity is left to carry them, how many of them stand in the annulus, and the least velocity that a slanted hole asks for.
//
// The published methods differ by a factor of two and more, since each was fitted to one set of trials. So every one has a
// name here, and whoever shows its answer names it.
//
// Everything is SI: densities kg/m³, viscosities Pa·s, lengths m, velocities m/s, angles rad, rotary speed rad/s.
//
// Out of scope: beds that form and slide in time, the shape of single cuttings beyond a sphericity, eccentric pipe, and what
// trips, reaming and pills do for a hole.
package cleaning
