package planlock

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"borewalk/model/process"
)

var noon = time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)

// rig is a computer on which the processes named run, each begun at a mark of its own.
func rig(pid int, running map[int]string) *Computer {
	return &Computer{
		Computer: process.Computer{Host: "rig", Machine: "m1", Boot: "b1", Space: "s1", Look: func(n int) (string, bool) {
			began, ok := running[n]
			return began, ok
		}},
		User: "merrow", Process: pid,
		Now: func() time.Time { return noon },
	}
}

// inFolder returns the path of a plan in a folder of its own.
func inFolder(t testing.TB) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "plan.toml")
	if err := os.WriteFile(path, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// takes makes a lock that must be had.
func takes(t testing.TB, c *Computer, plan string) *Lock {
	t.Helper()
	l, err := c.Take(plan, "")
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func files(t *testing.T, folder string) string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return strings.Join(names, " ")
}

// A clock that is wrong is said, and decides nothing: what is known of the process is the same at any age.
func TestClocksDecideNothing(t *testing.T) {
	tests := []struct {
		age   time.Duration
		clock bool
	}{
		{0, false}, {time.Hour, false}, {-time.Minute, false}, {-time.Hour, true}, {-50 * 365 * 24 * time.Hour, true},
		{300 * 24 * time.Hour, false}, {400 * 24 * time.Hour, true},
	}
	for _, test := range tests {
		for pid, want := range map[int]process.Life{7: process.Running, 9: process.Gone} {
			here := rig(4, map[int]string{7: "t7"})
			o := rig(pid, map[int]string{pid: "t7"}).owner("", "token")
			o.Since = noon.Add(-test.age)
			h := here.judge(o, true, noon)
			if h.Age != test.age || h.Clock != test.clock || h.Life != want {
				t.Errorf("age %v: age %v, clock differs %v, life %d, want %d", test.age, h.Age, h.Clock, h.Life, want)
			}
		}
	}
}

func TestOneHasTheLockUntilHeLeaves(t *testing.T) {
	plan, running := inFolder(t), map[int]string{1: "a", 2: "b"}
	one, two := rig(1, running), rig(2, running)
	mine, err := one.Take(plan, "AM")
	if err != nil || mine.After != nil {
		t.Fatal(mine, err)
	}
	_, err = two.Take(plan, "")
	var held *Held
	if !errors.As(err, &held) || held.Life != process.Running || held.Owner.Name != "AM" || held.Owner.User != "merrow" || held.Owner.Host != "rig" || !held.Owner.Since.Equal(noon) {
		t.Fatalf("%+v", err)
	}
	if err := mine.Check(one); err != nil {
		t.Error(err)
	}
	mine.Release(one)
	if got := files(t, filepath.Dir(plan)); got != "plan.toml" {
		t.Errorf("left behind: %s", got)
	}
	takes(t, two, plan)
}

// Of many who open a plan at the same moment one has the lock, and each of the others reads that another has it.
func TestOfManyAtOnceOneHasTheLock(t *testing.T) {
	const many = 12
	plan, running := inFolder(t), map[int]string{}
	for n := range many {
		running[n+1] = "t"
	}
	results := make(chan error, many)
	for n := range many {
		go func() {
			_, err := rig(n+1, running).Take(plan, "")
			results <- err
		}()
	}
	had := 0
	for range many {
		err := <-results
		var held *Held
		switch {
		case err == nil:
			had++
		case !errors.As(err, &held):
			t.Error(err)
		}
	}
	if had != 1 {
		t.Errorf("%d have the lock", had)
	}
}

func TestTheLockOfTheDeadIsTakenOver(t *testing.T) {
	plan, running := inFolder(t), map[int]string{1: "a", 2: "b"}
	one, two := rig(1, running), rig(2, running)
	theirs := takes(t, one, plan)
	delete(running, 1)
	mine := takes(t, two, plan)
	if mine.After == nil || mine.After.Pid != 1 {
		t.Errorf("after %+v", mine.After)
	}
	theirs.Release(one) // one who was only thought dead must not take away what is another's by now
	if err := mine.Check(two); err != nil {
		t.Error(err)
	}
	if got := files(t, filepath.Dir(plan)); got != ".plan.toml.borewalk-lock plan.toml" {
		t.Errorf("the folder holds %s", got)
	}
}

func TestATakeOverIsNoticed(t *testing.T) {
	plan, running := inFolder(t), map[int]string{1: "a", 2: "b"}
	one, two := rig(1, running), rig(2, running)
	mine := takes(t, one, plan)
	if _, err := two.TakeOver(plan, "BT"); err != nil {
		t.Fatal(err)
	}
	var held *Held
	if err := mine.Check(one); !errors.As(err, &held) || held.Owner.Name != "BT" {
		t.Errorf("Check = %v", err)
	}
}

func TestALockThatWasRemovedIsMadeAnew(t *testing.T) {
	plan, running := inFolder(t), map[int]string{1: "a", 2: "b"}
	one, two := rig(1, running), rig(2, running)
	mine := takes(t, one, plan)
	if err := os.Remove(mine.path); err != nil {
		t.Fatal(err)
	}
	if err := mine.Check(one); !errors.Is(err, ErrNone) {
		t.Errorf("Check = %v, want ErrNone", err)
	}
	if err := errors.Join(mine.Mend(), mine.Check(one)); err != nil {
		t.Error(err)
	}
	if err := os.Remove(mine.path); err != nil {
		t.Fatal(err)
	}
	takes(t, two, plan)
	var held *Held
	if err := errors.Join(mine.Mend(), mine.Check(one)); !errors.As(err, &held) {
		t.Errorf("what another has made since was mended away: %v", err)
	}
}

// What is not whole is nobody's: it is not taken over by itself, not read as another's, and given the time of its file.
func TestALockThatIsNotWholeNamesNobody(t *testing.T) {
	plan, running := inFolder(t), map[int]string{1: "a", 2: "b"}
	one, two := rig(1, running), rig(2, running)
	mine := takes(t, one, plan)
	whole, err := os.ReadFile(mine.path)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int{0, 5, len(whole) / 2, len(whole) - 1} {
		if err := os.WriteFile(mine.path, whole[:n], 0o644); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(mine.path, noon, noon.Add(-time.Hour)); err != nil {
			t.Fatal(err)
		}
		_, err := two.Take(plan, "")
		var held *Held
		if !errors.As(err, &held) || !held.Nameless || held.Age != time.Hour || held.Owner.Host != "" {
			t.Errorf("%d bytes of a lock: %+v", n, err)
		}
	}
	if _, err := two.TakeOver(plan, ""); err != nil {
		t.Error(err)
	}
}

// A reader gives one who is just writing his lock the time to end.
func TestALockThatIsBeingWrittenIsWaitedFor(t *testing.T) {
	plan, running := inFolder(t), map[int]string{1: "a", 2: "b"}
	path, err := Path(plan)
	if err != nil {
		t.Fatal(err)
	}
	o := rig(1, running).owner("AM", "token")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	go func() {
		_, _ = f.Write(o.text()) // whenever it comes: before the first look or between two
		f.Close()
	}()
	_, err = rig(2, running).Take(plan, "")
	var held *Held
	if !errors.As(err, &held) || held.Life != process.Running || held.Owner.Name != "AM" {
		t.Errorf("%+v", err)
	}
}

func TestWhereNoLockCanBeMade(t *testing.T) {
	running := map[int]string{1: "a"}
	tests := []struct {
		name, want string
		plan       func(t *testing.T) string
	}{
		{"no folder", "no such file", func(t *testing.T) string { return filepath.Join(t.TempDir(), "none", "plan.toml") }},
		{"no folder but a file", "not a directory", func(t *testing.T) string { return filepath.Join(inFolder(t), "plan.toml") }},
		{"something else in the way", "is in the way", func(t *testing.T) string {
			plan := inFolder(t)
			path, _ := Path(plan)
			if err := os.MkdirAll(filepath.Join(path, "x"), 0o755); err != nil {
				t.Fatal(err)
			}
			return plan
		}},
		{"a link to nothing", "link", func(t *testing.T) string {
			link := filepath.Join(t.TempDir(), "link.toml")
			if err := os.Symlink("none", link); err != nil {
				t.Skip("no links here: ", err)
			}
			return link
		}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			for what, take := range map[string]func(string, string) (*Lock, error){"Take": rig(1, running).Take, "TakeOver": rig(1, running).TakeOver} {
				l, err := take(test.plan(t), "")
				var held *Held
				if err == nil || l != nil || errors.As(err, &held) {
					t.Fatalf("%s = %v, %v", what, l, err)
				}
				if what == "Take" && !strings.Contains(err.Error(), test.want) {
					t.Errorf("%v, want %q", err, test.want)
				}
			}
		})
	}
}

// Two names of one file are one plan.
func TestLinksHaveTheLockOfTheirFile(t *testing.T) {
	plan, running := inFolder(t), map[int]string{1: "a", 2: "b"}
	other := t.TempDir()
	link, folder := filepath.Join(other, "link.toml"), filepath.Join(other, "folder")
	if err := errors.Join(os.Symlink(plan, link), os.Symlink(filepath.Dir(plan), folder)); err != nil {
		t.Skip("no links here: ", err)
	}
	one, two := rig(1, running), rig(2, running)
	mine := takes(t, one, link)
	for _, name := range []string{plan, filepath.Join(folder, "plan.toml")} {
		var held *Held
		if _, err := two.Take(name, ""); !errors.As(err, &held) {
			t.Errorf("%s: %v", name, err)
		}
		if !mine.On(name) {
			t.Errorf("%s is not the plan that is locked", name)
		}
	}
	fresh := filepath.Join(folder, "fresh.toml") // not there yet
	takes(t, one, fresh)
	var held *Held
	if _, err := two.Take(filepath.Join(filepath.Dir(plan), "fresh.toml"), ""); !errors.As(err, &held) {
		t.Errorf("a plan that is still to be written: %v", err)
	}
}

// The computer that the test runs on: this process runs, and one that ended does not.
func TestThisComputer(t *testing.T) {
	c := This()
	if c.Host == "" || c.Process != os.Getpid() {
		t.Errorf("%+v", c)
	}
	began, running := c.Look(c.Process)
	if !running {
		t.Error("this process does not run")
	}
	if again, _ := c.Look(c.Process); again != began {
		t.Errorf("began %q and %q", began, again)
	}
	plan := inFolder(t)
	takes(t, c, plan)
	var held *Held
	if _, err := This().Take(plan, ""); !errors.As(err, &held) || held.Life == process.Gone {
		t.Errorf("%+v", err)
	}
}
