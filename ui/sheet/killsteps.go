package sheet

import (
	"strconv"

	"borewalk/model"
	"borewalk/model/quantity"
)

// killMethod tells the method planned step by step, with the figures of the sheet (common practice).
func (p *printer) killMethod(i int) part {
	method, _ := p.plan.Sections[i].Kill.Methods()
	steps := p.drillersSteps(i)
	if method == model.WaitAndWeight {
		steps = p.waitSteps(i)
	}
	told := part{title: "Step by step: " + method}
	for n, step := range append(steps, p.deadSteps(i)...) {
		told.remarks = append(told.remarks, strconv.Itoa(n+1)+". "+step)
	}
	return told
}

// drillersSteps pump the influx out with the mud in the hole, and then kill mud in.
func (p *printer) drillersSteps(i int) []string {
	return []string{
		"Gauges steady: written down, and the sheet worked out anew with them.",
		p.startStep(i),
		"Standpipe held at ICP with the choke, the rate steady, until the influx is out: about " + p.told(i, "control.kill.way.annulus.strokes") + " and more where the hole is out of gauge.",
		"Pump taken down, the choke gauge let up again by what the line took, well shut in. SIDPP and SICP read the same, as SIDPP was: " + p.told(i, "control.kill.pipe") + p.keptOver(i) + ". More on the choke: influx is still in the annulus, or pressure is trapped.",
		"Kill mud mixed and weighed, pump lined up to it. Pump brought up as before, from what the choke gauge reads now.",
		p.toBitStep(i),
		p.upStep(i),
	}
}

// waitSteps pump the influx out with the kill mud that goes in.
func (p *printer) waitSteps(i int) []string {
	return []string{
		"Gauges steady: written down, and the sheet worked out anew with them.",
		"Kill mud mixed and weighed. All the while the gauges are watched: both rising alike, the influx moves up, and it is not left to rise.",
		p.startStep(i),
		p.toBitStep(i),
		p.upStep(i),
	}
}

// startStep brings the pump up to the kill rate.
func (p *printer) startStep(i int) string {
	return "Pump brought up in steps, the choke gauge let fall by the table to " + p.told(i, p.lastStart(i)) + ". The standpipe then reads about ICP, " + p.told(i, "control.kill.initial") + ". If not, stop, shut in, find out why."
}

// lastStart is the key of the choke gauge with the pump at the kill rate.
func (p *printer) lastStart(i int) string {
	key := ""
	for n := 0; ; n++ {
		next := "control.kill.start." + strconv.Itoa(n)
		if _, ok := p.result.Sheet(i).Find(next); !ok {
			return key
		}
		key = next
	}
}

// toBitStep takes kill mud down the string.
func (p *printer) toBitStep(i int) string {
	return "Kill mud to the bit: the standpipe led by the table from ICP to FCP, " + p.told(i, "control.kill.final") + ", over " + p.told(i, "control.kill.way.string.strokes") + ". Lines at surface come before."
}

// upStep takes kill mud up the annulus.
func (p *printer) upStep(i int) string {
	return "Kill mud up to the choke: the standpipe held at FCP for another " + p.told(i, "control.kill.way.annulus.strokes") + ". Choke wide open and the standpipe over FCP: the line holds the rest, and a slower pump takes it off."
}

// deadSteps are what any method ends with.
func (p *printer) deadSteps(i int) []string {
	return []string{
		"Pump stopped, well shut in: both gauges read none" + p.keptOver(i) + ", and stay there. If not, it is not dead: read, work out, circulate again.",
		"Flow check through the choke. Gas trapped in the stack is got out, and the riser brought to kill mud (" + p.told(i, "control.kill.way.riser.strokes") + "), before the stack is opened with the diverter lined up.",
	}
}

// keptOver adds what was held over the formation and is still in the well.
func (p *printer) keptOver(i int) string {
	over := given(p.plan.Sections[i].Kill.Overbalance)
	if !(over > 0) {
		return ""
	}
	return " and the " + quantity.FormatUnit(over, quantity.Pressure, p.System.Unit(quantity.Pressure)) + " kept over"
}

// told is a figure of a section in a sentence.
func (p *printer) told(i int, key string) string {
	f, ok := p.result.Sheet(i).Find(key)
	if !ok || !f.OK {
		return "(blank)"
	}
	return p.figureText(f)
}
