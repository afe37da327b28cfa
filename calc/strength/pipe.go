package strength

import (
	"fmt"
	"math"
)

// Units in which the bulletin's constants are printed; inch, lb and standard gravity
// are exact by definition.
const (
	inch = 0.0254
	lbf  = 0.45359237 * 9.80665
	psi  = lbf / (inch * inch)
)

// The range of yield in Pa that the collapse polynomials are used for: where the
// limits between the regimes keep their order, which at 15,000 psi they do not, and
// where more yield never means less collapse, which from 163,000 psi plastic collapse
// does. The bulletin tabulates grades from 40,000 psi up (from memory).
const (
	LeastYield = 20e3 * psi
	MostYield  = 160e3 * psi
)

// Sizes that no casing has; anything beyond comes from a wrong unit.
const (
	narrowest    = 0.01 // outside diameter in m
	widest       = 5
	mostSlender  = 500 // outside diameter over wall
	leastSlender = 2   // a solid bar
)

// A Pipe is plain pipe of one size and steel.
type Pipe struct {
	OD    float64 // OD is the outside diameter in m.
	Wall  float64 // Wall is the thickness of the wall in m: nominal, or what wear has left.
	Yield float64 // Yield is the least yield strength of the steel in Pa.
}

// ID returns the inside diameter in m.
func (p Pipe) ID() float64 { return p.OD - 2*p.Wall }

// Area returns the cross-section of the wall in m².
func (p Pipe) Area() float64 { return math.Pi * (p.OD - p.Wall) * p.Wall }

// Bore returns the area in m² that pressure inside acts on.
func (p Pipe) Bore() float64 { return math.Pi / 4 * p.ID() * p.ID() }

// Slenderness returns the outside diameter over the wall, the D/t of the bulletin.
func (p Pipe) Slenderness() float64 { return p.OD / p.Wall }

// Check reports what is wrong with the pipe: a diameter or a wall that cannot be, or
// a yield outside [LeastYield] to [MostYield]. The other methods mean something only
// for a pipe that passes.
func (p Pipe) Check() error {
	slender := p.Slenderness()
	switch {
	case !(p.OD >= narrowest) || p.OD > widest:
		return fmt.Errorf("pipe of %g m outside; give a diameter that casing has and check its unit", p.OD)
	case !(p.Wall > 0) || !(slender > leastSlender) || slender > mostSlender:
		return fmt.Errorf("wall of %g m in a pipe of %g m outside; give one that leaves a bore, and check its unit", p.Wall, p.OD)
	case !(p.Yield >= LeastYield) || p.Yield > MostYield:
		return fmt.Errorf("yield %g MPa; the ratings hold from %.0f to %.0f MPa, mend the grade", p.Yield/1e6, LeastYield/1e6, MostYield/1e6)
	}
	return nil
}

// BodyYield returns the axial force in N at which the body of the pipe yields, area
// times yield, both nominal. Connections may be weaker. Source: API Bulletin 5C3,
// pipe body yield strength. It returns an error for a pipe that cannot be.
func BodyYield(p Pipe) (float64, error) {
	if err := p.Check(); err != nil {
		return 0, err
	}
	return p.Area() * p.Yield, nil
}

// finite hands x on unless it is not an ordinary number.
func finite(x float64) (float64, bool) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, false
	}
	return x, true
}
