package calc

import (
	"slices"
	"strconv"
	"strings"

	"borewalk/calc/bore"
	"borewalk/calc/steel"
	"borewalk/model"
	"borewalk/model/catalogue"
	"borewalk/model/quantity"
)

// stringPart is a component of the drill string hanging with the bit at TD: depths along hole in m.
type stringPart struct {
	top, bottom float64
	row         *model.StringPart
	number      int // in the plan, bottom up
	pipe        model.Pipe
}

// drillString is the string of a section with the bit at TD, top down.
type drillString struct {
	missing gap
	parts   []stringPart
	bodies  []bore.Body // what of it stands in the hole and is flowed past: all but bit and opener, which have the hole's size
}

// readDrillStrings hangs every section's string and works out the bores that it hangs in.
func (e *evaluation) readDrillStrings() {
	e.drills = make([]drillString, len(e.plan.Sections))
	e.bores = make([]bore.Profile, len(e.plan.Sections))
	for i := range e.drills {
		e.drills[i] = e.readDrillString(i)
		if !e.boreGap(i).open() {
			e.bores[i] = e.outer(i)
		}
	}
}

// readDrillString hangs the string of section i with the bit at TD.
func (e *evaluation) readDrillString(i int) drillString {
	d := drillString{missing: e.sections[i].missing}
	rows := e.plan.Sections[i].String
	if !d.missing.open() && len(rows) == 0 {
		d.missing = gap{model.PathOf(i, "string"), "the section has no drill string: add one on the string page"}
		e.fault(d.missing)
	}
	if d.missing.open() {
		return d
	}
	bottom := e.sections[i].td
	for k := range rows {
		part, missing := e.readStringPart(i, k, &rows[k], bottom)
		if missing.open() {
			e.fault(missing)
			return drillString{missing: missing}
		}
		d.parts = append(d.parts, part)
		bottom = part.top
	}
	slices.Reverse(d.parts)
	d.bodies = make([]bore.Body, 0, len(d.parts))
	for _, p := range d.parts {
		if !p.row.Cuts() {
			d.bodies = append(d.bodies, bore.Body{Top: p.top, Bottom: p.bottom, OD: p.pipe.OD, ID: p.pipe.ID, Label: p.row.Item})
		}
	}
	return d
}

func (e *evaluation) readStringPart(i, k int, row *model.StringPart, bottom float64) (stringPart, gap) {
	path := func(key string) model.Path { return model.PathOf(i, "string["+strconv.Itoa(k+1)+"]."+key) }
	highest := k == len(e.plan.Sections[i].String)-1
	part := stringPart{bottom: bottom, row: row, number: k + 1, pipe: row.Pipe()}
	length, known := partLength(row)
	part.top = bottom - length
	if highest && !known {
		part.top = 0
	}
	pipe := part.pipe
	switch {
	case row.Count.IsSet() && !known:
		return part, gap{path("joint_every"), "joints are counted and the length of one is blank"}
	case !highest && !known:
		return part, gap{path("length"), "only the highest string part may have no length"}
	case part.top < 0 || part.top >= bottom:
		return part, gap{path("length"), "the string is longer than the hole is deep"}
	case highest && row.Cuts():
		return part, gap{model.PathOf(i, "string"), "the string is bit or opener alone: add what it hangs on, up to drill pipe"}
	case highest && part.top > 0:
		return part, gap{path("length"), "the string does not reach the rotary: leave the highest part's length blank"}
	case row.Cuts():
		return part, gap{}
	case !row.Size.IsSet():
		return part, gap{path("size"), "OD of a string part is blank"}
	case pipe.ID == 0:
		return part, gap{path("id"), "this part is not in the catalogue: enter the ID"}
	case pipe.ID >= pipe.OD:
		return part, gap{path("id"), "ID of a string part is not smaller than its OD"}
	}
	return part, gap{}
}

// partLength returns the length of a part in m: as given, else its joints times the length of one; false where neither is.
func partLength(row *model.StringPart) (float64, bool) {
	switch {
	case row.Length.IsSet():
		return row.Length.SI, true
	case row.Count.IsSet() && row.JointEvery.IsSet():
		return row.Count.SI * row.JointEvery.SI, true
	}
	return 0, false
}

// mass returns the mass per length of a part in kg/m: what is entered or published, else the steel of its body. Bits and
// openers without a weight count as none.
func (p *stringPart) mass() float64 {
	if p.pipe.LinearMass > 0 || p.row.Cuts() {
		return p.pipe.LinearMass
	}
	return steel.PlainEnd(p.pipe.OD, p.pipe.ID)
}

// label names a part as a crew would: "drill pipe 5 7/8".
func (p *stringPart) label() string {
	name := p.row.Name
	if name == "" {
		name = p.row.Item
	}
	return name
}

// stringPage adds the drill string's weights, volumes and what it must pass.
func (e *evaluation) stringPage(i int) {
	d := &e.drills[i]
	p := e.page(i, model.TopicString)
	e.weightFigures(i, p, d)
	hung := e.hangString(i, d)
	e.bitWeightFigures(i, p, &hung)
	e.hangingFigures(i, p, &hung)
	e.dragPage(i, p)
	e.pipeFigures(i, p, &hung)
	e.displacementFigures(p, d)
	e.tripFigures(i, p)
	e.spaceFigures(i, p, d)
	e.partFigures(i, p, d, &hung)
	e.stiffnessFigures(i, p, d)
	e.bitLadder(i, p, d)
	e.insideFigures(i, p, d)
}

func (e *evaluation) weightFigures(i int, p *page, d *drillString) {
	h := &e.sections[i]
	p.group = "Weight"
	var air, assembly, assemblyLength float64
	var hung []layer
	lengths := make([]steel.Section, 0, len(d.parts))
	for k := range d.parts {
		part := &d.parts[k]
		weight := part.mass() * (part.bottom - part.top) * gravity
		air += weight
		if part.row.Item != model.ItemPipe {
			assembly += weight
			assemblyLength += part.bottom - part.top
		}
		lengths = append(lengths, e.length(part.top, part.bottom, part.pipe, part.mass()))
	}
	missing := first(d.missing, e.columnGap(i))
	without := d.unweighed()
	if !missing.open() {
		hung = e.hangingFull(i, lengths, e.density(i, h.td))
	}
	buoyed := weight(hung)
	p.put("string.weight.air", "Weight in air", quantity.Force, air, d.missing, func(w *Working) {
		w.Formula = "W = sum of mass per length × length × g"
		for k := range d.parts {
			part := &d.parts[k]
			w.in("m", part.label(), quantity.LinearMass, part.mass())
			w.in("L", "length", quantity.Length, part.bottom-part.top)
		}
		w.Source = "common practice; masses as entered or from the catalogue, with tool joints where published"
	}).Note = without
	p.put("string.weight.buoyed", "Weight in mud", quantity.Force, buoyed, missing, func(w *Working) {
		w.layers(hung)
		if w.Note = "Without friction against the wall."; filled(hung) != "" {
			w.Note += filledNote
		}
	}).Note = e.slanted(i, without)
	p.put("string.hook_load", "Hook load", quantity.Force, buoyed+e.plan.Rig.BlockWeight.SI, missing, func(w *Working) {
		w.Formula = "hook load = weight in mud + blocks and top drive"
		w.in("W", "weight in mud", quantity.Force, buoyed)
		w.in("blocks", "with top drive", quantity.Force, e.plan.Rig.BlockWeight.SI)
		w.Source = "common practice"
		w.Note = "Without friction; makers' ratings and inspection decide what may be pulled."
	}).Note = e.slanted(i, without)
	if rating := e.plan.Rig.HookLoad; !missing.open() && rating.IsSet() {
		load := buoyed + e.plan.Rig.BlockWeight.SI
		e.judge(model.RuleHookLoad, i, rating.SI-load, "Rig's rating over the drill string's hook load", "", 0, model.PathOf(i, "string[1].length"))
	}
	p.put("string.assembly.length", "BHA length", quantity.Length, assemblyLength, d.missing, func(w *Working) {
		w.Formula = "length of everything but drill pipe"
		w.Source = "geometry"
	})
	p.put("string.assembly.weight", "BHA in air", quantity.Force, assembly, d.missing, func(w *Working) {
		w.Formula = "W = sum of mass per length × length × g, drill pipe left out"
		for k := range d.parts {
			if part := &d.parts[k]; part.row.Item != model.ItemPipe {
				w.in("m", part.label(), quantity.LinearMass, part.mass())
				w.in("L", "length", quantity.Length, part.bottom-part.top)
			}
		}
		w.Source = "common practice"
	}).Note = without
}

// slanted adds to a note on a hanging weight that in a hole that leaves the vertical the wall carries part of it.
func (e *evaluation) slanted(i int, note string) string {
	if e.sections[i].missing.open() || e.path.At(e.sections[i].td).Inclination < uprightEnough {
		return note
	}
	if note != "" {
		note = ", " + note
	}
	return "the wall carries the rest" + note
}

// uprightEnough is the inclination in rad below which a hole counts as vertical for what its string weighs.
const uprightEnough = 0.01

// unweighed names the cutting parts whose mass is not entered, as the note "without bit".
func (d *drillString) unweighed() string {
	var names []string
	for k := range d.parts {
		if part := &d.parts[k]; part.mass() == 0 && !slices.Contains(names, part.row.Item) {
			names = append(names, part.row.Item)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "without " + strings.Join(names, " and ")
}

func (e *evaluation) displacementFigures(p *page, d *drillString) {
	p.group = "Volume"
	var inside, open, closed float64
	for k := range d.parts {
		part := &d.parts[k]
		if part.row.Cuts() {
			continue
		}
		length := part.bottom - part.top
		bodyInside := bore.Area(part.pipe.ID) * length
		metal := steel.Displacement(part.mass()) * length
		inside += bodyInside
		open += metal
		closed += metal + bodyInside
	}
	p.put("string.volume.inside", "Inside the string", quantity.Volume, inside, d.missing, func(w *Working) {
		w.Formula = "V = sum of pi/4 × ID² × L"
		for k := range d.parts {
			if part := &d.parts[k]; !part.row.Cuts() {
				w.in(part.label(), "ID", quantity.Diameter, part.pipe.ID)
				w.in("", "length", quantity.Length, part.bottom-part.top)
			}
		}
		w.Source = "geometry; tool joints ignored"
	})
	p.put("string.displacement.open", "Displaced, open", quantity.Volume, open, d.missing, func(w *Working) {
		w.Formula = "V = mass of the string / density of steel"
		w.in("rho", "steel", quantity.Density, steel.Density)
		w.Source = "steel 7850 kg/m³, 489.5 to 490 lb/ft³ in API tables"
		w.Note = "Bit and opener left out."
	})
	p.put("string.displacement.closed", "Displaced, closed", quantity.Volume, closed, d.missing, func(w *Working) {
		w.Formula = "V = open-end displacement + inside volume"
		w.in("open", "displacement", quantity.Volume, open)
		w.in("inside", "volume", quantity.Volume, inside)
		w.Source = "common practice"
	})
}

// partFigures lists the components from the bit up.
func (e *evaluation) partFigures(i int, p *page, d *drillString, hung *hungString) {
	p.group = "Parts, bit up"
	for k := len(d.parts) - 1; k >= 0; k-- {
		part := &d.parts[k]
		n := strconv.Itoa(part.number)
		p.put("string.part."+n+".length", part.label(), quantity.Length, part.bottom-part.top, gap{}, func(w *Working) {
			w.Formula = "length as given; the highest part fills to the rotary"
			w.in("bottom", "of the part", quantity.Length, part.bottom)
			w.in("top", "of the part", quantity.Length, part.top)
			w.Source = "geometry"
		})
		var unknown gap
		if part.mass() == 0 {
			unknown = gap{model.PathOf(i, "string["+n+"].linear_mass"), "its mass is not entered and counts as none"}
		}
		p.also("string.part."+n+".weight", "in air", quantity.Force, part.mass()*(part.bottom-part.top)*gravity, unknown, func(w *Working) {
			w.Formula = "W = mass per length × length × g"
			w.in("m", "mass per length", quantity.LinearMass, part.mass())
			w.in("L", "length", quantity.Length, part.bottom-part.top)
			w.Source = source(part.pipe.Source)
		})
		p.also("string.part."+n+".buoyed", "in mud", quantity.Force, hung.weightOf(k), first(unknown, hung.missing), func(w *Working) {
			w.Formula = "W = sum over fluids of m × fall × g × (1 - fluid / steel)" + filled(hung.fluids)
			w.in("m", "mass per length", quantity.LinearMass, part.mass())
			w.in("fall", "vertical length", quantity.Length, e.path.TVD(part.bottom)-e.path.TVD(part.top))
			if filled(hung.fluids) != "" {
				w.in("bore", "ID of it", quantity.Diameter, part.pipe.ID)
			}
			w.fluids(hung.fluids)
			w.in("steel", "density", quantity.Density, steel.Density)
			w.Source = "buoyancy factor (Bourgoyne et al., Applied Drilling Engineering, ch. 4)"
			w.Note = "Along the hole: in a slant the wall carries the rest."
		})
		if !part.row.Cuts() {
			p.also("string.part."+n+".capacity", "capacity", quantity.Capacity, bore.Area(part.pipe.ID), gap{}, func(w *Working) {
				w.Formula = "capacity = pi/4 × ID²"
				w.in("ID", "inside diameter", quantity.Diameter, part.pipe.ID)
				w.Source = source(part.pipe.Source)
			})
		}
	}
}

// source names where a pipe's properties come from.
func source(keys string) string {
	var words []string
	for _, note := range catalogue.Sources(keys) {
		how := note.How
		if how == "memory" {
			how = "from memory"
		}
		words = append(words, note.What+" ("+how+")")
	}
	if len(words) == 0 {
		return "as entered"
	}
	return "catalogue: " + strings.Join(words, "; ")
}
