package column

import (
	"errors"
	"fmt"
	"sort"
)

// A Row is one line of a table against depth.
type Row struct {
	TVD   float64 // TVD is the true vertical depth in metres.
	Value float64 // Value is what the table gives there: an equivalent density in kg/m³, a temperature in K.
}

// A Curve is a table against true vertical depth, read between its rows.
//
// Between two rows the value itself is taken to be linear in depth. For pore and
// fracture pressure given as equivalent density this is the trade's habit: the
// prognosis is drawn with straight lines in equivalent density, not in pressure
// (common practice). The two differ by up to some 0.01 sg in the middle of a
// widely spaced pair of rows. Above the first and below the last row the curve
// gives nothing: a prognosis is not to be stretched without a person knowing.
//
// The zero Curve has no rows and gives nothing anywhere.
type Curve struct{ rows []Row }

// NewCurve returns the curve through the given rows, at least one, whose depths
// must increase. The rows are copied. An error names the row, counted from 1.
func NewCurve(rows []Row) (Curve, error) {
	if len(rows) == 0 {
		return Curve{}, errors.New("curve has no rows; give at least one")
	}
	for i, row := range rows {
		if !finite(row.TVD) || !finite(row.Value) {
			return Curve{}, fmt.Errorf("curve row %d: depth or value is missing or not a number; give both", i+1)
		}
		if i > 0 && row.TVD <= rows[i-1].TVD {
			return Curve{}, fmt.Errorf("curve row %d: depth %.2f m is not below row %d at %.2f m; sort the rows, and part a step by a small depth",
				i+1, row.TVD, i, rows[i-1].TVD)
		}
	}
	return Curve{append([]Row(nil), rows...)}, nil
}

// At returns the value at a true vertical depth in metres, linear between rows. It
// reports false above the first row and below the last.
func (c Curve) At(tvd float64) (float64, bool) {
	a, b, ok := c.Between(tvd)
	if !ok || a.TVD == b.TVD {
		return b.Value, ok
	}
	share := (tvd - a.TVD) / (b.TVD - a.TVD)
	return (1-share)*a.Value + share*b.Value, true
}

// Between returns the rows above and below a true vertical depth in metres, by
// which a value there can be checked by hand, twice the same where the depth is a
// row's. It reports false above the first row and below the last.
func (c Curve) Between(tvd float64) (above, below Row, ok bool) {
	n := len(c.rows)
	if n == 0 || !(tvd >= c.rows[0].TVD) || !(tvd <= c.rows[n-1].TVD) {
		return Row{}, Row{}, false
	}
	i := sort.Search(n, func(i int) bool { return c.rows[i].TVD >= tvd })
	if c.rows[i].TVD == tvd {
		return c.rows[i], c.rows[i], true
	}
	return c.rows[i-1], c.rows[i], true
}

// Ends returns the true vertical depths in metres of the first and the last row,
// and reports false if there are none.
func (c Curve) Ends() (top, bottom float64, ok bool) {
	if len(c.rows) == 0 {
		return 0, 0, false
	}
	return c.rows[0].TVD, c.rows[len(c.rows)-1].TVD, true
}

// AppendBreaks appends to dst the true vertical depths of all rows in metres.
func (c Curve) AppendBreaks(dst []float64) []float64 {
	for _, row := range c.rows {
		dst = append(dst, row.TVD)
	}
	return dst
}
