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

func (u *finder) hint() string {
	return "type to narrow · up down choose · enter takes it · esc closes"
}

func (u *finder) update(p *Planner, m tea.KeyMsg) {
	switch {
	case m.Paste:
	case (m.Type == tea.KeyRunes || m.Type == tea.KeySpace) && len(m.Runes) == 1:
		u.narrow(u.typed + strings.ToLower(string(m.Runes)))
	case m.Type == tea.KeyBackspace && u.typed != "":
		runes := []rune(u.typed)
		u.narrow(string(runes[:len(runes)-1]))
	case m.Type == tea.KeyEsc && u.typed != "":
		u.narrow("")
	default:
		u.menu.update(p, m)
	}
}

func (u *finder) draw(p *Planner, r canvas.Region) {
	u.menu.draw(p, r)
	if len(u.items) == 0 {
		r.Text(3, 1, "nothing holds "+u.typed, canvas.Plain)
	}
}
