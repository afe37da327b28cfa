package calc_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/anyplan"
)

// FuzzEvaluate works out any plan that a file may hold, and all that is worked out on demand: nothing breaks, every figure and finding is
// a number, and nothing is without end. On demand NaN stands for what there is none of; the papers hold that it is not printed.
func FuzzEvaluate(f *testing.F) {
	random := rand.New(rand.NewPCG(7, 7))
	for n := range 12 {
		src := make([]byte, 1<<n/8)
		for i := range src {
			src[i] = byte(random.Uint32())
		}
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src []byte) { isWorkedOut(t, src) })
}

// TestAnyPlanIsWorkedOut is [FuzzEvaluate] for bytes drawn at random, which reach more plans in the same time.
func TestAnyPlanIsWorkedOut(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		isWorkedOut(rt, rapid.SliceOfN(rapid.Byte(), 0, 400).Draw(rt, "bytes"))
	})
}

// isWorkedOut reports what is wrong with all that is worked out of the plan that the bytes make.
func isWorkedOut(t interface{ Errorf(string, ...any) }, src []byte) {
	plan := anyplan.From(src)
	r := calc.Evaluate(plan)
	for _, fault := range sound(plan, r) {
		t.Errorf("%s", fault)
	}
	for what, made := range onDemand(plan, src) {
		if where := endless(reflect.ValueOf(made), what); where != "" {
			t.Errorf("%s", where)
		}
	}
}

// onDemand makes what is too costly for every keystroke, of the section that the bytes choose.
func onDemand(plan *model.Plan, src []byte) map[string]any {
	made := map[string]any{"the schedule": calc.ScheduleOf(plan)}
	if len(plan.Sections) == 0 {
		return made
	}
	i := len(src) % len(plan.Sections)
	for _, topic := range model.Topics() {
		made[fmt.Sprintf("the charts of page %v", topic)] = calc.Charts(plan, i, topic)
	}
	made["the walk"], _, _ = calc.Walk(plan, i)
	made["the cement job"], _, _ = calc.Play(plan, i, 0)
	made["the kick"], _, _ = calc.PlayKill(plan, i, false)
	made["the disconnect"], _, _ = calc.PlayDisconnect(plan, i)
	made["the stack-up"], _ = calc.StackUp(plan, i)
	made["the strip"], _ = calc.SpaceStrip(plan, i)
	made["the running list"], _ = calc.RunningList(plan, i)
	made["the trip sheet"], _ = calc.TripSheetOf(plan, i)
	return made
}

// endless says where in a value stands a number without end; nothing for nowhere.
func endless(v reflect.Value, where string) string {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsInf(x, 0) {
			return fmt.Sprintf("%s is %g", where, x)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if fault := endless(v.Index(i), where); fault != "" {
				return fault
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if fault := endless(v.Field(i), where+", "+v.Type().Field(i).Name); fault != "" {
				return fault
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return endless(v.Elem(), where)
		}
	}
	return ""
}
