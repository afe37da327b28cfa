package spaceout

import (
	"math"
	"slices"
)

// A Hanging is a string that is to hang by a tool joint on a ram. Depths hold at mean sea level.
type Hanging struct {
	Ram     float64   // depth of the ram that holds
	Others  []float64 // depths of the other rams
	Every   float64   // length of a joint of pipe
	Tool    float64   // length of a tool joint
	Pups    []Pup     // aboard
	Clear   float64   // asked for between tool joints and the other rams
	StickUp float64   // least height of the string's top above the rotary
}

// A Pup is a length of pup joint and how many of it are aboard.
type Pup struct {
	Length float64
	Count  int
}

// A Hung is how the string above the ram is made up.
type Hung struct {
	Used    []float64 // lengths of the pups above the tool joint that hangs, lowest first
	Joints  int       // joints of pipe above them
	StickUp float64   // height of the string's top above the rotary at mean sea level
	Off     []float64 // how far the nearest tool joint is off each of the other rams
	Clear   bool      // each is as far as asked for
}

// Pup returns the length of the pups together.
func (h *Hung) Pup() (sum float64) {
	for _, p := range h.Used {
		sum += p
	}
	return sum
}

// mostPups is how many pups are looked at together: each is a connection more.
const mostPups = 3

// Hang makes up the string above a tool joint that rests on a ram: no pup where that leaves the other rams clear, else the
// fewest pups, the shortest of as many, just above the joint that hangs. Where nothing clears all of them it returns what
// leaves the most. The pipe hangs on the lower end of the tool joint. It reports false for lengths that make no sense.
func Hang(h Hanging) (Hung, bool) {
	if !(h.Every > h.Tool) || !(h.Tool >= 0) || !(h.Ram > h.Tool) || math.IsInf(h.Ram, 0) || math.IsInf(h.Every, 0) || !(h.StickUp >= 0) ||
		!(h.Ram/h.Every < mostJoints) {
		return Hung{}, false
	}
	pups := slices.Clone(h.Pups)
	slices.SortFunc(pups, func(a, b Pup) int { // the longest lowest
		if a.Length > b.Length {
			return -1
		}
		return 1
	})
	var best Hung
	for n := 0; n <= mostPups && !best.Clear; n++ {
		h.each(pups, n, nil, func(used []float64) {
			if made := h.makeUp(used); best.Off == nil || better(&made, &best) {
				made.Used = slices.Clone(used)
				best = made
			}
		})
	}
	return best, true
}

// each visits every choice of n pups, the longer before the shorter.
func (h *Hanging) each(pups []Pup, n int, used []float64, visit func([]float64)) {
	if n == 0 {
		visit(used)
		return
	}
	for i, p := range pups {
		if p.Count > 0 && p.Length > 0 {
			rest := slices.Clone(pups[i:])
			rest[0].Count--
			h.each(rest, n-1, append(slices.Clip(used), p.Length), visit)
		}
	}
}

// makeUp builds the string above the joint that hangs, with pups.
func (h *Hanging) makeUp(used []float64) Hung {
	at := h.Ram - h.Tool/2
	joints := []Joint{{h.Ram - h.Tool, h.Ram}}
	add := func() { joints = append(joints, Joint{at - h.Tool/2, at + h.Tool/2}) }
	for _, p := range used {
		at -= p
		add()
	}
	made := Hung{Joints: max(0, int(math.Ceil((at+h.StickUp)/h.Every-meet)))}
	made.StickUp = float64(made.Joints)*h.Every - at
	highest, deepest := h.Ram, h.Ram
	for _, d := range h.Others {
		highest, deepest = min(highest, d), max(deepest, d)
	}
	for range made.Joints {
		if at < highest-h.Every-h.Tool {
			break
		}
		at -= h.Every
		add()
	}
	for at = h.Ram - h.Tool/2; at < deepest+h.Every+h.Tool; {
		at += h.Every
		add()
	}
	made.Off, made.Clear = make([]float64, 0, len(h.Others)), true
	for _, d := range h.Others {
		off, _, _ := Ram{d, d}.Nearest(joints)
		made.Off = append(made.Off, off)
		made.Clear = made.Clear && off >= h.Clear-meet
	}
	return made
}

// better reports whether one way to make up the string comes before another: clear before not clear, then the shorter pups,
// and of those that are not clear the one that leaves more at its tightest ram.
func better(a, b *Hung) bool {
	switch {
	case a.Clear != b.Clear:
		return a.Clear
	case a.Clear:
		return a.Pup() < b.Pup()
	}
	return slices.Min(a.Off) > slices.Min(b.Off)
}
