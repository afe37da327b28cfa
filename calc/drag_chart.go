package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// dragCharts returns hook load and torque of section i against the depth of the bit, and the tension along its string.
func (e *evaluation) dragCharts(i int) []Chart {
	d := e.draggedAtTD(i)
	if d.missing.open() {
		return nil
	}
	hook, torque := e.bitCharts(i, &d)
	return []Chart{hook, torque, e.tensionChart(i, &d)}
}

// bitCharts returns hook loads and torque with the bit at every depth of the section, and of the readings above it.
func (e *evaluation) bitCharts(i int, d *dragged) (hook, torque Chart) {
	h, readings := &e.sections[i], e.plan.Sections[i].DragReadings
	from := h.start
	for _, row := range readings {
		if row.Depth.IsSet() && row.Depth.SI < h.td {
			from = min(from, row.Depth.SI)
		}
	}
	force := func(name string) ChartCurve { return ChartCurve{Name: name, Kind: quantity.Force} }
	up, still, down := force("Picking up"), force("Rotating"), force("Slacking off")
	off, on := ChartCurve{Name: "Off bottom", Kind: quantity.Torque}, ChartCurve{Name: "Drilling", Kind: quantity.Torque}
	drills := !d.motions[drilling].missing.open()
	for n := range chartSteps + 1 {
		bit := from + (h.td-from)*float64(n)/chartSteps
		if bit <= 0 {
			continue
		}
		loads, missing := e.hookLoads(i, bit, e.density(i, bit))
		if missing.open() {
			continue
		}
		up.Points = append(up.Points, ChartPoint{bit, loads.pickUp})
		still.Points = append(still.Points, ChartPoint{bit, loads.rotating})
		down.Points = append(down.Points, ChartPoint{bit, loads.slackOff})
		off.Points = append(off.Points, ChartPoint{bit, loads.torque})
		if drills && bit >= h.start {
			r := e.rubbedString(i, bit, e.density(i, bit), 0)
			_, most := r.drag.Top(d.motions[drilling].op)
			on.Points = append(on.Points, ChartPoint{bit, most})
		}
	}
	marks := e.dragMarks(i, from)
	hook = Chart{Key: "drag.hook", Title: "Hook load with friction", Topic: model.TopicString, Axis: "bit at", Along: quantity.Length, Down: true,
		Curves: []ChartCurve{up, still, down}, Marks: marks}
	torque = Chart{Key: "drag.torque", Title: "Torque with friction", Topic: model.TopicString, Axis: "bit at", Along: quantity.Length, Down: true,
		Curves: []ChartCurve{off}, Marks: marks}
	if drills {
		torque.Curves = append(torque.Curves, on)
	}
	hook.Curves = append(hook.Curves, readCurve("Read up", readings, func(g *measured) bool { return g.key == "pick_up" })...)
	hook.Curves = append(hook.Curves, readCurve("Read turned", readings, func(g *measured) bool { return g.key == "rotating" })...)
	hook.Curves = append(hook.Curves, readCurve("Read down", readings, func(g *measured) bool { return g.key == "slack_off" })...)
	torque.Curves = append(torque.Curves, readCurve("Read", readings, func(g *measured) bool { return g.torque })...)
	hook.level("Rig", e.plan.Rig.HookLoad, from, h.td)
	torque.level("Top drive", e.plan.Rig.TopDriveTorque, from, h.td)
	return hook, torque
}

// dragMarks names places between a depth and TD.
func (e *evaluation) dragMarks(i int, from float64) (marks []ChartMark) {
	if shoe, _, ok := e.lastShoe(i); ok && shoe >= from {
		marks = append(marks, ChartMark{"last shoe", shoe})
	}
	return append(marks, ChartMark{"TD", e.sections[i].td})
}

// readCurve returns what one gauge showed against the depth of the bit, in the order of the readings; none where there is
// nothing.
func readCurve(name string, readings []model.DragReading, is func(*measured) bool) []ChartCurve {
	curve := ChartCurve{Name: name, Single: true}
	for k := range readings {
		for _, g := range gauges(&readings[k]) {
			if is(&g) && g.read.IsSet() && readings[k].Depth.IsSet() {
				curve.Kind = g.kind
				curve.Points = append(curve.Points, ChartPoint{readings[k].Depth.SI, g.read.SI})
			}
		}
	}
	if len(curve.Points) == 0 {
		return nil
	}
	return []ChartCurve{curve}
}

// farLimit is how many times the greatest value a limit may be and still be drawn: beyond it would only flatten the curves.
const farLimit = 2.0

// level draws a limit that is the same at every depth, unless it is blank or far off.
func (c *Chart) level(name string, limit quantity.Value, from, to float64) {
	greatest := 0.0
	for _, curve := range c.Curves {
		for _, p := range curve.Points {
			greatest = max(greatest, p.Value)
		}
	}
	if limit.IsSet() && limit.SI <= farLimit*greatest {
		c.Curves = append(c.Curves, ChartCurve{Name: name, Kind: c.Curves[0].Kind, Limit: true, Points: []ChartPoint{{from, limit.SI}, {to, limit.SI}}})
	}
}

// tensionChart returns the effective tension along the string at TD, with the compression at which its pipe buckles.
func (e *evaluation) tensionChart(i int, d *dragged) Chart {
	chart := Chart{Key: "drag.tension", Title: "Effective tension at TD", Topic: model.TopicString, Axis: "MD", Along: quantity.Length, Down: true,
		Marks: e.dragMarks(i, 0)}
	for m := range d.motions {
		if len(d.loads[m]) == 0 {
			continue
		}
		curve := ChartCurve{Name: d.motions[m].name, Kind: quantity.Force}
		for k := range d.lengths {
			at := &d.loads[m][k]
			curve.Points = append(curve.Points, ChartPoint{d.lengths[k].top, at.Upper.Tension}, ChartPoint{d.lengths[k].bottom, at.Lower.Tension})
		}
		chart.Curves = append(chart.Curves, curve)
	}
	limit := ChartCurve{Name: "Buckling", Kind: quantity.Force, Limit: true}
	for k := range d.lengths {
		if l, element := &d.lengths[k], &d.drag.Elements()[k]; l.part.bends() && element.Length > 0 {
			at := &d.loads[slackingOff][k]
			upper, _ := d.limit(k, element.Upper.Inclination, at.Upper)
			lower, _ := d.limit(k, element.Lower.Inclination, at.Lower)
			limit.Points = append(limit.Points, ChartPoint{l.top, -upper}, ChartPoint{l.bottom, -lower})
		}
	}
	if len(limit.Points) > 0 {
		chart.Curves = append(chart.Curves, limit)
	}
	return chart
}
