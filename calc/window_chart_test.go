package calc_test

import (
	"math"
	"testing"

	"borewalk/calc"
	"borewalk/plans"
)

// TestTheWindowChartIsTheWindow: the curves hold what the result has, at every depth once, and mark every shoe.
func TestTheWindowChartIsTheWindow(t *testing.T) {
	for _, name := range plans.Names() {
		r := calc.Evaluate(demo(t, name))
		for section := -1; section < len(r.Traces); section++ {
			c, curves := r.WindowChart(section), map[string]calc.ChartCurve{}
			for _, curve := range c.Curves {
				curves[curve.Name] = curve
				for k := 1; k < len(curve.Points); k++ {
					if curve.Points[k].At < curve.Points[k-1].At {
						t.Errorf("%s, section %d: %s goes up at %g", name, section+1, curve.Name, curve.Points[k].At)
					}
				}
			}
			for _, p := range r.Window {
				pore, fracture := curves["pore"], curves["fracture"]
				if got, ok := pore.At(p.TVD); !ok || got != p.Pore {
					t.Errorf("%s: pore at %g is %g, want %g", name, p.TVD, got, p.Pore)
				}
				if got, ok := fracture.At(p.TVD); !ok || got != p.Fracture {
					t.Errorf("%s: fracture at %g is %g, want %g", name, p.TVD, got, p.Fracture)
				}
			}
			shoes := 0
			for _, trace := range r.Traces {
				curve := curves["mud"]
				if trace.Section == section {
					curve = curves["mud, this section"]
				}
				if trace.Shoe > 0 {
					shoes++
				}
				if len(trace.Mud) == 0 {
					continue
				}
				if got, ok := curve.At(trace.Mud[0].TVD); !ok || math.Abs(got-trace.Mud[0].EMW) > 1e-9 {
					t.Errorf("%s, section %d: mud below the shoe at %g is %g, want %g", name, trace.Section+1, trace.Mud[0].TVD, got, trace.Mud[0].EMW)
				}
			}
			if len(c.Marks) != shoes || shoes == 0 {
				t.Errorf("%s: %d shoes are marked, want %d", name, len(c.Marks), shoes)
			}
		}
	}
}

// TestASketchKnowsTheCement of every cemented string, between its top and its shoe.
func TestASketchKnowsTheCement(t *testing.T) {
	plan := demo(t, "ottermast-2")
	r := calc.Evaluate(plan)
	for i, x := range r.Sketch.Sections {
		f, ok := r.Sheet(i).Find("cement.slurry.1.top")
		if cemented := len(plan.Sections[i].Slurries) > 0 && x.String; cemented != (x.Cement > 0) || cemented && !(x.Cement < x.Shoe) {
			t.Errorf("section %d: cement from %g, string to %g", i+1, x.Cement, x.Shoe)
		}
		if ok && f.OK && math.Abs(f.Value-x.Cement) > 0.5 {
			t.Errorf("section %d: cement from %g, the page has %g", i+1, x.Cement, f.Value)
		}
	}
}
