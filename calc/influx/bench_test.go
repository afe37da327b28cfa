package influx

import "testing"

// bench is a well of ten cells with a shoe, built to an angle, with what hangs at the bottom.
func bench(tb testing.TB) (*Well, Place) {
	return slanted(Gas(natural(tb, 0.65))), Place{MD: 1800, Stands: 30e6}
}

const benchFormation = 38e6 // Pa

func BenchmarkTolerance(b *testing.B) {
	w, at := bench(b)
	b.ReportAllocs()
	for b.Loop() {
		if t, err := w.Tolerance(benchFormation, at, 5e5); err != nil || t.Case != AtPlace {
			b.Fatalf("%+v, %v", t, err)
		}
	}
}

// BenchmarkCurve: 25 tolerances make a curve against intensity.
func BenchmarkCurve(b *testing.B) {
	w, at := bench(b)
	b.ReportAllocs()
	for b.Loop() {
		for i := range 25 {
			if _, err := w.Tolerance(benchFormation+1e5*float64(i), at, 5e5); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkPress(b *testing.B) {
	w, at := bench(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := w.Press(benchFormation, at, 6, 5e5); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkShutIn(b *testing.B) {
	w, _ := bench(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := w.ShutIn(41e6, 6); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkToleranceByStations: a hole that builds, holds and drops, with a cell for each 30 m.
func BenchmarkToleranceByStations(b *testing.B) {
	legs := []leg{{1500, 0, 0.07}}
	for i := range 90 {
		legs = append(legs, leg{30, 1.5 * float64(min(i, 30, 90-i)), 0.06})
	}
	w := &Well{Mud: 1350, Fluid: Gas(natural(b, 0.65)), Cells: laid(append(legs, leg{100, 0, 0.04}, leg{30, 0, 0.03})...)}
	at := Place{MD: 1500, Stands: 27e6}
	b.ReportAllocs()
	for b.Loop() {
		if t, err := w.Tolerance(50e6, at, 5e5); err != nil || t.Case == None {
			b.Fatalf("%+v, %v", t, err)
		}
	}
}
