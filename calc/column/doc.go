// Package column is the statics of fluids in a well: pressures under stacked
// columns, equivalent densities, and the least distance between two of them.
//
// A [Stack] is fluids one on top of another, from a surface with a known pressure
// downwards; or, with [RestingOn], upwards from a known pressure at the bottom, as
// a kick is. [Riserless] puts the sea on top. A [Curve] is a prognosis: pore or
// fracture pressure as equivalent density against depth. [LeastGap] finds where
// and how close one of these comes to another.
//
// Depths are true vertical depths in metres below the rotary. Pressures are gauge
// pressures in pascals: the air outside counts as zero. Densities are kg/m³ and do
// not change with pressure or temperature within a layer; a layer whose density
// does is to be cut into several, or summed with [Settle]. Friction is not treated
// here.
//
// Equivalent density is always counted from the rotary, as the trade does with a
// riser in place; see [EMW].
package column
