package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// timePage says how long section i takes, when, at what cost, what is to be ready by when, and what of the stocks it takes. It looks
// at the operations of the whole well.
func (e *evaluation) timePage(i int) {
	t := e.clock()
	p := e.page(i, model.TopicTime)
	e.workFigures(i, p, t)
	e.dateFigures(i, p, t)
	e.doneFigures(i, p, t)
	e.readyFigures(i, p, t)
	e.stockFiguresOf(i, p, t)
	e.wholeFigures(p, t)
}

// workOf adds up the likely durations of some operations of a section, without weather.
func (t *timeline) workOf(i int, counts func(*Step) bool) (sum float64, missing gap) {
	s := t.sections[i]
	missing = s.missing
	for k := s.from; k < s.to; k++ {
		if step := t.list[k].step; counts(step) {
			sum += step.Likely
			missing = first(missing, step.untimed())
		}
	}
	return sum, missing
}

func anyStep(*Step) bool     { return true }
func deepening(s *Step) bool { return !s.Flat() }

// workFigures adds what the work of a section comes to, and how much of it makes hole.
func (e *evaluation) workFigures(i int, p *page, t *timeline) {
	all, missing := t.workOf(i, anyStep)
	drilling, _ := t.workOf(i, deepening)
	p.group = "Work, likely, no weather"
	p.put("time.hours", "All steps", quantity.Hours, all, missing, func(w *Working) {
		w.Formula = "t = sum of the likely durations of all steps that are not struck"
		for k := t.sections[i].from; k < t.sections[i].to; k++ {
			w.in("t", t.list[k].step.Name, quantity.Hours, t.list[k].step.Likely)
		}
		w.Source = "common practice"
	})
	p.also("time.hours.days", "days", quantity.Days, all, missing, func(w *Working) {
		w.Formula = "days = t / 24 h"
		w.in("t", "all steps", quantity.Hours, all)
		w.Source = "common practice"
	})
	share := func(key, name string, part float64, formula string) {
		p.put(key, name, quantity.Hours, part, missing, func(w *Working) {
			w.Formula = formula
			for k := t.sections[i].from; k < t.sections[i].to; k++ {
				if step := t.list[k].step; step.Flat() == (key == "time.flat") {
					w.in("t", step.Name, quantity.Hours, step.Likely)
				}
			}
			w.Source = "common practice"
		})
		p.also(key+".share", "of all", quantity.Ratio, quotient(part, all), first(missing, noWork(all)), func(w *Working) {
			w.Formula = "share = part / all steps"
			w.in("part", name, quantity.Hours, part)
			w.in("t", "all steps", quantity.Hours, all)
			w.Source = "common practice"
		})
	}
	share("time.drilling", "Making hole", drilling, "t = sum of the steps in which the hole gets deeper")
	share("time.flat", "Flat time", all-drilling, "t = sum of the steps in which the hole gets no deeper")
}

// noWork is the gap of shares of nothing.
func noWork(all float64) gap {
	if all > 0 {
		return gap{}
	}
	return gap{why: "there is no work in the section"}
}

// dateFigures adds how long the section takes with weather, when it begins and ends, and what it costs.
func (e *evaluation) dateFigures(i int, p *page, t *timeline) {
	work, missing := t.workOf(i, anyStep)
	begins, _, unbegun, _ := t.begin(i)
	ends, _, endless, _ := t.ends(i)
	lost := longer(t.lost.likely)
	p.group = "With weather"
	if from, to := t.date(begins, unbegun), t.date(ends, endless); from != "" && to != "" {
		p.group = from + " to " + t.begins.After(ends).Short()
	}
	weather := func(w *Working) {
		w.in("t", "all steps", quantity.Hours, work)
		w.in("w", "share of all time lost to weather, likely", quantity.Ratio, t.lost.likely)
		w.Source = "common practice"
	}
	p.put("time.elapsed", "Takes", quantity.Days, work*(1+lost), missing, func(w *Working) {
		w.Formula = "days = t / (1 - w)"
		weather(w)
	})
	p.also("time.elapsed.hours", "hours", quantity.Hours, work*(1+lost), missing, func(w *Working) {
		w.Formula = "t with weather = t / (1 - w)"
		weather(w)
	})
	p.also("time.elapsed.weather", "weather", quantity.Hours, work*lost, missing, func(w *Working) {
		w.Formula = "lost = t × w / (1 - w)"
		weather(w)
	})
	const sum = "from the beginning of the well, weather counted; from the last step done on where there is one"
	p.put("time.begins", "Begins at", quantity.Days, begins, unbegun, func(w *Working) {
		w.Formula = "days of all sections above"
		w.Source, w.Note = "common practice", sum
	}).Note = t.date(begins, unbegun)
	p.put("time.ends", "Ends at", quantity.Days, ends, endless, func(w *Working) {
		w.Formula = "days of all sections down to this one"
		w.in("begins", "this section", quantity.Days, begins)
		w.in("takes", "this section, as planned", quantity.Days, work*(1+lost))
		w.Source, w.Note = "common practice", sum
	}).Note = t.date(ends, endless)
	e.costFigures(p, "time.cost", "Cost", span{begins, ends}, first(unbegun, endless))
}

// costFigures adds what a span costs, and what the well has cost at its end, where a day has a price.
func (e *evaluation) costFigures(p *page, key, name string, s span, missing gap) {
	rate := e.plan.Schedule.DayRate
	if !rate.IsSet() {
		return
	}
	cost := func(d float64) func(*Working) {
		return func(w *Working) {
			w.Formula = "cost = days × cost of a day"
			w.in("days", "with weather", quantity.Days, d)
			w.in("cost", "of a day", quantity.Count, rate.SI)
			w.Source = "as entered"
			w.Note = "What is not paid by the day is left out."
		}
	}
	p.put(key, name, quantity.Count, s.long()/days*rate.SI, missing, cost(s.long())).Note = e.plan.Schedule.Currency
	if s.from == 0 { // it is all there is
		return
	}
	p.also(key+".so_far", "to its end", quantity.Count, s.to/days*rate.SI, missing, cost(s.to))
}

// doneFigures adds what of the section is done, how long it took, and how far that is from the plan.
func (e *evaluation) doneFigures(i int, p *page, t *timeline) {
	var took, planned float64
	var missing gap
	var last *clockedStep
	for k := t.sections[i].from; k < t.sections[i].to; k++ {
		if s := &t.list[k]; s.progress == Done {
			took, planned, last = took+s.long(), planned+s.stands.long(), s
			missing = first(missing, s.plannedGap)
		}
	}
	if last == nil {
		return
	}
	p.group = "Done"
	each := func(w *Working, of func(*clockedStep) float64) {
		for k := t.sections[i].from; k < t.sections[i].to; k++ {
			if s := &t.list[k]; s.progress == Done {
				w.in("t", s.step.Name, quantity.Hours, of(s))
			}
		}
		w.Source = "common practice"
	}
	p.put("time.done", "Done, took", quantity.Hours, took, gap{}, func(w *Working) {
		w.Formula = "t = sum of end - beginning of the steps done, as entered"
		each(w, func(s *clockedStep) float64 { return s.long() })
	}).Note = "to " + last.step.Name
	p.also("time.done.planned", "planned", quantity.Hours, planned, missing, func(w *Working) {
		w.Formula = "t = sum of their likely durations, with weather; one without a beginning stands for those passed before it as well"
		each(w, func(s *clockedStep) float64 { return s.stands.long() })
	})
	p.put("time.behind", "Behind the plan", quantity.Hours, last.to-last.planned.to, last.plannedGap, func(w *Working) {
		w.Formula = "behind = when it had ended - when it was planned to; ahead is below zero"
		w.in("done", "end of "+last.step.Name, quantity.Hours, last.to)
		w.in("planned", "from the beginning of the well", quantity.Hours, last.planned.to)
		w.Source = "common practice"
	}).Note = "at the end of " + last.step.Name
}

// wholeFigures adds what the whole well comes to.
func (e *evaluation) wholeFigures(p *page, t *timeline) {
	n := len(t.sections)
	work, missing := 0.0, gap{}
	for i := range n {
		sum, own := t.workOf(i, anyStep)
		work, missing = work+sum, first(missing, own)
	}
	ends, planned, endless, unplanned := t.ends(n - 1)
	p.group = "Whole well"
	p.put("time.well", "Work, no weather", quantity.Days, work, missing, func(w *Working) {
		w.Formula = "days = sum of the sections"
		for i := range n {
			sum, _ := t.workOf(i, anyStep)
			w.in("days", e.plan.Sections[i].Name, quantity.Days, sum)
		}
		w.Source = "common practice"
	})
	p.put("time.well.ends", "Ends at", quantity.Days, ends, endless, func(w *Working) {
		w.Formula = "end of the last section, weather counted; from the last step done on where there is one"
		w.in("days", "without weather", quantity.Days, work)
		w.in("w", "share of all time lost to weather, likely", quantity.Ratio, t.lost.likely)
		w.Source = "common practice"
		w.Note = "Sum of what is likely for each step. Most steps can be late by more than they can be early: by chance the well ends later than this sum. The chart has the band."
	}).Note = t.date(ends, endless)
	if t.last >= 0 {
		p.also("time.well.behind", "behind plan", quantity.Hours, ends-planned, first(endless, unplanned), func(w *Working) {
			w.Formula = "behind = end as expected now - end as planned; ahead is below zero"
			w.in("now", "end of the well", quantity.Days, ends)
			w.in("planned", "end of the well", quantity.Days, planned)
			w.Source = "common practice"
		})
	}
	e.costFigures(p, "time.well.cost", "Cost of the well", span{0, ends}, endless)
}
