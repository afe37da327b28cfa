package ui

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
)

// chances is an overlay that shows how the outcomes of a section spread over its ranges, and the odds that each limit is met. Nothing
// is changed by it.
type chances struct {
	odds     *calc.Odds
	outcomes [][]float64 // of the blocks tried so far
	blocks   int
	rows     []calc.OddsRow
	at       int
	telling  bool // what stands behind the odds, in place of the table
	from     int  // the first line of that
	busy     bool
}

// noOdds says why there are no odds to show.
func (p *Planner) noOdds() string {
	if p.topic == model.TopicWell || len(p.plan.Sections) == 0 {
		return "go to a section first: its ranges are drawn from"
	}
	why, _ := calc.NoOdds(p.plan, p.section)
	return why
}

func (p *Planner) showOdds() tea.Cmd {
	odds, why, _ := calc.NewOdds(p.plan, p.section)
	if odds == nil {
		p.message = "U: " + why
		return nil
	}
	p.overlay = &chances{odds: odds, rows: odds.Rows(odds.Try(0, 0))}
	p.begin()
	return p.goOn()
}

func (u *chances) waits() *bool { return &u.busy }

func (u *chances) patient() bool { return true }

// more tries further blocks.
func (u *chances) more() func(time.Time) func(*Planner) {
	from, all := u.blocks, u.odds.Blocks()
	if from >= all {
		return nil
	}
	return func(until time.Time) func(*Planner) {
		const few = 2
		outcomes, at := slices.Clone(u.outcomes), from
		for at < all {
			next := min(at+few, all)
			outcomes = joined(outcomes, u.odds.Try(at, next))
			if at = next; !time.Now().Before(until) {
				break
			}
		}
		rows := u.odds.Rows(outcomes)
		return func(*Planner) { u.outcomes, u.blocks, u.rows = outcomes, at, rows }
	}
}

// joined puts the outcomes of further trials behind those before.
func joined(before, then [][]float64) [][]float64 {
	if before == nil {
		return then
	}
	for k := range before {
		before[k] = slices.Concat(before[k], then[k])
	}
	return before
}

func (u *chances) keys(p *Planner) []binding {
	page, all := max(1, p.rows()-4), len(u.rows)+1<<10
	step := func(keys, shown, help, short string, by int) binding {
		return on(keys, shown, help, short, func(*Planner) { u.step(by) })
	}
	turn, moves := "w what is drawn and how", "up down outcome"
	if u.telling {
		turn, moves = "w the table", "up down scroll"
	}
	return []binding{
		step("down j", "down", "next line", moves, 1), step("up k", "up", "line before", "", -1),
		on("w", "w", "what is drawn and how, or the table again", turn, func(*Planner) { u.telling, u.from = !u.telling, 0 }),
		step("pgdown space", "page down, space", "a page down", "", page), step("pgup", "page up", "a page up", "", -page),
		step("home", "home", "to the beginning", "", -all), step("end", "end", "to the end", "", all),
		closing("left", "closes", func(p *Planner) { p.overlay = nil }),
	}
}

func (u *chances) below() (title, detail string) {
	return fmt.Sprintf("odds: %d of %d trials", u.odds.Trials(u.blocks), u.odds.Trials(u.odds.Blocks())), ""
}

func (u *chances) update(p *Planner, m tea.KeyMsg) { p.obeyIn(u, m) }

func (u *chances) step(by int) {
	if u.telling {
		u.from = max(0, u.from+by)
		return
	}
	u.at = max(0, min(u.at+by, len(u.rows)-1))
}

// inWords says all of the outcome in focus.
func (u *chances) inWords(p *Planner) string {
	r := &u.rows[u.at]
	unit := p.system.Unit(r.Kind)
	value := func(x float64) string {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return "blank"
		}
		return quantity.FormatUnit(x, r.Kind, unit)
	}
	text := r.Text + ": likely " + value(r.Likely)
	if !r.HasLimit {
		return text + "; no limit of its own"
	}
	side := "at most "
	if r.Least {
		side = "at least "
	}
	text += ", " + side + value(r.Limit)
	if r.Own {
		text += " (plan)"
	}
	if u.blocks > 0 {
		text += " in " + percent(r.Odds.Share) + " of trials, " + percent(r.Odds.Low) + " to " + percent(r.Odds.High) + " of endless ones"
	}
	if r.Unanswered > 0 {
		text += fmt.Sprintf("; %d could not be worked out and do not meet it", r.Unanswered)
	}
	if r.Conditional {
		text += "; where cement reaches the last string it is not asked"
	}
	return text + "; " + r.Source
}

func (u *chances) found(*Planner) (string, canvas.Style) {
	return "each range drawn by itself, one section; a share of trials, not of wells (w)", canvas.Plain
}

// percent writes a share in whole percents, and none or all only where it is.
func percent(share float64) string {
	if math.IsNaN(share) {
		return "-"
	}
	whole := math.Round(100 * share)
	switch {
	case whole == 100 && share < 1:
		return ">99 %"
	case whole == 0 && share > 0:
		return "<1 %"
	}
	return fmt.Sprintf("%.0f %%", whole)
}

func (u *chances) draw(p *Planner, r canvas.Region) {
	if u.telling {
		u.drawTelling(p, r)
		return
	}
	frame(p, r, fmt.Sprintf("Odds of section %d over its ranges", u.odds.Section+1))
	u.drawTable(p, r.Sub(1, 1, r.W()-2, r.H()-2), r)
}

// Columns of the table.
const (
	chanceValue = 7
	chanceLimit = 8
	chanceShare = 6
)

// drawTable draws a line for each outcome and limit; further limits of one outcome stand below it alone.
func (u *chances) drawTable(p *Planner, in, r canvas.Region) {
	name := in.W() - 3*chanceValue - chanceLimit - chanceShare
	for k, head := range []string{"P10", "P50", "P90"} {
		in.TextRight(name+k*chanceValue, 0, chanceValue, head, canvas.Heading)
	}
	in.TextRight(name+3*chanceValue, 0, chanceLimit, "limit", canvas.Heading)
	in.TextRight(name+3*chanceValue+chanceLimit, 0, chanceShare, "odds", canvas.Heading)
	list := in.Sub(0, 1, in.W(), in.H()-1)
	first := max(0, min(u.at-list.H()/2, len(u.rows)-list.H()))
	for y := 0; y < list.H() && first+y < len(u.rows); y++ {
		k := first + y
		u.drawRow(p, list.Sub(0, y, list.W(), 1), k, name, y > 0 && k > 0 && u.rows[k-1].Text == u.rows[k].Text)
	}
	more(p, r, first > 0, first+list.H() < len(u.rows))
}

func (u *chances) drawRow(p *Planner, line canvas.Region, k, name int, again bool) {
	row := &u.rows[k]
	unit, style := p.system.Unit(row.Kind), canvas.Plain
	if k == u.at {
		style = canvas.Focus
		line.Put(0, 0, p.glyphs.Mark, style)
	}
	if !again {
		text := row.Text // in full where there is room
		if canvas.Width(text)+canvas.Width(unit.Symbol())+2 > name {
			text = row.Name
		}
		line.Text(1, 0, canvas.Clip(p.glyphs.Translate(strings.TrimSpace(text+" "+unit.Symbol())), name-1), style)
		for n, x := range []float64{row.Spread.P10, row.Spread.P50, row.Spread.P90} {
			text := "-"
			if !math.IsNaN(x) && !math.IsInf(x, 0) {
				text = quantity.Format(x, row.Kind, unit)
			}
			line.TextRight(name+n*chanceValue, 0, chanceValue, text, style)
		}
	}
	if !row.HasLimit {
		return
	}
	side := "<"
	if row.Least {
		side = ">"
	}
	line.TextRight(name+3*chanceValue, 0, chanceLimit, side+quantity.Format(row.Limit, row.Kind, unit), style)
	line.TextRight(name+3*chanceValue+chanceLimit, 0, chanceShare, percent(row.Odds.Share), style)
}

// drawTelling draws what is drawn from what, and what stands behind the odds.
func (u *chances) drawTelling(p *Planner, r canvas.Region) {
	frame(p, r, "What is drawn, and how")
	in := r.Sub(2, 1, r.W()-4, r.H()-2)
	var lines []string
	for k := range u.odds.Ranges {
		lines = append(lines, wrap(p.glyphs.Translate(p.rangeText(&u.odds.Ranges[k])), in.W())...)
	}
	for _, text := range u.odds.Cautions() {
		lines = append(append(lines, ""), wrap(p.glyphs.Translate(text), in.W())...)
	}
	u.from = max(0, min(u.from, len(lines)-in.H()))
	for y := 0; y < in.H() && u.from+y < len(lines); y++ {
		in.Text(0, y, lines[u.from+y], canvas.Plain)
	}
	more(p, r, u.from > 0, u.from+in.H() < len(lines))
}

// rangeText writes a range in the units shown.
func (p *Planner) rangeText(r *calc.Range) string {
	unit := p.system.Unit(r.Kind)
	if r.Offset {
		return fmt.Sprintf("%s: the prognosis, %s to %s", r.Name, change(r.Low, r.Kind, unit), change(r.High, r.Kind, unit))
	}
	return fmt.Sprintf("%s: %s to %s, likely %s", r.Name, quantity.Format(r.Low, r.Kind, unit), quantity.FormatUnit(r.High, r.Kind, unit),
		quantity.FormatUnit(r.Likely, r.Kind, unit))
}

// change writes a difference with its sign.
func change(d float64, kind quantity.Kind, unit quantity.Unit) string {
	if text := quantity.FormatChange(d, kind, unit); text != "" {
		return text + " " + unit.Symbol()
	}
	return "as it is"
}
