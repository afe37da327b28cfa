package quantity

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// TestOneDivisionIsTheExactProduct: the short way to SI gives what the long one does, to the last bit.
func TestOneDivisionIsTheExactProduct(t *testing.T) {
	short := 0
	rapid.Check(t, func(t *rapid.T) {
		u := Unit(rapid.IntRange(0, unitCount-1).Draw(t, "unit"))
		d := decimal{big.NewInt(rapid.OneOf(rapid.Int64Range(-1e6, 1e6), rapid.Int64Range(1<<50, 1<<56), rapid.Int64()).Draw(t, "digits")), rapid.OneOf(rapid.IntRange(0, 3), rapid.IntRange(0, maxPlaces)).Draw(t, "places")}
		quick, ok := d.divided(u.row())
		if !ok {
			return
		}
		short++
		if want := d.rounded(u.row()); quick != want {
			t.Fatalf("%s %v: %v, want %v", d.text(), u, quick, want)
		}
	})
	if short == 0 {
		t.Error("the short way was never taken")
	}
}
