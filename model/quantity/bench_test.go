package quantity

import "testing"

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"1262", "1262.5 ft", "13 5/8 in"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Parse(text, Length, Foot); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkAppendFormat(b *testing.B) {
	benchmarks := []struct {
		kind Kind
		unit Unit
		si   float64
	}{
		{Length, Foot, 2194.56},
		{Diameter, Inch, 0.346075},
		{EMW, PoundPerGallon, 1497.8},
	}
	for _, bb := range benchmarks {
		b.Run(bb.kind.String(), func(b *testing.B) {
			line := make([]byte, 0, 64)
			b.ReportAllocs()
			for b.Loop() {
				line = AppendFormat(line[:0], bb.si, bb.kind, bb.unit)
			}
		})
	}
}

func BenchmarkText(b *testing.B) {
	v := Of(1262.5, Foot)
	b.ReportAllocs()
	for b.Loop() {
		if v.Text() == "" {
			b.Fatal("no text")
		}
	}
}

func BenchmarkNudge(b *testing.B) {
	v := Of(10.2, PoundPerGallon)
	b.ReportAllocs()
	for b.Loop() {
		v = Nudge(v, Density, PoundPerGallon, 1)
	}
}
