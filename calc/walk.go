package calc

import (
	"slices"
	"strconv"

	"borewalk/calc/state"
	"borewalk/model"
)

// Walk plays the operations of a section one after the other, from the state in which the section above leaves the well:
// a job for each step of [Result.Steps], with what stands and hangs where at its start, during it and at its end. Where
// that cannot be had, why says so and mend names the entry to put right.
//
// It is the well of package state throughout: strings are moved, volumes are pumped. Between drilling and casing the open
// hole changes to what the cement page takes it to be. Columns are at rest but in the cement job, fluids do not mix, and
// cuttings are left out.
func Walk(plan *model.Plan, section int) (jobs []Job, why string, mend model.Path) {
	if section < 0 || section >= len(plan.Sections) {
		return nil, "there is no such section", ""
	}
	e := runPages(plan, section, nil)
	w := walker{e: e}
	for i := range section + 1 {
		if missing := w.section(i); missing.open() {
			return nil, missing.why, missing.path
		}
	}
	return w.finished(), "", ""
}

// walker is the well as it is walked through: what is in it, and the moments taken of the section in hand.
type walker struct {
	e      *evaluation
	i      int
	fluids []JobFluid // of all sections; stands refer to them by number
	at     WalkAt
	jobs   []Job
	steps  []Step

	open   []JobStand // what stands in the open well while nothing hangs in it, top down
	solid  []JobStand // cement, and what it shuts in, below what can be reached
	behind []JobStand // outside the section's own string, once it is cemented

	well   *state.Well // while a string hangs in the well
	local  []int       // the fluids of it, by number in fluids
	casing bool        // what hangs is the section's own string
	inner  bool        // with an inner string in it
	fault  gap
}

// section walks through section i.
func (w *walker) section(i int) gap {
	w.begin(i)
	var missing gap
	if w.steps, missing = w.e.stepsOf(i); missing.open() {
		return missing
	}
	if missing = w.unplayable(i); missing.open() {
		return missing
	}
	var skipped *Step // struck, though what follows takes it as done
	for k := range w.steps {
		s := &w.steps[k]
		if w.step(s); w.fault.open() {
			return w.because(skipped)
		}
		if s.Struck && skipped == nil && (s.From != s.To || !s.Flat()) {
			skipped = s
		}
	}
	return gap{}
}

// because returns what keeps the walk from going on: where an operation that moves the string or deepens the hole is struck, that.
func (w *walker) because(skipped *Step) gap {
	if skipped == nil {
		return w.fault
	}
	return gap{stepPath(w.i, skipped.Row, "struck"), "the operation " + strconv.Quote(skipped.Name) + " is struck, and what follows cannot be done without it"}
}

// unplayable says what is missing to lay the fluids of section i into the well.
func (w *walker) unplayable(i int) gap {
	e := w.e
	missing := first(e.columnGap(i), e.boreGap(i), e.gaps.sea)
	if e.plan.Sections[i].Method == model.Cemented || !e.strings[i].present {
		missing = first(missing, e.drills[i].missing)
	}
	if e.cemented(i) {
		missing = first(missing, e.playGap(i, e.cementOf(i)))
	}
	return missing
}

// begin takes the well over from the section above: its string counts among those that are set, and what it shuts in lies
// below what can be reached.
func (w *walker) begin(i int) {
	w.i, w.jobs, w.steps = i, nil, nil
	w.behind, w.casing, w.inner = nil, false, false
	w.at.Top, w.at.Shoe, w.at.Set, w.at.Pipe = 0, 0, false, 0
	if i == 0 {
		w.at.Hole = w.e.sections[0].start
	}
	w.declare()
}

// step plays one operation and keeps its moments. A struck one is not done.
func (w *walker) step(s *Step) {
	w.jobs = append(w.jobs, Job{Kind: WalkJob, Points: w.points()})
	w.take(moments{event: s.Name})
	if s.Struck {
		return
	}
	switch s.Kind {
	case StackIn:
		w.lowerStack(s)
	case TripIn, TripOut:
		w.trip(s)
	case ToolOut:
		w.pullTool(s)
	case Drilling:
		w.drill(s)
	case Pumping:
		w.pump(s)
	case Testing:
		w.holdStill(s)
	case RunningIn:
		w.run(s)
	case Cementing:
		w.cement(s)
	default:
		w.holdStill(s)
	}
}

// holdStill ends an operation in which nothing moves in the well.
func (w *walker) holdStill(s *Step) {
	if s.Key == "release" || s.Key == "packer" {
		w.letGo()
	}
	w.take(moments{time: s.Likely})
}

// moves is into how many parts the way of a string, or a volume, is cut for a person to look at.
const moves = 24

// fluid returns the number of a fluid, which is made where there is none of its name, density and role.
func (w *walker) fluid(name string, density float64, role JobRole) int {
	const same = 0.5 // kg/m3
	for k, f := range w.fluids {
		if f.Name == name && f.Role == role && f.Density-density < same && density-f.Density < same {
			return k
		}
	}
	w.fluids = append(w.fluids, JobFluid{Name: name, Density: density, Role: role})
	return len(w.fluids) - 1
}

func (w *walker) sea() int { return w.fluid("sea", w.e.seawater(), SeaRole) }

// mud returns the fluid that section i is drilled with when the bit is at a depth.
func (w *walker) mud(md float64) int {
	return w.fluid("mud", w.e.density(w.i, md), MudRole)
}

// leftBehind returns the fluid in which the section's string is run.
func (w *walker) leftBehind() int {
	if s := &w.e.plan.Sections[w.i]; !w.e.sections[w.i].rig && s.SpotDensity.IsSet() {
		return w.fluid("spot fluid", s.SpotDensity.SI, MudRole)
	}
	return w.mud(w.e.sections[w.i].td)
}

// finished returns the jobs of the section in hand, with the fluids that are in the well at some moment of them: its mud first, the
// others in the order in which they appear.
func (w *walker) finished() []Job {
	number := make([]int, len(w.fluids))
	var fluids []JobFluid
	use := func(fluid int) int {
		if fluid < 0 {
			return fluid
		}
		if number[fluid] == 0 {
			fluids = append(fluids, w.fluids[fluid])
			number[fluid] = len(fluids)
		}
		return number[fluid] - 1
	}
	use(w.mud(w.e.sections[w.i].td))
	for k := range w.jobs {
		for n := range w.jobs[k].Frames {
			f := &w.jobs[k].Frames[n]
			f.Fluid = use(f.Fluid)
			for _, stands := range [...]*[]JobStand{&f.Inside, &f.Annulus, &f.Between, &f.Pocket} {
				*stands = slices.Clone(*stands) // moments share what does not move
				for j := range *stands {
					(*stands)[j].Fluid = use((*stands)[j].Fluid)
				}
			}
		}
	}
	for k := range w.jobs {
		w.jobs[k].Fluids = fluids
	}
	return w.jobs
}
