package seats

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"
)

// A Curve gives an equivalent density in kg/m³ at a true vertical depth in m, and false where it has none.
type Curve func(tvd float64) (emw float64, ok bool)

// A Window is what a well is drilled through, in equivalent density from the rotary against true vertical depth from it in m.
type Window struct {
	Pore, Fracture Curve
	Stability      Curve // the least mud that holds the wall of the hole up; nil, or without a value, where nothing is known

	// Riserless is the hole full of what it is drilled with while it is open to the sea: seawater, or mud that is pumped and
	// dumped, with the sea above the seabed. Nil where the uppermost hole is drilled with mud as the others are. Between depths
	// it goes as a + c/TVD, which a column below the sea does.
	Riserless Curve

	Depths      []float64 // at which a curve bends, begins or ends, in any order
	Top, Bottom float64   // the seabed, or the depth from which the well is judged, and the well's TD
}

// Margins are what is asked for over the bare window, in kg/m³ of equivalent density from the rotary but for what says otherwise.
type Margins struct {
	Trip     float64 // mud over pore pressure
	Fracture float64 // mud below fracture pressure, and with a kick as much

	// Kick is by how much the pressure at the bottom of the hole may be more than the mud's when the well is shut in. At a
	// depth above the bottom that is Kick × bottom / depth.
	Kick float64

	Differential float64 // Pa by which the mud may press more than the pore pressure anywhere in the hole; 0 where it does not matter
	Riserless    float64 // a riserless fluid over pore pressure and stability; a little below zero for a prognosis that is rounded

	// Tolerance is a further condition on a hole from a shoe to a bottom with the least mud for it, such as the kick that it
	// tolerates; nil where there is none. It is asked a few times between neighbouring depths of the window: where it holds,
	// fails and holds again between two of those, that is not seen.
	Tolerance func(shoe, bottom, mud float64) bool
}

// check says what is wrong with the margins.
func (m *Margins) check() error {
	for _, x := range []struct {
		name  string
		value float64
	}{{"trip margin", m.Trip}, {"fracture margin", m.Fracture}, {"kick", m.Kick}, {"allowed differential pressure", m.Differential}} {
		if !finite(x.value) || x.value < 0 {
			return fmt.Errorf("casing seats: the %s is %g; give 0 or more", x.name, x.value)
		}
	}
	if !finite(m.Riserless) {
		return errors.New("casing seats: the margin of the riserless fluid is not a number; give one, 0 for none")
	}
	return nil
}

// A row is what the curves give at a depth; no stability, and no riserless fluid, is zero.
type row struct{ tvd, pore, fracture, stability, fluid float64 }

// A well is a window that has been read, with what is asked for.
type well struct {
	Window
	margins Margins
	rows    []row // from top to bottom, both included
}

// read looks at the curves where they bend. From then on only their rows count.
func read(w Window, m Margins) (*well, error) {
	switch {
	case w.Pore == nil || w.Fracture == nil:
		return nil, errors.New("casing seats: pore or fracture pressure is missing; give both")
	case !finite(w.Top) || !finite(w.Bottom) || !(w.Top >= shallowest) || !(w.Bottom > w.Top):
		return nil, fmt.Errorf("casing seats: from %g m to %g m is no well; give a top below the rotary and a bottom below that", w.Top, w.Bottom)
	}
	if err := m.check(); err != nil {
		return nil, err
	}
	depths := []float64{w.Top, w.Bottom}
	for _, tvd := range w.Depths {
		if tvd > w.Top && tvd < w.Bottom {
			depths = append(depths, tvd)
		}
	}
	slices.Sort(depths)
	depths = slices.Compact(depths)
	read := &well{Window: w, margins: m, rows: make([]row, 0, len(depths))}
	for _, tvd := range depths {
		r, err := w.row(tvd)
		if err != nil {
			return nil, err
		}
		read.rows = append(read.rows, r)
	}
	return read, nil
}

// row reads the curves at a depth.
func (w *Window) row(tvd float64) (r row, err error) {
	r.tvd = tvd
	for _, x := range []struct {
		name  string
		curve Curve
		value *float64
		must  bool
	}{{"pore pressure", w.Pore, &r.pore, true}, {"fracture pressure", w.Fracture, &r.fracture, true},
		{"stability", w.Stability, &r.stability, false}, {"riserless fluid", w.Riserless, &r.fluid, true}} {
		if x.curve == nil {
			continue
		}
		value, ok := x.curve(tvd)
		switch {
		case ok && finite(value):
			*x.value = value
		case ok || x.must:
			return r, fmt.Errorf("casing seats: the %s has no value at %.2f m; let it reach from the top to the bottom of the well", x.name, tvd)
		}
	}
	return r, nil
}

// below returns the number of the first row below a depth.
func (w *well) below(tvd float64) int {
	return sort.Search(len(w.rows), func(i int) bool { return w.rows[i].tvd > tvd })
}

// at returns what the curves give at a depth of the well. Between two rows stability counts only where both have one.
func (w *well) at(tvd float64) row {
	i := w.below(tvd)
	if a := w.rows[max(i-1, 0)]; i == len(w.rows) || a.tvd >= tvd {
		return a
	}
	return between(w.rows[i-1], w.rows[i], tvd)
}

// between returns the row between two: straight lines, and for the fluid below the sea a + c/TVD.
func between(a, b row, tvd float64) row {
	share := (tvd - a.tvd) / (b.tvd - a.tvd)
	r := row{tvd: tvd, pore: a.pore + share*(b.pore-a.pore), fracture: a.fracture + share*(b.fracture-a.fracture)}
	r.fluid = a.fluid + share*b.tvd/tvd*(b.fluid-a.fluid)
	if a.stability > 0 && b.stability > 0 {
		r.stability = a.stability + share*(b.stability-a.stability)
	}
	return r
}

// Bounds of what is a number at all, in m, kg/m³ or Pa: no well comes near them, and within them nothing overflows.
const (
	shallowest = 1e-3 // depth; others are divided by it
	beyond     = 1e12
)

// finite reports whether x is a number that a well can have.
func finite(x float64) bool { return math.Abs(x) < beyond }
