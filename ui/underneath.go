package ui

import (
	"errors"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/ui/canvas"
)

// beside is what others do to the plan's file while it is open here, as far as it was seen.
type beside struct {
	file  error          // what was done to the file; nil for nothing
	taken *planlock.Held // who has taken the plan over
}

// glanced is what a glance at the plan's file found. What it glanced at may have been saved or left meanwhile.
type glanced struct {
	watch *planfile.Watch
	lock  *planlock.Lock
	file  error
	mine  error // what is wrong with the lock
}

// glance returns the command that looks, after an edit, whether another has done something to the plan's file. It runs beside the
// keys, since a file on a network may take long to answer. There is no other time at which the file is looked at but a save.
func (p *Planner) glance() tea.Cmd {
	edited := p.edited
	p.edited = false
	if !edited || p.options.Path == "" {
		return nil
	}
	watch, lock, computer := p.file.Watch(), p.lock, p.options.Computer
	return func() tea.Msg { return glanced{watch, lock, watch.Look(), lock.Check(computer)} }
}

// noticed takes what a glance found, and says it once.
func (p *Planner) noticed(m glanced) {
	if m.watch != p.file.Watch() || m.lock != p.lock {
		return
	}
	if errors.Is(m.mine, planlock.ErrNone) {
		_ = m.lock.Mend() // whether it is one's own again is asked before the next save
	}
	was := p.sign()
	p.beside = beside{file: m.file}
	errors.As(m.mine, &p.beside.taken)
	if p.sign() == "" || p.sign() == was {
		return
	}
	p.message = "! " + p.happened() + "; s asks what to do"
	p.alarm = alarm{p.message, calc.Caution}
}

// happened says what another has done.
func (p *Planner) happened() string {
	if p.beside.taken != nil {
		return "another has taken the plan over"
	}
	return model.Clean(p.beside.file.Error())
}

// sign is a word for the header about what another has done to the file; empty for nothing.
func (p *Planner) sign() string {
	err := p.beside.file
	switch {
	case p.beside.taken != nil:
		return "taken over"
	case err == nil:
		return ""
	case errors.Is(err, planfile.ErrChanged):
		return "file changed"
	case errors.Is(err, planfile.ErrRemoved):
		return "file removed"
	case errors.Is(err, planfile.ErrLinked):
		return "file elsewhere"
	case errors.Is(err, planfile.ErrReplaced):
		return "file replaced"
	case errors.Is(err, planfile.ErrReadOnly):
		return "write-protected"
	}
	return "file not seen"
}

// standing is state for the header: with what others do to the file, and the name cut so that this stays to be read.
func (p *Planner) standing(width int) string {
	signs := ""
	if p.readOnly != "" {
		signs += " read-only"
	}
	if p.history.Dirty() {
		signs += " * not saved"
		if p.unkept {
			signs += ", not kept"
		}
	}
	if sign := p.sign(); sign != "" {
		signs += " ! " + sign
	}
	name, room := p.called(), max(width-canvas.Width(signs), 0)
	if canvas.Width(name) > room { // by the points nobody takes it for the name of another file
		name = canvas.Clip(name, max(room-len(".."), 0)) + canvas.Clip("..", room)
	}
	return strings.TrimSpace(name + signs)
}

// called is what the plan came from.
func (p *Planner) called() string {
	if p.options.Path != "" {
		return model.Clean(filepath.Base(p.options.Path))
	}
	return p.options.Title
}

// refused asks what to do about a save to the plan's own file that came to nothing, for what another has done or for the disk, and
// reports whether it was that file.
func (p *Planner) refused(err error, path string, then func(*Planner)) bool {
	if !p.ownFile(path) {
		return false
	}
	elsewhere := offered{text: "save under another name", do: func(p *Planner) { p.saveAs(then) }}
	over := func(text string) offered {
		return offered{text: text, do: func(p *Planner) { p.saveTo(path, p.file.SaveOver, then) }}
	}
	no := offered{text: "do not save now", do: stay}
	var held *planlock.Held
	switch {
	case errors.As(err, &held):
		p.beside.taken = held
		p.overlay = newTaken(held, path, then)
		return true
	case errors.Is(err, planfile.ErrChanged), errors.Is(err, planfile.ErrLinked):
		var u *menu
		differs := offered{text: "look at what differs", do: func(p *Planner) { p.showDiffering(path, u) }}
		u = newQuestion("Not saved: "+cause(err), "", elsewhere, over("replace what the other has written"), differs, p.rereading(), no)
		p.overlay = u
	case errors.Is(err, planfile.ErrRemoved):
		p.overlay = newQuestion("Not saved: "+cause(err), "", elsewhere, over("write it anew under its name"), no)
	case errors.Is(err, planfile.ErrReplaced), errors.Is(err, planfile.ErrReadOnly):
		p.overlay = newQuestion("Not saved: "+cause(err), "", elsewhere, no)
	default: // a full disk, a folder that may not be written
		p.overlay = newQuestion("Not saved: "+reason(err, path), "Nothing of the file "+model.Clean(path)+" was changed. Save under another name or into another folder.", elsewhere, no)
		return true
	}
	p.beside.file = errors.Unwrap(err)
	return true
}

// reason says why a file was not saved, without its path, which may be longer than the screen.
func reason(err error, path string) string {
	return model.Clean(strings.TrimPrefix(strings.TrimPrefix(err.Error(), path+": "), "not saved: "))
}

// cause says what another has done.
func cause(err error) string {
	for _, known := range []error{planfile.ErrChanged, planfile.ErrLinked, planfile.ErrRemoved, planfile.ErrReplaced, planfile.ErrReadOnly} {
		if errors.Is(err, known) {
			return known.Error()
		}
	}
	return model.Clean(err.Error())
}

// showDiffering lists what differs between the plan and its file as it is now, and goes back to the question.
func (p *Planner) showDiffering(path string, question overlay) {
	theirs, err := planfile.Open(path)
	if err != nil {
		p.message = model.Clean(err.Error())
		return
	}
	p.showChanges(origin{name: "from the file as it is now", plan: theirs.Plan})
	if list, ok := p.overlay.(*reasoned); ok {
		list.back = question
	}
}

// rereading offers to read the plan's file anew, which must not lose what is not saved.
func (p *Planner) rereading() offered {
	path := p.options.Path
	if p.history.Dirty() {
		return offered{text: "save mine under another name, then read the file anew", do: func(p *Planner) { p.saveAs(func(p *Planner) { p.reread(path) }) }}
	}
	return offered{text: "read the file anew", do: func(p *Planner) { p.reread(path) }}
}

// rereadIfChanged reads the plan's file anew when it was changed since it was read and nothing is lost by that.
func (p *Planner) rereadIfChanged() {
	if p.overlay == nil && !p.history.Dirty() && errors.Is(p.file.Watch().Look(), planfile.ErrChanged) {
		p.reread(p.options.Path)
	}
}

// reread opens a plan's file in place of what is shown; a plan that was read-only stays so.
func (p *Planner) reread(path string) {
	file, err := planfile.Open(path)
	if err != nil {
		p.message = "not read: " + model.Clean(err.Error())
		return
	}
	p.Close()
	was, options := *p, p.options
	options.Path, options.Section, options.Left = path, p.section, nil
	options.ReadOnly = was.readOnly != ""
	*p = *New(file, options).sized(p.width, p.height)
	p.options.ReadOnly = was.options.ReadOnly
	if was.readOnly != "" {
		p.readOnly = was.readOnly
	}
	p.topic, p.view = was.topic, was.view
	if p.message == "" {
		p.message = "read anew: " + model.Clean(path)
	}
}
