package killsheet

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/bore"
	"borewalk/calc/gas"
)

// outcomes are all that the package makes of ten numbers, flattened.
func outcomes(n [10]float64) map[string]func() ([]float64, error) {
	one := func(x float64, err error) ([]float64, error) { return []float64{x}, err }
	sea, line := Seabed{n[0], n[1], n[2]}, ChokeLine{n[0], n[1]}
	sand, shoe := GasSand{n[0], n[1], n[2]}, ShoeTest{n[0], n[1], n[2], n[3], n[4]}
	wall := PressureTest{n[0], n[1]}
	kill := DynamicKill{Sea: sea, Mud: n[3], TVD: n[4], Formation: n[5], Most: n[6], Friction: PowerLaw(n[7], n[8], n[9])}
	steps := StepDown{Inside: []bore.Interval{{Bottom: n[0], Outer: n[1]}, {Top: n[0], Bottom: n[2], Outer: n[3]}},
		TVD: build(n[4], n[5]), SIDPP: n[6], Overbalance: n[7], Slow: n[8], Final: n[9]}
	chokes := func(list []ChokeStep, err error) (flat []float64, _ error) {
		for _, at := range list {
			flat = append(flat, at.Rate, at.Loss, at.Casing, at.Excess)
		}
		return flat, err
	}
	return map[string]func() ([]float64, error){
		"kill density": func() ([]float64, error) { return one(KillDensity(n[0], n[1], n[2], n[3])) },
		"trip margin":  func() ([]float64, error) { return one(TripMargin(n[0], n[1], n[2])) },
		"initial":      func() ([]float64, error) { return one(Initial(n[0], n[1], n[2])) },
		"final":        func() ([]float64, error) { return one(Final(n[0], n[1], n[2])) },
		"at rate":      func() ([]float64, error) { return one(AtRate(n[0], n[1], n[2], n[3])) },
		"steps": func() (flat []float64, _ error) {
			list, err := steps.Steps(3)
			for _, at := range list {
				flat = append(flat, at.Volume, at.MD, at.TVD, at.Static, at.Pressure)
			}
			return flat, err
		},
		"straight": func() ([]float64, error) {
			over, under, err := steps.Straight()
			return []float64{over.Line, over.Pressure, under.Line, under.Pressure}, err
		},
		"choke line": func() ([]float64, error) { return one(line.Loss(n[2], n[3])) },
		"velocity":   func() ([]float64, error) { return one(line.Velocity(n[2])) },
		"bring up":   func() ([]float64, error) { return chokes(BringUp(n[0], n[1], 3, PowerLaw(n[2], n[3], n[4]))) },
		"influx":     func() ([]float64, error) { return one(InfluxDensity(n[0], n[1], n[2], n[3])) },
		"migration":  func() ([]float64, error) { return one(MigrationRate(n[0], n[1], n[2])) },
		"rise":       func() ([]float64, error) { return one(EmpiricalRise(n[0])) },
		"density":    func() ([]float64, error) { return one(sea.DensityWithRiserMargin(n[3], n[4])) },
		"margin":     func() ([]float64, error) { return one(sea.RiserMargin(n[3], n[4])) },
		"lost":       func() ([]float64, error) { return one(sea.Lost(n[3])) },
		"left":       func() ([]float64, error) { return one(sea.Left(n[3], n[4], n[5])) },
		"lasts":      func() ([]float64, error) { return one(Lasts(n[0], n[1])) },
		"sand":       func() ([]float64, error) { return one(sand.TopPressure(n[3])) },
		"MASP":       func() ([]float64, error) { return one(MASP(n[0], n[1], n[2], Steady(n[3]))) },
		"pump":       func() ([]float64, error) { return one(wall.Pump(n[2], n[3], n[4])) },
		"shoe":       func() ([]float64, error) { return one(shoe.Pressure(n[5])) },
		"shoe gauge": func() ([]float64, error) { return one(shoe.Gauge(n[5])) },
		"dynamic kill": func() ([]float64, error) {
			flow, _, err := kill.Flow()
			return []float64{flow}, err
		},
		"dynamic kill over": func() ([]float64, error) { return one(kill.Over(n[6])) },
		"trapped": func() ([]float64, error) {
			r, err := Trapped{n[0], gas.State{Pressure: n[1], Temperature: n[2]}}.Release(gas.State{Pressure: n[3], Temperature: n[4]},
				gas.State{Pressure: n[5], Temperature: n[6]}, n[7], idealGrowth)
			return []float64{r.InRiser, r.AtSurface, r.Displaced}, err
		},
	}
}

// Whatever is put in, what comes out without an error is a number, and an error is one line.
func TestNothingUnmarkedComesOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var n [10]float64
		for k := range n {
			n[k] = rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 5000), rapid.Float64Range(0, 1e8),
				rapid.SampledFrom([]float64{0, 1, 1000, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, 5e-324})).Draw(t, "n")
		}
		for name, do := range outcomes(n) {
			values, err := do()
			if err != nil {
				if text := err.Error(); strings.Contains(text, "\n") || !strings.Contains(text, ";") {
					t.Errorf("%s: error %q", name, text)
				}
				continue
			}
			for _, v := range values {
				if !finite(v) {
					t.Errorf("%s of %v: %v without an error", name, n, values)
				}
			}
		}
	})
}

func TestFaultsAreNamed(t *testing.T) {
	for want, err := range map[string]error{
		"kill density: mud of 0 kg/m³; give more than 0":        second(KillDensity(0, 1, 1, 1)),
		"kill density: SIDPP of -1 Pa; give 0 or more":          second(KillDensity(1200, -1, 1, 1)),
		"kill density: depth of +Inf m; give more than 0":       second(KillDensity(1200, 1, 1, math.Inf(1))),
		"kill density: comes out as +Inf; check the units":      second(KillDensity(1200, 1e300, 0, 1e-300)),
		"trip margin: gap between hole and pipe of -0.1 m":      second(TripMargin(5, 0.2, 0.3)),
		"choke line: bore of 0 m":                               second(ChokeLine{100, 0}.Loss(1200, 0.01)),
		"pressure test: depth below the gauge of -5 m":          second(PressureTest{1000, 20}.Pump(1e6, 15, 0)),
		"pressure test: pressure outside of NaN Pa; give a num": second(PressureTest{1000, 0}.Pump(1e6, 15, math.NaN())),
		"pressure lost with the riser: mud of 0 kg/m³":          second(Seabed{25, 500, 1025}.Left(0, 1e7, 600)),
		"shoe test: equivalent density of 0":                    second(ShoeTest{Mud: 1200, Shoe: 100}.Gauge(0)),
		"pressure test: wanted differential of +Inf Pa; give a": second(PressureTest{1000, 0}.Pump(math.Inf(1), 15, 0)),
		"bringing the pump up: 0 steps; give 1 to 1000":         second(BringUp(1e6, 0.01, 0, PowerLaw(1e5, 0.01, Square))),
		"shoe test: gauge of -1 Pa; give 0 or more":             second(ShoeTest{Mud: 1200, Shoe: 100}.Pressure(-1)),
		"seabed: a depth of 400 m is not below the mudline":     second(Seabed{25, 500, 1025}.Left(1200, 1e7, 400)),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want it to hold %q", err, want)
		}
	}
}

func BenchmarkKillDensity(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := KillDensity(1200, 3e6, 1e6, 3000); err != nil {
			b.Fatal(err)
		}
	}
}
