package calc

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/friction"
	"borewalk/model"
	"borewalk/plans"
)

// TestAPublishedWholeSystem sends a textbook's well through the loop: surface lines, two sizes of string, three of annulus. Guo
// and Liu, Applied Drilling Circulation Systems (2011), illustrative example 2.5: 1087 psi, read on page 66; the 7394 kPa
// printed beside them have two digits exchanged.
func TestAPublishedWholeSystem(t *testing.T) {
	const in, ft, gpm, psi = 0.0254, 0.3048, 231 * 0.0254 * 0.0254 * 0.0254 / 60, 6894.757293168361
	const ppg, lb100 = 0.45359237 / (231 * in * in * in), 0.45359237 * 9.80665 / (ft * ft) / 100
	part := func(od, id, top, bottom float64) *stringPart {
		return &stringPart{top: top * ft, bottom: bottom * ft, row: &model.StringPart{Item: model.ItemCollar}, pipe: model.Pipe{OD: od * in, ID: id * in, Drift: id * in, Widest: od * in}}
	}
	pipe, collar := part(4.5, 3.826, 0, 9500), part(6.75, 2.25, 9500, 9950)
	l := loop{
		rub: friction.BinghamSlot{}, fluid: friction.Bingham(10.5*ppg, 0.035, 6*lb100),
		surface: stretch{bottom: 479 * ft, bore: 3.826 * in},
		down:    []stretch{{top: 0, bottom: 9500 * ft, part: pipe}, {top: 9500 * ft, bottom: 9950 * ft, part: collar}},
		up: []stretch{{top: 0, bottom: 6500 * ft, bore: 8.755 * in, part: pipe}, {top: 6500 * ft, bottom: 9500 * ft, bore: 8.5 * in, part: pipe},
			{top: 9500 * ft, bottom: 9950 * ft, bore: 8.5 * in, part: collar}},
	}
	if got := l.parasitic(300*gpm) / psi; math.Abs(got-1087) > 0.002*1087 {
		t.Errorf("whole system %v psi, want 1087", got)
	}
	if got := l.parasitic(300*gpm) / 1000; math.Abs(got-7394) < 0.002*7394 {
		t.Errorf("whole system %v kPa meets the misprint 7394", got)
	}
	if got, want := l.annulus(300*gpm)/psi, 31.4; !(got > want) {
		t.Errorf("annulus %v psi, the collars alone are %v", got, want)
	}
}

// What is looked for in steps is where a curve that is known crosses, jumps counted.
func TestTheLastFlowIsFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		root, power := rapid.Float64Range(0.001, 0.2).Draw(t, "root"), rapid.Float64Range(0.5, 2.5).Draw(t, "power")
		scale, jump := rapid.Float64Range(1, 1e9).Draw(t, "scale"), rapid.Float64Range(0, 0.5).Draw(t, "jump")
		over := func(q float64) float64 {
			x := scale * (math.Pow(q/root, power) - 1)
			if q == 0 {
				return -scale * (1 + jump)
			}
			return x
		}
		most := root * rapid.Float64Range(1.01, 50).Draw(t, "most")
		if got, found := lastFlow(over, 0, most); !found || math.Abs(got-root) > 1e-4*root+2e-5*most {
			t.Fatalf("found %v, %v, want %v", got, found, root)
		}
		if got, found := lastFlow(over, 0, root*0.9); found || got != root*0.9 {
			t.Fatalf("below it: %v, %v", got, found)
		}
		if got, found := lastFlow(over, root*1.1, root*2); !found || got != root*1.1 {
			t.Fatalf("above it: %v, %v", got, found)
		}
	})
}

// TestTheAnnulusHasOnePressure: on the way down it only grows, at the bit it is what the figures say, and at the foot of each
// stretch it is the same from above and from below.
func TestTheAnnulusHasOnePressure(t *testing.T) {
	for _, name := range plans.Names() {
		plan := Demo(t, name)
		e := run(plan)
		for i := range plan.Sections {
			c := e.circulating(i)
			if c.missing.open() {
				t.Fatalf("%s %d: %s", name, i+1, c.missing.why)
			}
			last := 0.0
			for k := range 2001 {
				md := c.loop.td * float64(k) / 2000
				p := c.pressureAt(md)
				if p < last-1e-6 {
					t.Errorf("%s %d: %g Pa at %g m, %g above", name, i+1, p, md, last)
				}
				last = p
			}
			for _, g := range c.loop.up {
				if a, b := c.pressureAt(g.bottom-1e-9), c.pressureAt(math.Min(g.bottom+1e-9, c.loop.td)); math.Abs(a-b) > 1 {
					t.Errorf("%s %d: a step of %g Pa at %g m", name, i+1, b-a, g.bottom)
				}
			}
			bit := c.loop.standpipe(c.flow) - c.loop.parasitic(c.flow) - c.loop.lossBit(c.flow) + c.loop.annulus(c.flow) + c.loop.fluid.Density*gravity*c.loop.tvd
			if got := c.pressureAt(c.loop.td); math.Abs(got-bit) > 1 {
				t.Errorf("%s %d: %g Pa at the bit outside, %g inside", name, i+1, got, bit)
			}
			least, at := c.loop.spare(c.flow)
			if len(c.loop.places) > 0 && math.Abs(at.limit-c.emwAt(at.md)-least) > 1e-6 {
				t.Errorf("%s %d: margin %g by one way, %g by the other", name, i+1, least, at.limit-c.emwAt(at.md))
			}
		}
	}
}

// BenchmarkHydraulics works out one section's hydraulics, way and figures, on a plan otherwise worked out. The budget is 100
// microseconds on a small machine.
func BenchmarkHydraulics(b *testing.B) {
	const section = 4
	e := run(Demo(b, plans.Default))
	sheet, count := &e.result.Sections[section], len(e.result.Findings)
	b.ReportAllocs()
	for b.Loop() {
		e.loops, e.circulations = nil, nil
		sheet.Figures, e.result.Findings = sheet.Figures[:0], e.result.Findings[:count]
		e.hydraulicsPage(section)
	}
}
