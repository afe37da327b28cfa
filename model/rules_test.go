package model_test

import (
	"regexp"
	"slices"
	"testing"

	"borewalk/model"
	"borewalk/model/quantity"
)

func TestRulesAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for i, r := range model.Rules() {
		switch {
		case int(r.ID) != i:
			t.Errorf("%s stands at %d", r.Key, i)
		case seen[r.Key] || !regexp.MustCompile(`^[a-z][a-z_]+$`).MatchString(r.Key):
			t.Errorf("key %q", r.Key)
		case r.Name == "" || r.Source == "":
			t.Errorf("%s has no name or no source", r.Key)
		case !r.Limit.IsSet():
			t.Errorf("%s has no limit", r.Key)
		case (r.Kind == model.Arithmetic) != (r.Sets == nil) && r.Key != "riserless_inflow":
			t.Errorf("%s: %v in sets %q; what cannot be built at all holds everywhere", r.Key, r.Kind, r.Sets)
		case r.Kind == model.Law && !regexp.MustCompile(`CFR`).MatchString(r.Source):
			t.Errorf("%s is law by %q", r.Key, r.Source)
		case r.Recalled != regexp.MustCompile(`from memory$`).MatchString(r.Source):
			t.Errorf("%s: recalled %v, source %q", r.Key, r.Recalled, r.Source)
		}
		seen[r.Key] = true
		for _, set := range r.Sets {
			if !slices.Contains(model.RuleSets(), set) || set == model.SetNone {
				t.Errorf("%s is in set %q", r.Key, set)
			}
		}
		for _, set := range model.RuleSets() {
			if got, want := r.In(set), r.Sets == nil || slices.Contains(r.Sets, set); got != want {
				t.Errorf("%s in %s: %v", r.Key, set, got)
			}
		}
		if r.Kind == model.Law && (r.In(model.SetPractice) || r.In(model.SetNorway)) {
			t.Errorf("%s is law outside its country", r.Key)
		}
	}
}

// Limits as they stand in their sources: 30 CFR 250 in the edition named, handbooks, and habits that are recalled.
func TestLimitsAreThoseOfTheirSources(t *testing.T) {
	for _, c := range []struct {
		key, limit string
		kind       model.RuleKind
		least      bool
	}{
		{"us_margin", "0.5 ppg", model.Law, true},
		{"us_lap", "100 ft", model.Law, true},
		{"us_lap_shallow", "200 ft", model.Law, true},
		{"hole_clearance", "0.375 in", model.Practice, true},
		{"overbalance", "200 psi", model.Practice, true},
		{"trip_margin", "0.2 ppg", model.Practice, true},
		{"lap_least", "200 ft", model.Practice, true},
		{"lap_most", "500 ft", model.Practice, false},
		{"rathole_least", "5 ft", model.Practice, true},
		{"rathole_most", "30 ft", model.Practice, false},
		{"shoe_track", "80 ft", model.Practice, true},
		{"bit_passes", "0 in", model.Arithmetic, true},
		{"connector_passes", "0 in", model.Arithmetic, true},
		{"above_inflow", "0 sg", model.Arithmetic, true},
		{"below_breakdown", "0 sg", model.Arithmetic, true},
	} {
		i := slices.IndexFunc(model.Rules(), func(r model.Rule) bool { return r.Key == c.key })
		if i < 0 {
			t.Errorf("there is no rule %s", c.key)
			continue
		}
		r := model.Rules()[i]
		limit, err := quantity.Parse(c.limit, r.Measure, 0)
		if err != nil || r.Limit.SI != limit.SI || r.Kind != c.kind || r.Least != c.least {
			t.Errorf("%s: limit %s, %v, least %v; want %s, %v, %v", c.key, r.Limit.Text(), r.Kind, r.Least, c.limit, c.kind, c.least)
		}
	}
}

func TestOwnLimitsGoBeforeTheRules(t *testing.T) {
	var plan model.Plan
	rule := model.Rules()[model.RuleTripMargin]
	if limit, own := plan.Limit(rule); own || limit != rule.Limit {
		t.Errorf("without own limits: %s, %v", limit.Text(), own)
	}
	ref, ok := model.Find(&plan, "limits.trip_margin")
	if !ok {
		t.Fatal("no entry for an own limit")
	}
	e, err := ref.Field.Parse("0 sg", 0)
	if err != nil {
		t.Fatal(err)
	}
	ref.Set(&plan, e)
	if limit, own := plan.Limit(rule); !own || limit.SI != 0 {
		t.Errorf("own limit of nothing: %s, %v", limit.Text(), own)
	}
	for _, r := range model.Rules() {
		if _, ok := model.Find(&plan, model.Path("limits."+r.Key)); !ok {
			t.Errorf("no entry for an own limit of %s", r.Key)
		}
	}
}

// TestLimitsOfOtherRuleSetsAreIdle, and those of the arithmetic never are.
func TestLimitsOfOtherRuleSetsAreIdle(t *testing.T) {
	for _, set := range model.RuleSets() {
		var plan model.Plan
		plan.Well.RuleSet = set
		for _, r := range model.Rules() {
			ref, _ := model.Find(&plan, model.Path("limits."+r.Key))
			if idle := ref.Idle(&plan) != ""; idle != !r.In(set) {
				t.Errorf("%s in %s: idle %v", r.Key, set, idle)
			}
		}
	}
}

func TestWordsForKindsOfRule(t *testing.T) {
	for kind, word := range map[model.RuleKind]string{model.Arithmetic: "arithmetic", model.Law: "law", model.Standard: "standard", model.Practice: "common practice"} {
		if kind.String() != word {
			t.Errorf("%d = %q", kind, kind.String())
		}
	}
}
