//go:build unix

package planfile

import (
	"io/fs"
	"os"
	"syscall"
)

// likeOwned gives a new file the owner and the group of the one that it will replace, as far as this user may, and returns the
// permissions to give it. Where the group cannot be kept the new one gets no more than everybody has: what only the old group was
// to read must not be open to another.
func likeOwned(f *os.File, old fs.FileInfo) fs.FileMode {
	mode := old.Mode().Perm()
	was, known := old.Sys().(*syscall.Stat_t)
	if !known {
		return mode
	}
	if f.Chown(int(was.Uid), int(was.Gid)) == nil || f.Chown(-1, int(was.Gid)) == nil {
		return mode
	}
	return narrowed(mode)
}

// narrowed gives a file's group what everybody has.
func narrowed(mode fs.FileMode) fs.FileMode { return mode&^0o070 | mode&0o007<<3 }

// linked returns how many names a file has, through hard links; 0 where that is not known.
func linked(info fs.FileInfo) uint64 {
	if known, ok := info.Sys().(*syscall.Stat_t); ok {
		return uint64(known.Nlink)
	}
	return 0
}
