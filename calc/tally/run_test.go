package tally

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// small is a string that can be added in the head.
func small() []Item {
	return []Item{{Shoe, "", 1, 0.5}, {TrackJoint, "", 2, 12}, {FloatCollar, "", 1, 0.5}, {Joint, "", 3, 12}, {Pup, "", 1, 3}, {Hanger, "", 0, 4}}
}

func TestRun(t *testing.T) {
	l, err := Run(small(), 100)
	if err != nil {
		t.Fatal(err)
	}
	if l.Length != 68 || l.Shoe != 168 || l.Joints != 3 || len(l.Pieces) != 9 {
		t.Errorf("length %v, shoe %v, %d joints, %d pieces, want 68, 168, 3, 9", l.Length, l.Shoe, l.Joints, len(l.Pieces))
	}
	if want := []float64{104, 107, 119, 131, 143, 143.5, 155.5, 167.5}; !slices.Equal(l.Couplings(), want) {
		t.Errorf("couplings %v, want %v", l.Couplings(), want)
	}
	if p := l.Pieces[5]; p.Joint != 2 || p.Item != 3 || p.Top != 119 || p.Bottom != 131 || p.Cumulative != 49 {
		t.Errorf("second joint %+v, want 119 to 131 m, 49 m above the shoe", p)
	}
	hangs, ok := l.WhileRunning(1, 172)
	if !ok || hangs[0] != (Hang{-0.5, 172.5}) || hangs[5] != (Hang{48, 124}) {
		t.Errorf("while running %+v, %v", hangs, ok)
	}
	if l, err := Run(nil, 5); err != nil || l.Shoe != 5 || l.Couplings() != nil {
		t.Errorf("nothing to run: %+v, %v", l, err)
	}
}

func TestListsThatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		items    []Item
		shoulder float64
		want     string
	}{
		{small(), nan, "landing shoulder"},
		{small(), 1e6, "check its unit"},
		{[]Item{{Joint, "57", 1, 0}}, 0, `item 1, joint "57": length 0 m`},
		{[]Item{{Joint, "", 1, nan}}, 0, "length NaN"},
		{[]Item{{Joint, "", 1, math.Inf(1)}}, 0, "length +Inf"},
		{[]Item{{Joint, "", -1, 12}}, 0, "count -1"},
		{[]Item{{Joint, "", 1 << 40, 12}}, 0, "count"},
		{[]Item{{Joint, "", 6000, 1}, {Joint, "", 6000, 1}}, 0, "item 2, joint: more than"},
		{[]Item{{Joint, "", 1, 12}, {Shoe, "", 1, 1}}, 0, "item 2, shoe: there is something below"},
		{[]Item{{Shoe, "", 2, 1}}, 0, "one shoe"},
		{[]Item{{Hanger, "", 1, 1}, {Pup, "", 1, 1}}, 0, "item 1, hanger: there is something above"},
	} {
		if _, err := Run(c.items, c.shoulder); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Run(%v, %v) says %v, want %q", c.items, c.shoulder, err, c.want)
		}
	}
	for _, piece := range []int{-1, 9, 100} {
		if _, _, err := LeaveOut(small(), piece); err == nil {
			t.Errorf("piece %d of 9 was left out", piece)
		}
	}
	for _, piece := range []int{-1, 10} {
		if _, err := Add(small(), piece, Item{Length: 1}); err == nil {
			t.Errorf("something was added at %d of 9", piece)
		}
	}
	l, _ := Run(small(), 100)
	if _, ok := l.WhileRunning(nan, 0); ok {
		t.Error("a stick-up that is no number was taken")
	}
	if _, ok := l.Lowest(Crossover); ok {
		t.Error("a crossover was found")
	}
	if Kind(-1).String() != "item" || Kind(99).String() != "item" || Hanger.String() != "hanger" {
		t.Error("kinds are named wrongly")
	}
}

// drawItems draws a string, lengths in millimetres.
func drawItems(t *rapid.T) []Item {
	items := []Item{{Shoe, "", 1, 0.6}}
	for range rapid.IntRange(0, 6).Draw(t, "lines") {
		kind := rapid.SampledFrom([]Kind{Other, TrackJoint, FloatCollar, Joint, MarkerJoint, Pup, Crossover}).Draw(t, "kind")
		items = append(items, Item{kind, "", rapid.IntRange(0, 40).Draw(t, "count"), float64(rapid.IntRange(1, 15000).Draw(t, "mm")) / 1000})
	}
	return append(items, Item{Hanger, "", 1, 3})
}

func TestLengthsMakeUpTheDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items := drawItems(t)
		shoulder := rapid.Float64Range(0, 3000).Draw(t, "shoulder")
		l, err := Run(items, shoulder)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, i := range items {
			sum += float64(max(1, i.Count)) * i.Length
		}
		if math.Abs(sum-(l.Shoe-shoulder)) > 1e-9 || l.Pieces[len(l.Pieces)-1].Top != shoulder || l.Pieces[0].Bottom != l.Shoe {
			t.Fatalf("lengths %v m, shoe less shoulder %v m", sum, l.Shoe-shoulder)
		}
		for n, p := range l.Pieces {
			if math.Abs(p.Bottom-p.Top-p.Length) > 1e-9 || n > 0 && p.Bottom != l.Pieces[n-1].Top {
				t.Fatalf("piece %d: %+v on %+v", n, p, l.Pieces[n-1])
			}
		}
		if c := l.Couplings(); len(c) != len(l.Pieces)-1 || !slices.IsSorted(c) {
			t.Fatalf("%d couplings of %d pieces: %v", len(c), len(l.Pieces), c)
		}
	})
}

func TestAddIsTheInverseOfLeaveOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items := drawItems(t)
		before := slices.Clone(items)
		whole, _ := Run(items, 100)
		piece := rapid.IntRange(0, len(whole.Pieces)-1).Draw(t, "piece")
		less, out, err := LeaveOut(items, piece)
		if err != nil {
			t.Fatal(err)
		}
		short, err := Run(less, 100)
		if err != nil || math.Abs(whole.Shoe-short.Shoe-out.Length) > 1e-9 || len(short.Pieces) != len(whole.Pieces)-1 {
			t.Fatalf("without %+v the shoe is at %v, before %v, %v", out, short.Shoe, whole.Shoe, err)
		}
		back, err := Add(less, piece, out)
		if err != nil {
			t.Fatal(err)
		}
		again, err := Run(back, 100)
		if err != nil {
			t.Fatal(err)
		}
		for n := range whole.Pieces {
			a, b := whole.Pieces[n], again.Pieces[n]
			a.Item, b.Item = 0, 0 // a line may have been cut in two
			if a != b {
				t.Fatalf("piece %d: %+v, before %+v", n, b, a)
			}
		}
		if !slices.Equal(items, before) {
			t.Fatal("the list that was given has changed")
		}
	})
}

func TestFills(t *testing.T) {
	l, _ := Run(small(), 100)
	// 9-7/8 in with a bore of 8.625 in: pi/4 x 0.219075^2 = 0.0376945 m², pi/4 x
	// 0.250825^2 = 0.0494121 m². Plain arithmetic, checked by hand.
	closed, err := Fills(l, 0.250825, 0.219075, true)
	if err != nil {
		t.Fatal(err)
	}
	open, _ := Fills(l, 0.250825, 0.219075, false)
	joint := closed[4]
	if math.Abs(joint.Inside-12*0.0376945) > 1e-5 || math.Abs(joint.Displaced-12*0.0494121) > 1e-5 || math.Abs(closed[8].DisplacedSum-68*0.0494121) > 1e-4 {
		t.Errorf("joint fills %+v", joint)
	}
	if got := open[8].DisplacedSum + open[8].InsideSum; math.Abs(got-closed[8].DisplacedSum) > 1e-9 {
		t.Errorf("steel and inside are %v m³, want %v", got, closed[8].DisplacedSum)
	}
	for _, d := range [][2]float64{{0.2, 0.2}, {0.2, 0}, {math.NaN(), 0.1}, {0.2, math.NaN()}, {9.875, 8.625 * 25}, {13.625, 12}} {
		if _, err := Fills(l, d[0], d[1], true); err == nil {
			t.Errorf("pipe of %v m was filled", d)
		}
	}
}
