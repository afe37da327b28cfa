package tally

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The tides of the invented Ottermast: 0.90 m below and 0.95 m above mean sea level.
func ottermastLanding() Landing {
	return Landing{
		Fixed: []Item{{Other, "running tool", 1, 6.2}}, Stands: Average(14, 28.4),
		Pups:     []DeckPup{{"pup", 1.5, 2}, {"pup", 3, 1}, {"single", 9.4, 2}},
		Shoulder: 365.65, HighTide: 0.95, LowTide: -0.90, Least: 0.5, Most: 4, Wanted: 2,
	}
}

func TestLand(t *testing.T) {
	// 6.2 + 12 x 28.4 = 347.0, 20.65 m short of the wanted 367.65: singles 18.8 leave
	// 1.85, a pup of 1.5 leaves 0.35. Or 11 stands, 49.05 short: no. Plain arithmetic.
	got, err := Land(ottermastLanding())
	if err != nil || len(got.Stands) != 12 || !slices.Equal(got.Pups, []int{1, 0, 2}) || !got.Accepted || len(got.Left) != 2 {
		t.Fatalf("%+v, %v", got, err)
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"length", got.Length, 367.3}, {"stick-up at mean sea level", got.AtMean, 1.65}, {"at high tide", got.AtHigh, 0.70}, {"at low tide", got.AtLow, 2.55}} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s %v m, want %v", c.what, c.got, c.want)
		}
	}
	want := []Item{{Other, "running tool", 1, 6.2}, {Other, "", 12, 28.4}, {Pup, "single", 2, 9.4}, {Pup, "pup", 1, 1.5}}
	if !slices.Equal(got.Items, want) {
		t.Errorf("items %v, want %v", got.Items, want)
	}
	// Hung from its stick-up the string ends at the shoulder.
	if l, err := Run(got.Items, -got.AtMean); err != nil || math.Abs(l.Shoe-365.65) > 1e-9 {
		t.Errorf("the landing string ends at %v m, %v, want 365.65", l.Shoe, err)
	}
}

func TestTheTideNarrowsTheWindow(t *testing.T) {
	// Stands of 10 m over a shoulder at 98.9: 1.1 m stick-up, or 2.6 m with the pup.
	l := Landing{Stands: Average(12, 10), Pups: []DeckPup{{"", 1.5, 1}}, Shoulder: 98.9, Least: 0.5, Most: 4, Wanted: 1.1}
	if got, err := Land(l); err != nil || got.PupsUsed != 0 || !got.Accepted {
		t.Errorf("without tide %+v, %v, want no pup", got, err)
	}
	l.HighTide, l.LowTide = 1, -1
	if got, err := Land(l); err != nil || got.PupsUsed != 1 || !got.Accepted || math.Abs(got.AtHigh-1.6) > 1e-9 || math.Abs(got.AtLow-3.6) > 1e-9 {
		t.Errorf("with tide %+v, %v, want the pup, 1.6 to 3.6 m", got, err)
	}
	l.HighTide, l.LowTide = 2, -2
	if got, err := Land(l); err != nil || got.Accepted || got.PupsUsed != 0 {
		t.Errorf("tide wider than the window: %+v, %v, want the nearest, not accepted", got, err)
	}
	l.Stands = nil
	if got, err := Land(l); err != nil || got.Accepted || math.Abs(got.AtMean+97.4) > 1e-9 {
		t.Errorf("no stands: %+v, %v, want 97.4 m below the rotary", got, err)
	}
}

func TestLandingsThatCannotBe(t *testing.T) {
	edit := func(f func(*Landing)) Landing {
		l := ottermastLanding()
		f(&l)
		return l
	}
	for _, c := range []struct {
		landing Landing
		want    string
	}{
		{edit(func(l *Landing) { l.Shoulder = math.NaN() }), "landing shoulder"},
		{edit(func(l *Landing) { l.HighTide = 300 }), "high tide 300 m"},
		{edit(func(l *Landing) { l.LowTide = 2 }), "change them over"},
		{edit(func(l *Landing) { l.Wanted = 9 }), "not between"},
		{edit(func(l *Landing) { l.Most = math.NaN() }), "greatest stick-up"},
		{edit(func(l *Landing) { l.Tolerance = -1 }), "tolerance"},
		{edit(func(l *Landing) { l.Fixed[0].Length = 0 }), "running tool"},
		{edit(func(l *Landing) { l.Stands[3].Length = 0 }), "joint 4"},
		{edit(func(l *Landing) { l.Pups[0].Length = 0 }), "pup 1"},
	} {
		if _, err := Land(c.landing); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Land says %v, want %q", err, c.want)
		}
	}
}

// No number of stands and pups that keeps the window at any tide is passed over,
// and none is nearer.
func TestNothingLandsBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(what string, least, most int) float64 {
			return float64(rapid.IntRange(least, most).Draw(t, what)) / 1000
		}
		l := Landing{Shoulder: mm("shoulder", 20000, 150000), HighTide: mm("high", 0, 1500), LowTide: -mm("low", 0, 1500), Least: 0.5, Most: mm("most", 500, 3000)}
		l.Wanted = l.Least + mm("wanted", 0, 1000)*(l.Most-l.Least)
		for range rapid.IntRange(0, 6).Draw(t, "stands") {
			l.Stands = append(l.Stands, DeckJoint{Length: mm("stand", 27000, 29000)})
		}
		for range rapid.IntRange(0, 5).Draw(t, "pups") {
			l.Pups = append(l.Pups, DeckPup{"", mm("pup", 500, 10000), 1})
		}
		got, err := Land(l)
		if err != nil {
			t.Fatal(err)
		}
		for n := range len(l.Stands) + 1 {
			length := 0.0
			for _, s := range l.Stands[:n] {
				length += s.Length
			}
			for set := range 1 << len(l.Pups) {
				stickUp := length - l.Shoulder
				for i, p := range l.Pups {
					stickUp += float64(set>>i&1) * p.Length
				}
				kept := stickUp-l.HighTide >= l.Least-1e-9 && stickUp-l.LowTide <= l.Most+1e-9
				if kept && !got.Accepted {
					t.Fatalf("%d stands and pups %b keep the window, %+v does not", n, set, got)
				}
				low, high := l.Least+l.HighTide, l.Most+l.LowTide
				want := l.Wanted
				if low <= high {
					want = min(max(want, low), high)
				}
				if kept == got.Accepted && math.Abs(stickUp-want) < math.Abs(got.AtMean-want)-1e-6 {
					t.Fatalf("stick-up %v m is nearer to %v than %v", stickUp, want, got.AtMean)
				}
			}
		}
		if kept := got.AtHigh >= l.Least-1e-9 && got.AtLow <= l.Most+1e-9; kept != got.Accepted {
			t.Fatalf("accepted %v from %v to %v m", got.Accepted, got.AtHigh, got.AtLow)
		}
		if math.Abs(got.AtLow-got.AtHigh-(l.HighTide-l.LowTide)) > 1e-9 {
			t.Fatalf("the stick-up moves from %v to %v", got.AtHigh, got.AtLow)
		}
	})
}
