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

// Save writes the plan to the named file, whole or not at all, and makes its text the one that later saves start from. The
// error wraps ErrChanged when the file is the plan's own and another program has changed it since.
func (f *File) Save(path string) error {
	if path == f.path {
		if now, err := infile.Read(path, "plan's file", tomldoc.MaxSize); err == nil && !bytes.Equal(now, f.text) {
			return fmt.Errorf("%s: not saved: %w", path, ErrChanged)
		}
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
	if err := replace(path, text); err != nil {
		return fmt.Errorf("%s: not saved: %w", path, infile.Reason(err))
	}
	f.doc, f.path, f.text = again.doc, path, text
	adopt(f.Plan, f.doc.Root())
	return nil
}
