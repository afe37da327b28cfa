package pointfile

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"borewalk/model/listfile"
	"borewalk/model/quantity"
)

// role is what a heading says of its column.
type role uint8

const (
	other role = iota
	volumeRole
	pressureRole
	timeRole
)

// signs are the words and the units by which a heading tells its column.
var signs = [...]struct {
	role  role
	words []string
	units listfile.Units
}{
	{volumeRole, []string{"vol", "pumped"}, listfile.UnitsOf(quantity.Volume)},
	{pressureRole, []string{"press", "gauge"}, gauge},
	{timeRole, []string{"time", "clock", "elapsed"}, listfile.UnitsOf(quantity.Time)},
}

// heads reports whether a first line is a heading: it holds no digits but those of units.
func heads(cells []string) bool {
	return len(cells) > 1 && !slices.ContainsFunc(cells, func(cell string) bool {
		for _, s := range signs {
			if s.units.Heads(cell) {
				return false
			}
		}
		return true
	})
}

// roleOf returns what a heading says of its column: by its words, else by its unit.
func roleOf(heading string) role {
	if r, ok := only(func(k int) bool {
		return slices.ContainsFunc(signs[k].words, func(word string) bool { return strings.Contains(strings.ToLower(heading), word) })
	}); ok {
		return r
	}
	r, _ := only(func(k int) bool {
		unit, err := signs[k].units.Named(heading, 0)
		return err == nil && unit != 0
	})
	return r
}

// only returns the role of the one sign that is there, and false when there is none or there are several.
func only(there func(k int) bool) (found role, ok bool) {
	for k := range signs {
		if there(k) {
			if ok {
				return other, false
			}
			found, ok = signs[k].role, true
		}
	}
	return found, ok
}

// heading finds the columns of volume and pressure by their headings, and takes the units out of these. Two columns that neither
// word nor unit tells are volume and pressure.
func (r *reader) heading(cells []string) (err error) {
	roles := make([]role, len(cells))
	for k, cell := range cells {
		roles[k] = roleOf(cell)
	}
	if len(cells) == 2 && !slices.Contains(roles, timeRole) && roles[0] != pressureRole && roles[1] != volumeRole {
		roles = []role{volumeRole, pressureRole}
	}
	if r.volumeAt, err = place(cells, roles, volumeRole, "volume"); err != nil {
		return err
	}
	if r.pressureAt, err = place(cells, roles, pressureRole, "pressure"); err != nil {
		return err
	}
	r.columns = len(cells)
	if strings.Contains(strings.ToLower(cells[r.pressureAt]), "abs") {
		return fmt.Errorf("heading %q: give gauge pressures", listfile.Short(cells[r.pressureAt]))
	}
	if r.volume.unit, err = r.volume.units.Named(cells[r.volumeAt], r.volume.unit); err != nil {
		return err
	}
	r.pressure.unit, err = r.pressure.units.Named(cells[r.pressureAt], r.pressure.unit)
	return err
}

// place returns which column has a role, and refuses none and several.
func place(cells []string, roles []role, wanted role, name string) (int, error) {
	at := slices.Index(roles, wanted)
	if at < 0 {
		return 0, fmt.Errorf("no heading says which column is the %s; head one %q", name, name)
	}
	if next := slices.Index(roles[at+1:], wanted); next >= 0 {
		return 0, fmt.Errorf("headings %q and %q: both say %s; leave out the column that is not the test's",
			listfile.Short(cells[at]), listfile.Short(cells[at+1+next]), name)
	}
	return at, nil
}

// wide refuses lines with other columns than there are headings, or two where there is none.
func (r *reader) wide(columns int, headed bool) error {
	semicolons := ""
	if r.comma == ',' {
		semicolons = "; separate them by semicolons if the comma is decimal"
	}
	switch {
	case columns == 1:
		return errors.New("one column; write volume and pressure, and # before a remark")
	case columns > r.columns && headed:
		return fmt.Errorf("%d columns below %d headings%s", columns, r.columns, semicolons)
	case columns > r.columns:
		return fmt.Errorf("%d columns without headings; head them, such as time, volume, pressure%s", columns, semicolons)
	}
	return nil
}
