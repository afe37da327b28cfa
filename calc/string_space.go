package calc

import (
	"math"
	"strconv"
	"strings"

	"borewalk/calc/spaceout"
	"borewalk/model"
	"borewalk/model/quantity"
)

// spacing is the string of a section as it stands in the stack: depths below the rotary at mean sea level, m.
type spacing struct {
	missing     gap
	bit         float64
	pipes       []spaceout.Pipe
	rams        []spaceout.Ram // of every preventer, with tide and heave
	depth       []float64      // of every preventer at mean sea level
	every, tool float64        // of the joints in the stack
	assembly    float64        // top of all that is no pipe
	low, high   float64        // what tide and heave take, downwards and upwards
}

// spaced reports whether section i has a stack to be spaced out in.
func (e *evaluation) spaced(i int) bool { return e.sections[i].rig && len(e.plan.Rams) > 0 }

// space lays the string of section i through the stack.
func (e *evaluation) space(i int, d *drillString) spacing {
	s, w, rig := &e.plan.Sections[i], &e.plan.Well, &e.plan.Rig
	sp := spacing{missing: first(d.missing, e.gaps.wellhead), low: w.TideLow.SI + rig.Heave.SI, high: w.TideHigh.SI + rig.Heave.SI}
	for k := range e.plan.Rams {
		height := e.plan.Rams[k].Height
		if !height.IsSet() {
			unknown := gap{model.Path("rig.ram[" + strconv.Itoa(k+1) + "].height"), "height of a ram is blank"}
			e.fault(unknown)
			sp.missing = first(sp.missing, unknown)
		}
	}
	path := model.PathOf(i, "space_out.bit")
	shoe, _, any := e.lastShoe(i)
	if sp.bit = s.SpaceOut.Bit.SI; !s.SpaceOut.Bit.IsSet() {
		sp.bit = shoe
		sp.missing = first(sp.missing, e.shoeGap(i))
		if !any {
			sp.missing = first(sp.missing, gap{path, "there is no shoe above the section: give the depth of the bit"})
		}
	}
	if sp.missing.open() {
		return sp
	}
	if sp.bit > e.sections[i].td {
		sp.missing = gap{path, "the bit is below the hole's TD"}
		return sp
	}
	deepest := 0.0
	for k := range e.plan.Rams {
		depth := e.datum.Wellhead - e.plan.Rams[k].Height.SI
		sp.depth = append(sp.depth, depth)
		sp.rams = append(sp.rams, spaceout.Sweep(depth, w.TideLow.SI, w.TideHigh.SI, rig.Heave.SI))
		deepest = max(deepest, sp.rams[k].Deepest)
	}
	e.layPipe(i, d, &sp, deepest)
	if !(sp.every > sp.tool) {
		sp.missing = gap{path, "with the bit there no pipe stands in the stack"}
	}
	return sp
}

// layPipe lists the pipe of the string with the bit where it stands, and takes the joints in the stack from the part that is
// there.
func (e *evaluation) layPipe(i int, d *drillString, sp *spacing, deepest float64) {
	lift := e.sections[i].td - sp.bit
	for k := range d.parts {
		part := &d.parts[k]
		if part.row.Item != model.ItemPipe {
			continue
		}
		sp.assembly = part.bottom - lift
		pipe := spaceout.Pipe{Top: part.top - lift, Bottom: part.bottom - lift, Every: e.jointOf(i, part), Tool: usual(part.row.JointLength, usualJointLength)}
		sp.pipes = append(sp.pipes, pipe)
		if sp.every == 0 && pipe.Bottom > deepest {
			sp.every, sp.tool = pipe.Every, pipe.Tool
		}
	}
}

// jointOf returns the length in m of a joint of pipe as it is spaced out: as strapped, as the part has it, else the rig's stand
// in equal joints near the usual length.
func (e *evaluation) jointOf(i int, part *stringPart) float64 {
	switch s := &e.plan.Sections[i].SpaceOut; {
	case s.Joint.IsSet():
		return s.Joint.SI
	case part.row.JointEvery.IsSet():
		return part.row.JointEvery.SI
	case e.plan.Rig.StandLength.IsSet():
		stand := e.plan.Rig.StandLength.SI
		return stand / max(1, math.Round(stand/usualJointEvery))
	}
	return usualJointEvery
}

// ramName names a preventer.
func (e *evaluation) ramName(k int) string {
	if name := e.plan.Rams[k].Name; name != "" {
		return name
	}
	return "Ram " + strconv.Itoa(k+1)
}

// kept returns the preventers that tool joints are kept off, all but annulars.
func (e *evaluation) kept(sp *spacing) (rams []spaceout.Ram) {
	for k := range e.plan.Rams {
		if e.plan.Rams[k].Closes != model.RamAnnular {
			rams = append(rams, sp.rams[k])
		}
	}
	return rams
}

// joints returns the tool joints near the stack.
func (sp *spacing) joints() []spaceout.Joint {
	from, to := math.Inf(1), math.Inf(-1)
	for _, r := range sp.rams {
		from, to = min(from, r.Shallowest), max(to, r.Deepest)
	}
	return spaceout.Joints(sp.pipes, from-sp.every, to+sp.every)
}

// stands returns how many joints of pipe reach from the assembly to at least so high above the rotary, and how high the last
// of them stands.
func (sp *spacing) stands(least float64) (joints int, stickUp float64) {
	joints = max(0, int(math.Ceil((sp.assembly+least)/sp.every-1e-9)))
	return joints, float64(joints)*sp.every - sp.assembly
}

// perStand returns how many joints make a stand.
func (e *evaluation) perStand(every float64) int {
	return max(1, int(math.Round(e.plan.Rig.StandLength.SI/every)))
}

// spaceFigures adds where tool joints stand against the rams.
func (e *evaluation) spaceFigures(i int, p *page, d *drillString) {
	if !e.spaced(i) {
		return
	}
	sp := e.space(i, d)
	p.group = "Space-out, mean sea"
	joints, stickUp := 0, 0.0
	if !sp.missing.open() {
		joints, stickUp = sp.stands(e.plan.Sections[i].SpaceOut.StickUp.SI)
	}
	p.put("spaceout.bit", "Bit at", quantity.Length, sp.bit, sp.missing, func(w *Working) {
		w.Formula = "as entered, else the shoe above"
		w.in("bit", "below the rotary", quantity.Length, sp.bit)
		w.Source = "as entered"
	})
	e.madeUp(p, "spaceout", joints, stickUp, &sp, func(w *Working) {
		w.Formula = "joints = least number with (joints × length - top of assembly) >= least stick-up"
		w.in("top", "of the assembly, below the rotary", quantity.Length, sp.assembly)
		w.in("least", "stick-up", quantity.Length, e.plan.Sections[i].SpaceOut.StickUp.SI)
		w.in("length", "of a joint", quantity.TallyLength, sp.every)
	})
	if sp.missing.open() {
		return
	}
	near := sp.joints()
	p.group = "Tool joints off rams"
	for k := range e.plan.Rams {
		e.ramFigures(i, p, &sp, k, near)
	}
	e.judgeRams(i, &sp, near)
	e.liftFigures(i, p, &sp, stickUp)
	e.hungFigures(i, p, &sp)
}

// madeUp adds the stands and single joints of pipe above the assembly, and the stick-up.
func (e *evaluation) madeUp(p *page, key string, joints int, stickUp float64, sp *spacing, why func(*Working)) {
	per := e.perStand(sp.every)
	explain := func(w *Working) {
		why(w)
		w.in("n", "joints", quantity.Count, float64(joints))
		w.in("per", "joints in a stand", quantity.Count, float64(per))
		w.Source = "geometry"
		w.Note = "Every joint at the mean length; the strapped tally decides."
	}
	p.also(key+".stands", "stands", quantity.Count, float64(joints/per), sp.missing, explain)
	p.also(key+".singles", "singles", quantity.Count, float64(joints%per), sp.missing, explain)
	p.also(key+".stick_up", "stick-up", quantity.Length, stickUp, sp.missing, explain)
}

// ramFigures adds how far tool joints stay off one preventer, at mean sea and over tide and heave.
func (e *evaluation) ramFigures(i int, p *page, sp *spacing, k int, near []spaceout.Joint) {
	key, ram := "spaceout.ram."+strconv.Itoa(k+1), sp.rams[k]
	off, nearest, ok := ram.Nearest(near)
	var missing gap
	if !ok {
		missing = gap{model.PathOf(i, "space_out.bit"), "with the bit there no tool joint is near the stack"}
	}
	p.put(key, e.ramName(k), quantity.Length, off, missing, func(w *Working) {
		w.Formula = "least distance between the tool joint and where tide and heave bring the ram; below zero it gets across"
		w.in("shallowest", "ram at low tide, rig down", quantity.Length, ram.Shallowest)
		w.in("deepest", "ram at high tide, rig up", quantity.Length, ram.Deepest)
		w.in("top", "of the tool joint", quantity.Length, nearest.Top)
		w.in("bottom", "of the tool joint", quantity.Length, nearest.Bottom)
		w.Source = "geometry; the string hangs from the rig, which rises and falls with tide and heave"
		w.Note = "Stretch and the height of the ram block are not counted: the limit keeps room for them."
	})
	p.also(key+".depth", "ram at", quantity.Length, sp.depth[k], gap{}, func(w *Working) {
		w.Formula = "depth = wellhead datum - height"
		w.in("datum", "wellhead", quantity.Length, e.datum.Wellhead)
		w.in("height", "above it", quantity.Length, e.plan.Rams[k].Height.SI)
		w.Source = "geometry"
		w.Note = "At mean sea level."
	})
	at := func(column string, depth float64) {
		there, joint, _ := spaceout.Ram{Shallowest: depth, Deepest: depth}.Nearest(near)
		p.also(key+"."+strings.ReplaceAll(column, " ", "_"), column, quantity.Length, there, missing, func(w *Working) {
			w.Formula = "distance from the ram to the nearer end of the nearest tool joint; below zero the joint is across it"
			w.in("ram", "below the rotary", quantity.Length, depth)
			w.in("top", "of the tool joint", quantity.Length, joint.Top)
			w.in("bottom", "of the tool joint", quantity.Length, joint.Bottom)
			w.Source = "geometry; the string hangs from the rig, which rises and falls with tide and heave"
		})
	}
	at("at low", ram.Shallowest)
	at("at high", ram.Deepest)
	if e.plan.Rams[k].Closes == model.RamAnnular {
		p.noted(key, "annular: shown, not compared")
	}
}

// judgeRams compares the tool joint that gets nearest to a ram, where somebody says that the bit is to stand there.
func (e *evaluation) judgeRams(i int, sp *spacing, near []spaceout.Joint) {
	least, at := math.Inf(1), -1
	for k := range e.plan.Rams {
		if off, _, ok := sp.rams[k].Nearest(near); ok && e.plan.Rams[k].Closes != model.RamAnnular && off < least {
			least, at = off, k
		}
	}
	if at >= 0 && e.plan.Sections[i].SpaceOut.Bit.IsSet() {
		e.judge(model.RuleRamJoint, i, least, "Tool joint off the rams", e.ramName(at), 0, model.PathOf(i, "space_out.bit"))
	}
}

// liftFigures adds by how much the string is picked up so that no ram can close on a tool joint.
func (e *evaluation) liftFigures(i int, p *page, sp *spacing, stickUp float64) {
	p.group = "Picked up"
	clear, _ := e.plan.Limit(model.Rules()[model.RuleRamJoint])
	lift, ok := spaceout.Lift(sp.pipes, e.kept(sp), clear.SI, sp.every)
	var missing gap
	if !ok {
		missing = gap{"rig.heave", "with this tide and heave no position keeps tool joints off all rams"}
	}
	why := func(w *Working) {
		w.Formula = "least lift after which every tool joint is clear of where tide and heave bring each ram"
		w.in("clear", "asked for", quantity.Length, clear.SI)
		w.in("length", "of a joint", quantity.TallyLength, sp.every)
		w.in("tool", "length of a tool joint", quantity.Length, sp.tool)
		for _, r := range e.kept(sp) {
			w.in("from", "a ram", quantity.Length, r.Shallowest)
			w.in("to", "the same", quantity.Length, r.Deepest)
		}
		w.in("lift", "of the string", quantity.Length, lift)
		w.Source = "geometry; annulars left out"
	}
	p.put("spaceout.lift", "Pick up to clear", quantity.Length, lift, missing, why)
	p.also("spaceout.lift.bit", "bit then", quantity.Length, sp.bit-lift, missing, why)
	p.also("spaceout.lift.stick_up", "stick-up then", quantity.Length, stickUp+lift, missing, why)
}
