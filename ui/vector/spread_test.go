package vector_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/ui/vector"
)

// TestSpreadLabels: none lies on another or beyond the ends, the order stays, and what has room of its own is not moved.
func TestSpreadLabels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const room, top, bottom = 3.5, 10.0, 110.0
		const most = 28 // that have room
		wanted := rapid.SliceOfN(rapid.Float64Range(-20, 140), 0, 40).Draw(t, "wanted")
		places, ok := vector.Spread(wanted, room, top, bottom)
		stand := 0
		for i := range wanted {
			if !ok[i] {
				continue
			}
			stand++
			if places[i] < top+room/2-1e-6 || places[i] > bottom-room/2+1e-6 {
				t.Fatalf("label %d stands at %g", i, places[i])
			}
			alone := wanted[i] >= top+room/2 && wanted[i] <= bottom-room/2
			for j := range wanted {
				if i == j || !ok[j] {
					continue
				}
				if math.Abs(places[i]-places[j]) < room-1e-6 {
					t.Fatalf("labels at %g and %g", places[i], places[j])
				}
				if wanted[i] < wanted[j] && places[i] > places[j] {
					t.Fatalf("labels for %g and %g change places", wanted[i], wanted[j])
				}
				alone = alone && math.Abs(wanted[i]-wanted[j]) > room*float64(len(wanted))
			}
			if alone && math.Abs(places[i]-wanted[i]) > 1e-6 && wanted[i] > top+room*float64(len(wanted)) && wanted[i] < bottom-room*float64(len(wanted)) {
				t.Fatalf("a label for %g stands at %g without need", wanted[i], places[i])
			}
		}
		if want := min(len(wanted), most); stand != want {
			t.Fatalf("%d labels stand, want %d", stand, want)
		}
	})
}

func TestSpreadLeavesOutTheLastGiven(t *testing.T) {
	_, ok := vector.Spread([]float64{5, 1, 3}, 4, 0, 9)
	if !ok[0] || !ok[1] || ok[2] {
		t.Errorf("%v, want the first two", ok)
	}
}
