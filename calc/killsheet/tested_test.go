package killsheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/column"
)

// TestAPressureTestByHand: 1000 m of 1030 kg/m³ below a gauge 10 m above the rotary, 20 MPa on it, 5 MPa outside.
func TestAPressureTestByHand(t *testing.T) {
	p := PressureTest{1030, -10}
	near(t, "differential", must(p.Differential(20e6, 990, 5e6))(t), 20e6+10100849.5-5e6, 1e-12)
	near(t, "pump", must(p.Pump(25e6, 990, 5e6))(t), 25e6-10100849.5+5e6, 1e-12)
}

func TestThePumpGivesWhatIsWanted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := PressureTest{rapid.Float64Range(900, 2200).Draw(t, "fluid"), rapid.Float64Range(-60, 10).Draw(t, "gauge")}
		tvd, outside := rapid.Float64Range(10, 5000).Draw(t, "depth"), rapid.Float64Range(0, 5e7).Draw(t, "outside")
		wanted := rapid.Float64Range(0, 1e8).Draw(t, "wanted")
		near(t, "differential", must(p.Differential(must(p.Pump(wanted, tvd, outside))(t), tvd, outside))(t)+1e8, wanted+1e8, 1e-12)
	})
}

// TestAShoeTestByHand: 1200 kg/m³ on a shoe at 2000 m, the gauge 30 m above the rotary with 1000 kg/m³ in the line, 0.3 MPa to
// break the gel.
func TestAShoeTestByHand(t *testing.T) {
	s := ShoeTest{Mud: 1200, Shoe: 2000, Height: 30, Line: 1000, Breaking: 3e5}
	near(t, "pressure", must(s.Pressure(5e6))(t), 5e6-3e5+9.80665*(1200*2000+1000*30), 1e-12)
	near(t, "EMW", must(s.EMW(5e6))(t), 4.7e6/(9.80665*2000)+1200+1000*30/2000.0, 1e-12)
}

// TestAGaugeFindsItsDensity and is found again from it; a gauge at the rotary and no gel leave the plain formula; a gauge above
// counts its line.
func TestAGaugeFindsItsDensity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := ShoeTest{Mud: rapid.Float64Range(1000, 2000).Draw(t, "mud"), Shoe: rapid.Float64Range(200, 5000).Draw(t, "shoe")}
		gauge := rapid.Float64Range(0, 3e7).Draw(t, "gauge")
		plain := must(s.EMW(gauge))(t)
		near(t, "plain", plain, s.Mud+gauge/(column.G*s.Shoe), 1e-12)
		s.Height, s.Line = rapid.Float64Range(-20, 60).Draw(t, "height"), s.Mud
		s.Breaking = rapid.Float64Range(0, 1e6).Draw(t, "breaking")
		emw := must(s.EMW(gauge))(t)
		near(t, "raised", emw, plain+(s.Mud*s.Height-s.Breaking/column.G)/s.Shoe, 1e-9)
		near(t, "gauge", must(s.Gauge(emw))(t)+1e7, gauge+1e7, 1e-9)
	})
}

func TestRoundingDown(t *testing.T) {
	for _, c := range []struct{ density, step, want float64 }{
		{1239.9, 10, 1230}, {1240, 10, 1240}, {0.3, 0.1, 0.3}, {1.7, 0.1, 1.7}, {0, 10, 0}, {9.99, 10, 0},
		{14.5 * ppg, 0.1 * ppg, 14.5 * ppg}, {14.59 * ppg, 0.1 * ppg, 14.5 * ppg},
	} {
		near(t, "rounded", must(RoundDown(c.density, c.step))(t), c.want, 1e-12)
	}
	rapid.Check(t, func(t *rapid.T) {
		density, step := rapid.Float64Range(0, 3000).Draw(t, "density"), rapid.Float64Range(0.1, 50).Draw(t, "step")
		got := must(RoundDown(density, step))(t)
		if got > density+1e-6*step || density-got > step || math.Abs(got/step-math.Round(got/step)) > 1e-9 {
			t.Errorf("%v in steps of %v is %v", density, step, got)
		}
	})
}

// TestTheTripMarginIsTheYieldTerm of a Bingham fluid: a yield point of 1 lbf/100 ft² in a gap of 1 in loses 1/225 psi/ft.
func TestTheTripMarginIsTheYieldTerm(t *testing.T) {
	margin := must(TripMargin(lbf/(100*foot*foot), 2*inch, inch))(t)
	near(t, "psi/ft", margin*column.G*foot/psi, 1.0/225, 1e-12)
}
