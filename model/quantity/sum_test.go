package quantity_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/model/quantity"
)

func TestPlus(t *testing.T) {
	for _, c := range []struct {
		kind           quantity.Kind
		from, by, want string
	}{
		{quantity.Density, "1.25 sg", "0.05 sg", "1.3 sg"},
		{quantity.Density, "1.25 sg", "+0.1 ppg", "1.261983 sg"}, // 0.1 lb in 231 in3 is 11.9826 kg/m3
		{quantity.Length, "955 m", "-50 m", "905 m"},
		{quantity.Length, "955 m", "-200 ft", "894.04 m"},
		{quantity.Diameter, "17.5 in", "-1/8 in", "17.375 in"},
		{quantity.Temperature, "50 degF", "-18 degF", "32 degF"},
		{quantity.Temperature, "20 degC", "+9 degF", "25 degC"},
		{quantity.Temperature, "4 degC", "-5 degC", "-1 degC"},
		{quantity.Count, "3", "+2", "5"},
		{quantity.RotarySpeed, "120 rpm", "-20 rpm", "100 rpm"},
	} {
		from, err := quantity.Parse(c.from, c.kind, 0)
		if err != nil {
			t.Fatal(err)
		}
		by, err := quantity.Parse(c.by, c.kind, 0)
		if err != nil {
			t.Fatal(err)
		}
		if got, ok := quantity.Plus(from, by, c.kind); !ok || got.Text() != c.want {
			t.Errorf("%s moved by %s is %s, %v, want %s", c.from, c.by, got.Text(), ok, c.want)
		}
	}
	metre := quantity.Of(1, quantity.Metre)
	for _, bad := range [][2]quantity.Value{{{}, metre}, {metre, {}}, {metre, quantity.Of(1, quantity.Bar)}, {quantity.Of(9e14, quantity.Metre), quantity.Of(9e14, quantity.Metre)}} {
		if got, ok := quantity.Plus(bad[0], bad[1], quantity.Length); ok {
			t.Errorf("%v moved by %v is %v", bad[0], bad[1], got)
		}
	}
}

// TestPlusGoesThereAndBack: a difference in the same unit and its opposite leave what was entered, to the last bit.
func TestPlusGoesThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom(quantity.Kinds()).Draw(t, "kind")
		unit := rapid.SampledFrom(quantity.Units(kind)).Draw(t, "unit")
		amount := func(name string) float64 { return float64(rapid.IntRange(-1e6, 1e6).Draw(t, name)) / 1000 }
		if kind == quantity.Count {
			amount = func(name string) float64 { return float64(rapid.IntRange(-1e6, 1e6).Draw(t, name)) }
		}
		x, by := amount("from"), amount("by")
		from := quantity.Of(x, unit)
		there, ok := quantity.Plus(from, quantity.Of(by, unit), kind)
		if !ok || math.Abs(unit.FromSI(there.SI)-(x+by)) > 1e-9*(1+math.Abs(x)+math.Abs(by))*1e3 {
			t.Fatalf("%g moved by %g %s is %s", x, by, unit.ASCII(), there.Text())
		}
		if back, ok := quantity.Plus(there, quantity.Of(-by, unit), kind); !ok || back != from {
			t.Fatalf("%s comes back as %s", from.Text(), back.Text())
		}
	})
}
