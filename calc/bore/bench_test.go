package bore

import "testing"

// tallied is a well with a string of many lengths, as a tally gives it.
func tallied() (Profile, []Body, float64) {
	outer := Profile{{0, 365, 0.4953, "riser"}, {365, 2155, 0.3144, "casing"}, {2155, 3690, 0.31115, "hole"}}
	var inner []Body
	for md := 0.0; md < 3600; md += 30 {
		inner = append(inner, Body{md, md + 30, 0.127 + 0.0001*float64(len(inner)%7), 0.1086, "stand"})
	}
	return outer, inner, 3690
}

func BenchmarkAppendIntervals(b *testing.B) {
	outer, inner, end := tallied()
	cut := Intervals(outer, inner, 0, end)
	b.ReportAllocs()
	for b.Loop() {
		cut = AppendIntervals(cut[:0], outer, inner, 0, end)
	}
}

func BenchmarkVolume(b *testing.B) {
	outer, inner, end := tallied()
	cut := Intervals(outer, inner, 0, end)
	b.ReportAllocs()
	for b.Loop() {
		Volume(cut)
	}
}

func BenchmarkDepthAbove(b *testing.B) {
	outer, inner, end := tallied()
	cut := Intervals(outer, inner, 0, end)
	half := Volume(cut) / 2
	b.ReportAllocs()
	for b.Loop() {
		DepthAbove(cut, end, half)
	}
}
