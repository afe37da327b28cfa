package calc

import (
	"math"
	"strconv"
	"strings"

	"borewalk/calc/tally"
	"borewalk/model"
	"borewalk/model/quantity"
)

// tallyPage puts the string of section i together from what is aboard, and adds what it comes to.
func (e *evaluation) tallyPage(i int, p *page) {
	t := e.tallyOf(i)
	if !t.kept {
		return
	}
	if t.missing.open() {
		e.fault(t.missing)
	}
	p.group = "Tally"
	t.jointFigures(p)
	t.pupFigures(p, e.plan.Sections[i].Pups)
	e.tallyDepths(i, p, t)
	e.markerFigure(i, p, t)
	e.strapFigure(p, t)
	if !t.missing.open() {
		e.judgeTally(i, t)
	}
}

// items puts the lengths of a list into the working.
func (w *Working) items(items []tally.Item) {
	for _, i := range items {
		w.in(strconv.Itoa(max(1, i.Count))+" ×", i.Kind.String()+named(i.Label), quantity.TallyLength, i.Length)
	}
}

// named puts a name behind what it names.
func named(name string) string {
	if name == "" {
		return ""
	}
	return " " + name
}

func (t *stringTally) jointFigures(p *page) {
	p.put("tally.joints", "Joints run", quantity.Count, float64(t.run()), t.missing, func(w *Working) {
		w.Formula = "joints, run in their order, and pups that bring the shoe nearest to where it is wanted"
		w.items(t.closing.Below)
		w.in("joint", "average", quantity.TallyLength, t.average)
		w.items(t.closing.Above)
		w.in("wanted", "shoe", quantity.TallyLength, t.closing.Wanted)
		w.Source = "common practice"
		w.Note = "Shoe track not counted. The shoe is never put below the bottom of the full-size hole."
	}).Note = t.jointNote()
	if left, known := t.left(); known || t.missing.open() {
		p.also("tally.joints.left", "left", quantity.Count, float64(left), t.missing, func(w *Working) {
			w.Formula = "left = sound joints aboard - joints run"
			w.in("aboard", "sound joints", quantity.Count, float64(t.have))
			w.in("run", "joints", quantity.Count, float64(t.run()))
			w.Source = "count"
		})
	}
	if t.measured {
		p.also("tally.joints.rejected", "rejected", quantity.Count, float64(len(t.closed.Rejected)), t.missing, func(w *Working) {
			w.Formula = "joints marked as rejected"
			w.Source = "as entered"
		})
	}
}

// jointNote says what the count stands on, and which measured joints stay on deck.
func (t *stringTally) jointNote() string {
	switch {
	case t.missing.open():
		return ""
	case !t.closable:
		return "at the average, no pups: not closed"
	case !t.measured:
		return "at the average"
	}
	left := t.closed.Left
	if len(left) == 0 {
		return "measured"
	}
	const most = 4
	var names []string
	for _, k := range left[:min(most, len(left))] {
		number := t.closing.Joints[k].Number
		if number == "" {
			number = "row " + strconv.Itoa(k+1)
		}
		names = append(names, number)
	}
	if len(left) > most {
		names = append(names, "...")
	}
	return "left: " + strings.Join(names, ", ")
}

func (t *stringTally) pupFigures(p *page, pups []model.Pup) {
	p.group = "Pups used"
	for n, k := range t.pups {
		key := "tally.pup." + strconv.Itoa(k+1)
		used := 0
		if !t.missing.open() {
			used = t.closed.Pups[n]
		}
		p.put(key, "Pup "+strconv.Itoa(k+1), quantity.Count, float64(used), t.missing, func(w *Working) {
			w.Formula = "pups that bring the shoe nearest to where it is wanted, the fewest of them"
			w.in("length", "each", quantity.TallyLength, pups[k].Length.SI)
			w.in("aboard", "of this length", quantity.Count, pups[k].Count.SI)
			w.Source = "common practice"
			w.Note = "An error of 20 mm is not worth a pup."
		})
		p.also(key+".length", "each", quantity.TallyLength, pups[k].Length.SI, t.missing, func(w *Working) {
			w.Formula = "length of each"
			w.Source = "as entered"
		})
	}
}

// tallyDepths adds where shoe and collars come to stand.
func (e *evaluation) tallyDepths(i int, p *page, t *stringTally) {
	p.group = "Tallied, along hole"
	const source = "sum of made-up lengths, along hole; stretch not counted"
	p.put("tally.shoe", "Shoe", quantity.TallyLength, t.closed.Shoe, t.missing, func(w *Working) {
		w.Formula = "shoe = top + sum of lengths"
		w.in("top", "where it lands", quantity.TallyLength, t.closing.Shoulder)
		w.items(t.closed.Items)
		w.Source = source
	})
	p.also("tally.shoe.off", "off plan", quantity.TallyLength, t.closed.Error, t.missing, func(w *Working) {
		w.Formula = "off = tallied shoe - wanted shoe, below it positive"
		w.in("tallied", "shoe", quantity.TallyLength, t.closed.Shoe)
		w.in("wanted", "hole opened less rathole", quantity.TallyLength, t.closing.Wanted)
		w.Source = source
	})
	p.put("tally.bottom", "Shoe off bottom", quantity.TallyLength, t.closing.Deepest-t.closed.Shoe, t.missing, func(w *Working) {
		w.Formula = "off bottom = full-size hole - tallied shoe"
		w.in("hole", "full size", quantity.TallyLength, t.closing.Deepest)
		w.in("shoe", "tallied", quantity.TallyLength, t.closed.Shoe)
		w.Source = source
	})
	p.put("tally.length", "Length", quantity.TallyLength, t.closed.Shoe-t.closing.Shoulder, t.missing, func(w *Working) {
		w.Formula = "length = sum of lengths"
		w.items(t.closed.Items)
		w.Source = source
	})
	for _, c := range [...]struct {
		key, name string
		kind      tally.Kind
	}{{"tally.float", "Float collar", tally.FloatCollar}, {"tally.landing_collar", "Landing collar", tally.LandingCollar}} {
		top, ok := t.topOf(c.kind)
		if !ok {
			continue
		}
		p.put(c.key, c.name, quantity.TallyLength, top, t.missing, func(w *Working) {
			w.Formula = "upper end = tallied shoe - lengths up to it"
			w.in("shoe", "tallied", quantity.TallyLength, t.closed.Shoe)
			w.items(t.closing.Below)
			w.Source = source
		})
		if track := e.plan.Sections[i].ShoeTrack; c.kind == tally.FloatCollar && track.IsSet() {
			p.also(c.key+".off", "off plan", quantity.TallyLength, top-(t.closing.Wanted-track.SI), t.missing, func(w *Working) {
				w.Formula = "off = collar as tallied - (wanted shoe - shoe track), below it positive"
				w.in("collar", "tallied", quantity.TallyLength, top)
				w.in("wanted", "shoe", quantity.TallyLength, t.closing.Wanted)
				w.in("track", "as entered", quantity.TallyLength, track.SI)
				w.Source = source
			})
		}
	}
}

// markerFigure adds where the marker joint comes to stand.
func (e *evaluation) markerFigure(i int, p *page, t *stringTally) {
	s := &e.plan.Sections[i].Tally
	if s.Marker.SI <= 0 {
		return
	}
	missing, top := t.missing, 0.0
	if !missing.open() {
		list, err := t.list(s.MarkerDepth.SI)
		piece, ok := list.Lowest(tally.MarkerJoint)
		if err != nil || !ok {
			missing = gap{model.PathOf(i, "tally.marker"), "the marker joint finds no place in the string"}
		}
		top = piece.Top
	}
	p.put("tally.marker", "Marker joint", quantity.TallyLength, top, missing, func(w *Working) {
		w.Formula = "upper end of the marker, between the joints that bring it nearest to where it is wanted"
		w.in("L", "marker joint", quantity.TallyLength, s.Marker.SI)
		w.in("shoe", "tallied", quantity.TallyLength, t.closed.Shoe)
		w.Source = "sum of made-up lengths, along hole"
	})
	if s.MarkerDepth.IsSet() {
		p.also("tally.marker.off", "off plan", quantity.TallyLength, top-s.MarkerDepth.SI, missing, func(w *Working) {
			w.Formula = "off = upper end - wanted depth, below it positive"
			w.in("wanted", "depth", quantity.TallyLength, s.MarkerDepth.SI)
			w.Source = "sum of made-up lengths, along hole"
		})
	}
}

// strapSample is how many joints are averaged to catch a slip in the sum of all; common practice.
const strapSample = 20

// strapFigure compares the sum of the measured joints with the average of the first of them.
func (e *evaluation) strapFigure(p *page, t *stringTally) {
	if !t.measured {
		return
	}
	var strap tally.Strap
	missing := t.missing
	if !missing.open() {
		var err error
		if strap, err = tally.Compare(t.closing.Joints, strapSample, math.MaxFloat64); err != nil {
			missing = gap{why: err.Error()}
		}
	}
	p.group = "Strap"
	p.put("tally.strap", "All joints", quantity.TallyLength, strap.Measured, missing, func(w *Working) {
		w.Formula = "sum of all measured joints, rejected ones among them"
		w.in("mean", "of all joints", quantity.TallyLength, strap.Mean)
		w.in("n", "joints", quantity.Count, float64(strap.Count))
		w.Source = "as entered"
	})
	p.also("tally.strap.off", "off sample", quantity.TallyLength, strap.Correction, missing, func(w *Working) {
		w.Formula = "off = measured - average of the first joints × count"
		w.in("measured", "all joints", quantity.TallyLength, strap.Measured)
		w.in("average", "of the sample", quantity.TallyLength, strap.Sample)
		w.in("n", "joints", quantity.Count, float64(strap.Count))
		w.in("sample", "joints", quantity.Count, float64(strap.Sampled))
		w.Source = "common practice; about a joint's length tells of one left out of the sheet or counted twice"
	})
}

func (e *evaluation) judgeTally(i int, t *stringTally) {
	shoe := t.closed.Shoe
	joints := model.PathOf(i, "tally.aboard")
	if t.measured {
		joints = model.PathOf(i, "joint")
	}
	hole := t.closing.Deepest - shoe
	stretch, _ := e.ownStretch(i)
	e.judge(model.RuleTallyBottom, i, hole-stretch, "Hole below the tallied shoe, string stretched", "", shoe, model.PathOf(i, "rathole"))
	if left, known := t.left(); known {
		e.judge(model.RuleTallyJoints, i, float64(t.have-t.needed), "Joints aboard over those needed", "", 0, joints)
		e.judge(model.RuleSpareJoints, i, float64(left), "Joints left on deck", "", 0, joints)
	}
	if t.measured {
		e.judgeOddJoints(i, t)
	}
	if top, ok := t.topOf(tally.FloatCollar); ok && e.plan.Sections[i].ShoeTrack.IsSet() {
		e.judge(model.RuleTallyClosure, i, math.Abs(shoe-top-e.plan.Sections[i].ShoeTrack.SI), "Shoe track as tallied, off the one entered", "", shoe, model.PathOf(i, "shoe_track"))
	}
	if !t.closable {
		return // at the average and without pups the joints only count
	}
	e.judge(model.RuleTallyClosure, i, math.Abs(t.closed.Error), "Tallied shoe off the wanted one", "", shoe, model.PathOf(i, "pup"))
	if math.Abs(t.closed.Error) > closeEnough { // else the rathole is the one that is judged with the hole
		e.judge(model.RuleRatholeLeast, i, hole, "Rathole below the tallied shoe", "", shoe, model.PathOf(i, "pup"))
		e.judge(model.RuleRatholeMost, i, hole, "Rathole below the tallied shoe", "", shoe, model.PathOf(i, "pup"))
	}
}

// judgeOddJoints names the joint that is furthest from the mean.
func (e *evaluation) judgeOddJoints(i int, t *stringTally) {
	odd, off := 0, 0.0
	for k, j := range t.closing.Joints {
		if d := math.Abs(j.Length - t.average); !j.Rejected && d > off {
			odd, off = k, d
		}
	}
	e.judge(model.RuleJointOdd, i, off, "Joint off the average of all"+named(t.closing.Joints[odd].Number), "", 0,
		model.PathOf(i, "joint["+strconv.Itoa(odd+1)+"].length"))
}
