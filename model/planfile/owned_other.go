//go:build !unix

package planfile

import (
	"io/fs"
	"os"
)

// likeOwned returns the permissions to give a new file. Owner and group are not kept: a file here has the rights of its folder.
func likeOwned(_ *os.File, old fs.FileInfo) fs.FileMode { return old.Mode().Perm() }

// linked returns how many names a file has, through hard links; it is not known here.
func linked(fs.FileInfo) uint64 { return 0 }
