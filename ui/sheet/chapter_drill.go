package sheet

import (
	"borewalk/model"
	"borewalk/model/quantity"
)

// mud says in which window, with what mud and with what reserve against a kick the section is drilled.
func (c *chapter) mud() {
	c.part("pressure window", c.chartPart(c.result.WindowChart(c.section), windowHeight, windowRows))
	c.entries("fluid, as entered", "fluid", "density", "weighted_density", "spot_density", "pv", "yp", "rheology.gel_10s", "rheology.gel_10min", "rheology.gel_30min", "recipe.base", "recipe.oil", "recipe.water",
		"recipe.salt", "recipe.salt_share", "downhole.oil")
	c.figures("density against the window", "mud.margin.pore", "mud.margin.fracture", "mud.margin.shoe_test", "control.mud.most", "mud.emw.shoe", "mud.emw.td", "mud.pore.shoe", "mud.pore.td", "mud.fracture.shoe",
		"mud.fracture.td", "mud.drilling", "mud.spotted")
	c.figures("properties", "mud.rheology.pv", "mud.rheology.n", "mud.rheology.tau0", "mud.rheology.low_shear", "mud.recipe.solids", "mud.recipe.low", "temperature.td", "temperature.bhct")
	c.figures("volumes and dilution", "mud.riserless.", "mud.recipe.volume", "mud.recipe.base", "mud.recipe.material", "mud.recipe.brine", "mud.recipe.salt", "mud.pits.", "mud.change.")
	c.entries("losses", "volumes.loss_per_metre", "volumes.loss_rate", "volumes.removal", "volumes.solids", "volumes.on_cuttings")
	c.say("lost circulation", c.lossPractice()...)
	c.figures("kick tolerance", "control.shoe", "control.tolerance", "control.tolerance.swabbed", "control.tolerance.ends", "control.kick", "control.kick_margin", "control.maasp", "control.trip.margin")
}

// lossPractice is what is done about losses. Common practice, from memory.
func (c *chapter) lossPractice() []string {
	if c.counts.Sections[c.section].Returns == model.ToSeabed {
		return []string{"Losses cannot be seen without returns: fill on bottom, drag and what the ROV sees tell of them."}
	}
	return []string{
		"Seepage: slow the pumps, watch the level, fine LCM by pill. Partial: pull back to the shoe, fill and count, coarser pill as agreed with the mud engineer. Total: keep the annulus full with the lightest fluid, count it, call.",
		"What passes nozzles, tools and screens limits the size of LCM: the tools' makers are asked before it is mixed. Common practice, from memory; the loss plan of the operator rules.",
	}
}

// drilling says what the section is drilled with, and how.
func (c *chapter) drilling() {
	if stack, ok := c.stackTable(c.section); ok {
		c.table("drill string, top down, bit at TD", stack)
	}
	c.entries("parameters, as entered", "flow", "booster", "rop", "string_loads.bit_weight", "cleaning.turning", "nozzles.sizes", "string_loads.overpull", "string_loads.torque")
	c.figures("weight and limits of the string", "string.assembly.length", "string.assembly.weight", "string.bha.collars", "string.bha.neutral", "string.weight.air", "string.weight.buoyed", "string.hook_load",
		"string.passes.bit", "string.passes.parts", "string.bha.drift")
	c.figures("weights and torque with friction", "drag.pick_up", "drag.slack_off", "drag.rotating", "drag.overpull", "drag.torque.off_bottom", "drag.torque.drilling", "drag.torque.left")
	c.figures("buckling", "drag.buckling", "drag.beyond")
	c.figures("hydraulics", "hydraulics.standpipe", "hydraulics.flow.least", "hydraulics.flow.most", "hydraulics.ecd.shoe", "hydraulics.ecd.td", "hydraulics.margin", "hydraulics.tfa", "hydraulics.bit.drop",
		"hydraulics.bit.velocity", "hydraulics.bit.power", "hydraulics.bit.impact", "hydraulics.liner.fitted")
	c.figures("hole cleaning", "hydraulics.clean.")
	c.figures("tripping", "swab.limit.out.least", "swab.limit.in.least", "swab.out.td", "swab.in.td", "trip.whole.open", "trip.whole.closed", "trip.slug.volume", "trip.stands.shoe", "trip.stands.bop", "trip.stands.bha")
	if c.counts.Sections[c.section].Returns == model.ToSeabed {
		c.figures("volumes", "volume.string", "volume.seabed", "volume.hole")
	} else {
		c.figures("volumes", "volume.string", "volume.bottoms_up", "volume.bottoms_up_rig", "volume.hole")
	}
	c.chart(model.TopicHydraulics, "hydraulics.ecd", windowHeight, windowRows)
	c.practice("drilling practice", "drill", "drill_seabed", "clean_up", "pull_out")
}

// practice tells how operations are done that are not the numbers' to say.
func (c *chapter) practice(title string, keys ...string) {
	var set part
	for _, key := range keys {
		for k := range c.result.Steps[c.section] {
			if s := &c.result.Steps[c.section][k]; s.Key == key && !s.Struck {
				set.items = append(set.items, item{mark: s.Name, text: s.Do, lines: s.Contingency})
			}
		}
	}
	c.part(title, set)
}

// riser says how returns come to the rig, or do not, and how the well is turned from one fluid to the next.
func (c *chapter) riser() {
	if c.counts.Sections[c.section].Returns == model.ToSeabed {
		c.say("arrangement", "Riserless: the hole is drilled with returns to the seabed. There is no BOP and no pit gain; the ROV watches the well.")
		c.figures("column of sea and fluid", "mud.drilling", "mud.spotted", "mud.emw.td")
		c.practice("displacement", "spot")
		return
	}
	c.wellEntriesOf("arrangement", "rig.riser_od", "rig.riser_id", "rig.bop_bore", "rig.bop_height", "rig.choke_id", "rig.kill_id", "rig.booster_id")
	c.entries("booster", "booster")
	c.figures("riser and its cleaning", "volume.riser", "volume.bottoms_up_rig", "hydraulics.clean.booster")
	c.figures("riser lost or off", "mud.riser_off", "mud.riser_margin", "control.riser.lost", "control.riser.mud", "control.riser.margin", "control.disconnect.mud")
	c.figures("displacement", "volume.hole", "mud.pits.fill", "mud.pits.start", "mud.recipe.volume")
	c.practice("order of displacing", "displace")
}

// logging says what is measured on wire, and at which heat.
func (c *chapter) logging() {
	rates := c.counts.Sections[c.section].Rates
	if !rates.Logging.IsSet() {
		return
	}
	c.entries("time", "rates.logging")
	c.figures("heat", "temperature.td", "temperature.bhct")
	c.practice("on wire", "log")
	c.say("sampling", "Samples and logs as the geologist's programme says; lag is the bottoms-up under 5, checked with a tracer.")
}

// stackTable lists the drill string top down; ok is false where there is none.
func (p *printer) stackTable(i int) (t table, ok bool) {
	parts, _, err := p.stackParts(i)
	return parts, err == nil
}

// stocks lists what is aboard, and draws the well and the string in its BOP.
func (c *chapter) stocks() {
	c.figures("stocks at the section", "stock.")
	c.rowsOf("stocks as entered", "stock")
	t := table{rowHead: "Stock"}
	t.entry("Weighting material aboard", c.plan.Rig.Barite, quantity.Mass, "")
	c.table("aboard", t)
	if c.Format != PDF {
		c.part("well schematic", c.schematicPart(c.section))
	}
	c.part("space-out of the string in the BOP", c.stripPart(c.section))
}
