package planfile

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/model/tomldoc"
)

// schemaKey is the key that makes a TOML file a plan; its value is the version of the format.
const schemaKey = "borewalk"

// mostFaults bounds the list of faults in a file that is not meant to be a plan, or is badly damaged.
const mostFaults = 20

// nearlyFull is the size in bytes from which a plan's owner is told that no much larger one can be saved.
const nearlyFull = tomldoc.MaxSize * 7 / 8

// Read reads a plan from the content of the file called name.
func Read(name string, src []byte) (*File, error) {
	if len(strings.TrimSpace(string(src))) == 0 {
		return nil, fmt.Errorf("%s: the file is empty; a plan begins with the line %s = %d", name, schemaKey, model.Schema)
	}
	doc, err := tomldoc.Parse(name, src)
	if err != nil {
		return nil, err
	}
	r := &reader{name: name, plan: new(model.Plan), rows: map[*model.Group]int{}}
	root := doc.Root()
	if err := r.schema(root); err != nil {
		return nil, err
	}
	r.groups(root, model.FileGroups(), model.Place{}, "")
	r.absent()
	if len(r.faults) > 0 {
		return nil, errors.Join(r.faults...)
	}
	if len(src) > nearlyFull {
		r.notices = append(r.notices, fmt.Sprintf("%s: has %d kB, and a plan at most %d: take the oldest rows of its log, or what is not known here, out of it soon", name, len(src)>>10, tomldoc.MaxSize>>10))
	}
	if model.ChangedOutside(r.plan) {
		r.notices = append(r.notices, name+": the file was changed outside the program since its log ended")
	}
	return &File{Plan: r.plan, Notices: r.notices, doc: doc}, nil
}

// reader fills a plan from a document and collects what is wrong with it.
type reader struct {
	name    string
	plan    *model.Plan
	faults  []error
	notices []string
	rows    map[*model.Group]int // of all lists of a group, so far
}

func (r *reader) fault(line int, format string, args ...any) {
	if len(r.faults) < mostFaults {
		r.faults = append(r.faults, fmt.Errorf("%s:%d: %s", r.name, line, fmt.Sprintf(format, args...)))
	}
}

func (r *reader) schema(root tomldoc.Table) error {
	for _, leaf := range root.Values {
		if leaf.Key != schemaKey {
			continue
		}
		version, ok := leaf.Value.(int64)
		switch {
		case !ok || version < 1:
			return fmt.Errorf("%s:%d: %s = %s: the version of the format is a whole number such as %d", r.name, leaf.Line, schemaKey, model.Clean(clip(leaf.Raw)), model.Schema)
		case version > model.Schema:
			return fmt.Errorf("%s:%d: %s = %d: this program reads version %d and older; use a newer program", r.name, leaf.Line, schemaKey, version, model.Schema)
		}
		return nil
	}
	return fmt.Errorf("%s: not a plan: there is no line %s = %d", r.name, schemaKey, model.Schema)
}

// groups reads the groups that may stand within one table, and notes what else stands there. prefix is the table's path
// with a point behind it, or empty for the whole file.
func (r *reader) groups(table tomldoc.Table, groups []*model.Group, at model.Place, prefix string) {
	for _, named := range table.Tables {
		g := find(groups, named.Name)
		switch {
		case g == nil:
			r.unknown(named.Table.Line, prefix+named.Name, named.Name, names(groups))
		case g.List:
			r.fault(named.Table.Line, "[%s%s] is a list: write each row under [[%s%s]]", prefix, named.Name, prefix, named.Name)
		case named.Table.Inline && len(g.Lists) > 0:
			r.fault(named.Table.Line, "%s%s is written as an inline table: write it under [%s%s]", prefix, named.Name, prefix, named.Name)
		default:
			r.fields(g, at, named.Table, prefix+named.Name+".")
		}
	}
	for _, named := range table.Lists {
		g := find(groups, named.Name)
		switch {
		case g == nil:
			r.unknown(named.Line, prefix+named.Name, named.Name, names(groups))
		case !g.List:
			r.fault(named.Line, "[[%s%s]] is a single table: write [%s%s] once", prefix, named.Name, prefix, named.Name)
		case named.Inline:
			r.fault(named.Line, "%s%s is written as an inline array: write each row under [[%s%s]]", prefix, named.Name, prefix, named.Name)
		default:
			r.list(g, at, named, prefix)
		}
	}
	if prefix == "" {
		for _, leaf := range table.Values {
			if find(groups, leaf.Key) != nil {
				r.fault(leaf.Line, "%s is written as a value: write it under a heading of its own, [%s] or [[%s]]", leaf.Key, leaf.Key, leaf.Key)
			} else if leaf.Key != schemaKey {
				r.unknown(leaf.Line, leaf.Key, leaf.Key, append(names(groups), schemaKey))
			}
		}
	}
}

// list reads the rows of a list, unless there are more than a plan takes.
func (r *reader) list(g *model.Group, at model.Place, list tomldoc.NamedList, prefix string) {
	n, most := len(list.Rows), g.Most()
	if n > most {
		r.fault(list.Rows[most].Line, "%s%s has %d rows, and at most %d are taken: take some out", prefix, list.Name, n, most)
		return
	}
	r.rows[g] += n
	if over := r.rows[g] - g.MostInAll(); over > 0 {
		r.fault(list.Rows[max(0, n-over)].Line, "the lists %s have more than %d rows in all: take some out", g.Path(), g.MostInAll())
		return
	}
	g.Append(r.plan, at, len(list.Rows))
	for i, row := range list.Rows {
		place := g.At(at, i)
		*g.Origin(r.plan, place) = int(row.Origin)
		r.fields(g, place, row, prefix+list.Name+"["+strconv.Itoa(i+1)+"].")
	}
}

func (r *reader) fields(g *model.Group, at model.Place, table tomldoc.Table, prefix string) {
	for _, leaf := range table.Values {
		field := g.Field(leaf.Key)
		if find(g.Lists, leaf.Key) != nil {
			r.fault(leaf.Line, "%s%s is written as a value: write each row under [[%s%s]], or leave it out", prefix, leaf.Key, prefix, leaf.Key)
			continue
		}
		if field == nil {
			r.unknown(leaf.Line, prefix+leaf.Key, leaf.Key, keys(g))
			continue
		}
		entry, err := parse(field, leaf)
		if err != nil {
			r.fault(leaf.Line, "%s%s = %s: %v", prefix, leaf.Key, model.Clean(clip(leaf.Raw)), err)
			continue
		}
		model.Ref{Group: g, Field: field, Place: at}.Set(r.plan, entry)
	}
	r.groups(table, g.Lists, at, prefix)
}

// absent gives every entry that the file leaves out what that means, in tables and rows alike, whether they stand in the file
// or not.
func (r *reader) absent() {
	model.Walk(r.plan, func(g *model.Group, at model.Place) bool {
		for _, field := range g.Fields {
			ref := model.Ref{Group: g, Field: field, Place: at}
			if !ref.Get(r.plan).IsSet() {
				ref.Set(r.plan, field.Absent())
			}
		}
		return true
	})
}

// unknown notes a key that no field has. It is kept in the file, but whoever misspelt a key must learn of it.
func (r *reader) unknown(line int, path, key string, known []string) {
	if len(r.notices) == mostFaults {
		return
	}
	notice := fmt.Sprintf("%s:%d: %s is not known here and is kept as it stands", r.name, line, model.Clean(clip(path)))
	if near, ok := tomldoc.Nearest(key, known); ok {
		notice += "; the nearest known key is " + near
	}
	r.notices = append(r.notices, notice)
}

// parse reads a leaf of the document as an entry of the field.
func parse(field *model.Field, leaf tomldoc.Leaf) (model.Entry, error) {
	text, ok := leaf.Value.(string)
	if n, whole := leaf.Value.(int64); whole && (field.Kind == quantity.Count || field.Kind == quantity.Number) && field.Type == model.QuantityField {
		text, ok = strconv.FormatInt(n, 10), true
	}
	if !ok {
		return model.Entry{}, fmt.Errorf("wants text in quotes%s", example(field))
	}
	entry, err := field.Parse(text, 0)
	if err != nil {
		return model.Entry{}, fmt.Errorf("%w%s", err, allowed(field))
	}
	return entry, nil
}

func example(field *model.Field) string {
	if field.Type != model.QuantityField {
		return ""
	}
	if field.Default != "" {
		return fmt.Sprintf(" with its unit, such as %q", field.Default)
	}
	return " with its unit"
}

func allowed(field *model.Field) string {
	if field.Type == model.ChoiceField || (!field.Min.IsSet() && !field.Max.IsSet()) {
		return ""
	}
	return "; allowed is " + field.Min.Text() + " to " + field.Max.Text()
}

func find(groups []*model.Group, name string) *model.Group {
	for _, g := range groups {
		if g.Name == name {
			return g
		}
	}
	return nil
}

func names(groups []*model.Group) []string {
	list := make([]string, 0, len(groups)+1)
	for _, g := range groups {
		list = append(list, g.Name)
	}
	return list
}

func keys(g *model.Group) []string {
	list := names(g.Lists)
	for _, f := range g.Fields {
		list = append(list, f.Key)
	}
	return list
}

// clip shortens what is quoted from a file in a message.
func clip(text string) string {
	const most = 60
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "..."
}
