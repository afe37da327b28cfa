package strength

// A Connection is what a joint withstands as shares of the ratings of the pipe that
// it joins, as makers give them: 1 is as strong as the pipe, and more does not help,
// for then the pipe is the weaker. Source: common practice; figures are the maker's.
type Connection struct {
	Burst       float64 // Burst is the share of the internal yield pressure.
	Collapse    float64 // Collapse is the share of the collapse pressure.
	Tension     float64 // Tension is the share of the body yield, often called efficiency.
	Compression float64 // Compression is the share of the body yield, pushed.
}

// FullStrength returns a connection that is as strong as the pipe in every way.
func FullStrength() Connection { return Connection{1, 1, 1, 1} }

// Shares of pipe ratings beyond which something other than a share was meant.
const (
	weakest   = 0.01
	strongest = 2
)

// Check reports the first share outside 0.01 to 2.
func (c Connection) Check() error {
	shares := [...]struct {
		what  string
		share float64
	}{{"connection burst", c.Burst}, {"connection collapse", c.Collapse}, {"connection tension", c.Tension}, {"connection compression", c.Compression}}
	for _, s := range shares {
		if err := checkShare(s.what, s.share, weakest, strongest); err != nil {
			return err
		}
	}
	return nil
}

// A Part is what a rating comes from.
type Part int

// The parts of a string.
const (
	Body  Part = iota // the pipe
	Joint             // its connection
)

// String names the part.
func (p Part) String() string {
	if p == Joint {
		return "connection"
	}
	return "pipe"
}

// A Rating is the most that a string withstands in one way, and its weaker part.
type Rating struct {
	Value float64 // Value is a pressure in Pa or a force in N.
	By    Part    // By is the part that sets it, the pipe where both are equal.
}

// weaker returns the rating of pipe with a joint of the given share.
func weaker(body, share float64) Rating {
	if share < 1 {
		return Rating{Value: body * share, By: Joint}
	}
	return Rating{Value: body, By: Body}
}
