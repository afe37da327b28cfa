// Package tomldoc holds a TOML document that can be changed without losing
// anything its owner wrote: comments, blank lines, the order of keys, unknown
// keys, the way a value is quoted, line ends, a byte order mark, and a final
// newline or none.
//
// Start with [Parse], which reads the bytes of a file into a [Document], and
// walk what it says from [Document.Root]. To change it, describe the wanted
// state as a [Want] and call [Document.Rewrite]: only the bytes that have to
// change do. [Render] writes a document where there was none.
//
// Validity and values are judged by the BurntSushi decoder; a scanner of our
// own finds where in the text each of them stands. Parse refuses a document on
// which the two disagree.
//
// Out of scope: the meaning of keys, units and ranges, and files themselves.
package tomldoc

import (
	"bytes"
	"strings"
	"unicode/utf8"
)

// MaxSize is the largest document that Parse reads, in bytes.
const MaxSize = 8 << 20

// byteOrderMark is what some editors put before UTF-8 text.
const byteOrderMark = "\ufeff"

// Document is a TOML text together with an index of what stands where. It
// never changes; Rewrite returns the bytes of another one.
type Document struct {
	name   string
	mark   string // the byte order mark or nothing
	text   string // the source after the mark
	blocks []block
	root   *table
	tables []*table // tables[id-1] carries Origin id
}

// Parse reads src, the content of the file called name, which is used in
// messages only. An error is always an *Error that names the line. An empty
// document is valid.
func Parse(name string, src []byte) (*Document, error) {
	if err := checkText(name, src); err != nil {
		return nil, err
	}
	d := &Document{name: name}
	d.text = string(src)
	if rest, ok := strings.CutPrefix(d.text, byteOrderMark); ok {
		d.mark, d.text = byteOrderMark, rest
	}
	// The scanner goes first: it knows the limits on nesting, without which the
	// decoder could be made to run out of stack.
	s := &scanner{name: name, text: d.text}
	if !s.document() {
		return nil, s.err
	}
	d.blocks = s.blocks
	values, err := judge(name, d.text)
	if err != nil {
		return nil, err
	}
	if err := d.grow(); err != nil {
		return nil, err
	}
	if err := d.agree(d.root, values); err != nil {
		return nil, err
	}
	return d, nil
}

// Name returns the name that the document was parsed under.
func (d *Document) Name() string { return d.name }

// Bytes returns a copy of the source.
func (d *Document) Bytes() []byte { return []byte(d.mark + d.text) }

// checkText refuses what cannot be a text file of a sensible size.
func checkText(name string, src []byte) error {
	if len(src) > MaxSize {
		return &Error{File: name, Msg: "the file is larger than 8 MiB; is it a plan? take out what does not belong to it"}
	}
	if bytes.HasPrefix(src, []byte("\xff\xfe")) || bytes.HasPrefix(src, []byte("\xfe\xff")) {
		return &Error{File: name, Line: 1, Msg: "the file is UTF-16 text; save it as UTF-8"}
	}
	text := string(src)
	for i := 0; i < len(src); i++ {
		c := src[i]
		switch {
		case c == 0:
			return failAt(name, text, i, "the file is not text, it holds a zero byte; save it as UTF-8 text")
		case c == '\r' && (i+1 == len(src) || src[i+1] != '\n'):
			return failAt(name, text, i, "a carriage return stands alone; end lines with LF or CRLF")
		case c < ' ' && c != '\t' && c != '\n' && c != '\r' || c == 0x7f:
			return failAt(name, text, i, "a control character (0x%02x) stands in the text; remove it or write \\u%04x inside double quotes", c, c)
		case c >= utf8.RuneSelf:
			r, n := utf8.DecodeRuneInString(text[i:])
			if r == utf8.RuneError && n == 1 {
				return failAt(name, text, i, "the byte 0x%02x is not UTF-8; save the file as UTF-8 text", c)
			}
			i += n - 1
		}
	}
	return nil
}
