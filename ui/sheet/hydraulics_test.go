package sheet_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"borewalk/model"
	"borewalk/plans"
	"borewalk/ui/sheet"
)

// TestVelocitiesCanBeRedoneFromAHydraulicsSheet: flow over the area between bore and body, the stretches end to end, the booster in
// the riser only. The law of a flow through a ring is arithmetic; no source is needed.
func TestVelocitiesCanBeRedoneFromAHydraulicsSheet(t *testing.T) {
	type value struct{ SI float64 }
	rows := 0
	for _, name := range plans.Names() {
		plan := demo(t, name)
		for i := range plan.Sections {
			o := options(plan)
			o.Paper, o.Section, o.Format = sheet.HydraulicsSheet, i, sheet.JSON
			var file struct {
				Cards []struct {
					Tables []struct {
						Title string
						Rows  []struct {
							Name   string
							Values map[string]value
						}
					}
				}
			}
			if err := json.Unmarshal([]byte(write(t, plan, o)), &file); err != nil {
				t.Fatal(err)
			}
			for _, table := range file.Cards[0].Tables {
				if !strings.HasPrefix(table.Title, "Annulus") {
					continue
				}
				end := table.Rows[0].Values["from"].SI
				for _, r := range table.Rows {
					v := r.Values
					flow := plan.Sections[i].Flow.SI
					if strings.HasPrefix(r.Name, "riser") && plan.Sections[i].Returns == model.ToRig {
						flow += plan.Sections[i].Booster.SI
					}
					area := math.Pi / 4 * (v["bore"].SI*v["bore"].SI - v["body"].SI*v["body"].SI)
					if got := flow / area; math.Abs(got-v["velocity"].SI) > 1e-9*got {
						t.Errorf("%s section %d %s: %g m/s by hand, printed %g m/s", name, i+1, r.Name, got, v["velocity"].SI)
					}
					if math.Abs(v["from"].SI-end) > 1e-6 {
						t.Errorf("%s section %d %s: from %g m, the one above ends at %g m", name, i+1, r.Name, v["from"].SI, end)
					}
					end = v["from"].SI + v["length"].SI
					rows++
				}
			}
		}
	}
	if rows < 50 {
		t.Errorf("only %d stretches", rows)
	}
}

// TestAHydraulicsSheetNamesItsFluid, correlation, and the share of the pumps' limit.
func TestAHydraulicsSheetNamesItsFluid(t *testing.T) {
	plan := demo(t, "ottermast-2")
	o := options(plan)
	o.Paper, o.Section = sheet.HydraulicsSheet, 3
	text := write(t, plan, o)
	for _, want := range []string{"mud  density 1.420 sg  PV 26 cP  YP 8.6 Pa  note friction by Bingham slot", "limit 322 bar  usable 90 %", "the booster's together"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the sheet:\n%s", want, text)
		}
	}
	plan.Sections[3].Rheology.Friction = model.FrictionRP13D
	if !strings.Contains(write(t, plan, o), "friction by RP 13D") {
		t.Error("another correlation is not named")
	}
}

// TestAHydraulicsSheetSaysWhenNoFlowKeepsAllLimits: it is a finding of an entry, not of a rule, and weighs as much.
func TestAHydraulicsSheetSaysWhenNoFlowKeepsAllLimits(t *testing.T) {
	found := 0
	for _, name := range plans.Names() {
		plan := demo(t, name)
		for _, f := range evaluate(plan).Findings {
			if f.Section < 0 || !strings.HasPrefix(f.Text, "no flow keeps all its limits") {
				continue
			}
			found++
			o := options(plan)
			o.Paper, o.Section = sheet.HydraulicsSheet, f.Section
			if text := strings.Join(strings.Fields(write(t, plan, o)), " "); !strings.Contains(text, f.Text) {
				t.Errorf("%s section %d: %q is not on the sheet", name, f.Section+1, f.Text)
			}
		}
	}
	if found == 0 {
		t.Error("no demo section has such a finding")
	}
}
