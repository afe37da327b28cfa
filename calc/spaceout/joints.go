package spaceout

import "math"

// A Pipe is a stretch of equal joints of pipe between two depths, counted from its lower end up; the piece at its upper end
// may be shorter.
type Pipe struct {
	Top, Bottom float64
	Every       float64 // length of a joint of pipe
	Tool        float64 // length of a tool joint, pin and box together
}

// A Joint is a tool joint: its ends.
type Joint struct {
	Top, Bottom float64
}

// mostJoints bounds what is listed, so that a length without sense ends.
const mostJoints = 10000

// Joints returns the tool joints of stretches of pipe that lie in part or as a whole between two depths, the deepest of each
// stretch first. The lower end of a stretch counts as a tool joint, its upper end does not: there the next one begins.
func Joints(pipes []Pipe, from, to float64) []Joint {
	var list []Joint
	for _, p := range pipes {
		if !(p.Every > 0) || !(p.Tool >= 0) || !(p.Bottom > p.Top) {
			continue
		}
		first := max(0, math.Ceil((p.Bottom-p.Tool/2-to)/p.Every))
		for k := first; k < first+mostJoints; k++ {
			at := p.Bottom - k*p.Every
			if at <= p.Top+meet || at+p.Tool/2 < from {
				break
			}
			list = append(list, Joint{at - p.Tool/2, at + p.Tool/2})
		}
	}
	return list
}

// meet is how near in m two ends count as one.
const meet = 1e-6

// A Ram is where tide and heave bring a ram, in depth below the rotary.
type Ram struct {
	Shallowest, Deepest float64
}

// Sweep returns where a ram gets to that is at a depth at mean sea level: on high water and the crest of a wave the rig is
// high above it and it is deepest. Low and high are how far the tide goes below and above mean sea level, heave how far the
// rig goes up and down from where it floats.
func Sweep(depth, low, high, heave float64) Ram {
	return Ram{Shallowest: depth - low - heave, Deepest: depth + high + heave}
}

// Off returns how far a tool joint stays off a ram, wherever the ram gets to; below zero it gets across it, and by so much
// the string must be moved to be just clear.
func (r Ram) Off(j Joint) float64 { return max(j.Top-r.Deepest, r.Shallowest-j.Bottom) }

// Nearest returns the tool joint that comes nearest to a ram, and how far it stays off; false where there is none.
func (r Ram) Nearest(joints []Joint) (off float64, nearest Joint, ok bool) {
	off = math.Inf(1)
	for _, j := range joints {
		if d := r.Off(j); d < off {
			off, nearest, ok = d, j, true
		}
	}
	return off, nearest, ok
}

// Lift returns the least distance, at most so much, by which the string is picked up so that every tool joint stays as far
// off every ram as asked for; false where there is none.
func Lift(pipes []Pipe, rams []Ram, clear, most float64) (lift float64, ok bool) {
	if len(rams) == 0 {
		return 0, true
	}
	from, to, tool := math.Inf(1), math.Inf(-1), 0.0
	for _, r := range rams {
		from, to = min(from, r.Shallowest), max(to, r.Deepest)
	}
	for _, p := range pipes {
		tool = max(tool, p.Tool)
	}
	joints := Joints(pipes, from-clear-tool, to+clear+tool+most)
	across := func(lift float64) (next float64, any bool) {
		for _, r := range rams {
			for _, j := range joints {
				// Picked up by more than the one and less than the other it is too near.
				if lift > j.Top-r.Deepest-clear+meet && lift < j.Bottom-r.Shallowest+clear-meet {
					next, any = max(next, j.Bottom-r.Shallowest+clear), true
				}
			}
		}
		return next, any
	}
	for range mostJoints {
		next, any := across(lift)
		if !any {
			return lift, true
		}
		if lift = next; !(lift <= most) {
			break
		}
	}
	return 0, false
}
