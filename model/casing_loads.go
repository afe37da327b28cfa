package model

import "borewalk/model/quantity"

// What stands outside a string when it is loaded from inside.
const (
	OutsideSea  = "seawater"
	OutsidePore = "pore"
)

// What stands outside a string when it is loaded from outside.
const (
	OutsideMud      = "mud"
	OutsideMixWater = "mix water"
)

// How far up gas may press on a string.
const (
	GasFull      = "full column"
	GasToFailure = "shoe fails"
)

// Loads says what the string of a section is designed for, and how its hole may load the string above.
type Loads struct {
	OutsideBurst, OutsideCollapse string
	TestPressure, TestDensity     quantity.Value
	Emptied                       quantity.Value
	PackerFluid, TubingPressure   quantity.Value
	Overpull, Peak, Dogleg        quantity.Value
	SurgeMargin                   quantity.Value

	// Of the hole, on the strings above.
	LossZone                  quantity.Value
	GasGradient               quantity.Value
	GasLimit                  string
	KickVolume, KickIntensity quantity.Value
}

// loadsGroup declares the load cases of the string that a section is finished with.
func loadsGroup(section *Group) *Group {
	return part("loads", "Loads on the string", "What the string of this section is designed for.", TopicCasing, section,
		func(s *Section) *Loads { return &s.Loads }, stringLoadFields()...)
}

// holeLoadsGroup declares what the hole of a section lays on the strings above it.
func holeLoadsGroup(section *Group) *Group {
	return part("hole_loads", "Loads of this hole", "What this hole may lay on the strings above it.", TopicCasing, section,
		func(s *Section) *Loads { return &s.Loads }, holeLoadFields()...)
}

// of turns a condition on a section into one for the tables within its row.
func of(when func(*Plan, *Section) string) func(*Plan, Place) string {
	return func(p *Plan, at Place) string { return when(p, &p.Sections[at.Outer]) }
}

func stringLoadFields() []declaration[Loads] {
	type d = declaration[Loads]
	produces := func(_ *Plan, s *Section) string {
		if s.Completion == OpenHole || s.Purpose != Production {
			return "counts for production strings only"
		}
		return ""
	}
	return []d{
		{Key: "test_pressure", Label: "Test pressure", Name: "Pressure test of the string, at the rig", Topic: TopicCasing, Kind: quantity.Pressure, Range: "0 bar to 1500 bar", Inside: of(cased),
			Help: "At the pump, on top of a column of test fluid from the rotary. Blank: no test is compared.", At: func(l *Loads) any { return &l.TestPressure }},
		{Key: "test_density", Label: "Test fluid", Name: "Density of the test fluid", Topic: TopicCasing, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg", Inside: of(cased),
			Help: "Blank: what displaced the cement, else the drilling fluid.", At: func(l *Loads) any { return &l.TestDensity }},
		{Key: "outside_burst", Label: "Outside, burst", Name: "Outside, for burst", Topic: TopicCasing, Choices: []string{OutsideSea, OutsidePore},
			Default: OutsideSea, Inside: of(cased),
			Help: "Stands against pressure inside. Seawater: its gradient from MSL, at the wellhead and below. Pore: the prognosis' pore pressure below the mudline.",
			At:   func(l *Loads) any { return &l.OutsideBurst }},
		{Key: "outside_collapse", Label: "Outside, coll.", Name: "Outside, for collapse", Topic: TopicCasing, Choices: []string{OutsideMud, OutsideMixWater},
			Default: OutsideMud, Inside: of(cased),
			Help: "Presses on the string. Mud: the fluid that the string was run in, to the shoe. Mix water: that above the cement, and the slurries' mix water below its top. While cementing the slurries count.",
			At:   func(l *Loads) any { return &l.OutsideCollapse }},
		{Key: "emptied", Moves: WithWell, Label: "Emptied to", Name: "May be emptied down to, along hole", Topic: TopicCasing, Kind: quantity.Length, Range: "1 m to 15000 m", Inside: of(cased),
			Help: "Nothing inside above it: the shoe for full evacuation. Blank: not compared.", At: func(l *Loads) any { return &l.Emptied }},
		{Key: "packer_fluid", Label: "Packer fluid", Name: "Density of the packer fluid", Topic: TopicCasing, Kind: quantity.Density, Range: "0.7 sg to 2.6 sg", Inside: of(produces),
			Help: "For a tubing leak near the wellhead: shut-in pressure on top of this fluid. Blank: not compared.", At: func(l *Loads) any { return &l.PackerFluid }},
		{Key: "tubing_pressure", Label: "Shut-in tubing", Name: "Shut-in tubing pressure at the wellhead", Topic: TopicCasing, Kind: quantity.Pressure, Range: "0 bar to 1500 bar", Inside: of(produces),
			Help: "Blank: pore pressure at the TD of the well less a column of gas.", At: func(l *Loads) any { return &l.TubingPressure }},
		{Key: "overpull", Label: "Overpull", Name: "Overpull on the string, drag included", Topic: TopicCasing, Kind: quantity.Force, Range: "0 tf to 500 tf", Inside: of(cased),
			Help: "What may be pulled over the buoyed weight while it is run or stuck. Blank: 50 tf (common practice, from memory).", At: func(l *Loads) any { return &l.Overpull }},
		{Key: "peak_speed", Label: "Peak speed", Name: "Peak speed of a joint while running", Topic: TopicCasing, Kind: quantity.Velocity, Range: "0 m/s to 5 m/s", Inside: of(cased),
			Help: "Stopped at once it gives the shock load. Blank: 1 m/s (from memory).", At: func(l *Loads) any { return &l.Peak }},
		{Key: "dogleg", Label: "Least dogleg", Name: "Dogleg to count with at least", Topic: TopicCasing, Kind: quantity.Dogleg, Range: "0 deg/30m to 20 deg/30m", Inside: of(cased),
			Help: "Bends the string along its whole length; a planned path has fewer kinks than a drilled one. Blank: the path's own.", At: func(l *Loads) any { return &l.Dogleg }},
		{Key: "surge_margin", Label: "Surge margin", Name: "Margin below fracture while running", Topic: TopicCasing, Kind: quantity.EMW, Range: "0 sg to 0.5 sg", Inside: of(cased),
			Help: "Limits the running speed. Blank: 0.02 sg (common practice, from memory), none without a riser.", At: func(l *Loads) any { return &l.SurgeMargin }},
	}
}

func holeLoadFields() []declaration[Loads] {
	type d = declaration[Loads]
	const above = "Loads the strings above this hole. "
	rig := func(_ *Plan, s *Section) string {
		if s.Returns != ToRig {
			return "the hole is open to the sea"
		}
		return ""
	}
	return []d{
		{Key: "loss_zone", Label: "Loss zone", Name: "Pressure of a loss zone at TD, as EMW", Topic: TopicCasing, Kind: quantity.EMW, Range: "0.3 sg to 2.6 sg", Inside: of(rig),
			Help: above + "On lost returns the mud falls until it balances this. Blank: a column of sea from MSL.", At: func(l *Loads) any { return &l.LossZone }},
		{Key: "gas_gradient", Label: "Gas gradient", Name: "Gradient of a column of gas", Topic: TopicCasing, Kind: quantity.Gradient, Range: "0.2 kPa/m to 8 kPa/m", Inside: of(rig),
			Help: above + "Blank: 0.1 psi/ft (common practice, from memory).", At: func(l *Loads) any { return &l.GasGradient }},
		{Key: "gas_limit", Label: "Gas held by", Name: "What holds gas from TD to the wellhead", Topic: TopicCasing, Choices: []string{GasFull, GasToFailure}, Default: GasFull, Inside: of(rig),
			Help: above + "Full column: pore pressure at TD less the gas. Shoe fails: no more than the last shoe or its test stands.", At: func(l *Loads) any { return &l.GasLimit }},
		{Key: "kick_volume", Label: "Kick volume", Name: "Volume of a gas kick from TD", Topic: TopicCasing, Kind: quantity.Volume, Range: "0.5 m3 to 100 m3", Inside: of(rig),
			Help: above + "Circulated to the wellhead as one bubble. Blank: the influx planned on the control page; without either it is not compared.", At: func(l *Loads) any { return &l.KickVolume }},
		{Key: "kick_intensity", Label: "Kick intensity", Name: "Pressure of the kick over pore pressure", Topic: TopicCasing, Kind: quantity.EMW, Range: "0 sg to 0.5 sg", Inside: of(rig),
			Help: "At TD, over the prognosis; no less than the mud there, a swabbed kick. Blank: the intensity on the control page.", At: func(l *Loads) any { return &l.KickIntensity }},
	}
}

// partStrengthFields declares what a casing part withstands beyond its size and grade.
func partStrengthFields() []*Field {
	share := func(key, label, name, span, help string, at func(*CasingPart) any) *Field {
		return declaration[CasingPart]{Key: key, Label: label, Name: name, Topic: TopicCasing, Kind: quantity.Ratio, Range: span, Help: help, At: at}.field()
	}
	const joint = "20 % to 100 %"
	return []*Field{
		share("wear", "Wear", "Wall worn away", "0 % to 60 %", "Share of the nominal wall lost inside when the next hole loads it. Blank: new pipe.",
			func(c *CasingPart) any { return &c.Wear }),
		share("joint_tension", "Joint, tension", "Tension of the connection, share of the body", joint, "Maker's, of the body yield. Blank: as strong as the pipe.",
			func(c *CasingPart) any { return &c.JointTension }),
		share("joint_burst", "Joint, burst", "Internal pressure of the connection, share of the pipe", joint, "Maker's, of the internal yield. Blank: as strong as the pipe.",
			func(c *CasingPart) any { return &c.JointBurst }),
		share("joint_collapse", "Joint, coll.", "Outside pressure of the connection, share of the pipe", joint, "Maker's, of the collapse rating. Blank: as strong as the pipe.",
			func(c *CasingPart) any { return &c.JointCollapse }),
	}
}
