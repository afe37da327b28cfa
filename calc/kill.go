package calc

import (
	"math"
	"strconv"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// killCaution goes with every figure of a kill sheet.
const killCaution = "Pre-recorded for the mud, string and pump as entered: shut-in pressures are read and checked, and trapped pressure is bled, before it is used. Supervisor and toolpusher decide, by the operator's manual."

// shutIn is a kick shut in with the bit at TD: read, or planned.
type shutIn struct {
	kick
	missing  gap
	volume   float64 // pit gain
	pipe     float64 // SIDPP, Pa
	choke    float64 // SICP as worked out, with the gain as one bubble round the BHA
	read     float64 // SICP as read; zero where it was not
	measured bool    // SIDPP was read
	top      float64 // of the influx, along hole
	height   float64 // of it, on TVD
}

// killing is how the kick of a section is killed.
type killing struct {
	in       shutIn
	missing  gap
	line     *killLine
	stroke   float64
	slow     float64 // slow circulating pressure in the section's mud, Pa
	slowRow  int     // of the list; 0 where it is worked out
	slowMud  float64
	mud      float64 // kill mud, rounded up
	exact    float64
	initial  float64
	final    float64
	rubs     float64 // slow circulating pressure in kill mud
	over     float64 // overbalance held
	step     killsheet.StepDown
	inside   []bore.Interval
	annulus  []bore.Interval // from the stack to the bit
	killFlow float64
}

// killOf returns how the kick of section i is killed, worked out once.
func (e *evaluation) killOf(i int) *killing {
	if e.kills == nil {
		e.kills = make([]*killing, len(e.sections))
	}
	if e.kills[i] == nil {
		e.kills[i] = e.readKill(i)
	}
	return e.kills[i]
}

// readShutIn reads the kick on the kill sheet of section i.
func (e *evaluation) readShutIn(i int) shutIn {
	s := &e.plan.Sections[i]
	in := shutIn{kick: e.kickAt(i, e.sections[i].td, s.Kick.Intensity.SI), measured: s.Kill.DrillPipe.IsSet(), read: s.Kill.Annulus.SI}
	in.missing = in.kick.missing
	in.volume = usual(s.Kill.Gain, usual(s.Kick.Volume, e.leastTolerance(i)))
	if in.volume == 0 {
		in.missing = first(in.missing, gap{model.PathOf(i, "kick.volume"), "the influx planned is blank"})
	}
	if in.missing.open() {
		return in
	}
	if in.measured {
		in.formation, _ = column.EMW(s.Kill.DrillPipe.SI+column.PressureOf(in.mud, in.tvd), in.tvd)
	}
	in.pipe = in.pressure() - column.PressureOf(in.mud, in.tvd)
	shut, err := in.well.ShutIn(in.pressure(), in.volume)
	if err != nil {
		in.missing = gap{model.PathOf(i, "kick.volume"), err.Error()}
		return in
	}
	in.top, in.height = shut.Top, shut.Height()
	in.choke = shut.TopPressure - column.PressureOf(in.mud, shut.TopTVD)
	return in
}

// readKill works out the kill sheet of section i.
func (e *evaluation) readKill(i int) *killing {
	s := &e.plan.Sections[i]
	k := &killing{in: e.readShutIn(i), line: e.killLine(i), over: s.Kill.Overbalance.SI}
	var rate gap
	k.killFlow, k.stroke, rate = e.killRate(i)
	k.missing = first(k.in.missing, rate, e.slowRowGap(i))
	if !k.missing.open() {
		k.missing = e.readSlow(i, k)
	}
	if k.missing.open() {
		return k
	}
	var err error
	if k.exact, err = killsheet.KillDensity(k.in.mud, k.in.pipe, 0, k.in.tvd); err != nil {
		k.missing = gap{model.PathOf(i, "kill.drill_pipe"), err.Error()}
		return k
	}
	k.mud = e.roundedUp(k.exact)
	k.initial, _ = killsheet.Initial(k.in.pipe, k.over, k.slow)
	k.rubs, _ = killsheet.Final(k.slow, k.mud, k.in.mud)
	k.final = k.rubs + k.over // the kill mud balances the formation alone: what is held over it stays at the choke
	k.inside = bore.Inside(e.killString(i), 0, e.sections[i].td)
	k.annulus, k.missing = e.annulusOf(i, e.datum.BOPTop, e.sections[i].td)
	k.step = killsheet.StepDown{Inside: k.inside, TVD: e.path.TVD, SIDPP: k.in.pipe, Slow: k.slow + k.over, Final: k.final}
	return k
}

// roundedUp returns a density taken up to the step in which mud is mixed: 0.01 sg or 0.1 ppg.
func (e *evaluation) roundedUp(density float64) float64 {
	return -e.roundedDown(-density, quantity.Density, 1)
}

// readSlow takes the slow circulating pressure as recorded, scaled with the mud, else as the section's loop gives it.
func (e *evaluation) readSlow(i int, k *killing) gap {
	mud := e.plan.Sections[i].Density.SI
	if row, number, ok := e.slowRate(i, model.ByRiser); ok {
		k.slowRow, k.slowMud = number, usual(row.Mud, mud)
		k.slow = row.Pressure.SI * mud / k.slowMud
		return gap{}
	}
	l := e.loop(i)
	if l.noString.open() {
		return l.noString
	}
	still := *l
	still.booster = 0
	k.slow = still.parasitic(k.killFlow) + still.lossBit(k.killFlow)
	return gap{}
}

// slowFrom says where the slow circulating pressure comes from.
func (k *killing) slowFrom() string {
	if k.slowRow == 0 {
		return "worked out, not recorded"
	}
	return "recorded, row " + strconv.Itoa(k.slowRow)
}

// judgeKill compares the kill sheet with the rules.
func (e *evaluation) judgeKill(i int, k *killing) {
	s := &e.plan.Sections[i]
	recorded := 0.0
	if k.slowRow > 0 {
		recorded = 1
	}
	// Before the section is drilled there is nothing to record.
	if begun := len(s.SlowRates) > 0 || s.Kill.DrillPipe.IsSet(); begun && !k.missing.open() {
		e.judge(model.RuleSlowRate, i, recorded, "Slow rate recorded at the kill rate, returns by the riser", "", 0, model.PathOf(i, "kill.rate"))
	}
	if k.slowRow > 0 {
		e.judge(model.RuleSlowRateMud, i, math.Abs(k.slowMud-s.Density.SI), "Mud changed since the slow rate was recorded", "", 0,
			model.PathOf(i, "slow_rate["+strconv.Itoa(k.slowRow)+"].mud"))
	}
	if first(k.missing, k.line.missing).open() {
		return
	}
	shut := k.in.choke
	if k.in.read > 0 {
		shut = k.in.read
	}
	e.judge(model.RuleLineFriction, i, shut+k.over-k.line.loss, "Choke pressure shut in over the line's friction", "", 0, model.PathOf(i, "kill.rate"))
}
