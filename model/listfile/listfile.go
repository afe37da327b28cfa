// Package listfile reads lists as a spreadsheet gives them: one thing a line, its columns separated by commas, semicolons or
// tabs, below a heading or without one. Blank lines and those that begin with # are left out.
//
// A [Sort] says what is listed. What the columns mean is its owner's; [Units] reads what a heading says of the units below it.
package listfile

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// Sort is a sort of list, with its bounds: more is no such list.
type Sort struct {
	Name    string                    // in messages, such as "list of joints"
	Thing   string                    // what a line holds, such as "joint"
	Columns string                    // how to write one
	Size    int                       // most bytes
	Things  int                       // most of them
	Heads   func(cells []string) bool // whether the first line with anything in it is a heading
}

// List is what a file lists.
type List struct {
	file    string
	Comma   rune // what separates the columns
	Heading *Row // nil for none
	Rows    []Row
}

// Row is a line of a list, without the blank cells at its end; there is at least one that is not blank.
type Row struct {
	Cells []string
	Line  int
	file  string
}

// Fault says of an error in which file and line it was.
func (r *Row) Fault(err error) error { return fmt.Errorf("%s:%d: %w", r.file, r.Line, err) }

// Fault says of an error in which file it was.
func (l *List) Fault(err error) error { return fmt.Errorf("%s: %w", l.file, err) }

// Read reads the list from the content of the file called name. The error is one line: file, line, and what was wrong.
func (s *Sort) Read(name string, src []byte) (List, error) {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	switch {
	case len(src) > s.Size:
		return List{}, fmt.Errorf("%s: more than %d kB; a %s is shorter", name, s.Size>>10, s.Name)
	case !utf8.Valid(src), bytes.IndexByte(src, 0) >= 0: // zero bytes are half of the characters of UTF-16
		return List{}, fmt.Errorf("%s: is not UTF-8 text; save the sheet as CSV, UTF-8", name)
	case lineEndsAlone(src):
		return List{}, fmt.Errorf("%s: its lines end with a carriage return alone; save the sheet as CSV, UTF-8", name)
	}
	list := List{file: name, Comma: separator(src)}
	if err := list.read(src); err != nil {
		return List{}, err
	}
	if len(list.Rows) > 0 && s.Heads(list.Rows[0].Cells) {
		list.Heading, list.Rows = &list.Rows[0], list.Rows[1:]
	}
	switch {
	case len(list.Rows) == 0:
		return List{}, list.Fault(fmt.Errorf("there is no %s in it; write one a line: %s", s.Thing, s.Columns))
	case len(list.Rows) > s.Things:
		return List{}, list.Rows[s.Things].Fault(fmt.Errorf("more than %d %ss; check the file", s.Things, s.Thing))
	}
	return list, nil
}

// lineEndsAlone reports whether there is a carriage return without a line feed, as sheets for old machines have them.
func lineEndsAlone(src []byte) bool {
	return bytes.Count(src, []byte("\r")) > bytes.Count(src, []byte("\r\n"))
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

// read reads the lines that have anything in them.
func (l *List) read(src []byte) error {
	in := csv.NewReader(bytes.NewReader(src))
	in.Comma, in.Comment, in.FieldsPerRecord, in.LazyQuotes, in.TrimLeadingSpace = l.Comma, '#', -1, true, l.Comma != '\t'
	for {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return l.Fault(err) // which lazy quotes leave no cause for
		}
		line, _ := in.FieldPos(0)
		for len(cells) > 0 && strings.TrimSpace(cells[len(cells)-1]) == "" {
			cells = cells[:len(cells)-1] // a spreadsheet pads its lines
		}
		if len(cells) > 0 {
			l.Rows = append(l.Rows, Row{cells, line, l.file})
		}
	}
}

// Short cuts what is quoted from a file in a message.
func Short(text string) string {
	const most = 40
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "..."
}
