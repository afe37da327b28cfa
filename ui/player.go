package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/schematic"
)

// player is an overlay that plays a job moment by moment: the schematic shows where the fluids stand, the page what the gauges
// show.
type player struct {
	job     calc.Job
	other   bool         // in the other hole, or by the other method
	way     string       // which one that is, for the title
	back    *player      // what is gone back to; nil for the page
	charts  []calc.Chart // of it: all in one, then each kind of quantity by itself; none of what is not pumped
	looks   []look       // of its fluids
	fluids  []int        // those that stand in the well at some moment
	runTo   float64      // depth along hole in m down to which the job is pumped through the running string, or the drill string
	at      int          // the frame shown
	chart   int          // the chart shown; where it takes the page, 0 is none and the first is 1
	typed   string       // a volume to go to
	fault   string       // what is wrong with it
	running bool         // goes on by itself
	ticking bool         // a tick is on its way
}

// look is how a fluid is drawn.
type look struct {
	glyph rune
	style canvas.Style
}

// looksOf gives each fluid a sign by its role; the slurry pumped last is the tail.
func looksOf(fluids []calc.JobFluid, g canvas.Glyphs) []look {
	slurries := 0
	for _, f := range fluids {
		if f.Role == calc.CementRole {
			slurries++
		}
	}
	count := map[calc.JobRole]int{}
	looks := make([]look, len(fluids))
	for i, f := range fluids {
		count[f.Role]++
		n, other := count[f.Role], count[f.Role] > 1
		pick := func(first, second rune, style canvas.Style) look {
			if other {
				return look{second, style}
			}
			return look{first, style}
		}
		switch f.Role {
		case calc.SpacerRole:
			looks[i] = pick(g.FillSpacer, g.FillOtherSpacer, canvas.Plain)
		case calc.DisplacerRole:
			looks[i] = pick(g.FillDisplacer, g.FillOtherDisplacer, canvas.Fluid)
		case calc.CementRole:
			looks[i] = pick(g.FillLead, g.FillMiddle, canvas.Cement)
			if n == slurries {
				looks[i].glyph = g.FillTail
			}
		case calc.GasRole:
			looks[i] = look{g.FillGas, canvas.Gas}
		case calc.SeaRole:
			looks[i] = look{g.Sea, canvas.Sea}
		default:
			looks[i] = pick(g.FillMud, g.FillOtherMud, canvas.Mud)
		}
	}
	return looks
}

// fluidsIn returns the fluids that stand in the well at some moment of a job.
func fluidsIn(job *calc.Job) (fluids []int) {
	seen := make([]bool, len(job.Fluids))
	for i := range job.Frames {
		f := &job.Frames[i]
		for _, stands := range [][]calc.JobStand{f.Inside, f.Annulus, f.Between, f.Pocket, f.Riser} {
			for _, s := range stands {
				if s.Fluid >= 0 && s.Fluid < len(seen) {
					seen[s.Fluid] = true
				}
			}
		}
	}
	for i, is := range seen {
		if is {
			fluids = append(fluids, i)
		}
	}
	return fluids
}

// look returns how a fluid is drawn; what is no fluid of the job is blank.
func (u *player) look(fluid int) (rune, canvas.Style) {
	if fluid < 0 || fluid >= len(u.looks) {
		return ' ', canvas.Plain
	}
	return u.looks[fluid].glyph, u.looks[fluid].style
}

func (u *player) frame() *calc.JobFrame { return &u.job.Frames[u.at] }

// state is the moment for the schematic.
func (u *player) state() *schematic.State {
	return &schematic.State{Job: &u.job, Frame: u.frame(), RunTo: u.runTo, Fill: u.look}
}

// event returns the name of the latest event.
func (u *player) event() string {
	if e := u.frame().Event; e >= 0 && e < len(u.job.Events) {
		return u.job.Events[e].Name
	}
	return ""
}

// pumped reports whether anything is pumped in the job at all.
func (u *player) pumped() bool { return u.job.Frames[len(u.job.Frames)-1].Pumped > 0 }

// below names the event, and says what is special about the moment or what is typed.
func (u *player) below() (title, detail string) {
	title = u.words().name() + u.way + ": " + u.event()
	if u.typed != "" {
		return title, cmp.Or(u.fault, "go to ["+u.typed+"|] pumped, in the unit shown; enter goes there, esc gives it up")
	}
	f := u.frame()
	detail = fmt.Sprintf("%s %d of %d. ", u.words().moment, u.at+1, len(u.job.Frames))
	if !u.job.Dynamic {
		detail += "Friction is not known: pressures and densities are static. "
	}
	if f.Level > 0 {
		detail += "The string is not full: the level stands below the rotary. "
	}
	if u.wideOpen() {
		detail += "The choke is wide open: friction up the line alone holds too much. "
	}
	if u.back != nil {
		detail += "The kick is left out. "
	}
	detail += u.missed()
	if f.Level > 0 && f.Returns > 1.01*f.Rate {
		detail += "More returns than are pumped: the cement falls freely. "
	}
	return title, strings.TrimSpace(detail)
}

func (u *player) update(p *Planner, m tea.KeyMsg) {
	p.message = ""
	if u.typing(p, m) {
		u.running = false
		return
	}
	p.obeyIn(u, m)
}

// leave goes back to where the player was opened.
func (u *player) leave(p *Planner) {
	if p.overlay = nil; u.back != nil {
		p.overlay = u.back
	}
}

// typing gives a key to the volume being typed and reports whether it took it.
func (u *player) typing(p *Planner, m tea.KeyMsg) bool {
	key := m.String()
	switch {
	case len(key) == 1 && strings.Contains("0123456789.,", key) && u.pumped():
		u.typed, u.fault = u.typed+key, ""
	case u.typed == "":
		return false
	case key == "backspace":
		u.typed, u.fault = u.typed[:len(u.typed)-1], ""
	case key == "esc":
		u.typed = ""
	case key == "enter":
		u.toVolume(p)
	default:
		return false
	}
	return true
}

// toVolume goes to the first moment at which the typed volume has been pumped.
func (u *player) toVolume(p *Planner) {
	v, err := quantity.Parse(u.typed, quantity.Volume, p.system.Unit(quantity.Volume))
	if err != nil {
		u.fault = "! " + err.Error()
		return
	}
	u.typed = ""
	if !u.toPumped(v.SI) {
		p.message = "the job ends with " + p.show(u.frame().Pumped, quantity.Volume) + " pumped"
	}
}

// toPumped goes to the first moment at which a volume in m³ has been pumped, or to the end of a job that pumps less.
func (u *player) toPumped(volume float64) (reached bool) {
	const rounding = 1e-9
	u.at = slices.IndexFunc(u.job.Frames, func(f calc.JobFrame) bool { return f.Pumped >= volume*(1-rounding) })
	if u.at < 0 {
		u.at = len(u.job.Frames) - 1
		return false
	}
	return true
}

func (u *player) step(n int) { u.at = max(0, min(u.at+n, len(u.job.Frames)-1)) }

// toEvent goes to the next event, or to the one before.
func (u *player) toEvent(by int) {
	to := u.at
	for _, e := range u.job.Events {
		if by > 0 && e.Frame > u.at {
			to = e.Frame
			break
		}
		if by < 0 && e.Frame < u.at {
			to = e.Frame
		}
	}
	u.at = max(0, min(to, len(u.job.Frames)-1))
}

// A job that runs by itself takes about so many steps, one each so often: a slow line carries that.
const (
	runSteps = 80
	runEvery = 400 * time.Millisecond
)

// tick is the moment to go on for a player that runs by itself.
type tick struct{ of *player }

// start returns the command that lets the player go on, when it has just been told to. While nothing runs nothing ticks.
func (u *player) start() tea.Cmd {
	if !u.running || u.ticking {
		return nil
	}
	u.ticking = true
	return tea.Tick(runEvery, func(time.Time) tea.Msg { return tick{u} })
}

// ticked goes on when the player still runs and is still open.
func (p *Planner) ticked(t tick) tea.Cmd {
	u := t.of
	u.ticking = false
	if p.overlay != overlay(u) || !u.running {
		return nil
	}
	u.step(max(1, len(u.job.Frames)/runSteps))
	u.running = u.at < len(u.job.Frames)-1
	return u.start()
}
