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

// loadFields declares the load cases of the string that a section is finished with, then those of its hole on the
// strings above.
func loadFields() []declaration[Section] {
	return append(stringLoadFields(), holeLoadFields()...)
}

func stringLoadFields() []declaration[Section] {
	type d = declaration[Section]
	produces := func(_ *Plan, s *Section) string {
		if s.Completion == OpenHole || s.Purpose != Production {
			return "counts for production strings only"
		}
		return ""
	}
	return []d{
		{Key: "test_pressure", Label: "Test pressure", Name: "Pressure test of the string, at the rig", Topic: TopicCasing, Kind: quantity.Pressure, Range: "0 bar to 1500 bar", When: cased,
			Help: "At the pump, on top of a column of test fluid from the rotary. Blank: no test is compared.", At: func(s *Section) any { return &s.Loads.TestPressure }},
		{Key: "test_density", Label: "Test fluid", Name: "Density of the test fluid", Topic: TopicCasing, Kind: quantity.Density, Range: "0.8 sg to 2.6 sg", When: cased,
			Help: "Blank: what displaced the cement, else the drilling fluid.", At: func(s *Section) any { return &s.Loads.TestDensity }},
		{Key: "outside_burst", Label: "Outside, burst", Name: "Outside, for burst", Topic: TopicCasing, Choices: []string{OutsideSea, OutsidePore},
			Default: OutsideSea, When: cased,
			Help: "Stands against pressure inside. Seawater: its gradient from MSL, at the wellhead and below. Pore: the prognosis' pore pressure below the mudline.",
			At:   func(s *Section) any { return &s.Loads.OutsideBurst }},
		{Key: "outside_collapse", Label: "Outside, coll.", Name: "Outside, for collapse", Topic: TopicCasing, Choices: []string{OutsideMud, OutsideMixWater},
			Default: OutsideMud, When: cased,
			Help: "Presses on the string. Mud: the fluid that the string was run in, to the shoe. Mix water: that above the cement, and the slurries' mix water below its top. While cementing the slurries count.",
			At:   func(s *Section) any { return &s.Loads.OutsideCollapse }},
		{Key: "emptied", Moves: WithWell, Label: "Emptied to", Name: "May be emptied down to, along hole", Topic: TopicCasing, Kind: quantity.Length, Range: "1 m to 15000 m", When: cased,
			Help: "Nothing inside above it: the shoe for full evacuation. Blank: not compared.", At: func(s *Section) any { return &s.Loads.Emptied }},
		{Key: "packer_fluid", Label: "Packer fluid", Name: "Density of the packer fluid", Topic: TopicCasing, Kind: quantity.Density, Range: "0.7 sg to 2.6 sg", When: produces,
			Help: "For a tubing leak near the wellhead: shut-in pressure on top of this fluid. Blank: not compared.", At: func(s *Section) any { return &s.Loads.PackerFluid }},
		{Key: "tubing_pressure", Label: "Shut-in tubing", Name: "Shut-in tubing pressure at the wellhead", Topic: TopicCasing, Kind: quantity.Pressure, Range: "0 bar to 1500 bar", When: produces,
			Help: "Blank: pore pressure at the TD of the well less a column of gas.", At: func(s *Section) any { return &s.Loads.TubingPressure }},
		{Key: "overpull", Label: "Overpull", Name: "Overpull on the string, drag included", Topic: TopicCasing, Kind: quantity.Force, Range: "0 tf to 500 tf", When: cased,
			Help: "What may be pulled over the buoyed weight while it is run or stuck. Blank: 50 tf (common practice, from memory).", At: func(s *Section) any { return &s.Loads.Overpull }},
		{Key: "peak_speed", Label: "Peak speed", Name: "Peak speed of a joint while running", Topic: TopicCasing, Kind: quantity.Velocity, Range: "0 m/s to 5 m/s", When: cased,
			Help: "Stopped at once it gives the shock load. Blank: 1 m/s (from memory).", At: func(s *Section) any { return &s.Loads.Peak }},
		{Key: "dogleg", Label: "Least dogleg", Name: "Dogleg to count with at least", Topic: TopicCasing, Kind: quantity.Dogleg, Range: "0 deg/30m to 20 deg/30m", When: cased,
			Help: "Bends the string along its whole length; a planned path has fewer kinks than a drilled one. Blank: the path's own.", At: func(s *Section) any { return &s.Loads.Dogleg }},
		{Key: "surge_margin", Label: "Surge margin", Name: "Margin below fracture while running", Topic: TopicCasing, Kind: quantity.EMW, Range: "0 sg to 0.5 sg", When: cased,
			Help: "Limits the running speed. Blank: 0.02 sg (common practice, from memory).", At: func(s *Section) any { return &s.Loads.SurgeMargin }},
	}
}

func holeLoadFields() []declaration[Section] {
	type d = declaration[Section]
	const above = "Loads the strings above this hole. "
	rig := func(_ *Plan, s *Section) string {
		if s.Returns != ToRig {
			return "the hole is open to the sea"
		}
		return ""
	}
	return []d{
		{Key: "loss_zone", Label: "Loss zone", Name: "Pressure of a loss zone at TD, as EMW", Topic: TopicCasing, Kind: quantity.EMW, Range: "0.3 sg to 2.6 sg", When: rig,
			Help: above + "On lost returns the mud falls until it balances this. Blank: a column of sea from MSL.", At: func(s *Section) any { return &s.Loads.LossZone }},
		{Key: "gas_gradient", Label: "Gas gradient", Name: "Gradient of a column of gas", Topic: TopicCasing, Kind: quantity.Gradient, Range: "0.2 kPa/m to 8 kPa/m", When: rig,
			Help: above + "Blank: 0.1 psi/ft (common practice, from memory).", At: func(s *Section) any { return &s.Loads.GasGradient }},
		{Key: "gas_limit", Label: "Gas held by", Name: "What holds gas from TD to the wellhead", Topic: TopicCasing, Choices: []string{GasFull, GasToFailure}, Default: GasFull, When: rig,
			Help: above + "Full column: pore pressure at TD less the gas. Shoe fails: no more than the last shoe or its test stands.", At: func(s *Section) any { return &s.Loads.GasLimit }},
		{Key: "kick_volume", Label: "Kick volume", Name: "Volume of a gas kick from TD", Topic: TopicCasing, Kind: quantity.Volume, Range: "0.5 m3 to 100 m3", When: rig,
			Help: above + "Circulated to the wellhead as one bubble. Blank: not compared.", At: func(s *Section) any { return &s.Loads.KickVolume }},
		{Key: "kick_intensity", Label: "Kick intensity", Name: "Pressure of the kick over pore pressure", Topic: TopicCasing, Kind: quantity.EMW, Range: "0 sg to 0.5 sg", When: rig,
			Help: "At TD, over the prognosis; no less than the mud there, a swabbed kick. Blank: none.", At: func(s *Section) any { return &s.Loads.KickIntensity }},
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
