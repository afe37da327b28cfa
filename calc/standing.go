package calc

import (
	"slices"

	"borewalk/model"
)

// standing is the well as it stands: the section in work drilled to its present depth and no further. It is worked out on a copy of
// the plan whose section ends there, so that every limit of a handover is the section's own, by the same pages.
type standing struct {
	missing   gap // without the section, its depth and the bit's there is none
	i         int
	hole      float64 // depth of the hole along hole, m
	bit       float64 // and of the bit
	planned   float64 // the section's TD
	asPlanned *model.Plan
	plan      *model.Plan
	e         *evaluation
	atBit     Sheet // what the string and the annulus hold with the bit where it is
	job       Sheet // the displacement of the cement job as planned
}

// standsNow works out the well as it stands.
func (e *evaluation) standsNow() *standing {
	s := &standing{missing: e.workGap()}
	if s.missing.open() {
		return s
	}
	s.i, _ = e.plan.InWork()
	s.hole, s.bit, s.missing = e.presentDepths(s.i)
	if s.missing.open() {
		return s
	}
	s.planned, s.asPlanned = e.sections[s.i].td, e.plan
	s.plan = presentPlan(e.plan, s.i)
	s.e = begin(s.plan, nil, findingsPerSection)
	s.e.result.Sections[s.i].Figures = make([]Figure, 0, figuresPerSection)
	s.e.limitPages(s.i)
	s.fillAtBit(s.e)
	s.fillJob(e)
	return s
}

// workGap says why no section is in work.
func (e *evaluation) workGap() gap {
	if !e.plan.Status.Section.IsSet() {
		return gap{"status.section", "no section is in work: enter its number"}
	}
	if _, ok := e.plan.InWork(); !ok {
		return gap{"status.section", "the plan has no section of the number in work"}
	}
	return gap{}
}

// presentDepths returns how deep hole and bit of section i are now.
func (e *evaluation) presentDepths(i int) (hole, bit float64, missing gap) {
	status := &e.plan.Status
	if missing = first(e.sections[i].missing, needs(status.Hole, "status.hole", "hole depth now")); missing.open() {
		return 0, 0, missing
	}
	hole, bit = status.Hole.SI, usual(status.Bit, status.Hole.SI)
	switch {
	case hole <= e.sections[i].start:
		missing = gap{"status.hole", "no new hole is drilled: what is limited by it is worked out from there on"}
	case bit > hole:
		missing = gap{"status.bit", "the bit is deeper than the hole"}
	}
	return hole, bit, missing
}

// presentPlan returns a copy of a plan whose section i ends where its hole is now. A string that is to be cemented there does not hang
// in it yet.
func presentPlan(plan *model.Plan, i int) *model.Plan {
	own := plan.Clone()
	section := &own.Sections[i]
	section.DepthBy, section.TD = model.ByTD, plan.Status.Hole
	if section.Method == model.Cemented {
		section.Completion = model.OpenHole
	}
	return own
}

// limitPages works out the pages of a section that bear on a hole that is being drilled.
func (e *evaluation) limitPages(i int) {
	e.holePage(i)
	e.stringPage(i)
	e.mudPage(i)
	e.hydraulicsPage(i)
	e.controlPage(i)
}

// fillAtBit works out what is pumped with the bit where it is.
func (s *standing) fillAtBit(e *evaluation) {
	p := &page{e: e, sheet: &s.atBit, section: s.i, topic: model.TopicHandover}
	holds := e.contentsAt(s.i, s.bit)
	e.volumeFigures(s.i, p, &holds)
}

// fillJob works out the displacement of the section's cement job, on the plan as it is.
func (s *standing) fillJob(e *evaluation) {
	if e.cemented(s.i) {
		e.displacementFiguresOf(s.i, &page{e: e, sheet: &s.job, section: s.i, topic: model.TopicHandover}, e.cementOf(s.i))
	}
}

// place says where a figure of the well as it stands is found.
type place uint8

// The places.
const (
	onSheet place = iota // on the section's pages with the hole as deep as it is
	atBit                // among what is pumped from where the bit is
	inJob                // in the displacement of the cement job
)

// sheet holds the section's figures with the hole as deep as it is.
func (s *standing) sheet() *Sheet { return s.e.result.Sheet(s.i) }

// presentFindings returns what is found about the section in work as it stands: what is compared, and what is wrong with an entry where
// that is wrong in the plan itself, and not only because its section ends early.
func (e *evaluation) presentFindings(s *standing) (list []Finding) {
	for _, f := range s.e.result.Findings {
		if f.Section == s.i && (f.HasLimit || slices.Contains(e.result.Findings, f)) {
			list = append(list, f)
		}
	}
	return list
}

// worst returns the highest severity that a rule finds in the well as it stands.
func (s *standing) worst(id model.RuleID) (worst Severity) {
	key := model.Rules()[id].Key
	for k := range s.e.result.Findings {
		if f := &s.e.result.Findings[k]; f.Key == key && f.Section == s.i {
			worst = max(worst, f.Severity)
		}
	}
	return worst
}

// explain copies the working of a figure of the well as it stands.
func (s *standing) explain(w *Working, key string, at place) {
	wish := explanation{section: s.i, wants: func(k string) bool { return k == key }}
	again := standing{i: s.i, bit: s.bit}
	switch at {
	case atBit:
		again.fillAtBit(begin(s.plan, &wish, findingsPerSection))
	case inJob:
		again.fillJob(begin(s.asPlanned, &wish, findingsPerSection))
	default:
		begin(s.plan, &wish, findingsPerSection).limitPages(s.i)
	}
	if len(wish.workings) > 0 {
		from := &wish.workings[0]
		w.Formula, w.Inputs, w.Source, w.Note = from.Formula, from.Inputs, from.Source, from.Note
	}
}

// nowFigure is a figure of the well as it stands, under a key of the handover's.
type nowFigure struct {
	key, name, column string // the column is empty for the first of a line
	from              string // key in the section's sheet
}

// take adds figures of the well as it stands; a line that the section does not have is left out.
func (p *page) take(s *standing, lines ...nowFigure) {
	begun := false
	for _, t := range lines {
		f, ok := s.sheet().Find(t.from)
		if t.column == "" {
			begun = ok
		}
		if !ok || !begun {
			continue
		}
		p.shown(t, f, func(w *Working) { s.explain(w, t.from, onSheet) })
	}
}

// shown adds a figure that another gives.
func (p *page) shown(t nowFigure, f Figure, why func(*Working)) *Figure {
	add := p.also
	if t.column == "" {
		p.name = t.name
	}
	to := add("handover."+t.key, t.column, f.Kind, f.Value, f.gap(), why)
	to.Note = f.Note
	return to
}
