package calc

import (
	"cmp"
	"errors"
	"math"
	"slices"

	"borewalk/calc/spaceout"
	"borewalk/model"
)

// StackRow is one component of a drill string as it hangs with the bit at TD. Lengths and diameters are in m, masses per
// length in kg/m, forces in N; not a number is not known.
type StackRow struct {
	Number           int // in the plan, bottom up
	Item, Name       string
	Connection       string
	Length, Up       float64 // its own, and from the bit to its top
	Top              float64 // depth along hole
	OD, Widest       float64 // body, and as it goes down
	ID, Drift        float64 // body, and what passes
	Reached          float64 // least bore from the rotary down to and through it: what comes that far
	Neck             float64
	Mass, Air, InMud float64 // InMud along the hole
	Below            float64 // weight in mud of it and all below, along the hole
	Bore             string  // the narrowest bore above
	Clearance        float64 // left in it
}

// Stack is a drill string, bit up, with where it turns from compression to tension while the wanted weight is on the bit.
type Stack struct {
	Section int
	Rows    []StackRow
	TD      float64
	Neutral float64 // depth along hole, not a number where none is known
}

// StackUp returns the drill string of a section part by part. The error says what is missing.
func StackUp(plan *model.Plan, section int) (Stack, error) {
	if section < 0 || section >= len(plan.Sections) {
		return Stack{}, errors.New("the plan has no such section")
	}
	e := begin(plan, nil, 0)
	d := &e.drills[section]
	if d.missing.open() {
		return Stack{}, errors.New(d.missing.why)
	}
	hung := e.hangString(section, d)
	out := Stack{Section: section, TD: e.sections[section].td, Neutral: math.NaN()}
	if load := plan.Sections[section].StringLoads.BitWeight; load.IsSet() && !hung.missing.open() {
		if md, _, ok := e.neutral(&hung, load.SI); ok {
			out.Neutral = md
		}
	}
	var bores []passage
	if !e.boreGap(section).open() {
		bores = e.passages(section, out.TD)
	}
	below := 0.0
	for k := len(d.parts) - 1; k >= 0; k-- {
		row := e.stackRow(section, d, k)
		if hung.missing.open() || row.Mass == 0 {
			row.InMud = math.NaN()
		} else {
			row.InMud = hung.inMud[k]
			below += row.InMud
		}
		if row.Below = below; hung.missing.open() {
			row.Below = math.NaN()
		}
		row.Clearance = math.NaN()
		if at, ok := least(bores, d.parts[k].bottom); ok && row.Widest > 0 {
			row.Bore, row.Clearance = at.name, at.diameter-row.Widest
		}
		out.Rows = append(out.Rows, row)
	}
	return out, nil
}

// stackRow returns what a part is by itself.
func (e *evaluation) stackRow(i int, d *drillString, k int) StackRow {
	part := &d.parts[k]
	known := func(x float64) float64 {
		if x > 0 {
			return x
		}
		return math.NaN()
	}
	row := StackRow{
		Number: part.number, Item: part.row.Item, Name: part.row.Name, Connection: part.row.Connection,
		Length: part.bottom - part.top, Up: e.sections[i].td - part.top, Top: part.top,
		OD: known(part.pipe.OD), Widest: e.largest(i, part), ID: known(part.pipe.ID), Drift: known(part.pipe.Drift),
		Reached: math.NaN(), Neck: known(part.row.Neck.SI), Mass: part.mass(),
	}
	if part.row.Item == model.ItemBit {
		row.Widest = e.sections[i].bit
	}
	if row.Air = row.Mass * row.Length * gravity; row.Mass == 0 {
		row.Air = math.NaN()
	}
	if tight, ok := d.leastInside(k); ok {
		row.Reached = tight.pipe.Drift
	}
	return row
}

// StripMark is a preventer or a tool joint on the strip: depths below the rotary at mean sea level in m. Tide and heave bring a
// ram from Shallowest to Deepest; a joint, which hangs from the rig, stands still.
type StripMark struct {
	Name                string
	Ram, Holds, Annular bool
	Depth               float64
	Shallowest, Deepest float64
	Off                 float64 // of a ram, how far the nearest tool joint stays off, wherever it gets to
}

// Strip is where tool joints stand against the stack, top down: as the string hangs from the rig, and hung off on a ram.
type Strip struct {
	Bit   float64
	Clear float64 // asked for
	Marks []StripMark

	HungBit, StickUp float64 // hung off on a ram
	Hung             []StripMark
	Pups             []float64 // lowest first
}

// SpaceStrip returns the space-out of a section as a strip. The error says what is missing.
func SpaceStrip(plan *model.Plan, section int) (Strip, error) {
	if section < 0 || section >= len(plan.Sections) {
		return Strip{}, errors.New("the plan has no such section")
	}
	e := begin(plan, nil, 0)
	if !e.spaced(section) {
		return Strip{}, errors.New("there is no stack: returns go to the seabed, or no rams are entered on the well page")
	}
	sp := e.space(section, &e.drills[section])
	if sp.missing.open() {
		return Strip{}, errors.New(sp.missing.why)
	}
	clear, _ := plan.Limit(model.Rules()[model.RuleRamJoint])
	strip := Strip{Bit: sp.bit, Clear: clear.SI}
	strip.Marks = e.stripMarks(&sp, sp.rams, sp.joints(), -1)
	if h, ok := e.hangOff(section, &sp); ok && !h.missing.open() {
		strip.HungBit, strip.StickUp, strip.Pups = h.bit, h.StickUp, h.Used
		still := make([]spaceout.Ram, len(sp.depth))
		for k, depth := range sp.depth {
			still[k] = spaceout.Ram{Shallowest: depth, Deepest: depth}
		}
		strip.Hung = e.stripMarks(&sp, still, e.hungJoints(&sp, &h), h.ram)
	}
	return strip, nil
}

// hungJoints lists the tool joints near the stack of a string that hangs on a ram.
func (e *evaluation) hungJoints(sp *spacing, h *hungOff) (joints []spaceout.Joint) {
	at := sp.depth[h.ram] - sp.tool/2
	add := func(at float64) { joints = append(joints, spaceout.Joint{Top: at - sp.tool/2, Bottom: at + sp.tool/2}) }
	add(at)
	add(at + sp.every)
	for _, p := range h.Used {
		at -= p
		add(at)
	}
	for n := 0; n < h.Joints && at > slices.Min(sp.depth)-sp.every; n++ {
		at -= sp.every
		add(at)
	}
	return joints
}

// stripMarks puts rams and tool joints in the order of their depths. holds is the ram that the string hangs on, -1 for none.
func (e *evaluation) stripMarks(sp *spacing, rams []spaceout.Ram, joints []spaceout.Joint, holds int) (marks []StripMark) {
	for k, ram := range rams {
		off, _, ok := ram.Nearest(joints)
		if !ok {
			off = math.NaN()
		}
		marks = append(marks, StripMark{Name: e.ramName(k), Ram: true, Holds: k == holds, Annular: e.plan.Rams[k].Closes == model.RamAnnular,
			Depth: sp.depth[k], Shallowest: ram.Shallowest, Deepest: ram.Deepest, Off: off})
	}
	for _, j := range joints {
		marks = append(marks, StripMark{Name: "tool joint", Depth: (j.Top + j.Bottom) / 2, Shallowest: j.Top, Deepest: j.Bottom, Off: math.NaN()})
	}
	slices.SortStableFunc(marks, func(a, b StripMark) int { return cmp.Compare(a.Depth, b.Depth) })
	return marks
}
