package calc

import (
	"math"
	"slices"
	"strconv"

	"borewalk/calc/tally"
	"borewalk/model"
)

// stringTally is a section's string put together from what is aboard: depths along hole and lengths in m.
type stringTally struct {
	kept     bool // there is a tally
	missing  gap
	entries  *model.Tally
	measured bool // from measured joints; at the average otherwise
	closable bool // there is something to close with: pups, or joints of their own lengths
	average  float64
	have     int   // sound joints aboard
	counted  bool  // have is known
	needed   int   // joints that the shoe needs
	pups     []int // rows of the plan's pups, in the order of the closing's
	base     int   // joints at the average that are run in any case; the closing begins on top of them
	closing  tally.Closing
	closed   tally.Closed
}

// run returns the number of joints that are run, the shoe track not counted.
func (t *stringTally) run() int { return t.base + len(t.closed.Run) }

// closeEnough is the closure error in m that is not worth a pup: joints are strapped to the centimetre.
const closeEnough = 0.02

// mostCombined bounds the ways to combine the pups of a section: each is tried whenever an entry changes.
const mostCombined = 4096

// tallyOf returns the tally of the string of section i.
func (e *evaluation) tallyOf(i int) *stringTally {
	if e.tallies[i] == nil {
		t := e.readTally(i)
		e.tallies[i] = &t
	}
	return e.tallies[i]
}

// readTally puts the string of section i together, so that its shoe comes to stand where the section wants it.
func (e *evaluation) readTally(i int) stringTally {
	s, c := &e.plan.Sections[i], &e.strings[i]
	t := stringTally{measured: len(s.Joints) > 0, entries: &s.Tally}
	if !c.present || (!t.measured && !s.Tally.JointLength.IsSet()) {
		return t
	}
	t.kept = true
	if t.missing = first(c.missing, tallyGap(i, s)); t.missing.open() {
		return t
	}
	t.closing = tally.Closing{Shoulder: c.top, Wanted: c.shoe, Shallowest: c.top, Deepest: e.sections[i].opened, Tolerance: closeEnough}
	t.readJoints(s)
	t.readPups(s)
	t.closing.Below, t.closing.Above = fixedBelow(&s.Tally, t.average), fixedAbove(&s.Tally)
	t.closable = t.measured || len(t.pups) > 0
	if fixed := lengthOf(t.closing.Below) + lengthOf(t.closing.Above); c.top+fixed > t.closing.Deepest {
		t.missing = gap{model.PathOf(i, "tally.hanger"), "shoe track, hanger and what else is fixed in the tally are longer than the string"}
		return t
	}
	if !t.measured {
		t.base = sure(t.closing.Wanted-c.top-lengthOf(t.closing.Below)-lengthOf(t.closing.Above), t.average, t.closing.Pups)
		t.stackUp(t.base)
	}
	t.close(i)
	return t
}

// sure returns how many pieces of one length are needed in any case to fill a length in m that pups may help to fill, so that
// a search need not go through all of them.
func sure(length, piece float64, pups []tally.DeckPup) int {
	for _, p := range pups {
		length -= float64(p.Count) * p.Length
	}
	return max(0, int(length/piece)-1)
}

// stackUp puts so many average joints on the shoe track, and as many more on deck as may be needed.
func (t *stringTally) stackUp(base int) {
	t.base = base
	t.closing.Below = appendItem(fixedBelow(t.entries, t.average), tally.Joint, base, t.average)
	room := t.closing.Deepest - t.closing.Shoulder - lengthOf(t.closing.Below) - lengthOf(t.closing.Above)
	t.closing.Joints = tally.Average(int(math.Ceil(room/t.average)), t.average)
}

// tallyGap says what is missing or impossible among the joints and pups of a section.
func tallyGap(i int, s *model.Section) gap {
	for k := range s.Joints {
		if !s.Joints[k].Length.IsSet() {
			return gap{model.PathOf(i, "joint["+strconv.Itoa(k+1)+"].length"), "length of a measured joint is blank"}
		}
	}
	return pupGap(i, s, model.ForCasing)
}

// pupGap says what is missing or too much among the pups of a section for one use.
func pupGap(i int, s *model.Section, use string) gap {
	combined := 1.0
	for k := range s.Pups {
		u := &s.Pups[k]
		if u.For != use {
			continue
		}
		pup := model.PathOf(i, "pup["+strconv.Itoa(k+1)+"]")
		if missing := first(needs(u.Length, pup+".length", "length of a pup joint"), needs(u.Count, pup+".count", "number of pup joints")); missing.open() {
			return missing
		}
		combined *= 1 + u.Count.SI
	}
	if combined > mostCombined {
		return gap{model.PathOf(i, "pup"), "the pup joints can be combined in more than " + strconv.Itoa(mostCombined) + " ways: leave some of them out"}
	}
	return gap{}
}

// readJoints takes the joints on deck: those measured, or as many as may be needed at the average.
func (t *stringTally) readJoints(s *model.Section) {
	if !t.measured {
		t.average = s.Tally.JointLength.SI
		t.counted, t.have = s.Tally.Aboard.IsSet(), int(s.Tally.Aboard.SI)
		return
	}
	sum := 0.0
	t.closing.Joints = make([]tally.DeckJoint, len(s.Joints))
	for k := range s.Joints {
		j := &s.Joints[k]
		t.closing.Joints[k] = tally.DeckJoint{Number: j.Number, Length: j.Length.SI, Rejected: j.Rejected == model.JointRejected}
		if j.Rejected != model.JointRejected {
			sum += j.Length.SI
			t.have++
		}
	}
	t.counted = true
	if t.have > 0 {
		t.average = sum / float64(t.have)
	} else {
		t.average = s.Joints[0].Length.SI
	}
}

// readPups takes the pups that the casing may be closed with.
func (t *stringTally) readPups(s *model.Section) {
	for k := range s.Pups {
		if u := &s.Pups[k]; u.For == model.ForCasing && u.Count.SI > 0 {
			t.pups = append(t.pups, k)
			t.closing.Pups = append(t.closing.Pups, tally.DeckPup{Length: u.Length.SI, Count: int(u.Count.SI)})
		}
	}
}

// close chooses joints and pups, and counts the joints that are needed.
func (t *stringTally) close(i int) {
	entry := model.PathOf(i, "tally.joint_length")
	if t.measured {
		entry = model.PathOf(i, "joint")
	}
	var err error
	if t.closed, err = tally.Close(t.closing); err != nil {
		t.missing = gap{entry, "the string cannot be tallied: " + err.Error()}
		return
	}
	t.needed = t.run()
	switch {
	case t.measured && len(t.closed.Left) == 0:
		t.needed += max(0, int(math.Round(-t.closed.Error/t.average)))
	case t.counted && !t.measured && t.have < t.needed:
		t.stackUp(min(t.base, t.have))
		t.closing.Joints = t.closing.Joints[:t.have-t.base]
		if t.closed, err = tally.Close(t.closing); err != nil {
			t.missing = gap{entry, "the string cannot be tallied: " + err.Error()}
		}
	}
}

// left returns how many sound joints stay on deck, and whether that is known.
func (t *stringTally) left() (joints int, known bool) {
	return t.have - t.run(), t.counted
}

// fixedBelow returns what is fixed below the joints, bottom up.
func fixedBelow(t *model.Tally, average float64) []tally.Item {
	items := make([]tally.Item, 0, 5)
	items = appendItem(items, tally.Shoe, 1, t.Shoe.SI)
	items = appendItem(items, tally.TrackJoint, int(t.TrackJoints.SI), or(t.TrackLength.SI, average))
	items = appendItem(items, tally.FloatCollar, 1, t.FloatCollar.SI)
	items = appendItem(items, tally.TrackJoint, int(t.AboveJoints.SI), or(t.AboveLength.SI, average))
	return appendItem(items, tally.LandingCollar, 1, t.LandingCollar.SI)
}

// fixedAbove returns what is fixed above the joints and the pups, bottom up.
func fixedAbove(t *model.Tally) []tally.Item {
	items := make([]tally.Item, 0, 3)
	items = appendItem(items, tally.MarkerJoint, 1, t.Marker.SI)
	items = appendItem(items, tally.Crossover, 1, t.Crossovers.SI)
	return appendItem(items, tally.Hanger, 1, t.Hanger.SI)
}

// appendItem adds pieces to a list, if there are any. What is shorter than a millimetre is no piece.
func appendItem(items []tally.Item, kind tally.Kind, count int, length float64) []tally.Item {
	if count <= 0 || length < 0.001 {
		return items
	}
	return append(items, tally.Item{Kind: kind, Count: count, Length: length})
}

// or returns a length, or another where it is blank.
func or(length, otherwise float64) float64 {
	if length > 0 {
		return length
	}
	return otherwise
}

// lengthOf returns the length of some items in m.
func lengthOf(items []tally.Item) (sum float64) {
	for _, i := range items {
		sum += float64(max(1, i.Count)) * i.Length
	}
	return sum
}

// topOf returns the depth of the upper end of the lowest item of a kind, and false where there is none.
func (t *stringTally) topOf(kind tally.Kind) (md float64, ok bool) {
	md = t.closed.Shoe
	for _, i := range t.closing.Below {
		md -= float64(max(1, i.Count)) * i.Length
		if i.Kind == kind {
			return md, true
		}
	}
	return 0, false
}

// list hangs the tallied string from where it lands, its marker joint as near as the joints allow to where it is wanted.
func (t *stringTally) list(wanted float64) (tally.List, error) {
	items := t.closed.Items
	marker := -1
	for k := range items {
		if items[k].Kind == tally.MarkerJoint {
			marker = k
		}
	}
	if marker < 0 || wanted <= 0 {
		return tally.Run(items, t.closing.Shoulder)
	}
	joint := items[marker]
	without := append(append(make([]tally.Item, 0, len(items)), items[:marker]...), items[marker+1:]...)
	l, err := tally.Run(without, t.closing.Shoulder)
	if err != nil {
		return l, err
	}
	at, off := -1, math.Inf(1)
	for k, piece := range l.Pieces {
		if between := k > 0 && (piece.Kind == tally.Joint || l.Pieces[k-1].Kind == tally.Joint); between && math.Abs(piece.Bottom-wanted) < off {
			at, off = k, math.Abs(piece.Bottom-wanted)
		}
	}
	if at < 0 {
		return tally.Run(items, t.closing.Shoulder)
	}
	if items, err = tally.Add(without, at, joint); err != nil {
		return l, err
	}
	return tally.Run(items, t.closing.Shoulder)
}

// couplings returns the depths between two others at which the pieces of the tallied string are made up to each other.
func (t *stringTally) couplings(marker, from, to float64) (depths []float64, err error) {
	if marker > 0 && t.entries.Marker.SI > 0 {
		list, err := t.list(marker)
		return slices.DeleteFunc(list.Couplings(), func(md float64) bool { return md < from || md > to }), err
	}
	md := t.closing.Shoulder
	for k := len(t.closed.Items) - 1; k >= 0; k-- {
		item := &t.closed.Items[k]
		for n := max(1, item.Count); n > 0; n-- {
			md += item.Length
			if lowest := k == 0 && n == 1; !lowest && md >= from && md <= to {
				depths = append(depths, md)
			}
		}
	}
	return depths, nil
}
