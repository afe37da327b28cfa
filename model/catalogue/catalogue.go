// Package catalogue holds the pipe and bit tables of the trade: casing, drill
// pipe, heavy-weight pipe, drill collars, bits, risers and the lines beside
// them. The tables are embedded; nothing is read from disk.
//
// Start with [FindCasing] and [FindDrillPipe], which turn what a person writes
// on a plan ("9 5/8 in, 53.5 lb/ft, P-110") into dimensions and ratings, or
// with the lists that an editor offers: [CasingSizes], [CasingWeights],
// [CasingGrades], [Bits].
//
// Everything is SI: m, kg/m, Pa, N, N·m, m³/m. A zero means that the figure is
// not known, never that it is nought; whoever needs it must ask the maker's
// sheet. Sizes are exact multiples of the inch, so a size typed in inches
// compares equal.
//
// Each row carries where its figures come from and whether they were read
// there ("seen") or recalled ("memory"). Most casing ratings were recalled, and
// are to be checked against a licensed copy of API TR 5C3 before they are
// relied on.
//
// Out of scope: joint strength, makers' own grades, and any formula. What
// follows from dimensions is worked out elsewhere.
package catalogue

import (
	"embed"
	"math"
	"sync"
)

//go:embed data/*.csv
var data embed.FS

// The exact units in which the tables are printed.
const (
	inch       = 0.0254     // m
	foot       = 12 * inch  // m
	pound      = 0.45359237 // kg
	poundForce = pound * 9.80665
	psi        = poundForce / (inch * inch)
	kip        = 1000 * poundForce
	footPound  = foot * poundForce
	perFoot    = pound / foot                    // lb/ft in kg/m
	barrel     = 42 * 231 * (inch * inch * inch) // m³
	barrelFoot = barrel / foot                   // bbl/ft in m³/m
)

// The words in a Seen field.
const (
	Seen   = "seen"   // the figures were read in the named source
	Memory = "memory" // the figures were recalled from the named source
)

const (
	// A size written in millimetres with one decimal, as metric tables do, is
	// off by 0.05 mm at most; the sizes of one table are 1.5 mm or more apart.
	sizeTolerance = 0.06e-3 // m

	// A weight converted between lb/ft and kg/m and rounded to four digits
	// stays well within this. The closest weights of one size differ by 2 %.
	weightTolerance = 0.006 // of the table's weight
)

// sameSize reports whether a written diameter names the one in the table.
func sameSize(written, table float64) bool {
	return math.Abs(written-table) <= sizeTolerance
}

// sameWeight reports whether a written weight names the one in the table.
func sameWeight(written, table float64) bool {
	return math.Abs(written-table) <= weightTolerance*table
}

// loadOnce returns a function that reads one embedded file when it is first
// called. The rows are shared: callers hand out copies. A file that cannot be
// read is a fault of the build, and panics.
func loadOnce[Row any](file string, parse func(name, text string) ([]Row, error)) func() []Row {
	return sync.OnceValue(func() []Row {
		text, err := data.ReadFile("data/" + file)
		if err != nil {
			panic("catalogue: internal error: " + err.Error())
		}
		rows, err := parse(file, string(text))
		if err != nil {
			panic("catalogue: internal error: " + err.Error())
		}
		return rows
	})
}
