package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/tripping"
	"borewalk/model"
	"borewalk/model/quantity"
)

// slugFigures adds the slug that makes the pipe come dry, where one is pumped: its volume by the length to come dry, or the
// other way round.
func (e *evaluation) slugFigures(i int, p *page, t *trip) {
	own, d := &e.plan.Sections[i].Trip, &e.drills[i]
	if !own.SlugDensity.IsSet() {
		return
	}
	byVolume := own.SlugVolume.IsSet()
	missing := first(d.missing, e.columnGap(i))
	if !byVolume {
		missing = first(missing, needs(own.Dry, model.PathOf(i, "trip.dry"), "length of pipe to come dry, or the volume of the slug,"))
	}
	s := tripping.String{Path: e.path, Fluid: e.density(i, e.sections[i].td), Slug: own.SlugDensity.SI}
	var at tripping.Settled
	if !missing.open() {
		s.Inside = bore.Inside(d.bodies, 0, e.sections[i].td)
		var ok bool
		if byVolume {
			at, ok = s.Dry(own.SlugVolume.SI)
		} else {
			at, ok = s.Volume(own.Dry.SI)
		}
		switch {
		case s.Slug <= s.Fluid:
			missing = gap{model.PathOf(i, "trip.slug_density"), "the slug is no heavier than the mud"}
		case !ok:
			missing = gap{model.PathOf(i, "trip.slug_density"), "the slug is longer than the string: take a heavier one"}
		}
		if missing.open() {
			e.note(i, Caution, missing)
		}
	}
	why := func(w *Working) {
		w.Formula = "mud × dry = (slug - mud) × height, heights along the vertical; V = sum of pi/4 × ID² × L between dry and foot"
		w.in("mud", "in the hole", quantity.Density, s.Fluid)
		w.in("slug", "density", quantity.Density, s.Slug)
		w.in("dry", "TVD of the level", quantity.Length, e.path.TVD(at.Dry))
		w.in("height", "slug along the vertical", quantity.Length, e.path.TVD(at.Foot)-e.path.TVD(at.Dry))
		w.in("foot", "of the slug, along hole", quantity.Length, at.Foot)
		for _, x := range s.Inside {
			if x.Top < at.Foot {
				w.in("ID", "of the string", quantity.Diameter, x.Outer)
				w.in("to", "along hole", quantity.Length, x.Bottom)
			}
		}
		w.Source = "Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover, slug calculations (from memory); balance of two columns"
		w.Note = "Annulus full and clean; tool joints ignored. Not yet settled, the slug draws more mud out than it will."
	}
	p.group = "Trip: slug"
	p.put("trip.slug.volume", "Slug", quantity.Volume, at.Volume, missing, why)
	e.pumped(p, "trip.slug.volume", at.Volume, missing)
	p.also("trip.slug.foot", "down to", quantity.Length, at.Foot, missing, why)
	p.put("trip.slug.dry", "Dry pipe", quantity.Length, at.Dry, missing, why)
	p.also("trip.slug.dry.stands", "stands", quantity.Count, math.Floor(at.Dry/t.stand+1e-9), first(missing, t.missing), func(w *Working) {
		w.Formula = "stands = dry / stand, rounded down"
		w.in("dry", "along hole", quantity.Length, at.Dry)
		w.in("stand", "length", quantity.Length, t.stand)
		w.Source = "geometry"
	})
	gain := s.Gain(at)
	p.put("trip.slug.gain", "Comes back more", quantity.Volume, gain, missing, func(w *Working) {
		w.Formula = "gain = sum of pi/4 × ID² × L down to the level"
		w.in("dry", "along hole", quantity.Length, at.Dry)
		for _, x := range bore.Inside(d.bodies, 0, at.Dry) {
			w.in("ID", "of the string", quantity.Diameter, x.Outer)
			w.in("L", "length", quantity.Length, x.Bottom-x.Top)
		}
		w.Source = "Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover, slug calculations (from memory)"
		w.Note = "On top of the slug and of what is pumped behind it, while it falls. What keeps coming after that is no slug: flow check."
	})
}
