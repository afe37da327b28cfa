package tomldoc

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Quote returns s as a TOML basic string. Control characters, which could act
// on a terminal that shows the file, are written as escapes; a byte that is not
// UTF-8 becomes U+FFFD.
func Quote(s string) string {
	b := make([]byte, 0, len(s)+2)
	b = append(b, '"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b = append(b, '\\', byte(r))
		case r == '\b':
			b = append(b, `\b`...)
		case r == '\t':
			b = append(b, `\t`...)
		case r == '\n':
			b = append(b, `\n`...)
		case r == '\f':
			b = append(b, `\f`...)
		case r == '\r':
			b = append(b, `\r`...)
		case r < ' ' || r >= 0x7f && r < 0xa0:
			b = fmt.Appendf(b, `\u%04X`, r)
		default:
			b = utf8.AppendRune(b, r)
		}
	}
	return string(append(b, '"'))
}

// keyText returns a key as it must be written: in quotes only if need be.
func keyText(name string) string {
	for i := 0; i < len(name); i++ {
		if !isBare(name[i]) {
			return Quote(name)
		}
	}
	if name == "" {
		return `""`
	}
	return name
}

// Render writes a fresh document that holds what w wants, with LF line ends.
// Each line of header becomes a comment line at the top; an empty header writes
// none.
func Render(w Want, header string) []byte {
	var b strings.Builder
	if header != "" {
		for line := range strings.SplitSeq(strings.TrimRight(header, "\n"), "\n") {
			if !strings.HasPrefix(line, "#") {
				line = strings.TrimRight("# "+line, " ")
			}
			b.WriteString(line + "\n")
		}
	}
	out := printer{lineEnd: "\n", separated: true}
	out.values(w.Values)
	out.nested("", &w)
	if b.Len() > 0 && len(out.text) > 0 {
		b.WriteByte('\n')
	}
	b.Write(out.text)
	if len(out.text) > 0 {
		b.WriteByte('\n')
	}
	return []byte(b.String())
}

// printer writes new blocks, without a line end behind the last line.
type printer struct {
	lineEnd   string
	separated bool // a blank line stands before each header
	text      []byte
}

func (p *printer) line(s string) {
	if len(p.text) > 0 {
		p.text = append(p.text, p.lineEnd...)
	}
	p.text = append(p.text, s...)
}

func (p *printer) header(s string) {
	if len(p.text) > 0 && p.separated {
		p.text = append(p.text, p.lineEnd...)
	}
	p.line(s)
}

func (p *printer) values(values []KeyText) {
	for _, kv := range values {
		if kv.Text != "" {
			p.line(keyText(kv.Key) + " = " + kv.Text)
		}
	}
}

// table writes the table called path, unless it is empty.
func (p *printer) table(path string, w *Want) {
	if w.hasValues() {
		p.header("[" + path + "]")
		p.values(w.Values)
	}
	p.nested(path, w)
}

// row writes a row of the list called path.
func (p *printer) row(path string, w *Want) {
	p.header("[[" + path + "]]")
	p.values(w.Values)
	p.nested(path, w)
}

// nested writes the tables and lists inside the table called path.
func (p *printer) nested(path string, w *Want) {
	if path != "" {
		path += "."
	}
	for i := range w.Tables {
		p.table(path+keyText(w.Tables[i].Name), &w.Tables[i].Want)
	}
	for i := range w.Lists {
		for j := range w.Lists[i].Rows {
			p.row(path+keyText(w.Lists[i].Name), &w.Lists[i].Rows[j])
		}
	}
}

// inlineText writes w as an inline table. Lists have no place in one; ok is
// false if there are any.
func inlineText(w *Want) (text string, ok bool) {
	var fields []string
	for _, kv := range w.Values {
		if kv.Text != "" {
			fields = append(fields, keyText(kv.Key)+" = "+kv.Text)
		}
	}
	for i := range w.Tables {
		t := &w.Tables[i]
		if t.Want.empty() {
			continue
		}
		inner, ok := inlineText(&t.Want)
		if !ok {
			return "", false
		}
		fields = append(fields, keyText(t.Name)+" = "+inner)
	}
	for i := range w.Lists {
		if len(w.Lists[i].Rows) > 0 {
			return "", false
		}
	}
	return "{ " + strings.Join(fields, ", ") + " }", true
}
