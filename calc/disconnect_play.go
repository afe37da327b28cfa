package calc

import (
	"borewalk/calc/column"
	"borewalk/model"
)

// Fluids of a disconnect as a Job names them.
const (
	mudBelow = iota
	seaAbove
)

// PlayDisconnect shows an emergency disconnect in a section in its three states: connected and hung off, sheared and sealed, and the
// riser gone with the sea above the wellhead. Where there is nothing to show, why says so and mend names the entry to put right.
func PlayDisconnect(plan *model.Plan, section int) (job Job, why string, mend model.Path) {
	if section < 0 || section >= len(plan.Sections) {
		return Job{}, "there is no such section", ""
	}
	e := runPages(plan, section, nil)
	if !e.sections[section].rig {
		return Job{}, "there is no riser to let go", model.PathOf(section, "returns")
	}
	job, missing := e.disconnect(section)
	return job, missing.why, missing.path
}

// disconnect lays out the states.
func (e *evaluation) disconnect(i int) (Job, gap) {
	missing := first(e.columnGap(i), e.gaps.sea, e.gaps.bop, e.drills[i].missing, e.boreGap(i))
	if missing.open() {
		return Job{}, missing
	}
	mud, td := e.plan.Sections[i].Density.SI, e.sections[i].td
	job := Job{Kind: DisconnectJob, Dynamic: true, String: killBodies(e.killString(i, td)), Points: e.disconnectPoints(i),
		Fluids: []JobFluid{mudBelow: {Name: "mud", Density: mud, Role: MudRole}, seaAbove: {Name: "sea", Density: e.seawater(), Role: SeaRole}}}
	lost := column.PressureOf(mud, e.datum.Mudline) - e.seaPressure()
	state := func(name string, parted, open bool) {
		f := JobFrame{Event: len(job.Events), Fluid: -1, Parted: parted, EMW: make([]float64, len(job.Points)),
			Inside: []JobStand{{0, td, mudBelow}}, Annulus: []JobStand{{e.datum.BOPTop, td, mudBelow}}, Riser: []JobStand{{0, e.datum.BOPTop, mudBelow}}}
		if parted {
			f.Inside[0].Top = e.datum.BOPTop
		}
		if open {
			f.Riser[0].Fluid, f.Riser[0].Top = seaAbove, e.datum.MSL
		}
		for n := range job.Points {
			pressure := column.PressureOf(mud, job.Points[n].TVD)
			if open {
				pressure -= lost
			}
			f.EMW[n], _ = column.EMW(pressure, job.Points[n].TVD)
		}
		job.Events = append(job.Events, JobEvent{Name: name, Frame: len(job.Frames)})
		job.Frames = append(job.Frames, f)
	}
	state("connected, hung off", false, false)
	state("sheared and sealed", true, false)
	state("riser gone, if the stack leaks", true, true)
	return job, gap{}
}

// disconnectPoints returns where the column is held against pore pressure: the last shoe, where the riser's loss leaves least, and TD.
func (e *evaluation) disconnectPoints(i int) (points []JobPoint) {
	add := func(name, key string, md float64) {
		points = append(points, JobPoint{Name: name, Key: key, MD: md, TVD: e.path.TVD(md), Fracture: e.strength(i, md), Pore: e.poreAlong(i, md)})
	}
	if shoe, _, ok := e.lastShoe(i); ok {
		add("at last shoe", "shoe", shoe)
	}
	if !first(e.windowGap(i), e.gaps.sea).open() {
		if md, ok := e.path.MDAtTVD(e.riserOff(i).overbalance.tvd); ok && md > e.openFrom(i) && md < e.sections[i].td {
			add("where least is left", "least", md)
		}
	}
	add("at TD", "td", e.sections[i].td)
	if in := e.killOf(i).in; in.measured && !in.missing.open() {
		points[len(points)-1].Pore = in.formation // what has shown itself counts, not the prognosis
	}
	return points
}
