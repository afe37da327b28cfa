package catalogue

import "slices"

// HeavyWeight is one size of heavy-weight drill pipe, range 2. All of them are
// recalled, and makers differ by some tenths of a lb/ft. Strengths are not
// listed. Lengths are in m.
type HeavyWeight struct {
	OD          float64 // outside diameter of the body, m
	ID          float64 // inside diameter of the body, m
	Weight      float64 // weight with tool joints, kg/m
	ToolJointOD float64 // m
	ToolJointID float64 // m

	Capacity     float64 // volume inside the body, m³/m, to the five decimals of the bbl/ft table
	Displacement float64 // volume of steel with tool joints, m³/m, to the same decimals

	Connection string // of the tool joint
	Source     string // keys of [Sources]
	Seen       string // [Seen] or [Memory]
}

var heavyWeights = loadOnce("hwdp.csv", parseHeavyWeight)

// HeavyWeights returns all heavy-weight drill pipe, by size and then bore,
// ascending.
func HeavyWeights() []HeavyWeight { return slices.Clone(heavyWeights()) }

// FindHeavyWeight returns the heavy-weight pipe of one outside diameter (m),
// allowing 0.06 mm. It reports false if there is none, and also for 3 1/2 in,
// which comes with two bores: use [FindHeavyWeightBore].
func FindHeavyWeight(od float64) (HeavyWeight, bool) {
	return FindHeavyWeightBore(od, 0)
}

// FindHeavyWeightBore returns the heavy-weight pipe of one outside and inside
// diameter (m), allowing 0.06 mm in each. An inside diameter of 0 stands for
// any, and then the answer must be the only one that fits.
func FindHeavyWeightBore(od, id float64) (HeavyWeight, bool) {
	var found HeavyWeight
	count := 0
	for _, h := range heavyWeights() {
		if sameSize(od, h.OD) && (id == 0 || sameSize(id, h.ID)) {
			found = h
			count++
		}
	}
	if count != 1 {
		return HeavyWeight{}, false
	}
	return found, true
}

// parseHeavyWeight reads hwdp.csv.
func parseHeavyWeight(name, text string) ([]HeavyWeight, error) {
	t := openTable(name, text,
		"od_in", "id_in", "weight_lb_ft", "connection", "joint_od_in", "joint_id_in",
		"capacity_bbl_ft", "displacement_bbl_ft", "source", "seen")
	var rows []HeavyWeight
	for t.next() {
		rows = append(rows, HeavyWeight{
			OD:           t.amount("od_in", inch),
			ID:           t.amount("id_in", inch),
			Weight:       t.amount("weight_lb_ft", perFoot),
			ToolJointOD:  t.amount("joint_od_in", inch),
			ToolJointID:  t.amount("joint_id_in", inch),
			Capacity:     t.amount("capacity_bbl_ft", barrelFoot),
			Displacement: t.amount("displacement_bbl_ft", barrelFoot),
			Connection:   t.word("connection"),
			Source:       t.word("source"),
			Seen:         t.choice("seen", Seen, Memory),
		})
	}
	return rows, t.err
}
