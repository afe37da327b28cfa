// Package planfile reads and writes plans as TOML files.
//
// A file is read with [Read] or [Open] into a [File], which keeps the text as it was written beside the plan, so that
// [File.Bytes] and [File.Save] give back everything that is the user's: comments, order, unknown keys, and each value in
// the unit and spelling in which it stood. What may stand in a file is what model declares as fields; nothing is known
// here by name.
package planfile

import (
	"bytes"
	"errors"
	"fmt"
	"os"

	"borewalk/model"
	"borewalk/model/infile"
	"borewalk/model/tomldoc"
)

// File is a plan together with the text it came from.
type File struct {
	Plan    *model.Plan
	Notices []string // what was read but not understood, one line each; it is kept
	doc     *tomldoc.Document
	path    string // of the file that the plan was opened from or last saved to; empty for none
	text    []byte // what that file held then
}

// ErrChanged says that a file is no longer what was read or written by this program, so that saving would lose what
// another has put there.
var ErrChanged = errors.New("the file was changed by another program since it was opened or saved here")

// New returns a file for a plan that was not read from one.
func New(plan *model.Plan) *File { return &File{Plan: plan} }

// Open reads the plan in the named file. Errors are one line for each fault, joined; each names the file, and the line
// and key where there is one.
func Open(path string) (*File, error) {
	src, err := infile.Read(path, "plan's file", tomldoc.MaxSize)
	if err != nil {
		return nil, err
	}
	file, err := Read(path, src)
	if err != nil {
		return nil, err
	}
	file.path, file.text = path, src
	return file, nil
}

// Bytes returns the text of the plan as it is now.
func (f *File) Bytes() ([]byte, error) {
	want := wanted(f.Plan, f.doc)
	if f.doc == nil {
		return tomldoc.Render(want, header), nil
	}
	return f.doc.Rewrite(want)
}

const header = "# A borewalk plan. Quantities carry their unit; depths are along hole from the rotary unless the key says otherwise."

// Copy returns a file of the same text on a copy of the plan, to be written out beside further edits.
func (f *File) Copy() *File {
	return &File{Plan: f.Plan.Clone(), doc: f.doc, path: f.path, text: f.text}
}

// Text returns what the file held that the plan was opened from or last saved to; empty for none.
func (f *File) Text() []byte { return f.text }

// Recovered returns a file with the plan of another, which was made from what f held, to be saved where f is saved. Unless what f
// holds is still the same, that counts as changed by another.
func (f *File) Recovered(from *File, same bool) *File {
	r := &File{Plan: from.Plan, Notices: from.Notices, doc: from.doc, path: f.path, text: f.text}
	if !same {
		r.text = nil
	}
	return r
}

// Save writes the plan to the named file, whole or not at all, and makes its text the one that later saves start from. The
// error wraps ErrChanged when the file is the plan's own and another program has changed it since.
func (f *File) Save(path string) error {
	if now, err := os.ReadFile(path); err == nil && path == f.path && !bytes.Equal(now, f.text) {
		return fmt.Errorf("%s: not saved: %w", path, ErrChanged)
	}
	return f.SaveOver(path)
}

// SaveOver is Save whatever the file holds.
func (f *File) SaveOver(path string) error {
	text, err := f.Bytes()
	if err != nil {
		return err
	}
	// What is written must open again: a plan that its own reader refuses would be as good as lost.
	again, err := Read(path, text)
	if err != nil {
		return fmt.Errorf("not saved, since the plan would not open again: %w", err)
	}
	if err := Replace(path, text, newFile); err != nil {
		return fmt.Errorf("%s: not saved: %w", path, infile.Reason(err))
	}
	f.doc, f.path, f.text = again.doc, path, text
	adopt(f.Plan, f.doc.Root())
	return nil
}
