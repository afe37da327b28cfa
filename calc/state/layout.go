package state

import (
	"errors"
	"fmt"
	"math"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
)

// joined is the gap or overlap in metres that two neighbouring lengths may show
// and still count as touching, as in package bore.
const joined = 1e-6

// gravity is the standard acceleration of free fall in m/s², exact by definition
// (3rd General Conference on Weights and Measures, 1901).
const gravity = 9.80665

// A Fluid is one of the fluids of a well, referred to by its place in the list that
// [New] was given.
type Fluid struct {
	Name string // Name names it to a person.
	friction.Fluid
}

// A Layout is how a well is built.
type Layout struct {
	// Bore is riser, casing and open hole, down to the bottom of the hole.
	Bore bore.Profile

	// String is what hangs in the bore, from the rotary or above it down to its
	// end, without gaps and with a bore all the way. What stands above the rotary
	// (negative depths) is pipe that comes in when the string is lowered. When
	// that is used up, the uppermost body goes on without end.
	String []bore.Body

	// Inner, if there is any, is a string inside String, through which fluid goes
	// down: drill pipe in casing, hung from the running tool or stabbed into the
	// float collar. Fluid goes down String to the top of Inner, through Inner, and
	// through what String there is below it. The two move together.
	Inner []bore.Body

	// Float says that a valve in the string lets nothing flow in from below.
	Float bool

	// Return is where what comes up the annulus leaves the well.
	Return Return

	// TVD gives the true vertical depth in metres of every depth along the hole. It
	// must be a finite number from the rotary to the bottom of the bore.
	TVD func(md float64) float64

	// Friction is the model of friction; nil leaves friction out.
	Friction friction.Model

	// Coarse is the share of the string's volume that one inner step of
	// [Well.Advance] is meant to move at most; 0 stands for a hundredth. A larger
	// share is faster and follows a falling level less closely; pressures then
	// balance to half a kilopascal and not to a pascal.
	Coarse float64
}

// A Return is the outlet of the annulus.
type Return struct {
	// MD is the depth in metres at which the annulus ends: 0 at the rotary, the
	// seabed without a riser, the stack where returns go through a line.
	MD float64

	// Line is the choke line or another way from MD up that has nothing inside it,
	// as spans of the depth along the hole that they stand beside, the last one
	// ending at MD. Empty if there is none.
	Line bore.Profile

	// Lines is how many such lines stand side by side and share the flow, as when
	// choke and kill line are both open. 0 stands for one.
	Lines int

	// Rub is the friction measured in the line over what the model of friction
	// gives there. 0 stands for 1.
	Rub float64

	// BackPressure is the gauge pressure in Pa at the outlet: the sea's at the
	// seabed, the choke's, 0 in the open air.
	BackPressure float64

	// Fluid is the number of the fluid that flows back into the annulus when the
	// string is pulled: the trip tank's, or sea water.
	Fluid int
}

// lines returns the number of lines.
func (r *Return) lines() float64 { return float64(max(r.Lines, 1)) }

// rub returns the factor on the line's friction.
func (r *Return) rub() float64 {
	if r.Rub > 0 {
		return r.Rub
	}
	return 1
}

// ToRig returns the outlet at the rotary, in the open air, kept full by a fluid of
// the given number from the trip tank.
func ToRig(tripTank int) Return { return Return{Fluid: tripTank} }

// ToSea returns the outlet at a seabed at the given depth below the rotary in metres
// with the given depth of water above it and the sea's mean density in kg/m³. The
// fluid is the number of sea water.
func ToSea(seabed, water, density float64, fluid int) Return {
	return Return{MD: seabed, BackPressure: density * gravity * water, Fluid: fluid}
}

// check reports the first thing in the layout that cannot be worked with.
func (l *Layout) check(fluids []Fluid) error {
	if !(l.Coarse >= 0) || l.Coarse > 1 {
		return fmt.Errorf("well: a coarse step of %g of the string's volume; give 0 to 1", l.Coarse)
	}
	if l.TVD == nil {
		return errors.New("well: no true vertical depth; give the function")
	}
	if len(fluids) == 0 {
		return errors.New("well: no fluids; give at least one")
	}
	for i, f := range fluids {
		if err := f.Check(); err != nil {
			return fmt.Errorf("well: fluid %d %q: %w", i, f.Name, err)
		}
	}
	if err := l.Bore.Check(); err != nil {
		return err
	}
	if err := checkString("string", l.String); err != nil {
		return err
	}
	switch end := l.String[len(l.String)-1].Bottom; {
	case l.String[0].Top > joined:
		return fmt.Errorf("well: the string begins at %.2f m; let it reach the rotary", l.String[0].Top)
	case end > l.Bore[len(l.Bore)-1].Bottom+joined:
		return fmt.Errorf("well: the string ends at %.2f m, below the bottom of the hole at %.2f m", end, l.Bore[len(l.Bore)-1].Bottom)
	case !(end > 0):
		return fmt.Errorf("well: the string ends at %.2f m, above the rotary; lower it", end)
	}
	if len(l.Inner) > 0 {
		if err := checkString("inner string", l.Inner); err != nil {
			return err
		}
		if top, end := l.Inner[0].Top, l.Inner[len(l.Inner)-1].Bottom; !(top >= 0) || end > l.String[len(l.String)-1].Bottom+joined {
			return fmt.Errorf("well: the inner string from %.2f m to %.2f m is not inside the string", top, end)
		}
	}
	return l.checkReturn(len(fluids))
}

// checkString reports whether a string is whole and hollow.
func checkString(what string, bodies []bore.Body) error {
	if len(bodies) == 0 {
		return fmt.Errorf("well: the %s has no length; give at least one body", what)
	}
	if err := bore.CheckBodies(bodies); err != nil {
		return fmt.Errorf("%s: %w", what, err)
	}
	for i, b := range bodies {
		if !(b.ID > 0) {
			return fmt.Errorf("well: %s at %.2f m has no bore; give its inside diameter", what, b.Top)
		}
		if i > 0 && b.Top > bodies[i-1].Bottom+joined {
			return fmt.Errorf("well: %s has a gap from %.2f m to %.2f m; join it", what, bodies[i-1].Bottom, b.Top)
		}
	}
	return nil
}

// checkReturn reports whether the outlet lies in the well.
func (l *Layout) checkReturn(fluids int) error {
	r := &l.Return
	end := l.String[len(l.String)-1].Bottom
	switch {
	case !(r.MD >= l.Bore[0].Top-joined) || !(r.MD >= 0):
		return fmt.Errorf("well: returns leave at %.2f m, above the bore, which begins at %.2f m", r.MD, l.Bore[0].Top)
	case r.MD > end+joined:
		return fmt.Errorf("well: returns leave at %.2f m, below the end of the string at %.2f m", r.MD, end)
	case math.IsNaN(r.BackPressure) || math.IsInf(r.BackPressure, 0):
		return errors.New("well: the back pressure is not a number; give one, 0 in the open air")
	case r.Fluid < 0 || r.Fluid >= fluids:
		return fmt.Errorf("well: no fluid has number %d, which flows back; give one of the list", r.Fluid)
	}
	const most = 10 // lines on any stack
	switch {
	case r.Lines < 0 || r.Lines > most:
		return fmt.Errorf("well: %d return lines side by side; give 1 to %d", r.Lines, most)
	case !(r.Rub >= 0) || math.IsInf(r.Rub, 0):
		return fmt.Errorf("well: a factor of %g on the return line's friction; give one above 0", r.Rub)
	case len(r.Line) == 0:
		return nil
	}
	if err := r.Line.Check(); err != nil {
		return fmt.Errorf("return line: %w", err)
	}
	if end := r.Line[len(r.Line)-1].Bottom; math.Abs(end-r.MD) > joined {
		return fmt.Errorf("well: the return line ends at %.2f m, not at %.2f m where the annulus does", end, r.MD)
	}
	return nil
}
