package ui

import "borewalk/ui/canvas"

// Draw draws the picture, as Live does before it is handed over.
func (p *Planner) Draw() { p.draw() }

// Taken makes the frame what the picture drawn last looks like on the terminal.
func (p *Planner) Taken(f *canvas.Frame) { f.Take(p.grid, &p.palette) }
