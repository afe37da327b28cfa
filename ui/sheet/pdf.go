package sheet

import (
	"io"
	"time"

	"borewalk/ui/vector"
)

// Measures of a page of A4, in mm.
const (
	paperWidth, paperHeight = 210, 297
	sideMargin              = 16
	textWidth               = paperWidth - 2*sideMargin
	headTop                 = 12  // the middle of the running head's first line
	bodyTop                 = 23  // where what the page is for begins
	bodyBottom              = 280 // and ends
	bodyHeight              = bodyBottom - bodyTop
	footTop                 = 284 // the middle of the caution's first line
)

// pdfPage is one page: which pieces of which paper stand on it.
type pdfPage struct {
	paper    *pdfSheet
	from, to int
}

// writePDF writes papers on pages of A4, each from a new page on.
func writePDF(w io.Writer, papers []page, s stamp, printed time.Time) error {
	p := newPen(printed)
	p.file.SetTitle(s.well, true)
	s = s.each(encode)
	var pages []pdfPage
	for i := range papers {
		sheet := newPDFSheet(p, &papers[i])
		first := breakPages(sheet.pieces, bodyHeight)
		for n, from := range first {
			to := len(sheet.pieces)
			if n+1 < len(first) {
				to = first[n+1]
			}
			pages = append(pages, pdfPage{sheet, from, to})
		}
	}
	for n, page := range pages {
		p.newPage()
		p.runningHead(&s, page.paper.title, pageOf(n+1, len(pages)))
		p.caution(page.paper.foot)
		page.draw()
	}
	return p.file.Output(w)
}

// draw draws the pieces of the page.
func (g pdfPage) draw() {
	y, t := float64(bodyTop), g.paper
	if again := t.pieces[g.from].again; again > 0 {
		t.draw[g.from-again](y)
		y += t.pieces[g.from-again].height
	}
	for i := g.from; i < g.to; i++ {
		if i > g.from {
			y += t.pieces[i].gap
		}
		t.draw[i](y)
		y += t.pieces[i].height
	}
}

// runningHead writes what the page is of and from.
func (p *pen) runningHead(s *stamp, title, page string) {
	name, small := vector.Type{Size: 9, Bold: true}, vector.Type{Size: 7.5, Grey: vector.Dark}
	right := small
	right.Align = vector.Right
	from := "revision " + s.revision + ", input hash " + s.hash
	if s.printed != "" {
		from += ", printed " + s.printed
	}
	from = p.fit(from, small, textWidth*2/3)
	p.text(paperWidth-sideMargin, headTop, from, right)
	p.text(sideMargin, headTop, p.fit(s.well, name, textWidth-p.width(from, small)-4), name)
	p.text(paperWidth-sideMargin, headTop+4, page, right)
	p.text(sideMargin, headTop+4, p.fit(title, small, textWidth-p.width(page, small)-4), small)
	p.line(sideMargin, headTop+6.5, paperWidth-sideMargin, headTop+6.5, vector.Stroke{Width: 0.2})
}

// caution writes what every page says at its foot.
func (p *pen) caution(text string) {
	t := vector.Type{Size: 6.5, Grey: vector.Dark}
	p.line(sideMargin, footTop-2.5, paperWidth-sideMargin, footTop-2.5, vector.Stroke{Width: 0.2})
	for i, line := range p.wrap(text, t, textWidth, textWidth) {
		p.text(sideMargin, footTop+float64(i)*t.Height(), line, t)
	}
}
