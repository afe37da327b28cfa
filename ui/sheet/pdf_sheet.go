package sheet

import (
	"borewalk/ui/vector"
)

// Sizes of type in points, and distances in mm.
const (
	bodySize    = 8.5
	headingSize = 9.5
	titleSize   = 13
	drawnSize   = 7.5 // of drawings made of characters: 80 of them take 127 mm

	lineHeight  = 4.0
	drawnHeight = 3.0
	partGap     = 3.5
	columnGap   = 4.0
	pdfIndent   = 4.0
	smallHeight = bodyHeight / 7.0 // a part up to this height is not parted
)

func body() vector.Type { return vector.Type{Size: bodySize} }

// label is the type of what a value is called.
func label() vector.Type { return vector.Type{Size: bodySize, Grey: vector.Dark} }

// pdfSheet is one paper on its way onto pages: pieces, and how each is drawn from a height down.
type pdfSheet struct {
	*pen
	title, foot string
	pieces      []piece
	draw        []func(y float64)
	gap         float64 // wanted above the next piece
}

// newPDFSheet lays out a paper. Its texts are put into the code page.
func newPDFSheet(p *pen, s *page) *pdfSheet {
	s.each(encode)
	t := &pdfSheet{pen: p, title: s.title, foot: s.foot}
	for _, line := range p.wrap(s.title, vector.Type{Size: titleSize, Bold: true}, textWidth, textWidth) {
		t.add(6, func(y float64) { p.text(sideMargin, y+3, line, vector.Type{Size: titleSize, Bold: true}) })
	}
	t.hold()
	t.pairs(s.head)
	for i := range s.parts {
		if s.parts[i].empty() {
			continue
		}
		t.gap = partGap
		from := len(t.pieces)
		t.part(&s.parts[i])
		holdTogether(t.pieces[from:], smallHeight)
	}
	return t
}

// add adds a piece.
func (t *pdfSheet) add(height float64, draw func(y float64)) {
	t.pieces = append(t.pieces, piece{height: height, gap: t.gap})
	t.draw = append(t.draw, draw)
	t.gap = 0
}

// hold keeps the last piece with the next.
func (t *pdfSheet) hold() { t.pieces[len(t.pieces)-1].hold = true }

func (t *pdfSheet) part(p *part) {
	t.heading(p.title)
	t.pairs(p.pairs)
	if p.tall && len(p.rows) > 0 {
		t.tall(p.rowHead, p.rows)
	} else {
		t.rows(p.rowHead, p.rows)
	}
	for _, it := range p.items {
		t.item(&it)
	}
	for _, remark := range p.remarks {
		t.paragraph(remark, body(), 0, pdfIndent)
	}
	if p.drawing != nil {
		t.add(p.drawing.H, func(y float64) { p.drawing.Draw(place{t.pen, sideMargin, y}) })
		return
	}
	from := len(t.pieces)
	for _, line := range p.drawn {
		line = encode(line)
		t.add(drawnHeight, func(y float64) {
			t.write(sideMargin, y+drawnHeight/2, line, fixed(vector.Type{Size: drawnSize}), vector.Black)
		})
	}
	holdTogether(t.pieces[from:], bodyHeight-2*lineHeight)
}

// heading writes a heading over a line; one that is too wide is cut, since what it names stands in full below.
func (t *pdfSheet) heading(title string) {
	bold := vector.Type{Size: headingSize, Bold: true}
	title = t.fit(title, bold, textWidth)
	t.add(5.5, func(y float64) {
		t.text(sideMargin, y+2, title, bold)
		t.line(sideMargin, y+4.4, sideMargin+textWidth, y+4.4, vector.Stroke{Width: 0.15, Grey: vector.Mid})
	})
	t.hold()
}

// paragraph writes a text, its first line indented by first and the others by rest. A short one stays on one page.
func (t *pdfSheet) paragraph(text string, face vector.Type, first, rest float64) {
	from := len(t.pieces)
	for i, line := range t.wrap(text, face, textWidth-first, textWidth-rest) {
		x := sideMargin + rest
		if i == 0 {
			x = sideMargin + first
		}
		t.add(lineHeight, func(y float64) { t.text(x, y+lineHeight/2, line, face) })
	}
	holdTogether(t.pieces[from:], smallHeight)
}

// item writes a statement behind its mark, and what is to be said about it below.
func (t *pdfSheet) item(it *item) {
	from := len(t.pieces)
	bold := vector.Type{Size: bodySize, Bold: true}
	mark := it.mark + ":"
	after := t.width(mark, bold) + 1.2
	for i, line := range t.wrap(it.text, body(), textWidth-after, textWidth-pdfIndent) {
		t.add(lineHeight, func(y float64) {
			x := sideMargin + pdfIndent
			if i == 0 {
				t.text(sideMargin, y+lineHeight/2, mark, bold)
				x = sideMargin + after
			}
			t.text(x, y+lineHeight/2, line, body())
		})
	}
	for _, line := range it.lines {
		t.paragraph(line, body(), pdfIndent, 2*pdfIndent)
	}
	holdTogether(t.pieces[from:], smallHeight)
}
