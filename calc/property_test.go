package calc_test

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// disturb changes a few entries of a plan at random: blanks them, gives them any value of their range, or moves them a
// little, which keeps more of the plan computable.
func disturb(t *rapid.T, plan *model.Plan) {
	var refs []model.Ref
	eachRef(plan, func(r model.Ref) {
		if r.Field.Type != model.TextField {
			refs = append(refs, r)
		}
	})
	for range rapid.IntRange(1, 8).Draw(t, "changes") {
		ref := refs[rapid.IntRange(0, len(refs)-1).Draw(t, "entry")]
		ref.Set(plan, another(t, ref, ref.Get(plan)))
	}
}

// another draws a new content for an entry.
func another(t *rapid.T, ref model.Ref, old model.Entry) model.Entry {
	f := ref.Field
	if f.Type == model.ChoiceField {
		return model.Entry{Text: rapid.SampledFrom(f.Choices).Draw(t, string(ref.Path()))}
	}
	units := quantity.Units(f.Kind)
	unit := rapid.SampledFrom(units).Draw(t, "unit")
	least, most := f.Min.SI, f.Max.SI
	if !f.Min.IsSet() {
		least, most = 0, unit.ToSI(100)
	}
	switch rapid.IntRange(0, 9).Draw(t, "way") {
	case 0:
		return model.Entry{}
	case 1:
		return model.Entry{Quantity: quantity.Value{SI: rapid.SampledFrom([]float64{least, most}).Draw(t, "end"), Unit: unit}}
	case 2, 3:
		return model.Entry{Quantity: quantity.Value{SI: rapid.Float64Range(least, most).Draw(t, string(ref.Path())), Unit: unit}}
	}
	if !old.IsSet() {
		return model.Entry{Quantity: quantity.Value{SI: rapid.Float64Range(least, most).Draw(t, string(ref.Path())), Unit: unit}}
	}
	si := old.Quantity.SI * rapid.Float64Range(0.95, 1.05).Draw(t, string(ref.Path()))
	return model.Entry{Quantity: quantity.Value{SI: min(max(si, least), most), Unit: unit}}
}

// anyPlan draws one of the demo plans with a few entries changed.
func anyPlan(t *rapid.T, tb testing.TB) *model.Plan {
	plan := demo(tb, rapid.SampledFrom(plans.Names()).Draw(t, "plan"))
	disturb(t, plan)
	return plan
}

// laws are what holds of the result of any plan.
var laws = []func(*rapid.T, *model.Plan, *calc.Result){
	resultIsSound, evaluateIsPure, workingIsThatOfTheFigure, volumesAddUp, strokesGiveTheirVolumeBack, depthsAreInOrder,
	stringWeighsLessInMud, sketchIsInOrder, hydraulicsAddUp, frictionHoldsTheStringBack, theWalkHoldsTogether,
}

// TestTheLawsOfAnyPlan: all laws are held to the same plans, since it is working out a plan that takes time.
func TestTheLawsOfAnyPlan(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		plan := anyPlan(rt, t)
		r := calc.Evaluate(plan)
		for _, law := range laws {
			law(rt, plan, r)
		}
	})
}

func resultIsSound(t *rapid.T, plan *model.Plan, r *calc.Result) {
	for _, fault := range sound(plan, r) {
		t.Error(fault)
	}
}

// theWalkHoldsTogether: a section is walked through with a job for each of its operations, each of it numbers, in order of time and
// depth, or it is said why not.
func theWalkHoldsTogether(t *rapid.T, plan *model.Plan, r *calc.Result) {
	i := rapid.IntRange(0, len(plan.Sections)-1).Draw(t, "walked")
	jobs, why, _ := calc.Walk(plan, i)
	if why == "" && len(jobs) != len(r.Steps[i]) {
		t.Errorf("section %d: %d jobs for %d steps", i+1, len(jobs), len(r.Steps[i]))
	}
	for k := range jobs {
		for n := range jobs[k].Frames {
			f := &jobs[k].Frames[n]
			for _, g := range f.At.Gauges {
				if math.IsNaN(g.Value) || math.IsInf(g.Value, 0) {
					t.Errorf("section %d, %s: %s is no number", i+1, jobs[k].Events[0].Name, g.Name)
				}
			}
			for _, stands := range [][]calc.JobStand{f.Inside, f.Annulus, f.Between, f.Pocket} {
				for _, s := range stands {
					if !(s.Top <= s.Bottom) || s.Fluid >= len(jobs[k].Fluids) {
						t.Errorf("section %d, %s: %+v stands there", i+1, jobs[k].Events[0].Name, s)
					}
				}
			}
		}
	}
}

func evaluateIsPure(t *rapid.T, plan *model.Plan, r *calc.Result) {
	before := plan.Clone()
	again := calc.Evaluate(plan)
	if !reflect.DeepEqual(plan, before) {
		t.Fatalf("the plan was changed:\n%+v\n%+v", before, plan)
	}
	if !reflect.DeepEqual(r, again) {
		t.Fatal("the same plan gives two results")
	}
}

func volumesAddUp(t *rapid.T, _ *model.Plan, r *calc.Result) {
	for i := range r.Sections {
		annuliAddUp(t, r, i)
		casingAnnulusAddsUp(t, r, i)
	}
}

// annuliAddUp compares the annulus interval by interval with the volumes to be circulated.
func annuliAddUp(t *rapid.T, r *calc.Result, i int) {
	sheet := r.Sheet(i)
	sum, belowMudline, last := 0.0, 0.0, math.Inf(-1)
	for _, f := range sheet.Figures {
		number, ok := strings.CutPrefix(f.Key, "volume.annulus.")
		if !ok || strings.Contains(number, ".") || !f.OK {
			continue
		}
		top, _ := sheet.Find(f.Key + ".top")
		bottom, _ := sheet.Find(f.Key + ".bottom")
		capacity, _ := sheet.Find(f.Key + ".capacity")
		if !same(f.Value, capacity.Value*(bottom.Value-top.Value)) {
			t.Errorf("section %d %s = %g, capacity × length = %g", i+1, f.Key, f.Value, capacity.Value*(bottom.Value-top.Value))
		}
		if top.Value < last-1e-6 {
			t.Errorf("section %d %s begins at %g m above the end of the last at %g m", i+1, f.Key, top.Value, last)
		}
		last = bottom.Value
		sum += f.Value
		belowMudline += capacity.Value * max(0, bottom.Value-max(top.Value, r.Datum.Mudline))
	}
	if f, ok := sheet.Find("volume.bottoms_up_rig"); ok && f.OK && !same(f.Value, sum) {
		t.Errorf("section %d: bottoms-up to the rig %g, sum of the annulus %g", i+1, f.Value, sum)
	}
	below, ok1 := sheet.Find("volume.bottoms_up")
	riser, ok2 := sheet.Find("volume.riser")
	if ok1 && ok2 && below.OK && riser.OK && !same(below.Value+riser.Value, sum) {
		t.Errorf("section %d: BOP %g and riser %g, sum of the annulus %g", i+1, below.Value, riser.Value, sum)
	}
	if f, ok := sheet.Find("volume.seabed"); ok && f.OK && f.Value < belowMudline*(1-1e-9) {
		t.Errorf("section %d: bottoms-up to the seabed %g, annulus below the mudline %g", i+1, f.Value, belowMudline)
	}
	hole, ok := sheet.Find("volume.hole")
	if ok && hole.OK && sum > 0 && hole.Value < belowMudline*(1-1e-9) {
		t.Errorf("section %d: the empty well holds %g, the annulus %g", i+1, hole.Value, belowMudline)
	}
}

// casingAnnulusAddsUp compares the annulus round the string with its two parts.
func casingAnnulusAddsUp(t *rapid.T, r *calc.Result, i int) {
	sheet := r.Sheet(i)
	sum, listed := 0.0, 0
	for _, f := range sheet.Figures {
		if number, ok := strings.CutPrefix(f.Key, "casing.annulus."); ok && !strings.Contains(number, ".") {
			sum += f.Value
			listed++
		}
	}
	open, ok := sheet.Find("casing.volume.annulus.open")
	cased, _ := sheet.Find("casing.volume.annulus.cased")
	if ok && open.OK && listed > 0 && !same(open.Value+cased.Value, sum) {
		t.Errorf("section %d: annulus open %g and cased %g, listed %g", i+1, open.Value, cased.Value, sum)
	}
}

// same compares two volumes up to the rounding of sums.
func same(a, b float64) bool {
	return math.Abs(a-b) <= 1e-9*math.Max(1, math.Max(math.Abs(a), math.Abs(b)))
}

// strokesGiveTheirVolumeBack: strokes times output is the volume, but where the booster helps to lift it: there the
// strokes are those of the time that the flow through the bit needs.
func strokesGiveTheirVolumeBack(t *rapid.T, plan *model.Plan, r *calc.Result) {
	output, ok := r.Well.Find("pump.1.output")
	if !ok || !output.OK {
		return // no pump
	}
	for i := -1; i < len(r.Sections); i++ {
		for _, f := range r.Sheet(i).Figures {
			key, ok := strings.CutSuffix(f.Key, ".strokes")
			if !ok || !f.OK {
				continue
			}
			volume, _ := r.Sheet(i).Find(key)
			if pumped, apart := r.Sheet(i).Find(key + ".volume"); apart {
				volume = pumped
			}
			want, output := volume.Value, output
			if time, timed := r.Sheet(i).Find(key + ".time"); timed && time.OK && i >= 0 {
				want = time.Value * plan.Sections[i].Flow.SI
				if kill, slow := r.Sheet(i).Find("control.kill.flow"); slow && strings.HasPrefix(key, "control.kill.") {
					want = time.Value * kill.Value
				}
			}
			if i >= 0 && strings.HasPrefix(key, "control.kill.") && plan.Sections[i].Kill.Pump.IsSet() {
				output, _ = r.Well.Find(fmt.Sprintf("pump.%d.output", int(plan.Sections[i].Kill.Pump.SI)))
			}
			if !volume.OK || !same(f.Value*output.Value, want) {
				t.Errorf("section %d %s: %g strokes of %g are not %g", i+1, key, f.Value, output.Value, want)
			}
		}
	}
}

func depthsAreInOrder(t *rapid.T, _ *model.Plan, r *calc.Result) {
	last := 0.0
	for i := range r.Sections {
		sheet := r.Sheet(i)
		for _, f := range sheet.Figures {
			key, ok := strings.CutSuffix(f.Key, ".tvd")
			if !ok || !f.OK {
				continue
			}
			if md, _ := sheet.Find(key); f.Value > md.Value+1e-9 {
				t.Errorf("section %d %s: TVD %g m below %g m along hole", i+1, key, f.Value, md.Value)
			}
		}
		td, _ := sheet.Find("hole.td")
		if shoe, ok := sheet.Find("hole.shoe"); ok && shoe.OK && shoe.Value > td.Value {
			t.Errorf("section %d: shoe at %g m below TD at %g m", i+1, shoe.Value, td.Value)
		}
		if td.OK {
			if td.Value <= last {
				t.Errorf("section %d: TD at %g m, the last at %g m", i+1, td.Value, last)
			}
			last = td.Value
		}
	}
}

// stringWeighsLessInMud holds for every fluid lighter than steel; a drill string without a riser is full of mud that
// what stands outside does not hold up.
func stringWeighsLessInMud(t *rapid.T, plan *model.Plan, r *calc.Result) {
	for i := range r.Sections {
		for _, what := range []string{"string", "casing"} {
			if what == "string" && plan.Sections[i].Returns != model.ToRig {
				continue
			}
			air, ok1 := r.Sheet(i).Find(what + ".weight.air")
			mud, ok2 := r.Sheet(i).Find(what + ".weight.buoyed")
			if ok1 && ok2 && mud.OK && mud.Value > air.Value+1e-6 {
				t.Errorf("section %d: the %s weighs %g N in air and %g N in mud", i+1, what, air.Value, mud.Value)
			}
		}
	}
}

// sketchIsInOrder: what the schematic gets is in order or left out.
func sketchIsInOrder(t *rapid.T, _ *model.Plan, r *calc.Result) {
	s := r.Sketch
	for i, x := range s.Sections {
		if !x.OK {
			continue
		}
		if !(x.Start < x.Opened && x.Opened <= x.TD && x.TD <= s.Bottom && x.Hole > 0 && x.Bit > 0 && x.Bit <= x.Hole) {
			t.Errorf("section %d: hole %+v", i+1, x)
		}
		if !x.String {
			continue
		}
		if !(x.Top < x.Shoe && x.Shoe <= x.Opened) || len(x.Parts) == 0 {
			t.Errorf("section %d: string from %g to %g m, hole to %g m", i+1, x.Top, x.Shoe, x.Opened)
		}
		at := x.Top
		for _, part := range x.Parts {
			if math.Abs(part.Top-at) > 1e-6 || !(part.Bottom > part.Top) || !(part.ID > 0 && part.ID < part.OD && part.OD <= x.OD) {
				t.Errorf("section %d: part %+v after %g m", i+1, part, at)
			}
			at = part.Bottom
		}
		if math.Abs(at-x.Shoe) > 1e-6 {
			t.Errorf("section %d: parts end at %g m, shoe at %g m", i+1, at, x.Shoe)
		}
	}
}
