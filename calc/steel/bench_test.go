package steel

import "testing"

func tapered() []Section {
	var sections []Section
	for i := range 12 {
		top, od := 300*float64(i), 0.127+0.005*float64(i)
		sections = append(sections, Section{top, top + 300, od, 0.1, PlainEnd(od, 0.1), ""})
	}
	return sections
}

func BenchmarkBuoyed(b *testing.B) {
	sections := tapered()
	b.ReportAllocs()
	for b.Loop() {
		Buoyed(sections, 1200, 1300)
	}
}

func BenchmarkForces(b *testing.B) {
	sections := tapered()
	mud := fluid(0, 1200)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Forces(sections, mud, mud); err != nil {
			b.Fatal(err)
		}
	}
}
