package tomldoc

import (
	"math"
	"time"
)

// Want is the wanted state of a table or of a row of a list. What it does not
// name is not touched.
type Want struct {
	Origin Origin      // the row this one came from; 0 for a new one. Tables are found by name, theirs is not read.
	Values []KeyText   // known keys in canonical order
	Tables []NamedWant // known tables in it, in canonical order
	Lists  []WantList  // known lists in it, in canonical order
}

// KeyText is a key with the TOML text of its value, such as `"342 m"` or `3`.
// An empty text means that the key is to be absent.
type KeyText struct {
	Key, Text string
}

// NamedWant is the wanted state of a table inside another.
type NamedWant struct {
	Name string
	Want Want
}

// WantList is the wanted state of a list: all its rows, in order.
type WantList struct {
	Name string
	Rows []Want
}

// empty reports whether w asks for nothing to be there.
func (w *Want) empty() bool {
	return !w.hasValues() && !w.hasNested()
}

func (w *Want) hasValues() bool {
	for i := range w.Values {
		if w.Values[i].Text != "" {
			return true
		}
	}
	return false
}

func (w *Want) hasNested() bool {
	for i := range w.Tables {
		if !w.Tables[i].Want.empty() {
			return true
		}
	}
	for i := range w.Lists {
		if len(w.Lists[i].Rows) > 0 {
			return true
		}
	}
	return false
}

// decodeText returns the value that text means, and false if it is not the
// text of exactly one value.
func decodeText(text string) (any, bool) {
	if err := checkText("", []byte(text)); err != nil {
		return nil, false
	}
	s := &scanner{text: text}
	v, ok := s.value(0)
	if !ok || s.pos != len(text) {
		return nil, false
	}
	if v.kind == textValue {
		return v.text, true
	}
	holder, err := judge("", "v = "+text)
	if err != nil || len(holder) != 1 {
		return nil, false
	}
	return holder["v"], true
}

// means reports whether the leaf already has the value that text means.
func (d *Document) means(l *leaf, text string) bool {
	if d.raw(l) == text {
		return true
	}
	v, ok := decodeText(text)
	return ok && equal(v, l.value)
}

// equal compares decoded values. A whole number equals the same number written
// with a decimal point; a date equals the same moment in the same zone.
func equal(a, b any) bool {
	switch a := a.(type) {
	case string:
		b, ok := b.(string)
		return ok && a == b
	case bool:
		b, ok := b.(bool)
		return ok && a == b
	case int64:
		switch b := b.(type) {
		case int64:
			return a == b
		case float64:
			return equalNumbers(a, b)
		}
	case float64:
		switch b := b.(type) {
		case float64:
			return a == b || math.IsNaN(a) && math.IsNaN(b)
		case int64:
			return equalNumbers(b, a)
		}
	case time.Time:
		b, ok := b.(time.Time)
		return ok && a.Equal(b) && a.Location().String() == b.Location().String()
	case []any:
		b, ok := b.([]any)
		return ok && equalArrays(a, b)
	case map[string]any:
		b, ok := b.(map[string]any)
		return ok && equalMaps(a, b)
	}
	return false
}

// equalNumbers compares where a float64 still holds every whole number.
func equalNumbers(i int64, f float64) bool {
	const exact = 1 << 53
	return i >= -exact && i <= exact && float64(i) == f
}

func equalArrays(a, b []any) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if !equal(a[i], b[i]) {
			return false
		}
	}
	return true
}

func equalMaps(a, b map[string]any) bool {
	if len(a) != len(b) {
		return false
	}
	for k, v := range a {
		w, ok := b[k]
		if !ok || !equal(v, w) {
			return false
		}
	}
	return true
}
