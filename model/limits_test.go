package model

import "testing"

// TestLimitsCanBeToldApart: in each rule set no two limits of the plan have one label, and each label is a whole one.
func TestLimitsCanBeToldApart(t *testing.T) {
	for _, set := range RuleSets() {
		seen := map[string]string{}
		for _, r := range Rules() {
			if !r.In(set) {
				continue
			}
			label := limitLabel(r)
			if label == "" || len(label) > labelWidth {
				t.Errorf("%s: label %q", r.Key, label)
			}
			if other, taken := seen[label]; taken {
				t.Errorf("rule set %s: %s and %s are both called %q", set, r.Key, other, label)
			}
			seen[label] = r.Key
		}
	}
	for key := range limitLabels {
		used := false
		for _, r := range Rules() {
			used = used || r.Key == key && len(r.Name) > labelWidth
		}
		if !used {
			t.Errorf("a label for %s, which is no rule or needs none", key)
		}
	}
}
