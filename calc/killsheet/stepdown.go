package killsheet

import (
	"fmt"
	"math"

	"borewalk/calc/bore"
)

// A StepDown is the standpipe pressure while kill mud is pumped from the rotary to the bit. At a place of the string
//
//	pressure = (SIDPP + overbalance)(1 - TVD/TVD of the bit) + slow + (final - slow) MD/MD of the bit
//
// What is left of the shut-in pressure goes by the vertical depth of the kill mud, since it weighs by that, and friction by the
// length that it fills. A straight line from [Initial] to [Final], as sheets for vertical wells have it, holds too much
// pressure where the hole builds angle: see [StepDown.Straight]. Source: the schedule of kill sheets for deviated wells, common
// practice, from memory; the static part is the balance of two columns.
//
// Kill mud of exactly [KillDensity] then holds the formation at its pressure and the overbalance all the way. One that was
// rounded up adds what it was rounded by, little by little. The friction of the bit and of narrow pipe, which come late, is
// spread over the string. The volume of the lines from the pump to the rotary is pumped before. The bit is at the depth that the
// kill density was taken at.
type StepDown struct {
	Inside             []bore.Interval          // Inside is the bore of the string from the rotary to the bit, without gaps.
	TVD                func(md float64) float64 // TVD turns a depth along hole in m into a true vertical one.
	SIDPP, Overbalance float64                  // SIDPP is what the drill pipe showed, Overbalance what is held on top, in Pa.
	Slow, Final        float64                  // Slow and Final are the pressures of mud and of kill mud at the slow rate, in Pa.
}

// A Step is one line of the schedule.
type Step struct {
	Volume   float64 // Volume is the kill mud in m³ that has passed the rotary.
	MD, TVD  float64 // MD and TVD are how far down the string it has come, in m.
	Static   float64 // Static is the part of the pressure in Pa that would stay with the pump off.
	Pressure float64 // Pressure is that on the standpipe in Pa.
}

const stepTopic = "step-down of the standpipe"

// check reports a string or a pressure that makes no schedule.
func (s *StepDown) check() error {
	if err := check(stepTopic, some("SIDPP", s.SIDPP, "Pa"), some("overbalance", s.Overbalance, "Pa"),
		some("slow pressure", s.Slow, "Pa"), some("final pressure", s.Final, "Pa")); err != nil {
		return err
	}
	if s.TVD == nil || len(s.Inside) == 0 {
		return fmt.Errorf("%s: no path or no string; give both", stepTopic)
	}
	const joined = 1e-6 // m, as neighbouring intervals are joined elsewhere
	from := 0.0
	for i := range s.Inside {
		in := &s.Inside[i]
		if !(math.Abs(in.Top-from) <= joined) || !(in.Bottom > in.Top) || !finite(in.Bottom) || !(in.Capacity() > 0) {
			return fmt.Errorf("%s: bore %d from %g to %g m does not go on at %g m with some room; give all bores down to the bit", stepTopic,
				i+1, in.Top, in.Bottom, from)
		}
		from = in.Bottom
	}
	if whole := bore.Volume(s.Inside); !finite(whole) {
		return fmt.Errorf("%s: the string holds %g m³; check its diameters", stepTopic, whole)
	}
	if tvd := s.TVD(from); !(tvd > 0) || !finite(tvd) {
		return fmt.Errorf("%s: the bit at %.1f m along hole is at %g m vertical depth; give a path that goes down", stepTopic, from, tvd)
	}
	return nil
}

// bit returns the depth along hole of the end of the string.
func (s *StepDown) bit() float64 { return s.Inside[len(s.Inside)-1].Bottom }

// step returns the line of the schedule for kill mud at a depth along hole, of which a volume has been pumped.
func (s *StepDown) step(volume, md float64) (Step, error) {
	at := Step{Volume: volume, MD: md, TVD: s.TVD(md)}
	at.Static = (s.SIDPP + s.Overbalance) * (1 - at.TVD/s.TVD(s.bit()))
	at.Pressure = at.Static + s.Slow + (s.Final-s.Slow)*md/s.bit()
	if !finite(at.Pressure) {
		return Step{}, fmt.Errorf("%s: no pressure at %.1f m along hole, %g m vertical; give a path with a depth everywhere",
			stepTopic, md, at.TVD)
	}
	return at, nil
}

// At returns the step at which a volume in m³ of kill mud has passed the rotary. It is an error beyond what the string holds.
func (s *StepDown) At(volume float64) (Step, error) {
	if err := s.check(); err != nil {
		return Step{}, err
	}
	if err := check(stepTopic, some("volume", volume, "m³")); err != nil {
		return Step{}, err
	}
	return s.at(volume)
}

// at is [StepDown.At] for a string that was looked at.
func (s *StepDown) at(volume float64) (Step, error) {
	md, left := bore.DepthBelow(s.Inside, 0, volume)
	if whole := bore.Volume(s.Inside); left > 1e-9*whole {
		return Step{}, fmt.Errorf("%s: %.3f m³ in a string of %.3f m³; beyond the bit the final pressure holds",
			stepTopic, volume, whole)
	}
	return s.step(volume, md)
}

// Steps returns the schedule in n equal volumes from the rotary to the bit, both ends included.
func (s *StepDown) Steps(n int) ([]Step, error) {
	if err := checkSteps(stepTopic, n); err != nil {
		return nil, err
	}
	if err := s.check(); err != nil {
		return nil, err
	}
	list, whole := make([]Step, n+1), bore.Volume(s.Inside)
	var err error
	for k := range list {
		if list[k], err = s.at(whole * float64(k) / float64(n)); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// mostSteps bounds a schedule, which people follow.
const mostSteps = 1000

// checkSteps reports a number of steps that makes no schedule.
func checkSteps(topic string, n int) error {
	if n < 1 || n > mostSteps {
		return fmt.Errorf("%s: %d steps; give 1 to %d", topic, n, mostSteps)
	}
	return nil
}
