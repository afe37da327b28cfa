package model

import (
	"testing"

	"pgregory.net/rapid"
)

// Days known otherwise: Julian day numbers less that of 1 January 1970, 2440588 (Meeus, Astronomical Algorithms, ch. 7, from memory).
func TestDaysOfTheCalendar(t *testing.T) {
	for text, want := range map[string]Day{"1970-01-01": 0, "2000-01-01": 2451545 - 2440588, "1957-10-04": 2436116 - 2440588, "2024-02-29": 19782} {
		if d, ok := ParseDay(text); !ok || d != want || d.String() != text {
			t.Errorf("%s: %d %v, %v; want %d", text, d, d, ok, want)
		}
	}
	for _, text := range []string{"", "29 Nov 2026", "2026-13-01", "2025-02-29", "2026-11-29T10:00", "26-11-29"} {
		if d, ok := ParseDay(text); ok {
			t.Errorf("%q is no day, and is read as %v", text, d)
		}
	}
}

func TestADayIsWrittenAsItIsRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Day(rapid.IntRange(-500000, 2000000).Draw(t, "day"))
		if back, ok := ParseDay(d.String()); !ok || back != d {
			t.Fatalf("%d: %v, %v", d, back, ok)
		}
	})
}
