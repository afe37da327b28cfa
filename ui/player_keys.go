package ui

import "borewalk/calc"

// keys are those of the job that is played: what is not pumped does not run, nor has it volumes or charts.
func (u *player) keys(*Planner) []binding {
	keys, leave := u.moves(), "closes"
	if u.pumped() {
		keys = append(keys, on("space", "space", "let it run, and stop it", "space run", func(*Planner) { u.running = !u.running && u.at < len(u.job.Frames)-1 }))
	}
	if turns := u.words().turns; turns != "" {
		keys = append(keys, on("h", "h", "the other "+turns, "h "+turns, u.stopping(u.turn)))
	}
	switch {
	case u.back != nil:
		leave = "to the " + u.back.words().name()
		keys = append(keys, on("E", "E", leave, "", u.stopping(u.disconnect)))
	case u.job.Kind == calc.KillJob:
		keys = append(keys, on("E", "E", "emergency disconnect", "E disconnect", u.stopping(u.disconnect)))
	}
	if u.pumped() {
		keys = append(keys, on("v", "v", "charts", "v chart", func(*Planner) { u.chart++ }),
			on("", "digits", "a volume that has been pumped; enter goes there", "0-9 volume", nil))
	}
	return append(keys,
		on("m", "m", "other units", "", (*Planner).turnUnits),
		on("t", "t", "schematic: true depth scale on or off", "", (*Planner).turnScale),
		closing("", leave, u.stopping(u.leave)).saying("q "+leave))
}

// moves are the keys that go to another moment.
func (u *player) moves() []binding {
	to := func(keys, shown, help, short string, act func()) binding {
		return on(keys, shown, help, short, u.stopping(func(*Planner) { act() }))
	}
	step := func(by int) func() { return func() { u.step(by) } }
	ten, event, arrows := "ten on", "n p event", "arrows"
	if !u.pumped() {
		event, arrows = "", "arrows or n p state"
	}
	return []binding{
		to("right", "right", "next moment", arrows, step(1)), to("left", "left", "moment before", "", step(-1)),
		to("n ]", "n or ]", "next event", event, func() { u.toEvent(1) }), to("p [", "p or [", "event before", "", func() { u.toEvent(-1) }),
		to("pgdown shift+right down", "page down", ten, "", step(10)), to("pgup shift+left up", "page up", "ten back", "", step(-10)),
		to("home", "home", "the beginning", "", func() { u.at = 0 }), to("end", "end", "the end", "", func() { u.at = len(u.job.Frames) - 1 }),
	}
}

// stopping lets a key end the run before it acts.
func (u *player) stopping(act func(*Planner)) func(*Planner) {
	return func(p *Planner) {
		u.running = false
		act(p)
	}
}
