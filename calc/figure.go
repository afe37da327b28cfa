package calc

import (
	"math"

	"borewalk/model"
	"borewalk/model/quantity"
)

// Figure is something that the core computes for a person.
//
// Key is stable and unique within its sheet. Figures with the same Group stand under one heading, and consecutive ones
// with the same Name on one line, told apart by Column. A figure that cannot be computed is not OK; Why says the reason
// and Mend names the entry to put right.
type Figure struct {
	Key, Group, Name, Column string
	Topic                    model.Topic
	Kind                     quantity.Kind
	OK                       bool    // beside what is as small: there are thousands of figures
	Value                    float64 // SI
	Note                     string  // where it holds, such as "at 950 m"; short
	Why                      string
	Mend                     model.Path
}

// Working shows how a figure was got, so that a person can check it by hand.
type Working struct {
	Figure  Figure
	Formula string
	Inputs  []Input
	Source  string // published source of the formula, or "common practice"
	Note    string // what is left out
}

// Input is one number that went into a formula.
type Input struct {
	Symbol, Name string
	Kind         quantity.Kind
	Value        float64
}

// in adds a number to the working.
func (w *Working) in(symbol, name string, kind quantity.Kind, value float64) {
	w.Inputs = append(w.Inputs, Input{symbol, name, kind, value})
}

// Sheet holds the figures of the well or of one section.
type Sheet struct {
	Figures []Figure
}

// Find returns the figure with the given key.
func (s *Sheet) Find(key string) (Figure, bool) {
	for i := range s.Figures {
		if s.Figures[i].Key == key {
			return s.Figures[i], true
		}
	}
	return Figure{}, false
}

// gap returns what is missing for a figure.
func (f *Figure) gap() gap {
	if f.OK {
		return gap{}
	}
	return gap{f.Mend, f.Why}
}

// gap is what is missing or impossible: the entry to mend and why. The zero gap is none.
type gap struct {
	path model.Path
	why  string
}

func (g gap) open() bool { return g.why != "" }

// first returns the first of the gaps that is open.
func first(gaps ...gap) gap {
	for _, g := range gaps {
		if g.open() {
			return g
		}
	}
	return gap{}
}

// page collects the figures of one topic of one sheet. section is -1 for the well.
type page struct {
	e       *evaluation
	sheet   *Sheet
	section int
	topic   model.Topic
	group   string
	name    string
}

// put adds a figure on a line of its own; why fills in the working and is called only when that is asked for. The figure that it
// returns is in its place until the next one is added; a note that comes later is given with noted.
func (p *page) put(key, name string, kind quantity.Kind, value float64, missing gap, why func(*Working)) *Figure {
	p.name = name
	return p.also(key, "", kind, value, missing, why)
}

// noted gives the figure with a key, one of those added last, a note.
func (p *page) noted(key, note string) {
	for k := len(p.sheet.Figures) - 1; k >= 0; k-- {
		if f := &p.sheet.Figures[k]; f.Key == key {
			f.Note = note
			return
		}
	}
}

// also adds a further figure to the line that put began.
func (p *page) also(key, column string, kind quantity.Kind, value float64, missing gap, why func(*Working)) *Figure {
	f := Figure{Key: key, Group: p.group, Name: p.name, Column: column, Topic: p.topic, Kind: kind, Value: value, OK: true}
	if !missing.open() && (math.IsNaN(value) || math.IsInf(value, 0)) {
		missing = gap{why: "the entries give no finite value"}
	}
	if missing.open() {
		f.OK, f.Value, f.Why, f.Mend = false, 0, missing.why, missing.path
	}
	p.sheet.Figures = append(p.sheet.Figures, f)
	if wish := p.e.explain; wish != nil && wish.section == p.section && wish.wants(key) {
		w := Working{Figure: f}
		if f.OK {
			why(&w)
		}
		wish.workings = append(wish.workings, w)
	}
	return &p.sheet.Figures[len(p.sheet.Figures)-1]
}
