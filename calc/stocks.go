package calc

import (
	"strconv"
	"strings"

	"borewalk/model"
	"borewalk/model/quantity"
)

// balance is a stock as it stands after a section.
type balance struct {
	kind    quantity.Kind
	before  float64 // aboard now, less what the sections above still take, with what the boat has brought by then
	brought float64 // by the boat until the section needs it
	take    *stockUse
	left    float64
	short   float64 // left without the boat
	keep    kept
	need    float64 // when the section needs it
	noNeed  gap     // for that
	missing gap     // for what is left
}

// needSteps are the operations before which a stock is needed.
func needSteps(item string) []string {
	switch item {
	case model.DryCement, model.DrillWater:
		return []string{"cement"}
	}
	return []string{"displace", "drill", "drill_seabed", "jet"}
}

// balanceOf works out stock k down to section i, which is not done.
func (e *evaluation) balanceOf(i, k int) balance {
	stock, t := &e.plan.Stocks[k], e.clock()
	b := balance{kind: quantity.Mass, take: e.takenBy(i, k), keep: e.keptOf(i, stock)}
	aboard, path, what := stock.Aboard(), "mass", "mass aboard"
	if stock.Fluid() {
		b.kind, path, what = quantity.Volume, "volume", "volume aboard"
	}
	if stock.Item == model.Barite && !aboard.IsSet() {
		aboard = e.plan.Rig.Barite
	}
	b.missing = needs(aboard, stockPath(k, path), what)
	b.before = aboard.SI
	for j := t.now(); j < i; j++ {
		above := e.takenBy(j, k)
		b.before, b.missing = b.before-above.amount, first(b.missing, above.missing)
	}
	b.missing = first(b.missing, b.take.missing)
	b.need, b.noNeed = e.needed(i, stock)
	if stock.Brought().IsSet() {
		at, known, fault := e.boatDay(k)
		if known {
			b.missing = first(b.missing, b.noNeed)
		}
		if !fault && (!known || at <= b.need) { // without a day it counts at once
			b.brought = stock.Brought().SI
		}
	}
	b.short = b.before - b.take.amount
	b.before += b.brought
	b.left = b.before - b.take.amount
	return b
}

func stockPath(k int, key string) model.Path {
	return model.Path("stock[" + strconv.Itoa(k+1) + "]." + key)
}

// needed returns when section i needs a stock: before the operation that takes it, else when the section begins.
func (e *evaluation) needed(i int, stock *model.Stock) (at float64, missing gap) {
	t := e.clock()
	if s, ok := t.find(i, needSteps(stock.Item)...); ok {
		return s.from, s.unbegun
	}
	at, _, missing, _ = t.begin(i)
	return at, first(missing, t.sections[i].missing)
}

// boatDay returns when the boat with a stock comes, whether that is known, and whether its day cannot be read.
func (e *evaluation) boatDay(k int) (at float64, known, fault bool) {
	text, t := e.plan.Stocks[k].Boat, e.clock()
	if text == "" {
		return 0, false, false
	}
	m, ok := model.ParseMoment(text)
	if !ok {
		e.note(-1, Caution, gap{stockPath(k, "boat"), strconv.Quote(text) + " is no day and hour such as 2027-03-01 06:00: what the boat brings does not count"})
		return 0, false, true
	}
	return float64(m - t.begins), t.dated, false
}

// stockFiguresOf adds what section i takes of each stock and how it stands then, and judges it. Sections that are done took theirs
// before what is aboard was counted.
func (e *evaluation) stockFiguresOf(i int, p *page, t *timeline) {
	if i < t.now() {
		return
	}
	p.group = "Stocks, left after"
	for k := range e.plan.Stocks {
		b := e.balanceOf(i, k)
		e.stockLine(i, k, p, &b)
		e.judgeStock(i, k, &b)
	}
}

// stockName returns what a stock is called, for a figure.
func stockName(stock *model.Stock, k int) string {
	if stock.Name != "" || stock.Item == "" {
		return called(stock.Name, "Stock", k, 18)
	}
	return strings.ToUpper(stock.Item[:1]) + stock.Item[1:]
}

// stockLine adds the line of one stock.
func (e *evaluation) stockLine(i, k int, p *page, b *balance) {
	stock := &e.plan.Stocks[k]
	key := "stock." + strconv.Itoa(k+1)
	p.put(key, stockName(stock, k), b.kind, b.left, b.missing, func(w *Working) {
		w.Formula = "left = aboard now - taken by the sections above - taken here + brought by the boat"
		w.in("before", "left by the sections above, with the boat", b.kind, b.before)
		w.in("boat", "brought until it is needed, counted in it", b.kind, b.brought)
		w.in("taken", "here", b.kind, b.take.amount)
		w.Source = "mass or volume balance"
	})
	p.also(key+".use", "taken here", b.kind, b.take.amount, b.take.missing, func(w *Working) {
		w.Formula = "taken = sum of the parts, what was done already left out"
		for _, part := range b.take.parts {
			w.in("", part.name, b.kind, part.amount)
		}
		w.Source = "recipe of the mud, cement job, and as entered"
		w.Note = "Kill mud and sweeps that are mixed aboard are not counted: enter what they take."
	})
	p.also(key+".keep", "to stay", b.kind, b.keep.amount, b.keep.missing, func(w *Working) {
		w.Formula, w.Source = b.keep.formula, b.keep.source
	})
	later, missing := 0.0, gap{}
	for j := i + 1; j < len(e.plan.Sections); j++ {
		t := e.takenBy(j, k)
		later, missing = later+t.amount, first(missing, t.missing)
	}
	p.also(key+".later", "taken later", b.kind, later, missing, func(w *Working) {
		w.Formula = "later = what the sections below take"
		for j := i + 1; j < len(e.plan.Sections); j++ {
			w.in("", e.plan.Sections[j].Name, b.kind, e.takenBy(j, k).amount)
		}
		w.Source = "as for this section"
	})
	e.lastsFigure(i, p, key, b)
	e.orderFigure(p, key, stock, b)
}

// lastsFigure adds how many days of the section's planned use are aboard when it begins, where the section takes any.
func (e *evaluation) lastsFigure(i int, p *page, key string, b *balance) {
	left, missing := e.clock().leftOf(i)
	if missing = first(b.missing, missing); !missing.open() && !(b.take.amount > 0 && left > 0) {
		return
	}
	p.also(key+".lasts", "lasts", quantity.Days, quotient(max(b.before, 0)*left, b.take.amount), missing, func(w *Working) {
		w.Formula = "days = before the section / (taken here / days of the section)"
		w.in("before", "aboard", b.kind, b.before)
		w.in("taken", "here", b.kind, b.take.amount)
		w.in("days", "of the section still to come", quantity.Days, left)
		w.Source = "common practice"
		w.Note = "As if it were used evenly, down to nothing."
	})
}

// orderFigure adds the last day to order what the section takes.
func (e *evaluation) orderFigure(p *page, key string, stock *model.Stock, b *balance) {
	if !stock.Lead.IsSet() {
		return
	}
	t := e.clock()
	by := b.need - stock.Lead.SI
	note := t.date(by, b.noNeed)
	if note == "" {
		note = "days from the beginning of the well"
	}
	p.also(key+".order", "order by", quantity.Days, by, b.noNeed, func(w *Working) {
		w.Formula = "order by = when it is needed - lead time"
		w.in("needed", "from the beginning of the well", quantity.Days, b.need)
		w.in("lead", "time", quantity.Days, stock.Lead.SI)
		w.Source = "common practice"
	}).Note = note
}

// judgeStock holds what is left against what stays aboard, and the boat against the day on which what it brings is needed.
func (e *evaluation) judgeStock(i, k int, b *balance) {
	if first(b.missing, b.keep.missing).open() {
		return
	}
	stock := &e.plan.Stocks[k]
	rule, path := model.RuleStockMass, stockPath(k, "mass")
	if stock.Fluid() {
		rule, path = model.RuleStockVolume, stockPath(k, "volume")
	}
	e.judge(rule, i, b.left-b.keep.amount, stockName(stock, k)+" left over what stays aboard", "", 0, path)
	at, known, fault := e.boatDay(k)
	if known && !fault && !b.noNeed.open() && b.short < b.keep.amount && stock.Brought().SI > 0 {
		e.judge(model.RuleBoat, i, b.need-at, "Boat with "+strings.ToLower(stockName(stock, k))+" before it is needed", "", 0, stockPath(k, "boat"))
	}
}
