package ui

import "borewalk/ui/canvas"

// Draw draws the picture, as Live does before it is handed over.
func (p *Planner) Draw() { p.draw() }

// Taken makes the frame what the picture drawn last looks like on the terminal.
func (p *Planner) Taken(f *canvas.Frame) { f.Take(p.grid, &p.palette) }

// KeysOfPages returns the keys of each binding of the pages as they arrive, for tests.
func KeysOfPages() (keys [][]string) {
	for _, b := range bindings() {
		keys = append(keys, b.Keys())
	}
	return keys
}
