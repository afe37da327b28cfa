// Package jointfile reads lists of measured joints, as a spreadsheet or a strapping sheet gives them: one joint a line, its
// number, its length and whether it is rejected, separated by commas, semicolons or tabs.
//
// Start with [Open]. Nothing is guessed: what two readers could understand differently is refused, with the line.
package jointfile

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"borewalk/model"
	"borewalk/model/infile"
	"borewalk/model/quantity"
)

// Bounds of a list: more is no list of joints.
const (
	MaxSize   = 256 << 10 // bytes
	MaxJoints = 1000
)

// Open reads the joints in the named file. A length without a unit is in the unit shown, unless the heading over the
// lengths names one: "length (ft)". The error is one line: file, line, what was read and what is allowed.
func Open(path string, shown quantity.Unit) ([]model.Joint, error) {
	src, err := infile.Read(path, "list of joints", MaxSize)
	if err != nil {
		return nil, err
	}
	return Read(path, src, shown)
}

// Read reads the joints from the content of the file called name; see [Open].
func Read(name string, src []byte, shown quantity.Unit) ([]model.Joint, error) {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	switch {
	case len(src) > MaxSize:
		return nil, fmt.Errorf("%s: more than %d kB; a list of joints is shorter", name, MaxSize>>10)
	case !utf8.Valid(src):
		return nil, fmt.Errorf("%s: is not UTF-8 text; save the sheet as CSV, UTF-8", name)
	}
	comma := separator(src)
	in := csv.NewReader(bytes.NewReader(src))
	in.Comma, in.Comment, in.FieldsPerRecord, in.LazyQuotes, in.TrimLeadingSpace = comma, '#', -1, true, comma != '\t'
	r := reader{name: name, unit: shown, seen: map[string]int{}, length: model.JointList().Field("length")}
	for {
		record, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			var fault *csv.ParseError
			if errors.As(err, &fault) {
				return nil, fmt.Errorf("%s:%d: %w", name, fault.Line, fault.Err)
			}
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		line, _ := in.FieldPos(0)
		if err := r.take(line, record); err != nil {
			if whole := r.whole(comma); whole != nil {
				err = whole // which explains what was read
			}
			return nil, err
		}
	}
	if err := r.whole(comma); err != nil {
		return nil, err
	}
	if len(r.joints) == 0 {
		return nil, fmt.Errorf("%s: there is no joint in it; write one a line: number, length, and yes where it is rejected", name)
	}
	return r.joints, nil
}

// whole returns an error when all lengths read so far stand behind a comma and are whole numbers: they may be the decimals of
// what stands before it.
func (r *reader) whole(comma rune) error {
	if comma != ',' || r.points || len(r.joints) == 0 {
		return nil
	}
	return fmt.Errorf("%s: no length has decimals or a unit; if the comma is the decimal sign, separate the columns by semicolons", r.name)
}

// separator returns what separates the columns: semicolons or tabs where there are any, since a comma can be a decimal sign.
func separator(src []byte) rune {
	switch {
	case bytes.IndexByte(src, ';') >= 0:
		return ';'
	case bytes.IndexByte(src, '\t') >= 0:
		return '\t'
	}
	return ','
}

// reader collects the joints of a list.
type reader struct {
	name   string
	unit   quantity.Unit
	length *model.Field
	lines  int            // records with anything in them
	points bool           // a length has decimals or a unit
	seen   map[string]int // line of each number
	joints []model.Joint
}

// take reads one record.
func (r *reader) take(line int, record []string) error {
	for len(record) > 0 && strings.TrimSpace(record[len(record)-1]) == "" {
		record = record[:len(record)-1] // a spreadsheet pads its lines
	}
	if len(record) == 0 {
		return nil
	}
	r.lines++
	if r.lines == 1 && !strings.ContainsAny(strings.Join(record[min(1, len(record)-1):], ""), "0123456789") {
		r.heading(record)
		return nil
	}
	if len(r.joints) == MaxJoints {
		return fmt.Errorf("%s:%d: more than %d joints; check the file", r.name, line, MaxJoints)
	}
	joint, err := r.joint(line, record)
	if err != nil {
		return fmt.Errorf("%s:%d: %w", r.name, line, err)
	}
	r.joints = append(r.joints, joint)
	return nil
}

// heading takes the unit out of a heading, where it names one: "length (ft)", "m".
func (r *reader) heading(record []string) {
	cell := record[min(1, len(record)-1)]
	for _, word := range strings.FieldsFunc(cell, func(c rune) bool { return strings.ContainsRune(" ()[],/", c) }) {
		if unit, err := quantity.ParseUnit(word, quantity.TallyLength); err == nil {
			r.unit = unit
		}
	}
}

// joint reads number, length and whether the joint is rejected; a line of one column is a length.
func (r *reader) joint(line int, record []string) (model.Joint, error) {
	var joint model.Joint
	text := record[0]
	if len(record) > 1 {
		joint.Number, text = strings.TrimSpace(model.Clean(record[0])), record[1]
	}
	r.points = r.points || !onlyDigits(text)
	if len(record) > 3 {
		return joint, fmt.Errorf("%d columns; write number, length, and yes where it is rejected", len(record))
	}
	if len(joint.Number) > 40 {
		return joint, fmt.Errorf("number %q is too long; it has at most 40 letters", joint.Number[:20]+"...")
	}
	if before, ok := r.seen[joint.Number]; ok && joint.Number != "" {
		return joint, fmt.Errorf("number %q stands in line %d too; strike out the one that was counted twice", joint.Number, before)
	}
	r.seen[joint.Number] = line
	entry, err := r.length.Parse(text, r.unit)
	switch {
	case err != nil:
		return joint, fmt.Errorf("length %q: %w; allowed is %s to %s", model.Clean(short(text)), err, r.length.Min.Text(), r.length.Max.Text())
	case !entry.IsSet():
		return joint, errors.New("the length is blank; write number, length, and yes where it is rejected")
	}
	joint.Length = entry.Quantity
	joint.Rejected = model.JointSound
	if len(record) == 3 {
		joint.Rejected, err = rejected(record[2])
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
	return "", fmt.Errorf("rejected %q: write yes or no, or leave it blank", model.Clean(short(text)))
}

// short cuts what is quoted from a file in a message.
func short(text string) string {
	const most = 40
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "..."
}
