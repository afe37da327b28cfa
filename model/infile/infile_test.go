package infile

import (
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

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
