package sheet

import (
	"strings"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/plot"
	"borewalk/ui/schematic"
)

// Sizes of the pictures: in mm on the first page of a PDF, below its head; and in characters, at most a page of text high.
const (
	schematicHeight, windowHeight = 118, 82
	schematicRows, windowRows     = 48, 40
	schematicColumns              = 62
)

// pictures returns the schematic with a section at work and its pressure window, or those of the whole well for section -1.
func (p *printer) pictures(section int) []part {
	return []part{p.schematicPart(section), p.chartPart(p.result.WindowChart(section), windowHeight, windowRows)}
}

func (p *printer) schematicPart(section int) part {
	unit := p.System.Unit(quantity.Length)
	size := func(m float64) string {
		return quantity.FormatUnit(m, quantity.Diameter, p.System.Unit(quantity.Diameter))
	}
	drawing, ok := schematic.Drawing(p.result.Sketch, schematic.PaperOptions{
		Section: section, Whole: section < 0, Unit: p.plain(unit.Symbol()), Size: size,
		Depth: func(m float64) string { return quantity.Format(m, quantity.Length, unit) },
	}, textWidth, schematicHeight)
	if !ok {
		return part{}
	}
	lines := p.painted(schematicColumns, schematicRows, func(r canvas.Region) {
		schematic.Draw(r, p.result.Sketch, schematic.Options{Section: section, Whole: section < 0, Glyphs: p.glyphs, Size: size,
			Depth: func(m float64) string { return quantity.Format(m, quantity.Length, unit) }})
	})
	lines = append(lines, "", "Depths in "+p.plain(unit.Symbol())+" along hole from the rotary; scale stretched, water shortened.")
	return part{title: "Well schematic", drawn: lines, drawing: &drawing}
}

// chartPart sets a chart, so high in mm and in lines; nothing where there is nothing to draw.
func (p *printer) chartPart(c calc.Chart, height float64, rows int) part {
	o := plot.ChartOptions{
		Glyphs: p.glyphs,
		Unit:   func(k quantity.Kind) string { return p.System.Unit(k).Symbol() },
		Ticks: func(low, high float64, n int, k quantity.Kind) []plot.Tick {
			return plot.RoundTicks(low, high, n, p.System.Unit(k))
		},
		Value: func(si float64, k quantity.Kind) string { return quantity.Format(si, k, p.System.Unit(k)) },
		Place: func(si float64) string { return quantity.Format(si, c.Along, p.System.Unit(c.Along)) },
	}
	drawing, ok := plot.ChartDrawing(c, o, textWidth, height)
	if !ok {
		return part{}
	}
	title := c.Title
	c.Title = "" // it is in the heading
	return part{title: title, drawing: &drawing, drawn: p.painted(pageWidth, rows, func(r canvas.Region) { plot.DrawChart(r, c, o) })}
}

// painted returns the lines of a drawing made of characters.
func (p *printer) painted(columns, rows int, draw func(canvas.Region)) []string {
	c := canvas.New(columns, rows)
	draw(c.All())
	lines := strings.Split(c.Plain(), "\n")
	for i, line := range lines {
		lines[i] = drawable(strings.TrimRight(line, " "))
	}
	return lines
}
