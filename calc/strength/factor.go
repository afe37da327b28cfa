package strength

// A Factor is a rating over the load that acts against it.
type Factor struct {
	Value  float64 // Value is the design factor, 0 where nothing loads the pipe in this way.
	Loaded bool    // Loaded says whether a load acts in this way at all.
	By     Part    // By is the part that sets the rating.
}

// negligible is the share of a rating below which a load counts as none, so that a
// rounding error does not show as a factor of a million.
const negligible = 1e-6

// factorOf returns a rating over a load.
func factorOf(r Rating, load float64) Factor {
	if !(load > 0) || load <= negligible*r.Value {
		return Factor{By: r.By}
	}
	return Factor{Value: r.Value / load, Loaded: true, By: r.By}
}

// DesignFactors are the factors of one point, one for every way to fail.
type DesignFactors struct {
	Depth       float64 // Depth is that of the load, in m.
	Burst       Factor
	Collapse    Factor
	Tension     Factor // Tension counts bending on the stretched side.
	Compression Factor // Compression counts bending on the squeezed side.
	Triaxial    Factor // Triaxial is of the pipe; the connection's envelope is the maker's.
	Regime      Regime // Regime is that of the collapse rating.
	Place       Place  // Place is where in the wall the triaxial stress is highest.
}

// Factors returns the design factors:
//
//	burst         internal yield/(inside - outside)
//	collapse      collapse under tension/equivalent pressure from outside
//	tension       body yield/(axial force + bending)
//	compression   body yield/(bending - axial force)
//	triaxial      yield/von Mises stress
//
// where each rating is the connection's if that is less. A factor below 1 says that
// the load is above the rating. Source: common practice in casing design.
func (r Ratings) Factors() DesignFactors {
	l := r.Load
	return DesignFactors{
		Depth:       l.Depth,
		Burst:       factorOf(r.Burst, l.Inside-l.Outside),
		Collapse:    factorOf(r.Collapse, r.External),
		Tension:     factorOf(r.Tension, l.Axial+r.BendingPull),
		Compression: factorOf(r.Compression, r.BendingPull-l.Axial),
		Triaxial:    factorOf(Rating{Value: r.Pipe.Yield}, r.Worst.VonMises),
		Regime:      r.CollapseRegime,
		Place:       r.Worst.Place,
	}
}

// A Mode is a way to fail.
type Mode int

// The modes, in the order of [DesignFactors].
const (
	InBurst Mode = iota
	InCollapse
	InTension
	InCompression
	InTriaxial
)

// String names the mode, and is empty for none.
func (m Mode) String() string {
	switch m {
	case InBurst:
		return "burst"
	case InCollapse:
		return "collapse"
	case InTension:
		return "tension"
	case InCompression:
		return "compression"
	case InTriaxial:
		return "triaxial"
	}
	return ""
}

// LeastFactors are the factors that a design asks for; one that is not above zero asks
// for nothing.
type LeastFactors struct {
	Burst, Collapse, Tension, Compression, Triaxial float64
}

// Governing returns the way to fail that is nearest to what the design asks for, and
// its factor over the factor asked for: the design is met where that is 1 or more.
// The first of equals is returned. It reports false where nothing that is asked for
// is loaded.
func (d DesignFactors) Governing(least LeastFactors) (Mode, float64, bool) {
	rows := [...]struct {
		factor Factor
		least  float64
	}{
		InBurst:       {d.Burst, least.Burst},
		InCollapse:    {d.Collapse, least.Collapse},
		InTension:     {d.Tension, least.Tension},
		InCompression: {d.Compression, least.Compression},
		InTriaxial:    {d.Triaxial, least.Triaxial},
	}
	mode, lowest, found := Mode(0), 0.0, false
	for i, row := range rows {
		if !row.factor.Loaded || !(row.least > 0) {
			continue
		}
		used, ok := finite(row.factor.Value / row.least)
		if ok && (!found || used < lowest) {
			mode, lowest, found = Mode(i), used, true
		}
	}
	return mode, lowest, found
}
