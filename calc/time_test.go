package calc_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
)

const (
	anHour = 3600.0
	aDay   = 24 * anHour
)

// TestTimesAddUp: the steps to the section, the sections to the well, on the page, in the schedule and at the end of the curve.
func TestTimesAddUp(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		r := calc.Evaluate(plan)
		s := calc.ScheduleOf(plan)
		well, longer := 0.0, 1/(1-plan.Schedule.WeatherLikely.SI)
		for i := range plan.Sections {
			steps := 0.0
			for _, step := range r.Steps[i] {
				if step.Counts() {
					steps += step.Likely
				}
			}
			n := i + 1
			for key, want := range map[string]float64{"time.hours": steps, "steps.hours": steps, "time.elapsed": steps * longer,
				"time.flat": steps - value(t, r, n, "time.drilling"), "time.begins": well * longer, "time.ends": (well + steps) * longer} {
				if got := value(t, r, n, key); !near(got, want, 1e-6*(1+want)) {
					t.Errorf("section %d: %s %g h, expected %g h", n, key, got/anHour, want/anHour)
				}
			}
			well += steps
			if row, ok := s.Ends(i); !ok || !near(row.To, well*longer, 1e-6*well) || row.To != row.PlannedTo {
				t.Errorf("section %d ends at %g d in the schedule, planned at %g d, expected %g d", n, row.To/aDay, row.PlannedTo/aDay, well*longer/aDay)
			}
		}
		if got := value(t, r, 1, "time.well"); !near(got, well, 1e-6*well) {
			t.Errorf("the well takes %g d, its sections %g d", got/aDay, well/aDay)
		}
		c := calc.Charts(plan, 0, model.TopicTime)[0]
		end := c.Curves[0].Points[len(c.Curves[0].Points)-1]
		if !near(end.Value, well*longer, 1e-6*well) || !near(end.At, plan.Sections[len(plan.Sections)-1].TD.SI, 1e-6) {
			t.Errorf("the curve ends at %g m after %g d", end.At, end.Value/aDay)
		}
	})
}

// TestTheBandIsInOrder: P10, P50 and P90 stand in order and go on step by step; with nothing to spread they are the likely end.
func TestTheBandIsInOrder(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := demo(t, name)
		last := calc.Planned{P10: -1, P50: -1, P90: -1}
		for _, row := range calc.ScheduleOf(plan).Rows {
			if !(row.P10 <= row.P50 && row.P50 <= row.P90 && row.P10 >= last.P10 && row.P50 >= last.P50 && row.P90 >= last.P90) {
				t.Errorf("%s: %g %g %g d after %g %g %g d", row.Step.Key, row.P10/aDay, row.P50/aDay, row.P90/aDay, last.P10/aDay, last.P50/aDay, last.P90/aDay)
			}
			last = row
		}
		for i := range plan.Sections {
			with(t, plan, "section["+strconv.Itoa(i+1)+"].rates.low", "100 %")
			with(t, plan, "section["+strconv.Itoa(i+1)+"].rates.high", "100 %")
			plan.Sections[i].Steps = nil
		}
		with(t, plan, "time.weather_low", "")
		with(t, plan, "time.weather_high", "")
		for _, row := range calc.ScheduleOf(plan).Rows {
			if !near(row.P10, row.To, 1e-6) || !near(row.P90, row.To, 1e-6) {
				t.Errorf("%s ends at %g d, P10 %g d, P90 %g d with nothing to spread", row.Step.Key, row.To/aDay, row.P10/aDay, row.P90/aDay)
			}
		}
	})
}

// oneStep leaves the first section of a plan with one operation of so many hours, by striking the others.
func oneStep(t *testing.T, plan *model.Plan, hours string) {
	t.Helper()
	for _, step := range calc.Evaluate(plan).Steps[0] {
		row := model.StepRow{Step: step.Key, Struck: model.Struck}
		if step.Key == "make_up" {
			row = model.StepRow{Step: step.Key, Struck: model.NotStruck, Likely: q(t, hours, quantity.Hours)}
		}
		plan.Sections[0].Steps = append(plan.Sections[0].Steps, row)
	}
}

func q(t testing.TB, text string, kind quantity.Kind) quantity.Value {
	t.Helper()
	v, err := quantity.Parse(text, kind, 0)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestWeatherAndDatesByHand: a share of 20 % lost leaves four days out of five, so 96 h of work take 120 h; from 26 February 2027 at
// 18:00 that is 3 March at 18:00, since the February has 28 days. At 1000 a day it costs 5000.
func TestWeatherAndDatesByHand(t *testing.T) {
	plan := demo(t, "ottermast-2")
	oneStep(t, plan, "96 h")
	with(t, plan, "time.weather", "20 %")
	with(t, plan, "time.start", "2027-02-26 18:00")
	with(t, plan, "time.day_rate", "1000")
	r := calc.Evaluate(plan)
	for key, want := range map[string]float64{"time.hours": 96 * anHour, "time.elapsed": 120 * anHour, "time.elapsed.weather": 24 * anHour,
		"time.flat": 96 * anHour, "time.flat.share": 1, "time.drilling": 0, "time.ends": 5 * aDay, "time.cost": 5000} {
		if got := value(t, r, 1, key); !near(got, want, 1e-6) {
			t.Errorf("%s = %g, expected %g", key, got, want)
		}
	}
	if f := figure(t, r, 1, "time.ends"); f.Note != "2027-03-03 18:00" || f.Group != "2027-02-26 18:00 to 03-03 18:00" {
		t.Errorf("ends %q, under %q", f.Note, f.Group)
	}
	if f := figure(t, r, 2, "time.ready.assembly"); f.Note != "2027-03-03 18:00, before Make up BHA" || !near(f.Value, 5*aDay, 1e-6) {
		t.Errorf("BHA ready at %g d, %q", f.Value/aDay, f.Note)
	}
	with(t, plan, "time.start", "")
	if f := figure(t, calc.Evaluate(plan), 1, "time.ends"); f.Note != "" || f.Group != "With weather" {
		t.Errorf("without a beginning it ends %q, under %q", f.Note, f.Group)
	}
}

// TestWhatIsMissingBlanksTheTimes from there on, and names the entry.
func TestWhatIsMissingBlanksTheTimes(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "section[3].rop", "")
	for k := range plan.Formations {
		plan.Formations[k].ROP = quantity.Value{}
	}
	r := calc.Evaluate(plan)
	value(t, r, 2, "time.ends")
	value(t, r, 3, "time.begins")
	value(t, r, 4, "time.elapsed")
	for _, f := range []struct {
		section int
		key     string
	}{{3, "time.hours"}, {3, "time.ends"}, {4, "time.begins"}, {5, "time.ends"}, {1, "time.well"}, {1, "time.well.ends"}, {3, "time.ready.casing"}} {
		if f := figure(t, r, f.section, f.key); f.OK || f.Mend != "section[3].rop" {
			t.Errorf("%s is %v, to mend %q: %s", f.Key, f.OK, f.Mend, f.Why)
		}
	}
	s := calc.ScheduleOf(plan)
	for k, row := range s.Rows {
		if known := !math.IsNaN(row.To); known != !math.IsNaN(row.P50) || (k > 0 && known && math.IsNaN(s.Rows[k-1].To)) {
			t.Errorf("%s: end %g, P50 %g", row.Step.Key, row.To, row.P50)
		}
	}
	if s.Mend != "section[3].rop" {
		t.Errorf("the schedule is to be mended at %q", s.Mend)
	}
}

// TestTheLookAheadIsAPartition: windows one after the other hold every operation to come once, in order.
func TestTheLookAheadIsAPartition(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Sections[0].Done = []model.DoneRow{{Step: "drill_seabed", Ended: "2027-04-06 02:00"}}
	s := calc.ScheduleOf(plan)
	if s.Next == 0 || s.Rows[s.Next].Step.Key != "clean_up" {
		t.Fatalf("row %d is the next", s.Next)
	}
	if from, _ := model.ParseMoment("2027-04-06 02:00"); s.Begins.After(s.Now()) != from {
		t.Errorf("the look-ahead begins at %s", s.Begins.After(s.Now()))
	}
	rapid.Check(t, func(t *rapid.T) {
		var all []calc.Planned
		for at := 0.0; len(all) < len(s.Rows)-s.Next && at < 400*aDay; {
			to := at + rapid.Float64Range(anHour, 10*aDay).Draw(t, "window")
			all = append(all, s.Ahead(at, to)...)
			at = to
		}
		if len(all) != len(s.Rows)-s.Next {
			t.Fatalf("%d of %d operations", len(all), len(s.Rows)-s.Next)
		}
		for k := range all {
			if all[k].Step != s.Rows[s.Next+k].Step {
				t.Fatalf("operation %d is %s, expected %s", k, all[k].Step.Key, s.Rows[s.Next+k].Step.Key)
			}
		}
	})
}

// TestWhatIsDoneMovesTheRest: what comes after the last step done begins at its end, as long as it was planned to take.
func TestWhatIsDoneMovesTheRest(t *testing.T) {
	plan := demo(t, "ottermast-2")
	before := calc.Evaluate(plan)
	planned := calc.ScheduleOf(plan)
	plan.Sections[0].Done = []model.DoneRow{
		{Step: "make_up", Started: "2027-04-05 06:00", Ended: "2027-04-05 12:00"},
		{Step: "drill_seabed", Started: "2027-04-05 13:00", Ended: "2027-04-06 02:00", Depth: q(t, "446 m", quantity.Length)},
	}
	r := calc.Evaluate(plan)
	s := calc.ScheduleOf(plan)
	drill := 3 // make up, run in, tag, drill
	if s.Next != drill+1 || s.Rows[1].Progress != calc.Passed || s.Rows[drill].Progress != calc.Done || !near(s.Rows[drill].To, 20*anHour, 1e-6) {
		t.Fatalf("next is %d, drilled by %g h", s.Next, s.Rows[drill].To/anHour)
	}
	shift := 20*anHour - planned.Rows[drill].To
	for k := s.Next; k < len(s.Rows); k++ {
		if !near(s.Rows[k].To, planned.Rows[k].To+shift, 1e-5) || !near(s.Rows[k].P50, planned.Rows[k].To+shift, 5*aDay) || s.Rows[k].PlannedTo != planned.Rows[k].To {
			t.Errorf("%s ends at %g h, planned %g h and %g h late", s.Rows[k].Step.Key, s.Rows[k].To/anHour, planned.Rows[k].To/anHour, shift/anHour)
		}
	}
	for key, want := range map[string]float64{"time.behind": shift, "time.well.behind": shift, "time.done": 19 * anHour,
		"time.ends": value(t, before, 1, "time.ends") + shift, "time.hours": value(t, before, 1, "time.hours")} {
		if got := value(t, r, 1, key); !near(got, want, 1e-5) {
			t.Errorf("%s is %g h, expected %g h", key, got/anHour, want/anHour)
		}
	}
	if got, want := value(t, r, 5, "time.ends"), value(t, before, 5, "time.ends")+shift; !near(got, want, 1e-5) {
		t.Errorf("the well ends at %g d, expected %g d", got/aDay, want/aDay)
	}
	if _, ok := r.Sections[0].Find("time.ready.assembly"); ok {
		t.Error("the BHA is still to be made ready")
	}
	var done *calc.ChartCurve
	chart := calc.Charts(plan, 2, model.TopicTime)[0]
	for k := range chart.Curves {
		if chart.Curves[k].Name == "Done" {
			done = &chart.Curves[k]
		}
	}
	if done == nil || done.Points[len(done.Points)-1] != (calc.ChartPoint{At: 446, Value: 20 * anHour}) {
		t.Errorf("what is done is drawn as %+v", done)
	}
}

// TestWithoutABeginningAStepStandsForThosePassed before it, in the time that it took and in the plan that this is compared with.
func TestWithoutABeginningAStepStandsForThosePassed(t *testing.T) {
	plan := demo(t, "ottermast-2")
	planned := calc.ScheduleOf(plan)
	plan.Sections[0].Done = []model.DoneRow{{Step: "make_up", Ended: "2027-04-05 12:00"}, {Step: "drill_seabed", Ended: "2027-04-06 02:00"}}
	r := calc.Evaluate(plan)
	if took, should := value(t, r, 1, "time.done"), value(t, r, 1, "time.done.planned"); !near(took, 20*anHour, 1e-6) || !near(should, planned.Rows[3].PlannedTo, 1e-6) {
		t.Errorf("took %g h, planned %g h", took/anHour, should/anHour)
	}
	if behind := value(t, r, 1, "time.behind"); !near(behind, 20*anHour-planned.Rows[3].PlannedTo, 1e-6) {
		t.Errorf("%g h behind", behind/anHour)
	}
}

// TestABeginningIsReckonedBack from the first step done where the plan has none, and one that goes on counts from when it was started.
func TestABeginningIsReckonedBack(t *testing.T) {
	plan := demo(t, "ottermast-2")
	with(t, plan, "time.start", "")
	planned := calc.ScheduleOf(plan)
	plan.Sections[0].Done = []model.DoneRow{{Step: "run_in", Started: "2027-04-05 10:00"}}
	s := calc.ScheduleOf(plan)
	at, _ := model.ParseMoment("2027-04-05 10:00")
	if !s.Dated || s.Begins != at.After(-planned.Rows[1].PlannedFrom) {
		t.Errorf("the well begins at %s", s.Begins)
	}
	if s.Next != 1 || s.Rows[1].Progress != calc.GoingOn || s.Rows[0].Progress != calc.Passed || !near(s.Rows[1].To-s.Rows[1].From, planned.Rows[1].To-planned.Rows[1].From, 1e-6) {
		t.Errorf("next is %d, going on from %g to %g", s.Next, s.Rows[1].From, s.Rows[1].To)
	}
}

// TestWhatCannotBeDone is a finding that names the entry, and does not count.
func TestWhatCannotBeDone(t *testing.T) {
	good := model.DoneRow{Step: "run_in", Started: "2027-04-05 10:00", Ended: "2027-04-05 11:00"}
	for _, c := range []struct {
		name string
		row  model.DoneRow
		mend string
		says string
	}{
		{"no step", model.DoneRow{Ended: "2027-04-05 12:00"}, "step", "blank"},
		{"another's step", model.DoneRow{Step: "test_stack", Ended: "2027-04-05 12:00"}, "step", "no operation \"test_stack\""},
		{"twice", model.DoneRow{Step: "run_in", Ended: "2027-04-05 12:00"}, "step", "twice"},
		{"no time", model.DoneRow{Step: "drill_seabed"}, "ended", "neither"},
		{"no day", model.DoneRow{Step: "drill_seabed", Ended: "5 April"}, "ended", "\"5 April\" is no day and hour"},
		{"no hour", model.DoneRow{Step: "drill_seabed", Started: "2027-04-05 25:00", Ended: "2027-04-06"}, "started", "is no day and hour"},
		{"backwards", model.DoneRow{Step: "drill_seabed", Started: "2027-04-06 12:00", Ended: "2027-04-06 11:00"}, "ended", "before it was started"},
		{"out of order", model.DoneRow{Step: "drill_seabed", Started: "2027-04-05 08:00", Ended: "2027-04-05 09:00"}, "ended", "earlier in the list"},
		{"before one that is listed above", model.DoneRow{Step: "make_up", Started: "2027-04-05 10:30", Ended: "2027-04-05 11:30"}, "ended", "earlier in the list"},
	} {
		plan := demo(t, "ottermast-2")
		plan.Sections[0].Done = []model.DoneRow{good}
		want := calc.ScheduleOf(plan)
		plan.Sections[0].Done = append(plan.Sections[0].Done, c.row)
		got := calc.ScheduleOf(plan)
		if got.Next != want.Next || got.Rows[len(got.Rows)-1].To != want.Rows[len(want.Rows)-1].To {
			t.Errorf("%s: it counts", c.name)
		}
		found := false
		for _, f := range findings(calc.Evaluate(plan), 1, "entry") {
			found = found || string(f.Mend) == "section[1].done[2]."+c.mend && strings.Contains(f.Text, c.says) && f.Severity == calc.Caution
		}
		if !found {
			t.Errorf("%s: no such finding", c.name)
		}
	}
	plan := demo(t, "ottermast-2")
	with(t, plan, "time.start", "next week")
	if list := findings(calc.Evaluate(plan), 0, "entry"); len(list) != 1 || list[0].Mend != "time.start" {
		t.Errorf("a beginning that cannot be read: %+v", list)
	}
}

// TestAllDone: when the last step is done nothing is ahead, and the well has ended when it had.
func TestAllDone(t *testing.T) {
	plan := demo(t, "ottermast-2")
	plan.Sections[4].Done = []model.DoneRow{{Step: "liner_test", Ended: "2027-05-01 00:00"}}
	s := calc.ScheduleOf(plan)
	if s.Next != len(s.Rows) || !math.IsNaN(s.Now()) || len(s.Ahead(0, aDay)) != 0 {
		t.Errorf("next is %d of %d", s.Next, len(s.Rows))
	}
	r := calc.Evaluate(plan)
	if f := figure(t, r, 5, "time.well.ends"); f.Note != "2027-05-01 00:00" {
		t.Errorf("the well ends %q", f.Note)
	}
	for _, f := range r.Sections[4].Figures {
		if strings.HasPrefix(f.Key, "stock.") {
			t.Fatalf("%s, with nothing left to do", f.Key)
		}
	}
}

func BenchmarkSchedule(b *testing.B) {
	plan := demo(b, "ottermast-2")
	b.ReportAllocs()
	for b.Loop() {
		calc.ScheduleOf(plan)
	}
}
