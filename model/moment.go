package model

import (
	"math"
	"time"
)

// Moment is a point of time in seconds from 1 January 1970, on the clock that the plan's people go by: the plan names no zone.
type Moment int64

// ParseMoment reads a day and an hour written as 2027-03-01 06:00, or a day alone, which means its beginning. It reports false for
// anything else.
func ParseMoment(text string) (Moment, bool) {
	for _, layout := range []string{"2006-01-02 15:04", "2006-01-02T15:04", time.DateOnly} {
		if t, err := time.Parse(layout, text); err == nil {
			return Moment(t.Unix()), true
		}
	}
	return 0, false
}

// farthest is as far from the beginning as a moment is counted, a thousand years: beyond it no year can be written.
const farthest = 1000 * 365 * secondsADay

// After returns the moment so many seconds later, to the minute.
func (m Moment) After(seconds float64) Moment {
	const minute = 60
	return m + Moment(math.Round(max(-farthest, min(seconds, farthest))/minute)*minute)
}

// Day returns the day of the moment.
func (m Moment) Day() Day { return Day(math.Floor(float64(m) / secondsADay)) }

// String returns the moment as it is written in a plan.
func (m Moment) String() string { return m.write("2006-01-02 15:04") }

// Short returns the moment without its year.
func (m Moment) Short() string { return m.write("01-02 15:04") }

func (m Moment) write(layout string) string { return time.Unix(int64(m), 0).UTC().Format(layout) }
