package model

import "borewalk/model/quantity"

// Section is one hole section, from where the last one ended to its own total depth, and the string set in it.
type Section struct {
	Row
	Name, Returns, Completion string

	// Hole.
	Hole, Bit, OpenerBehind quantity.Value
	DepthBy                 string
	TD, Shoe, Rathole       quantity.Value
	Washout                 quantity.Value
	Caliper                 []CaliperRow

	// Mud.
	Fluid                         string
	Density, PV, YP               quantity.Value
	WeightedFrom, WeightedDensity quantity.Value
	SpotDensity, SpotPV, SpotYP   quantity.Value
	Flow, Booster, ROP            quantity.Value
	Cuttings, Standpipe           quantity.Value
	LeakOff                       quantity.Value
	Rheology                      Rheology
	Recipe                        Recipe
	Treatment                     Treatment
	Riserless                     Riserless
	Volumes                       Volumes
	Downhole                      Downhole
	Circulating                   Circulating

	Cleaning Cleaning

	// Casing or liner.
	Purpose, Method, Hung string
	ShoulderBelowDatum    quantity.Value
	Top                   quantity.Value
	ShoeTrack             quantity.Value
	Casing                []CasingPart
	Loads                 Loads
	Centring              Centring
	Tally                 Tally
	Landing               Landing
	Pups                  []Pup
	Joints                []Joint

	// Drill string.
	String       []StringPart
	Trip         Trip
	Drag         Drag
	DragReadings []DragReading
	StringLoads  StringLoads
	SpaceOut     SpaceOut
	Nozzles      Nozzles

	// Well control.
	ShoeTest   ShoeTest
	TestPoints []TestPoint
	Kick       Kick
	Kill       Kill
	SlowRates  []SlowRate
	StackTest  StackTest
	Shallow    Shallow
	Ranges     Ranges

	// Cement job.
	Cement   Cement
	Slurries []Slurry
	Spacers  []Spacer
	Plugs    []CementPlug

	// Operations.
	Steps []StepRow
	Rates Rates
	// What it came to be.
	Built         Built
	BuiltSlurries []BuiltSlurry
	Use           Use
	Done          []DoneRow
}

// CaliperRow is the measured mean diameter of the open hole from a depth down to the next row's, or to TD.
type CaliperRow struct {
	Row
	Depth, Diameter quantity.Value
}

// CasingPart is a length of the casing string with one size, weight and grade. Parts stand bottom up; the highest has
// no length and reaches to the string's top. Blank properties come from the catalogue.
type CasingPart struct {
	Row
	Size, Weight                              quantity.Value
	Grade, DriftClass                         string
	Length                                    quantity.Value
	ID, Drift, ConnectorOD, LinearMass, Yield quantity.Value
	Wear                                      quantity.Value
	JointTension, JointBurst, JointCollapse   quantity.Value
}

// StringPart is one component of the drill string. Parts stand bottom up; the highest has no length and reaches to the
// rotary. Blank properties come from the catalogue.
type StringPart struct {
	Row
	Item, Name              string
	Size, Weight            quantity.Value
	Grade                   string
	Length                  quantity.Value
	ID, JointOD, LinearMass quantity.Value

	JointID, JointLength, JointEvery quantity.Value
	Drop, DropFlow, DropDensity      quantity.Value
	FlowLeast, FlowMost              quantity.Value

	Class, Connection string
	Count, Neck       quantity.Value
}
