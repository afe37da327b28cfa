package calc

import (
	"fmt"
	"strconv"
	"strings"

	"borewalk/calc/bore"
	"borewalk/calc/pump"
	"borewalk/model"
	"borewalk/model/quantity"
)

// pumpGroup is what the pumps of one liner give: m3 per stroke and m3/s at the highest rate of all of them.
type pumpGroup struct {
	perStroke, most float64
}

func (e *evaluation) readPumps() {
	if len(e.plan.Pumps) == 0 {
		e.pumpGap = gap{"rig.pump", "there is no pump: add one on the well page"}
		e.fault(e.pumpGap)
		return
	}
	for i := range e.plan.Pumps {
		p := &e.plan.Pumps[i]
		path := func(key string) model.Path { return model.Path("rig.pump[" + strconv.Itoa(i+1) + "]." + key) }
		for _, f := range []struct {
			key string
			v   quantity.Value
		}{{"count", p.Count}, {"liner", p.Liner}, {"stroke", p.Stroke}, {"efficiency", p.Efficiency}, {"max_rate", p.MaxRate}} {
			if !f.v.IsSet() {
				e.pumpGap = gap{path(f.key), "a pump is incomplete"}
				e.fault(e.pumpGap)
				return
			}
		}
		var out float64
		var err error
		if p.Action == model.Duplex {
			out, err = pump.Duplex(p.Liner.SI, p.Rod.SI, p.Stroke.SI, p.Efficiency.SI)
		} else {
			out, err = pump.Triplex(p.Liner.SI, p.Stroke.SI, p.Efficiency.SI)
		}
		if err != nil {
			e.pumpGap = gap{path("liner"), err.Error()}
			e.fault(e.pumpGap)
			return
		}
		e.pumps = append(e.pumps, pumpGroup{perStroke: out, most: out * p.MaxRate.SI * p.Count.SI})
	}
}

// mostFlow returns the flow of all pumps at their highest stroke rate.
func (e *evaluation) mostFlow() (flow float64) {
	for _, g := range e.pumps {
		flow += g.most
	}
	return flow
}

// pumpFigures adds the output of each kind of pump to the well page.
func (e *evaluation) pumpFigures(p *page) {
	p.group = "Pumps"
	for i := range e.plan.Pumps {
		row := &e.plan.Pumps[i]
		var g pumpGroup
		missing := e.pumpGap
		if i < len(e.pumps) {
			g, missing = e.pumps[i], gap{}
		}
		n, kind := strconv.Itoa(i+1), ""
		if len(e.plan.Pumps) > 1 {
			kind = ", kind " + n
		}
		p.put("pump."+n+".output", "Output"+kind, quantity.StrokeVolume, g.perStroke, missing, func(w *Working) {
			w.Formula = "output = 3 × pi/4 × liner² × stroke × efficiency"
			if row.Action == model.Duplex {
				w.Formula = "output = 2 × pi/4 × (2 × liner² - rod²) × stroke × efficiency"
				w.in("rod", "piston rod", quantity.Diameter, row.Rod.SI)
			}
			w.in("liner", "liner", quantity.Diameter, row.Liner.SI)
			w.in("stroke", "stroke", quantity.Diameter, row.Stroke.SI)
			w.in("efficiency", "volumetric", quantity.Ratio, row.Efficiency.SI)
			w.Source = "Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover, ch. 1, pump output"
		})
		p.put("pump."+n+".most", "Most flow"+kind, quantity.Flow, g.most, missing, func(w *Working) {
			w.Formula = "flow = output × highest stroke rate × number of pumps"
			w.in("output", "per stroke", quantity.StrokeVolume, g.perStroke)
			w.in("rate", "highest", quantity.StrokeRate, row.MaxRate.SI)
			w.in("number", "pumps", quantity.Count, row.Count.SI)
			w.Source = "common practice"
		})
	}
}

// lineFigures adds the volumes of riser and lines to the well page.
func (e *evaluation) lineFigures(p *page) {
	p.group = "Lines"
	rig := &e.plan.Rig
	add := func(key, name string, id, length quantity.Value, idPath model.Path) {
		missing := needs(id, idPath, name+", ID")
		l := length.SI
		if !length.IsSet() {
			l = e.datum.BOPTop
			missing = first(missing, e.gaps.bop)
		}
		volume := bore.Area(id.SI) * l
		p.put(key, name, quantity.Volume, volume, missing, func(w *Working) {
			w.Formula = "V = pi/4 × ID² × L"
			w.in("ID", "inside diameter", quantity.Diameter, id.SI)
			w.in("L", "length", quantity.Length, l)
			w.Source = "geometry"
		})
		e.pumped(p, key, volume, missing)
	}
	e.judgeLines()
	add("line.riser", "Riser, empty", rig.RiserID, quantity.Value{}, "rig.riser_id")
	add("line.choke", "Choke line", rig.ChokeID, rig.ChokeLength, "rig.choke_id")
	add("line.kill", "Kill line", rig.KillID, rig.KillLength, "rig.kill_id")
	add("line.booster", "Booster line", rig.BoosterID, rig.BoosterLength, "rig.booster_id")
}

// judgeLines notes lines that would not reach from the rig to the stack.
func (e *evaluation) judgeLines() {
	rig := &e.plan.Rig
	for _, line := range []struct {
		name   string
		length quantity.Value
		path   model.Path
	}{{"choke", rig.ChokeLength, "rig.choke_length"}, {"kill", rig.KillLength, "rig.kill_length"}, {"booster", rig.BoosterLength, "rig.booster_length"}} {
		if !e.gaps.bop.open() && line.length.IsSet() && line.length.SI < e.datum.BOPTop-nearSeabed {
			e.note(-1, Caution, gap{line.path, "the " + line.name + " line is shorter than the riser: did it stay when the seabed moved?"})
		}
	}
}

// pumped adds to a line that shows a volume the strokes of each kind of pump for it.
func (e *evaluation) pumped(p *page, key string, volume float64, missing gap) {
	e.strokes(p, key, volume, missing, func(w *Working) {
		w.Formula = "strokes = volume / output per stroke"
		w.in("volume", "to be pumped", quantity.Volume, volume)
	})
}

// strokes adds the strokes of each kind of pump for a volume; why begins the working.
func (e *evaluation) strokes(p *page, key string, volume float64, missing gap, why func(*Working)) {
	strokeGap := first(missing, e.pumpGap)
	for i := range max(1, len(e.plan.Pumps)) {
		var output float64
		if i < len(e.pumps) {
			output = e.pumps[i].perStroke
		}
		suffix, column := ".strokes", "strokes"
		if i > 0 {
			suffix, column = fmt.Sprintf(".strokes.%d", i+1), fmt.Sprintf("strokes, kind %d", i+1)
		}
		strokes, _ := pump.Strokes(volume, output)
		p.also(key+suffix, column, quantity.Strokes, strokes, strokeGap, func(w *Working) {
			why(w)
			w.in("output", "with efficiency", quantity.StrokeVolume, output)
			w.Source = "common practice"
			w.Note = strings.TrimSpace(w.Note + " A second person reproduces strokes before they are pumped by.")
		})
	}
}

// timed adds the time that a volume takes at a flow.
func (e *evaluation) timed(p *page, key string, volume, flow float64, missing gap) {
	minutes, _ := pump.Time(volume, flow)
	p.also(key+".time", "minutes", quantity.Time, minutes, missing, func(w *Working) {
		w.Formula = "time = volume / flow"
		w.in("volume", "to be pumped", quantity.Volume, volume)
		w.in("flow", "planned", quantity.Flow, flow)
		w.Source = "common practice"
	})
}
