package column

import (
	"errors"
	"fmt"
	"math"
	"sort"
)

// joined is the gap or overlap in metres that two neighbouring layers may show and
// still count as touching, and by which a depth may lie outside a stack and still
// count as its end: a micrometre, the rounding of depths found along different
// ways.
const joined = 1e-6

// A Layer is a length of one fluid.
type Layer struct {
	Top     float64 // Top is the true vertical depth of its upper end in metres.
	Bottom  float64 // Bottom is the true vertical depth of its lower end in metres.
	Density float64 // Density is its density in kg/m³.
	Label   string  // Label names it to a person.
}

// A Stack is layers of fluid in order downwards, with the pressure at every depth.
// The zero Stack holds no fluid. A Stack is not changed after it has been made.
type Stack struct {
	layers []loaded
	end    float64 // Pa at the bottom
}

// loaded is a layer with the pressure at its top, in Pa.
type loaded struct {
	Layer
	pressure float64
}

// NewStack returns the stack of the given layers, which begin at a surface where
// the gauge pressure is surfacePressure in Pa (zero if open to the air). Layers
// must follow each other downwards without a gap; those without thickness are left
// out. At least one must remain. An error names the layer, counted from 1.
func NewStack(surfacePressure float64, layers ...Layer) (Stack, error) {
	if !finite(surfacePressure) {
		return Stack{}, errors.New("fluid column: the pressure at the top is not a number; give one, 0 if it is open")
	}
	kept := make([]loaded, 0, len(layers))
	for i, layer := range layers {
		if err := layer.check(i + 1); err != nil {
			return Stack{}, err
		}
		if i > 0 && math.Abs(layer.Top-layers[i-1].Bottom) > joined {
			return Stack{}, fmt.Errorf("fluid column: layer %d%s begins at %.2f m but layer %d ends at %.2f m; let them meet",
				i+1, named(layer.Label), layer.Top, i, layers[i-1].Bottom)
		}
		if layer.Bottom > layer.Top {
			kept = append(kept, loaded{Layer: layer})
		}
	}
	if len(kept) == 0 {
		return Stack{}, errors.New("fluid column: no layer has any thickness; give at least one that does")
	}
	pressure := surfacePressure
	for i := range kept {
		kept[i].pressure = pressure
		pressure += kept[i].weight()
	}
	if !finite(pressure) {
		return Stack{}, errors.New("fluid column: the pressure grows beyond all numbers; check the units of density and depth")
	}
	return Stack{kept, pressure}, nil
}

// RestingOn returns the stack of the given layers whose gauge pressure at the
// bottom of the lowest is known, in Pa: a column above a formation of known
// pressure. The pressure at the top follows and may come out below zero, which
// says that the column cannot stand so high.
func RestingOn(bottomPressure float64, layers ...Layer) (Stack, error) {
	if !finite(bottomPressure) {
		return Stack{}, errors.New("fluid column: the pressure at the bottom is not a number; give one")
	}
	s, err := NewStack(0, layers...)
	if err != nil {
		return Stack{}, err
	}
	lift := bottomPressure - s.end
	for i := range s.layers {
		s.layers[i].pressure += lift
	}
	s.end = bottomPressure
	return s, nil
}

// Riserless returns the stack of a hole that is open to the sea: sea water of the
// given density in kg/m³ from mean sea level to the seabed, then the layers below.
// The air gap is the height of the rotary above mean sea level in metres, the
// mudline the depth of the seabed below the rotary. Nothing above sea level has
// weight, so depths there are outside the stack.
func Riserless(airGap, mudline, seawater float64, below ...Layer) (Stack, error) {
	switch {
	case !finite(airGap) || airGap < 0:
		return Stack{}, fmt.Errorf("fluid column: air gap %g m; give the height of the rotary above the sea, 0 or more", airGap)
	case !(mudline > airGap):
		return Stack{}, fmt.Errorf("fluid column: seabed at %.2f m is not below the sea surface at %.2f m; check air gap and water depth", mudline, airGap)
	}
	layers := make([]Layer, 0, 1+len(below))
	layers = append(layers, Layer{Top: airGap, Bottom: mudline, Density: seawater, Label: "sea"})
	return NewStack(0, append(layers, below...)...)
}

// DensityBelowSea returns the density in kg/m³ that the fluid in the hole below
// the seabed must have, with the sea on top of it, to give a gauge pressure in Pa
// at a true vertical depth in metres. Against a pore pressure this is the density
// that still holds the well when the riser is gone; less the equivalent density of
// that pressure it is the riser margin. It reports false at and above the seabed
// and where an argument is not a finite number.
func DensityBelowSea(airGap, mudline, seawater, pressure, tvd float64) (float64, bool) {
	if !(mudline >= airGap) || !(tvd > mudline) {
		return 0, false
	}
	density := (pressure - seawater*G*(mudline-airGap)) / (G * (tvd - mudline))
	if !finite(density) {
		return 0, false
	}
	return density, true
}

// check reports whether the layer can be part of a stack.
func (l Layer) check(row int) error {
	switch {
	case !finite(l.Top) || !finite(l.Bottom):
		return fmt.Errorf("fluid column: layer %d%s: a depth is missing or not a number; give top and bottom", row, named(l.Label))
	case l.Bottom < l.Top:
		return fmt.Errorf("fluid column: layer %d%s: its bottom at %.2f m is above its top at %.2f m; exchange them", row, named(l.Label), l.Bottom, l.Top)
	case !finite(l.Density) || l.Density < 0:
		return fmt.Errorf("fluid column: layer %d%s: density %g kg/m³; give one of 0 or more", row, named(l.Label), l.Density)
	}
	return nil
}

// named returns a label in quotes after a space, or nothing.
func named(label string) string {
	if label == "" {
		return ""
	}
	return fmt.Sprintf(" %q", label)
}

// weight returns the pressure in Pa that the layer adds.
func (l Layer) weight() float64 { return l.Density * G * (l.Bottom - l.Top) }

// Top returns the true vertical depth in metres at which the stack begins.
func (s Stack) Top() float64 {
	if len(s.layers) == 0 {
		return 0
	}
	return s.layers[0].Top
}

// Bottom returns the true vertical depth in metres at which the stack ends.
func (s Stack) Bottom() float64 {
	if len(s.layers) == 0 {
		return 0
	}
	return s.layers[len(s.layers)-1].Bottom
}

// At returns the layer at a true vertical depth in metres. A depth at which two
// layers meet belongs to the lower one. It reports false outside the stack.
func (s Stack) At(tvd float64) (Layer, bool) {
	i, ok := s.find(tvd)
	if !ok {
		return Layer{}, false
	}
	return s.layers[i].Layer, true
}

// find returns the number of the layer at a depth.
func (s Stack) find(tvd float64) (int, bool) {
	if len(s.layers) == 0 || !(tvd >= s.Top()-joined) || !(tvd <= s.Bottom()+joined) {
		return 0, false
	}
	i := sort.Search(len(s.layers), func(i int) bool { return s.layers[i].Top > tvd })
	return max(i-1, 0), true
}

// Pressure returns the gauge pressure in Pa at a true vertical depth in metres. It
// reports false outside the stack. It is continuous where layers meet.
func (s Stack) Pressure(tvd float64) (float64, bool) {
	i, ok := s.find(tvd)
	if !ok {
		return 0, false
	}
	layer := &s.layers[i]
	return layer.pressure + layer.Density*G*(tvd-layer.Top), true
}

// EMW returns the equivalent density in kg/m³, counted from the rotary, at a true
// vertical depth in metres. It reports false outside the stack and at and above
// the rotary.
func (s Stack) EMW(tvd float64) (float64, bool) {
	pressure, ok := s.Pressure(tvd)
	if !ok {
		return 0, false
	}
	return EMW(pressure, tvd)
}

// AppendBreaks appends to dst the true vertical depths in metres at which the
// stack begins, changes fluid and ends.
func (s Stack) AppendBreaks(dst []float64) []float64 {
	for i := range s.layers {
		dst = append(dst, s.layers[i].Top)
	}
	if len(s.layers) > 0 {
		dst = append(dst, s.Bottom())
	}
	return dst
}
