package ui

import (
	"slices"
	"strings"

	"borewalk/model"
	"borewalk/ui/canvas"
)

// keyLine lists the keys that act here and now, those that matter most where it is narrow. What lists all keys stands at its end.
func (p *Planner) keyLine(width int) string {
	switch {
	case p.overlay != nil:
		return p.overlayKeyLine(width)
	case p.edit != nil:
		hints := []string{"enter takes it", "esc or ctrl c gives up", "tab takes it, goes on"}
		if p.edit.ref.Field.Type == model.QuantityField {
			hints = slices.Insert(hints, 2, "up down step")
		}
		return canvas.Cut(p.joined(hints), width)
	}
	return p.pageKeyLine(width)
}

// between stands between two hints.
const between = " · "

// joined writes hints as the terminal shows them. In ASCII a bar is between them: the dot would become the star that marks a change.
func (p *Planner) joined(hints []string) string {
	apart := between
	if p.options.ASCII {
		apart = " | "
	}
	return p.glyphs.Translate(strings.Join(hints, apart))
}

// overlayKeyLine shows the keys of the overlay that is open, by their weight; the one that leaves and the list of all stay. What is
// typed into has no key for a list.
func (p *Planner) overlayKeyLine(width int) string {
	var hints []string
	for _, b := range p.overlay.keys(p) {
		if b.short != "" && (b.blocked == nil || b.blocked(p) == "") {
			hints = append(hints, b.short)
		}
	}
	stay := 1
	if listsKeys(p.overlay) {
		hints, stay = append(hints, helpKey(p.overlay).short), 2
	}
	for len(hints) > stay && canvas.Width(p.joined(hints)) > width {
		last := len(hints) - stay - 1
		hints = slices.Delete(hints, last, last+1)
	}
	return canvas.Cut(p.joined(hints), width)
}

// listsKeys reports whether ? lists the keys of an overlay: not where it would be typed, nor in the list itself.
func listsKeys(u overlay) bool {
	switch u.(type) {
	case *prompt, *reader:
		return false
	}
	return true
}

// pageKeyLine shows the keys of the page by their weight, as many as fit, and what lists all; behind it those of what has the focus,
// so that a move of the focus changes the end of the line only.
func (p *Planner) pageKeyLine(width int) string {
	focusRoom := max(23, min(width/4, 36)) // columns that the keys of the focus have at least
	if p.figures {
		focusRoom = max(focusRoom, 26)
	}
	stay := p.hint("?")
	keys := slices.Concat([]string{"tab"}, p.urgentKeys(), []string{"] or n"}, pageKeys(p.topic), furtherKeys)
	hints := append(p.fitting(keys, nil, width-focusRoom-p.taken(stay)), stay)
	return canvas.Cut(p.joined(p.fitting(p.focusKeys(), hints, width)), width)
}

// fitting appends to some hints those of further keys, as they fit into a width. Whether a key can act is asked only of those that have
// room: the answer may cost.
func (p *Planner) fitting(keys, hints []string, width int) []string {
	room := width + canvas.Width(between) // nothing stands before the first
	for _, hint := range hints {
		room -= p.taken(hint)
	}
	for _, key := range keys {
		hint, b := p.hint(key), p.keyNamed(key)
		if hint == "" || slices.Contains(hints, hint) {
			continue
		}
		if p.taken(hint) > room {
			break
		}
		if b.blocked != nil && b.blocked(p) != "" {
			continue
		}
		hints = append(hints, hint)
		room -= p.taken(hint)
	}
	return hints
}

// taken returns the columns that a hint takes with what stands before it.
func (p *Planner) taken(hint string) int { return canvas.Width(p.joined([]string{"", hint})) }

// urgentKeys are those that no other may push out: once something is changed, saving and undoing; over a page alone, what brings the
// header back.
func (p *Planner) urgentKeys() (keys []string) {
	if p.history.Dirty() {
		keys = append(keys, "s or ctrl s", "u")
	}
	if p.alone {
		keys = append(keys, "z")
	}
	return keys
}

// furtherKeys are shown on every page where there is room, by their names in the help.
var furtherKeys = []string{"u", "f", "v", "w", "W", "T", "C", "O", "L", "H", "z", "m", "b", "S", "N", "q"}

// keyNamed returns a key of the pages by its name in the help.
func (p *Planner) keyNamed(name string) *binding {
	at := slices.IndexFunc(p.keys, func(b binding) bool { return b.Help().Key == name })
	return &p.keys[at]
}

// hint is how the key line names a key for what has the focus; empty for one that it does not name.
func (p *Planner) hint(key string) string {
	switch {
	case key == "enter":
		return "enter " + p.enterDoes()
	case key == "z" && p.alone:
		return "z header"
	case key == "right" && p.amongPictures():
		return "left right pictures"
	case key == "right" && p.amongColumns() && p.furtherColumns() > 0:
		return "left right columns"
	}
	return p.keyNamed(key).short
}

// enterDoes says what enter does with the line in focus.
func (p *Planner) enterDoes() string {
	switch l := p.focused(); {
	case l.kind == lineAdd:
		return "add"
	case l.kind != lineField && l.open:
		return "close"
	case l.kind != lineField:
		return "open"
	}
	return "edit"
}

// focusKeys are the keys that act on what has the focus, by their names in the help.
func (p *Planner) focusKeys() []string {
	switch l := p.focused(); {
	case p.amongColumns() && p.furtherColumns() > 0:
		return []string{"right", "w", "V"}
	case p.figures:
		return []string{"w", "left", "V"}
	case p.view == viewPicture:
		return []string{"right", "+"}
	case l.kind == lineField:
		return []string{"enter", "+", "V"}
	case l.kind == lineAdd:
		return []string{"enter"}
	}
	return []string{"enter", "a", "d"}
}

// pageKeys are the keys that a page is worked with, by their names in the help.
func pageKeys(t model.Topic) []string {
	return map[model.Topic][]string{
		model.TopicString: {"g"}, model.TopicHydraulics: {"g"}, model.TopicMud: {"g"}, model.TopicCasing: {"i"},
		model.TopicCement: {"P", "g"}, model.TopicControl: {"P", "E", "U", "i"}, model.TopicSteps: {"W"}, model.TopicTime: {"L"},
		model.TopicBuilt: {"C"}, model.TopicHandover: {"H", "L"},
	}[t]
}
