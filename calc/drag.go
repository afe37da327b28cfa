package calc

import (
	"math"
	"slices"

	"borewalk/calc/drag"
	"borewalk/calc/drillpipe"
	"borewalk/calc/strength"
	"borewalk/model"
)

// What counts where the plan does not say, common practice, from memory.
const (
	usualRubCased = 0.2
	usualRubOpen  = 0.3
	usualBitRub   = 0.5 // of a bit on rock
)

// rubbed is the drill string of a section as it rubs on the wall, with the bit at a depth: lengths of one part, one bore
// and one fluid, straight or in one arc, from the top down.
type rubbed struct {
	missing gap
	bit     float64 // m along hole
	blocks  float64 // N that the hook carries besides
	lengths []rubbedLength
	drag    drag.String
	cased   int // the first length below riser and wellhead
	open    int // the first length in open hole
}

// rubbedLength is what stands where: depths along hole in m, diameters in m. The open water round a string without a
// riser has no bore.
type rubbedLength struct {
	top, bottom float64
	part        *stringPart
	bore        float64
}

// bendPiece is into what lengths in m an arc is cut so that what happens in it is found where it happens.
const bendPiece = 30.0

// rubbedString lays the string of section i along the hole with its bit at a depth, in mud of a density. Arcs are cut into
// pieces of at most a length; zero leaves them whole, which is as right for what the rig feels.
func (e *evaluation) rubbedString(i int, bit, mud, piece float64) rubbed {
	d := &e.drills[i]
	r := rubbed{bit: bit, blocks: e.plan.Rig.BlockWeight.SI, missing: first(d.missing, e.boreGap(i), e.columnGap(i))}
	if r.missing.open() {
		return r
	}
	fluids := e.hangingFull(i, nil, mud)
	cuts := e.rubbedCuts(i, bit, piece, fluids)
	r.lengths = make([]rubbedLength, 0, len(cuts))
	elements := make([]drag.Element, 0, len(cuts))
	lift := e.sections[i].td - bit
	firstBend := e.firstBend()
	upper := e.wayAt(0, firstBend, false)
	part, span := 0, 0
	r.cased, r.open = len(cuts), len(cuts)
	for k := 1; k < len(cuts); k++ {
		top, bottom := cuts[k-1], cuts[k]
		middle := (top + bottom) / 2
		for part < len(d.parts)-1 && d.parts[part].bottom-lift <= middle {
			part++
		}
		for span < len(e.bores[i])-1 && e.bores[i][span].Bottom <= middle {
			span++
		}
		length := rubbedLength{top: top, bottom: bottom, part: &d.parts[part]}
		lower := e.wayAt(bottom, firstBend, false)
		element := drag.Element{Length: bottom - top, Upper: upper, Lower: lower, Radius: e.touch(i, length.part) / 2,
			Weight: layerAt(fluids, e.path.TVD(middle)).perMetre(length.part.mass(), length.part.pipe.ID)}
		if walled := &e.bores[i][span]; walled.Top <= middle && middle <= walled.Bottom {
			length.bore = walled.Diameter
			element.Friction = e.rub(i, walled.Label)
			r.note(walled.Label, len(elements))
		} else {
			element.Unsupported = true
		}
		r.lengths, elements = append(r.lengths, length), append(elements, element)
		upper = lower
		if below := e.wayAt(bottom, firstBend, true); below != lower && bottom < bit { // the path begins with a kink
			r.lengths = append(r.lengths, rubbedLength{top: bottom, bottom: bottom, part: length.part, bore: length.bore})
			element.Length, element.Upper, element.Lower = 0, lower, below
			elements = append(elements, element)
			upper = below
		}
	}
	r.cased, r.open = min(r.cased, len(elements)), min(r.open, len(elements))
	made, err := drag.New(elements)
	if err != nil {
		r.missing = gap{"trajectory.method", err.Error()}
	}
	r.drag = made
	return r
}

// note remembers where casing and open hole begin.
func (r *rubbed) note(label string, k int) {
	switch {
	case label == openHoleLabel:
		r.open, r.cased = min(r.open, k), min(r.cased, k)
	case label == casingLabel:
		r.cased = min(r.cased, k)
	}
}

// rubbedCuts returns the depths between which neither part, bore, fluid nor the way of the hole changes its kind.
func (e *evaluation) rubbedCuts(i int, bit, piece float64, fluids []layer) []float64 {
	d := &e.drills[i]
	bends := e.bends
	cuts := make([]float64, 0, len(d.parts)+len(e.bores[i])+len(bends)+len(fluids)+16)
	cuts = append(cuts, 0, bit)
	add := func(md float64) {
		if md > 0 && md < bit {
			cuts = append(cuts, md)
		}
	}
	lift := e.sections[i].td - bit
	for k := range d.parts {
		add(d.parts[k].top - lift)
	}
	for _, span := range e.bores[i] {
		add(span.Top)
		add(span.Bottom)
	}
	for k := range bends {
		add(bends[k].MD)
		if k == 0 || piece == 0 || bends[k].Dogleg == 0 {
			continue
		}
		from := bends[k-1].MD
		length := bends[k].MD - from
		for n, pieces := 1, math.Ceil(length/piece); n < int(pieces); n++ {
			add(from + length*float64(n)/pieces)
		}
	}
	for k := 1; k < len(fluids); k++ {
		if md, ok := e.path.MDAtTVD(fluids[k].top); ok {
			add(md)
		}
	}
	slices.Sort(cuts)
	return slices.CompactFunc(cuts, func(a, b float64) bool { return math.Abs(a-b) < 1e-6 })
}

// firstBend returns the depth of the path's first station, above which it is vertical; infinite for a vertical path.
func (e *evaluation) firstBend() float64 {
	if len(e.bends) == 0 {
		return math.Inf(1)
	}
	return e.bends[0].MD
}

// wayAt returns the direction of the hole at a depth. At the first station it is that above it, unless that below is asked
// for: there a path may have a kink.
func (e *evaluation) wayAt(md, firstBend float64, below bool) drag.Direction {
	if md < firstBend || md == firstBend && !below {
		return drag.Direction{Azimuth: e.firstAzimuth()}
	}
	at := e.path.At(md)
	return drag.Direction{Inclination: at.Inclination, Azimuth: at.Azimuth}
}

// firstAzimuth returns the azimuth of the path's first station, which the vertical hole above is given as well.
func (e *evaluation) firstAzimuth() float64 {
	if len(e.bends) == 0 {
		return 0
	}
	return e.bends[0].Azimuth
}

// layerAt returns the layer of standing fluids at a true vertical depth.
func layerAt(fluids []layer, tvd float64) *layer {
	for k := range fluids {
		if tvd <= fluids[k].bottom {
			return &fluids[k]
		}
	}
	return &fluids[len(fluids)-1]
}

// touch returns the diameter at which a part touches the wall: tool joints or blades, and bit and opener with what they
// cut.
func (e *evaluation) touch(i int, part *stringPart) float64 {
	switch {
	case !part.row.Cuts():
		return part.pipe.Widest
	case part.pipe.OD > 0:
		return part.pipe.OD
	case part.row.Item == model.ItemBit:
		return e.sections[i].bit
	}
	return e.sections[i].size
}

// rub returns the friction factor of section i in a bore.
func (e *evaluation) rub(i int, label string) float64 {
	f := &e.plan.Sections[i].Drag
	switch label {
	case openHoleLabel:
		return usual(f.Open, usualRubOpen)
	case casingLabel:
		return usual(f.Cased, usualRubCased)
	}
	return usual(f.Riser, usualRubCased)
}

// bitWeight returns the weight on the bit while section i is drilled, N.
func (e *evaluation) bitWeight(i int) (weight float64, missing gap) {
	v := e.plan.Sections[i].StringLoads.BitWeight
	return v.SI, lacks(v, i, "string_loads.bit_weight", "weight on bit")
}

// overpullWanted returns the overpull that section i's string is to bear, N.
func (e *evaluation) overpullWanted(i int) (pull float64, missing gap) {
	v := e.plan.Sections[i].StringLoads.Overpull
	return v.SI, lacks(v, i, "string_loads.overpull", "overpull")
}

// bitTorque returns the torque at the bit of section i in N m, and whether it is worked out: friction on rock over the face
// of the hole, a third of whose diameter is the arm (R. C. Pessier and M. J. Fear, Quantifying common drilling problems with
// mechanical specific energy and a bit-specific coefficient of sliding friction, 1992, SPE 24584, from memory).
func (e *evaluation) bitTorque(i int, weight float64) (torque float64, reckoned bool) {
	if v := e.plan.Sections[i].Drag.BitTorque; v.IsSet() {
		return v.SI, false
	}
	return usualBitRub * weight * e.sections[i].size / 3, true
}

// hookLoads are what the hook carries and the rotary feels with the bit at a depth: N with blocks and top drive, N m.
type hookLoads struct {
	pickUp, slackOff, rotating, torque float64
}

// hookLoads returns the loads of section i's string off bottom with its bit at a depth along hole, the hole full of mud of
// a density: what to expect on a trip.
func (e *evaluation) hookLoads(i int, bit, mud float64) (hookLoads, gap) {
	r := e.rubbedString(i, bit, mud, 0)
	if r.missing.open() {
		return hookLoads{}, r.missing
	}
	var h hookLoads
	h.pickUp, _ = r.drag.Top(drag.PickingUp())
	h.slackOff, _ = r.drag.Top(drag.SlackingOff())
	h.rotating, h.torque = r.drag.Top(drag.Rotating())
	h.pickUp += r.blocks
	h.slackOff += r.blocks
	h.rotating += r.blocks
	return h, gap{}
}

// bends reports whether a part is pipe, whose buckling is judged: stabilisers hold collars and tools, and in an upright hole
// these are meant to stand in compression.
func (p *stringPart) bends() bool {
	return p.row.Item == model.ItemPipe || p.row.Item == model.ItemHeavy
}

// limit returns the compression in N at which the pipe of length k buckles in a wave and in a helix under what it bears at
// a place of it.
func (r *rubbed) limit(k int, inclination float64, at drag.Place) (wave, helix float64) {
	l, element := &r.lengths[k], &r.drag.Elements()[k]
	pipe := &l.part.pipe
	p := drag.Pipe{Weight: element.Weight, Clearance: (l.bore - pipe.Widest) / 2, Stiffness: stiffness(pipe.OD, pipe.ID)}
	if element.Unsupported {
		return p.Limit(0)
	}
	return p.Limit(drag.Holding(element.Weight, inclination, at))
}

// stiffness returns E I of pipe in N m².
func stiffness(od, id float64) float64 {
	return strength.Modulus * math.Pi / 64 * (od*od*od*od - id*id*id*id)
}

// bears returns the tension in N at which the body of a part yields, worn as its class has it, and false where its grade is
// not known or it is no drill pipe.
func (p *stringPart) bears() (tension float64, ok bool) {
	if p.row.Item != model.ItemPipe || p.pipe.Yield == 0 {
		return 0, false
	}
	worn, ok := drillpipe.Worn(p.pipe.OD, p.pipe.ID, classShare(p.row.Class))
	return drillpipe.Tension(worn, p.pipe.ID, p.pipe.Yield), ok
}
