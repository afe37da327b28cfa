package calc

import (
	"math"
	"slices"
	"strconv"

	"borewalk/calc/spaceout"
	"borewalk/model"
	"borewalk/model/quantity"
)

// hangRam returns the ram that the string is hung off on, and false where none says so.
func (e *evaluation) hangRam() (k int, ok bool) {
	for k := range e.plan.Rams {
		if r := &e.plan.Rams[k]; r.HangOff == model.HangsOff && r.Closes == model.RamPipe {
			return k, true
		}
	}
	return 0, false
}

// hungOff is a string hung off on a ram.
type hungOff struct {
	spaceout.Hung
	missing gap
	ram     int
	below   int       // joints of pipe between the assembly and the ram
	bit     float64   // below the rotary at mean sea level
	others  []int     // the rams that its Off is of, by row
	depths  []float64 // of these at mean sea level
}

// hangOff spaces out the string of a section on its ram, false where the rig names none.
func (e *evaluation) hangOff(i int, sp *spacing) (h hungOff, ok bool) {
	if h.ram, ok = e.hangRam(); !ok {
		return h, false
	}
	for k := range e.plan.Rams {
		if k != h.ram && e.plan.Rams[k].Closes != model.RamAnnular {
			h.others, h.depths = append(h.others, k), append(h.depths, sp.depth[k])
		}
	}
	clear, _ := e.plan.Limit(model.Rules()[model.RuleRamJoint])
	hanging := spaceout.Hanging{Ram: sp.depth[h.ram], Others: h.depths, Every: sp.every, Tool: sp.tool, Clear: clear.SI, StickUp: e.plan.Sections[i].SpaceOut.StickUp.SI}
	for k := range e.plan.PipePups {
		pup := &e.plan.PipePups[k]
		row := "rig.pup[" + strconv.Itoa(k+1) + "]."
		h.missing = first(h.missing, needs(pup.Length, model.Path(row+"length"), "length of a pup joint"), needs(pup.Count, model.Path(row+"count"), "number of a pup joint"))
		hanging.Pups = append(hanging.Pups, spaceout.Pup{Length: pup.Length.SI, Count: int(pup.Count.SI)})
	}
	if h.missing.open() {
		e.fault(h.missing)
		return h, true
	}
	hung, made := spaceout.Hang(hanging)
	length := sp.bit - sp.assembly // of all that is no pipe
	held := hanging.Ram - sp.tool/2
	h.Hung, h.below = hung, int(math.Floor((sp.assembly-held)/sp.every+1e-9))
	h.bit = held + float64(h.below)*sp.every + length
	if !made || h.below < 0 {
		h.missing = gap{model.PathOf(i, "space_out.bit"), "with the bit there no joint of pipe can hang on the ram"}
	}
	return h, true
}

// hungFigures adds how the string is made up that hangs on a ram, and how far tool joints are off the other rams then.
func (e *evaluation) hungFigures(i int, p *page, sp *spacing) {
	h, ok := e.hangOff(i, sp)
	if !ok {
		return
	}
	p.group = "Hung off, mean sea"
	why := func(w *Working) {
		w.Formula = "a tool joint rests on the ram; bit = ram - tool / 2 + joints below × length + assembly, not deeper than asked for"
		w.in("ram", "that holds, below the rotary", quantity.Length, sp.depth[h.ram])
		w.in("tool", "length of a tool joint", quantity.Length, sp.tool)
		w.in("below", "joints between assembly and ram", quantity.Count, float64(h.below))
		w.in("length", "of a joint", quantity.TallyLength, sp.every)
		w.in("assembly", "and all that is no pipe", quantity.Length, sp.bit-sp.assembly)
		w.in("pup", "above the joint that hangs", quantity.TallyLength, h.Pup())
		w.in("above", "joints above the pup", quantity.Count, float64(h.Joints))
		w.Source = "geometry"
		w.Note = "Every joint at the mean length; the strapped tally decides. What the ram may carry is the maker's."
	}
	f := p.put("spaceout.hung", "Hung off, bit at", quantity.Length, h.bit, h.missing, why)
	f.Note = "on " + e.ramName(h.ram)
	if !h.missing.open() && !h.Clear && len(h.others) > 0 {
		f.Note += "; no choice of pups clears the other rams"
	}
	joints, per := h.below+h.Joints, e.perStand(sp.every)
	p.also("spaceout.hung.stands", "stands", quantity.Count, float64(joints/per), h.missing, why)
	p.also("spaceout.hung.singles", "singles", quantity.Count, float64(joints%per), h.missing, why)
	p.also("spaceout.hung.pup", "pup", quantity.TallyLength, h.Pup(), h.missing, why)
	e.hungTop(p, sp, &h)
	if h.missing.open() {
		return
	}
	p.group = "Joints off rams, hung"
	for n, k := range h.others {
		p.put("spaceout.hung.ram."+strconv.Itoa(k+1), e.ramName(k), quantity.Length, h.Off[n], gap{}, func(w *Working) {
			w.Formula = "distance from the ram to the nearest tool joint of the string that hangs; below zero it is across"
			w.in("ram", "below the rotary", quantity.Length, h.depths[n])
			w.in("held", "lower end of the joint that hangs", quantity.Length, sp.depth[h.ram])
			w.in("tool", "length of a tool joint", quantity.Length, sp.tool)
			w.in("pup", "above it", quantity.TallyLength, h.Pup())
			w.in("length", "of a joint", quantity.TallyLength, sp.every)
			w.Source = "geometry; string and stack stand still to one another"
		})
	}
	if len(h.Off) > 0 {
		n := slices.Index(h.Off, slices.Min(h.Off))
		e.judge(model.RuleRamJoint, i, h.Off[n], "Hung off: tool joint off the other rams", e.ramName(h.others[n]), 0, model.Path("rig.ram["+strconv.Itoa(h.ram+1)+"].height"))
	}
}

// hungTop adds the stick-up of a string that hangs on a ram, which tide and heave change.
func (e *evaluation) hungTop(p *page, sp *spacing, h *hungOff) {
	why := func(w *Working) {
		w.Formula = "stick-up = length above the ram - ram; less by what the rig rises, more by what it falls"
		w.in("mean", "stick-up at mean sea", quantity.Length, h.StickUp)
		w.in("rise", "high tide and heave", quantity.Length, sp.high)
		w.in("fall", "low tide and heave", quantity.Length, sp.low)
		w.Source = "geometry, one to one with tide and draught"
	}
	p.group = "Stick-up, hung off"
	p.put("spaceout.hung.stick_up", "Stick-up", quantity.Length, h.StickUp, h.missing, why)
	p.also("spaceout.hung.stick_up.high", "rig up", quantity.Length, h.StickUp-sp.high, h.missing, why)
	p.also("spaceout.hung.stick_up.low", "rig down", quantity.Length, h.StickUp+sp.low, h.missing, why)
}
