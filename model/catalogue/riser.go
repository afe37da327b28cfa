package catalogue

// Line is a riser, a line beside it, or the bore of a subsea stack. Lengths are
// in m, pressure in Pa. Zero means not known.
type Line struct {
	Item            string  // "marine riser", "choke line", ...
	OD              float64 // outside diameter, m
	ID              float64 // inside diameter, m; always known
	WorkingPressure float64 // Pa
	JointLength     float64 // length of one joint, m
	Use             string  // where it is usual, a few words; may be empty
	Source          string  // keys of [Sources]
	Seen            string  // [Seen] or [Memory]

	place string // riser, line or stack
}

var conduits = loadOnce("risers_lines.csv", parseLine)

// Risers returns the main tubes of marine and tie-back risers.
func Risers() []Line { return conduitsAt("riser") }

// Lines returns the lines that run beside a riser: choke, kill, booster and
// hydraulic.
func Lines() []Line { return conduitsAt("line") }

// StackBores returns the bores of subsea blowout-preventer stacks.
func StackBores() []Line { return conduitsAt("stack") }

func conduitsAt(place string) []Line {
	var some []Line
	for _, l := range conduits() {
		if l.place == place {
			some = append(some, l)
		}
	}
	return some
}

// parseLine reads risers_lines.csv.
func parseLine(name, text string) ([]Line, error) {
	t := openTable(name, text,
		"kind", "item", "od_in", "id_in", "working_pressure_psi", "joint_length_ft", "use", "source", "seen")
	var rows []Line
	for t.next() {
		rows = append(rows, Line{
			Item:            t.word("item"),
			OD:              t.amountIfKnown("od_in", inch),
			ID:              t.amount("id_in", inch),
			WorkingPressure: t.amountIfKnown("working_pressure_psi", psi),
			JointLength:     t.amountIfKnown("joint_length_ft", foot),
			Use:             t.text("use"),
			Source:          t.word("source"),
			Seen:            t.choice("seen", Seen, Memory),
			place:           t.choice("kind", "riser", "line", "stack"),
		})
	}
	return rows, t.err
}
