package tally

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// deck returns measured joints with lengths in metres.
func deck(lengths ...float64) []DeckJoint {
	var joints []DeckJoint
	for _, l := range lengths {
		joints = append(joints, DeckJoint{Length: l})
	}
	return joints
}

// closing is a string with 10 m of fixed items on a shoulder at 100 m.
func closing(wanted float64, joints []DeckJoint, pups ...DeckPup) Closing {
	return Closing{
		Below: []Item{{Shoe, "", 1, 1}, {TrackJoint, "", 1, 6}}, Above: []Item{{Hanger, "", 1, 3}}, Joints: joints, Pups: pups,
		Shoulder: 100, Wanted: wanted, Shallowest: wanted - 5, Deepest: wanted,
	}
}

// loose is a closing with the shoe allowed a metre deeper than wanted.
func loose(c Closing, tolerance float64, outOfOrder int) Closing {
	c.Deepest, c.Tolerance, c.OutOfOrder = c.Wanted+1, tolerance, outOfOrder
	return c
}

func TestClose(t *testing.T) {
	base := deck(12, 12.5, 11, 12, 12)
	withRejected := slices.Clone(base)
	withRejected[0].Rejected = true
	for _, c := range []struct {
		name    string
		closing Closing
		run     []int
		skipped []int
		pups    []int
		err     float64
	}{
		{"joints alone", closing(145.5, base), []int{0, 1, 2}, nil, []int{}, 0},
		{"the top ones stay", closing(146, base), []int{0, 1, 2}, nil, []int{}, -0.5},
		{"a pup makes it close", closing(147.5, base, DeckPup{"", 1, 1}, DeckPup{"", 2, 1}), []int{0, 1, 2}, nil, []int{0, 1}, 0},
		{"one pup before two", closing(148.5, base, DeckPup{"", 1, 1}, DeckPup{"", 2, 1}, DeckPup{"", 3, 1}), []int{0, 1, 2}, nil, []int{0, 0, 1}, 0},
		{"two of a kind", closing(149.5, base, DeckPup{"", 2, 2}), []int{0, 1, 2}, nil, []int{2}, 0},
		{"a rejected joint", closing(133.5, withRejected), []int{1, 2}, nil, []int{}, 0},
		{"not out of order", closing(145, base), []int{0, 1}, nil, []int{}, -10.5},
		{"one out of order", loose(closing(145, base), 0, 1), []int{0, 2, 3}, []int{1}, []int{}, 0},
		{"two out of order", loose(closing(134.4, deck(13, 12, 13.3, 12.4, 12)), 0, 2), []int{1, 3}, []int{0, 2}, []int{}, 0},
		{"near enough without a pup", loose(closing(145.6, base, DeckPup{"", 0.1, 1}), 0.1, 0), []int{0, 1, 2}, nil, []int{0}, -0.1},
		{"near enough with one pup, short", loose(closing(147.5, base, DeckPup{"", 1.6, 1}, DeckPup{"", 0.9, 2}), 0.5, 0), []int{0, 1, 2}, nil, []int{1, 0}, -0.4},
		{"near enough with one pup, long", loose(closing(147.5, base, DeckPup{"", 2.4, 1}, DeckPup{"", 1.1, 2}), 0.5, 0), []int{0, 1, 2}, nil, []int{1, 0}, 0.4},
		{"near enough out of order", loose(closing(133.7, deck(12, 12.9, 12), DeckPup{"", 11.7, 1}), 0.5, 1), []int{0, 2}, []int{1}, []int{0}, 0.3},
		{"near enough, the nearer of one pup", loose(closing(136, deck(12, 12), DeckPup{"", 13.6, 1}, DeckPup{"", 2.3, 1}, DeckPup{"", 1, 1}, DeckPup{"", 1.1, 1}), 0.5, 0),
			[]int{0, 1}, nil, []int{0, 1, 0, 0}, 0.3},
		{"near enough in order", loose(closing(127.3, deck(12, 12.3, 12.6), DeckPup{"", 5, 1}), 0.5, 1), []int{0}, nil, []int{1}, -0.3},
		{"the shallower of two", loose(closing(138, deck(11.5, 12.5, 16)), 0, 1), []int{0, 2}, []int{1}, []int{}, -0.5},
		{"nothing but what is fixed", closing(110, base), nil, nil, []int{}, 0},
	} {
		got, err := Close(c.closing)
		if err != nil || !slices.Equal(got.Run, c.run) || !slices.Equal(got.Skipped, c.skipped) || !slices.Equal(got.Pups, c.pups) || math.Abs(got.Error-c.err) > 1e-9 {
			t.Errorf("%s: %+v, %v, want %v without %v, pups %v, error %v m", c.name, got, err, c.run, c.skipped, c.pups, c.err)
		}
	}
}

// The window comes before nearness: 1.5 m too shallow is nearer than 2 m too deep,
// but above the shallowest depth.
func TestTheWindowComesFirst(t *testing.T) {
	c := closing(130, deck(12, 12), DeckPup{"", 6.5, 1}, DeckPup{"", 10, 1})
	c.Shallowest, c.Deepest = 129, 133
	got, err := Close(c)
	if err != nil || !got.Accepted || math.Abs(got.Error-2) > 1e-9 {
		t.Errorf("%+v, %v, want 2 m deep", got, err)
	}
	c.Deepest = 131
	if got, err = Close(c); err != nil || got.Accepted || math.Abs(got.Error+1.5) > 1e-9 {
		t.Errorf("%+v, %v, want 1.5 m short and not accepted", got, err)
	}
}

func TestTooFewJointsEndShort(t *testing.T) {
	got, err := Close(closing(200, deck(12, 12), DeckPup{"", 1, 1}))
	if err != nil || got.Accepted || math.Abs(got.Shoe-135) > 1e-9 || got.OnDeck != 0 {
		t.Errorf("%+v, %v, want the shoe at 135 m with all there is", got, err)
	}
}

// Equal joints without numbers are one line of the list, numbered ones a line each.
func TestLinesOfTheClosedString(t *testing.T) {
	got, err := Close(closing(149, Average(5, 12), DeckPup{"a", 1, 1}, DeckPup{"b", 2, 1}))
	want := []Item{{Shoe, "", 1, 1}, {TrackJoint, "", 1, 6}, {Joint, "", 3, 12}, {Pup, "b", 1, 2}, {Pup, "a", 1, 1}, {Hanger, "", 1, 3}}
	if err != nil || !slices.Equal(got.Items, want) {
		t.Errorf("items %v, %v, want %v", got.Items, err, want)
	}
	if len(got.Left) != 2 || got.LengthLeft != 24 {
		t.Errorf("left on deck %v, %v m, want two joints of 12 m", got.Left, got.LengthLeft)
	}
	numbered := Average(5, 12)
	numbered[0].Number, numbered[1].Number = "1", "2"
	if got, err = Close(closing(146, numbered)); err != nil || len(got.Items) != 6 || got.Items[3] != (Item{Joint, "2", 1, 12}) {
		t.Errorf("items %v, %v", got.Items, err)
	}
}

func TestStringsThatCannotClose(t *testing.T) {
	nan := math.NaN()
	edit := func(f func(*Closing)) Closing {
		c := closing(150, deck(12, 12, 12), DeckPup{"", 1, 1})
		f(&c)
		return c
	}
	many := make([]DeckPup, mostKinds)
	for i := range many {
		many[i] = DeckPup{"", 1 + math.Pow(2, float64(i))/1e4, 2}
	}
	for _, c := range []struct {
		closing Closing
		want    string
	}{
		{edit(func(c *Closing) { c.Shoulder = nan }), "landing shoulder"},
		{edit(func(c *Closing) { c.Wanted = nan }), "wanted shoe"},
		{edit(func(c *Closing) { c.Deepest = math.Inf(1) }), "deepest shoe"},
		{edit(func(c *Closing) { c.Deepest = 149 }), "not between"},
		{edit(func(c *Closing) { c.Shallowest = 151 }), "not between"},
		{edit(func(c *Closing) { c.OutOfOrder = 3 }), "3 joints out of order"},
		{edit(func(c *Closing) { c.OutOfOrder = -1 }), "out of order"},
		{edit(func(c *Closing) { c.Tolerance = nan }), "tolerance"},
		{edit(func(c *Closing) { c.Tolerance = 2 }), "tolerance 2 m"},
		{edit(func(c *Closing) { c.Below[1].Length = nan }), "item 2"},
		{edit(func(c *Closing) { c.Below[1].Kind = Hanger; c.Above = nil }), "hanger below the joints"},
		{edit(func(c *Closing) { c.Below = nil; c.Above[0].Kind = Shoe }), "shoe above the joints"},
		{edit(func(c *Closing) { c.Joints[1].Length = 0 }), "joint 2"},
		{edit(func(c *Closing) { c.Joints[1].Length = 1208 }), "check its unit"},
		{edit(func(c *Closing) { c.Joints[0].Number = "7"; c.Joints[2].Number = "7" }), `joint 3 has the number "7" of joint 1`},
		{edit(func(c *Closing) { c.Joints = Average(mostJoints+1, 12) }), "joints on deck"},
		{edit(func(c *Closing) { c.Pups[0].Length = -1 }), "pup 1"},
		{edit(func(c *Closing) { c.Pups[0].Count = -1 }), "count -1"},
		{edit(func(c *Closing) { c.Pups = make([]DeckPup, 40) }), "40 lengths of pup"},
		{edit(func(c *Closing) { c.Pups = []DeckPup{{"", 1, 40}, {"", 2, 40}} }), "80 pup joints"},
		{edit(func(c *Closing) { c.Pups = many }), "leave some of them out"},
		{edit(func(c *Closing) { c.Below[1].Length = 60 }), "64.00 m, and the deepest shoe leaves 50.00 m"},
	} {
		if _, err := Close(c.closing); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("Close says %v, want %q", err, c.want)
		}
	}
	if got := Average(-3, 12); len(got) != 0 {
		t.Errorf("%d joints, want none", len(got))
	}
}

// drawClosing draws a closing small enough to try every way. Lengths are multiples
// of a step, so that there are ties, and the wanted depth is near one that can be
// had.
func drawClosing(t *rapid.T) Closing {
	step := rapid.SampledFrom([]int{1, 10, 250, 500}).Draw(t, "step") // mm
	draw := func(what string, least, most int) float64 {
		return float64(rapid.IntRange(least/step, most/step).Draw(t, what)*step) / 1000
	}
	c := Closing{Below: []Item{{Shoe, "", 1, 1}}, Shoulder: 100}
	near := 101.0
	for range rapid.IntRange(0, 7).Draw(t, "joints") {
		j := DeckJoint{Length: draw("joint", 11000, 13000), Rejected: rapid.IntRange(0, 9).Draw(t, "rejected") == 0}
		c.Joints = append(c.Joints, j)
		if rapid.IntRange(0, 3).Draw(t, "is wanted") > 0 {
			near += j.Length
		}
	}
	for range rapid.IntRange(0, 3).Draw(t, "pups") {
		p := DeckPup{"", draw("pup", 500, 5000), rapid.IntRange(0, 2).Draw(t, "count")}
		c.Pups = append(c.Pups, p)
		near += p.Length * float64(rapid.IntRange(0, p.Count).Draw(t, "are wanted"))
	}
	c.Wanted = near + draw("off", -1000, 1000)
	c.Shallowest = c.Wanted - draw("above", 0, 3000)
	c.Deepest = c.Wanted + draw("below", 0, 2000)
	c.OutOfOrder = rapid.IntRange(0, 2).Draw(t, "out of order")
	c.Tolerance = rapid.SampledFrom([]float64{0, 0, 0.05, 0.5, 1}).Draw(t, "tolerance")
	return c
}

// rank is what a string is judged by, the lesser the better from the first on.
type rank [6]int64

// everyWay returns the rank of the best of all sets of joints and pups, written
// without regard to speed. All lengths in nm.
func everyWay(c Closing) (best rank, found bool) {
	sound, lengths := soundOnes(c.Joints)
	pups := []int64{}
	for _, p := range c.Pups {
		for range p.Count {
			pups = append(pups, nm(p.Length))
		}
	}
	for set := range 1 << len(sound) {
		sum, skipped, top := total(c.Below)+total(c.Above), 0, 0
		for i := range sound {
			if set>>i&1 == 1 {
				sum += lengths[i]
				top = i
			}
		}
		for i := range top {
			if set>>i&1 == 0 {
				skipped++
			}
		}
		if skipped > c.OutOfOrder {
			continue
		}
		for with := range 1 << len(pups) {
			length, used := sum, int64(0)
			for i := range pups {
				if with>>i&1 == 1 {
					length += pups[i]
					used++
				}
			}
			shoe := nm(c.Shoulder) + length
			if shoe > nm(c.Deepest) {
				continue
			}
			r := judged(c, shoe, used, int64(skipped))
			if !found || slices.Compare(r[:], best[:]) < 0 {
				best, found = r, true
			}
		}
	}
	return best, found
}

// judged returns the rank of a string.
func judged(c Closing, shoe, pups, skipped int64) rank {
	err := shoe - nm(c.Wanted)
	off := max(err, -err)
	if shoe < nm(c.Shallowest) {
		return rank{1, off, pups, skipped, off, err}
	}
	return rank{0, max(0, off-nm(c.Tolerance)), pups, skipped, off, err}
}

func TestNothingBeatsTheSolver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawClosing(t)
		want, ok := everyWay(c)
		got, err := Close(c)
		if (err == nil) != ok {
			t.Fatalf("Close says %v, there is a way: %v", err, ok)
		}
		if !ok {
			return
		}
		if r := judged(c, nm(got.Shoe), int64(got.PupsUsed), int64(len(got.Skipped))); r != want {
			t.Fatalf("solver %v, best of every way %v: %+v", r, want, got)
		}
		checkClosed(t, c, got)
		if again, _ := Close(c); !reflect.DeepEqual(got, again) {
			t.Fatalf("first %+v, then %+v", got, again)
		}
	})
}

// checkClosed holds what a closed string says against the string itself.
func checkClosed(t *rapid.T, c Closing, got Closed) {
	l, err := Run(got.Items, c.Shoulder)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(l.Shoe-got.Shoe) > 1e-6 || got.Shoe > c.Deepest+1e-9 || math.Abs(got.Shoe-c.Wanted-got.Error) > 1e-6 {
		t.Fatalf("shoe at %v m, the list has %v m, deepest %v m, error %v m", got.Shoe, l.Shoe, c.Deepest, got.Error)
	}
	if got.Accepted != (nm(got.Shoe) >= nm(c.Shallowest)) {
		t.Fatalf("shoe at %v m, shallowest %v m, accepted %v", got.Shoe, c.Shallowest, got.Accepted)
	}
	all := slices.Concat(got.Run, got.Left, got.Rejected)
	slices.Sort(all)
	for n, i := range all {
		if n != i {
			t.Fatalf("joints %v are not every joint once", all)
		}
	}
	if len(all) != len(c.Joints) || l.Joints != len(got.Run) || got.OnDeck != len(c.Joints)-len(got.Run) || !slices.IsSorted(got.Run) {
		t.Fatalf("%d of %d joints, %d run", len(all), len(c.Joints), l.Joints)
	}
	used := 0
	for i, n := range got.Pups {
		if n > c.Pups[i].Count {
			t.Fatalf("%d of %d pups", n, c.Pups[i].Count)
		}
		used += n
	}
	if used != got.PupsUsed || len(got.Skipped) > c.OutOfOrder {
		t.Fatalf("%d pups, said %d; %d out of order", used, got.PupsUsed, len(got.Skipped))
	}
}

// Long decks cannot be tried in every way, but what the solver finds must not get
// worse with more freedom or more pups.
func TestMoreFreedomIsNeverWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := closing(0, nil)
		for range rapid.IntRange(20, 60).Draw(t, "joints") {
			c.Joints = append(c.Joints, DeckJoint{Length: float64(rapid.IntRange(11500, 12500).Draw(t, "mm")) / 1000})
		}
		for range rapid.IntRange(0, 5).Draw(t, "pups") {
			c.Pups = append(c.Pups, DeckPup{"", float64(rapid.IntRange(500, 6000).Draw(t, "pup")) / 1000, 1})
		}
		c.Wanted = rapid.Float64Range(150, 700).Draw(t, "wanted")
		c.Shallowest, c.Deepest = c.Wanted-0.5, c.Wanted+0.2
		last := math.Inf(1)
		for c.OutOfOrder = 0; c.OutOfOrder <= mostOutOfOrder; c.OutOfOrder++ {
			got, err := Close(c)
			if err != nil {
				t.Fatal(err)
			}
			checkClosed(t, c, got)
			off := math.Abs(got.Error)
			if !got.Accepted {
				off += 1000
			}
			if off > last+1e-9 {
				t.Fatalf("%d out of order: %v m off, with one fewer %v m", c.OutOfOrder, off, last)
			}
			last = off
		}
		c.OutOfOrder = mostOutOfOrder
		c.Pups = append(c.Pups, DeckPup{"", 1.234, 1})
		if got, _ := Close(c); got.Accepted && math.Abs(got.Error) > last+1e-9 {
			t.Fatalf("with one more pup %v m off, before %v m", got.Error, last)
		}
	})
}

// Rejecting a joint and taking it back changes nothing.
func TestRejectingAndTakingBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawClosing(t)
		if len(c.Joints) == 0 {
			return
		}
		before, errBefore := Close(c)
		i := rapid.IntRange(0, len(c.Joints)-1).Draw(t, "joint")
		was := c.Joints[i].Rejected
		c.Joints[i].Rejected = true
		if got, err := Close(c); err == nil && slices.Contains(got.Run, i) {
			t.Fatalf("rejected joint %d is run: %+v", i, got)
		}
		c.Joints[i].Rejected = was
		after, errAfter := Close(c)
		if (errBefore == nil) != (errAfter == nil) || !reflect.DeepEqual(before, after) {
			t.Fatalf("before %+v, after %+v", before, after)
		}
	})
}

func TestNoNumberIsTooOdd(t *testing.T) {
	odd := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{0, -1, 1, 12, 1e300, math.NaN(), math.Inf(1), math.Inf(-1)}))
	sane := func(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
	rapid.Check(t, func(t *rapid.T) {
		d := func(what string) float64 { return odd.Draw(t, what) }
		c := Closing{[]Item{{Shoe, "", 1, d("shoe")}}, deck(d("joint"), 12), []DeckPup{{"", d("pup"), 1}}, nil, d("shoulder"), d("wanted"), d("shallowest"), d("deepest"), d("tolerance"), 1}
		if got, err := Close(c); err == nil && (!sane(got.Shoe) || !sane(got.Error) || !sane(got.LengthLeft)) {
			t.Fatalf("%+v gives %+v", c, got)
		}
		l := Landing{nil, c.Joints, c.Pups, d("shoulder"), d("high"), d("low"), d("least"), d("most"), d("wanted"), d("tolerance")}
		if got, err := Land(l); err == nil && (!sane(got.AtHigh) || !sane(got.AtLow) || !sane(got.Length)) {
			t.Fatalf("%+v gives %+v", l, got)
		}
		p := Placement{[]float64{d("coupling"), 50}, []Part{{"", d("from"), d("to")}}, d("distance"), d("host shoe"), d("least lap"), d("most lap"), d("wanted")}
		if got, err := Place(p); err == nil && (!sane(got.Nearest) || !sane(got.Lap)) {
			t.Fatalf("%+v gives %+v", p, got)
		}
		if got, err := Clearances(p, d("top")); err == nil && (len(got) != 1 || !sane(got[0].Distance)) {
			t.Fatalf("%+v gives %+v", p, got)
		}
	})
}
