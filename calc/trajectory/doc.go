// Package trajectory turns measured depth along a hole into position: true
// vertical depth, north and east, by the minimum-curvature method.
//
// Minimum curvature takes the hole between two survey stations to be a
// circular arc that touches the measured direction at both ends. A path here
// keeps to that arc everywhere, not at the stations alone: a depth asked for
// between two stations lies on the arc, so cutting an interval in two changes
// nothing. A straight line between stations would be wrong by metres in the
// middle of a build section, and with it every pressure that rests on vertical
// depth.
//
// Start with [Vertical], [BuildAndHold] or [New]; then ask [Path.TVD] for the
// depth alone or [Path.At] for everything, and [Path.MDAtTVD] for the way back.
//
// All lengths are metres, all angles radians. Depths count downwards from the
// rotary table, which is the origin of north and east as well. Inclination is
// counted from straight down, azimuth clockwise from north; which north (grid,
// true, magnetic) is the caller's business. Survey uncertainty, tool
// corrections and collision checks are not treated.
//
// Sources: S. J. Sawaryn and J. L. Thorogood, A compendium of directional
// calculations based on the minimum curvature method, SPE 84246 (2005), for the
// method and the interpolation (from memory); the worked examples in the tests
// name theirs.
package trajectory
