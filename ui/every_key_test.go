package ui_test

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/ui"
)

// everyKey is what a keyboard has: letters, digits, signs, and the keys with names that plain terminals send.
func everyKey() (keys []tea.KeyMsg) {
	for r := '!'; r <= '~'; r++ {
		keys = append(keys, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	for _, kind := range []tea.KeyType{tea.KeyUp, tea.KeyDown, tea.KeyLeft, tea.KeyRight, tea.KeyPgUp, tea.KeyPgDown, tea.KeyHome, tea.KeyEnd, tea.KeyTab,
		tea.KeyShiftTab, tea.KeyEnter, tea.KeyBackspace, tea.KeyDelete, tea.KeyEsc, tea.KeySpace, tea.KeyInsert, tea.KeyF1, tea.KeyF9, tea.KeyF10, tea.KeyCtrlA, tea.KeyCtrlB,
		tea.KeyCtrlR, tea.KeyCtrlS, tea.KeyCtrlL, tea.KeyCtrlX} {
		key := tea.KeyMsg{Type: kind}
		if kind == tea.KeySpace {
			key.Runes = []rune{' '}
		}
		keys = append(keys, key)
	}
	return keys
}

// TestEveryKeyDoesSomethingOrSaysWhy: wherever one stands, a key changes what is seen, or a message says why it does not.
func TestEveryKeyDoesSomethingOrSaysWhy(t *testing.T) {
	for _, where := range []place{
		{"first screen", nil, ""},
		{"well", []string{"page well"}, ""},
		{"last section", []string{"]]"}, ""},
		{"number", []string{"page mud", "down"}, ""},
		{"add", []string{"page cement", "end"}, ""},
		{"figures", []string{"page mud", "right"}, ""},
		{"table", []string{"page control", "v"}, ""},
		{"picture", []string{"page casing", "v", "v"}, ""},
		{"no figures", []string{"page handover"}, ""},
		{"no sections", []string{"d", "down", "enter", "d", "down", "enter", "d", "down", "enter", "d", "down", "enter", "d", "down", "enter"}, ""},
	} {
		p, screen, top, fresh := (*ui.Planner)(nil), "", "", false
		for _, key := range everyKey() {
			if strings.Contains("UTVWg", key.String()) && where.name != "number" && where.name != "no sections" {
				continue // they work long before they show something, and do not differ from place to place
			}
			if !fresh {
				p = at(t, "ottermast-2", 80, 24, ui.Options{}, where)
				press(p, "up", "down", "up") // so that no message is left from before
				screen, top, fresh = p.View(), upToTheFocus(p), true
			}
			_, command := p.Update(key)
			after := p.View()
			lines := strings.Split(after, "\n")
			said := strings.Join(lines[len(lines)-3:len(lines)-1], " ")
			switch {
			case strings.Contains(said, "page begins here"):
			case after == screen && command == nil:
				t.Errorf("%s: %q does nothing and says nothing:\n%s", where.name, key.String(), after)
			case strings.Contains(said, "no such key here"), strings.Contains(said, key.String()+": "):
			default: // back to where it was, or begin anew
				press(p, "esc", "esc")
				fresh = upToTheFocus(p) == top
			}
		}
	}
}

// upToTheFocus is a screen down to the line that names what has the focus.
func upToTheFocus(p *ui.Planner) string {
	lines := strings.Split(p.View(), "\n")
	return strings.Join(lines[:len(lines)-4], "\n")
}

// TestEveryOverlayListsItsKeys: ? shows what it obeys, by the table that it obeys, and goes back to it; keys that are not in it say so.
func TestEveryOverlayListsItsKeys(t *testing.T) {
	for _, where := range overlayPlaces() {
		p := at(t, "ottermast-2", 80, 24, ui.Options{}, where)
		line := lastLine(p)
		if !strings.Contains(line, "? keys") {
			if !strings.Contains(line, "? help") && !strings.Contains(line, "gives up") && !strings.HasPrefix(where.name, "help") {
				t.Errorf("%s: the key line names neither a list nor a way out: %s", where.name, line)
			}
			continue
		}
		if !strings.Contains(line, "esc or q ") && !strings.Contains(line, "q closes") && !strings.Contains(line, "q leaves") && !strings.Contains(line, "left closes") {
			t.Errorf("%s: the key line does not say how to leave without esc: %s", where.name, line)
		}
		before := upToTheFocus(p) // a message is gone with the next key
		press(p, "?")
		wants(t, p, "KEYS HERE")
		press(p, "?")
		if after := upToTheFocus(p); after != before {
			t.Errorf("%s: after ? and ? again\n%s\nwas\n%s", where.name, after, before)
		}
		p.Update(tea.KeyMsg{Type: tea.KeyF9})
		wants(t, p, "f9: no such key here; ? lists those there are")
	}
}

// TestNothingNeedsEsc: each overlay, and what is being typed, is left by another key as well, a step back at a time.
func TestNothingNeedsEsc(t *testing.T) {
	for _, where := range overlayPlaces() {
		p := at(t, "ottermast-2", 80, 24, ui.Options{}, where)
		if strings.Contains(lastLine(p), "? help") {
			continue
		}
		way := tea.KeyMsg{}
		for range 3 {
			if way = wayOut(lastLine(p)); way.Type == 0 && way.Runes == nil {
				t.Errorf("%s: the key line names no way out but esc: %s", where.name, lastLine(p))
				break
			}
			if p.Update(way); strings.Contains(lastLine(p), "tab page") {
				break
			}
		}
		if !strings.Contains(lastLine(p), "tab page") && where.name != "leaving" {
			t.Errorf("%s: %q does not leave it:\n%s", where.name, way.String(), p.View())
		}
	}
}

// wayOut is the key beside esc that a key line names.
func wayOut(line string) tea.KeyMsg {
	switch {
	case strings.Contains(line, "or q"), strings.Contains(line, "q closes"), strings.Contains(line, "q leaves"), strings.Contains(line, "q to"):
		return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{'q'}}
	case strings.Contains(line, "or left"):
		return tea.KeyMsg{Type: tea.KeyLeft}
	case strings.Contains(line, "ctrl c"):
		return tea.KeyMsg{Type: tea.KeyCtrlC}
	}
	return tea.KeyMsg{}
}

// TestNoKeyDependsOnWhatTerminalsTake: no binding needs ctrl, alt or a function key, nor one of those that arrive as another key or that
// multiplexers take for themselves. Ctrl+z suspends as everywhere, and nothing else.
func TestNoKeyDependsOnWhatTerminalsTake(t *testing.T) {
	for _, keys := range ui.KeysOfPages() {
		plain := false
		for _, key := range keys {
			switch key {
			case "ctrl+i", "ctrl+m", "ctrl+h", "ctrl+[", "ctrl+j", "ctrl+a", "ctrl+b", "ctrl+enter", "shift+enter":
				t.Errorf("%q cannot be told from another key, or does not arrive", key)
			}
			plain = plain || !strings.HasPrefix(key, "ctrl+") && !strings.HasPrefix(key, "alt+") && !strings.HasPrefix(key, "shift+") && (len(key) < 2 || key[0] != 'f')
		}
		if !plain && keys[0] != "ctrl+l" && keys[0] != "ctrl+z" && keys[0] != "shift+tab" {
			t.Errorf("%q has no plain key", keys)
		}
	}
}
