// Package leakoff reads a leak-off test or an integrity test: volumes pumped into a closed well against the pressure at the
// pump. [Read] finds the straight line on which the closed system builds up pressure, and the last reading on that line.
//
// Leak-off is where the readings depart from the straight line (common practice). It is rounded down: it is a reading, not a
// place between two, and where several could be the last on the line it is the first of them.
//
// # The rule
//
// Each reading may be off by a tolerance: what the gauge can be read to, or [Share] of the highest pressure so far if that is
// more.
//
//   - Readings are on one line as long as there is a straight line that passes each of them within its tolerance.
//   - The line begins at the first reading from which that goes on. Where two readings in a row lie above every such line, the
//     system has become stiffer: what came before filled lines and pressed out air, and the line begins later.
//   - Where two in a row lie below every such line, they have departed. A reading that does so alone is left out as misread; if it
//     is the last of the test, only another can tell.
//   - From the departure the line is walked back: off comes a reading that is further below the least-squares line of those
//     before it than any of these strays from it. So a bend that begins within the tolerances is not taken for line.
//   - What rises by less than five tolerances is no build-up. Neither is a line that steeper readings lead into, for then the
//     build-up was over before it; but the first reading of all does not count, since the pump may have stood still for it.
//
// So as long as readings are within their tolerances of a straight line they are never taken for a departure, and a departure
// that was found stays where it is, whatever is read after it.
//
// Volumes are m³, gauge pressures Pa. Left out: the column of fluid down to the shoe; friction, which is taken as steady; the
// shut-in after the pump has stopped, and closure. Rock that takes fluid from the first stroke bends the line from its
// beginning; then the line ends early or there is none.
package leakoff
