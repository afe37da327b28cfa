package model

import "borewalk/model/quantity"

// Depth references of the prognosis.
const (
	FromRKB     = "RKB"
	FromMSL     = "MSL"
	FromMudline = "mudline"
)

func prognosisGroup() *Group {
	type d = declaration[Prognosis]
	return table("prognosis", "Prognosis", func(p *Plan) *Prognosis { return &p.Prognosis },
		d{Key: "depth_from", Label: "Depths from", Name: "Prognosis depths from", Choices: []string{FromRKB, FromMSL, FromMudline},
			Default: FromRKB, Help: "Where the true vertical depths of the prognosis and of the formation tops are reckoned from.",
			At: func(g *Prognosis) any { return &g.DepthFrom }},
		d{Key: "density_from", Label: "EMW from", Name: "Prognosis densities from", Choices: []string{FromRKB, FromMSL},
			Default: FromRKB, Help: "Where the equivalent mud weights of the prognosis are reckoned from. Mixing the two at shallow depth is an error larger than the window.",
			At: func(g *Prognosis) any { return &g.DensityFrom }},
		d{Key: "judge_below", Label: "Judged from", Name: "Margins judged from this far below mudline", Kind: quantity.Length, Range: "0 m to 300 m",
			Default: "60 m", Help: "Just below the seabed the window is almost nothing and cannot be judged.",
			At: func(g *Prognosis) any { return &g.JudgeBelow }},
	)
}

func windowGroup(prognosis *Group) *Group {
	type d = declaration[WindowRow]
	emw := func(key, label, name, help string, required bool, at func(*WindowRow) any) d {
		return d{Key: key, Label: label, Name: name, Kind: quantity.EMW, Range: "0.5 sg to 3 sg", Required: required, Brief: required, Help: help, At: at}
	}
	return list("row", "Prognosis row", "A depth of the pressure prognosis; straight lines in EMW between rows.", TopicWell, prognosis,
		func(p *Plan, _ Place) *[]WindowRow { return &p.Window },
		d{Key: "depth", Moves: WithRock, Brief: true, Label: "TVD", Name: "True vertical depth", Kind: quantity.Length, Range: "0 m to 15000 m", Required: true,
			Help: "From the reference that the prognosis names.", At: func(w *WindowRow) any { return &w.Depth }},
		emw("pore", "Pore", "Pore pressure", "Base case.", true, func(w *WindowRow) any { return &w.Pore }),
		emw("fracture", "Fracture", "Fracture pressure", "Or the least stress; not below pore.", true, func(w *WindowRow) any { return &w.Fracture }),
		emw("stability", "Stability", "Least mud for stability", "Blank: none.", false, func(w *WindowRow) any { return &w.Stability }),
		emw("overburden", "Overburden", "Overburden", "Blank: not known.", false, func(w *WindowRow) any { return &w.Overburden }),
		d{Key: "temperature", Label: "Temperature", Name: "Undisturbed temperature", Kind: quantity.Temperature, Range: "-2 C to 300 C",
			Help: "Blank: from the seabed temperature and the gradient.", At: func(w *WindowRow) any { return &w.Temperature }},
		d{Key: "note", Label: "Note", Name: "Note", Type: TextField, Help: "What is met at this depth.", At: func(w *WindowRow) any { return &w.Note }},
	)
}

// What a formation is isolated for.
const (
	NoZone           = "no"
	Hydrocarbons     = "hydrocarbons"
	AbnormalPressure = "abnormal pressure"
)

func formationGroup() *Group {
	type d = declaration[Formation]
	return list("formation", "Formation", "A formation top and its hazards.", TopicWell, nil,
		func(p *Plan, _ Place) *[]Formation { return &p.Formations },
		d{Key: "name", Brief: true, Label: "Formation", Name: "Formation", Type: TextField, Help: "Name of the formation.", At: func(f *Formation) any { return &f.Name }},
		d{Key: "top", Moves: WithRock, Brief: true, Label: "Top, TVD", Name: "Top, true vertical depth", Kind: quantity.Length, Range: "0 m to 15000 m", Required: true,
			Help: "From the same reference as the prognosis.", At: func(f *Formation) any { return &f.Top }},
		d{Key: "isolate", Label: "To isolate", Name: "Zone to be isolated by cement", Choices: []string{NoZone, Hydrocarbons, AbnormalPressure}, Default: NoZone,
			Help: "Cement is wanted above it behind the string that covers it; the rule set says how much.", At: func(f *Formation) any { return &f.Isolate }},
		d{Key: "rop", Label: "ROP", Name: "Rate of penetration in it", Kind: quantity.ROP, Range: "0.5 m/h to 200 m/h",
			Help: "For the time that drilling takes. Blank: the section's.", At: func(f *Formation) any { return &f.ROP }},
		d{Key: "hazard", Label: "Hazard", Name: "Hazard", Type: TextField, Help: "What may hurt there and how it shows.", At: func(f *Formation) any { return &f.Hazard }},
	)
}
