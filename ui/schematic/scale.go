package schematic

import (
	"cmp"
	"math"
	"slices"

	"borewalk/calc"
)

// Scale turns depths along hole into rows. A deeper depth never stands on a higher row. The zero value puts everything
// on row 0.
type Scale struct {
	stops []stop // by depth, the first on row 0
	last  int    // the lowest row there is
}

// stop is a depth with the row it stands on; between two stops the scale is linear.
type stop struct {
	md  float64
	row int
}

// need says how badly a landmark needs a row of its own: the smaller the sooner served.
type need int

const (
	needMudline need = iota
	needBottom
	needShoe
	needSurface
	needStack
	needHanger
	needRoom // a second row for each section
	needRiser
	needHole
)

// landmark is a depth that the picture wants to show, and the rows between it and the one above.
type landmark struct {
	md     float64
	need   need
	ground bool // below the mudline
	end    bool // where a section ends: its shoe, or its hole without a string
	rows   int
}

// footing is the height from which a row of rock is kept free below the deepest hole.
const footing = 12

// together is the distance in m below which two landmarks count as one.
const together = 0.01

// NewScale returns the scale of a well over so many rows, with the rotary on row 0.
//
// The stretched scale first gives every landmark its own row while there are any, the most important first, then a
// second row to every section, and shares out the rest by the square root of the lengths, so that long sections stay
// longer than short ones and none vanishes. The true scale is linear from the mudline to the deepest hole. In both the
// water is compressed to a few rows.
func NewScale(s calc.Sketch, rows int, trueScale bool) Scale {
	if rows <= 1 {
		return Scale{}
	}
	marks := landmarks(s, trueScale)
	left := rows - 1
	if rows >= footing {
		left--
	}
	for n := needMudline; n <= needHole; n++ {
		if n == needRoom {
			left = giveRoom(marks, left)
		}
		if n == needRiser && left > 0 {
			left -= giveRiser(marks)
		}
		for i := range marks {
			if i > 0 && marks[i].need == n && left > 0 {
				marks[i].rows++
				left--
			}
		}
	}
	shareOut(marks, left, rows)
	scale := Scale{last: rows - 1}
	row := 0
	for _, m := range marks {
		row += m.rows
		scale.stops = append(scale.stops, stop{m.md, row})
	}
	return scale
}

// landmarks lists the depths to show from the rotary down, each once. What lies above the rotary is left out.
func landmarks(s calc.Sketch, trueScale bool) []landmark {
	var marks []landmark
	add := func(md float64, n need) {
		if md > 0 && !math.IsInf(md, 0) {
			marks = append(marks, landmark{md: md, need: n, ground: md > s.Datum.Mudline})
		}
	}
	end := func(md float64) {
		add(md, needShoe)
		if n := len(marks); n > 0 && marks[n-1].md == md {
			marks[n-1].end = true
		}
	}
	add(s.Datum.MSL, needSurface)
	add(s.Datum.Mudline, needMudline)
	add(s.Bottom, needBottom)
	if slices.ContainsFunc(s.Sections, func(x calc.SketchSection) bool { return x.Riser }) {
		add(s.Datum.BOPTop, needStack)
	}
	for i := range s.Sections {
		x := &s.Sections[i]
		if !x.OK || trueScale {
			continue
		}
		if x.String {
			end(x.Shoe)
			add(x.TD, needHole)
		} else {
			end(x.TD)
		}
		if x.Opened < x.TD {
			add(x.Opened, needHole)
		}
		if hungDeep(s.Datum, x) {
			add(x.Top, needHanger)
		}
	}
	slices.SortStableFunc(marks, func(a, b landmark) int { return cmp.Compare(a.md, b.md) })
	unique := []landmark{{need: needMudline}} // the rotary
	for _, m := range marks {
		if above := &unique[len(unique)-1]; m.md-above.md > together {
			unique = append(unique, m)
		} else {
			above.need, above.end = min(above.need, m.need), above.end || m.end
		}
	}
	return unique
}

// giveRoom gives each section a second row above its shoe where it has none, and returns the rows left.
func giveRoom(marks []landmark, left int) int {
	rows := 0
	for i := range marks {
		rows += marks[i].rows
		if marks[i].end && rows == 1 && left > 0 {
			marks[i].rows++
			left--
		}
		if marks[i].end || !marks[i].ground {
			rows = 0
		}
	}
	return left
}

// giveRiser gives the water one more row and returns how many it gave.
func giveRiser(marks []landmark) int {
	for i := 1; i < len(marks); i++ {
		if marks[i-1].need == needSurface {
			marks[i].rows++
			return 1
		}
	}
	return 0
}

// shareOut gives the rows left to the intervals, each time to the one with the most of its weight yet to be given.
func shareOut(marks []landmark, left, rows int) {
	weights := make([]float64, len(marks))
	most := make([]int, len(marks))
	for i := 1; i < len(marks); i++ {
		above := &marks[i-1]
		weights[i] = math.Sqrt(marks[i].md - above.md)
		switch {
		case marks[i].ground:
			most[i] = rows
		case above.need == needStack && rows >= 2*footing:
			most[i] = 2
		case above.need == needSurface:
			most[i] = rows / 9
		}
	}
	for ; left > 0; left-- {
		best, share := 0, 0.0
		for i := 1; i < len(marks); i++ {
			if s := weights[i] / float64(marks[i].rows+1); marks[i].rows < most[i] && s > share {
				best, share = i, s
			}
		}
		if best == 0 {
			return
		}
		marks[best].rows++
	}
}

// Row returns the row of a depth along hole in m. Above the rotary it is row 0, below the deepest hole the row below
// that, and never below the picture.
func (s Scale) Row(md float64) int {
	if n := len(s.stops); n > 0 && md > s.stops[n-1].md {
		return min(s.stops[n-1].row+1, s.last)
	}
	return int(math.Round(s.Between(md)))
}

// Between returns how far down a depth lies, in rows and their parts. Below the deepest hole it is that hole's row.
func (s Scale) Between(md float64) float64 {
	n := len(s.stops)
	if n == 0 || !(md > s.stops[0].md) {
		return 0
	}
	i, found := slices.BinarySearchFunc(s.stops, md, func(x stop, md float64) int { return cmp.Compare(x.md, md) })
	switch {
	case found:
		return float64(s.stops[i].row)
	case i == n:
		return float64(s.stops[n-1].row)
	}
	a, b := s.stops[i-1], s.stops[i]
	return float64(a.row) + float64(b.row-a.row)*(md-a.md)/(b.md-a.md)
}

// MD returns the depth along hole in m that a row stands for: of several depths on one row the shallowest, and below the
// deepest hole its depth.
func (s Scale) MD(row int) float64 {
	if len(s.stops) == 0 {
		return 0
	}
	for i := 1; i < len(s.stops); i++ {
		a, b := s.stops[i-1], s.stops[i]
		if row > a.row && row <= b.row {
			return a.md + (b.md-a.md)*float64(row-a.row)/float64(b.row-a.row)
		}
	}
	if row <= s.stops[0].row {
		return s.stops[0].md
	}
	return s.stops[len(s.stops)-1].md
}
