package model

import "borewalk/model/quantity"

// Rates says how fast the work of a section goes.
type Rates struct {
	TripCased, TripOpen, Casing, DrillOut quantity.Value
	Connection, BHA, RigUp, Logging       quantity.Value
	CleanUp, Low, High                    quantity.Value
}

// Schedule says for the whole well when it begins, what is lost to weather, how long the stack takes, and what a day costs.
type Schedule struct {
	Start, Currency                        string
	WeatherLow, WeatherLikely, WeatherHigh quantity.Value
	StackPrepare, RiserJoint, RiserRate    quantity.Value
	StackTest                              quantity.Value
	DayRate                                quantity.Value
}

// What blank rates mean: common practice, from memory.
const (
	UsualTripCased  = 20.0 // stands per hour
	UsualTripOpen   = 12.0
	UsualCasing     = 12.0 // joints per hour
	UsualRiserRate  = 3.0  // joints per hour
	UsualCleanUp    = 2.0  // bottoms-up
	UsualLow        = 0.85 // of the likely duration
	UsualHigh       = 1.4
	UsualRiserJoint = 22.86 // m: 75 ft
)

func ratesGroup(section *Group) *Group {
	type d = declaration[Rates]
	const memory = " (common practice, from memory)."
	count := func(key, label, name, limits, help string, at func(*Rates) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicTime, Kind: quantity.Number, Range: limits, Help: help, At: at}
	}
	hours := func(key, label, name, help string, at func(*Rates) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicTime, Kind: quantity.Hours, Range: "0 h to 500 h", Help: help, At: at}
	}
	return part("rates", "Rates", "How fast the work of the section goes; durations of its steps follow.", TopicTime, section, func(s *Section) *Rates { return &s.Rates },
		count("trip_cased", "Stands/h, cased", "Stands of drill pipe per hour in cased hole or open water", "1 to 100", "Blank: 20"+memory, func(r *Rates) any { return &r.TripCased }),
		count("trip_open", "Stands/h, open", "Stands of drill pipe per hour in open hole", "1 to 100", "Blank: 12"+memory, func(r *Rates) any { return &r.TripOpen }),
		count("casing", "Joints/h", "Joints of casing per hour", "0.5 to 60", "Blank: 12"+memory, func(r *Rates) any { return &r.Casing }),
		d{Key: "drill_out", Label: "Drill-out rate", Name: "Rate of drilling plugs, float and cement", Topic: TopicTime, Kind: quantity.ROP, Range: "0.5 m/h to 200 m/h",
			Help: "Blank: 8 m/h" + memory, At: func(r *Rates) any { return &r.DrillOut }},
		d{Key: "connection", Label: "Connection", Name: "Time without drilling at each connection", Topic: TopicTime, Kind: quantity.Time, Range: "0 min to 120 min",
			Help: "With survey and reaming. Blank: 10 min" + memory, At: func(r *Rates) any { return &r.Connection }},
		hours("bha", "BHA handling", "Making up the BHA, and laying it down, each", "Blank: 4 h"+memory, func(r *Rates) any { return &r.BHA }),
		hours("rig_up", "Rig up casing", "Rigging up for casing, and down after it, each", "Blank: 3 h"+memory, func(r *Rates) any { return &r.RigUp }),
		hours("logging", "Logging", "Logging on wire after the bit is out", "Blank: none, the step is left out.", func(r *Rates) any { return &r.Logging }),
		count("clean_up", "Bottoms-up at TD", "Circulations from bottom before pulling out", "0 to 20", "Blank: 2"+memory, func(r *Rates) any { return &r.CleanUp }),
		d{Key: "low", Label: "Low, of likely", Name: "Short duration as a share of the likely one", Topic: TopicTime, Kind: quantity.Ratio, Range: "10 % to 100 %",
			Help: "Of steps that have no low duration of their own. Blank: 85 %" + memory, At: func(r *Rates) any { return &r.Low }},
		d{Key: "high", Label: "High, of likely", Name: "Long duration as a share of the likely one", Topic: TopicTime, Kind: quantity.Ratio, Range: "100 % to 1000 %",
			Help: "Of steps that have no high duration of their own. Blank: 140 %" + memory, At: func(r *Rates) any { return &r.High }},
	)
}

func scheduleGroup() *Group {
	type d = declaration[Schedule]
	const memory = " (common practice, from memory)."
	weather := func(key, label, name, help string, at func(*Schedule) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicTime, Kind: quantity.Ratio, Range: "0 % to 90 %", Help: help, At: at}
	}
	g := table("time", "Time", func(p *Plan) *Schedule { return &p.Schedule },
		d{Key: "start", Label: "Begins", Name: "When the first section begins", Topic: TopicTime, Type: TextField,
			Help: "As year-month-day and hour, 2027-03-01 06:00. Blank: hours and days only, no dates.", At: func(t *Schedule) any { return &t.Start }},
		weather("weather_low", "Weather, low", "Share of the time lost to weather, low", "Blank: the likely one.", func(t *Schedule) any { return &t.WeatherLow }),
		weather("weather", "Weather, likely", "Share of the time lost to weather, likely", "Of all time on the well: 20 % makes four days out of five. Blank: none.", func(t *Schedule) any { return &t.WeatherLikely }),
		weather("weather_high", "Weather, high", "Share of the time lost to weather, high", "Blank: the likely one.", func(t *Schedule) any { return &t.WeatherHigh }),
		d{Key: "stack_prepare", Label: "BOP, prepare", Name: "Moving the BOP to the moonpool and testing it there", Topic: TopicTime, Kind: quantity.Hours, Range: "0 h to 500 h",
			Help: "Stump test as far as it holds up the rig. Blank: 8 h" + memory, At: func(t *Schedule) any { return &t.StackPrepare }},
		d{Key: "riser_joint", Label: "Riser joint", Name: "Length of a riser joint", Topic: TopicTime, Kind: quantity.Length, Range: "5 m to 40 m",
			Help: "Blank: 75 ft" + memory, At: func(t *Schedule) any { return &t.RiserJoint }},
		d{Key: "riser_rate", Label: "Riser joints/h", Name: "Riser joints run per hour", Topic: TopicTime, Kind: quantity.Number, Range: "0.2 to 10",
			Help: "Blank: 3" + memory, At: func(t *Schedule) any { return &t.RiserRate }},
		d{Key: "stack_test", Label: "BOP test", Name: "Testing the BOP on the wellhead", Topic: TopicTime, Kind: quantity.Hours, Range: "0 h to 200 h",
			Help: "With running and pulling the test tool. Blank: 10 h" + memory, At: func(t *Schedule) any { return &t.StackTest }},
		d{Key: "day_rate", Label: "Cost of a day", Name: "Cost of a day", Topic: TopicTime, Kind: quantity.Count, Range: "0 to 1000000000",
			Help: "Rig and services together. Blank: no cost.", At: func(t *Schedule) any { return &t.DayRate }},
		d{Key: "currency", Label: "Currency", Name: "Currency of the cost", Topic: TopicTime, Type: TextField, Help: "Such as USD.", At: func(t *Schedule) any { return &t.Currency }},
	)
	g.Topic, g.Help = TopicTime, "When the well begins, what is lost to weather, how long the BOP takes, what a day costs."
	return g
}
