package sheet

import (
	"slices"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// standing is what every sheet says.
const standing = "Planning aid. Verify by independent calculation. Not a substitute for approved procedures or competent " +
	"persons. Local codes, the operator's policies and licensed practice rule."

// caution is what is said beside figures of some kinds, or beside some figures whose kind does not tell what they are.
type caution struct {
	kinds   []quantity.Kind
	figures string // how their keys begin; empty for all of the kinds
	returns string // only for sections with returns there; empty for all sheets
	text    string
}

// cautionTable returns the cautions in the order in which they are printed: for each kind of figure, what goes wrong when
// it is taken for more than it is, and who decides. All are common practice, from memory.
func cautionTable() []caution {
	k := func(kinds ...quantity.Kind) []quantity.Kind { return kinds }
	return []caution{
		{kinds: quantity.Kinds(), text: "Units: read the unit with every number, and pass it on with the number."},
		{kinds: k(quantity.Length), text: "Depths: along hole from the rotary (RKB) unless marked otherwise. Check rig, draught and " +
			"tide before a depth is passed on."},
		{kinds: k(quantity.TallyLength), text: "Tallies: from lengths as entered. Two people strap, number and count, what is run and what " +
			"is left on deck; a joint counted twice or left out puts the shoe elsewhere."},
		{kinds: k(quantity.Volume, quantity.Strokes, quantity.StrokeVolume), text: "Volumes and strokes: a second person reproduces " +
			"them before anything is pumped by them. Strokes hold for the liners and efficiency entered only."},
		{kinds: k(quantity.Pressure, quantity.EMW), text: "Pressures and equivalent mud weights: for the fluid columns, depths and " +
			"shoe test entered, and no others; but for those of a kick, not with gas in the well. The well-control manual and the people on watch decide. " +
			"A doubtful or old shoe test is repeated."},
		{kinds: k(quantity.Pressure, quantity.EMW), returns: model.ToRig, text: "Riser off: sea stands above the mud. In deep water a " +
			"riser margin may not be practical; the BOP is the barrier then."},
		{kinds: k(quantity.Pressure, quantity.EMW), returns: model.ToSeabed, text: "Riserless: the sea is part of the column. Hydrates and " +
			"H2S are not computed here, a shallow sand only where one is entered: they need their own plan. A shallow flow is never shut in."},
		{kinds: k(quantity.Diameter), text: "Clearance and drift: from published or entered sizes. What is on deck is measured and " +
			"drifted; makers' drawings rule."},
		{kinds: k(quantity.Force), text: "Weights and hook loads: the weakest item, its condition and the makers' ratings decide what may " +
			"be hung or pulled."},
		{kinds: k(quantity.Stress), text: "Strength: by formula, for new pipe or the wear entered, and for the loads listed and no others. Makers' ratings of pipe, " +
			"connection, hanger and wellhead, and their condition, decide. Keep people clear of a test."},
		{kinds: k(quantity.Temperature, quantity.TemperatureRise), text: "Temperatures: estimates from the gradient and the flow entered. A slurry is tested at the " +
			"temperature that the laboratory and the cementing company stand for; too cool a test shows too long a thickening time. Measured " +
			"temperatures replace these."},
		{kinds: k(quantity.Flow), text: "Pumps: relief valves are set to the liners in use."},
		{kinds: k(quantity.JetForce), text: "Circulating: pressures and densities by formula, for a smooth, still, centred string and the fluid as entered. What is measured " +
			"at bit and standpipe goes before them; a change that nobody made is looked into first."},
		{figures: "control.maasp", text: "MAASP: for this mud, this shoe test and a well without gas above the shoe. With gas there it says nothing; it is no reason to bleed a well."},
		{figures: "control.tolerance", text: "Kick tolerance: one bubble that neither mixes, slips nor dissolves, rounded down. It compares plans; it is not a limit to drill on to."},
		{figures: "control.kill", text: "Kill sheet: pre-recorded, for one mud, string, pump and depth. What is read, gauges steady and trapped pressure bled, goes before it."},
		{figures: "control.riser", text: "Riser lost: with over pore below none the closed BOP alone holds the well."},
		{figures: "control.stack", text: "BOP test: the weakest part in its way decides. People keep clear."},
		{figures: "control.sand", text: "Shallow flow: never shut in. Flows and volumes are for a hole full of the fluid, without gas; with gas in it more is needed. The site survey and the rig's own plan decide."},
	}
}

// cautions returns what must be said beside the figures of a sheet: what applies to a kind of figure that is printed.
func (p *printer) cautions(section int) []string {
	printed, keys := map[quantity.Kind]bool{}, []string(nil)
	for _, f := range p.result.Sheet(section).Figures {
		if f.OK {
			printed[f.Kind], keys = true, append(keys, f.Key)
		}
	}
	return p.cautionsOn(section, printed, keys...)
}

// cautionsOn returns what must be said beside some kinds of figures of a section, or of the well for section -1, and beside the
// figures with some keys.
func (p *printer) cautionsOn(section int, printed map[quantity.Kind]bool, keys ...string) []string {
	var texts []string
	for _, c := range cautionTable() {
		if c.returns != "" && (section < 0 || p.plan.Sections[section].Returns != c.returns) {
			continue
		}
		named := func(key string) bool { return strings.HasPrefix(key, c.figures) }
		if slices.ContainsFunc(c.kinds, func(kind quantity.Kind) bool { return printed[kind] }) || c.figures != "" && slices.ContainsFunc(keys, named) {
			texts = append(texts, c.text)
		}
	}
	return texts
}

// cautionsPart returns the cautions of a sheet, and the reminder of what ok means.
func (p *printer) cautionsPart(section int) part {
	texts := p.cautions(section)
	if len(p.findings(func(s int) bool { return s == section })) > 0 {
		texts = append(texts, "Findings: "+calc.OK.String()+" says that one limit was met, and no more.")
	}
	return part{title: "Cautions", remarks: texts}
}
