package calc

import (
	"errors"
	"fmt"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/steel"
	"borewalk/calc/tally"
	"borewalk/model"
)

// RunList is a string as it is run, piece by piece from the shoe up, and then the landing string where it is spaced out.
// Depths are along hole from RKB and lengths in m.
type RunList struct {
	Section   int
	Top       float64 // where the string lands
	Wanted    float64 // shoe
	Shoe      float64 // as tallied
	Hole      float64 // end of the full-size hole
	Joints    int     // run, the shoe track not counted
	Left      int     // sound joints that stay on deck
	Counted   bool    // Left is known
	Measured  bool    // from measured joints, not at the average
	Holds     bool    // the float keeps the fluid out, so that the string displaces its outside
	FillEvery int     // joints run between fillings; zero keeps the string full
	Unweighed string  // why there are no hook loads; empty when there are
	Unspaced  string  // why there is no landing string in the list; empty when there is
	Rows      []RunRow
}

// RunRow is one piece of a running list, and how things stand once it is made up and run in with its top at the rotary.
type RunRow struct {
	Piece      string  // what it is: "joint", "float collar", "stand"
	Number     string  // painted on it, or counted from the lowest; empty for what there is one of
	Carrier    bool    // it is part of the landing string
	Part       int     // casing part that it is of, in the plan and counted from 1; zero for the landing string
	Length     float64 // that it adds
	Cumulative float64 // from the shoe to its upper end
	Top        float64 // depth of its upper end when the string has landed; negative above the rotary
	Shoe       float64 // depth of the shoe
	Inside     float64 // volume inside the string so far, m3
	Displaced  float64 // volume that has come out of the hole so far, m3
	HookLoad   float64 // string full, with blocks and top drive, N
	Unfilled   float64 // the same with what has been run since the last filling empty, N
}

// RunningList returns the running list of a section's string. It is worked out anew at each call. The error says in one
// line what is missing.
//
// Hook loads are those of the string hanging in the fluid of the hole without friction. A string over a float that holds is
// filled every so many joints, and is full before the landing string goes on.
func RunningList(plan *model.Plan, section int) (RunList, error) {
	if section < 0 || section >= len(plan.Sections) {
		return RunList{}, fmt.Errorf("there is no section %d: the plan has %d", section+1, len(plan.Sections))
	}
	e := runPages(plan, section, nil)
	if !e.strings[section].present {
		return RunList{}, errors.New("the section stays open hole: there is no string to run")
	}
	t := e.tallyOf(section)
	if !t.kept {
		return RunList{}, errors.New("the string has no tally: give the average length of a joint, or measured joints")
	}
	if t.missing.open() {
		return RunList{}, errors.New(t.missing.why)
	}
	s := &plan.Sections[section]
	hung, err := t.list(s.Tally.MarkerDepth.SI)
	if err != nil {
		return RunList{}, fmt.Errorf("the string cannot be hung: %w", err)
	}
	list := RunList{
		Section: section, Top: t.closing.Shoulder, Wanted: t.closing.Wanted, Shoe: t.closed.Shoe, Hole: t.closing.Deepest, Joints: t.run(),
		Measured: t.measured, Holds: s.Tally.Float != model.FloatFills,
	}
	list.Left, list.Counted = t.left()
	if list.Holds {
		list.FillEvery = int(s.Tally.FillEvery.SI)
	}
	r := e.newRunner(section, &list)
	for _, p := range hung.Pieces {
		r.casing(p)
	}
	r.landingString()
	return list, nil
}

// runner follows a string into the well.
type runner struct {
	e       *evaluation
	i       int
	list    *RunList
	landing landing
	fluids  []layer
	in      RunRow  // what has been run so far
	since   int     // joints since the last filling
	empty   float64 // length not filled
}

func (e *evaluation) newRunner(i int, list *RunList) *runner {
	r := &runner{e: e, i: i, list: list}
	switch {
	case e.landed(i):
		r.landing = e.readLanding(i)
	default:
		r.landing.missing = gap{why: "the string is jetted or driven: it hangs on the drill string"}
	}
	if list.Unweighed = r.landing.missing.why; list.Unweighed == "" {
		r.fluids = e.hanging(i, nil, e.leftInHole(i))
	}
	return r
}

// casing runs a piece of the string.
func (r *runner) casing(p tally.Piece) {
	row := r.next(words(p.Kind), p.Label, p.Length)
	if row.Number == "" && p.Joint > 0 {
		row.Number = strconv.Itoa(p.Joint)
	}
	part := r.partAt((p.Top + p.Bottom) / 2)
	pipe := part.pipe
	row.Part = part.row + 1
	r.volumes(&row, pipe, pipe.LinearMass)
	row.Top = p.Top
	r.empty += p.Length
	r.weigh(&row, min(r.empty, row.Cumulative))
	if p.Kind == tally.Joint {
		r.since++
	}
	if r.since >= r.list.FillEvery {
		r.since, r.empty = 0, 0
	}
	r.list.Rows = append(r.list.Rows, row)
}

// words is how a running list calls a piece; it is kept short.
func words(k tally.Kind) string {
	switch k {
	case tally.TrackJoint:
		return "track joint"
	case tally.Pup:
		return "pup"
	}
	return k.String()
}

// next begins the row of a piece.
func (r *runner) next(piece, number string, length float64) RunRow {
	r.in.Cumulative += length
	row := RunRow{Piece: piece, Number: number, Length: length, Cumulative: r.in.Cumulative, Shoe: r.in.Cumulative}
	row.Shoe = min(row.Shoe, r.list.Shoe) // the hanger has landed
	return row
}

// volumes adds what a piece takes in and pushes out. Couplings and thicker pieces count as plain pipe.
func (r *runner) volumes(row *RunRow, pipe model.Pipe, mass float64) {
	inside := bore.Area(pipe.ID) * row.Length
	r.in.Inside += inside
	r.in.Displaced += steel.Displacement(mass) * row.Length
	if r.list.Holds {
		r.in.Displaced += inside
	}
	row.Inside, row.Displaced = r.in.Inside, r.in.Displaced
}

// weigh adds the hook loads, with an uppermost length in m not filled.
func (r *runner) weigh(row *RunRow, empty float64) {
	if r.list.Unweighed != "" {
		return
	}
	if r.list.FillEvery == 0 {
		empty = 0
	}
	c := &r.e.strings[r.i]
	full, light := r.e.runWeights(r.fluids, r.i, &r.landing, min(row.Shoe, c.shoe), empty)
	blocks := r.e.plan.Rig.BlockWeight.SI
	row.HookLoad, row.Unfilled = full+blocks, light+blocks
}

// partAt returns the casing part at a depth of the landed string.
func (r *runner) partAt(md float64) casingPart {
	parts := r.e.strings[r.i].parts
	for k := range parts {
		if md <= parts[k].bottom {
			return parts[k]
		}
	}
	return parts[len(parts)-1]
}

// landingString runs the landing string on top, where it is spaced out.
func (r *runner) landingString() {
	e, i := r.e, r.i
	switch {
	case !e.landed(i):
		r.list.Unspaced = "the string is jetted or driven"
		return
	case !e.plan.Sections[i].Landing.StickUp.IsSet():
		r.list.Unspaced = "the wanted stick-up is blank"
		return
	}
	out, _, missing := e.spaceOut(i)
	if missing = first(missing, r.landing.missing); missing.open() {
		r.list.Unspaced = missing.why
		return
	}
	top, stand := r.list.Top, 0
	for n, item := range out.Items {
		for range max(1, item.Count) {
			piece, number := "stand", ""
			switch {
			case n == 0 && e.plan.Sections[i].Landing.Tool.SI > 0:
				piece = "running tool"
			case item.Kind == tally.Pup:
				piece = "landing pup"
			default:
				stand++
				number = strconv.Itoa(stand)
			}
			row := r.next(piece, number, item.Length)
			row.Carrier = true
			top -= item.Length
			row.Top = top
			r.volumes(&row, r.landing.pipe, r.landing.mass)
			r.weigh(&row, 0)
			r.list.Rows = append(r.list.Rows, row)
		}
	}
}
