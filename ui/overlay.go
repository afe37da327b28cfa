package ui

import (
	"cmp"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
	"borewalk/ui/canvas"
	"borewalk/ui/clip"
)

// overlay is what lies over the page and takes the keys: a list to choose from, a text to read, a question.
type overlay interface {
	keys(p *Planner) []binding       // all that it obeys, those for the key line by their weight
	update(p *Planner, m tea.KeyMsg) // gives the key to the one that is declared, or to what is being typed
	draw(p *Planner, r canvas.Region)
	below() (title, detail string) // what stands below the page
}

// boxed is an overlay whose box has its title and the text of its focus.
type boxed interface {
	inBox() (title, text string)
}

// teller is an overlay that says more of its focus than below can, in the units shown, and something in place of the worst finding.
type teller interface {
	inWords(p *Planner) string
	found(p *Planner) (string, canvas.Style)
}

// item is one line of a menu.
type item struct {
	text  string
	full  string // shown below the page when the item has the focus, where there is more to say than fits
	style canvas.Style
	dead  bool // a heading or plain text, which cannot be chosen
}

// menu is an overlay with a list. Without pick it is a text to scroll.
type menu struct {
	title  string
	items  []item
	at     int // the item in focus, or the first line shown when there is nothing to pick
	pick   func(p *Planner, i int)
	copied func(i int) []string // what is copied of an item, or of a whole text; nil where nothing is
	does   string               // what enter does with an item, where it is not taken: "goes there"
	leaves string               // what esc does, where it is more than to close: "goes back"
	small  bool                 // shown and answered in a window that is too small for the pages
	back   overlay              // what esc returns to; nil for the page
}

// below returns the title and the item in focus in full, since the box may have cut them.
func (u *menu) below() (title, detail string) {
	if u.pick != nil && u.at < len(u.items) {
		detail = cmp.Or(u.items[u.at].full, u.items[u.at].text)
	}
	return u.title, detail
}

// inBox returns what the box says already where it has the room.
func (u *menu) inBox() (title, text string) {
	if u.pick != nil && u.at < len(u.items) {
		text = u.items[u.at].text
	}
	return u.title, text
}

func (u *menu) keys(p *Planner) []binding {
	page := max(1, p.rows()-3)
	moves := func(keys, shown, help, short string, by int) binding {
		return on(keys, shown, help, short, func(*Planner) { u.step(by) })
	}
	close := closing("left", cmp.Or(u.leaves, "closes"), func(p *Planner) { p.overlay = u.back })
	rest := []binding{close}
	if u.copied != nil {
		rest = []binding{on("c", "c", "copy this as text", "c copies", u.copy), close}
	}
	if u.pick == nil {
		return append([]binding{
			moves("down j", "down", "a line down", "up down scroll", 1), moves("up k", "up", "a line up", "", -1),
			moves("pgdown space", "page down, space", "a page down", "space a page", page), moves("pgup", "page up", "a page up", "", -page),
			moves("home", "home", "to the beginning", "", -len(u.items)), moves("end", "end", "to the end", "", len(u.items)),
		}, rest...)
	}
	return append([]binding{
		moves("down j", "down", "next line", "up down choose", 1), moves("up k", "up", "line before", "", -1),
		on("enter right", "enter", "take what has the focus, or go there", "enter "+cmp.Or(u.does, "takes it"), u.take),
		moves("pgdown", "page down", "a page down", "", page), moves("pgup", "page up", "a page up", "", -page),
		moves("home", "home", "first line", "", -len(u.items)), moves("end", "end", "last line", "", len(u.items)),
	}, rest...)
}

func (u *menu) update(p *Planner, m tea.KeyMsg) { p.obeyIn(u, m) }

// copy copies the item in focus, or the whole of a text.
func (u *menu) copy(p *Planner) {
	if u.at < len(u.items) {
		p.copyText(clip.Text(u.copied(u.at), p.plan, p.now()))
	}
}

// take picks the item in focus.
func (u *menu) take(p *Planner) {
	if u.at >= len(u.items) || u.items[u.at].dead {
		p.message = "enter: there is nothing to take on this line"
		return
	}
	p.overlay = nil
	u.pick(p, u.at)
}

// step moves by n items, passing over those that cannot be chosen.
func (u *menu) step(n int) {
	last := len(u.items) - 1
	u.at = max(0, min(u.at+n, last))
	if u.pick == nil {
		return
	}
	by := 1
	if n < 0 {
		by = -1
	}
	for u.at > 0 && u.at < last && u.items[u.at].dead {
		u.at += by
	}
	for u.at >= 0 && u.at <= last && u.items[u.at].dead {
		u.at -= by
	}
	u.at = max(0, min(u.at, last))
}

func (u *menu) draw(p *Planner, r canvas.Region) {
	frame(p, r, u.title)
	in := r.Sub(1, 1, r.W()-2, r.H()-2)
	first := u.first(in.H())
	for y := 0; y < in.H() && first+y < len(u.items); y++ {
		i := first + y
		style, mark := u.items[i].style, " "
		if u.pick != nil && i == u.at {
			style, mark = canvas.Focus, string(p.glyphs.Mark)
		}
		in.Text(0, y, mark+" "+canvas.Cut(p.glyphs.Translate(u.items[i].text), in.W()-2), style)
	}
	more(p, r, first > 0, first+in.H() < len(u.items))
}

// first returns the item on the top line of a list that shows n.
func (u *menu) first(n int) int {
	if u.pick == nil {
		u.at = max(0, min(u.at, len(u.items)-n))
		return u.at
	}
	return max(0, min(u.at-n/2, len(u.items)-n))
}

// frame draws a box with a title and clears what is in it.
func frame(p *Planner, r canvas.Region, title string) {
	g := p.glyphs
	r.Fill(' ', canvas.Plain)
	r.HLine(0, 0, r.W(), g.Horizontal, canvas.Faint)
	r.HLine(0, r.H()-1, r.W(), g.Horizontal, canvas.Faint)
	r.VLine(0, 0, r.H(), g.Vertical, canvas.Faint)
	r.VLine(r.W()-1, 0, r.H(), g.Vertical, canvas.Faint)
	r.Put(0, 0, g.TopLeft, canvas.Faint)
	r.Put(r.W()-1, 0, g.TopRight, canvas.Faint)
	r.Put(0, r.H()-1, g.BottomLeft, canvas.Faint)
	r.Put(r.W()-1, r.H()-1, g.BottomRight, canvas.Faint)
	r.Text(2, 0, " "+canvas.Cut(g.Translate(title), r.W()-6)+" ", canvas.Heading)
}

// more shows at a box's right edge that there is more above or below.
func more(p *Planner, r canvas.Region, above, below bool) {
	if above {
		r.Put(r.W()-1, 1, p.glyphs.Up, canvas.Heading)
	}
	if below {
		r.Put(r.W()-1, r.H()-2, p.glyphs.Down, canvas.Heading)
	}
}

// prompt is an overlay that asks for a line of text.
type prompt struct {
	title, note string
	input       textinput.Model
	take        func(p *Planner, text string) string // returns what is wrong, or nothing when done
	back        overlay                              // what esc returns to; nil for the page
}

func newPrompt(title, note, text string, take func(*Planner, string) string) *prompt {
	return &prompt{title: title, note: note, input: newInput(text), take: take}
}

// newInput returns a line to type in, with the cursor behind a text.
func newInput(text string) textinput.Model {
	input := textinput.New()
	input.Prompt = ""
	input.CharLimit = model.MaxText // an entry from a file is not to lose its end when it is opened
	input.SetValue(text)
	input.CursorEnd()
	input.Focus()
	return input
}

func (u *prompt) keys(*Planner) []binding {
	return []binding{
		on("enter", "enter", "take what is typed", "enter takes it", u.accept),
		on("ctrl+u", "ctrl u", "empty the line", "ctrl u empties", func(*Planner) { u.input.SetValue("") }),
		on("esc ctrl+c", "esc or ctrl c", "give up", "esc or ctrl c gives up", func(p *Planner) { p.overlay = u.back }),
	}
}

func (u *prompt) below() (title, detail string) { return u.title, "" }

func (u *prompt) inBox() (title, text string) { return u.title, "" }

// update gives a key to the question; what is none of its keys is typed.
func (u *prompt) update(p *Planner, m tea.KeyMsg) {
	if m.Paste {
		u.input.SetValue(u.input.Value() + strings.TrimSpace(strings.Map(printable, string(m.Runes))))
		u.input.CursorEnd()
		return
	}
	p.message = ""
	for _, b := range u.keys(p) {
		if key.Matches(m, b.Binding) {
			b.act(p)
			return
		}
	}
	u.input, _ = u.input.Update(m)
}

// accept takes what is typed; what is wrong with it is said in place of the note.
func (u *prompt) accept(p *Planner) {
	p.overlay = nil
	if wrong := u.take(p, strings.TrimSpace(u.input.Value())); wrong != "" {
		u.note, p.message = wrong, ""
		p.overlay = u
	}
}

func printable(r rune) rune {
	if r < ' ' || r == 0x7f {
		return -1
	}
	return r
}

func (u *prompt) draw(p *Planner, r canvas.Region) {
	note := wrap(p.glyphs.Translate(u.note), r.W()-4)
	box := r.Sub(0, max(0, r.H()/2-3), r.W(), max(6, 4+len(note)))
	frame(p, box, u.title)
	in := box.Sub(2, 1, box.W()-4, box.H()-2)
	in.Text(0, 0, p.withCursor(u.input, in.W()), canvas.Entry)
	for i, text := range note {
		in.Text(0, 2+i, text, canvas.Plain)
	}
}

// withCursor returns an input's text with a bar where the cursor is, its end in view, width columns at most.
func (p *Planner) withCursor(input textinput.Model, width int) string {
	runes := []rune(input.Value())
	at := min(input.Position(), len(runes))
	left, right := p.glyphs.Translate(string(runes[:at])), p.glyphs.Translate(string(runes[at:]))
	for over := canvas.Width(left) + 1 - width; over > 0; {
		first, size := utf8.DecodeRuneInString(left)
		over -= canvas.Width(string(first))
		left = left[size:]
	}
	return canvas.Clip(left+"|"+right, width)
}

// wrap breaks a text into lines of a width, between words; within a word, such as a path, only where it is wider than a line.
func wrap(text string, width int) []string {
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		line := ""
		for _, word := range strings.Fields(paragraph) {
			if line != "" && canvas.Width(word) <= width && canvas.Width(line)+1+canvas.Width(word) > width {
				var number string
				line, number = partNumber(line)
				lines = append(lines, line)
				line = number
			}
			if line != "" {
				line += " "
			}
			line += word
			for width > 0 && canvas.Width(line) > width {
				n := fitting(line, width)
				lines = append(lines, line[:n])
				line = line[n:]
			}
		}
		lines = append(lines, line)
	}
	return lines
}

// partNumber takes a number off the end of a line, so that it goes on with its unit; not where the line is nothing else.
func partNumber(line string) (rest, number string) {
	at := strings.LastIndexByte(line, ' ')
	if last := line[at+1:]; at > 0 && strings.Trim(last, "-0123456789./") == "" && strings.IndexFunc(last, unicode.IsDigit) >= 0 && last[len(last)-1] != '.' {
		return line[:at], last
	}
	return line, ""
}

// fitting returns how many bytes of a text fit into a width; at least its first character.
func fitting(text string, width int) int {
	used := 0
	for i, r := range text {
		if used += canvas.Width(string(r)); used > width && i > 0 {
			return i
		}
	}
	return len(text)
}
