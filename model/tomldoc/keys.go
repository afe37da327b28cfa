package tomldoc

import "strings"

// edit replaces a stretch of the text.
type edit struct {
	start, end int
	text       string
	form       editForm
}

// editForm tells what an edit does to the lines around it.
type editForm uint8

const (
	inPlace  editForm = iota // nothing
	cutLine                  // the line is taken out, with its line end
	wholeRow                 // the text becomes a line of its own behind the line that ends at start
)

// values brings the keys of t to w.
func (r *rewriter) values(t *table, w *Want) error {
	if t.block < 0 && t.inline == nil && t.dotted == nil {
		r.head(t, w)
		return nil
	}
	var behind *pair // the nearest known key so far that is there and stays
	for i := range w.Values {
		kv := &w.Values[i]
		if kv.Text == "" {
			continue
		}
		c := t.find(kv.Key)
		if c.leaf > 0 {
			l := &t.leaves[c.leaf-1]
			behind = l.pair
			if !r.d.means(l, kv.Text) {
				r.edit(l.pair.block, edit{start: l.pair.val.start, end: l.pair.val.end, text: kv.Text})
			}
		} else if err := r.insert(t, behind, kv.Key, kv.Text); err != nil {
			return err
		}
	}
	return nil
}

// prepare checks what is wanted of the values of t and of the tables in it, and
// takes out the keys that are to be absent. It comes before anything is added,
// so that nothing is added behind a key that goes.
func (r *rewriter) prepare(t *table, w *Want) error {
	for i := range w.Values {
		kv := &w.Values[i]
		c := t.find(kv.Key)
		if kv.Text == "" {
			if c.leaf > 0 {
				r.remove(t.leaves[c.leaf-1].pair)
			}
			continue
		}
		if c.sub != nil || c.list != nil {
			return r.misfit(t, c, kv.Key, "a value; write %s = ...")
		}
		if c.leaf > 0 && r.d.raw(&t.leaves[c.leaf-1]) == kv.Text {
			continue
		}
		if _, ok := decodeText(kv.Text); !ok {
			return &Error{File: r.d.name, Msg: "internal error: " + oneLine(kv.Text) + " is not the text of a value"}
		}
	}
	for i := range w.Tables {
		if c := t.find(w.Tables[i].Name); c.sub != nil {
			if err := r.prepare(c.sub, &w.Tables[i].Want); err != nil {
				return err
			}
		}
	}
	return nil
}

// remove takes p out.
func (r *rewriter) remove(p *pair) {
	r.removed[p] = true
	if p.in != nil {
		r.pruned[p.in] = true
		return
	}
	r.edit(p.block, edit{start: lineStart(r.d.text, p.start()), end: lineEnd(r.d.text, p.val.end), form: cutLine})
}

// head gives a table that exists only through tables inside it a header of its
// own, if keys are wanted in it.
func (r *rewriter) head(t *table, w *Want) {
	if !w.hasValues() {
		return
	}
	p := r.printer(r.apart)
	p.table(t.path(), &Want{Values: w.Values})
	r.before[t.first] = append(r.before[t.first], fresh{text: string(p.text), apart: r.apart})
}

// insert adds a key to t, behind a given pair of it, or if that is nil behind
// its last one.
func (r *rewriter) insert(t *table, behind *pair, key, text string) error {
	entry := keyText(key) + " = " + text
	switch {
	case behind != nil:
		r.insertBehind(behind, len(behind.key)-1, entry)
	case t.block >= 0:
		r.insertInBlock(t, entry)
	case t.inline != nil:
		r.insertInBraces(t.inline, entry)
	default:
		return r.insertDotted(t, entry)
	}
	return nil
}

func (r *rewriter) insertInBlock(t *table, entry string) {
	b := &r.d.blocks[t.block]
	if p := r.lastKept(b.pairs); p != nil {
		r.insertBehind(p, 0, entry)
		return
	}
	at := b.headerEnd
	if b.kind == rootBlock {
		at = b.end
	} else {
		entry = indentAt(r.d.text, at) + entry
	}
	r.edit(t.block, edit{start: at, end: at, text: entry, form: wholeRow})
}

func (r *rewriter) insertInBraces(in *inline, entry string) {
	if p := r.lastKept(in.pairs); p != nil {
		r.insertBehind(p, 0, entry)
		return
	}
	r.filled[in] = append(r.filled[in], entry)
}

func (r *rewriter) insertDotted(t *table, entry string) error {
	for i := len(t.leaves) - 1; i >= 0; i-- {
		if p := t.leaves[i].pair; !r.removed[p] {
			r.insertBehind(p, len(p.key)-1, entry)
			return nil
		}
	}
	if t.dotted.in != nil && r.removed[t.dotted] {
		return r.d.failOn(t.line, "%s is written with dots inside braces, where its only key cannot be exchanged; write it as a [%s] block", short(t.name), short(t.path()))
	}
	r.insertBehind(t.dotted, t.depth, entry)
	return nil
}

// lastKept returns the last pair that stays, or nil.
func (r *rewriter) lastKept(pairs []pair) *pair {
	for i := len(pairs) - 1; i >= 0; i-- {
		if !r.removed[&pairs[i]] {
			return &pairs[i]
		}
	}
	return nil
}

// insertBehind adds an entry behind p, with the first parts of p's dotted key
// before it.
func (r *rewriter) insertBehind(p *pair, parts int, entry string) {
	entry = r.d.text[p.start():p.key[parts].start] + entry
	if p.in != nil {
		at := p.val.end
		r.edit(p.block, edit{start: at, end: at, text: ", " + entry})
		return
	}
	at := lineEnd(r.d.text, p.val.end)
	r.edit(p.block, edit{start: at, end: at, text: indentAt(r.d.text, p.start()) + entry, form: wholeRow})
}

// fill writes new entries into inline tables that have none of their own left.
func (r *rewriter) fill() {
	for in, entries := range r.filled {
		text := " " + strings.Join(entries, ", ")
		if strings.IndexByte(" \t\n", r.d.text[in.close-1]) < 0 {
			text += " "
		}
		r.edit(in.block, edit{start: in.open + 1, end: in.open + 1, text: text})
	}
}

// prune takes removed pairs out of inline tables, with the commas that go with
// them.
func (r *rewriter) prune() {
	for in := range r.pruned {
		simple := !containsLine(r.d.text[in.open:in.close])
		kept := false // whether an earlier pair stays
		for i := range in.pairs {
			p := &in.pairs[i]
			if !r.removed[p] {
				kept = true
				continue
			}
			e := edit{start: p.start(), end: p.val.end}
			switch {
			case !simple:
				// Comments may stand between: take the key and its own comma only.
				r.edit(p.block, e)
				if p.comma < 0 {
					continue
				}
				e = edit{start: p.comma, end: p.comma + 1}
			case kept:
				e.start = in.pairs[i-1].val.end
			case i+1 < len(in.pairs):
				e.end = in.pairs[i+1].start()
			case p.comma >= 0:
				e.end = p.comma + 1
			}
			r.edit(p.block, e)
		}
	}
}

func (r *rewriter) edit(block int, e edit) {
	r.edits[block] = append(r.edits[block], e)
}
