package ui

import (
	"errors"
	"os"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/ui/canvas"
	"borewalk/ui/wording"
)

// save writes the plan to its file and then goes on with what was wanted; a plan that came from no file asks for one.
func (p *Planner) save(then func(*Planner)) {
	if p.options.Path == "" {
		p.saveAs(then)
		return
	}
	p.named(func(p *Planner) { p.saveHere(then) })
}

// saveHere writes the plan to its own file, unless it was opened read-only.
func (p *Planner) saveHere(then func(*Planner)) {
	if p.readOnly != "" {
		p.overlay = p.newReadOnly(then)
		return
	}
	p.saveTo(p.options.Path, p.file.Save, then)
}

// saveTo writes the plan to its own file by one of the ways of saving, goes on with what was wanted, and returns what went wrong, or
// nothing. What another has done meanwhile, to the lock or to the file, is asked about.
func (p *Planner) saveTo(path string, write func(string) error, then func(*Planner)) string {
	return p.saveUnder(p.lock, path, write, then)
}

// saveUnder is saveTo with the lock of the file that is written, which becomes the plan's.
func (p *Planner) saveUnder(lock *planlock.Lock, path string, write func(string) error, then func(*Planner)) string {
	p.keepUp()
	p.file.Guard = p.guard(lock)
	if err := p.history.Save(p.plan, p.options.Name, p.now(), func() error { return write(path) }); err != nil {
		if lock != p.lock {
			lock.Release(p.options.Computer)
		}
		if p.refused(err, path, then) {
			return ""
		}
		// What to do comes before the path, which may be longer than the screen.
		why := "not saved: " + reason(err, path)
		p.message = why + "; S saves under another name or folder (" + model.Clean(path) + ")"
		return why + ". Type another name or folder."
	}
	if lock != p.lock {
		p.lock.Release(p.options.Computer)
	}
	p.lock, p.readOnly, p.beside = lock, "", beside{}
	p.message = "saved " + model.Clean(filepath.Base(path))
	if path != p.options.Path { // said once: where it lies, and how it is opened again
		if whole, err := filepath.Abs(path); err == nil {
			p.message += " in " + model.Clean(filepath.Dir(whole)) + "; borewalk " + quoted(model.Clean(path)) + " opens it"
		}
	}
	p.options.Path = path
	if p.file.Parted {
		p.message += "; its other names on the disk, hard links, keep what it held before"
	}
	then(p)
	return ""
}

// quoted is a path as a shell takes it for one word.
func quoted(path string) string {
	if strings.ContainsRune(path, ' ') {
		return `"` + path + `"`
	}
	return path
}

// stay is what follows a save that was all that was wanted.
func stay(*Planner) {}

// saveAs asks where to save. An existing file is replaced only when its name is given twice.
func (p *Planner) saveAs(then func(*Planner)) {
	p.named(func(p *Planner) { p.askPath(then) })
}

func (p *Planner) askPath(then func(*Planner)) {
	text := p.options.Path
	if text == "" {
		text = fileName(p.plan.Well.Name)
	}
	asked := ""
	p.overlay = newPrompt("Save the plan as", "Name of the file, ending in .toml.", text, func(p *Planner, path string) string {
		switch {
		case path == "":
			return "Type a name, or press esc."
		case filepath.Ext(path) != ".toml":
			path += ".toml"
		}
		if p.ownFile(path) {
			p.saveHere(then)
			return ""
		}
		if warning := p.occupied(path); warning != "" && asked != path {
			asked = path
			return warning + " Press enter again to replace it."
		}
		return p.saveElsewhere(path, asked == path, then)
	})
}

// ownFile reports whether a path is the plan's own file, by this name or another.
func (p *Planner) ownFile(path string) bool {
	return p.options.Path != "" && (path == p.options.Path || filepath.Clean(path) == filepath.Clean(p.options.Path) || p.lock.On(path))
}

// occupied says what a save under another name would replace; empty for nothing.
func (p *Planner) occupied(path string) string {
	if held := p.heldBy(path); held != "" {
		return held
	}
	if _, err := os.Lstat(path); !errors.Is(err, os.ErrNotExist) {
		return path + " exists already."
	}
	return ""
}

// saveElsewhere saves the plan under another name, with the lock of that file, over whoever has it when that is wanted, and returns
// what is wrong.
func (p *Planner) saveElsewhere(path string, over bool, then func(*Planner)) string {
	lock, remark, wrong := p.lockFor(path, over)
	if wrong != "" {
		return wrong
	}
	return p.saveUnder(lock, path, p.file.SaveOver, func(p *Planner) {
		if remark != "" {
			p.message += "; " + remark
		}
		then(p)
	})
}

// fileName makes the name of a plan's file out of a well's name.
func fileName(well string) string { return wording.FileName(well) + ".toml" }

// leave quits, after asking when something would be lost.
func (p *Planner) leave() tea.Cmd {
	if !p.history.Dirty() {
		p.quit = true
		return tea.Quit
	}
	p.overlay = &menu{
		small: true, leaves: "stays",
		title: "The plan has changes that are not saved",
		items: []item{{text: "save and quit"}, {text: "quit and lose the changes"}, {text: "stay"}},
		pick: func(p *Planner, i int) {
			switch i {
			case 0:
				p.save(func(p *Planner) { p.quit = true })
			case 1:
				p.quit = true
			}
		},
	}
	return nil
}

// askNew begins a new plan, after asking when something would be lost.
func (p *Planner) askNew() {
	if !p.history.Dirty() {
		p.overlay = newStart(p)
		return
	}
	p.overlay = &menu{
		title: "The plan has changes that are not saved",
		items: []item{{text: "stay, and save first"}, {text: "lose the changes and start a new plan"}},
		pick: func(p *Planner, i int) {
			if i == 1 {
				p.overlay = newStart(p)
			}
		},
	}
}

// start is the overlay with the questions for a new plan.
type start struct {
	answers *model.Start
	group   *model.Group
	menu    menu
}

func newStart(p *Planner) overlay {
	s := &start{answers: new(model.Start)}
	s.group = model.StartGroup(s.answers)
	s.menu = menu{title: "New plan", does: "changes or makes it"}
	p.message = "answer what you know: make the plan, the last line, begins it; all can be changed later. esc keeps the plan that is open."
	s.menu.pick = func(p *Planner, i int) { s.pick(p, i) }
	s.fill(p)
	return s
}

// fill writes the answers as they stand into the menu.
func (s *start) fill(p *Planner) {
	s.menu.items = s.menu.items[:0]
	for _, f := range s.group.Fields {
		text := f.ScreenText(model.Ref{Group: s.group, Field: f}.Get(p.plan), p.system)
		if text == "" {
			text = "(blank)"
		}
		s.menu.items = append(s.menu.items, item{text: pad(f.Name, 26) + " " + text})
	}
	s.menu.items = append(s.menu.items, item{text: "make the plan"})
}

func (s *start) keys(p *Planner) []binding {
	return append([]binding{on("", "digits", "begin the answer in focus", "", nil)}, s.menu.keys(p)...)
}

// update gives a key to the list; a digit begins the answer in focus.
func (s *start) update(p *Planner, m tea.KeyMsg) {
	if m.Type != tea.KeyRunes || m.Paste || !startsEntry(m.Runes) || s.menu.at >= len(s.group.Fields) ||
		s.group.Fields[s.menu.at].Type != model.QuantityField {
		p.obeyIn(s, m)
		return
	}
	s.pick(p, s.menu.at)
	if question, ok := p.overlay.(*prompt); ok {
		question.input.SetValue(string(m.Runes))
		question.input.CursorEnd()
	}
}

func (s *start) below() (title, detail string) {
	if s.menu.at < len(s.group.Fields) {
		return s.group.Fields[s.menu.at].Name, s.group.Fields[s.menu.at].Help
	}
	return "Make the plan", "Sections at round depths, strings and fluids to start from: every entry is there to be looked at and changed."
}

func (s *start) draw(p *Planner, r canvas.Region) { s.menu.draw(p, r) }

// pick asks for one answer, or makes the plan.
func (s *start) pick(p *Planner, i int) {
	if i == len(s.group.Fields) {
		plan, unkept, options := model.NewPlan(*s.answers), p.unkept, p.options
		options.Path, options.Title, options.Fresh, options.ReadOnly, options.Section, options.Left = "", "new", false, false, 0, nil
		p.Close()
		*p = *New(planfile.New(plan), options).sized(p.width, p.height)
		p.history.Unsaved()
		p.unkept = unkept
		p.message = "a new plan: go through the pages with tab; the prognosis is yours to enter on the well page"
		return
	}
	ref := model.Ref{Group: s.group, Field: s.group.Fields[i]}
	back := func(p *Planner) {
		s.fill(p)
		p.overlay = s
	}
	if ref.Field.Type == model.ChoiceField {
		ref.Set(p.plan, nextChoice(ref, p.plan, 1))
		back(p)
		return
	}
	question := newPrompt(ref.Field.Name, ref.Field.Help, p.typedText(ref), func(p *Planner, text string) string {
		entry, err := ref.Field.Parse(text, p.system.Unit(ref.Field.Kind))
		if err != nil {
			return withRange(err, ref.Field, p.system)
		}
		if !entry.IsSet() && ref.Field.Type == model.QuantityField {
			return "a value is needed; range " + ref.Field.RangeText(p.system)
		}
		ref.Set(p.plan, entry)
		back(p)
		return ""
	})
	question.back = s
	p.overlay = question
}

// sized gives a planner the size of the window.
func (p *Planner) sized(width, height int) *Planner {
	p.width, p.height = width, height
	return p
}
