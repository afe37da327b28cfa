package calc_test

import (
	"fmt"
	"math"
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// TestAJobIsPlayedToItsPlan: frames go forward, events come in the order of the job, the last frame has the cement where
// the plan wants it.
func TestAJobIsPlayedToItsPlan(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for section := 1; section <= len(plan.Sections); section++ {
			if plan.Sections[section-1].Method != model.Cemented {
				if _, why, _ := calc.Play(plan, section-1, calc.AsPlanned); why == "" {
					t.Errorf("section %d is not cemented, yet it plays", section)
				}
				continue
			}
			job, why, mend := calc.Play(plan, section-1, calc.AsPlanned)
			if why != "" {
				t.Fatalf("section %d: %s (%s)", section, why, mend)
			}
			if !job.Dynamic || len(job.Frames) < 100 {
				t.Errorf("section %d: dynamic %v, %d frames", section, job.Dynamic, len(job.Frames))
			}
			forward(t, section, &job)
			last := &job.Frames[len(job.Frames)-1]
			for k, slurry := range plan.Sections[section-1].Slurries {
				fluid := len(job.Fluids) - len(plan.Sections[section-1].Slurries) + k
				want := max(slurry.Top.SI, last.Annulus[0].Top)
				if got := topOf(last.Annulus, fluid); math.Abs(got-want) > 0.5 {
					t.Errorf("section %d: slurry %d ends with its top at %.1f, planned %.1f", section, k+1, got, want)
				}
			}
			for k, at := range job.Points {
				if at.Name == "at shoe" && !near(last.EMW[k], value(t, r, section, "cement.emw.shoe"), 0.01) {
					t.Errorf("section %d: EMW at the shoe %.3f when played, %.3f as figure", section, last.EMW[k], value(t, r, section, "cement.emw.shoe"))
				}
			}
		}
	})
}

// TestInGaugeTheJobEndsAsItsFigures: the same volume is pumped, every slurry ends where the figure has its top in gauge, and
// at rest the density at the shoe is not below that of the planned hole.
func TestInGaugeTheJobEndsAsItsFigures(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for section := range plan.Sections {
			planned, why, _ := calc.Play(plan, section, calc.AsPlanned)
			if why != "" {
				continue
			}
			gauge, why, mend := calc.Play(plan, section, calc.InGauge)
			if why != "" {
				t.Fatalf("section %d in gauge: %s (%s)", section+1, why, mend)
			}
			forward(t, section+1, &gauge)
			last, wide := &gauge.Frames[len(gauge.Frames)-1], &planned.Frames[len(planned.Frames)-1]
			if !near(last.Pumped, wide.Pumped, 1e-6) {
				t.Errorf("section %d: %.4f m³ pumped in gauge, %.4f as planned", section+1, last.Pumped, wide.Pumped)
			}
			if got, want := leastMargin(&gauge), value(t, r, section+1, "cement.margin.gauge"); !near(got, want, 4) {
				t.Errorf("section %d: least margin in gauge %.1f kg/m³ when played, %.1f as figure", section+1, got, want)
			}
			slurries := len(plan.Sections[section].Slurries)
			for k := range slurries {
				want := max(value(t, r, section+1, fmt.Sprintf("cement.slurry.%d.top.gauge", k+1)), last.Annulus[0].Top)
				if got := topOf(last.Annulus, len(gauge.Fluids)-slurries+k); math.Abs(got-want) > 0.5 {
					t.Errorf("section %d: slurry %d ends with its top at %.1f in gauge, the figure says %.1f", section+1, k+1, got, want)
				}
			}
			for k, at := range gauge.Points {
				if at.Name == "at shoe" && last.EMW[k] < wide.EMW[k]-1e-6 {
					t.Errorf("section %d: EMW at the shoe %.3f in gauge, %.3f as planned", section+1, last.EMW[k], wide.EMW[k])
				}
			}
		}
	})
}

// leastMargin is the least margin below fracture of a job, in kg/m³ of equivalent density.
func leastMargin(job *calc.Job) float64 {
	least := math.Inf(1)
	for n := range job.Frames {
		for k, at := range job.Points {
			if at.Fracture > 0 {
				least = min(least, at.Fracture-job.Frames[n].EMW[k])
			}
		}
	}
	return least
}

// forward checks that time and volume never go back and that events lie in order within the frames.
func forward(t *testing.T, section int, job *calc.Job) {
	t.Helper()
	for k := 1; k < len(job.Frames); k++ {
		a, b := &job.Frames[k-1], &job.Frames[k]
		if b.Time < a.Time || b.Pumped < a.Pumped-1e-9 || b.Event < a.Event {
			t.Fatalf("section %d: frame %d goes back: %+v, %+v", section, k, a, b)
		}
		for _, stands := range [][]calc.JobStand{b.Inside, b.Annulus, b.Pocket} {
			for n := 1; n < len(stands); n++ {
				if math.Abs(stands[n].Top-stands[n-1].Bottom) > 1e-6 {
					t.Fatalf("section %d: frame %d: stands do not meet: %+v", section, k, stands)
				}
			}
		}
	}
	for k := 1; k < len(job.Events); k++ {
		if job.Events[k].Frame < job.Events[k-1].Frame || job.Events[k].Frame >= len(job.Frames) {
			t.Errorf("section %d: events out of order: %+v", section, job.Events)
		}
	}
}

// topOf returns the uppermost depth of a fluid.
func topOf(stands []calc.JobStand, fluid int) float64 {
	for _, s := range stands {
		if s.Fluid == fluid {
			return s.Top
		}
	}
	return math.NaN()
}

// TestTheBriefRunMeetsTheFineOne: the figures' few steps find what 200 find, to 1.5 % of the equivalent density.
func TestTheBriefRunMeetsTheFineOne(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		for section := range plan.Sections {
			job, why, _ := calc.Play(plan, section, calc.AsPlanned)
			if why != "" {
				continue
			}
			least, pump := leastMargin(&job), 0.0
			for _, f := range job.Frames {
				pump = max(pump, f.Pressure)
			}
			if got := value(t, r, section+1, "cement.margin"); !near(got, least, 6) {
				t.Errorf("section %d: least margin %.1f kg/m3 in few steps, %.1f in many", section+1, got, least)
			}
			if got := value(t, r, section+1, "cement.pump.most"); !near(got, pump, 4e5) {
				t.Errorf("section %d: highest pump pressure %.0f Pa in few steps, %.0f in many", section+1, got, pump)
			}
		}
	})
}

func TestWhatKeepsAJobFromPlaying(t *testing.T) {
	for path, text := range map[string]string{
		"section[3].spacer[1].density": "", "section[3].slurry[2].top": "", "section[3].density": "", "section[3].slurry[1].density": "",
	} {
		plan := demo(t, "ottermast-2")
		with(t, plan, path, text)
		if _, why, mend := calc.Play(plan, 2, calc.AsPlanned); why == "" || string(mend) != path {
			t.Errorf("%s blank: %q (%s)", path, why, mend)
		}
	}
	// Without a viscosity the job still plays, at rest in every frame.
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].slurry[1].pv", "")
	if job, why, _ := calc.Play(plan, 2, calc.AsPlanned); why != "" || job.Dynamic {
		t.Errorf("no PV: %q, dynamic %v", why, job.Dynamic)
	}
	if charts := calc.Charts(plan, 2, model.TopicCement); len(charts) != 1 {
		t.Errorf("%d charts", len(charts))
	}
}

func BenchmarkPlay(b *testing.B) {
	plan := demo(b, "ottermast-2")
	b.ReportAllocs()
	for b.Loop() {
		calc.Play(plan, 2, calc.AsPlanned)
	}
}
