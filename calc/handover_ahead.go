package calc

import "borewalk/model"

// Ahead is an operation that is being done or still to come.
type Ahead struct {
	Section  int
	Step     *Step
	From, To float64 // in s from now, by likely durations
	Timed    bool    // when it is over is known
}

// StepsAhead returns the operations from the one being done on that begin within a time in s, by likely durations. Of what is being done
// only the rest counts, by the depth of hole or bit. Where a duration is not known the list ends with its operation. why says what keeps
// it from being made.
func (r *Result) StepsAhead(plan *model.Plan, within float64) (list []Ahead, why string) {
	i, ok := plan.InWork()
	if !ok {
		return nil, "no section is in work"
	}
	at := stepAt(r.Steps[i], plan.Status.Step)
	if at < 0 {
		return nil, "step now is blank, or not in the section's list"
	}
	now := 0.0
	for first := true; i < len(r.Steps); i, at = i+1, 0 {
		for k := at; k < len(r.Steps[i]); k++ {
			s := &r.Steps[i][k]
			if !s.Counts() {
				continue
			}
			if now >= within {
				return list, ""
			}
			left := 1.0
			if first {
				left, first = leftOf(s, &plan.Status), false
			}
			list = append(list, Ahead{Section: i, Step: s, From: now, To: now + left*s.Likely, Timed: s.Timed})
			if now += left * s.Likely; !s.Timed {
				return list, ""
			}
		}
	}
	return list, ""
}

// leftOf returns the share of an operation that is still to be done: of new hole, or of the way of the string.
func leftOf(s *Step, status *model.Status) float64 {
	from, to, now := s.From, s.To, status.Bit
	if !s.Flat() {
		from, to, now = s.HoleFrom, s.HoleTo, status.Hole
	}
	if !now.IsSet() || from == to {
		return 1
	}
	return min(max((to-now.SI)/(to-from), 0), 1)
}
