package sheet

import (
	"fmt"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// cementCard makes the card of a cement job; why says what keeps it from being made.
func (p *printer) cementCard(i int) (c card, why string) {
	job, why, mend := calc.Play(p.plan, i, calc.AsPlanned)
	if why != "" {
		return card{}, p.toMend(why, mend)
	}
	c = card{section: i, title: "Cement card: " + p.wellName() + ", section " + fmt.Sprint(i+1)}
	c.tables = append(c.tables, p.fluidsTable(i, &job), p.scheduleTable(&job), p.countTable(i), p.timesTable(i), p.topsTable(i), p.rockTable(i, &job))
	c.notes = p.cementNotes(i, &job)
	return c, ""
}

// value returns a figure of a section, not a number where it is blank or not there.
func (p *printer) value(i int, key string) float64 {
	if f, ok := p.result.Sheet(i).Find(key); ok && f.OK {
		return f.Value
	}
	return nothing()
}

// fluidsTable lists what is mixed and pumped.
func (p *printer) fluidsTable(i int, job *calc.Job) table {
	t := table{title: "Fluids", rowHead: "Fluid", columns: []heading{
		{"density", quantity.Density}, {"volume", quantity.Volume}, {"dry", quantity.Mass}, {"sacks", quantity.Count}, {"mix fluid", quantity.Volume}, {"rate", quantity.CementRate}}}
	section := &p.plan.Sections[i]
	spacers, slurries := 0, 0
	var behind line
	for _, f := range job.Fluids {
		l := line{name: f.Name, values: []float64{f.Density, nothing(), nothing(), nothing(), nothing(), nothing()}}
		switch f.Role {
		case calc.SpacerRole:
			spacers++
			l.values[1], l.values[5] = p.value(i, fmt.Sprintf("cement.spacer.%d.volume", spacers)), given(section.Cement.MixRate)
		case calc.CementRole:
			slurries++
			key := fmt.Sprintf("cement.slurry.%d.", slurries)
			l.values = []float64{f.Density, p.value(i, key+"volume"), p.value(i, key+"dry"), p.value(i, key+"sacks"), p.value(i, key+"mix"), given(section.Cement.MixRate)}
		case calc.DisplacerRole:
			l.values[1], l.values[5] = p.value(i, "cement.displacement"), given(section.Cement.DisplaceRate)
			behind = l
			continue
		default:
			continue
		}
		t.rows = append(t.rows, l)
	}
	t.rows = append(t.rows, behind)
	return t
}

// given returns an entry's value, not a number when it is blank.
func given(v quantity.Value) float64 {
	if v.IsSet() {
		return v.SI
	}
	return nothing()
}

// scheduleTable lists the events of a job with what the gauges and counters show then. Volumes are counted from the start,
// and from the start of displacement, where the strokes begin at zero.
func (p *printer) scheduleTable(job *calc.Job) table {
	t := table{title: "Schedule, what counters and gauges show just before each event" + static(job), rowHead: "Event", columns: []heading{
		{"pumped", quantity.Volume}, {"displaced", quantity.Volume}, {"strokes", quantity.Strokes}, {"time", quantity.Time}, {"then at", quantity.CementRate},
		{"pump", quantity.Pressure}, {"returns", quantity.CementRate}, {"returned", quantity.Volume}}}
	for _, event := range job.Events {
		f := &job.Frames[event.Frame]
		l := line{name: event.Name, values: []float64{f.Pumped, f.Behind, f.Strokes, f.Time, event.Rate, f.Pressure, f.Returns, f.Returned}}
		if f.Behind == 0 {
			l.values[1] = nothing()
		}
		if f.Strokes == 0 {
			l.values[2] = nothing()
		}
		if !job.Dynamic {
			l.values[3], l.values[6] = nothing(), nothing()
		}
		if f.Level > 0 {
			l.note = "string empty down to " + quantity.FormatUnit(f.Level, quantity.Length, p.System.Unit(quantity.Length))
		}
		t.rows = append(t.rows, l)
	}
	return t
}

// static marks a heading when no friction is counted.
func static(job *calc.Job) string {
	if job.Dynamic {
		return ""
	}
	return ", at rest: friction not counted"
}

// timesTable lists how old each slurry is at the end and what is left of its thickening time, and the wait.
func (p *printer) timesTable(i int) table {
	t := table{title: "Times", rowHead: "Of", columns: []heading{{"at the end", quantity.Hours}, {"left", quantity.Hours}}}
	for k, row := range p.plan.Sections[i].Slurries {
		key := fmt.Sprintf("cement.slurry.%d.", k+1)
		t.rows = append(t.rows, line{name: own(row.Name, "slurry", k) + ", thickening", values: []float64{p.value(i, key+"age"), p.value(i, key+"left")}})
	}
	t.rows = append(t.rows,
		line{name: "job", values: []float64{p.value(i, "cement.time"), nothing()}},
		line{name: "wait on cement, over 500 psi", values: []float64{given(p.plan.Sections[i].Cement.Wait), p.value(i, "cement.wait.over")}})
	return t
}

// countTable lists the volumes that are counted to, and the pressures at the end.
func (p *printer) countTable(i int) table {
	t := table{title: "Displacement and decisions", rowHead: "To", columns: []heading{{"volume", quantity.Volume}, {"strokes", quantity.Strokes}, {"pressure", quantity.Pressure}, {"in gauge", quantity.Pressure}}}
	add := func(name, key, pressure, note string) {
		l := line{name: name, values: []float64{p.value(i, key), p.value(i, key+".strokes"), p.value(i, pressure), p.value(i, pressure+".gauge")}, note: note}
		if finite(l.values[0]) || finite(l.values[2]) {
			t.rows = append(t.rows, l)
		}
	}
	add("test lines, before the job", "", "cement.pump.test", "")
	if p.plan.Sections[i].Cement.Placement == model.ByInnerString {
		add("casing top", "cement.displacement.running", "", "")
		add("stop, end of the job", "cement.displacement", "cement.pump.final", "no plug tells the end: one counts, another checks")
	} else {
		add("dart in the plug, string full", "cement.displacement.running", "", "an empty string shows it earlier and without pressure: the count is not set back")
		add("slow down", "cement.displacement.slow", "", "")
		add("bump", "cement.displacement", "cement.pump.bump", "then bleed off and watch for flow back")
		add("no bump: stop", "cement.displacement.most", "", "do not chase the plug")
	}
	add("reverse out, at least", "cement.reverse_out", "", "")
	add("float holds", "", "cement.float", "")
	add("highest pump pressure", "", "cement.pump.most", "")
	return t
}

// topsTable lists the tops as planned, in gauge and with losses.
func (p *printer) topsTable(i int) table {
	t := table{title: "Tops, along hole", rowHead: "Fluid", columns: []heading{{"planned", quantity.Length}, {"hole in gauge", quantity.Length}, {"with losses", quantity.Length}}}
	add := func(name, key string) {
		t.rows = append(t.rows, line{name: name, values: []float64{p.value(i, key), p.value(i, key+".gauge"), p.value(i, key+".lost")}})
	}
	for k, row := range p.plan.Sections[i].Spacers {
		add(own(row.Name, "spacer", k), fmt.Sprintf("cement.spacer.%d.top", k+1))
	}
	for k, row := range p.plan.Sections[i].Slurries {
		add(own(row.Name, "slurry", k), fmt.Sprintf("cement.slurry.%d.top", k+1))
	}
	return t
}

func own(name, kind string, k int) string {
	if name == "" {
		return fmt.Sprintf("%s %d", kind, k+1)
	}
	return name
}

// rockTable lists the equivalent densities at the depths that are followed.
func (p *printer) rockTable(i int, job *calc.Job) table {
	t := table{title: "On the rock, from RKB" + static(job), rowHead: "Depth", columns: []heading{
		{"along hole", quantity.Length}, {"highest", quantity.EMW}, {"in gauge", quantity.EMW}, {"after the job", quantity.EMW}, {"limit", quantity.EMW}}}
	last := &job.Frames[len(job.Frames)-1]
	for k, at := range job.Points {
		l := line{name: at.Name, values: []float64{at.MD, nothing(), p.value(i, at.Key+".gauge"), last.EMW[k], at.Fracture}}
		for _, f := range job.Frames {
			if !(f.EMW[k] <= l.values[1]) {
				l.values[1] = f.EMW[k]
			}
		}
		if at.Fracture == 0 {
			l.values[4] = nothing()
		}
		t.rows = append(t.rows, l)
	}
	return t
}

// cementNotes are the job's findings beyond limits met, the cautions that go with it, and who reckoned it.
func (p *printer) cementNotes(i int, job *calc.Job) []part {
	list := p.beyondMet("Findings of the cement job", i, p.entersIn(model.TopicCement))
	cautions := part{title: "Cautions", remarks: []string{
		"Lines, head, plugs and their order: two people check them before the job. The operator's procedure rules.",
		"Volumes: lines from the pump to the rotary, couplings and eccentricity are left out. Strokes hold for the liners and efficiency entered.",
		"Slurry: tested on rig samples of cement, water and additives, at the temperature and pressure of the job. Gelling cement hands on " +
			"less than its column: flow after cementing is not modelled.",
		"Returns: fluids run ahead of the pump while the inside is heavier, and fall behind it later. What differs from the returns of " +
			"this schedule is a gain or a loss until shown otherwise.",
		"Hole: the schedule is for the hole as planned, excess counted. In a hole in gauge the cement stands higher and presses harder.",
	}}
	if p.plan.Sections[i].Returns == model.ToSeabed {
		cautions.remarks = append(cautions.remarks, "Returns at the seabed: cement at the housing is watched for and washed off while it is soft.")
	}
	if p.plan.Sections[i].Completion == model.WithLiner {
		cautions.remarks = append(cautions.remarks, "Liner: releasing, pulling clear of the cement and reversing out come after the bump and within the thickening time; "+
			"pull above the top with the hole in gauge first.")
	}
	if !job.Dynamic {
		cautions.remarks = append(cautions.remarks, "Friction is not known for every fluid or rate: pressures are those at rest.")
	}
	return []part{list, cautions, signed()}
}
