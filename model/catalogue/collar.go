package catalogue

import (
	"cmp"
	"slices"
)

// Collar is one size of slick steel drill collar. Lengths are in m.
type Collar struct {
	OD     float64 // outside diameter, m
	ID     float64 // inside diameter, m
	Weight float64 // kg/m, as printed: rounded to 1 lb/ft. A spiral collar weighs about 4 % less (common practice).

	Capacity     float64 // volume inside, m³/m, to the five decimals of the bbl/ft table
	Displacement float64 // volume of steel, m³/m, to the same decimals

	Source string // keys of [Sources]
	Seen   string // [Seen] or [Memory]
}

var collars = loadOnce("collars.csv", parseCollar)

// Collars returns all drill collars, by outside and then inside diameter,
// ascending.
func Collars() []Collar { return slices.Clone(collars()) }

// FindCollar returns the drill collar of one outside and inside diameter (m),
// allowing 0.06 mm in each. It reports false if there is none.
func FindCollar(od, id float64) (Collar, bool) {
	rows := collars()
	first, _ := slices.BinarySearchFunc(rows, od-sizeTolerance, func(c Collar, od float64) int {
		return cmp.Compare(c.OD, od)
	})
	for i := first; i < len(rows) && sameSize(od, rows[i].OD); i++ {
		if sameSize(id, rows[i].ID) {
			return rows[i], true
		}
	}
	return Collar{}, false
}

// parseCollar reads collars.csv and sorts it.
func parseCollar(name, text string) ([]Collar, error) {
	t := openTable(name, text,
		"od_in", "id_in", "weight_lb_ft", "capacity_bbl_ft", "displacement_bbl_ft", "source", "seen")
	var rows []Collar
	for t.next() {
		rows = append(rows, Collar{
			OD:           t.amount("od_in", inch),
			ID:           t.amount("id_in", inch),
			Weight:       t.amount("weight_lb_ft", perFoot),
			Capacity:     t.amount("capacity_bbl_ft", barrelFoot),
			Displacement: t.amount("displacement_bbl_ft", barrelFoot),
			Source:       t.word("source"),
			Seen:         t.choice("seen", Seen, Memory),
		})
	}
	slices.SortStableFunc(rows, func(a, b Collar) int {
		return cmp.Or(cmp.Compare(a.OD, b.OD), cmp.Compare(a.ID, b.ID))
	})
	return rows, t.err
}
