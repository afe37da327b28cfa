package slurry

import "fmt"

// joined is the gap or overlap in metres that two neighbouring lengths may show
// and still count as touching: a micrometre, the rounding of depths that were
// added up along different ways.
const joined = 1e-6

// trace is a volume in m³ too small to be left over: a cubic millimetre.
const trace = 1e-9

// A Room is a length of annulus or bore of one capacity.
type Room struct {
	Top      float64 // Top is the measured depth of its upper end in metres.
	Bottom   float64 // Bottom is the measured depth of its lower end in metres.
	Capacity float64 // Capacity is its volume per length in m³/m, 0 where nothing fits.
}

// checkLength reports whether a length of hole, counted from 0, has usable ends.
func checkLength(i int, top, bottom float64) error {
	if !positive(bottom - top) {
		return fmt.Errorf("length %d of hole: from %.2f to %.2f m; give it a top and a bottom below it", i+1, top, bottom)
	}
	return nil
}

// apart is the error of two lengths that do not meet.
func apart(i int, top, above float64) error {
	return fmt.Errorf("length %d of hole begins at %.2f m but the one above ends at %.2f m; let them meet", i+1, top, above)
}

// rise returns the measured depth up to which a volume reaches from a depth
// upwards, and what is left of it at the top.
func rise(rooms []Room, from, volume float64) (depth, left float64) {
	depth, left = from, volume
	for i := len(rooms) - 1; i >= 0 && left > trace; i-- {
		room := rooms[i]
		bottom := min(room.Bottom, from)
		if !(bottom > room.Top) {
			continue
		}
		if space := room.Capacity * (bottom - room.Top); space < left {
			left -= space
			depth = room.Top
			continue
		}
		return bottom - left/room.Capacity, 0
	}
	if left <= trace {
		left = 0
	}
	return depth, left
}

// held returns the volume in m³ between two measured depths.
func held(rooms []Room, top, bottom float64) float64 {
	volume := 0.0
	for _, r := range rooms {
		if from, to := max(r.Top, top), min(r.Bottom, bottom); from < to {
			volume += r.Capacity * (to - from)
		}
	}
	return volume
}

// depthIn reports whether a depth lies within rooms that meet.
func depthIn(rooms []Room, md float64) bool {
	return md >= rooms[0].Top-joined && md <= rooms[len(rooms)-1].Bottom+joined
}
