package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"borewalk/model"
)

// now is when an edit is made: the plan itself knows no clock.
func (p *Planner) now() time.Time { return p.options.Clock() }

// named asks once who works here, where something is to be logged and nobody has said, and then goes on. A window too small to ask
// in keeps nobody from saving.
func (p *Planner) named(then func(*Planner)) {
	if p.options.Name != "" || len(p.history.Pending()) == 0 || p.tooSmall() {
		then(p)
		return
	}
	p.overlay = newPrompt("Your name or initials", "Stands in the plan's log with what is changed. Asked once.", p.lastName(), func(p *Planner, name string) string {
		name = strings.TrimSpace(model.Clean(name))
		if name == "" {
			return "Type a name or initials, or press esc: nothing is saved then."
		}
		p.options.Name = name
		then(p)
		return ""
	})
}

// lastName is who logged last, or else the plan's author.
func (p *Planner) lastName() string {
	for _, r := range slices.Backward(p.plan.Log) {
		if r.Who != "" {
			return r.Who
		}
	}
	return p.plan.Well.Author
}

func (p *Planner) nothingToExplain() string {
	if len(p.logged()) == 0 {
		return "nothing was changed yet"
	}
	return ""
}

// logged returns the rows of the log with those that are not saved yet behind them.
func (p *Planner) logged() []model.LogRow { return slices.Concat(p.plan.Log, p.history.Pending()) }

// changesSince says what has changed since the last handover.
func (p *Planner) changesSince() []string {
	if p.options.Changes != nil {
		return p.options.Changes(p.plan)
	}
	return model.ChangesSince(p.plan, p.logged())
}

// askWhy asks for the reason of the last edit, saved or not.
func (p *Planner) askWhy() {
	rows := p.logged()
	last := rows[len(rows)-1]
	p.overlay = newPrompt("Why", "The reason for "+last.Words(p.plan)+".", last.Why, func(p *Planner, why string) string {
		why = model.Clean(why)
		if !p.history.Explain(why) {
			p.history.ExplainLogged(p.plan, model.LastLogged(p.plan), len(p.plan.Log), why)
		}
		p.message = "why is noted"
		return ""
	})
}

// askReason asks for the reason of one row of the log, and then goes back to a list.
func (p *Planner) askReason(i int, again func(*Planner)) {
	row := p.logged()[i]
	question := newPrompt("Why", "The reason for "+row.Words(p.plan)+".", row.Why, func(p *Planner, why string) string {
		why = model.Clean(why)
		if i < len(p.plan.Log) {
			p.history.ExplainLogged(p.plan, i, i+1, why)
		} else {
			p.history.ExplainRow(row, why)
		}
		again(p)
		return ""
	})
	question.back = p.overlay
	p.overlay = question
}

// showLog lists the log, the latest first, with the focus on a line.
func (p *Planner) showLog(at int) {
	rows := p.logged()
	if len(rows) == 0 {
		p.message = "the log is empty: what is changed from now on stands in it"
		return
	}
	lines := model.LogLines(rows)
	slices.Reverse(lines)
	u := &reasoned{menu: menu{title: "The log, the latest first", at: at, does: "goes there"}}
	for _, l := range lines {
		u.items = append(u.items, p.logItem(rows, l))
	}
	u.pick = func(p *Planner, i int) {
		r := rows[lines[i].Row]
		if !p.goToPath(model.Path(r.Path)) {
			p.message = "that is not in the plan as it stands: " + r.Words(p.plan)
		}
	}
	u.explain = func(p *Planner, i int) { p.askReason(lines[i].Row, func(p *Planner) { p.showLog(i) }) }
	p.overlay = u
}

// logItem puts a line of the log in a list: when and who are short there, and in full below the page.
func (p *Planner) logItem(rows []model.LogRow, l model.LogLine) item {
	r := rows[l.Row]
	brief, more := r.Words(p.plan), ""
	if ref, _ := model.Find(p.plan, model.Path(r.Path)); r.What == model.LogSet && ref.Field != nil {
		brief = ref.Brief() + r.Change()
	}
	if n := l.Last - l.First; n > 0 {
		more = fmt.Sprintf(", with %d entries", n)
	}
	full := logTime(r) + ", " + cmp.Or(r.Who, "not named yet") + ": " + r.Words(p.plan) + more
	if l.Last >= len(p.plan.Log) {
		full += ", not saved"
	}
	if r.Why != "" {
		full += ": " + r.Why
	}
	text := pad(shortTime(r), len("03-01 06:00")) + " " + pad(clipWord(cmp.Or(r.Who, "-"), shortName), shortName) + " " + placed(brief) + more
	if r.Why != "" {
		text += ": " + r.Why
	}
	return item{text: text, full: full}
}

// shortName is how much of a name stands in a list.
const shortName = 6

func clipWord(text string, n int) string {
	if runes := []rune(text); len(runes) > n {
		return string(runes[:n])
	}
	return text
}

// logTime is when a row was logged, as it is read: "2026-03-01 06:00". What is no time stays as it is.
func logTime(r model.LogRow) string {
	t, err := time.Parse(time.RFC3339, r.When)
	if err != nil {
		return cmp.Or(r.When, "at no known time")
	}
	return t.UTC().Format("2006-01-02 15:04")
}

// shortTime is logTime without the year.
func shortTime(r model.LogRow) string {
	if _, text, ok := strings.Cut(logTime(r), "-"); ok {
		return text
	}
	return ""
}
