package tally

import (
	"fmt"
	"math"
	"testing"
)

// bigDeck is a long string of 240 measured joints, to the millimetre, and ten pups
// that all differ. Budget for closing it: 5 ms.
func bigDeck(outOfOrder int, wanted float64) Closing {
	c := Closing{
		Below:    []Item{{Shoe, "", 1, 0.55}, {TrackJoint, "", 2, 12.27}, {FloatCollar, "", 1, 0.51}},
		Above:    []Item{{Hanger, "", 1, 3.35}},
		Shoulder: 365.25, Wanted: wanted, Shallowest: wanted - 1, Deepest: wanted + 0.5, OutOfOrder: outOfOrder,
	}
	for i := range 240 {
		_, part := math.Modf(float64(i) * 0.6180339887) // spread, always the same
		c.Joints = append(c.Joints, DeckJoint{Number: fmt.Sprint(i + 1), Length: 11.9 + math.Round(450*part)/1000})
	}
	for i := range 10 {
		c.Pups = append(c.Pups, DeckPup{"", 0.913 + 0.557*float64(i), 1})
	}
	return c
}

func BenchmarkClose(b *testing.B) {
	near := bigDeck(2, 3200.0003)
	near.Tolerance = 0.02
	for _, c := range []struct {
		name    string
		closing Closing
	}{
		{"in order", bigDeck(0, 3200.0003)},
		{"one out", bigDeck(1, 3200.0003)},
		{"two out", bigDeck(2, 3200.0003)}, // lengths are whole millimetres: no way hits it
		{"near enough", near},
		{"too few joints", bigDeck(2, 4000)},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Close(c.closing); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkRun(b *testing.B) {
	closed, err := Close(bigDeck(0, 3200))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Run(closed.Items, 365.25); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPlace(b *testing.B) {
	w := wells(b)["Ottermast-2, 9-7/8 in"]
	l, err := Run(w.items, w.top)
	if err != nil {
		b.Fatal(err)
	}
	p := Placement{Couplings: l.Couplings(), Parts: []Part{{"packer", 4.5, 4.5}, {"slips", 6.5, 6.5}}, Distance: KeepOff,
		HostShoe: l.Shoe, LeastLap: 100, MostLap: 200, Wanted: 3092}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Place(p); err != nil {
			b.Fatal(err)
		}
	}
}
