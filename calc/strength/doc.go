// Package strength is what casing withstands: collapse, internal yield, tension,
// compression and the combined stress in the wall, what takes away from them, and
// the factors that a load leaves.
//
// Begin with a [Pipe] for single ratings ([Collapse], [InternalYield], [BodyYield]),
// or with a [Casing], which adds wear, temperature and connection: its
// [Casing.Ratings] under one [Load] lead to [Ratings.Factors], and those to the
// factor that governs ([DesignFactors.Governing]). Running loads stand apart:
// bending, shock, pull, test pressure, stretch.
//
// The ratings are the historical ones of API Bulletin 5C3, which API TR 5C3 and
// ISO 10400 keep beside newer models. They are rated on nominal size and least
// yield, without a probability. The ultimate-strength collapse model, ductile
// rupture, joint strength by thread form, leak, fatigue, buckling, corrosion and
// sour service are not treated; a maker's own rating of a high-collapse grade or of
// a connection is to be had from the maker.
//
// All is SI: m, Pa, N, N m, K, and rad/m for the curvature of the hole. Tension is
// above zero, compression below. Pressures inside and outside must be counted from
// the same zero. Every function holds for one point of a string; how loads run along
// it is for the caller.
package strength
