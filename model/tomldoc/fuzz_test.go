package tomldoc

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

// FuzzParse reads anything. What can be read is rewritten to itself, and with
// every value changed it still can be read. What is refused is refused by the
// decoder too, but for the limits and for documents that are not clear.
func FuzzParse(f *testing.F) {
	files, err := filepath.Glob("testdata/rewrite/*.txt")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add([]byte(partsOf(string(text))["before"]))
	}
	for _, src := range []string{
		"a = \"\"\"\\\r\n  x\"\"\"\"\"\r\n", "'a'.\"b\" . c = [[1], {x=1,}, 2026-01-01 10:00:00]", "a={b={c.d=1,},e=[{},{}],#x\n}\n",
		"[[a]]\n[[a.b]]\n[a.b.c]\n[[a]]\n", "x = 0x_1", "a=1e5\nb=-nan\nc=07:32:00.5", "\ufeff# x\n[a]\n\n# y\n\n[b]", "[a.b]\n[a]\nb.c = 1",
		"[[a.b]]\n[a]\nc = 1", "a = []\n[[a]]", "a = {}\n[a.b]", "a.b = 1\n[a]\nc = 2", "x = '''\n''''",
	} {
		f.Add([]byte(src))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		d, err := Parse("x", src)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) || strings.ContainsAny(err.Error(), "\n\r") {
				t.Fatalf("Parse gives %q", err)
			}
			limit := strings.Contains(e.Msg, "more than") || strings.Contains(e.Msg, "not clear enough") || strings.Contains(e.Msg, "UTF-16") ||
				strings.Contains(e.Msg, "too many quotes") // the decoder takes six quotes behind two backslashes
			if !limit && valid(string(src)) {
				t.Fatalf("%q is valid, but Parse gives %v", src, err)
			}
			return
		}
		w := wantAll(d.Root())
		out, err := d.Rewrite(w)
		if err != nil || string(out) != string(src) {
			t.Fatalf("an unchanged document became %q, was %q (%v)", out, src, err)
		}
		turn(&w)
		if _, err := d.Rewrite(w); err != nil && strings.Contains(err.Error(), "internal error") {
			t.Fatalf("Rewrite of %q: %v", src, err)
		}
	})
}

// valid asks the decoder alone.
func valid(src string) (ok bool) {
	defer func() {
		if recover() != nil {
			ok = false
		}
	}()
	var values map[string]any
	_, err := toml.Decode(src, &values)
	return err == nil
}

// wantAll returns a Want that knows all that is in t.
func wantAll(t Table) Want {
	w := Want{Origin: t.Origin}
	for _, leaf := range t.Values {
		w.Values = append(w.Values, KeyText{leaf.Key, leaf.Raw})
	}
	for _, n := range t.Tables {
		w.Tables = append(w.Tables, NamedWant{n.Name, wantAll(n.Table)})
	}
	for _, l := range t.Lists {
		list := WantList{Name: l.Name}
		for _, row := range l.Rows {
			list.Rows = append(list.Rows, wantAll(row))
		}
		w.Lists = append(w.Lists, list)
	}
	return w
}

// turn changes every second value, removes the others, adds a key to each
// table, and turns the rows of each list around.
func turn(w *Want) {
	for i := range w.Values {
		w.Values[i].Text = []string{`"other"`, ""}[i%2]
	}
	for i := range w.Tables {
		turn(&w.Tables[i].Want)
	}
	for i := range w.Lists {
		rows := w.Lists[i].Rows
		for j := range rows {
			turn(&rows[j])
		}
		for j, k := 0, len(rows)-1; j < k; j, k = j+1, k-1 {
			rows[j], rows[k] = rows[k], rows[j]
		}
	}
	w.Values = append(w.Values, KeyText{"added key", "1"})
}
