package calc

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// linesOver is what lines are tested to over the highest pressure of a job, in Pa: 1000 psi.
const linesOver = 1000 * 4.4482216152605 / (0.0254 * 0.0254)

// pumpFiguresOf adds what the gauges show: pump, bump, float, level, returns, and what is left of the string's weight.
func (e *evaluation) pumpFiguresOf(i int, p *page, job *cementJob, r *jobResult, static, pumping gap) {
	p.group = "At the pump and the string"
	c := &e.plan.Sections[i].Cement
	played := p.played()
	simple := func(key, name string, kind quantity.Kind, x extreme, formula, note string) {
		p.put(key, name, kind, x.value, pumping, func(w *Working) {
			w.Formula = formula
			w.in("pumped", "since the start", quantity.Volume, x.pumped)
			w.Source, w.Note = played, note
		}).Note = job.when(x)
	}
	simple("cement.pump.most", "Highest pump", quantity.Pressure, r.pump, "p = columns outside - columns inside + friction of both ways, highest through the job",
		"Surface lines, plugs bursting and tool joints left out.")
	gauge := func(key string, kind quantity.Kind, value float64, missing gap, formula, source string) {
		p.also(key+".gauge", "in gauge", kind, value, missing, func(w *Working) { w.Formula, w.Source = formula, source })
	}
	gauge("cement.pump.most", quantity.Pressure, r.gauge.pump, pumping, "highest at the ends of the stages in a hole in gauge", played)
	p.put("cement.pump.final", "Final, pumping", quantity.Pressure, r.final, pumping, func(w *Working) {
		w.Formula = "p = columns outside - columns inside + friction, just before the end"
		w.Source = played
	})
	gauge("cement.pump.final", quantity.Pressure, r.gauge.final, pumping, "the same in a hole in gauge, where the cement stands higher", played)
	if job.inner == nil {
		p.put("cement.pump.bump", "Bump to", quantity.Pressure, r.final+c.BumpOver.SI, pumping, func(w *Working) {
			w.Formula = "p = final pumping pressure + bump over it"
			w.in("final", "pumping", quantity.Pressure, r.final)
			w.in("over", "of the plan", quantity.Pressure, c.BumpOver.SI)
			w.Source = "common practice"
			w.Note = "Within what plug, collar, head and casing stand, by their makers."
		})
		gauge("cement.pump.bump", quantity.Pressure, r.gauge.final+c.BumpOver.SI, pumping, "p = final pumping pressure in a hole in gauge + bump over it", "common practice")
	}
	p.put("cement.float", "Float must hold", quantity.Pressure, r.holds, static, func(w *Working) {
		w.Formula = "p = columns outside - columns inside at the end of the string, bled off"
		w.Source = "hydrostatics"
		w.Note = "Below zero the inside is the heavier side and nothing flows back. It loads the casing from outside until the cement sets."
	})
	gauge("cement.float", quantity.Pressure, r.gauge.holds, static, "the same in a hole in gauge, where the cement stands higher", "hydrostatics")
	most := max(r.pump.value, r.gauge.pump)
	if job.inner == nil {
		most = max(most, max(r.final, r.gauge.pump)+c.BumpOver.SI)
	}
	p.put("cement.pump.test", "Test lines to", quantity.Pressure, most+linesOver, pumping, func(w *Working) {
		w.Formula = "p = highest pressure of the job, bump counted, + 1000 psi"
		w.in("highest", "pump or bump", quantity.Pressure, most)
		w.in("over", "1000 psi", quantity.Pressure, linesOver)
		w.Source = "drillingforgas.com, cementing standards: 1000 psi above the highest pressure expected"
		w.Note = "Within the rating of the weakest of lines, head and unit; the operator's procedure goes before this."
	})
	if rig := &e.plan.Rig; !pumping.open() && rig.UnitPressure.IsSet() {
		e.judge(model.RuleUnitPressure, i, rig.UnitPressure.SI-most, "Rating of the cement unit over the job's highest pressure", "", 0, "rig.unit_pressure")
	}
	simple("cement.level", "Lowest level", quantity.Length, r.level, "depth of the fluid in the string where it runs ahead of the pump; none is full",
		"Free fall: fluid inside heavier than the balance allows, no pump pressure meanwhile.")
	simple("cement.returns", "Fastest returns", quantity.CementRate, r.returns, "flow at the shoe that balances columns and friction while the string is not full, else the pump's rate",
		"Ahead of the pump while the level falls, behind it while it rises. What differs from this schedule is a gain or a loss until shown otherwise.")
	p.put("cement.weight", "Weight left", quantity.Force, r.weight, static, func(w *Working) {
		w.Formula = "W = sum over parts of m × g × fall + rise of pressure inside × bore area - rise of pressure outside × OD area, at rest"
		for k := range e.strings[i].parts {
			part := &e.strings[i].parts[k]
			w.in("m", "mass per length", quantity.LinearMass, part.pipe.LinearMass)
			w.in("fall", "vertical length", quantity.Length, e.path.TVD(part.bottom)-e.path.TVD(part.top))
		}
		w.Source = "pressure-area method; closed at the shoe"
		w.Note = "The casing alone. Friction in the annulus lifts on top while pumping."
	})
	gauge("cement.weight", quantity.Force, r.gauge.weight, static, "the same in a hole in gauge, where the cement stands higher", "pressure-area method; closed at the shoe")
	if job.inner != nil {
		p.put("cement.beyond", "Ran out after stop", quantity.Volume, r.beyond, pumping, func(w *Working) {
			w.Formula = "V = length of the string that is not full at rest × its bore"
			w.Source = played
			w.Note = "What is too heavy inside runs out after the pump has stopped: it is displaced further than was counted."
		})
		if !pumping.open() {
			e.judge(model.RuleRunsOut, i, r.beyond-c.StopShort.SI, "Run out after the stop, over what was kept back", "", 0, model.PathOf(i, "stop_short"))
		}
	}
	if !static.open() {
		hole := "hole as planned"
		if r.gauge.weight < r.weight {
			hole = "hole in gauge"
		}
		e.judge(model.RuleLift, i, min(r.weight, r.gauge.weight), "Casing and contents heavier than what they displace", hole, 0, model.PathOf(i, "fluids.filled"))
	}
}
