package trajectory

import (
	"math"
	"testing"
)

func spiral(b *testing.B, n int) (Path, []Station) {
	b.Helper()
	stations := make([]Station, n)
	for i := range stations {
		stations[i] = Station{MD: 10 * float64(i), Inclination: 1.2 * float64(i) / float64(n), Azimuth: math.Mod(float64(i)*0.01, 2*math.Pi)}
	}
	path, err := New(stations)
	if err != nil {
		b.Fatal(err)
	}
	return path, stations
}

func BenchmarkTVD(b *testing.B) {
	path, _ := spiral(b, 400)
	b.ReportAllocs()
	var md, sum float64
	for b.Loop() {
		sum += path.TVD(md)
		if md += 37; md > 3900 {
			md = 3
		}
	}
	if sum < 0 {
		b.Fatal(sum)
	}
}

func BenchmarkAt(b *testing.B) {
	path, _ := spiral(b, 400)
	b.ReportAllocs()
	var md, sum float64
	for b.Loop() {
		sum += path.At(md).TVD
		if md += 37; md > 3900 {
			md = 3
		}
	}
	if sum < 0 {
		b.Fatal(sum)
	}
}

func BenchmarkMDAtTVD(b *testing.B) {
	path, _ := spiral(b, 400)
	deepest := path.TVD(3900)
	b.ReportAllocs()
	var tvd, sum float64
	for b.Loop() {
		md, _ := path.MDAtTVD(tvd)
		sum += md
		if tvd += 37; tvd > deepest {
			tvd = 3
		}
	}
	if sum < 0 {
		b.Fatal(sum)
	}
}

func BenchmarkNew(b *testing.B) {
	_, stations := spiral(b, 90_000)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := New(stations); err != nil {
			b.Fatal(err)
		}
	}
}
