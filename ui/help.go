package ui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui/canvas"
	"borewalk/ui/schematic"
)

// reader is a long text that is found through by reading: headings, pages, and a search.
type reader struct {
	menu
	typing bool   // the text to search for is being typed
	typed  string // what is searched for
	found  int    // the line it stands on, -1 for none
}

// newHelp opens the help: what has the focus in full, every key, from the table that the program obeys, and how to read the screen. Over an overlay its keys
// come first, and closing it goes back there.
func (p *Planner) newHelp(over overlay) overlay {
	u := &reader{menu: menu{title: "Help", back: over}, found: -1}
	if over != nil {
		u.head("Keys here")
		u.list(p, over.keys(p))
	} else if title, text := p.focusInFull(); text != "" {
		u.head("In focus: " + title)
		u.say(p, canvas.Plain, text)
	}
	group := ""
	for n, b := range p.keys {
		if b.group != group {
			group = b.group
			u.head("On a page: " + strings.ToLower(group))
		}
		u.list(p, p.keys[n:n+1])
	}
	for _, part := range helpTexts(p.glyphs) {
		u.head(part.title)
		for _, paragraph := range part.lines {
			u.say(p, canvas.Plain, paragraph)
		}
	}
	return u
}

func (p *Planner) showHelp() { p.overlay = p.newHelp(nil) }

// head begins a part of the text.
func (u *reader) head(title string) {
	if len(u.items) > 0 {
		u.items = append(u.items, item{dead: true})
	}
	u.items = append(u.items, item{text: strings.ToUpper(title), style: canvas.Heading, dead: true})
}

// list writes keys and what they do.
func (u *reader) list(p *Planner, keys []binding) {
	const key = 16
	for _, b := range keys {
		name := "  " + b.Help().Key
		for _, l := range wrap(p.glyphs.Translate(b.Help().Desc), p.pageWidth()-6-key) {
			u.items = append(u.items, item{dead: true, text: pad(name, key) + l})
			name = ""
		}
	}
}

func (u *reader) keys(p *Planner) []binding {
	keys := []binding{
		on("/", "/", "search: type a word and press enter", "/ search", func(*Planner) { u.typing, u.typed = true, "" }),
		on("n", "n", "find it again", "", func(p *Planner) { u.search(p, u.found+1) }),
	}
	menu := u.menu.keys(p)
	return append(append(menu[:len(menu)-1], keys...), closing("left ?", "closes", func(p *Planner) { p.overlay = u.back }))
}

func (u *reader) update(p *Planner, m tea.KeyMsg) {
	if !u.typing {
		if s := m.String(); s == "?" || s == "f1" { // in place of a help on the help
			p.overlay = u.back
			return
		}
		p.obeyIn(u, m)
		return
	}
	p.message = ""
	switch {
	case m.Type == tea.KeyEnter:
		u.typing = false
		u.search(p, u.at)
	case m.Type == tea.KeyEsc, m.Type == tea.KeyCtrlC:
		u.typing, u.typed = false, ""
	case m.Type == tea.KeyBackspace:
		runes := []rune(u.typed)
		u.typed = string(runes[:max(0, len(runes)-1)])
	case m.Type == tea.KeyRunes || m.Type == tea.KeySpace:
		u.typed += strings.Map(printable, string(m.Runes))
	}
}

// search goes to the first line from one on that holds what was typed, and after the last begins anew.
func (u *reader) search(p *Planner, from int) {
	word := strings.ToLower(strings.TrimSpace(u.typed))
	if word == "" {
		p.message = "n finds again what / was given; nothing was"
		return
	}
	for n := range u.items {
		if at := (from + n) % len(u.items); strings.Contains(strings.ToLower(u.items[at].text), word) {
			u.found, u.at = at, at
			return
		}
	}
	u.found = -1
	p.message = "nothing here holds " + u.typed
}

func (u *reader) draw(p *Planner, r canvas.Region) {
	u.menu.draw(p, r)
	if row := u.found - u.at; u.found >= 0 && row >= 0 && row < r.H()-2 {
		r.Put(1, 1+row, p.glyphs.Mark, canvas.Focus)
	}
}

// below says what is searched for, or how much of the text there is.
func (u *reader) below() (title, detail string) {
	switch {
	case u.typing:
		return "search", "[" + u.typed + "|]  enter finds it, esc gives up"
	case u.typed != "":
		return u.title, "found: " + u.typed + "; n finds it again"
	}
	return u.title, "line " + itoa(u.at+1) + " of " + itoa(len(u.items)) + ". / and a word searches: /undo, /trial, /brackets"
}

type helpText struct {
	title string
	lines []string
}

// helpTexts says how to read the screen; README has the same words.
func helpTexts(g canvas.Glyphs) []helpText {
	return []helpText{
		{"While typing", []string{
			"Enter or tab takes the entry, esc or ctrl c gives it up, up and down step it. Everything follows each keystroke; while the entry is not good, what stood before counts and the line below says what is wrong.",
			"A number without a unit is in the unit shown. Any unit of the trade may be typed: 1262 ft, 13 5/8 in, 10.2 ppg, 1.25 sg, 385 m. Comma and point are both decimal signs; nothing groups digits.",
		}},
		{"Marks", []string{
			"> has the focus.",
			"! has a finding, a stop or a caution; !! a section or figure with a stop; ? a section that cannot be worked out.",
			"* not saved is something that is not in the file yet.",
			"[ ] the page and the section that are open, in capitals; on the line below the page a change, or what is being typed.",
			"( ) brackets round an entry: it is planned, and what is as built counts in its place.",
			"+ opens and - closes a row. A number with + or - before a figure is its change since the baseline (b); where it has no room ^ says that the figure rose and v that it fell, ~ that one in a column has changed. At an edge of a list ^ and v say that there is more; in the table <1 2> says how many columns there are further left and right.",
			".. ends what had no room. Of an entry's help the line below the page has the first sentence; ? has all of it, and the range.",
			"- for an entry: it is blank. For a figure: it cannot be had; the line below the page says why.",
			"stop: a limit of law, standard or arithmetic is not met, or an entry is missing. caution: a limit of practice is not met. ok: that limit is met, and nothing more is said.",
		}},
		{"Colours", []string{
			"Where there are any; each has a mark or a word beside it. Reversed: has the focus. Underlined: is being typed. Red: stop. Yellow: caution. Green: the limit is met. Magenta: changed. Cyan: headings, water, and pipe to be run in this section.",
			"In charts and in the schematic each curve and each fluid has its letter or sign besides its colour.",
			"NO_COLOR=1 or -no-colour shows none, -ascii draws with plain characters only.",
		}},
		{"Playing a cement job", []string{
			"P on the cement page; ? there lists its keys.",
			"The schematic shows what stands where, the list of fluids explains the signs. x is done. A margin is the fracture, or the planned shoe test, less the density at that point; ! is below zero.",
		}},
		{"Schematic", schematic.Legend(g)},
		{"Cautions", []string{
			"A planning aid: verify by independent calculation. It does not replace approved procedures, the operator's manuals or competent persons; local codes and licensed practice rule.",
			"Mixed units: the unit is always shown. Read it before a figure leaves the screen.",
		}},
	}
}
