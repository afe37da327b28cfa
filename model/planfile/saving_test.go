package planfile_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"borewalk/model/planfile"
)

// opened writes a small plan into a folder of its own and opens it.
func opened(t testing.TB) (*planfile.File, string) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "plan.toml")
	if err := os.WriteFile(path, []byte(small), 0o640); err != nil {
		t.Fatal(err)
	}
	f, err := planfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	return f, path
}

func TestWhatAnotherHasWrittenIsNotLost(t *testing.T) {
	f, path := opened(t)
	if err := f.Save(path); err != nil {
		t.Fatal(err)
	}
	theirs := strings.Replace(small, "Test", "Theirs", 1)
	if err := os.WriteFile(path, []byte(theirs), 0o640); err != nil {
		t.Fatal(err)
	}
	if err := f.Save(path); !errors.Is(err, planfile.ErrChanged) || !strings.HasPrefix(err.Error(), path) {
		t.Errorf("Save = %v, want ErrChanged with the file's name", err)
	}
	if got, _ := os.ReadFile(path); string(got) != theirs {
		t.Errorf("the file holds\n%s", got)
	}
	if err := f.Save(filepath.Join(filepath.Dir(path), "other.toml")); err != nil {
		t.Errorf("saving under another name: %v", err)
	}
	if err := f.SaveOver(path); err != nil {
		t.Error(err)
	}
	if got, _ := os.ReadFile(path); string(got) != small {
		t.Errorf("the file holds\n%s", got)
	}
}

func TestAFileThatMayNotBeWrittenIsNotReplaced(t *testing.T) {
	f, path := opened(t)
	if err := os.Chmod(path, 0o440); err != nil {
		t.Fatal(err)
	}
	if probe, err := os.OpenFile(path, os.O_WRONLY, 0); err == nil {
		probe.Close()
		t.Skip("this user may write everything")
	}
	if err := f.Save(path); !errors.Is(err, os.ErrPermission) {
		t.Errorf("Save = %v, want no permission", err)
	}
}

func TestANewFileHasThePermissionsOfAnyNewFile(t *testing.T) {
	f, path := opened(t)
	folder := filepath.Dir(path)
	other, err := os.Create(filepath.Join(folder, "other"))
	if err != nil {
		t.Fatal(err)
	}
	other.Close()
	fresh := filepath.Join(folder, "fresh.toml")
	if err := f.Save(fresh); err != nil {
		t.Fatal(err)
	}
	want, _ := os.Stat(other.Name())
	if got, _ := os.Stat(fresh); got.Mode() != want.Mode() {
		t.Errorf("mode %v, want %v", got.Mode(), want.Mode())
	}
}

func TestLinksAreFollowed(t *testing.T) {
	f, path := opened(t)
	link := filepath.Join(filepath.Dir(path), "link.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip("no links here: ", err)
	}
	if err := f.Save(link); err != nil {
		t.Error(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the link is replaced: %v, %v", info.Mode(), err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := f.Save(link); err == nil || !strings.Contains(err.Error(), "link") {
		t.Errorf("saving to a link that leads nowhere: %v", err)
	}
}
