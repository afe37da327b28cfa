package planfile

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"borewalk/model/infile"
	"borewalk/model/tomldoc"
)

// What another program may have done to a plan's file since it was opened or saved here. None of it is overwritten by [File.Save].
var (
	ErrChanged  = errors.New("the file was changed by another program")
	ErrRemoved  = errors.New("the file was removed or renamed")
	ErrLinked   = errors.New("the name leads to another file now")
	ErrReplaced = errors.New("a folder, or what is no ordinary file, stands in its place")
	ErrReadOnly = errors.New("the file was made read-only")
)

// Watch is the file of a plan as it was last read or written here. It is a value of its own, so that looking at the file, which
// may take long on a network, can go on beside edits and saves.
type Watch struct {
	path, real string
	text       []byte
	size       int64
	changed    time.Time
	writable   bool
}

// watching returns the watch on a file that holds a text. What is known of it, nil for nothing, must not be newer than the text: a
// change in between would never be seen.
func watching(path string, text []byte, known fs.FileInfo) *Watch {
	w := &Watch{path: path, text: text}
	w.real, _ = infile.Target(path)
	if known != nil {
		w.size, w.changed, w.writable = known.Size(), known.ModTime(), writeBits(known)
	}
	return w
}

// writeBits reports whether anybody may write a file.
func writeBits(info fs.FileInfo) bool { return info.Mode().Perm()&0o222 != 0 }

// Look returns what another program has done to the file, one of the errors above, or nil. The content is read only when size or
// time differ; the same content written at another time is no change.
func (w *Watch) Look() error { return w.look(false) }

// look is Look; closely compares the content whatever size and time are.
func (w *Watch) look(closely bool) error {
	if w == nil {
		return nil
	}
	info, err := os.Stat(w.path)
	real, linked := infile.Target(w.path)
	switch {
	case linked != nil || err == nil && real != w.real:
		return ErrLinked
	case errors.Is(err, fs.ErrNotExist):
		return ErrRemoved
	case err != nil:
		return fmt.Errorf("the file cannot be looked at: %w", infile.Reason(err))
	case !info.Mode().IsRegular():
		return ErrReplaced
	case w.writable && !writeBits(info):
		return ErrReadOnly
	case !closely && info.Size() == w.size && info.ModTime().Equal(w.changed):
		return nil
	}
	now, err := infile.Read(w.path, "plan's file", tomldoc.MaxSize)
	switch {
	case err != nil:
		return err
	case !bytes.Equal(now, w.text):
		return ErrChanged
	}
	return nil
}

// Writable returns why the file may not be written; nil when it may.
func (w *Watch) Writable() error {
	if w == nil {
		return nil
	}
	if !w.writable && !w.changed.IsZero() {
		return errors.New("the file is write-protected")
	}
	if _, err := writable(w.path); err != nil {
		return fmt.Errorf("the file may not be written: %w", infile.Reason(err))
	}
	return nil
}

// Watch returns the watch on the plan's file; nil when there is none.
func (f *File) Watch() *Watch { return f.watch }

// own reports whether a path is a name of the plan's own file.
func (f *File) own(path string) bool {
	if f.watch == nil {
		return false
	}
	real, err := infile.Target(path)
	return path == f.watch.path || err == nil && real == f.watch.real
}
