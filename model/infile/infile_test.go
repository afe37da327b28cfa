package infile

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestReadIsWholeUpToTheLimit(t *testing.T) {
	path := filepath.Join(t.TempDir(), "list.csv")
	if err := os.WriteFile(path, []byte("0123456789"), 0o600); err != nil {
		t.Fatal(err)
	}
	for limit, want := range map[int64]string{4: "01234", 9: "0123456789", 10: "0123456789", 99: "0123456789"} {
		if got, err := Read(path, "list", limit); err != nil || string(got) != want {
			t.Errorf("limit %d: %q, %v", limit, got, err)
		}
	}
}

func TestFaultsAreOneLineThatNamesTheFile(t *testing.T) {
	dir := t.TempDir()
	locked := filepath.Join(dir, "locked")
	if err := os.WriteFile(locked, nil, 0); err != nil {
		t.Fatal(err)
	}
	cases := map[string]string{filepath.Join(dir, "none"): "there is no such file", dir: "is a folder; name the list",
		filepath.Join(locked, "below"): "cannot be read: not a directory"}
	if device := "/dev/null"; exists(device) {
		cases[device] = "is not an ordinary file"
	}
	if os.Getuid() > 0 { // root reads everything
		cases[locked] = "cannot be read: permission denied"
	}
	for path, want := range cases {
		_, err := Read(path, "list", 10)
		if err == nil || !strings.HasPrefix(err.Error(), path+": ") || !strings.Contains(err.Error(), want) || strings.Count(err.Error(), path) > 1 {
			t.Errorf("%s: %v, want %s", path, err, want)
		}
	}
}

// A path is followed through links of the file and of its folders, to a file that need not be there.
func TestTargetFollowsLinks(t *testing.T) {
	dir, err := filepath.EvalSymlinks(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	at := func(name string) string { return filepath.Join(dir, name) }
	if err := errors.Join(os.Mkdir(at("real"), 0o755), os.WriteFile(at("real/plan"), nil, 0o600)); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.Symlink("real", at("folder")), os.Symlink("folder/plan", at("link")), os.Symlink("none", at("broken"))); err != nil {
		t.Skip("no links here: ", err)
	}
	for path, want := range map[string]string{
		"real/plan": "real/plan", "folder/plan": "real/plan", "link": "real/plan", "folder/./plan": "real/plan",
		"folder/fresh": "real/fresh", "none/fresh": "none/fresh",
	} {
		if got, err := Target(at(path)); err != nil || got != at(want) {
			t.Errorf("%s: %s, %v, want %s", path, got, err, want)
		}
	}
	if got, err := Target(at("broken")); err == nil {
		t.Errorf("a link to nothing leads to %s", got)
	}
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
