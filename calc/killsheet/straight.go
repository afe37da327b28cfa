package killsheet

import (
	"math"

	"borewalk/calc/bore"
)

// looks is how many places of a string, about, the straight line is held against before it is closed in on the worst.
const looks = 1000

// A Deviation is a step of a schedule, and what a straight line in pumped volume shows there, in Pa.
type Deviation struct {
	Step
	Line float64
}

// Above returns by how much the line is above the schedule in Pa, below it as less than nothing.
func (d *Deviation) Above() float64 { return d.Line - d.Pressure }

// line is the straight line in pumped volume through both ends of a schedule.
type line struct {
	*StepDown
	whole, first, last float64 // m³; Pa
}

// straight draws the line of a schedule that was looked at.
func (s *StepDown) straight() (line, error) {
	first, err := s.step(0, 0)
	if err != nil {
		return line{}, err
	}
	last, err := s.step(0, s.bit())
	return line{s, bore.Volume(s.Inside), first.Pressure, last.Pressure}, err
}

// at returns the deviation at a depth along hole that a volume reaches.
func (l *line) at(volume, md float64) (Deviation, error) {
	at, err := l.step(volume, md)
	if err != nil {
		return Deviation{}, err
	}
	shows, err := outcome(stepTopic, l.first+(l.last-l.first)*(volume/l.whole))
	return Deviation{at, shows}, err
}

// Straight returns where a straight line in pumped volume from [Initial] to [Final] is furthest above the schedule, which presses
// on the open hole by so much more, and where it is furthest below, which lets the formation flow. Where it is never above or
// below, that is the start, where they are the same.
func (s *StepDown) Straight() (over, under Deviation, err error) {
	if err := s.check(); err != nil {
		return over, under, err
	}
	l, err := s.straight()
	if err != nil {
		return over, under, err
	}
	if over, under, err = l.scan(); err != nil {
		return over, under, err
	}
	if over, err = l.closeIn(over, 1); err == nil {
		under, err = l.closeIn(under, -1)
	}
	return over, under, err
}

// scan returns the worst of many places, among them every change of the bore.
func (l *line) scan() (over, under Deviation, err error) {
	if over, err = l.at(0, 0); err != nil {
		return over, under, err
	}
	under = over
	volume := 0.0
	for i := range l.Inside {
		in := &l.Inside[i]
		n := math.Ceil(in.Length() / l.bit() * looks)
		for k := 1.0; k <= n; k++ {
			d, err := l.at(volume+k/n*in.Volume(), in.Top+k/n*in.Length())
			if err != nil {
				return over, under, err
			}
			if d.Above() > over.Above() {
				over = d
			}
			if d.Above() < under.Above() {
				under = d
			}
		}
		volume += in.Volume()
	}
	return over, under, nil
}

// closeIn looks for what is worse than a deviation within one look of it, above the line with a sign of 1 and below with -1: of
// three parts, the one beyond the better of two places is left out each time.
func (l *line) closeIn(worst Deviation, sign float64) (Deviation, error) {
	step := l.bit() / looks
	low, high := max(0, worst.MD-step), min(l.bit(), worst.MD+step)
	const rounds = 40 // a ten-millionth of a look
	for range rounds {
		a, err := l.at(l.down(low + (high-low)/3))
		if err != nil {
			return worst, err
		}
		b, err := l.at(l.down(high - (high-low)/3))
		if err != nil {
			return worst, err
		}
		if sign*a.Above() < sign*b.Above() {
			low, a = a.MD, b
		} else {
			high = b.MD
		}
		if sign*a.Above() > sign*worst.Above() {
			worst = a
		}
	}
	return worst, nil
}

// down returns the volume of the string down to a depth along hole, and the depth.
func (l *line) down(md float64) (volume, depth float64) { return bore.Between(l.Inside, 0, md), md }
