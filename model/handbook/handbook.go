// Package handbook reads the published check values that stand in the testdata of other packages. Tests alone use it.
package handbook

import (
	"math"
	"testing"

	"github.com/BurntSushi/toml"
)

// Load reads a TOML file of check values into a T. A key that T has no place for fails the test: a check value that nobody
// reads checks nothing.
func Load[T any](t testing.TB, path string) (values T) {
	t.Helper()
	meta, err := toml.DecodeFile(path, &values)
	if err != nil {
		t.Fatal(err)
	}
	if left := meta.Undecoded(); len(left) > 0 {
		t.Fatalf("%s: keys not read: %v", path, left)
	}
	return values
}

// Within reports whether got is no further from want than a percentage of it.
func Within(got, want, percent float64) bool {
	return math.Abs(got-want) <= math.Abs(want)*percent/100
}
