package quantity

import (
	"errors"
	"maps"
	"strings"
	"testing"
)

func TestEverySetShowsEveryKind(t *testing.T) {
	for _, s := range Sets() {
		system := NewSystem(s, nil)
		for _, k := range Kinds() {
			if u := system.Unit(k); !u.Fits(k) {
				t.Errorf("%v shows %v in %q, which does not fit", s, k, u.ASCII())
			}
		}
		if got, err := ParseSet(" " + strings.ToUpper(s.String())); err != nil || got != s {
			t.Errorf("ParseSet(%v) = %v, %v", s, got, err)
		}
	}
	if _, err := ParseSet("imperial"); !errors.Is(err, ErrUnit) {
		t.Errorf("ParseSet(imperial) = %v, want %v", err, ErrUnit)
	}
}

func TestSetsAreTheTrades(t *testing.T) {
	tests := []struct {
		kind              Kind
		metric, field, si string
	}{
		{Length, "m", "ft", "m"},
		{Diameter, "in", "in", "mm"},
		{Density, "sg", "ppg", "kg/m3"},
		{Pressure, "bar", "psi", "kPa"},
		{Volume, "m3", "bbl", "m3"},
		{Flow, "L/min", "gpm", "L/s"},
		{Force, "tf", "klbf", "kN"},
		{YieldPoint, "Pa", "lbf/100ft2", "Pa"},
		{MixWater, "L/100kg", "gal/sk", "m3/t"},
		{Temperature, "degC", "degF", "degC"},
	}
	for _, tt := range tests {
		for s, want := range map[Set]string{Metric: tt.metric, Field: tt.field, SI: tt.si} {
			if got := NewSystem(s, nil).Unit(tt.kind).ASCII(); got != want {
				t.Errorf("%v shows %v in %s, want %s", s, tt.kind, got, want)
			}
		}
	}
}

func TestSystemOverrides(t *testing.T) {
	mixed := NewSystem(Metric, map[Kind]Unit{Volume: Barrel, Pressure: PSI, Density: PSI, Length: Metre})
	if got := mixed.Unit(Volume); got != Barrel {
		t.Errorf("overridden volume is shown in %s, want bbl", got.ASCII())
	}
	if got := mixed.Unit(Density); got != SpecificGravity {
		t.Errorf("density with an unfit override is shown in %s, want sg", got.ASCII())
	}
	if want := (map[Kind]Unit{Volume: Barrel, Pressure: PSI}); !maps.Equal(mixed.Overrides(), want) {
		t.Errorf("Overrides() = %v, want %v", mixed.Overrides(), want)
	}
	if mixed.Set() != Metric {
		t.Errorf("Set() = %v, want metric", mixed.Set())
	}
	if back := mixed.With(Volume, CubicMetre).With(Pressure, Bar); back != (System{}) {
		t.Errorf("system without overrides = %v, want the zero System", back)
	}
	if got := NewSystem(Set(9), nil).Set(); got != Metric {
		t.Errorf("NewSystem(Set(9)).Set() = %v, want metric", got)
	}
	if got := mixed.Unit(Kind(250)); got != 0 {
		t.Errorf("Unit(Kind(250)) = %v, want 0", got)
	}
	if got := mixed.With(Kind(250), Metre); got != mixed {
		t.Error("With(Kind(250)) changed the system")
	}
}
