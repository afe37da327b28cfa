package strength

import "fmt"

// Worn returns the pipe that is left when the given share of the wall has been worn
// away inside, from 0 to below 1: the same outside, the wall that remains, as though
// it were worn to that all around. Ratings of it are those of the worn pipe.
//
// For internal yield this is the usual model: the rating falls with the wall at its
// thinnest, and the maker's tolerance is still taken off, since the thin place may be
// the worn one. For collapse and for tension it is careful: a tool joint wears a
// narrow groove, and the rest of the ring holds it up. Source: common practice;
// collapse tests of worn casing by Kuriyama et al., SPE 24597, 1992 (from memory).
// Wear outside would also take from the diameter. It returns an error for a pipe or
// a share that cannot be.
func Worn(p Pipe, lost float64) (Pipe, error) {
	if err := p.Check(); err != nil {
		return Pipe{}, err
	}
	if !(lost >= 0) || !(lost < 1) {
		return Pipe{}, fmt.Errorf("wear of %g of the wall; give a share from 0 to below 1", lost)
	}
	p.Wall *= 1 - lost
	if err := p.Check(); err != nil {
		return Pipe{}, fmt.Errorf("wear leaves no wall to rate: %w", err)
	}
	return p, nil
}
