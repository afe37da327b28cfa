package model

import (
	"reflect"
	"slices"
)

// Clone returns a copy of the plan that shares nothing with it that changes, to try changes on. The rows of the log never do, and
// there may be many of them.
func (plan *Plan) Clone() *Plan {
	trial := *plan
	trial.Log = nil
	detach(reflect.ValueOf(&trial).Elem())
	trial.Log = slices.Clip(plan.Log)
	return &trial
}

// detach gives a value lists of its own in place of those that it shares, all the way down: whatever a plan comes to hold is
// copied without being named here. Its leaves are quantities and text, which nobody can change from outside.
func detach(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if mayShare(v.Field(i).Kind()) {
				detach(v.Field(i))
			}
		}
	case reflect.Slice:
		if v.IsNil() {
			return
		}
		own := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(own, v)
		v.Set(own)
		for i := 0; i < v.Len() && mayShare(v.Type().Elem().Kind()); i++ {
			detach(v.Index(i))
		}
	case reflect.Array:
		for i := 0; i < v.Len() && mayShare(v.Type().Elem().Kind()); i++ {
			detach(v.Index(i))
		}
	}
}

// mayShare reports whether values of a kind can hold lists. A plan holds no pointers and no maps.
func mayShare(k reflect.Kind) bool {
	switch k {
	case reflect.Pointer, reflect.Map, reflect.Interface, reflect.Chan, reflect.Func:
		panic("model: internal error: a plan holds a " + k.String())
	}
	return k == reflect.Struct || k == reflect.Slice || k == reflect.Array
}
