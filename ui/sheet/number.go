package sheet

import (
	"math"
	"strconv"
	"strings"

	"borewalk/model/quantity"
)

// sizeDecimals is how many decimals a size needs that the trade writes as a fraction: a sixteenth is 0.0625.
const sizeDecimals = 4

// plainNumber returns an SI magnitude as a number that any program reads, to the digits of the trade, with a decimal
// point and without fractions; empty where there is no number.
func plainNumber(si float64, kind quantity.Kind, unit quantity.Unit) string {
	text := quantity.Format(si, kind, unit)
	switch {
	case text == "-":
		return ""
	case strings.Contains(text, "/"):
		scale := math.Pow10(sizeDecimals)
		return strconv.FormatFloat(math.Round(unit.FromSI(si)*scale)/scale, 'f', -1, 64)
	}
	return text
}

// plainChange returns an SI difference in the same way, zero as "0".
func plainChange(si float64, kind quantity.Kind, unit quantity.Unit) string {
	switch text := quantity.FormatChange(si, kind, unit); text {
	case "":
		return "0"
	case "-":
		return ""
	default:
		return strings.TrimPrefix(text, "+")
	}
}

// measure fills two columns with a magnitude, in the unit shown and in SI, and the unit.
func (p *printer) measure(r *record, value, si column, magnitude float64, kind quantity.Kind) {
	if !finite(magnitude) {
		return
	}
	unit := p.System.Unit(kind)
	r[value], r[si], r[colUnit] = plainNumber(magnitude, kind, unit), exact(magnitude), unit.ASCII()
}

// exact returns the shortest decimal that reads as the same number.
func exact(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
