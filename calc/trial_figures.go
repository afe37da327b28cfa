package calc

import "borewalk/model"

// trialFigure is a figure that trials are compared by. It has a name where its own says too little away from its page. A rule is
// named where what it compares is not the figure itself but what it leaves of something.
type trialFigure struct {
	key, name string
	rules     []model.RuleID
}

// trialFigures returns the figures by which a section is judged, what bears first before the others.
func trialFigures() []trialFigure {
	about := func(key, name string, rules ...model.RuleID) trialFigure { return trialFigure{key, name, rules} }
	return []trialFigure{
		about("control.tolerance", "Kick tolerance", model.RuleKickTolerance, model.RuleKickLarge, model.RuleKickMedium, model.RuleKickSmall, model.RuleKickSlim,
			model.RuleKickDetected, model.RuleInfluxTolerance),
		about("control.maasp", ""),
		about("control.shoe", "", model.RuleShoeTest, model.RuleTestLeast, model.RuleKillShoe),
		about("control.sand.over", "Hole over sand"),
		about("control.dynamic.flow", "Kill flow", model.RuleShallowFlow),
		about("mud.margin.pore", "Mud over pore"),
		about("mud.margin.fracture", "Mud below frac"),
		about("mud.margin.shoe_test", "Mud below test"),
		about("mud.riser_margin", "Riser off, left"),
		about("hydraulics.ecd.shoe", ""),
		about("hydraulics.ecd.td", ""),
		about("hydraulics.margin", "ECD below frac"),
		about("hydraulics.standpipe", "", model.RulePumpPressure, model.RulePumpLoad),
		about("hydraulics.clean.transport", ""),
		about("cement.margin", "Cement below frac"),
		about("cement.margin.gauge", "Cement, in gauge"),
		about("cement.slurry.1.top", "Top of cement", model.RuleTrappedAnnulus, model.RuleCementHeight),
		about("cement.volume", ""),
		about("cement.displacement", "To bump"),
		about("cement.displacement.strokes", "Strokes to bump"),
		about("cement.pump.most", "Cement pump, most", model.RuleUnitPressure),
		about("casing.governing.collapse", "Collapse factor"),
		about("casing.governing.burst", "Burst factor"),
		about("casing.governing.tension", "Tension factor"),
		about("casing.triaxial", "Triaxial factor"),
		about("casing.weight.buoyed", "Casing in mud", model.RuleLandingString, model.RuleLandingOverpull),
		about("casing.shoe", "Casing shoe", model.RuleDepthOrder),
		about("hole.td", ""),
		about("string.hook_load", "", model.RuleHookLoad),
		about("drag.pick_up", "", model.RulePickUpRating, model.RulePickUpOverpull),
		about("drag.torque.drilling", "Torque, drilling", model.RuleTopDriveTorque),
		about("control.anticipated", "", model.RuleStackRating),
	}
}
