// Package statefolder says where the program keeps what is neither a plan nor a setting: what was copied last, and the like.
package statefolder

import (
	"errors"
	"path"
	"strings"
)

// Path returns the folder for the program's state, which need not exist yet: in %LocalAppData% on Windows, else in $XDG_STATE_HOME,
// or in ~/.local/state where that is not set (XDG Base Directory Specification, from memory). env reads the environment, as
// os.Getenv does, and goos is the system as runtime.GOOS spells it. The error says which variable is missing.
func Path(env func(string) string, goos string) (string, error) {
	if goos == "windows" {
		if folder := env("LocalAppData"); folder != "" {
			return strings.TrimRight(folder, `\/`) + `\borewalk`, nil
		}
		return "", errors.New("there is no folder for the program's state: set LocalAppData")
	}
	if folder := env("XDG_STATE_HOME"); path.IsAbs(folder) { // the specification has others ignored
		return path.Join(folder, "borewalk"), nil
	}
	if home := env("HOME"); path.IsAbs(home) {
		return path.Join(home, ".local", "state", "borewalk"), nil
	}
	return "", errors.New("there is no folder for the program's state: set HOME or XDG_STATE_HOME")
}
