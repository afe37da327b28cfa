package calc

import (
	"borewalk/calc/drag"
	"borewalk/calc/strength"
	"borewalk/model"
	"borewalk/model/quantity"
)

// dragPage adds what friction makes of the drill string's weight at TD, and what was read against it.
func (e *evaluation) dragPage(i int, p *page) {
	d := e.draggedAtTD(i)
	p.group = "Hook load at TD"
	e.hookFigures(i, p, &d)
	e.overpullFigures(i, p, &d)
	p.group = "Torque at TD"
	e.torqueFigures(i, p, &d)
	p.group = "Side force of a joint"
	e.sideFigures(i, p, &d)
	p.group = "Buckling of pipe"
	e.bucklingFigures(i, p, &d)
	p.group = "Drag readings"
	e.dragReadingFigures(i, p)
}

// hookFigures adds the hook load of every operation, and the drag of those that move the string along the hole.
func (e *evaluation) hookFigures(i int, p *page, d *dragged) {
	still, _ := d.top(rotating)
	for m := range d.motions {
		hook, _ := d.top(m)
		missing := d.gap(m)
		p.put(d.motions[m].key, d.motions[m].name, quantity.Force, hook, missing, func(w *Working) { e.dragWorking(w, i, m) })
		if m != pickingUp && m != slackingOff {
			continue
		}
		p.also(d.motions[m].key+".drag", "drag", quantity.Force, hook-still, missing, func(w *Working) {
			w.Formula = "drag = hook load less that of rotating off bottom, in which friction only turns"
			w.in("H", "hook load", quantity.Force, hook)
			w.in("H0", "rotating off bottom", quantity.Force, still)
			w.Source = dragSource
		})
	}
	if !d.missing.open() {
		slack, _ := d.top(slackingOff)
		e.judge(model.RuleGoesDown, i, slack-d.blocks, "String's own weight left while slacking off", "", 0, model.PathOf(i, "drag.open"))
	}
}

const (
	dragSource = "soft string: Johancsik, Friesen and Dawson 1984 (SPE 11380), Sheppard et al. 1987, from memory"
	dragNote   = "Effective tension. Left out: stiff collars in bends, flow, and the kinks of a drilled hole that a planned path lacks: " +
		"readings say what the hole is like."
)

// dragWorking shows the sum along the string, from the bit up.
func (e *evaluation) dragWorking(w *Working, i, m int) {
	fluids := e.hangingFull(i, nil, e.density(i, e.sections[i].td))
	w.fluids(fluids)
	e.dragLengths(w, i, m, func(k int, r *rubbed, load *drag.Load) {
		w.in("T", "at its top", quantity.Force, load.Upper.Tension)
	})
	w.Formula = "up the string dT = w ds cos I + axial × mu × N ds, N = | w across the hole - T × bend | as vectors, w = m g; hook load = T + blocks"
	w.in("blocks", "with top drive", quantity.Force, e.plan.Rig.BlockWeight.SI)
	if w.Source, w.Note = dragSource, dragNote; filled(fluids) != "" {
		w.Formula += "; m with what the mud inside weighs over the fluid outside"
		w.Note += filledNote
	}
}

// torqueWorking shows the torque along the string, from the bit up.
func (e *evaluation) torqueWorking(w *Working, i, m int) {
	if m == drilling {
		weight, _ := e.bitWeight(i)
		torque, reckoned := e.bitTorque(i, weight)
		w.in("bit", "torque at the bit", quantity.Torque, torque)
		if reckoned {
			w.in("WOB", "weight on bit", quantity.Force, weight)
			w.in("D", "hole", quantity.Diameter, e.sections[i].size)
		}
	}
	e.dragLengths(w, i, m, func(k int, r *rubbed, load *drag.Load) {
		w.in("D", "at which it touches", quantity.Diameter, 2*r.drag.Elements()[k].Radius)
		w.in("T", "at its top", quantity.Force, load.Upper.Tension)
		w.in("M", "at its top", quantity.Torque, load.Torque)
	})
	w.Formula = "M = bit + sum of mu × N × D/2 ds, N = | w across the hole - T × bend | as vectors, w = m g; bit = 0.5 × WOB × D/3 where it is not entered"
	w.Source = dragSource + "; bit: Pessier and Fear 1992 (SPE 24584), from memory"
	w.Note = dragNote
}

// dragLengths shows the lengths of the string, from the bit up, each with what an operation makes of it.
func (e *evaluation) dragLengths(w *Working, i, m int, then func(int, *rubbed, *drag.Load)) {
	td := e.sections[i].td
	r := e.rubbedString(i, td, e.density(i, td), 0)
	motion := e.motions(i)[m]
	loads := r.drag.Loads(nil, motion.op)
	w.in("axial", "1 up, -1 down, 0 turned", quantity.Number, motion.op.Axial)
	w.in("WOB", "at the lower end", quantity.Force, motion.op.BitWeight)
	for k := len(loads) - 1; k >= 0; k-- {
		element := &r.drag.Elements()[k]
		w.in("L", r.lengths[k].part.label(), quantity.Length, element.Length)
		w.in("m", "buoyed", quantity.LinearMass, element.Weight/gravity)
		w.in("I", "inclination", quantity.Angle, element.Lower.Inclination)
		if element.Upper != element.Lower {
			w.in("I", "at its top", quantity.Angle, element.Upper.Inclination)
			w.in("A", "azimuth", quantity.Angle, element.Lower.Azimuth)
			w.in("A", "at its top", quantity.Angle, element.Upper.Azimuth)
		}
		if !element.Unsupported {
			w.in("mu", "friction factor", quantity.Number, element.Friction)
		}
		then(k, &r, &loads[k])
	}
}

// overpullFigures adds what rig and pipe leave over the pick-up weight.
func (e *evaluation) overpullFigures(i int, p *page, d *dragged) {
	rating := e.plan.Rig.HookLoad
	hook, _ := d.top(pickingUp)
	p.put("drag.rating_left", "Rating left", quantity.Force, rating.SI-hook, first(d.missing, needs(rating, "rig.hook_load", "hook load rating")), func(w *Working) {
		w.Formula = "left = rating - hook load picking up"
		w.in("rating", "of the rig", quantity.Force, rating.SI)
		w.in("H", "hook load picking up", quantity.Force, hook)
		w.Source = dragSource
	})
	if !d.missing.open() && rating.IsSet() {
		e.judge(model.RulePickUpRating, i, rating.SI-hook, "Rig's rating over the hook load picking up", "", 0, model.PathOf(i, "drag.open"))
	}
	share, _ := e.plan.Limit(model.Rules()[model.RulePipeTension])
	o := d.overpull(rating.SI, share.SI)
	var unknown gap
	if !o.known {
		unknown = gap{"rig.hook_load", "neither the rig's rating nor the grade of a drill pipe is known"}
	}
	p.put("drag.overpull", "Overpull with drag", quantity.Force, o.left, first(d.missing, unknown), func(w *Working) {
		w.Formula = "left = least of rating - hook load, and share × tension of the class - T at the top of each part of drill pipe, while picking up; " +
			"tension = pi/4 × (od² - ID²) × Y, od = ID + wall × (OD - ID)"
		w.in("limit", o.name, quantity.Force, o.limit)
		if o.part != nil {
			w.in("share", "of the class's yield", quantity.Ratio, share.SI)
			w.in("OD", "new", quantity.Diameter, o.part.pipe.OD)
			w.in("ID", "body", quantity.Diameter, o.part.pipe.ID)
			w.in("wall", "left in the class", quantity.Ratio, classShare(o.part.row.Class))
			w.in("Y", "yield strength", quantity.Stress, o.part.pipe.Yield)
		}
		w.in("load", "there, picking up", quantity.Force, o.load)
		w.Source = dragSource + "; API RP 7G, margin of overpull, wall worn evenly outside, from memory"
		w.Note = "Bodies only: tool joints, bending and wear beyond the class are not counted. Inspection and makers decide what may be pulled."
	}).Note = o.name
	if wanted, missing := e.overpullWanted(i); o.known && !missing.open() {
		e.judge(model.RulePickUpOverpull, i, o.left-wanted, "Overpull left with drag over the one planned", o.name, 0, model.PathOf(i, "string_loads.overpull"))
	}
}

// torqueFigures adds the torque at the rotary, and what the top drive leaves over it.
func (e *evaluation) torqueFigures(i int, p *page, d *dragged) {
	note := ""
	if e.path.IsVertical() {
		note = "path upright"
	}
	_, off := d.top(rotating)
	_, torque := d.top(drilling)
	missing := d.gap(drilling)
	p.put("drag.torque.off_bottom", "Off bottom", quantity.Torque, off, d.missing, func(w *Working) { e.torqueWorking(w, i, rotating) }).Note = note
	p.put("drag.torque.drilling", "Drilling", quantity.Torque, torque, missing, func(w *Working) { e.torqueWorking(w, i, drilling) })
	limit := e.plan.Rig.TopDriveTorque
	if !limit.IsSet() {
		return
	}
	p.put("drag.torque.left", "Top drive leaves", quantity.Torque, limit.SI-torque, missing, func(w *Working) {
		w.Formula = "left = torque of the top drive - torque while drilling"
		w.in("limit", "top drive", quantity.Torque, limit.SI)
		w.in("M", "while drilling", quantity.Torque, torque)
		w.Source = dragSource
		w.Note = "The make-up torque of the connections may be the lesser limit, and is not compared here."
	})
	if !missing.open() {
		e.judge(model.RuleTopDriveTorque, i, limit.SI-torque, "Top drive over the torque while drilling", "", 0, model.PathOf(i, "drag.open"))
	}
}

// sideFigures adds where pipe is pressed to the wall hardest.
func (e *evaluation) sideFigures(i int, p *page, d *dragged) {
	turned, pulled := d.pressed(rotating), d.pressed(pickingUp)
	why := func(m int, at *pressed) func(*Working) {
		return func(w *Working) {
			w.Formula = "N = | w across the hole - T × bend | as vectors × length of a joint, the greatest along drill pipe and heavy-weight"
			l, load := &d.lengths[at.length], &d.loads[m][at.length]
			w.in("m", "buoyed, "+l.part.label(), quantity.LinearMass, d.drag.Elements()[at.length].Weight/gravity)
			way := e.path.At(at.md)
			w.in("I", "inclination", quantity.Angle, way.Inclination)
			w.in("bend", "of the path", quantity.Dogleg, way.Dogleg)
			w.in("T", "at the top of its length", quantity.Force, load.Upper.Tension)
			w.in("T", "at its foot", quantity.Force, load.Lower.Tension)
			w.in("joint", "length", quantity.Length, l.part.jointEvery())
			w.Source, w.Note = dragSource, "Wears tool joints and casing where pipe turns."
		}
	}
	line := func(key, name string, m int, at *pressed) {
		f := p.put(key, name, quantity.Force, at.force, d.missing, why(m, at))
		if !d.missing.open() && !(at.force > 0) {
			f.Note = "nothing is pressed" // and so there is no place
			return
		}
		p.also(key+".at", "at", quantity.Length, at.md, d.missing, why(m, at))
	}
	line("drag.side", "Rotating", rotating, &turned)
	line("drag.side.pick_up", "Picking up", pickingUp, &pulled)
	if !d.missing.open() && turned.md > 0 {
		e.judge(model.RuleSideForce, i, turned.force, "Force of a joint on the wall while rotating", d.lengths[turned.length].part.label(), turned.md, "trajectory.method")
	}
}

// bucklingFigures adds where pipe comes nearest to buckling and what is beyond the limits.
func (e *evaluation) bucklingFigures(i int, p *page, d *dragged) {
	b := d.buckles()
	missing := d.missing
	if !missing.open() && !b.looked {
		missing = gap{model.PathOf(i, "string"), "there is neither drill pipe nor heavy-weight"}
	}
	why := func(w *Working) {
		l, element := &d.lengths[b.length], &d.drag.Elements()[b.length]
		w.Formula = "left = limit + T; limit 2 sqrt(E I w sin I / r), at least 1.94 cbrt(E I w²); helix sqrt(2) times that, at least 5.55 cbrt; w = m g"
		w.in("E", "steel", quantity.Stress, strength.Modulus)
		w.in("OD", l.part.label(), quantity.Diameter, l.part.pipe.OD)
		w.in("ID", "bore", quantity.Diameter, l.part.pipe.ID)
		w.in("m", "buoyed", quantity.LinearMass, element.Weight/gravity)
		w.in("I", "inclination", quantity.Angle, e.path.At(b.md).Inclination)
		w.in("r", "tool joint to wall", quantity.Diameter, (l.bore-l.part.pipe.Widest)/2)
		w.in("limit", "of the wave", quantity.Force, b.limit)
		w.in("T", "effective tension", quantity.Force, b.load)
		w.Source = "Dawson and Paslay 1984 (SPE 11167), Lubinski 1950, Chen et al. 1990, Wu et al. 1993, from memory"
		w.Note = "Drill pipe and heavy-weight, slacking off, drilling or sliding; collars and tools, which stabilisers hold, are left out. " +
			"A build holds pipe better than counted; in a drop what lifts it off is taken away."
	}
	note := ""
	if b.looked {
		note = d.lengths[b.length].part.label() + ", " + d.motions[b.motion].words
	}
	p.put("drag.buckling", "Margin", quantity.Force, b.left, missing, why).Note = note
	p.also("drag.buckling.at", "at", quantity.Length, b.md, missing, why)
	p.put("drag.beyond", "Beyond the limit", quantity.Length, b.wave, missing, why)
	p.put("drag.beyond.helix", "As a helix", quantity.Length, b.helix, missing, why)
	if !missing.open() {
		e.judge(model.RuleBuckling, i, b.left, "Compression left to buckling, "+d.motions[b.motion].words, d.lengths[b.length].part.label(), b.md,
			model.PathOf(i, "string_loads.bit_weight"))
	}
}
