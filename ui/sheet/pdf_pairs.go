package sheet

// Measures of labels with their values, in mm.
const (
	labelMost  = 56 // a label up to this width has its value beside it
	pairsGap   = 6  // between two pairs on a line
	pairsHalf  = (textWidth - pairsGap) / 2
	labelSpace = 2.5 // between a label and its value
)

// pairs writes labels and values, two on a line where both are short.
func (t *pdfSheet) pairs(pairs []pair) {
	at := 0.0
	for _, p := range pairs {
		if w := t.width(p.label, label()); w <= labelMost {
			at = max(at, w+labelSpace)
		}
	}
	short := func(k int) bool {
		return k < len(pairs) && t.width(pairs[k].label, label())+labelSpace <= at+1e-9 && at+t.width(pairs[k].value, body()) <= pairsHalf
	}
	for k := 0; k < len(pairs); k++ {
		p := pairs[k]
		switch {
		case short(k) && short(k+1):
			beside := pairs[k+1]
			t.add(lineHeight, func(y float64) {
				t.pair(p, sideMargin, at, y)
				t.pair(beside, sideMargin+pairsHalf+pairsGap, at, y)
			})
			k++
		case t.width(p.label, label()) > textWidth/2:
			t.paragraph(p.label+": "+p.value, body(), 0, pdfIndent)
		default:
			t.wide(p, max(at, t.width(p.label, label())+labelSpace))
		}
	}
}

func (t *pdfSheet) pair(p pair, x, at, y float64) {
	t.text(x, y+lineHeight/2, p.label, label())
	t.text(x+at, y+lineHeight/2, p.value, body())
}

// wide writes a label and its value on as many lines as that takes.
func (t *pdfSheet) wide(p pair, at float64) {
	from := len(t.pieces)
	for i, line := range t.wrap(p.value, body(), textWidth-at, textWidth-at) {
		name := ""
		if i == 0 {
			name = p.label
		}
		t.add(lineHeight, func(y float64) { t.pair(pair{name, line}, sideMargin, at, y) })
	}
	holdTogether(t.pieces[from:], smallHeight)
}
