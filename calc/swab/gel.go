package swab

// Gel is the pressure in Pa that it takes to set a fluid moving that has stood and gelled: in the annulus and in the bore.
type Gel struct {
	Outside, Inside float64
}

// Break returns the pressure that breaks a gel of a strength in Pa in the annulus from the top down to a depth along hole,
// and in the whole bore of the string. The gel holds at the walls until the shear there reaches its strength:
//
//	bore     4 tau L / d
//	annulus  4 tau L / (D - d)
//
// All of it breaks at once here; a string that turns, or that moves a little first, breaks it by and by with less. Source:
// the balance of pressure on the cross section and shear on the walls; Bourgoyne et al., Applied Drilling Engineering,
// chapter 4, pressure to break circulation (from memory).
func (s *String) Break(strength, md float64) Gel {
	var g Gel
	for k := range s.reaches {
		r := &s.reaches[k]
		top := r.Bottom - r.Length
		if md <= top || !(r.Outer > r.Inner) {
			continue
		}
		held := 1 / (r.Outer - r.Inner)
		if r.Share > 0 && r.Joint > r.Inner {
			held += r.Share * (1/(r.Outer-r.Joint) - held)
		}
		g.Outside += 4 * strength * held * min(r.Length, md-top)
	}
	for _, b := range s.Bores {
		held := 1 / b.ID
		if b.Share > 0 && b.Joint > 0 && b.Joint < b.ID {
			held += b.Share * (1/b.Joint - held)
		}
		g.Inside += 4 * strength * held * b.Length
	}
	return g
}
