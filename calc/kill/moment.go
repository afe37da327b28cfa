package kill

import "borewalk/calc/state"

// A Stage is what is being done.
type Stage uint8

// The stages.
const (
	ShutIn Stage = iota
	First        // the circulation that brings the gas out, and the only one with [Job.OneCirculation]
	Second       // the circulation with kill mud after that
	Done         // kill mud all round and the pumps off; the choke holds what the formation still needs, most often nothing
)

// String returns the trade's word.
func (s Stage) String() string {
	return [...]string{"shut in", "first circulation", "second circulation", "done"}[s]
}

// A Mark says why a moment stands out.
type Mark uint8

// The marks. A moment without one is a step, or something changes its slope there.
const (
	NoMark Mark = iota
	GasAtPlace
	GasAtStack
	GasAtChoke
	GasOut
	KillMudAtBit
	KillMudAtStack
	KillMudAtChoke
)

// String returns what has come where.
func (m Mark) String() string {
	return [...]string{"", "gas at place", "gas at stack", "gas at choke", "gas out",
		"kill mud at bit", "kill mud at stack", "kill mud at choke"}[m]
}

// A Moment is the well at one moment. It and what it points to hold until the next one.
type Moment struct {
	Stage Stage
	Mark  Mark
	Place int // Place is the index in [Job.Places] of a moment marked [GasAtPlace].

	Time   float64 // Time in s since the pumps were started.
	Pumped float64 // Pumped in m³ since then.

	Choke     float64   // Choke is the pressure in front of it, in Pa: 0 where it is wide open.
	Standpipe float64   // Standpipe is the pressure on top of the string in Pa, without nozzles and surface lines.
	Foot      float64   // Foot is the pressure at the end of the string in Pa.
	At        []float64 // At is the pressure at each of [Job.Places] in Pa.

	// GasTop and GasBottom are the ends of the gas in the annulus, in metres along the hole, where Gas says that there is any.
	Gas               bool
	GasTop, GasBottom float64
	GasVolume         float64 // GasVolume is the gas in the well in m³.
	Gain              float64 // Gain in m³ is by how much more mud came out of the well than went in, with what the kick pushed out.

	MassIn, MassOut float64 // MassIn is the gas in the well in kg, MassOut what has gone through the choke.
	GasRate         float64 // GasRate is the gas through the choke in kg/s, on the mean since the moment before.

	Well *state.Well // Well is the whole of it, to be read and not to be moved. Its fluids are [Mud], [KillMud] and parcels of gas.
}

// trace is a volume in m³ that is no gas any more, but what rounding leaves of it.
const trace = 1e-9

// look reads the moment off the well, but for what its course knows.
func (m *Moment) look(w *state.Well, places []float64, layers []state.Layer) []state.Layer {
	m.Well = w
	m.Standpipe = w.PumpPressure()
	m.Foot, _ = w.Pressure(state.Annulus, w.End())
	for i, md := range places {
		m.At[i], _ = w.Pressure(state.Annulus, md)
	}
	m.Gas, m.GasTop, m.GasBottom, m.GasVolume, m.MassIn = false, 0, 0, 0, 0
	layers = w.AppendLayers(layers[:0], state.Annulus)
	for i, l := range layers {
		if i == 0 {
			m.Choke, _ = w.Pressure(state.Annulus, l.Top)
		}
		if l.Fluid < FirstGas || l.Volume < trace {
			continue
		}
		if !m.Gas {
			m.Gas, m.GasTop = true, l.Top
		}
		m.GasBottom = l.Bottom
		m.GasVolume += l.Volume
		m.MassIn += l.Volume * w.Fluid(l.Fluid).Density
	}
	return layers
}
