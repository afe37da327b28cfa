package canvas

// Style says what a cell shows; the palette says how that looks. No style carries a meaning alone.
type Style uint8

// The styles, a closed set.
const (
	Plain     Style = iota // the terminal's own colours
	Title                  // the line that names the plan and the section
	Heading                // the head of a table or a page
	Focus                  // the field that keys act on
	Entry                  // text being typed
	Changed                // differs from the baseline
	OK                     // a finding within its limit
	Caution                // a finding near or a little over its limit
	Stop                   // a finding that forbids going on
	Sea                    // sea water and its surface
	Rock                   // formation
	Steel                  // pipe and equipment in place
	Planned                // pipe to be run in the section being worked
	Fluid                  // what fills hole and pipe
	Faint                  // of less weight now; looks plain, since dim text cannot be read everywhere
	Pore                   // pore pressure
	Stability              // lowest density that holds the hole open
	Mud                    // mud density
	Fracture               // fracture pressure
	Cement                 // slurry
	Gas                    // that came into the well
	styles
)

// Palette turns styles into terminal colours. The zero value has no colour.
type Palette struct {
	codes [styles]uint8 // SGR numbers; 0 is the terminal's own look
}

// SGR numbers (ECMA-48, 8.3.117). Blue is left out: on black it cannot be read on many terminals.
const (
	underline = 4
	reverse   = 7
	red       = 31
	green     = 32
	yellow    = 33
	magenta   = 35
	cyan      = 36
)

// NewPalette returns the palette for a terminal of so many colours: below 8 none, and nothing but text is written;
// otherwise the basic colours as accents on the terminal's own background.
func NewPalette(colours int) Palette {
	if colours < 8 {
		return Palette{}
	}
	return Palette{[styles]uint8{
		Title: cyan, Heading: cyan, Focus: reverse, Entry: underline, Changed: magenta,
		OK: green, Caution: yellow, Stop: red,
		Sea: cyan, Planned: cyan, Fluid: cyan,
		Pore: cyan, Stability: yellow, Mud: green, Fracture: red, Cement: yellow, Gas: red,
	}}
}

// onBlank reports whether a look is seen on a blank too.
func onBlank(code uint8) bool { return code == underline || code == reverse }
