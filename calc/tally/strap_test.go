package tally

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestCompare(t *testing.T) {
	joints := append(Average(20, 12.08), deck(12.10, 12.02, 12.80, 11.98)...)
	s, err := Compare(joints, 20, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	// 20 x 12.08 + 48.90 = 290.50; at the average of 20, 24 x 12.08 = 289.92.
	if s.Count != 24 || s.Sampled != 20 || math.Abs(s.Measured-290.50) > 1e-9 || math.Abs(s.Estimated-289.92) > 1e-9 || math.Abs(s.Correction-0.58) > 1e-9 {
		t.Errorf("%+v, want 290.50, 289.92 and 0.58 m", s)
	}
	if s.JointsOff != 0 || !slices.Equal(s.Odd, []int{22}) || s.Shortest != 11.98 || s.Longest != 12.80 || math.Abs(s.Mean-290.5/24) > 1e-9 {
		t.Errorf("%+v, want the 12.80 m joint odd", s)
	}
	if s, _ := Compare(deck(12), 20, 0); s.Sampled != 1 || len(s.Odd) != 0 {
		t.Errorf("one joint: %+v", s)
	}
}

// A sheet of 145 joints at 12.08 m on which one was added twice, or left out.
func TestCountCheck(t *testing.T) {
	for _, c := range []struct {
		measured float64
		want     int
	}{{145 * 12.08, 0}, {146*12.08 + 0.9, 1}, {146*12.08 - 0.9, 1}, {144*12.08 - 0.9, -1}, {145*12.08 + 4, 0}} {
		s, err := CountCheck(c.measured, 12.08, 145)
		if err != nil || s.JointsOff != c.want || math.Abs(s.Correction-(c.measured-145*12.08)) > 1e-9 {
			t.Errorf("CountCheck(%v) = %+v, %v, want %d joints off", c.measured, s, err, c.want)
		}
	}
}

func TestMadeUp(t *testing.T) {
	joints := []DeckJoint{{"1", 12.20, false}, {"2", 12.31, true}}
	got, err := MadeUp(joints, 0.12)
	if err != nil || math.Abs(got[0].Length-12.08) > 1e-12 || math.Abs(got[1].Length-12.19) > 1e-12 || !got[1].Rejected || joints[0].Length != 12.20 {
		t.Errorf("%+v, %v, of %+v", got, err, joints)
	}
}

func TestStrapsThatCannotBe(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		err  error
		want string
	}{
		{errOf(Compare(nil, 20, 1)), "0 joints"},
		{errOf(Compare(deck(12), 0, 1)), "sample of 0"},
		{errOf(Compare(deck(12), 1, nan)), "limit"},
		{errOf(Compare(deck(nan), 1, 1)), "joint 1"},
		{errOf(CountCheck(nan, 12, 1)), "measured"},
		{errOf(CountCheck(1e9, 12, 1)), "measured"},
		{errOf(CountCheck(12, nan, 1)), "average"},
		{errOf(CountCheck(12, 12, 0)), "0 joints"},
		{errOf(MadeUp(deck(12), nan)), "make-up loss"},
		{errOf(MadeUp(deck(12, 0.1), 0.1)), "joint 2"},
		{errOf(MadeUp(deck(nan), 0.1)), "joint 1"},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("says %v, want %q", c.err, c.want)
		}
	}
}

// With every joint in the sample there is nothing to correct.
func TestTheWholeSampleNeedsNoCorrection(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var lengths []float64
		for range rapid.IntRange(1, 300).Draw(t, "joints") {
			lengths = append(lengths, rapid.Float64Range(11, 13).Draw(t, "joint"))
		}
		s, err := Compare(deck(lengths...), len(lengths), 2)
		if err != nil || math.Abs(s.Correction) > 1e-9 || s.JointsOff != 0 || len(s.Odd) != 0 {
			t.Fatalf("%+v, %v", s, err)
		}
		if s.Mean < s.Shortest-1e-9 || s.Mean > s.Longest+1e-9 {
			t.Fatalf("mean %v is not between %v and %v", s.Mean, s.Shortest, s.Longest)
		}
	})
}
