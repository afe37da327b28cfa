package calc

import (
	"math"
	"slices"

	"borewalk/calc/strength"
)

// strain is a load on a string at one depth, with what withstands it there.
type strain struct {
	part    int
	md, tvd float64
	load    strength.Load
	acts    float64 // pressure in Pa or force in N that acts in the case's way; below zero where it does not load the pipe
	rating  float64 // the same, that the part withstands there
	factor  float64 // rating over load; 0 where nothing is loaded in this way
	by      strength.Part
	regime  strength.Regime
	hanging float64 // effective tension in N
}

// loaded reports whether anything acts.
func (s *strain) loaded() bool { return s.factor > 0 }

// worse reports whether s is nearer to failure than another: by its factor, and by its load where neither is loaded.
func (s *strain) worse(than *strain) bool {
	switch {
	case s.loaded() && than.loaded():
		return s.factor < than.factor
	case s.loaded() != than.loaded():
		return s.loaded()
	}
	return s.acts > than.acts
}

// triaxial is the highest von Mises stress of a case against the yield there.
type triaxial struct {
	name, words string
	md, tvd     float64
	stress      float64
	yield       float64
	factor      float64 // 0 where nothing is known
	load        strength.Load
	place       strength.Place
	part        int
	hole        int
}

// pieces is into how many pieces a part is cut, in a hole that climbs, so that its deepest place is not missed.
const pieces = 8

// places returns the depths along hole between two depths in part k at which a load may be worst: ends, changes of fluid or
// of pore pressure, and of dogleg. Between them load and rating run in straight lines on true vertical depth.
func (e *evaluation) places(s *loadedString, k int, top, bottom float64, breaks []float64) []float64 {
	part := &s.casing.parts[k]
	top, bottom = max(top, part.top), min(bottom, part.bottom)
	if top >= bottom {
		return nil
	}
	list := append(make([]float64, 0, 16), top, bottom)
	for _, tvd := range breaks {
		if md, ok := e.path.MDAtTVD(tvd); ok && md > top && md < bottom {
			list = append(list, md)
		}
	}
	for _, md := range s.cuts {
		if md > top && md < bottom {
			list = append(list, md)
		}
	}
	if !e.path.IsVertical() && e.path.At(bottom).Inclination > math.Pi/2 {
		for n := 1; n < pieces; n++ {
			list = append(list, top+(bottom-top)*float64(n)/pieces)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// press works out a case of pressure at one depth in part k.
func (e *evaluation) press(s *loadedString, l *loadCase, k int, md float64) (strain, strength.Ratings, error) {
	tvd := e.path.TVD(md)
	axial, hanging := e.axial(s, k, md, tvd)
	load := strength.Load{Depth: md, Inside: l.inside.at(tvd), Outside: l.outside.at(tvd), Axial: axial,
		Temperature: e.heat.steel(tvd), Dogleg: e.bend(s, k, md)}
	r, err := s.parts[k].Ratings(load)
	if err != nil {
		return strain{}, r, err
	}
	at := strain{part: k, md: md, tvd: tvd, load: load, regime: r.CollapseRegime, hanging: hanging}
	f := r.Factors()
	switch l.mode {
	case strength.InCollapse:
		at.acts, at.rating, at.factor, at.by = r.External, r.Collapse.Value, f.Collapse.Value, f.Collapse.By
	default:
		at.acts, at.rating, at.factor, at.by = load.Inside-load.Outside, r.Burst.Value, f.Burst.Value, f.Burst.By
	}
	return at, r, nil
}

// worst returns where a case of pressure brings the string nearest to failure, and where its triaxial stress is nearest to
// yield.
func (e *evaluation) worst(s *loadedString, l *loadCase) (least strain, tri triaxial, missing gap) {
	var buffer [24]float64
	breaks := l.outside.appendBreaks(l.inside.appendBreaks(buffer[:0]))
	any := false
	for k := range s.casing.parts {
		for _, md := range e.places(s, k, l.top, l.bottom, breaks) {
			at, r, err := e.press(s, l, k, md)
			if err != nil {
				part := &s.casing.parts[k]
				return strain{}, triaxial{}, gap{partPath(s.section, part, "grade"), err.Error()}
			}
			if !any || at.worse(&least) {
				least, any = at, true
			}
			tri.look(&at, &r)
		}
	}
	if !any {
		return strain{}, triaxial{}, gap{l.mend, "the load does not reach the string"}
	}
	tri.name, tri.words, tri.hole = l.name, l.words, l.hole
	return least, tri, gap{}
}

// look takes a place over if its stress is nearer to the yield.
func (t *triaxial) look(at *strain, r *strength.Ratings) {
	f := r.Pipe.Yield / r.Worst.VonMises
	if !(r.Worst.VonMises > 0) || t.factor > 0 && f >= t.factor {
		return
	}
	t.md, t.tvd, t.part, t.load = at.md, at.tvd, at.part, at.load
	t.stress, t.yield, t.factor, t.place = r.Worst.VonMises, r.Pipe.Yield, f, r.Worst.Place
}
