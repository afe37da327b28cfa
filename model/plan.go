// Package model holds the plan of a subsea well: what people put in, and nothing that is computed from it.
//
// Start with [Plan], then [Groups]: every value a person can edit is declared there once, as a [Field], with its name,
// kind of quantity, range, default and help. The editor, the file reader and the help are all made from that table.
// Changes go through [History], which can take each of them back. Reading and writing files is in model/planfile,
// quantities and units are in model/quantity, published pipe in model/catalogue.
//
// The package has no formula: what follows from a plan is computed in calc.
package model

import "borewalk/model/quantity"

// Schema is the version of the plan's file format. A file with a higher number is refused, not guessed at.
const Schema = 1

// Plan is one well: its datum, rig, prognosis and trajectory, and its hole sections from the seabed down.
//
// Depths are measured along hole from the rotary unless the field says otherwise. A zero [quantity.Value] is a blank
// entry. Every leaf is either a quantity.Value or a string, so that each field can be handled alike.
type Plan struct {
	Well       Well
	Units      Units
	Wellhead   Wellhead
	Rig        Rig
	Pumps      []Pump
	Rams       []Ram
	PipePups   []PipePup
	Liners     []Liner
	Trajectory Trajectory
	Surveys    []Survey
	Prognosis  Prognosis
	Window     []WindowRow
	Formations []Formation
	Limits     Limits
	Seats      Seats
	Schedule   Schedule
	Stocks     []Stock
	Status     Status
	Handovers  []Handover
	Sections   []Section
	Log        []LogRow
	Trials     []Trial
}

// Row is what every element of a list carries: where it stood in the file it was read from, so that a save can keep
// the comments around it. Zero means that it was added since.
type Row struct {
	Origin int
}

// rowOrigin gives the lists, which know no type, the mark of any row.
func (r *Row) rowOrigin() *int { return &r.Origin }

// Well names the well and fixes its datum.
type Well struct {
	Name, Operator, Field, Type, Revision, Author, Date string
	UnitSet, RuleSet                                    string

	AirGap, WaterDepth                    quantity.Value
	TideLow, TideHigh                     quantity.Value
	Seawater, Salinity                    quantity.Value
	SeaBy                                 string
	SurfaceTemperature, SeabedTemperature quantity.Value
	Thermocline                           quantity.Value
	GeothermalGradient, RockConductivity  quantity.Value
}

// Units holds the plan's own choice of unit for single kinds of quantity, over its unit set, by quantity.Kind; blank
// follows the set.
type Units [unitKinds]string

// unitKinds is more than there are kinds of quantity.
const unitKinds = 64

// Wellhead describes the subsea wellhead: its two housings and what passes through it.
type Wellhead struct {
	LPSize, LPAboveMudline quantity.Value
	DatumAboveMudline      quantity.Value
	Rating                 quantity.Value
	Bore                   quantity.Value
}

// Rig describes the floating rig as far as the well feels it.
type Rig struct {
	Name, Kind                        string
	HookLoad, BlockWeight             quantity.Value
	TopDriveTorque                    quantity.Value
	StandLength                       quantity.Value
	RiserOD, RiserID, RiserFoam       quantity.Value
	BOPBore, BOPHeight, BOPRating     quantity.Value
	AnnularRating                     quantity.Value
	ChokeID, ChokeLength              quantity.Value
	KillID, KillLength                quantity.Value
	BoosterID, BoosterLength          quantity.Value
	TripTank, ActivePits, ReservePits quantity.Value
	Barite, WeightingDensity          quantity.Value
	WeightingRate                     quantity.Value
	UnitRate, UnitPressure            quantity.Value
	Heave                             quantity.Value
	SurfaceLength, SurfaceID          quantity.Value
}

// Pump is one kind of mud pump on board, and how many of it there are.
type Pump struct {
	Row
	Count                          quantity.Value
	Action                         string
	Liner, Rod, Stroke, Efficiency quantity.Value
	MaxRate, PressureLimit         quantity.Value
}

// Liner is a liner on board that the pumps can be given.
type Liner struct {
	Row
	Size, PressureLimit quantity.Value
}

// Trajectory says how the well path is given.
type Trajectory struct {
	Method                                   string
	KickOff, BuildRate, Inclination, Azimuth quantity.Value
}

// Survey is one station of a well path given as a list.
type Survey struct {
	Row
	Depth, Inclination, Azimuth quantity.Value
}

// Prognosis says from where the depths and densities of the pressure prognosis are reckoned.
type Prognosis struct {
	DepthFrom, DensityFrom string
	JudgeBelow             quantity.Value
}

// WindowRow is one depth of the pressure prognosis.
type WindowRow struct {
	Row
	Depth, Pore, Fracture, Stability, Overburden, Temperature quantity.Value
	Note                                                      string
}

// Formation is one formation top and what may hurt there.
type Formation struct {
	Row
	Name, Hazard, Isolate string
	Top, ROP              quantity.Value
}
