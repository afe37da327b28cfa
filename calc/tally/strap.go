package tally

import (
	"fmt"
	"math"
)

// A Strap compares pipe as measured with pipe at an average length.
type Strap struct {
	Count      int     // Count is the number of joints measured.
	Measured   float64 // Measured is their length in metres.
	Mean       float64 // Mean is their average length in metres.
	Shortest   float64 // Shortest is the shortest of them in metres.
	Longest    float64 // Longest is the longest of them in metres.
	Sampled    int     // Sampled is the number of joints of the sample.
	Sample     float64 // Sample is the average length in metres of the sample.
	Estimated  float64 // Estimated is the sample's average times the count in metres.
	Correction float64 // Correction is measured less estimated in metres.
	JointsOff  int     // JointsOff is the correction in whole joints: not zero where one was left out or counted twice.
	Odd        []int   // Odd are the joints, as places in the list, further from the mean than the limit: slips of the pen.
}

// Compare compares measured joint lengths in metres with the average of the first
// of them, usually 20, times their count: a check that catches a joint left out of
// the sum and a digit turned round. Joints further from the mean than the limit in
// metres are named as odd. Rejected joints are in both sums. An error names an
// impossible input. Common practice.
func Compare(joints []DeckJoint, sample int, limit float64) (Strap, error) {
	if len(joints) == 0 || sample < 1 {
		return Strap{}, fmt.Errorf("%d joints and a sample of %d; give at least one of each", len(joints), sample)
	}
	if !(limit >= 0) {
		return Strap{}, fmt.Errorf("limit for odd joints %g m; give zero or more", limit)
	}
	if err := checkDeck(joints, nil); err != nil {
		return Strap{}, err
	}
	s := Strap{Count: len(joints), Sampled: min(sample, len(joints)), Shortest: joints[0].Length}
	var sum, first int64
	for i, j := range joints {
		sum += nm(j.Length)
		if i < s.Sampled {
			first += nm(j.Length)
		}
		s.Shortest, s.Longest = min(s.Shortest, j.Length), max(s.Longest, j.Length)
	}
	s.Measured = metres(sum)
	s.Mean = s.Measured / float64(s.Count)
	s.against(metres(first) / float64(s.Sampled))
	for i, j := range joints {
		if math.Abs(j.Length-s.Mean) > limit+1e-9 { // a nanometre: lengths are no finer
			s.Odd = append(s.Odd, i)
		}
	}
	return s, nil
}

// CountCheck compares a measured length in metres, from a sheet that may have been
// added up wrongly, with a count of joints at an average length in metres. An
// error names an impossible input.
func CountCheck(measured, average float64, count int) (Strap, error) {
	switch {
	case !(measured > 0) || measured > longest:
		return Strap{}, fmt.Errorf("measured length %g m; give one above zero and check its unit", measured)
	case !(average > 0) || average > longestJoint:
		return Strap{}, fmt.Errorf("average length %g m; give one above zero and check its unit", average)
	case count < 1 || count > mostRows:
		return Strap{}, fmt.Errorf("%d joints; give the count", count)
	}
	s := Strap{Count: count, Measured: measured, Mean: measured / float64(count)}
	s.against(average)
	return s, nil
}

// against fills in the comparison with an average length in metres.
func (s *Strap) against(average float64) {
	s.Sample = average
	s.Estimated = average * float64(s.Count)
	s.Correction = s.Measured - s.Estimated
	s.JointsOff = int(math.Round(s.Correction / average))
}

// MadeUp returns the joints with lengths that were strapped with the pin's thread
// in them, shortened by the make-up loss in metres that the thread has. An error
// says that the loss is not less than a joint.
func MadeUp(joints []DeckJoint, loss float64) ([]DeckJoint, error) {
	if !(loss >= 0) {
		return nil, fmt.Errorf("make-up loss %g m; give zero or more", loss)
	}
	out := make([]DeckJoint, len(joints))
	for i, j := range joints {
		if !(j.Length > loss) || j.Length > longestJoint {
			return nil, fmt.Errorf("joint %d, number %q: length %g m with a make-up loss of %g m; check both", i+1, j.Number, j.Length, loss)
		}
		out[i] = j
		out[i].Length -= loss
	}
	return out, nil
}
