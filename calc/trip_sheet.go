package calc

import (
	"errors"
	"fmt"
	"math"

	"borewalk/calc/pump"
	"borewalk/model"
)

// TripSheet is the drill string of a section as it is pulled from TD, fill by fill. Depths are along hole from RKB in m,
// volumes in m3.
type TripSheet struct {
	Section int
	TD      float64
	Stand   float64 // length of a stand
	Wet     bool    // the bore's fluid leaves with the pipe; else a slug lets it come dry
	PerFill int     // stands of drill pipe between fills
	Strokes string  // why there are no strokes; empty when there are
	Rows    []TripRow
}

// TripRow is what is pulled between two fills, and how things stand then.
type TripRow struct {
	Part    string  // of the string
	Stands  float64 // pulled so far, counted from TD; a part seldom ends with a stand
	Bit     float64 // depth of the bit
	Fill    float64 // what the hole takes for the row
	Total   float64 // what it has taken so far
	Strokes float64 // for the fill, of the first kind of pump
	Other   float64 // the fill if the string came the other way, wet or dry
	Hook    float64 // hook load picking up with the bit there, N; not a number where it is not known
	InShoe  bool    // the bit is in the last shoe for the first time
	AtStack bool    // the BHA reaches the wellhead for the first time
}

// TripSheetOf returns the trip sheet of a section with a riser. It is worked out anew at each call. The error says in one
// line what is missing.
func TripSheetOf(plan *model.Plan, section int) (TripSheet, error) {
	if section < 0 || section >= len(plan.Sections) {
		return TripSheet{}, fmt.Errorf("there is no section %d: the plan has %d", section+1, len(plan.Sections))
	}
	e := run(plan)
	if !e.sections[section].rig {
		return TripSheet{}, errors.New("the hole is open to the sea: it fills itself, there is no trip sheet")
	}
	t := e.readTrip(section)
	if t.missing.open() {
		return TripSheet{}, errors.New(t.missing.why)
	}
	sheet := TripSheet{Section: section, TD: e.sections[section].td, Stand: t.stand, Wet: t.wet, Strokes: e.pumpGap.why}
	perStroke := 0.0
	if len(e.pumps) > 0 {
		perStroke = e.pumps[0].perStroke
	}
	pulled, total := 0.0, 0.0
	for k := range t.parts {
		x := &t.parts[k]
		if x.part.row.Item == model.ItemPipe {
			sheet.PerFill = int(x.every)
		}
		for left := x.part.bottom - x.part.top; left > 1e-6; {
			length := min(left, x.batch)
			left -= length
			pulled += length
			fill := x.pipe.Leaves(t.wet) * length
			total += fill
			strokes, _ := pump.Strokes(fill, perStroke)
			sheet.Rows = append(sheet.Rows, TripRow{Part: x.part.label(), Stands: pulled / t.stand, Bit: sheet.TD - pulled,
				Fill: fill, Total: total, Strokes: strokes, Other: x.pipe.Leaves(!t.wet) * length,
				Hook: e.pickUpAt(section, sheet.TD-pulled)})
		}
	}
	e.markRows(section, &sheet)
	return sheet, nil
}

// pickUpAt returns the hook load in N while section i's string is picked up with its bit at a depth, not a number where that is
// not known or the bit is out of the hole.
func (e *evaluation) pickUpAt(i int, bit float64) float64 {
	if !(bit > e.datum.Wellhead) {
		return math.NaN()
	}
	h, missing := e.hookLoads(i, bit, e.density(i, e.sections[i].td))
	if missing.open() {
		return math.NaN()
	}
	return h.pickUp
}

// markRows marks where the bit comes into the last shoe and where the BHA comes to the wellhead.
func (e *evaluation) markRows(i int, sheet *TripSheet) {
	shoe, _, cased := e.lastShoe(i)
	assembly := 0.0
	for k := range e.drills[i].parts {
		if p := &e.drills[i].parts[k]; p.row.Item != model.ItemPipe {
			assembly += p.bottom - p.top
		}
	}
	before := sheet.TD
	for k := range sheet.Rows {
		r := &sheet.Rows[k]
		r.InShoe = cased && before > shoe && r.Bit <= shoe
		r.AtStack = before-assembly > e.datum.Wellhead && r.Bit-assembly <= e.datum.Wellhead
		before = r.Bit
	}
}
