package strength

import "fmt"

// A Casing is pipe as it stands in a well. The zero value lacks wall shares and a
// connection and does not pass [Casing.Check]; [NewCasing] is the usual start.
type Casing struct {
	Pipe          Pipe       // Pipe is the pipe as made, nominal and cold.
	Lost          float64    // Lost is the share of its wall that wear has taken, see [Worn].
	BurstShare    float64    // BurstShare is the share of the remaining wall that counts for internal yield.
	TriaxialShare float64    // TriaxialShare is the share of it that counts for Lamé's stresses, see [Triaxial].
	Derating      Derating   // Derating is how its yield falls with temperature.
	Connection    Connection // Connection is its joints.
}

// NewCasing returns new pipe with joints as strong as itself, with API wall tolerance
// for internal yield, the nominal wall for triaxial stress, and the common derating.
// Change what differs.
func NewCasing(p Pipe) Casing {
	return Casing{Pipe: p, BurstShare: WallTolerance, TriaxialShare: 1, Derating: CommonDerating(), Connection: FullStrength()}
}

// Check reports the first thing about the casing that cannot be.
func (c Casing) Check() error {
	if _, err := Worn(c.Pipe, c.Lost); err != nil {
		return err
	}
	if err := checkShare("burst wall", c.BurstShare, leastWall, 1); err != nil {
		return err
	}
	if err := checkShare("triaxial wall", c.TriaxialShare, leastWall, 1); err != nil {
		return err
	}
	if err := c.Derating.Check(); err != nil {
		return err
	}
	return c.Connection.Check()
}

// Ratings are what a casing withstands at a point while a load acts on it: collapse
// depends on the tension, and all on the temperature.
type Ratings struct {
	Load        Load   // Load is the load that they were worked for.
	Pipe        Pipe   // Pipe is the pipe rated: the wall that wear left, the yield that heat left.
	Burst       Rating // Burst is the internal yield pressure in Pa, to compare with inside less outside.
	Collapse    Rating // Collapse is the collapse pressure in Pa under the tension, to compare with [Ratings.External].
	Tension     Rating // Tension is the axial force in N that may pull.
	Compression Rating // Compression is the axial force in N that may push; buckling is not treated.

	CollapseRegime Regime  // CollapseRegime is the formula that the pipe's collapse comes from.
	CollapseYield  float64 // CollapseYield is what tension leaves of the yield for it, in Pa.
	External       float64 // External is the load towards collapse in Pa, see [EquivalentExternal].
	BendingPull    float64 // BendingPull is the force in N that stands for bending, see [BendingPull].
	Worst          Point   // Worst is the most strained place of the wall, to compare with Pipe.Yield.
}

// Ratings returns what the casing withstands under a load. Wear and heat come first,
// then the formulas of the pipe, then the connection's shares. The axial stress that
// lowers collapse is that of the force alone, without bending, as in the bulletin.
// It returns an error that names what cannot be.
func (c Casing) Ratings(l Load) (Ratings, error) {
	if err := c.Check(); err != nil {
		return Ratings{}, err
	}
	if err := l.Check(); err != nil {
		return Ratings{}, err
	}
	pipe, err := c.at(l.Temperature)
	if err != nil {
		return Ratings{}, fmt.Errorf("load at %.2f m: %w", l.Depth, err)
	}
	burst, err := InternalYield(pipe, c.BurstShare)
	if err != nil {
		return Ratings{}, err
	}
	collapse, err := CollapseInTension(pipe, l.Axial/pipe.Area())
	if err != nil {
		return Ratings{}, err
	}
	external, err := EquivalentExternal(pipe, l.Outside, l.Inside)
	if err != nil {
		return Ratings{}, err
	}
	points, err := Triaxial(pipe, c.TriaxialShare, l)
	if err != nil {
		return Ratings{}, err
	}
	bend, _ := BendingPull(pipe, l.Dogleg) // both have passed their checks
	body := pipe.Area() * pipe.Yield
	return Ratings{
		Load:           l,
		Pipe:           pipe,
		Burst:          weaker(burst, c.Connection.Burst),
		Collapse:       weaker(collapse.Pressure, c.Connection.Collapse),
		Tension:        weaker(body, c.Connection.Tension),
		Compression:    weaker(body, c.Connection.Compression),
		CollapseRegime: collapse.Regime,
		CollapseYield:  collapse.Yield,
		External:       external,
		BendingPull:    bend,
		Worst:          Worst(points),
	}, nil
}

// at returns the pipe that wear and a temperature in K have left.
func (c Casing) at(temperature float64) (Pipe, error) {
	pipe, err := Worn(c.Pipe, c.Lost)
	if err != nil {
		return Pipe{}, err
	}
	if pipe.Yield, err = c.Derating.Yield(pipe.Yield, temperature); err != nil {
		return Pipe{}, err
	}
	return pipe, pipe.Check()
}
