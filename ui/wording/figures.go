package wording

import (
	"strconv"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// FigureLine is one line of figures: those that share a name, told apart by their columns, or the heading of a group.
type FigureLine struct {
	Heading string
	Figures []calc.Figure
}

// FigureLines returns the figures of one topic of a sheet as lines.
func FigureLines(sheet *calc.Sheet, topic model.Topic) (lines []FigureLine) {
	group := ""
	for _, f := range sheet.Figures {
		if f.Topic != topic {
			continue
		}
		if f.Group != group {
			group = f.Group
			lines = append(lines, FigureLine{Heading: group})
		}
		if n := len(lines) - 1; f.Column != "" && n >= 0 && len(lines[n].Figures) > 0 {
			lines[n].Figures = append(lines[n].Figures, f)
			continue
		}
		lines = append(lines, FigureLine{Figures: []calc.Figure{f}})
	}
	return lines
}

// Figures puts a line of figures on one line: name, value, where it holds, then each further column with its own.
func Figures(figures []calc.Figure, system quantity.System) string {
	text := Figure(figures[0], system)
	for _, f := range figures[1:] {
		if !f.OK {
			text += ", " + f.Column + " blank"
			continue
		}
		text += ", " + f.Column + " " + Value(f, system)
		if f.Note != "" {
			text += " " + f.Note
		}
	}
	return text
}

// Place says where a figure of a sheet stands: section, page, group.
func Place(sheet int, f calc.Figure) string {
	text := "well, " + f.Topic.String()
	if sheet >= 0 {
		text = "section " + strconv.Itoa(sheet+1) + ", " + f.Topic.String()
	}
	if f.Group != "" {
		text += ", " + f.Group
	}
	return text
}
