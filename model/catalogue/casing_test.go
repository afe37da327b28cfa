package catalogue

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// named says which row a failure is about.
func (c Casing) named() string {
	return fmt.Sprintf("%.3f in %.2f lb/ft %s", c.OD/inch, c.NominalWeight/perFoot, c.Grade)
}

// The fault finders below return what is wrong with one row, or nothing. They
// are functions of the row, so that a test can also hand them a spoilt one.

// driftRule returns the allowance between ID and drift (in) by outside diameter
// (in): API 5CT, from memory; 13-5/8 and 22 in, which are outside its classes,
// follow their neighbours.
func driftRule(od float64) float64 {
	switch {
	case od < 9.625:
		return 1.0 / 8
	case od < 16:
		return 5.0 / 32
	}
	return 3.0 / 16
}

// dimensionFaults holds the dimensions of a row to one another.
func dimensionFaults(c Casing) []string {
	var faults []string
	od, wall, id, drift := c.OD/inch, c.Wall/inch, c.ID/inch, c.Drift/inch
	if want := od - 2*wall; !near(id, want, 0.0006) {
		faults = append(faults, fmt.Sprintf("ID = %.4f in, want %.4f", id, want))
	}
	// Printed drifts are rounded to a thousandth.
	if want := id - driftRule(od); !c.Conductor && !near(drift, want, 0.0006) {
		faults = append(faults, fmt.Sprintf("drift = %.4f in, want %.4f", drift, want))
	}
	if c.SpecialDrift != 0 && (c.SpecialDrift <= c.Drift || c.SpecialDrift >= c.ID) {
		faults = append(faults, "special drift not between drift and ID")
	}
	if c.CouplingOD != 0 && !(c.CouplingOD-c.OD > 0.45*inch && c.CouplingOD-c.OD < 1.05*inch) {
		faults = append(faults, "coupling OD not 1/2 to 1 in above pipe OD")
	}
	if c.SpecialCouplingOD != 0 && !(c.SpecialCouplingOD > c.OD && c.SpecialCouplingOD < c.CouplingOD) {
		faults = append(faults, "special coupling OD not between pipe and coupling")
	}
	// Plain-end weight in lb/ft, API 5CT. The name exceeds it by threads and
	// coupling, by 5 % at most; trade sizes are named a little low, and the
	// printed plain-end weights of conductor used 10.68.
	plain := 10.69 * (od - wall) * wall
	low, high := -0.003, 0.05
	if c.Conductor {
		low, high = -0.0012, 0.0004
	}
	if gap := c.NominalWeight/perFoot/plain - 1; gap < low || gap > high {
		faults = append(faults, fmt.Sprintf("nominal weight %+.2f %% off plain-end weight %.2f lb/ft", 100*gap, plain))
	}
	return faults
}

// ratingFaults holds the published ratings of a row to worked ones, allowing
// one rounding step: 10 psi, 1000 lbf.
func ratingFaults(c Casing, worked strength) []string {
	var faults []string
	compare := func(what string, published, worked, step float64) {
		if want := math.Round(worked/step) * step; !near(published, want, step) {
			faults = append(faults, fmt.Sprintf("%s = %.0f, want %.0f within %.0f", what, published, want, step))
		}
		if !near(published, math.Round(published/step)*step, 0) {
			faults = append(faults, fmt.Sprintf("%s = %.2f, want a multiple of %.0f", what, published, step))
		}
	}
	compare("collapse", c.Collapse/psi, worked.collapse, 10)
	compare("burst", c.Burst/psi, worked.burst, 10)
	compare("body yield", c.BodyYield/kip, worked.body, 1)
	return faults
}

// worked returns the strength of a row by formula.
func (c Casing) worked() strength {
	return api5C3(c.OD/inch, c.Wall/inch, c.Yield/psi)
}

func TestCasingDimensions(t *testing.T) {
	for _, c := range casingRows() {
		for _, fault := range dimensionFaults(c) {
			t.Errorf("%s: %s", c.named(), fault)
		}
	}
}

// All rated rows, the weakly remembered ones too: a row that differs from the
// formula by more than a step is a slip.
func TestCasingRatings(t *testing.T) {
	firm := 0
	for _, c := range casingRows() {
		if c.Conductor {
			continue
		}
		if c.Seen == Seen || c.Recall == "firm" {
			firm++
		}
		for _, fault := range ratingFaults(c, c.worked()) {
			t.Errorf("%s: %s", c.named(), fault)
		}
	}
	if want := 249; firm != want {
		t.Errorf("%d rows read or firmly remembered, want %d", firm, want)
	}
}

// testdata/casing_check.csv holds ratings worked apart from this package.
func TestCasingCheckTable(t *testing.T) {
	tab := openTestTable(t, "casing_check.csv",
		"od_in", "weight_lb_ft", "grade", "regime", "collapse_psi", "burst_psi", "body_yield_klbf")
	rows := 0
	for tab.next() {
		rows++
		od, weight, grade := tab.amount("od_in", inch), tab.amount("weight_lb_ft", perFoot), tab.word("grade")
		c, ok := FindCasing(od, weight, grade)
		if !ok {
			t.Errorf("%.3f in %.2f lb/ft %s: not in the catalogue", od/inch, weight/perFoot, grade)
			continue
		}
		check := strength{
			regime:   tab.word("regime"),
			collapse: tab.amount("collapse_psi", 1),
			burst:    tab.amount("burst_psi", 1),
			body:     tab.amount("body_yield_klbf", 1),
		}
		for _, fault := range ratingFaults(c, check) {
			t.Errorf("%s: %s", c.named(), fault)
		}
		got := c.worked()
		if got.regime != check.regime {
			t.Errorf("%s: regime %s, want %s", c.named(), got.regime, check.regime)
		}
		if !near(got.collapse, check.collapse, 1) || !near(got.burst, check.burst, 1) || !near(got.body, check.body, 0.1) {
			t.Errorf("%s: worked %+v, want %+v", c.named(), got, check)
		}
	}
	if tab.err != nil {
		t.Error(tab.err)
	}
	if rows != 342 {
		t.Errorf("%d rows checked, want 342", rows)
	}
}

// Limits of the collapse regimes. H40: forum summary of Bourgoyne et al.,
// Applied Drilling Engineering (1986), chapter 7, read. N80: API Bulletin 5C3,
// from memory.
func TestCollapseRegimeLimits(t *testing.T) {
	h40, n80 := constants5C3(40000), constants5C3(80000)
	for _, c := range []struct {
		what                 string
		got, want, tolerance float64
	}{
		{"H40 yield limit", h40.yieldLimit(), 16.4, 0.05},
		{"H40 elastic limit", h40.transitionLimit(), 42.6, 0.1},
		{"N80 yield limit", n80.yieldLimit(), 13.38, 0.01},
		{"N80 plastic limit", n80.plasticLimit(), 22.47, 0.01},
		{"N80 elastic limit", n80.transitionLimit(), 31.02, 0.01},
	} {
		if !near(c.got, c.want, c.tolerance) {
			t.Errorf("%s = %.3f, want %.2f", c.what, c.got, c.want)
		}
	}
}

// The row tests above must be able to fail.
func TestCasingChangedDigitIsCaught(t *testing.T) {
	sound, ok := FindCasing(9.625*inch, 53.5*perFoot, "P110")
	if !ok {
		t.Fatal("9-5/8 in 53.5 lb/ft P110: not in the catalogue")
	}
	if faults := append(dimensionFaults(sound), ratingFaults(sound, sound.worked())...); faults != nil {
		t.Fatalf("the sound row: %q", faults)
	}
	for _, c := range []struct {
		what  string
		spoil func(*Casing)
		want  string
	}{
		{"collapse 7950 as 7930", func(c *Casing) { c.Collapse = 7930 * psi }, "collapse"},
		{"burst 10900 as 10600", func(c *Casing) { c.Burst = 10600 * psi }, "burst"},
		{"body yield 1710 as 1713", func(c *Casing) { c.BodyYield = 1713 * kip }, "body yield"},
		{"ID 8.535 as 8.536", func(c *Casing) { c.ID = 8.536 * inch }, "ID"},
		{"drift 8.379 as 8.378", func(c *Casing) { c.Drift = 8.378 * inch }, "drift"},
		{"wall 0.545 as 0.546", func(c *Casing) { c.Wall = 0.546 * inch }, "ID"},
		{"weight 53.5 as 58.5", func(c *Casing) { c.NominalWeight = 58.5 * perFoot }, "weight"},
		{"special drift 8.500 as 8.300", func(c *Casing) { c.SpecialDrift = 8.3 * inch }, "special drift"},
		{"coupling 10.625 as 10.025", func(c *Casing) { c.CouplingOD = 10.025 * inch }, "coupling"},
		{"special coupling 10.125 as 11.125", func(c *Casing) { c.SpecialCouplingOD = 11.125 * inch }, "special coupling"},
	} {
		spoilt := sound
		c.spoil(&spoilt)
		faults := strings.Join(append(dimensionFaults(spoilt), ratingFaults(spoilt, spoilt.worked())...), "; ")
		if !strings.Contains(faults, c.want) {
			t.Errorf("%s: faults %q, want one on %s", c.what, faults, c.want)
		}
	}
}

// Any rating of any row, moved by three steps or more, is caught.
func TestCasingChangedRatingIsCaught(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(casingRows()).Filter(func(c Casing) bool { return !c.Conductor }).Draw(t, "row")
		worked := c.worked()
		steps := float64(rapid.IntRange(3, 2000).Draw(t, "steps"))
		if rapid.Bool().Draw(t, "down") {
			steps = -steps
		}
		switch rapid.SampledFrom([]string{"collapse", "burst", "body"}).Draw(t, "rating") {
		case "collapse":
			c.Collapse += steps * 10 * psi
		case "burst":
			c.Burst += steps * 10 * psi
		default:
			c.BodyYield += steps * kip
		}
		if ratingFaults(c, worked) == nil {
			t.Fatalf("%s moved by %.0f steps: no fault found", c.named(), steps)
		}
	})
}

// One size and weight has one set of dimensions, each grade once, and grades of
// one yield have the same ratings, within a step between editions.
func TestCasingRowsAgree(t *testing.T) {
	seen := make(map[string]bool)
	for _, c := range casingRows() {
		if seen[c.named()] {
			t.Errorf("%s: listed twice", c.named())
		}
		seen[c.named()] = true
	}
	for _, size := range casingTree() {
		for _, w := range size.weights {
			first := w.grades[0]
			for i, c := range w.grades {
				if c.Wall != first.Wall || c.Drift != first.Drift || c.SpecialDrift != first.SpecialDrift ||
					c.CouplingOD != first.CouplingOD || c.SpecialCouplingOD != first.SpecialCouplingOD || c.Conductor != first.Conductor {
					t.Errorf("%s: dimensions unlike those of %s", c.named(), first.Grade)
				}
				if i == 0 || c.Yield != w.grades[i-1].Yield || c.Conductor {
					continue
				}
				same := w.grades[i-1]
				if !near(c.Collapse, same.Collapse, 10*psi) || !near(c.Burst, same.Burst, 10*psi) || !near(c.BodyYield, same.BodyYield, kip) {
					t.Errorf("%s: ratings unlike those of %s", c.named(), same.Grade)
				}
			}
		}
	}
}

// yieldOfGrade returns the figure in a grade's name.
func yieldOfGrade(t *testing.T, grade string) float64 {
	t.Helper()
	ksi, err := strconv.ParseFloat(grade[1:], 64)
	if err != nil {
		t.Fatalf("grade %q: %v", grade, err)
	}
	return ksi
}

// The figure in a grade's name is its yield in ksi: API 5CT and 5L by
// designation.
func TestCasingGradeNamesYield(t *testing.T) {
	for _, c := range casingRows() {
		if got := c.Yield / psi / 1000; !near(got, yieldOfGrade(t, c.Grade), 0) {
			t.Errorf("%s: yield %.2f ksi", c.named(), got)
		}
	}
}

// Read figures: API casing data of an engineering reference site, 4-1/2 in
// 11.6 lb/ft L80; university slides, 9-5/8 in 47 lb/ft N-80 collapse; article
// on burst, 9-5/8 in 53.5 lb/ft P-110; mill's table, 13-3/8 in 72 lb/ft.
func TestCasingReadFigures(t *testing.T) {
	l80, _ := FindCasing(4.5*inch, 11.6*perFoot, "L80")
	n80, _ := FindCasing(9.625*inch, 47*perFoot, "N80")
	p110, _ := FindCasing(9.625*inch, 53.5*perFoot, "P110")
	l72, _ := FindCasing(13.375*inch, 72*perFoot, "L80")
	for _, c := range []struct {
		what            string
		got, want, unit float64
	}{
		{"4-1/2 11.6 L80 collapse", l80.Collapse, 6350, psi},
		{"4-1/2 11.6 L80 burst", l80.Burst, 7780, psi},
		{"4-1/2 11.6 L80 body yield", l80.BodyYield, 267, kip},
		{"9-5/8 47 N80 collapse", n80.Collapse, 4760, psi},
		{"9-5/8 53.5 P110 burst", p110.Burst, 10900, psi},
		{"13-3/8 72 special drift", l72.SpecialDrift, 0.31115, 1},
		{"13-3/8 72 wall", l72.Wall, 0.514, inch},
	} {
		if !near(c.got/c.unit, c.want, 0) {
			t.Errorf("%s = %g, want %g", c.what, c.got/c.unit, c.want)
		}
	}
}

func TestFindCasing(t *testing.T) {
	for _, c := range []struct {
		what       string
		od, weight float64
		grade      string
		want       string // empty: not found
	}{
		{"as written", 13.625 * inch, 88.2 * perFoot, "P-110", "13.625 in 88.20 lb/ft P110"},
		{"metric weight", 13.625 * inch, 131.3, "p110", "13.625 in 88.20 lb/ft P110"},
		{"metric size", 0.3397, 107.15, "Q 125", "13.375 in 72.00 lb/ft Q125"},
		{"metric size, worst rounding", 0.2731, 0, "Q125", ""},
		{"metric size, worst rounding, with weight", 0.2731, 97.78, "Q125", "10.750 in 65.70 lb/ft Q125"},
		{"nearest of close weights", 20 * inch, 106.2 * perFoot, "", ""},
		{"nearest of close weights, grade", 20 * inch, 106.2 * perFoot, "J55", "20.000 in 106.50 lb/ft J55"},
		{"only weight", 22 * inch, 0, "X80", "22.000 in 224.00 lb/ft X80"},
		{"only weight of one OD with grade", 13.625 * inch, 0, "Q125", "13.625 in 88.20 lb/ft Q125"},
		{"only grade", 7 * inch, 17 * perFoot, "", "7.000 in 17.00 lb/ft H40"},
		{"several grades", 13.625 * inch, 88.2 * perFoot, "", ""},
		{"several weights", 9.625 * inch, 0, "P110", ""},
		{"conductor", 36 * inch, 373.8 * perFoot, "X-56", "36.000 in 373.80 lb/ft X56"},
		{"weight one per cent off", 9.625 * inch, 53 * perFoot, "P110", ""},
		{"no such size", 12 * inch, 0, "P110", ""},
		{"size a hundredth off", 9.635 * inch, 53.5 * perFoot, "P110", ""},
		{"below the smallest", inch, 0, "", ""},
		{"above the largest", 100 * inch, 0, "", ""},
		{"no such grade", 9.625 * inch, 53.5 * perFoot, "Z999", ""},
		{"another type of the grade", 9.625 * inch, 53.5 * perFoot, "L80-13Cr", ""},
		{"negative weight", 9.625 * inch, -1, "P110", ""},
		{"no number as weight", 9.625 * inch, math.NaN(), "P110", ""},
		{"no number as size", math.NaN(), 0, "", ""},
		{"endless size", math.Inf(1), 0, "", ""},
	} {
		got, ok := FindCasing(c.od, c.weight, c.grade)
		name := ""
		if ok {
			name = got.named()
		}
		if name != c.want {
			t.Errorf("%s: FindCasing(%g, %g, %q) = %q, want %q", c.what, c.od, c.weight, c.grade, name, c.want)
		}
	}
}

// plainFindCasing does the same by looking at every row.
func plainFindCasing(od, weight float64, grade string) (Casing, bool) {
	gap := math.Inf(1)
	for _, c := range casingRows() {
		if sameSize(od, c.OD) && sameWeight(weight, c.NominalWeight) {
			gap = math.Min(gap, math.Abs(weight-c.NominalWeight))
		}
	}
	var found []Casing
	for _, c := range casingRows() {
		if sameSize(od, c.OD) &&
			(weight == 0 || math.Abs(weight-c.NominalWeight) == gap) &&
			(NormalGrade(grade) == "" || NormalGrade(grade) == c.Grade) {
			found = append(found, c)
		}
	}
	if len(found) != 1 {
		return Casing{}, false
	}
	return found[0], true
}

func TestFindCasingLikePlainSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(casingRows()).Draw(t, "row")
		od := c.OD + rapid.Float64Range(-2, 2).Draw(t, "size off")*sizeTolerance
		weight := c.NominalWeight * (1 + rapid.Float64Range(-3, 3).Draw(t, "weight off")*weightTolerance)
		if rapid.Bool().Draw(t, "any weight") {
			weight = 0
		}
		grade := rapid.SampledFrom([]string{"", c.Grade, "P110", "x52"}).Draw(t, "grade")
		got, ok := FindCasing(od, weight, grade)
		want, wantOK := plainFindCasing(od, weight, grade)
		if got != want || ok != wantOK {
			t.Fatalf("FindCasing(%g, %g, %q) = %v %t, want %v %t", od, weight, grade, got, ok, want, wantOK)
		}
	})
}

// Every row is found again from its metric figures, rounded as tables print
// them: 0.1 mm and 0.01 kg/m.
func TestFindCasingFromMetric(t *testing.T) {
	for _, c := range casingRows() {
		od, weight := math.Round(c.OD*1e4)/1e4, math.Round(c.NominalWeight*100)/100
		if got, ok := FindCasing(od, weight, strings.ToLower(c.Grade)); !ok || got != c {
			t.Errorf("%s: FindCasing(%g, %g) found %t %s", c.named(), od, weight, ok, got.named())
		}
	}
}

func TestCasingLists(t *testing.T) {
	sizes := CasingSizes()
	if len(sizes) != 22 || !slices.IsSorted(sizes) || sizes[0] != 4.5*inch || sizes[len(sizes)-1] != 36*inch {
		t.Errorf("CasingSizes() = %v, want 22 from 4-1/2 to 36 in", sizes)
	}
	rows := 0
	for _, od := range sizes {
		weights := CasingWeights(od)
		if len(weights) == 0 || !slices.IsSorted(weights) {
			t.Errorf("CasingWeights(%g in) = %v, want some, ascending", od/inch, weights)
		}
		for _, weight := range weights {
			grades := CasingGrades(od, weight)
			rows += len(grades)
			for _, c := range grades {
				if got, ok := FindCasing(od, weight, c.Grade); !ok || got != c {
					t.Errorf("%s is offered but not found", c.named())
				}
			}
		}
	}
	if rows != len(casingRows()) {
		t.Errorf("%d rows offered, want %d", rows, len(casingRows()))
	}
	if CasingWeights(12*inch) != nil || CasingGrades(12*inch, 50) != nil || CasingGrades(7*inch, 1) != nil {
		t.Error("something is offered for pipe that is not in the catalogue")
	}
}

// A list handed out may be changed by its owner.
func TestCasingListsAreCopies(t *testing.T) {
	CasingGrades(7*inch, 17*perFoot)[0].Collapse = 0
	if c, _ := FindCasing(7*inch, 17*perFoot, "H40"); c.Collapse == 0 {
		t.Error("a change to a list changed the catalogue")
	}
}

func TestNormalGrade(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{"P110", "P110"}, {"P-110", "P110"}, {"p110", "P110"}, {" p 110 ", "P110"}, {"P–110", "P110"},
		{"x_52", "X52"}, {"L-80 13cr", "L80-13CR"}, {"L80-1", "L80-1"}, {"N80 Q", "N80-Q"},
		{"", ""}, {"--", ""}, {"\x1b[", ""},
	} {
		if got := NormalGrade(c.in); got != c.want {
			t.Errorf("NormalGrade(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

func FuzzNormalGrade(f *testing.F) {
	f.Add("P-110")
	f.Add("L-80 13Cr")
	f.Fuzz(func(t *testing.T, s string) {
		once := NormalGrade(s)
		if twice := NormalGrade(once); twice != once {
			t.Errorf("NormalGrade(%q) = %q, and again %q", s, once, twice)
		}
	})
}

func BenchmarkFindCasing(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		FindCasing(13.625*inch, 131.3, "P110")
	}
}

func BenchmarkFindCasingWrittenGrade(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		FindCasing(9.625*inch, 53.5*perFoot, "P-110")
	}
}

func BenchmarkCasingGrades(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		CasingGrades(9.625*inch, 53.5*perFoot)
	}
}
