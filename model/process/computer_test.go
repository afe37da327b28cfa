package process

import "testing"

// rig is a computer on which the processes named run, each begun at a mark of its own.
func rig(running map[int]string) *Computer {
	return &Computer{Host: "rig", Machine: "m1", Boot: "b1", Space: "s1", Look: func(n int) (string, bool) {
		began, ok := running[n]
		return began, ok
	}}
}

// Whether a process that left something behind still runs, for each that can be told of it: its computer, the run of it, the container, the
// number and the beginning of the process.
func TestWhatIsKnownOfTheOther(t *testing.T) {
	running := map[int]string{7: "t7", 8: ""}
	tests := []struct {
		name  string
		other func(*ID)
		here  func(*Computer)
		want  Life
		may   bool // it runs for all that is known, and may be another process
	}{
		{"runs", func(o *ID) {}, nil, Running, false},
		{"ended", func(o *ID) { o.Pid = 9 }, nil, Gone, false},
		{"the number is another's by now", func(o *ID) { o.Began = "t1" }, nil, Gone, false},
		{"its beginning was not known there", func(o *ID) { o.Began = "" }, nil, Running, true},
		{"its beginning is not known here", func(o *ID) { o.Pid = 8 }, nil, Running, true},
		{"the computer was started anew", func(o *ID) { o.Boot = "b0" }, nil, Gone, false},
		{"started anew, with the host renamed", func(o *ID) { o.Boot, o.Host = "b0", "old" }, nil, Gone, false},
		{"another computer", func(o *ID) { o.Host, o.Machine, o.Boot = "shore", "m2", "b2" }, nil, Elsewhere, false},
		{"another computer of the same name", func(o *ID) { o.Machine, o.Boot = "m2", "b2" }, nil, Elsewhere, false},
		{"the same name and no marks", func(o *ID) { o.Machine, o.Boot = "", "" }, nil, Elsewhere, false},
		{"the same name and no marks on either", func(o *ID) { o.Machine, o.Boot = "", "" }, func(c *Computer) { c.Machine, c.Boot = "", "" }, Elsewhere, false},
		{"the host renamed meanwhile", func(o *ID) { o.Host = "old" }, nil, Running, false},
		{"the run alone is known", func(o *ID) { o.Machine = "" }, nil, Running, false},
		{"the run alone is known, ended", func(o *ID) { o.Machine, o.Pid = "", 9 }, nil, Gone, false},
		{"the run alone is known, another", func(o *ID) { o.Machine, o.Boot = "", "b0" }, nil, Elsewhere, false},
		{"the machine alone is known", func(o *ID) { o.Boot = "" }, func(c *Computer) { c.Boot = "" }, Running, false},
		{"the machine alone is known, ended", func(o *ID) { o.Boot, o.Pid = "", 9 }, func(c *Computer) { c.Boot = "" }, Gone, false},
		{"another container", func(o *ID) { o.Space = "s2" }, nil, Elsewhere, false},
		{"another container, ended for all one sees", func(o *ID) { o.Space, o.Pid = "s2", 9 }, nil, Elsewhere, false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			id := rig(running).ID(7)
			test.other(&id)
			here := rig(running)
			if test.here != nil {
				test.here(here)
			}
			if got := here.Life(id); got != test.want {
				t.Errorf("life %d, want %d", got, test.want)
			}
			if got, want := here.Runs(id), test.want == Running && !test.may; got != want {
				t.Errorf("known to run: %v, want %v", got, want)
			}
		})
	}
}
