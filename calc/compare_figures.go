package calc

import (
	"cmp"
	"math"
	"slices"

	"borewalk/model/quantity"
)

// FigureMove is a figure that another plan gives otherwise, by more than it is shown to. One that a plan does not have, or leaves
// blank, is not OK there.
type FigureMove struct {
	Section       int // in the later plan; -1 for the well
	Before, After Figure
	HadLimit      bool
	Limit         Finding // the check that the later plan comes nearest to missing with the figure, or the earlier one did
}

// Figure returns the figure as the later plan has it, or the earlier one where that does not.
func (m *FigureMove) Figure() *Figure {
	if m.After.Key != "" {
		return &m.After
	}
	return &m.Before
}

// Relative returns how far the figure has moved, as a part of the greater of the two values; 1 where there is only one.
func (m *FigureMove) Relative() float64 {
	if !m.Before.OK || !m.After.OK {
		return 1
	}
	return math.Abs(m.After.Value-m.Before.Value) / max(math.Abs(m.Before.Value), math.Abs(m.After.Value))
}

// Room returns how far the figure is inside its limit, as a part of the limit; negative where it is not. A limit of zero has no
// parts: of what is held against that, as margins are, it is the part of the greater of the two values.
func (m *FigureMove) Room() float64 {
	if m.Limit.Limit != 0 {
		return m.Limit.Margin / math.Abs(m.Limit.Limit)
	}
	return m.Limit.Margin / max(math.Abs(m.Before.Value), math.Abs(m.After.Value))
}

// figures returns what has moved in the sheets that both plans have: first what is compared with a limit, the nearest to it first,
// then by how far it moved.
func (c *comparing) figures() (list []FigureMove) {
	c.both(func(before, after int) {
		was, is := c.was.Sheet(before).Figures, c.is.Sheet(after).Figures
		at := make(map[string]int, len(was))
		for i := range was {
			at[was[i].Key] = i
		}
		kept := make([]bool, len(was))
		for j := range is {
			if i, ok := at[is[j].Key]; !ok || was[i].Label() != is[j].Label() || was[i].Kind != is[j].Kind {
				list = c.moved(list, before, after, nil, &is[j])
			} else {
				kept[i] = true
				list = c.moved(list, before, after, &was[i], &is[j])
			}
		}
		for i := range was {
			if !kept[i] {
				list = c.moved(list, before, after, &was[i], nil)
			}
		}
	})
	slices.SortStableFunc(list, func(a, b FigureMove) int {
		switch {
		case a.HadLimit != b.HadLimit && a.HadLimit:
			return -1
		case a.HadLimit != b.HadLimit:
			return 1
		case a.HadLimit:
			return cmp.Compare(a.Room(), b.Room())
		}
		return cmp.Compare(b.Relative(), a.Relative())
	})
	return list
}

// moved adds a figure if it has moved. Either may be missing.
func (c *comparing) moved(list []FigureMove, before, after int, was, is *Figure) []FigureMove {
	m := FigureMove{Section: after}
	if was != nil {
		m.Before = *was
	}
	if is != nil {
		m.After = *is
	}
	switch {
	case !m.Before.OK && !m.After.OK:
		return list
	case m.Before.OK && m.After.OK && !c.differs(m.Before.Value, m.After.Value, m.After.Kind):
		return list
	}
	if m.Limit, m.HadLimit = nearest(c.is, after, &m.After); !m.HadLimit {
		if m.Limit, m.HadLimit = nearest(c.was, before, &m.Before); m.HadLimit {
			m.Limit = c.nowOf(m.Limit, after, &m.After)
		}
	}
	return append(list, m)
}

// nowOf returns what has become of a check of a figure that is zero now, which many are; the check as it was where there is none.
func (c *comparing) nowOf(was Finding, after int, figure *Figure) Finding {
	for _, f := range c.is.Findings {
		if f.Key == was.Key && f.measures(after, figure) {
			return f
		}
	}
	return was
}

// differs reports whether a difference is seen in the units of either plan.
func (c *comparing) differs(a, b float64, kind quantity.Kind) bool {
	return quantity.Differs(a, b, kind, c.units[0].Unit(kind)) || quantity.Differs(a, b, kind, c.units[1].Unit(kind))
}

// nearest returns the finding that holds a figure of a sheet against the limit that it comes nearest to missing. Zero is measured
// by many, so that it tells nothing.
func nearest(r *Result, section int, figure *Figure) (best Finding, ok bool) {
	if figure.Value == 0 {
		return Finding{}, false
	}
	for i := range r.Findings {
		if f := &r.Findings[i]; f.measures(section, figure) && (!ok || f.Margin < best.Margin) {
			best, ok = *f, true
		}
	}
	return best, ok
}
