package terminal

// This file knows the shape of what a keyboard sends: single bytes, characters in UTF-8, and escape sequences (ECMA-48,
// 5.4, with the deviations of the Linux console and rxvt). It tells where one key ends and which pieces are no key.

// place says where in a key the last byte stood.
type place uint8

const (
	ground   place = iota // between keys
	escape                // after ESC: the Esc key, or the start of anything below
	letter                // inside a character of several bytes
	csi                   // after ESC [
	csiParam              // after ESC [ and at least one parameter
	csiO                  // after ESC [ O: a report that the focus was lost, or an arrow key of rxvt
	function              // after ESC [ [: a function key of the Linux console
	mouse                 // after ESC [ M: three more bytes
	ss3                   // after ESC O
	ss3Param              // after ESC O and at least one parameter
	paste                 // inside a bracketed paste
)

// outcome is what a byte does to the key being read.
type outcome uint8

const (
	more   outcome = iota // the key goes on
	done                  // the key ends with this byte
	pasted                // the key ends with this byte and is the start of a bracketed paste
	lost                  // the piece ends with this byte and is no key that bubbletea knows: typed, it would be garbage
	broken                // the key ended before this byte, unfinished; the byte is the first of another
)

// longest is the length of the longest sequence that counts as a key. A mouse report, the longest that terminals send,
// takes about 20 bytes.
const longest = 32

// pasteEnd ends a bracketed paste.
const pasteEnd = "\x1b[201~"

// sequence follows the bytes of the keyboard. The zero value stands between keys.
type sequence struct {
	place   place
	length  int  // bytes of this key so far, ESC included
	left    int  // bytes that letter and mouse still want
	number  int  // the parameter, where digits are all there is
	plain   bool // nothing but digits so far
	matched int  // bytes of pasteEnd seen last
}

// step takes the next byte. After broken the same byte has to be given again.
func (s *sequence) step(b byte) outcome {
	s.length++
	o := s.next(b)
	switch {
	case o == pasted:
		*s = sequence{place: paste}
	case o == done && s.place == paste:
		// A paste is kept together by bubbletea itself.
	case o == done && s.length > longest:
		*s = sequence{}
		return lost
	case o != more:
		*s = sequence{}
	}
	return o
}

// next finds what the byte means where the sequence stands.
func (s *sequence) next(b byte) outcome {
	switch s.place {
	case ground:
		return s.first(b)
	case escape:
		return s.afterEscape(b)
	case letter:
		return s.counted(b >= 0x80 && b <= 0xbf)
	case mouse:
		return s.counted(b >= 0x20)
	case csi:
		return s.afterCSI(b)
	case csiParam:
		return s.parameter(b)
	case csiO:
		return ends(b, "ABCDabcd", broken)
	case function:
		return ends(b, "ABCDE", lost)
	case ss3, ss3Param:
		return s.afterSS3(b)
	}
	return s.insidePaste(b)
}

// first is the first byte of a key. Bytes that begin no character are passed on one by one; bubbletea ignores them.
func (s *sequence) first(b byte) outcome {
	switch {
	case b == 0x1b:
		s.place = escape
	case b >= 0xc2 && b <= 0xdf:
		s.place, s.left = letter, 1
	case b >= 0xe0 && b <= 0xef:
		s.place, s.left = letter, 2
	case b >= 0xf0 && b <= 0xf4:
		s.place, s.left = letter, 3
	default:
		return done
	}
	return more
}

// afterEscape is the byte after ESC. Two ESC may begin a key pressed together with Alt; a third is another key.
func (s *sequence) afterEscape(b byte) outcome {
	switch {
	case b == '[':
		s.place = csi
	case b == 'O':
		s.place = ss3
	case b == 0x1b && s.length > 2:
		return broken
	default:
		return s.first(b)
	}
	return more
}

// counted goes on for as many bytes as are left, if the byte fits.
func (s *sequence) counted(fits bool) outcome {
	if !fits {
		return broken
	}
	s.left--
	if s.left > 0 {
		return more
	}
	return done
}

// afterCSI is the byte after ESC [.
func (s *sequence) afterCSI(b byte) outcome {
	s.plain = true
	switch b {
	case '[':
		s.place = function
	case 'O':
		s.place = csiO
	case 'M':
		s.place, s.left = mouse, 3
	default:
		return s.parameter(b)
	}
	return more
}

// parameter is a byte after ESC [ that is a parameter, an intermediate or the last of the sequence.
func (s *sequence) parameter(b byte) outcome {
	shifted := s.plain && (s.number == 7 || s.number == 8) // rxvt: shift with Home and End ends with a dollar sign
	switch {
	case b >= '0' && b <= '9':
		s.number = min(10*s.number+int(b-'0'), 1000)
	case b == '$' && shifted:
		return done
	case b >= ' ' && b <= '?':
		s.plain = false
	case b == '~' && s.plain && s.number == 200:
		return pasted
	case b >= '@' && b <= '~':
		return done
	default:
		return broken
	}
	s.place = csiParam
	return more
}

// afterSS3 is the byte after ESC O. Function and arrow keys are known; the keypad of an old terminal is not.
func (s *sequence) afterSS3(b byte) outcome {
	switch {
	case b >= '0' && b <= ';':
		s.place = ss3Param
		return more
	case b < ' ' || b > '~':
		return broken
	case s.place == ss3Param:
		return lost
	}
	return ends(b, "ABCDPQRS", lost)
}

// ends is done for a byte among those given, otherwise something else.
func ends(b byte, last string, otherwise outcome) outcome {
	for i := range len(last) {
		if b == last[i] {
			return done
		}
	}
	return otherwise
}

// insidePaste looks for the end of a paste.
func (s *sequence) insidePaste(b byte) outcome {
	switch {
	case b == pasteEnd[s.matched]:
		s.matched++
	case b == pasteEnd[0]:
		s.matched = 1
	default:
		s.matched = 0
	}
	s.length = 0 // a paste may be of any length
	if s.matched == len(pasteEnd) {
		s.place, s.matched = ground, 0
	}
	return done
}

// unfinished reports whether a key has begun and not ended. It is false inside a paste.
func (s *sequence) unfinished() bool { return s.place != ground && s.place != paste }

// remains reports whether the beginning of a key is worthless without its end. A lone ESC is the Esc key, a piece of a
// character is ignored downstream, and ESC [ O is complete in itself; other pieces would be typed as "[", "1" and so on.
func (s *sequence) remains() bool {
	switch s.place {
	case csi, csiParam, function, mouse, ss3, ss3Param:
		return true
	}
	return false
}
