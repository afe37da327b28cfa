package model

import "borewalk/model/quantity"

// Limits holds the plan's own limits, by RuleID; blank follows the rule.
type Limits [ruleCount]quantity.Value

// Limit returns the limit that counts for a rule in this plan, and whether it is the plan's own.
func (p *Plan) Limit(r Rule) (limit quantity.Value, own bool) {
	if v := p.Limits[r.ID]; v.IsSet() {
		return v, true
	}
	return r.Limit, false
}

func limitsGroup() *Group {
	g := table[Limits]("limits", "Limits", func(p *Plan) *Limits { return &p.Limits })
	for _, r := range Rules() {
		g.Fields = append(g.Fields, declaration[Limits]{
			Key: r.Key, Label: limitLabel(r), Name: "Own limit: " + r.Name, Kind: r.Measure,
			Help: "Blank follows the rule (" + r.Source + "). An own limit is marked as the plan's.",
			At:   func(l *Limits) any { return &l[r.ID] },
			When: func(p *Plan, _ *Limits) string {
				if !r.In(p.Well.RuleSet) {
					return "the rule is not in this rule set"
				}
				return ""
			},
		}.field())
	}
	return g
}
