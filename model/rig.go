package model

import "borewalk/model/quantity"

func rigGroup() *Group {
	type d = declaration[Rig]
	return table("rig", "Rig", func(p *Plan) *Rig { return &p.Rig },
		d{Key: "name", Label: "Rig", Name: "Rig", Type: TextField, Help: "Name of the rig.", At: func(r *Rig) any { return &r.Name }},
		d{Key: "kind", Label: "Kind", Name: "Kind of rig", Type: TextField, Help: "Semi-submersible or drillship; moored or dynamically positioned.",
			At: func(r *Rig) any { return &r.Kind }},
		d{Key: "hook_load", Label: "Hook load", Name: "Hook load rating", Kind: quantity.Force, Range: "100 tf to 2500 tf", Default: "600 tf",
			Help: "Static rating of derrick and hoist.", At: func(r *Rig) any { return &r.HookLoad }},
		d{Key: "block_weight", Label: "Blocks", Name: "Blocks and top drive", Kind: quantity.Force, Range: "0 tf to 200 tf", Default: "45 tf",
			Help: "Weight that the hook carries besides the string.", At: func(r *Rig) any { return &r.BlockWeight }},
		d{Key: "top_drive_torque", Label: "Top drive", Name: "Torque of the top drive", Kind: quantity.Torque, Range: "5 kN-m to 200 kN-m",
			Help: "Continuous, at the speed used for drilling. Blank: not compared.", At: func(r *Rig) any { return &r.TopDriveTorque }},
		d{Key: "stand_length", Label: "Stand", Name: "Stand length", Kind: quantity.Length, Range: "15 m to 45 m", Default: "28.4 m",
			Help: "Mean length of a stand of drill pipe.", At: func(r *Rig) any { return &r.StandLength }},
		d{Key: "riser_od", Label: "Riser OD", Name: "Riser OD", Kind: quantity.Diameter, Range: "10 in to 30 in", Default: "21 in",
			Help: "Main tube of the marine riser.", At: func(r *Rig) any { return &r.RiserOD }},
		d{Key: "riser_id", Label: "Riser ID", Name: "Riser ID", Kind: quantity.Diameter, Range: "10 in to 24 in", Default: "19.5 in",
			Required: true, Help: "Main tube of the marine riser.", At: func(r *Rig) any { return &r.RiserID }},
		d{Key: "riser_foam", Label: "Riser foam", Name: "Thickness of the buoyancy round the riser", Kind: quantity.Diameter, Range: "0 in to 20 in",
			Help: "Keeps the mud in the riser from cooling. Blank: a bare riser.", At: func(r *Rig) any { return &r.RiserFoam }},
		d{Key: "bop_bore", Label: "BOP bore", Name: "BOP bore", Kind: quantity.Diameter, Range: "10 in to 24 in", Default: "18.75 in",
			Required: true, Help: "Bore of the subsea stack.", At: func(r *Rig) any { return &r.BOPBore }},
		d{Key: "bop_height", Label: "BOP height", Name: "BOP stack above wellhead datum", Kind: quantity.Length, Range: "3 m to 30 m",
			Default: "12.5 m", Required: true, Help: "The riser reaches from the rotary down to the top of the stack.",
			At: func(r *Rig) any { return &r.BOPHeight }},
		d{Key: "bop_rating", Label: "BOP rating", Name: "Ram rated pressure", Kind: quantity.Pressure, Range: "100 bar to 1800 bar",
			Default: "1034 bar", Help: "Rated working pressure of the rams.", At: func(r *Rig) any { return &r.BOPRating }},
		d{Key: "annular_rating", Label: "Annular rating", Name: "Annular rated pressure", Kind: quantity.Pressure, Range: "100 bar to 1500 bar",
			Default: "690 bar", Help: "Rated working pressure of the annular preventer.", At: func(r *Rig) any { return &r.AnnularRating }},
		d{Key: "choke_id", Label: "Choke line ID", Name: "Choke line ID", Kind: quantity.Diameter, Range: "2 in to 6 in", Default: "3 in",
			Help: "From the stack to the manifold.", At: func(r *Rig) any { return &r.ChokeID }},
		d{Key: "choke_length", Moves: WithRiser, Label: "Choke line", Name: "Choke line length", Kind: quantity.Length, Range: "20 m to 4500 m",
			Help: "Blank: as long as the riser.", At: func(r *Rig) any { return &r.ChokeLength }},
		d{Key: "kill_id", Label: "Kill line ID", Name: "Kill line ID", Kind: quantity.Diameter, Range: "2 in to 6 in", Default: "3 in",
			Help: "From the stack to the manifold.", At: func(r *Rig) any { return &r.KillID }},
		d{Key: "kill_length", Moves: WithRiser, Label: "Kill line", Name: "Kill line length", Kind: quantity.Length, Range: "20 m to 4500 m",
			Help: "Blank: as long as the riser.", At: func(r *Rig) any { return &r.KillLength }},
		d{Key: "booster_id", Label: "Booster ID", Name: "Booster line ID", Kind: quantity.Diameter, Range: "2 in to 7 in", Default: "4 in",
			Help: "Line that pumps mud into the foot of the riser.", At: func(r *Rig) any { return &r.BoosterID }},
		d{Key: "booster_length", Moves: WithRiser, Label: "Booster line", Name: "Booster line length", Kind: quantity.Length, Range: "20 m to 4500 m",
			Help: "Blank: as long as the riser.", At: func(r *Rig) any { return &r.BoosterLength }},
		d{Key: "trip_tank", Label: "Trip tank", Name: "Trip tank", Kind: quantity.Volume, Range: "0 m3 to 50 m3", Default: "8 m3",
			Help: "Volume of the trip tank.", At: func(r *Rig) any { return &r.TripTank }},
		d{Key: "active_pits", Label: "Active pits", Name: "Active pits", Kind: quantity.Volume, Range: "0 m3 to 2000 m3", Default: "130 m3",
			Help: "Volume of the active pits.", At: func(r *Rig) any { return &r.ActivePits }},
		d{Key: "reserve_pits", Label: "Reserve pits", Name: "Reserve pits", Kind: quantity.Volume, Range: "0 m3 to 5000 m3", Default: "260 m3",
			Help: "Volume of the reserve pits.", At: func(r *Rig) any { return &r.ReservePits }},
		d{Key: "barite", Label: "Weighting mat.", Name: "Weighting material aboard", Kind: quantity.Mass, Range: "0 t to 5000 t",
			Help: "Barite as a rule. Blank: not compared.", At: func(r *Rig) any { return &r.Barite }},
		d{Key: "weighting_density", Label: "Its density", Name: "Density of the weighting material", Kind: quantity.Density, Range: "2.6 sg to 5.5 sg", Default: "4.2 sg",
			Help: "Absolute: barite 4.2 or 4.1 sg, haematite 5.05, calcium carbonate 2.7.", At: func(r *Rig) any { return &r.WeightingDensity }},
		d{Key: "weighting_rate", Label: "Mixing rate", Name: "Rate at which weighting material is mixed", Kind: quantity.MassRate, Range: "0.5 t/h to 200 t/h",
			Help: "What hoppers and surge tank can do and go on doing. Blank: no times.", At: func(r *Rig) any { return &r.WeightingRate }},
		d{Key: "unit_rate", Label: "Cement unit", Name: "Highest rate of the cement unit", Kind: quantity.CementRate, Range: "0.1 m3/min to 10 m3/min",
			Help: "Mixing and pumping. Blank: not compared.", At: func(r *Rig) any { return &r.UnitRate }},
		d{Key: "unit_pressure", Label: "Unit pressure", Name: "Highest pressure of the cement unit", Kind: quantity.Pressure, Range: "50 bar to 1500 bar",
			Help: "Of unit, lines and head, the weakest. Blank: not compared.", At: func(r *Rig) any { return &r.UnitPressure }},
		d{Key: "heave", Label: "Heave", Name: "Heave, up and down", Kind: quantity.Length, Range: "0 m to 10 m",
			Help: "How far the rig goes up, and as far down, from where it floats, at the most when rams may be shut. Blank: none.", At: func(r *Rig) any { return &r.Heave }},
		d{Key: "surface_length", Label: "Surface lines", Name: "Equivalent length of the surface lines", Kind: quantity.Length, Range: "0 m to 1000 m",
			Help: "Standpipe, hose, top drive and kelly cock, as one pipe of the ID below. Blank: they take no pressure.", At: func(r *Rig) any { return &r.SurfaceLength }},
		d{Key: "surface_id", Label: "Surface lines ID", Name: "Equivalent ID of the surface lines", Kind: quantity.Diameter, Range: "1 in to 8 in",
			Help: "Of the pipe that stands for them.", At: func(r *Rig) any { return &r.SurfaceID }},
	)
}

// Pump actions.
const (
	Triplex = "triplex"
	Duplex  = "duplex"
)

func pumpGroup(rig *Group) *Group {
	type d = declaration[Pump]
	return list("pump", "Pump", "Mud pumps of one liner size.", TopicWell, rig, func(p *Plan, _ Place) *[]Pump { return &p.Pumps },
		d{Key: "count", Brief: true, Label: "Pumps", Name: "Number of these pumps", Kind: quantity.Count, Range: "1 to 12", Default: "3",
			Required: true, Help: "How many pumps with this liner are on line.", At: func(u *Pump) any { return &u.Count }},
		d{Key: "action", Brief: true, Label: "Action", Name: "Pump action", Choices: []string{Triplex, Duplex}, Default: Triplex,
			Help: "Triplex single acting, or duplex double acting.", At: func(u *Pump) any { return &u.Action }},
		d{Key: "liner", Brief: true, Label: "Liner", Name: "Liner", Kind: quantity.Diameter, Range: "3 in to 9 in", Default: "6 in",
			Required: true, Help: "A change of liner changes every stroke count.", At: func(u *Pump) any { return &u.Liner }},
		d{Key: "rod", Label: "Rod", Name: "Piston rod", Kind: quantity.Diameter, Range: "0 in to 5 in",
			Help: "Of a duplex pump.", At: func(u *Pump) any { return &u.Rod },
			When: func(_ *Plan, u *Pump) string {
				if u.Action != Duplex {
					return "counts for a duplex pump only"
				}
				return ""
			}},
		d{Key: "stroke", Brief: true, Label: "Stroke", Name: "Stroke", Kind: quantity.Diameter, Range: "6 in to 24 in", Default: "12 in",
			Required: true, Help: "Length of the stroke.", At: func(u *Pump) any { return &u.Stroke }},
		d{Key: "efficiency", Label: "Efficiency", Name: "Volumetric efficiency", Kind: quantity.Ratio, Range: "50 % to 100 %", Default: "97 %",
			Required: true, Help: "Measured on the last job that bumped, or by a timed pump test.", At: func(u *Pump) any { return &u.Efficiency }},
		d{Key: "max_rate", Label: "Most strokes", Name: "Highest stroke rate", Kind: quantity.StrokeRate, Range: "20 spm to 200 spm",
			Default: "110 spm", Required: true, Help: "Strokes per minute that the pump can keep.", At: func(u *Pump) any { return &u.MaxRate }},
		d{Key: "pressure_limit", Label: "Liner limit", Name: "Liner pressure limit", Kind: quantity.Pressure, Range: "50 bar to 600 bar",
			Help: "Relief valve setting for this liner.", At: func(u *Pump) any { return &u.PressureLimit }},
	)
}

func linerGroup(rig *Group) *Group {
	type d = declaration[Liner]
	return list("liner", "Liner on board", "A liner that all mud pumps can be given instead.", TopicWell, rig, func(p *Plan, _ Place) *[]Liner { return &p.Liners },
		d{Key: "size", Brief: true, Label: "Liner", Name: "Liner", Kind: quantity.Diameter, Range: "3 in to 9 in", Required: true,
			Help: "A smaller liner stands more pressure and gives less flow.", At: func(l *Liner) any { return &l.Size }},
		d{Key: "pressure_limit", Brief: true, Label: "Liner limit", Name: "Liner pressure limit", Kind: quantity.Pressure, Range: "50 bar to 600 bar",
			Help: "Relief valve setting for this liner. Blank: its pressure is not compared.", At: func(l *Liner) any { return &l.PressureLimit }},
	)
}
