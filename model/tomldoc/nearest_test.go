package tomldoc

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	known := []string{"name", "water_depth", "od", "id", "td", "weight", "grade", "excess_open_hole"}
	tests := []struct {
		key, want string
		found     bool
	}{
		{"nmae", "name", true},
		{"Name", "name", true},
		{"water-depth", "water_depth", true},
		{"waterdepth", "water_depth", true},
		{"wieght", "weight", true},
		{"weigth", "weight", true},
		{"grad", "grade", true},
		{"ode", "od", true},
		{"odd", "od", true},
		{"excess_openhole", "excess_open_hole", true},
		{"exces_opn_hol", "excess_open_hole", true},
		{"exc_opn_hol", "", false},
		{"rig", "", false},
		{"colour", "", false},
		{"x", "", false},
		{"", "", false},
		{strings.Repeat("n", 1000), "", false},
	}
	for _, test := range tests {
		if got, ok := Nearest(test.key, known); got != test.want || ok != test.found {
			t.Errorf("Nearest(%q) = %q, %t, want %q, %t", test.key, got, ok, test.want, test.found)
		}
	}
	if got, _ := Nearest("ad", []string{"bd", "ab", "ad"}); got != "ad" {
		t.Errorf("Nearest takes %q, want the key itself", got)
	}
	if got, _ := Nearest("abcdef", []string{"abcxyf", "abcdxf", "xbcdef"}); got != "abcdxf" {
		t.Errorf("Nearest takes %q, want the first of the nearest", got)
	}
}

// TestDistance compares the bounded distance with that of a plain recursion.
func TestDistance(t *testing.T) {
	var plain func(a, b []rune) int
	plain = func(a, b []rune) int {
		if len(a) == 0 || len(b) == 0 {
			return len(a) + len(b)
		}
		x, y := a[1:], b[1:]
		best := min(plain(x, b), plain(a, y)) + 1
		if a[0] == b[0] {
			best = min(best, plain(x, y))
		} else {
			best = min(best, plain(x, y)+1)
		}
		if len(x) > 0 && len(y) > 0 && a[0] == b[1] && a[1] == b[0] {
			best = min(best, plain(a[2:], b[2:])+1)
		}
		return best
	}
	words := rapid.SliceOfN(rapid.SampledFrom([]rune("abc")), 0, 6)
	rapid.Check(t, func(t *rapid.T) {
		a, b := words.Draw(t, "a"), words.Draw(t, "b")
		bound := rapid.IntRange(0, 4).Draw(t, "bound")
		if got, want := distance(a, b, bound), min(plain(a, b), bound+1); got != want {
			t.Fatalf("distance(%q, %q, %d) = %d, want %d", string(a), string(b), bound, got, want)
		}
	})
}
