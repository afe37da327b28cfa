package calc

import "borewalk/model/quantity"

// Job is something that is pumped, played through, a cement job or a kill: which fluid stands where, and what the gauges show, moment by moment. Depths are
// along hole from RKB in m; volumes m3, times s, pressures Pa, densities kg/m3.
type Job struct {
	Kind    JobKind
	Fluids  []JobFluid // stands refer to them by number
	Points  []JobPoint // where equivalent densities are followed
	String  []JobBody  // running pipe and casing, top down, then the inner string if there is one
	Events  []JobEvent // in order of time; the first is the start
	Frames  []JobFrame // in order of time
	Wanted  float64    // margin in kg/m³ of equivalent density below what the rock stands that the plan wants
	Dynamic bool       // friction is known: pump pressures and circulating densities are worked out, not only static ones
}

// JobKind says what is played.
type JobKind uint8

// The kinds.
const (
	CementJob     JobKind = iota
	KillJob               // a kick circulated out through the choke
	DisconnectJob         // the riser let go in an emergency
	WalkJob               // one operation of a section's list
)

// JobFluid is one fluid of a job.
type JobFluid struct {
	Name    string
	Density float64
	Role    JobRole
}

// JobRole says what a fluid is there for, which decides how it is drawn.
type JobRole uint8

// The roles.
const (
	MudRole       JobRole = iota // what the hole was full of, and other drilling fluids
	SpacerRole                   // spacer or wash
	CementRole                   // slurry
	DisplacerRole                // pumped behind the cement, or to kill a well
	GasRole                      // that came in; its density is that of the moment
	SeaRole                      // where there is no riser any more
)

// JobPoint is a depth at which the equivalent density is followed.
type JobPoint struct {
	Name     string  // such as "at last shoe"
	Key      string  // of its figures
	MD, TVD  float64 // from RKB
	Fracture float64 // prognosis or planned shoe test there, as EMW from RKB; zero where there is none
	Pore     float64 // prognosis there; zero where there is none
}

// JobBody is a length of pipe through which the job is pumped.
type JobBody struct {
	Top, Bottom, OD, ID float64
	Inner               bool // of an inner string, inside the casing
}

// JobEvent is a moment that the cementer waits for: a fluid starts, a plug is released or lands, the pumps stop.
type JobEvent struct {
	Name  string
	Frame int     // the frame that shows it: the moment just before anything that begins
	Rate  float64 // of the pump from here on
}

// JobFrame is one moment.
type JobFrame struct {
	Event    int     // the latest event
	Time     float64 // since the start
	Pumped   float64 // in all since the start
	Of       float64 // of the stage that is being pumped
	Behind   float64 // behind the cement: what is counted to the bump
	Strokes  float64 // for Behind, by the first kind of rig pump; zero where its output is not known
	Fluid    int     // that is being pumped; -1 while the pumps stand
	Rate     float64 // of the pump
	Returns  float64 // rate of the returns; more than Rate while the cement falls freely
	Returned float64 // in all since the start
	Level    float64 // of the fluid inside the string: 0 is full to the rotary
	Pressure float64 // at the pump; static when the job is not Dynamic
	Choke    float64 // in front of the choke, of a kill
	Gain     float64 // pit gain, of a kill
	Gas      float64 // volume of gas in the well, of a kill
	Inside   []JobStand
	Annulus  []JobStand
	Between  []JobStand // round an inner string
	Pocket   []JobStand // below the shoe
	Riser    []JobStand // in the riser where the stack below it is closed, and beside it the choke line has a part of Annulus
	Parted   bool       // the string is cut at the stack; the riser is gone where sea stands in Riser
	Plugs    []JobPlug
	EMW      []float64 // at Job.Points; circulating when the job is Dynamic
	At       *WalkAt   // where everything is, in an operation of a section's list; nil in other jobs
}

// WalkAt says where everything in the well is at a moment of an operation. Depths are along hole from RKB in m.
type WalkAt struct {
	Pipe      float64 // end of the drill or running string; 0 while none hangs in the hole
	Hole      float64 // depth of the hole
	Top, Shoe float64 // of the section's own string, on its way down or set; Shoe is 0 while it is not in the hole
	Set       bool    // the section's own string is where it stays
	Stack     float64 // foot of the BOP, on its way down or on the wellhead; 0 while it is not in the water
	Gauges    []JobGauge
}

// JobGauge is a figure of a moment, by its name.
type JobGauge struct {
	Name  string
	Kind  quantity.Kind
	Value float64
}

// JobStand is a length of a conduit that one fluid fills, top down; fluid -1 is an empty length.
type JobStand struct {
	Top, Bottom float64
	Fluid       int
}

// JobPlug is a plug that stands or moves in the string.
type JobPlug struct {
	Name   string
	MD     float64
	Landed bool
}
