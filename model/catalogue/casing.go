package catalogue

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"sync"
	"unicode"
)

// Casing is one size, weight and grade of casing, or of line pipe used as
// conductor. Lengths are in m, pressures in Pa, forces in N. Zero means not
// known.
//
// The ratings are those of plain pipe of API Bulletin 5C2: rounded to 10 psi
// and 1000 lbf, and one such step apart between editions. Collapse is without
// tension and with no pressure inside. Compute from Wall, not from
// NominalWeight, which is a name.
type Casing struct {
	OD   float64 // outside diameter of the body, m
	Wall float64 // wall thickness, m
	ID   float64 // inside diameter, m, OD - 2 Wall

	Drift        float64 // diameter of the API drift mandrel, m; 0 for conductor
	SpecialDrift float64 // larger drift that can be ordered for this weight, m; 0 if none

	CouplingOD        float64 // outside diameter of the API coupling, m; 0 if not known
	SpecialCouplingOD float64 // outside diameter of the special-clearance coupling, m, always recalled; 0 if not known

	NominalWeight float64 // weight by which the pipe is named, kg/m, with threads and coupling; plain-end weight for conductor

	Yield     float64 // minimum yield strength of the grade, Pa
	Collapse  float64 // collapse resistance, Pa; 0 for conductor
	Burst     float64 // internal yield pressure of the plain end, Pa; 0 for conductor
	BodyYield float64 // axial load at which the body yields, N; 0 for conductor. Not joint strength.

	Grade     string // in the spelling of [NormalGrade]
	Listed    bool   // whether API 5CT lists this size and weight
	Conductor bool   // line pipe known by its dimensions only: no ratings, no connector

	DimsSource string // keys of [Sources] for the size and wall
	DimsSeen   string // [Seen] or [Memory], for the size and wall
	Source     string // keys of [Sources] for grade and ratings; any beyond the first bear on a single figure
	Seen       string // [Seen] or [Memory], for all figures but SpecialCouplingOD
	Recall     string // of a remembered rating: "firm", or "weak" where the digits are less sure; else empty
}

// casingSize holds the weights of one OD, ascending.
type casingSize struct {
	od      float64
	weights []casingWeight
}

// casingWeight holds the grades of one OD and weight, weakest first.
type casingWeight struct {
	weight float64
	grades []Casing
}

var casingRows = loadOnce("casing.csv", parseCasing)

// casingTree holds the rows by size, weight and grade, all ascending.
var casingTree = sync.OnceValue(func() []casingSize { return growCasingTree(casingRows()) })

// CasingSizes returns the outside diameters in the catalogue, ascending, in m.
func CasingSizes() []float64 {
	sizes := make([]float64, 0, len(casingTree()))
	for _, size := range casingTree() {
		sizes = append(sizes, size.od)
	}
	return sizes
}

// CasingWeights returns the nominal weights of one outside diameter (m),
// ascending, in kg/m. Among them are the plain-end weights of conductor. It
// returns nil for a diameter that is not in the catalogue.
func CasingWeights(od float64) []float64 {
	size, ok := findCasingSize(od)
	if !ok {
		return nil
	}
	weights := make([]float64, 0, len(size.weights))
	for _, w := range size.weights {
		weights = append(weights, w.weight)
	}
	return weights
}

// CasingGrades returns the casing of one outside diameter (m) and nominal
// weight (kg/m), one for each grade, weakest first. It returns nil for a pair
// that is not in the catalogue. The pair is matched as in [FindCasing].
func CasingGrades(od, weight float64) []Casing {
	size, ok := findCasingSize(od)
	if !ok {
		return nil
	}
	w, ok := size.nearest(weight)
	if !ok {
		return nil
	}
	return slices.Clone(w.grades)
}

// FindCasing returns the casing that a person names by outside diameter (m),
// nominal weight (kg/m) and grade. The match allows for metric roundings:
// 0.06 mm in the diameter and 0.6 % in the weight, of which the nearest counts;
// the grade is read as by [NormalGrade].
//
// A weight of 0 or an empty grade stands for any, and then the answer must be
// the only one that fits. It reports false when nothing fits or when several
// do.
func FindCasing(od, weight float64, grade string) (Casing, bool) {
	size, ok := findCasingSize(od)
	if !ok {
		return Casing{}, false
	}
	weights := size.weights
	if weight != 0 {
		at, ok := size.nearestPlace(weight)
		if !ok {
			return Casing{}, false
		}
		weights = weights[at : at+1]
	}
	grade = NormalGrade(grade)
	var found *Casing
	for i := range weights {
		for j := range weights[i].grades {
			c := &weights[i].grades[j]
			if grade != "" && c.Grade != grade {
				continue
			}
			if found != nil {
				return Casing{}, false
			}
			found = c
		}
	}
	if found == nil {
		return Casing{}, false
	}
	return *found, true
}

// NormalGrade returns the catalogue's spelling of a grade: capitals, with
// nothing between the letter and the figure, so "P-110", "p 110" and "P110" are
// all "P110". What follows the figure stays apart: "L-80 13Cr" becomes
// "L80-13CR", which is not L80. Text that is no grade comes back tidied in the
// same way.
func NormalGrade(s string) string {
	if isNormalGrade(s) {
		return s // the usual case, without work
	}
	var b strings.Builder
	var last rune
	gap := false
	for _, r := range s {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			gap = true
			continue
		}
		r = unicode.ToUpper(r)
		if gap && last != 0 && !(unicode.IsLetter(last) && unicode.IsDigit(r)) {
			b.WriteByte('-')
		}
		b.WriteRune(r)
		last, gap = r, false
	}
	return b.String()
}

// isNormalGrade reports whether s is made of ASCII capitals and digits only.
func isNormalGrade(s string) bool {
	for i := range len(s) {
		if c := s[i]; (c < 'A' || c > 'Z') && (c < '0' || c > '9') {
			return false
		}
	}
	return true
}

// findCasingSize finds the weights of an outside diameter. A search, because
// it runs at each keystroke.
func findCasingSize(od float64) (casingSize, bool) {
	sizes := casingTree()
	// The first size that is not too small; NaN finds the first and fails below.
	at, _ := slices.BinarySearchFunc(sizes, od-sizeTolerance, func(s casingSize, od float64) int {
		return cmp.Compare(s.od, od)
	})
	if at == len(sizes) || !sameSize(od, sizes[at].od) {
		return casingSize{}, false
	}
	return sizes[at], true
}

// nearest returns the weight that a written one names.
func (s casingSize) nearest(weight float64) (casingWeight, bool) {
	at, ok := s.nearestPlace(weight)
	if !ok {
		return casingWeight{}, false
	}
	return s.weights[at], true
}

// nearestPlace returns the place of the weight that a written one names.
func (s casingSize) nearestPlace(weight float64) (int, bool) {
	best, bestGap := -1, math.Inf(1)
	for i, w := range s.weights {
		if gap := math.Abs(weight - w.weight); sameWeight(weight, w.weight) && gap < bestGap {
			best, bestGap = i, gap
		}
	}
	return best, best >= 0
}

// growCasingTree sorts the rows by size, weight and yield and groups them.
func growCasingTree(rows []Casing) []casingSize {
	rows = slices.Clone(rows)
	slices.SortStableFunc(rows, func(a, b Casing) int {
		return cmp.Or(
			cmp.Compare(a.OD, b.OD),
			cmp.Compare(a.NominalWeight, b.NominalWeight),
			cmp.Compare(a.Yield, b.Yield),
		)
	})
	var tree []casingSize
	for _, row := range rows {
		if len(tree) == 0 || tree[len(tree)-1].od != row.OD {
			tree = append(tree, casingSize{od: row.OD})
		}
		size := &tree[len(tree)-1]
		if n := len(size.weights); n == 0 || size.weights[n-1].weight != row.NominalWeight {
			size.weights = append(size.weights, casingWeight{weight: row.NominalWeight})
		}
		w := &size.weights[len(size.weights)-1]
		w.grades = append(w.grades, row)
	}
	return tree
}

// parseCasing reads casing.csv. A row without a collapse figure is conductor,
// and must then have no other rating.
func parseCasing(name, text string) ([]Casing, error) {
	t := openTable(name, text,
		"od_in", "weight_lb_ft", "wall_in", "id_in", "drift_in", "special_drift_in",
		"coupling_od_in", "special_coupling_od_in", "grade", "yield_psi",
		"collapse_psi", "burst_psi", "body_yield_klbf", "listed",
		"dims_source", "dims_seen", "source", "seen", "recall")
	var rows []Casing
	for t.next() {
		c := Casing{
			OD:                t.amount("od_in", inch),
			Wall:              t.amount("wall_in", inch),
			ID:                t.amount("id_in", inch),
			Drift:             t.amountIfKnown("drift_in", inch),
			SpecialDrift:      t.amountIfKnown("special_drift_in", inch),
			CouplingOD:        t.amountIfKnown("coupling_od_in", inch),
			SpecialCouplingOD: t.amountIfKnown("special_coupling_od_in", inch),
			NominalWeight:     t.amount("weight_lb_ft", perFoot),
			Yield:             t.amount("yield_psi", psi),
			Collapse:          t.amountIfKnown("collapse_psi", psi),
			Burst:             t.amountIfKnown("burst_psi", psi),
			BodyYield:         t.amountIfKnown("body_yield_klbf", kip),
			Grade:             t.word("grade"),
			Listed:            t.choice("listed", "yes", "no") == "yes",
			DimsSource:        t.word("dims_source"),
			DimsSeen:          t.choice("dims_seen", Seen, Memory),
			Source:            t.word("source"),
			Seen:              t.choice("seen", Seen, Memory),
			Recall:            t.choice("recall", "", "firm", "weak"),
		}
		c.Conductor = c.Collapse == 0
		if rated := c.Burst != 0 && c.BodyYield != 0 && c.Drift != 0; rated == c.Conductor {
			t.fail("collapse_psi", "give drift, collapse, burst and body yield, or none of them")
		}
		if c.Grade != NormalGrade(c.Grade) {
			t.fail("grade", "write "+NormalGrade(c.Grade))
		}
		rows = append(rows, c)
	}
	return rows, t.err
}
