package calc

import (
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/column"
	"borewalk/calc/killsheet"
	"borewalk/calc/root"
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
	read     float64 // SICP as read
	hasRead  bool    // it was
	bySICP   float64 // volume of gas that SICP as read asks for; no less than the gain
	noSICP   gap     // no volume gives it
	measured bool    // SIDPP was read
	top      float64 // of the influx, along hole
	height   float64 // of it, on TVD
}

// killing is how the kick of a section is killed.
type killing struct {
	in        shutIn
	missing   gap
	line      *killLine
	stroke    float64
	slow      float64 // slow circulating pressure in the section's mud, Pa
	slowRow   int     // of the list; 0 where it is worked out
	scaled    bool    // between rates that are recorded
	raised    bool    // the bit is not at TD
	slowMud   float64
	mud       float64 // kill mud, rounded up
	exact     float64
	initial   float64
	final     float64
	rubs      float64 // slow circulating pressure in kill mud
	over      float64 // overbalance held
	annular   float64 // friction of the annulus from bit to stack at the kill rate, which the slow pressure holds as well
	noAnnular gap     // the sheet needs it not, the play does
	step      killsheet.StepDown
	inside    []bore.Interval
	annulus   []bore.Interval // from the stack to the bit
	killFlow  float64
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
	bit := usual(s.Kill.Bit, e.sections[i].td)
	in := shutIn{kick: e.kickAt(i, bit, s.Kick.Intensity.SI), measured: s.Kill.DrillPipe.IsSet(), read: s.Kill.Annulus.SI, hasRead: s.Kill.Annulus.IsSet()}
	in.missing = in.kick.missing
	if bit > e.sections[i].td || bit <= e.openFrom(i) {
		in.missing = first(in.missing, gap{model.PathOf(i, "kill.bit"), "the bit is not in the section's open hole"})
	}
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
	if in.noGas.open() {
		return in
	}
	shut, err := in.well.ShutIn(in.pressure(), in.volume)
	if err != nil {
		in.noGas = gap{in.volumeEntry(i, e), err.Error()}
		return in
	}
	in.top, in.height = shut.Top, shut.Height()
	in.choke = shut.TopPressure - column.PressureOf(in.mud, shut.TopTVD)
	in.bySICP, in.noSICP = in.gasBySICP(i)
	return in
}

// gasBySICP returns the volume of gas in m3 with which the choke would show what was read: a hole that is larger, or a gain that was
// missed. It is no less than the gain, and the gain where nothing was read. Where all of the annulus full of gas does not show as much,
// something else is read, and it says so.
func (in *shutIn) gasBySICP(i int) (float64, gap) {
	if !in.hasRead || in.read <= in.choke {
		return in.volume, gap{}
	}
	holds := 0.0
	for k := range in.well.Cells {
		holds += in.well.Cells[k].Area * (in.well.Cells[k].Bottom - in.well.Cells[k].Top)
	}
	volume, met := root.Crossing(func(v float64) float64 {
		shut, err := in.well.ShutIn(in.pressure(), v)
		if err != nil {
			return math.NaN()
		}
		return shut.TopPressure - column.PressureOf(in.mud, shut.TopTVD) - in.read
	}, in.volume, (1-1e-9)*holds, 100)
	if !met {
		return 0, gap{model.PathOf(i, "kill.annulus"), "no volume of gas in the annulus gives the SICP that was read: trapped pressure, or a gauge"}
	}
	return volume, gap{}
}

// volumeEntry returns the entry that the influx's volume comes from.
func (in *shutIn) volumeEntry(i int, e *evaluation) model.Path {
	switch s := &e.plan.Sections[i]; {
	case s.Kill.Gain.IsSet():
		return model.PathOf(i, "kill.gain")
	case s.Kick.Volume.IsSet():
		return model.PathOf(i, "kick.volume")
	}
	return model.PathOf(i, "kick.least")
}

// shown returns SICP as it counts: as read, else as worked out.
func (in *shutIn) shown() float64 {
	if in.hasRead {
		return in.read
	}
	return in.choke
}

// readKill works out the kill sheet of section i.
func (e *evaluation) readKill(i int) *killing {
	s := &e.plan.Sections[i]
	k := &killing{in: e.readShutIn(i), line: e.killLine(i), over: s.Kill.Overbalance.SI}
	k.raised = k.in.bit != e.sections[i].td
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
	if k.mud-k.in.mud < slack(quantity.Density) {
		k.mud = k.in.mud
	}
	k.initial, _ = killsheet.Initial(k.in.pipe, k.over, k.slow)
	k.rubs, _ = killsheet.Final(k.slow, k.mud, k.in.mud)
	k.final = k.rubs + k.over // the kill mud balances the formation alone: what is held over it stays at the choke
	k.inside = bore.Inside(e.killString(i, k.in.bit), 0, k.in.bit)
	if k.annulus, k.missing = e.annulusOf(i, e.datum.BOPTop, k.in.bit); k.missing.open() {
		return k
	}
	rubs := e.rubsWith(i, k.in.bit)
	k.annular, k.noAnnular = rubs.above(k.in.bit), rubs.missing
	k.step = killsheet.StepDown{Inside: k.inside, TVD: e.path.TVD, SIDPP: k.in.pipe, Slow: k.slow + k.over, Final: k.final}
	return k
}

// judgeKill compares the kill sheet with the rules.
func (e *evaluation) judgeKill(i int, k *killing) {
	e.judgeSlow(i, k)
	if first(k.in.missing, k.in.noGas).open() {
		return
	}
	e.judgeShutIn(i, k)
	if first(k.missing, k.line.missing).open() {
		return
	}
	e.judge(model.RuleLineFriction, i, k.in.shown()+k.over-k.line.loss, "Choke pressure shut in over the line's friction", "", 0, model.PathOf(i, "kill.rate"))
	e.judgeKillMud(i, k)
}

// judgeShutIn holds what stands on the shoe with the well shut in against what it stands, by SICP as it was read, and says where
// reading and gain disagree.
func (e *evaluation) judgeShutIn(i int, k *killing) {
	in := &k.in
	mend := in.volumeEntry(i, e)
	if in.noSICP.open() {
		e.note(i, Stop, in.noSICP)
	}
	if in.hasRead {
		mend = model.PathOf(i, "kill.annulus")
		e.judge(model.RuleShutInGain, i, math.Abs(in.read-in.choke), "SICP as read and as the gain gives it apart", "", 0, mend)
	}
	if _, _, ok := e.lastShoe(i); !ok || e.testGap(i).open() {
		return
	}
	strength, _, _ := e.shoeStrength(i)
	t := &e.tests[i]
	if stands, presses := column.PressureOf(strength, t.tvd), in.shown()+column.PressureOf(in.mud, t.tvd); stands > 0 {
		e.judge(model.RuleShutInShoe, i, (stands-presses)/(gravity*t.tvd), "Shoe over the well shut in", "", t.shoe, mend)
	}
}

// judgeKillMud holds the kill mud against shoe and weakest rock, and what weights the mud up to it against what is aboard.
func (e *evaluation) judgeKillMud(i int, k *killing) {
	mend := model.PathOf(i, "kill.drill_pipe")
	if !k.in.measured {
		mend = model.PathOf(i, "kick.intensity")
	}
	if k.mud <= k.in.mud {
		return
	}
	for n, at := range e.killPlaces(i) {
		what := "Shoe over kill mud"
		if n > 0 {
			what = "Weakest rock over kill mud"
		}
		e.judge(model.RuleKillMudShoe, i, at.emw-k.mud, what, "", at.MD, mend)
	}
	holds := e.contentsOf(i)
	system := e.killSystem(i, k, &holds)
	if a, missing := system.weighUp(k.mud); !missing.open() && e.plan.Rig.Barite.IsSet() {
		e.judge(model.RuleKillBarite, i, e.plan.Rig.Barite.SI-a.Mass, "Weighting material over the active system at kill mud", "", 0, "rig.barite")
	}
}
