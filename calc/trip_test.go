package calc_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// TestAFillByHand: five stands of 28.4 m of 39.3 kg/m leave 39.3 / 7850 × 142 = 0.711 m3, and with the 5.153 in bore 2.62 m3;
// the level in the 19.5 in riser falls by that over what is left of its area.
func TestAFillByHand(t *testing.T) {
	plan := demo(t, "ottermast-2")
	pipe := strconv.Itoa(len(plan.Sections[3].String)) // the drill pipe, highest of all
	with(t, plan, "section[4].string["+pipe+"].id", "5.153 in")
	r := calc.Evaluate(plan)
	area := func(d float64) float64 { return math.Pi / 4 * d * d * inch * inch }
	const length = 5 * 28.4
	dry := 39.3 / 7850
	wet := dry + area(5.153)
	for _, c := range []struct {
		key  string
		area float64
	}{{"trip.part." + pipe + ".fill.open", dry}, {"trip.part." + pipe + ".fill.closed", wet}} {
		level := c.area * length / (area(19.5) - c.area)
		for suffix, want := range map[string]float64{"": c.area * length, ".level": level, ".pressure": level * 1420 * g,
			".most": math.Floor(75 * psi / (1420 * g) * (area(19.5) - c.area) / c.area / 28.4), ".strokes": c.area * length / value(t, r, 0, "pump.1.output")} {
			if got := value(t, r, 4, c.key+suffix); !near(got, want, 1e-6*want) {
				t.Errorf("%s%s = %g, by hand %g", c.key, suffix, got, want)
			}
		}
	}
	if got, want := value(t, r, 4, "trip.part."+pipe+".closed"), wet*28.4; !near(got, want, 1e-9) {
		t.Errorf("a stand, wet: %g m3, by hand %g", got, want)
	}
	if got := value(t, r, 4, "trip.stands.shoe"); got != 39 { // (3250 - 2150) / 28.4 = 38.7
		t.Errorf("%g stands to the shoe", got)
	}
}

// TestTheWholeTripIsTheStringsDisplacement, of its steel dry and of its outside wet, and the sheet adds up to it.
func TestTheWholeTripIsTheStringsDisplacement(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		sheets := 0
		for i := range plan.Sections {
			sheet, err := calc.TripSheetOf(plan, i)
			if plan.Sections[i].Returns != model.ToRig {
				if err == nil || !strings.Contains(err.Error(), "open to the sea") {
					t.Errorf("section %d: %v", i+1, err)
				}
				continue
			}
			if err != nil {
				t.Fatal(err)
			}
			sheets++
			for _, key := range []string{"open", "closed"} {
				if got, want := value(t, r, i+1, "trip.whole."+key), value(t, r, i+1, "string.displacement."+key); !near(got, want, 1e-9*want) {
					t.Errorf("section %d: %s %g m3, the string displaces %g m3", i+1, key, got, want)
				}
			}
			sum, other := 0.0, 0.0
			for k := range sheet.Rows {
				row := &sheet.Rows[k]
				sum += row.Fill
				other += row.Other
				if !near(row.Total, sum, 1e-9) || !near(row.Bit, sheet.TD-row.Stands*sheet.Stand, 1e-6) {
					t.Errorf("section %d row %d: %+v", i+1, k+1, *row)
				}
			}
			if !near(sum, value(t, r, i+1, "trip.whole.open"), 1e-9*sum) || !near(other, value(t, r, i+1, "trip.whole.closed"), 1e-9*other) {
				t.Errorf("section %d: the sheet takes %g m3, wet %g m3", i+1, sum, other)
			}
			inShoe, atStack := 0, 0
			for _, row := range sheet.Rows {
				if row.InShoe {
					inShoe++
				}
				if row.AtStack {
					atStack++
				}
			}
			if inShoe != 1 || atStack != 1 {
				t.Errorf("section %d: the bit comes into the shoe %d times, the BHA to the stack %d times", i+1, inShoe, atStack)
			}
		}
		if sheets < 3 {
			t.Errorf("%d trip sheets", sheets)
		}
	})
}

func TestATripSheetOfNothing(t *testing.T) {
	plan := demo(t, "ottermast-2")
	if _, err := calc.TripSheetOf(plan, 9); err == nil {
		t.Error("section 10 has a trip sheet")
	}
	with(t, plan, "rig.stand_length", "")
	if _, err := calc.TripSheetOf(plan, 3); err == nil || !strings.Contains(err.Error(), "stand length is blank") {
		t.Errorf("without stands: %v", err)
	}
	if f := figure(t, calc.Evaluate(plan), 4, "trip.whole.open"); f.OK || f.Mend != "rig.stand_length" {
		t.Errorf("%+v", f)
	}
}

// TestTheLawOnFilling stops a plan that pulls six stands, or that lets the pressure drop by more than 75 psi, and the
// larger drop is that of wet pipe, which no slug makes dry.
func TestTheLawOnFilling(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	with(t, plan, "section[5].trip.fill_every", "6")
	if f := worst(t, calc.Evaluate(plan), 5, "us_trip_stands"); f.Severity != calc.Stop {
		t.Errorf("six stands: %+v", f)
	}
	with(t, plan, "section[5].trip.fill_every", "20")
	if f := worst(t, calc.Evaluate(plan), 5, "us_trip_fill"); f.Severity != calc.OK {
		t.Errorf("twenty stands dry: %+v", f)
	}
	with(t, plan, "section[5].trip.slug_density", "")
	r := calc.Evaluate(plan)
	f := worst(t, r, 5, "us_trip_fill")
	if want := value(t, r, 5, "trip.part."+strconv.Itoa(len(plan.Sections[4].String))+".fill.closed.pressure"); f.Severity != calc.Stop || !near(f.Measured, want, 1) {
		t.Errorf("twenty stands wet: %+v, the drop is %g Pa", f, want)
	}
	if f := worst(t, r, 5, "trip_tank"); f.Severity != calc.Caution {
		t.Errorf("twenty stands wet of 6 5/8 in pipe out of a tank of 100 bbl: %+v", f)
	}
}

// TestASlugBothWays: the volume that a length takes empties that length; a heavier slug is smaller; one that is no heavier is
// none.
func TestASlugBothWays(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	volume, foot := value(t, r, 4, "trip.slug.volume"), value(t, r, 4, "trip.slug.foot")
	// 56.8 m × 1.42 / 0.23 of slug, in 5.153 in pipe, all above the kick-off.
	if want := 56.8 * 1.42 / 0.23; !near(foot-56.8, want, 1e-6) || !near(volume, want*math.Pi/4*math.Pow(5.153*inch, 2), 1e-3) {
		t.Errorf("%g m3 down to %g m", volume, foot)
	}
	if gain := value(t, r, 4, "trip.slug.gain"); !near(gain, volume*56.8/(foot-56.8), 1e-9) {
		t.Errorf("%g m3 come back", gain)
	}
	ref := entry(t, plan, "section[4].trip.slug_volume")
	with(t, plan, "section[4].trip.dry", "")
	if f := figure(t, calc.Evaluate(plan), 4, "trip.slug.dry"); f.OK || f.Mend != "section[4].trip.dry" {
		t.Errorf("neither length nor volume: %+v", f)
	}
	e, err := ref.Field.Parse("3 m3", 0)
	if err != nil {
		t.Fatal(err)
	}
	e.Quantity.SI = volume
	ref.Set(plan, e)
	if got := value(t, calc.Evaluate(plan), 4, "trip.slug.dry"); !near(got, 56.8, 1e-6) {
		t.Errorf("%g m3 empty %g m", volume, got)
	}
	with(t, plan, "section[4].trip.slug_density", "1.42 sg")
	if f := figure(t, calc.Evaluate(plan), 4, "trip.slug.dry"); f.OK || !strings.Contains(f.Why, "no heavier") {
		t.Errorf("a slug of mud: %+v", f)
	}
	with(t, plan, "section[4].trip.slug_density", "1.43 sg")
	with(t, plan, "section[4].trip.slug_volume", "50 m3")
	if f := figure(t, calc.Evaluate(plan), 4, "trip.slug.dry"); f.OK || !strings.Contains(f.Why, "longer than the string") {
		t.Errorf("a slug longer than the string: %+v", f)
	}
}
