package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/plot"
)

// flows are the two flows that a hydraulics sheet is made for: as planned, and the highest that all known limits allow.
type flows struct {
	section       int
	planned, most *calc.Sheet
}

// figureOf returns a figure at one of the flows, not a number where it is blank or not there.
func figureOf(s *calc.Sheet, key string) float64 {
	if f, ok := s.Find(key); ok && f.OK {
		return f.Value
	}
	return nothing()
}

// hydraulicsCard makes the hydraulics sheet of a section; why says what keeps it from being made.
func (p *printer) hydraulicsCard(i int) (c card, why string) {
	if why = p.lacking(i, "hydraulics.ecd.td", "no flow is worked out"); why != "" {
		return card{}, why
	}
	f := flows{section: i, planned: p.result.Sheet(i)}
	f.most = f.planned
	if most := figureOf(f.planned, "hydraulics.flow.most"); finite(most) && most > 0 {
		f.most = calc.WithFlow(p.plan, i, most).Sheet(i)
	}
	c = card{section: i, title: "Hydraulics sheet: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	c.tables = []table{p.fluidTable(&f), p.flowTable(&f), f.rockTable(), f.partTable(), f.bitTable(), p.annulusTable(&f), p.linerTable(&f)}
	c.notes = p.hydraulicsNotes(i)
	return c, ""
}

// both calls put with the planned and the highest flow.
func (f *flows) both(put func(name string, s *calc.Sheet)) {
	put("planned", f.planned)
	put("highest", f.most)
}

// fluidTable says which fluid is pumped and by which correlation it rubs.
func (p *printer) fluidTable(f *flows) table {
	s := &p.counts.Sections[f.section]
	l := line{name: "mud", note: "friction by " + s.Rheology.Friction, values: []float64{given(s.Density)}}
	for _, key := range []string{"pv", "yp", "n", "k", "tau0"} {
		l.values = append(l.values, figureOf(f.planned, "mud.rheology."+key))
	}
	if l.values[3] == 1 { // PV and YP are the whole of a Bingham fluid's law
		l.values[3], l.values[4], l.values[5] = nothing(), nothing(), nothing()
	}
	return table{title: "Fluid", rowHead: "Fluid", columns: []heading{{"density", quantity.Density}, {"PV", quantity.Viscosity}, {"YP", quantity.YieldPoint},
		{"index", quantity.Number}, {"consistency", quantity.Consistency}, {"yield stress", quantity.YieldPoint}}, rows: []line{l}}
}

// flowTable lists what is pumped and what it takes.
func (p *printer) flowTable(f *flows) table {
	t := table{title: "Flow and standpipe, bit at TD", rowHead: "Flow", columns: []heading{
		{"through bit", quantity.Flow}, {"booster", quantity.Flow}, {"each pump", quantity.StrokeRate}, {"standpipe", quantity.Pressure}, {"pump power", quantity.Power}}}
	s := &p.counts.Sections[f.section]
	booster := nothing()
	if s.Returns == model.ToRig {
		booster = s.Booster.SI
	}
	t.rows = append(t.rows, line{name: "planned", values: []float64{given(s.Flow), booster, figureOf(f.planned, "hydraulics.liner.fitted.rate"),
		figureOf(f.planned, "hydraulics.standpipe"), figureOf(f.planned, "hydraulics.pump.power")}})
	most, _ := f.planned.Find("hydraulics.flow.most")
	if most.OK {
		t.rows = append(t.rows, line{name: "highest", note: "limit: " + most.Note, values: []float64{most.Value, booster, figureOf(f.most, "hydraulics.liner.fitted.rate"),
			figureOf(f.most, "hydraulics.standpipe"), figureOf(f.most, "hydraulics.pump.power")}})
	}
	return t
}

// rockTable lists the densities on the rock.
func (f *flows) rockTable() table {
	t := table{title: "Circulating density from RKB, cuttings counted", rowHead: "Depth", columns: []heading{
		{"planned", quantity.EMW}, {"highest", quantity.EMW}, {"at rest", quantity.EMW}}}
	for _, key := range []string{"hydraulics.ecd.shoe", "hydraulics.ecd.td"} {
		if at, ok := f.planned.Find(key); ok {
			t.rows = append(t.rows, line{name: at.Name, values: []float64{figureOf(f.planned, key), figureOf(f.most, key), figureOf(f.planned, key+".static")}})
		}
	}
	if at, ok := f.planned.Find("hydraulics.margin"); ok && at.OK {
		t.rows = append(t.rows, line{name: "least below fracture or test", note: at.Note,
			values: []float64{at.Value, figureOf(f.most, "hydraulics.margin"), nothing()}})
	}
	return t
}

// partTable lists what takes the standpipe's pressure.
func (f *flows) partTable() table {
	t := table{title: "Standpipe, part by part", rowHead: "Part", columns: []heading{
		{"planned", quantity.Pressure}, {"of standpipe", quantity.Ratio}, {"highest", quantity.Pressure}}}
	for _, at := range f.planned.Figures {
		if at.Group == "Standpipe, part by part" && at.Column == "" {
			t.rows = append(t.rows, line{name: at.Name, note: at.Note, values: []float64{figureOf(f.planned, at.Key), figureOf(f.planned, at.Key+".share"), figureOf(f.most, at.Key)}})
		}
	}
	t.rows = append(t.rows, line{name: "standpipe", values: []float64{figureOf(f.planned, "hydraulics.standpipe"), nothing(), figureOf(f.most, "hydraulics.standpipe")}})
	return t
}

// bitTable lists what the nozzles make of it.
func (f *flows) bitTable() table {
	t := table{title: "Bit", rowHead: "Flow", columns: []heading{{"TFA", quantity.Area}, {"loss", quantity.Pressure}, {"jets", quantity.JetVelocity},
		{"power", quantity.Power}, {"per hole area", quantity.PowerPerArea}, {"impact", quantity.JetForce}}}
	f.both(func(name string, s *calc.Sheet) {
		l := line{name: name}
		for _, key := range []string{"hydraulics.tfa", "hydraulics.bit.drop", "hydraulics.bit.velocity", "hydraulics.bit.power", "hydraulics.bit.power.area", "hydraulics.bit.impact"} {
			l.values = append(l.values, figureOf(s, key))
		}
		if tfa, ok := s.Find("hydraulics.tfa"); ok && tfa.Note != "" && name == "planned" {
			l.note = "nozzles " + tfa.Note + " 32nds"
		}
		t.rows = append(t.rows, l)
	})
	return t
}

// annulusTable lists the annulus from the top down, the riser with the booster.
func (p *printer) annulusTable(f *flows) table {
	t := table{title: "Annulus, top down; the riser with the booster", rowHead: "Of", columns: []heading{{"from", quantity.Length}, {"length", quantity.Length},
		{"bore", quantity.Diameter}, {"body", quantity.Diameter},
		{"velocity", quantity.Velocity}, {"highest flow", quantity.Velocity}, {"Reynolds", quantity.Count}, {"loss", quantity.Pressure}, {"highest flow, loss", quantity.Pressure}}}
	way := calc.Annuli(p.plan, f.section)
	for _, at := range f.planned.Figures {
		number, ok := strings.CutPrefix(at.Key, "hydraulics.annulus.")
		if !ok || strings.Contains(number, ".") {
			continue
		}
		k, err := strconv.Atoi(number)
		if err != nil || k < 1 || k > len(way) {
			continue
		}
		a := way[k-1]
		t.rows = append(t.rows, line{name: at.Name, note: at.Note, values: []float64{a.Top, figureOf(f.planned, at.Key+".length"), a.Bore, a.Body, figureOf(f.planned, at.Key+".velocity"),
			figureOf(f.most, at.Key+".velocity"), figureOf(f.planned, at.Key+".reynolds"), at.Value, figureOf(f.most, at.Key)}})
	}
	return t
}

// linerTable lists the liners on board at the planned flow.
func (p *printer) linerTable(f *flows) table {
	t := table{title: "Liners on board, planned flow", rowHead: "Liners", columns: []heading{{"size", quantity.Diameter}, {"all pumps", quantity.Flow},
		{"each pump", quantity.StrokeRate}, {"limit", quantity.Pressure}, {"usable", quantity.Ratio}, {"margin", quantity.Pressure},
		{"most to bit", quantity.Flow}}}
	usable := nothing()
	if rule := model.Rules()[model.RulePumpLoad]; rule.In(p.plan.Well.RuleSet) {
		share, _ := p.plan.Limit(rule)
		usable = share.SI
	}
	for _, at := range f.planned.Figures {
		key, ok := strings.CutPrefix(at.Key, "hydraulics.liner.")
		if !ok || strings.Contains(key, ".") {
			continue
		}
		l := line{name: at.Name, values: []float64{figureOf(f.planned, at.Key)}}
		for _, suffix := range []string{".flow", ".rate", ".limit", ".margin", ".most"} {
			if suffix == ".margin" {
				l.values = append(l.values, usable)
			}
			l.values = append(l.values, figureOf(f.planned, at.Key+suffix))
		}
		t.rows = append(t.rows, l)
	}
	return t
}

// barColumns is how many signs a bar on paper has.
const barColumns = 60

// hydraulicsNotes are the bar of the flow, the findings beyond limits met, the cautions that go with it, and who reckoned it.
func (p *printer) hydraulicsNotes(i int) []part {
	var parts []part
	for _, b := range calc.Bars(p.plan, i, model.TopicHydraulics) {
		parts = append(parts, p.barPart(b))
	}
	list := p.beyondMet("Findings of the hydraulics", i, either(byRules(hydraulicsRules()...), func(f calc.Finding) bool { return !f.HasLimit && p.entersIn(model.TopicHydraulics)(f) }))
	reading := part{title: "How to read it", remarks: []string{
		"each pump: all pumps on line at one rate, which give the flow through the bit and the booster's together.",
		"from: depth along hole of the upper end. velocity: flow over the area between bore and body, in the riser with the booster's flow; tool joints count in the loss only.",
		"usable: the share of the limit that the rule set lets be used; most to bit keeps to it. margin: to the whole limit.",
	}}
	cautions := part{title: "Cautions", remarks: []string{
		"Friction: by formula, for a smooth bore and a string at rest in the middle of a hole of the size planned; turning string, gel strength, and what " +
			"pressure and temperature do to the fluid are left out. What is measured at bit and standpipe goes before it.",
		"Cuttings: one density added throughout. Poor cleaning adds more, and a pack-off shows as standpipe pressure that rises by itself.",
		"Standpipe pressure that falls by itself is looked into first: washout, a lost nozzle, a pump, a loss of returns.",
		"Pumps: relief valves are set to the liners in use, and a change of liner changes every stroke count and the kill sheet.",
		"Breaking circulation takes more than circulating: start the pumps slowly, below a fracture or a shoe test that leaves little.",
	}}
	if p.plan.Sections[i].Returns == model.ToSeabed {
		cautions.remarks = append(cautions.remarks, "Riserless: heavy fluid runs out of the string by itself when the pumps stop, and its pressure at the standpipe may be none.")
	}
	return append(parts, reading, list, cautions, signed())
}

// hydraulicsRules are the rules that a section's circulating is held against.
func hydraulicsRules() []model.RuleID {
	return []model.RuleID{model.RulePumpsGiveFlow, model.RuleBelowBreakdown, model.RulePumpPressure, model.RulePumpLoad, model.RuleToolFlow,
		model.RuleECDMargin, model.RuleUSMarginECD, model.RuleTransport, model.RuleCuttingsShare, model.RuleSlantVelocity, model.RuleCarryingIndex,
		model.RuleRiserVelocity, model.RuleBooster, model.RuleVelocityLarge, model.RuleVelocityWide, model.RuleVelocityMedium, model.RuleVelocitySmall}
}

// barPart sets a bar: one line of signs, and what limits it.
func (p *printer) barPart(b calc.Bar) part {
	unit := p.System.Unit(b.Kind)
	value := func(x float64) string { return quantity.FormatUnit(x, b.Kind, unit) }
	set := part{title: b.Title, rowHead: "Limit"}
	if signs, to := plot.BarLine(b, barColumns); signs != "" {
		set.remarks = []string{"0 [" + signs + "] " + value(to),
			"o planned, = within all limits, . less than a least, x more than a most, | a limit"}
	}
	for _, l := range b.Limits {
		end := "at least"
		if l.Most {
			end = "at most"
		}
		r := row{name: l.Name, cells: []cell{{label: "flow", value: value(l.At), number: true}, {label: "end", value: end}}}
		if l.Note != "" {
			r.cells = append(r.cells, cell{label: "note", value: l.Note})
		}
		set.rows = append(set.rows, r)
	}
	set.remarks = append(set.remarks, b.Blank...)
	return set
}
