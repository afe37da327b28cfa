package strength

import (
	"fmt"
	"math"
)

// WallTolerance is the least share of the nominal wall that API Spec 5CT lets pipe
// have at its thinnest: 12.5 % below nominal.
const WallTolerance = 0.875

// leastWall is the least share of the wall that a tolerance may leave; what goes
// beyond is wear.
const leastWall = 0.5

// InternalYield returns the pressure in Pa inside, above that outside, at which the
// thinnest wall begins to yield by Barlow's formula, 2 Y k t/D. Share is k, the least
// share of the wall that is there, [WallTolerance] for API pipe; 1 would count on the
// nominal wall. Tables print it to 10 psi. Couplings may leak or yield at less.
//
// Source: API Bulletin 5C3, internal yield pressure for pipe. It returns an error for
// a pipe that cannot be and a share outside 0.5 to 1.
func InternalYield(p Pipe, share float64) (float64, error) {
	if err := checkWall(p, share); err != nil {
		return 0, err
	}
	return 2 * p.Yield * share / p.Slenderness(), nil
}

// OpenEndYield returns the pressure in Pa inside, with none outside, at which the
// inside of the wall yields by Lamé's stresses and von Mises' criterion when no axial
// force acts: Y (D² - d²)/sqrt(3 D⁴ + d⁴) with d = D - 2 k t. It is exact for thick
// walls too; Barlow's formula is the same only in the limit of a thin one. Arguments
// and errors are those of [InternalYield]. Source: API TR 5C3 / ISO 10400, clause 6, open ends (from memory;
// follows from the stresses, see the tests).
func OpenEndYield(p Pipe, share float64) (float64, error) {
	if err := checkWall(p, share); err != nil {
		return 0, err
	}
	return p.Yield / math.Sqrt(openEnd(p, share)), nil
}

// CappedEndYield is [OpenEndYield] of a pipe whose closed ends are held by the pipe
// alone, so that the pressure also pulls with p d²/(D² - d²) on the nominal wall.
// Source: API TR 5C3 / ISO 10400, clause 6, capped ends (from memory; follows from
// the stresses, see the tests).
func CappedEndYield(p Pipe, share float64) (float64, error) {
	if err := checkWall(p, share); err != nil {
		return 0, err
	}
	pull := p.Bore() / p.Area() // axial stress per pressure
	_, hoop := lame(p, share, 1, 0, innerRadius(p, share))
	return p.Yield / math.Sqrt(openEnd(p, share)+pull*pull-pull*(hoop-1)), nil
}

// openEnd returns the square of the von Mises stress at the inside of the wall per
// unit of pressure inside, without axial force.
func openEnd(p Pipe, share float64) float64 {
	radial, hoop := lame(p, share, 1, 0, innerRadius(p, share))
	return hoop*hoop + radial*radial - hoop*radial
}

// checkWall reports what is wrong with a pipe or with the share of its wall.
func checkWall(p Pipe, share float64) error {
	if err := p.Check(); err != nil {
		return err
	}
	return checkShare("wall", share, leastWall, 1)
}

// checkShare reports a share that is outside its range.
func checkShare(what string, share, least, most float64) error {
	if !(share >= least) || share > most {
		return fmt.Errorf("%s share %g; give one from %g to %g", what, share, least, most)
	}
	return nil
}
