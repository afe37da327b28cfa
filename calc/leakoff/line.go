package leakoff

import "math"

// line is the straight line that fits readings best by least squares. It keeps means and sums about them, so that a reading
// more costs no second look at the others. The zero line fits none.
type line struct {
	count, volume, pressure float64 // of readings, and their means
	spread, product         float64 // sums of volume × volume and of volume × pressure, both about the means
}

// add takes a reading in.
func (l *line) add(p Point) {
	l.count++
	off := p.Volume - l.volume
	l.volume += off / l.count
	l.pressure += (p.Pressure - l.pressure) / l.count
	l.spread += off * (p.Volume - l.volume)
	l.product += off * (p.Pressure - l.pressure)
}

// slope returns Pa/m³.
func (l *line) slope() float64 { return l.product / l.spread }

// at returns the pressure on the line at a volume.
func (l *line) at(volume float64) float64 { return l.pressure + l.slope()*(volume-l.volume) }

// doubt is how far off a further reading may be, in units of how far off each of those in the line may be: its own doubt and
// that of the line at its volume, which grows with the distance from the readings that made it.
//
// Source: the prediction interval of a least-squares line, in any textbook of statistics.
func (l *line) doubt(volume float64) float64 {
	off := volume - l.volume
	return math.Sqrt(1 + 1/l.count + off*off/l.spread)
}

// over returns how far a reading is above the line, in Pa.
func (l *line) over(p Point) float64 { return p.Pressure - l.at(p.Volume) }
