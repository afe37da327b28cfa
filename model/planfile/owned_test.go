//go:build unix

package planfile_test

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

func TestPermissionsOwnerAndGroupAreKept(t *testing.T) {
	f, path := opened(t)
	const uid, gid = 54321, 54322 // nobody's
	if err := os.Chown(path, uid, gid); err != nil {
		t.Skip("this user may give no file away: ", err)
	}
	if err := os.Chmod(path, 0o664); err != nil {
		t.Fatal(err)
	}
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if is := info.Sys().(*syscall.Stat_t); is.Uid != uid || is.Gid != gid || info.Mode().Perm() != 0o664 {
		t.Errorf("owner %d, group %d, mode %v", is.Uid, is.Gid, info.Mode())
	}
}

// A file with two names is parted by a save, as it is by any that replaces the file whole; that is told.
func TestAHardLinkKeepsWhatItHeld(t *testing.T) {
	f, path := opened(t)
	other := filepath.Join(filepath.Dir(path), "other.toml")
	if err := os.Link(path, other); err != nil {
		t.Skip("no hard links here: ", err)
	}
	f.Plan.Well.Name = "Mine"
	if err := f.Save(path); err != nil || !f.Parted {
		t.Errorf("%v, parted %v", err, f.Parted)
	}
	if got, _ := os.ReadFile(other); string(got) != small {
		t.Errorf("the other name holds\n%s", got)
	}
	if err := f.Save(path); err != nil || f.Parted {
		t.Errorf("the next time: %v, parted %v", err, f.Parted)
	}
}
