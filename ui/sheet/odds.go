package sheet

import (
	"fmt"
	"math"
	"slices"

	"borewalk/calc"
	"borewalk/model/quantity"
)

// oddsCard makes the paper of a section's odds; why says what keeps it from being made. Its trials are made for it.
func (p *printer) oddsCard(i int) (c card, why string) {
	odds, why, _ := calc.NewOdds(p.plan, i)
	if odds == nil {
		return card{}, why
	}
	c = card{section: i, title: "Odds: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	c.tables = []table{rangeTable(odds), oddsTable(odds.Rows(odds.Try(0, odds.Blocks())))}
	c.notes = []part{{title: "How to read it", remarks: append(odds.Cautions(),
		fmt.Sprintf("%d trials, the same draws every time.", odds.Trials(odds.Blocks())))}}
	return c, ""
}

// rangeTable lists what is drawn.
func rangeTable(odds *calc.Odds) table {
	t := table{title: "Drawn from", rowHead: "Range"}
	for _, r := range odds.Ranges {
		note := ""
		if r.Offset {
			note = "off the prognosis"
		}
		t.add(r.Name, note)
		t.set("low", r.Kind, r.Low)
		t.set("likely", r.Kind, r.Likely)
		t.set("high", r.Kind, r.High)
	}
	return t
}

// oddsTable lists how outcomes spread, and the odds that their limits are met.
func oddsTable(rows []calc.OddsRow) table {
	t := table{title: "Outcomes", rowHead: "Outcome", columns: oddsColumns(rows)}
	for k := range rows {
		r := &rows[k]
		t.add(r.Text, "")
		for _, x := range []struct {
			label string
			value float64
		}{{"likely", r.Likely}, {"P10", r.Spread.P10}, {"P50", r.Spread.P50}, {"P90", r.Spread.P90}} {
			if !math.IsNaN(x.value) && !math.IsInf(x.value, 0) {
				t.set(x.label, r.Kind, x.value)
			}
		}
		if !r.HasLimit {
			continue
		}
		t.set(side(r), r.Kind, r.Limit)
		t.set("odds", quantity.Ratio, r.Odds.Share)
		t.set("from", quantity.Ratio, r.Odds.Low)
		t.set("to", quantity.Ratio, r.Odds.High)
		trials := r.Spread.Known + r.Unanswered
		t.remark(fmt.Sprintf("missed in %.0f of %d", math.Round((1-r.Odds.Share)*float64(trials)), trials))
		if r.Own {
			t.remark("the plan's own limit")
		}
		if r.Conditional {
			t.remark("not asked in every trial: met then")
		}
		if r.Unanswered > 0 {
			t.remark(fmt.Sprintf("not to be worked out in %d: not met then", r.Unanswered))
		}
	}
	return t
}

// oddsColumns are the columns of all kinds of outcomes, so that what spreads stands before its limit and the limit before the odds.
func oddsColumns(rows []calc.OddsRow) (columns []heading) {
	add := func(h heading) {
		if !slices.Contains(columns, h) {
			columns = append(columns, h)
		}
	}
	for k := range rows {
		for _, label := range []string{"likely", "P10", "P50", "P90"} {
			add(heading{label, rows[k].Kind})
		}
	}
	for k := range rows {
		if rows[k].HasLimit {
			add(heading{side(&rows[k]), rows[k].Kind})
		}
	}
	return columns
}

// side says on which side of its limit an outcome is to be.
func side(r *calc.OddsRow) string {
	if r.Least {
		return "least"
	}
	return "most"
}
