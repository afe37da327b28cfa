package model

import (
	"cmp"
	"fmt"
	"strings"
	"unicode/utf8"
)

// Bounds of a plan. No well comes near them; they keep one that was made by mistake or in malice from taking a machine's memory, and
// a keystroke from taking longer than a person waits. A plan within them opens, is worked out, and is saved.

// MaxText is how many characters a text may have: two pages.
const MaxText = 4000

// usualRows is how many rows a list may have that no measuring fills, and inAll how many times what a section may have all sections
// may have together.
const (
	usualRows = 200
	inAll     = 4
)

// mostRows are the lists that may have more or fewer rows. What is worked out grows with the sections times what is measured.
var mostRows = map[string]int{
	"section":              30,      // hole sections, contingencies and riserless ones too: a well has three to ten
	"trajectory.survey":    3000,    // a station every 5 m down to the deepest hole; one a stand makes 500
	"prognosis.row":        2000,    // a row every 7 m
	"formation":            1000,    // a top every 15 m
	"trial":                50,      // all of a section are worked out side by side
	"section.caliper":      2000,    // the mean over a metre, in the longest of sections
	"section.joint":        2000,    // twice the longest string of casing
	"section.test_point":   1000,    // twice what is read from a recorder's file
	"section.drag_reading": 60,      // each is worked out along the whole string, several times
	"section.step":         1000,    // a section has about forty
	"section.done":         1000,    //
	"handover":             1000,    // two a day for more than a year
	"log":                  100_000, // a save keeps the newest 20000
}

// Most returns how many rows a list may have; one within a row of another, such as a section, in each of these.
func (g *Group) Most() int { return cmp.Or(mostRows[g.Path()], usualRows) }

// MostInAll returns how many rows all lists of a group may have together.
func (g *Group) MostInAll() int {
	if !g.Nested() {
		return g.Most()
	}
	return inAll * g.Most()
}

// checkText says of a text that is too long for an entry how long it may be.
func checkText(text string) error {
	if len(text) <= MaxText {
		return nil
	}
	if n := utf8.RuneCountInString(text); n > MaxText {
		return fmt.Errorf("the text has %d characters, and an entry at most %d: shorten it", n, MaxText)
	}
	return nil
}

// shortened cuts what is quoted in a message.
func shortened(text string) string {
	const most = 40
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "..."
}

// Overfull says why the plan has no room for the rows that an edit adds; nothing when it has.
func (e Edit) Overfull(plan *Plan) string {
	type list struct {
		group *Group
		outer int
	}
	each, all := map[list]int{}, map[*Group]int{} // rows that come, less those that go
	for _, c := range e.Changes {
		g, n := c.Ref.Group, 0
		switch c.Kind {
		case AddRow:
			n = 1
		case RemoveRow:
			n = -1
		}
		in := list{group: g}
		if g.Nested() {
			in.outer = c.Ref.Place.Outer
		}
		each[in] += n
		all[g] += n
	}
	for in, n := range each {
		if there := in.group.Len(plan, Place{Outer: in.outer}); n > 0 && there+n > in.group.Most() {
			return fmt.Sprintf("a plan takes at most %d rows of %s, and there are %d: remove some first", in.group.Most(), in.group.Title, there)
		}
	}
	for g, n := range all {
		if n > 0 && g.Nested() && g.lenInAll(plan)+n > g.MostInAll() {
			return fmt.Sprintf("a plan takes at most %d rows of %s in all: remove some first", g.MostInAll(), g.Title)
		}
	}
	return ""
}

// lenInAll counts the rows of all lists of a nested group.
func (g *Group) lenInAll(plan *Plan) (n int) {
	for i := range g.Parent.Len(plan, Place{}) {
		n += g.Len(plan, Place{Outer: i})
	}
	return n
}
