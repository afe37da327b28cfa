// Package bore is the geometry of a hole: diameters along measured depth, what
// hangs inside, and the volumes between.
//
// Everything is piecewise constant. A [Profile] is the bore seen from outside
// in: riser, inside of casing, open hole, one [Span] each. A [Body] is a length
// of what hangs in it: drill pipe, collars, a casing string. [Intervals] cuts
// both at every change of either, and each [Interval] that comes out is a plain
// annulus (or an empty bore, where its inner diameter is zero). Volumes are sums
// over intervals; [DepthAbove] and [DepthBelow] ask the opposite question: how
// far does a volume reach.
//
// Lengths and depths are metres along the hole, diameters metres, volumes cubic
// metres, capacities cubic metres per metre. A diameter is the effective one:
// tool joints, upsets, washouts and rugosity are the caller's to average in.
// Pressure and temperature do not change a volume here.
//
// Evaluations ask for volumes very often, so each function that makes a slice
// has a sister that appends to one given, whose memory can be used again.
//
// Input is checked by [Profile.Check], [CheckBodies] and [Fit], which name the
// depth at fault. The other functions expect what these accept; on anything else
// they stop early or give zero, and never a negative volume.
package bore
