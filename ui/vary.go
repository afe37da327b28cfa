package ui

import (
	"fmt"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// varying is an overlay that shows what a figure becomes when an entry takes other contents: a chart, or with a second entry a
// table. Nothing is changed until a content is taken.
type varying struct {
	sweep    *calc.Sweep
	figure   calc.Figure // as the plan stands
	outcomes []calc.Outcome
	at       [2]int // the content of each entry that the cursor is on
	busy     bool
}

// How many contents are tried for a chart.
const chartContents = 40

// noVary says why the line in focus cannot be varied.
func (p *Planner) noVary() string {
	if p.figures {
		if f, ok := p.focusedFigure(); !ok || !f.OK {
			return "there is no figure here to watch"
		}
		return ""
	}
	l := p.focused()
	switch {
	case p.view != viewFields || l.kind != lineField:
		return "go to the field of a number, or to a figure"
	case l.ref.Field.Type != model.QuantityField:
		return "not a number"
	}
	if why := l.ref.Idle(p.plan); why != "" {
		return "it does not count just now: " + why
	}
	if _, ok := p.spanOf(l.ref, chartContents); !ok {
		return "there is no range to try; type a value first"
	}
	return ""
}

func (p *Planner) spanOf(ref model.Ref, count int) (calc.Span, bool) {
	return calc.NewSpan(p.plan, ref, p.system.Unit(ref.Field.Kind), count)
}

// vary begins with the entry in focus and asks for the figure, or the other way round.
func (p *Planner) vary() tea.Cmd {
	if p.figures {
		p.chooseColumn()
	} else {
		p.overlay = newFollowers(p, p.focused().ref)
	}
	p.begin()
	return p.goOn()
}

// open shows a figure against entries.
func (p *Planner) openSweep(sheet int, figure calc.Figure, refs ...model.Ref) {
	u := &varying{figure: figure}
	var spans []calc.Span
	for k, ref := range refs {
		count := chartContents
		if len(refs) == 2 {
			count = p.tableContents(k)
		}
		span, ok := p.spanOf(ref, count)
		if !ok {
			p.message = ref.Field.Name + ": there is no range to try; type a value first"
			return
		}
		u.at[k] = max(span.Now, 0)
		if span.Now < 0 {
			u.at[k] = len(span.Entries) / 2
		}
		spans = append(spans, span)
	}
	u.sweep = calc.NewSweep(p.plan, sheet, figure.Key, spans...)
	p.overlay, p.message = u, ""
}

// sweepOver tries other contents.
func (u *varying) sweepOver(p *Planner, k int, span calc.Span) {
	spans := append([]calc.Span(nil), u.sweep.Spans...)
	value := u.entry(k).Quantity.SI
	spans[k] = span
	u.at[k] = span.Nearest(value)
	u.sweep, u.outcomes = calc.NewSweep(p.plan, u.sweep.Sheet, u.sweep.Key, spans...), nil
}

// entry returns the content of entry k that the cursor is on.
func (u *varying) entry(k int) model.Entry { return u.sweep.Spans[k].Entries[u.at[k]] }

// table reports whether two entries are varied.
func (u *varying) table() bool { return len(u.sweep.Spans) == 2 }

// number returns which outcome the cursor is on.
func (u *varying) number() int { return u.sweep.Number(u.at[0], u.at[1]) }

// outcome returns the outcome at the cursor, when it has been worked out.
func (u *varying) outcome() (calc.Outcome, bool) {
	if n := u.number(); n < len(u.outcomes) {
		return u.outcomes[n], true
	}
	return calc.Outcome{}, false
}

func (u *varying) waits() *bool { return &u.busy }

func (u *varying) patient() bool { return true }

// more works out further outcomes.
func (u *varying) more() func(time.Time) func(*Planner) {
	sweep, from := u.sweep, len(u.outcomes)
	if from >= sweep.Size() {
		return nil
	}
	return func(until time.Time) func(*Planner) {
		const few = 4
		var got []calc.Outcome
		for {
			at := from + len(got)
			got = append(got, sweep.Try(at, min(at+few, sweep.Size()))...)
			if from+len(got) >= sweep.Size() || !time.Now().Before(until) {
				break
			}
		}
		return func(*Planner) {
			if u.sweep == sweep { // else other contents are tried by now
				u.outcomes = append(u.outcomes, got...)
			}
		}
	}
}

func (u *varying) keys(*Planner) []binding {
	across, down := 0, 0
	if u.table() {
		across = 1
	}
	step := func(keys, shown, help, short string, k, by int) binding {
		return on(keys, shown, help, short, func(p *Planner) { u.step(p, k, by) })
	}
	take, arrows := "take the value as an edit", "left right value"
	if u.table() {
		take, arrows = "take both values as one edit", "arrows cell"
	}
	keys := []binding{
		step("right l", "right", "higher value, or next column", arrows, across, 1), step("left h", "left", "lower value, or column before", "", across, -1),
		step("up k", "up", "higher value, or row above", "", down, -u.upwards()), step("down j", "down", "lower value, or row below", "", down, u.upwards()),
		on("enter", "enter", take, "enter takes it", u.take),
		on("+ =", "+", "values closer together", "+ - zoom", func(p *Planner) { u.zoom(p, calc.Span.Closer) }),
		on("-", "-", "values further apart", "", func(p *Planner) { u.zoom(p, calc.Span.Wider) }),
		step("pgdown", "page down", "five on", "", down, 5), step("pgup", "page up", "five back", "", down, -5),
		on("home", "home", "first value", "", func(p *Planner) { u.step(p, down, -u.at[down]) }),
		on("end", "end", "last value", "", func(p *Planner) { u.step(p, down, len(u.sweep.Spans[down].Entries)-1-u.at[down]) }),
	}
	if !u.table() {
		keys = append(keys, on("a", "a", "a second entry: makes a table of both", "a second", func(p *Planner) {
			p.overlay = newSeeker(p, u.sweep.Sheet, u.figure, u.sweep.Spans[0].Ref)
		}))
	}
	return append(keys, closing("", "leaves all as it is", func(p *Planner) {
		p.overlay = nil
		p.message = "nothing was changed"
	}).saying("q leaves"))
}

func (u *varying) update(p *Planner, m tea.KeyMsg) { p.obeyIn(u, m) }

// upwards is what the down key adds to the first entry: in a table it goes to the next row, on a chart to a lower value.
func (u *varying) upwards() int {
	if u.table() {
		return 1
	}
	return -1
}

// step moves the cursor; at an end the span moves on.
func (u *varying) step(p *Planner, k, by int) {
	span := u.sweep.Spans[k]
	if to := u.at[k] + by; to >= 0 && to < len(span.Entries) {
		u.at[k] = to
		return
	}
	old := span.Entries
	moved := span.Moved(max(1, len(old)/4) * sign(by))
	if moved.Entries[0] == old[0] && moved.Entries[len(moved.Entries)-1] == old[len(old)-1] {
		p.message = "the entry's range ends here: " + span.Ref.Field.RangeText(p.system)
		return
	}
	u.sweepOver(p, k, moved)
	u.at[k] = max(0, min(u.at[k]+by, len(moved.Entries)-1))
}

func sign(n int) int {
	if n < 0 {
		return -1
	}
	return 1
}

// zoom tries contents nearer to the cursor, or further from it.
func (u *varying) zoom(p *Planner, to func(calc.Span, int) calc.Span) {
	for k, span := range u.sweep.Spans {
		u.sweepOver(p, k, to(span, u.at[k]))
	}
}

// take makes the contents at the cursor the plan's, as one edit.
func (u *varying) take(p *Planner) {
	p.overlay = nil
	var names []string
	for k, span := range u.sweep.Spans {
		if name := p.editName(span.Ref, u.entry(k)); u.at[k] != span.Now {
			names = append(names, name)
		}
	}
	changes := u.sweep.Changes(u.number())
	if len(changes) > len(u.sweep.Spans) {
		names = append(names, calc.MoveAll.String())
	}
	ref := u.sweep.Spans[0].Ref
	p.do(model.Edit{Name: strings.Join(names, ", "), Changes: changes})
	message := p.message
	p.goTo(ref.Path())
	p.message = message
	if len(names) == 0 {
		p.message = "that is what stands in the plan"
	}
}

// below says what the contents at the cursor give.
func (u *varying) below() (title, detail string) {
	return "vary: nothing is changed until enter takes it", ""
}

// inWords says what the contents at the cursor give, against the plan as it stands.
func (u *varying) inWords(p *Planner) string {
	var said []string
	for k, span := range u.sweep.Spans {
		field := span.Ref.Field
		text := field.Label + " " + field.ScreenText(u.entry(k), p.system)
		if now := span.Ref.Get(p.plan); u.at[k] != span.Now && now.IsSet() {
			text += " (now " + field.ScreenText(now, p.system) + ")"
		} else if u.at[k] == span.Now {
			text += " (now)"
		}
		said = append(said, text)
	}
	text := strings.Join(said, ", ") + ": "
	t, ok := u.outcome()
	switch {
	case !ok:
		return text + "being worked out"
	case !t.Figure.OK:
		return text + u.figure.Name + " is blank: " + t.Figure.Why
	}
	text += figureName(u.figure) + " " + p.cell(t.Figure)
	if change := quantity.FormatChange(t.Figure.Value-u.figure.Value, u.figure.Kind, p.system.Unit(u.figure.Kind)); u.figure.OK && change != "" {
		text += " [" + change + "]"
	}
	for _, more := range []struct {
		count int
		word  string
	}{{t.Stops, "stop"}, {t.Cautions, "caution"}} {
		if more.count != 0 {
			text += fmt.Sprintf(", %+d %s", more.count, more.word)
		}
	}
	return text
}

// found returns the finding that an outcome's mark stands for.
func (u *varying) found(p *Planner) (string, canvas.Style) {
	t, ok := u.outcome()
	switch {
	case !ok:
		return "", canvas.Plain
	case t.Severity > calc.OK:
		return p.severityMark(t.Severity) + " " + p.findingText(t.Worst), severityStyle(t.Severity)
	}
	return "no limit of this figure passed, nothing found beyond what the plan has", canvas.OK
}

// figureName names a figure with its column.
func figureName(f calc.Figure) string {
	if f.Column != "" {
		return f.Name + ", " + f.Column
	}
	return f.Name
}
