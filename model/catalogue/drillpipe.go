package catalogue

import (
	"cmp"
	"slices"
)

// DrillPipe is one size, weight and grade of drill pipe. Lengths are in m,
// weights in kg/m, strengths in N and N·m. Zero means not known: 5 7/8 in pipe
// is no API RP 7G size and has no strengths here, premium tension is listed for
// E75 only (elsewhere it goes with yield), and tool joints for the usual
// combinations.
//
// What passes through a string is the tool joint, not the pipe.
type DrillPipe struct {
	OD float64 // outside diameter of the body, m
	ID float64 // inside diameter of the body, m

	NominalWeight  float64 // weight by which the pipe is named, kg/m
	AdjustedWeight float64 // weight with tool joints, kg/m

	ToolJointOD float64 // m
	ToolJointID float64 // m

	Yield          float64 // minimum yield strength of the grade, Pa
	Tensile        float64 // tension at which new pipe yields, N
	Torsion        float64 // torque at which new pipe yields, N·m
	TensilePremium float64 // the same of premium class, wall worn outside to 80 %, N
	TorsionPremium float64 // N·m

	Capacity     float64 // volume inside the body, m³/m, to the five decimals of the bbl/ft table
	Displacement float64 // volume of steel with tool joints, m³/m, to the same decimals

	Grade      string // E75, X95, G105 or S135
	Upset      string // EU, IU or IEU; empty if not known
	Connection string // of the tool joint; empty if not known

	Source      string // keys of [Sources]
	Seen        string // [Seen] or [Memory], for OD, weight, and tension and torsion when new
	IDSeen      string // [Seen] or [Memory], for the ID
	PremiumSeen string // the same for premium class; empty if there is no figure
	JointSeen   string // the same for tool joint and adjusted weight; empty if there is no figure
}

var drillPipes = loadOnce("drillpipe.csv", parseDrillPipe)

// DrillPipes returns all drill pipe, by size, then weight, then yield.
func DrillPipes() []DrillPipe { return slices.Clone(drillPipes()) }

// FindDrillPipe returns the drill pipe that a person names by outside diameter
// (m), nominal weight (kg/m, without tool joints) and grade. The match allows
// 0.06 mm in the diameter and 0.6 % in the weight; the grade is read as by
// [NormalGrade], and may be its letter alone.
//
// A weight of 0 or an empty grade stands for any, and then the answer must be
// the only one that fits. It reports false when nothing fits or when several
// do.
func FindDrillPipe(od, nominalWeight float64, grade string) (DrillPipe, bool) {
	rows := drillPipes()
	first, _ := slices.BinarySearchFunc(rows, od-sizeTolerance, func(p DrillPipe, od float64) int {
		return cmp.Compare(p.OD, od)
	})
	grade = NormalGrade(grade)
	found := -1
	for i := first; i < len(rows) && sameSize(od, rows[i].OD); i++ {
		p := &rows[i]
		if nominalWeight != 0 && !sameWeight(nominalWeight, p.NominalWeight) {
			continue
		}
		if grade != "" && grade != p.Grade && grade != p.Grade[:1] {
			continue
		}
		if found >= 0 {
			return DrillPipe{}, false
		}
		found = i
	}
	if found < 0 {
		return DrillPipe{}, false
	}
	return rows[found], true
}

// parseDrillPipe reads drillpipe.csv and sorts it.
func parseDrillPipe(name, text string) ([]DrillPipe, error) {
	t := openTable(name, text,
		"od_in", "id_in", "id_seen", "weight_lb_ft", "grade", "yield_psi",
		"tensile_lbf", "torsion_ftlbf", "premium_tensile_lbf", "premium_torsion_ftlbf", "premium_seen",
		"upset", "connection", "joint_od_in", "joint_id_in", "adjusted_weight_lb_ft", "joint_seen",
		"capacity_bbl_ft", "displacement_bbl_ft", "source", "seen")
	var rows []DrillPipe
	for t.next() {
		rows = append(rows, DrillPipe{
			OD:             t.amount("od_in", inch),
			ID:             t.amount("id_in", inch),
			NominalWeight:  t.amount("weight_lb_ft", perFoot),
			AdjustedWeight: t.amountIfKnown("adjusted_weight_lb_ft", perFoot),
			ToolJointOD:    t.amountIfKnown("joint_od_in", inch),
			ToolJointID:    t.amountIfKnown("joint_id_in", inch),
			Yield:          t.amount("yield_psi", psi),
			Tensile:        t.amountIfKnown("tensile_lbf", poundForce),
			Torsion:        t.amountIfKnown("torsion_ftlbf", footPound),
			TensilePremium: t.amountIfKnown("premium_tensile_lbf", poundForce),
			TorsionPremium: t.amountIfKnown("premium_torsion_ftlbf", footPound),
			Capacity:       t.amount("capacity_bbl_ft", barrelFoot),
			Displacement:   t.amountIfKnown("displacement_bbl_ft", barrelFoot),
			Grade:          t.choice("grade", "E75", "X95", "G105", "S135"),
			Upset:          t.choice("upset", "", "EU", "IU", "IEU"),
			Connection:     t.text("connection"),
			Source:         t.word("source"),
			Seen:           t.choice("seen", Seen, Memory),
			IDSeen:         t.choice("id_seen", Seen, Memory),
			PremiumSeen:    t.choice("premium_seen", "", Seen, Memory),
			JointSeen:      t.choice("joint_seen", "", Seen, Memory),
		})
	}
	slices.SortStableFunc(rows, func(a, b DrillPipe) int {
		return cmp.Or(
			cmp.Compare(a.OD, b.OD),
			cmp.Compare(a.NominalWeight, b.NominalWeight),
			cmp.Compare(a.Yield, b.Yield),
		)
	})
	return rows, t.err
}
