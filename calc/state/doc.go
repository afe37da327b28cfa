// Package state is a well at one moment: what hangs in the hole and how deep, and
// which fluid stands where.
//
// A [Layout] says how the well is built: the bore, the string in it, where returns
// come out. [New] makes a [Well] of it, full of one fluid; [Well.Spot] lays others.
// From there on two things happen to a well, and everything else is a sequence of
// them: a volume is pumped ([Well.Pump], [Well.Reverse], and [Well.Advance] where
// time counts), and the string is moved ([Well.Lower], [Well.Raise]). Plugs ride
// along ([Well.Drop]). Gas in the annulus gives way under pressure: with [Well.Settle]
// and [Well.Circulate] a choke holds the pressure at the end of the string, and parcels
// take the volume that it allows. Depths of all boundaries ([Well.AppendLayers]) and pressures
// anywhere ([Well.Pressure]) follow from it.
//
// # Conduits
//
//	   Inside                   down the string: its bore, or, with an inner string in
//	│  │▒▒▒▒│  │                casing, the bore of the inner string and then the casing
//	│  │▒▒▒▒│  │ Annulus        from the end of the string to the outlet: the seabed,
//	│  │▒▒▒▒│░░│                the rotary, or through a line from the stack
//	│  ├┐▒▒┌┤░░│ Between        around an inner string: shut off above, standing
//	│  └┘▒▒└┘░░│
//	│░░░░░░░░░░│
//	│▓▓▓▓▓▓▓▓▓▓│ Pocket         below the string: the rathole, standing
//
// Each is a stack of fluids from the top down, held by volume. Volumes are moved,
// never worked out anew from depths, so what goes in is held or has come out, to
// rounding, whatever the order and the size of the steps.
//
// # What is left out
//
// Fluids do not mix or slip past each other, and do not change volume with pressure and
// temperature, but for parcels in the annulus when it is settled. Pipes hang in the middle of the bore. A pocket stands still while
// the well is circulated, whatever its density. Gel strength, tool joints, the
// surface lines, the pressure to land, burst or bump a plug, and losses to the
// formation are not modelled. Levels in the string follow the balance of pressures
// at once: the mass of the fluids has no inertia.
//
// Depths are metres along the hole below the rotary, volumes m³, pressures gauge Pa,
// densities kg/m³, flow m³/s. A Well is for one goroutine: reading pressures fills
// scratch memory inside it.
package state
