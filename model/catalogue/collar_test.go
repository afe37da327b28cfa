package catalogue

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// collarFaults holds weight, capacity and displacement of one row to its
// diameters. Steel is 490 lb/ft³; the printed weights come from rounded
// factors and are within 1.6 lb/ft of it.
func collarFaults(c Collar) []string {
	var faults []string
	area := math.Pi / 4 * (c.OD*c.OD - c.ID*c.ID)
	if got, want := c.Weight/perFoot, 490*area/(foot*foot); !near(got, want, 1.6) {
		faults = append(faults, fmt.Sprintf("weight = %.0f lb/ft, want %.1f", got, want))
	}
	if got, want := c.Capacity/barrelFoot, capacityOf(c.ID); !near(got, want, 0.000006) {
		faults = append(faults, fmt.Sprintf("capacity = %.5f bbl/ft, want %.5f", got, want))
	}
	if got, want := c.Displacement/barrelFoot, area/barrelFoot; !near(got, want, 0.000006) {
		faults = append(faults, fmt.Sprintf("displacement = %.5f bbl/ft, want %.5f", got, want))
	}
	return faults
}

func TestCollarFigures(t *testing.T) {
	for _, c := range collars() {
		for _, fault := range collarFaults(c) {
			t.Errorf("%.3f x %.4f in: %s", c.OD/inch, c.ID/inch, fault)
		}
	}
}

func TestCollarChangedDigitIsCaught(t *testing.T) {
	sound, ok := FindCollar(8*inch, 3*inch)
	if !ok || collarFaults(sound) != nil {
		t.Fatalf("8 x 3 in: found %t, faults %q", ok, collarFaults(sound))
	}
	for _, c := range []struct {
		what  string
		spoil func(*Collar)
		want  string
	}{
		{"weight 147 as 150", func(c *Collar) { c.Weight = 150 * perFoot }, "weight"},
		{"capacity 0.00874 as 0.00876", func(c *Collar) { c.Capacity = 0.00876 * barrelFoot }, "capacity"},
		{"displacement 0.05343 as 0.05345", func(c *Collar) { c.Displacement = 0.05345 * barrelFoot }, "displacement"},
	} {
		spoilt := sound
		c.spoil(&spoilt)
		if faults := strings.Join(collarFaults(spoilt), "; "); !strings.Contains(faults, c.want) {
			t.Errorf("%s: faults %q, want one on %s", c.what, faults, c.want)
		}
	}
}

// Standard Handbook of Petroleum and Natural Gas Engineering, volume 1, table
// 4-73, read; 3 and 2-13/16 in bores API RP 7G, from memory.
func TestFindCollar(t *testing.T) {
	for _, c := range []struct {
		what         string
		od, id, want float64 // lb/ft; 0 if there is none
	}{
		{"8 x 2-1/4", 8 * inch, 2.25 * inch, 157},
		{"8 x 3", 8 * inch, 3 * inch, 147},
		{"8 x 2-13/16, in mm", 0.2032, 0.0714, 150},
		{"6-1/2 x 2-1/4", 6.5 * inch, 2.25 * inch, 99},
		{"no such bore", 8 * inch, 2.9 * inch, 0},
		{"no such size", 8.1 * inch, 3 * inch, 0},
		{"no bore", 8 * inch, 0, 0},
		{"no number", math.NaN(), math.NaN(), 0},
	} {
		got, ok := FindCollar(c.od, c.id)
		if ok != (c.want != 0) || !near(got.Weight/perFoot, c.want, 0) {
			t.Errorf("%s: FindCollar = %.1f lb/ft %t, want %.0f", c.what, got.Weight/perFoot, ok, c.want)
		}
	}
	for _, c := range Collars() {
		if got, ok := FindCollar(c.OD, c.ID); !ok || got != c {
			t.Errorf("%.3f x %.4f in is offered but not found, or listed twice", c.OD/inch, c.ID/inch)
		}
	}
}

func BenchmarkFindCollar(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		FindCollar(8*inch, 3*inch)
	}
}
