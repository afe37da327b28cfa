//go:build !windows

package e2e_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"

	"borewalk/ui/ptytest"
)

// fullDisk makes a small disk with the demo on it and no room for anything more.
func fullDisk(t *testing.T) workplace {
	t.Helper()
	w := newWorkplace(t)
	text, err := os.ReadFile(w.plan)
	if err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=128k", "none", w.dir).CombinedOutput(); err != nil {
		t.Skipf("no small disk can be had here: %s", out)
	}
	t.Cleanup(func() { _ = exec.Command("umount", w.dir).Run() })
	if err := os.WriteFile(w.plan, text, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(w.dir, "ballast"), make([]byte, 1<<20), 0o600); err == nil {
		t.Fatal("the disk is not full")
	}
	return w
}

// A save that fails says why and what to do, on one line, and leaves the file and the folder as they were; the changes are kept
// elsewhere, and can be saved there.
func TestAFullDiskLosesNothing(t *testing.T) {
	w := fullDisk(t)
	s := w.open(t)
	deepen(s)
	s.Type(ptytest.CtrlS)
	s.Wait("Not saved: no space left on device")
	s.Wait("well.toml * not saved")
	if entries, _ := os.ReadDir(w.dir); len(entries) != 2 {
		t.Errorf("there lie %v", entries)
	}
	s.Signal(syscall.SIGTERM)
	s.ExitCode()
	f := w.found(t)
	if f == nil || filepath.Dir(f.At) == w.dir || f.Pending != 2 {
		t.Fatalf("journal %+v", f)
	}
	s = w.open(t)
	s.Wait("2 entries differ")
	elsewhere := filepath.Join(t.TempDir(), "saved.toml")
	s.Type(ptytest.Enter)
	s.Wait("not saved")
	s.Type("S" + ptytest.CtrlU)
	s.Wait("Save the plan as")
	s.Type(elsewhere + ptytest.Enter)
	s.WaitGone("* not saved")
	s.Type("q")
	s.ExitCode()
	if text, _ := os.ReadFile(elsewhere); !bytes.Contains(text, []byte("2085 m")) || w.found(t) != nil {
		t.Errorf("saved %d bytes, left %v", len(text), w.found(t))
	}
}

// Where nothing can be written at all, the program starts, calculates, and says once what it cannot keep.
func TestWhereNothingCanBeWritten(t *testing.T) {
	tests := map[string]struct {
		shell, env string
		args       string
	}{
		"no home, no file":              {"", "HOME=", ""},
		"files may not grow":            {"ulimit -f 8; ", "HOME=/nowhere", "well.toml"},
		"a home that is no folder":      {"", "HOME=/dev/null", ""},
		"a state folder that is a file": {"", "XDG_STATE_HOME=/dev/null", ""},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			w := newWorkplace(t)
			before, _ := os.ReadFile(w.plan)
			s := ptytest.Start(t, ptytest.Options{Path: "/bin/sh", Args: []string{"-c", test.shell + `exec "$0" -name AZ ` + test.args, program},
				Dir: w.dir, Env: []string{"XDG_STATE_HOME=", test.env}})
			s.Wait("? help")
			deepen(s)
			s.Wait("* not saved, not kept")
			s.Type(ptytest.Enter)
			s.WaitGone("typing")
			s.Type("!")
			s.Wait("What is not saved cannot be kept against a crash, so")
			s.Type(ptytest.Esc)
			s.Wait("2085.0 m")
			if test.args != "" {
				s.Type("s")
				s.Wait("Not saved: file too large")
			}
			s.Signal(syscall.SIGTERM)
			s.Wait("what was not saved could not be kept")
			if code := s.ExitCode(); code != 128+int(syscall.SIGTERM) {
				t.Errorf("exit code %d", code)
			}
			after, _ := os.ReadFile(w.plan)
			if entries, _ := os.ReadDir(w.dir); len(entries) != 1 || !bytes.Equal(before, after) {
				t.Errorf("there lie %v, or the file is another", entries)
			}
		})
	}
}
