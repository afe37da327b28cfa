package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/ui/canvas"
	"borewalk/ui/schematic"
)

// player is an overlay that plays a cement job moment by moment: the schematic shows where the fluids stand, the page what the
// gauges show.
type player struct {
	job     calc.Job
	hole    calc.HoleSize // the open hole it is played in
	charts  []calc.Chart  // of it: all in one, then each kind of quantity by itself
	looks   []look        // of its fluids
	fluids  []int         // those that stand in the well at some moment
	runTo   float64       // depth along hole in m down to which the job is pumped through the running string
	at      int           // the frame shown
	chart   int           // the chart shown; where it takes the page, 0 is none and the first is 1
	typed   string        // a volume to go to
	fault   string        // what is wrong with it
	running bool          // goes on by itself
	ticking bool          // a tick is on its way
}

// look is how a fluid is drawn.
type look struct {
	glyph rune
	style canvas.Style
}

func (p *Planner) noJob() string {
	switch {
	case p.topic != model.TopicCement:
		return "a cement job is played on the cement page"
	case len(p.plan.Sections) == 0:
		return "there is no section"
	}
	return ""
}

// playJob opens the player on the job of the section being worked.
func (p *Planner) playJob() {
	u := &player{}
	if why := u.play(p, calc.AsPlanned); why != "" {
		p.refuseJob("no job to play: " + why)
		return
	}
	p.overlay = u
}

// play takes up the job of the section being worked in a hole; why says what keeps it from being played.
func (u *player) play(p *Planner, hole calc.HoleSize) (why string) {
	job, why, mend := p.options.Play(p.plan, p.section, hole)
	if mend != "" {
		why += "; see " + p.whereIs(mend)
	}
	if why == "" && len(job.Frames) == 0 {
		why = "nothing is pumped"
	}
	if why == "" {
		u.job, u.hole, u.looks, u.fluids, u.runTo = job, hole, looksOf(job.Fluids, p.glyphs), fluidsIn(&job), p.runTo(&job)
		whole := job.Chart()
		u.charts = append([]calc.Chart{whole}, byKind(whole)...)
	}
	return why
}

// turnHole plays the job in the other hole, and shows the moment at which as much has been pumped.
func (u *player) turnHole(p *Planner) {
	other := calc.InGauge
	if u.hole == calc.InGauge {
		other = calc.AsPlanned
	}
	pumped, ended := u.frame().Pumped, u.at == len(u.job.Frames)-1
	if why := u.play(p, other); why != "" {
		p.message = "no job to play in the other hole: " + why
		return
	}
	if u.toPumped(pumped); ended {
		u.at = len(u.job.Frames) - 1
	}
}

// refuseJob says why there is no job: below the page, or over it when that has no room.
func (p *Planner) refuseJob(why string) {
	if p.message = why; canvas.Width(why) <= p.width-2 {
		return
	}
	u := &menu{title: "Cement job"}
	u.say(p, canvas.Plain, why)
	p.overlay, p.message = u, ""
}

// runTo returns the depth down to which fluids go through the running string: to the end of an inner string, or the top of the
// casing.
func (p *Planner) runTo(job *calc.Job) float64 {
	end := p.result.Sketch.Sections[p.section].Top
	for _, b := range job.String {
		if b.Inner {
			end = max(end, b.Bottom)
		}
	}
	return end
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
		for _, stands := range [][]calc.JobStand{f.Inside, f.Annulus, f.Between, f.Pocket} {
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
	return &schematic.State{Frame: u.frame(), RunTo: u.runTo, Fill: u.look}
}

// event returns the name of the latest event.
func (u *player) event() string {
	if e := u.frame().Event; e >= 0 && e < len(u.job.Events) {
		return u.job.Events[e].Name
	}
	return ""
}

func (u *player) hint() string {
	return "arrows 1 or 10 · n p event · 0-9 volume · space run · v chart · h hole · esc"
}

// below names the event, and says what is special about the moment or what is typed.
func (u *player) below() (title, detail string) {
	title = "cement job: "
	if u.hole == calc.InGauge {
		title = "cement job, hole in gauge: "
	}
	title += u.event()
	if u.typed != "" {
		return title, cmp.Or(u.fault, "go to ["+u.typed+"|] pumped, in the unit shown; enter goes there, esc gives it up")
	}
	f := u.frame()
	detail = fmt.Sprintf("Moment %d of %d. ", u.at+1, len(u.job.Frames))
	if !u.job.Dynamic {
		detail += "Friction is not known: pressures and densities are static. "
	}
	if f.Level > 0 {
		detail += "The string is not full: the level stands below the rotary. "
	}
	for k, at := range u.job.Points {
		if at.Fracture > 0 && f.EMW[k] > at.Fracture {
			detail += "Above what the rock stands " + at.Name + ": losses. "
			break
		}
	}
	if f.Level > 0 && f.Returns > 1.01*f.Rate {
		detail += "More returns than are pumped: the cement falls freely. "
	}
	return title, strings.TrimSpace(detail)
}

func (u *player) update(p *Planner, m tea.KeyMsg) {
	key := m.String()
	if key == " " {
		u.running = !u.running && u.at < len(u.job.Frames)-1
		return
	}
	switch key { // these let it run
	case "v":
		u.chart++
		return
	case "m":
		p.turnUnits()
		return
	case "t":
		p.scale = !p.scale
		return
	}
	u.running, p.message = false, ""
	if u.typing(p, m) {
		return
	}
	switch key {
	case "esc", "q", "ctrl+c":
		p.overlay = nil
	case "right":
		u.step(1)
	case "left":
		u.step(-1)
	case "pgdown", "shift+right", "down":
		u.step(10)
	case "pgup", "shift+left", "up":
		u.step(-10)
	case "home":
		u.at = 0
	case "end":
		u.at = len(u.job.Frames) - 1
	case "n", "]":
		u.toEvent(1)
	case "p", "[":
		u.toEvent(-1)
	case "h":
		u.turnHole(p)
	}
}

// typing gives a key to the volume being typed and reports whether it took it.
func (u *player) typing(p *Planner, m tea.KeyMsg) bool {
	key := m.String()
	switch {
	case len(key) == 1 && strings.Contains("0123456789.,", key):
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
