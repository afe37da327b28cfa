package catalogue

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

func (p DrillPipe) named() string {
	return fmt.Sprintf("%.3f in %.2f lb/ft %s", p.OD/inch, p.NominalWeight/perFoot, p.Grade)
}

// Steel displaces its weight at 65.4 lb/gal, 2747 lb/bbl: common practice. The
// factor holds the last digit of the tables.
const steelPerBarrel = 2747.0 // lb/bbl

// capacityOf and steelOf return the capacity of a bore (m) and the displacement of a weight
// (kg/m), both in bbl/ft.
func capacityOf(id float64) float64 { return math.Pi / 4 * id * id / barrelFoot }
func steelOf(weight float64) float64 {
	return weight / perFoot / steelPerBarrel
}

// pipeFaults holds the figures of one row to one another: capacity and
// displacement to the last printed digit, strengths to 0.15 %, by API RP 7G
// (tension: area times yield; torsion: 0.096167 J Y / D in ft·lbf; premium: the
// wall worn outside to 80 %).
func pipeFaults(p DrillPipe) []string {
	var faults []string
	if got, want := p.Capacity/barrelFoot, capacityOf(p.ID); !near(got, want, 0.000006) {
		faults = append(faults, fmt.Sprintf("capacity = %.5f bbl/ft, want %.5f", got, want))
	}
	if got, want := p.Displacement/barrelFoot, steelOf(p.AdjustedWeight); !near(got, want, 0.000006) {
		faults = append(faults, fmt.Sprintf("displacement = %.5f bbl/ft, want %.5f", got, want))
	}
	strength := func(what string, got, want float64) {
		if got != 0 && math.Abs(got/want-1) > 0.0015 {
			faults = append(faults, fmt.Sprintf("%s = %.0f, want %.0f", what, got, want))
		}
	}
	od, id, yield := p.OD/inch, p.ID/inch, p.Yield/psi
	strength("tension", p.Tensile/poundForce, tension7G(od, id, yield))
	strength("torsion", p.Torsion/footPound, torsion7G(od, id, yield))
	worn := id + 0.8*(od-id)
	strength("premium tension", p.TensilePremium/poundForce, tension7G(worn, id, yield))
	strength("premium torsion", p.TorsionPremium/footPound, torsion7G(worn, id, yield))
	return faults
}

func tension7G(od, id, yield float64) float64 { return math.Pi / 4 * (od*od - id*id) * yield }

func torsion7G(od, id, yield float64) float64 {
	polar := math.Pi / 32 * (math.Pow(od, 4) - math.Pow(id, 4))
	return 0.096167 * polar * yield / od
}

func TestDrillPipeFigures(t *testing.T) {
	strengths := 0
	for _, p := range drillPipes() {
		for _, fault := range pipeFaults(p) {
			t.Errorf("%s: %s", p.named(), fault)
		}
		for _, v := range []float64{p.Tensile, p.Torsion, p.TensilePremium, p.TorsionPremium} {
			if v != 0 {
				strengths++
			}
		}
	}
	if want := 234; strengths != want {
		t.Errorf("%d strengths checked, want %d", strengths, want)
	}
}

func TestDrillPipeChangedDigitIsCaught(t *testing.T) {
	sound, ok := FindDrillPipe(5*inch, 19.5*perFoot, "E75")
	if !ok {
		t.Fatal("5 in 19.50 lb/ft E75: not in the catalogue")
	}
	for _, c := range []struct {
		what  string
		spoil func(*DrillPipe)
		want  string
	}{
		{"tension 395600 as 396600", func(p *DrillPipe) { p.Tensile = 396600 * poundForce }, "tension"},
		{"torsion 41170 as 41270", func(p *DrillPipe) { p.Torsion = 41270 * footPound }, "torsion"},
		{"premium tension 311535 as 312535", func(p *DrillPipe) { p.TensilePremium = 312535 * poundForce }, "premium tension"},
		{"premium torsion 32285 as 32385", func(p *DrillPipe) { p.TorsionPremium = 32385 * footPound }, "premium torsion"},
		{"ID 4.276 as 4.286", func(p *DrillPipe) { p.ID = 4.286 * inch }, "capacity"},
		{"capacity 0.01776 as 0.01778", func(p *DrillPipe) { p.Capacity = 0.01778 * barrelFoot }, "capacity"},
		{"adjusted weight 20.85 as 20.58", func(p *DrillPipe) { p.AdjustedWeight = 20.58 * perFoot }, "displacement"},
	} {
		spoilt := sound
		c.spoil(&spoilt)
		if faults := strings.Join(pipeFaults(spoilt), "; "); !strings.Contains(faults, c.want) {
			t.Errorf("%s: faults %q, want one on %s", c.what, faults, c.want)
		}
	}
}

// What is known about a row is known whole, and joints fit their pipe.
func TestDrillPipeRowsAreWhole(t *testing.T) {
	seen := make(map[string]bool)
	for _, p := range drillPipes() {
		if seen[p.named()] {
			t.Errorf("%s: listed twice", p.named())
		}
		seen[p.named()] = true
		if got := p.Yield / psi / 1000; !near(got, yieldOfGrade(t, p.Grade), 0) {
			t.Errorf("%s: yield %.2f ksi", p.named(), got)
		}
		if (p.Tensile == 0) != (p.Torsion == 0) {
			t.Errorf("%s: tension without torsion, or the reverse", p.named())
		}
		if outside7G := p.OD == 5.875*inch; outside7G != (p.Tensile == 0) {
			t.Errorf("%s: strengths known %t", p.named(), p.Tensile != 0)
		}
		if (p.PremiumSeen == "") != (p.TorsionPremium == 0) {
			t.Errorf("%s: premium_seen %q, torsion %g", p.named(), p.PremiumSeen, p.TorsionPremium)
		}
		joint := p.ToolJointOD != 0
		if joint != (p.ToolJointID != 0) || joint != (p.AdjustedWeight != 0) || joint != (p.Displacement != 0) || joint != (p.JointSeen != "") {
			t.Errorf("%s: tool joint known in part", p.named())
		}
		if joint && !(p.ToolJointOD > p.OD && p.ToolJointID < p.ID && p.AdjustedWeight > p.NominalWeight) {
			t.Errorf("%s: joint %.3f x %.4f in, %.2f lb/ft does not fit the pipe", p.named(), p.ToolJointOD/inch, p.ToolJointID/inch, p.AdjustedWeight/perFoot)
		}
	}
}

// Each size and weight of API RP 7G comes in four grades with one bore.
func TestDrillPipeGradesShareSize(t *testing.T) {
	type size struct{ od, weight, id float64 }
	grades := make(map[size]int)
	for _, p := range drillPipes() {
		grades[size{p.OD, p.NominalWeight, p.ID}]++
	}
	for s, got := range grades {
		want := 4
		if s.od == 5.875*inch {
			want = 1
		}
		if got != want {
			t.Errorf("%.3f in %.2f lb/ft, ID %.3f in: %d grades, want %d", s.od/inch, s.weight/perFoot, s.id/inch, got, want)
		}
	}
}

func TestFindDrillPipe(t *testing.T) {
	for _, c := range []struct {
		what       string
		od, weight float64
		grade      string
		want       string // empty: not found
	}{
		{"as written", 5 * inch, 19.5 * perFoot, "S-135", "5.000 in 19.50 lb/ft S135"},
		{"letter", 5 * inch, 19.5 * perFoot, "g", "5.000 in 19.50 lb/ft G105"},
		{"metric", 0.1397, 32.59, "X95", "5.500 in 21.90 lb/ft X95"},
		{"only grade", 5.875 * inch, 23.4 * perFoot, "", "5.875 in 23.40 lb/ft S135"},
		{"several grades", 5 * inch, 19.5 * perFoot, "", ""},
		{"several weights", 5 * inch, 0, "E75", ""},
		{"no such weight", 5 * inch, 20.5 * perFoot, "E75", ""},
		{"no such grade", 5 * inch, 19.5 * perFoot, "Z140", ""},
		{"no such size", 5.1 * inch, 19.5 * perFoot, "E75", ""},
		{"no number", math.NaN(), math.NaN(), "", ""},
	} {
		got, ok := FindDrillPipe(c.od, c.weight, c.grade)
		name := ""
		if ok {
			name = got.named()
		}
		if name != c.want {
			t.Errorf("%s: FindDrillPipe(%g, %g, %q) = %q, want %q", c.what, c.od, c.weight, c.grade, name, c.want)
		}
	}
	for _, p := range DrillPipes() {
		if got, ok := FindDrillPipe(p.OD, p.NominalWeight, p.Grade); !ok || got != p {
			t.Errorf("%s is offered but not found", p.named())
		}
	}
}

func BenchmarkFindDrillPipe(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		FindDrillPipe(5.5*inch, 21.9*perFoot, "S135")
	}
}
