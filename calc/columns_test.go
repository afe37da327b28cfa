package calc_test

import (
	"testing"

	"borewalk/calc"
	"borewalk/model"
)

// TestColumnsOfAGroupAreTheSame: a table names its columns once, over the first line of a group; a number under another's name would
// be read as that.
func TestColumnsOfAGroupAreTheSame(t *testing.T) {
	eachDemo(t, func(t *testing.T, name string) {
		plan := kickedEverywhere(t, name)
		r := calc.Evaluate(plan)
		for i := -1; i < len(r.Sections); i++ {
			var group string
			var columns []string
			at := 0
			for _, f := range r.Sheet(i).Figures {
				if f.Topic != model.TopicControl {
					continue
				}
				switch {
				case f.Group != group:
					group, columns, at = f.Group, nil, 0
				case f.Column == "":
					at = 0
				case at < len(columns) && columns[at] != f.Column:
					t.Errorf("section %d, %s, %s: column %d is %q, and %q above it", i+1, group, f.Key, at+1, f.Column, columns[at])
					fallthrough
				default:
					if at >= len(columns) {
						columns = append(columns, f.Column)
					}
					at++
				}
			}
		}
	})
}

// kickedEverywhere is a demo with everything read that can be: shoe tests, kicks, BOP tests.
func kickedEverywhere(t *testing.T, name string) *model.Plan {
	t.Helper()
	plan := demo(t, name)
	for i := range plan.Sections {
		if plan.Sections[i].Returns != model.ToRig {
			continue
		}
		section := "section[" + string(rune('1'+i)) + "]."
		for _, c := range [][2]string{{"shoe_test.pressure", "20 bar"}, {"shoe_test.mud", "1.2 sg"}, {"shoe_test.shut_in", "19 bar"}, {"shoe_test.shut_in_last", "18 bar"},
			{"shoe_test.returned", "0.2 m3"}, {"kill.drill_pipe", "20 bar"}, {"kill.annulus", "40 bar"}, {"kill.gain", "4 m3"}, {"kill.rise", "2 bar"}, {"kill.rise_time", "20 min"},
			{"bop_test.tested", "2026-11-20"}, {"bop_test.shear_tested", "2026-11-10"}, {"bop_test.functioned", "2026-11-25"}, {"bop_test.until", "2026-11-29"}} {
			with(t, plan, section+c[0], c[1])
		}
		points(plan, i+1, [2]float64{0, 0}, [2]float64{40, 4}, [2]float64{80, 8}, [2]float64{120, 12}, [2]float64{160, 16}, [2]float64{200, 20},
			[2]float64{240, 21}, [2]float64{280, 21.5}, [2]float64{320, 21.8})
	}
	return plan
}
