package pointfile

import (
	"fmt"
	"strings"

	"borewalk/model/listfile"
	"borewalk/model/quantity"
)

// column is what stands in a column: a kind, the unit where none is written, the units that its heading can name, and a range
// beyond which nothing is a test of a well.
type column struct {
	kind        quantity.Kind
	unit        quantity.Unit
	units       listfile.Units
	least, most quantity.Value
}

func volumes(shown quantity.System) column {
	return column{quantity.Volume, shown.Unit(quantity.Volume), listfile.UnitsOf(quantity.Volume),
		quantity.Of(0, quantity.CubicMetre), quantity.Of(200, quantity.CubicMetre)}
}

func pressures(shown quantity.System) column {
	return column{quantity.Pressure, shown.Unit(quantity.Pressure), gauge, quantity.Of(0, quantity.Bar), quantity.Of(1500, quantity.Bar)}
}

// read reads a cell.
func (c *column) read(cell string) (quantity.Value, error) {
	if strings.TrimSpace(cell) == "" {
		return quantity.Value{}, fmt.Errorf("the %s is blank; write volume and pressure", c.kind)
	}
	v, err := quantity.Parse(cell, c.kind, c.unit)
	if err == nil && (v.SI < c.least.SI || v.SI > c.most.SI) {
		err = fmt.Errorf("%s is outside the range", v.Text())
	}
	if err != nil {
		return quantity.Value{}, fmt.Errorf("%s %q: %w; allowed is %s to %s", c.kind, listfile.Short(cell), err, c.least.Text(), c.most.Text())
	}
	return v, nil
}

// gauge reads the unit of a gauge pressure: "psi", and "psig" as sheets have it. "psia" counts from a vacuum.
func gauge(text string) (quantity.Unit, error) {
	unit, err := quantity.ParseUnit(text, quantity.Pressure)
	if err == nil || len(text) < 2 {
		return unit, err
	}
	stem, last := text[:len(text)-1], text[len(text)-1:]
	unit, fault := quantity.ParseUnit(stem, quantity.Pressure)
	switch {
	case fault == nil && strings.EqualFold(last, "g"):
		return unit, nil
	case fault == nil && strings.EqualFold(last, "a"):
		return 0, fmt.Errorf("%w: %s counts from a vacuum; give gauge pressures", quantity.ErrKind, text)
	}
	return 0, err
}
