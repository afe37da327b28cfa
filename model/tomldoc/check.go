package tomldoc

// check reads the text that Rewrite has made and compares it with what was
// wanted, and with what the document held besides.
func (d *Document) check(text string, w *Want) error {
	made, err := Parse(d.name, []byte(text))
	if err != nil {
		return &Error{File: d.name, Msg: "internal error: the changed document would not be valid (" + err.Error() + "); nothing was changed"}
	}
	c := checker{old: d, made: made}
	if !c.table(d.root, made.root, w) {
		return &Error{File: d.name, Msg: "internal error: the changed document would not say what was wanted at " + c.at + "; nothing was changed"}
	}
	return nil
}

// checker compares an old and a new document.
type checker struct {
	old, made *Document
	at        string // the name at which they differ
}

// differ notes where, and returns false.
func (c *checker) differ(t *table, name string) bool {
	if c.at == "" {
		c.at = short(t.within(name))
	}
	return false
}

// table checks that made is what w wants, and holds what w does not name as it
// was in old. Each of old and made is nil if it is not there.
func (c *checker) table(old, made *table, w *Want) bool {
	if old == nil {
		old = &table{}
	}
	if made == nil {
		made = &table{parent: old.parent, name: old.name}
	}
	for i := range w.Values {
		kv := &w.Values[i]
		found := made.find(kv.Key)
		if kv.Text == "" && found.leaf > 0 {
			return c.differ(made, kv.Key)
		}
		if kv.Text != "" && (found.leaf == 0 || !c.made.means(&made.leaves[found.leaf-1], kv.Text)) {
			return c.differ(made, kv.Key)
		}
	}
	for i := range w.Tables {
		want := &w.Tables[i]
		was, is := old.find(want.Name), made.find(want.Name)
		if was.leaf > 0 || was.list != nil {
			continue // left alone, as nothing is wanted there; compared below
		}
		if is.sub == nil && !(is.none() && want.Want.empty()) {
			return c.differ(made, want.Name)
		}
		if !c.table(was.sub, is.sub, &want.Want) {
			return false
		}
	}
	for i := range w.Lists {
		if !c.list(old, made, &w.Lists[i]) {
			return false
		}
	}
	return c.others(old, made, w)
}

// list checks the rows of one list.
func (c *checker) list(old, made *table, want *WantList) bool {
	was, is := old.find(want.Name), made.find(want.Name)
	if was.leaf > 0 || was.sub != nil {
		return true // as above
	}
	if is.list == nil {
		return is.none() && len(want.Rows) == 0 || c.differ(made, want.Name)
	}
	if len(is.list.rows) != len(want.Rows) {
		return c.differ(made, want.Name)
	}
	used := map[*table]bool{}
	for i := range want.Rows {
		row := c.old.rowOf(was.list, want.Rows[i].Origin)
		if used[row] {
			row = nil
		}
		used[row] = true
		if !c.table(row, is.list.rows[i], &want.Rows[i]) {
			return false
		}
	}
	return true
}

// others checks that what w does not name is in made as it is in old, and that
// nothing else is.
func (c *checker) others(old, made *table, w *Want) bool {
	kept := 0
	same := func(name string) bool {
		if w.owns(name, old.find(name)) {
			return true
		}
		kept++
		return c.same(old.find(name), old, made.find(name), made) || c.differ(made, name)
	}
	if !old.each(same) {
		return false
	}
	count := 0
	made.each(func(name string) bool {
		if !w.owns(name, made.find(name)) {
			count++
		}
		return true
	})
	return count == kept || c.differ(made, made.name)
}

// owns reports whether w names the child name, in the form in which it is
// there.
func (w *Want) owns(name string, c child) bool {
	for i := range w.Values {
		if w.Values[i].Key == name {
			return c.leaf > 0
		}
	}
	for i := range w.Tables {
		if w.Tables[i].Name == name {
			return c.sub != nil
		}
	}
	for i := range w.Lists {
		if w.Lists[i].Name == name {
			return c.list != nil
		}
	}
	return false
}

// each calls f with the name of each child, until it returns false.
func (t *table) each(f func(name string) bool) bool {
	for i := range t.leaves {
		if !f(t.leaves[i].name()) {
			return false
		}
	}
	for _, s := range t.subs {
		if !f(s.name) {
			return false
		}
	}
	for _, l := range t.lists {
		if !f(l.name) {
			return false
		}
	}
	return true
}

// same reports whether two children of a and b are alike.
func (c *checker) same(x child, a *table, y child, b *table) bool {
	switch {
	case x.leaf > 0:
		return y.leaf > 0 && c.old.raw(&a.leaves[x.leaf-1]) == c.made.raw(&b.leaves[y.leaf-1])
	case x.sub != nil:
		return y.sub != nil && c.sameTable(x.sub, y.sub)
	case x.list != nil:
		if y.list == nil || len(x.list.rows) != len(y.list.rows) {
			return false
		}
		for i := range x.list.rows {
			if !c.sameTable(x.list.rows[i], y.list.rows[i]) {
				return false
			}
		}
		return true
	}
	return y.none()
}

func (c *checker) sameTable(a, b *table) bool {
	return a.size() == b.size() && a.each(func(name string) bool {
		return c.same(a.find(name), a, b.find(name), b)
	})
}
