package killsheet

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/gas"
)

// TestBoyleByHand: half a cubic metre at 100 bar is 1 m³ at 50 bar and 50 m³ at 1 bar; 49.5 m³ of mud leave.
func TestBoyleByHand(t *testing.T) {
	trapped := Trapped{0.5, gas.State{Pressure: 1e7, Temperature: 280}}
	below, surface := gas.State{Pressure: 5e6, Temperature: 280}, gas.State{Pressure: 1e5, Temperature: 280}
	for riser, want := range map[float64]Released{
		100: {1, 50, 49.5, false},
		40:  {1, 50, 39.5, true},
	} {
		got := must(trapped.Release(below, surface, riser, idealGrowth))(t)
		near(t, "in the riser", got.InRiser, want.InRiser, 1e-12)
		near(t, "at the surface", got.AtSurface, want.AtSurface, 1e-12)
		near(t, "displaced", got.Displaced, want.Displaced, 1e-12)
		if got.Unloads != want.Unloads {
			t.Errorf("a riser of %v m³: %+v", riser, got)
		}
	}
	warm := must(idealGrowth(gas.State{Pressure: 1e5, Temperature: 280}, gas.State{Pressure: 1e5, Temperature: 308}))(t)
	near(t, "a tenth warmer", warm, 1.1, 1e-12)
}

// TestARealGasIsDenser under pressure than an ideal one where its factor is below one, so that it grows more.
func TestARealGasIsDenser(t *testing.T) {
	methane, err := gas.Natural(0.6, gas.DranchukAbouKassem)
	if err != nil {
		t.Fatal(err)
	}
	trapped := Trapped{0.3, gas.State{Pressure: 1e7, Temperature: 290}}
	below, surface := gas.State{Pressure: 9e6, Temperature: 290}, gas.State{Pressure: Atmosphere, Temperature: 290}
	ideal := must(trapped.Release(below, surface, 200, idealGrowth))(t)
	real := must(trapped.Release(below, surface, 200, methane.Growth))(t)
	z, err := methane.Z(trapped.At)
	if err != nil || !(z < 1) {
		t.Fatal(z, err)
	}
	near(t, "real over ideal", real.AtSurface/ideal.AtSurface, 1/z, 3e-3) // one atmosphere is not quite nothing
}

// TestTheRiserHoldsWhatItCan: mud left, mud driven out and mud that fell into the stack are the mud that was there.
func TestTheRiserHoldsWhatItCan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stack := gas.State{Pressure: rapid.Float64Range(2e6, 5e7).Draw(t, "stack"), Temperature: 280}
		trapped := Trapped{rapid.Float64Range(0, 2).Draw(t, "volume"), stack}
		riser := rapid.Float64Range(5, 300).Draw(t, "riser")
		below := gas.State{Pressure: trapped.At.Pressure * rapid.Float64Range(0.2, 1).Draw(t, "below"), Temperature: 285}
		got := must(trapped.Release(below, gas.State{Pressure: Atmosphere, Temperature: 290}, riser, idealGrowth))(t)
		left := riser - min(got.AtSurface, riser)
		near(t, "mud", left+got.Displaced+trapped.Volume, riser, 1e-9)
		if got.Unloads != (left == 0) || got.AtSurface < got.InRiser || got.InRiser < trapped.Volume {
			t.Errorf("%+v", got)
		}
	})
}

func TestGasWithoutAState(t *testing.T) {
	good := gas.State{Pressure: 1e6, Temperature: 280}
	lost := errors.New("lost")
	for name, err := range map[string]error{
		"no law":    second(Trapped{1, good}.Release(good, good, 10, nil)),
		"no riser":  second(Trapped{1, good}.Release(good, good, 0, idealGrowth)),
		"no volume": second(Trapped{math.NaN(), good}.Release(good, good, 10, idealGrowth)),
		"a law that fails": second(Trapped{1, good}.Release(good, good, 10,
			func(gas.State, gas.State) (float64, error) { return 0, lost })),
	} {
		if err == nil {
			t.Errorf("%s gives a number", name)
		}
	}
}

// idealGrowth is the growth of an ideal gas: the law of Boyle where the temperature stays.
func idealGrowth(from, to gas.State) (float64, error) {
	return from.Pressure / to.Pressure * (to.Temperature / from.Temperature), nil
}
