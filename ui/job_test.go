package ui_test

import (
	"math"

	"borewalk/calc"
	"borewalk/model"
)

// The invented job: 15 m3 of spacer, 60 m3 of lead, 20 m3 of tail and 164 m3 of displacement into a string whose inside and
// annulus are of one capacity each.
const (
	jobShoe, jobTD, jobCollar = 2150.0, 2155.0, 2126.0
	jobInside, jobAnnulus     = 0.0775, 0.065 // m3/m
)

// jobVolumes are of what is pumped, in order; the first fluid is the mud that is there.
var jobVolumes = []float64{math.Inf(1), 15, 60, 20, 164}

// playSomeJob is a job made by hand for section 3, and the reason why there is none for the others. In gauge its points see more.
func playSomeJob(_ *model.Plan, section int, hole calc.HoleSize) (calc.Job, string, model.Path) {
	if section != 2 {
		return calc.Job{}, "the slurry has no density", model.PathOf(section, "slurry[1].density")
	}
	job := someJob()
	for _, f := range job.Frames {
		for k := range f.EMW {
			if hole == calc.InGauge {
				f.EMW[k] += 100
			}
		}
	}
	return job, "", ""
}

func someJob() calc.Job {
	job := calc.Job{
		Dynamic: true,
		Fluids: []calc.JobFluid{{Name: "mud", Density: 1250}, {Name: "weighted spacer", Density: 1400, Role: calc.SpacerRole}, {Name: "lead", Density: 1500, Role: calc.CementRole},
			{Name: "tail", Density: 1900, Role: calc.CementRole}, {Name: "displacing mud", Density: 1250, Role: calc.DisplacerRole}},
		Points: []calc.JobPoint{{Name: "last shoe", MD: 950, TVD: 950, Fracture: 1480}, {Name: "TD", MD: jobTD, TVD: 2033, Fracture: 1600}, {Name: "top of sand", MD: 1500, TVD: 1490}},
	}
	event := func(name string) {
		job.Events = append(job.Events, calc.JobEvent{Name: name, Frame: len(job.Frames)})
	}
	pumped, time := 0.0, 0.0
	for fluid := 1; fluid < len(jobVolumes); fluid++ {
		event([]string{"weighted spacer", "bottom plug, lead", "tail", "top plug, displacing"}[fluid-1])
		const frames = 15
		for k := range frames + 1 {
			of := jobVolumes[fluid] * float64(k) / frames
			if fluid == 4 && k == 8 {
				event("bottom plug lands")
			}
			if fluid == 4 && k == frames {
				event("top plug lands")
			}
			job.Frames = append(job.Frames, jobFrame(&job, fluid, pumped+of, of, time))
			time += 90
		}
		pumped += jobVolumes[fluid]
	}
	event("pumps stopped")
	last := job.Frames[len(job.Frames)-1]
	last.Event, last.Fluid, last.Rate, last.Returns, last.Pressure = len(job.Events)-1, -1, 0, 0, 0
	job.Frames = append(job.Frames, last)
	return job
}

// jobFrame is the moment after so much was pumped. Pressures and densities are invented; places follow from the volumes.
func jobFrame(job *calc.Job, fluid int, pumped, of, time float64) calc.JobFrame {
	f := calc.JobFrame{
		Event: len(job.Events) - 1, Time: time, Pumped: pumped, Of: of, Fluid: fluid, Rate: 0.025, Returns: 0.025, Pressure: 40e5 + 20e3*pumped,
		EMW:    []float64{1290 + 0.3*pumped, 1300 + 0.7*pumped, 1280 + 0.5*pumped},
		Pocket: []calc.JobStand{{Top: jobShoe, Bottom: jobTD, Fluid: 0}},
	}
	if fluid == 4 {
		f.Behind, f.Strokes = of, of/0.016
	}
	if fluid == 3 { // the heavy tail falls
		f.Level, f.Returns, f.Pressure = 60, 0.03, 0
	}
	behind := 0.0 // of this fluid's front, all that was pumped before it
	for i, v := range jobVolumes {
		if i == 0 {
			f.Inside, f.Annulus = stands(f.Inside, f.Annulus, 0, math.Inf(1), 0)
			continue
		}
		f.Inside, f.Annulus = stands(f.Inside, f.Annulus, max(pumped-behind-v, 0), max(pumped-behind, 0), i)
		if plug := map[int]string{2: "bottom", 4: "top"}[i]; plug != "" && pumped > behind {
			md := min((pumped-behind)/jobInside, jobCollar)
			f.Plugs = append(f.Plugs, calc.JobPlug{Name: plug, MD: md, Landed: md == jobCollar})
		}
		behind += v
	}
	return f
}

// stands puts a fluid over what stood where it has come to: from the volume that its rear has travelled to that of its front.
func stands(inside, annulus []calc.JobStand, rear, front float64, fluid int) (in, out []calc.JobStand) {
	const volume = jobInside * jobShoe
	top, bottom := rear/jobInside, min(front/jobInside, jobShoe)
	if top < bottom {
		inside = laid(inside, calc.JobStand{Top: top, Bottom: bottom, Fluid: fluid})
	}
	up, down := max(jobShoe-(front-volume)/jobAnnulus, 0), min(jobShoe-(rear-volume)/jobAnnulus, jobShoe)
	if front > volume && up < down {
		annulus = laid(annulus, calc.JobStand{Top: up, Bottom: down, Fluid: fluid})
	}
	return inside, annulus
}

// laid lays a stand over others, top down.
func laid(others []calc.JobStand, s calc.JobStand) (all []calc.JobStand) {
	put := false
	for _, o := range others {
		if o.Top < s.Top {
			all = append(all, calc.JobStand{Top: o.Top, Bottom: min(o.Bottom, s.Top), Fluid: o.Fluid})
		}
		if !put && o.Bottom > s.Top {
			all, put = append(all, s), true
		}
		if o.Bottom > s.Bottom {
			all = append(all, calc.JobStand{Top: max(o.Top, s.Bottom), Bottom: o.Bottom, Fluid: o.Fluid})
		}
	}
	if !put {
		all = append(all, s)
	}
	return all
}
