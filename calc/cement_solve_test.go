package calc_test

import (
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// TestProposalsMeetTheirLimit takes each proposal into the plan and looks whether it keeps what it promises, and whether
// a step further would not.
func TestProposalsMeetTheirLimit(t *testing.T) {
	for _, c := range []struct {
		name    string
		section int
	}{{"ottermast-2", 2}, {"ottermast-2", 3}, {"saltlantern-1", 4}, {"saltlantern-1", 5}} {
		list := calc.Proposals(demo(t, c.name), c.section-1, model.TopicCement)
		if len(list) != 4 {
			t.Fatalf("%s %d: %d proposals", c.name, c.section, len(list))
		}
		for _, p := range list {
			if !p.OK {
				if p.Why == "" {
					t.Errorf("%s %d %s: none, and no reason", c.name, c.section, p.Title)
				}
				continue
			}
			plan := demo(t, c.name)
			limit, _ := plan.Limit(model.Rules()[model.RuleCementMargin])
			ref := entry(t, plan, string(p.Ref.Path()))
			if text := ref.Field.FileText(p.Entry); func() bool { _, err := ref.Field.Parse(text, 0); return err != nil }() {
				t.Errorf("%s %d %s: %s is outside the range", c.name, c.section, p.Title, text)
			}
			ref.Set(plan, p.Entry)
			r := calc.Evaluate(plan)
			switch {
			case p.Ref.Field.Key == "excess":
				if over := value(t, r, c.section, "cement.over"); over != 0 {
					t.Errorf("%s %d %s: %g m3 come back", c.name, c.section, p.Title, over)
				}
			case value(t, r, c.section, "cement.margin") < limit.SI:
				t.Errorf("%s %d %s: margin %g, want %g", c.name, c.section, p.Title, value(t, r, c.section, "cement.margin"), limit.SI)
			}
		}
	}
}

// TestTheHighestTopIsTheHighest: ten metres more break the margin, unless cement stands as high as it can.
func TestTheHighestTopIsTheHighest(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].leak_off", "1.42 sg")
	p := calc.Proposals(plan, 2, model.TopicCement)[0]
	if !p.OK || p.Entry.Quantity.SI < 400 {
		t.Fatalf("%+v", p)
	}
	entry(t, plan, "section[3].slurry[1].top").Set(plan, p.Entry)
	with(t, plan, "section[3].slurry[1].top", p.Entry.Quantity.Text())
	least := func() float64 {
		r := calc.Evaluate(plan)
		return min(value(t, r, 3, "cement.margin"), value(t, r, 3, "cement.margin.gauge"))
	}
	kept := least()
	higher := p.Entry
	higher.Quantity.SI -= 10
	entry(t, plan, "section[3].slurry[1].top").Set(plan, higher)
	if broken := least(); kept < 20 || broken >= 20 {
		t.Errorf("margin %g at the proposed top, %g ten metres above", kept, broken)
	}
}

// TestALinersLimitsAreNoOffersBeyondReason: the margin would let cement stand thousands of feet above the liner's top, and no
// excess brings it to the rig.
func TestALinersLimitsAreNoOffersBeyondReason(t *testing.T) {
	plan := demo(t, "saltlantern-1")
	list := calc.Proposals(plan, 5, model.TopicCement)
	liner := entry(t, plan, "section[6].top").Get(plan).Quantity.SI
	if p := list[0]; !p.OK || p.Cautions > 0 || liner-p.Entry.Quantity.SI > 150 || liner-p.Entry.Quantity.SI < 145 {
		t.Errorf("highest top: %+v, the liner's is at %.1f m", p, liner)
	}
	if p := list[len(list)-1]; p.OK || p.Why == "" {
		t.Errorf("excess: %+v", p)
	}
	with(t, plan, "section[6].slurry[1].top", "13573 ft")
	if f := worst(t, calc.Evaluate(plan), 6, "above_liner"); f.Severity != calc.Caution || !near(f.Measured, liner-13573*foot, 1e-6) {
		t.Errorf("%+v", f)
	}
}
