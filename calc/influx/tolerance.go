package influx

import (
	"fmt"
	"math"
)

// Case is when an influx presses hardest on a place.
type Case uint8

// The cases.
const (
	None     Case = iota // mud alone is too much: the place bears no influx
	AtBottom             // at shut-in, round what hangs at the bottom
	OnTheWay             // in a narrow or steep length between
	AtPlace              // with its top at the place
	Whole                // never too hard: the hole may be full of it from the place down
)

// Tolerance is the largest influx that a place bears.
type Tolerance struct {
	Case     Case
	Volume   float64 // m³ at the bottom: the pit gain at shut-in
	Mud      float64 // Pa at the place with mud alone
	ByBottom float64 // m³ that the place bears at shut-in, that of the hole below it where anything
	ByPlace  float64 // m³ at the bottom that it bears with the bubble's top there, likewise
	Bottom   Bubble  // the influx at shut-in
	Worst    Bubble  // and where it presses hardest
}

// Tolerance returns the largest influx of a formation, in Pa at the bottom of the hole, that a place bears while it comes up the
// hole, and when it presses hardest. The loss in Pa is what presses on the place besides, friction and what the choke is held
// off by, while a bubble has its top there. Before, none is counted: where it presses all the time, take it off what the place
// stands.
//
// With the top at the place the bubble begins with what the place stands less the loss, and goes down to where its
// pressure meets that of the mud below; at the bottom it begins with the formation's. Either way it has then added to the mud
// alone what the place had room for. Between, a bubble may be highest where its top comes to a wider or flatter length, or
// its bottom to a narrower or steeper one; there it is looked at too, without loss, but for the influx of [Simple] by [AtEnds],
// which has a volume at its two ends alone. The smallest at the bottom counts.
//
// The pressure of the formation is what is held at the bottom: of a swabbed kick that of the mud. Errors say what cannot be in
// well, place or pressures; those of the gas come up.
func (w *Well) Tolerance(formation float64, at Place, loss float64) (Tolerance, error) {
	k, err := w.shutIn(formation, at, loss)
	if err != nil {
		return Tolerance{}, err
	}
	if !(math.Abs(at.Stands) <= hardest) {
		return Tolerance{}, fmt.Errorf("influx: the place at %.2f m stands %g Pa; give a pressure", at.MD, at.Stands)
	}
	t := Tolerance{Mud: k.mud}
	room := at.Stands - k.mud
	if room < loss {
		return t, nil
	}
	if err := k.bearsAtBottom(room, &t); err != nil {
		return Tolerance{}, err
	}
	if err := k.bearsAtPlace(room-loss, &t); err != nil {
		return Tolerance{}, err
	}
	if err := k.bearsOnTheWay(room, &t); err != nil {
		return Tolerance{}, err
	}
	return t, nil
}

// bearsAtBottom finds the bubble at the bottom that takes the room.
func (k *kick) bearsAtBottom(room float64, t *Tolerance) error {
	bottom, top, met, err := k.atBottom(lift, room)
	if err != nil {
		return err
	}
	t.Case = Whole
	if met {
		t.Case = AtBottom
	}
	t.Bottom = between(&bottom, &top)
	t.Worst, t.Volume, t.ByBottom = t.Bottom, t.Bottom.Volume, t.Bottom.Volume
	return nil
}

// bearsAtPlace finds the bubble with its top at the place that takes the room.
func (k *kick) bearsAtPlace(room float64, t *Tolerance) error {
	t.ByPlace = k.below(k.place.MD)
	top, bottom, met, err := k.hung(k.cell, k.place.MD, room)
	if err != nil || !met {
		return err
	}
	low, err := k.lowered(bottom.content * k.Fluid.scale(top.pressure))
	if err != nil {
		return err
	}
	t.ByPlace = low.Volume
	t.take(AtPlace, between(&top, &bottom), low)
	return nil
}

// bearsOnTheWay finds the bubbles that take the room where they may be highest on their way.
func (k *kick) bearsOnTheWay(room float64, t *Tolerance) error {
	return k.peaks(func(p peak) error {
		end, grown, met, err := k.highest(p, room)
		if err != nil || !met {
			return err
		}
		low, err := k.lowered(grown.content)
		if err == nil {
			t.take(OnTheWay, between(&end, &grown), low)
		}
		return err
	})
}

// highest returns the bubble with an end at a peak that takes the room, if there is one.
func (k *kick) highest(p peak, room float64) (end, grown edge, met bool, err error) {
	if p.bottom {
		return k.standing(p.cell, p.md, k.place.MD, lift, room)
	}
	return k.hung(p.cell, p.md, room)
}

// lowered returns the bubble that keeps so much, at the bottom of the hole.
func (k *kick) lowered(kept float64) (Bubble, error) {
	bottom, top, _, err := k.atBottom(content, kept/k.Fluid.scale(k.formation))
	return between(&bottom, &top), err
}

// take makes a bubble the tolerance if it is smaller at the bottom than what was found before.
func (t *Tolerance) take(by Case, worst, bottom Bubble) {
	if bottom.Volume < t.Volume {
		t.Case, t.Volume, t.Worst, t.Bottom = by, bottom.Volume, worst, bottom
	}
}
