package tomldoc

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// schema names what a table knows, in canonical order.
type schema struct {
	name   string
	values []string
	tables []schema
	lists  []schema
}

// plan is the part of a plan's schema that the tests work with.
func planSchema() schema {
	return schema{
		values: []string{"borewalk", "title", "units"},
		tables: []schema{
			{name: "well", values: []string{"name", "water_depth", "rig"}},
			{name: "rules", values: []string{"margin"}, tables: []schema{{name: "kick", values: []string{"volume", "limit"}}}},
		},
		lists: []schema{
			{name: "prognosis", values: []string{"depth", "pore"}},
			{
				name:   "section",
				values: []string{"name", "td"},
				tables: []schema{{name: "cement", values: []string{"top"}, lists: []schema{{name: "slurry", values: []string{"density", "volume"}}}}},
				lists: []schema{
					{name: "casing", values: []string{"od", "weight"}},
					{name: "string", values: []string{"item", "length"}},
				},
			},
		},
	}
}

// wantOf returns the Want that leaves t as it is.
func wantOf(t Table, s schema) Want {
	w := Want{Origin: t.Origin}
	for _, key := range s.values {
		w.Values = append(w.Values, KeyText{Key: key, Text: rawOf(t, key)})
	}
	for _, sub := range s.tables {
		var inner Table
		for _, n := range t.Tables {
			if n.Name == sub.name {
				inner = n.Table
			}
		}
		w.Tables = append(w.Tables, NamedWant{Name: sub.name, Want: wantOf(inner, sub)})
	}
	for _, l := range s.lists {
		list := WantList{Name: l.name}
		for _, n := range t.Lists {
			if n.Name == l.name {
				for _, row := range n.Rows {
					list.Rows = append(list.Rows, wantOf(row, l))
				}
			}
		}
		w.Lists = append(w.Lists, list)
	}
	return w
}

func rawOf(t Table, key string) string {
	for _, leaf := range t.Values {
		if leaf.Key == key {
			return leaf.Raw
		}
	}
	return ""
}

// outline writes what w wants, without origins, with values decoded.
func outline(t fataler, w Want) string {
	t.Helper()
	var b strings.Builder
	outlineInto(t, &b, "", w)
	return b.String()
}

// fataler is what both testing and rapid offer.
type fataler interface {
	Helper()
	Fatalf(string, ...any)
}

func outlineInto(t fataler, b *strings.Builder, path string, w Want) {
	t.Helper()
	for _, kv := range w.Values {
		if kv.Text == "" {
			continue
		}
		v, ok := decodeText(kv.Text)
		if !ok {
			t.Fatalf("%s%s: %s is no value", path, kv.Key, kv.Text)
		}
		fmt.Fprintf(b, "%s%s = %#v\n", path, kv.Key, v)
	}
	for _, sub := range w.Tables {
		outlineInto(t, b, path+sub.Name+".", sub.Want)
	}
	for _, l := range w.Lists {
		for i, row := range l.Rows {
			fmt.Fprintf(b, "%s%s[%d]\n", path, l.Name, i)
			outlineInto(t, b, fmt.Sprintf("%s%s[%d].", path, l.Name, i), row)
		}
	}
}

// at walks w along a path such as section[1].casing[0] and returns the Want
// there; the root for an empty path.
func at(t *testing.T, w *Want, path string) *Want {
	t.Helper()
	for path != "" {
		var step string
		step, path, _ = strings.Cut(path, ".")
		name, index, isRow := strings.Cut(strings.TrimSuffix(step, "]"), "[")
		if isRow {
			i, err := strconv.Atoi(index)
			rows := listIn(t, w, name)
			if err != nil || i >= len(*rows) {
				t.Fatalf("no row %s", step)
			}
			w = &(*rows)[i]
			continue
		}
		i := slices.IndexFunc(w.Tables, func(n NamedWant) bool { return n.Name == name })
		if i < 0 {
			t.Fatalf("no table %s", step)
		}
		w = &w.Tables[i].Want
	}
	return w
}

// listIn returns the rows of a list of w.
func listIn(t *testing.T, w *Want, name string) *[]Want {
	t.Helper()
	i := slices.IndexFunc(w.Lists, func(l WantList) bool { return l.Name == name })
	if i < 0 {
		t.Fatalf("no list %s", name)
	}
	return &w.Lists[i].Rows
}

// splitPath parts a path before its last dot.
func splitPath(path string) (parent, name string) {
	i := strings.LastIndexByte(path, '.')
	return path[:max(i, 0)], path[i+1:]
}

// change carries out one command on w:
//
//	set section[0].td "12 m"      the text of a value
//	unset section[0].td
//	remove section[1]             a row
//	move section 2 0              row 2 to place 0
//	add section 1                 an empty row at place 1
func change(t *testing.T, w *Want, command string) {
	t.Helper()
	verb, rest, _ := strings.Cut(command, " ")
	target, rest, _ := strings.Cut(rest, " ")
	parent, name := splitPath(target)
	in := at(t, w, parent)
	number := func(s string) int {
		i, err := strconv.Atoi(s)
		if err != nil {
			t.Fatalf("%s: %v", command, err)
		}
		return i
	}
	switch verb {
	case "set", "unset":
		i := slices.IndexFunc(in.Values, func(kv KeyText) bool { return kv.Key == name })
		if i < 0 {
			in.Values = append(in.Values, KeyText{Key: name})
			i = len(in.Values) - 1
		}
		in.Values[i].Text = rest
	case "remove":
		name, index, _ := strings.Cut(strings.TrimSuffix(name, "]"), "[")
		rows := listIn(t, in, name)
		i := number(index)
		*rows = slices.Delete(*rows, i, i+1)
	case "move":
		rows := listIn(t, in, name)
		from, to, _ := strings.Cut(rest, " ")
		row := (*rows)[number(from)]
		*rows = slices.Delete(*rows, number(from), number(from)+1)
		*rows = slices.Insert(*rows, number(to), row)
	case "add":
		rows := listIn(t, in, name)
		*rows = slices.Insert(*rows, number(rest), wantOf(Table{}, schemaAt(t, planSchema(), target)))
	default:
		t.Fatalf("unknown command %q", command)
	}
}

// schemaAt returns the schema of the list or table that path leads to.
func schemaAt(t *testing.T, s schema, path string) schema {
	t.Helper()
	for _, step := range strings.Split(path, ".") {
		name, _, _ := strings.Cut(step, "[")
		is := func(s schema) bool { return s.name == name }
		if i := slices.IndexFunc(s.tables, is); i >= 0 {
			s = s.tables[i]
		} else if i := slices.IndexFunc(s.lists, is); i >= 0 {
			s = s.lists[i]
		} else {
			t.Fatalf("no %s in the schema", step)
		}
	}
	return s
}

// mustParse parses a document that is in order.
func mustParse(t fataler, src string) *Document {
	t.Helper()
	d, err := Parse("plan.toml", []byte(src))
	if err != nil {
		t.Fatalf("Parse: %v\n%s", err, src)
	}
	return d
}
