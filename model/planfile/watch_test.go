package planfile_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"borewalk/model/planfile"
)

// What may be done to a file between two edits, whether a look notices it, and whether a save does. None of it is overwritten.
func TestWhatAnotherDoesToTheFile(t *testing.T) {
	theirs := strings.Replace(small, "Test", "Else", 1) // of the same size
	write := func(path, text string) error { return os.WriteFile(path, []byte(text), 0o640) }
	tests := []struct {
		name       string
		do         func(path string) error
		look, save error
	}{
		{"nothing", func(string) error { return nil }, nil, nil},
		{"another size", func(path string) error { return write(path, theirs+"\n") }, planfile.ErrChanged, planfile.ErrChanged},
		{"the same size at another time", func(path string) error {
			return errors.Join(write(path, theirs), os.Chtimes(path, time.Time{}, time.Now().Add(time.Second)))
		}, planfile.ErrChanged, planfile.ErrChanged},
		{"the same size at the same time", func(path string) error { // which only a save sees
			info, err := os.Stat(path)
			return errors.Join(err, write(path, theirs), os.Chtimes(path, time.Time{}, info.ModTime()))
		}, nil, planfile.ErrChanged},
		{"the same content at another time", func(path string) error { return os.Chtimes(path, time.Time{}, time.Now().Add(time.Hour)) }, nil, nil},
		{"written anew with the same content", func(path string) error {
			return errors.Join(write(path+".new", small), os.Chtimes(path+".new", time.Time{}, time.Now().Add(time.Hour)), os.Rename(path+".new", path))
		}, nil, nil},
		{"emptied", func(path string) error { return os.Truncate(path, 0) }, planfile.ErrChanged, planfile.ErrChanged},
		{"removed", os.Remove, planfile.ErrRemoved, planfile.ErrRemoved},
		{"renamed", func(path string) error { return os.Rename(path, path+".old") }, planfile.ErrRemoved, planfile.ErrRemoved},
		{"its folder renamed", func(path string) error { return os.Rename(filepath.Dir(path), filepath.Dir(path)+".old") }, planfile.ErrRemoved, planfile.ErrRemoved},
		{"a folder in its place", func(path string) error {
			return errors.Join(os.Remove(path), os.Mkdir(path, 0o755))
		}, planfile.ErrReplaced, planfile.ErrReplaced},
		{"a link in its place", func(path string) error {
			return errors.Join(os.Rename(path, path+".old"), os.Symlink(path+".old", path))
		}, planfile.ErrLinked, planfile.ErrLinked},
		{"a link to nothing in its place", func(path string) error {
			return errors.Join(os.Remove(path), os.Symlink("none", path))
		}, planfile.ErrLinked, planfile.ErrLinked},
		{"made read-only", func(path string) error { return os.Chmod(path, 0o440) }, planfile.ErrReadOnly, planfile.ErrReadOnly},
		{"other permissions", func(path string) error { return os.Chmod(path, 0o600) }, nil, nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			f, path := opened(t)
			seen := f.Watch()
			if err := test.do(path); err != nil {
				t.Fatal(err)
			}
			before, _ := os.ReadFile(path)
			if err := seen.Look(); !errors.Is(err, test.look) {
				t.Errorf("Look = %v, want %v", err, test.look)
			}
			f.Plan.Well.Name = "Mine"
			err := f.Save(path)
			if !errors.Is(err, test.save) || err != nil && strings.Count(err.Error(), path) != 1 {
				t.Errorf("Save = %v, want %v", err, test.save)
			}
			if after, _ := os.ReadFile(path); err != nil && string(after) != string(before) {
				t.Errorf("what the other wrote is lost: %s", after)
			}
			if err == nil && f.Watch().Look() != nil {
				t.Errorf("after a save: %v", f.Watch().Look())
			}
			if left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), ".*.tmp")); len(left) > 0 {
				t.Errorf("left behind: %s", left)
			}
		})
	}
}

// A plan's own file is known by any of its names, so that another name is no way past the question.
func TestTheFileIsKnownByItsOtherNames(t *testing.T) {
	f, path := opened(t)
	folder := filepath.Dir(path)
	link := filepath.Join(folder, "link.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip("no links here: ", err)
	}
	if err := os.WriteFile(path, []byte("borewalk = 1\n"), 0o640); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{link, folder + "/./plan.toml"} {
		if err := f.Save(name); !errors.Is(err, planfile.ErrChanged) {
			t.Errorf("%s: %v, want ErrChanged", name, err)
		}
	}
}

// What another does while the new file is being written is seen before it takes the old one's place.
func TestTheLastLookIsTheOneThatCounts(t *testing.T) {
	f, path := opened(t)
	f.Guard = func() error { return os.WriteFile(path, []byte("borewalk = 1\n"), 0o640) } // when all but the renaming is done
	if err := f.Save(path); !errors.Is(err, planfile.ErrChanged) {
		t.Errorf("Save = %v, want ErrChanged", err)
	}
	no := errors.New("another has taken it over")
	f.Guard = func() error { return no }
	if err := f.SaveOver(path); !errors.Is(err, no) {
		t.Errorf("SaveOver = %v, want what the guard says", err)
	}
	if got, _ := os.ReadFile(path); string(got) != "borewalk = 1\n" {
		t.Errorf("the file holds\n%s", got)
	}
}

// BenchmarkLook is the glance after an edit at a file that nobody has touched.
func BenchmarkLook(b *testing.B) {
	f, _ := opened(b)
	for b.Loop() {
		if err := f.Watch().Look(); err != nil {
			b.Fatal(err)
		}
	}
}
