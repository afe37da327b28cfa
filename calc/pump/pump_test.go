package pump

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

const (
	inch   = 0.0254
	barrel = 42 * 231 * inch * inch * inch
	minute = 60
)

func TestPublishedOutputs(t *testing.T) {
	const df = "Drilling Formulas and Drilling Calculations, https://www.drillingformulas.com/pump-output-calculation-for-duplex-pump-and-triplex-pump/"
	cases := []struct {
		source                         string
		seen                           bool
		kind                           string
		liner, rod, stroke, efficiency float64 // in, in, in, fraction
		want                           float64 // bbl/stroke
		tolerancePct                   float64
	}{
		// Its constant 0.000243 is 0.06 % above 3 pi/4 / 9702.
		{df, true, "triplex", 6, 0, 12, 1, 0.104976, 0.1},
		{df, true, "triplex", 6, 0, 12, 0.97, 0.101827, 0.1},
		{df + "comment-page-1/", true, "duplex", 6, 2, 12, 1, 0.132192, 0.1},
		{df + "comment-page-1/", true, "duplex", 6, 2, 12, 0.85, 0.11236, 0.1},
		// The page lists a 5 in liner and works with 5.5 in.
		{"http://petrolengineering.com/duplex-pump-output-drilling-formula/", true, "duplex", 5.5, 2, 12.5, 1, 0.1144, 0.1},
		{"Bourgoyne et al., Applied Drilling Engineering, chapter 1, pump factor example", false, "duplex", 6.5, 2.5, 18, 0.9, 0.2052, 0.1},
	}
	for _, c := range cases {
		var got float64
		var err error
		if c.kind == "triplex" {
			got, err = Triplex(c.liner*inch, c.stroke*inch, c.efficiency)
		} else {
			got, err = Duplex(c.liner*inch, c.rod*inch, c.stroke*inch, c.efficiency)
		}
		if err != nil || math.Abs(got/barrel-c.want) > c.want*c.tolerancePct/100 {
			t.Errorf("%s %v x %v in = %v bbl/stroke, %v, want %v (%s)", c.kind, c.liner, c.stroke, got/barrel, err, c.want, c.source)
		}
	}
}

// The strokes of two invented wells, worked out independently from their volumes,
// which are rounded to the last place given.
func TestStrokesOfInventedWells(t *testing.T) {
	cases := []struct {
		name           string
		liner, stroke  float64 // in
		volume, within float64 // m³
		want           float64
	}{
		{"17-1/2 in section, 6 in liners", 6, 12, 141.4, 0.05, 8740},
		{"the same with 5-1/2 in liners", 5.5, 12, 141.4, 0.05, 10401},
		{"12-1/4 in section", 6, 12, 112.5, 0.05, 6953},
		{"deep water, 1270 bbl", 6.5, 14, 1270 * barrel, 0.5 * barrel, 9116},
		{"deep water, 1054 bbl", 6.5, 14, 1054 * barrel, 0.5 * barrel, 7566},
	}
	for _, c := range cases {
		output, err := Triplex(c.liner*inch, c.stroke*inch, 0.97)
		if err != nil {
			t.Fatal(err)
		}
		got, ok := Strokes(c.volume, output)
		if !ok || math.Abs(got-c.want) > c.within/output+0.5 {
			t.Errorf("%s: %v strokes, want %v", c.name, got, c.want)
		}
	}
}

func TestRates(t *testing.T) {
	output, err := Triplex(6*inch, 12*inch, 0.97) // 16.18 litres
	if err != nil {
		t.Fatal(err)
	}
	// 4.2 m³/min on three pumps: 4.2/0.01618 = 259.6, 86.5 strokes a minute each.
	rate, ok := Rate(4.2/minute, output, 3)
	if !ok || math.Abs(rate*minute-86.53) > 0.01 {
		t.Errorf("Rate = %v strokes/min, %v, want 86.53", rate*minute, ok)
	}
	if got, ok := Time(141.4, 4.2/minute); !ok || math.Abs(got/minute-33.6667) > 0.001 {
		t.Errorf("Time = %v min, %v, want 33.67", got/minute, ok)
	}
	if got, ok := Flow(2, 0.02, 0); !ok || got != 0 {
		t.Errorf("Flow of no pump = %v, %v, want 0", got, ok)
	}
}

func TestBadInput(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	outputs := []struct {
		err  error
		want string
	}{
		{second(Triplex(0, 0.3, 1)), "liner bore 0 m"},
		{second(Triplex(nan, 0.3, 1)), "liner bore"},
		{second(Triplex(6.5*12, 0.3, 1)), "check its unit"},
		{second(Triplex(0.15, -0.3, 1)), "stroke length"},
		{second(Triplex(0.15, inf, 1)), "stroke length"},
		{second(Triplex(0.15, 0.3, 97)), "efficiency 97"},
		{second(Triplex(0.15, 0.3, 0)), "efficiency 0"},
		{second(Triplex(0.15, 0.3, nan)), "efficiency"},
		{second(Duplex(0, 0.05, 0.3, 1)), "duplex pump: liner"},
		{second(Duplex(0.15, 0.15, 0.3, 1)), "rod of 0.15 m"},
		{second(Duplex(0.15, nan, 0.3, 1)), "rod"},
	}
	for i, c := range outputs {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("case %d says %v, want %q", i, c.err, c.want)
		}
	}
	type answer struct {
		value float64
		ok    bool
	}
	pair := func(value float64, ok bool) answer { return answer{value, ok} }
	for i, a := range []answer{
		pair(Strokes(1, 0)), pair(Strokes(-1, 1)), pair(Strokes(nan, 1)), pair(Strokes(inf, 1)), pair(Strokes(1e300, 1e-300)),
		pair(Volume(-1, 1)), pair(Volume(1, nan)), pair(Volume(1e300, 1e300)),
		pair(Time(1, 0)), pair(Time(1, -1)), pair(Time(nan, 1)),
		pair(Rate(1, 1, 0)), pair(Rate(1, 0, 1)), pair(Rate(-1, 1, 1)),
		pair(Flow(1, 1, -1)), pair(Flow(-1, 1, 1)), pair(Flow(nan, 1, 1)), pair(Flow(1e300, 1e300, 1)),
	} {
		if a != (answer{}) {
			t.Errorf("case %d = %v, %v, want none", i, a.value, a.ok)
		}
	}
}

func second(_ float64, err error) error { return err }

func TestStrokesRatesAndTimesAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		liner := rapid.Float64Range(0.1, 0.2).Draw(t, "liner")
		output, err := Triplex(liner, rapid.Float64Range(0.2, 0.5).Draw(t, "stroke"), rapid.Float64Range(0.5, 1).Draw(t, "efficiency"))
		if err != nil {
			t.Fatal(err)
		}
		volume := rapid.Float64Range(0, 500).Draw(t, "volume")
		flow := rapid.Float64Range(0.001, 0.1).Draw(t, "flow")
		pumps := rapid.IntRange(1, 5).Draw(t, "pumps")
		strokes, _ := Strokes(volume, output)
		seconds, _ := Time(volume, flow)
		rate, _ := Rate(flow, output, pumps)
		if got := rate * seconds * float64(pumps); math.Abs(got-strokes) > 1e-9*strokes {
			t.Fatalf("rate times time = %v strokes, want %v", got, strokes)
		}
		if got, ok := Volume(strokes, output); !ok || math.Abs(got-volume) > 1e-12*volume {
			t.Fatalf("Volume(Strokes(%v)) = %v, %v", volume, got, ok)
		}
		if got, ok := Flow(rate, output, pumps); !ok || math.Abs(got-flow) > 1e-12*flow {
			t.Fatalf("Flow(Rate(%v)) = %v, %v", flow, got, ok)
		}
	})
}

// A duplex without a rod sweeps four liners where a triplex sweeps three.
func TestDuplexAgainstTriplex(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		liner := rapid.Float64Range(0.1, 0.2).Draw(t, "liner")
		stroke := rapid.Float64Range(0.2, 0.5).Draw(t, "stroke")
		three, _ := Triplex(liner, stroke, 0.9)
		four, _ := Duplex(liner, 0, stroke, 0.9)
		if math.Abs(four/three-4.0/3) > 1e-12 {
			t.Fatalf("duplex %v over triplex %v is not 4/3", four, three)
		}
		rod := liner * rapid.Float64Range(0.01, 0.9).Draw(t, "rod")
		if less, _ := Duplex(liner, rod, stroke, 0.9); less >= four {
			t.Fatalf("a rod of %v leaves %v of %v", rod, less, four)
		}
	})
}
