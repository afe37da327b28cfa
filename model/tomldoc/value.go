package tomldoc

import "strings"

// value reads one value; depth counts the arrays and inline tables around it.
func (s *scanner) value(depth int) (value, bool) {
	v := value{start: s.pos}
	ok := true
	switch c := s.peek(); {
	case strings.HasPrefix(s.text[s.pos:], `"""`):
		v.kind = textValue
		v.text, ok = s.longBasic()
	case strings.HasPrefix(s.text[s.pos:], `'''`):
		v.kind = textValue
		v.text, ok = s.longLiteral()
	case c == '"':
		v.kind = textValue
		v.text, ok = s.basic()
	case c == '\'':
		v.kind = textValue
		v.text, ok = s.literal()
	case (c == '[' || c == '{') && depth == maxDepth:
		return v, s.fail(s.pos, "more than %d brackets stand inside each other; use tables of their own", maxDepth)
	case c == '[':
		v.kind = arrayValue
		v.rows, ok = s.array(depth + 1)
	case c == '{':
		v.kind = inlineValue
		v.inline, ok = s.inlineTable(depth + 1)
	default:
		ok = s.scalar()
	}
	v.end = s.pos
	return v, ok
}

// array reads [ ... ]. If every element is an inline table it returns them.
func (s *scanner) array(depth int) ([]*inline, bool) {
	open := s.pos
	s.pos++
	var rows []*inline
	onlyRows := true
	for {
		s.skipSpace()
		if s.peek() == ']' {
			break
		}
		if s.peek() == 0 {
			return nil, s.fail(open, "the array that begins here is not closed; end it with ]")
		}
		if !s.count() {
			return nil, s.fail(s.pos, "there are too many values in arrays; take out what does not belong to the plan")
		}
		v, ok := s.value(depth)
		if !ok {
			return nil, false
		}
		if v.kind == inlineValue {
			rows = append(rows, v.inline)
		} else {
			onlyRows = false
		}
		s.skipSpace()
		switch s.peek() {
		case ',':
			s.pos++
		case ']', 0:
		default:
			return nil, s.fail(s.pos, "a comma is missing in the array; part its values with commas, and put text in quotes")
		}
	}
	s.pos++
	if !onlyRows {
		rows = nil
	}
	return rows, true
}

// inlineTable reads { ... }. TOML 1.1 lets it run over several lines.
func (s *scanner) inlineTable(depth int) (*inline, bool) {
	t := &inline{open: s.pos, line: s.lineAt(s.pos), block: len(s.blocks) - 1}
	s.pos++
	if !s.count() {
		return nil, s.fail(t.open, "there are too many inline tables; split the file")
	}
	for {
		s.skipSpace()
		if s.peek() == '}' {
			break
		}
		if s.peek() == 0 {
			return nil, s.fail(t.open, "the inline table that begins here is not closed; end it with }")
		}
		p, ok := s.pair(t, depth)
		if !ok {
			return nil, false
		}
		s.skipSpace()
		switch s.peek() {
		case ',':
			p.comma = s.pos
			s.pos++
		case '}', 0:
		default:
			return nil, s.fail(s.pos, "a comma is missing in the inline table; part its keys with commas, and put text in quotes")
		}
		t.pairs = append(t.pairs, p)
	}
	t.close = s.pos
	s.pos++
	return t, true
}

// skipSpace skips blanks, line ends and comments inside brackets.
func (s *scanner) skipSpace() {
	for s.pos < len(s.text) {
		switch s.text[s.pos] {
		case ' ', '\t', '\n', '\r':
			s.pos++
		case '#':
			s.skipComment()
		default:
			return
		}
	}
}

// scalar reads a number, a date, true or false, by its length only: which of
// them it is, and whether it is one, the decoder decides.
func (s *scanner) scalar() bool {
	start := s.pos
	s.skipWord()
	word := s.text[start:s.pos]
	// A date and a time may be parted by one space.
	if len(word) == 10 && word[4] == '-' && len(s.text)-s.pos > 3 && s.text[s.pos] == ' ' &&
		isDigit(s.text[s.pos+1]) && isDigit(s.text[s.pos+2]) && s.text[s.pos+3] == ':' {
		s.pos++
		s.skipWord()
		return true
	}
	switch {
	case word == "":
		return s.fail(start, "a value is missing; write key = \"value\", or take the key out")
	case isDigit(word[0]), word[0] == '+', word[0] == '-', word == "true", word == "false", word == "inf", word == "nan":
		return true
	case word[0] == '.' && len(word) > 1 && isDigit(word[1]):
		return s.fail(start, "a number must begin with a digit; write 0%s", short(word))
	}
	whole, _, _ := strings.Cut(s.text[start:s.endOfLine()], "#")
	return s.fail(start, "text must stand in quotes; write %s", Quote(short(strings.TrimSpace(whole))))
}

func (s *scanner) skipWord() {
	for s.pos < len(s.text) {
		switch s.text[s.pos] {
		case ' ', '\t', '\n', '\r', ',', ']', '}', '#':
			return
		}
		s.pos++
	}
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
