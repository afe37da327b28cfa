package tally

// A Piece is one piece of a string that hangs from its shoulder.
type Piece struct {
	Kind       Kind    // Kind is what it is.
	Label      string  // Label is its name or number.
	Item       int     // Item is the line of the list that it came from, the lowest 0.
	Joint      int     // Joint counts the joints of casing from the lowest as 1; zero for anything else.
	Length     float64 // Length in metres.
	Top        float64 // Top is the measured depth of its upper end in metres.
	Bottom     float64 // Bottom is the measured depth of its lower end in metres.
	Cumulative float64 // Cumulative is the length in metres from the shoe to its upper end.
}

// A List is a running list: a string as it hangs from its landing shoulder.
type List struct {
	Shoulder float64 // Shoulder is the measured depth of the landing shoulder in metres.
	Shoe     float64 // Shoe is the measured depth of the lower end of the string in metres.
	Length   float64 // Length is the length of the whole string in metres.
	Joints   int     // Joints is the number of joints of casing, the shoe track not counted.
	Pieces   []Piece // Pieces from the shoe up.
}

// Run hangs the items, listed bottom up, from a landing shoulder at a measured
// depth in metres and returns where each piece stands. A liner hangs from its own
// top in the same way. An error names the first item that cannot be: a length
// that is not above zero, a shoe that is not lowest, a hanger that is not topmost.
// No items give a string of no length.
func Run(items []Item, shoulder float64) (List, error) {
	if err := checkDepth("landing shoulder", shoulder); err != nil {
		return List{}, err
	}
	if err := checkItems(items); err != nil {
		return List{}, err
	}
	l := List{Shoulder: shoulder}
	for n, i := range items {
		for range i.pieces() {
			l.Length += i.Length
			p := Piece{Kind: i.Kind, Label: i.Label, Item: n, Length: i.Length, Cumulative: l.Length}
			if i.Kind == Joint {
				l.Joints++
				p.Joint = l.Joints
			}
			l.Pieces = append(l.Pieces, p)
		}
	}
	l.Shoe = shoulder + l.Length
	bottom := l.Shoe
	for n := range l.Pieces {
		p := &l.Pieces[n]
		p.Bottom = bottom
		p.Top = shoulder + (l.Length - p.Cumulative)
		bottom = p.Top
	}
	return l, nil
}

// Couplings returns the measured depths in metres at which the pieces are made up
// to each other, from the top down. The landing shoulder and the end of the shoe
// are none. A coupling reaches up and down from there by half its own length.
func (l List) Couplings() []float64 {
	var depths []float64
	for n := len(l.Pieces) - 2; n >= 0; n-- {
		depths = append(depths, l.Pieces[n].Top)
	}
	return depths
}

// Lowest returns the lowest piece of a kind, and false if there is none.
func (l List) Lowest(k Kind) (Piece, bool) {
	for _, p := range l.Pieces {
		if p.Kind == k {
			return p, true
		}
	}
	return Piece{}, false
}

// A Hang is where the shoe stands once a piece has been made up and run in.
type Hang struct {
	Shoe      float64 // Shoe is the measured depth of the shoe in metres; negative above the rotary.
	OffBottom float64 // OffBottom is the distance in metres from there to the bottom of the hole.
}

// WhileRunning returns where the shoe stands after each piece, from the lowest on,
// when the top of the piece sits in the slips a stick-up in metres above the
// rotary, over a hole of that measured depth in metres. It reports false for
// numbers that are none.
func (l List) WhileRunning(stickUp, bottom float64) ([]Hang, bool) {
	if checkDepth("stick-up", stickUp) != nil || checkDepth("bottom", bottom) != nil {
		return nil, false
	}
	hangs := make([]Hang, len(l.Pieces))
	for n, p := range l.Pieces {
		shoe := p.Cumulative - stickUp
		hangs[n] = Hang{Shoe: shoe, OffBottom: bottom - shoe}
	}
	return hangs, true
}
