// Package anyplan makes plans out of arbitrary bytes, for fuzz tests: whatever its reader lets in may stand in them.
package anyplan

import (
	"math"

	"borewalk/model"
	"borewalk/model/planfile"
	"borewalk/model/quantity"
	"borewalk/plans"
)

// From returns a demo plan, or a bare one, that was changed as the bytes say: entries are blanked, or given a number of their range, an
// end of it, a number of any size where there is no range, a choice or a text; rows come, go and change places.
func From(src []byte) *model.Plan {
	b := &bytes{src}
	plan := begun(b.next())
	for changes := 0; len(b.left) > 0 && changes < 200; changes++ {
		if b.next()%8 == 0 {
			b.row(plan)
			continue
		}
		refs := entries(plan)
		ref := refs[b.upTo(len(refs))]
		ref.Set(plan, b.entry(ref.Field, ref.Get(plan)))
	}
	return plan
}

// begun returns the plan that the changes are made to.
func begun(which int) *model.Plan {
	names := plans.Names()
	if which %= len(names) + 1; which == len(names) {
		return &model.Plan{Sections: make([]model.Section, 2)}
	}
	text, _ := plans.Demo(names[which])
	file, err := planfile.Read(names[which], text)
	if err != nil {
		panic("anyplan: internal error: " + err.Error())
	}
	return file.Plan
}

// entries returns all entries of a plan.
func entries(plan *model.Plan) (refs []model.Ref) {
	model.Walk(plan, func(g *model.Group, at model.Place) bool {
		for _, f := range g.Fields {
			refs = append(refs, model.Ref{Group: g, Field: f, Place: at})
		}
		return true
	})
	return refs
}

// bytes are what is still to be used; behind their end stand zeros.
type bytes struct{ left []byte }

func (b *bytes) next() int {
	if len(b.left) == 0 {
		return 0
	}
	c := b.left[0]
	b.left = b.left[1:]
	return int(c)
}

// upTo returns a number from 0 up to but not n.
func (b *bytes) upTo(n int) int {
	if n <= 1 {
		return 0
	}
	return (b.next()<<8 + b.next()) % n
}

// share returns a number from 0 to 1.
func (b *bytes) share() float64 { return float64(b.next()<<8+b.next()) / math.MaxUint16 }

// entry returns a content that the field takes.
func (b *bytes) entry(f *model.Field, old model.Entry) model.Entry {
	way := b.next() % 6
	switch {
	case f.Type == model.ChoiceField:
		return model.Entry{Text: f.Choices[b.upTo(len(f.Choices))]}
	case way == 0:
		return f.Absent()
	case f.Type == model.TextField:
		return model.Entry{Text: []string{"x", "first", "1", "own.1", "-1 m", "2026-02-30 25:00", old.Text + old.Text}[b.upTo(7)]}
	}
	units := quantity.Units(f.Kind)
	unit := units[b.upTo(len(units))]
	least, most := f.Min.SI, f.Max.SI
	if !f.Min.IsSet() {
		most = unit.ToSI(math.Pow10(b.upTo(15)))
		least = -most
	}
	si := least
	switch way {
	case 1:
	case 2:
		si = most
	case 3:
		si = old.Quantity.SI * (0.9 + 0.2*b.share())
	default:
		si = least + (most-least)*b.share()
	}
	si = min(max(si, least), most)
	if f.Kind == quantity.Count {
		si = math.Round(si)
	}
	return model.Entry{Quantity: quantity.Value{SI: si, Unit: unit}}
}

// row adds a row to a list, takes one away, or puts it first.
func (b *bytes) row(plan *model.Plan) {
	type place struct {
		group *model.Group
		at    model.Place
	}
	var rows []place
	var look func(groups []*model.Group, at model.Place)
	look = func(groups []*model.Group, at model.Place) {
		for _, g := range groups {
			if !g.List {
				look(g.Lists, at)
				continue
			}
			for i := range g.Len(plan, at) + 1 { // one behind the last, to add a row there
				rows = append(rows, place{g, g.At(at, i)})
				if i < g.Len(plan, at) {
					look(g.Lists, g.At(at, i))
				}
			}
		}
	}
	look(model.Groups(), model.Place{})
	to := rows[b.upTo(len(rows))]
	var history model.History
	do := func(changes ...model.Change) {
		if edit := (model.Edit{Changes: changes}); edit.Overfull(plan) == "" {
			history.Do(plan, edit)
		}
	}
	switch way := b.next() % 3; {
	case !to.group.Has(plan, to.at), way == 0:
		do(model.Adding(to.group, to.at))
	case way == 1:
		do(model.Removing(to.group, to.at))
	default: // change places with the first of the list
		first := to.group.At(to.at, 0)
		for _, f := range to.group.Fields {
			a, b := model.Ref{Group: to.group, Field: f, Place: first}, model.Ref{Group: to.group, Field: f, Place: to.at}
			was := a.Get(plan)
			a.Set(plan, b.Get(plan))
			b.Set(plan, was)
		}
	}
}

// Small is the text of a plan of one section, worked out in no time, for tests that open many.
const Small = `borewalk = 1
[well]
name = "Testling-1"
air_gap = "26 m"
water_depth = "342 m"
[[section]]
hole = "36 in"
td = "450 m"
`
