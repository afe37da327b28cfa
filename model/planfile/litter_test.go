package planfile_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"borewalk/model/planfile"
	"borewalk/model/process"
)

// What a process that was killed while it saved has left is cleared; what one that runs, or one of another host, has there is not,
// nor what merely looks alike.
func TestOnlyLitterOfTheDeadIsCleared(t *testing.T) {
	dir := t.TempDir()
	ended := exec.Command(os.Args[0], "-test.run=^$")
	if err := ended.Run(); err != nil {
		t.Fatal(err)
	}
	own := process.Own()
	dead, elsewhere := own, own
	dead.Pid = ended.Process.Pid
	elsewhere.Host += "-other"
	if !process.Left(dead.Tag()) {
		t.Skip("this system does not tell which process has ended")
	}
	clears := map[string]bool{
		fmt.Sprintf(".plan.toml.%s.0123abcd.tmp", dead.Tag()):               true,
		fmt.Sprintf(".plan.toml.%s.journal.%[1]s.0123abcd.tmp", dead.Tag()): true,
		fmt.Sprintf(".plan.toml.%s.0123abcd.tmp", own.Tag()):                false,
		fmt.Sprintf(".plan.toml.%s.0123abcd.tmp", elsewhere.Tag()):          false,
		fmt.Sprintf(".other.toml.%s.0123abcd.tmp", dead.Tag()):              false,
		fmt.Sprintf(".plan.toml.%s.tmp", dead.Tag()):                        false,
		fmt.Sprintf(".plan.toml.%s.0123abcd.toml", dead.Tag()):              false,
		"plan.toml": false,
	}
	for name := range clears {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	planfile.ClearLitter(filepath.Join(dir, "plan.toml"))
	for name, cleared := range clears {
		if _, err := os.Lstat(filepath.Join(dir, name)); os.IsNotExist(err) != cleared {
			t.Errorf("%s: cleared %v, want %v", name, !cleared, cleared)
		}
	}
}
