package influx

import (
	"fmt"
	"math"

	"borewalk/calc/root"
)

// Load is how hard an influx presses on a place.
type Load struct {
	Case     Case
	Pressure float64 // Pa at the place when it is highest
	Mud      float64 // Pa there with mud alone
	Bottom   Bubble  // the influx at shut-in
	AtPlace  Bubble  // and with its top at the place
	Worst    Bubble  // and where it presses hardest
}

// Press returns the highest pressure at a place while an influx that had a volume in m³ at the bottom comes up to it; what the
// place stands does not count. It is [Well.Tolerance] the other way round, with the same formation, loss and errors.
// An influx that is too large for the hole below the place presses as one that fills it.
func (w *Well) Press(formation float64, at Place, influx, loss float64) (Load, error) {
	k, err := w.shutIn(formation, at, loss)
	if err != nil {
		return Load{}, err
	}
	if !(influx >= 0) || math.IsInf(influx, 0) {
		return Load{}, fmt.Errorf("influx: an influx of %g m³; give a volume of 0 or more", influx)
	}
	bottom, top, met, err := k.atBottom(volume, influx)
	if err != nil {
		return Load{}, err
	}
	low := between(&bottom, &top)
	l := Load{Case: AtBottom, Pressure: k.mud + top.lift, Mud: k.mud, Bottom: low, AtPlace: low, Worst: low}
	if !met {
		l.Case, l.Pressure = Whole, l.Pressure+loss
		return l, nil
	}
	if err := k.pressesAtPlace(top.content*k.Fluid.scale(formation), loss, &l); err != nil {
		return Load{}, err
	}
	if err := k.pressesOnTheWay(top.content, &l); err != nil {
		return Load{}, err
	}
	return l, nil
}

// pressesAtPlace brings the top of a bubble that keeps so much to the place.
func (k *kick) pressesAtPlace(kept, loss float64, l *Load) error {
	by := AtPlace
	bottom, top, fits, err := k.beneath(k.place.MD, kept)
	if err == nil && !fits {
		by = Whole
		bottom, top, _, err = k.atBottom(volume, math.Inf(1))
	}
	if err == nil {
		l.AtPlace = between(&bottom, &top)
		l.take(by, k.mud+top.lift+loss, l.AtPlace)
	}
	return err
}

// pressesOnTheWay brings a bubble that keeps so much to where it may be highest on its way, if it gets there: it has then left the
// bottom, and not reached the place.
func (k *kick) pressesOnTheWay(kept float64, l *Load) error {
	return k.peaks(func(p peak) error {
		bottom, top, met, err := k.onTheWay(p, kept)
		if err == nil && met {
			l.take(OnTheWay, k.mud+top.lift, between(&bottom, &top))
		}
		return err
	})
}

// onTheWay returns the bubble that keeps so much with an end at a peak, if there is one.
func (k *kick) onTheWay(p peak, kept float64) (bottom, top edge, met bool, err error) {
	if p.bottom {
		return k.standing(p.cell, p.md, k.place.MD, content, kept)
	}
	return k.beneath(p.md, kept)
}

// beneath returns the bubble that keeps so much and has its top at a depth. How deep it goes is closed in on: the deeper, the
// more is in it. Where the hole from there down has no room for it, fits is false.
func (k *kick) beneath(md, kept float64) (bottom, top edge, fits bool, err error) {
	const near = 1e-7
	grow := func(from float64) float64 {
		bottom, top, _, err = k.standing(k.holds(from), from, md, volume, math.Inf(1))
		if err != nil {
			return math.NaN()
		}
		return top.content*k.Fluid.scale(top.pressure) - kept
	}
	from, _ := root.Crossing(grow, md, k.bottom().Bottom, near*kept)
	if err != nil || math.IsNaN(from) {
		return edge{}, edge{}, false, err
	}
	grow(from)
	return bottom, top, true, err
}

// take makes a pressure the highest if it is.
func (l *Load) take(by Case, pressure float64, worst Bubble) {
	if pressure > l.Pressure {
		l.Case, l.Pressure, l.Worst = by, pressure, worst
	}
}

// ShutIn returns an influx that takes a volume in m³ at the bottom of the hole when it is shut in on a formation, in Pa. It is an
// error where the hole has no room for it, and what [Well.Press] refuses.
func (w *Well) ShutIn(formation, influx float64) (Bubble, error) {
	if err := w.check(); err != nil {
		return Bubble{}, err
	}
	k, err := w.shutIn(formation, Place{MD: w.Cells[0].Top}, 0)
	if err != nil {
		return Bubble{}, err
	}
	if !(influx > 0) {
		return Bubble{}, fmt.Errorf("influx: an influx of %g m³; give a volume above 0", influx)
	}
	bottom, top, met, err := k.atBottom(volume, influx)
	if err != nil {
		return Bubble{}, err
	}
	if !met {
		return Bubble{}, fmt.Errorf("influx: %.4g m³ do not fit in the hole below %.2f m; give a smaller influx", influx, w.Cells[0].Top)
	}
	return between(&bottom, &top), nil
}
