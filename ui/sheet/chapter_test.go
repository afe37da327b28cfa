package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"borewalk/ui/sheet"
)

// chapterHeadings are the headings of a chapter, in the order that crews expect.
func chapterHeadings() []string {
	return []string{"Objective and depths", "Hazards", "Pressures and mud", "Directional plan", "Drill string and drilling", "Riser and displacement", "Logging and sampling", "Casing", "Cement", "Tests",
		"Operations and time", "Stocks and drawings", "Approvals and revisions"}
}

func TestChapters(t *testing.T) {
	for _, c := range []struct {
		demo    string
		section int
	}{{"ottermast-2", 2}, {"saltlantern-1", 1}} {
		plan := demo(t, c.demo)
		o := options(plan)
		o.Section, o.Paper = c.section, sheet.Chapter
		golden(t, fmt.Sprintf("chapter_%s_%d.txt", c.demo, c.section+1), write(t, plan, o))
	}
}

// TestChapterHeadingsStay: every heading stands once and in order in the chapter of every section, with a dash and the reason where there
// is nothing under it.
func TestChapterHeadingsStay(t *testing.T) {
	for _, name := range []string{"ottermast-2", "saltlantern-1"} {
		plan := demo(t, name)
		o := options(plan)
		o.Paper = sheet.Chapter
		for i := range plan.Sections {
			o.Section = i
			lines := strings.Split(write(t, plan, o), "\n")
			at := 0
			for n, heading := range chapterHeadings() {
				whole, begun := fmt.Sprintf("%d %s", n+1, heading), fmt.Sprintf("%d.1 %s: ", n+1, heading)
				for at < len(lines) && lines[at] != whole && !strings.HasPrefix(lines[at], begun) {
					at++
				}
				if at == len(lines) {
					t.Fatalf("%s, section %d: no heading %q in its place", name, i+1, whole)
				}
				if lines[at] == whole && (!strings.HasPrefix(lines[at+2], "-: ") || len(lines[at+2]) < len("-: why")) {
					t.Errorf("%s, section %d: %q is empty without a reason: %q", name, i+1, whole, lines[at+2])
				}
			}
		}
	}
}
