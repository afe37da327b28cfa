package steel

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// drawString draws a tapered string of plain pipe that may climb in places.
func drawString(t *rapid.T) []Section {
	var sections []Section
	tvd := 0.0
	for range rapid.IntRange(1, 6).Draw(t, "sections") {
		fall := rapid.Float64Range(-50, 1500).Draw(t, "fall")
		od := rapid.Float64Range(0.08, 0.4).Draw(t, "od")
		id := od * rapid.Float64Range(0, 0.95).Draw(t, "bore")
		sections = append(sections, Section{Top: tvd, Bottom: tvd + fall, OD: od, ID: id, LinearMass: PlainEnd(od, id)})
		tvd += fall
	}
	return sections
}

// full is a fluid that fills everything, up to the first section's top and above.
func full(density float64) func(float64) (float64, bool) {
	return func(tvd float64) (float64, bool) { return density * gravity * tvd, true }
}

// near allows for the rounding of forces much larger than their sum.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-3 }

func TestBothWaysGiveOneWeight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sections := drawString(t)
		inside := rapid.Float64Range(0, 2300).Draw(t, "inside")
		outside := rapid.Float64Range(0, 2300).Draw(t, "outside")
		forces, err := Forces(sections, full(inside), full(outside))
		if err != nil {
			t.Fatal(err)
		}
		if got := Buoyed(sections, inside, outside); !near(got, forces[0].Top) {
			t.Fatalf("Buoyed = %v, Forces %v", got, forces[0].Top)
		}
		// The factor of each section, summed.
		sum := 0.0
		for i := range sections {
			s := sections[i]
			f, ok := BuoyancyFactorInOut(s.OD, s.ID, inside, outside, Density)
			if !ok {
				t.Fatal("no factor")
			}
			sum += f * InAir(sections[i:i+1])
		}
		if !near(sum, forces[0].Top) {
			t.Fatalf("sum of factors %v, Forces %v", sum, forces[0].Top)
		}
	})
}

func TestOneFluidIsTheFactor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sections := drawString(t)
		for i := range sections { // with joints
			sections[i].LinearMass *= rapid.Float64Range(1, 1.2).Draw(t, "joints")
		}
		mud := rapid.Float64Range(0, 2300).Draw(t, "mud")
		factor, _ := BuoyancyFactor(mud, Density)
		if got, want := Buoyed(sections, mud, mud), factor*InAir(sections); !near(got, want) {
			t.Fatalf("Buoyed = %v, factor times air %v", got, want)
		}
	})
}

func TestCuttingASectionChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sections := drawString(t)
		i := rapid.IntRange(0, len(sections)-1).Draw(t, "section")
		cut := sections[i].Top + rapid.Float64Range(0, 1).Draw(t, "share")*sections[i].fall()
		upper, lower := sections[i], sections[i]
		upper.Bottom, lower.Top = cut, cut
		parts := append(append(append([]Section(nil), sections[:i]...), upper, lower), sections[i+1:]...)
		a, err := Forces(sections, full(1200), full(1500))
		if err != nil {
			t.Fatal(err)
		}
		b, err := Forces(parts, full(1200), full(1500))
		if err != nil {
			t.Fatal(err)
		}
		if !near(a[0].Top, b[0].Top) || !near(b[i].Bottom, b[i+1].Top) || !near(a[i].Bottom, b[i+1].Bottom) {
			t.Fatalf("cut at %v: %+v, whole %+v", cut, b, a)
		}
	})
}

func TestHeavierMudLightensTheString(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		od := rapid.Float64Range(0.08, 0.4).Draw(t, "od")
		pipe := []Section{{Bottom: rapid.Float64Range(1, 5000).Draw(t, "fall"), OD: od, ID: od / 2, LinearMass: PlainEnd(od, od/2)}}
		inside := rapid.Float64Range(0, 2000).Draw(t, "inside")
		outside := rapid.Float64Range(0, 2000).Draw(t, "outside")
		more := rapid.Float64Range(1, 300).Draw(t, "more")
		if Buoyed(pipe, inside, outside+more) >= Buoyed(pipe, inside, outside) {
			t.Fatal("heavier mud outside does not lighten the string")
		}
		if Buoyed(pipe, inside+more, outside) <= Buoyed(pipe, inside, outside) {
			t.Fatal("heavier mud inside does not weigh it down")
		}
	})
}

func TestDriftPasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		od := rapid.Float64Range(0.1, 0.6).Draw(t, "od")
		id := od * rapid.Float64Range(0.5, 0.99).Draw(t, "bore")
		drift, ok := Drift(od, id)
		if off := (id - drift) / inch; !ok || off < 0.125-1e-9 || off > 0.1875+1e-9 {
			t.Fatalf("Drift(%v, %v) = %v, %v", od, id, drift, ok)
		}
	})
}
