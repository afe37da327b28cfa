package kill

import "math"

// A Peak is the highest value of something and when it was first reached.
type Peak struct {
	Value        float64 // Value in Pa, of gas in m³.
	Time, Pumped float64 // in s and m³ since the pumps were started
}

// A Summary is what one wants to know of a whole job.
type Summary struct {
	ShutInChoke     float64 // ShutInChoke is the choke with the well shut in, in Pa: SICP.
	ShutInStandpipe float64 // ShutInStandpipe is the standpipe with the well shut in, in Pa: SIDPP.
	KillDensity     float64 // KillDensity is that of the kill mud that was pumped, in kg/m³.
	Mass            float64 // Mass is that of the kick in kg.
	Target          float64 // Target is what is to be held at the end of the string while pumping, in Pa.

	Choke Peak   // Choke is its highest pressure.
	Foot  Peak   // Foot is the highest pressure at the end of the string: above what was asked for where the choke was wide open.
	At    []Peak // At is the highest pressure at each of [Job.Places].
	Gas   Peak   // Gas is its largest volume in the well, and with it the largest pit gain.

	// What had been pumped, in m³, when the gas came to each of [Job.Places] (nothing if it stood there from the start), to
	// the stack and the choke, and was out; and when the kill mud came to the bit, the stack and the choke.
	GasAtPlace                                   []float64
	GasAtStack, GasAtChoke, GasOut               float64
	KillMudAtBit, KillMudAtStack, KillMudAtChoke float64

	Pumped, Time float64 // of the whole job, in m³ and s
}

// raise takes a value that may be the highest.
func (p *Peak) raise(value float64, m *Moment) {
	if value > p.Value {
		*p = Peak{value, m.Time, m.Pumped}
	}
}

// newSummary returns the summary of nothing yet.
func newSummary(j *Job) Summary {
	none := Peak{Value: math.Inf(-1)}
	s := Summary{KillDensity: j.KillMud.Density, Choke: none, Foot: none, Gas: none}
	s.At, s.GasAtPlace = make([]Peak, len(j.Places)), make([]float64, len(j.Places))
	for i := range s.At {
		s.At[i] = none
	}
	return s
}

// add takes a moment in.
func (s *Summary) add(m *Moment) {
	s.Choke.raise(m.Choke, m)
	s.Foot.raise(m.Foot, m)
	s.Gas.raise(m.GasVolume, m)
	for i := range m.At {
		s.At[i].raise(m.At[i], m)
	}
	switch m.Mark {
	case GasAtPlace:
		s.GasAtPlace[m.Place] = m.Pumped
	case GasAtStack:
		s.GasAtStack = m.Pumped
	case GasAtChoke:
		s.GasAtChoke = m.Pumped
	case GasOut:
		s.GasOut = m.Pumped
	case KillMudAtBit:
		s.KillMudAtBit = m.Pumped
	case KillMudAtStack:
		s.KillMudAtStack = m.Pumped
	case KillMudAtChoke:
		s.KillMudAtChoke = m.Pumped
	}
	s.Pumped, s.Time = m.Pumped, m.Time
}
