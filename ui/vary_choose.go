package ui

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/wording"
)

// watched is a figure that can be shown against an entry.
type watched struct {
	sheet  int
	figure calc.Figure
}

// newFollowers asks for the figure to be shown against an entry: those that move with it, of the page first and those with a
// limit before the others, then the rest of the page. What only echoes the entry is not offered first where a figure with a limit
// says more.
func newFollowers(p *Planner, ref model.Ref) overlay {
	var figures []watched
	var items []item
	listed := map[watched]bool{}
	add := func(heading string, list []watched) {
		if len(list) == 0 {
			return
		}
		figures, items = append(figures, watched{}), append(items, item{text: heading, style: canvas.Heading, dead: true})
		for _, w := range list {
			listed[watched{w.sheet, calc.Figure{Key: w.figure.Key}}] = true
			figures, items = append(figures, w), append(items, item{text: p.watchedText(w), full: p.watchedText(w) + ", " + sheetName(p, w)})
		}
	}
	var limited, page, rest []watched
	for _, f := range calc.Followers(p.plan, ref, p.system.Unit(ref.Field.Kind)) {
		w := watched{f.Sheet, f.Figure}
		here := f.Sheet == p.sheet() && f.Figure.Topic == p.topic
		switch {
		case here && f.Limited:
			limited = append(limited, w)
		case here:
			page = append(page, w)
		default:
			rest = append(rest, w)
		}
	}
	offered, further := slices.Concat(limited, page), []watched(nil)
	if len(offered) > 0 && offered[0].figure.Kind == ref.Field.Kind {
		limited, further = newReach(p, ref).sayMore(limited, offered)
	}
	add("Move with it and have a limit", limited)
	add("Have a limit, and move with it further on", further)
	add("Move with it", page)
	byPage := map[string][]watched{}
	var pages []string
	for _, w := range rest {
		name := sheetName(p, w)
		if byPage[name] == nil {
			pages = append(pages, name)
		}
		byPage[name] = append(byPage[name], w)
	}
	slices.SortStableFunc(pages, func(a, b string) int {
		return cmp.Compare(p.looksAt().Nearness(byPage[a][0].sheet), p.looksAt().Nearness(byPage[b][0].sheet))
	})
	for _, name := range pages {
		add("Move with it, "+name, byPage[name])
	}
	var still []watched
	for _, f := range p.result.Sheet(p.sheet()).Figures {
		if w := (watched{p.sheet(), f}); f.Topic == p.topic && !listed[watched{w.sheet, calc.Figure{Key: f.Key}}] {
			still = append(still, w)
		}
	}
	heading := "Stay, at least for one step"
	if !ref.Get(p.plan).IsSet() {
		heading = "Of this page; the entry is blank"
	}
	add(heading, still)
	return newFinder("Vary "+ref.Field.Label+": which figure?", items, func(p *Planner, i int) {
		p.openSweep(figures[i].sheet, figures[i].figure, ref)
	})
}

// sheetName names the page that a figure stands on.
func sheetName(p *Planner, w watched) string {
	switch {
	case w.sheet < 0:
		return "well"
	case w.sheet == p.section:
		return w.figure.Topic.String() + " page"
	}
	return fmt.Sprintf("section %d %s", w.sheet+1, w.figure.Topic)
}

func (p *Planner) watchedText(w watched) string {
	return figureName(w.figure) + "  " + p.cell(w.figure)
}

// chooseColumn takes the figure in focus, asking which where the line has several, and looks for the entries that move it.
func (p *Planner) chooseColumn() {
	var figures []calc.Figure
	for _, f := range p.focusedFigures() {
		if f.OK {
			figures = append(figures, f)
		}
	}
	sheet := p.sheet()
	if len(figures) == 1 {
		p.overlay = newSeeker(p, sheet, figures[0])
		return
	}
	u := &menu{title: figures[0].Name + ": which of them?"}
	for _, f := range figures {
		u.items = append(u.items, item{text: p.watchedText(watched{sheet, f})})
	}
	u.pick = func(p *Planner, i int) { p.overlay = newSeeker(p, sheet, figures[i]) }
	p.overlay = u
}

// seeker is an overlay that looks for the entries that move a figure, and then asks for one of them.
type seeker struct {
	plan    *model.Plan // a copy, to try on
	system  quantity.System
	sheet   int
	figure  calc.Figure
	beside  []model.Ref // entries that are varied already
	refs    []model.Ref
	looked  int
	effects []calc.Effect
	busy    bool
}

func newSeeker(p *Planner, sheet int, figure calc.Figure, beside ...model.Ref) *seeker {
	u := &seeker{plan: p.plan.Clone(), system: p.system, sheet: sheet, figure: figure, beside: beside}
	for _, ref := range calc.Handles(p.plan, sheet) {
		if !slices.Contains(beside, ref) {
			u.refs = append(u.refs, ref)
		}
	}
	return u
}

func (u *seeker) waits() *bool { return &u.busy }

// patient is false: what is typed before the list is seen must not narrow it.
func (u *seeker) patient() bool { return false }

// more looks at further entries; when there are none the list opens.
func (u *seeker) more() func(time.Time) func(*Planner) {
	from := u.looked
	return func(until time.Time) func(*Planner) {
		const few = 16
		var found []calc.Effect
		at := from
		for at < len(u.refs) {
			next := min(at+few, len(u.refs))
			found = append(found, calc.Effects(u.plan, u.sheet, u.figure.Key, u.refs[at:next], u.system)...)
			if at = next; !time.Now().Before(until) {
				break
			}
		}
		return func(p *Planner) {
			if u.effects, u.looked = append(u.effects, found...), at; at == len(u.refs) {
				u.list(p)
			}
		}
	}
}

// list offers the entries that move the figure, the strongest first, and then those of the section that do not do so from where they
// stand.
func (u *seeker) list(p *Planner) {
	slices.SortStableFunc(u.effects, func(a, b calc.Effect) int {
		if a.Lost != b.Lost {
			if a.Lost {
				return 1
			}
			return -1
		}
		return cmp.Compare(math.Abs(b.Change), math.Abs(a.Change))
	})
	var items []item
	for _, e := range u.effects {
		items = append(items, p.effectItem(u, e))
	}
	refs := make([]model.Ref, len(u.effects), len(u.refs)+1)
	moves := map[model.Ref]bool{}
	for k, e := range u.effects {
		refs[k], moves[e.Ref] = e.Ref, true
	}
	items, refs = append(items, item{text: "Do not move it by one step", style: canvas.Heading, dead: true}), append(refs, model.Ref{})
	for _, ref := range u.refs {
		if !moves[ref] && (u.sheet < 0 || inSection(ref) && ref.Place.Outer == u.sheet) {
			refs = append(refs, ref)
			items = append(items, item{text: pad("", 12) + " " + pad("", 10) + " " + handleName(ref, u.sheet), full: ref.Words()})
		}
	}
	name := figureName(u.figure) + " moves by one step of"
	if len(u.beside) > 0 {
		name = "Beside " + u.beside[0].Field.Label + ": which entry moves " + figureName(u.figure) + "?"
	}
	p.overlay = newFinder(name, items, func(p *Planner, i int) {
		p.openSweep(u.sheet, u.figure, append(slices.Clone(u.beside), refs[i])...)
	})
}

// inSection reports whether an entry is a section's.
func inSection(ref model.Ref) bool { return wording.InSection(ref) }

// handleName names an entry on the line of a list, with its row, and its section where that is another than the one worked on.
func handleName(ref model.Ref, section int) string {
	name := ref.Field.Label
	if g := ref.Group; g.List && g != model.SectionGroup() {
		name = fmt.Sprintf("%s %d: %s", g.Title, g.Index(ref.Place)+1, name)
	}
	if inSection(ref) && ref.Place.Outer != section {
		name = fmt.Sprintf("section %d %s", ref.Place.Outer+1, name)
	}
	return name
}

// effectItem says what one step of an entry does.
func (p *Planner) effectItem(u *seeker, e calc.Effect) item {
	kind := u.figure.Kind
	field, unit := e.Ref.Field, p.system.Unit(e.Ref.Field.Kind)
	does := cmp.Or(quantity.FormatChange(e.Change, kind, p.system.Unit(kind)), "hardly")
	if does != "hardly" {
		does += " " + p.system.Unit(kind).Symbol()
	}
	if e.Lost {
		does = "blank"
	}
	step := quantity.FormatChange(e.Step, field.Kind, unit) + " " + unit.Symbol()
	return item{text: pad(does, 12) + " " + pad(step, 10) + " " + handleName(e.Ref, u.sheet),
		full: e.Ref.Words() + " " + step + ": " + figureName(u.figure) + " " + does}
}

func (u *seeker) keys(*Planner) []binding {
	return []binding{closing("left", "gives up", func(p *Planner) { p.overlay = nil })}
}

func (u *seeker) below() (title, detail string) {
	return "what moves " + figureName(u.figure), fmt.Sprintf("%d of %d entries looked at", u.looked, len(u.refs))
}

func (u *seeker) update(p *Planner, m tea.KeyMsg) { p.obeyIn(u, m) }

func (u *seeker) draw(p *Planner, r canvas.Region) {
	frame(p, r, "What moves "+figureName(u.figure))
	r.Text(2, 2, fmt.Sprintf("looking: %d of %d entries", u.looked, len(u.refs)), canvas.Plain)
}
