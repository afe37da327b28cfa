package killsheet

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/column"
	"borewalk/calc/gas"
)

// TestAGasSandByHand: 40 m of gas of 10 kg/m³ from 610 m, on 6.5 MPa of water.
func TestAGasSandByHand(t *testing.T) {
	s := GasSand{610, 650, 10}
	near(t, "top", must(s.TopPressure(6.5e6))(t), 6.5e6-3922.66, 1e-12)
}

// TestTheTopIsAboveTheWater beside it by what the gas weighs less than that over the height of the sand, and gas of one density up
// to the seabed is what MASP makes of it.
func TestTheTopIsAboveTheWater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := GasSand{Top: rapid.Float64Range(200, 1500).Draw(t, "top"), Gas: rapid.Float64Range(0, 200).Draw(t, "gas")}
		s.Base = s.Top + rapid.Float64Range(0, 100).Draw(t, "height")
		water := rapid.Float64Range(1000, 1100).Draw(t, "water")
		base := water * column.G * s.Base
		top := must(s.TopPressure(base))(t)
		near(t, "top", top, water*column.G*s.Top+(water-s.Gas)*column.G*(s.Base-s.Top), 1e-9)
	})
}

// TestAnIdealGasColumn has a closed form, p exp(-M g h/(R T)), and where the temperature rises steadily with depth a power law.
func TestAnIdealGasColumn(t *testing.T) {
	const mass = 0.0174 // kg/mol
	rapid.Check(t, func(t *rapid.T) {
		pore, wellhead := rapid.Float64Range(1e6, 1e8).Draw(t, "pore"), rapid.Float64Range(0, 2000).Draw(t, "wellhead")
		height, warm := rapid.Float64Range(0, 6000).Draw(t, "height"), rapid.Float64Range(300, 450).Draw(t, "temperature")
		tvd := wellhead + height
		at := func(kelvin func(z float64) float64) float64 {
			return must(MASP(pore, tvd, wellhead, func(p, z float64) (float64, error) { return p * mass / (gas.R * kelvin(z)), nil }))(t)
		}
		near(t, "as warm everywhere", at(func(float64) float64 { return warm }), pore*math.Exp(-mass*column.G*height/(gas.R*warm)), 1e-7)
		const rise = 0.02 // K/m
		cold := warm - rise*height*0.5
		got := at(func(z float64) float64 { return cold + rise*0.5*(z-wellhead) })
		near(t, "warmer below", got, pore*math.Pow(cold/warm, mass*column.G/(gas.R*rise*0.5)), 1e-7)
	})
}

// TestTheTallestGasColumn, of the densest of ideal gases: the steps are few enough to count and still right.
func TestTheTallestGasColumn(t *testing.T) {
	const mass, cold, height = 0.02, 280, 7000
	got := must(MASP(1e8, height, 0, func(p, _ float64) (float64, error) { return p * mass / (gas.R * cold), nil }))(t)
	near(t, "at the wellhead", got, 1e8*math.Exp(-mass*column.G*height/(gas.R*cold)), 1e-7)
}

// TestARealGasColumn against midpoint steps of a metre.
func TestARealGasColumn(t *testing.T) {
	g, err := gas.Natural(0.65, gas.DranchukAbouKassem)
	if err != nil {
		t.Fatal(err)
	}
	density := func(p, z float64) (float64, error) {
		return g.Density(gas.State{Pressure: p + Atmosphere, Temperature: 280 + 0.03*(z-500)})
	}
	got := must(MASP(6e7, 4500, 500, density))(t)
	p := 6e7
	for k := range 4000 {
		z := 4500 - float64(k)
		half := p - must(density(p, z))(t)*column.G/2
		p -= must(density(half, z-0.5))(t) * column.G
	}
	near(t, "at the wellhead", got, p, 1e-7)
}

func TestGasThatIsNone(t *testing.T) {
	lost := errors.New("lost")
	for name, err := range map[string]error{
		"a base above the top": second(GasSand{600, 500, 10}.TopPressure(5e6)),
		"no top":               second(GasSand{0, 500, 10}.TopPressure(5e6)),
		"no pressure":          second(GasSand{400, 500, 10}.TopPressure(0)),
		"no gas":               second(MASP(1e7, 1000, 100, nil)),
		"gas of less":          second(MASP(1e7, 1000, 100, Steady(-1))),
		"gas that fails":       second(MASP(1e7, 1000, 100, func(float64, float64) (float64, error) { return 0, lost })),
		"a wellhead below":     second(MASP(1e7, 1000, 1100, Steady(100))),
		"too heavy":            second(MASP(1e6, 1000, 100, Steady(1000))),
	} {
		if err == nil {
			t.Errorf("%s gives a number", name)
		}
	}
}

func BenchmarkMASP(b *testing.B) {
	g, _ := gas.Natural(0.65, gas.DranchukAbouKassem)
	density := func(p, z float64) (float64, error) {
		return g.Density(gas.State{Pressure: p + Atmosphere, Temperature: 280 + 0.03*z})
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := MASP(6e7, 4500, 500, density); err != nil {
			b.Fatal(err)
		}
	}
}
