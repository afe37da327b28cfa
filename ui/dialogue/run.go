package dialogue

import (
	"bufio"
	"errors"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"strings"
	"syscall"
	"time"

	"borewalk/ui/leaving"
)

// prompt stands before what is typed.
const prompt = "> "

// Signals are those that end a dialogue or, with ctrl+c, give up a question. Each comes twice: for the dialogue, and for who looks that it
// ends though it may be stuck in a line.
type Signals struct{ Dialogue, Lookout <-chan os.Signal }

// Heed returns the signals that come to the program. One that whoever started it told it to ignore, as nohup does, stays ignored. That
// nobody reads what is said is an error of writing, and no signal.
func Heed() Signals {
	signal.Ignore(syscall.SIGPIPE)
	dialogue, lookout := make(chan os.Signal, 4), make(chan os.Signal, 4)
	for _, sig := range []os.Signal{os.Interrupt, syscall.SIGHUP, syscall.SIGQUIT, syscall.SIGTERM} {
		if !signal.Ignored(sig) {
			signal.Notify(dialogue, sig)
			signal.Notify(lookout, sig)
		}
	}
	return Signals{dialogue, lookout}
}

// stuck is how long a signal waits for a dialogue whose terminal takes no more bytes.
const stuck = 2 * time.Second

// Run holds the dialogue: it takes lines from input until the session is left, the input ends or a signal comes. However it ends, what is
// not saved is kept. Ctrl+c at a keyboard is a wish to leave; so is an end of input there, as ctrl+d sends one, which asks before
// something is left unsaved, and one behind it does not.
func (s *Session) Run(input io.Reader, signals Signals) leaving.End {
	talked := make(chan leaving.End, 1)
	go func() { talked <- s.talk(input, signals.Dialogue) }()
	var last os.Signal
	var over <-chan time.Time
	for {
		select {
		case end := <-talked:
			return end
		case sig := <-signals.Lookout:
			if over == nil && s.ends(sig) {
				last, over = sig, time.After(stuck)
			}
		case <-over:
			end := leaving.End{Signal: last}
			end.Kept, end.Lost = s.options.Journal.Finish(false)
			return end
		}
	}
}

// ends reports whether a signal ends the dialogue without asking. In a script nobody is there to answer, and the next line is no answer.
func (s *Session) ends(sig os.Signal) bool { return sig != os.Interrupt || s.options.Script }

// talk takes lines and signals, and says how that ended. A panic is a fault of the program that leaves the plan as the journal has it.
func (s *Session) talk(input io.Reader, signals <-chan os.Signal) (end leaving.End) {
	defer func() {
		if what := recover(); what != nil {
			end.Fault = &leaving.Fault{What: what, Stack: debug.Stack()}
		}
		s.settle()
		end.Kept, end.Lost, end.Terminal = s.kept, s.unkept, true
	}()
	heard := listen(input)
	s.nameEntries()
	s.Greet()
	ended := false
	for !s.over {
		s.out.WriteString(prompt)
		if end.Err = s.out.Flush(); end.Err != nil {
			return end
		}
		select {
		case h := <-heard:
			if h.err == nil {
				ended = false
				s.took(h.text)
				continue
			}
			s.out.WriteString("\n")
			if errors.Is(h.err, io.EOF) && !s.options.Script && !ended && s.history.Dirty() {
				ended = true
				s.leave()
				continue
			}
			s.Lose()
			if !errors.Is(h.err, io.EOF) {
				end.Err = h.err
				return end
			}
		case sig := <-signals:
			s.out.WriteString("\n")
			if !s.ends(sig) {
				s.interrupted()
				continue
			}
			end.Signal = sig
			s.lose("ended by a signal, " + sig.String())
		}
	}
	s.settle()
	end.Err = s.out.Flush()
	return end
}

// took takes a line, and repeats it where it stands nowhere.
func (s *Session) took(line string) {
	if s.options.Script {
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
