package ui

import (
	"slices"

	"borewalk/calc"
)

// drawn keeps what drawing one screen asks for again and again: nothing of it changes meanwhile.
type drawn struct {
	fields  kept[line]
	figures kept[figureLine]
}

// kept is a list that is made when it is first asked for.
type kept[T any] struct {
	list []T
	made bool
}

// get returns the list; its capacity is its length, so that who appends to it gets a list of his own.
func (k *kept[T]) get(make func() []T) []T {
	if !k.made {
		k.list, k.made = slices.Clip(make()), true
	}
	return k.list
}

// lines returns the fields pane of the page, top to bottom, without what stands in tables and rows that are closed.
func (p *Planner) lines() []line {
	if p.drawn == nil {
		return p.makeLines()
	}
	return p.drawn.fields.get(p.makeLines)
}

// figureLines returns the figures of the page as lines.
func (p *Planner) figureLines() []figureLine {
	if p.drawn == nil {
		return p.makeFigureLines()
	}
	return p.drawn.figures.get(p.makeFigureLines)
}

// sheetKeys finds figures of one sheet by their keys. It is made anew when another sheet is asked.
type sheetKeys struct {
	of *calc.Sheet
	at map[string]int
}

// find returns the figure of a sheet with a key, as Sheet.Find does.
func (k *sheetKeys) find(sheet *calc.Sheet, key string) (calc.Figure, bool) {
	if k.of != sheet || len(k.at) != len(sheet.Figures) {
		k.of, k.at = sheet, make(map[string]int, len(sheet.Figures))
		for i := range sheet.Figures {
			k.at[sheet.Figures[i].Key] = i
		}
	}
	i, ok := k.at[key]
	if !ok {
		return calc.Figure{}, false
	}
	return sheet.Figures[i], true
}
