//go:build !windows

package planfile_test

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"borewalk/model/planfile"
)

// TestNoPipeNoDeviceNoLoop: what is no ordinary file is neither waited for nor replaced, whether a plan is opened from it, saved to it, or
// it has taken the place of the plan's own file.
func TestNoPipeNoDeviceNoLoop(t *testing.T) {
	dir := t.TempDir()
	pipe, loop, device := filepath.Join(dir, "pipe.toml"), filepath.Join(dir, "loop.toml"), filepath.Join(dir, "device.toml")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip(err)
	}
	for link, to := range map[string]string{loop: loop, device: "/dev/null"} {
		if err := os.Symlink(to, link); err != nil {
			t.Fatal(err)
		}
	}
	for path, want := range map[string]string{pipe: "not an ordinary file", device: "not an ordinary file", dir: "is a folder", loop: "cannot be read: too many"} {
		if _, err := planfile.Open(path); err == nil || !strings.Contains(err.Error(), want) || strings.Contains(err.Error(), "\n") {
			t.Errorf("opening %s: %v, want %q", path, err, want)
		}
		if path == device { // a test that finds a fault must not cost the machine its device
			continue
		}
		f, own := opened(t)
		if err := f.SaveOver(path); err == nil || !strings.Contains(err.Error(), "not saved: ") {
			t.Errorf("saving to %s: %v", path, err)
		}
		if err := os.Remove(own); err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink(path, own); err != nil {
			t.Fatal(err)
		}
		if err := f.Save(own); err == nil || !strings.Contains(err.Error(), "not saved: ") {
			t.Errorf("saving to what became %s: %v", path, err)
		}
	}
}

// TestAFileThatGrowsWhileItIsRead is read up to the bound.
func TestAFileThatGrowsWhileItIsRead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.toml")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	done, ended := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		for range 1000 { // 14 MB at most
			select {
			case <-done:
				return
			default:
				if _, err := f.WriteString(strings.Repeat("# more\n", 2000)); err != nil {
					return
				}
			}
		}
	}()
	for range 20 {
		if _, err := planfile.Open(path); err == nil {
			t.Error("remarks alone are read as a plan")
		}
	}
	close(done)
	<-ended
}
