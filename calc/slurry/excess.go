package slurry

import "fmt"

// A Fill is a volume of fluid behind pipe: lead, tail, spacer.
type Fill struct {
	Label  string  // Label names it to a person.
	Volume float64 // Volume is its volume in m³.
}

// A Laid is a fill that has come to stand.
type Laid struct {
	Fill
	Top    float64 // Top is the measured depth of its upper end in metres.
	Bottom float64 // Bottom is the measured depth of its lower end in metres.
	Over   float64 // Over is what of it went over the top of the rooms in m³: returns at the seabed, into a riser.
}

// Lay lays fills into rooms from a measured depth in metres upwards, one on the
// other, the first lowest: for a primary job tail, lead, spacer. It shows where the
// excess goes: given the annulus in gauge, each top stands as high as it can, and
// what does not fit is what comes over. Rooms are in order from the top down and
// must meet; the depth must lie in them. Given the annulus with the whole planned
// washout, it shows the tops that were planned.
//
// A fill that is all over has top and bottom at the top of the rooms.
func Lay(rooms []Room, from float64, fills ...Fill) ([]Laid, error) {
	if err := checkRooms(rooms); err != nil {
		return nil, fmt.Errorf("laying slurry: %w", err)
	}
	if !depthIn(rooms, from) {
		return nil, fmt.Errorf("laying slurry: %.2f m is not in the hole from %.2f to %.2f m; begin inside", from, rooms[0].Top, rooms[len(rooms)-1].Bottom)
	}
	laid := make([]Laid, 0, len(fills))
	for i, f := range fills {
		if !notNegative(f.Volume) {
			return nil, fmt.Errorf("laying slurry: fluid %d%s of %g m³; give 0 or more", i+1, named(f.Label), f.Volume)
		}
		top, over := rise(rooms, from, f.Volume)
		laid = append(laid, Laid{f, top, from, over})
		from = top
	}
	return laid, nil
}

// WithExcess returns the slurry in m³ for a primary job: the open hole annulus in
// gauge enlarged by the excess, a fraction of it, and on top the annulus inside the
// previous casing and the shoe track, both of known size and without excess (common
// practice). It reports false where an argument is below zero or not a number.
func WithExcess(open, excess, cased, shoeTrack float64) (float64, bool) {
	if !notNegative(open) || !notNegative(excess) || !notNegative(cased) || !notNegative(shoeTrack) {
		return 0, false
	}
	volume := open*(1+excess) + cased + shoeTrack
	return volume, notNegative(volume)
}

// ExcessOf returns the excess over the open hole in gauge, as a fraction, that a
// volume of slurry in m³ stands for: the opposite of [WithExcess]. It is below zero
// where the slurry does not even fill the gauge hole. It reports false without open
// hole and where an argument is not usable.
func ExcessOf(slurry, open, cased, shoeTrack float64) (float64, bool) {
	if !notNegative(slurry) || !positive(open) || !notNegative(cased) || !notNegative(shoeTrack) {
		return 0, false
	}
	excess := (slurry-cased-shoeTrack)/open - 1
	return excess, notNegative(excess) || notNegative(-excess)
}
