package calc_test

import (
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/calc/nozzle"
	"borewalk/model"
)

// taken returns what a plan comes to with a proposal entered.
func taken(t *testing.T, name string, p calc.Proposal) (*model.Plan, *calc.Result) {
	t.Helper()
	plan := demo(t, name)
	for _, s := range append([]calc.Setting{{Ref: p.Ref, Entry: p.Entry}}, p.More...) {
		if text := s.Ref.Field.FileText(s.Entry); text == "" {
			t.Errorf("%s: nothing for %s", p.Title, s.Ref.Path())
		} else if _, err := s.Ref.Field.Parse(text, 0); err != nil {
			t.Errorf("%s: %s: %v", p.Title, text, err)
		}
		s.Ref.Set(plan, s.Entry)
	}
	return plan, calc.Evaluate(plan)
}

// TestHydraulicsProposals takes each proposal into the plan: it keeps the limits, gives the figure that it says, and nozzles
// that can be bought.
func TestHydraulicsProposals(t *testing.T) {
	for _, c := range []struct {
		name    string
		section int
		none    string // the proposals that there are not, and a word of why
	}{
		{"ottermast-2", 3, "wanted: enter one"}, {"ottermast-2", 4, ""}, {"ottermast-2", 5, "wanted: enter one"},
		{"saltlantern-1", 5, ""}, {"saltlantern-1", 6, "wanted: enter one"}, {"saltlantern-1", 3, "wanted: enter one"},
	} {
		list := calc.Proposals(demo(t, c.name), c.section-1, model.TopicHydraulics)
		if len(list) != 4 {
			t.Fatalf("%s %d: %d proposals", c.name, c.section, len(list))
		}
		least := calc.Evaluate(demo(t, c.name)).Sheet(c.section - 1)
		for _, p := range list {
			if !p.OK {
				f, ok := least.Find("hydraulics.flow.least")
				most, _ := least.Find("hydraulics.flow.most")
				if none := ok && f.Value > most.Value; none && strings.Contains(p.Why, "limits") {
					continue // no flow keeps all limits, and that is said
				}
				if c.none == "" || !strings.Contains(p.Why, c.none) {
					t.Errorf("%s %d %s: none: %s", c.name, c.section, p.Title, p.Why)
				}
				continue
			}
			plan, r := taken(t, c.name, p)
			f := worst(t, r, c.section, "pump_load")
			if f.Severity != calc.OK || p.Stops > 0 { // less flow may ask for more booster: that is said beside it
				t.Errorf("%s %d %s: %+v, %+d stops, %+d cautions", c.name, c.section, p.Title, f, p.Stops, p.Cautions)
			}
			if set, err := nozzle.Read(plan.Sections[c.section-1].Nozzles.Sizes); p.Ref.Field.Key == "sizes" && (err != nil || set.Count() == 0) {
				t.Errorf("%s %d %s: nozzles %q, %v", c.name, c.section, p.Title, set, err)
			}
			for _, key := range []string{"hydraulics.bit.power", "hydraulics.bit.impact", "hydraulics.standpipe"} {
				if g := figure(t, r, c.section, key); g.Name == p.Gives && !near(g.Value, p.Value, 1e-9*g.Value) {
					t.Errorf("%s %d %s gives %g, promised %g", c.name, c.section, p.Title, g.Value, p.Value)
				}
			}
		}
	}
}

// TestNoFlowBetters looks for a flow and nozzles with more power or impact than those proposed: at each flow inside the range
// the nozzles that just use the pressure up.
func TestNoFlowBetters(t *testing.T) {
	const section = 4
	plan := demo(t, "ottermast-2")
	list := calc.Proposals(plan, section-1, model.TopicHydraulics)
	limit := 0.9 * 322e5
	for n, key := range map[int]string{1: "hydraulics.bit.power", 2: "hydraulics.bit.impact"} {
		_, r := taken(t, "ottermast-2", list[n])
		got := value(t, r, section, key)
		for flow := value(t, r, section, "hydraulics.flow.least") * 60000; flow <= 4500; flow += 50 {
			at := calc.WithFlow(plan, section-1, flow/60000)
			left := limit - value(t, at, section, "hydraulics.standpipe") + value(t, at, section, "hydraulics.bit.drop")
			if left <= 0 {
				continue
			}
			q := flow / 60000
			best := nozzle.Power(left, q)
			if n == 2 {
				best = nozzle.Impact(1420, q, nozzle.Velocity(q, nozzle.Area(1420, q, left, nozzle.Discharge)))
			}
			if got < best*0.93 { // nozzles come in sizes, flows in steps
				t.Errorf("%s: %g proposed, %g at %g L/min", key, got, best, flow)
			}
		}
	}
}

// TestTheWantedStandpipePressure is met with the next larger nozzles that are made; the next smaller would take more.
func TestTheWantedStandpipePressure(t *testing.T) {
	p := calc.Proposals(demo(t, "ottermast-2"), 3, model.TopicHydraulics)[3]
	if !p.OK {
		t.Fatal(p.Why)
	}
	plan, r := taken(t, "ottermast-2", p)
	if got := value(t, r, 4, "hydraulics.standpipe"); got > 280e5 || got < 270e5 {
		t.Errorf("standpipe %g with %s, wanted 280 bar", got, p.Entry.Text)
	}
	set, _ := nozzle.Read(plan.Sections[3].Nozzles.Sizes)
	smaller, _ := nozzle.Neighbours(set.Count(), set.Area()*(1-1e-9))
	with(t, plan, "section[4].nozzles.sizes", smaller.String())
	if got := value(t, calc.Evaluate(plan), 4, "hydraulics.standpipe"); got <= 280e5 {
		t.Errorf("%s would do as well: %g", smaller, got)
	}
}

// TestWhyThereIsNoHydraulicsProposal: each says what to enter.
func TestWhyThereIsNoHydraulicsProposal(t *testing.T) {
	for _, c := range []struct {
		path, text string
		proposal   int
		why        string
	}{
		{"section[4].nozzles.sizes", "", 1, "how many nozzles"},
		{"rig.pump[1].pressure_limit", "", 1, "no pressure limit"},
		{"section[4].string[2].drop_flow", "", 1, "flow at which a loss is stated"},
		{"section[4].standpipe", "200 bar", 3, "nothing is left"},
		{"section[4].standpipe", "", 3, "enter one"},
		{"prognosis.row[8].pore", "", 0, "ECD margin is not known"},
		{"section[4].string[2].flow_least", "3500 L/min", 0, "allows less than a tool needs"},
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, c.path, c.text)
		p := calc.Proposals(plan, 3, model.TopicHydraulics)[c.proposal]
		if p.OK || !strings.Contains(p.Why, c.why) {
			t.Errorf("%s = %q: %v %q, want %q", c.path, c.text, p.OK, p.Why, c.why)
		}
	}
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[4].flow", "")
	if list := calc.Proposals(plan, 3, model.TopicHydraulics); list != nil {
		t.Errorf("without a flow: %+v", list)
	}
}
