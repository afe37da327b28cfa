package gas

import (
	"errors"
	"math"
	"testing"

	"borewalk/model/handbook"
)

// equations are all that there are.
func equations() []Equation { return []Equation{DranchukAbouKassem, HallYarborough, BrillBeggs} }

type published struct {
	Case []struct {
		ID, Source, Where, Equation string
		Seen                        bool
		TolerancePct                float64 `toml:"tolerance_pct"`
		Given                       struct{ PPR, TPR float64 }
		Expected                    struct{ Z float64 }
	}
}

func TestPublishedFactors(t *testing.T) {
	done := 0
	for _, c := range handbook.Load[published](t, "testdata/z.toml").Case {
		for _, e := range equations() {
			if e.String() != c.Equation {
				continue
			}
			done++
			if z, err := e.Z(c.Given.PPR, c.Given.TPR); err != nil || !handbook.Within(z, c.Expected.Z, c.TolerancePct) {
				t.Errorf("%s: z = %.9g, %v, want %.9g within %g %% (%s)", c.ID, z, err, c.Expected.Z, c.TolerancePct, c.Source)
			}
		}
	}
	if done != 9 {
		t.Errorf("%d cases done, want 9", done)
	}
}

// TestTheChart: readings of the chart of Standing and Katz, from memory, that the equations were fitted to.
func TestTheChart(t *testing.T) {
	for _, c := range []struct{ ppr, tpr, z float64 }{
		{1, 1.5, 0.905}, {2, 1.5, 0.82}, {3, 1.5, 0.782}, {3, 2, 0.938}, {8, 1.5, 0.99}, {15, 1.5, 1.49},
	} {
		for _, e := range equations() {
			z, err := e.Z(c.ppr, c.tpr)
			if err != nil && e == BrillBeggs && c.ppr > 13 {
				continue
			}
			if err != nil || math.Abs(z-c.z) > 0.02*c.z {
				t.Errorf("%v at %v, %v: %.4f, %v, want %v", e, c.ppr, c.tpr, z, err, c.z)
			}
		}
	}
}

// TestSuttonByHand: at a gravity of 0.7, 756.8 - 91.7 - 1.764 = 663.336 psia and 169.2 + 244.65 - 36.26 = 377.59 °R.
func TestSuttonByHand(t *testing.T) {
	g, err := Natural(0.7, DranchukAbouKassem)
	p, k := g.Critical()
	if err != nil || math.Abs(p/6894.757-663.336) > 1e-3 || math.Abs(k*1.8-377.59) > 1e-9 {
		t.Errorf("%v psia, %v °R, %v", p/6894.757, k*1.8, err)
	}
}

// TestMethane: the lightest gas against methane itself. Critical point 4.599 MPa and 190.56 K (Setzmann and Wagner, 1991,
// from memory); second virial coefficients in cm³/mol and the third, 2400 cm⁶/mol² (Dymond and Smith, The virial
// coefficients of pure gases and mixtures, 1980, from memory), which give z at 2 MPa.
func TestMethane(t *testing.T) {
	const mass = 0.0160425
	for _, e := range equations() {
		g, err := Natural(mass/airMass, e)
		if err != nil {
			t.Fatal(err)
		}
		p, k := g.Critical()
		if math.Abs(p-4.599e6) > 0.03*4.599e6 || math.Abs(k-190.56) > 0.01*190.56 {
			t.Errorf("critical point %v Pa, %v K", p, k)
		}
		for _, c := range []struct{ kelvin, second float64 }{{300, -42}, {350, -27}, {400, -16}} {
			const pascal = 2e6
			thin := pascal / (R * c.kelvin)
			want := 1 + c.second*1e-6*thin + (2400e-12-c.second*c.second*1e-12)*thin*thin
			z, err := g.Z(State{pascal, c.kelvin})
			if err != nil || math.Abs(z-want) > 0.01 {
				t.Errorf("%v at %v K: z = %.4f, %v, want %.4f", e, c.kelvin, z, err, want)
			}
		}
	}
}

// TestThinGasWeighsItsGravityOfAir: air at 15 °C and one atmosphere, 1.2250 kg/m³ (U.S. Standard Atmosphere 1976).
func TestThinGasWeighsItsGravityOfAir(t *testing.T) {
	for _, gravity := range []float64{0.554, 0.6, 0.65, 0.8} {
		for _, e := range []Equation{DranchukAbouKassem, HallYarborough} {
			g, _ := Natural(gravity, e)
			d, err := g.Density(State{101325, 288.15})
			if err != nil || math.Abs(d-gravity*1.2250) > 5e-3*d {
				t.Errorf("%v, gravity %v: %v kg/m³, %v", e, gravity, d, err)
			}
		}
	}
}

// TestOutsideTheDomain is refused with an error of its own kind, at the edge it is not.
func TestOutsideTheDomain(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, e := range equations() {
		d, _ := e.domain()
		for _, edge := range [][2]float64{{0, d.coldest}, {0, d.hottest}, {d.most, d.coldest}, {d.most, d.hottest}} {
			if z, err := e.Z(edge[0], edge[1]); err != nil || !(z > 0.1 && z < 4) {
				t.Errorf("%v at %v: %v, %v", e, edge, z, err)
			}
		}
		for _, bad := range [][2]float64{{-1e-9, 1.5}, {d.most * 1.001, 1.5}, {nan, 1.5}, {inf, 1.5}, {1, d.coldest - 1e-3}, {1, d.hottest + 1e-3}, {1, nan}, {1, inf}, {1, 0}, {1, -1}} {
			var outside *OutsideError
			if z, err := e.Z(bad[0], bad[1]); z != 0 || !errors.As(err, &outside) {
				t.Errorf("%v at %v: %v, %v", e, bad, z, err)
			}
		}
		for _, gravity := range []float64{0, 0.5, 1.7, nan, inf} {
			if g, err := Natural(gravity, e); err == nil || g != (Gas{}) {
				t.Errorf("a gas of gravity %v", gravity)
			}
		}
	}
	if _, err := Natural(0.65, BrillBeggs+1); err == nil {
		t.Error("a gas by an equation that is none")
	}
	if z, err := Equation(-1).Z(1, 1.5); err == nil {
		t.Errorf("z = %v by an equation that is none", z)
	}
}

// TestNoStateNoAnswer: a gas that nobody made, and a bubble in a vacuum.
func TestNoStateNoAnswer(t *testing.T) {
	for _, at := range []State{{}, {1e7, 300}, {0, 300}, {1e7, 0}} {
		if d, err := (Gas{}).Density(at); err == nil || d != 0 {
			t.Errorf("density of no gas %v", d)
		}
	}
	g, _ := Natural(0.65, DranchukAbouKassem)
	good := State{1e7, 300}
	for _, bad := range []State{{0, 300}, {0.5, 300}, {-1, 300}, {1e9, 300}, {1e7, 100}} {
		for _, way := range [][2]State{{good, bad}, {bad, good}} {
			if r, err := g.Growth(way[0], way[1]); err == nil || r != 0 {
				t.Errorf("growth %v: %v", way, r)
			}
		}
	}
	if d, err := g.Density(State{0, 300}); err != nil || d != 0 {
		t.Errorf("density of nothing %v, %v", d, err)
	}
}

func BenchmarkZ(b *testing.B) {
	for _, e := range equations() {
		b.Run(e.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := e.Z(8.2, 1.55); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
