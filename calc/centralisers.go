package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/centring"
	"borewalk/model"
	"borewalk/model/quantity"
)

// centred is a length of the string that centralisers hold off the wall, along hole, and where its standoff is least.
type centred struct {
	key, name   string
	top, bottom float64
	spacing     float64
	path        model.Path
	count       int
	least       held
}

// held is the string between two centralisers at a depth along hole.
type held struct {
	md, standoff float64
	side         float64 // N/m
	tension      float64 // N, effective
	kept, sag    float64
	pipe         model.Pipe
	hole         float64
}

// centralisers adds how many centralisers the spacing asks for, where they stand and what standoff they leave, in the open
// hole and in the last string, and judges it.
func (e *evaluation) centralisers(i int, p *page, c *casing) {
	s := &e.plan.Sections[i]
	if s.Method != model.Cemented || c.missing.open() || !s.Centring.Open.IsSet() && !s.Centring.Cased.IsSet() {
		return
	}
	missing := first(e.columnGap(i), e.boreGap(i))
	if len(s.Slurries) > 0 {
		missing = first(missing, lacks(s.Slurries[0].Top, i, "slurry[1].top", "top of the slurry"))
	}
	if s.Centring.Kind == model.RigidBody {
		missing = first(missing, lacks(s.Centring.OD, i, "centralisers.od", "centraliser OD"))
	}
	p.group = "Centralisers"
	str := e.loaded(i)
	for _, l := range e.centredLengths(i, c) {
		if l.bottom <= l.top {
			continue
		}
		short := missing
		if !short.open() {
			l.least, short = e.leastStandoff(i, &str, &l)
		}
		if short.open() {
			e.fault(short)
		}
		e.centredFigures(p, i, &l, short)
		if !short.open() {
			e.judge(model.RuleStandoff, i, l.least.standoff, "Standoff, "+l.name+" hole", "", l.least.md, l.path)
		}
	}
}

// centredLengths returns the lengths that are to be centred: from the foot of the new hole and of the last string up to the
// top of the cement. What the last section left open below its shoe, a few wide metres, is left out.
func (e *evaluation) centredLengths(i int, c *casing) []centred {
	s := &e.plan.Sections[i]
	top := max(c.top, e.datum.Mudline)
	if len(s.Slurries) > 0 && s.Slurries[0].Top.IsSet() {
		top = max(top, s.Slurries[0].Top.SI)
	}
	shoe, _, above := e.lastShoe(i)
	if !above {
		shoe = top
	}
	var list []centred
	add := func(key, name, field string, top, bottom float64, spacing quantity.Value) {
		if !spacing.IsSet() {
			return
		}
		l := centred{key: key, name: name, top: top, bottom: bottom, spacing: spacing.SI, path: model.PathOf(i, field)}
		if room := l.bottom - l.top - l.spacing/2; room >= 0 {
			l.count = 1 + int(room/l.spacing)
		}
		list = append(list, l)
	}
	add("casing.centralisers.open", "open", "centralisers.open", max(shoe, top, e.sections[i].start), c.shoe, s.Centring.Open)
	if above {
		add("casing.centralisers.cased", "cased", "centralisers.cased", top, shoe, s.Centring.Cased)
	}
	return list
}

// leastStandoff looks along a length for the least standoff: at the ends of its parts and of its bores, at the path's
// stations, and evenly between.
func (e *evaluation) leastStandoff(i int, str *loadedString, l *centred) (least held, missing gap) {
	const looks = 10
	least.standoff = math.Inf(1)
	for k := range str.casing.parts {
		places := e.places(str, k, l.top, l.bottom, nil)
		for n := 1; n < looks; n++ {
			if md := l.top + (l.bottom-l.top)*float64(n)/looks; len(places) > 0 && md > places[0] && md < places[len(places)-1] {
				places = append(places, md)
			}
		}
		for _, md := range places {
			for _, span := range e.bores[i] {
				if md < span.Top || md > span.Bottom || span.Bottom <= l.top || span.Top >= l.bottom {
					continue
				}
				at, ok := e.hold(i, str, l, k, md, span)
				if !ok {
					return least, gap{l.path, "the string buckles between centralisers so far apart"}
				}
				if at.standoff < least.standoff {
					least = at
				}
			}
		}
	}
	if math.IsInf(least.standoff, 1) {
		return least, gap{l.path, "no bore is known there"}
	}
	return least, gap{}
}

// hold returns how the string hangs between centralisers at a depth in part k, in a bore.
func (e *evaluation) hold(i int, str *loadedString, l *centred, k int, md float64, span bore.Span) (held, bool) {
	const step = 0.5 // m to either side, for the curvature
	s := &e.plan.Sections[i].Centring
	pipe := str.casing.parts[k].pipe
	up, at, down := e.path.At(md-step), e.path.At(md), e.path.At(md+step)
	h := held{md: md, pipe: pipe, hole: span.Diameter, tension: e.hangs(str, k, md)}
	weight := pipe.LinearMass * gravity * (1 - e.leftInHole(i)/steelDensity)
	h.side = centring.Side(weight, h.tension, at.Inclination, (down.Inclination-up.Inclination)/(2*step), turned(up.Azimuth, down.Azimuth)/(2*step))
	var ok bool
	if h.sag, ok = (centring.Span{Length: l.spacing, OD: pipe.OD, ID: pipe.ID}).Sag(h.side, h.tension); !ok {
		return h, false
	}
	if s.Kind == model.RigidBody {
		h.kept = centring.Rigid(s.OD.SI, pipe.OD, h.hole)
	} else {
		h.kept = centring.Bow(h.side*l.spacing, e.bowForce(i, pipe))
	}
	h.standoff = centring.Standoff(h.kept, h.sag, pipe.OD, h.hole)
	return h, true
}

// bowForce returns the force of a bow centraliser at 67 % standoff in N.
func (e *evaluation) bowForce(i int, pipe model.Pipe) float64 {
	if own := e.plan.Sections[i].Centring.Force; own.IsSet() {
		return own.SI
	}
	return centring.Force(pipe.OD, pipe.LinearMass)
}

// turned returns the change from one azimuth to another in rad, the short way round.
func turned(from, to float64) float64 { return math.Remainder(to-from, 2*math.Pi) }

func (e *evaluation) centredFigures(p *page, i int, l *centred, missing gap) {
	spaced := func(formula string) func(*Working) {
		return func(w *Working) {
			w.Formula = formula
			w.in("top", "along hole", quantity.Length, l.top)
			w.in("foot", "along hole", quantity.Length, l.bottom)
			w.in("s", "spacing", quantity.Length, l.spacing)
			w.Source = "geometry"
		}
	}
	name := "Count, " + l.name
	p.put(l.key, name, quantity.Count, float64(l.count), missing, spaced("n = whole number in (foot - top - s/2) / s, and one"))
	if l.count > 0 {
		lowest := l.bottom - l.spacing/2
		p.also(l.key+".lowest", "lowest at", quantity.Length, lowest, missing, spaced("lowest = foot - s/2"))
		p.also(l.key+".highest", "highest at", quantity.Length, lowest-float64(l.count-1)*l.spacing, missing, spaced("highest = foot - s/2 - (n - 1) × s"))
	}
	why := func(formula string) func(*Working) {
		return func(w *Working) {
			w.Formula = formula
			e.heldWorking(i, w, l)
		}
	}
	p.put(l.key+".standoff", "Standoff, "+l.name, quantity.Ratio, l.least.standoff, missing, why("standoff = kept by the centraliser - sag / clearance, halfway between two"))
	p.also(l.key+".standoff.at", "at", quantity.Length, l.least.md, missing, why("depth along hole at which the standoff is least"))
	p.also(l.key+".standoff.load", "load on each", quantity.Force, l.least.side*l.spacing, missing,
		why("load = s × sqrt((w sin I - T × build)² + (T sin I × turn)²)"))
}

// heldWorking shows the standoff where it is least.
func (e *evaluation) heldWorking(i int, w *Working, l *centred) {
	h := &l.least
	w.in("s", "spacing", quantity.Length, l.spacing)
	w.in("OD", "pipe", quantity.Diameter, h.pipe.OD)
	w.in("ID", "pipe", quantity.Diameter, h.pipe.ID)
	w.in("D", "bore there", quantity.Diameter, h.hole)
	w.in("m", "mass per length", quantity.LinearMass, h.pipe.LinearMass)
	w.in("rho", "fluid in the hole", quantity.Density, e.leftInHole(i))
	w.in("I", "inclination there", quantity.Angle, e.path.At(h.md).Inclination)
	w.in("T", "effective tension there", quantity.Force, h.tension)
	w.in("load", "on each centraliser", quantity.Force, h.side*l.spacing)
	w.in("sag", "halfway between", quantity.Diameter, h.sag)
	w.in("kept", "standoff at the centraliser", quantity.Ratio, h.kept)
	if e.plan.Sections[i].Centring.Kind == model.RigidBody {
		w.in("d", "rigid centraliser", quantity.Diameter, e.plan.Sections[i].Centring.OD.SI)
	} else {
		w.in("F", "bow, at 67 %", quantity.Force, e.bowForce(i, h.pipe))
	}
	w.Source = "API RP 10D-2 / ISO 10427-2, from memory; clamped beam under tension; side load of Johancsik et al. 1984, SPE 11380, from memory"
	w.Note = "String landed in the fluid that it was run in. A bow gives way in a straight line to 67 % at its force; the maker's curve rules."
}
