package model

import "borewalk/model/quantity"

// Riserless says what is pumped to the seabed while a section is drilled without a riser.
type Riserless struct {
	Sweep, SweepEvery         quantity.Value
	SpotFactor                quantity.Value
	StockDensity, StockVolume quantity.Value
	Connection                quantity.Value
	KillDensity, KillVolume   quantity.Value
}

func riserlessGroup(section *Group) *Group {
	type d = declaration[Riserless]
	g := part("riserless", "Riserless fluids", "What is pumped to the seabed while the hole is drilled without a riser.", TopicMud, section,
		func(s *Section) *Riserless { return &s.Riserless },
		d{Key: "sweep", Label: "Sweep", Name: "Volume of each viscous sweep", Topic: TopicMud, Kind: quantity.Volume, Range: "0.5 m3 to 100 m3",
			Help: "Pumped to clean the hole. Blank: none.", At: func(r *Riserless) any { return &r.Sweep }},
		d{Key: "sweep_every", Label: "Sweep every", Name: "Hole drilled between sweeps", Topic: TopicMud, Kind: quantity.Length, Range: "3 m to 200 m",
			Help: "A single or a stand; one more at TD.", At: func(r *Riserless) any { return &r.SweepEvery }},
		d{Key: "spot_factor", Label: "Spot volume", Name: "Spotted fluid, as a share of the new hole", Topic: TopicMud, Kind: quantity.Ratio, Range: "0 % to 400 %",
			Help: "Over the volume of the new hole in gauge; 110 to 150 % is common. Counts with a density of spot fluid.", At: func(r *Riserless) any { return &r.SpotFactor }},
		d{Key: "stock_density", Label: "Heavy stock", Name: "Density of the heavy mud kept in stock", Topic: TopicMud, Kind: quantity.Density, Range: "1.05 sg to 2.6 sg",
			Help: "Cut with seawater on the fly to the weighted mud. Blank: the weighted mud is kept as it is pumped.", At: func(r *Riserless) any { return &r.StockDensity }},
		d{Key: "stock_volume", Label: "Stock aboard", Name: "Volume of the stock aboard", Topic: TopicMud, Kind: quantity.Volume, Range: "0 m3 to 10000 m3",
			Help: "For weighted mud and, where it can be cut to it, spot fluid. Blank: not compared.", At: func(r *Riserless) any { return &r.StockVolume }},
		d{Key: "connection", Label: "Connection", Name: "Time of a connection with the pumps on", Topic: TopicMud, Kind: quantity.Time, Range: "0 min to 120 min",
			Help: "For each stand of the rig, survey and flow check counted, while weighted mud is pumped. Blank: none.", At: func(r *Riserless) any { return &r.Connection }},
		d{Key: "kill_density", Label: "Kill mud", Name: "Density of the kill mud aboard", Topic: TopicMud, Kind: quantity.Density, Range: "1.05 sg to 2.6 sg",
			Help: "Ready for a shallow flow. Blank: none.", At: func(r *Riserless) any { return &r.KillDensity }},
		d{Key: "kill_volume", Label: "Kill mud aboard", Name: "Volume of the kill mud aboard", Topic: TopicMud, Kind: quantity.Volume, Range: "0 m3 to 5000 m3",
			Help: "One to two hole volumes are common.", At: func(r *Riserless) any { return &r.KillVolume }},
	)
	onlyThere(g, ToSeabed, "counts without a riser only")
	return g
}

// onlyThere marks the fields of a table within a section as counting only with returns to one place.
func onlyThere(g *Group, returns, otherwise string) {
	for _, f := range g.Fields {
		f.inside = func(p *Plan, at Place) string {
			if p.Sections[at.Outer].Returns != returns {
				return otherwise
			}
			return ""
		}
	}
}
