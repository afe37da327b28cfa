package sheet

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"
)

func writeMarkdown(w io.Writer, pages []page) error {
	var m markdownSheet
	for i, s := range pages {
		if i > 0 {
			m.WriteString("\n---\n\n")
		}
		s.each(escape)
		m.page(s)
	}
	_, err := w.Write(m.Bytes())
	return err
}

// markdownSheet writes Markdown with tables as GitHub reads them. All text in a page is escaped before it comes here.
type markdownSheet struct {
	bytes.Buffer
}

func (m *markdownSheet) page(s page) {
	fmt.Fprintf(m, "# %s\n", s.title)
	m.pairs(s.head)
	for _, p := range s.parts {
		if p.empty() {
			continue
		}
		fmt.Fprintf(m, "\n## %s\n", p.title)
		m.pairs(p.pairs)
		m.rows(p.rowHead, p.rows)
		m.items(p.items)
		for _, remark := range p.remarks {
			fmt.Fprintf(m, "\n%s\n", remark)
		}
		if len(p.drawn) > 0 {
			fmt.Fprintf(m, "\n```text\n%s\n```\n", strings.Join(p.drawn, "\n"))
		}
	}
	if s.foot != "" {
		fmt.Fprintf(m, "\n*%s*\n", s.foot)
	}
}

func (m *markdownSheet) pairs(pairs []pair) {
	if len(pairs) == 0 {
		return
	}
	m.WriteString("\n| Entry | Value |\n| --- | --- |\n")
	for _, p := range pairs {
		m.cells([]string{p.label, p.value})
	}
}

// rows writes a table with a column for each label that any of its rows has.
func (m *markdownSheet) rows(head string, rows []row) {
	if len(rows) == 0 {
		return
	}
	var labels []string
	var rules []string
	for k, r := range rows {
		if r.of != "" {
			r.cells = append(r.cells, cell{label: "of", value: r.of})
			rows[k] = r
		}
		for _, c := range r.cells {
			if label := c.head(); !slices.Contains(labels, label) {
				labels = append(labels, label)
				rules = append(rules, rule(c.number))
			}
		}
	}
	titles := []string{head}
	for _, label := range labels {
		if label == "" {
			label = "Value"
		}
		titles = append(titles, label)
	}
	m.WriteByte('\n')
	m.cells(titles)
	m.cells(append([]string{rule(false)}, rules...))
	for _, r := range rows {
		line := make([]string, len(titles))
		line[0] = r.name
		for _, c := range r.cells {
			if slot := &line[1+slices.Index(labels, c.head())]; !c.spare || *slot == "" { // columns of several kinds may share a label
				*slot = c.value
			}
		}
		m.cells(line)
	}
}

// head is the title of a cell's column.
func (c cell) head() string { return strings.TrimSpace(c.label + " " + c.unit) }

// rule is what stands below a column's title: numbers are set to the right.
func rule(number bool) string {
	if number {
		return "---:"
	}
	return "---"
}

func (m *markdownSheet) cells(line []string) {
	fmt.Fprintf(m, "| %s |\n", strings.Join(line, " | "))
}

func (m *markdownSheet) items(items []item) {
	if len(items) > 0 {
		m.WriteByte('\n')
	}
	for _, it := range items {
		fmt.Fprintf(m, "- **%s**: %s\n", it.mark, it.text)
		for _, line := range it.lines {
			fmt.Fprintf(m, "  - %s\n", line)
		}
	}
}

// escape takes the meaning in Markdown and HTML from every character of a text.
func escape(text string) string {
	var b strings.Builder
	for _, ch := range text {
		switch ch {
		case '&':
			b.WriteString("&amp;")
		case '<':
			b.WriteString("&lt;")
		case '>':
			b.WriteString("&gt;")
		case '\n', '\r':
			b.WriteByte(' ')
		case '\\', '|', '`', '*', '_', '[', ']', '~', '$', '#':
			b.WriteByte('\\')
			b.WriteRune(ch)
		default:
			b.WriteRune(ch)
		}
	}
	return b.String()
}
