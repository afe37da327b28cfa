package model

// PageKind says what a PageLine is.
type PageKind uint8

// The kinds of lines of a page. What stands in a table or in a row of a list comes right behind it, a level deeper.
const (
	PageTable PageKind = iota // the head of a single table
	PageRow                   // a row of a list
	PageEntry
	PageAdd // where a row can be added to a list
)

// PageLine is one line of what can be entered on a page.
type PageLine struct {
	Kind  PageKind
	Ref   Ref // the entry; of the other kinds Group and Place
	Level int // how many tables and rows it stands in
}

// Page returns what can be entered on a page, top to bottom: of the well what stands there, of a section what is its own. Entries
// that do not count just now are left out, but for planned ones that something as built counts in place of.
func Page(plan *Plan, topic Topic, section int) []PageLine {
	lines := planPage(plan, topic)
	switch {
	case topic == TopicWell || topic == TopicHandover:
		return lines
	case len(plan.Sections) == 0:
		return append(lines, PageLine{Kind: PageAdd, Ref: Ref{Group: SectionGroup()}})
	}
	at := Place{Outer: section}
	lines = appendEntries(lines, plan, SectionGroup(), at, topic, 0)
	for _, g := range SectionGroup().Lists {
		if g.Topic == topic {
			lines = appendNested(lines, plan, g, at, topic)
		}
	}
	return lines
}

// planPage returns what the plan has once, whatever section is open.
func planPage(plan *Plan, topic Topic) (lines []PageLine) {
	for _, g := range Groups() {
		switch {
		case g == SectionGroup() || !g.On(topic):
			continue
		case g.List:
			lines = appendList(lines, plan, g, Place{}, topic, 0)
			continue
		}
		lines = append(lines, PageLine{Kind: PageTable, Ref: Ref{Group: g}})
		lines = appendEntries(lines, plan, g, Place{}, topic, 1)
		for _, list := range g.Lists {
			if listCounts(plan, list) {
				lines = appendList(lines, plan, list, Place{}, topic, 1)
			}
		}
	}
	return lines
}

// listCounts leaves out the survey list while the well path is not given by one.
func listCounts(plan *Plan, g *Group) bool {
	return g.Path() != "trajectory.survey" || plan.Trajectory.Method == SurveyList
}

// appendNested adds a list or a single table of a section. What would not count is left out, but for rows that are there.
func appendNested(lines []PageLine, plan *Plan, g *Group, at Place, topic Topic) []PageLine {
	if g.List {
		if g.Len(plan, at) == 0 && g.Idle(plan, at) != "" {
			return lines
		}
		return appendList(lines, plan, g, at, topic, 0)
	}
	entries := appendEntries(nil, plan, g, at, topic, 1)
	if len(entries) == 0 {
		return lines
	}
	return append(append(lines, PageLine{Kind: PageTable, Ref: Ref{Group: g, Place: at}}), entries...)
}

func appendEntries(lines []PageLine, plan *Plan, g *Group, at Place, topic Topic, level int) []PageLine {
	for _, f := range g.Fields {
		ref := Ref{Group: g, Field: f, Place: at}
		if shown := ref.Idle(plan) == "" || ref.AsBuilt(plan) != ""; f.Topic == topic && shown {
			lines = append(lines, PageLine{PageEntry, ref, level})
		}
	}
	return lines
}

func appendList(lines []PageLine, plan *Plan, g *Group, at Place, topic Topic, level int) []PageLine {
	n := g.Len(plan, at)
	for i := range n {
		row := g.At(at, i)
		lines = append(lines, PageLine{PageRow, Ref{Group: g, Place: row}, level})
		lines = appendEntries(lines, plan, g, row, topic, level+1)
	}
	return append(lines, PageLine{PageAdd, Ref{Group: g, Place: g.At(at, n)}, level})
}
