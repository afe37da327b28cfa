package tripping

import "borewalk/calc/bore"

// A slug of heavier fluid in the upper end of a string falls until the string's column balances that of the fluid outside,
// which stands full. What it leaves empty above is then pulled dry. With the fluid in the hole of density rho, the slug of
// rho', h empty and H the height of the slug:
//
//	rho h = (rho' - rho) H
//
// Source: N. J. Lapeyrouse, Formulas and Calculations for Drilling, Production and Workover, slug calculations (from
// memory; the balance of two columns).

// SlugHeight returns the height in m of slug that leaves a height in m empty, and false for a slug that is no heavier.
func SlugHeight(fluid, slug, dry float64) (float64, bool) {
	if !(slug > fluid) || !(fluid > 0) || !(dry >= 0) {
		return 0, false
	}
	return fluid * dry / (slug - fluid), true
}

// SlugDensity returns the density in kg/m³ of a slug of a height in m that leaves a height in m empty.
func SlugDensity(fluid, height, dry float64) (float64, bool) {
	if !(height > 0) || !(fluid > 0) || !(dry >= 0) {
		return 0, false
	}
	return fluid * (1 + dry/height), true
}

// Path turns depths along hole in m into true vertical depths and back, the latter with false below its reach.
type Path interface {
	TVD(md float64) float64
	MDAtTVD(tvd float64) (md float64, ok bool)
}

// String is the inside of a string, from the rotary down, along a path, with the fluid in it and the slug.
type String struct {
	Inside      []bore.Interval
	Path        Path
	Fluid, Slug float64
}

// Settled is a slug that has come to rest: depths along hole of its upper and its lower end in m, its volume in m³.
type Settled struct {
	Dry, Foot, Volume float64
}

// Volume returns the slug that leaves the string empty down to a depth along hole. It reports false for a slug that is no
// heavier than the fluid, and for one that would reach below the string.
func (s String) Volume(dry float64) (Settled, bool) {
	height, ok := SlugHeight(s.Fluid, s.Slug, s.Path.TVD(dry))
	if !ok || len(s.Inside) == 0 {
		return Settled{}, false
	}
	foot, ok := s.Path.MDAtTVD(s.Path.TVD(dry) + height)
	if !ok || foot > s.Inside[len(s.Inside)-1].Bottom {
		return Settled{}, false
	}
	return Settled{dry, foot, bore.Between(s.Inside, dry, foot)}, true
}

// Dry returns how far a slug of a volume in m³ empties the string. It reports false as [String.Volume] does. A deeper fall
// takes more slug, so that it is closed in on from both sides.
func (s String) Dry(volume float64) (Settled, bool) {
	if len(s.Inside) == 0 || !(volume >= 0) {
		return Settled{}, false
	}
	low, high := 0.0, s.Inside[len(s.Inside)-1].Bottom
	const halvings = 45 // a millionth of a millimetre of any string
	for range halvings {
		middle := (low + high) / 2
		if at, ok := s.Volume(middle); ok && at.Volume <= volume {
			low = middle
		} else {
			high = middle
		}
	}
	const slack = 1e-6 // m3; a slug that the string cannot hold is far beyond it
	at, ok := s.Volume(low)
	return at, ok && at.Volume >= volume-slack
}

// Gain returns the volume in m³ that comes back on top of what is pumped while the slug falls: what the string is emptied by.
func (s String) Gain(at Settled) float64 { return bore.Between(s.Inside, 0, at.Dry) }
