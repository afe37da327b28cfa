package calc_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"borewalk/calc"
	"borewalk/calc/chance"
	"borewalk/model"
	"borewalk/plans"
)

// ranged returns a demo plan with ranges entered in a section, counted from 1: key and text in turns.
func ranged(t testing.TB, name string, section int, entries ...string) *model.Plan {
	t.Helper()
	plan := demo(t, name)
	for k := 0; k < len(entries); k += 2 {
		with(t, plan, fmt.Sprintf("section[%d].ranges.%s", section, entries[k]), entries[k+1])
	}
	return plan
}

// oddsOf prepares the trials of a section, counted from 1.
func oddsOf(t testing.TB, plan *model.Plan, section int) *calc.Odds {
	t.Helper()
	o, why, mend := calc.NewOdds(plan, section-1)
	if o == nil {
		t.Fatalf("section %d: %s (%s)", section, why, mend)
	}
	return o
}

// rowOf returns the row of a name, the first of its rule where one is named.
func rowOf(t testing.TB, rows []calc.OddsRow, name, rule string) calc.OddsRow {
	t.Helper()
	k := slices.IndexFunc(rows, func(r calc.OddsRow) bool { return r.Name == name && (rule == "" || r.Key == rule) })
	if k < 0 {
		t.Fatalf("there is no row %s", name)
	}
	return rows[k]
}

// TestWithoutSpreadTheOddsAreThePlan: with every range closed round the plan's entry, every outcome is the plan's own, and every limit is
// met always or never, as the findings have it.
func TestWithoutSpreadTheOddsAreThePlan(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		result := calc.Evaluate(plan)
		for i := range plan.Sections {
			plan.Sections[i].Ranges = model.Ranges{}
			for end, of := range map[string]string{"washout_low": "washout", "excess_low": "excess", "losses_high": "losses", "intensity_high": "kick.intensity"} {
				likely := entry(t, plan, fmt.Sprintf("section[%d].%s", i+1, of)).Get(plan)
				to := entry(t, plan, fmt.Sprintf("section[%d].ranges.%s", i+1, end))
				if !likely.IsSet() { // which stands for none
					likely, _ = to.Field.Parse("0", to.Field.Min.Unit)
				}
				to.Set(plan, likely)
			}
			with(t, plan, fmt.Sprintf("section[%d].ranges.pore_less", i+1), "0 sg")
			with(t, plan, fmt.Sprintf("section[%d].ranges.fracture_more", i+1), "0 sg")
			o := oddsOf(t, plan, i+1)
			for _, r := range o.Rows(o.Try(0, 1)) {
				if r.Spread.P10 != r.Likely || r.Spread.P50 != r.Likely || r.Spread.P90 != r.Likely || r.Unanswered != 0 {
					t.Errorf("%s section %d: %s spreads: %+v", name, i+1, r.Name, r)
				}
				sameAsPlan(t, result, i+1, r)
			}
		}
	}
}

// sameAsPlan holds a row to the figure or the finding that the plan has.
func sameAsPlan(t *testing.T, result *calc.Result, section int, r calc.OddsRow) {
	t.Helper()
	switch r.Name {
	case "Top of cement":
		if want := value(t, result, section, "cement.slurry.1.top"); r.Likely != want {
			t.Errorf("section %d: top of cement %v, the plan has %v", section, r.Likely, want)
		}
		return
	case "Kick tolerance": // which the figure has rounded down
		if want := value(t, result, section, "control.tolerance"); r.Likely < want || r.Likely > want+1 {
			t.Errorf("section %d: kick tolerance %v, the plan has %v", section, r.Likely, want)
		}
		return
	}
	worst := math.Inf(1)
	met := true
	for _, f := range result.Findings {
		if f.Section == section-1 && f.Key == r.Key && f.Text == r.Text {
			if f.Margin < worst {
				worst = f.Margin
			}
			met = met && f.Severity == calc.OK
		}
	}
	margin := r.Likely - r.Limit
	if !r.Least {
		margin = -margin
	}
	// Tops come back from their volumes to the rounding of a depth.
	if !near(margin, worst, 1e-9*(1+math.Abs(r.Likely))) || met != (r.Odds.Share == 1) || !met && r.Odds.Share != 0 {
		t.Errorf("section %d: %s: margin %v, odds %v; the plan has %v, met %v", section, r.Text, margin, r.Odds.Share, worst, met)
	}
}

// TestTopOfCementByHand: washout alone, in the 12 1/4 in section of the demo. What is pumped fills the annulus round the 9 7/8 in casing
// from the shoe up: hole enlarged on its volume, all of the open hole with the planned excess, then the bore of the 13 5/8 in. The more
// washout the lower the top, so the top's P10 is that of the washout's. The trials are off by the error of a share, twice over.
func TestTopOfCementByHand(t *testing.T) {
	plan := ranged(t, "ottermast-2", 4, "washout_low", "0 %", "washout_high", "40 %")
	result := calc.Evaluate(plan)
	area := func(inches float64) float64 { return math.Pi / 4 * inches * inches * inch * inch }
	shoe, start := value(t, result, 4, "casing.shoe"), value(t, result, 4, "hole.start")
	lastShoe := value(t, result, 3, "casing.shoe")
	steel, excess := area(9.875), 1.25
	hole := func(washout float64) float64 { return (area(12.25)*(1+washout) - steel) * excess }
	rathole := (area(17.5) - steel) * excess
	bore := area(12.375) - steel
	pumped := hole(0)*(shoe-start) + rathole*(start-lastShoe) + bore*(lastShoe-2000)
	top := func(washout float64) float64 {
		left := pumped
		for _, part := range []struct{ room, bottom, top float64 }{{hole(washout), shoe, start}, {rathole, start, lastShoe}, {bore, lastShoe, 0}} {
			if part.room*(part.bottom-part.top) >= left {
				return part.bottom - left/part.room
			}
			left -= part.room * (part.bottom - part.top)
		}
		return 0
	}
	o := oddsOf(t, plan, 4)
	row := rowOf(t, o.Rows(o.Try(0, o.Blocks())), "Top of cement", "")
	if !near(row.Likely, 2000, 1e-6) || !near(top(0), 2000, 1e-6) {
		t.Errorf("top as planned: %v, by hand %v", row.Likely, top(0))
	}
	washout := chance.Triangle{Low: 0, Likely: 0, High: 0.4}
	for p, got := range map[float64]float64{0.1: row.Spread.P10, 0.5: row.Spread.P50, 0.9: row.Spread.P90} {
		off := 2 * 1.96 * math.Sqrt(p*(1-p)/float64(o.Trials(o.Blocks())))
		if low, high := top(washout.Quantile(p-off)), top(washout.Quantile(p+off)); got < low || got > high {
			t.Errorf("P%g of the top %.1f m, by hand %.1f m, between %.1f and %.1f m", 100*p, got, top(washout.Quantile(p)), low, high)
		}
	}
}

// TestLossesByHand: of what was meant for the annulus a fifth is lost: the rest fills it from the shoe up. In the 12 1/4 in section of the
// demo it does not reach the last shoe, so that the height goes with the volume.
func TestLossesByHand(t *testing.T) {
	plan := ranged(t, "ottermast-2", 4, "losses_high", "95 %")
	with(t, plan, "section[4].losses", "20 %")
	o := oddsOf(t, plan, 4)
	row := rowOf(t, o.Rows(o.Try(0, 1)), "Top of cement", "")
	if want := value(t, calc.Evaluate(plan), 4, "cement.slurry.1.top.lost"); row.Likely != want || !(row.Spread.P10 > want) {
		t.Errorf("top with the likely losses %v, the plan has %v; P10 %v", row.Likely, want, row.Spread.P10)
	}
}

// spreadOf returns how a row of a section spreads with ranges entered.
func spreadOf(t *testing.T, section int, name string, entries ...string) chance.Spread {
	t.Helper()
	o := oddsOf(t, ranged(t, "ottermast-2", section, entries...), section)
	return rowOf(t, o.Rows(o.Try(0, 4)), name, "").Spread
}

func TestAWiderRangeWidensTheBand(t *testing.T) {
	for _, c := range []struct{ name, end, narrow, wide string }{
		{"Top of cement", "washout_high", "10 %", "30 %"}, {"Top of cement", "excess_low", "20 %", "5 %"}, {"Top of cement", "losses_high", "5 %", "30 %"},
		{"Mud over pore", "pore_more", "0.01 sg", "0.04 sg"}, {"Mud, fracture", "fracture_less", "0.01 sg", "0.08 sg"},
		{"ECD, fracture", "fracture_less", "0.01 sg", "0.08 sg"}, {"Kick tolerance", "intensity_high", "0.10 sg", "0.15 sg"},
	} {
		narrow, wide := spreadOf(t, 4, c.name, c.end, c.narrow), spreadOf(t, 4, c.name, c.end, c.wide)
		if a, b := narrow.P90-narrow.P10, wide.P90-wide.P10; !(b > a && a > 0) {
			t.Errorf("%s with %s %s: band %v, with %s: %v", c.name, c.end, c.narrow, a, c.wide, b)
		}
	}
}

// TestWorseEndsAreWorseInEveryTrial: the draws are the same, so that what gets worse gets worse in each of them.
func TestWorseEndsAreWorseInEveryTrial(t *testing.T) {
	trial := func(name string, entries ...string) []float64 {
		o := oddsOf(t, ranged(t, "ottermast-2", 4, entries...), 4)
		k := slices.IndexFunc(o.Rows(o.Try(0, 0)), func(r calc.OddsRow) bool { return r.Name == name })
		return o.Try(0, 2)[k]
	}
	for _, c := range []struct {
		name, end, better, worse string
		up                       bool
	}{
		{"Mud, fracture", "fracture_less", "0.02 sg", "0.05 sg", false}, {"ECD, fracture", "fracture_less", "0.02 sg", "0.05 sg", false},
		{"Job, fracture", "fracture_less", "0.02 sg", "0.05 sg", false}, {"Kick tolerance", "fracture_less", "0.02 sg", "0.05 sg", false},
		{"Mud over pore", "pore_more", "0.02 sg", "0.05 sg", false}, {"Kick tolerance", "intensity_high", "0.08 sg", "0.12 sg", false},
		{"Top of cement", "washout_high", "10 %", "40 %", true}, {"Top of cement", "losses_high", "10 %", "40 %", true},
	} {
		better, worse := trial(c.name, c.end, c.better), trial(c.name, c.end, c.worse)
		for n := range better {
			if d := worse[n] - better[n]; d > 1e-6 && !c.up || d < -1e-6 && c.up {
				t.Errorf("%s, trial %d: %v with %s %s, %v with %s", c.name, n, better[n], c.end, c.better, worse[n], c.worse)
				break
			}
		}
	}
}

func TestOddsInPiecesAreTheWhole(t *testing.T) {
	plan := ranged(t, "ottermast-2", 4, "washout_high", "40 %", "fracture_less", "0.05 sg")
	before := plan.Clone()
	o := oddsOf(t, plan, 4)
	whole, first, second := o.Try(0, 3), o.Try(0, 1), o.Try(1, 3)
	for k := range whole {
		if !slices.EqualFunc(whole[k], slices.Concat(first[k], second[k]), func(a, b float64) bool { return a == b || a != a && b != b }) {
			t.Errorf("outcome %d is another in pieces", k)
		}
	}
	if !reflect.DeepEqual(plan, before) {
		t.Error("the plan was changed")
	}
}

// TestTheOddsOfAMovedPrognosis: pore pressure alone moves, so the trip margin of a mud 0.08 sg over it is the draw's: it is less than 0.02
// sg where the draw is more than 0.06 sg, which of a range up to 0.12 sg, likely none, happens with (0.06 / 0.12)².
func TestTheOddsOfAMovedPrognosis(t *testing.T) {
	plan := ranged(t, "ottermast-2", 4, "pore_more", "0.12 sg")
	with(t, plan, "limits.trip_margin", "0.02 sg")
	o := oddsOf(t, plan, 4)
	row := rowOf(t, o.Rows(o.Try(0, o.Blocks())), "Trip margin", "")
	if !near(row.Likely, 0.08*sg, 0.01) || !row.Own || !near(row.Limit, 0.02*sg, 1e-9) {
		t.Errorf("%+v", row)
	}
	if row.Odds.Low > 0.75 || row.Odds.High < 0.75 {
		t.Errorf("odds %v between %v and %v, expected 0.75", row.Odds.Share, row.Odds.Low, row.Odds.High)
	}
}

// TestARuleThatAsksOnlySometimes: cement into the last string isolates a zone whatever its height over it; where losses keep it below,
// the height counts. A rule that is not asked is met.
func TestARuleThatAsksOnlySometimes(t *testing.T) {
	plan := ranged(t, "ottermast-2", 4, "losses_high", "60 %")
	with(t, plan, "well.rules", model.SetNorway)
	with(t, plan, "formation[5].isolate", model.Hydrocarbons)
	o := oddsOf(t, plan, 4)
	row := rowOf(t, o.Rows(o.Try(0, 8)), "Cement over zone", "cement_inflow")
	if !math.IsInf(row.Likely, 1) || !row.Conditional || row.Unanswered != 0 || !(row.Odds.Share > 0 && row.Odds.Share <= 1) {
		t.Errorf("%+v", row)
	}
}

func TestWhyThereAreNoOdds(t *testing.T) {
	for _, c := range []struct {
		plan *model.Plan
		at   int
		why  string
		mend model.Path
	}{
		{demo(t, "ottermast-2"), 4, "no entry has a range: give low and high ends on the control page, Ranges", "section[4].ranges.washout_high"},
		{demo(t, "ottermast-2"), 9, "there is no such section", ""},
		{ranged(t, "ottermast-2", 4, "excess_low", "60 %"), 4, "the low end of the range lies above the plan's excess: it is not varied", "section[4].ranges.excess_low"},
		{ranged(t, "ottermast-2", 4, "intensity_high", "0.01 sg"), 4, "the high end of the range lies below the plan's kick intensity: it is not varied", "section[4].ranges.intensity_high"},
		{ranged(t, "ottermast-2", 1, "intensity_high", "0.01 sg"), 1, "no entry has a range: give low and high ends on the control page, Ranges", "section[1].ranges.washout_high"},
	} {
		o, why, mend := calc.NewOdds(c.plan, c.at-1)
		if o != nil || why != c.why || mend != c.mend {
			t.Errorf("%q at %q, expected %q at %q", why, mend, c.why, c.mend)
		}
	}
}

// TestAWrongRangeIsACaution: it is found on every run, not only when the odds are asked for.
func TestAWrongRangeIsACaution(t *testing.T) {
	plan := ranged(t, "ottermast-2", 4, "excess_low", "60 %")
	for _, f := range calc.Evaluate(plan).Findings {
		if f.Mend == "section[4].ranges.excess_low" {
			if f.Severity != calc.Caution || f.Section != 3 {
				t.Errorf("%+v", f)
			}
			return
		}
	}
	t.Error("it was not found")
}

// TestOddsRowsHaveNames: each fits its column, under every rule set.
func TestOddsRowsHaveNames(t *testing.T) {
	for _, name := range plans.Names() {
		plan := demo(t, name)
		for _, set := range model.RuleSets() {
			with(t, plan, "well.rules", set)
			for i := range plan.Sections {
				with(t, plan, fmt.Sprintf("section[%d].ranges.pore_more", i+1), "0.02 sg")
				o := oddsOf(t, plan, i+1)
				for _, r := range o.Rows(o.Try(0, 0)) {
					if len(r.Name) > 18 {
						t.Errorf("%q has no short name", r.Name)
					}
				}
			}
		}
	}
}

// TestOddsOfABrokenPlan: whatever entry of a section is blank, there are odds or a reason, and a likely value is a number or blank.
func TestOddsOfABrokenPlan(t *testing.T) {
	plan := ranged(t, "ottermast-2", 4, "washout_high", "40 %", "pore_more", "0.05 sg", "losses_high", "30 %")
	var refs []model.Ref
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			if r := (model.Ref{Group: g, Field: f, Place: at}); f.Required && (at.Outer == 3 || g.Parent == nil) {
				refs = append(refs, r)
			}
		}
		return true
	})
	if len(refs) < 30 {
		t.Fatalf("only %d entries", len(refs))
	}
	for _, r := range refs {
		was := r.Get(plan)
		r.Set(plan, model.Entry{})
		o, why, _ := calc.NewOdds(plan, 3)
		if (o == nil) == (why == "") {
			t.Errorf("%s blank: odds %v, why %q", r.Path(), o != nil, why)
		}
		if o != nil {
			o.Rows(o.Try(0, 0))
		}
		r.Set(plan, was)
	}
}

// BenchmarkOdds makes all trials of the widest section of the demo. It is worked out on demand; a second or two is the budget.
func BenchmarkOdds(b *testing.B) {
	plan := ranged(b, "ottermast-2", 3, "washout_high", "40 %", "pore_more", "0.05 sg", "losses_high", "30 %")
	for b.Loop() {
		o := oddsOf(b, plan, 3)
		o.Rows(o.Try(0, o.Blocks()))
	}
}
