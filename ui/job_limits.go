package ui

import "borewalk/calc"

// limit returns what the density at a point is held against: what the rock stands, or where the formation is to be held its pressure,
// which is then the least.
func (u *player) limit(i int) (limit float64, least bool) {
	point := &u.job.Points[i]
	if u.job.Kind == calc.DisconnectJob || u.job.Kind == calc.KillJob && point.Key == "td" {
		return point.Pore, true
	}
	return point.Fracture, false
}

// margin returns how far the density at a point is inside its limit, and false where there is none.
func (u *player) margin(i int) (float64, bool) {
	f := u.frame()
	limit, least := u.limit(i)
	switch {
	case i >= len(f.EMW) || !(limit > 0):
		return 0, false
	case least:
		return f.EMW[i] - limit, true
	}
	return limit - f.EMW[i], true
}

// noticed is what a density in kg/m³ has to be beyond its limit to be spoken of: a choke holds a pressure nearly.
const noticed = 0.1

// missed says at which point a limit is not kept, and what follows.
func (u *player) missed() string {
	for i := range u.job.Points {
		left, ok := u.margin(i)
		if !ok || left >= -noticed {
			continue
		}
		at := u.job.Points[i].Name
		switch _, least := u.limit(i); {
		case !least:
			return "Above what the rock stands " + at + ": losses. "
		case u.job.Kind == calc.DisconnectJob:
			return "The mud left does not hold the formation " + at + ": the closed stack does. "
		}
		return "Below the formation's pressure " + at + ": more comes in. "
	}
	return ""
}

// wideOpen reports whether a kick is pumped out with the choke wide open and more held at TD than the formation needs.
func (u *player) wideOpen() bool {
	const shows = 1 // Pa at a gauge, of a choke that is not wide open
	f := u.frame()
	if u.job.Kind != calc.KillJob || f.Rate == 0 || f.Choke > shows {
		return false
	}
	for i := range u.job.Points {
		if _, least := u.limit(i); least {
			left, ok := u.margin(i)
			return ok && left > noticed
		}
	}
	return false
}
