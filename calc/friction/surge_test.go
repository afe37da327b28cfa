package friction

import (
	"math"
	"testing"
)

// TestClingingIsDrag adds up the velocities between a wall at rest and a cylinder that moves along itself, ln r over ln a,
// ring by ring.
func TestClingingIsDrag(t *testing.T) {
	for _, ratio := range []float64{0.05, 0.3, 0.5, 0.707, 0.9, 0.99} {
		const rings = 200000
		sum, area := 0.0, 0.0
		for k := range rings {
			r := ratio + (1-ratio)*(float64(k)+0.5)/rings
			sum += math.Log(r) / math.Log(ratio) * r
			area += r
		}
		if got, want := Clinging(ratio), sum/area; math.Abs(got-want) > 1e-6 {
			t.Errorf("ratio %g: %.7f, added up %.7f", ratio, got, want)
		}
	}
}

// TestClingingByHand: at half the diameter 0.25 + 0.5 × 0.693147 × 0.5 - 1 = -0.403426 over -1.039721 is 0.388.
func TestClingingByHand(t *testing.T) {
	if got := Clinging(0.5); math.Abs(got-0.38801) > 1e-5 {
		t.Errorf("%.5f, want 0.38801", got)
	}
	for _, none := range []float64{0, -1, 1, 2, math.NaN()} {
		if got := Clinging(none); got != 0 {
			t.Errorf("ratio %g: %g", none, got)
		}
	}
}
