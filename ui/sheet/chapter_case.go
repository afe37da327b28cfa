package sheet

import "borewalk/model"

// casing says what string is run, in which order, and how it is landed.
func (c *chapter) casing() {
	if c.counts.Sections[c.section].Completion == model.OpenHole {
		return
	}
	c.list("string, bottom up", "casing")
	c.figures("string", "casing.top", "casing.shoe", "casing.collar", "casing.length", "casing.lap", "casing.weight.air", "casing.weight.buoyed", "casing.clearance.connector", "casing.clearance.body", "casing.passes.connector", "casing.part.")
	c.figures("what it bears", "casing.governing.", "casing.triaxial", "casing.test.")
	c.figures("tally", "tally.")
	c.entries("tally rules, as entered", "tally.joint_length", "tally.aboard", "tally.track_joints", "tally.above_joints", "tally.shoe", "tally.float_collar", "tally.landing_collar", "tally.hanger", "tally.packer", "tally.slips",
		"tally.float", "tally.fill_every")
	c.say("tally rules",
		"Every joint is strapped, drifted and numbered on deck by two people; couplings and seals are looked at, rejected joints marked and laid apart.",
		"Joints on deck are list plus spares, counted before the first is run and after the last. The running list gives each piece; a joint that is rejected makes a new list.",
		"Order of running: shoe, shoe track locked, float collar, joints by number, pups where the list has them, hanger, running tool, landing string. Common practice, from memory.")
	c.list("pups", "pup")
	c.figures("centralisers", "casing.centralisers.")
	c.entries("centralisers, as entered", "centralisers.kind", "centralisers.open", "centralisers.cased", "centralisers.od")
	c.figures("running speed and fill-up", "casing.surge.closed", "casing.surge.filling", "casing.volume.inside", "casing.displacement.open", "casing.displacement.closed")
	c.figures("hook load on the way in", "run.last_shoe", "run.made_up", "run.greatest")
	c.figures("landing and space-out", "landing.stands", "landing.stick_up", "landing.weight", "landing.load", "landing.margin.", "hanger.", "tally.bottom")
	c.figures("stretch", "landing.stretch", "landing.stretch.")
	c.entries("landing, as entered", "landing.stick_up", "landing.stick_up_least", "landing.stick_up_most", "landing.tool", "landing.stand", "shoulder")
	c.practice("running, landing, seal", "rig_up_casing", "run_casing", "run_landing", "run_on_pipe", "land", "set_hanger", "seal", "packer", "release", "jet", "drive", "soak")
}

// cement says what is mixed, pumped and displaced, at which rate, and what is done when it does not go as planned.
func (c *chapter) cement() {
	s := &c.counts.Sections[c.section]
	if s.Completion == model.OpenHole || s.Method != model.Cemented {
		return
	}
	c.list("recipe, in order of pumping", "slurry")
	c.list("spacer, in order of pumping", "spacer")
	c.figures("volumes", "cement.spacer.1.volume", "cement.spacer.2.volume", "cement.slurry.1.volume", "cement.slurry.1.dry", "cement.slurry.2.volume", "cement.slurry.2.dry", "cement.slurry.3.volume", "cement.slurry.3.dry",
		"cement.volume", "cement.open", "cement.open.excess", "cement.cased", "cement.inside")
	c.figures("tops", "cement.spacer.1.top", "cement.slurry.1.top", "cement.slurry.2.top", "cement.slurry.3.top", "cement.top.pulled", "cement.above_liner", "cement.over")
	c.figures("temperature", "temperature.cement.")
	c.entries("rates, as entered", "placement", "pumping.mix_rate", "pumping.displace_rate", "pumping.slow_rate", "pumping.slow_last", "pumping.stop_short", "pumping.line_time", "pumping.bump_over", "excess", "losses")
	c.figures("displacement and bump", "cement.displacement.running", "cement.displacement.below", "cement.displacement", "cement.displacement.slow", "cement.displacement.percent", "cement.displacement.most", "cement.pump.test", "cement.pump.most",
		"cement.pump.final", "cement.pump.bump", "cement.float")
	c.figures("pressures on the hole", "cement.margin", "cement.margin.gauge", "cement.inflow", "cement.emw.last_shoe", "cement.emw.shoe", "cement.emw.td")
	c.figures("time and strength", "cement.time.mixing", "cement.time.displacing", "cement.time", "cement.slurry.1.age", "cement.slurry.2.age", "cement.slurry.3.age", "cement.wait.over")
	c.chart(model.TopicCement, "cement.job", windowHeight, windowRows)
	c.figures("after the job", "cement.weight", "cement.reverse_out", "cement.tag", "cement.drill_out", "cement.rathole")
	c.practice("sequence and contingency", "circulate_casing", "cement", "hold", "wait", "reverse_out")
}

// tests says what is tested, to what, and by what it is accepted.
func (c *chapter) tests() {
	if c.counts.Sections[c.section].Returns != model.ToRig {
		return
	}
	c.figures("BOP", "control.anticipated", "control.stack.rams", "control.stack.annular", "control.stack.low")
	c.table("preventers", c.stackMatrix(c.section))
	c.entries("BOP, as entered", "bop_test.basis", "bop_test.hold", "bop_test.fluid", "bop_test.tested")
	c.figures("shoe", "control.test", "control.shoe", "control.test.gauge")
	c.entries("shoe, as entered", "shoe_test.kind", "shoe_test.least", "shoe_test.new_hole", "shoe_test.rate")
	c.entries("this string, as entered", "loads.test_pressure", "loads.test_density")
	c.figures("this string", "casing.test.")
	c.practice("how, and when it fails", "test_stack", "casing_test", "shoe_test", "seal", "liner_test")
	c.say("criteria",
		"A test is held for the time entered, or as the law and the operator say, steady on chart and record, without a leak seen. What counts as steady, and as flow in an inflow test, is written before the test.",
		"A shoe test below the least to go on with: no drilling on before mud, kick tolerance and depth are worked out anew.")
}
