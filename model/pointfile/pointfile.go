// Package pointfile reads lists of what was read in a leak-off or integrity test: one reading a line, the volume pumped so far
// and the gauge pressure, separated by commas, semicolons or tabs.
//
// Start with [Open]. Nothing is guessed: what two readers could understand differently is refused, with the line.
package pointfile

import (
	"errors"
	"fmt"
	"strings"

	"borewalk/model/infile"
	"borewalk/model/listfile"
	"borewalk/model/quantity"
)

// Bounds of a list: more is no list of readings. A recorder's are thinned out.
const (
	MaxSize   = 64 << 10 // bytes
	MaxPoints = 500
)

// listed is what messages call the list.
const listed = "list of readings"

// Point is a reading.
type Point struct {
	Volume, Pressure quantity.Value // pumped so far; gauge
}

// Open reads the readings in the named file, of which the volumes rise. What has no unit is in the unit shown, unless the
// heading over it names one: "volume (bbl), pressure (psi)". The error is one line: file, line, what was read and what is
// allowed.
func Open(path string, shown quantity.System) ([]Point, error) {
	src, err := infile.Read(path, listed, MaxSize)
	if err != nil {
		return nil, err
	}
	return Read(path, src, shown)
}

// Read reads the readings from the content of the file called name; see [Open].
func Read(name string, src []byte, shown quantity.System) ([]Point, error) {
	sort := listfile.Sort{Name: listed, Thing: "reading", Columns: "volume and pressure", Size: MaxSize, Things: MaxPoints, Heads: heads}
	list, err := sort.Read(name, src)
	if err != nil {
		return nil, err
	}
	r := reader{comma: list.Comma, volume: volumes(shown), pressure: pressures(shown)}
	if list.Heading != nil {
		if err := r.heading(list.Heading.Cells); err != nil {
			return nil, list.Heading.Fault(err)
		}
	}
	for k := range list.Rows {
		if err := r.take(&list.Rows[k]); err != nil {
			return nil, list.Rows[k].Fault(err)
		}
	}
	return r.points, nil
}

// heads reports whether a first line is a heading.
func heads(cells []string) bool {
	return len(cells) > 1 && listfile.UnitsOf(quantity.Volume).Heads(cells[0]) && listfile.Units(gauge).Heads(cells[1])
}

// reader collects the readings of a list.
type reader struct {
	comma            rune
	volume, pressure column
	points           []Point
	line             int // of the last of them
}

// heading takes the units out of a heading, and refuses one that has the columns the other way round.
func (r *reader) heading(cells []string) (err error) {
	if err := wide(len(cells), r.comma); err != nil {
		return err
	}
	first, second := strings.ToLower(cells[0]), strings.ToLower(cells[1])
	switch {
	case strings.Contains(first, "pressure") || strings.Contains(second, "volume"):
		return fmt.Errorf("heading %q, %q: the first column is the volume, the second the pressure", listfile.Short(cells[0]), listfile.Short(cells[1]))
	case strings.Contains(second, "abs"):
		return fmt.Errorf("heading %q: give gauge pressures", listfile.Short(cells[1]))
	}
	if r.volume.unit, err = r.volume.units.Named(cells[0], r.volume.unit); err != nil {
		return err
	}
	r.pressure.unit, err = r.pressure.units.Named(cells[1], r.pressure.unit)
	return err
}

// take reads a line.
func (r *reader) take(row *listfile.Row) (err error) {
	if err := wide(len(row.Cells), r.comma); err != nil {
		return err
	}
	var p Point
	if p.Volume, err = r.volume.read(row.Cells[0]); err != nil {
		return err
	}
	if p.Pressure, err = r.pressure.read(row.Cells[1]); err != nil {
		return err
	}
	if n := len(r.points); n > 0 && p.Volume.SI <= r.points[n-1].Volume.SI {
		return fmt.Errorf("volume %s does not rise over the %s of line %d; leave out what was read after the pump stopped",
			p.Volume.Text(), r.points[n-1].Volume.Text(), r.line)
	}
	r.points, r.line = append(r.points, p), row.Line
	return nil
}

// wide refuses lines of other than two columns.
func wide(columns int, comma rune) error {
	switch {
	case columns == 1:
		return errors.New("one column; write volume and pressure, and # before a remark")
	case columns > 2 && comma == ',':
		return fmt.Errorf("%d columns; write volume and pressure, and separate them by semicolons if the comma is the decimal sign", columns)
	case columns > 2:
		return fmt.Errorf("%d columns; write volume and pressure", columns)
	}
	return nil
}
