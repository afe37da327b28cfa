package ui_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
	"borewalk/ui"
	"borewalk/ui/canvas"
)

// headAndFoot returns the words of the lines above and below the page, without the marks of what was left out.
func headAndFoot(p *ui.Planner) (words []string) {
	lines := strings.Split(p.View(), "\n")
	for _, l := range append([]string{lines[0]}, lines[len(lines)-5:]...) {
		for _, word := range strings.Fields(l) {
			word = strings.TrimRight(word, ".,;:─")
			if word != "" {
				words = append(words, word)
			}
		}
	}
	return words
}

// TestNothingIsCutWithinAWord of the lines above and below the page: what a narrow window shows of them stands in a wide one too.
func TestNothingIsCutWithinAWord(t *testing.T) {
	for _, demo := range []string{"ottermast-2", "saltlantern-1"} {
		for _, section := range []int{0, 3} {
			p := screenOf(t, demo, 300, 80, ui.Options{}, strings.Repeat("]", section))
			for _, topic := range model.Topics() {
				press(p, "page "+topic.String(), "down")
				p.Update(tea.WindowSizeMsg{Width: 300, Height: 80})
				all := headAndFoot(p)
				for _, size := range [][2]int{{80, 24}, {81, 24}, {100, 30}, {140, 40}, {200, 60}} {
					p.Update(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
					for _, word := range headAndFoot(p) {
						if !slices.Contains(all, word) {
							t.Errorf("%v %s, %s: %q is cut:\n%s", size, demo, topic, word, p.View())
						}
					}
					wants(t, p, fmt.Sprintf("section %d of ", section+1), "? help")
				}
			}
		}
	}
}

var shownNumber = regexp.MustCompile(`[-+]?\d+(\.\d+)?`)

// TestNoNumberIsCut: a number on a page of a narrow window stands on it in the widest one as well.
func TestNoNumberIsCut(t *testing.T) {
	pane := func(p *ui.Planner, begins int) string {
		var b strings.Builder
		lines := strings.Split(p.View(), "\n")
		for _, l := range lines[3 : len(lines)-5] {
			if l := []rune(l); len(l) > begins {
				b.WriteString(string(l[begins:]) + "\n")
			}
		}
		return b.String()
	}
	p := screenOf(t, "saltlantern-1", 300, 200, ui.Options{}, "]]]")
	for _, topic := range model.Topics() {
		for _, view := range []string{"fields", "table"} {
			press(p, "page "+topic.String())
			if view == "table" {
				press(p, "v")
			}
			p.Update(tea.WindowSizeMsg{Width: 300, Height: 200})
			all := shownNumber.FindAllString(pane(p, 34), -1)
			for _, width := range []int{80, 81, 100, 140} {
				p.Update(tea.WindowSizeMsg{Width: width, Height: 200})
				narrow := pane(p, map[int]int{80: 20, 81: 20, 100: 28, 140: 34}[width])
				if width == 140 && view == "fields" { // a chart stands beside them
					continue
				}
				for _, number := range shownNumber.FindAllString(narrow, -1) {
					if !slices.Contains(all, number) && !strings.Contains(narrow, " "+number+">") && !strings.Contains(narrow, "<"+number) {
						t.Errorf("%d columns, %s, %s: %s is not there in a wide window:\n%s", width, topic, view, number, narrow)
					}
				}
				if strings.Contains(narrow, "##") {
					t.Errorf("%d columns, %s, %s: no room for a number:\n%s", width, topic, view, narrow)
				}
			}
			if view == "table" {
				press(p, "v", "v")
			}
		}
	}
}

// Every screen must fit its window, whatever its size.
func TestViewFitsEveryWindow(t *testing.T) {
	fits := func(name string, p *ui.Planner, width, height int) {
		lines := strings.Split(p.View(), "\n")
		if len(lines) > height {
			t.Errorf("%s in %d x %d: %d lines", name, width, height, len(lines))
		}
		for i, l := range lines {
			if w := canvas.Width(l); w > width {
				t.Errorf("%s in %d x %d: line %d is %d wide", name, width, height, i, w)
			}
		}
	}
	everywhere(t, "saltlantern-1", 80, 24, ui.Options{}, func(where place, p *ui.Planner) {
		for _, size := range [][2]int{{80, 24}, {81, 24}, {99, 24}, {100, 30}, {131, 43}, {132, 43}, {140, 40}, {200, 60}, {300, 80}, {1, 1}, {79, 24}, {80, 23}, {0, 0}} {
			width, height := max(size[0], 0), size[1]
			p.Update(tea.WindowSizeMsg{Width: width, Height: height})
			if width == 0 {
				width, height = 80, 24
			}
			fits(where.name, p, width, height)
		}
		p.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	})
}
