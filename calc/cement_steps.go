package calc

import (
	"math"

	"borewalk/calc/state"
)

// moment is one step of a job that is played.
type moment struct {
	stage  int
	of     float64 // pumped of the stage, at the gauge
	time   float64 // since the start
	step   state.Step
	well   *state.Well
	landed bool // the job is over: all is pumped and bled off

	compression float64 // volume pumped for each volume that goes in, behind the cement
	dynamic     bool
}

// playing is how a job is played: in about how many steps, what looks at every moment, and what counts the landmarks that
// have been passed, such as plugs landed. A step in which one is passed is taken again in finer ones; without a count no
// step is.
type playing struct {
	dynamic bool
	steps   int
	visit   func(*moment)
	passed  func() int
}

// settling is the time in s after which a string without a plug has come to rest.
const settling = 600

// finer is into how many a step is divided in which a landmark is passed.
const finer = 16

// play plays a job and shows every moment: each stage before anything of it is pumped and after every step, and at last
// the well at rest.
func (e *evaluation) play(i int, job *cementJob, well *state.Well, how playing) error {
	list := job.stages
	total := job.pumped()
	m := moment{well: well, compression: e.compression(i, job, displacerFluid), dynamic: how.dynamic}
	before := &state.Well{}
	for k, s := range list {
		m.stage, m.of = k, 0
		if err := e.release(i, job, well, list, k); err != nil {
			return err
		}
		how.visit(&m)
		n := max(2, int(math.Round(float64(how.steps)*s.volume/total)))
		for range n {
			if err := m.take(s, n, how, before); err != nil {
				return err
			}
		}
	}
	m.landed = true
	if how.dynamic && job.inner != nil { // no plug shuts the string: what is too heavy in it runs out
		if _, err := well.Advance(settling, 0, displacerFluid); err != nil {
			return err
		}
	}
	if err := well.SetFlow(0); err != nil {
		return err
	}
	how.visit(&m)
	return nil
}

// take makes one of n steps of a stage, in finer ones if a landmark is passed in it.
func (m *moment) take(s stage, n int, how playing, before *state.Well) error {
	if how.passed == nil {
		err := m.advance(s, n)
		how.visit(m)
		return err
	}
	before.CopyFrom(m.well)
	then, passed := *m, how.passed()
	if err := m.advance(s, n); err != nil {
		return err
	}
	if how.passed() == passed {
		how.visit(m)
		return nil
	}
	*m = then
	m.well.CopyFrom(before)
	for k := range finer {
		passed = how.passed()
		if err := m.advance(s, n*finer); err != nil {
			return err
		}
		if how.passed() != passed || k == finer-1 {
			how.visit(m)
		}
	}
	return nil
}

// release lets a plug go ahead of the first slurry and ahead of the displacement. A liner has no plug ahead of the cement.
func (e *evaluation) release(i int, job *cementJob, well *state.Well, list []stage, k int) error {
	if job.inner != nil {
		return nil
	}
	firstSlurry := firstSpacer + len(e.plan.Sections[i].Spacers)
	if list[k].fluid == firstSlurry && !e.strings[i].liner {
		return well.Drop(state.Plug{Name: bottomPlug, Seat: job.end})
	}
	if list[k].fluid == displacerFluid && (k == 0 || list[k-1].fluid != displacerFluid) {
		return well.Drop(state.Plug{Name: topPlug, Seat: job.end, Holds: true})
	}
	return nil
}

// The plugs of a job.
const (
	bottomPlug = "bottom plug"
	topPlug    = "top plug"
)

// advance makes one of n steps of a stage.
func (m *moment) advance(s stage, n int) (err error) {
	volume := s.volume / float64(n)
	m.of += volume
	into := volume
	if s.fluid == displacerFluid {
		into /= m.compression
	}
	seconds := s.time() / float64(n)
	switch {
	case m.dynamic && s.fluid < 0:
		m.step, err = m.well.Advance(seconds, 0, holeFluid)
	case m.dynamic:
		m.step, err = m.well.Advance(seconds, into/seconds, s.fluid)
	case s.fluid >= 0:
		_, err = m.well.Pump(into, s.fluid)
		m.step = state.Step{Pressure: m.well.PumpPressure(), Bumped: m.well.Bumped()}
	}
	m.time += seconds
	if err == nil && m.dynamic && m.step.Bumped && s.fluid >= 0 {
		// The last moment before the plug lands: the gauges still show the flow.
		err = m.well.SetFlow(into / seconds)
		m.step.Rate, m.step.Pressure = m.well.Flow(), m.well.PumpPressure()
	}
	return err
}
