package relief

import "borewalk/model"

// says is one statement of a row: words with {key} for a figure of the handover, {key#} for its note and {=key} for an entry of the status.
// What stands behind a | is left out where what it names is blank; the statement itself stands and falls with the first it names.
type says struct {
	text  string
	rules []model.RuleID // whose findings mark it
}

// rowLayout is a row, with how many lines it has before others are cut for it.
type rowLayout struct {
	label string
	least int
	says  []says
}

// layout returns what stands in which row. What matters most comes first: a narrow screen cuts the end.
func layout() []rowLayout {
	s := func(text string, rules ...model.RuleID) says { return says{text, rules} }
	return []rowLayout{
		{"Well", 1, []says{s("hole {hole}"), s("bit {bit}"), s("shoe {shoe}"), s("{step#}|, step {step} of {step.of}"), s("section {section}"), s("TVD {hole.tvd}, hole|; {bit.tvd}, bit"),
			s("{hole.left} to TD"), s("{bit.off} off bottom"), s("{shoe.open} open below the shoe")}},
		{"Pumps", 1, []says{s("returns {=returns}"), s("{=flow}|, standpipe {=standpipe}"), s("losses {=losses}"), s("gas {=gas}")}},
		{"Pits", 1, []says{s("active {=active}|, zeroed at {=pit_zero}"), s("reserve {=reserve}"), s("slug {=slug}"), s("trip tank {=trip_tank}")}},
		{"In hole", 1, []says{s("mud {mud}"), s("column {column.shoe} at shoe"), s("{column.bit} at bit|, EMW {column.bit.emw}"),
			s("hook {string.hook}|, up {string.pick_up}|, down {string.slack_off}", model.RuleHookLoad, model.RulePickUpRating), s("BHA {string.assembly}"), s("fluid: {mud#}")}},
		{"Primary", 1, []says{s("mud over pore {primary}|, least at TVD {primary.at}", model.RuleTripMargin, model.RuleOverbalance, model.RuleAboveInflow, model.RuleRiserlessInflow, model.RuleUSPore),
			s("riser off {primary.riser_off} left", model.RuleRiserMargin)}},
		{"Second", 1, []says{s("shoe {shoe_stands}", model.RuleTestLeast, model.RuleTestOver), s("casing tested {casing_test}"),
			s("BOP tested {rams}|, annular {annular}", model.RuleStackRating, model.RuleUSStackHigh, model.RuleStackTestRating),
			s("BOP test {due.tested} {due.tested#}", model.RuleUSStackDays, model.RuleNorwayStackDays, model.RuleStackDays),
			s("shears {due.shear_tested} {due.shear_tested#}", model.RuleUSShearDays, model.RuleShearDays),
			s("functions {due.functioned} {due.functioned#}", model.RuleUSFunctionDays, model.RuleFunctionDays),
			s("{shoe_stands.pressure} at the shoe|, by {shoe_stands#}"), s("tests as {casing_test#}, the records decide")}},
		{"Limits", 3, []says{s("mud {mud.most}", model.RuleStaticMargin, model.RuleUSMargin, model.RuleBelowBreakdown), s("MAASP {maasp}|, circulating {maasp.circulating}", model.RuleUSMostPressure),
			s("kick {tolerance} drilled|, {tolerance.swabbed} swabbed|, least {tolerance.least}", model.RuleKickTolerance, model.RuleKickLarge, model.RuleKickMedium, model.RuleKickSmall,
				model.RuleKickSlim, model.RuleKickDetected, model.RuleInfluxTolerance),
			s("ECD {ecd}|, {ecd.margin} below its limit", model.RuleECDMargin, model.RuleUSMarginECD), s("window {window} over pore|, {window.fracture} below fracture"),
			s("dynamic kill {dynamic}|, mud lasts {dynamic.lasts}", model.RuleShallowFlow, model.RuleShallowMud)}},
		{"Moving", 2, []says{s("overpull {overpull}", model.RulePickUpOverpull, model.RuleOverpull), s("standpipe {standpipe}|, limit {standpipe.limit}", model.RulePumpPressure, model.RulePumpLoad),
			s("out {trip.out}", model.RulePullingSpeed), s("in {trip.in}", model.RuleTripInSpeed), s("seen: overpull {=overpull}"), s("seen: drag {=drag}")}},
		{"Kill", 1, []says{s("slow pressure {slow}|, in mud {slow.mud}|, bit at {slow.bit}", model.RuleSlowRate, model.RuleSlowRateMud, model.RuleSlowRateDepth), s("line {line}", model.RuleLineFriction),
			s("trapped gas {trapped}|, {trapped.surface} at surface"), s("slow pressure {slow#}"), s("line by {line#}")}},
		{"Open", 1, []says{s("alarms off: {=alarms}"), s("not working: {=equipment}"), s("permits: {=permits}"), s("deviations: {=deviations}")}},
		{"Weather", 1, []says{s("{=weather}"), s("heave {=heave}"), s("circle: {=circle}")}},
	}
}

// relieved are the figures that the relief worked out, with the rules that compare them.
func relieved() []says {
	s := func(key, name string, rule model.RuleID) says {
		key = "check." + key
		return says{name + " {" + key + "}|, program {" + key + ".program}|, differs {" + key + ".differs}", []model.RuleID{rule}}
	}
	return []says{s("to_bit", "to bit", model.RuleReliefStrokes), s("bottoms_up", "bottoms-up", model.RuleReliefStrokes), s("to_bump", "to bump", model.RuleReliefStrokes),
		s("kill_mud", "kill mud", model.RuleReliefMud), s("icp", "ICP", model.RuleReliefPressure)}
}
