//go:build unix

package planfile

import (
	"io/fs"
	"testing"
)

func TestAnotherGroupGetsNoMoreThanEverybody(t *testing.T) {
	for mode, want := range map[fs.FileMode]fs.FileMode{0o660: 0o600, 0o664: 0o644, 0o640: 0o600, 0o604: 0o644, 0o777: 0o777, 0o600: 0o600} {
		if got := narrowed(mode); got != want {
			t.Errorf("%o: %o, want %o", mode, got, want)
		}
	}
}
