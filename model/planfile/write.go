package planfile

import (
	"math"
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/model/tomldoc"
)

// wanted returns what a file is to say for the plan. Where doc says the same already, in whatever words, its words are
// kept.
func wanted(plan *model.Plan, doc *tomldoc.Document) tomldoc.Want {
	w := &writer{plan: plan, rows: map[tomldoc.Origin]tomldoc.Table{}}
	var root tomldoc.Table
	if doc != nil {
		root = doc.Root()
		w.remember(root)
		w.read = true
	}
	want := tomldoc.Want{Values: []tomldoc.KeyText{{Key: schemaKey, Text: strconv.Itoa(model.Schema)}}}
	if leaf, ok := leafOf(root, schemaKey); ok {
		want.Values[0].Text = leaf.Raw
	}
	w.nested(&want, model.FileGroups(), model.Place{}, root)
	return want
}

type writer struct {
	plan *model.Plan
	rows map[tomldoc.Origin]tomldoc.Table
	read bool // the plan came from a file
}

// remember indexes the rows of all lists by where they stand.
func (w *writer) remember(table tomldoc.Table) {
	for _, named := range table.Tables {
		w.remember(named.Table)
	}
	for _, list := range table.Lists {
		for _, row := range list.Rows {
			w.rows[row.Origin] = row
			w.remember(row)
		}
	}
}

func (w *writer) nested(want *tomldoc.Want, groups []*model.Group, at model.Place, table tomldoc.Table) {
	for _, g := range groups {
		if !g.List {
			old := tableOf(table, g.Name)
			want.Tables = append(want.Tables, tomldoc.NamedWant{Name: g.Name, Want: w.row(g, at, old)})
			continue
		}
		list := tomldoc.WantList{Name: g.Name}
		for i := range g.Len(w.plan, at) {
			place := g.At(at, i)
			origin := tomldoc.Origin(*g.Origin(w.plan, place))
			row := w.row(g, place, w.rows[origin])
			row.Origin = origin
			list.Rows = append(list.Rows, row)
		}
		want.Lists = append(want.Lists, list)
	}
}

func (w *writer) row(g *model.Group, at model.Place, old tomldoc.Table) tomldoc.Want {
	var want tomldoc.Want
	read := old.Line > 0 || (!g.List && w.read)
	for _, f := range g.Fields {
		entry := model.Ref{Group: g, Field: f, Place: at}.Get(w.plan)
		want.Values = append(want.Values, tomldoc.KeyText{Key: f.Key, Text: textOf(f, entry, old, read)})
	}
	w.nested(&want, g.Lists, at, old)
	return want
}

// textOf returns the TOML text for an entry: the text that stands in the file when it means the same. read says that the
// row or table was read from a file.
func textOf(f *model.Field, entry model.Entry, old tomldoc.Table, read bool) string {
	leaf, stands := leafOf(old, f.Key)
	if stands {
		if e, err := parse(f, leaf); err == nil && e == entry {
			return leaf.Raw
		}
	}
	switch {
	case !entry.IsSet():
		return ""
	case !stands && read && f.Type == model.ChoiceField && entry == f.DefaultEntry():
		return "" // the file leaves it out and means the default
	case f.Type == model.QuantityField && (f.Kind == quantity.Count || f.Kind == quantity.Number) && whole(entry.Quantity):
		return f.FileText(entry)
	}
	return tomldoc.Quote(f.FileText(entry))
}

// whole reports whether a bare number is an integer, which stands in a file without quotes; others are read as text only.
func whole(v quantity.Value) bool { return v.SI == math.Trunc(v.SI) }

// adopt gives every row of the plan the place that it has in a document just written, in which the lists stand in the
// plan's order.
func adopt(plan *model.Plan, root tomldoc.Table) {
	adoptIn(plan, model.FileGroups(), model.Place{}, root)
}

func adoptIn(plan *model.Plan, groups []*model.Group, at model.Place, table tomldoc.Table) {
	for _, g := range groups {
		if !g.List {
			adoptIn(plan, g.Lists, at, tableOf(table, g.Name))
			continue
		}
		for _, list := range table.Lists {
			if list.Name != g.Name {
				continue
			}
			for i, row := range list.Rows {
				place := g.At(at, i)
				*g.Origin(plan, place) = int(row.Origin)
				adoptIn(plan, g.Lists, place, row)
			}
		}
	}
}

func leafOf(table tomldoc.Table, key string) (tomldoc.Leaf, bool) {
	for _, leaf := range table.Values {
		if leaf.Key == key {
			return leaf, true
		}
	}
	return tomldoc.Leaf{}, false
}

func tableOf(table tomldoc.Table, name string) tomldoc.Table {
	for _, named := range table.Tables {
		if named.Name == name {
			return named.Table
		}
	}
	return tomldoc.Table{}
}
