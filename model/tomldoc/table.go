package tomldoc

// Origin names a table or a row of one Document, so that a Want can say which
// of them it speaks of. 0 names none. An Origin means nothing in any other
// document, nor in the one that Rewrite returns.
type Origin int

// Table is a table, or a row of a list, as it was read. Children stand in the
// order of the document. The values inside must not be changed.
type Table struct {
	Origin Origin
	Line   int  // where it begins
	Inline bool // written in braces: no list of tables can be added within
	Values []Leaf
	Tables []NamedTable
	Lists  []NamedList
}

// Leaf is a key with a value that is no table.
type Leaf struct {
	Key   string
	Value any    // string, int64, float64, bool, time.Time, []any
	Raw   string // the value as it is written
	Line  int
}

// NamedTable is a table inside another.
type NamedTable struct {
	Name  string
	Table Table
}

// NamedList is an array of tables.
type NamedList struct {
	Name   string
	Line   int  // of the first row
	Inline bool // written as name = [{...}, ...]: it can be read but its rows cannot be changed
	Rows   []Table
}

// Root returns what the document says.
func (d *Document) Root() Table { return d.read(d.root) }

func (d *Document) read(t *table) Table {
	out := Table{Origin: t.id, Line: t.line, Inline: t.inline != nil}
	if n := len(t.leaves); n > 0 {
		out.Values = make([]Leaf, n)
	}
	for i := range t.leaves {
		l := &t.leaves[i]
		out.Values[i] = Leaf{Key: l.name(), Value: l.value, Raw: d.raw(l), Line: l.pair.line}
	}
	if n := len(t.subs); n > 0 {
		out.Tables = make([]NamedTable, n)
	}
	for i, s := range t.subs {
		out.Tables[i] = NamedTable{Name: s.name, Table: d.read(s)}
	}
	if n := len(t.lists); n > 0 {
		out.Lists = make([]NamedList, n)
	}
	for i, l := range t.lists {
		rows := make([]Table, len(l.rows))
		for j, row := range l.rows {
			rows[j] = d.read(row)
		}
		out.Lists[i] = NamedList{Name: l.name, Line: l.line, Inline: l.pair != nil, Rows: rows}
	}
	return out
}

// raw returns the value of l as it is written.
func (d *Document) raw(l *leaf) string { return d.text[l.pair.val.start:l.pair.val.end] }
