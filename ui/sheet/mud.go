package sheet

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// mudSteps is for how many steps of density a weight-up is listed, and how many natural steps of the unit each of them has.
const (
	mudSteps     = 8
	stepsForEach = 5
)

// mudCard makes the mud sheet of a section; why says what keeps it from being made.
func (p *printer) mudCard(i int) (c card, why string) {
	c = card{section: i, title: "Mud sheet: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	if s := &p.counts.Sections[i]; !s.Density.IsSet() {
		return c, "mud density is blank"
	}
	c.tables = append(c.tables, p.mudsTable(i))
	var figures []table
	for _, f := range p.result.Sheet(i).Figures {
		if f.Topic == model.TopicMud && f.OK && !strings.HasPrefix(f.Group, "Annulus") {
			figures = addFigure(figures, f, "")
		}
	}
	for k := range figures {
		figures[k].rowHead = "Figure"
	}
	if t := p.weightUpTable(i); len(t.rows) > 0 && (p.plan.Sections[i].Returns == model.ToRig || p.plan.Sections[i].Treatment.Density.IsSet()) {
		c.tables = append(c.tables, t)
	}
	c.tables = append(c.tables, figures...)
	c.notes = p.mudNotes(i)
	return c, ""
}

// mudsTable lists every fluid that the section is drilled with or has aboard, as entered.
func (p *printer) mudsTable(i int) table {
	s := &p.counts.Sections[i]
	t := table{title: "Fluids", rowHead: "Fluid", columns: []heading{{"density", quantity.Density}, {"volume", quantity.Volume}}}
	add := func(name string, density quantity.Value, volume float64) {
		if density.IsSet() {
			t.rows = append(t.rows, line{name: name, values: []float64{density.SI, volume}})
		}
	}
	name := s.Fluid
	if name == "" {
		name = "drilling fluid"
	}
	add(name, s.Density, nothing())
	if s.Returns == model.ToSeabed {
		add("weighted mud", s.WeightedDensity, p.value(i, "mud.riserless.volume"))
		add("heavy stock", s.Riserless.StockDensity, given(s.Riserless.StockVolume))
		add("spot fluid", s.SpotDensity, p.value(i, "mud.riserless.spot"))
		add("kill mud", s.Riserless.KillDensity, given(s.Riserless.KillVolume))
	}
	add("base fluid", s.Recipe.Base, nothing())
	add("second mud", s.Treatment.SecondDensity, given(s.Treatment.SecondVolume))
	add("seawater", p.plan.Well.Seawater, nothing())
	add("weighting material", p.plan.Rig.WeightingDensity, nothing())
	return t
}

// weightUpTable lists the weighting material for a few steps of density.
func (p *printer) weightUpTable(i int) table {
	s := &p.counts.Sections[i]
	change := "gained"
	if s.Treatment.Keep == model.VolumeKept {
		change = "dumped first"
	}
	t := table{title: "Weighting up, 100 lb sacks", rowHead: "Step", columns: []heading{{"mud", quantity.Volume}, {"to", quantity.Density}, {"material", quantity.Mass}, {"sacks", quantity.Count}, {change, quantity.Volume}, {"mixing", quantity.Hours}}}
	unit := p.System.Unit(quantity.Density)
	step := unit.ToSI(stepsForEach * quantity.Step(quantity.Density, unit))
	for k, up := range calc.WeightUps(p.plan, i, step, mudSteps) {
		l := line{name: fmt.Sprintf("step %d", k+1), values: []float64{up.Treated, up.Density, up.Mass, up.Sacks, up.Volume, up.Time}}
		if test, ok := p.result.Sheet(i).Find("control.test"); ok && test.OK && up.Density > test.Value {
			l.note = "above the shoe test, " + test.Note
		}
		t.rows = append(t.rows, l)
	}
	return t
}

// mudNotes are the findings on the mud beyond limits met, the cautions that go with it, and who worked it out.
func (p *printer) mudNotes(i int) []part {
	list := p.beyondMet("Findings on the mud", i, either(p.entersIn(model.TopicMud), func(f calc.Finding) bool { return f.Mend == "rig.barite" }))
	cautions := part{title: "Cautions", remarks: []string{
		"Masses and volumes: two people reproduce them before anything is mixed, dumped or pumped. What the mud engineer measures goes before what is planned here.",
		"Weighting up: by mass and volume alone. Pilot test first; viscosity, settling, air and heat are not treated. Density is brought up evenly, over whole circulations, never above what the shoe stands.",
		"Kick or losses: weighting up for a kick follows the well-control manual and its kill sheet, not this table.",
		"Pits: dead volume, cleaning and slops are left out. Line up, close and check every valve; mud dumped by mistake is a loss until shown otherwise.",
		"Chemicals: the makers' safety data sheets rule on handling, dust and storage; discharge follows the permit.",
	}}
	if p.plan.Sections[i].Returns == model.ToSeabed {
		cautions.remarks = append(cautions.remarks,
			"Riserless: there are no returns, so no pit gain tells of a flow. The stock lasts at the flow and rate of penetration given and no others: it is counted while drilling.",
			"Kill mud: friction while it is pumped comes on top of its column. A shallow flow is never shut in.")
	}
	return []part{list, cautions, signed()}
}
