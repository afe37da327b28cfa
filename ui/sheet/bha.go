package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/strip"
)

// bhaKeys are how the keys of the figures begin that stand on a BHA sheet.
func bhaKeys() []string {
	return []string{"string.weight.", "string.hook_load", "string.bha.", "string.class.", "drag.overpull", "spaceout."}
}

// bhaRules are the findings that belong on a BHA sheet.
func bhaRules() []model.RuleID {
	return []model.RuleID{model.RuleBitPasses, model.RuleBitClearance, model.RuleBitAsPlanned, model.RuleHookLoad, model.RuleBitWeight, model.RuleNeutralPoint,
		model.RuleJarNeutral, model.RulePipeTension, model.RuleOverpull, model.RulePickUpOverpull, model.RulePipeTorsion, model.RuleBendingRatio, model.RuleRamJoint}
}

// stackHeadings are the columns of the stack-up.
func stackHeadings() []heading {
	return []heading{{"length", quantity.Length}, {"from bit", quantity.Length}, {"OD", quantity.Diameter}, {"widest", quantity.Diameter}, {"ID", quantity.Diameter},
		{"comes by", quantity.Diameter}, {"neck", quantity.Diameter}, {"in mud", quantity.Force}}
}

// bhaCard makes the BHA sheet of a section; why says what keeps it from being made.
func (p *printer) bhaCard(i int) (c card, why string) {
	parts, stack, err := p.stackParts(i)
	if err != nil {
		return card{}, err.Error()
	}
	c = card{section: i, tallest: true, title: "BHA sheet: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	c.tables = []table{p.stringLoads(i)}
	for _, f := range p.result.Sheet(i).Figures {
		if slices.ContainsFunc(bhaKeys(), func(key string) bool { return strings.HasPrefix(f.Key, key) }) {
			c.tables = addFigure(c.tables, f, "")
		}
	}
	c.tables = append(c.tables, parts)
	c.notes = append(c.notes, connections(&stack))
	if drawn := p.stripPart(i); len(drawn.drawn) > 0 {
		c.notes = append(c.notes, drawn)
	}
	c.notes = append(c.notes, p.bhaFindings(i), part{title: "How to read it", remarks: bhaRemarks(&stack)}, part{title: "Cautions", remarks: append([]string{
		"String: every part is measured on deck, length, OD, ID, fishing neck and connection, and drifted, before it goes in; what is measured goes before this sheet.",
		"Space-out: from mean lengths. The strapped tally and two people's count decide where tool joints stand; rams are never shut on one. " +
			"What a ram may hold, and what shear rams cut, is the maker's and the drill's, not this sheet's.",
		"Pull and torque: friction, bending, pressure, slips and tool joints are not in the limits of the pipe body. Inspection decides the class.",
	}, p.cautionsOn(i, map[quantity.Kind]bool{quantity.Length: true, quantity.Diameter: true, quantity.Force: true})...)})
	return c, ""
}

// stackParts lists the drill string part by part, top down.
func (p *printer) stackParts(i int) (table, calc.Stack, error) {
	stack, err := calc.StackUp(p.plan, i)
	if err != nil {
		return table{}, stack, err
	}
	parts := table{title: "Stack-up, top down, bit at TD", rowHead: "part", columns: stackHeadings(), tall: true}
	for k := len(stack.Rows) - 1; k >= 0; k-- {
		r := &stack.Rows[k]
		parts.rows = append(parts.rows, line{name: fmt.Sprint(r.Number) + " " + model.Clean(cmp.Or(r.Name, r.Item)),
			note: model.Clean(r.Connection), values: []float64{r.Length, r.Up, r.OD, r.Widest, r.ID, r.Reached, r.Neck, r.InMud}})
	}
	return parts, stack, nil
}

// stringLoads lists what the string is asked to bear, which the shares used are of.
func (p *printer) stringLoads(i int) table {
	s := &p.plan.Sections[i].StringLoads
	t := table{title: "Asked of the string", rowHead: "Entry", columns: []heading{{"", quantity.Force}, {"", quantity.Torque}}, rows: []line{
		{name: "Weight on bit wanted", values: []float64{given(s.BitWeight), nothing()}, note: "from " + s.Counted},
		{name: "Overpull planned", values: []float64{given(s.Overpull), nothing()}},
		{name: "Greatest torque", values: []float64{nothing(), given(s.Torque)}},
	}}
	for k, entry := range []quantity.Value{s.BitWeight, s.Overpull, s.Torque} {
		if !entry.IsSet() {
			t.rows[k].note = "not entered"
		}
	}
	return t
}

// connections lists the upper connection of every part for which one is entered, top down.
func connections(stack *calc.Stack) part {
	list := part{title: "Connections, upper ends, top down", rowHead: "part"}
	for k := len(stack.Rows) - 1; k >= 0; k-- {
		if r := &stack.Rows[k]; r.Connection != "" {
			list.rows = append(list.rows, row{name: fmt.Sprint(r.Number) + " " + model.Clean(cmp.Or(r.Name, r.Item)),
				cells: []cell{{value: model.Clean(r.Connection)}}})
		}
	}
	return list
}

// stripPart draws the space-out strip; without one it has nothing in it.
func (p *printer) stripPart(i int) part {
	const most = 40
	s, err := calc.SpaceStrip(p.plan, i)
	if err != nil {
		return part{}
	}
	unit := p.System.Unit(quantity.Length)
	for k := range s.Marks {
		s.Marks[k].Name = drawable(p.plain(s.Marks[k].Name))
	}
	for k := range s.Hung {
		s.Hung[k].Name = drawable(p.plain(s.Hung[k].Name))
	}
	lines := strip.Lines(&s, func(m float64) string { return quantity.Format(m, quantity.Length, unit) }, most)
	lines = append(lines, "", "depth in "+p.plain(unit.Symbol())+" below the rotary at mean sea; bit at "+quantity.Format(s.Bit, quantity.Length, unit)+
		hungWords(&s, unit), "== ram, .. where tide and heave bring it, || pipe, [] tool joint, ## they meet")
	return part{title: "Space-out strip", drawn: lines}
}

// hungWords says where the bit is when the string hangs on a ram.
func hungWords(s *calc.Strip, unit quantity.Unit) string {
	if len(s.Hung) == 0 {
		return ""
	}
	return ", hung off at " + quantity.Format(s.HungBit, quantity.Length, unit)
}

// drawable makes a name fit for a drawing: nothing in it ends a block of Markdown.
func drawable(name string) string { return strings.ReplaceAll(model.Clean(name), "`", "'") }

// bhaFindings are the findings on the string beyond limits met.
func (p *printer) bhaFindings(i int) part {
	return p.beyondMet("Findings on the string", i, byRules(bhaRules()...))
}

// bhaRemarks says what the columns are and what they leave out.
func bhaRemarks(stack *calc.Stack) []string {
	remarks := []string{
		"from bit: to the top of the part. widest: over blades or tool joints. comes by: the least bore from the rotary down to and through the part, " +
			"which a ball, dart or tool must pass. in mud: weight along the hole, without friction.",
		"left, no drag: overpull that the pipe leaves by weight alone; with drag: over the pick-up weight at TD, of rig or pipe what leaves less.",
		"used, allowed: of the limits of the plan's rule set. neutral point: above it the string hangs in tension while the wanted weight is on the bit.",
	}
	var bare []string
	for k := range stack.Rows {
		if r := &stack.Rows[k]; r.Item != model.ItemBit && r.Item != model.ItemPipe && math.IsNaN(r.Neck) {
			bare = append(bare, fmt.Sprint(r.Number))
		}
	}
	if len(bare) > 0 {
		remarks = append(remarks, "No fishing neck is entered for part "+strings.Join(bare, ", ")+": measure it before it goes in.")
	}
	return remarks
}
