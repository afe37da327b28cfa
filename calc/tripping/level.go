package tripping

// Pipe is the cross section of a string: its steel, tool joints spread over the length, and its bore, in m².
type Pipe struct {
	Steel, Bore float64
}

// Leaves returns what leaves the well per metre of string that is pulled, in m³/m.
func (p Pipe) Leaves(wet bool) float64 {
	if wet {
		return p.Steel + p.Bore
	}
	return p.Steel
}

// Drop returns how far in m the level falls when a length of string in m is pulled without filling the hole, and false where
// the string leaves no room in the hole. The hole is the area in m² at the level, before anything hangs in it.
//
//	dry  steel L / (hole - steel)
//	wet  (steel + bore) L / (hole - steel - bore)
//
// What leaves is less than the level falls by, because the string that still hangs there is laid bare as well: the fluid
// that is left fills what it leaves free. Dry, the level falls inside the string too. Source: N. J. Lapeyrouse, Formulas and
// Calculations for Drilling, Production and Workover, pulling dry and wet pipe.
func (p Pipe) Drop(wet bool, length, hole float64) (float64, bool) {
	area := p.Leaves(wet)
	if !(hole > area) || !(length >= 0) {
		return 0, false
	}
	return area * length / (hole - area), true
}

// LengthFor returns the length of string in m that may be pulled before the level has fallen by a height in m: [Pipe.Drop]
// the other way round. It reports false where nothing leaves or there is no room.
func (p Pipe) LengthFor(wet bool, drop, hole float64) (float64, bool) {
	area := p.Leaves(wet)
	if !(hole > area) || !(area > 0) || !(drop >= 0) {
		return 0, false
	}
	return drop * (hole - area) / area, true
}
