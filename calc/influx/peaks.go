package influx

import "math"

// peak is a depth on the way at which a bubble may be at its highest: with its top there, or its bottom.
type peak struct {
	cell   int // that the bubble begins in
	md     float64
	bottom bool
}

// alike is the share by which lengths of hole may differ and count as one.
const alike = 1e-3

// steepness returns the height that a volume makes in a cell, in m per m³.
func (w *Well) steepness(i int) float64 { return w.Cells[i].slope() / w.Cells[i].Area }

// peaks visits the ends of cells between the place and the bottom at which a bubble that comes up the hole may be higher than
// just before and after. In hole of one kind it grows. As its top goes on into wider or flatter hole than its bottom leaves, it
// gets lower; and so it does as its bottom goes on from such hole into a narrower or steeper one, with its top in wide or flat
// hole already.
func (k *kick) peaks(visit func(peak) error) error {
	if k.Fluid.law == boyleAtEnds {
		return nil
	}
	flattest := k.steepness(k.cell) // of the cells above the one before
	for i := k.cell + 1; i < len(k.Cells); i++ {
		md, above, below := k.Cells[i].Top, k.steepness(i-1), k.steepness(i)
		margin := alike * max(math.Abs(above), math.Abs(below))
		var err error
		switch {
		case above < below-margin:
			err = visit(peak{cell: i, md: md})
		case above > below+margin && above > flattest+margin:
			err = visit(peak{cell: i - 1, md: md, bottom: true})
		}
		if err != nil {
			return err
		}
		flattest = min(flattest, above)
	}
	return nil
}
