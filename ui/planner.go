// Package ui is the full-screen planner: pages of fields and figures made from what model and calc declare, with the
// wellbore schematic always in view.
//
// Start with [New] and hand the [Planner] to bubbletea. Update is a switch that delegates; View draws the state on a
// grid of cells and changes nothing. There is no formula here and no file format: editing goes through model.History,
// figures come from calc, files from model/planfile.
package ui

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"runtime"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/journal"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/terminal"
)

// Options says how the planner is opened.
type Options struct {
	Path    string // where the plan is saved; empty asks
	Title   string // what is shown while there is no path, such as "demo"
	Colours int
	ASCII   bool
	Columns int    // of the terminal at the start; 0 where it does not say
	Lines   int    // the like
	Fresh   bool   // begin with the questions for a new plan
	Demo    bool   // the plan is a demo: say so first, and what to press
	Section int    // the section that is open first, from 0
	Version string // of the program, for papers
	Units   string // the set shown first: metric, field or si; empty for the plan's own
	Name    string // who works here, for the plan's log; empty asks at the first save

	ReadOnly bool               // to look and try: saved under another name only
	Computer *planlock.Computer // by which the plan's file is locked; nil for no locks

	Clock func() time.Time // nil for the computer's

	Charts func(*model.Plan, int, model.Topic) []calc.Chart // where charts come from; nil for calc.Charts
	Bars   func(*model.Plan, int, model.Topic) []calc.Bar   // where bars come from; nil for calc.Bars

	// Play is where a section's cement job comes from; nil for calc.Play. PlayKill and PlayDisconnect are the like for the kick
	// circulated out and the riser let go.
	Play           func(plan *model.Plan, section int, hole calc.HoleSize) (job calc.Job, why string, mend model.Path)
	PlayKill       func(plan *model.Plan, section int, other bool) (job calc.Job, why string, mend model.Path)
	PlayDisconnect func(plan *model.Plan, section int) (job calc.Job, why string, mend model.Path)

	// Journal keeps what is not saved against a crash; nil for nothing kept. Left is what earlier runs kept of this plan.
	Journal *journal.Keeper
	Left    []*journal.Found

	Terminal io.Writer           // takes what sets its clipboard; nil for a terminal that has none
	Env      func(string) string // the environment; nil for os.Getenv
	System   string              // the operating system as runtime.GOOS spells it; empty for the computer's

	Now     func() time.Time           // the hour that a handover is stamped with; nil for the clock
	Changes func(*model.Plan) []string // what has changed since the last handover; nil for what the plan's log says
}

// view is what the right-hand side of the screen shows.
type view uint8

const (
	viewFields  view = iota // fields beside figures
	viewTable               // figures with all their columns
	viewPicture             // the page's charts, and the pressure window
	viewCount
)

// Planner is the state of the program: the plan, what follows from it, and where the user is.
type Planner struct {
	file    *planfile.File
	plan    *model.Plan
	options Options
	history model.History
	opened  *model.Plan // as it was when it was opened
	kept    keeping
	unkept  bool // what is not saved cannot be kept

	set      quantity.Set
	system   quantity.System
	result   *calc.Result
	plain    *calc.Result // of the plan where result has an entry besides that was typed and is not taken yet; nil where result is of the plan
	baseline *calc.Result
	marks    map[model.Path]calc.Severity // entries that findings beyond ok point at

	topic   model.Topic
	section int
	view    view
	whole   bool // the schematic shows the whole well
	scale   bool // the schematic's depth scale is true
	alone   bool // the page stands without header and schematic
	figures bool // focus is on the figures, not on the fields
	open    map[string]bool
	fieldAt map[model.Topic]held[lineKey]
	figAt   map[model.Topic]held[string]
	chartAt map[model.Topic]int
	column  int // the first column of the table that is shown
	charts  charts

	lock     *planlock.Lock // on the plan's file; nil when there is none
	readOnly string         // why the plan is not saved under its own name; empty when it is
	beside   beside
	edited   bool // since it was last looked what others do to the file

	edit    *editing
	overlay overlay
	message string
	alarm   alarm

	width, height int
	grid          *canvas.Canvas
	compared      sheetKeys
	drawn         *drawn // while a screen is drawn
	palette       canvas.Palette
	glyphs        canvas.Glyphs
	keys          []binding
	quit          bool
}

// New returns a planner on a plan.
func New(file *planfile.File, options Options) *Planner {
	p := &Planner{
		file: file, plan: file.Plan, options: options, opened: file.Plan.Clone(),
		topic: model.TopicHole, open: map[string]bool{}, fieldAt: map[model.Topic]held[lineKey]{}, figAt: map[model.Topic]held[string]{}, chartAt: map[model.Topic]int{},
		grid: canvas.New(80, 24), palette: canvas.NewPalette(options.Colours), glyphs: canvas.UnicodeGlyphs(),
	}
	if options.ASCII {
		p.glyphs = canvas.ASCIIGlyphs()
	}
	if options.Charts == nil {
		p.options.Charts = calc.Charts
	}
	if options.Clock == nil {
		p.options.Clock = time.Now
	}
	if options.Env == nil {
		p.options.Env = os.Getenv
	}
	p.options.System = cmp.Or(options.System, runtime.GOOS)
	if options.Bars == nil {
		p.options.Bars = calc.Bars
	}
	if options.Play == nil {
		p.options.Play = calc.Play
	}
	if options.PlayKill == nil {
		p.options.PlayKill = calc.PlayKill
	}
	if options.PlayDisconnect == nil {
		p.options.PlayDisconnect = calc.PlayDisconnect
	}
	if options.Now == nil {
		p.options.Now = time.Now
	}
	p.width, p.height = terminal.Size(options.Columns, options.Lines)
	p.keys = bindings()
	p.section = options.Section
	p.openPlan()
	p.hold()
	if n := len(file.Notices); n > 0 {
		if p.message != "" { // about the lock: there is one line for both
			file.Notices, n = append(file.Notices, p.message), n+1
		}
		p.message = fmt.Sprintf("the file needs a look (%d): press ! to read what was noticed", n)
	}
	if options.Demo {
		p.message = welcome
	}
	if options.Fresh {
		p.overlay = newStart(p)
	}
	p.overlay = newRecovery(p, options.Left, p.overlay)
	return p
}

// welcome is what somebody reads who opens the program for the first time.
const welcome = "borewalk plans subsea wells. This demo is a copy to play with: arrows choose, enter edits, tab turns the page, ] the section; f findings, ? all keys."

// openPlan makes the plan's figures the baseline.
func (p *Planner) openPlan() {
	p.set, _ = quantity.ParseSet(cmp.Or(p.options.Units, p.plan.Well.UnitSet))
	p.evaluate()
	p.baseline = p.result
}

// evaluate computes the plan anew; it is called after every change, while typing too.
func (p *Planner) evaluate() {
	p.section = max(0, min(p.section, len(p.plan.Sections)-1))
	p.result, p.plain = calc.Evaluate(p.plan), nil
	p.charts.known = false
	p.marks = map[model.Path]calc.Severity{}
	for i := range p.result.Findings {
		if f := &p.result.Findings[i]; f.Severity > calc.OK {
			p.marks[f.Mend] = max(p.marks[f.Mend], f.Severity)
		}
	}
	p.system = p.plan.System(p.set, p.ownUnits())
}

// ownUnits reports whether the plan's own choice of units holds: it does for the plan's own unit set.
func (p *Planner) ownUnits() bool { return p.set.String() == p.plan.Well.UnitSet }

// Init implements tea.Model; nothing ticks.
func (p *Planner) Init() tea.Cmd { return p.hear() }

// Update implements tea.Model.
func (p *Planner) Update(message tea.Msg) (tea.Model, tea.Cmd) {
	command := p.take(message)
	p.keep()
	return p, command
}

// take acts on a message.
func (p *Planner) take(message tea.Msg) tea.Cmd {
	switch m := message.(type) {
	case tea.WindowSizeMsg:
		p.width, p.height = terminal.Size(m.Width, m.Height)
	case tea.KeyMsg:
		return tea.Batch(p.keysIn(m), p.glance())
	case tick:
		return p.ticked(m)
	case glanced:
		p.noticed(m)
	case worked:
		return p.pieceDone(m)
	case unkept:
		p.tell(m)
		return p.hear()
	case suspended:
		p.continued(m)
	}
	return nil
}

// keysIn gives keys typed ahead, which arrive as one message, to the program one by one. A paste stays whole.
//
// A key with alt is an escape and a key that arrived in one read, as they do on a slow link: it counts as the two.
func (p *Planner) keysIn(m tea.KeyMsg) tea.Cmd {
	if m.Alt && !m.Paste {
		m.Alt = false
		escape := p.key(tea.KeyMsg{Type: tea.KeyEsc})
		if m.Type == tea.KeyEsc {
			return escape
		}
		return tea.Batch(escape, p.keysIn(m))
	}
	switch m.Type {
	case tea.KeyCtrlJ: // a line feed is how some lines send enter
		m.Type = tea.KeyEnter
	case tea.KeyCtrlH: // and this is how some send backspace
		m.Type = tea.KeyBackspace
	}
	if m.Type != tea.KeyRunes || m.Paste || len(m.Runes) < 2 {
		return p.key(m)
	}
	var commands []tea.Cmd
	for _, r := range m.Runes {
		one := m
		one.Runes = []rune{r}
		commands = append(commands, p.key(one))
	}
	return tea.Batch(commands...)
}

// key gives a key to whatever listens: an overlay, the entry being typed, or the page.
func (p *Planner) key(m tea.KeyMsg) tea.Cmd {
	defer p.settle()
	switch {
	case m.String() == "ctrl+l":
		return tea.ClearScreen
	case m.String() == "ctrl+z":
		return p.suspend()
	case p.tooSmall() && !p.answersSmall():
		if m.String() != "ctrl+c" {
			return nil
		}
		if p.edit != nil {
			p.giveUp()
		}
		return p.leave()
	case p.overlay != nil:
		p.overlay.update(p, m)
	case p.edit != nil:
		p.typing(m)
	default:
		p.message = ""
		return p.command(m)
	}
	if p.quit {
		return tea.Quit
	}
	if u, ok := p.overlay.(*player); ok {
		return u.start()
	}
	p.begin()
	return p.goOn()
}

// answersSmall reports whether the question that is open is shown in a window that is too small for the pages.
func (p *Planner) answersSmall() bool {
	u, ok := p.overlay.(*menu)
	return ok && u.small
}

// name returns what the plan is called on the screen.
func (p *Planner) name() string {
	if p.plan.Well.Name != "" {
		return p.plan.Well.Name
	}
	return "unnamed well"
}

// sheet returns the figures of the page: the well's, or those of the section being worked.
func (p *Planner) sheet() int {
	if p.topic == model.TopicWell || p.topic == model.TopicHandover || len(p.plan.Sections) == 0 {
		return -1
	}
	return p.section
}
