package killsheet

import (
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/column"
)

// TestAPressureTestByHand: 1000 m of 1030 kg/m³ below a gauge 10 m above the rotary, 25 MPa wanted on a wall with 5 MPa outside.
func TestAPressureTestByHand(t *testing.T) {
	near(t, "pump", must(PressureTest{1030, -10}.Pump(25e6, 990, 5e6))(t), 25e6-10100849.5+5e6, 1e-12)
}

// TestThePumpGivesWhatIsWanted: the gauge and the column below it, less what stands outside, are the differential.
func TestThePumpGivesWhatIsWanted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := PressureTest{rapid.Float64Range(900, 2200).Draw(t, "fluid"), rapid.Float64Range(-60, 10).Draw(t, "gauge")}
		tvd, outside := rapid.Float64Range(10, 5000).Draw(t, "depth"), rapid.Float64Range(0, 5e7).Draw(t, "outside")
		wanted := rapid.Float64Range(0, 1e8).Draw(t, "wanted")
		inside := must(p.Pump(wanted, tvd, outside))(t) + column.G*p.Fluid*(tvd-p.Gauge)
		near(t, "differential", inside-outside+1e8, wanted+1e8, 1e-12)
	})
}

// TestAShoeTestByHand: 1200 kg/m³ on a shoe at 2000 m, the gauge 30 m above the rotary with 1000 kg/m³ in the line, 0.3 MPa to
// break the gel.
func TestAShoeTestByHand(t *testing.T) {
	s := ShoeTest{Mud: 1200, Shoe: 2000, Height: 30, Line: 1000, Breaking: 3e5}
	near(t, "pressure", must(s.Pressure(5e6))(t), 5e6-3e5+9.80665*(1200*2000+1000*30), 1e-12)
	near(t, "gauge", must(s.Gauge(1450))(t), 9.80665*(250*2000-1000*30)+3e5, 1e-12)
}

// TestAGaugeFindsItsPressure at the shoe, and is found again from the density that makes it there; a gauge at the rotary and no
// gel leave the plain formula; a gauge above counts its line.
func TestAGaugeFindsItsPressure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := ShoeTest{Mud: rapid.Float64Range(1000, 2000).Draw(t, "mud"), Shoe: rapid.Float64Range(200, 5000).Draw(t, "shoe")}
		gauge := rapid.Float64Range(0, 3e7).Draw(t, "gauge")
		plain := must(s.Pressure(gauge))(t)
		near(t, "plain", plain, s.Mud*column.G*s.Shoe+gauge, 1e-12)
		s.Height, s.Line = rapid.Float64Range(-20, 60).Draw(t, "height"), s.Mud
		s.Breaking = rapid.Float64Range(0, 1e6).Draw(t, "breaking")
		raised := must(s.Pressure(gauge))(t)
		near(t, "raised", raised, plain+s.Mud*column.G*s.Height-s.Breaking, 1e-9)
		near(t, "gauge", must(s.Gauge(raised/(column.G*s.Shoe)))(t)+1e7, gauge+1e7, 1e-9)
	})
}

// TestTheTripMarginIsTheYieldTerm of a Bingham fluid: a yield point of 1 lbf/100 ft² in a gap of 1 in loses 1/225 psi/ft.
func TestTheTripMarginIsTheYieldTerm(t *testing.T) {
	margin := must(TripMargin(lbf/(100*foot*foot), 2*inch, inch))(t)
	near(t, "psi/ft", margin*column.G*foot/psi, 1.0/225, 1e-12)
}
