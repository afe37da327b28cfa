package influx

import (
	"fmt"

	"borewalk/calc/column"
)

// kick is a well that is shut in on a formation, seen from a place in it.
type kick struct {
	*Well
	formation float64
	place     Place
	cell      int     // that holds the place, or begins there
	mud       float64 // Pa at the place with mud alone
}

// shutIn returns the kick of a formation, or what about it cannot be.
func (w *Well) shutIn(formation float64, at Place, loss float64) (kick, error) {
	if err := w.check(); err != nil {
		return kick{}, err
	}
	end := w.bottom()
	switch {
	case !(formation > 0 && formation <= hardest):
		return kick{}, fmt.Errorf("influx: a formation of %g Pa; give a pressure above zero", formation)
	case !(loss >= 0 && loss <= hardest):
		return kick{}, fmt.Errorf("influx: a loss of %g Pa; give one of 0 or more", loss)
	case !(at.MD >= w.Cells[0].Top && at.MD < end.Bottom):
		return kick{}, fmt.Errorf("influx: the place at %.2f m is not within the hole from %.2f m down, above its bottom at %.2f m; take one that is",
			at.MD, w.Cells[0].Top, end.Bottom)
	}
	k := kick{Well: w, formation: formation, place: at, cell: w.holds(at.MD)}
	if k.mud = k.under(w.Cells[k.cell].tvd(at.MD)); k.mud < 0 {
		return kick{}, fmt.Errorf("influx: %.4g Pa at the bottom do not carry mud up to the place at %.2f m; of a swabbed kick give that of the mud",
			formation, at.MD)
	}
	return k, nil
}

// under returns the pressure at a TVD with mud from there down to the bottom.
func (k *kick) under(tvd float64) float64 {
	return k.formation - k.Mud*column.G*(k.bottom().BottomTVD-tvd)
}

// from returns a bubble of no size at a depth along hole, with a pressure on top of that of the mud below it.
func (k *kick) from(cell int, md, more float64) (edge, error) {
	tvd := k.Cells[cell].tvd(md)
	return k.begin(cell, md, tvd, k.under(tvd)+more)
}

// hung grows a bubble down from a top at a depth to which it adds a pressure above it, until it adds that. Where the hole below
// has no room for so much, met is false.
func (k *kick) hung(cell int, md, adds float64) (top, bottom edge, met bool, err error) {
	if top, err = k.from(cell, md, adds); err != nil {
		return
	}
	bottom, met, err = k.grow(top, k.bottom().Bottom, lift, adds)
	return
}

// standing grows a bubble up from a bottom at a depth until a measure of it is as wanted, or to a depth: then met is false.
func (k *kick) standing(cell int, md, to float64, measure func(edge) float64, wanted float64) (
	bottom, top edge, met bool, err error,
) {
	if bottom, err = k.from(cell, md, 0); err != nil {
		return
	}
	top, met, err = k.grow(bottom, to, measure, wanted)
	return
}

// atBottom grows a bubble up from the bottom of the hole as [kick.standing] does, at most to the place.
func (k *kick) atBottom(measure func(edge) float64, wanted float64) (bottom, top edge, met bool, err error) {
	return k.standing(len(k.Cells)-1, k.bottom().Bottom, k.place.MD, measure, wanted)
}
