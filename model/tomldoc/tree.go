package tomldoc

import (
	"strings"
	"time"
)

// table is a table of the document, however it is written: under a header of
// its own, by dotted keys, between braces, or only through tables inside it.
type table struct {
	name   string
	parent *table
	list   *list // the list it is a row of
	line   int
	id     Origin

	leaves []leaf
	subs   []*table
	lists  []*list
	index  map[string]child // of all three, once there are many

	block  int     // its own block; -1 if it has none
	inline *inline // its braces
	dotted *pair   // the last pair that wrote it as part of a dotted key
	depth  int     // how many parts of that key lead to it

	// The first and the last block that belong to it or to what is inside it;
	// -1 if there is none.
	first, last int
}

// leaf is a key whose value is not a table.
type leaf struct {
	pair  *pair
	value any
}

func (l *leaf) name() string { return l.pair.key[len(l.pair.key)-1].name }

// list is an array of tables.
type list struct {
	name        string
	parent      *table
	line        int
	rows        []*table
	pair        *pair // the pair that holds it, if it is written as an array
	first, last int
}

// child is what a name stands for in a table: one of the three, or nothing.
type child struct {
	leaf int // its index in leaves plus one
	sub  *table
	list *list
}

// many is the number of children from which a table keeps an index.
const many = 12

// find returns what name stands for in t.
func (t *table) find(name string) child {
	if t.index != nil {
		return t.index[name]
	}
	for i := range t.leaves {
		if t.leaves[i].name() == name {
			return child{leaf: i + 1}
		}
	}
	for _, s := range t.subs {
		if s.name == name {
			return child{sub: s}
		}
	}
	for _, l := range t.lists {
		if l.name == name {
			return child{list: l}
		}
	}
	return child{}
}

func (c child) none() bool { return c.leaf == 0 && c.sub == nil && c.list == nil }

// size is the number of children of t.
func (t *table) size() int { return len(t.leaves) + len(t.subs) + len(t.lists) }

// noted keeps the index of t after a child was added.
func (t *table) noted(name string, c child) {
	if t.index != nil {
		t.index[name] = c
		return
	}
	if t.size() <= many {
		return
	}
	t.index = make(map[string]child, 2*many)
	for i := range t.leaves {
		t.index[t.leaves[i].name()] = child{leaf: i + 1}
	}
	for _, s := range t.subs {
		t.index[s.name] = child{sub: s}
	}
	for _, l := range t.lists {
		t.index[l.name] = child{list: l}
	}
}

// newTable makes a table and gives it an Origin.
func (d *Document) newTable(name string, parent *table, line int) *table {
	t := &table{name: name, parent: parent, line: line, block: -1, first: -1, last: -1}
	d.tables = append(d.tables, t)
	t.id = Origin(len(d.tables))
	return t
}

func (d *Document) newSub(parent *table, name string, line int) *table {
	t := d.newTable(name, parent, line)
	parent.subs = append(parent.subs, t)
	parent.noted(name, child{sub: t})
	return t
}

func (d *Document) newList(parent *table, name string, line int) *list {
	l := &list{name: name, parent: parent, line: line, first: -1, last: -1}
	parent.lists = append(parent.lists, l)
	parent.noted(name, child{list: l})
	return l
}

func (d *Document) newRow(l *list, line int) *table {
	t := d.newTable(l.name, l.parent, line)
	t.list = l
	l.rows = append(l.rows, t)
	return t
}

// unclear is the error for a place where we and the decoder see different
// things.
func (d *Document) unclear(line int, name string) *Error {
	return d.failOn(line, "how %s is written here is not clear enough to be changed safely; write it as key = value under a [table] or [[list]] header", short(name))
}

// grow builds the tree of tables from blocks and pairs.
func (d *Document) grow() error {
	d.root = d.newTable("", nil, 1)
	for i := range d.blocks {
		b := &d.blocks[i]
		t, err := d.open(b)
		if err != nil {
			return err
		}
		b.table = t
		t.block = i
		for up := t; up != nil; up = up.parent {
			up.span(i)
		}
		if err := d.plant(t, b.pairs); err != nil {
			return err
		}
	}
	return nil
}

// span notes that block i belongs to t, and to the list that t is a row of.
func (t *table) span(i int) {
	if t.first < 0 {
		t.first = i
	}
	t.last = i
	if l := t.list; l != nil {
		if l.first < 0 {
			l.first = i
		}
		l.last = i
	}
}

// open finds or makes the table that the header of b names.
func (d *Document) open(b *block) (*table, error) {
	t := d.root
	if b.kind == rootBlock {
		return t, nil
	}
	n := len(b.path) - 1
	for _, p := range b.path[:n] {
		next, ok := d.step(t, p.name, b.line)
		if !ok {
			return nil, d.unclear(b.line, p.name)
		}
		t = next
	}
	name := b.path[n].name
	c := t.find(name)
	switch {
	case b.kind == tableBlock && c.none():
		return d.newSub(t, name, b.line), nil
	case b.kind == tableBlock && c.sub != nil && c.sub.block < 0 && c.sub.dotted == nil && c.sub.inline == nil:
		c.sub.line = b.line
		return c.sub, nil
	case b.kind == rowBlock && c.none():
		return d.newRow(d.newList(t, name, b.line), b.line), nil
	case b.kind == rowBlock && c.list != nil && c.list.pair == nil:
		return d.newRow(c.list, b.line), nil
	}
	return nil, d.unclear(b.line, name)
}

// step goes from t to the table that name stands for in a header: of a list, to
// its last row. It makes a table if name stands for nothing yet.
func (d *Document) step(t *table, name string, line int) (*table, bool) {
	switch c := t.find(name); {
	case c.sub != nil:
		return c.sub, true
	case c.list != nil && c.list.pair == nil:
		return c.list.rows[len(c.list.rows)-1], true
	case c.none():
		return d.newSub(t, name, line), true
	}
	return nil, false
}

// plant hangs pairs into t.
func (d *Document) plant(t *table, pairs []pair) error {
	for i := range pairs {
		p := &pairs[i]
		at := t
		for n, q := range p.key[:len(p.key)-1] {
			c := at.find(q.name)
			if c.none() {
				c.sub = d.newSub(at, q.name, p.line)
			} else if c.sub == nil || c.sub.dotted == nil {
				// TOML does not let dots reach into what was written otherwise.
				return d.unclear(p.line, q.name)
			}
			at = c.sub
			at.dotted, at.depth = p, n+1
		}
		if err := d.plantValue(at, p); err != nil {
			return err
		}
	}
	return nil
}

func (d *Document) plantValue(t *table, p *pair) error {
	name := p.key[len(p.key)-1].name
	if !t.find(name).none() {
		return d.unclear(p.line, name)
	}
	switch {
	case p.val.inline != nil:
		sub := d.newSub(t, name, p.line)
		sub.inline = p.val.inline
		return d.plant(sub, sub.inline.pairs)
	case len(p.val.rows) > 0:
		l := d.newList(t, name, p.line)
		l.pair = p
		for _, in := range p.val.rows {
			row := d.newRow(l, in.line)
			row.inline = in
			if err := d.plant(row, in.pairs); err != nil {
				return err
			}
		}
	default:
		t.leaves = append(t.leaves, leaf{pair: p})
		t.noted(name, child{leaf: len(t.leaves)})
	}
	return nil
}

// agree checks t against what the decoder made of it, and takes the decoded
// values over.
func (d *Document) agree(t *table, values map[string]any) error {
	for i := range t.leaves {
		l := &t.leaves[i]
		v, ok := values[l.name()]
		if !ok || !l.pair.val.agrees(v) {
			return d.unclear(l.pair.line, l.name())
		}
		l.value = v
	}
	for _, s := range t.subs {
		m, ok := values[s.name].(map[string]any)
		if !ok {
			return d.unclear(s.line, s.name)
		}
		if err := d.agree(s, m); err != nil {
			return err
		}
	}
	for _, l := range t.lists {
		rows, ok := decodedRows(values[l.name])
		if !ok || len(rows) != len(l.rows) {
			return d.unclear(l.line, l.name)
		}
		for i, row := range l.rows {
			if err := d.agree(row, rows[i]); err != nil {
				return err
			}
		}
	}
	// Names are unique on both sides, so equal numbers mean equal sets.
	if len(values) != t.size() {
		return d.unclear(t.line, t.path())
	}
	return nil
}

// agrees reports whether the decoder's value is what the scanner saw.
func (v *value) agrees(decoded any) bool {
	switch decoded := decoded.(type) {
	case string:
		return v.kind == textValue && v.text == decoded
	case []any, []map[string]any:
		return v.kind == arrayValue
	case int64, float64, bool, time.Time:
		return v.kind == scalarValue
	}
	return false
}

// decodedRows returns an array of tables as the decoder gives it.
func decodedRows(v any) ([]map[string]any, bool) {
	switch v := v.(type) {
	case []map[string]any:
		return v, true
	case []any:
		rows := make([]map[string]any, len(v))
		for i, e := range v {
			row, ok := e.(map[string]any)
			if !ok {
				return nil, false
			}
			rows[i] = row
		}
		return rows, true
	}
	return nil, false
}

// path is the full name of t as a header would have it.
func (t *table) path() string {
	if t.parent == nil {
		return ""
	}
	var names []string
	for up := t; up.parent != nil; up = up.parent {
		names = append(names, keyText(up.name))
	}
	for i, j := 0, len(names)-1; i < j; i, j = i+1, j-1 {
		names[i], names[j] = names[j], names[i]
	}
	return strings.Join(names, ".")
}

// within returns the path of a child of t.
func (t *table) within(name string) string {
	if t.parent == nil {
		return keyText(name)
	}
	return t.path() + "." + keyText(name)
}
