package calc

import (
	"math"
	"slices"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/model"
)

// fixedHours returns the duration in hours of an operation that no rate gives, and false for others: common practice, from memory.
// The plan's rows go before it.
func fixedHours(key string) (hours float64, ok bool) {
	switch key {
	case "tag_seabed", "tag", "release":
		return 0.5, true
	case "casing_test", "packer":
		return 1, true
	case "shoe_test", "land":
		return 1.5, true
	case "seal", "set_hanger":
		return 2, true
	case "latch_stack", "liner_test":
		return 3, true
	case "soak":
		return 4, true
	}
	return 0, false
}

// Rates of the rig that the plan does not give are these: common practice, from memory.
const (
	usualDrillOut     = 8.0 / hours // m/s
	usualConnection   = 600.0       // s
	usualAssemblyTime = 4.0         // h
	usualRigUp        = 3.0         // h
	usualStackPrepare = 8.0         // h
	usualStackTest    = 10.0        // h
	usualStand        = 28.4        // m: three joints
	usualJoint        = 12.0        // m of casing
)

// timeStep gives an operation that is made from the plan its duration.
func (e *evaluation) timeStep(i int, s *Step) {
	section := &e.plan.Sections[i]
	r, t := &section.Rates, &e.plan.Schedule
	at := func(likely float64, by string, missing gap) { e.spread(i, s, likely, by, missing) }
	if fixed, ok := fixedHours(s.Key); ok {
		at(fixed*hours, "a duration of practice; a row of the list gives another", gap{})
		return
	}
	switch s.Key {
	case "prepare_stack":
		at(hoursOr(t.StackPrepare, usualStackPrepare), "as entered, or 8 h", gap{})
		return
	case "run_stack":
		joints := math.Ceil(e.datum.BOPTop / usual(t.RiserJoint, model.UsualRiserJoint))
		at(joints/usual(t.RiserRate, model.UsualRiserRate)*hours, "t = joints of riser / joints per hour", e.gaps.bop)
		return
	case "test_stack":
		at(hoursOr(t.StackTest, usualStackTest), "as entered, or 10 h", gap{})
		return
	case "make_up":
		at(hoursOr(r.BHA, usualAssemblyTime), "as entered, or 4 h", gap{})
		return
	case "log":
		at(r.Logging.SI, "as entered", gap{})
		return
	case "rig_up_casing":
		at(hoursOr(r.RigUp, usualRigUp), "as entered, or 3 h", gap{})
		return
	case "cement":
		at(e.cementDuration(i))
		return
	case "wait", "hold":
		at(section.Cement.Wait.SI, "t = wait on cement as entered", lacks(section.Cement.Wait, i, "pumping.wait", "wait on cement"))
		return
	}
	e.timeByWork(i, s)
}

// timeByWork gives an operation the duration that its length, joints or volume takes.
func (e *evaluation) timeByWork(i int, s *Step) {
	r := &e.plan.Sections[i].Rates
	at := func(likely float64, by string, missing gap) { e.spread(i, s, likely, by, missing) }
	switch s.Kind {
	case TripIn:
		at(e.tripTime(i, s.From, s.To), "t = stands / stands per hour, cased and open", gap{})
	case TripOut:
		at(e.tripTime(i, s.From, s.To)+hoursOr(r.BHA, usualAssemblyTime), "t = stands / stands per hour, cased and open + BHA laid down", gap{})
	case ToolOut:
		at(e.tripTime(i, 0, e.toolDepth(i))+hoursOr(r.RigUp, usualRigUp), "t = stands / stands per hour + rigging down", gap{})
	case Drilling:
		at(e.drillTime(i, s))
	case RunningIn:
		at(e.runTime(i, s))
	case Pumping:
		at(e.pumpTime(i, s))
	}
}

// stand returns the length of the rig's stands.
func (e *evaluation) stand() float64 { return usual(e.plan.Rig.StandLength, usualStand) }

// tripTime returns how long the end of a string takes between two depths: at one rate down to the last shoe or through the
// sea, at another in open hole.
func (e *evaluation) tripTime(i int, from, to float64) float64 {
	r := &e.plan.Sections[i].Rates
	low, high := min(from, to), max(from, to)
	open := max(high-max(e.openFrom(i), low), 0)
	return (open/usual(r.TripOpen, model.UsualTripOpen) + (high-low-open)/usual(r.TripCased, model.UsualTripCased)) / e.stand() * hours
}

// toolDepth returns how deep the running tool is when it lets go.
func (e *evaluation) toolDepth(i int) float64 {
	if c := &e.strings[i]; !c.missing.open() {
		return c.top
	}
	return e.datum.Mudline
}

// drillTime returns how long drilling takes: new hole by the rate of each formation with a connection for each stand, what
// stands in a string by the rate of drilling out.
func (e *evaluation) drillTime(i int, s *Step) (likely float64, by string, missing gap) {
	section := &e.plan.Sections[i]
	if s.Flat() {
		return (s.To - s.From) / usual(section.Rates.DrillOut, usualDrillOut), "t = length / rate of drilling out", gap{}
	}
	cuts, missing := e.formationCuts(s.HoleFrom, s.HoleTo)
	if missing.open() {
		return 0, "", missing
	}
	for _, cut := range cuts {
		rop, path := section.ROP, model.PathOf(i, "rop")
		if cut.formation >= 0 && e.plan.Formations[cut.formation].ROP.IsSet() {
			rop = e.plan.Formations[cut.formation].ROP
		}
		if !rop.IsSet() {
			return 0, "", gap{path, "rate of penetration is blank"}
		}
		likely += (cut.to - cut.from) / rop.SI
	}
	stands := math.Floor((s.HoleTo - s.HoleFrom) / e.stand())
	return likely + stands*usual(section.Rates.Connection, usualConnection), "t = sum of length / ROP by formation + stands × connection", gap{}
}

// formationCut is a length of hole in one formation; -1 is none.
type formationCut struct {
	from, to  float64
	formation int
}

// formationCuts divides a length of hole by the tops of the formations that are drilled at a rate of their own.
func (e *evaluation) formationCuts(from, to float64) (cuts []formationCut, missing gap) {
	at := formationCut{from: from, to: to, formation: -1}
	for k := range e.plan.Formations {
		f := &e.plan.Formations[k]
		if !e.ownROP() {
			break
		}
		if missing = first(needs(f.Top, model.Path("formation["+strconv.Itoa(k+1)+"].top"), "top of a formation"), e.pathGap, e.gaps.mudline); missing.open() {
			return nil, missing
		}
		md, ok := e.path.MDAtTVD(e.toRKB(f.Top.SI))
		switch {
		case !ok || md >= to:
		case md <= at.from:
			at.formation = k
		default:
			cuts = append(cuts, formationCut{at.from, md, at.formation})
			at.from, at.formation = md, k
		}
	}
	return append(cuts, at), gap{}
}

// ownROP reports whether any formation has a rate of its own.
func (e *evaluation) ownROP() bool {
	return slices.ContainsFunc(e.plan.Formations, func(f model.Formation) bool { return f.ROP.IsSet() })
}

// runTime returns how long a string takes on its way in: its joints, then stands of landing string.
func (e *evaluation) runTime(i int, s *Step) (likely float64, by string, missing gap) {
	section := &e.plan.Sections[i]
	if s.Key != "run_casing" {
		return e.tripTime(i, s.From, s.To), "t = stands / stands per hour, cased and open", gap{}
	}
	joints := math.Ceil((s.To - s.From) / usual(section.Tally.JointLength, usualJoint))
	return joints / usual(section.Rates.Casing, model.UsualCasing) * hours, "t = joints / joints per hour", gap{}
}

// pumpTime returns how long a circulation takes.
func (e *evaluation) pumpTime(i int, s *Step) (likely float64, by string, missing gap) {
	section := &e.plan.Sections[i]
	if missing = first(e.flowGap(i), e.boreGap(i)); missing.open() {
		return 0, "", missing
	}
	hole := bore.Volume(between(e.empty(i, gap{}), 0, s.HoleTo)) / section.Flow.SI
	switch s.Key {
	case "clean_up":
		return usual(section.Rates.CleanUp, model.UsualCleanUp) * hole, "t = circulations × (volume of the hole / flow)", gap{}
	case "reverse_out":
		job := e.cementOf(i)
		if missing = first(job.missing, lacks(section.Cement.DisplaceRate, i, "pumping.displace_rate", "rate of displacing")); missing.open() {
			return 0, "", missing
		}
		return quotient(e.displaced(i, job).running, section.Cement.DisplaceRate.SI), "t = volume / rate of displacing", gap{}
	}
	return hole, "t = volume of the hole as deep as it is / flow", gap{}
}

// cementDuration returns how long the cement job takes.
func (e *evaluation) cementDuration(i int) (likely float64, by string, missing gap) {
	t := e.jobTimeOf(i, e.cementOf(i))
	if whole := t.whole(); math.IsNaN(whole) || math.IsInf(whole, 0) {
		t.missing = first(t.missing, gap{why: "the entries give no finite duration"})
	}
	return t.whole(), "t = mixing + plugs and lines + displacing", t.missing
}
