package model

import (
	"slices"
	"strings"
	"sync"

	"borewalk/model/quantity"
)

// RuleID names a rule that a plan is compared with.
type RuleID uint8

// The rules, by what they look at.
const (
	RuleDepthOrder RuleID = iota
	RuleBitPasses
	RuleConnectorPasses
	RuleHoleTakesString
	RulePumpsGiveFlow
	RuleAboveInflow
	RuleRiserlessInflow
	RuleBelowBreakdown
	RuleBitClearance
	RuleHoleClearance
	RuleTripMargin
	RuleOverbalance
	RuleStaticMargin
	RuleRiserMargin
	RuleHookLoad
	RuleBitAsPlanned
	RuleStability
	RuleShoeTest
	RuleRatholeLeast
	RuleRatholeMost
	RuleShoeTrack
	RuleLapLeast
	RuleLapMost
	RuleUSMargin
	RuleUSPore
	RuleUSLap
	RuleUSLapShallow
	RuleUSBOP
	RuleCementHeight
	RuleUSCementConductor
	RuleUSCementSurface
	RuleCementInConductor
	RuleUSCementHeight
	RuleTrappedAnnulus
	RuleThickening
	RuleCementStrength
	RuleUSWaitConductor
	RuleUSWait
	RuleCementMargin
	RuleLift
	RuleDensityOrder
	RuleUnitRate
	RuleUnitPressure
	RuleCementInStack
	RuleAboveLiner
	RuleCollapse
	RuleBurst
	RuleTension
	RuleHangingTension
	RuleTriaxial
	RuleUSTest
	RuleUSTestLiner
	RuleUSTestProductionLiner
	RuleStandoff
	RuleRunsOut
	RuleUSCementStrength
	RuleTallyBottom
	RuleTallyJoints
	RuleSpareJoints
	RuleTallyClosure
	RuleJointOdd
	RuleLandingString
	RuleLandingOverpull
	RuleStickUp
	RuleHangerCoupling
	RuleInnerString
	RuleWithinRating
	RuleRunningSpeed
	RuleUSCementZone
	RuleCementInflow
	RuleReadingFit
	RuleWeightStep
	RuleWeightToTest
	RuleWeightLeast
	RuleSurfaceMud
	RuleSurfaceMudShare
	RuleReserveMud
	RulePitsHold
	RuleStockLasts
	RuleSpotFills
	RuleKillMud
	RuleKillFracture
	RuleUSTripFill
	RuleUSTripStands
	RuleTripTank
	RulePullingSpeed
	RuleTripInSpeed
	RuleGelBreak
	RulePickUpRating
	RulePickUpOverpull
	RuleGoesDown
	RuleTopDriveTorque
	RuleBuckling
	RuleSideForce
	RuleBitWeight
	RuleNeutralPoint
	RuleJarNeutral
	RulePipeTension
	RuleOverpull
	RulePipeTorsion
	RuleBendingRatio
	RuleRamJoint
	RuleTestTemperature
	RulePumpPressure
	RulePumpLoad
	RuleToolFlow
	RuleECDMargin
	RuleUSMarginECD
	RuleTransport
	RuleCuttingsShare
	RuleSlantVelocity
	RuleCarryingIndex
	RuleRiserVelocity
	RuleVelocityLarge
	RuleVelocityWide
	RuleVelocityMedium
	RuleVelocitySmall
	RuleBooster
	RuleDrilledSolids
	RuleTestLeast
	RuleUSTestPlanned
	RuleUSNewHoleLeast
	RuleUSNewHoleMost
	RuleKickTolerance
	RuleKickLarge
	RuleKickMedium
	RuleKickSmall
	RuleKickSlim
	RuleKickDetected
	RuleInfluxTolerance
	RuleKillShoe
	RuleKillShoeRead
	RuleShutInShoe
	RuleShutInGain
	RuleKillMudShoe
	RuleKillBarite
	RuleTestOver
	RuleLineFriction
	RuleSlowRate
	RuleSlowRateMud
	RuleSlowRateDepth
	RuleStackRating
	RuleUSStackHigh
	RuleStackTestRating
	RuleStackBody
	RuleUSStackAnnular
	RuleUSStackLowLeast
	RuleUSStackLowMost
	RuleNorwayStackLowLeast
	RuleNorwayStackLowMost
	RuleUSStackHold
	RuleNorwayStackHold
	RuleUSStackDays
	RuleNorwayStackDays
	RuleUSShearDays
	RuleUSFunctionDays
	RuleStackDays
	RuleShearDays
	RuleFunctionDays
	RuleUSMostPressure
	RuleShallowFlow
	RuleShallowOver
	RuleShallowMud
	RulePilotHole
	RuleHousingTilt
	RulePlugBumped
	RuleShoeOff
	RuleCementReturns
	RuleReadingMud
	RuleStockMass
	RuleStockVolume
	RuleBoat
	RuleReliefChecks
	RuleReliefStrokes
	RuleReliefMud
	RuleReliefPressure
	ruleCount
)

// RuleKind says what stands behind a rule, and so how far it may go: arithmetic, law and standards may stop a plan;
// practice asks for caution only.
type RuleKind uint8

// The rule kinds. Arithmetic is what cannot be built or pumped at all, whatever anyone allows.
const (
	Arithmetic RuleKind = iota
	Law
	Standard
	Practice
)

// String returns the word for the kind.
func (k RuleKind) String() string {
	return [...]string{"arithmetic", "law", "standard", "common practice"}[k]
}

// Rule is an acceptance limit with its source. Least says that the limit is the least allowed, otherwise the most.
type Rule struct {
	ID       RuleID
	Key      string // stable name, as in the file's [limits] table
	Name     string
	Kind     RuleKind
	Sets     []string // rule sets that hold it; nil for all of them
	Measure  quantity.Kind
	Least    bool
	Limit    quantity.Value
	Source   string
	Recalled bool // the number is from memory, not read in the source
}

// Rule set names.
const (
	SetNone     = "none"
	SetUS       = "us-ocs"
	SetNorway   = "norway"
	SetPractice = "common practice"
)

// RuleSets returns the names of the rule sets that a plan can pick. Every set holds the arithmetic.
func RuleSets() []string { return []string{SetNone, SetUS, SetNorway, SetPractice} }

// Rules returns every rule in the order of their RuleID. The slice is shared: it must not be changed.
func Rules() []Rule { return rules() }

// In reports whether the rule counts in the named rule set.
func (r Rule) In(set string) bool { return r.Sets == nil || slices.Contains(r.Sets, set) }

var rules = sync.OnceValue(func() []Rule {
	practised := []string{SetUS, SetNorway, SetPractice}
	us, norway := []string{SetUS}, []string{SetNorway}
	const memory = "common practice, from memory"
	const stocks = "drillingforgas.com, contingency stock levels"
	emw, length, diameter := quantity.EMW, quantity.Length, quantity.Diameter
	limit := func(text string, kind quantity.Kind) quantity.Value {
		v, err := quantity.Parse(text, kind, 0)
		if err != nil {
			panic("model: internal error: limit " + text + ": " + err.Error())
		}
		return v
	}
	least := func(id RuleID, key, name string, kind RuleKind, sets []string, measure quantity.Kind, at, source string) Rule {
		return Rule{ID: id, Key: key, Name: name, Kind: kind, Sets: sets, Measure: measure, Least: true, Limit: limit(at, measure),
			Source: source, Recalled: strings.HasSuffix(source, "from memory")}
	}
	most := func(id RuleID, key, name string, kind RuleKind, sets []string, measure quantity.Kind, at, source string) Rule {
		r := least(id, key, name, kind, sets, measure, at, source)
		r.Least = false
		return r
	}
	list := []Rule{
		least(RuleDepthOrder, "depth_order", "Depths go down in order", Arithmetic, nil, length, "0 m", "geometry"),
		least(RuleBitPasses, "bit_passes", "Bit passes the bores above", Arithmetic, nil, diameter, "0 in",
			"drift, not the nominal ID, is the bore that is guaranteed (API 5CT drift test)"),
		least(RuleConnectorPasses, "connector_passes", "String passes the bores above", Arithmetic, nil, diameter, "0 in",
			"drift, not the nominal ID, is the bore that is guaranteed (API 5CT drift test)"),
		least(RuleHoleTakesString, "hole_takes_string", "Hole takes the string", Arithmetic, nil, diameter, "0 in", "geometry"),
		least(RulePumpsGiveFlow, "pumps_give_flow", "Pumps give flow and booster", Arithmetic, nil, quantity.Flow, "0 L/min",
			"pump output at the highest stroke rate; pressure is judged apart"),
		least(RuleAboveInflow, "above_inflow", "Mud not below pore pressure", Arithmetic, nil, emw, "0 sg", "hydrostatics"),
		least(RuleRiserlessInflow, "riserless_inflow", "Riserless fluid not below pore pressure", Practice, nil, emw, "-0.005 sg",
			"hydrostatics; the allowance is for the rounding of a shallow prognosis, from memory"),
		least(RuleBelowBreakdown, "below_breakdown", "Mud not above fracture pressure", Arithmetic, nil, emw, "0 sg", "hydrostatics"),
		least(RuleBitClearance, "bit_clearance", "Bit a little below the drift", Practice, practised, diameter, "0.05 in",
			"Lyons, Standard Handbook of Petroleum and Natural Gas Engineering, vol. 1, p. 1129"),
		least(RuleHoleClearance, "hole_clearance", "Hole larger than casing OD", Practice, practised, diameter, "0.375 in",
			"drillingmanual.com, casing and bit size selection (0.375 to 0.5 in, preferably 0.75)"),
		least(RuleTripMargin, "trip_margin", "Trip margin over pore pressure", Practice, practised, emw, "0.2 ppg", memory),
		least(RuleOverbalance, "overbalance", "Static overbalance", Practice, practised, quantity.Pressure, "200 psi", memory),
		least(RuleStaticMargin, "static_margin", "Static mud below fracture and shoe test", Practice, []string{SetNorway, SetPractice}, emw, "0.06 sg", memory),
		least(RuleRiserMargin, "riser_margin", "Mud and sea over pore with the riser off", Practice, practised, quantity.Pressure, "0 psi",
			"drillingformulas.com, riser margin; it may not be practical in deep water, the BOP is the barrier then"),
		least(RuleHookLoad, "hook_load", "Hook load within the rig's rating", Arithmetic, nil, quantity.Force, "0 klbf",
			"as entered: rating less string and blocks, without friction or overpull"),
		most(RuleBitAsPlanned, "bit_as_planned", "Bit of the string is the section's", Arithmetic, nil, quantity.Diameter, "0.001 in", "geometry"),
		least(RuleStability, "stability", "Mud not below the stability limit", Practice, practised, emw, "0 sg", memory),
		most(RuleShoeTest, "shoe_test", "Planned shoe test within the fracture prognosis", Practice, practised, emw, "0.01 sg",
			"common practice; the allowance is for rounding, from memory"),
		least(RuleRatholeLeast, "rathole_least", "Rathole, least", Practice, practised, length, "5 ft", memory),
		most(RuleRatholeMost, "rathole_most", "Rathole, most", Practice, practised, length, "30 ft", memory),
		least(RuleShoeTrack, "shoe_track", "Shoe track", Practice, practised, length, "80 ft", memory),
		least(RuleLapLeast, "lap_least", "Liner lap, least", Practice, practised, length, "200 ft", memory),
		most(RuleLapMost, "lap_most", "Liner lap, most", Practice, practised, length, "500 ft", memory),
		least(RuleUSMargin, "us_margin", "Safe drilling margin", Law, us, emw, "0.5 ppg", "30 CFR 250.414(c), on the static mud; number from memory"),
		least(RuleUSPore, "us_pore", "Mud weight above pore pressure", Law, us, emw, "0 ppg", "30 CFR 250.414(c), from memory"),
		least(RuleUSLap, "us_lap", "Overlap of an intermediate or production liner", Law, us, length, "100 ft", "30 CFR 250.421(f), 2015 edition"),
		least(RuleUSLapShallow, "us_lap_shallow", "Overlap of a liner as conductor or surface string", Law, us, length, "200 ft",
			"30 CFR 250.421(f), 2015 edition"),
		least(RuleUSBOP, "us_bop", "BOP on below the surface string", Law, us, quantity.Count, "1", "30 CFR 250.442, 2015 edition"),
		least(RuleCementHeight, "cement_height", "Cement above the shoe", Standard, norway, length, "100 m", "NORSOK D-010 rev. 4, table 22, from memory"),
		least(RuleUSCementConductor, "us_cement_conductor", "Conductor cemented to the mudline", Law, us, length, "0 ft", "30 CFR 250.421(b), 2015 edition"),
		least(RuleUSCementSurface, "us_cement_surface", "Surface string cemented into the conductor", Practice, us, length, "200 ft",
			"30 CFR 250.421(c); less needs approval, 250.428(h), 2015 edition"),
		least(RuleCementInConductor, "cement_in_conductor", "Surface string cemented into the conductor", Standard, norway, length, "0 m",
			"NORSOK D-010 rev. 4, table 22, from memory"),
		least(RuleUSCementHeight, "us_cement_height", "Cement above an intermediate or production shoe", Law, us, length, "500 ft",
			"30 CFR 250.421(d), (e), 2015 edition"),
		least(RuleTrappedAnnulus, "trapped_annulus", "Annulus below a subsea wellhead left open", Practice, practised, length, "0 m",
			"common practice, from memory"),
		least(RuleThickening, "thickening", "Thickening time left at the end of the job", Practice, practised, quantity.Hours, "1 h", memory),
		least(RuleCementStrength, "cement_strength", "500 psi before drilling on", Practice, []string{SetNorway, SetPractice}, quantity.Hours, "0 h", memory),
		least(RuleUSWaitConductor, "us_wait_conductor", "Wait on cement under pressure, conductor", Law, us, quantity.Hours, "8 h", "30 CFR 250.422(a), 2015 edition"),
		least(RuleUSWait, "us_wait", "Wait on cement under pressure", Law, us, quantity.Hours, "12 h", "30 CFR 250.422(a), 2015 edition"),
		least(RuleCementMargin, "cement_margin", "Cement job below fracture and shoe test", Practice, practised, emw, "0.02 sg", memory),
		least(RuleLift, "lift", "Casing not lifted by the cement", Practice, practised, quantity.Force, "0 kN", "pressure-area method; held down by other means, it may be less"),
		least(RuleDensityOrder, "density_order", "Each fluid of the job no lighter than the one ahead", Practice, practised, quantity.Density, "0 sg", memory),
		least(RuleUnitRate, "unit_rate", "Cement unit gives the mixing rate", Arithmetic, nil, quantity.CementRate, "0 L/min", "as entered"),
		least(RuleUnitPressure, "unit_pressure", "Cement unit gives the bump", Arithmetic, nil, quantity.Pressure, "0 bar",
			"as entered: rating less the highest pressure of the job, bump counted"),
		least(RuleCementInStack, "cement_in_stack", "No cement above the hanger, hole in gauge", Practice, practised, length, "0 m", memory),
		most(RuleAboveLiner, "above_liner", "Cement above a liner's top, pipe in", Practice, practised, length, "150 m", "common practice, a few hundred feet to reverse or drill out; from memory"),
		least(RuleCollapse, "collapse_factor", "Collapse factor", Practice, practised, quantity.Number, "1", memory),
		least(RuleBurst, "burst_factor", "Burst factor", Practice, practised, quantity.Number, "1.1", memory),
		least(RuleTension, "tension_factor", "Tension factor", Practice, practised, quantity.Number, "1.3", memory),
		least(RuleHangingTension, "hanging_factor", "Hanging factor", Practice, practised, quantity.Number, "1.6", memory),
		least(RuleTriaxial, "triaxial_factor", "Triaxial factor", Practice, practised, quantity.Number, "1.25", memory),
		least(RuleUSTest, "us_test", "Test over yield", Law, us, quantity.Ratio, "70 %", "30 CFR 250.721(a)(3)"),
		least(RuleUSTestLiner, "us_test_liner", "Drilling liner's test over leak-off", Law, us, quantity.Pressure, "0 psi", "30 CFR 250.721(b)"),
		least(RuleUSTestProductionLiner, "us_test_production_liner", "Production liner's test over fracture", Law, us, quantity.Pressure, "500 psi", "30 CFR 250.721(c)"),
		least(RuleStandoff, "standoff", "Casing standoff", Practice, practised, quantity.Ratio, "67 %", "API Spec 10D and RP 10D-2 as commonly applied, from memory"),
		most(RuleRunsOut, "runs_out", "Run out of an inner string after the stop", Practice, practised, quantity.Volume, "0 m3", memory),
		least(RuleUSCementStrength, "us_cement_strength", "500 psi before drilling on", Law, us, quantity.Hours, "0 h",
			"30 CFR 250.420(c), 2015 edition: behind the lowest 500 ft; by the laboratory's times as entered"),
		least(RuleTallyBottom, "tally_bottom", "Shoe off bottom", Arithmetic, nil, quantity.TallyLength, "0 m",
			"geometry: hole below the tallied shoe, less what the string stretches under its own weight"),
		least(RuleTallyJoints, "tally_joints", "Joints aboard", Arithmetic, nil, quantity.Count, "0", "count of the joints that may be run, less those needed"),
		least(RuleSpareJoints, "spare_joints", "Spare joints", Practice, practised, quantity.Count, "3", memory),
		most(RuleTallyClosure, "tally_closure", "Tally closes", Practice, practised, quantity.TallyLength, "0.15 m", memory),
		most(RuleJointOdd, "joint_odd", "Odd joint", Practice, practised, quantity.TallyLength, "1 m",
			"common practice, a slip of the pen or a joint of another range; from memory"),
		least(RuleLandingString, "landing_string", "Landing string", Arithmetic, nil, quantity.Force, "0 klbf",
			"rating less what hangs from the rotary, without friction or shock"),
		least(RuleLandingOverpull, "landing_overpull", "Landing overpull", Practice, practised, quantity.Force, "0 klbf",
			"common practice: as planned in the section, over landing string and rig"),
		least(RuleStickUp, "stick_up", "Stick-up window", Practice, practised, quantity.TallyLength, "0 m", "geometry with the tides of the well"),
		least(RuleHangerCoupling, "hanger_coupling", "Off couplings", Practice, practised, quantity.TallyLength, "2 m", memory),
		least(RuleInnerString, "inner_string", "Inner string above the float collar", Practice, practised, length, "0 m", memory),
		least(RuleWithinRating, "within_rating", "Load within the rating", Arithmetic, nil, quantity.Number, "1", "API TR 5C3 ratings against the loads named"),
		least(RuleRunningSpeed, "running_speed", "Running speed that surge leaves", Practice, practised, quantity.Velocity, "3 m/min", memory),
		least(RuleUSCementZone, "us_cement_zone", "Cement above a zone to be isolated", Law, us, length, "500 ft", "30 CFR 250.421(d), (e), 2015 edition"),
		least(RuleCementInflow, "cement_inflow", "Cement above a point of inflow", Standard, norway, length, "200 m", "NORSOK D-010 (2004), table 22; or into the last string"),
		most(RuleReadingFit, "reading_fit", "Viscometer readings as the law has them", Practice, practised, quantity.Dial, "3 deg",
			"common practice, an odd reading or a law that does not suit; from memory"),
		least(RuleWeightStep, "weight_step", "Weighting material for a step", Practice, practised, quantity.Mass, "0 t", stocks+" (1 ppg on the active system)"),
		least(RuleWeightToTest, "weight_to_test", "Weighting material to the shoe test", Practice, practised, quantity.Mass, "0 t",
			"Devereux, Practical Well Planning and Drilling Manual, appendix 1"),
		least(RuleWeightLeast, "weight_least", "Weighting material aboard", Practice, practised, quantity.Mass, "70 t", stocks),
		least(RuleSurfaceMud, "surface_mud", "Mud at surface", Practice, practised, quantity.Volume, "300 bbl", stocks),
		least(RuleSurfaceMudShare, "surface_mud_share", "Mud at surface, of the well's volume", Practice, practised, quantity.Ratio, "50 %", stocks),
		least(RuleReserveMud, "reserve_mud", "Reserve mud", Practice, practised, quantity.Volume, "500 bbl", stocks+" (contingency fluid)"),
		least(RulePitsHold, "pits_hold", "Pits hold the mud", Arithmetic, nil, quantity.Volume, "0 m3", "as entered: active and reserve pits less the most mud at the surface"),
		least(RuleStockLasts, "stock_lasts", "Weighted mud lasts to TD", Arithmetic, nil, quantity.Volume, "0 m3",
			"flow by time: stock aboard less what weighted hole and spot fluid take"),
		least(RuleSpotFills, "spot_fills", "Spot fluid fills the hole", Practice, practised, quantity.Ratio, "0 %", memory),
		least(RuleKillMud, "kill_mud", "Kill mud aboard, of the new hole", Practice, practised, quantity.Ratio, "100 %", "common practice, one to two hole volumes; from memory"),
		least(RuleKillFracture, "kill_fracture", "Kill mud below fracture", Practice, practised, emw, "0 sg", "hydrostatics; friction while it is pumped comes on top"),
		most(RuleUSTripFill, "us_trip_fill", "Pressure drop before the hole is filled", Law, us, quantity.Pressure, "75 psi", "30 CFR 250.456(c), 2015 edition"),
		most(RuleUSTripStands, "us_trip_stands", "Stands of drill pipe between fills", Law, us, quantity.Count, "5", "30 CFR 250.456(c), 2015 edition"),
		least(RuleTripTank, "trip_tank", "Trip tank holds a fill", Practice, practised, quantity.Volume, "0 m3", memory),
		least(RulePullingSpeed, "pulling_speed", "Pulled no faster than swab allows", Practice, practised, quantity.Velocity, "0 m/min", memory),
		least(RuleTripInSpeed, "trip_in_speed", "Run no faster than surge allows", Practice, practised, quantity.Velocity, "0 m/min", memory),
		least(RuleGelBreak, "gel_break", "Breaking the gel below fracture", Practice, practised, emw, "0 sg", memory),
		least(RulePickUpRating, "pick_up_rating", "Pick-up in rating with drag", Practice, practised, quantity.Force, "0 klbf",
			"rating less hook load picking up, by the friction factors entered; common practice"),
		least(RulePickUpOverpull, "pick_up_overpull", "Overpull left on the pick-up weight", Practice, practised, quantity.Force, "0 klbf",
			"common practice: as planned in the section, over rig and pipe body"),
		least(RuleGoesDown, "goes_down", "Slack-off of own weight", Practice, practised, quantity.Force, "0 klbf",
			"string weight left while slacking off, by the friction factors entered; common practice"),
		least(RuleTopDriveTorque, "top_drive_torque", "Torque left while drilling", Practice, practised, quantity.Torque, "0 ft-lbf",
			"top drive less torque while drilling, by the friction factors entered; common practice"),
		least(RuleBuckling, "buckling", "Buckling margin", Practice, practised, quantity.Force, "0 klbf",
			"Dawson and Paslay 1984, Lubinski 1950, from memory"),
		most(RuleSideForce, "side_force", "Side force per joint", Practice, practised, quantity.Force, "2000 lbf", memory),
		most(RuleBitWeight, "bit_weight_share", "Weight on bit of what the collars give", Practice, practised, quantity.Ratio, "85 %", "common practice, 80 to 90 % are met; from memory"),
		least(RuleNeutralPoint, "neutral_point", "Neutral point below the drill pipe", Practice, practised, length, "0 m", "common practice, drill pipe is kept in tension; from memory"),
		least(RuleJarNeutral, "jar_neutral", "Jar off the neutral point", Practice, practised, length, "10 m", memory),
		most(RulePipeTension, "pipe_tension", "Drill pipe's pull of its class's yield", Standard, practised, quantity.Ratio, "90 %", "API RP 7G, design tension, from memory"),
		least(RuleOverpull, "overpull_margin", "Overpull that drill pipe leaves", Practice, practised, quantity.Force, "100 klbf",
			"common practice, 50 klbf in shallow holes, on 90 % of the class; from memory"),
		most(RulePipeTorsion, "pipe_torsion", "Torque of what the pull leaves", Standard, practised, quantity.Ratio, "100 %", "API RP 7G, torsion under tension, from memory"),
		most(RuleBendingRatio, "bending_ratio", "Step in stiffness", Practice, practised, quantity.Number, "5.5", "common practice, 5.5 where drilling is easy, 3.5 where it is hard on the string; from memory"),
		least(RuleRamJoint, "ram_joint", "Tool joint off a ram", Practice, practised, length, "0.5 m", "common practice, geometry with tide and heave, half a ram block counted; from memory"),
		most(RuleTestTemperature, "test_temperature", "Cement test cooler than the circulating temperature", Practice, practised, quantity.TemperatureRise, "3 K", memory),
		least(RulePumpPressure, "pump_pressure", "Standpipe pressure within the liners' limit", Arithmetic, nil, quantity.Pressure, "0 bar",
			"as entered: limit of the liners less the standpipe pressure as worked out"),
		most(RulePumpLoad, "pump_load", "Standpipe pressure over the liners' limit", Practice, practised, quantity.Ratio, "90 %", memory),
		least(RuleToolFlow, "tool_flow", "Flow within the range of a tool", Practice, practised, quantity.Flow, "0 L/min", "maker's range as entered: how far the flow is inside it"),
		least(RuleECDMargin, "ecd_margin", "Circulating density below fracture and shoe test", Practice, practised, emw, "0.2 ppg",
			"rigzone.com, insight page on deepwater safety: table of targets, marked there as an estimate"),
		least(RuleUSMarginECD, "us_margin_ecd", "Safe drilling margin, circulating", Practice, us, emw, "0.5 ppg",
			"30 CFR 250.414(c) read on the circulating density, which is argued about; number from memory"),
		least(RuleTransport, "transport", "Cuttings transport ratio", Practice, practised, quantity.Ratio, "50 %", memory),
		most(RuleCuttingsShare, "cuttings_share", "Cuttings in the annulus", Practice, practised, quantity.Ratio, "5 %", memory),
		least(RuleSlantVelocity, "slant_velocity", "Velocity over what a slant needs", Practice, practised, quantity.Ratio, "100 %",
			"R. Rubiandini, SPE 57541, 1999, from memory"),
		least(RuleCarryingIndex, "carrying_index", "Carrying index below 35 degrees", Practice, practised, quantity.Number, "1",
			"drillingformulas.com, cuttings carrying index: half and less is poor, one and more good"),
		least(RuleRiserVelocity, "riser_velocity", "Velocity in the riser", Practice, practised, quantity.Velocity, "80 ft/min", memory),
		least(RuleVelocityLarge, "velocity_large", "Annular velocity, 22 in hole and larger", Practice, practised, quantity.Velocity, "50 ft/min", memory),
		least(RuleVelocityWide, "velocity_wide", "Annular velocity, 14 to 22 in hole", Practice, practised, quantity.Velocity, "80 ft/min", memory),
		least(RuleVelocityMedium, "velocity_medium", "Annular velocity, 9 to 14 in hole", Practice, practised, quantity.Velocity, "120 ft/min", memory),
		least(RuleVelocitySmall, "velocity_small", "Annular velocity, hole below 9 in", Practice, practised, quantity.Velocity, "150 ft/min", memory),
		least(RuleBooster, "booster", "Flow in the riser over what cuttings need", Practice, practised, quantity.Flow, "0 L/min",
			"transport ratio and velocity wanted in the riser; common practice, from memory"),
		most(RuleDrilledSolids, "drilled_solids", "Drilled solids in the mud", Practice, practised, quantity.Ratio, "8 %", "common practice, low-gravity solids, 5 to 8 % are met; from memory"),
		least(RuleTestLeast, "test_least", "Shoe test over the least wanted", Practice, practised, emw, "0 sg", "as planned in the section: below it, stop and call before drilling on"),
		least(RuleUSTestPlanned, "us_test_planned", "Shoe test planned", Law, us, quantity.Count, "1", "30 CFR 250.427, 2015 edition"),
		least(RuleUSNewHoleLeast, "us_new_hole_least", "New hole before the shoe test, least", Law, us, length, "10 ft", "30 CFR 250.427(a), 2015 edition"),
		most(RuleUSNewHoleMost, "us_new_hole_most", "New hole before the shoe test, most", Law, us, length, "50 ft", "30 CFR 250.427(a), 2015 edition"),
		least(RuleKickTolerance, "kick_tolerance", "Kick tolerance over the least wanted", Practice, practised, quantity.Volume, "0 m3", "as planned in the section; not a limit to drill on to"),
		least(RuleKickLarge, "kick_large", "Kick tolerance, 16 in hole and larger", Practice, practised, quantity.Volume, "100 bbl", "common practice, 100 to 250 bbl are met; from memory"),
		least(RuleKickMedium, "kick_medium", "Kick tolerance, 9 to 16 in hole", Practice, practised, quantity.Volume, "50 bbl", "common practice, 50 to 100 bbl are met; from memory"),
		least(RuleKickSmall, "kick_small", "Kick tolerance, 7 to 9 in hole", Practice, practised, quantity.Volume, "25 bbl", "common practice, 25 to 50 bbl are met; from memory"),
		least(RuleKickSlim, "kick_slim", "Kick tolerance, hole below 7 in", Practice, practised, quantity.Volume, "20 bbl", memory),
		least(RuleKickDetected, "kick_detected", "Kick tolerance over the gain noticed", Practice, practised, quantity.Number, "3",
			"a service company's course of 2002: minimum kick tolerance three times what the rig detects"),
		least(RuleInfluxTolerance, "influx_tolerance", "Kick tolerance over the influx on the sheet", Practice, practised, quantity.Volume, "0 m3", "single bubble; common practice"),
		least(RuleKillShoe, "kill_shoe", "Kill below what shoe and rock stand", Practice, practised, emw, "0 sg", "single bubble, real gas; common practice"),
		least(RuleKillShoeRead, "kill_shoe_read", "Kill of the kick read below what is stood", Arithmetic, nil, emw, "0 sg", "hydrostatics: single bubble of real gas, by what was read"),
		least(RuleShutInShoe, "shut_in_shoe", "Shoe stands the well shut in", Arithmetic, nil, emw, "0 sg", "hydrostatics: SICP as read, else as worked out, and the mud above the shoe"),
		most(RuleShutInGain, "shut_in_gain", "SICP as read and as the gain gives it", Practice, practised, quantity.Pressure, "50 psi",
			"common practice, a larger hole, a gain that was missed or trapped pressure; from memory"),
		least(RuleKillMudShoe, "kill_mud_shoe", "Kill mud below what shoe and rock stand", Arithmetic, nil, emw, "0 sg", "hydrostatics"),
		least(RuleKillBarite, "kill_barite", "Weighting material for kill mud", Practice, practised, quantity.Mass, "0 t", "mass and volume balance over the active system"),
		most(RuleTestOver, "test_over", "Measured shoe test over the prognosis", Practice, practised, emw, "0.1 sg", "common practice, units, gauge and prognosis are to be looked at; from memory"),
		least(RuleLineFriction, "line_friction", "Choke pressure over the line's friction", Practice, practised, quantity.Pressure, "0 bar",
			"Lapeyrouse, subsea considerations: the casing gauge is to fall by the line's friction as the pump comes up"),
		least(RuleSlowRate, "slow_rate", "Slow rate recorded at the kill rate", Practice, practised, quantity.Count, "1", "common practice: recorded each tour, and anew after a change of mud, string or liner"),
		most(RuleSlowRateMud, "slow_rate_mud", "Mud changed since the slow rate", Practice, practised, quantity.Density, "0.01 sg", memory),
		most(RuleSlowRateDepth, "slow_rate_depth", "Bit moved since the slow rate", Practice, practised, length, "500 ft", "common practice, recorded anew each tour and each 500 ft; from memory"),
		least(RuleStackRating, "stack_rating", "Wellhead pressure within the BOP's rating", Arithmetic, nil, quantity.Pressure, "0 bar", "as entered: rating over the sea, less the highest pressure anticipated"),
		least(RuleUSStackHigh, "us_stack_high", "Ram test over the anticipated pressure", Law, us, quantity.Pressure, "500 psi", "30 CFR 250.737(b), 250.448(b) before 2016"),
		least(RuleStackTestRating, "stack_test_rating", "BOP test within the rating", Arithmetic, nil, quantity.Pressure, "0 bar", "as entered: rating less test"),
		least(RuleStackBody, "stack_body", "Body of the stack over its load in the test", Practice, practised, quantity.Pressure, "0 bar", "hydrostatics: mud in the riser and sea outside; the maker says what it bears"),
		least(RuleUSStackAnnular, "us_stack_annular", "Annular's test of its rating", Law, us, quantity.Ratio, "70 %", "30 CFR 250.448(c) before 2016; or the approved value"),
		least(RuleUSStackLowLeast, "us_stack_low_least", "Low BOP test, least", Law, us, quantity.Pressure, "250 psi", "30 CFR 250.737(b), 200 psi before 2016; from memory"),
		most(RuleUSStackLowMost, "us_stack_low_most", "Low BOP test, most", Law, us, quantity.Pressure, "350 psi", "30 CFR 250.737(b), 300 psi before 2016; from memory"),
		least(RuleNorwayStackLowLeast, "low_test_least", "Low BOP test, least", Standard, norway, quantity.Pressure, "15 bar", "NORSOK D-010 rev. 4, 4.2.3.5, from memory"),
		most(RuleNorwayStackLowMost, "low_test_most", "Low BOP test, most", Standard, norway, quantity.Pressure, "20 bar", "NORSOK D-010 rev. 4, 4.2.3.5, from memory"),
		least(RuleUSStackHold, "us_stack_hold", "Each BOP test held", Law, us, quantity.Time, "5 min", "30 CFR 250.448(d) before 2016"),
		least(RuleNorwayStackHold, "stack_hold", "Each high BOP test held", Standard, norway, quantity.Time, "10 min", "NORSOK D-010 rev. 4, 4.2.3.5, from memory"),
		most(RuleUSStackDays, "us_stack_days", "Days since the BOP test", Law, us, quantity.Count, "14", "30 CFR 250.737(a)(2); 21 days on approval"),
		most(RuleNorwayStackDays, "stack_days", "Days since the BOP test", Standard, norway, quantity.Count, "14", "NORSOK D-010 rev. 4, annex A, from memory"),
		most(RuleUSShearDays, "us_shear_days", "Days since the shear rams' test", Law, us, quantity.Count, "30", "30 CFR 250.737(a)(2)"),
		most(RuleUSFunctionDays, "us_function_days", "Days since the function test", Law, us, quantity.Count, "7", "30 CFR 250.449(h), 2015 edition"),
		most(RuleStackDays, "bop_days", "Days since the BOP test", Practice, []string{SetPractice}, quantity.Count, "14", "common practice, from memory; local rules and approvals decide"),
		most(RuleShearDays, "shear_days", "Days since the shear rams' test", Practice, []string{SetPractice}, quantity.Count, "30", "common practice, from memory; local rules and approvals decide"),
		most(RuleFunctionDays, "function_days", "Days since the function test", Practice, []string{SetPractice}, quantity.Count, "7", "common practice, from memory; local rules and approvals decide"),
		least(RuleUSMostPressure, "most_pressure", "Shoe gives way before BOP and casing", Practice, us, quantity.Pressure, "0 psi", "30 CFR 250.456, 2015 edition: pressures posted at the driller's station; as compared here common practice"),
		least(RuleShallowFlow, "shallow_flow", "Pumps give the dynamic kill", Practice, practised, quantity.Flow, "0 L/min", "hydrostatics and friction with the hole full of the kill fluid, without gas in it"),
		least(RuleShallowOver, "shallow_over", "Hole over the shallow sand", Practice, practised, quantity.Pressure, "0 bar", "hydrostatics: drilled with less, the sand flows when it is cut"),
		least(RuleShallowMud, "shallow_mud", "Kill mud lasts", Practice, practised, quantity.Hours, "0 h", "as planned in the section, at the kill flow"),
		most(RulePilotHole, "pilot_hole", "Pilot hole through shallow gas", Practice, practised, diameter, "12 1/4 in", "drillingforgas.com, shallow gas standards"),
		most(RuleHousingTilt, "housing_tilt", "Housing off the vertical", Practice, practised, quantity.Angle, "1 deg", "common practice, more bends the wellhead under riser and stack; from memory"),
		least(RulePlugBumped, "plug_bumped", "Plug bumped", Practice, practised, quantity.Count, "1", "common practice, without it the shoe track is looked at before it is drilled; from memory"),
		most(RuleShoeOff, "shoe_off", "Shoe as built off the planned one", Practice, practised, length, "40 ft", "common practice, a joint; from memory"),
		least(RuleCementReturns, "cement_returns", "Returns seen, cement to the seabed", Practice, practised, quantity.Count, "1", "common practice, without them a top-up job is looked at; from memory"),
		most(RuleReadingMud, "reading_mud", "Mud changed since the drag reading", Practice, practised, quantity.Density, "0.05 sg", "common practice, it floats the string otherwise; from memory"),
		least(RuleStockMass, "stock_mass", "Bulk left over what stays aboard", Practice, practised, quantity.Mass, "0 t", "mass balance; what stays as entered, or by practice"),
		least(RuleStockVolume, "stock_volume", "Fluid left over what stays aboard", Practice, practised, quantity.Volume, "0 m3", "volume balance; what stays as entered, or by practice"),
		least(RuleBoat, "boat", "Boat before what it brings is needed", Practice, practised, quantity.Days, "0 d", "by the likely durations and the boat's day as entered; common practice"),
		least(RuleReliefChecks, "relief_checks", "Recomputed by the relief", Practice, practised, quantity.Count, "1", "common practice, the relief works strokes and kill figures out before he takes over; from memory"),
		most(RuleReliefStrokes, "relief_strokes", "Strokes of the relief off the program's", Practice, practised, quantity.Ratio, "1 %", "common practice, pump efficiency is known no better; from memory"),
		most(RuleReliefMud, "relief_mud", "Kill mud of the relief off the program's", Practice, practised, quantity.Density, "0.01 sg", "common practice, as a balance is read; from memory"),
		most(RuleReliefPressure, "relief_pressure", "Pressure of the relief off the program's", Practice, practised, quantity.Pressure, "5 bar", "common practice, as a gauge is read; from memory"),
	}
	for i, r := range list {
		if int(r.ID) != i || len(list) != int(ruleCount) {
			panic("model: internal error: rule table out of order at " + r.Key)
		}
	}
	return list
})
