package planlock

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"borewalk/model/process"
)

var owners = rapid.Custom(func(t *rapid.T) Owner {
	text := func(what string) string { return rapid.StringN(0, 60, -1).Draw(t, what) }
	return Owner{
		Token: rapid.StringN(1, 60, -1).Draw(t, "token"), ID: process.ID{Pid: rapid.IntRange(1, 1<<30).Draw(t, "process"), Began: text("began"),
			Host: text("host"), Machine: text("machine"), Boot: text("boot"), Space: text("space")}, User: text("user"), Name: text("name"),
		Since: time.Unix(rapid.Int64Range(0, 1<<33).Draw(t, "since"), 0).UTC(),
	}
})

// A lock says who has it, whatever he is called; a part of it says nothing.
func TestALockIsReadAsItWasWrittenAndNoPartOfIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := owners.Draw(t, "owner")
		text := o.text()
		if got, err := parse(text); err != nil || got != o {
			t.Fatalf("%+v, %v, want %+v", got, err, o)
		}
		n := rapid.IntRange(0, len(text)-1).Draw(t, "n")
		if got, err := parse(text[:n]); err == nil {
			t.Fatalf("%d bytes of %d are read as %+v", n, len(text), got)
		}
	})
}

// What is read can be written and read again.
func FuzzRead(f *testing.F) {
	o := Owner{Token: "t", ID: process.ID{Pid: 7, Host: "rig \"1\""}, Since: time.Unix(1e9, 0)}
	f.Add(o.text())
	f.Add([]byte("borewalk lock 1\nend\n"))
	f.Add([]byte("borewalk lock 2\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		o, err := parse(text)
		if err != nil {
			return
		}
		again, err := parse(o.text())
		if err != nil || again.ID != o.ID || !again.Since.Equal(o.Since) && o.Since.Year() > 0 && o.Since.Year() < 9999 {
			t.Errorf("%+v, then %+v, %v", o, again, err)
		}
	})
}
