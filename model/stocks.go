package model

import "borewalk/model/quantity"

// What is kept in stock.
const (
	Barite          = "barite"
	Bentonite       = "bentonite"
	DryCement       = "cement"
	LostCirculation = "lost circulation"
	DrillWater      = "drill water"
	BaseFluid       = "base fluid"
	KillMudStock    = "kill mud"
	OtherBulk       = "other bulk"
	OtherFluid      = "other fluid"
)

// Stock is an item that the rig has aboard, what of it stays there, and when more comes.
type Stock struct {
	Row
	Item, Name, Boat       string
	Mass, LeastMass        quantity.Value
	BoatMass, DailyMass    quantity.Value
	Volume, LeastVolume    quantity.Value
	BoatVolume, DailyFluid quantity.Value
	Lead                   quantity.Value
}

// Fluid reports whether the item is counted by volume.
func (s *Stock) Fluid() bool {
	switch s.Item {
	case DrillWater, BaseFluid, KillMudStock, OtherFluid:
		return true
	}
	return false
}

// Aboard returns what is aboard, by what the item is counted.
func (s *Stock) Aboard() quantity.Value { return s.counted(s.Mass, s.Volume) }

// Least returns what is to stay aboard.
func (s *Stock) Least() quantity.Value { return s.counted(s.LeastMass, s.LeastVolume) }

// Brought returns what the next boat brings.
func (s *Stock) Brought() quantity.Value { return s.counted(s.BoatMass, s.BoatVolume) }

// Daily returns what is used in a day whatever the section does.
func (s *Stock) Daily() quantity.Value { return s.counted(s.DailyMass, s.DailyFluid) }

func (s *Stock) counted(mass, volume quantity.Value) quantity.Value {
	if s.Fluid() {
		return volume
	}
	return mass
}

func stockGroup() *Group {
	type d = declaration[Stock]
	kept := func(fluid bool) func(*Plan, *Stock) string {
		return func(_ *Plan, s *Stock) string {
			if s.Fluid() == fluid {
				return ""
			}
			return "the item is not counted so"
		}
	}
	mass := func(key, label, name, help string, at func(*Stock) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicTime, Kind: quantity.Mass, Range: "0 t to 10000 t", Help: help, At: at, When: kept(false)}
	}
	volume := func(key, label, name, help string, at func(*Stock) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicTime, Kind: quantity.Volume, Range: "0 m3 to 20000 m3", Help: help, At: at, When: kept(true)}
	}
	const (
		aboard = "As it is now, where the well stands by the steps done. Blank, of barite: the rig's."
		least  = "What no plan may use. Blank: what practice keeps for trouble, by the section; a figure says how much."
		boat   = "Blank: none. It counts for what is needed after the boat's day."
		daily  = "On top of what mud and cement take. Blank: none."
	)
	g := list("stock", "Stock", "An item aboard: what the sections take of it, what is to stay, when more comes.", TopicTime, nil,
		func(p *Plan, _ Place) *[]Stock { return &p.Stocks },
		d{Key: "item", Label: "Item", Name: "What is kept in stock", Topic: TopicTime, Default: Barite,
			Choices: []string{Barite, Bentonite, DryCement, LostCirculation, DrillWater, BaseFluid, KillMudStock, OtherBulk, OtherFluid},
			Help:    "Bulk is counted by mass, fluids by volume.", At: func(s *Stock) any { return &s.Item }},
		d{Key: "name", Label: "Called", Name: "Name of the item", Topic: TopicTime, Type: TextField, Help: "Blank: what it is.", At: func(s *Stock) any { return &s.Name }},
		mass("mass", "Aboard", "Mass aboard", aboard, func(s *Stock) any { return &s.Mass }),
		volume("volume", "Aboard", "Volume aboard", aboard, func(s *Stock) any { return &s.Volume }),
		mass("least_mass", "Stays aboard", "Mass that stays aboard", least, func(s *Stock) any { return &s.LeastMass }),
		volume("least_volume", "Stays aboard", "Volume that stays aboard", least, func(s *Stock) any { return &s.LeastVolume }),
		mass("daily_mass", "Used in a day", "Mass used in a day", daily, func(s *Stock) any { return &s.DailyMass }),
		volume("daily_volume", "Used in a day", "Volume used in a day", daily, func(s *Stock) any { return &s.DailyFluid }),
		mass("boat_mass", "Boat brings", "Mass that the next boat brings", boat, func(s *Stock) any { return &s.BoatMass }),
		volume("boat_volume", "Boat brings", "Volume that the next boat brings", boat, func(s *Stock) any { return &s.BoatVolume }),
		d{Key: "boat", Label: "Boat comes", Name: "When the next boat comes", Topic: TopicTime, Type: TextField,
			Help: "As year-month-day and hour, 2027-03-01 06:00. Blank, or the plan without a beginning: what it brings counts at once.", At: func(s *Stock) any { return &s.Boat }},
		d{Key: "lead", Label: "Lead time", Name: "Time from order to the rig", Topic: TopicTime, Kind: quantity.Days, Range: "0 d to 365 d",
			Help: "Blank: no day to order by.", At: func(s *Stock) any { return &s.Lead }},
	)
	for _, key := range []string{"item", "mass", "volume"} {
		g.Field(key).Brief = true
	}
	return g
}

// Use is what a section is planned to take of stocks beside what follows from its mud and cement.
type Use struct {
	Barite, Bentonite, Cement, LostCirculation quantity.Value
	Water, Base, KillMud                       quantity.Value
}

// Of returns the planned use of an item.
func (u *Use) Of(item string) quantity.Value {
	switch item {
	case Barite:
		return u.Barite
	case Bentonite:
		return u.Bentonite
	case DryCement:
		return u.Cement
	case LostCirculation:
		return u.LostCirculation
	case DrillWater:
		return u.Water
	case BaseFluid:
		return u.Base
	case KillMudStock:
		return u.KillMud
	}
	return quantity.Value{}
}

func useGroup(section *Group) *Group {
	type d = declaration[Use]
	const besides = "On top of what follows from the section's mud and cement. Blank: none."
	mass := func(key, label, name string, at func(*Use) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicTime, Kind: quantity.Mass, Range: "0 t to 5000 t", Help: besides, At: at}
	}
	volume := func(key, label, name string, at func(*Use) any) d {
		return d{Key: key, Label: label, Name: name, Topic: TopicTime, Kind: quantity.Volume, Range: "0 m3 to 10000 m3", Help: besides, At: at}
	}
	return part("use", "Use of stocks", "What the section takes of the stocks beside what follows from its mud and cement.", TopicTime, section, func(s *Section) *Use { return &s.Use },
		mass("barite", "Barite", "Barite used besides", func(u *Use) any { return &u.Barite }),
		mass("bentonite", "Bentonite", "Bentonite used", func(u *Use) any { return &u.Bentonite }),
		mass("cement", "Cement", "Cement used besides", func(u *Use) any { return &u.Cement }),
		mass("lost_circulation", "Lost circulation", "Material against lost circulation used", func(u *Use) any { return &u.LostCirculation }),
		volume("water", "Drill water", "Drill water used besides", func(u *Use) any { return &u.Water }),
		volume("base", "Base fluid", "Base fluid used besides", func(u *Use) any { return &u.Base }),
		volume("kill_mud", "Kill mud", "Kill mud used", func(u *Use) any { return &u.KillMud }),
	)
}
