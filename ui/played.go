package ui

import (
	"strings"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/ui/canvas"
)

// jobWords are the words for one kind of job in the player.
type jobWords struct {
	title  string
	none   string // in a refusal
	moment string // what its frames are
	events string // head of their list
	fluids string // head of the fluids, with the place of the depths that follow
	turned string // in a refusal to turn it
	turns  string // what h turns it to, for the key line
}

var wordsOf = [...]jobWords{
	calc.CementJob:     {title: "Cement job", none: "no job", moment: "Moment", events: "Event", fluids: "Fluid, annulus top", turned: "in the other hole", turns: "hole"},
	calc.KillJob:       {title: "Kick", none: "no kick", moment: "Moment", events: "Event", fluids: "Fluid, top", turned: "by the other method", turns: "method"},
	calc.DisconnectJob: {title: "Emergency disconnect", none: "no emergency disconnect", moment: "State", events: "State", fluids: "Fluid, top"},
}

// name is the title within a sentence.
func (w *jobWords) name() string { return strings.ToLower(w.title) }

func (u *player) words() *jobWords { return &wordsOf[u.job.Kind] }

func (p *Planner) noJob() string {
	switch {
	case p.topic != model.TopicCement && p.topic != model.TopicControl:
		return "a cement job is played on the cement page, a kick on the control page"
	case len(p.plan.Sections) == 0:
		return "there is no section"
	}
	return ""
}

func (p *Planner) noDisconnect() string {
	switch {
	case p.topic != model.TopicControl:
		return "an emergency disconnect is shown on the control page"
	case len(p.plan.Sections) == 0:
		return "there is no section"
	}
	return ""
}

// playJob opens the player on what the page has to play.
func (p *Planner) playJob() {
	if p.topic == model.TopicControl {
		p.openPlayer(calc.KillJob, nil)
		return
	}
	p.openPlayer(calc.CementJob, nil)
}

// showDisconnect opens the player on the states of an emergency disconnect.
func (p *Planner) showDisconnect() { p.openPlayer(calc.DisconnectJob, nil) }

// disconnect shows the emergency disconnect over a kick that is played, or goes back to it.
func (u *player) disconnect(p *Planner) {
	switch {
	case u.job.Kind == calc.KillJob:
		p.openPlayer(calc.DisconnectJob, u)
	case u.back != nil:
		u.leave(p)
	}
}

// openPlayer opens the player on a kind of job of the section being worked.
func (p *Planner) openPlayer(kind calc.JobKind, back *player) {
	u := &player{back: back}
	if why := u.play(p, kind, false); why != "" {
		p.refuseJob(kind, wordsOf[kind].none+" to play: "+why)
		return
	}
	p.overlay = u
}

// refuseJob says why there is no job: below the page, or over it when that has no room.
func (p *Planner) refuseJob(kind calc.JobKind, why string) {
	if p.message = why; p.overlay != nil || canvas.Width(why) <= p.width-2 {
		return
	}
	u := &menu{title: wordsOf[kind].title}
	u.say(p, canvas.Plain, why)
	p.overlay, p.message = u, ""
}

// play takes up a job of the section being worked, as planned or the other way; why says what keeps it from being played.
func (u *player) play(p *Planner, kind calc.JobKind, other bool) (why string) {
	job, why, mend := p.jobOf(kind, other)
	if mend != "" {
		why += "; see " + p.whereIs(mend)
	}
	if why == "" && len(job.Frames) == 0 {
		why = "nothing is pumped"
	}
	if why != "" {
		return why
	}
	u.job, u.other, u.way, u.looks, u.fluids, u.runTo = job, other, p.wayOf(kind, other), looksOf(job.Fluids, p.glyphs), fluidsIn(&job), p.runTo(&job)
	if u.charts = nil; u.pumped() {
		whole := job.Chart()
		u.charts = append([]calc.Chart{whole}, byKind(whole)...)
	}
	return ""
}

// jobOf works a job out.
func (p *Planner) jobOf(kind calc.JobKind, other bool) (job calc.Job, why string, mend model.Path) {
	switch kind {
	case calc.KillJob:
		return p.options.PlayKill(p.plan, p.section, other)
	case calc.DisconnectJob:
		return p.options.PlayDisconnect(p.plan, p.section)
	}
	hole := calc.AsPlanned
	if other {
		hole = calc.InGauge
	}
	return p.options.Play(p.plan, p.section, hole)
}

// wayOf says for the title in which hole or by which method a job is played.
func (p *Planner) wayOf(kind calc.JobKind, other bool) string {
	switch {
	case kind == calc.CementJob && other:
		return ", hole in gauge"
	case kind != calc.KillJob:
		return ""
	}
	method, notPlanned := p.plan.Sections[p.section].Kill.Methods()
	if other {
		return ", " + notPlanned + " (not as planned)"
	}
	return ", " + method
}

// turn plays a cement job in the other hole, or a kick by the other method, and shows the moment at which as much has been pumped.
func (u *player) turn(p *Planner) {
	if u.words().turned == "" {
		return
	}
	pumped, ended := u.frame().Pumped, u.at == len(u.job.Frames)-1
	if why := u.play(p, u.job.Kind, !u.other); why != "" {
		p.message = u.words().none + " to play " + u.words().turned + ": " + why
		return
	}
	if u.toPumped(pumped); ended {
		u.at = len(u.job.Frames) - 1
	}
}

// runTo returns the depth down to which fluids go through the running string: to the end of an inner string, or the top of the
// casing. The drill string ends where it does.
func (p *Planner) runTo(job *calc.Job) float64 {
	end := p.result.Sketch.Sections[p.section].Top
	for _, b := range job.String {
		if b.Inner || job.Kind != calc.CementJob {
			end = max(end, b.Bottom)
		}
	}
	return end
}
