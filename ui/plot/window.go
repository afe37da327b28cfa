// Package plot draws the pressure window of a well: pore pressure, borehole stability and fracture pressure over true
// vertical depth, with the mud of each section and the shoes. Start at Draw.
//
// Values are equivalent densities in kg/m3 and true vertical depths in m, both from the rotary; they are drawn as given
// and labelled as the caller says.
package plot

import (
	"math"

	"borewalk/calc"
)

// Window is what a plot shows.
type Window struct {
	Points      []calc.WindowPoint // by depth
	Mud         []MudLine
	Pumped      []MudPoint // the mud of the section being worked while it circulates, by depth
	Moved       []Band     // and between what a trip takes it, by depth
	Shoes       []Shoe
	Seats       []Seat
	Section     int     // the section being worked, from 0: its mud is drawn with a capital letter
	Top, Bottom float64 // the depths shown; when Bottom is not below Top, those of the points
	Ticks       []Tick  // round equivalent densities for the axis; none for the ends alone
	DepthTicks  []Tick  // round depths for the axis
	EMW         func(si float64) string
	Depth       func(si float64) string // both in the unit shown, without the unit; nil for no numbers
}

// MudLine is the density of a section's mud: an equivalent density at two depths or more, by depth. Mud with returns to
// the rig has the same at both ends, mud with returns at the seabed has not.
type MudLine struct {
	Section int
	Points  []MudPoint
}

// MudPoint is the equivalent density of a mud at a depth.
type MudPoint struct {
	TVD, EMW float64
}

// Band is the equivalent densities between which a mud is taken at a depth by swab and surge.
type Band struct {
	TVD, Swab, Surge float64
}

// Shoe is a casing shoe, with the equivalent density to which it is tested, zero for none.
type Shoe struct {
	TVD   float64
	Label string
	Test  float64
}

// Seat is a depth that the prognosis would allow for a shoe, found from the bottom up or from the top down.
type Seat struct {
	TVD float64
	Up  bool
}

// Tick is a place on an axis and what is written at it.
type Tick struct {
	SI    float64
	Label string
}

// Depths returns the depths that the plot shows, and false when there are none.
func (w *Window) Depths() (top, bottom float64, ok bool) {
	if w.Bottom > w.Top && known(w.Top) && known(w.Bottom) {
		return w.Top, w.Bottom, true
	}
	top, bottom = math.Inf(1), math.Inf(-1)
	for _, p := range w.Points {
		if known(p.TVD) {
			top, bottom = min(top, p.TVD), max(bottom, p.TVD)
		}
	}
	return top, bottom, bottom > top
}

// Densities returns the lowest and the highest equivalent density in the depths shown, and false when there are none.
// Choose the ticks from them; the axis reaches as far as data and ticks.
func (w *Window) Densities() (low, high float64, ok bool) {
	top, bottom, ok := w.Depths()
	low, high = math.Inf(1), math.Inf(-1)
	see := func(emw float64, has bool) {
		if has {
			low, high = min(low, emw), max(high, emw)
		}
	}
	if !ok {
		return 0, 0, false
	}
	depths := []float64{top, bottom}
	for _, p := range w.Points {
		depths = append(depths, p.TVD)
	}
	for _, m := range w.Mud {
		for _, p := range m.Points {
			depths = append(depths, p.TVD)
		}
	}
	curves := w.curves()
	for _, tvd := range depths {
		if !(tvd >= top && tvd <= bottom) {
			continue
		}
		for k := range curves {
			see(curves[k].at(tvd))
		}
	}
	for _, s := range w.Shoes {
		see(s.Test, s.Test > 0 && known(s.Test) && s.TVD >= top && s.TVD <= bottom)
	}
	return low, high, high >= low
}

// largest is above every depth and density that a plot can mean; what is beyond would overflow its columns.
const largest = 1e9

// known reports whether a number can be shown; NaN and infinities cannot.
func known(x float64) bool { return math.Abs(x) <= largest }
