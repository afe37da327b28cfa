// Package planfile reads and writes plans as TOML files.
//
// A file is read with [Read] or [Open] into a [File], which keeps the text as it was written beside the plan, so that
// [File.Bytes] and [File.Save] give back everything that is the user's: comments, order, unknown keys, and each value in
// the unit and spelling in which it stood. What may stand in a file is what model declares as fields; nothing is known
// here by name.
package planfile

import (
	"fmt"
	"os"
	"time"

	"borewalk/model"
	"borewalk/model/infile"
	"borewalk/model/tomldoc"
)

// File is a plan together with the text it came from.
type File struct {
	Plan    *model.Plan
	Notices []string // what was read but not understood, one line each; it is kept
	doc     *tomldoc.Document
	watch   *Watch // on the file that the plan was opened from or last saved to; nil for none

	// Parted says that the last save parted the file from its other names, hard links, which keep what it held before.
	Parted bool

	// Guard, when there is one, is asked before anything is written and again just before a file is replaced; its error leaves the file
	// as it is.
	Guard func() error
}

// New returns a file for a plan that was not read from one.
func New(plan *model.Plan) *File { return &File{Plan: plan} }

// Open reads the plan in the named file. Errors are one line for each fault, joined; each names the file, and the line
// and key where there is one.
func Open(path string) (*File, error) {
	known, _ := os.Stat(path)
	src, err := infile.Read(path, "plan's file", tomldoc.MaxSize)
	if err != nil {
		return nil, err
	}
	file, err := Read(path, src)
	if err != nil {
		return nil, err
	}
	file.watch = watching(path, src, known)
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
	return &File{Plan: f.Plan.Clone(), doc: f.doc, watch: f.watch}
}

// Text returns what the file held that the plan was opened from or last saved to; empty for none.
func (f *File) Text() []byte {
	if f.watch == nil {
		return nil
	}
	return f.watch.text
}

// Recovered returns a file with the plan of another, which was made from what f held, to be saved where f is saved. Unless what f
// holds is still the same, that counts as changed by another.
func (f *File) Recovered(from *File, same bool) *File {
	r := &File{Plan: from.Plan, Notices: from.Notices, doc: from.doc, watch: f.watch, Guard: f.Guard}
	if !same && f.watch != nil {
		changed := *f.watch
		changed.text, changed.changed = nil, time.Time{}
		r.watch = &changed
	}
	return r
}

// Save writes the plan to the named file, whole or not at all, and makes its text the one that later saves start from. The
// error wraps ErrChanged, or one of its like, when the file is the plan's own and another program has done something to it since.
func (f *File) Save(path string) error {
	if !f.own(path) {
		return f.SaveOver(path)
	}
	return f.save(path, func() error { return f.watch.look(true) })
}

// SaveOver is Save whatever the file holds.
func (f *File) SaveOver(path string) error { return f.save(path, func() error { return nil }) }

// save writes the plan to the named file unless the guard or what is asked about that file has something against it. Both are asked
// again when the new file lies ready: between the answer and the moment at which the old one is replaced there is nothing but the
// call that does it.
func (f *File) save(path string, untouched func() error) error {
	may := func() error {
		if f.Guard != nil {
			if err := f.Guard(); err != nil {
				return err
			}
		}
		return untouched()
	}
	if err := may(); err != nil {
		return refused(path, err)
	}
	text, err := f.Bytes()
	if err != nil {
		return err
	}
	// What is written must open again: a plan that its own reader refuses would be as good as lost.
	again, err := Read(path, text)
	if err != nil {
		return fmt.Errorf("not saved, since the plan would not open again: %w", err)
	}
	written, err := replace(path, text, newFile, may)
	if err != nil {
		return refused(path, err)
	}
	f.doc, f.watch, f.Parted = again.doc, watching(path, text, written.info), written.parted
	adopt(f.Plan, f.doc.Root())
	return nil
}

// refused says of which file a save came to nothing, and why.
func refused(path string, err error) error {
	return fmt.Errorf("%s: not saved: %w", path, infile.Reason(err))
}
