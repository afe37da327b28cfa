package process

import (
	"os"
	"os/exec"
	"runtime"
	"testing"
)

// The computer that the test runs on: what is known there of this process, of one that ended, and of others that are like them.
func TestAProcessIsToldFromOthers(t *testing.T) {
	if runtime.GOOS != "linux" && runtime.GOOS != "darwin" && runtime.GOOS != "windows" {
		t.Skip("nothing is known of processes here")
	}
	own := Own()
	ended := exec.Command(os.Args[0], "-test.run=^$")
	if err := ended.Run(); err != nil {
		t.Fatal(err)
	}
	elsewhere, renamed, reused, gone := own, own, own, own
	elsewhere.Machine, elsewhere.Boot = "other", "other"
	renamed.Host += "-other"
	reused.Began = "at another time"
	gone.Pid = ended.Process.Pid
	tests := []struct {
		name string
		id   ID
		life Life
		left bool // by the tag
	}{
		{"this one", own, Running, false},
		{"the same number on another computer", elsewhere, Elsewhere, false},
		{"the computer has another name by now", renamed, Running, false},
		{"the same number at another time", reused, Gone, false},
		{"one that has ended", gone, Gone, true},
		{"none", ID{Host: own.Host}, Elsewhere, false},
	}
	for _, test := range tests {
		if test.id.Life() != test.life || test.id.Runs() != (test.life == Running) || Left(test.id.Tag()) != test.left {
			t.Errorf("%s: life %d, runs %v, left %v", test.name, test.id.Life(), test.id.Runs(), Left(test.id.Tag()))
		}
	}
	for _, tag := range []string{"", "x", "00000000-1", own.Tag()[:8], own.Tag()[:9] + "-5", gone.Tag() + "x"} {
		if Left(tag) {
			t.Errorf("%q is taken for the tag of a process that has ended", tag)
		}
	}
}

// A tag parts what the numbers of processes do not: computers of one name, and containers.
func TestTagsPartComputers(t *testing.T) {
	tags := map[string]string{}
	for name, id := range map[string]ID{
		"one": {Pid: 7, Host: "rig", Machine: "m"}, "its machine": {Pid: 7, Host: "rig", Machine: "n"}, "its container": {Pid: 7, Host: "rig", Machine: "m", Space: "s"},
		"its name": {Pid: 7, Host: "other", Machine: "m"}, "its number": {Pid: 8, Host: "rig", Machine: "m"},
	} {
		if other := tags[id.Tag()]; other != "" {
			t.Errorf("%s and %s have one tag", name, other)
		}
		tags[id.Tag()] = name
	}
}
