package calc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// walked walks through every section of a plan and returns the jobs of each.
func walked(t *testing.T, plan *model.Plan) [][]calc.Job {
	t.Helper()
	var all [][]calc.Job
	for i := range plan.Sections {
		jobs, why, mend := calc.Walk(plan, i)
		if why != "" {
			t.Fatalf("section %d: %s; mend %s", i+1, why, mend)
		}
		all = append(all, jobs)
	}
	return all
}

// inBore returns what stands in the open well at a moment in which nothing hangs in it, down to the bottom of the hole: in the
// hole, or above the section's own string and inside it.
func inBore(f *calc.JobFrame) []calc.JobStand {
	if f.At.Shoe == 0 {
		return f.Pocket
	}
	var list []calc.JobStand
	for _, s := range f.Annulus {
		if s.Top < f.At.Top {
			s.Bottom = min(s.Bottom, f.At.Top)
			list = append(list, s)
		}
	}
	return slices.Concat(list, f.Inside, f.Pocket)
}

// samePlaces fails the test unless the same fluids stand in two lists, lengths thinner than a hand left out and neighbours joined.
func samePlaces(t *testing.T, what string, a, b []calc.JobStand, fa, fb []calc.JobFluid) {
	t.Helper()
	joined := func(list []calc.JobStand, fluids []calc.JobFluid) (out []calc.JobStand, names []string) {
		for _, s := range list {
			name := "nothing"
			if s.Fluid >= 0 {
				name = fluids[s.Fluid].Name
			}
			switch n := len(out); {
			case s.Bottom-s.Top < 0.1:
			case n > 0 && names[n-1] == name:
				out[n-1].Bottom = s.Bottom
			default:
				out, names = append(out, s), append(names, name)
			}
		}
		return out, names
	}
	x, xn := joined(a, fa)
	y, yn := joined(b, fb)
	if !slices.Equal(xn, yn) {
		t.Errorf("%s: %v stand there, then %v", what, xn, yn)
		return
	}
	for k := range x {
		if math.Abs(x[k].Top-y[k].Top) > 0.2 || math.Abs(x[k].Bottom-y[k].Bottom) > 0.2 {
			t.Errorf("%s: %s from %.2f to %.2f m, then from %.2f to %.2f m", what, xn[k], x[k].Top, x[k].Bottom, y[k].Top, y[k].Bottom)
		}
	}
}

// TestTheWalkGoesOnWhereTheSectionAboveEnds: the well after the last operation of a section is the well before the first of the
// next one.
func TestTheWalkGoesOnWhereTheSectionAboveEnds(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		all := walked(t, demo(t, name))
		for i := 1; i < len(all); i++ {
			before, after := last(all[i-1]), all[i][0]
			end, start := &before.Frames[len(before.Frames)-1], &after.Frames[0]
			what := "section " + string(rune('0'+i)) + " to the next"
			samePlaces(t, what, inBore(end), inBore(start), before.Fluids, after.Fluids)
			if end.At.Hole != start.At.Hole || end.At.Stack != start.At.Stack || end.At.Pipe != 0 || start.At.Pipe != 0 || start.At.Shoe != 0 {
				t.Errorf("%s: %+v, then %+v", what, *end.At, *start.At)
			}
		}
	})
}

func last[T any](list []T) *T { return &list[len(list)-1] }

// TestEachOperationBeginsWhereTheOneBeforeEnds: nothing in the well changes between two operations. Letting go parts what hangs
// from what stays, and is looked at by what stands in the bore; before the cement heavy fluid is laid below the shoe.
func TestEachOperationBeginsWhereTheOneBeforeEnds(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		for i, jobs := range walked(t, plan) {
			for k := 1; k < len(jobs); k++ {
				end, start := last(jobs[k-1].Frames), &jobs[k].Frames[0]
				what := plan.Sections[i].Name + ", " + jobs[k].Events[0].Name
				for _, at := range []struct {
					conduit string
					a, b    []calc.JobStand
				}{{"inside", end.Inside, start.Inside}, {"annulus", end.Annulus, start.Annulus}, {"between", end.Between, start.Between}, {"pocket", end.Pocket, start.Pocket}} {
					if at.conduit == "pocket" && len(jobs[k].Points) > 1 && plan.Sections[i].Cement.Rathole.IsSet() {
						continue
					}
					samePlaces(t, what+", "+at.conduit, at.a, at.b, jobs[k-1].Fluids, jobs[k].Fluids)
				}
				if a, b := end.At, start.At; a.Pipe != b.Pipe || a.Hole != b.Hole || a.Shoe != b.Shoe || a.Stack != b.Stack {
					t.Errorf("%s: %+v, then %+v", what, *a, *b)
				}
			}
		}
	})
}

// TestTheWalkEndsEachOperationWhereTheListSays: hole, string end and time of the last moment are those of the step.
func TestTheWalkEndsEachOperationWhereTheListSays(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		steps := calc.Evaluate(plan).Steps
		for i, jobs := range walked(t, plan) {
			if len(jobs) != len(steps[i]) {
				t.Fatalf("section %d: %d jobs for %d steps", i+1, len(jobs), len(steps[i]))
			}
			for k := range jobs {
				s, f := &steps[i][k], last(jobs[k].Frames)
				end := f.At.Pipe
				if f.At.Shoe > 0 && s.To > 0 {
					end = f.At.Shoe
				}
				if s.Key == "jet" || s.Key == "soak" || s.Key == "release" && f.At.Shoe != s.To {
					end = s.To // the pipe inside the conductor is at the bottom of the hole
				}
				if math.Abs(end-s.To) > 1e-6 || math.Abs(f.At.Hole-s.HoleTo) > 1e-6 {
					t.Errorf("section %d, %s: ends at %.3f m in %.3f m of hole, the list says %.3f and %.3f", i+1, s.Key, end, f.At.Hole, s.To, s.HoleTo)
				}
				if s.Kind != calc.Cementing && math.Abs(f.Time-s.Likely) > 1e-6*s.Likely {
					t.Errorf("section %d, %s: takes %.1f s, the list says %.1f", i+1, s.Key, f.Time, s.Likely)
				}
				for n := 1; n < len(jobs[k].Frames); n++ {
					if jobs[k].Frames[n].Time < jobs[k].Frames[n-1].Time {
						t.Fatalf("section %d, %s: time goes back at moment %d", i+1, s.Key, n)
					}
				}
			}
		}
	})
}

// TestTheWalkedCementStandsWhereTheCementPageSays: the job on the well as it was walked to ends with the tops that the cement
// page works out by volume.
func TestTheWalkedCementStandsWhereTheCementPageSays(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		jobs := 0
		for i, list := range walked(t, plan) {
			for k := range list {
				if r.Steps[i][k].Kind != calc.Cementing {
					continue
				}
				jobs++
				f := last(list[k].Frames)
				var cement []calc.JobStand // lead above tail, in the order of pumping
				for _, s := range f.Annulus {
					if list[k].Fluids[s.Fluid].Role == calc.CementRole {
						cement = append(cement, s)
					}
				}
				if len(cement) != len(plan.Sections[i].Slurries) {
					t.Errorf("section %d: cement stands at %v, there are %d slurries", i+1, cement, len(plan.Sections[i].Slurries))
					continue
				}
				for n, s := range cement {
					if top, _ := r.Sections[i].Find("cement.slurry." + string(rune('1'+n)) + ".top"); math.Abs(s.Top-top.Value) > 0.5 {
						t.Errorf("section %d: slurry %d stands from %.1f m, the cement page says %.1f m", i+1, n+1, s.Top, top.Value)
					}
				}
			}
		}
		if jobs < 4 {
			t.Errorf("only %d cement jobs", jobs)
		}
	})
}

func BenchmarkWalk(b *testing.B) {
	plan := demo(b, "ottermast-2")
	b.ReportAllocs()
	for b.Loop() {
		if _, why, _ := calc.Walk(plan, 4); why != "" {
			b.Fatal(why)
		}
	}
}

// TestAnyStepMayBeStruck: whatever is taken out of the list, the walk goes on from what is there, with numbers everywhere, or says that
// what follows cannot be done without it.
func TestAnyStepMayBeStruck(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		steps := calc.Evaluate(plan).Steps
		for i := range plan.Sections {
			if i > 3 { // riserless, jetted, riser: the others are like these
				break
			}
			for _, s := range steps[i] {
				plan.Sections[i].Steps = []model.StepRow{{Step: s.Key, Struck: model.Struck}}
				jobs, why, _ := calc.Walk(plan, i)
				if why != "" && (!strings.Contains(why, "is struck") || s.From == s.To && s.Flat()) {
					t.Errorf("section %d without %s: %s", i+1, s.Key, why)
				}
				for k := range jobs {
					for n := range jobs[k].Frames {
						f := &jobs[k].Frames[n]
						for _, g := range f.At.Gauges {
							if math.IsNaN(g.Value) || math.IsInf(g.Value, 0) {
								t.Fatalf("section %d without %s, %s: %s is no number", i+1, s.Key, jobs[k].Events[0].Name, g.Name)
							}
						}
					}
				}
			}
			plan.Sections[i].Steps = nil
		}
	})
}
