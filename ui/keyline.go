package ui

import (
	"slices"
	"strings"

	"borewalk/model"
	"borewalk/ui/canvas"
)

// keyLine lists the keys that act here and now, those that matter most where it is narrow. ? help stands at its end.
func (p *Planner) keyLine(width int) string {
	var hints, must []string
	switch {
	case p.overlay != nil:
		hints, must = p.overlayHints()
	case p.edit != nil:
		hints = []string{"enter takes it", "esc or ctrl c gives up", "up down step", "tab takes it, goes on"}
	default:
		hints, must = p.pageHints()
	}
	for n := len(hints) - 1; n > 0 && canvas.Width(p.joined(hints)) > width; n-- {
		if !slices.Contains(must, hints[n]) {
			hints = slices.Delete(hints, n, n+1)
		}
	}
	return canvas.Cut(p.joined(hints), width)
}

// joined writes hints as the terminal shows them.
func (p *Planner) joined(hints []string) string {
	return p.glyphs.Translate(strings.Join(hints, " · "))
}

// overlayHints are the keys of the overlay that is open, by their weight; the one that leaves and the list of all stay. What is typed
// into has no key for a list.
func (p *Planner) overlayHints() (hints, must []string) {
	for _, b := range p.overlay.keys(p) {
		if b.short != "" && (b.blocked == nil || b.blocked(p) == "") {
			hints = append(hints, b.short)
		}
	}
	if must = hints[len(hints)-1:]; !listsKeys(p.overlay) {
		return hints, must
	}
	list := helpKey(p.overlay).short
	return append(slices.Clone(hints), list), append(must, list)
}

// listsKeys reports whether ? lists the keys of an overlay: not where it would be typed, nor in the list itself.
func listsKeys(u overlay) bool {
	switch u.(type) {
	case *prompt, *reader:
		return false
	}
	return true
}

// pageHints are the keys of the page by their weight for what has the focus. Once something is changed, saving and undoing stay.
func (p *Planner) pageHints() (hints, must []string) {
	short := map[string]string{}
	for _, b := range p.keys {
		if b.blocked == nil || b.blocked(p) == "" {
			short[b.Help().Key] = b.short
		}
	}
	if short["enter"] != "" {
		short["enter"] = "enter " + p.enterDoes()
	}
	if p.amongPictures() {
		short["right"], short["left"] = "left right pictures", ""
	}
	if p.amongColumns() && p.furtherColumns() > 0 {
		short["right"], short["left"] = "left right columns", ""
	}
	if !p.history.Dirty() {
		delete(short, "s or ctrl s")
	}
	if p.alone {
		short["z"] = "z header"
		must = append(must, short["z"])
	}
	for _, key := range slices.Concat([]string{"tab", "] or n"}, p.focusKeys(), []string{"s or ctrl s", "u"}, pageKeys(p.topic), []string{"f", "v", "w", "W", "T", "V", "C", "O", "L", "H", "z", "m", "b", "S", "N", "q"}) {
		if hint := short[key]; hint != "" && !slices.Contains(hints, hint) {
			hints = append(hints, hint)
		}
	}
	return append(hints, short["?"]), append(must, short["?"], short["s or ctrl s"], short["u"])
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
	case l.ref.Field.Type == model.ChoiceField:
		return "choose"
	}
	return "edit"
}

// focusKeys are the keys that act on what has the focus, by their names in the help.
func (p *Planner) focusKeys() []string {
	switch l := p.focused(); {
	case p.amongColumns() && p.furtherColumns() > 0:
		return []string{"right", "w", "V"}
	case p.figures:
		return []string{"w", "V", "left"}
	case p.view == viewPicture:
		return []string{"right", "+"}
	case l.kind == lineField:
		return []string{"enter", "+", "V"}
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
