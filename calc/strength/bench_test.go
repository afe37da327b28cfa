package strength

import "testing"

func BenchmarkCollapse(b *testing.B) {
	pipe := l80()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Collapse(pipe); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFactors(b *testing.B) {
	casing := NewCasing(l80())
	load := Load{Depth: 2500, Inside: 52e6, Outside: 30e6, Axial: 1.2e6, Temperature: 390, Dogleg: 0.001}
	b.ReportAllocs()
	for b.Loop() {
		r, err := casing.Ratings(load)
		if err != nil {
			b.Fatal(err)
		}
		_ = r.Factors()
	}
}
