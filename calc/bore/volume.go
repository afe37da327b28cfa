package bore

// trace is a volume in m³ too small to be left over: a cubic millimetre, what
// rounding leaves of a volume that was added up in another order.
const trace = 1e-9

// Volume returns the volume of all intervals in m³.
func Volume(intervals []Interval) float64 {
	volume := 0.0
	for i := range intervals {
		volume += intervals[i].Volume()
	}
	return volume
}

// Between returns the volume in m³ between two measured depths in metres, given in
// either order. What lies outside the intervals counts as nothing.
func Between(intervals []Interval, top, bottom float64) float64 {
	if top > bottom {
		top, bottom = bottom, top
	}
	volume := 0.0
	for i := range intervals {
		if length := overlap(intervals[i].Top, intervals[i].Bottom, top, bottom); length > 0 {
			volume += intervals[i].Capacity() * length
		}
	}
	return volume
}

// DepthAbove returns the measured depth in metres up to which a volume in m³
// reaches if it is laid into the intervals from a depth upwards, and what is left
// of it when the top of the intervals is reached. From below the lowest interval
// it begins at that interval's bottom. A volume that is not above zero stays at
// the depth it starts from. Intervals must be in order from the top down; those
// without room are passed.
func DepthAbove(intervals []Interval, from, volume float64) (depth, left float64) {
	if !(volume > 0) {
		return from, 0
	}
	depth, left = from, volume
	for i := len(intervals) - 1; i >= 0; i-- {
		room := &intervals[i]
		bottom := min(room.Bottom, from)
		if !(bottom > room.Top) {
			continue
		}
		capacity := room.Capacity()
		if space := capacity * (bottom - room.Top); space < left {
			left -= space
			depth = room.Top
			if left > trace {
				continue
			}
			return depth, 0
		}
		return bottom - left/capacity, 0
	}
	return depth, left
}

// DepthBelow is [DepthAbove] going down: the measured depth in metres down to
// which a volume in m³ reaches from a depth, and what is left of it at the bottom
// of the intervals.
func DepthBelow(intervals []Interval, from, volume float64) (depth, left float64) {
	if !(volume > 0) {
		return from, 0
	}
	depth, left = from, volume
	for i := range intervals {
		room := &intervals[i]
		top := max(room.Top, from)
		if !(room.Bottom > top) {
			continue
		}
		capacity := room.Capacity()
		if space := capacity * (room.Bottom - top); space < left {
			left -= space
			depth = room.Bottom
			if left > trace {
				continue
			}
			return depth, 0
		}
		return top + left/capacity, 0
	}
	return depth, left
}
