package model

import (
	"strings"

	"borewalk/model/quantity"
)

// Which density the sea has.
const (
	SeaAsEntered = "as entered"
	SeaByDepth   = "by depth"
)

func wellGroup() *Group {
	type d = declaration[Well]
	text := func(key, label, help string, at func(*Well) any) d {
		return d{Key: key, Label: label, Name: label, Type: TextField, Help: help, At: at}
	}
	return table("well", "Well", func(p *Plan) *Well { return &p.Well },
		text("name", "Well", "Name of the well.", func(w *Well) any { return &w.Name }),
		text("operator", "Operator", "Who is responsible for the well.", func(w *Well) any { return &w.Operator }),
		text("field", "Field", "Field or prospect.", func(w *Well) any { return &w.Field }),
		text("type", "Type", "Exploration, appraisal or development; vertical or deviated.", func(w *Well) any { return &w.Type }),
		text("revision", "Revision", "Revision of the programme that this plan follows.", func(w *Well) any { return &w.Revision }),
		text("author", "Author", "Who prepared this plan.", func(w *Well) any { return &w.Author }),
		text("date", "Date", "Date of this revision.", func(w *Well) any { return &w.Date }),
		d{Key: "units", Label: "Units", Name: "Unit set", Choices: []string{"metric", "field", "si"}, Default: "metric",
			Help: "Units shown when the plan is opened; entries keep the unit they were typed in.",
			At:   func(w *Well) any { return &w.UnitSet }},
		d{Key: "rules", Label: "Rule set", Name: "Rule set", Choices: RuleSets(), Default: "common practice",
			Help: "Rules that the plan is compared with; norway holds common practice alone so far. Local law, the operator's policies and approved programmes decide.",
			At:   func(w *Well) any { return &w.RuleSet }},
		d{Key: "air_gap", Label: "Air gap", Name: "Air gap, rotary above MSL", Kind: quantity.Length, Range: "5 m to 80 m",
			Default: "26 m", Required: true,
			Help: "Height of the rotary (RKB) above mean sea level at operating draught. Mudline from RKB = air gap + water depth.",
			At:   func(w *Well) any { return &w.AirGap }},
		d{Key: "water_depth", Label: "Water depth", Name: "Water depth, MSL", Kind: quantity.Length, Range: "20 m to 3700 m",
			Default: "350 m", Required: true,
			Help: "Water depth from mean sea level; correct a tagged depth by the tide of that minute.",
			At:   func(w *Well) any { return &w.WaterDepth }},
		d{Key: "tide_low", Label: "LAT below MSL", Name: "Lowest astronomical tide below MSL", Kind: quantity.Length,
			Range: "0 m to 9 m", Help: "For landing and space-out.", At: func(w *Well) any { return &w.TideLow }},
		d{Key: "tide_high", Label: "HAT above MSL", Name: "Highest astronomical tide above MSL", Kind: quantity.Length,
			Range: "0 m to 9 m", Help: "For landing and space-out.", At: func(w *Well) any { return &w.TideHigh }},
		d{Key: "seawater", Label: "Seawater", Name: "Seawater density", Kind: quantity.Density, Range: "1.0 sg to 1.06 sg",
			Default: "1.03 sg", Required: true, Help: "Mean density from the surface to the seabed.",
			At: func(w *Well) any { return &w.Seawater }},
		d{Key: "sea_density", Label: "Sea counts", Name: "Seawater density that counts", Choices: []string{SeaAsEntered, SeaByDepth}, Default: SeaAsEntered,
			Help: "By depth: the mean to the seabed by salinity, temperature and pressure (EOS-80) stands in place of the entry, everywhere.",
			At:   func(w *Well) any { return &w.SeaBy }},
		d{Key: "salinity", Label: "Salinity, psu", Name: "Salinity of the sea", Kind: quantity.Number, Range: "0 to 42", Default: "35",
			Help: "Practical salinity: about grams of salt in a kilogram. Blank: 35, the open ocean's.", At: func(w *Well) any { return &w.Salinity }},
		d{Key: "surface_temperature", Label: "Sea surface", Name: "Sea surface temperature", Kind: quantity.Temperature,
			Range: "-2 C to 40 C", Default: "12 C", Help: "Of the upper sea, and of the air over it; the sea cools from it to the seabed.",
			At: func(w *Well) any { return &w.SurfaceTemperature }},
		d{Key: "seabed_temperature", Label: "Seabed temp", Name: "Seabed temperature", Kind: quantity.Temperature,
			Range: "-2 C to 30 C", Default: "4 C", Help: "Start of the undisturbed temperature in the rock.",
			At: func(w *Well) any { return &w.SeabedTemperature }},
		d{Key: "thermocline", Label: "Thermocline", Name: "Depth of sea that is as cold as the seabed", Kind: quantity.Length, Range: "10 m to 3700 m",
			Help: "The sea cools in a straight line down to this depth below MSL and no further: about 1000 m in the open ocean, from memory. Blank: down to the seabed.",
			At:   func(w *Well) any { return &w.Thermocline }},
		d{Key: "geothermal_gradient", Label: "Geothermal", Name: "Geothermal gradient", Kind: quantity.TemperatureGradient,
			Range: "0.5 degC/100m to 10 degC/100m", Default: "3.0 degC/100m",
			Help: "Rise of the undisturbed temperature below the seabed, on true vertical depth.",
			At:   func(w *Well) any { return &w.GeothermalGradient }},
		d{Key: "rock_conductivity", Label: "Rock, W/(m K)", Name: "Conductivity of the rock, W/(m K)", Kind: quantity.Number, Range: "0.5 to 6", Default: "2.3",
			Help: "Of heat: clays 1.2 to 2, sandstone 2.5 to 4, salt 5; from memory. For circulating temperatures. Blank: 2.3.",
			At:   func(w *Well) any { return &w.RockConductivity }},
	)
}

// unitsGroup declares a choice of unit for every kind that has one, named in the file by the kind.
func unitsGroup() *Group {
	g := table[Units]("units", "Units", func(p *Plan) *Units { return &p.Units })
	for _, kind := range quantity.Kinds() {
		var symbols []string
		for _, u := range quantity.Units(kind) {
			symbols = append(symbols, u.ASCII())
		}
		if len(symbols) < 2 {
			continue
		}
		g.Fields = append(g.Fields, declaration[Units]{
			Key: strings.ReplaceAll(kind.String(), " ", "_"), Label: unitLabel(kind), Name: "Unit of " + kind.String(), Kind: kind, Choices: symbols,
			Help: "Overrides the unit set for this kind; blank follows the set. Nothing stored changes.",
			At:   func(u *Units) any { return &u[kind] },
		}.field())
	}
	return g
}

// unitLabel returns the label of a choice of unit: the name of the kind, or what the trade shortens it to.
func unitLabel(kind quantity.Kind) string {
	if short, long := map[quantity.Kind]string{
		quantity.LinearMass: "weight/length", quantity.EMW: "equiv. mud wt", quantity.Gradient: "press. gradient",
		quantity.TemperatureGradient: "temp. gradient", quantity.StrokeVolume: "vol. per stroke", quantity.ROP: "ROP",
	}[kind]; long {
		return short
	}
	return kind.String()
}

// System returns the units to show for a unit set, with the plan's own choices over it when own is true. Equivalent mud
// weights follow the density unless they have a choice of their own: the two are compared all day.
func (p *Plan) System(set quantity.Set, own bool) quantity.System {
	overrides := map[quantity.Kind]quantity.Unit{}
	for kind, text := range p.Units {
		if u, err := quantity.ParseUnit(text, quantity.Kind(kind)); own && text != "" && err == nil {
			overrides[quantity.Kind(kind)] = u
		}
	}
	if _, chosen := overrides[quantity.EMW]; !chosen && overrides[quantity.Density] != 0 {
		overrides[quantity.EMW] = overrides[quantity.Density]
	}
	return quantity.NewSystem(set, overrides)
}

func wellheadGroup() *Group {
	type d = declaration[Wellhead]
	return table("wellhead", "Wellhead", func(p *Plan) *Wellhead { return &p.Wellhead },
		d{Key: "lp_size", Label: "LP housing", Name: "Low-pressure housing size", Kind: quantity.Diameter, Range: "20 in to 48 in",
			Default: "36 in", Help: "Size of the conductor's housing.", At: func(w *Wellhead) any { return &w.LPSize }},
		d{Key: "lp_above_mudline", Label: "LP above seabed", Name: "Top of low-pressure housing above mudline", Kind: quantity.Length,
			Range: "0 m to 10 m", Default: "2.4 m", Required: true, Help: "The conductor hangs from here.",
			At: func(w *Wellhead) any { return &w.LPAboveMudline }},
		d{Key: "datum_above_mudline", Label: "HP above seabed", Name: "Top of high-pressure housing above mudline", Kind: quantity.Length,
			Range: "0 m to 12 m", Default: "3.2 m", Required: true,
			Help: "Wellhead datum (stick-up). Shoulders of the hangers are reckoned down from here.",
			At:   func(w *Wellhead) any { return &w.DatumAboveMudline }},
		d{Key: "rating", Label: "Rating", Name: "Wellhead rated pressure", Kind: quantity.Pressure, Range: "100 bar to 1500 bar",
			Default: "690 bar", Help: "Rated working pressure of the high-pressure housing.", At: func(w *Wellhead) any { return &w.Rating }},
		d{Key: "bore", Label: "Least bore", Name: "Least bore of the high-pressure housing", Kind: quantity.Diameter, Range: "10 in to 22 in",
			Default: "18.51 in", Required: true, Help: "What every later bit, connector and hanger must pass; take the wear bushing when it is in.",
			At: func(w *Wellhead) any { return &w.Bore }},
	)
}
