// Package jointfile reads lists of measured joints, as a spreadsheet or a strapping sheet gives them: one joint a line, its
// number, its length and whether it is rejected, separated by commas, semicolons or tabs.
//
// Start with [Open]. Nothing is guessed: what two readers could understand differently is refused, with the line.
package jointfile

import (
	"errors"
	"fmt"
	"strings"

	"borewalk/model"
	"borewalk/model/infile"
	"borewalk/model/listfile"
	"borewalk/model/quantity"
)

// Bounds of a list: more is no list of joints.
const (
	MaxSize   = 256 << 10 // bytes
	MaxJoints = 1000
)

// listed is what messages call the list.
const listed = "list of joints"

// Open reads the joints in the named file. A length without a unit is in the unit shown, unless the heading over the
// lengths names one: "length (ft)". The error is one line: file, line, what was read and what is allowed.
func Open(path string, shown quantity.Unit) ([]model.Joint, error) {
	src, err := infile.Read(path, listed, MaxSize)
	if err != nil {
		return nil, err
	}
	return Read(path, src, shown)
}

// Read reads the joints from the content of the file called name; see [Open].
func Read(name string, src []byte, shown quantity.Unit) ([]model.Joint, error) {
	sort := listfile.Sort{Name: listed, Thing: "joint", Columns: "number, length, and yes where it is rejected", Size: MaxSize, Things: MaxJoints, Heads: heads}
	list, err := sort.Read(name, src)
	if err != nil {
		return nil, err
	}
	r := reader{unit: shown, seen: map[string]int{}, length: model.JointList().Field("length")}
	if list.Heading != nil {
		unit, err := lengths().Named(measured(list.Heading.Cells)[0], shown)
		if err != nil {
			return nil, list.Heading.Fault(err)
		}
		r.unit = unit
	}
	fault := r.take(list.Rows)
	if list.Comma == ',' && !r.points && len(r.joints) > 0 {
		// They may be the decimals of what stands before them, which explains a fault as well.
		return nil, list.Fault(errors.New("no length has decimals or a unit; if the comma is the decimal sign, separate the columns by semicolons"))
	}
	if fault != nil {
		return nil, fault
	}
	return r.joints, nil
}

// lengths are the units of a length.
func lengths() listfile.Units { return listfile.UnitsOf(quantity.TallyLength) }

// measured returns the cells from the length on: before it is the number, where there is more than a length.
func measured(cells []string) []string { return cells[min(1, len(cells)-1):] }

// heads reports whether a first line is a heading.
func heads(cells []string) bool {
	for _, cell := range measured(cells) {
		if !lengths().Heads(cell) {
			return false
		}
	}
	return true
}

// reader collects the joints of a list.
type reader struct {
	unit   quantity.Unit
	length *model.Field
	points bool           // a length has decimals or a unit
	seen   map[string]int // line of each number
	joints []model.Joint
}

// take reads the lines up to the first fault.
func (r *reader) take(rows []listfile.Row) error {
	for k := range rows {
		joint, err := r.joint(&rows[k])
		if err != nil {
			return rows[k].Fault(err)
		}
		r.joints = append(r.joints, joint)
	}
	return nil
}

// joint reads number, length and whether the joint is rejected; a line of one column is a length.
func (r *reader) joint(row *listfile.Row) (model.Joint, error) {
	var joint model.Joint
	text := measured(row.Cells)[0]
	if len(row.Cells) > 1 {
		joint.Number = strings.TrimSpace(model.Clean(row.Cells[0]))
	}
	r.points = r.points || !onlyDigits(text)
	if len(row.Cells) > 3 {
		return joint, fmt.Errorf("%d columns; write number, length, and yes where it is rejected", len(row.Cells))
	}
	if len(joint.Number) > 40 {
		return joint, fmt.Errorf("number %q is too long; it has at most 40 letters", joint.Number[:20]+"...")
	}
	if before, ok := r.seen[joint.Number]; ok && joint.Number != "" {
		return joint, fmt.Errorf("number %q stands in line %d too; strike out the one that was counted twice", joint.Number, before)
	}
	r.seen[joint.Number] = row.Line
	entry, err := r.length.Parse(text, r.unit)
	switch {
	case err != nil:
		return joint, fmt.Errorf("length %q: %w; allowed is %s to %s", model.Clean(listfile.Short(text)), err, r.length.Min.Text(), r.length.Max.Text())
	case !entry.IsSet():
		return joint, errors.New("the length is blank; write number, length, and yes where it is rejected")
	}
	joint.Length = entry.Quantity
	joint.Rejected = model.JointSound
	if len(row.Cells) == 3 {
		joint.Rejected, err = rejected(row.Cells[2])
	}
	return joint, err
}

// onlyDigits reports whether a length has neither decimals nor a unit.
func onlyDigits(text string) bool { return strings.Trim(text, "0123456789 \t") == "" }

// rejected reads the words that sheets have for a joint that is not run.
func rejected(text string) (string, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "", "no", "n", "ok", "0", "false", "good":
		return model.JointSound, nil
	case "yes", "y", "x", "1", "true", "reject", "rejected":
		return model.JointRejected, nil
	}
	return "", fmt.Errorf("rejected %q: write yes or no, or leave it blank", model.Clean(listfile.Short(text)))
}
