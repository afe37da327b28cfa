package calc_test

import (
	"math"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/calc/column"
	"borewalk/calc/water"
)

// TestTheSeaByDepthCountsEverywhere: chosen, the sea's own pressure stands at the mudline, and what is riserless changes by
// just the difference of the two columns of sea; not chosen, salinity moves nothing but the figures of the sea.
func TestTheSeaByDepthCountsEverywhere(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		before := calc.Evaluate(plan)
		with(t, plan, "well.salinity", "38")
		for key, was := range computed(before) {
			now, ok := computed(calc.Evaluate(plan))[key]
			if !strings.Contains(key, "mud.sea.") && (!ok || now != was) {
				t.Fatalf("salinity moves %s from %v to %v although the entered density counts", key, was, now)
			}
			if strings.HasSuffix(key, "mud.sea.pressure") && !(now > was) {
				t.Errorf("saltier sea: %v to %v Pa", was, now)
			}
			break // one look at each map is enough: the order is random, and every run looks elsewhere
		}
		with(t, plan, "well.sea_density", "by depth")
		after := calc.Evaluate(plan)
		pressure := value(t, after, 0, "mud.sea.pressure")
		if got := value(t, after, 0, "datum.sea_pressure"); math.Abs(got-pressure) > 1e-6*pressure {
			t.Errorf("the sea that counts presses %v Pa, by depth it is %v", got, pressure)
		}
		over := value(t, after, 0, "mud.sea.pressure.over")
		for section := 1; section <= 2; section++ {
			key := "mud.drilling.pressure"
			if got := value(t, after, section, key) - value(t, before, section, key); math.Abs(got-over) > 1 {
				t.Errorf("section %d %s moves by %v Pa, the sea by %v", section, key, got, over)
			}
		}
		key := "mud.riser_margin"
		if got := value(t, after, 4, key) - value(t, before, 4, key); math.Abs(got-over) > 1 {
			t.Errorf("riser margin moves by %v Pa, the sea by %v", got, over)
		}
	})
}

// TestTheSeaBySmallSteps sums the deep demo's sea in sixteen thousand steps, its temperature by hand.
func TestTheSeaBySmallSteps(t *testing.T) {
	r := calc.Evaluate(demo(t, "saltlantern-1"))
	const foot, steps = 0.3048, 16000
	surface, seabed := 273.15+(74-32)/1.8, 273.15+(39-32)/1.8
	pressure, depth := 0.0, 5240*foot
	step := depth / steps
	for k := range steps {
		z := step * (float64(k) + 0.5)
		at := math.Max(seabed, surface+(seabed-surface)*z/(3300*foot))
		density, ok := water.Sea(35, at, pressure+column.G*step/2*1030)
		if !ok {
			t.Fatal("beyond the equation")
		}
		pressure += column.G * step * density
	}
	if got := value(t, r, 0, "mud.sea.pressure"); math.Abs(got-pressure) > 1e-6*pressure {
		t.Errorf("%v Pa, small steps give %v", got, pressure)
	}
}

// TestTheSeaSaysWhatItNeeds: without a temperature the choice by depth blanks what hangs on it, and sends there.
func TestTheSeaSaysWhatItNeeds(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "well.sea_density", "by depth")
	with(t, plan, "well.seawater", "")
	if f := figure(t, calc.Evaluate(plan), 0, "datum.sea_pressure"); !f.OK {
		t.Errorf("by depth, the entered density is not needed: %s", f.Why)
	}
	with(t, plan, "well.surface_temperature", "")
	for section, key := range map[int]string{0: "datum.sea_pressure", 1: "mud.drilling", 4: "mud.riser_off"} {
		if f := figure(t, calc.Evaluate(plan), section, key); f.OK || f.Mend != "well.surface_temperature" {
			t.Errorf("section %d %s: %+v", section, key, f)
		}
	}
}
