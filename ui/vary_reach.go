package ui

import (
	"math"
	"slices"

	"borewalk/calc"
	"borewalk/model"
)

// reach is the plan with an entry at the ends of the contents that a chart of it tries.
type reach struct {
	planner *Planner
	ends    []end
}

// end is the plan with the entry so much up or down.
type end struct {
	by     float64 // SI
	result *calc.Result
}

func newReach(p *Planner, ref model.Ref) *reach {
	r := &reach{planner: p}
	span, ok := p.spanOf(ref, chartContents)
	if !ok {
		return r
	}
	sweep := calc.NewSweep(p.plan, p.sheet(), "", span)
	for _, k := range [...]int{0, len(span.Entries) - 1} {
		if k == span.Now {
			continue
		}
		plan := p.plan.Clone()
		var h model.History
		h.Do(plan, model.Edit{Changes: sweep.Changes(k)})
		r.ends = append(r.ends, end{span.Entries[k].Quantity.SI - ref.Get(p.plan).Quantity.SI, calc.Evaluate(plan)})
	}
	return r
}

// sayMore returns the figures with a limit anew: where the first figure that is offered only echoes the entry, those that do not come
// before those that do. Where there are none that do not, it returns those of the page that are held against a limit and move with
// the entry further on.
func (r *reach) sayMore(limited, offered []watched) (first, further []watched) {
	if !r.echoes(offered[0]) {
		return limited, nil
	}
	var echoes []watched
	for _, w := range limited {
		if r.echoes(w) {
			echoes = append(echoes, w)
		} else {
			first = append(first, w)
		}
	}
	if len(first) == 0 {
		further = r.limitedFurther(offered)
	}
	return append(first, echoes...), further
}

// echoes reports whether a figure is the entry itself, or moves with it one for one up or down.
func (r *reach) echoes(w watched) bool {
	for _, e := range r.ends {
		then, ok := e.result.Sheet(w.sheet).Find(w.figure.Key)
		if !ok || !then.OK || !w.figure.OK || math.Abs(math.Abs(then.Value-w.figure.Value)-math.Abs(e.by)) > 1e-6*math.Abs(e.by) {
			return false
		}
	}
	return len(r.ends) > 0
}

// limitedFurther returns the figures of the page that are not offered yet, of another kind than the first of them, of which a limit
// is nearer or further off at one of the ends. Of a line it is the first figure, not what that is in other terms.
func (r *reach) limitedFurther(offered []watched) (list []watched) {
	p, known := r.planner, map[string]bool{}
	for _, w := range offered {
		known[w.figure.Key] = true
	}
	for _, f := range p.result.Sheet(p.sheet()).Figures {
		if f.Topic == p.topic && f.OK && f.Column == "" && f.Kind != offered[0].figure.Kind && !known[f.Key] && r.limits(f) {
			list = append(list, watched{p.sheet(), f})
		}
	}
	return list
}

// limits reports whether a finding of the section holds the figure against a limit: at every end its margin is another by as much as
// the figure is, and at one of them by something.
func (r *reach) limits(f calc.Figure) bool {
	for i := range r.planner.result.Findings {
		now := &r.planner.result.Findings[i]
		if now.HasLimit && now.Section == r.planner.sheet() && now.Kind == f.Kind && r.follows(now, f) {
			return true
		}
	}
	return false
}

// rounding is the share of a change by which a figure that is shown rounded may move otherwise than what is judged.
const rounding = 0.05

// follows reports whether a finding's margin moves as the figure does.
func (r *reach) follows(now *calc.Finding, f calc.Figure) bool {
	moved := false
	for _, e := range r.ends {
		figure, ok := e.result.Sheet(now.Section).Find(f.Key)
		k := slices.IndexFunc(e.result.Findings, func(then calc.Finding) bool {
			return then.Section == now.Section && then.Key == now.Key && then.Text == now.Text
		})
		if !ok || !figure.OK || k < 0 {
			return false
		}
		by := math.Abs(figure.Value - f.Value)
		if math.Abs(math.Abs(e.result.Findings[k].Margin-now.Margin)-by) > rounding*by {
			return false
		}
		moved = moved || by > 0
	}
	return moved
}
