// Package dialogue is the planner as lines of text: a line is typed, lines answer it. It serves who reads a screen by ear or by finger,
// terminals that cannot place a cursor, slow lines, paper, and scripts.
//
// Start with [New]; [Session.Hear] takes a line, [Session.Run] takes them from a keyboard or a file until the end. Nothing is drawn,
// coloured or repeated: a label stands before its value, the unit with its number, one thing on a line, and no answer is longer than
// was asked. What there is to say comes from where the screen has it too: the fields and pages of model, the figures and findings of
// calc, the words of ui/wording.
package dialogue

import (
	"bufio"
	"cmp"
	"fmt"
	"io"
	"os"
	"runtime"
	"strconv"
	"strings"
	"time"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/journal"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/wording"
)

// Options says how a session is opened.
type Options struct {
	Path    string // where the plan is saved; empty asks
	Title   string // what is said while there is no path, such as "demo"
	Why     string // said first: why lines are used; empty says nothing
	Fresh   bool   // begin with the questions for a new plan
	Section int    // the section that is open first, from 0
	Units   string // the set said first: metric, field or si; empty for the plan's own
	Name    string // who works here, for the plan's log; empty asks at the first save
	Version string // of the program, for papers
	ASCII   bool   // no character beyond ASCII
	Width   int    // columns of the terminal, which would break longer lines within words; 0 leaves lines as they are
	// Script says that the lines come from a file or a pipe: nobody is there to answer a question, and each line is repeated behind its
	// prompt, since nobody's typing stands there.
	Script   bool
	ReadOnly bool               // the plan is saved under another name only
	Computer *planlock.Computer // by which the plan's file is locked; nil for no locks
	Journal  *journal.Keeper    // keeps what is not saved against a crash; nil for nothing kept
	Left     []*journal.Found   // what earlier runs kept of this plan

	Clock    func() time.Time // nil for the computer's
	Accepted func()           // called after every edit that was taken, undone or redone; nil for nothing
	Disk     Disk             // nil for the computer's files
}

// Session is a dialogue about one plan.
type Session struct {
	file    *planfile.File
	plan    *model.Plan
	options Options
	disk    Disk
	history model.History
	opened  *model.Plan // as it was when it was opened
	base    *model.Plan // what changes are counted from
	before  *model.Plan // as it was before the last edit; nil while there is none

	lock     *planlock.Lock // on the plan's file; nil when there is none
	readOnly string         // why the plan is not saved under its own name; empty when it is
	holding  string         // what is to be said of the lock when the plan is opened
	edited   bool           // since it was last looked what others do to the file
	glances  chan glanced   // gives what a look has found; nil while nobody looks
	happened string         // what others have done, as it was said last

	unsaved []*journal.Found // what earlier runs left of the plan and was not seen to
	handed  int              // the revision that the journal knows
	settled bool             // the journal has said its last word:
	kept    bool             // what is not saved is kept for the next start
	unkept  bool             // it could not be

	set    quantity.Set
	system quantity.System
	result *calc.Result

	topic   model.Topic
	section int
	named   list // what the numbers of the last list mean
	renamed bool // the last edit made other entries of the page count

	words    []word
	glyphs   canvas.Glyphs
	out      *bufio.Writer
	answer   []string // what is to be said to the line being heard
	rest     []string // what was not said yet
	total    int      // how many lines that answer has
	part     int      // the most lines of an answer; 0 for no bound
	wish     int      // the same for the answer in work, as asked for with the line
	question *question
	refused  int // lines that could not be followed
	over     bool
	dropped  bool // left on purpose with what was not saved
}

// usualPart is how many lines an answer has at most until another number is asked for.
const usualPart = 12

// New returns a session on a plan, which says what it has to say to out.
func New(file *planfile.File, out io.Writer, options Options) *Session {
	s := &Session{file: file, plan: file.Plan, options: options, topic: model.TopicHole,
		glyphs: canvas.UnicodeGlyphs(), out: bufio.NewWriter(out), part: usualPart, words: words()}
	if options.ASCII {
		s.glyphs = canvas.ASCIIGlyphs()
	}
	if options.Clock == nil {
		s.options.Clock = time.Now
	}
	if s.disk = options.Disk; s.disk == nil {
		s.disk = computer{os.Getenv, runtime.GOOS}
	}
	s.unsaved = options.Left
	s.begin(file, model.History{})
	s.section = max(0, min(options.Section, len(s.plan.Sections)-1))
	s.holding = s.hold()
	return s
}

// begin begins on the plan of a file.
func (s *Session) begin(file *planfile.File, history model.History) {
	s.file, s.history, s.handed = file, history, notHanded
	s.plan = s.file.Plan
	s.opened = s.plan.Clone()
	s.base, s.before = s.opened, nil
	s.set, _ = quantity.ParseSet(cmp.Or(s.options.Units, s.plan.Well.UnitSet))
	s.named.stale = true
	s.evaluate()
}

// evaluate computes the plan anew.
func (s *Session) evaluate() {
	s.section = max(0, min(s.section, len(s.plan.Sections)-1))
	s.result = calc.Evaluate(s.plan)
	s.system = s.plan.System(s.set, s.ownUnits())
}

// ownUnits reports whether the plan's own choice of units holds: it does for the plan's own unit set.
func (s *Session) ownUnits() bool { return s.set.String() == s.plan.Well.UnitSet }

// Refused returns how many lines could not be followed.
func (s *Session) Refused() int { return s.refused }

// Greet says what was opened and where that is.
func (s *Session) Greet() {
	if s.options.Why != "" {
		s.say(s.options.Why)
	}
	if s.options.Fresh {
		s.say("borewalk, a new plan")
	} else {
		s.say("borewalk, " + s.name() + ", " + s.state())
	}
	s.say("a planning aid: verify by independent calculation")
	if n := len(s.file.Notices); n > 0 && !s.options.Fresh {
		s.say(fmt.Sprintf("the file needs a look: say notices to hear %d", n))
	}
	if s.holding != "" {
		s.say(s.holding)
	}
	s.sayLeft()
	switch {
	case s.options.Fresh && len(s.unsaved) > 0 && !s.options.Script: // what is said next is about that
		s.say("say new to begin the new plan")
	case s.options.Fresh:
		s.askNew()
	default:
		s.where()
		s.say("say help for the words")
	}
	s.finish()
}

// Hear takes a line and answers it.
func (s *Session) Hear(line string) {
	line = strings.Join(strings.Fields(model.Clean(strings.ToValidUTF8(line, " "))), " ")
	s.wish = s.part
	s.sayTrouble()
	switch {
	case s.question != nil:
		s.reply(line)
	case line == "" || strings.HasPrefix(line, "#"): // scripts have blank lines and remarks
	default:
		s.obey(line)
	}
	s.handOver()
	s.glance()
	s.finish()
}

// say adds a line to the answer.
func (s *Session) say(text string) {
	s.answer = append(s.answer, s.glyphs.Translate(model.Clean(text)))
}

// refuse says why a line cannot be followed.
func (s *Session) refuse(why string) {
	s.refused++
	s.say(why)
}

// finish says the answer as far as it was asked for, and the question that is open.
func (s *Session) finish() {
	if len(s.answer) > 0 {
		s.rest, s.total = s.answer, len(s.answer)
		s.answer = nil
		s.sayRest()
	}
	if q := s.question; q != nil && !q.said {
		q.said = true
		for _, l := range q.lines {
			s.write(l)
		}
	}
	s.out.Flush()
}

// sayRest says the next part of an answer; its last line tells that there is more.
func (s *Session) sayRest() {
	n := len(s.rest)
	if s.wish > 0 && n > s.wish {
		n = max(1, s.wish-1)
	}
	for _, l := range s.rest[:n] {
		s.write(l)
	}
	if s.rest = s.rest[n:]; len(s.rest) > 0 {
		s.write(fmt.Sprintf("%d of %d; say more", s.total-len(s.rest), s.total))
	}
}

// write writes a line, in several where the terminal is narrower.
func (s *Session) write(line string) {
	line = s.glyphs.Translate(model.Clean(line))
	for s.options.Width > 0 && canvas.Width(line) > s.options.Width {
		head, rest := broken(line, s.options.Width)
		if rest == "" {
			break
		}
		s.out.WriteString(head + "\n")
		line = rest
	}
	s.out.WriteString(line + "\n")
}

// broken breaks a line at the last blank before a width, or at the first behind it where a word is longer; rest is empty where there
// is none.
func broken(line string, width int) (head, rest string) {
	at := -1
	for i, r := range line {
		if r != ' ' || i == 0 {
			continue
		}
		if at >= 0 && canvas.Width(line[:i]) > width {
			break
		}
		at = i
	}
	if at < 0 {
		return line, ""
	}
	return line[:at], strings.TrimLeft(line[at:], " ")
}

// name returns what the plan is called.
func (s *Session) name() string { return cmp.Or(s.plan.Well.Name, "unnamed well") }

// state says what the plan came from, and whether something is not saved.
func (s *Session) state() string {
	state := cmp.Or(s.options.Path, s.options.Title, "no file")
	if s.readOnly != "" {
		state += ", read-only"
	}
	if s.history.Dirty() {
		state += ", not saved"
	}
	return state
}

// where says where the session is, in one line.
func (s *Session) where() {
	_, count := s.result.Worst(-1)
	findings := fmt.Sprintf("%d stop, %d caution", count[calc.Stop], count[calc.Caution])
	switch {
	case s.sheet() >= 0:
		hole := ""
		if size := s.plan.Sections[s.section].Hole; size.IsSet() {
			hole = quantity.FormatUnit(size.SI, quantity.Diameter, s.system.Unit(quantity.Diameter)) + " hole, "
		}
		s.say(fmt.Sprintf("section %d of %d, %spage %s; %s", s.section+1, len(s.plan.Sections), hole, s.topic, findings))
	case len(s.plan.Sections) == 0:
		s.say(fmt.Sprintf("no section yet, page %s; %s", s.topic, findings))
	default:
		s.say(fmt.Sprintf("the well, page %s; %s", s.topic, findings))
	}
}

// sheet returns which figures the page has: the well's, -1, or those of the section being worked.
func (s *Session) sheet() int {
	if s.topic == model.TopicWell || s.topic == model.TopicHandover || len(s.plan.Sections) == 0 {
		return -1
	}
	return s.section
}

func (s *Session) view() wording.View { return wording.View{Topic: s.topic, Section: s.section} }

// number reads a whole number that stands alone.
func number(text string) (int, bool) {
	n, err := strconv.Atoi(text)
	return n, err == nil && n >= 0 && text[0] != '+'
}
