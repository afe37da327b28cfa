package quantity

import (
	"strings"
	"unicode/utf8"
)

// How a unit may be spelled.
//
// Spaces, points, hyphens and raised dots between the parts of a unit carry no
// meaning, nor does a point at the end: "ft-lbf", "ft lbf" and "ft.lbf" are
// one, and so are "in" and "in.". Raised and ordinary digits are the same,
// "per" is a stroke, and "°" is "deg". Case carries no meaning either, with
// the one exception that a prefix milli or mega makes necessary: the row of a
// unit may name a spelling, such as mPa for pressure, that is refused.

// ParseUnit reads a unit that a quantity of kind k can be written in. It
// accepts what [Unit.Symbol] and [Unit.ASCII] write, and the usual variants.
// An empty text is [Bare] where the kind takes that, and an error elsewhere.
func ParseUnit(text string, k Kind) (Unit, error) {
	if len(text) > maxText {
		return 0, refuse(ErrTooLong, "a unit has at most %d bytes, this text has %d", maxText, len(text))
	}
	text, err := clean(text)
	if err != nil {
		return 0, err
	}
	spelled := normal(text)
	if spelled == "" {
		if text != "" {
			return 0, unknownUnit(text, "", k)
		}
		if Bare.Fits(k) {
			return Bare, nil
		}
		return 0, refuse(ErrNoUnit, "unit missing: %s", wanted(k))
	}
	folded := strings.ToLower(spelled)
	if u := spelledUnit(spelled, folded, k.dimension()); u != 0 {
		return u, nil
	}
	if u := trappedUnit(spelled, k.dimension()); u != 0 {
		return 0, refuse(ErrUnit, "unit %q takes milli for mega or mega for milli: write %s", text, u.ASCII())
	}
	for _, other := range Kinds() {
		if other.dimension() == k.dimension() {
			continue
		}
		if u := spelledUnit(spelled, folded, other.dimension()); u != 0 {
			return 0, refuse(ErrKind, "%s is a unit of %s; %s", u.ASCII(), other, wanted(k))
		}
	}
	return 0, unknownUnit(text, folded, k)
}

// spelledUnit returns the unit of a dimension with that spelling, or 0.
func spelledUnit(spelled, folded string, dim dimension) Unit {
	if dim == noDimension {
		return 0
	}
	for i := range unitTable {
		row := &unitTable[i]
		if row.dim != dim || row.trap == spelled {
			continue
		}
		for spelling := range strings.FieldsSeq(row.spellings) {
			if spelling == folded {
				return Unit(i)
			}
		}
	}
	return 0
}

// trappedUnit returns the unit of a dimension that the spelling nearly is, but
// for the case of its prefix, or 0.
func trappedUnit(spelled string, dim dimension) Unit {
	for i := range unitTable {
		if row := &unitTable[i]; row.dim == dim && row.trap == spelled && spelled != "" {
			return Unit(i)
		}
	}
	return 0
}

// normal returns the spelling without what carries no meaning, in the case it
// was typed in. It returns "" if there are stray signs at either end. The text
// is clean, and its spaces are trimmed.
func normal(text string) string {
	text = strings.ReplaceAll(text, " per ", "/")
	text = strings.TrimSuffix(text, ".")
	text = strings.TrimPrefix(text, "-") // as in 17-1/2-in
	var kept strings.Builder
	joined := true // whether the last rune was a sign between parts
	for _, r := range text {
		switch r {
		case ' ':
			continue
		case '.', '-', '·', '⋅', '*', '^':
			if joined {
				return ""
			}
			joined = true
			continue
		case '²':
			r = '2'
		case '³':
			r = '3'
		case '°', 'º':
			kept.WriteString("deg")
			joined = false
			continue
		case '′', '’':
			r = '\''
		case '″', '”':
			r = '"'
		}
		kept.WriteRune(r)
		joined = false
	}
	if joined {
		return ""
	}
	return kept.String()
}

// wanted says which units a kind takes: "density wants ppg, sg, kg/m3".
func wanted(k Kind) string {
	var symbols []string
	for _, u := range Units(k) {
		if u != Bare {
			symbols = append(symbols, u.ASCII())
		}
	}
	if symbols == nil {
		return k.String() + " takes no unit"
	}
	return k.String() + " wants " + strings.Join(symbols, ", ")
}

// unknownUnit is the error for a spelling that no kind has. It names the
// nearest unit of the kind if a slip of the finger may be the cause.
func unknownUnit(text, folded string, k Kind) error {
	if folded == "ton" || folded == "tons" {
		return refuse(ErrUnit, "unit %q can be short, long or metric: write t for 1000 kg, or lb", text)
	}
	if near := nearestUnit(folded, k); near != 0 {
		return refuse(ErrUnit, "unknown unit %q, nearest is %s: %s", text, near.ASCII(), wanted(k))
	}
	return refuse(ErrUnit, "unknown unit %q: %s", text, wanted(k))
}

// nearestUnit returns the unit of the kind whose spelling differs least from
// folded, if it differs by no more than half of its letters and two at most.
// It returns 0 if there is none.
func nearestUnit(folded string, k Kind) Unit {
	best, fewest := Unit(0), 3
	for _, u := range Units(k) {
		for spelling := range strings.FieldsSeq(u.row().spellings) {
			changes := editDistance(folded, spelling)
			if changes < fewest && 2*changes <= utf8.RuneCountInString(spelling) {
				best, fewest = u, changes
			}
		}
	}
	return best
}

// editDistance counts the insertions, deletions, replacements and swaps of
// neighbours that lead from a to b (optimal string alignment), byte by byte.
// Texts are at most maxText long, so it is cheap.
func editDistance(a, b string) int {
	before := make([]int, len(b)+1) // row i-2
	above := make([]int, len(b)+1)  // row i-1
	row := make([]int, len(b)+1)
	for j := range above {
		above[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			replace := above[j-1]
			if a[i-1] != b[j-1] {
				replace++
			}
			row[j] = min(above[j]+1, row[j-1]+1, replace)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, above, row = above, row, before
	}
	return above[len(b)]
}
