// Package pointfile reads lists of what was read in a leak-off or integrity test: one reading a line, the volume pumped so far
// and the gauge pressure, separated by commas, semicolons or tabs. Headings tell the two from further columns, such as the time,
// which are passed over. What was read after the pump had stopped is counted and left out.
//
// Start with [Open]. Nothing is guessed: what two readers could understand differently is refused, with the line.
package pointfile

import (
	"fmt"

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

// Test is what was read in a test.
type Test struct {
	Points  []Point // while the pump ran; the volumes rise
	LeftOut int     // readings after it had stopped: the volume does not rise any more, and the pressure falls
}

// Open reads the readings in the named file. What has no unit is in the unit shown, unless the heading over it names one:
// "volume (bbl), pressure (psi)". The error is one line: file, line, what was read and what is allowed.
func Open(path string, shown quantity.System) (Test, error) {
	src, err := infile.Read(path, listed, MaxSize)
	if err != nil {
		return Test{}, err
	}
	return Read(path, src, shown)
}

// Read reads the readings from the content of the file called name; see [Open].
func Read(name string, src []byte, shown quantity.System) (Test, error) {
	sort := listfile.Sort{Name: listed, Thing: "reading", Columns: "volume and pressure", Size: MaxSize, Things: MaxPoints, Heads: heads}
	list, err := sort.Read(name, src)
	if err != nil {
		return Test{}, err
	}
	r := reader{comma: list.Comma, columns: 2, pressureAt: 1, volume: volumes(shown), pressure: pressures(shown)}
	if list.Heading != nil {
		if err := r.heading(list.Heading.Cells); err != nil {
			return Test{}, list.Heading.Fault(err)
		}
	}
	for k := range list.Rows {
		if err := r.take(&list.Rows[k], list.Heading != nil); err != nil {
			return Test{}, list.Rows[k].Fault(err)
		}
	}
	if r.after.count > 0 && r.after.least >= r.last().Pressure.SI {
		return Test{}, r.after.row.Fault(r.stands(r.after.volume))
	}
	return Test{r.points, r.after.count}, nil
}

// reader collects the readings of a list.
type reader struct {
	comma                         rune
	columns, volumeAt, pressureAt int
	volume, pressure              column
	points                        []Point
	line                          int // of the last of them
	after                         stopped
}

// stopped is what was read after the pump had stopped.
type stopped struct {
	count  int
	row    *listfile.Row  // the first of it
	volume quantity.Value // there
	least  float64        // pressure, Pa
}

// take reads a line.
func (r *reader) take(row *listfile.Row, headed bool) (err error) {
	if err := r.wide(len(row.Cells), headed); err != nil {
		return err
	}
	var p Point
	if p.Volume, err = r.volume.read(cell(row, r.volumeAt)); err != nil {
		return err
	}
	if p.Pressure, err = r.pressure.read(cell(row, r.pressureAt)); err != nil {
		return err
	}
	switch {
	case len(r.points) > 0 && p.Volume.SI <= r.last().Volume.SI:
		return r.leaveOut(row, p)
	case r.after.count > 0:
		return fmt.Errorf("volume %s rises again after the pump had stopped in line %d; give one run of pumping", p.Volume.Text(), r.after.row.Line)
	}
	r.points, r.line = append(r.points, p), row.Line
	return nil
}

// cell returns a line's cell, which is blank where the line is shorter.
func cell(row *listfile.Row, at int) string {
	if at < len(row.Cells) {
		return row.Cells[at]
	}
	return ""
}

// last returns the last reading while the pump ran.
func (r *reader) last() Point { return r.points[len(r.points)-1] }

// leaveOut takes a reading whose volume does not rise for one after the pump had stopped, unless its pressure is above the last that
// was pumped to.
func (r *reader) leaveOut(row *listfile.Row, p Point) error {
	if p.Pressure.SI > r.last().Pressure.SI {
		return r.stands(p.Volume)
	}
	if r.after.count == 0 {
		r.after = stopped{row: row, volume: p.Volume, least: p.Pressure.SI}
	}
	r.after.count++
	r.after.least = min(r.after.least, p.Pressure.SI)
	return nil
}

// stands says of a volume that does not rise that the pressure does not fall either.
func (r *reader) stands(volume quantity.Value) error {
	return fmt.Errorf("volume %s does not rise over the %s of line %d, and the pressure does not fall as it does when the pump has stopped; check the line",
		volume.Text(), r.last().Volume.Text(), r.line)
}
