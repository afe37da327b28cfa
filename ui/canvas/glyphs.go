package canvas

// Glyphs are the characters that pictures and frames are drawn with, all one column wide. Only such are used as old
// terminal fonts have: single and double lines, blocks and shades.
type Glyphs struct {
	// Frames.
	Horizontal, Vertical                          rune
	TopLeft, TopRight, BottomLeft, BottomRight    rune
	TeeLeft, TeeRight, TeeDown, TeeUp, Cross      rune // TeeLeft stands on a left edge and opens to the right
	DoubleHorizontal, DoubleVertical, DoubleTee   rune // DoubleTee is a double line with a single leg down
	Full, HalfLeft, HalfRight, HalfUpper, HalfLow rune
	Light, Medium, Dark                           rune // shades

	// The well.
	Rotary                          rune
	Sea, Seabed, Rock, Washout      rune
	WallSet, WallPlanned, WallLater rune // of a string set, to be set in this section, to be set later
	ShoeLeft, ShoeRight             rune
	HangerLeft, HangerRight         rune // top of a liner
	HostLeft, HostRight             rune // wall of the string that the liner hangs in
	Wellhead, Landed                rune // the wellhead, and a string landed in it
	Stack, StackLeft, StackRight    rune // blowout preventer

	// Fluids of a job, each role with a second sign for a second fluid, and plugs.
	FillMud, FillOtherMud             rune
	FillSpacer, FillOtherSpacer       rune
	FillLead, FillMiddle, FillTail    rune // slurries: the last one pumped is the tail
	FillDisplacer, FillOtherDisplacer rune
	FillGas                           rune
	Plug                              rune

	// Marks.
	Mark, Up, Down, Dot rune

	ascii bool
}

// UnicodeGlyphs returns the glyphs for a UTF-8 terminal.
func UnicodeGlyphs() Glyphs {
	return Glyphs{
		Horizontal: '─', Vertical: '│',
		TopLeft: '┌', TopRight: '┐', BottomLeft: '└', BottomRight: '┘',
		TeeLeft: '├', TeeRight: '┤', TeeDown: '┬', TeeUp: '┴', Cross: '┼',
		DoubleHorizontal: '═', DoubleVertical: '║', DoubleTee: '╤',
		Full: '█', HalfLeft: '▌', HalfRight: '▐', HalfUpper: '▀', HalfLow: '▄',
		Light: '░', Medium: '▒', Dark: '▓',

		Rotary: '┬',
		Sea:    '~', Seabed: '▀', Rock: '░', Washout: '▒',
		WallSet: '│', WallPlanned: ':', WallLater: '·',
		ShoeLeft: '┘', ShoeRight: '└',
		HangerLeft: '┐', HangerRight: '┌', HostLeft: '├', HostRight: '┤',
		Wellhead: '═', Landed: '╤',
		Stack: '█', StackLeft: '▐', StackRight: '▌',

		FillMud: '·', FillOtherMud: ',', FillSpacer: 'o', FillOtherSpacer: 'O',
		FillLead: '▓', FillMiddle: '&', FillTail: '█', FillDisplacer: '-', FillOtherDisplacer: '=',
		FillGas: '*', Plug: '╬',

		Mark: '>', Up: '^', Down: 'v', Dot: '·',
	}
}

// ASCIIGlyphs returns the glyphs for a terminal that shows ASCII only.
func ASCIIGlyphs() Glyphs {
	return Glyphs{
		Horizontal: '-', Vertical: '|',
		TopLeft: '+', TopRight: '+', BottomLeft: '+', BottomRight: '+',
		TeeLeft: '+', TeeRight: '+', TeeDown: '+', TeeUp: '+', Cross: '+',
		DoubleHorizontal: '=', DoubleVertical: '|', DoubleTee: '+',
		Full: '#', HalfLeft: '#', HalfRight: '#', HalfUpper: '=', HalfLow: '=',
		Light: '.', Medium: '%', Dark: '#',

		Rotary: '+',
		Sea:    '~', Seabed: '=', Rock: '.', Washout: '%',
		WallSet: '|', WallPlanned: ':', WallLater: '\'',
		ShoeLeft: '/', ShoeRight: '\\',
		HangerLeft: '+', HangerRight: '+', HostLeft: '|', HostRight: '|',
		Wellhead: '=', Landed: '+',
		Stack: '#', StackLeft: '[', StackRight: ']',

		FillMud: '\'', FillOtherMud: ',', FillSpacer: 'o', FillOtherSpacer: 'O',
		FillLead: '+', FillMiddle: '&', FillTail: '#', FillDisplacer: '-', FillOtherDisplacer: '=',
		FillGas: '*', Plug: 'X',

		Mark: '>', Up: '^', Down: 'v', Dot: '*',

		ascii: true,
	}
}
