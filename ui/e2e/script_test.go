//go:build !windows

package e2e_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"borewalk/plans"
)

// The command line, as scripts: each block says what it guards.
func TestCommandLine(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("testdata", "script"),
		RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("PATH", filepath.Dir(program)+string(os.PathListSeparator)+env.Getenv("PATH"))
			for _, name := range plans.Names() {
				text, _ := plans.Demo(name)
				if err := os.WriteFile(filepath.Join(env.WorkDir, name+".toml"), text, 0o644); err != nil {
					return err
				}
			}
			return nil
		},
	})
}
