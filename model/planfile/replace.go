package planfile

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
)

// replace gives the named file new content in one step: a temporary file beside it is written, synced and renamed over
// it, and the folder is synced, so that a crash leaves either the old content or the new. The permissions of an existing
// file are kept, one that may not be written is not replaced, and a symbolic link is followed.
func replace(path string, content []byte) (err error) {
	path, err = target(path)
	if err != nil {
		return err
	}
	mode, exists, err := writable(path)
	if err != nil {
		return err
	}
	folder := filepath.Dir(path)
	f, err := create(folder, filepath.Base(path))
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if _, err = f.Write(content); err != nil {
		return err
	}
	if exists {
		if err = f.Chmod(mode); err != nil {
			return err
		}
	}
	if err = f.Sync(); err != nil {
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	if err = os.Rename(f.Name(), path); err != nil {
		return err
	}
	syncFolder(folder)
	return nil
}

// target returns the file that a path means, through symbolic links.
func target(path string) (string, error) {
	real, err := filepath.EvalSymlinks(path)
	if err == nil {
		return real, nil
	}
	if _, e := os.Lstat(path); e == nil {
		return "", errors.New("it is a link to a file that is not there; save under another name")
	}
	return path, nil
}

// writable returns the permissions of a file and whether it exists; the error says that it may not be written. Renaming over
// a file needs no permission on it, but whoever took that away, from an approved plan for one, meant it.
func writable(path string) (mode os.FileMode, exists bool, err error) {
	info, err := os.Stat(path)
	if errors.Is(err, os.ErrNotExist) {
		return 0, false, nil
	}
	if err != nil {
		return 0, false, err
	}
	if !info.Mode().IsRegular() { // a pipe would keep us waiting for a reader, and a device would become a file
		return 0, false, errors.New("it is not an ordinary file; save under another name")
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return 0, false, err
	}
	return info.Mode().Perm(), true, f.Close()
}

// create makes a new file beside the one that it will replace, with the permissions that the user's mask leaves.
func create(folder, name string) (*os.File, error) {
	const tries = 100
	for try := 1; ; try++ {
		path := filepath.Join(folder, fmt.Sprintf(".%s.%08x.tmp", name, rand.Uint32()))
		f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
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
