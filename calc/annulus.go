package calc

import (
	"strconv"

	"borewalk/calc/bore"
	"borewalk/model/quantity"
)

// annulusFigures lists the annulus interval by interval, from the top down, with length and capacity.
func (e *evaluation) annulusFigures(p *page, annuli []bore.Interval, missing gap) {
	p.group = "Annulus, top down"
	if missing.open() {
		return
	}
	n := 0
	for _, a := range annuli {
		if a.Volume() == 0 {
			continue
		}
		n++
		e.intervalFigures(p, "volume.annulus."+strconv.Itoa(n), a)
	}
}

// intervalFigures adds one line for an interval of annulus.
func (e *evaluation) intervalFigures(p *page, key string, a bore.Interval) {
	name := a.OuterLabel
	if a.InnerLabel != "" {
		name += ", " + a.InnerLabel
	}
	p.put(key, name, quantity.Volume, a.Volume(), gap{}, func(w *Working) {
		w.Formula = "V = pi/4 × (D² - d²) × L"
		w.in("D", "bore, washed out", quantity.Diameter, a.Outer)
		w.in("d", "outside of the string", quantity.Diameter, a.Inner)
		w.in("L", "along hole", quantity.Length, a.Length())
		w.Source = "geometry"
	})
	p.also(key+".top", "from", quantity.Length, a.Top, gap{}, func(w *Working) {
		w.Formula = "top of the interval, along hole"
		w.Source = "geometry"
	})
	p.also(key+".bottom", "to", quantity.Length, a.Bottom, gap{}, func(w *Working) {
		w.Formula = "bottom of the interval, along hole"
		w.Source = "geometry"
	})
	p.also(key+".capacity", "capacity", quantity.Capacity, a.Capacity(), gap{}, func(w *Working) {
		w.Formula = "capacity = pi/4 × (D² - d²)"
		w.in("D", "bore, washed out", quantity.Diameter, a.Outer)
		w.in("d", "outside of the string", quantity.Diameter, a.Inner)
		w.Source = "geometry"
	})
}

// intervals adds the terms of a volume that is a sum over intervals: diameters, length and volume of each.
func (w *Working) intervals(list []bore.Interval) {
	for _, a := range list {
		w.in("D", a.OuterLabel, quantity.Diameter, a.Outer)
		if a.Inner > 0 {
			w.in("d", a.InnerLabel, quantity.Diameter, a.Inner)
		}
		w.in("L", "along hole", quantity.Length, a.Length())
		w.in("V", "of this length", quantity.Volume, a.Volume())
	}
}
