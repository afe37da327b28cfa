package calc

import "borewalk/model/quantity"

// ready is something that is to stand ready before an operation of a section begins.
type ready struct {
	key, name string
	before    []string // the operation, the first of these that the section has
}

// readyList is what a section needs, in the order of the work.
func readyList() []ready {
	return []ready{
		{"assembly", "BHA, bit", []string{"make_up"}},
		{"stack", "BOP, riser", []string{"prepare_stack", "run_stack"}},
		{"mud", "Mud", []string{"displace", "drill", "drill_seabed"}},
		{"spot", "Spot fluid", []string{"spot"}},
		{"logging", "Logging crew", []string{"log"}},
		{"casing", "Casing, hanger", []string{"rig_up_casing", "jet", "drive"}},
		{"hanger_hand", "Liner hand", []string{"set_hanger"}},
		{"cement", "Cement, crew", []string{"cement"}},
	}
}

// readyFigures adds by when what the section needs is to be there.
func (e *evaluation) readyFigures(i int, p *page, t *timeline) {
	p.group = "To be ready at, days"
	for _, r := range readyList() {
		s, ok := t.find(i, r.before...)
		if !ok || s.progress == Done || s.progress == Passed {
			continue
		}
		p.put("time.ready."+r.key, r.name, quantity.Days, s.from, s.unbegun, func(w *Working) {
			w.Formula = "when the step begins that needs it, days from the beginning of the well"
			w.in("t", s.step.Name, quantity.Days, s.from)
			w.Source = "common practice"
			w.Note = "By the likely durations: with every step early it is needed sooner."
		}).Note = dated(t.date(s.from, s.unbegun), s.step.Name)
	}
}

// dated puts a date before what it is for.
func dated(date, what string) string {
	if date == "" {
		return "before " + what
	}
	return date + ", before " + what
}
