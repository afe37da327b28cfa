package calc

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/trajectory"
	"borewalk/model"
	"borewalk/model/quantity"
)

// holePage adds the depths and volumes of a section's hole, and judges the order of depths and the rathole.
func (e *evaluation) holePage(i int) {
	e.depthFigures(i)
	e.newHoleFigures(i)
	e.formationFigures(i)
	e.judgeDepths(i)
}

func (e *evaluation) depthFigures(i int) {
	p := e.page(i, model.TopicHole)
	h, c, s := &e.sections[i], &e.strings[i], &e.given.Sections[i]
	p.group = "Depths"
	e.depth(p, "hole.start", "Section starts", h.start, h.missing, func(w *Working) {
		w.Formula = "start = TD of the last section; the mudline for the first"
		w.Source = "geometry"
	})
	e.depth(p, "hole.td", "Hole TD", h.td, h.missing, func(w *Working) {
		w.Formula = "TD as given"
		switch {
		case s.Built.TD.IsSet():
			w.Formula = "TD as drilled"
		case s.DepthBy == model.ByShoe && s.Completion != model.OpenHole:
			w.Formula = "TD = shoe + rathole + opener behind bit"
			w.in("shoe", "given", quantity.Length, s.Shoe.SI)
			w.in("rathole", "full size", quantity.Length, s.Rathole.SI)
			w.in("behind", "opener behind bit", quantity.Length, h.td-h.opened)
		}
		w.Source = "geometry"
	})
	if h.pilot() {
		e.depth(p, "hole.opened", "Opened to", h.opened, h.missing, func(w *Working) {
			w.Formula = "opened = TD - opener behind bit"
			w.in("TD", "bit", quantity.Length, h.td)
			w.in("behind", "opener behind bit", quantity.Length, h.td-h.opened)
			w.Source = "geometry"
		})
	}
	if c.present {
		e.shoeFigures(i, p)
	}
	p.put("hole.inclination", "Inclination at TD", quantity.Angle, e.path.At(h.td).Inclination, first(h.missing, e.pathGap), func(w *Working) {
		e.onPath(w, "inclination", h.td)
	})
}

// shoeFigures adds the shoe and the rathole below it.
func (e *evaluation) shoeFigures(i int, p *page) {
	h, c := &e.sections[i], &e.strings[i]
	e.shoeDepth(i, p, "hole.shoe")
	p.put("hole.rathole", "Rathole to bit", quantity.Length, h.td-c.shoe, c.noShoe, func(w *Working) {
		w.Formula = "rathole to the bit = TD - shoe"
		w.in("TD", "bit", quantity.Length, h.td)
		w.in("shoe", "casing", quantity.Length, c.shoe)
		w.Source = "geometry"
		w.Note = "Full-size rathole and the pilot below it together."
	})
}

// shoeDepth adds the shoe, on the page of the hole or of the string.
func (e *evaluation) shoeDepth(i int, p *page, key string) {
	c := &e.strings[i]
	e.depth(p, key, "Shoe", c.shoe, c.noShoe, func(w *Working) {
		w.Formula = "shoe = opened depth - rathole"
		if e.plan.Sections[i].Built.Shoe.IsSet() {
			w.Formula = "shoe as set; the rathole is what is open below it"
		}
		w.in("opened", "full-size hole to", quantity.Length, e.sections[i].opened)
		w.in("rathole", "full size", quantity.Length, e.plan.Sections[i].Rathole.SI)
		w.Source = "geometry"
	})
}

// depth adds a depth along hole, with its true vertical depth from RKB, below MSL and below mudline on the same line.
func (e *evaluation) depth(p *page, key, name string, md float64, missing gap, why func(*Working)) {
	missing = first(missing, e.pathGap)
	tvd := 0.0
	if !missing.open() {
		tvd = e.path.TVD(md)
	}
	p.put(key, name, quantity.Length, md, missing, why)
	p.also(key+".tvd", "TVD", quantity.Length, tvd, missing, func(w *Working) { e.onPath(w, "TVD", md) })
	column := func(suffix, column string, value float64, formula, symbol, what string, from float64) {
		p.also(key+suffix, column, quantity.Length, value, missing, func(w *Working) {
			w.Formula = formula
			w.in("TVD", "from RKB", quantity.Length, tvd)
			w.in(symbol, what, quantity.Length, from)
			w.Source = "geometry"
		})
	}
	column(".tvdss", "TVDSS", tvd-e.datum.MSL, "TVDSS = TVD - air gap", "air gap", "rotary above MSL", e.datum.MSL)
	column(".bml", "below ML", tvd-e.datum.Mudline, "below mudline = TVD - mudline", "mudline", "from RKB", e.datum.Mudline)
}

// onPath shows between which stations of the well path a depth along hole lies.
func (e *evaluation) onPath(w *Working, what string, md float64) {
	w.Source = "minimum curvature (Taylor and Mason 1972, SPE 3362)"
	if e.path.IsVertical() {
		w.Formula = what + " on a vertical path: TVD = MD, inclination 0"
		w.in("MD", "along hole", quantity.Length, md)
		return
	}
	w.Formula = what + " on the arc between the stations above and below, straight beyond the last"
	w.in("MD", "along hole", quantity.Length, md)
	stations := e.path.Stations()
	below, met := slices.BinarySearchFunc(stations, md, func(p trajectory.Point, md float64) int { return cmp.Compare(p.MD, md) })
	show := func(row string, p trajectory.Point) {
		w.in("MD "+row, "station", quantity.Length, p.MD)
		w.in("TVD "+row, "station", quantity.Length, p.TVD)
		w.in("I "+row, "inclination", quantity.Angle, p.Inclination)
		w.in("A "+row, "azimuth", quantity.Angle, p.Azimuth)
	}
	if below > 0 && !met {
		show("1", stations[below-1])
	}
	if below < len(stations) {
		show("2", stations[below])
	}
}

func (e *evaluation) newHoleFigures(i int) {
	p := e.page(i, model.TopicHole)
	h := &e.sections[i]
	p.group = "New hole"
	p.put("hole.length", "New hole", quantity.Length, h.td-h.start, h.missing, func(w *Working) {
		w.Formula = "length = TD - start"
		w.in("TD", "bit", quantity.Length, h.td)
		w.in("start", "section", quantity.Length, h.start)
		w.Source = "geometry"
	})
	full, pilot := h.opened-h.start, h.td-h.opened
	gauge := bore.Area(h.size)*full + bore.Area(h.bit)*pilot
	p.put("hole.volume.gauge", "Volume, gauge", quantity.Volume, gauge, h.missing, func(w *Working) {
		w.Formula = "V = pi/4 × (D² × L + d² × l)"
		w.in("D", "full size", quantity.Diameter, h.size)
		w.in("L", "full-size length", quantity.Length, full)
		w.in("d", "pilot", quantity.Diameter, h.bit)
		w.in("l", "pilot length", quantity.Length, pilot)
		w.Source = "geometry"
	})
	var washed []bore.Interval
	if !h.missing.open() {
		washed = bore.Intervals(e.openHole(i, h.start, h.td), nil, h.start, h.td)
	}
	p.put("hole.volume", "Volume, washed out", quantity.Volume, bore.Volume(washed), h.missing, func(w *Working) {
		w.Formula = "V = sum of pi/4 × D² × L"
		w.intervals(washed)
		w.Source = "geometry"
		w.Note = "D as the caliper has it, else the gauge hole enlarged by the washout."
	})
	p.put("hole.washout", "Washout in all", quantity.Ratio, bore.Volume(washed)/gauge-1, h.missing, func(w *Working) {
		w.Formula = "washout = volume / gauge volume - 1"
		w.in("V", "washed out", quantity.Volume, bore.Volume(washed))
		w.in("gauge", "volume", quantity.Volume, gauge)
		w.Source = "geometry"
	})
	p.put("hole.capacity", "Capacity, gauge", quantity.Capacity, bore.Area(h.size), h.missing, func(w *Working) {
		w.Formula = "capacity = pi/4 × D²"
		w.in("D", "full size", quantity.Diameter, h.size)
		w.Source = "geometry"
	})
}

// judgeDepths compares the section's depths with each other and with the rules for the rathole.
func (e *evaluation) judgeDepths(i int) {
	h, c, s := &e.sections[i], &e.strings[i], &e.plan.Sections[i]
	if h.missing.open() {
		return
	}
	if e.hasHPHousing(i) {
		on := 0.0
		if h.rig {
			on = 1
		}
		e.judge(model.RuleUSBOP, i, on, "BOP stacks on, below the surface string", "", h.start, model.PathOf(i, "returns"))
	}
	if !c.present || c.noShoe.open() {
		return
	}
	if shoe, _, ok := e.lastShoe(i); ok {
		e.judge(model.RuleDepthOrder, i, c.shoe-shoe, "Shoe below the last shoe", "", c.shoe, e.depthField(i))
	}
	rathole := s.Rathole.SI
	if s.Method == model.Cemented {
		e.judge(model.RuleRatholeLeast, i, rathole, "Rathole, full size", "", c.shoe, model.PathOf(i, "rathole"))
		e.judge(model.RuleRatholeMost, i, rathole, "Rathole, full size", "", c.shoe, model.PathOf(i, "rathole"))
	}
}

// hasHPHousing reports whether the string with the high-pressure housing is set above section i.
func (e *evaluation) hasHPHousing(i int) bool {
	for j := range i {
		if s := &e.plan.Sections[j]; s.Completion == model.WithCasing && s.Hung == model.InHPHousing {
			return true
		}
	}
	return false
}

// formationFigures lists the formations that the section drills, by the depth along hole at which each is met, with its
// hazards as the note.
func (e *evaluation) formationFigures(i int) {
	p, h := e.page(i, model.TopicHole), &e.sections[i]
	if h.missing.open() || e.pathGap.open() {
		return
	}
	p.group = "Formations"
	top, bottom := e.tvdRange(h.start, h.td)
	for k := range e.plan.Formations {
		f := &e.plan.Formations[k]
		tvd := e.toRKB(f.Top.SI)
		if f.Top.IsSet() && tvd < e.datum.Mudline-nearSeabed {
			e.note(-1, Caution, gap{formationPath(k, "top"), "a formation begins above the seabed: did it stay when the seabed moved?"})
		}
		next := math.Inf(1)
		if k+1 < len(e.plan.Formations) {
			next = e.toRKB(e.plan.Formations[k+1].Top.SI)
		}
		if missing := needs(f.Top, formationPath(k, "top"), "a formation's top"); missing.open() {
			e.fault(missing)
			continue
		}
		if tvd >= bottom || next <= top {
			continue
		}
		met, ok := e.path.MDAtTVD(tvd)
		var missing gap
		if !ok {
			missing = gap{formationPath(k, "top"), "the well path does not reach it"}
		}
		key := "hole.formation." + strconv.Itoa(k+1)
		why := func(w *Working) {
			e.onPath(w, "MD where TVD is the formation's top", met)
			w.in("TVD", "formation's top", quantity.Length, tvd)
		}
		name := f.Name
		if name == "" {
			name = "formation " + strconv.Itoa(k+1)
		}
		p.put(key, name, quantity.Length, met, missing, why).Note = f.Hazard
		p.also(key+".tvd", "TVD", quantity.Length, tvd, missing, why)
	}
}

func formationPath(k int, key string) model.Path {
	return model.Path("formation[" + strconv.Itoa(k+1) + "]." + key)
}
