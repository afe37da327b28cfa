package bore

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawWell draws a profile and a string that fits into it, and the depth of its
// bottom. The string may have gaps and end above or below the bore.
func drawWell(t *rapid.T) (Profile, []Body, float64) {
	var outer Profile
	md := 0.0
	for range rapid.IntRange(1, 5).Draw(t, "spans") {
		length := rapid.Float64Range(1, 1500).Draw(t, "length")
		outer = append(outer, Span{Top: md, Bottom: md + length, Diameter: rapid.Float64Range(0.15, 1).Draw(t, "diameter")})
		md += length
	}
	var inner []Body
	at := 0.0
	for range rapid.IntRange(0, 6).Draw(t, "bodies") {
		at += rapid.SampledFrom([]float64{0, 0, 25}).Draw(t, "gap")
		length := rapid.Float64Range(1, 1500).Draw(t, "length")
		od := rapid.Float64Range(0.05, 0.14).Draw(t, "od")
		inner = append(inner, Body{Top: at, Bottom: at + length, OD: od, ID: od * rapid.Float64Range(0, 0.95).Draw(t, "bore")})
		at += length
	}
	if err := outer.Check(); err != nil {
		t.Fatal(err)
	}
	if err := CheckBodies(inner); err != nil {
		t.Fatal(err)
	}
	return outer, inner, md
}

// plain adds up the volume in small steps, looking up both diameters at the
// middle of each: no boundaries, no intervals.
func plain(outer Profile, inner []Body, top, bottom float64) float64 {
	const steps = 20000
	volume, step := 0.0, (bottom-top)/steps
	for i := range steps {
		md := top + (float64(i)+0.5)*step
		span, ok := outer.At(md)
		if !ok {
			continue
		}
		area := math.Pi / 4 * span.Diameter * span.Diameter
		for _, b := range inner {
			if b.Top <= md && md < b.Bottom {
				area -= math.Pi / 4 * b.OD * b.OD
			}
		}
		volume += area * step
	}
	return volume
}

func TestVolumeIsThePlainSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outer, inner, end := drawWell(t)
		top := rapid.Float64Range(0, end).Draw(t, "top")
		bottom := rapid.Float64Range(top, end).Draw(t, "bottom")
		got, want := Volume(Intervals(outer, inner, top, bottom)), plain(outer, inner, top, bottom)
		// Each boundary may fall anywhere in a step: 12 boundaries, a step, 1 m².
		if math.Abs(got-want) > 12*(bottom-top)/20000+1e-6 {
			t.Fatalf("volume from %v to %v = %v, want %v", top, bottom, got, want)
		}
	})
}

func TestVolumesAddUpHoweverCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outer, inner, end := drawWell(t)
		whole := Intervals(outer, inner, 0, end)
		cut := rapid.Float64Range(0, end).Draw(t, "cut")
		parts := AppendIntervals(Intervals(outer, inner, 0, cut), outer, inner, cut, end)
		// A cut within a micrometre of a boundary moves that boundary: 1e-6 m³.
		if a, b := Volume(whole), Volume(parts); math.Abs(a-b) > 1e-6 {
			t.Fatalf("whole %v, cut at %v %v", a, cut, b)
		}
		if a, b := Volume(whole), Between(whole, 0, cut)+Between(whole, end, cut); math.Abs(a-b) > 1e-9 {
			t.Fatalf("whole %v, both sides of %v %v", a, cut, b)
		}
		for i, v := range whole {
			if !(v.Top < v.Bottom) || i > 0 && v.Top != whole[i-1].Bottom {
				t.Fatalf("interval %d = %+v does not follow %+v", i, v, whole[max(i-1, 0)])
			}
		}
		// Bore, steel and annulus fill the hole.
		filled := Volume(whole) + ClosedEnd(inner, 0, end)
		if empty := Volume(Intervals(outer, nil, 0, end)); math.Abs(filled-empty) > 1e-5 {
			t.Fatalf("annulus and string hold %v, the empty hole %v", filled, empty)
		}
		closed := OpenEnd(inner, 0, end) + Volume(Inside(inner, 0, end))
		if want := ClosedEnd(inner, 0, end); math.Abs(closed-want) > 1e-9 {
			t.Fatalf("steel and bore %v, closed-end %v", closed, want)
		}
	})
}

func TestBetweenGrowsWithLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outer, inner, end := drawWell(t)
		cut := Intervals(outer, inner, 0, end)
		from := rapid.Float64Range(0, end).Draw(t, "from")
		a := rapid.Float64Range(from, end).Draw(t, "a")
		b := rapid.Float64Range(a, end).Draw(t, "b")
		if short, long := Between(cut, from, a), Between(cut, from, b); long < short {
			t.Fatalf("from %v: %v to %v, but %v to %v", from, short, a, long, b)
		}
	})
}

func TestDepthAboveAndBelowInvertBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outer, inner, end := drawWell(t)
		cut := Intervals(outer, inner, 0, end)
		top := rapid.Float64Range(0, end).Draw(t, "top")
		bottom := rapid.Float64Range(top, end).Draw(t, "bottom")
		volume := Between(cut, top, bottom)
		if up, left := DepthAbove(cut, bottom, volume); math.Abs(up-top) > 1e-7 || left != 0 {
			t.Fatalf("DepthAbove(%v, %v) = %v, %v, want %v", bottom, volume, up, left, top)
		}
		if down, left := DepthBelow(cut, top, volume); math.Abs(down-bottom) > 1e-7 || left != 0 {
			t.Fatalf("DepthBelow(%v, %v) = %v, %v, want %v", top, volume, down, left, bottom)
		}
		extra := rapid.Float64Range(0.001, 500).Draw(t, "extra")
		up, left := DepthAbove(cut, bottom, Between(cut, 0, bottom)+extra)
		if up != 0 || math.Abs(left-extra) > 1e-8 {
			t.Fatalf("DepthAbove with %v too much = %v, %v", extra, up, left)
		}
	})
}

// TestNeverNegative feeds anything, fitting or not: no volume may be negative or
// no number.
func TestNeverNegative(t *testing.T) {
	value := rapid.OneOf(rapid.Float64Range(-10, 2000), rapid.SampledFrom([]float64{0, math.NaN(), -1e-9, 1e-7}))
	rapid.Check(t, func(t *rapid.T) {
		var outer Profile
		var inner []Body
		for range rapid.IntRange(0, 4).Draw(t, "n") {
			outer = append(outer, Span{Top: value.Draw(t, "top"), Bottom: value.Draw(t, "bottom"), Diameter: value.Draw(t, "diameter")})
			inner = append(inner, Body{Top: value.Draw(t, "top"), Bottom: value.Draw(t, "bottom"), OD: value.Draw(t, "od"), ID: value.Draw(t, "id")})
		}
		top, bottom := value.Draw(t, "top"), value.Draw(t, "bottom")
		cut := Intervals(outer, inner, top, bottom)
		for name, v := range map[string]float64{
			"Volume": Volume(cut), "Between": Between(cut, top, bottom),
			"ClosedEnd": ClosedEnd(inner, top, bottom), "OpenEnd": OpenEnd(inner, top, bottom),
			"Inside": Volume(Inside(inner, top, bottom)),
		} {
			if !(v >= 0) {
				t.Fatalf("%s = %v for %+v in %+v from %v to %v", name, v, inner, outer, top, bottom)
			}
		}
	})
}
