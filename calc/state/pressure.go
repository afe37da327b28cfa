package state

import (
	"fmt"
	"math"
)

// A gauge is the pressures that a conduit's fluids add, from its top down.
type gauge struct {
	columns []column
	rubs    []rub
	head    float64 // Pa of all columns
	loss    float64 // Pa of all friction
}

// A column is a slug with what stands above it.
type column struct {
	top, tvd float64 // MD and true vertical depth of its upper end in m
	density  float64
	head     float64 // Pa of the columns above it
}

// A rub is a length of one fluid in one run, with the friction above it.
type rub struct {
	top      float64 // MD in m
	gradient float64 // Pa/m
	loss     float64 // Pa of the friction above it
}

// measure reads a stack that stands in a conduit, or might. Nothing above the
// fluid's level has weight or friction.
func (w *Well) measure(g *gauge, c Conduit, s stack, flow float64) {
	channel := &w.now.channels[c]
	g.columns, g.rubs, g.head, g.loss = g.columns[:0], g.rubs[:0], 0, 0
	if len(s) == 0 {
		return
	}
	volume := 0.0
	if c == Inside {
		if volume = channel.capacity - s.held(); !(volume > nothing) {
			volume = 0
		}
	}
	md := channel.depth(volume)
	tvd := w.layout.TVD(md)
	model := w.layout.Friction
	if flow == 0 {
		model = nil
	}
	runs := channel.runs
	for i := range s {
		fluid := &w.fluids[s[i].fluid]
		g.columns = append(g.columns, column{md, tvd, fluid.Density, g.head})
		volume += s[i].volume
		bottom := channel.bottom
		if i < len(s)-1 {
			bottom = channel.depth(volume)
		}
		for model != nil && md < bottom && len(runs) > 0 {
			r := &runs[0]
			if !(r.bottom > md) {
				runs = runs[1:]
				continue
			}
			gradient := r.loss(model, fluid.Fluid, flow)
			g.rubs = append(g.rubs, rub{md, gradient, g.loss})
			next := min(r.bottom, bottom)
			g.loss += gradient * (next - md)
			md = next
		}
		md = bottom
		below := w.layout.TVD(md)
		g.head += fluid.Density * gravity * (below - tvd)
		tvd = below
	}
}

// headAt returns the pressure in Pa of the columns above a depth.
func (w *Well) headAt(g *gauge, md float64) float64 {
	for i := len(g.columns) - 1; i >= 0; i-- {
		if c := &g.columns[i]; c.top <= md {
			return c.head + c.density*gravity*(w.layout.TVD(md)-c.tvd)
		}
	}
	return 0
}

// lossAt returns the friction in Pa above a depth.
func (g *gauge) lossAt(md float64) float64 {
	for i := len(g.rubs) - 1; i >= 0; i-- {
		if r := &g.rubs[i]; r.top <= md {
			return r.loss + r.gradient*(md-r.top)
		}
	}
	return 0
}

// readGauges measures every conduit as it is, if that has not been done.
func (w *Well) readGauges() {
	if w.read {
		return
	}
	for c := range w.gauges {
		flow := 0.0
		if Conduit(c) == Inside || Conduit(c) == Annulus {
			flow = w.flow
		}
		w.measure(&w.gauges[c], Conduit(c), w.stacks[c], flow)
	}
	w.read = true
}

// SetFlow sets the flow in m³/s at which pressures are read: down the string and up
// the annulus, or in reverse if below zero. Moving fluid by [Well.Pump] or
// [Well.Reverse] does not set it, [Well.Advance] does.
func (w *Well) SetFlow(flow float64) error {
	if math.IsNaN(flow) || math.IsInf(flow, 0) {
		return fmt.Errorf("well: the flow is not a number; give one, 0 at rest")
	}
	w.flow, w.read = flow, false
	return nil
}

// Flow returns the flow in m³/s past the end of the string: what returns.
func (w *Well) Flow() float64 { return w.flow }

// SetBackPressure sets the gauge pressure in Pa at the outlet: a choke, for one.
func (w *Well) SetBackPressure(pressure float64) error {
	if math.IsNaN(pressure) || math.IsInf(pressure, 0) {
		return fmt.Errorf("well: the back pressure is not a number; give one, 0 in the open air")
	}
	w.layout.Return.BackPressure, w.read = pressure, false
	return nil
}

// Pressure returns the gauge pressure in Pa at a depth in metres of a conduit, at
// the flow that is set. It reports false outside the conduit.
//
// In the annulus it is the back pressure at the outlet, the columns on true
// vertical depth, and the friction along the hole between the outlet and the depth.
// Below the string the column of the pocket is added to that. In the string it is
// counted on from the string's end upwards, as if the pump held the balance; but
// from the fluid's level down, where the string is not full, since there the
// pressure is known to be none. Around an inner string it is counted up from the
// end of that string. In reverse flow everything begins at the top of the string,
// which is open.
func (w *Well) Pressure(c Conduit, md float64) (pressure float64, ok bool) {
	if c < 0 || int(c) >= conduits {
		return 0, false
	}
	channel := &w.now.channels[c]
	if !(md >= channel.top-joined) || !(md <= channel.bottom+joined) {
		return 0, false
	}
	w.readGauges()
	md = min(max(md, channel.top), channel.bottom)
	g := &w.gauges[c]
	switch c {
	case Inside:
		return w.inside(md), true
	case Annulus:
		if w.flow >= 0 {
			return w.layout.Return.BackPressure + w.headAt(g, md) + g.lossAt(md), true
		}
		return w.foot() - (g.head - w.headAt(g, md)) + (g.loss - g.lossAt(md)), true
	case Pocket:
		return w.foot() + w.headAt(g, md), true
	default:
		return w.inside(channel.bottom) - (g.head - w.headAt(g, md)), true
	}
}

// foot returns the pressure in Pa outside the end of the string. The gauges must
// have been read.
func (w *Well) foot() float64 {
	if w.flow >= 0 {
		g := &w.gauges[Annulus]
		return w.layout.Return.BackPressure + g.head + g.loss
	}
	g := &w.gauges[Inside]
	return g.head + g.loss
}

// inside returns the pressure in Pa at a depth in the string. The gauges must have
// been read.
func (w *Well) inside(md float64) float64 {
	g := &w.gauges[Inside]
	head, loss := w.headAt(g, md), g.lossAt(md)
	switch {
	case w.flow < 0:
		return head + loss
	case w.empty(Inside) > 0:
		return head - loss
	}
	return w.foot() - (g.head - head) + (g.loss - loss)
}

// EMW returns the equivalent density in kg/m³, counted from the rotary, at a depth
// in metres of a conduit. It reports false outside the conduit and where the true
// vertical depth is not above zero.
func (w *Well) EMW(c Conduit, md float64) (density float64, ok bool) {
	pressure, ok := w.Pressure(c, md)
	if !ok {
		return 0, false
	}
	tvd := w.layout.TVD(md)
	if !(tvd > 0) {
		return 0, false
	}
	return pressure / (gravity * tvd), true
}

// Balance returns the gauge pressure in Pa that the pump must give at the flow that
// is set: what stands and rubs in the annulus, less what stands in the string, plus
// what rubs there. Below zero the fluid inside is too heavy for that flow: it would
// run ahead of the pump. In reverse it is the pressure at the outlet.
func (w *Well) Balance() float64 {
	w.readGauges()
	in, out := &w.gauges[Inside], &w.gauges[Annulus]
	if w.flow < 0 {
		return w.foot() - out.head + out.loss
	}
	return w.foot() - in.head + in.loss
}

// PumpPressure is [Well.Balance] as the gauge on the pump shows it: never below
// zero, and zero while the string is not full.
func (w *Well) PumpPressure() float64 {
	if w.flow >= 0 && w.empty(Inside) > 0 {
		return 0
	}
	return max(w.Balance(), 0)
}

// Differential returns the pressure in Pa that a float holds when the pump is
// stopped and bled off: the columns outside the end of the string, with the back
// pressure, less those inside from the level down. Fluid between the float and the
// end of the string counts inside. Below zero nothing is held: the fluid inside is
// the heavier one.
func (w *Well) Differential() float64 {
	w.readGauges()
	return w.layout.Return.BackPressure + w.gauges[Annulus].head - w.gauges[Inside].head
}
