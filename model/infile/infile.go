// Package infile reads the files that a person names: an ordinary file, whole, up to a size, and errors that say in one line
// which file it was and what was wrong.
package infile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// Read returns the content of the named file, of which kind says what it should be, such as "plan's file". Of a file of more
// than limit bytes it returns limit + 1, so that the caller can say what is too long for it.
func Read(path, kind string, limit int64) ([]byte, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil, missing(path)
	case err != nil:
		return nil, fmt.Errorf("%s: cannot be read: %w", path, Reason(err))
	case info.IsDir():
		return nil, fmt.Errorf("%s: is a folder; name the %s", path, kind)
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s: is not an ordinary file", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %w", path, Reason(err))
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, limit+1))
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %w", path, Reason(err))
	}
	return text, nil
}

// Reason strips the operation and the paths from an error of package os, which a message about the file names already.
func Reason(err error) error {
	var wrapped *os.PathError
	var moved *os.LinkError
	switch {
	case errors.As(err, &wrapped):
		return wrapped.Err
	case errors.As(err, &moved):
		return moved.Err
	}
	return err
}

// Target returns the file that a path means, through symbolic links, as an absolute path. The file need not be there, but a link
// must lead to one.
func Target(path string) (string, error) {
	if whole, err := filepath.Abs(path); err == nil {
		path = whole
	}
	real, err := filepath.EvalSymlinks(path)
	if err == nil {
		return real, nil
	}
	info, e := os.Lstat(path)
	switch {
	case e == nil && info.Mode()&os.ModeSymlink == 0:
		return path, nil // there, though not every disk tells of its links
	case e == nil:
		return "", errors.New("it is a link to a file that is not there; save under another name")
	}
	if folder, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		return filepath.Join(folder, filepath.Base(path)), nil
	}
	return path, nil
}

// missing is the path of a file that is not there; errors.Is takes it for fs.ErrNotExist.
type missing string

func (path missing) Error() string { return string(path) + ": there is no such file" }

func (missing) Is(target error) bool { return target == fs.ErrNotExist }
