package ui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
)

// binding is the single declaration of a key: what it does, how the help and the key line name it, and why it may not act just now.
// Pages and overlays are made of such.
type binding struct {
	key.Binding
	short   string                  // in the key line; empty keeps it to the help
	group   string                  // heading in the help
	blocked func(p *Planner) string // the reason why it cannot act; nil or empty when it can
	act     func(p *Planner) tea.Cmd
}

// on declares a key of an overlay: as it arrives, several apart by blanks, and as it is written.
func on(keys, shown, help, short string, act func(p *Planner)) binding {
	return binding{Binding: key.NewBinding(key.WithKeys(arriving(keys)...), key.WithHelp(shown, help)), short: short,
		act: func(p *Planner) tea.Cmd { act(p); return nil }}
}

// arriving returns keys as they arrive; the space bar, which arrives as a blank, is written "space".
func arriving(keys string) []string {
	list := strings.Fields(keys)
	for i, k := range list {
		if k == "space" {
			list[i] = " "
		}
	}
	return list
}

// closing declares the keys that leave an overlay: esc, which is slow on some lines, never alone.
func closing(also, help string, act func(p *Planner)) binding {
	return on("esc q ctrl+c "+also, "esc or q", help, "esc or q "+help, act)
}

// saying gives a key other words in the key line, for an overlay with many.
func (b binding) saying(short string) binding {
	b.short = short
	return b
}

// unless gives a key a reason why it may not act just now.
func (b binding) unless(blocked func(p *Planner) string) binding {
	b.blocked = blocked
	return b
}

// obey does what a key is declared to do, or says why it does not: because it cannot act now, or because there is no such key.
func (p *Planner) obey(keys []binding, m tea.KeyMsg) tea.Cmd {
	for _, b := range keys {
		if !key.Matches(m, b.Binding) {
			continue
		}
		if b.blocked != nil {
			if why := b.blocked(p); why != "" {
				p.message = b.Help().Key + ": " + why
				return nil
			}
		}
		return b.act(p)
	}
	p.message = keyName(m) + ": no such key here; ? lists those there are"
	return nil
}

// keyName writes a key as the help does.
func keyName(m tea.KeyMsg) string {
	if m.Type == tea.KeySpace || m.String() == " " {
		return "space"
	}
	return model.Clean(m.String())
}

// obeyIn gives a key to an overlay by its table; ? lists that.
func (p *Planner) obeyIn(u overlay, m tea.KeyMsg) {
	p.message = ""
	if m.Paste {
		p.message = "nothing here takes pasted text"
		return
	}
	p.obey(append(u.keys(p), helpKey(u)), m)
}

// helpKey lists the keys of an overlay, and goes back to it.
func helpKey(u overlay) binding {
	return on("? f1", "?", "this list", "? keys", func(p *Planner) { p.overlay = p.newHelp(u) })
}
