package model

import (
	"cmp"
	"fmt"
	"strings"
	"unicode/utf8"
)

// Bounds of a plan. No well comes near them; they keep one that was made by mistake or in malice from taking a machine's memory, and
// a keystroke from taking longer than a person waits. A plan within them opens, is worked out, and is saved.
const (
	MaxText = 4000   // characters in a text: two pages
	MaxRows = 20_000 // rows of all lists together, but for the log
)

// usualRows is how many rows a list may have that no measuring fills.
const usualRows = 200

// mostRows are the lists that may have more or fewer. What is worked out grows with the sections times what is measured.
var mostRows = map[string]int{
	"section":              30,      // hole sections, contingencies and riserless ones too: a well has three to ten
	"trajectory.survey":    5000,    // a station every 3 m down to the deepest hole; a station a stand makes 500
	"prognosis.row":        2000,    // a row every 7 m
	"formation":            1000,    //
	"section.caliper":      2000,    // the mean over a metre, in the longest of sections
	"section.joint":        2000,    // twice the longest string of casing
	"section.test_point":   1000,    // twice what the reader of a recorder's file takes
	"section.drag_reading": 1000,    // more than a reading a stand
	"section.step":         1000,    //
	"section.done":         1000,    //
	"trial":                50,      // all of a section are worked out side by side
	"handover":             1000,    // two a day for more than a year
	"log":                  100_000, // what a file holds at most is less
}

// Most returns how many rows a list may have.
func (g *Group) Most() int { return cmp.Or(mostRows[g.Path()], usualRows) }

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
	more, all := map[list]int{}, 0
	for _, c := range e.Changes {
		g := c.Ref.Group
		in := list{g, 0}
		if g.Nested() {
			in.outer = c.Ref.Place.Outer
		}
		switch c.Kind {
		case AddRow:
			more[in]++
			all++
		case RemoveRow:
			more[in]--
			all--
		}
	}
	for in, n := range more {
		if there := in.group.Len(plan, Place{Outer: in.outer}); n > 0 && there+n > in.group.Most() {
			return fmt.Sprintf("a plan takes at most %d rows of %s, and there are %d: remove some first", in.group.Most(), in.group.Title, there)
		}
	}
	if all > 0 && rowsOf(plan)+all > MaxRows {
		return fmt.Sprintf("a plan takes at most %d rows in all: remove some first", MaxRows)
	}
	return ""
}

// rowsOf counts the rows of all lists but the log's.
func rowsOf(plan *Plan) (n int) {
	Walk(plan, func(g *Group, _ Place) bool {
		if g.List {
			n++
		}
		return true
	})
	return n
}
