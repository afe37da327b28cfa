package calc

import (
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/slurry"
	"borewalk/model"
	"borewalk/model/quantity"
)

// plugFigures adds the balanced plugs of a section.
func (e *evaluation) plugFigures(i int) {
	s := &e.plan.Sections[i]
	p := e.page(i, model.TopicCement)
	for k := range s.Plugs {
		p.group = "Plug " + strconv.Itoa(k+1) + ", balanced"
		if name := s.Plugs[k].Name; name != "" {
			p.group += ": " + called(name, "", k, 40)
		}
		e.plugFiguresOf(i, k, p)
	}
}

// plugHole is the hole that a plug is set in, its pipe, and its volume.
type plugHole struct {
	stretches []slurry.Stretch
	plug      slurry.Plug
	balanced  slurry.Balanced
}

// readPlug works out plug k of section i.
func (e *evaluation) readPlug(i, k int) (h plugHole, missing gap) {
	row := &e.plan.Sections[i].Plugs[k]
	path := func(key string) model.Path { return model.PathOf(i, "plug["+strconv.Itoa(k+1)+"]."+key) }
	missing = first(e.boreGap(i), needs(row.Base, path("base"), "base of a plug"), needs(row.Top, path("top"), "top of a plug"))
	od, id := row.PipeOD.SI, row.PipeID.SI
	if !row.PipeOD.IsSet() || !row.PipeID.IsSet() {
		var pipe model.Pipe
		if missing = first(missing, e.drills[i].missing); !missing.open() {
			pipe = e.drills[i].parts[0].pipe
		}
		if !row.PipeOD.IsSet() {
			od = pipe.OD
		}
		if !row.PipeID.IsSet() {
			id = pipe.ID
		}
	}
	profile := e.bores[i]
	if row.In == model.InCasing {
		if missing = first(missing, e.strings[i].missing); !missing.open() && e.strings[i].present {
			profile = e.throughPipe(profile, &e.strings[i])
		}
	}
	switch {
	case missing.open():
		return h, missing
	case id >= od:
		return h, gap{path("pipe_id"), "the pipe's ID is not smaller than its OD"}
	case row.Top.SI >= row.Base.SI:
		return h, gap{path("top"), "the plug's top is not above its base"}
	}
	for _, span := range profile {
		hole := span.Diameter
		if span.Label == openHoleLabel {
			hole = bore.Enlarged(hole, row.Excess.SI)
		}
		if hole <= od {
			return h, gap{path("pipe_od"), "the pipe does not fit the hole"}
		}
		h.stretches = append(h.stretches, slurry.Stretch{Top: span.Top, Bottom: span.Bottom,
			Inside: bore.Area(id), Annulus: bore.Area(hole) - bore.Area(od), Hole: bore.Area(hole)})
	}
	if len(h.stretches) > 0 && h.stretches[0].Top > 0 { // riserless: the pipe reaches up to the rotary through the sea
		top := h.stretches[0]
		h.stretches = append([]slurry.Stretch{{Top: 0, Bottom: top.Top, Inside: top.Inside, Annulus: top.Annulus, Hole: top.Hole}}, h.stretches...)
	}
	volume, err := slurry.PlugVolume(h.stretches, row.Top.SI, row.Base.SI)
	if err == nil {
		h.plug = slurry.Plug{Base: row.Base.SI, Slurry: volume, Ahead: row.Ahead.SI, Under: row.Short.SI}
		h.balanced, err = slurry.Balance(h.stretches, h.plug)
	}
	if err != nil {
		return h, gap{path("base"), err.Error()}
	}
	return h, gap{}
}

func (e *evaluation) plugFiguresOf(i, k int, p *page) {
	row := &e.plan.Sections[i].Plugs[k]
	h, missing := e.readPlug(i, k)
	if missing.open() {
		e.fault(missing)
	}
	key := "cement.plug." + strconv.Itoa(k+1) + "."
	volume := func(suffix, name string, value float64, formula string) {
		p.put(key+suffix, name, quantity.Volume, value, missing, func(w *Working) {
			w.Formula = formula
			for _, s := range h.stretches {
				if s.Bottom > h.balanced.SpacerIn && s.Top < h.plug.Base {
					w.in("inside", "capacity of the pipe", quantity.Capacity, s.Inside)
					w.in("annulus", "capacity round it", quantity.Capacity, s.Annulus)
					w.in("hole", "capacity without pipe", quantity.Capacity, s.Hole)
				}
			}
			w.Source = "Lapeyrouse, Formulas and Calculations, ch. 2, balanced cement plugs; geometry"
			w.Note = "Mixing with the mud and what clings to the pipe are not counted; the excess counts as hole."
		})
		e.pumped(p, key+suffix, value, missing)
	}
	volume("slurry", "Slurry", h.plug.Slurry, "V = hole from base to top, without pipe")
	volume("ahead", "Spacer ahead", h.plug.Ahead, "as given")
	volume("behind", "Spacer behind", h.balanced.Behind, "V = inside of the pipe beside the spacer in the annulus")
	volume("displacement", "Displacement", h.balanced.Displacement, "V = inside of the pipe above the spacer - stop short")
	level := func(suffix, name string, value float64, formula string) {
		p.put(key+suffix, name, quantity.Length, value, missing, func(w *Working) {
			w.Formula = formula
			w.in("V", "slurry", quantity.Volume, h.plug.Slurry)
			w.in("base", "along hole", quantity.Length, h.plug.Base)
			w.Source = "Lapeyrouse, Formulas and Calculations, ch. 2, balanced cement plugs; geometry"
		})
	}
	level("top_in", "Top, pipe in", h.balanced.TopIn, "top = height at which pipe and annulus hold the slurry, above the base")
	level("top_out", "Top, pipe out", h.balanced.TopOut, "top = height at which the hole holds the slurry, above the base")
	level("spacer_out", "Spacer, pipe out", h.balanced.SpacerOut, "top of the spacer, ahead and behind, above the slurry")
	path := func(key string) model.Path { return model.PathOf(i, "plug["+strconv.Itoa(k+1)+"]."+key) }
	dry := first(missing, needs(row.Yield, path("yield"), "yield of a plug"))
	cement := quotient(h.plug.Slurry, row.Yield.SI)
	p.put(key+"dry", "Dry cement", quantity.Mass, cement, dry, func(w *Working) {
		w.Formula = "m = V / yield"
		w.in("V", "slurry", quantity.Volume, h.plug.Slurry)
		w.in("yield", "of the dry cement", quantity.SlurryYield, row.Yield.SI)
		w.Source = "as entered"
	})
	p.also(key+"sacks", "sacks", quantity.Count, slurry.Sacks(cement), dry, func(w *Working) {
		w.Formula = "sacks = m / 94 lb, rounded up"
		w.in("m", "dry cement", quantity.Mass, cement)
		w.Source = "API: a sack is 94 lb"
	})
	p.also(key+"mix", "mix fluid", quantity.Volume, cement*row.MixFluid.SI, first(dry, needs(row.MixFluid, path("mix_fluid"), "mix fluid of a plug")), func(w *Working) {
		w.Formula = "V = m × mix fluid"
		w.in("m", "dry cement", quantity.Mass, cement)
		w.in("mix fluid", "for each mass of cement", quantity.MixWater, row.MixFluid.SI)
		w.Source = "as entered"
	})
}
