package calc

import (
	"math"
	"strconv"
	"strings"

	"borewalk/model"
	"borewalk/model/quantity"
)

// check is a figure that the relief works out by himself, to be held against the program's.
type check struct {
	key, name string // of the handover's entry, and of the line
	kind      quantity.Kind
	rule      model.RuleID
	from      string // key of the program's own
	at        place
	kill      bool // a figure of the kill sheet, not strokes
}

// checks are the figures that a relief of section i works out.
func (e *evaluation) checks(i int) []check {
	up := "volume.seabed.strokes"
	if e.sections[i].rig {
		up = "volume.bottoms_up_rig.strokes"
	}
	return []check{
		{"to_bit", "Surface to bit", quantity.Strokes, model.RuleReliefStrokes, "volume.string.strokes", atBit, false},
		{"bottoms_up", "Bottoms-up", quantity.Strokes, model.RuleReliefStrokes, up, atBit, false},
		{"to_bump", "To bump", quantity.Strokes, model.RuleReliefStrokes, "cement.displacement.strokes", inJob, false},
		{"kill_mud", "Kill mud", quantity.Density, model.RuleReliefMud, "control.kill.mud", onSheet, true},
		{"icp", "ICP", quantity.Pressure, model.RuleReliefPressure, "control.kill.initial", onSheet, true},
	}
}

// reliefFigures adds what the relief worked out, and beside it the program's own once he has entered his: before that an independent
// check would be none.
func (e *evaluation) reliefFigures(p *page, s *standing) {
	i, _ := e.plan.InWork()
	handover, row, signed := e.plan.LastHandover()
	p.group = "Recomputed by the relief"
	group := model.HandoverList()
	entered, asked := map[bool]float64{}, map[bool]bool{}
	for _, c := range e.checks(i) {
		path := model.Path("handover[" + strconv.Itoa(max(row, 0)+1) + "]." + c.key)
		missing := gap{"handover", "no handover is signed yet"}
		var own quantity.Value
		if signed {
			ref := model.Ref{Group: group, Field: group.Field(c.key), Place: model.Place{Outer: row}}
			if ref.Idle(e.plan) != "" {
				continue
			}
			own = ref.Get(e.plan).Quantity
			missing = gap{}
			if !own.IsSet() {
				missing = gap{path, "the relief has not entered his own"}
			} else {
				entered[c.kill]++
			}
			asked[c.kill] = true
		} else if c.kill && !e.sections[i].rig {
			continue
		}
		e.reliefLine(p, s, c, own, missing, path)
	}
	if signed && handover.From+handover.To != "" {
		e.judgeChecks(i, row, entered, asked)
	}
}

// judgeChecks asks for strokes and for kill figures of the relief's own.
func (e *evaluation) judgeChecks(i, row int, entered map[bool]float64, asked map[bool]bool) {
	at := "handover[" + strconv.Itoa(row+1) + "]."
	if asked[false] {
		e.judge(model.RuleReliefChecks, i, entered[false], "Strokes recomputed by the relief", "", 0, model.Path(at+"to_bit"))
	}
	if asked[true] {
		e.judge(model.RuleReliefChecks, i, entered[true], "Kill figures recomputed by the relief", "", 0, model.Path(at+"kill_mud"))
	}
}

// reliefLine adds one figure of the relief's, and the comparison.
func (e *evaluation) reliefLine(p *page, s *standing, c check, own quantity.Value, missing gap, path model.Path) {
	key := "handover.check." + c.key
	p.put(key, c.name, c.kind, own.SI, missing, func(w *Working) { w.Formula, w.Source = "as the relief entered it", "the relief" })
	hidden := missing
	if hidden.open() {
		hidden.why += "; the program's is shown then"
	}
	mine, mineGap := s.own(c)
	mineGap = first(hidden, mineGap)
	p.also(key+".program", "program", c.kind, mine, mineGap, func(w *Working) { s.explain(w, c.from, c.at) })
	p.also(key+".differs", "differs", c.kind, own.SI-mine, mineGap, func(w *Working) {
		w.Formula, w.Source = "difference = relief's - program's", "arithmetic"
		w.in("relief's", "as entered", c.kind, own.SI)
		w.in("program's", "with hole and bit as they are", c.kind, mine)
	})
	if mineGap.open() {
		return
	}
	off := math.Abs(own.SI - mine)
	if c.kind == quantity.Strokes {
		off = quotient(off, mine)
	}
	e.judge(c.rule, s.i, off, c.name+" of the relief off the program's", "", 0, path)
}

// pumpedFigures adds what string and annulus hold with the bit where it is, once the relief has entered strokes of his own.
func (e *evaluation) pumpedFigures(p *page, s *standing) {
	p.group = "Volumes, bit as it is"
	var hidden gap
	if h, row, ok := e.plan.LastHandover(); !ok {
		hidden = gap{"handover", "shown once the relief has entered his own strokes"}
	} else if !h.ToBit.IsSet() || !h.BottomsUp.IsSet() {
		hidden = gap{model.Path("handover[" + strconv.Itoa(row+1) + "].to_bit"), "shown once the relief has entered his own strokes to bit and for bottoms-up"}
	}
	for _, f := range s.atBit.Figures {
		name, ok := strings.CutPrefix(f.Key, "volume.")
		if !ok {
			continue
		}
		if hidden.open() {
			f.OK, f.Value, f.Why, f.Mend, f.Note = false, 0, hidden.why, hidden.path, ""
		}
		p.shown(nowFigure{key: "volume." + name, name: f.Name, column: f.Column}, f, func(w *Working) { s.explain(w, f.Key, atBit) })
	}
}

// atTD is how far in m the hole may be off the planned TD for a job that is planned there: a rounded depth.
const atTD = 0.05

// own returns the program's figure for a check.
func (s *standing) own(c check) (float64, gap) {
	if s.missing.open() {
		return 0, s.missing
	}
	if c.key == "to_bump" && math.Abs(s.hole-s.planned) > atTD {
		return 0, gap{"status.hole", "the hole is not at the section's TD, for which the job is planned"}
	}
	from := [...]*Sheet{onSheet: s.sheet(), atBit: &s.atBit, inJob: &s.job}[c.at]
	f, ok := from.Find(c.from)
	if !ok {
		return 0, gap{why: "the program has no such figure for this section"}
	}
	return f.Value, f.gap()
}
