package drag_test

import (
	"testing"

	"borewalk/calc/drag"
)

// BenchmarkFourOperations is a 5000 m string in elements of 10 m through a build that turns, picked up, slacked off,
// turned and drilling. The budget is 1 ms.
func BenchmarkFourOperations(b *testing.B) {
	var elements []drag.Element
	at := drag.Direction{}
	for k := range 500 {
		next := at
		if k >= 100 && k < 250 {
			next = drag.Direction{Inclination: at.Inclination + 0.5*degree, Azimuth: at.Azimuth + 0.2*degree}
		}
		elements = append(elements, drag.Element{Length: 10, Upper: at, Lower: next, Weight: 300, Radius: 0.09, Friction: 0.25})
		at = next
	}
	loads := make([]drag.Load, 0, 500)
	b.ReportAllocs()
	for b.Loop() {
		s, err := drag.New(elements)
		if err != nil {
			b.Fatal(err)
		}
		for _, op := range []drag.Operation{drag.PickingUp(), drag.SlackingOff(), drag.Rotating(), drag.Drilling(100e3, 8e3)} {
			loads = s.Loads(loads[:0], op)
		}
	}
}
