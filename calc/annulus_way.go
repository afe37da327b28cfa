package calc

import (
	"math"

	"borewalk/model"
)

// Annulus is a stretch of the way up the annulus with the bit at TD: depths along hole and diameters in m. Body is that of the
// string's part in it, not a number where nothing hangs there.
type Annulus struct {
	Top, Bottom float64
	Bore, Body  float64
}

// Annuli returns the way up the annulus of a section in the order of its figures, none where it is not known.
func Annuli(plan *model.Plan, section int) (list []Annulus) {
	c := runPages(plan, section, nil).circulating(section)
	if c.missing.open() {
		return nil
	}
	for k := range c.loop.up {
		g := &c.loop.up[k]
		a := Annulus{Top: g.top, Bottom: g.bottom, Bore: g.bore, Body: math.NaN()}
		if g.part != nil {
			a.Body = g.part.pipe.OD
		}
		list = append(list, a)
	}
	return list
}
