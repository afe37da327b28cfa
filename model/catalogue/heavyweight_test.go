package catalogue

import (
	"math"
	"testing"
)

func TestHeavyWeightFigures(t *testing.T) {
	for _, h := range heavyWeights() {
		name := h.OD / inch
		if got, want := h.Capacity/barrelFoot, capacityOf(h.ID); !near(got, want, 0.000006) {
			t.Errorf("%.3f in: capacity = %.5f bbl/ft, want %.5f", name, got, want)
		}
		if got, want := h.Displacement/barrelFoot, steelOf(h.Weight); !near(got, want, 0.000006) {
			t.Errorf("%.3f in: displacement = %.5f bbl/ft, want %.5f", name, got, want)
		}
		if !(h.ToolJointOD > h.OD && h.ToolJointID > h.ID && h.ToolJointID < h.OD) {
			t.Errorf("%.3f in: joint %.3f x %.4f in does not fit the pipe", name, h.ToolJointOD/inch, h.ToolJointID/inch)
		}
		// The joints and the centre upset make it heavier than its body.
		body := 10.69 * (h.OD - h.ID) / 2 * (h.OD + h.ID) / 2 / (inch * inch)
		if got := h.Weight / perFoot; got < body || got > 1.4*body {
			t.Errorf("%.3f in: weight = %.1f lb/ft, body %.1f", name, got, body)
		}
		if got, ok := FindHeavyWeightBore(h.OD, h.ID); !ok || got != h {
			t.Errorf("%.3f in is offered but not found", name)
		}
	}
}

// A connection has its usual joint OD (API RP 7G, from memory), and the joint is
// bored a sixteenth or an eighth wider than the pipe.
func TestHeavyWeightJoints(t *testing.T) {
	usual := map[string]float64{
		"NC38": 4.75, "NC40": 5.25, "NC46": 6.25, "NC50": 6.625, "5-1/2 FH": 7, "6-5/8 FH": 8,
	}
	for _, h := range heavyWeights() {
		if got, want := h.ToolJointOD/inch, usual[h.Connection]; !near(got, want, 0) {
			t.Errorf("%s: joint OD = %.3f in, want %.3f", h.Connection, got, want)
		}
		if got := (h.ToolJointID - h.ID) / inch; !near(got, 1.0/16, 0) && !near(got, 1.0/8, 0) {
			t.Errorf("%s: joint bore %.4f in wider than the pipe, want 1/16 or 1/8", h.Connection, got)
		}
		if eighths := h.OD / inch * 8; !near(eighths, math.Round(eighths), 0) {
			t.Errorf("%s: OD = %.4f in, want whole eighths", h.Connection, h.OD/inch)
		}
	}
}

// Sizes of makers' sheets, from memory.
func TestFindHeavyWeight(t *testing.T) {
	if h, ok := FindHeavyWeight(5 * inch); !ok || !near(h.Weight, 49.3*perFoot, 0) || h.Connection != "NC50" {
		t.Errorf("FindHeavyWeight(5 in) = %+v %t, want 49.3 lb/ft NC50", h, ok)
	}
	if _, ok := FindHeavyWeight(3.5 * inch); ok {
		t.Error("FindHeavyWeight(3-1/2 in) found one, want none: there are two bores")
	}
	if h, ok := FindHeavyWeightBore(3.5*inch, 2.25*inch); !ok || !near(h.Weight, 23.4*perFoot, 0) {
		t.Errorf("FindHeavyWeightBore(3-1/2 in, 2-1/4 in) = %+v %t, want 23.4 lb/ft", h, ok)
	}
	if _, ok := FindHeavyWeight(6 * inch); ok {
		t.Error("FindHeavyWeight(6 in) found one, want none")
	}
	if got := len(HeavyWeights()); got != 7 {
		t.Errorf("HeavyWeights() has %d rows, want 7", got)
	}
}
