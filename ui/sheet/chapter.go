package sheet

import (
	"fmt"
	"slices"
	"strings"

	"borewalk/calc"
	"borewalk/model"
)

// chapter is a section's chapter of a drilling programme while it is written, in the order that crews expect. It is made of entries and
// figures by their keys; what the section does not have is left out, and a heading stays where nothing stands under it.
type chapter struct {
	*printer
	card
	sheet  *calc.Sheet
	number int    // of the heading
	name   string // of the heading
	under  int    // parts under it
}

// chapterCard makes the chapter of a section; why says what keeps it from being made.
func (p *printer) chapterCard(i int) (c card, why string) {
	if why := p.lacking(i, "hole.td", "its hole is not known"); why != "" {
		return card{}, why
	}
	ch := &chapter{printer: p, sheet: p.result.Sheet(i)}
	ch.card = card{section: i, title: "Drilling programme: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	if p.Format == PDF {
		ch.laid = append(ch.laid, p.schematicPart(i))
	}
	s := &p.counts.Sections[i]
	none := "no string is set in this section"
	ch.heading("Objective and depths", "", ch.objective)
	ch.heading("Hazards", "no hazard is entered for the formations of the section", ch.hazards)
	ch.heading("Pressures and mud", "", ch.mud)
	ch.heading("Directional plan", "no well path is entered", ch.directional)
	ch.heading("Drill string and drilling", "no drill string is entered", ch.drilling)
	ch.heading("Riser and displacement", "nothing is known of it", ch.riser)
	ch.heading("Logging and sampling", "no time for logging is entered (section["+fmt.Sprint(i+1)+"].rates.logging); sampling is the geologist's programme", ch.logging)
	ch.heading("Casing", none, ch.casing)
	if s.Completion == model.OpenHole || s.Method != model.Cemented {
		none = "the section is not cemented"
	}
	ch.heading("Cement", none, ch.cement)
	ch.heading("Tests", "nothing is tested before the BOP is on the well", ch.tests)
	ch.heading("Operations and time", "the operations are not known", ch.operations)
	ch.heading("Stocks and drawings", "no stock is entered", ch.stocks)
	ch.heading("Approvals and revisions", "", ch.approvals)
	ch.laid = append(ch.laid, p.cautionsPart(i))
	return ch.card, ""
}

// heading begins a numbered heading, which stays with the reason when nothing is written under it.
func (c *chapter) heading(name, otherwise string, write func()) {
	c.number++
	c.name, c.under = name, 0
	write()
	if c.under == 0 {
		c.laid = append(c.laid, part{title: fmt.Sprintf("%d %s", c.number, name), pairs: []pair{{"-", otherwise}}})
	}
}

// part puts a part under the heading, numbered; an empty one is left out.
func (c *chapter) part(title string, set part) {
	if set.empty() {
		return
	}
	c.under++
	set.title = fmt.Sprintf("%d.%d %s: %s", c.number, c.under, c.name, title)
	c.laid = append(c.laid, set)
}

// table puts a table under the heading, for programs too.
func (c *chapter) table(title string, t table) {
	if len(t.rows) == 0 {
		return
	}
	c.part(title, c.tablePart(&t))
	t.title = c.laid[len(c.laid)-1].title
	c.tables = append(c.tables, t)
}

// say puts remarks under the heading.
func (c *chapter) say(title string, remarks ...string) { c.part(title, part{remarks: remarks}) }

// figures puts the figures with some keys under the heading, each with its further columns, in the order of the keys. A key that ends
// with a point is for all that begin with it.
func (c *chapter) figures(title string, keys ...string) {
	lines := figureLines(c.sheet, keys)
	if len(lines) == 0 {
		return
	}
	c.part(title, c.figurePart("", lines))
	var list []table
	for _, line := range lines {
		for _, f := range line {
			f.Group = c.laid[len(c.laid)-1].title
			list = addFigure(list, f, "")
		}
	}
	c.tables = append(c.tables, list...)
}

// figureLines returns the lines of figures with some keys: a figure that begins a line, and those that stand on it.
func figureLines(s *calc.Sheet, keys []string) (lines [][]calc.Figure) {
	for _, key := range keys {
		for k := range s.Figures {
			f := s.Figures[k]
			if f.Column != "" || f.Key != key && !(strings.HasSuffix(key, ".") && strings.HasPrefix(f.Key, key)) {
				continue
			}
			end := k + 1
			for end < len(s.Figures) && s.Figures[end].Column != "" && s.Figures[end].Name == f.Name {
				end++
			}
			lines = append(lines, slices.Clone(s.Figures[k:end]))
		}
	}
	return lines
}

// entries puts entries of the section under the heading, those that are set and count.
func (c *chapter) entries(title string, keys ...string) {
	paths := make([]model.Path, len(keys))
	for k, key := range keys {
		paths[k] = model.PathOf(c.section, key)
	}
	c.part(title, part{pairs: c.setEntries(paths...)})
}

// wellEntriesOf puts entries of the whole plan under the heading.
func (c *chapter) wellEntriesOf(title string, paths ...model.Path) {
	c.part(title, part{pairs: c.setEntries(paths...)})
}

// setEntries returns entries by their paths, those that are set and count.
func (p *printer) setEntries(paths ...model.Path) (pairs []pair) {
	for _, path := range paths {
		ref, ok := model.Find(p.plan, path)
		if ok && ref.Idle(p.plan) == "" && ref.Get(p.plan).IsSet() {
			pairs = append(pairs, pair{ref.Field.Name, p.entryText(ref)})
		}
	}
	return pairs
}

// list puts a list of the section's entries under the heading.
func (c *chapter) list(title, name string) {
	c.rowsOf(title, model.PathOf(c.section, name))
}

// rowsOf puts a list of the plan's entries under the heading; one without rows is left out.
func (c *chapter) rowsOf(title string, path model.Path) {
	list, at, ok := model.FindList(c.plan, path)
	if !ok || list.Len(c.plan, at) == 0 {
		return
	}
	for _, set := range c.listParts("", list, at) {
		c.part(title, set)
	}
}

// chart puts one of a topic's charts under the heading, so high in mm and in lines.
func (c *chapter) chart(topic model.Topic, key string, height float64, rows int) {
	for _, chart := range calc.Charts(c.plan, c.section, topic) {
		if chart.Key == key {
			c.part(strings.ToLower(chart.Title[:1])+chart.Title[1:], c.chartPart(chart, height, rows))
		}
	}
}
