package state

import (
	"errors"
	"fmt"
	"math"
)

// nothing is the volume in m³ below which the string counts as full: what rounding
// leaves of a volume that was added up in another order.
const nothing = 1e-9

// A Well is a well at one moment. Make one with [New]; copies must be made with
// [Well.Clone] or [Well.CopyFrom].
type Well struct {
	layout Layout
	fluids []Fluid

	now, next shape           // next is scratch for moving the string
	stacks    [conduits]stack // what stands in each conduit
	plugs     []plug
	accounts  []Account
	flow      float64 // m³/s, below zero in reverse

	gauges [conduits]gauge // pressures of this moment, if read is true
	read   bool
	trial  trial // scratch for free fall and for settling
}

// New returns a well built as the layout says, with every conduit full of the
// fluid of the given number. The lists are copied. An error says what in the
// layout does not fit.
func New(layout Layout, fluids []Fluid, full int) (*Well, error) {
	if err := layout.check(fluids); err != nil {
		return nil, err
	}
	w := &Well{layout: layout, fluids: append([]Fluid(nil), fluids...), accounts: make([]Account, len(fluids))}
	w.layout.Bore = append(w.layout.Bore[:0:0], layout.Bore...)
	w.layout.Return.Line = append(w.layout.Return.Line[:0:0], layout.Return.Line...)
	w.layout.String, w.layout.Inner = nil, nil // the shape has them
	if err := w.known(full); err != nil {
		return nil, err
	}
	w.now.str, w.now.inner = append(w.now.str, layout.String...), append(w.now.inner, layout.Inner...)
	if err := w.now.cut(&w.layout); err != nil {
		return nil, err
	}
	for c := range w.stacks {
		volume := w.now.channels[c].capacity
		w.stacks[c] = make(stack, 0, 16)
		w.stacks[c].addTop(full, volume)
		w.accounts[full].Start += volume
	}
	return w, w.sounded()
}

// sounded reports a true vertical depth that is no number at any end of a run.
func (w *Well) sounded() error {
	for c := range w.now.channels {
		for _, r := range w.now.channels[c].runs {
			for _, md := range [...]float64{r.top, (r.top + r.bottom) / 2, r.bottom} {
				if tvd := w.layout.TVD(md); math.IsNaN(tvd) || math.IsInf(tvd, 0) {
					return fmt.Errorf("well: the true vertical depth at %.2f m is not a number; mend the trajectory", md)
				}
			}
		}
	}
	return nil
}

// Clone returns a copy that goes its own way.
func (w *Well) Clone() *Well {
	c := &Well{}
	c.CopyFrom(w)
	return c
}

// CopyFrom makes the well what another one is, in memory that it already has. The
// bore and the functions are shared: a well does not change them.
func (w *Well) CopyFrom(from *Well) {
	if w == from {
		return
	}
	w.layout, w.flow, w.read = from.layout, from.flow, false
	w.fluids = append(w.fluids[:0], from.fluids...)
	w.now.str = append(w.now.str[:0], from.now.str...)
	w.now.inner = append(w.now.inner[:0], from.now.inner...)
	for c := range w.stacks {
		w.stacks[c] = append(w.stacks[c][:0], from.stacks[c]...)
		runs := w.now.channels[c].runs
		w.now.channels[c] = from.now.channels[c]
		w.now.channels[c].runs = append(runs[:0], from.now.channels[c].runs...)
	}
	w.plugs = append(w.plugs[:0], from.plugs...)
	w.accounts = append(w.accounts[:0], from.accounts...)
}

// Spot lays a fluid between two depths in metres of a conduit in place of what is
// there, without anything flowing: a state to begin from, such as heavy mud in the
// rathole. It counts as there from the start. Depths outside the conduit are cut
// off. An empty string (see [Well.Level]) is not filled by it.
func (w *Well) Spot(c Conduit, top, bottom float64, fluid int) error {
	if err := w.known(fluid); err != nil {
		return err
	}
	if c < 0 || int(c) >= conduits {
		return errors.New("well: no such conduit; give inside, annulus, pocket or between")
	}
	if !(top <= bottom) {
		return fmt.Errorf("well: spot from %.2f m to %.2f m; give a top above a bottom", top, bottom)
	}
	channel := &w.now.channels[c]
	empty := w.empty(c)
	from := max(channel.above(top)-empty, 0)
	to := max(channel.above(bottom)-empty, 0)
	old := append(stack(nil), w.stacks[c]...)
	fresh := w.stacks[c][:0]
	at, laid := 0.0, 0.0
	for _, s := range old {
		end := at + s.volume
		above := min(max(from-at, 0), s.volume)
		below := min(max(end-to, 0), s.volume-above)
		mid := s.volume - above - below
		fresh.addBottom(s.fluid, above)
		if mid > 0 {
			fresh.addBottom(fluid, mid)
			w.accounts[s.fluid].Start -= mid
			laid += mid
		}
		fresh.addBottom(s.fluid, below)
		at = end
	}
	w.accounts[fluid].Start += laid
	w.stacks[c] = fresh
	w.read = false
	return nil
}

// known reports whether a fluid has a number.
func (w *Well) known(fluid int) error {
	if fluid < 0 || fluid >= len(w.fluids) {
		return fmt.Errorf("well: no fluid has number %d; there are %d, counted from 0", fluid, len(w.fluids))
	}
	return nil
}

// Fluid returns the fluid of a number, and nothing for a number that no fluid has.
func (w *Well) Fluid(number int) Fluid {
	if w.known(number) != nil {
		return Fluid{}
	}
	return w.fluids[number]
}

// End returns the depth in metres of the end of the string.
func (w *Well) End() float64 { return w.now.end() }

// Capacity returns the volume in m³ of a conduit.
func (w *Well) Capacity(c Conduit) float64 {
	if c < 0 || int(c) >= conduits {
		return 0
	}
	return w.now.channels[c].capacity
}

// Above returns the volume in m³ that a conduit holds from its top down to a depth in
// metres, and Depth the depth that a volume reaches from its top. What lies beyond its
// ends is at them.
func (w *Well) Above(c Conduit, md float64) float64 {
	if c < 0 || int(c) >= conduits {
		return 0
	}
	return w.now.channels[c].above(md)
}

// Depth is the inverse of [Well.Above].
func (w *Well) Depth(c Conduit, above float64) float64 {
	if c < 0 || int(c) >= conduits {
		return 0
	}
	return w.now.channels[c].depth(above)
}

// empty returns the volume in m³ at the top of a conduit that holds no fluid. Only
// the string can be empty.
func (w *Well) empty(c Conduit) float64 {
	if c != Inside {
		return 0
	}
	if v := w.now.channels[Inside].capacity - w.stacks[Inside].held(); v > nothing {
		return v
	}
	return 0
}

// Empty returns the volume in m³ of the string above the level of the fluid in it:
// where it is on vacuum, or was run in without being filled.
func (w *Well) Empty() float64 { return w.empty(Inside) }

// Level returns the depth in metres of the fluid level in the string, 0 when full.
func (w *Well) Level() float64 { return w.now.channels[Inside].depth(w.empty(Inside)) }
