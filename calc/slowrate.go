package calc

import (
	"cmp"
	"math"
	"strconv"

	"borewalk/calc/killsheet"
	"borewalk/model"
	"borewalk/model/quantity"
)

// slowRowGap says what is missing in the slow rates of section i.
func (e *evaluation) slowRowGap(i int) gap { return e.listGap(model.SlowRateList(), i) }

// slowRate returns the recorded slow rate of section i at the kill rate with one kind of pump and way of returns, the latest row
// counting.
func (e *evaluation) slowRate(i int, path string) (row *model.SlowRate, number int, ok bool) {
	s := &e.plan.Sections[i]
	const same = 0.5 / 60 // strokes a second: as the counter shows it
	for k := len(s.SlowRates) - 1; k >= 0; k-- {
		r := &s.SlowRates[k]
		if cmp.Or(r.Path, model.ByRiser) == path && r.Pressure.IsSet() && usual(r.Pump, 1) == usual(s.Kill.Pump, 1) && math.Abs(r.Rate.SI-usual(s.Kill.Rate, usualKillRate)) <= same {
			return r, k + 1, true
		}
	}
	return nil, 0, false
}

// slowBetween returns the slow pressure at section i's kill rate, in its mud, from those recorded at other rates with a way of the returns:
// by the power of the rate that leads from the next below to the next above, and by its square beyond them.
func (e *evaluation) slowBetween(i int, path string) (pressure float64, ok bool) {
	s := &e.plan.Sections[i]
	rate := usual(s.Kill.Rate, usualKillRate)
	var below, above [2]float64 // rate and pressure
	for k := range s.SlowRates {
		r := &s.SlowRates[k]
		if cmp.Or(r.Path, model.ByRiser) != path || usual(r.Pump, 1) != usual(s.Kill.Pump, 1) || r.Rate.SI <= 0 || r.Pressure.SI <= 0 {
			continue
		}
		at := [2]float64{r.Rate.SI, r.Pressure.SI * quotient(s.Density.SI, usual(r.Mud, s.Density.SI))}
		switch {
		case at[0] <= rate && at[0] >= below[0]:
			below = at
		case at[0] > rate && (above[0] == 0 || at[0] <= above[0]):
			above = at
		}
	}
	power, from := float64(killsheet.Square), below
	switch {
	case below[0] == 0 && above[0] == 0:
		return 0, false
	case below[0] == 0:
		from = above
	case above[0] > 0:
		power = math.Log(above[1]/below[1]) / math.Log(above[0]/below[0])
	}
	pressure, err := killsheet.AtRate(from[1], from[0], rate, power)
	return pressure, err == nil
}

// lineBySlowRates returns the friction of a line as the slow rates by riser and by that line give it, and the mud it was read in.
func (e *evaluation) lineBySlowRates(i int, name string) (loss, mud float64, ok bool) {
	density := e.plan.Sections[i].Density.SI
	riser, _, up := e.slowRate(i, model.ByRiser)
	line, _, through := e.slowRate(i, name)
	if up && through {
		mud = usual(line.Mud, density)
		return line.Pressure.SI - riser.Pressure.SI*quotient(mud, usual(riser.Mud, density)), mud, mud > 0
	}
	a, up := e.slowBetween(i, model.ByRiser)
	b, through := e.slowBetween(i, name)
	return b - a, density, up && through && density > 0
}

// readSlow takes the slow circulating pressure as recorded, scaled with the mud, else as the section's loop gives it.
func (e *evaluation) readSlow(i int, k *killing) gap {
	mud := e.plan.Sections[i].Density.SI
	if row, number, ok := e.slowRate(i, model.ByRiser); ok {
		k.slowRow, k.slowMud = number, usual(row.Mud, mud)
		k.slow = row.Pressure.SI * mud / k.slowMud
		return gap{}
	}
	if slow, ok := e.slowBetween(i, model.ByRiser); ok {
		k.slow, k.scaled = slow, true
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
	switch {
	case k.scaled:
		return "scaled from other rates"
	case k.slowRow == 0 && k.raised:
		return "worked out with the bit at TD"
	case k.slowRow == 0:
		return "worked out, not recorded"
	}
	return "recorded, row " + strconv.Itoa(k.slowRow)
}

// judgeSlow looks at the slow rate that the sheet goes by.
func (e *evaluation) judgeSlow(i int, k *killing) {
	s := &e.plan.Sections[i]
	recorded := 0.0
	if k.slowRow > 0 {
		recorded = 1
	}
	// Before the section is drilled there is nothing to record.
	if begun := len(s.SlowRates) > 0 || s.Kill.DrillPipe.IsSet(); begun && !k.missing.open() {
		e.judge(model.RuleSlowRate, i, recorded, "Slow rate recorded at the kill rate, returns by the riser", "", 0, model.PathOf(i, "kill.rate"))
	}
	if k.slowRow == 0 {
		return
	}
	row := "slow_rate[" + strconv.Itoa(k.slowRow) + "]."
	e.judge(model.RuleSlowRateMud, i, math.Abs(k.slowMud-s.Density.SI), "Mud changed since the slow rate was recorded", "", 0, model.PathOf(i, row+"mud"))
	if depth := s.SlowRates[k.slowRow-1].Depth; depth.IsSet() {
		e.judge(model.RuleSlowRateDepth, i, math.Abs(depth.SI-k.in.bit), "Bit moved since the slow rate was recorded", "", 0, model.PathOf(i, row+"depth"))
	}
}

// otherRates adds initial and final circulating pressures at the other slow rates that are recorded by the riser.
func (e *evaluation) otherRates(i int, p *page, k *killing) {
	s := &e.plan.Sections[i]
	p.group = "At other slow rates"
	for n := range s.SlowRates {
		row := &s.SlowRates[n]
		if row.Path != "" && row.Path != model.ByRiser || n+1 == k.slowRow || !row.Pressure.IsSet() || !row.Rate.IsSet() {
			continue
		}
		slow := row.Pressure.SI * quotient(k.in.mud, usual(row.Mud, k.in.mud))
		initial, _ := killsheet.Initial(k.in.pipe, k.over, slow)
		final, _ := killsheet.Final(slow, k.mud, k.in.mud)
		why := func(w *Working) {
			w.Formula = "ICP = SIDPP + overbalance + slow; FCP = slow × kill mud / mud + overbalance"
			w.in("SIDPP", "shut in", quantity.Pressure, k.in.pipe)
			w.in("overbalance", "held", quantity.Pressure, k.over)
			w.in("slow", "recorded, in this mud", quantity.Pressure, slow)
			w.in("rate", "of the pump", quantity.StrokeRate, row.Rate.SI)
			w.in("kill", "mud, rounded up", quantity.Density, k.mud)
			w.in("mud", "static", quantity.Density, k.in.mud)
			w.Source = "Lapeyrouse, Formulas and Calculations, ch. 4"
			w.Note = "The friction of the line goes with the rate as well. " + killCaution
		}
		key := "control.kill.rate." + strconv.Itoa(n+1)
		p.put(key, "ICP, row "+strconv.Itoa(n+1), quantity.Pressure, initial, k.missing, why)
		p.also(key+".final", "FCP", quantity.Pressure, final+k.over, k.missing, why)
		p.also(key+".rate", "rate", quantity.StrokeRate, row.Rate.SI, gap{}, why)
	}
}
