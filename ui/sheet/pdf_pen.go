package sheet

import (
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"borewalk/ui/vector"
)

// pen writes on the pages of a PDF. Its texts are in code page 1252, and their height is that of the middle of the capitals.
type pen struct {
	file *fpdf.Fpdf
	face face // chosen on the page last
}

// newPen begins a file. Nothing in it but the date that is given hangs on when and where it is written.
func newPen(printed time.Time) *pen {
	file := fpdf.New("P", "mm", "A4", "")
	if printed.IsZero() {
		printed = time.Unix(0, 0).UTC() // or the library would take the clock
	}
	file.SetCreationDate(printed)
	file.SetModificationDate(printed)
	file.SetCatalogSort(true)
	file.SetProducer("borewalk", false)
	file.SetAutoPageBreak(false, 0)
	file.SetMargins(0, 0, 0)
	return &pen{file: file}
}

// face is a built-in font in a size.
type face struct {
	family, style string
	size          float64
}

// fixed is the type of drawings made of characters.
func fixed(t vector.Type) face { return face{"Courier", "", t.Size} }

func faceOf(t vector.Type) face {
	if t.Bold {
		return face{"Helvetica", "B", t.Size}
	}
	return face{"Helvetica", "", t.Size}
}

func (p *pen) newPage() {
	p.file.AddPage()
	p.face = face{}
}

func (p *pen) choose(f face) {
	if p.face != f {
		p.file.SetFont(f.family, f.style, f.size)
		p.face = f
	}
}

func (p *pen) width(text string, t vector.Type) float64 {
	p.choose(faceOf(t))
	return p.file.GetStringWidth(text)
}

// capitals is the height of capitals in Helvetica, of the size of the type.
const capitals = 0.718

func (p *pen) text(x, y float64, text string, t vector.Type) {
	switch t.Align {
	case vector.Middle:
		x -= p.width(text, t) / 2
	case vector.Right:
		x -= p.width(text, t)
	}
	p.write(x, y, text, faceOf(t), t.Grey)
}

func (p *pen) write(x, y float64, text string, f face, grey vector.Grey) {
	if text == "" {
		return
	}
	p.choose(f)
	level := level(grey)
	p.file.SetTextColor(level, level, level)
	p.file.Text(x, y+f.size*25.4/72*capitals/2, text)
}

// level returns a grey as the file has it.
func level(g vector.Grey) int { return int(255*g + 0.5) }

// stroke chooses how lines are drawn.
func (p *pen) stroke(s vector.Stroke) {
	level := level(s.Grey)
	p.file.SetDrawColor(level, level, level)
	p.file.SetLineWidth(s.Width)
	p.file.SetDashPattern(s.Dash, 0)
}

func (p *pen) line(x1, y1, x2, y2 float64, s vector.Stroke) {
	p.stroke(s)
	p.file.Line(x1, y1, x2, y2)
}

// fit returns a text that is no wider than w, cut if it must be.
func (p *pen) fit(text string, t vector.Type, w float64) string {
	const cut = "..."
	if p.width(text, t) <= w {
		return text
	}
	for n := len(text) - 1; n > 0; n-- {
		if p.width(text[:n]+cut, t) <= w {
			return text[:n] + cut
		}
	}
	return ""
}

// wrap breaks a text between words into lines that are at most first wide, then rest. A word that is wider is broken within.
func (p *pen) wrap(text string, t vector.Type, first, rest float64) (lines []string) {
	line, room := "", first
	flush := func() {
		lines = append(lines, line)
		line, room = "", rest
	}
	for word := range strings.SplitSeq(text, " ") {
		if word == "" {
			continue
		}
		if line != "" && p.width(line+" "+word, t) <= room {
			line += " " + word
			continue
		}
		if line != "" {
			flush()
		}
		for len(word) > 1 && p.width(word, t) > room {
			n := 1
			for n < len(word)-1 && p.width(word[:n+1], t) <= room {
				n++
			}
			line, word = word[:n], word[n:]
			flush()
		}
		line = word
	}
	if line != "" || len(lines) == 0 {
		flush()
	}
	return lines
}

// place is a part of a page to draw on.
type place struct {
	*pen
	x, y float64
}

// Polyline draws a line.
func (p place) Polyline(points []vector.Point, s vector.Stroke) {
	if len(points) < 2 || s.Width == 0 {
		return
	}
	p.stroke(s)
	p.file.SetLineJoinStyle("round")
	p.file.MoveTo(p.x+points[0].X, p.y+points[0].Y)
	for _, at := range points[1:] {
		p.file.LineTo(p.x+at.X, p.y+at.Y)
	}
	p.file.DrawPath("D")
}

// Area fills what points go round.
func (p place) Area(points []vector.Point, fill vector.Grey, s vector.Stroke) {
	how := "F"
	if s.Width > 0 {
		p.stroke(s)
		how = "FD"
	}
	level := level(fill)
	p.file.SetFillColor(level, level, level)
	corners := make([]fpdf.PointType, len(points))
	for i, at := range points {
		corners[i] = fpdf.PointType{X: p.x + at.X, Y: p.y + at.Y}
	}
	p.file.Polygon(corners, how)
}

// Text writes a line of text.
func (p place) Text(x, y float64, text string, t vector.Type) { p.text(p.x+x, p.y+y, encode(text), t) }

// Width returns how wide a text is.
func (p place) Width(text string, t vector.Type) float64 { return p.width(encode(text), t) }
