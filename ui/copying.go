package ui

import (
	"bytes"
	"errors"
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/canvas"
	"borewalk/ui/clip"
	"borewalk/ui/sheet"
	"borewalk/ui/wording"
)

// offer is something that can be copied here: what it is, and the lines that are copied of it.
type offer struct {
	name  string
	lines func() []string
}

// askCopy asks what of what is in view is to be copied as text.
func (p *Planner) askCopy() {
	offers := p.offers()
	u := &menu{title: "Copy as text"}
	for _, o := range offers {
		u.items = append(u.items, item{text: o.name})
	}
	page := len(u.items)
	u.items = append(u.items, item{text: "this page's sheet: " + p.topic.String()})
	u.pick = func(p *Planner, i int) {
		if i == page {
			p.copyPage()
			return
		}
		p.copyText(clip.Text(offers[i].lines(), p.plan, p.now()))
	}
	p.overlay = u
}

// offers returns what can be copied of the focus and of the foot of the screen.
func (p *Planner) offers() (list []offer) {
	if figures := p.focusedFigures(); p.figures && len(figures) > 0 {
		list = append(list,
			offer{"this figure: " + wording.Figures(figures, p.system), func() []string { return p.figureCopied(figures) }},
			offer{"its working", func() []string { return p.workingCopied(figures) }})
	}
	if l := p.focused(); !p.figures && l.kind == lineField {
		text := l.ref.Words() + ": " + wording.Content(p.plan, l.ref, p.system)
		list = append(list, offer{"this entry: " + text, func() []string { return []string{text} }})
	}
	if found := p.sortedFindings(calc.Caution); len(found) > 0 {
		list = append(list, offer{"this finding: " + p.findingText(found[0]), func() []string { return p.findingCopied(found[0]) }})
	}
	return list
}

// figureCopied returns what is copied of a line of figures: where it stands, and what it says.
func (p *Planner) figureCopied(figures []calc.Figure) []string {
	return []string{wording.Place(p.sheet(), figures[0]) + ": " + wording.Figures(figures, p.system)}
}

// workingCopied returns what is copied of the workings of a line of figures.
func (p *Planner) workingCopied(figures []calc.Figure) []string {
	lines := []string{wording.Place(p.sheet(), figures[0])}
	for _, f := range figures {
		lines = append(lines, wording.Working(p.plan, p.sheet(), f, p.system)...)
	}
	return lines
}

// findingCopied returns what is copied of a finding.
func (p *Planner) findingCopied(f calc.Finding) []string {
	return []string{p.findingText(f), "Source: " + f.Source}
}

// copyPage copies the page's sheet, with the cautions that belong to its figures.
func (p *Planner) copyPage() {
	o := p.printing(sheet.Sheets, sheet.Text)
	o.Section = p.sheet()
	var b bytes.Buffer
	if err := sheet.WriteTopic(&b, p.plan, p.result, p.topic, o); err != nil {
		p.message = model.Clean(err.Error())
		return
	}
	p.copyText(b.String())
}

// copyText writes a text to the terminal's clipboard and to a file, and says what came of it: whether the terminal took it, nothing
// tells. A path that has no room on the lines of messages is shown over the page.
func (p *Planner) copyText(text string) {
	sent, also := "sent to the terminal, which may not take it", "also in "
	if err := p.send(text); err != nil {
		sent, also = "not sent to the terminal: "+err.Error(), "copied to "
	}
	path, err := clip.Keep(text, p.options.Env, p.options.System)
	said := model.Clean(sent + "; " + also + path)
	if err != nil {
		said = model.Clean(sent + "; " + err.Error())
	}
	if len(wrap(p.glyphs.Translate(said), p.width-2)) <= detailRows {
		p.message = said
		return
	}
	u := &menu{title: "Copied", back: p.overlay}
	for _, part := range strings.SplitAfter(said, "; ") {
		for _, word := range strings.Fields(part) {
			part = strings.Replace(part, word, strings.Join(cut(word, p.pageWidth()-6), " "), 1)
		}
		u.say(p, canvas.Plain, part)
	}
	p.overlay = u
}

// cut parts a word, such as a path, that is wider than a line.
func cut(word string, width int) (parts []string) {
	runes := []rune(word)
	for len(runes) > width {
		parts, runes = append(parts, string(runes[:width])), runes[width:]
	}
	return append(parts, string(runes))
}

// send writes a text to the terminal's clipboard.
func (p *Planner) send(text string) error {
	if p.options.Terminal == nil {
		return errors.New("there is none")
	}
	sequence, err := clip.Sequence(text, p.options.Env)
	if err != nil {
		return err
	}
	_, err = p.options.Terminal.Write([]byte(sequence))
	return err
}
