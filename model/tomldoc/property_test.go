package tomldoc

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// author writes random documents in all the ways a person might. Each comment
// and each unknown key carries a number of its own and says which rows it stands
// in, as <1><4>, and, if it goes with a key, which one, as (name).
type author struct {
	t       *rapid.T
	out     strings.Builder
	lineEnd string
	count   int
	rows    string // marks of the rows around
	loose   bool   // other tables may stand between those of a row
	bare    bool   // no comment below the last key of a block
}

func (a *author) chance(percent int) bool { return chance(a.t, percent) }

// chance is true so many times in a hundred, roughly: small numbers, which are
// drawn more often than others, are spread out.
func chance(t *rapid.T, percent int) bool {
	return (rapid.IntRange(0, 99).Draw(t, "chance")*37+50)%100 < percent
}

func (a *author) pick(of ...string) string { return rapid.SampledFrom(of).Draw(a.t, "pick") }

func (a *author) number() int {
	a.count++
	return a.count
}

func (a *author) line(s string) { a.out.WriteString(s + a.lineEnd) }

// comment returns a comment that says where it stands.
func (a *author) comment(key string) string {
	return fmt.Sprintf("# c%d %s(%s)%s", a.number(), a.rows, key, a.pick("", " [x]", " \"", " = 1", " é", "\t"))
}

// gap writes blank lines, and comments between them that belong to no row.
func (a *author) gap() {
	if a.chance(40) {
		return
	}
	a.line(a.pick("", "", " ", "\t"))
	for a.chance(20) {
		rows := a.rows
		a.rows = ""
		a.line(a.comment(""))
		a.rows = rows
		a.line("")
	}
}

// text returns a value in some way of writing.
func (a *author) text() string {
	n := a.number()
	return fmt.Sprintf(a.pick(`"%d m"`, `'%d ft'`, `"%d \t\u00e9 \"x\""`, `%d`, `%d.5`, `"""%d`+a.lineEnd+`# no comment"""`,
		`'''`+a.lineEnd+`[no]%d'''`, `[ %d, "x" ]`, `[ # a remark`+a.lineEnd+` %d`+a.lineEnd+` ]`, `0x%x`, `[[%d], { x = 1 }]`), n)
}

// value returns a value for a key that may stand between braces.
func (a *author) value(known bool) string {
	if known || a.chance(70) {
		return a.text()
	}
	return fmt.Sprintf(a.pick("{ u%d = 1 }", "[{ u%d = 1 }, {}]", "{ u%d.v = [{}] }"), a.number())
}

func (a *author) tail(key string) string {
	if a.chance(30) {
		return a.pick(" ", "  ", "\t") + a.comment(key)
	}
	return a.pick("", "", " ")
}

// keys writes the known values of s, some of them, among unknown ones.
func (a *author) keys(s schema, prefix string) {
	names := rapid.Permutation(s.values).Draw(a.t, "values")
	for _, name := range names {
		if a.chance(25) {
			a.line(fmt.Sprintf("%su%d = %s", prefix, a.number(), a.value(false)) + a.tail(""))
		}
		if a.chance(65) {
			if a.chance(15) {
				a.line(a.comment(""))
			}
			if a.chance(10) {
				a.line("")
			}
			key := a.pick(name, name, `"`+name+`"`, "'"+name+"'")
			a.line(a.pick("", "", "  ") + prefix + key + a.pick(" = ", "=", "  =   ") + a.value(true) + a.tail(name))
		}
	}
	if a.chance(15) && !a.bare {
		a.line(a.comment("below"))
	}
}

// block writes a header with the keys below it.
func (a *author) block(path, open, closing string, s schema) {
	a.gap()
	for a.chance(20) {
		a.line(a.comment(""))
	}
	a.line(a.pick("", "", "  ") + open + a.pick("", " ") + path + a.pick("", " ") + closing + a.tail(""))
	a.keys(s, "")
}

// between may write an unknown table.
func (a *author) between() {
	if !a.chance(12) {
		return
	}
	rows := a.rows
	a.rows = ""
	a.gap()
	a.line(fmt.Sprintf("[other%d]", a.number()))
	a.line(fmt.Sprintf("u%d = %s", a.number(), a.value(false)) + a.tail(""))
	a.rows = rows
}

// nested writes what is inside the table called path.
func (a *author) nested(path string, s schema) {
	if path != "" {
		path += "."
	}
	parts := []func(){}
	for _, sub := range s.tables {
		if a.chance(55) {
			parts = append(parts, func() {
				if a.chance(80) {
					a.block(path+sub.name, "[", "]", sub)
				}
				a.nested(path+sub.name, sub)
			})
		}
	}
	for _, l := range s.lists {
		parts = append(parts, func() {
			for range rapid.IntRange(0, 3).Draw(a.t, "rows") {
				rows := a.rows
				a.rows += fmt.Sprintf("<%d>", a.number())
				a.block(path+l.name, "[[", "]]", l)
				a.line("mark = '" + a.rows + "'")
				a.nested(path+l.name, l)
				a.rows = rows
				if a.loose {
					a.between()
				}
			}
		})
	}
	for _, part := range rapid.Permutation(parts).Draw(a.t, "parts") {
		part()
		if a.loose {
			a.between()
		}
	}
}

// root writes the root table, in which tables may also be dotted or in braces.
func (a *author) root(s schema) {
	a.keys(s, "")
	rest := s
	rest.tables = nil
	for _, sub := range s.tables {
		switch {
		case a.chance(12):
			a.line(a.comment("below"))
			a.keys(sub, sub.name+a.pick(".", " . "))
		case a.chance(12):
			a.braces(sub)
		default:
			rest.tables = append(rest.tables, sub)
		}
	}
	a.nested("", rest)
}

// braces writes a table between braces.
func (a *author) braces(s schema) {
	var fields []string
	for _, name := range append(slices.Clone(s.values), "unknown") {
		if a.chance(60) {
			fields = append(fields, fmt.Sprintf("%s = \"%d\"", name, a.number()))
		}
	}
	for _, sub := range s.tables {
		if a.chance(50) {
			fields = append(fields, fmt.Sprintf("%s = {%s = \"%d\"}", sub.name, sub.values[0], a.number()))
		}
	}
	if a.chance(30) && len(fields) > 0 {
		for i := range fields {
			comma := ","
			if i == len(fields)-1 {
				comma = a.pick("", ",")
			}
			fields[i] += comma + " " + a.comment("")
		}
		a.line(s.name + " = {" + a.lineEnd + strings.Join(fields, a.lineEnd) + a.lineEnd + "}")
		return
	}
	a.line(s.name + " = {" + a.pick("", " ") + strings.Join(fields, a.pick(",", ", ", " , ")) + a.pick("", " ") + "}" + a.tail(""))
}

// write returns a document.
func (a *author) write() string {
	a.lineEnd = a.pick("\n", "\n", "\r\n")
	a.root(planSchema())
	text := a.out.String()
	if a.chance(30) {
		text = strings.TrimRight(text, " \t\r\n")
	}
	return a.pick("", "", byteOrderMark) + text
}

// hand changes a Want at random.
type hand struct {
	t       *rapid.T
	count   int
	removed map[Origin]bool
}

func (h *hand) chance(percent int) bool { return chance(h.t, percent) }

func (h *hand) values(w *Want) {
	for i := range w.Values {
		if h.chance(25) {
			h.count++
			n := strconv.Itoa(h.count)
			w.Values[i].Text = rapid.SampledFrom([]string{`"new ` + n + `"`, n, ""}).Draw(h.t, "text")
		}
	}
}

// change changes values, rows and their order everywhere in w.
func (h *hand) change(w *Want, s schema) {
	h.values(w)
	for i := range w.Tables {
		h.change(&w.Tables[i].Want, s.tables[i])
	}
	for i := range w.Lists {
		l := &w.Lists[i]
		var rows []Want
		for _, row := range l.Rows {
			if h.chance(20) {
				h.removed[row.Origin] = true
				continue
			}
			h.change(&row, s.lists[i])
			rows = append(rows, row)
		}
		for h.chance(20) {
			row := wantOf(Table{}, s.lists[i])
			h.change(&row, s.lists[i])
			rows = slices.Insert(rows, rapid.IntRange(0, len(rows)).Draw(h.t, "place"), row)
		}
		if h.chance(30) {
			rows = rapid.Permutation(rows).Draw(h.t, "rows")
		}
		l.Rows = rows
	}
}

// marks returns the marks of removed rows.
func marks(t Table, removed map[Origin]bool) []string {
	var out []string
	if removed[t.Origin] {
		for _, leaf := range t.Values {
			if leaf.Key == "mark" {
				mark := leaf.Value.(string)
				out = append(out, mark[strings.LastIndexByte(mark, '<'):])
			}
		}
	}
	for _, n := range t.Tables {
		out = append(out, marks(n.Table, removed)...)
	}
	for _, l := range t.Lists {
		for _, row := range l.Rows {
			out = append(out, marks(row, removed)...)
		}
	}
	return out
}

// unknown lists the leaves that the schema does not know, each with the marks
// of its rows.
func unknown(t Table, s schema, path string, removed map[Origin]bool, out map[string]int) {
	for _, leaf := range t.Values {
		if !slices.Contains(s.values, leaf.Key) {
			out[path+leaf.Key+" = "+leaf.Raw]++
		}
	}
	for _, n := range t.Tables {
		inner := schema{}
		if i := slices.IndexFunc(s.tables, func(s schema) bool { return s.name == n.Name }); i >= 0 {
			inner = s.tables[i]
		}
		unknown(n.Table, inner, path+n.Name+".", removed, out)
	}
	for _, l := range t.Lists {
		inner := schema{}
		if i := slices.IndexFunc(s.lists, func(s schema) bool { return s.name == l.Name }); i >= 0 {
			inner = s.lists[i]
		}
		for _, row := range l.Rows {
			if !removed[row.Origin] {
				unknown(row, inner, path+l.Name+".", removed, out)
			}
		}
	}
}

func draw(t *rapid.T, loose, bare bool) string {
	a := &author{t: t, loose: loose, bare: bare}
	return a.write()
}

func TestIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		src := draw(t, true, false)
		d := mustParse(t, src)
		out, err := d.Rewrite(wantOf(d.Root(), planSchema()))
		if err != nil {
			t.Fatalf("Rewrite: %v\n%s", err, src)
		}
		if string(out) != src || string(d.Bytes()) != src {
			t.Fatalf("an unchanged document became\n%q, was\n%q", out, src)
		}
	})
}

// TestChange changes anything and looks for what is lost.
func TestChange(t *testing.T) {
	comments := regexp.MustCompile(`# c\d+ (\S*)\((\w*)\)`)
	rapid.Check(t, func(t *rapid.T) {
		src := draw(t, true, false)
		d := mustParse(t, src)
		w := wantOf(d.Root(), planSchema())
		h := &hand{t: t, removed: map[Origin]bool{}}
		h.change(&w, planSchema())
		out, err := d.Rewrite(w)
		if err != nil {
			if known := strings.Contains(err.Error(), "stands in braces"); known {
				t.Skip("no room")
			}
			t.Fatalf("Rewrite: %v\n%s", err, src)
		}
		made := mustParse(t, string(out))

		if got, want := outline(t, wantOf(made.Root(), planSchema())), outline(t, w); got != want {
			t.Fatalf("the document says\n%s\nwant\n%s\nit was\n%s\nit is\n%s", got, want, src, out)
		}

		before, after := map[string]int{}, map[string]int{}
		unknown(d.Root(), planSchema(), "", h.removed, before)
		unknown(made.Root(), planSchema(), "", nil, after)
		for leaf, n := range before {
			if after[leaf] != n {
				t.Fatalf("unknown leaf %s stands %d times, want %d; the document was\n%s\nit is\n%s", leaf, after[leaf], n, src, out)
			}
		}

		gone := marks(d.Root(), h.removed)
		for _, c := range comments.FindAllStringSubmatch(src, -1) {
			lost := slices.ContainsFunc(gone, func(mark string) bool { return strings.Contains(c[1], mark) })
			if c[2] == "below" && len(gone) > 0 {
				continue // it may stand directly above the header of a removed row
			}
			if !lost && (c[2] == "" || c[2] == "below") && bytes.Count(out, []byte(c[0])) != 1 {
				t.Fatalf("comment %q is lost; the document was\n%s\nit is\n%s", c[0], src, out)
			}
		}

		crlf := strings.Count(string(out), "\r\n")
		if all := strings.Count(string(out), "\n"); crlf != 0 && crlf != all && strings.Contains(src, "\n") {
			t.Fatalf("line ends are mixed: %q", out)
		}
		if strings.HasPrefix(src, byteOrderMark) != bytes.HasPrefix(out, []byte(byteOrderMark)) {
			t.Fatal("the byte order mark is lost or new")
		}
	})
}

// TestBack changes values only, and changes them back.
func TestBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		src := draw(t, true, false)
		d := mustParse(t, src)
		old := wantOf(d.Root(), planSchema())
		w := wantOf(d.Root(), planSchema())
		changeTexts(t, &w)
		out, err := d.Rewrite(w)
		if err != nil {
			t.Fatalf("Rewrite: %v\n%s", err, src)
		}
		back, err := mustParse(t, string(out)).Rewrite(old)
		if err != nil {
			t.Fatalf("Rewrite back: %v\n%s", err, out)
		}
		if string(back) != src {
			t.Fatalf("there and back gives\n%q, was\n%q", back, src)
		}
	})
}

// changeTexts gives other texts to keys that are there.
func changeTexts(t *rapid.T, w *Want) {
	for i := range w.Values {
		if w.Values[i].Text != "" && rapid.Bool().Draw(t, "change") {
			w.Values[i].Text = rapid.SampledFrom([]string{`"other"`, `-3`, `"""two` + "\n" + `lines"""`}).Draw(t, "text")
		}
	}
	for i := range w.Tables {
		changeTexts(t, &w.Tables[i].Want)
	}
	for i := range w.Lists {
		for j := range w.Lists[i].Rows {
			changeTexts(t, &w.Lists[i].Rows[j])
		}
	}
}

// TestOrderBack moves rows only, and moves them back. The document has no other
// tables between those of a row, which would be drawn apart, and no comments
// below last keys, for which a blank line may come in.
func TestOrderBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		src := draw(t, false, true)
		d := mustParse(t, src)
		old := wantOf(d.Root(), planSchema())
		w := wantOf(d.Root(), planSchema())
		var shuffle func(w, old *Want)
		shuffle = func(w, old *Want) {
			for i := range w.Tables {
				shuffle(&w.Tables[i].Want, &old.Tables[i].Want)
			}
			for i := range w.Lists {
				rows, oldRows := w.Lists[i].Rows, old.Lists[i].Rows
				for j := range rows {
					shuffle(&rows[j], &oldRows[j])
				}
				w.Lists[i].Rows = rapid.Permutation(rows).Draw(t, "rows")
			}
		}
		shuffle(&w, &old)
		out, err := d.Rewrite(w)
		if err != nil {
			t.Fatalf("Rewrite: %v\n%s", err, src)
		}
		moved := mustParse(t, string(out))
		back := wantOf(moved.Root(), planSchema())
		restore(&back, &w, &old)
		again, err := moved.Rewrite(back)
		if err != nil {
			t.Fatalf("Rewrite back: %v\n%s", err, out)
		}
		if string(again) != src {
			t.Fatalf("there and back gives\n%s\nwas\n%s\nbetween\n%s", again, src, out)
		}
	})
}

// restore puts the rows of back, which stand as in w, into the order of old.
func restore(back, w, old *Want) {
	for i := range back.Tables {
		restore(&back.Tables[i].Want, &w.Tables[i].Want, &old.Tables[i].Want)
	}
	for i := range back.Lists {
		rows := back.Lists[i].Rows
		ordered := make([]Want, len(rows))
		for j := range rows {
			place := slices.IndexFunc(old.Lists[i].Rows, func(o Want) bool { return o.Origin == w.Lists[i].Rows[j].Origin })
			restore(&rows[j], &w.Lists[i].Rows[j], &old.Lists[i].Rows[place])
			ordered[place] = rows[j]
		}
		back.Lists[i].Rows = ordered
	}
}
