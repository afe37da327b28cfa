package planfile

import (
	"os"
	"path/filepath"
)

// replace gives the named file new content in one step: a temporary file beside it is written, synced and renamed over
// it, and the folder is synced, so that a crash leaves either the old content or the new. The permissions of an existing
// file are kept, and a symbolic link is followed.
func replace(path string, content []byte) (err error) {
	mode := os.FileMode(0o644)
	if target, e := filepath.EvalSymlinks(path); e == nil {
		path = target
	}
	if info, e := os.Stat(path); e == nil {
		mode = info.Mode().Perm()
	}
	folder := filepath.Dir(path)
	f, err := os.CreateTemp(folder, "."+filepath.Base(path)+".*.tmp")
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
	if err = f.Chmod(mode); err != nil {
		return err
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

// syncFolder makes the rename itself durable. Not every system can sync a folder (Windows cannot), and the content is
// safe already, so that a failure here is no failure of the save.
func syncFolder(folder string) {
	if d, err := os.Open(folder); err == nil {
		_ = d.Sync()
		d.Close()
	}
}
