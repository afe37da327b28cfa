package ui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui/canvas"
)

// finder is a list to choose from that typing narrows: a line stays when it holds every word typed.
type finder struct {
	menu
	all   []item
	kept  []int // of all, those listed
	name  string
	typed string
	take  func(p *Planner, i int) // of all
}

func newFinder(name string, items []item, take func(*Planner, int)) *finder {
	u := &finder{all: items, name: name, take: take}
	u.pick = func(p *Planner, i int) { u.take(p, u.kept[i]) }
	u.narrow("")
	return u
}

// narrow lists what holds every word of a text.
func (u *finder) narrow(typed string) {
	u.typed, u.items, u.kept, u.at = typed, nil, nil, 0
	for i, it := range u.all {
		text, holds := strings.ToLower(it.text+" "+it.full), true
		for _, word := range strings.Fields(strings.ToLower(typed)) {
			holds = holds && strings.Contains(text, word)
		}
		if holds && !(it.dead && typed != "") {
			u.items, u.kept = append(u.items, it), append(u.kept, i)
		}
	}
	u.title = u.name
	if typed != "" {
		u.title += " [" + typed + "|]"
	}
	u.step(-1) // past a heading
}

func (u *finder) keys(p *Planner) []binding {
	keys := []binding{on("", "letters", "narrow the list to what holds each word typed", "type to narrow", nil)}
	for _, b := range u.menu.keys(p) {
		switch shown := b.Help().Key; {
		case shown == "esc or q": // q is a letter
			b = on("esc left ctrl+c", "esc or left", "closes; esc empties what is typed first", "esc or left closes", u.leave)
		case shown == "down":
			b = on("down", "down", "next line", "up down choose", func(*Planner) { u.step(1) })
		case shown == "up":
			b = on("up", "up", "line before", "", func(*Planner) { u.step(-1) })
		}
		keys = append(keys, b)
	}
	return append(keys, on("backspace", "backspace", "take the last letter back", "", func(*Planner) {
		if runes := []rune(u.typed); len(runes) > 0 {
			u.narrow(string(runes[:len(runes)-1]))
		}
	}))
}

// leave empties what was typed, and then closes.
func (u *finder) leave(p *Planner) {
	if u.typed != "" {
		u.narrow("")
		return
	}
	p.overlay = u.back
}

func (u *finder) update(p *Planner, m tea.KeyMsg) {
	if (m.Type == tea.KeyRunes || m.Type == tea.KeySpace) && len(m.Runes) == 1 && !m.Paste && m.String() != "?" {
		p.message = ""
		u.narrow(u.typed + strings.ToLower(string(m.Runes)))
		return
	}
	p.obeyIn(u, m)
}

func (u *finder) draw(p *Planner, r canvas.Region) {
	u.menu.draw(p, r)
	if len(u.items) == 0 {
		r.Text(3, 1, "nothing holds "+u.typed, canvas.Plain)
	}
}
