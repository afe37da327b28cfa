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
	wants(t, p, "i: measured joints are read on the casing page")
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
