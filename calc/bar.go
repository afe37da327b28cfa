package calc

import (
	"math"

	"borewalk/model"
	"borewalk/model/quantity"
)

// Bar is a planned value on one scale with the limits on it.
type Bar struct {
	Key, Title string
	Topic      model.Topic
	Kind       quantity.Kind
	Planned    float64
	HasPlanned bool
	Limits     []BarLimit // least ones first, each from the lowest up
	Blank      []string   // limits that are not known, and why
}

// BarLimit is a named limit on a bar's scale.
type BarLimit struct {
	Name string
	At   float64
	Most bool // the value is to be no higher, else no lower
	Note string
}

// Bars returns the bars of one topic of a section, none where there is nothing to show. They are worked out anew at each call.
func Bars(plan *model.Plan, section int, topic model.Topic) []Bar {
	if section < 0 || section >= len(plan.Sections) || topic != model.TopicHydraulics {
		return nil
	}
	e := runPages(plan, section, nil)
	return []Bar{e.flowBar(section)}
}

// Range returns the values between which all limits are kept, and whether there are such: no limit on a side is zero, or
// endless.
func (b *Bar) Range() (least, most float64, ok bool) {
	most = math.Inf(1)
	for _, x := range b.Limits {
		if x.Most {
			most = min(most, x.At)
		} else {
			least = max(least, x.At)
		}
	}
	return least, most, least <= most
}
