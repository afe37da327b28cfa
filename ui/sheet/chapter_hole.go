package sheet

import (
	"fmt"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

// objective says what the section is for, how deep it goes, and by what its end is called.
func (c *chapter) objective() {
	c.entries("what it is for", "name", "purpose", "completion", "returns", "hole", "bit", "method", "hung", "depth_by")
	c.figures("depths along hole", "hole.start", "hole.td", "hole.opened", "hole.shoe", "casing.top", "hole.rathole", "hole.length", "hole.volume.gauge", "hole.volume", "hole.washout")
	c.table("strings before it", c.stringsBefore())
	c.figures("top of cement", "cement.slurry.1.top", "cement.slurry.2.top", "cement.slurry.3.top", "cement.top.pulled", "cement.over")
	c.say("when TD is called",
		"At the depth above, by the strapped pipe, with the rathole that is listed; the supervisor calls it, and the tally of the string is fitted to it.",
		"Deeper or shallower than planned: window, kick tolerance, string and cement are worked out for the new depth before it is drilled or called.",
		"Earlier where a limit under 3 or 10 would not be met below, or the hole does not let the string be run.")
}

// stringsBefore lists the strings that stand in the well when the section begins, the last first.
func (c *chapter) stringsBefore() table {
	t := table{rowHead: "String"}
	for j := c.section - 1; j >= 0; j-- {
		s, entered := c.result.Sheet(j), &c.counts.Sections[j]
		if _, ok := s.Find("casing.shoe"); !ok {
			continue
		}
		t.figures(s, fmt.Sprintf("%d", j+1), shown{"top", "casing.top"}, shown{"shoe", "casing.shoe"}, shown{"TVD", "casing.shoe.tvd"})
		t.remark(entered.Name)
	}
	return t
}

// hazard is what may go wrong in a section: how it is seen, avoided, and what is done. Common practice, from memory.
type hazard struct{ name, see, avoid, recover string }

// hazards lists the formations with what is said of them, and the ways of those hazards that every such section has.
func (c *chapter) hazards() {
	c.part("formations of the section", c.formationHazards())
	c.part("to see, avoid, recover", hazardPart(c.counts.Sections[c.section].Returns))
	c.part("beyond a limit, in the plan", c.beyondMet("", c.section, func(calc.Finding) bool { return true }))
	if c.counts.Sections[c.section].Returns == model.ToSeabed {
		c.figures("shallow flow", "control.sand", "control.sand.over", "control.sand.mud", "control.sand.blown", "control.dynamic.", "mud.riserless.kill")
	}
}

// formationHazards lists the formations that the section meets: each that has its top on the section's sheet, and the one above them.
func (c *chapter) formationHazards() part {
	met := part{rowHead: "Formation"}
	for k := range c.plan.Formations {
		f := &c.plan.Formations[k]
		top, ok := c.sheet.Find("hole.formation." + fmt.Sprint(k+1))
		if !ok {
			continue
		}
		met.rows = append(met.rows, row{name: dash(f.Name), cells: []cell{{label: "top", value: c.figureText(top), number: true}, {label: "hazard", value: dash(f.Hazard)}}})
	}
	return met
}

func hazardPart(returns string) part {
	list := []hazard{
		{"Stuck pipe", "Overpull, torque, pressure that creeps up; fill on bottom.", "Circulate clean before connections and trips; never leave the string still in open hole.", "Work it down first if pulling up, up if going down; jar within the limits under 5; circulate."},
		{"Hole not clean, pack-off", "Cuttings load changes at the shakers, drag rises, ECD climbs.", "Flow and turning as under 5; rate of penetration held to what the flow cleans.", "Stop, bleed, move the string, start the pumps slowly; ream."},
	}
	if returns == model.ToSeabed {
		list = append([]hazard{
			{"Shallow flow", "ROV and sonar: bubbles or flow at the well, pumps off; a drilling break; pressure that falls.", "Site survey; pilot hole; slow drilling through suspect depths, one joint at a time.", "Kill mud at the highest rate, never shut in; watch position; move off as the rig's plan says."},
			{"Tilt, washout", "Slope indicator and bull's eye by ROV; soft seabed.", "Pumps low at first, no reaming near the seabed.", "Pull back and ream, or respud."},
		}, list...)
	} else {
		list = append([]hazard{
			{"Kick", "Flow or pit gain, pumps off; drilling break; pressure falls, strokes rise; hole does not take its fill.", "Mud over pore as under 3; trip margin; flow checks; swab speed.", "Close in, read pressures, go to the kill sheet."},
			{"Losses", "Pit level or returns fall.", "ECD and running speed within the window; gels broken slowly.", "Slow the pumps, keep the annulus full and count what it takes; LCM; no weight-up on a guess."},
			{"Ballooning", "Flow back after the pumps stop that fades, about as much as was lost before.", "ECD held down; record the flow back of every connection.", "Take it for a kick until shown otherwise."},
		}, list...)
	}
	var set part
	for _, h := range list {
		set.items = append(set.items, item{mark: h.name, text: h.see, lines: []string{"Avoid: " + h.avoid, "Recover: " + h.recover}})
	}
	set.remarks = []string{"Common practice, from memory; the approved procedures rule."}
	return set
}

// directional lists the planned path.
func (c *chapter) directional() {
	c.wellEntriesOf("plan", "trajectory.method", "trajectory.kick_off", "trajectory.build_rate", "trajectory.inclination", "trajectory.azimuth")
	c.figures("at the end", "hole.inclination", "hole.td")
	t := table{rowHead: "station", tall: true}
	for k, at := range calc.Stations(c.plan, c.section) {
		t.add(fmt.Sprint(k+1), "")
		t.set("MD", quantity.Length, at.MD)
		t.set("TVD", quantity.Length, at.TVD)
		t.set("inclination", quantity.Angle, at.Inclination)
		t.set("azimuth", quantity.Angle, at.Azimuth)
		t.set("north", quantity.Length, at.North)
		t.set("east", quantity.Length, at.East)
	}
	c.table("planned stations", t)
	c.rowsOf("surveys as entered", "trajectory.survey")
	c.say("surveying", "Surveys as the directional company's programme says: tool, interval, corrections, who accepts each. Neither other wells nor the uncertainty of position are looked at here.")
}
