package tomldoc

import (
	"strings"
)

// Limits that keep hostile input cheap. They are far beyond any real plan.
const (
	maxDepth   = 32        // arrays and inline tables inside each other
	maxParts   = 32        // parts of one dotted key or header
	maxEntries = 500_000   // keys, headers, inline tables and values of arrays: each costs up to a kilobyte while it is read
	maxPathSum = 256 << 20 // full key paths, which the decoder spells out for each key
)

// part is one part of a dotted key or header: its decoded name and its place.
type part struct {
	name       string
	start, end int
}

// pair is one "key = value".
type pair struct {
	key   []part
	line  int
	block int // index of the block it stands in
	val   value
	in    *inline // the inline table it stands in; nil on a line of its own
	comma int     // offset of the comma behind it in an inline table; -1 for none
}

// start is the offset at which the key begins.
func (p *pair) start() int { return p.key[0].start }

// kind tells the written forms of a value apart, as far as they matter here.
type kind uint8

const (
	scalarValue kind = iota // number, date, true or false
	textValue
	arrayValue
	inlineValue
)

// value is the place of a value and what the scanner understood of it.
type value struct {
	start, end int
	kind       kind
	text       string    // decoded, of a textValue
	inline     *inline   // of an inlineValue
	rows       []*inline // of an arrayValue made of inline tables only
}

// inline is a table written between braces.
type inline struct {
	open, close int // offsets of the braces
	line        int
	block       int // index of the block it stands in
	pairs       []pair
}

// blockKind tells what opens a block.
type blockKind uint8

const (
	rootBlock  blockKind = iota // nothing: the part before the first header
	tableBlock                  // [header]
	rowBlock                    // [[header]]
)

// block is a header with the lines that belong to it. It begins with the
// comment lines directly above its header and ends behind its last key and the
// comment lines directly below that. What follows, up to the next block, is a
// gap: blank lines, and comments that stand free between blank lines.
type block struct {
	kind      blockKind
	path      []part
	line      int // of the header; 1 for the root
	start     int // of the first comment line directly above the header
	headerEnd int // end of the header's line, without its line end
	solidEnd  int // end of the line of the last key, or of the header
	end       int // end of the block without its last line end
	pairs     []pair
	table     *table
}

// scanner reads the text once, from left to right. Its methods return false
// when they have put an error into err.
type scanner struct {
	name    string
	text    string
	pos     int
	err     *Error
	blocks  []block
	pairs   []pair // of the block being read
	spare   []pair // the free rest of a chunk that the pairs of blocks are cut from
	parts   []part // and of one that keys are cut from
	entries int
	pathSum int
	outer   int // length of the path of the table being read, as counted in pathSum

	lineOff, lineNo int // the last position whose line was asked for
}

func (s *scanner) fail(off int, format string, args ...any) bool {
	s.err = failAt(s.name, s.text, off, format, args...)
	return false
}

// lineAt returns the line of off. Asked in rising order it costs one pass over
// the text in all.
func (s *scanner) lineAt(off int) int {
	if off < s.lineOff {
		return 1 + strings.Count(s.text[:off], "\n")
	}
	s.lineNo += strings.Count(s.text[s.lineOff:off], "\n")
	s.lineOff = off
	return 1 + s.lineNo
}

// document reads the whole text into blocks and pairs.
func (s *scanner) document() bool {
	headers := strings.Count(s.text, "\n[") + strings.Count(s.text, "\n [")
	s.blocks = make([]block, 0, min(headers, maxEntries)+2)
	s.blocks = append(s.blocks, block{kind: rootBlock, line: 1})
	comments := -1 // start of the comment lines directly above, if any
	before := 0    // end of the block as it was before those
	blank := false // whether a blank line has passed since the last key
	for s.pos < len(s.text) {
		lineStart := s.pos
		s.skipBlanks()
		b := &s.blocks[len(s.blocks)-1]
		switch c := s.peek(); c {
		case 0, '\n', '\r':
			comments, blank = -1, true
		case '#':
			if comments < 0 {
				comments, before = lineStart, b.end
			}
			s.skipComment()
			if !blank {
				b.end = s.pos
			}
		case '[':
			start := lineStart
			if comments >= 0 {
				start, b.end = comments, before
			}
			if !s.header(start) {
				return false
			}
			comments, blank = -1, false
		default:
			if !s.line() {
				return false
			}
			b.end, b.solidEnd = s.pos, s.pos
			comments, blank = -1, false
		}
		s.skipLineEnd()
	}
	s.closeBlock()
	return true
}

// header reads [a.b] or [[a.b]] and opens the block that begins at start.
func (s *scanner) header(start int) bool {
	open := s.pos
	b := block{kind: tableBlock, start: start, line: s.lineAt(open)}
	s.pos++
	closing := "]"
	if s.peek() == '[' {
		s.pos++
		b.kind, closing = rowBlock, "]]"
	}
	s.outer = 0
	path, ok := s.keyPath()
	if !ok {
		return false
	}
	s.outer = s.pathLength(path)
	b.path = path
	if !strings.HasPrefix(s.text[s.pos:], closing) {
		return s.fail(open, "the header is not closed; end it with %s", closing)
	}
	s.pos += len(closing)
	if !s.restOfLine() {
		return s.fail(s.pos, "something stands behind the header; put it on a line of its own")
	}
	b.headerEnd, b.solidEnd, b.end = s.pos, s.pos, s.pos
	s.closeBlock()
	s.blocks = append(s.blocks, b)
	return true
}

// closeBlock gives the block being read the pairs that were read. Blocks are
// many and small: their pairs are cut from larger chunks.
func (s *scanner) closeBlock() {
	const chunk = 128
	n := len(s.pairs)
	if len(s.spare) < n {
		s.spare = make([]pair, max(n, chunk))
	}
	s.blocks[len(s.blocks)-1].pairs = s.spare[:n:n]
	copy(s.spare, s.pairs)
	s.spare, s.pairs = s.spare[n:], s.pairs[:0]
}

// line reads a pair that stands on a line of its own, with its comment.
func (s *scanner) line() bool {
	p, ok := s.pair(nil, 0)
	if !ok {
		return false
	}
	if !s.restOfLine() {
		return s.junk(&p)
	}
	s.pairs = append(s.pairs, p)
	return true
}

// junk explains what stands behind a complete value: mostly a unit behind a
// number without quotes.
func (s *scanner) junk(p *pair) bool {
	rest := s.text[p.val.start:s.endOfLine()]
	rest, _, _ = strings.Cut(rest, "#")
	rest = strings.TrimSpace(rest)
	key := s.text[p.start():p.key[len(p.key)-1].end]
	if p.val.kind == scalarValue {
		return s.fail(p.val.start, "a value with a unit or with spaces must stand in quotes; write %s = %s", short(key), Quote(short(rest)))
	}
	return s.fail(s.pos, "something stands behind the value of %s; put it on a line of its own, or behind a #", short(key))
}

// pair reads key = value, inside the inline table in, or outside of any.
func (s *scanner) pair(in *inline, depth int) (pair, bool) {
	p := pair{line: s.lineAt(s.pos), block: len(s.blocks) - 1, in: in, comma: -1}
	path, ok := s.keyPath()
	if !ok {
		return p, false
	}
	p.key = path
	if s.peek() != '=' {
		return p, s.fail(path[0].start, "the key %s has no = behind it; write key = \"value\", or put # before a remark", short(path[len(path)-1].name))
	}
	s.pos++
	s.skipBlanks()
	outer := s.outer
	s.outer += s.pathLength(path)
	p.val, ok = s.value(depth)
	s.outer = outer
	return p, ok
}

// keyPath reads a key or the inside of a header, up to what ends it.
func (s *scanner) keyPath() ([]part, bool) {
	var scratch [maxParts]part
	n := 0
	for {
		s.skipBlanks()
		p := part{start: s.pos}
		switch c := s.peek(); {
		case c == '"':
			name, ok := s.basic()
			if !ok {
				return nil, false
			}
			p.name = name
		case c == '\'':
			name, ok := s.literal()
			if !ok {
				return nil, false
			}
			p.name = name
		default:
			for s.pos < len(s.text) && isBare(s.text[s.pos]) {
				s.pos++
			}
			if s.pos == p.start {
				return nil, s.fail(s.pos, "a key is missing or not plain; use letters, digits, - and _ in a key, or put it in quotes")
			}
			p.name = s.text[p.start:s.pos]
		}
		p.end = s.pos
		if n == maxParts {
			return nil, s.fail(scratch[0].start, "the key has more than %d parts; use fewer dots", maxParts)
		}
		scratch[n] = p
		n++
		s.skipBlanks()
		if s.peek() != '.' {
			return s.keep(scratch[:n])
		}
		s.pos++
	}
}

// keep copies a path out of scratch space and counts it against the limits.
func (s *scanner) keep(path []part) ([]part, bool) {
	s.pathSum += (s.outer + s.pathLength(path)) * len(path)
	if !s.count() || s.pathSum > maxPathSum {
		return nil, s.fail(path[0].start, "there are too many or too long keys; split the file")
	}
	if len(s.parts) < len(path) {
		s.parts = make([]part, 512)
	}
	kept := s.parts[:len(path):len(path)]
	s.parts = s.parts[len(path):]
	copy(kept, path)
	return kept, true
}

// count counts one more key, header or inline table, and reports whether it is
// within the limit.
func (s *scanner) count() bool {
	s.entries++
	return s.entries <= maxEntries
}

// pathLength is what a path costs the decoder, in bytes.
func (s *scanner) pathLength(path []part) int {
	return path[len(path)-1].end - path[0].start + 16*len(path)
}

// isBare reports whether c may stand in a key without quotes.
func isBare(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'
}

// peek returns the next byte, or 0 at the end, as text holds no zero byte.
func (s *scanner) peek() byte {
	if s.pos < len(s.text) {
		return s.text[s.pos]
	}
	return 0
}

func (s *scanner) skipBlanks() {
	for s.pos < len(s.text) && (s.text[s.pos] == ' ' || s.text[s.pos] == '\t') {
		s.pos++
	}
}

// endOfLine returns the offset of the next line end.
func (s *scanner) endOfLine() int { return lineEnd(s.text, s.pos) }

// skipComment goes to the end of the line.
func (s *scanner) skipComment() { s.pos = s.endOfLine() }

func (s *scanner) skipLineEnd() {
	if s.peek() == '\r' {
		s.pos++
	}
	if s.peek() == '\n' {
		s.pos++
	}
}

// restOfLine goes to the end of the line, and reports whether nothing but a
// comment stood before it.
func (s *scanner) restOfLine() bool {
	at := s.pos
	s.skipBlanks()
	switch s.peek() {
	case '#':
		s.skipComment()
		return true
	case 0, '\n', '\r':
		return true
	}
	s.pos = at
	return false
}

// lineEnd returns the offset of the line end that follows off.
func lineEnd(text string, off int) int {
	i := strings.IndexByte(text[off:], '\n')
	if i < 0 {
		return len(text)
	}
	if i > 0 && text[off+i-1] == '\r' {
		i--
	}
	return off + i
}
