package sheet

import (
	"fmt"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// asBuiltCard makes the sheet of what a section came to be; why says what keeps it from being made.
func (p *printer) asBuiltCard(i int) (c card, why string) {
	planned := p.result
	if p.counts != p.plan {
		planned = calc.Evaluate(model.AsPlanned(p.plan))
	}
	if f, ok := planned.Sheet(i).Find("hole.td"); !ok || !f.OK {
		return card{}, p.toMend(f.Why, f.Mend)
	}
	a := asBuilt{p, i, planned.Sheet(i), p.result.Sheet(i), &p.counts.Sections[i]}
	c = card{section: i, title: "As-built sheet: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	c.tables = filled(a.depths(), a.cement(), a.top(), a.tests(), a.dates(), a.stale())
	c.notes = a.notes()
	return c, ""
}

// asBuilt is what an as-built sheet of a section is made from.
type asBuilt struct {
	*printer
	section int
	planned *calc.Sheet // without actuals
	sheet   *calc.Sheet
	entries *model.Section
}

// comparison begins a table of what was planned and what was built, with room for what is not known yet.
func comparison(title string) table {
	return table{title: title, rowHead: "What", byHand: []string{"as built"}}
}

// compare adds a line: as planned, as built, and the difference. What is neither planned nor built is left out.
func (t *table) compare(name string, kind quantity.Kind, planned float64, built quantity.Value, note string) {
	if !finite(planned) && !built.IsSet() {
		return
	}
	t.add(name, note)
	t.set("planned", kind, planned)
	if built.IsSet() {
		t.set("as built", kind, built.SI)
		t.set("difference", kind, built.SI-planned)
		t.told()
	}
}

// stated adds a line in words, with room where nothing is known.
func (t *table) stated(name, what string) {
	t.add(name, what)
	if what != "" {
		t.told()
	}
}

func (a *asBuilt) depths() table {
	b, t := &a.entries.Built, comparison("Hole and string")
	t.compare("Hole TD", quantity.Length, figureOf(a.planned, "hole.td"), b.TD, "")
	t.compare("Mud at TD", quantity.Density, given(model.AsPlanned(a.plan).Sections[a.section].Density), b.Density, "")
	if b.Diameter.IsSet() {
		t.compare("Hole diameter, mean", quantity.Diameter, figureOf(a.sheet, "built.diameter"), b.Diameter, "")
	}
	if a.entries.Completion == model.OpenHole {
		return t
	}
	if b.Top.IsSet() || a.entries.Completion == model.WithLiner {
		t.compare("Top of the string", quantity.Length, figureOf(a.planned, "casing.top"), b.Top, "")
	}
	t.compare("Shoe", quantity.Length, figureOf(a.planned, "hole.shoe"), b.Shoe, "")
	if n := len(a.entries.Joints); n > 0 {
		t.compare("Shoe, by measured joints", quantity.Length, figureOf(a.planned, "tally.shoe"), quantity.Value{}, fmt.Sprint(n, " joints measured; see the running list"))
		t.told()
	}
	if a.entries.CarriesHousing() {
		t.figures(a.sheet, "Housing off the vertical", shown{"as built", "built.tilt"}, shown{"left", "built.tilt.left"})
		if _, read := a.sheet.Find("built.tilt"); read {
			t.told()
		} else {
			t.add("Housing, two axes", "")
		}
	}
	return t
}

func (a *asBuilt) cement() table {
	b, t := &a.entries.Built, comparison("Cement job")
	if _, cemented := a.planned.Find("cement.volume"); !cemented {
		return t
	}
	for k, row := range a.entries.Slurries {
		var pumped quantity.Value
		if k < len(a.entries.BuiltSlurries) {
			pumped = a.entries.BuiltSlurries[k].Volume
		}
		t.compare(own(row.Name, "slurry", k)+", pumped", quantity.Volume, figureOf(a.planned, fmt.Sprintf("cement.slurry.%d.volume", k+1)), pumped, "")
	}
	t.compare("Displacement", quantity.Volume, figureOf(a.planned, "cement.displacement"), b.Displaced, "")
	if a.entries.Cement.Placement != model.ByInnerString {
		t.stated("Plug bumped", b.Bumped)
		t.compare("Bumped to", quantity.Pressure, figureOf(a.planned, "cement.pump.bump"), b.BumpPressure, "")
	}
	t.stated("Returns seen", b.Returns)
	if b.Lost.IsSet() {
		t.compare("Lost in the job", quantity.Volume, nothing(), b.Lost, "")
	}
	return t
}

func (a *asBuilt) top() table {
	b, t := &a.entries.Built, comparison("Top of cement")
	if _, cemented := a.planned.Find("cement.volume"); !cemented {
		return t
	}
	planned := nothing()
	if len(a.entries.Slurries) > 0 {
		planned = figureOf(a.planned, "cement.slurry.1.top")
	}
	t.compare("Found", quantity.Length, planned, b.CementTop, b.CementTopBy)
	for _, line := range []struct{ name, key string }{{"By volume pumped", "built.volume_top"}, {"with what was lost", "built.volume_top.lost"}, {"Not accounted for", "built.unaccounted"}} {
		t.figures(a.sheet, line.name, shown{"as built", line.key})
		if _, there := a.sheet.Find(line.key); there {
			t.told()
		}
	}
	return t
}

// tests lists the tests of the string and of its shoe, which stands with the next section, and when the stack's fall due.
func (a *asBuilt) tests() table {
	t := comparison("Tests")
	if a.entries.Completion == model.OpenHole {
		return t
	}
	t.compare("String tested to", quantity.Pressure, given(model.AsPlanned(a.plan).Sections[a.section].Loads.TestPressure), a.entries.Built.TestPressure, "at the rig")
	if next := a.section + 1; next < len(a.plan.Sections) && a.plan.Sections[next].Returns == model.ToRig {
		s := &a.counts.Sections[next]
		measured := quantity.Value{}
		if f, run := a.result.Sheet(next).Find("control.test.exact"); run && f.OK {
			measured = quantity.Value{SI: f.Value, Unit: a.System.Unit(quantity.EMW)}
		}
		t.compare("Shoe test, EMW", quantity.EMW, given(s.LeakOff), measured, s.ShoeTest.Date)
	}
	for _, f := range a.sheet.Figures {
		if strings.HasPrefix(f.Key, "control.due.") {
			t.due(f)
			t.told()
		}
	}
	return t
}

func (a *asBuilt) dates() table {
	b, t := &a.entries.Built, comparison("Dates")
	t.stated("Section begun", b.Started)
	t.stated("TD reached", b.Reached)
	if a.entries.Completion == model.OpenHole {
		return t
	}
	t.stated("String landed", b.Landed)
	if _, cemented := a.planned.Find("cement.volume"); cemented {
		t.stated("Cemented", b.Cemented)
	}
	t.stated("String tested", b.Tested)
	return t
}

// stale lists what was measured before something that it depends on was changed.
func (a *asBuilt) stale() table {
	t := table{title: "Measured before something was changed", rowHead: "What"}
	for _, f := range a.sheet.Figures {
		if f.Group == calc.StaleGroup && f.Column == "" {
			t.figures(a.sheet, f.Name, shown{"off by", f.Key}, shown{"then", f.Key + ".then"}, shown{"now", f.Key + ".now"})
		}
	}
	return t
}

// notes are the findings on what was built, room for remarks, and who signs.
func (a *asBuilt) notes() []part {
	remarks := part{title: "Remarks"}
	for range 4 {
		remarks.remarks = append(remarks.remarks, "____________________________________________________________________________")
	}
	belongs := either(a.entersIn(model.TopicBuilt), byRules(model.RuleShoeOff, model.RuleHousingTilt, model.RulePlugBumped, model.RuleCementReturns))
	return []part{a.beyondMet("Findings on what was built", a.section, belongs), remarks, signed()}
}
