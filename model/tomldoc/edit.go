package tomldoc

import (
	"slices"
	"strings"
)

// edited returns the text of block i with its edits made.
func (r *rewriter) edited(i int) string {
	b := &r.d.blocks[i]
	edits := r.edits[i]
	if len(edits) == 0 {
		return r.d.text[b.start:b.end]
	}
	slices.SortStableFunc(edits, func(a, b edit) int { return a.start - b.start })
	w := lineWriter{lineEnd: r.lineEnd}
	pos := b.start
	for _, e := range edits {
		w.copy(r.d.text[pos:max(pos, e.start)])
		pos = max(pos, e.end)
		switch e.form {
		case inPlace:
			w.copy(e.text)
		case cutLine:
			w.cut = true
		case wholeRow:
			w.line(e.text)
		}
	}
	w.copy(r.d.text[pos:max(pos, b.end)])
	return w.finish()
}

// lineWriter puts together lines of which some were cut out.
type lineWriter struct {
	lineEnd string
	out     []byte
	cut     bool // a line was cut out where out ends; its line end is still to go
}

func (w *lineWriter) copy(s string) {
	if s == "" {
		return
	}
	if w.cut {
		s = strings.TrimPrefix(strings.TrimPrefix(s, "\r"), "\n")
		w.cut = false
	}
	w.out = append(w.out, s...)
}

// line writes s as a line of its own; the line end behind it follows from what
// is copied next.
func (w *lineWriter) line(s string) {
	if !w.cut && len(w.out) > 0 {
		w.out = append(w.out, w.lineEnd...)
	}
	w.cut = false
	w.out = append(w.out, s...)
}

func (w *lineWriter) finish() string {
	s := string(w.out)
	if w.cut {
		s = strings.TrimSuffix(strings.TrimSuffix(s, "\n"), "\r")
	}
	return s
}

// lineEndOf returns the line end that most lines of text have.
func lineEndOf(text string) string {
	if 2*strings.Count(text, "\r\n") > strings.Count(text, "\n") {
		return "\r\n"
	}
	return "\n"
}

// lineStart returns the offset at which the line of off begins.
func lineStart(text string, off int) int {
	return strings.LastIndexByte(text[:off], '\n') + 1
}

// indentAt returns the blanks at the beginning of the line of off.
func indentAt(text string, off int) string {
	line := text[lineStart(text, off):off]
	return line[:len(line)-len(strings.TrimLeft(line, " \t"))]
}

func containsLine(s string) bool { return strings.IndexByte(s, '\n') >= 0 }
