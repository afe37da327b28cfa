package tomldoc

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"borewalk/model/harmless"
)

// Error says what is wrong with a document, where, and what to do about it, in
// one line.
type Error struct {
	File   string // the name given to Parse
	Line   int    // from 1; 0 when no line is at fault
	Column int    // from 1, in characters; 0 when unknown
	Msg    string // what is wrong; what to do
}

// Error returns "file:line: message", or "file: message" without a line.
func (e *Error) Error() string {
	switch {
	case e.File == "" && e.Line == 0:
		return e.Msg
	case e.File == "":
		return fmt.Sprintf("line %d: %s", e.Line, e.Msg)
	case e.Line == 0:
		return fmt.Sprintf("%s: %s", e.File, e.Msg)
	}
	return fmt.Sprintf("%s:%d: %s", e.File, e.Line, e.Msg)
}

// failAt makes an error for the byte at off of text. A byte order mark has no
// column.
func failAt(name, text string, off int, format string, args ...any) *Error {
	off = min(max(off, 0), len(text))
	lineStart := strings.LastIndexByte(text[:off], '\n') + 1
	return &Error{
		File:   name,
		Line:   1 + strings.Count(text[:lineStart], "\n"),
		Column: 1 + utf8.RuneCountInString(strings.TrimPrefix(text[lineStart:off], byteOrderMark)),
		Msg:    harmless.Text(fmt.Sprintf(format, args...)),
	}
}

// failOn makes an error for a line of the document.
func (d *Document) failOn(line int, format string, args ...any) *Error {
	return &Error{File: d.name, Line: line, Msg: harmless.Text(fmt.Sprintf(format, args...))}
}

// short cuts text from the file down to what fits into a message.
func short(s string) string {
	const most = 40
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s[:min(len(s), 4*most)])[:most-1]) + "…"
}
