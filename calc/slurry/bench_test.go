package slurry

import "testing"

func BenchmarkRecipe(b *testing.B) {
	r := lead()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := r.Slurry(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBalance(b *testing.B) {
	hole := []Stretch{{0, 1000, 0.010, 0.030, 0.045}, {1000, 1350, 0.010, 0.040, 0.055}, {1350, 1500, 0.004, 0.041, 0.055}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Balance(hole, Plug{Base: 1500, Slurry: 8, Ahead: 2, Under: 0.2}); err != nil {
			b.Fatal(err)
		}
	}
}
