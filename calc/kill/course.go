package kill

import (
	"math"

	"borewalk/calc/root"
	"borewalk/calc/state"
)

// near is how closely in m³ of annulus the gas top is brought to where it is waited for: a tenth of a litre.
const near = 1e-4

// A course is a job on its way.
type course struct {
	job         *Job
	choke       *choke
	well, trial *state.Well // trial is where the well may be next
	killFrom    float64     // m³ pumped when kill mud is begun with
	tops        []gasTop    // that are still ahead
	pumped, out float64     // m³ pumped and kg of gas through the choke since the start
	moment      Moment
	layers      []state.Layer // scratch
	summary     Summary
	take        func(*Moment)
}

// Run circulates a kick out. It shows take, if there is one, the well as it has been shut in, as it is when the pumps have come
// up, then every moment of the job, and the well at rest.
func Run(job Job, take func(*Moment)) (Summary, error) {
	c, err := begin(&job, take)
	if err != nil {
		return Summary{}, err
	}
	for _, p := range c.waypoints() {
		if err := c.follow(p); err != nil {
			return Summary{}, err
		}
	}
	if err := c.end(); err != nil {
		return Summary{}, err
	}
	return c.summary, nil
}

// begin returns a job with the pumps just started, having shown it shut in.
func begin(job *Job, take func(*Moment)) (*course, error) {
	if err := job.check(); err != nil {
		return nil, err
	}
	l := &job.Layout
	l.Return.Fluid, l.Return.BackPressure = Mud, 0
	if job.KillMud.Density == 0 && l.TVD != nil && len(l.String) > 0 {
		job.KillMud.Density = job.Kick.Formation / job.column(1)
	}
	well, err := state.New(*l, job.fluids(), Mud)
	if err != nil {
		return nil, err
	}
	if err := job.checkPlaces(well); err != nil {
		return nil, err
	}
	if err := job.fill(well); err != nil {
		return nil, err
	}
	c := &course{job: job, choke: newChoke(job), well: well, trial: well.Clone(), summary: newSummary(job), take: take}
	c.moment.At = make([]float64, len(job.Places))
	if !job.OneCirculation {
		c.killFrom = well.Capacity(state.Annulus)
	}
	return c, c.shutIn()
}

// shutIn lets the kick settle with the pumps off, and then starts them.
func (c *course) shutIn() error {
	c.choke.target = c.job.bottom()
	if err := c.choke.shutIn(c.well, c.job.Kick.Volume/float64(c.job.parcels())); err != nil {
		return err
	}
	c.show(ShutIn, NoMark, 0)
	c.summary.ShutInChoke, c.summary.ShutInStandpipe, c.summary.Mass = c.moment.Choke, c.moment.Standpipe, c.moment.MassIn
	c.tops = c.gasTops()
	c.choke.target += c.job.Overbalance
	c.summary.Target = c.choke.target
	if err := c.rest(c.job.Flow); err != nil {
		return err
	}
	c.show(First, NoMark, 0)
	return nil
}

// end stops the pumps and bleeds the choke to what the formation needs.
func (c *course) end() error {
	c.choke.target = c.job.Kick.Formation
	if err := c.rest(0); err != nil {
		return err
	}
	c.show(Done, NoMark, 0)
	return nil
}

// rest sets a flow in m³/s without anything being pumped yet.
func (c *course) rest(flow float64) error {
	if err := c.well.SetFlow(flow); err != nil {
		return err
	}
	if err := c.choke.circulate(c.trial, c.well, 0, Mud); err != nil {
		return err
	}
	c.accept(c.pumped)
	return nil
}

// follow pumps on to a waypoint, by way of what the gas top passes before it.
func (c *course) follow(p waypoint) error {
	stage, fluid := First, Mud
	if p.pumped > c.killFrom {
		fluid = KillMud
		if !c.job.OneCirculation {
			stage = Second
		}
	}
	for {
		ahead := p.pumped - c.pumped
		if err := c.choke.circulate(c.trial, c.well, ahead, fluid); err != nil {
			return err
		}
		if len(c.tops) == 0 || c.risen(c.trial) < c.tops[0].risen {
			break
		}
		top := c.tops[0]
		c.tops = c.tops[1:]
		volume, err := c.bring(top.risen, ahead, fluid)
		if err != nil {
			return err
		}
		c.accept(c.pumped + volume)
		c.show(stage, top.mark, top.place)
	}
	c.accept(p.pumped)
	c.show(stage, p.mark, 0)
	return nil
}

// bring makes the trial the well with the gas top where it has risen by a volume, and returns what is pumped until then, in
// m³. The trial is the well after ahead m³ more, when the gas top is past that.
func (c *course) bring(risen, ahead float64, fluid int) (volume float64, err error) {
	short, over := c.risen(c.well)-risen, c.risen(c.trial)-risen
	if short >= -near {
		return 0, c.choke.circulate(c.trial, c.well, 0, fluid)
	}
	volume, met := root.Crossing(func(volume float64) float64 {
		switch volume {
		case 0:
			return short
		case ahead:
			return over
		}
		if err = c.choke.circulate(c.trial, c.well, volume, fluid); err != nil {
			return math.NaN()
		}
		return c.risen(c.trial) - risen
	}, 0, ahead, near)
	if err == nil && !met {
		err = c.choke.circulate(c.trial, c.well, volume, fluid)
	}
	return volume, err
}

// accept makes the trial the well, with a volume in m³ pumped in all.
func (c *course) accept(pumped float64) {
	for i := range c.job.parcels() {
		left := c.trial.Account(FirstGas+i).Returned - c.well.Account(FirstGas+i).Returned
		c.out += left * c.trial.Fluid(FirstGas+i).Density
	}
	c.well, c.trial = c.trial, c.well
	c.pumped = pumped
}

// show shows the moment.
func (c *course) show(stage Stage, mark Mark, place int) {
	m := &c.moment
	passed := c.out - m.MassOut
	m.Stage, m.Mark, m.Place = stage, mark, place
	m.Pumped, m.MassOut = c.pumped, c.out
	now := c.pumped / c.job.Flow
	if now > m.Time {
		m.GasRate = passed / (now - m.Time)
	}
	m.Time = now
	m.Gain = c.job.Kick.Volume
	for _, fluid := range [...]int{Mud, KillMud} {
		a := c.well.Account(fluid)
		m.Gain += a.Returned - a.Pumped - a.Back
	}
	c.layers = m.look(c.well, c.job.Places, c.layers)
	c.summary.add(m)
	if c.take != nil {
		c.take(m)
	}
}
