package tomldoc

import "strings"

// Rewrite returns the document with w brought about. Only what has to change
// does:
//
//   - A value that already means what is wanted stays as it is written. A
//     changed one is replaced in its place, so that its comment stays.
//   - A key that is to be absent loses its line with the comment behind it; a
//     comment line above it stays.
//   - A new key comes behind the nearest known key before it in canonical
//     order, else behind the last key of its table.
//   - A new table, and the first row of a list, come behind the block of the
//     known table or list before it.
//   - A removed row takes its blocks and the comment lines directly above their
//     headers along; a moved row moves with all of them. Comments that stand
//     free between blank lines stay where they are.
//
// Rewrite reads its own result before returning it. An error, always an *Error,
// means that the document cannot be brought to w by this, and says what to
// rewrite by hand; nothing is lost then.
func (d *Document) Rewrite(w Want) ([]byte, error) {
	r := &rewriter{
		d:       d,
		lineEnd: lineEndOf(d.text),
		apart:   d.separated(),
		removed: map[*pair]bool{},
		pruned:  map[*inline]bool{},
		filled:  map[*inline][]string{},
		edits:   map[int][]edit{},
		before:  map[int][]fresh{},
		after:   map[int][]fresh{},
		tails:   map[*list][]fresh{},
		plans:   map[*list]*plan{},
	}
	if err := r.whole(d.root, &w); err != nil {
		return nil, err
	}
	r.prune()
	r.fill()
	out := d.mark + r.assemble()
	if len(out) > MaxSize {
		return nil, &Error{File: d.name, Msg: "the changed document would be larger than 8 MiB; take something out first, of a plan the oldest rows of its log"}
	}
	if out != d.mark+d.text {
		if err := d.check(out, &w); err != nil {
			return nil, err
		}
	}
	return []byte(out), nil
}

// rewriter gathers what has to change.
type rewriter struct {
	d       *Document
	lineEnd string
	apart   bool // a blank line stands before headers

	removed map[*pair]bool
	pruned  map[*inline]bool     // inline tables that lose pairs
	filled  map[*inline][]string // entries for inline tables that have none left
	edits   map[int][]edit       // by block
	before  map[int][]fresh      // new blocks to stand before a block
	after   map[int][]fresh      // and behind one
	tails   map[*list][]fresh
	plans   map[*list]*plan
}

// fresh is the text of new blocks.
type fresh struct {
	text  string
	apart bool // a blank line is to stand before it
}

// spot is where new blocks go: behind a block, or behind all rows of a list.
type spot struct {
	block int
	list  *list
}

func (r *rewriter) put(at spot, f fresh) {
	if at.list != nil {
		r.tails[at.list] = append(r.tails[at.list], f)
		return
	}
	r.after[at.block] = append(r.after[at.block], f)
}

// whole brings the root or a row to w.
func (r *rewriter) whole(t *table, w *Want) error {
	if err := r.prepare(t, w); err != nil {
		return err
	}
	return r.table(t, w)
}

// table brings t, which is prepared, to w.
func (r *rewriter) table(t *table, w *Want) error {
	if err := r.values(t, w); err != nil {
		return err
	}
	at := r.home(t)
	for i := range w.Tables {
		if err := r.sub(t, &w.Tables[i], &at); err != nil {
			return err
		}
	}
	for i := range w.Lists {
		if err := r.list(t, &w.Lists[i], &at); err != nil {
			return err
		}
	}
	return nil
}

// home is the spot behind what t itself wrote, before all that is inside it.
func (r *rewriter) home(t *table) spot {
	switch {
	case t.block >= 0:
		return spot{block: t.block}
	case t.dotted != nil:
		return spot{block: t.dotted.block}
	case t.last >= 0:
		return r.tail(t)
	}
	return spot{}
}

// tail is the spot behind everything inside t, which has blocks.
func (r *rewriter) tail(t *table) spot {
	for _, l := range t.lists {
		if l.last == t.last {
			return spot{list: l}
		}
	}
	for _, s := range t.subs {
		if s.last == t.last {
			return r.tail(s)
		}
	}
	return spot{block: t.last}
}

// sub brings the table want.Name inside t to what is wanted of it. A new one
// goes to at, which then moves on.
func (r *rewriter) sub(t *table, want *NamedWant, at *spot) error {
	c := t.find(want.Name)
	if c.sub != nil {
		if c.sub.last >= 0 {
			*at = r.tail(c.sub)
		}
		return r.table(c.sub, &want.Want)
	}
	if want.Want.empty() {
		return nil
	}
	if !c.none() {
		return r.misfit(t, c, want.Name, "a table; write it as [%s]")
	}
	if t.braced() {
		text, ok := inlineText(&want.Want)
		if !ok {
			return r.braces(t)
		}
		return r.insert(t, nil, want.Name, text)
	}
	p := r.printer(r.apart)
	p.table(t.within(want.Name), &want.Want)
	r.put(*at, fresh{text: string(p.text), apart: r.apart})
	return nil
}

// list brings the list want.Name inside t to the wanted rows.
func (r *rewriter) list(t *table, want *WantList, at *spot) error {
	c := t.find(want.Name)
	if c.list != nil && c.list.pair != nil {
		if !r.d.unchanged(c.list, want.Rows) {
			return r.d.failOn(c.list.line, "the rows of %s stand in an array, where they cannot be changed; write each row as its own [[%s]] block", short(want.Name), short(t.within(want.Name)))
		}
		return nil
	}
	if c.list != nil {
		*at = spot{list: c.list}
		return r.rows(c.list, want.Rows)
	}
	if len(want.Rows) == 0 {
		return nil
	}
	if !c.none() {
		return r.misfit(t, c, want.Name, "a list; write each row as its own [[%s]] block, and take this one out")
	}
	if t.braced() {
		return r.braces(t)
	}
	path := t.within(want.Name)
	for i := range want.Rows {
		p := r.printer(r.apart)
		p.row(path, &want.Rows[i])
		r.put(*at, fresh{text: string(p.text), apart: r.apart})
	}
	return nil
}

// misfit is the error for a name that stands for something else than wanted.
func (r *rewriter) misfit(t *table, c child, name, wanted string) error {
	line, is := 0, ""
	switch {
	case c.leaf > 0:
		line, is = t.leaves[c.leaf-1].pair.line, "a value"
	case c.sub != nil:
		line, is = c.sub.line, "a table"
	default:
		line, is = c.list.line, "a list"
	}
	wanted = strings.ReplaceAll(wanted, "%s", short(t.within(name)))
	return r.d.failOn(line, "%s is %s, but must be %s", short(name), is, wanted)
}

// braces is the error for a list that has no room inside braces.
func (r *rewriter) braces(t *table) error {
	return r.d.failOn(t.line, "%s stands in braces, where no rows can be added; write it as a [%s] block", short(t.name), short(t.path()))
}

// braced reports whether t is inside braces, where headers do not reach.
func (t *table) braced() bool {
	return t.inline != nil || t.block < 0 && t.dotted != nil && t.dotted.in != nil
}

// plan is what becomes of the rows of a list. The places of the rows that stay
// are kept: where their order changes, they change places.
type plan struct {
	list     *list
	places   []*table           // rows that stay, in the order of the document
	order    []*table           // the same rows in the wanted order
	occupant map[*table]*table  // by place, the row that comes there; nil if the order stays
	stays    map[*table]bool    // by row
	before   map[*table][]fresh // new rows, by the row they go before
	after    map[*table][]fresh // or behind
}

// rows plans the rows of l.
func (r *rewriter) rows(l *list, rows []Want) error {
	p := &plan{
		list:   l,
		stays:  make(map[*table]bool, len(l.rows)),
		before: map[*table][]fresh{},
		after:  map[*table][]fresh{},
	}
	r.plans[l] = p
	apart := r.apart
	if len(l.rows) > 1 {
		apart = r.d.blankBefore(l.rows[1].block)
	}
	var leading []fresh
	for i := range rows {
		row := r.d.rowOf(l, rows[i].Origin)
		if row != nil && !p.stays[row] {
			p.stays[row] = true
			p.order = append(p.order, row)
			if err := r.whole(row, &rows[i]); err != nil {
				return err
			}
			continue
		}
		out := r.printer(apart)
		out.row(l.parent.within(l.name), &rows[i])
		f := fresh{text: string(out.text), apart: apart}
		if n := len(p.order); n > 0 {
			p.after[p.order[n-1]] = append(p.after[p.order[n-1]], f)
		} else {
			leading = append(leading, f)
		}
	}
	for _, row := range l.rows {
		if p.stays[row] {
			p.places = append(p.places, row)
		}
	}
	if len(leading) > 0 {
		if len(p.order) > 0 {
			p.before[p.order[0]] = leading
		} else {
			p.after[l.rows[len(l.rows)-1]] = leading
		}
	}
	for i := range p.places {
		if p.places[i] != p.order[i] {
			p.occupant = make(map[*table]*table, len(p.places))
			for j := range p.places {
				p.occupant[p.places[j]] = p.order[j]
			}
			break
		}
	}
	return nil
}

// rowOf returns the row of l that id names, or nil.
func (d *Document) rowOf(l *list, id Origin) *table {
	if l == nil || id <= 0 || int(id) > len(d.tables) {
		return nil
	}
	if t := d.tables[id-1]; t.list == l {
		return t
	}
	return nil
}

func (r *rewriter) printer(apart bool) *printer {
	return &printer{lineEnd: r.lineEnd, separated: apart}
}

// unchanged reports whether the rows of an inline list are the wanted ones.
func (d *Document) unchanged(l *list, rows []Want) bool {
	if len(rows) != len(l.rows) {
		return false
	}
	for i, row := range l.rows {
		if !d.satisfies(row, &rows[i]) {
			return false
		}
	}
	return true
}

// satisfies reports whether t already is what w wants of it.
func (d *Document) satisfies(t *table, w *Want) bool {
	for i := range w.Values {
		kv := &w.Values[i]
		c := t.find(kv.Key)
		if c.leaf == 0 && kv.Text != "" || c.leaf > 0 && (kv.Text == "" || !d.means(&t.leaves[c.leaf-1], kv.Text)) {
			return false
		}
	}
	for i := range w.Tables {
		sub := &w.Tables[i]
		c := t.find(sub.Name)
		if c.sub == nil && !sub.Want.empty() || c.sub != nil && !d.satisfies(c.sub, &sub.Want) {
			return false
		}
	}
	for i := range w.Lists {
		l := &w.Lists[i]
		c := t.find(l.Name)
		if c.list == nil && len(l.Rows) > 0 || c.list != nil && !d.unchanged(c.list, l.Rows) {
			return false
		}
	}
	return true
}
