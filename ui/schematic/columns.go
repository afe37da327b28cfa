package schematic

import (
	"cmp"
	"slices"

	"borewalk/calc"
)

// columns are the places of everything across the well, counted from the axis. They depend on the well and the width
// only, so that nothing moves sideways while one walks through the sections.
type columns struct {
	wide  bool  // sizes and names are written beside the well
	axis  int   // from the left of the picture
	wall  []int // of each section's string, or of its hole where it has no string
	gap   int   // columns between a string and its hole
	most  int   // the outermost column that a hole may reach
	riser int
	stack int
}

// sizeRoom is the width kept free right of the outermost hole for a size such as "13 5/8".
const sizeRoom = 7

func newColumns(s calc.Sketch, wide bool, width int) columns {
	order := nested(s)
	half := max(width-1, 0) / 2
	c := columns{wide: wide, axis: half, wall: make([]int, len(s.Sections)), most: max(half-1, 0)}
	n, pitch := len(order), 1
	if wide && 2*max(n, 1) <= c.most {
		pitch = 2
	}
	// A well of few strings gets a wider bore.
	bore := min(max(c.most-n*pitch, 0), 3)
	if wide {
		bore = min(bore, max((width-4-sizeRoom)/2-n*pitch, 0))
	}
	for k, i := range order {
		c.wall[i] = min(bore+pitch*(n-k), c.most)
	}
	c.gap = pitch - 1
	c.riser = min(bore+pitch, max(half-2, 0))
	c.stack = c.riser + pitch
	if reach := bore + pitch*n + c.gap; wide {
		c.axis = min(half, max(width-1-reach-sizeRoom, reach+1))
	}
	return c
}

// nested returns the sections that can be drawn in the order of size, the largest first.
func nested(s calc.Sketch) []int {
	var order []int
	for i := range s.Sections {
		if s.Sections[i].OK {
			order = append(order, i)
		}
	}
	size := func(i int) float64 {
		if x := &s.Sections[i]; x.String {
			return x.OD
		}
		return s.Sections[i].Hole
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(size(b), size(a)) })
	return order
}

// hole returns the outermost open column of a section's full-size hole.
func (d *drawing) hole(i int) int {
	if x := &d.Sections[i]; x.Filled || !x.String {
		return d.wall[i]
	}
	return min(d.wall[i]+d.gap, d.most)
}

// pilot returns the outermost open column of the hole below the opener.
func (d *drawing) pilot(i int) int { return max(d.wall[i]-1, 0) }
