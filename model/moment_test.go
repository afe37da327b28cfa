package model_test

import (
	"testing"

	"pgregory.net/rapid"

	"borewalk/model"
)

func TestMomentsAreReadAndWritten(t *testing.T) {
	for text, want := range map[string]string{
		"2027-03-01 06:00": "2027-03-01 06:00", "2027-03-01T06:05": "2027-03-01 06:05", "2027-03-01": "2027-03-01 00:00",
		"2028-02-29 23:59": "2028-02-29 23:59",
		"2027-02-29":       "", "2027-3-1 06:00": "", "1 March": "", "2027-03-01 6": "", "2027-03-01 24:00": "", "": "",
	} {
		m, ok := model.ParseMoment(text)
		if ok != (want != "") || (ok && m.String() != want) {
			t.Errorf("%q is read as %s, %v", text, m, ok)
		}
	}
}

// TestDaysRunOverTheEndOfAMonth, by the calendar: 2028 has a 29 February, 2027 has none.
func TestDaysRunOverTheEndOfAMonth(t *testing.T) {
	for _, c := range []struct {
		from    string
		seconds float64
		want    string
	}{
		{"2027-02-28 18:00", 6 * 3600, "2027-03-01 00:00"},
		{"2028-02-28 18:00", 6 * 3600, "2028-02-29 00:00"},
		{"2027-12-31 23:00", 2 * 3600, "2028-01-01 01:00"},
		{"2027-04-30 12:00", 86400 + 29, "2027-05-01 12:00"},
		{"2027-05-01 00:00", -60, "2027-04-30 23:59"},
	} {
		from, _ := model.ParseMoment(c.from)
		if got := from.After(c.seconds).String(); got != c.want {
			t.Errorf("%s and %g s: %s, expected %s", c.from, c.seconds, got, c.want)
		}
	}
}

// TestMomentsReadBack: what is written is read as the same, however far it lies.
func TestMomentsReadBack(t *testing.T) {
	begins, _ := model.ParseMoment("2027-03-01")
	rapid.Check(t, func(t *rapid.T) {
		m := begins.After(rapid.Float64Range(-1e30, 1e30).Draw(t, "seconds"))
		if back, ok := model.ParseMoment(m.String()); !ok || back != m {
			t.Fatalf("%d is written %s and read as %d", m, m, back)
		}
	})
}
