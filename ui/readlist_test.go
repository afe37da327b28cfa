package ui_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"borewalk/ui"
)

// TestMeasuredJointsAreReadAsOneEdit: a file takes the place of the section's joints, the figures follow, one undo brings
// back what was there.
func TestMeasuredJointsAreReadAsOneEdit(t *testing.T) {
	var sheet strings.Builder
	for k := range 150 {
		sheet.WriteString(fmt.Sprintf("%d;12,%02d", k+1, 5+k%9))
		if k == 2 {
			sheet.WriteString(";yes")
		}
		sheet.WriteString("\n")
	}
	path := filepath.Join(t.TempDir(), "joints.csv")
	if err := os.WriteFile(path, []byte(sheet.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	p := screenOf(t, "ottermast-2", 140, 40, ui.Options{}, "]]", "i")
	wants(t, p, "i: measured joints are read on the casing page, a shoe test on the control page")
	press(p, "page casing", "v")
	wants(t, p, "Joints run", "Pups used")
	press(p, "v", "v", "i")
	wants(t, p, "Measured joints from a file", "A length without a unit is in m.")
	press(p, path+".none", "enter")
	wants(t, p, "there is no such file")
	press(p, "ctrl+u", path, "enter")
	wants(t, p, "section 3: 150 joints from joints.csv", "not saved")
	downTo(t, p, "+ 1 12.05 m")
	press(p, "v", "home")
	wants(t, p, "rejected")
	press(p, "v", "v", "i")
	wants(t, p, "the place of the 150 that are there")
	press(p, "esc", "u")
	wants(t, p, "undid section 3: 150 joints")
	lacks(t, p, "not saved")
	press(p, "r")
	wants(t, p, "redid section 3: 150 joints")
	downTo(t, p, "+ 150 12.")
}

// TestAShoeTestIsReadAsOneEdit: the readings of a file give the test that counts, and one undo gives the planned one back.
func TestAShoeTestIsReadAsOneEdit(t *testing.T) {
	sheet := "volume (L), pressure (bar)\n0, 0\n40, 3\n80, 6\n120, 9\n160, 12\n200, 15\n240, 18\n280, 19.4\n320, 20.1\n360, 20.4\n"
	path := filepath.Join(t.TempDir(), "test.csv")
	if err := os.WriteFile(path, []byte(sheet), 0o644); err != nil {
		t.Fatal(err)
	}
	p := screenOf(t, "ottermast-2", 140, 40, ui.Options{}, "]]", "page control", "i")
	wants(t, p, "Shoe test from a file", "are in m3 and bar")
	press(p, path, "enter")
	wants(t, p, "section 3: 10 readings from test.csv: up to 20.4 bar", "By points", "18.0 bar", "measured")
	press(p, "u")
	wants(t, p, "undid section 3: 10 readings", "planned")
	lacks(t, p, "By points")
}

// TestAShoeTestWithTimeAndShutIn: a recorder's file has the time too and goes on after the pump has stopped; what is left out of the
// points is said where it is seen in the smallest window.
func TestAShoeTestWithTimeAndShutIn(t *testing.T) {
	sheet := "time,volume (L),pressure (bar)\n10:00,0,0\n10:01,40,3\n10:02,80,6\n10:03,120,9\n10:04,160,12\n10:05,200,15\n10:06,240,18\n10:07,280,19.4\n10:08,320,20.1\n10:09,320,17\n10:19,320,15.5\n"
	path := filepath.Join(t.TempDir(), "recorder.csv")
	if err := os.WriteFile(path, []byte(sheet), 0o644); err != nil {
		t.Fatal(err)
	}
	p := screenOf(t, "ottermast-2", 80, 24, ui.Options{}, "]]", "page control", "i", path, "enter")
	wants(t, p, "9 readings; 2 after pump stop left out: enter shut-in pressures by hand\n", "+ 0.32 m3 20.1 bar")
	press(p, "u")
	wants(t, p, "undid section 3: 9 readings from recorder.csv")
	if err := os.WriteFile(path, []byte("10:00,0,0\n10:01,40,3\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	press(p, "i", path, "enter")
	wants(t, p, "3 columns without headings")
}
