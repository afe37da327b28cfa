package tomldoc

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// basic reads "..." and returns what it means.
func (s *scanner) basic() (string, bool) {
	open := s.pos
	s.pos++
	from := s.pos
	var decoded []byte
	for s.pos < len(s.text) {
		switch s.text[s.pos] {
		case '"':
			s.pos++
			return joined(decoded, s.text[from:s.pos-1]), true
		case '\n', '\r':
			return "", s.unclosed(open, `"`)
		case '\\':
			decoded = append(decoded, s.text[from:s.pos]...)
			r, ok := s.escape()
			if !ok {
				return "", false
			}
			decoded = utf8.AppendRune(decoded, r)
			from = s.pos
		default:
			s.pos++
		}
	}
	return "", s.unclosed(open, `"`)
}

// joined adds the rest to what was decoded before it. Most strings hold no
// escape and cost no copy.
func joined(decoded []byte, rest string) string {
	if len(decoded) == 0 {
		return rest
	}
	return string(append(decoded, rest...))
}

func (s *scanner) unclosed(open int, quote string) bool {
	return s.fail(open, "the text that begins here is not closed; end it with %s", quote)
}

// literal reads '...'.
func (s *scanner) literal() (string, bool) {
	open := s.pos
	s.pos++
	i := strings.IndexAny(s.text[s.pos:], "'\n")
	if i < 0 || s.text[s.pos+i] == '\n' {
		return "", s.unclosed(open, "'")
	}
	s.pos += i + 1
	return s.text[open+1 : s.pos-1], true
}

// longBasic reads """...""" and returns what it means.
func (s *scanner) longBasic() (string, bool) {
	open := s.pos
	s.pos += 3
	s.skipLineEnd()
	from := s.pos
	var decoded []byte
	for s.pos < len(s.text) {
		switch s.text[s.pos] {
		case '"':
			ends, ok := s.closing('"')
			if !ok {
				return "", false
			}
			if ends {
				return joined(decoded, s.text[from:s.pos-3]), true
			}
		case '\\':
			decoded = append(decoded, s.text[from:s.pos]...)
			if !s.continued() {
				r, ok := s.escape()
				if !ok {
					return "", false
				}
				decoded = utf8.AppendRune(decoded, r)
			}
			from = s.pos
		default:
			s.pos++
		}
	}
	return "", s.unclosed(open, `"""`)
}

// longLiteral reads ”'...”'.
func (s *scanner) longLiteral() (string, bool) {
	open := s.pos
	s.pos += 3
	s.skipLineEnd()
	from := s.pos
	for s.pos < len(s.text) {
		if s.text[s.pos] != '\'' {
			s.pos++
			continue
		}
		ends, ok := s.closing('\'')
		if !ok {
			return "", false
		}
		if ends {
			return s.text[from : s.pos-3], true
		}
	}
	return "", s.unclosed(open, "'''")
}

// closing passes a run of quotes inside a long text, and reports whether it
// closes the text: three do, and up to two more before them belong to it.
func (s *scanner) closing(quote byte) (ends, ok bool) {
	start := s.pos
	for s.peek() == quote {
		s.pos++
	}
	if s.pos-start > 5 {
		return false, s.fail(start, "too many quotes stand in a row; write \\\" for a quote inside the text")
	}
	return s.pos-start >= 3, true
}

// continued passes a backslash at the end of a line with all blank space that
// follows it, and reports whether there was one.
func (s *scanner) continued() bool {
	i := s.pos + 1
	for i < len(s.text) && (s.text[i] == ' ' || s.text[i] == '\t') {
		i++
	}
	if i == len(s.text) || s.text[i] != '\n' && s.text[i] != '\r' {
		return false
	}
	for i < len(s.text) && strings.IndexByte(" \t\r\n", s.text[i]) >= 0 {
		i++
	}
	s.pos = i
	return true
}

// escape reads a backslash with what it stands for.
func (s *scanner) escape() (rune, bool) {
	at := s.pos
	s.pos++
	c := s.peek()
	s.pos++
	digits := 0
	switch c {
	case 'b':
		return '\b', true
	case 't':
		return '\t', true
	case 'n':
		return '\n', true
	case 'f':
		return '\f', true
	case 'r':
		return '\r', true
	case 'e':
		return 0x1b, true
	case '"', '\\':
		return rune(c), true
	case 'x':
		digits = 2
	case 'u':
		digits = 4
	case 'U':
		digits = 8
	default:
		return 0, s.fail(at, `a backslash in double quotes begins an escape; write \\ for a backslash, or use single quotes`)
	}
	if len(s.text)-s.pos >= digits {
		code, err := strconv.ParseUint(s.text[s.pos:s.pos+digits], 16, 32)
		if err == nil && code <= utf8.MaxRune && utf8.ValidRune(rune(code)) {
			s.pos += digits
			return rune(code), true
		}
	}
	return 0, s.fail(at, `\%c wants %d hexadecimal digits of a character; write \\ for a backslash, or use single quotes`, c, digits)
}
