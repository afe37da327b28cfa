package calc

import (
	"strconv"

	"borewalk/calc/strength"
	"borewalk/model/quantity"
)

// side puts the fluids of one side of a string into a working, top down: the pressure at the top, then each fluid from and
// to.
func (w *Working) side(where string, s *side) {
	breaks := s.stack.AppendBreaks(nil)
	letter := where[:1] // i or o, so that no symbol means two things
	for n := 1; n < len(breaks); n++ {
		layer, _ := s.stack.At((breaks[n-1] + breaks[n]) / 2)
		if n == 1 {
			w.in("p"+letter+"0", where+": pressure at the top", quantity.Pressure, pressureAt(s.stack, layer.Top))
			w.in("z"+letter+"0", where+": from TVD", quantity.Length, layer.Top)
		}
		w.in("rho "+letter+strconv.Itoa(n), where+": "+layer.Label, quantity.Density, layer.Density)
		w.in("z"+letter+strconv.Itoa(n), where+": to TVD", quantity.Length, layer.Bottom)
	}
}

// rated puts what a part withstands into a working.
func (w *Working) rated(part *strength.Casing, at *strain) {
	w.in("OD", "pipe", quantity.Diameter, part.Pipe.OD)
	w.in("t", "wall, nominal", quantity.Diameter, part.Pipe.Wall)
	if part.Lost > 0 {
		w.in("wear", "of the wall", quantity.Ratio, part.Lost)
	}
	w.in("Y", "least yield, cold", quantity.Stress, part.Pipe.Yield)
	w.in("T", "undisturbed, there", quantity.Temperature, at.load.Temperature)
}

// collapse is the working of the load from outside and of its factor.
func (w *Working) collapse(s *loadedString, l *loadCase, at *strain) {
	w.in("TVD", "where it is least", quantity.Length, at.tvd)
	w.in("po", "outside", quantity.Pressure, at.load.Outside)
	w.in("pi", "inside", quantity.Pressure, at.load.Inside)
	w.in("load", "po - (1 - 2 t/OD) × pi", quantity.Pressure, at.acts)
	w.in("rating", "collapse under the tension there", quantity.Pressure, at.rating)
	w.in("F", "true axial force, landed", quantity.Force, at.load.Axial)
	w.rated(&s.parts[at.part], at)
	w.side("outside", &l.outside)
	w.side("inside", &l.inside)
	w.Source = "API Bulletin 5C3, as kept in API TR 5C3 / ISO 10400: " + at.regime.String() + " collapse; yield less 0.03 % per °F above 70 °F (common practice, from memory)"
	w.Note = joined(l.note, outsideOf(l), "Tension as landed, weight in the fluid it was run in; changes by pressure and heat left out.")
}

// burst is the working of the load from inside and of its factor.
func (w *Working) burst(s *loadedString, l *loadCase, at *strain) {
	w.in("TVD", "where it is least", quantity.Length, at.tvd)
	w.in("pi", "inside", quantity.Pressure, at.load.Inside)
	w.in("po", "outside", quantity.Pressure, at.load.Outside)
	w.in("load", "pi - po", quantity.Pressure, at.acts)
	w.in("rating", "2 × Y × 0.875 × t / OD", quantity.Pressure, at.rating)
	w.rated(&s.parts[at.part], at)
	w.side("inside", &l.inside)
	w.side("outside", &l.outside)
	w.Source = "Barlow with 12.5 % wall tolerance (API Bulletin 5C3); yield less 0.03 % per °F above 70 °F (common practice, from memory)"
	w.Note = joined(l.note, outsideOf(l))
}

// outsideOf says what the outside is where it is no column alone.
func outsideOf(l *loadCase) string {
	if l.outside.pore != nil {
		return "Outside: the pore pressure of the prognosis, sea above it."
	}
	return ""
}

// joined puts sentences together.
func joined(sentences ...string) (text string) {
	for _, s := range sentences {
		if s != "" && text != "" {
			text += " "
		}
		text += s
	}
	return text
}

// tension is the working of a pull and of its factor.
func (w *Working) tension(s *loadedString, l *pullCase, at *strain) {
	part := &s.parts[at.part]
	w.in("TVD", "where it is least", quantity.Length, at.tvd)
	w.in("W", "buoyed weight below", quantity.Force, at.hanging)
	w.in("add", l.adds, quantity.Force, l.extra(at.part))
	if l.bends {
		w.in("dogleg", "there", quantity.Dogleg, at.load.Dogleg)
		w.in("bend", "E × dogleg × OD/2 × area", quantity.Force, at.acts-at.load.Axial)
	}
	w.in("rating", "area × yield", quantity.Force, at.rating)
	if part.Connection.Tension < 1 {
		w.in("joint", "share of the body", quantity.Ratio, part.Connection.Tension)
	}
	w.in("A", "steel", quantity.Area, part.Pipe.Area())
	w.rated(part, at)
	w.Source = "body yield (API Bulletin 5C3); bending by beam theory; common practice in casing design"
	w.Note = "New pipe, weight in the fluid that the string is run in, no friction beyond what is entered."
}

// triaxial is the working of the stress in the wall.
func (w *Working) triaxial(s *loadedString, t *triaxial) {
	part := &s.parts[t.part]
	w.in("TVD", "where it is least", quantity.Length, t.tvd)
	w.in("pi", "inside", quantity.Pressure, t.load.Inside)
	w.in("po", "outside", quantity.Pressure, t.load.Outside)
	w.in("F", "true axial force", quantity.Force, t.load.Axial)
	w.in("dogleg", "there", quantity.Dogleg, t.load.Dogleg)
	w.in("stress", "von Mises, "+t.place.String(), quantity.Stress, t.stress)
	w.in("yield", "at its temperature", quantity.Stress, t.yield)
	w.rated(part, &strain{load: t.load})
	w.Source = "Lamé on the nominal wall, von Mises (API TR 5C3 / ISO 10400, clause 6, from memory)"
	w.Note = "Of the pipe; the connection's envelope is the maker's. Landed tension; changes by pressure and heat in a held string left out."
}
