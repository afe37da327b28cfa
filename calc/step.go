package calc

import "borewalk/model/quantity"

// Step is one operation of a section, as the crew does it. Depths are along hole from RKB in m, zero at the surface; times s.
type Step struct {
	Key         string // stable within its section; own.1, own.2 for the plan's own
	Name        string // 18 columns at most, unless it is the plan's own
	Kind        StepKind
	Do          string   // what is done
	Who         string   // who does it
	Stops       []string // who is called, before or at what
	Contingency []string // what is done when it does not go as planned
	Note        string   // the plan's own
	Numbers     []StepNumber
	Struck      bool // taken out of the list by the plan
	Own         bool // added by the plan
	Row         int  // of the plan's rows of changed steps, from 0; -1 for none

	From, To         float64 // of the end of what hangs in the hole, before and after
	HoleFrom, HoleTo float64 // depth of the hole, before and after

	Low, Likely, High float64 // duration
	Timed             bool    // the duration is known
	By                string  // what the duration follows from
	Why               string  // what is missing for it
	Mend              string  // and where
}

// StepKind says what moves in the well while the step is done.
type StepKind uint8

// The kinds.
const (
	AtRig     StepKind = iota // nothing moves in the well
	TripIn                    // the drill string on its way in
	TripOut                   // and out
	Drilling                  // new hole, or what stands in a string
	Pumping                   // fluids, the string on depth
	Testing                   // pressure on what is there
	RunningIn                 // casing or liner on its way in
	Cementing                 // the cement job
	Waiting                   // on cement, or for the ground to take hold
	ToolOut                   // the running string on its way out
	StackIn                   // BOP and riser on their way down
)

// StepNumber is a number in a step. Key names the figure that it is, whose working can be asked for.
type StepNumber struct {
	Name, Key string
	Kind      quantity.Kind
	OK        bool
	Value     float64
	Why       string
}

// Flat reports whether the hole gets no deeper during the step.
func (s *Step) Flat() bool { return !(s.HoleTo > s.HoleFrom) }

// Counts reports whether the step is done at all.
func (s *Step) Counts() bool { return !s.Struck }
