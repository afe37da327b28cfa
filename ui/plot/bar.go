package plot

import (
	"fmt"
	"math"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// BarOptions say how a bar is drawn.
type BarOptions struct {
	Glyphs canvas.Glyphs
	Page   string // which picture of how many; written beside the title
	Unit   string // the unit shown
	Value  func(si float64, k quantity.Kind) string
	Ticks  func(low, high float64, n int, k quantity.Kind) []Tick
}

// The signs of a bar, the same on every terminal: what all limits allow, what one asks more than, what one forbids.
const (
	allowedSign = '='
	shortSign   = '.'
	beyondSign  = 'x'
)

// DrawBar draws a planned value on one scale among its limits into a region of any size: title, the planned value above the
// bar, the bar, a letter under each limit, the scale, and the letters explained, small for a least and capital for a most.
// Limits that are not known stand below. What has no room is left out from below.
func DrawBar(r canvas.Region, b calc.Bar, o BarOptions) {
	d := &barring{Bar: b, BarOptions: o, r: r}
	d.title()
	if !d.read() || r.W() < leastColumns || r.H() < 3 {
		d.text(2, "no limit is known", canvas.Plain)
		d.blanks(3)
		return
	}
	d.planned()
	if _, _, ok := d.Range(); !ok {
		d.text(1, "nothing keeps all limits", canvas.Stop)
	}
	d.bar()
	d.scale()
	d.blanks(d.legend(barHead))
}

// barHead is the first row below the scale.
const barHead = 7

// barring is one bar being drawn.
type barring struct {
	calc.Bar
	BarOptions
	r     canvas.Region
	to    float64 // end of the scale, which begins at zero
	taken int     // columns of the row of letters that are written
}

func (d *barring) text(y int, text string, style canvas.Style) {
	d.r.Text(1, y, canvas.Clip(d.Glyphs.Translate(text), d.r.W()-1), style)
}

func (d *barring) title() {
	page := d.Glyphs.Translate(d.Page)
	room := d.r.W() - 1
	if page != "" {
		room -= canvas.Width(page) + 2
		d.r.TextRight(0, 0, d.r.W(), page, canvas.Faint)
	}
	title := d.Title
	if d.Unit != "" {
		title += " " + d.Unit
	}
	d.r.Text(1, 0, canvas.Squeeze(d.Glyphs.Translate(title), room), canvas.Heading)
}

// read finds the ends of the scale, zero at the left, and reports whether there is something to draw.
func (d *barring) read() bool {
	see := func(x float64) {
		if known(x) && x > d.to {
			d.to = x
		}
	}
	for _, l := range d.Limits {
		see(l.At)
	}
	if d.HasPlanned {
		see(d.Planned)
	}
	d.to *= 1.1
	return d.to > 0 && !math.IsInf(d.to, 0) && len(d.Limits) > 0
}

// width is the columns of the bar; a blank stands at each side.
func (d *barring) width() int { return d.r.W() - 2 }

// column returns the column of a value.
func (d *barring) column(x float64) int {
	n := d.width() - 1
	return 1 + min(max(int(math.Round(float64(n)*x/d.to)), 0), n)
}

// planned writes the planned value above its place on the bar, and whether it keeps the limits.
func (d *barring) planned() {
	if !d.HasPlanned {
		d.text(2, "nothing is planned", canvas.Plain)
		return
	}
	text := "planned " + d.Value(d.Planned, d.Kind)
	style := canvas.OK
	if least, most, _ := d.Range(); d.Planned < least || d.Planned > most {
		text, style = text+", beyond a limit", canvas.Caution
	}
	text = canvas.Clip(text, d.r.W()-1)
	column := d.column(d.Planned)
	d.r.Text(max(min(column-canvas.Width(text)/2, d.r.W()-1-canvas.Width(text)), 1), 2, text, style)
	d.r.Put(column, 3, d.Glyphs.Down, style)
}

// signAt returns what the limits say of a value.
func signAt(b *calc.Bar, x float64) (ch rune, style canvas.Style) {
	switch least, most, _ := b.Range(); {
	case x > most:
		return beyondSign, canvas.Stop
	case x < least:
		return shortSign, canvas.Faint
	}
	return allowedSign, canvas.OK
}

// BarLine writes a bar in one line of so many ASCII signs, from zero to the value that it returns, with the planned value as
// the letter o: nothing where there is nothing to show.
func BarLine(b calc.Bar, width int) (line string, to float64) {
	d := barring{Bar: b}
	if width < 2 || !d.read() {
		return "", 0
	}
	signs := make([]rune, width)
	for k := range signs {
		signs[k], _ = signAt(&b, d.to*float64(k)/float64(width-1))
	}
	put := func(x float64, ch rune) {
		if known(x) {
			signs[min(max(int(math.Round(float64(width-1)*x/d.to)), 0), width-1)] = ch
		}
	}
	for _, l := range b.Limits {
		put(l.At, '|')
	}
	if b.HasPlanned {
		put(b.Planned, 'o')
	}
	return string(signs), d.to
}

// bar draws what the limits leave, column by column, with a stroke at each limit.
func (d *barring) bar() {
	for k := range d.width() {
		ch, style := signAt(&d.Bar, d.to*float64(k)/float64(d.width()-1))
		d.r.Put(1+k, 4, ch, style)
	}
	for k, l := range d.Limits {
		if !known(l.At) {
			continue
		}
		column := d.column(l.At)
		d.r.Put(column, 4, d.Glyphs.Vertical, canvas.Plain)
		if column >= d.taken { // of limits at one place the first is written
			d.r.Put(column, 5, d.letter(k), canvas.Plain)
			d.taken = column + 1
		}
	}
}

// letter returns the sign of limit k: small for a least, capital for a most.
func (d *barring) letter(k int) rune {
	ch := rune('a' + k%26)
	if d.Limits[k].Most {
		ch += 'A' - 'a'
	}
	return ch
}

// scale writes round values under the letters.
func (d *barring) scale() {
	used := 0
	for _, t := range d.Ticks(0, d.to, max(2, d.width()/9), d.Kind) {
		width := canvas.Width(t.Label)
		if at := max(min(d.column(t.SI)-width/2, d.r.W()-width), 0); at >= used {
			d.r.Text(at, 6, t.Label, canvas.Faint)
			used = at + width + 1
		}
	}
}

// legend explains the letters from a row on and returns the row below.
func (d *barring) legend(y int) int {
	for k, l := range d.Limits {
		word := "at least"
		if l.Most {
			word = "at most "
		}
		text := fmt.Sprintf("%c %s %s  %s", d.letter(k), word, d.Value(l.At, d.Kind), l.Name)
		if l.Note != "" {
			text += ", " + l.Note
		}
		style := canvas.Plain
		if d.HasPlanned && (l.Most && d.Planned > l.At || !l.Most && d.Planned < l.At) {
			text, style = "! "+text, canvas.Caution
		} else {
			text = "  " + text
		}
		d.text(y, text, style)
		y++
	}
	return y
}

// blanks writes what is not known.
func (d *barring) blanks(y int) {
	for k, text := range d.Blank {
		d.text(y+k, "  - "+text, canvas.Faint)
	}
}
