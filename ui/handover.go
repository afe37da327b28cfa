package ui

import (
	"fmt"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/canvas"
	"borewalk/ui/relief"
)

// handing is an overlay that shows what a relief reads first, over the whole width, and lets it be signed.
type handing struct{}

// handingTop is how many rows of the header stay above it: the name of the well.
const handingTop = 1

// handingFoot is how many rows of the footer stay below it: the message, and the keys.
const handingFoot = 2

// reliefLabel is the columns of a row's label.
const reliefLabel = 10

// showHandover opens it, with the section in work.
func (p *Planner) showHandover() {
	if i, ok := p.plan.InWork(); ok {
		p.section = i
	}
	p.overlay = &handing{}
}

func (u *handing) keys(p *Planner) []binding {
	where := "what the relief works out"
	if _, working := p.plan.InWork(); !working {
		where = "the section in work"
	}
	return []binding{
		on("s", "s", "sign: both names are asked, the hour is stamped", "s signs", u.askFrom),
		on("enter", "enter", "go to "+where, "enter goes to "+where, u.goToChecks),
		on("m", "m", "other units", "m units", (*Planner).turnUnits),
		closing("H left", "closes", func(p *Planner) { p.overlay = nil }),
	}
}

func (u *handing) below() (title, detail string) { return "Handover", "" }

func (u *handing) update(p *Planner, m tea.KeyMsg) { p.obeyIn(u, m) }

// goToChecks leaves for the entries of the relief's own figures, or for the status where nothing is signed.
func (u *handing) goToChecks(p *Planner) {
	p.overlay = nil
	_, row, signed := p.plan.LastHandover()
	_, working := p.plan.InWork()
	switch {
	case !working:
		p.goTo("status.section")
	case signed:
		p.goTo(model.Path(fmt.Sprintf("handover[%d].to_bit", row+1)))
	default:
		p.goToList("handover")
	}
}

// askFrom asks who hands over, and then who takes over.
func (u *handing) askFrom(p *Planner) {
	const note = "Name and post. The hour is stamped when both are there; what the relief works out by himself is entered on the page."
	ask := newPrompt("Handed over by", note, p.lastRelief(), func(p *Planner, from string) string {
		if from == "" {
			return "a name is needed"
		}
		to := newPrompt("Taken over by", note, "", func(p *Planner, to string) string {
			if to == "" {
				return "a name is needed"
			}
			p.signHandover(model.Clean(from), model.Clean(to))
			p.overlay = u
			return ""
		})
		to.back, p.overlay = u, to
		return ""
	})
	ask.back, p.overlay = u, ask
}

// lastRelief returns who took over last: he hands over now.
func (p *Planner) lastRelief() string {
	if h, _, ok := p.plan.LastHandover(); ok {
		return h.To
	}
	return ""
}

// stamped is how the hour of a handover is written.
const stamped = "2006-01-02 15:04"

// signHandover adds a handover to the plan, as one edit.
func (p *Planner) signHandover(from, to string) {
	list, row := model.HandoverList(), len(p.plan.Handovers)
	at := list.At(model.Place{}, row)
	changes := []model.Change{model.Adding(list, at)}
	for _, e := range []struct{ key, text string }{{"from", from}, {"to", to}, {"time", p.options.Now().Format(stamped)}} {
		ref := model.Ref{Group: list, Field: list.Field(e.key), Place: at}
		changes = append(changes, model.Change{Kind: model.SetEntry, Ref: ref, New: model.Entry{Text: e.text}})
	}
	p.do(model.Edit{Name: "handover from " + from + " to " + to, Changes: changes})
}

// drawWhole draws the handover below the name of the well, and above the message and the keys.
func (u *handing) drawWhole(p *Planner, all canvas.Region) {
	r := all.Sub(0, handingTop, all.W(), all.H()-handingTop-handingFoot)
	r.Fill(' ', canvas.Plain)
	u.draw(p, r)
	text, style := p.statusLine()
	all.Text(1, all.H()-2, canvas.Cut(p.glyphs.Translate(text), all.W()-2), style)
	all.Text(1, all.H()-1, p.keyLine(all.W()-2), canvas.Faint)
}

func (u *handing) draw(p *Planner, r canvas.Region) {
	r.HLine(0, 0, r.W(), p.glyphs.Horizontal, canvas.Faint)
	r.Text(2, 0, " HANDOVER, at the present depth ", canvas.Heading)
	rows := relief.Rows(p.plan, p.result, p.system, p.changesSince())
	y := 1
	for _, lines := range relief.Fit(rows, r.W()-reliefLabel-2, r.H()-1, " ·", p.reliefMark) {
		for _, l := range lines {
			r.Text(1, y, l.Label, canvas.Heading)
			x := 1 + reliefLabel
			for _, it := range l.Items {
				style := canvas.Plain
				if it.Severity > calc.OK {
					style = severityStyle(it.Severity)
				}
				x = r.Text(x, y, p.glyphs.Translate(it.Text), style)
			}
			y++
		}
	}
}

// reliefMark is put before what something is found about.
func (p *Planner) reliefMark(s calc.Severity) string {
	if s == calc.OK {
		return ""
	}
	return p.severityMark(s)
}

// isStepNow reports whether an entry names the operation being done.
func isStepNow(ref model.Ref) bool {
	return ref.Group == model.StatusGroup() && ref.Field.Key == "step"
}

// newStepNow offers the operations of the section in work; nil where there are none.
func newStepNow(p *Planner, ref model.Ref) overlay {
	i, ok := p.plan.InWork()
	if !ok || len(p.result.Steps[i]) == 0 {
		return nil
	}
	steps := p.result.Steps[i]
	u := &menu{title: fmt.Sprintf("Operation of section %d being done", i+1)}
	for k := range steps {
		if steps[k].Key == p.plan.Status.Step {
			u.at = k
		}
		u.items = append(u.items, item{text: steps[k].Name, full: steps[k].Name + ". " + steps[k].Do})
	}
	u.pick = func(p *Planner, k int) { p.change(ref, model.Entry{Text: steps[k].Key}) }
	return u
}
