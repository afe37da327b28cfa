package state

import (
	"fmt"
	"math"
)

// While the fluid in the string outweighs what it has to lift, no pump holds it
// back. The string goes on vacuum: fluid leaves at its end faster than the pump
// fills it, and the level falls until the balance is found. Later, when the heavy
// fluid has turned the corner, the pump catches up, with returns slower than the
// pump until the string is full again.
//
// A step of time dt pumps a volume a and lets a volume x out at the end. Either the
// string is full at the end of it, x being what it cannot hold, and the pump gives
// what pressure is lacking; or the level stands below the rotary, the pressure there
// is none, and x is the volume for which
//
//	friction(x/dt) = columns inside - columns outside - back pressure
//
// at the end of the step. Taking the end and not the beginning (backward Euler)
// keeps a long step from swinging about the balance. The left side rises with x and
// the right side nearly always falls, so x is bracketed and closed in on.

// trial is scratch for looking at the well after a step that has not been made, or
// that may turn out not to be possible.
type trial struct {
	inside, annulus stack
	in, out         gauge
	parcels         []parcel
}

const (
	creep      = 1e-9  // m³/s: the flow that stands for one about to begin, so that yield is felt
	finest     = 1.0   // Pa to which pressures balance in free fall
	rough      = 500.0 // Pa to which they do where the layout asks for coarse steps
	share      = 0.01  // of the string's volume: the most that one inner step is meant to move, unless the layout says so
	mostSteps  = 1000  // of one call, about
	mostTrials = 60    // of one inner step
	slack      = 1e-10 // m³ to which an inner step is closed in on
)

// A Step is what happened while time passed.
type Step struct {
	Pumped   float64 // Pumped is the volume in m³ that went in.
	Returned float64 // Returned is the volume in m³ that left at the outlet.
	Rate     float64 // Rate is the flow in m³/s that returns at the end of the step, 0 when a plug has landed and shut the string.
	Level    float64 // Level is the depth in metres of the fluid level in the string, 0 when full.
	Pressure float64 // Pressure is that of the pump in Pa at the end of the step.
	Bumped   bool    // Bumped says that a plug has landed and shut the string; the pump then stopped when it was full.
}

// Advance lets time in seconds pass while a fluid is pumped down the string at a
// rate in m³/s, which may be zero, and lets the string run on vacuum where it must.
// A long time is cut into inner steps. The flow of the last of them is the flow
// at which pressures are read afterwards.
//
// Where nothing falls, the state does not depend on how time is cut. Where it does,
// the level on the way converges with shorter steps, and the state once the string
// is full again depends only on what was pumped.
//
// Fluid never comes back up the string here: where the annulus is the heavier side
// and the string not full, it is taken as held, by a float or a valve. A fluid's
// yield point holds the columns too: flow ends a little before they balance.
func (w *Well) Advance(seconds, rate float64, fluid int) (Step, error) {
	switch {
	case !(seconds > 0) || math.IsInf(seconds, 0):
		return Step{}, fmt.Errorf("well: cannot advance by %g s; give a time above 0", seconds)
	case !(rate >= 0):
		return Step{}, fmt.Errorf("well: cannot pump at %g m³/s; give a rate of 0 or more", rate)
	}
	if err := w.pumpable(rate*seconds, fluid); err != nil {
		return Step{}, err
	}
	var s Step
	coarse := w.coarse()
	for left := seconds; left > 0; {
		dt := left
		if rate*left > coarse {
			dt = min(left, max(coarse/rate, seconds/mostSteps))
		}
		dt, pumped, out := w.pass(dt, seconds/mostSteps, rate, fluid)
		s.Pumped += pumped
		s.Returned += out
		if left -= dt; left < seconds*1e-9 {
			break
		}
	}
	s.Rate, s.Level, s.Pressure, s.Bumped = w.flow, w.Level(), w.PumpPressure(), w.Bumped()
	return s, nil
}

// coarse returns the volume in m³ that one inner step is meant to move at most.
func (w *Well) coarse() float64 {
	if w.layout.Coarse > 0 {
		return w.layout.Coarse * w.now.channels[Inside].capacity
	}
	return share * w.now.channels[Inside].capacity
}

// pass makes one inner step of a time in seconds, or of less, but no less than least,
// where so much would leave the string that the step is too coarse. It returns how
// long it took and what went in and out, in m³.
func (w *Well) pass(most, least, rate float64, fluid int) (dt, pumped, out float64) {
	coarse := 2 * w.coarse()
	empty, held := w.empty(Inside), w.stacks[Inside].held()
	room := w.room(math.Inf(1))
	var full float64 // what leaves if the string is full at the end
	for dt = most; ; dt /= 2 {
		pumped = min(rate*dt, empty+room)
		full = max(pumped-empty, 0)
		out = w.outflow(full, min(room, held+pumped), pumped, dt, fluid)
		if out <= coarse || dt < 2*least || out == full {
			break
		}
	}
	w.enter(pumped, fluid)
	if out > full {
		w.leave(out)
	} else {
		w.leave(w.stacks[Inside].held() - w.now.channels[Inside].capacity)
	}
	if w.flow = out / dt; w.Bumped() {
		w.flow = 0
	}
	w.read = false
	return dt, pumped, out
}

// outflow returns the volume in m³ between least and most that leaves the string in
// a time dt in which a volume is pumped.
func (w *Well) outflow(least, most, pumped, dt float64, fluid int) float64 {
	finest := finest
	if w.layout.Coarse > 0 {
		finest = rough
	}
	lack := w.lacking(least, pumped, dt, fluid)
	if lack >= 0 || !(most > least) {
		return least
	}
	lo, atLo := least, lack
	hi := min(most, max(w.flow*dt, least*1.25, least+1e-6))
	atHi := w.lacking(hi, pumped, dt, fluid)
	trials := 0
	for ; atHi < 0 && hi < most && trials < mostTrials; trials++ {
		lo, atLo = hi, atHi
		hi = min(most, 1.5*hi)
		atHi = w.lacking(hi, pumped, dt, fluid)
	}
	if atHi < finest {
		return hi
	}
	// Regula falsi with Illinois halving, and a bisection whenever three trials have
	// not halved the bracket.
	width, side := hi-lo, 0
	for ; trials < mostTrials && hi-lo > slack; trials++ {
		x := hi - atHi*(hi-lo)/(atHi-atLo)
		if trials%3 == 2 {
			if hi-lo > width/2 {
				x = (lo + hi) / 2
			}
			width = hi - lo
		}
		if !(x > lo && x < hi) {
			x = (lo + hi) / 2
		}
		at := w.lacking(x, pumped, dt, fluid)
		if math.Abs(at) < finest {
			return x
		}
		if at < 0 {
			lo, atLo = x, at
			if side < 0 {
				atHi /= 2
			}
			side = -1
		} else {
			hi, atHi = x, at
			if side > 0 {
				atLo /= 2
			}
			side = 1
		}
	}
	return hi
}

// lacking returns the pressure in Pa that would have to be added at the fluid's
// level in the string, after a volume was pumped and another left in a time dt.
// Below zero the fluid would have gone faster.
func (w *Well) lacking(out, pumped, dt float64, fluid int) float64 {
	t := &w.trial
	t.inside = append(t.inside[:0], w.stacks[Inside]...)
	t.annulus = append(t.annulus[:0], w.stacks[Annulus]...)
	t.inside.addTop(fluid, pumped)
	turn(&t.inside, &t.annulus, out)
	for left := out; left > 0; {
		_, took := t.annulus.takeTop(left)
		if took == 0 {
			break
		}
		left -= took
	}
	flow := max(out/dt, creep)
	w.measure(&t.in, Inside, t.inside, flow)
	w.measure(&t.out, Annulus, t.annulus, flow)
	return w.layout.Return.BackPressure + t.out.head + t.out.loss + t.in.loss - t.in.head
}
