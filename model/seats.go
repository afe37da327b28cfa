package model

import "borewalk/model/quantity"

// Seats says with what margins casing seats are looked for.
type Seats struct {
	Trip, Fracture, Kick, Differential, Tolerance quantity.Value
}

func seatsGroup() *Group {
	type d = declaration[Seats]
	return table("seats", "Casing seats", func(p *Plan) *Seats { return &p.Seats },
		d{Key: "trip", Label: "Mud over pore", Name: "Mud over pore pressure, for casing seats", Kind: quantity.EMW, Range: "0 sg to 0.3 sg",
			Help: "Trip margin in the seats looked for. Blank: the limit of the trip margin.", At: func(s *Seats) any { return &s.Trip }},
		d{Key: "fracture", Label: "Mud under frac", Name: "Mud below fracture, for casing seats", Kind: quantity.EMW, Range: "0 sg to 0.3 sg",
			Help: "At the shoe and below. Blank: the limit of the static margin, or the law's.", At: func(s *Seats) any { return &s.Fracture }},
		d{Key: "kick", Label: "Kick at TD", Name: "Kick that the seat is to stand, as EMW at TD", Kind: quantity.EMW, Range: "0 sg to 0.3 sg",
			Help: "Shut in without volume: the shoe feels it times TD over its depth. Blank: none.", At: func(s *Seats) any { return &s.Kick }},
		d{Key: "tolerance", Label: "Kick tolerance", Name: "Least kick tolerance of a seat", Kind: quantity.Volume, Range: "0.5 m3 to 50 m3",
			Help: "With gas in a 12 1/4 in hole round 5 in pipe, for want of the hole's own. Blank: not asked for.", At: func(s *Seats) any { return &s.Tolerance }},
		d{Key: "differential", Label: "Over pore, most", Name: "Most pressure over pore, against sticking", Kind: quantity.Pressure, Range: "20 bar to 500 bar",
			Help: "Anywhere in the open hole. Blank: none.", At: func(s *Seats) any { return &s.Differential }},
	)
}
