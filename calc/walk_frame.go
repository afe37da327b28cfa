package calc

import (
	"math"
	"slices"

	"borewalk/calc/column"
	"borewalk/calc/state"
	"borewalk/model/quantity"
)

const lengthGauge = quantity.Length

// moments is what is known of a moment beside what stands and hangs in the well.
type moments struct {
	event        string // that begins with it
	time, pumped float64
	gauges       []JobGauge
}

// take keeps a moment of the operation in hand.
func (w *walker) take(m moments) {
	job := &w.jobs[len(w.jobs)-1]
	if m.event != "" {
		job.Events = append(job.Events, JobEvent{Name: m.event, Frame: len(job.Frames)})
	}
	f := JobFrame{Event: len(job.Events) - 1, Time: m.time, Pumped: m.pumped, Fluid: -1}
	at := w.at
	at.Gauges = append(m.gauges, w.densities()...)
	f.At = &at
	w.place(&f)
	if len(w.e.pumps) > 0 {
		f.Strokes = quotient(f.Pumped, w.e.pumps[0].perStroke)
	}
	job.Frames = append(job.Frames, f)
}

// place writes down what stands where, as the schematic reads it: with the section's own string in the hole what is round it is
// the annulus, and what is in it round a running string is between.
func (w *walker) place(f *JobFrame) {
	switch {
	case w.at.Shoe == 0 && w.well == nil:
		f.Pocket = joinedStands(slices.Concat(w.open, w.solid))
		if w.at.Pipe > 0 {
			f.Inside = []JobStand{{0, w.at.Pipe, w.filling()}}
		}
	case w.at.Shoe == 0:
		f.Inside, f.Annulus = w.stands(state.Inside), w.stands(state.Annulus)
		f.Pocket = append(w.stands(state.Pocket), w.solid...)
	case w.casing && w.well != nil:
		f.Inside, f.Annulus, f.Between, f.Pocket = w.stands(state.Inside), w.stands(state.Annulus), w.stands(state.Between), w.stands(state.Pocket)
	case w.casing: // on its way through the sea
		f.Inside = []JobStand{{0, w.at.Shoe, w.filling()}}
		f.Pocket = joinedStands(slices.Concat(w.open, w.solid))
	default:
		w.placeSet(f)
	}
}

// placeSet writes down what stands where when the section's own string is set and left alone.
func (w *walker) placeSet(f *JobFrame) {
	top, shoe := w.at.Top, w.at.Shoe
	inside, round := standIn(w.open, top, w.bottom()), standIn(w.open, 0, top)
	if w.well != nil {
		f.Inside = w.stands(state.Inside)
		round = standIn(w.stands(state.Annulus), 0, top)
		f.Between = standIn(w.stands(state.Annulus), top, w.at.Pipe)
		inside = w.stands(state.Pocket)
	}
	f.Inside = joinedStands(slices.Concat(f.Inside, inside, standIn(w.solid, 0, shoe)))
	f.Annulus = joinedStands(append(round, w.behind...))
	f.Pocket = standIn(w.solid, shoe, w.at.Hole)
}

// points returns where the columns are followed.
func (w *walker) points() (list []JobPoint) {
	e, i := w.e, w.i
	if shoe, _, ok := e.lastShoe(i); ok {
		list = append(list, JobPoint{Name: "at last shoe", Key: "shoe", MD: shoe, TVD: e.path.TVD(shoe), Fracture: e.strength(i, shoe), Pore: e.poreAlong(i, shoe)})
	}
	return list
}

// densities returns the equivalent density of the column at the last shoe and at the bottom of what can be reached.
func (w *walker) densities() (list []JobGauge) {
	add := func(name string, md float64) {
		if emw, ok := w.emw(md); ok {
			list = append(list, JobGauge{name, quantity.EMW, emw})
		}
	}
	if shoe, _, ok := w.e.lastShoe(w.i); ok && shoe < w.bottom() {
		add("EMW at last shoe", shoe)
	}
	if at := w.bottom(); at > w.e.datum.Mudline {
		add("EMW at bottom", at)
	}
	return list
}

// emw returns the equivalent density from RKB of the column at a depth, at rest.
func (w *walker) emw(md float64) (float64, bool) {
	if w.well != nil {
		v := emwAt(w.well, md)
		return v, !math.IsNaN(v)
	}
	list := w.open
	if len(list) == 0 {
		return 0, false
	}
	pressure := 0.0
	if top := list[0].Top; top > w.e.datum.MSL {
		pressure = column.PressureOf(w.e.seawater(), w.e.path.TVD(top)-w.e.datum.MSL)
	}
	for _, s := range standIn(list, 0, md) {
		if s.Fluid >= 0 {
			pressure += column.PressureOf(w.fluids[s.Fluid].Density, w.e.path.TVD(s.Bottom)-w.e.path.TVD(s.Top))
		}
	}
	return column.EMW(pressure, w.e.path.TVD(md))
}

// hanging returns the figures of a drill string on its way.
func (w *walker) hanging() []JobGauge { return []JobGauge{{"Bit at", quantity.Length, w.at.Pipe}} }

// bottomGauges returns the figures of the bottom that is drilled.
func (w *walker) bottomGauges(md float64) []JobGauge {
	p := w.e.path.At(md)
	list := []JobGauge{{"Bit at", quantity.Length, md}, {"TVD", quantity.Length, w.e.path.TVD(md)}, {"Inclination", quantity.Angle, p.Inclination}}
	if pore := w.e.poreAlong(w.i, md); pore > 0 {
		list = append(list, JobGauge{"Pore there", quantity.EMW, pore})
	}
	if rock := w.e.strength(w.i, md); rock > 0 {
		list = append(list, JobGauge{"Fracture there", quantity.EMW, rock})
	}
	return list
}

// columns returns the figures of a circulation.
func (w *walker) columns() []JobGauge {
	return []JobGauge{{"End of string", quantity.Length, w.at.Pipe}}
}

// runGauges returns the figures of a string on its way in.
func (w *walker) runGauges(shoe float64) []JobGauge {
	e, i := w.e, w.i
	list := []JobGauge{{"Shoe at", quantity.Length, shoe}}
	if t := e.tallyOf(i); t.kept && !t.missing.open() && t.average > 0 {
		list = append(list, JobGauge{"Joints in", quantity.Count, math.Floor(min(shoe, e.strings[i].shoe-e.strings[i].top) / t.average)})
	}
	if l := e.readLanding(i); !l.missing.open() {
		load := e.runLoadAt(e.hanging(i, nil, e.leftInHole(i)), i, &l, shoe)
		list = append(list, JobGauge{"Hook load, filled", quantity.Force, load.full + e.plan.Rig.BlockWeight.SI})
	}
	return list
}

// cementGauges returns the figures of a moment of the cement job.
func cementGauges(f *JobFrame) []JobGauge {
	return []JobGauge{{"Pump", quantity.Pressure, f.Pressure}, {"Rate", quantity.CementRate, f.Rate}, {"Behind cement", quantity.Volume, f.Behind}}
}
