package planfile

import (
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"

	"borewalk/model/infile"
)

// newFile are the permissions that a file of the user's gets, as far as his mask leaves them.
const newFile os.FileMode = 0o666

// written is what is known of a file that was replaced.
type written struct {
	info   os.FileInfo
	parted bool // what it replaced had further names
}

// Replace gives the named file new content in one step, as a plan's file gets it when it is saved. A new file gets the permissions of
// fresh, less the user's mask.
func Replace(path string, content []byte, fresh os.FileMode) error {
	_, err := replace(path, content, fresh, func() error { return nil })
	return err
}

// replace gives the named file new content in one step: a temporary file beside it is written, synced and renamed over
// it, and the folder is synced, so that a crash leaves either the old content or the new. The permissions of an existing
// file are kept, its owner and group where that is allowed; one that may not be written is not replaced, and a symbolic link is
// followed. Last is asked when everything but the renaming is done; its error leaves the file as it was. ClearLitter takes away what
// a crash in between leaves.
func replace(path string, content []byte, fresh os.FileMode, last func() error) (w written, err error) {
	path, err = infile.Target(path)
	if err != nil {
		return w, err
	}
	old, err := writable(path)
	if err != nil {
		return w, err
	}
	folder := filepath.Dir(path)
	f, err := create(folder, filepath.Base(path), fresh)
	if err != nil {
		return w, err
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if _, err = f.Write(content); err != nil {
		return w, err
	}
	if old != nil {
		w.parted = linked(old) > 1
		if err = f.Chmod(likeOwned(f, old)); err != nil {
			return w, err
		}
	}
	if err = f.Sync(); err != nil {
		return w, err
	}
	if w.info, err = f.Stat(); err != nil {
		return w, err
	}
	if err = f.Close(); err != nil {
		return w, err
	}
	if err = last(); err != nil {
		return w, err
	}
	if err = os.Rename(f.Name(), path); err != nil {
		return w, err
	}
	syncFolder(folder)
	return w, nil
}

// writable returns what is known of a file, nil when there is none; the error says that it may not be written. Renaming over
// a file needs no permission on it, but whoever took that away, from an approved plan for one, meant it.
func writable(path string) (os.FileInfo, error) {
	info, err := os.Stat(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() { // a pipe would keep us waiting for a reader, and a device would become a file
		return nil, errors.New("it is not an ordinary file; save under another name")
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return nil, err
	}
	return info, f.Close()
}

// create makes a new file beside the one that it will replace, with the permissions that the user's mask leaves.
func create(folder, name string, fresh os.FileMode) (*os.File, error) {
	const tries = 100
	for try := 1; ; try++ {
		f, err := os.OpenFile(filepath.Join(folder, temporary(name, rand.Uint32())), os.O_RDWR|os.O_CREATE|os.O_EXCL, fresh)
		if err == nil || !errors.Is(err, os.ErrExist) || try == tries {
			return f, err
		}
	}
}

// syncFolder makes the rename itself durable. Not every system can sync a folder (Windows cannot), and the content is
// safe already, so that a failure here is no failure of the save.
func syncFolder(folder string) {
	if d, err := os.Open(folder); err == nil {
		_ = d.Sync()
		d.Close()
	}
}
