package model

import (
	"math"
	"time"
)

// Day is a day of the calendar, counted from 1 January 1970.
type Day int

// ParseDay reads a day written as 2026-11-29, and reports false for anything else.
func ParseDay(text string) (Day, bool) {
	t, err := time.Parse(time.DateOnly, text)
	return Day(math.Floor(float64(t.Unix()) / secondsADay)), err == nil
}

// String returns the day as it is written in a plan.
func (d Day) String() string { return time.Unix(int64(d)*secondsADay, 0).UTC().Format(time.DateOnly) }

const secondsADay = 24 * 60 * 60
