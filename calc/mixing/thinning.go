package mixing

// A Thinning is the mud that keeps the solids in a system at a share while hole is drilled: m³.
type Thinning struct {
	Kept    float64 // Kept is the drilled solids that stay in the mud.
	Built   float64 // Built is the fresh mud in which they are the wanted share.
	Surplus float64 // Surplus is what of it the new hole and the losses do not take.
}

// Thin returns how much fresh mud keeps the drilled solids at a share of the volume while a hole of so many m³ is drilled,
// with equipment that takes a part of the solids out, if so much mud is lost besides: kept = V (1 - removal), built =
// kept (1 - share)/share; hole and losses take V + lost - kept of it. The new hole's volume counts as solid. Source: the
// dilution factor of API RP 13C, from memory.
func Thin(hole, removal, share, lost float64) Thinning {
	t := Thinning{Kept: hole * (1 - removal)}
	t.Built = t.Kept * (1 - share) / share
	t.Surplus = max(0, t.Built-(hole+lost-t.Kept))
	return t
}
