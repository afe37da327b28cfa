package quantity

import (
	"math"
	"strings"
	"testing"
)

// TestTableIsSound holds the table of units to what the readers rely on.
func TestTableIsSound(t *testing.T) {
	seen := map[dimension]map[string]Unit{}
	for i := 1; i < unitCount; i++ {
		u, row := Unit(i), unitTable[i]
		if row.dim == noDimension || row.num <= 0 || row.den <= 0 || row.step <= 0 {
			t.Errorf("unit %d (%s) is incomplete: %+v", i, row.symbol, row)
			continue
		}
		if row.zero != 0 && row.dim != temperature {
			t.Errorf("%s has a zero point, want that of temperatures only", row.symbol)
		}
		for _, c := range []byte(row.symbol) {
			if c <= ' ' || c > '~' {
				t.Errorf("symbol %q is not plain ASCII without spaces", row.symbol)
			}
		}
		if seen[row.dim] == nil {
			seen[row.dim] = map[string]Unit{}
		}
		for spelling := range strings.FieldsSeq(row.spellings) {
			if other, twice := seen[row.dim][spelling]; twice {
				t.Errorf("spelling %q means %s and %s", spelling, other.ASCII(), row.symbol)
			}
			seen[row.dim][spelling] = u
			if got := strings.ToLower(normal(spelling)); got != spelling {
				t.Errorf("spelling %q of %s is not in normal form %q", spelling, row.symbol, got)
			}
		}
		if row.trap != "" && seen[row.dim][strings.ToLower(row.trap)] != u {
			t.Errorf("trap %q of %s is none of its spellings", row.trap, row.symbol)
		}
	}
	for i, row := range kindTable {
		if row.name == "" || row.dim == noDimension {
			t.Errorf("kind %d is incomplete: %+v", i, row)
		}
	}
}

func TestUnitsAreReadBack(t *testing.T) {
	for _, k := range Kinds() {
		units := Units(k)
		if len(units) == 0 {
			t.Errorf("Units(%v) is empty", k)
		}
		for _, u := range units {
			for _, symbol := range []string{u.Symbol(), u.ASCII(), " " + u.Symbol() + "\t"} {
				if got, err := ParseUnit(symbol, k); err != nil || got != u {
					t.Errorf("ParseUnit(%q, %v) = %s, %v, want %s", symbol, k, got.ASCII(), err, u.ASCII())
				}
			}
			if !u.Fits(k) {
				t.Errorf("%s.Fits(%v) = false, want true", u.ASCII(), k)
			}
		}
	}
}

func TestNoUnit(t *testing.T) {
	for _, u := range []Unit{0, Unit(unitCount), 65535} {
		if u.Fits(Length) || u.Fits(Number) || u.Fits(Kind(250)) {
			t.Errorf("Unit(%d) fits a kind", u)
		}
		if u.Symbol() != "" || u.ASCII() != "" {
			t.Errorf("Unit(%d) has the symbol %q", u, u.Symbol())
		}
		if !math.IsNaN(u.FromSI(1)) || !math.IsNaN(u.ToSI(1)) || !math.IsNaN(u.ScaleFromSI(1)) {
			t.Errorf("Unit(%d) converts, want NaN", u)
		}
	}
	if Units(Kind(250)) != nil {
		t.Error("Units(Kind(250)) is not nil")
	}
	if _, err := Parse("1", Kind(250), Metre); err == nil {
		t.Error("Parse for an unknown kind succeeds")
	}
}

// TestScaleFromSI holds that a difference knows no zero point.
func TestScaleFromSI(t *testing.T) {
	if got := Fahrenheit.ScaleFromSI(5); math.Abs(got-9) > 1e-12 {
		t.Errorf("Fahrenheit.ScaleFromSI(5) = %v, want 9", got)
	}
	if got := Celsius.ScaleFromSI(5); got != 5 {
		t.Errorf("Celsius.ScaleFromSI(5) = %v, want 5", got)
	}
}
