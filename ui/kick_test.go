package ui_test

import (
	"borewalk/calc"
	"borewalk/model"
)

// The invented kick: 8 m3 of gas at 3250 m in an annulus of one capacity up to the stack, pumped out by a choke line that holds
// nothing to speak of.
const (
	kickTD, kickShoe, kickWeak, kickStack = 3250.0, 2150.0, 2480.0, 352.3
	kickAnnulus, kickInside               = 0.05, 0.0125                       // m3/m
	kickOut                               = (kickTD - kickStack) * kickAnnulus // m3 until the gas is out
	kickRound                             = kickOut + 40                       // m3 of each circulation
)

// Fluids of the invented kick.
const (
	kickMud = iota
	kickHeavy
	kickGas
	kickRiser
)

// playSomeKick is a kick made by hand for section 4, and the reason why there is none for the others.
func playSomeKick(_ *model.Plan, section int, other bool) (calc.Job, string, model.Path) {
	if section != 3 {
		return calc.Job{}, "no slow rate is recorded", model.PathOf(section, "kill.rate")
	}
	return someKick(other), "", ""
}

// someKick is circulated out with the old mud and then with kill mud, or with kill mud at once.
func someKick(one bool) calc.Job {
	job := calc.Job{
		Kind: calc.KillJob, Dynamic: true,
		Fluids: []calc.JobFluid{{Name: "mud", Density: 1420}, {Name: "kill mud", Density: 1460, Role: calc.DisplacerRole}, {Name: "gas", Role: calc.GasRole}, {Name: "mud in the riser", Density: 1420}},
		Points: []calc.JobPoint{{Name: "at last shoe", Key: "shoe", MD: kickShoe, TVD: 2029, Fracture: 1560}, {Name: "at the weakest row", Key: "weak", MD: kickWeak, TVD: 2320, Fracture: 1540},
			{Name: "at TD", Key: "td", MD: kickTD, TVD: 2962, Fracture: 1915, Pore: 1460}},
		String: []calc.JobBody{{Bottom: kickTD - 200, OD: 0.15, ID: 0.13}, {Top: kickTD - 200, Bottom: kickTD, OD: 0.2, ID: 0.07}},
	}
	stage := func(name string, heavy bool, before float64) {
		job.Events = append(job.Events, calc.JobEvent{Name: name, Frame: len(job.Frames)})
		const frames = 30
		for k := range frames + 1 {
			of := kickRound * float64(k) / frames
			if before == 0 && of > kickOut && job.Frames[len(job.Frames)-1].Gas > 0 {
				job.Events = append(job.Events, calc.JobEvent{Name: "gas out", Frame: len(job.Frames)})
			}
			job.Frames = append(job.Frames, kickFrame(&job, before, of, heavy))
		}
	}
	still := func(name string, before, of float64) {
		job.Events = append(job.Events, calc.JobEvent{Name: name, Frame: len(job.Frames)})
		f := kickFrame(&job, before, of, of > 0)
		f.Rate, f.Returns, f.Fluid, f.Pressure = 0, 0, -1, 0
		job.Frames = append(job.Frames, f)
	}
	still("shut in", 0, 0)
	stage("first circulation", one, 0)
	before := 0.0
	if !one {
		before = kickRound
		stage("second circulation", true, before)
	}
	still("done", before, kickRound)
	return job
}

// kickFrame is the moment after so much was pumped of a stage. Pressures and densities are invented; places follow from the volumes.
func kickFrame(job *calc.Job, before, of float64, heavy bool) calc.JobFrame {
	pumped := before + of
	f := calc.JobFrame{
		Event: len(job.Events) - 1, Time: pumped / 0.008, Pumped: pumped, Of: of, Behind: of, Strokes: of / 0.016, Rate: 0.008, Returns: 0.008, Pressure: 27e5,
		EMW: []float64{1500, 1480, 1460}, Riser: []calc.JobStand{{Bottom: kickStack, Fluid: kickRiser}},
		Inside: []calc.JobStand{{Bottom: kickTD}}, Annulus: []calc.JobStand{{Bottom: kickTD}},
	}
	if heavy {
		f.Fluid = kickHeavy
		f.Inside, f.Annulus = heavyBehind(f.Inside, f.Annulus, of)
	}
	rear := kickTD - pumped/kickAnnulus
	if rear <= kickStack { // the choke has nothing left to hold
		f.EMW = []float64{1510, 1500, 1490}
		return f
	}
	f.Gas = 8 * (1 + 2*pumped/kickOut)
	f.Gain, f.Choke = f.Gas, 4e5+pumped*40e3
	top := rear - f.Gas/kickAnnulus
	if top < kickStack {
		top = 0
	}
	f.Annulus = laid(f.Annulus, calc.JobStand{Top: top, Bottom: rear, Fluid: kickGas})
	return f
}

// heavyBehind puts kill mud where it has come to.
func heavyBehind(inside, annulus []calc.JobStand, pumped float64) (in, out []calc.JobStand) {
	const volume = kickInside * kickTD
	if pumped == 0 {
		return inside, annulus
	}
	inside = laid(inside, calc.JobStand{Bottom: min(pumped/kickInside, kickTD), Fluid: kickHeavy})
	if up := max(kickTD-(pumped-volume)/kickAnnulus, 0); up < kickTD {
		annulus = laid(annulus, calc.JobStand{Top: up, Bottom: kickTD, Fluid: kickHeavy})
	}
	return inside, annulus
}

// showSomeDisconnect is an emergency disconnect made by hand for section 4.
func showSomeDisconnect(_ *model.Plan, section int) (calc.Job, string, model.Path) {
	if section != 3 {
		return calc.Job{}, "there is no riser to let go", model.PathOf(section, "returns")
	}
	job := calc.Job{
		Kind: calc.DisconnectJob, Dynamic: true,
		Fluids: []calc.JobFluid{{Name: "mud", Density: 1420}, {Name: "sea", Density: 1030, Role: calc.SeaRole}},
		Points: []calc.JobPoint{{Name: "at last shoe", Key: "shoe", MD: kickShoe, TVD: 2029, Fracture: 1774, Pore: 1168}, {Name: "where least is left", Key: "least", MD: 2900, TVD: 2660, Fracture: 1850, Pore: 1380},
			{Name: "at TD", Key: "td", MD: kickTD, TVD: 2962, Fracture: 1915, Pore: 1340}},
		String: []calc.JobBody{{Bottom: kickTD, OD: 0.15, ID: 0.13}},
	}
	for k, name := range []string{"connected, hung off", "sheared and sealed", "riser gone, sea above"} {
		f := calc.JobFrame{Event: k, Fluid: -1, EMW: []float64{1420, 1420, 1420}, Inside: []calc.JobStand{{Bottom: kickTD}},
			Annulus: []calc.JobStand{{Top: kickStack, Bottom: kickTD}}, Riser: []calc.JobStand{{Bottom: kickStack}}}
		if f.Parted = k > 0; f.Parted {
			f.Inside[0].Top = kickStack
		}
		if k == 2 {
			f.Riser[0], f.EMW = calc.JobStand{Top: 26, Bottom: kickStack, Fluid: 1}, []float64{1336, 1355, 1363}
		}
		job.Events = append(job.Events, calc.JobEvent{Name: name, Frame: k})
		job.Frames = append(job.Frames, f)
	}
	return job, "", ""
}
