package killsheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/column"
)

// TestInfluxDensityComesBack from the casing pressure that it makes.
func TestInfluxDensityComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mud := rapid.Float64Range(1000, 2200).Draw(t, "mud")
		influx := mud * rapid.Float64Range(0.01, 1).Draw(t, "influx")
		sidpp, height := rapid.Float64Range(0, 1e7).Draw(t, "SIDPP"), rapid.Float64Range(1, 1500).Draw(t, "height")
		sicp := sidpp + (mud-influx)*column.G*height
		near(t, "influx", must(InfluxDensity(mud, sidpp, sicp, height))(t), influx, 1e-6)
	})
}

func TestAnInfluxThatMakesNoSense(t *testing.T) {
	for name, err := range map[string]error{
		"no height":             second(InfluxDensity(1200, 1e6, 2e6, 0)),
		"casing below the pipe": second(InfluxDensity(1200, 2e6, 1e6, 100)),
		"lighter than nothing":  second(InfluxDensity(1200, 0, 2e6, 100)),
	} {
		if err == nil {
			t.Errorf("%s gives a number", name)
		}
	}
}

func second[T any](_ T, err error) error { return err }

func TestKinds(t *testing.T) {
	for _, c := range []struct {
		ppg  float64
		kind Kind
		name string
	}{
		{-0.1, UnknownKind, "unknown"}, {math.NaN(), UnknownKind, "unknown"}, {math.Inf(1), UnknownKind, "unknown"},
		{0, Gas, "gas"}, {1, Gas, "gas"}, {2.9, Gas, "gas"}, {3.5, GasWithLiquid, "gas with oil or water"},
		{4.1, Oil, "oil, or gas with water"},
		{5.9, Oil, "oil, or gas with water"}, {6.5, OilWithWater, "oil with water"}, {7.1, Water, "water"}, {9, Water, "water"},
	} {
		if got := KindOf(c.ppg * ppg); got != c.kind || got.String() != c.name {
			t.Errorf("%v ppg is %v, want %v", c.ppg, got, c.name)
		}
	}
}

// TestMigrationByHand: 1200 kg/m³ × 9.80665 × 1 m are 11767.98 Pa; in ten seconds, 0.1 m/s.
func TestMigrationByHand(t *testing.T) {
	near(t, "rate", must(MigrationRate(1200, 11767.98, 10))(t), 0.1, 1e-12)
}

// TestHeavierMudHoldsGasBack in the empirical rule, from 12 ft/s without any.
func TestHeavierMudHoldsGasBack(t *testing.T) {
	near(t, "in next to nothing", must(EmpiricalRise(1e-9))(t), 12*0.3048, 1e-9)
	rapid.Check(t, func(t *rapid.T) {
		mud := rapid.Float64Range(800, 2200).Draw(t, "mud")
		if a, b := must(EmpiricalRise(mud))(t), must(EmpiricalRise(mud*1.01))(t); !(a > b && b > 0) {
			t.Errorf("%v, %v in heavier mud", a, b)
		}
	})
}
