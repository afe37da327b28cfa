package process

import (
	"os"
	"os/exec"
	"runtime"
	"testing"
)

func TestAProcessIsToldFromOthers(t *testing.T) {
	if runtime.GOOS != "linux" && runtime.GOOS != "darwin" && runtime.GOOS != "windows" {
		t.Skip("nothing is known of processes here")
	}
	own := Own()
	ended := exec.Command(os.Args[0], "-test.run=^$")
	if err := ended.Run(); err != nil {
		t.Fatal(err)
	}
	elsewhere, reused, gone := own, own, own
	elsewhere.Host += "-other"
	reused.Born = "at another time"
	gone.Pid = ended.Process.Pid
	tests := []struct {
		name       string
		id         ID
		runs, here bool
		left       bool // by the tag
	}{
		{"this one", own, true, true, false},
		{"the same number on another host", elsewhere, false, false, false},
		{"the same number at another time", reused, false, true, false},
		{"one that has ended", gone, false, true, true},
		{"none", ID{Host: own.Host}, false, true, false},
	}
	for _, test := range tests {
		if test.id.Runs() != test.runs || test.id.Here() != test.here || Left(test.id.Tag()) != test.left {
			t.Errorf("%s: runs %v, here %v, left %v", test.name, test.id.Runs(), test.id.Here(), Left(test.id.Tag()))
		}
	}
	for _, tag := range []string{"", "x", "00000000-1", own.Tag()[:8], own.Tag()[:9] + "-5"} {
		if Left(tag) {
			t.Errorf("%q is taken for the tag of a process that has ended", tag)
		}
	}
}
