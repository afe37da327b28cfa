package state

import (
	"fmt"
	"math"

	"borewalk/calc/friction"
)

// Parcels of gas in the annulus take the room that the pressure there leaves them. A choke at the outlet holds the pressure
// at the end of the string; so the pressure is known from below, whatever stands above, and one walk up the annulus settles
// one parcel after the other and ends with the pressure that the choke must hold.
//
// A parcel has one density, that of its mass over its volume. The mass is added up over the runs that the parcel stands in,
// each with the density in the middle of what the run holds of it, by volume; where a parcel reaches from the well into a
// choke line, the share in either counts as what it is there. Of a parcel at the outlet the well holds the mass that fits,
// and the rest leaves: so what the well holds depends on what was pumped below, and not on the steps in which that was done.

// A Room gives the volume in m³ and the density in kg/m³ that the whole parcel of a fluid takes where there is a gauge
// pressure in Pa at a depth in metres along the hole. For a fluid that does not give way it reports false.
type Room func(fluid int, md, pressure float64) (volume, density float64, ok bool)

// Settle lets those fluids of the annulus that room knows take the volume that the pressure allows, while a choke holds the
// pressure at the end of the string at foot, in gauge Pa, at the flow that is set. It returns the gauge pressure in Pa that
// the outlet needs for that, which is [Return.BackPressure] from then on: below zero it is one that no choke can give.
//
// What a parcel gains counts as [Account.Grown] and gets its new density. What does not fit any more leaves at the outlet,
// with the density that the parcel has then; what is missing flows back of [Return.Fluid]. A fluid that gives way is one
// parcel: it must stand in one piece, and in the annulus alone. An error leaves the well as it was.
func (w *Well) Settle(foot float64, room Room) (outlet float64, err error) {
	t := &w.trial
	t.annulus = append(t.annulus[:0], w.stacks[Annulus]...)
	if outlet, err = w.climbUp(foot, room); err != nil {
		return 0, err
	}
	w.settled(outlet)
	return outlet, nil
}

// Circulate is [Well.Pump] and [Well.Settle] in one: what grows and what is pumped leave together, and where parcels shrink
// as they are pumped along, less comes out instead of something flowing back.
func (w *Well) Circulate(volume float64, fluid int, foot float64, room Room) (pumped, outlet float64, err error) {
	if err := w.pumpable(volume, fluid); err != nil {
		return 0, 0, err
	}
	pumped = min(volume, w.empty(Inside)+w.room(volume))
	t := &w.trial
	t.inside = append(t.inside[:0], w.stacks[Inside]...)
	t.annulus = append(t.annulus[:0], w.stacks[Annulus]...)
	t.inside.addTop(fluid, pumped)
	over := max(t.inside.held()-w.now.channels[Inside].capacity, 0)
	turn(&t.inside, &t.annulus, over)
	if outlet, err = w.climbUp(foot, room); err != nil {
		return 0, 0, err
	}
	w.stacks[Inside] = append(w.stacks[Inside][:0], t.inside...)
	w.accounts[fluid].Pumped += pumped
	w.settled(outlet)
	w.ride(over)
	return pumped, outlet, nil
}

// settled makes the annulus what the climb has found it to be.
func (w *Well) settled(outlet float64) {
	w.stacks[Annulus] = append(w.stacks[Annulus][:0], w.trial.annulus...)
	for _, p := range w.trial.parcels {
		w.accounts[p.fluid].Grown += p.grown
		w.fluids[p.fluid].Density = p.density
	}
	w.spill()
	w.flowBack(0)
	w.layout.Return.BackPressure = outlet
	w.read = false
}

// A parcel is what has become of a fluid that gives way.
type parcel struct {
	fluid          int
	grown, density float64 // m³, kg/m³
}

// A climb is a place on the way up the annulus.
type climb struct {
	above    float64 // m³ of annulus that are left above
	md, tvd  float64 // m
	pressure float64 // Pa
	run      int     // the run that goes on from here upwards
}

// climbUp settles the trial's annulus from the end of the string upwards and returns the pressure in Pa at the outlet.
func (w *Well) climbUp(foot float64, room Room) (outlet float64, err error) {
	switch {
	case math.IsNaN(foot) || math.IsInf(foot, 0):
		return 0, fmt.Errorf("well: the pressure to be held at the end of the string is not a number; give one in Pa")
	case w.flow < 0:
		return 0, fmt.Errorf("well: a choke cannot hold the end of the string in reverse; set a flow of 0 or more")
	}
	t, channel := &w.trial, &w.now.channels[Annulus]
	t.parcels = t.parcels[:0]
	c := climb{channel.capacity, channel.bottom, w.layout.TVD(channel.bottom), foot, len(channel.runs) - 1}
	for i := len(t.annulus) - 1; i >= 0; i-- {
		s := &t.annulus[i]
		f := w.fluids[s.fluid].Fluid
		volume, density, ok, err := w.place(c, s, room)
		if err != nil {
			return 0, err
		}
		if ok {
			if err := w.whole(i); err != nil {
				return 0, err
			}
			t.parcels = append(t.parcels, parcel{s.fluid, volume - s.volume, density})
			s.volume, f.Density = volume, density
		}
		c = w.up(c, s.volume, f)
	}
	return w.up(c, c.above, w.fluids[w.layout.Return.Fluid].Fluid).pressure, nil
}

// whole reports whether the fluid of a slug of the trial's annulus stands anywhere else.
func (w *Well) whole(slug int) error {
	fluid := w.trial.annulus[slug].fluid
	pieces := 0
	for _, s := range w.trial.annulus {
		if s.fluid == fluid {
			pieces++
		}
	}
	for _, c := range [...]Conduit{Inside, Pocket, Between} {
		if w.stacks[c].of(fluid) > 0 {
			pieces++
		}
	}
	if pieces > 1 {
		return fmt.Errorf("well: fluid %d gives way and stands in %d places; make each piece in the annulus a fluid of its own",
			fluid, pieces)
	}
	return nil
}

// up goes up through a volume in m³ of a fluid, or as far as the annulus goes.
func (w *Well) up(c climb, volume float64, fluid friction.Fluid) climb {
	runs, model := w.now.channels[Annulus].runs, w.layout.Friction
	if w.flow == 0 {
		model = nil
	}
	for to := max(c.above-volume, 0); c.run >= 0; c.run-- {
		r := &runs[c.run]
		above := max(to, r.above)
		md := r.top + (above-r.above)/r.area
		if model != nil && md < c.md {
			c.pressure -= r.loss(model, fluid, w.flow) * (c.md - md)
		}
		c.above, c.md = above, md
		if above > r.above {
			break
		}
	}
	tvd := w.layout.TVD(c.md)
	c.pressure -= fluid.Density * gravity * (c.tvd - tvd)
	c.tvd = tvd
	return c
}

// place lets a parcel fill the runs from a place upwards until all of it is in, or the annulus is full. It returns its
// volume in m³, with what does not fit, and its density in kg/m³.
func (w *Well) place(c climb, s *slug, room Room) (volume, density float64, ok bool, err error) {
	f := w.fluids[s.fluid].Fluid
	whole, left := s.volume, 1.0 // m³ and the share of the parcel that is not in yet
	held, mass, beyond := 0.0, 0.0, 0.0
	for {
		space := 0.0
		if c.run >= 0 {
			space = c.above - w.now.channels[Annulus].runs[c.run].above
		}
		if whole, f.Density, ok, err = w.fit(c, s.fluid, f, whole, left, space, room); !ok || err != nil {
			return 0, 0, ok, err
		}
		in := min(left*whole, space)
		held += in
		mass += in * f.Density
		if left*whole <= space || c.run <= 0 {
			beyond = (left*whole - in) * f.Density
			break
		}
		left -= space / whole
		c = w.up(c, space, f)
	}
	if density = f.Density; held > 0 {
		density = mass / held
	}
	return (mass + beyond) / density, density, true, nil
}

// How closely a parcel is settled: its middle stands still, in pressure and in depth.
const (
	stillShare  = 1e-8 // of the pressure
	stillDepth  = 1e-3 // m
	plainRounds = 12   // that a parcel is taken at its word; from then on it is closed in on
	mostRounds  = 100
)

// still reports whether a middle is where it was before.
func (c climb) still(before climb) bool {
	return math.Abs(c.pressure-before.pressure) <= stillShare*math.Abs(c.pressure) && math.Abs(c.md-before.md) <= stillDepth
}

// fit finds the volume in m³ that a whole parcel would take, and its density, if all of it were like the share of it that
// begins at a place in a run which has so much space left. The parcel's size moves its own middle, by little: a volume is
// tried until the middle stands still. Where room jumps with depth no volume may agree with itself; then it is the one at
// the jump, of the same mass.
func (w *Well) fit(c climb, fluid int, f friction.Fluid, volume, share, space float64, room Room) (
	whole, density float64, ok bool, err error) {
	var before climb
	low, high := 0.0, math.Inf(1)
	for round := range mostRounds {
		middle := w.up(c, min(share*volume, space)/2, f)
		if round > 0 && middle.still(before) {
			return volume, f.Density, true, nil
		}
		before = middle
		whole, density, ok := room(fluid, middle.md, middle.pressure)
		switch {
		case !ok:
			return 0, 0, false, nil
		case !(whole > 0) || math.IsInf(whole, 0) || !(density > 0) || math.IsInf(density, 0):
			return 0, 0, true, fmt.Errorf("well: fluid %d takes %g m³ of %g kg/m³ at %.2f m and %.4g Pa; give both above 0",
				fluid, whole, density, middle.md, middle.pressure)
		case whole > volume:
			low = volume
		default:
			high = volume
		}
		volume, f.Density = whole, density
		if round >= plainRounds && !math.IsInf(high, 0) {
			volume = (low + high) / 2
			f.Density = whole * density / volume
		}
	}
	return 0, 0, true, fmt.Errorf("well: fluid %d at %.2f m finds no volume; let its room change smoothly with depth and pressure",
		fluid, before.md)
}
