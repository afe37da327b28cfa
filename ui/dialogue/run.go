package dialogue

import (
	"bufio"
	"errors"
	"io"
	"os"
	"strings"
)

// prompt stands before what is typed.
const prompt = "> "

// Run holds the dialogue: it takes lines from input until the session is left or the input ends, and an interrupt, as ctrl+c sends
// one, for a wish to leave, or in a script for its end. keyboard says that a person types the lines: then an end of input, as ctrl+d sends one, asks before
// something is lost, and one behind it does not. The error is that of reading or writing.
func (s *Session) Run(input io.Reader, interrupts <-chan os.Signal, keyboard bool) error {
	heard := listen(input)
	s.nameEntries()
	s.Greet()
	ended := false
	for !s.over {
		s.out.WriteString(prompt)
		if err := s.out.Flush(); err != nil {
			return err
		}
		select {
		case h := <-heard:
			if h.err == nil {
				ended = false
				s.took(h.text)
				continue
			}
			s.out.WriteString("\n")
			if errors.Is(h.err, io.EOF) && keyboard && !ended && s.history.Dirty() {
				ended = true
				s.leave()
				continue
			}
			s.Lose()
			if !errors.Is(h.err, io.EOF) {
				return h.err
			}
		case <-interrupts:
			s.out.WriteString("\n")
			if !keyboard { // nobody is there to answer, and the next line of a script is no answer
				s.Lose()
				continue
			}
			s.interrupted()
		}
	}
	return s.out.Flush()
}

// took takes a line, and repeats it where it stands nowhere.
func (s *Session) took(line string) {
	if s.options.Echo {
		s.write(strings.TrimRight(line, "\r\n"))
	}
	s.Hear(line)
}

// interrupted gives up a question, or asks to leave.
func (s *Session) interrupted() {
	if q := s.question; q != nil {
		s.wish = s.part
		s.giveUp(q)
		s.finish()
		return
	}
	s.leave()
}

// leave is quit, asked for without a word.
func (s *Session) leave() {
	s.question, s.wish = nil, s.part
	s.quit()
	s.finish()
}

// heard is a line that was read, or why there is none.
type heard struct {
	text string
	err  error
}

// longestLine is how much of a line is taken, in bytes; no entry is as long.
const longestLine = 4096

// listen reads lines beside the dialogue, so that an interrupt is heard while nothing is typed. It ends behind an error other than the
// end of input, and behind the second end in a row: a terminal's first is a key that was pressed, and more can come.
func listen(input io.Reader) <-chan heard {
	lines := make(chan heard)
	go func() {
		in := bufio.NewReaderSize(input, longestLine)
		for ends := 0; ends < 2; {
			text, err := readLine(in)
			if text != "" || err == nil {
				lines <- heard{text: text}
				ends = 0
			}
			if err == nil {
				continue
			}
			lines <- heard{err: err}
			if ends++; !errors.Is(err, io.EOF) {
				return
			}
		}
	}()
	return lines
}

// readLine reads a line; what is beyond the longest is dropped.
func readLine(in *bufio.Reader) (string, error) {
	line, err := in.ReadSlice('\n')
	text := string(line)
	for errors.Is(err, bufio.ErrBufferFull) {
		_, err = in.ReadSlice('\n')
	}
	return text, err
}
