package calc

import (
	"math"

	"borewalk/calc/trajectory"
	"borewalk/model"
)

// stationStep is the length along hole between planned stations, or a multiple of it where there would be more than stationsMost.
const (
	stationStep  = 30.0 // m
	stationsMost = 24
)

// Stations returns the planned path through section i: where it begins and ends, and at even depths between; none where the path or the
// hole is not known.
func Stations(plan *model.Plan, i int) []trajectory.Point {
	e := runPages(plan, i, nil)
	if i < 0 || i >= len(e.sections) {
		return nil
	}
	h := &e.sections[i]
	if first(h.missing, e.pathGap).open() || h.td <= h.start {
		return nil
	}
	step := stationStep * max(1, math.Ceil((h.td-h.start)/(stationStep*stationsMost)))
	list := []trajectory.Point{e.path.At(h.start)}
	for md := (math.Floor(h.start/step) + 1) * step; md < h.td; md += step {
		list = append(list, e.path.At(md))
	}
	return append(list, e.path.At(h.td))
}
