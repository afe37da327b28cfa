package tomldoc

import "strings"

// Blocks are put in their new order in two steps. First all old blocks are laid
// out, those of removed rows too: rows that change places do so with every
// block inside them, while the gaps between rows stay where they are. Then the
// text is written: removed blocks are passed over, new ones come in.
//
// TOML does not ask that the blocks of a row stand together: other tables may
// stand between them. A run is a stretch of blocks of one row without such
// others, and mostly a row is one run. A row that changes places is drawn
// together; one that does not keeps its runs where they are.

// run is a stretch of blocks of one row, or of the root.
type run struct {
	row     *table
	entries []entry
}

// entry is a block of the row itself, or a run of a row of a list in it.
type entry struct {
	block int
	inner *run // if not nil
}

// item is an old block laid out.
type item struct {
	block         int
	removed       bool
	gap           string // what stands between this block and the next
	before, after []fresh
}

// arranger lays out blocks.
type arranger struct {
	r     *rewriter
	runs  map[*table][]*run
	items []item

	firstItem, lastItem map[*table]int // of planned rows
	moved               []*plan        // plans whose rows changed places, inner ones first
}

// runs cuts the blocks of the document into runs and returns that of the root.
func (a *arranger) cut(d *Document) *run {
	root := &run{row: d.root}
	open := []*run{root} // the runs that the block before belongs to
	var rows []*table
	for i := range d.blocks {
		// The rows that this block is in, from the outermost, after the root.
		rows = rows[:0]
		for t := d.blocks[i].table; t != nil; t = t.parent {
			if t.list != nil {
				rows = append(rows, t)
			}
		}
		depth := 1
		for depth < len(open) && depth <= len(rows) && open[depth].row == rows[len(rows)-depth] {
			depth++
		}
		open = open[:depth]
		for depth <= len(rows) {
			inner := &run{row: rows[len(rows)-depth]}
			a.runs[inner.row] = append(a.runs[inner.row], inner)
			around := open[depth-1]
			around.entries = append(around.entries, entry{inner: inner})
			open = append(open, inner)
			depth++
		}
		around := open[len(open)-1]
		around.entries = append(around.entries, entry{block: i})
	}
	return root
}

// layRun lays out the blocks of a run.
func (a *arranger) layRun(in *run, removed bool) {
	for _, e := range in.entries {
		if e.inner != nil {
			a.layPlace(e.inner, removed)
			continue
		}
		a.items = append(a.items, item{
			block:   e.block,
			removed: removed,
			gap:     a.r.d.gap(e.block),
			before:  a.r.before[e.block],
			after:   a.r.after[e.block],
		})
	}
}

// layPlace lays out what comes to the place of a run of a row.
func (a *arranger) layPlace(in *run, removed bool) {
	row := in.row
	p := a.r.plans[row.list]
	runs := a.runs[row]
	isFirst, isLast := in == runs[0], in == runs[len(runs)-1]
	switch {
	case p == nil || removed:
		a.layRun(in, removed)
		return
	case p.occupant == nil || !p.stays[row]:
		if isFirst {
			a.firstItem[row] = len(a.items)
		}
		a.layRun(in, !p.stays[row])
		if isLast {
			a.placeNew(p, row)
		}
	case isFirst:
		comes := p.occupant[row]
		a.firstItem[comes] = len(a.items)
		for _, whole := range a.runs[comes] {
			a.layRun(whole, false)
		}
		a.placeNew(p, comes)
		if row == p.places[len(p.places)-1] {
			a.moved = append(a.moved, p)
		}
	}
	if rows := p.list.rows; isLast && row == rows[len(rows)-1] {
		a.behindLast(a.r.tails[p.list])
	}
}

// placeNew puts the new rows around a row that has just been laid out whole.
func (a *arranger) placeNew(p *plan, row *table) {
	a.lastItem[row] = len(a.items) - 1
	if news := p.before[row]; len(news) > 0 {
		first := &a.items[a.firstItem[row]]
		first.before = append(append([]fresh{}, news...), first.before...)
	}
	a.behindLast(p.after[row])
}

func (a *arranger) behindLast(news []fresh) {
	if len(news) > 0 {
		last := &a.items[len(a.items)-1]
		last.after = append(append([]fresh{}, last.after...), news...)
	}
}

// settleGaps gives each row that changed places the gap of its new place.
func (a *arranger) settleGaps() {
	for _, p := range a.moved {
		gaps := make([]string, len(p.places))
		for i, place := range p.places {
			gaps[i] = a.items[a.lastItem[place]].gap
		}
		for i, row := range p.order {
			a.items[a.lastItem[row]].gap = gaps[i]
		}
	}
}

// assemble returns the new text.
func (r *rewriter) assemble() string {
	a := &arranger{r: r, runs: map[*table][]*run{}, firstItem: map[*table]int{}, lastItem: map[*table]int{}}
	a.layRun(a.cut(r.d), false)
	a.settleGaps()
	w := joiner{lineEnd: r.lineEnd}
	for i := range a.items {
		it := &a.items[i]
		for _, f := range it.before {
			w.fresh(f)
		}
		if it.removed {
			w.passOver(it.gap, i == len(a.items)-1)
		} else {
			r.writeBlock(&w, it)
		}
		for _, f := range it.after {
			w.fresh(f)
		}
	}
	return w.finish(r.d.text == "")
}

// writeBlock writes an old block that stays.
func (r *rewriter) writeBlock(w *joiner, it *item) {
	b := &r.d.blocks[it.block]
	text := r.edited(it.block)
	remark := b.end > b.solidEnd
	if n := len(b.pairs); n == 0 || r.removed[&b.pairs[n-1]] {
		// A key may be gone from below a comment, or new below one. The end of a
		// text of several lines may look like a comment here; then a blank line
		// too many will follow.
		remark = strings.HasPrefix(strings.TrimLeft(text[lineStart(text, len(text)):], " \t"), "#")
	}
	w.block(text, remark)
	w.gap = it.gap
	switch {
	case b.start == b.end:
		w.apart = r.apart // the root had nothing to stand apart from
	case len(w.out) == 0:
		w.gap = trimLineEnds(w.gap) // the root lost all it had: blank lines would open the file
	}
}
