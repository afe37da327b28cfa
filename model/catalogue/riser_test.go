package catalogue

import "testing"

// All rows, in in, psi and ft; 0 is not known. Seen rows: Oil & Gas Journal,
// 1997 (lines), and a university textbook (tie-back riser, 1.375 in wall). The
// others are common practice, from memory.
func TestRisersAndLines(t *testing.T) {
	type row struct {
		item                    string
		od, id, pressure, joint float64
		seen                    string
	}
	for _, c := range []struct {
		what string
		got  []Line
		want []row
	}{
		{"risers", Risers(), []row{
			{"tie-back riser", 20, 20 - 2*1.375, 0, 50, Seen},
			{"marine riser", 21, 21 - 2*0.625, 0, 75, Memory},
			{"marine riser", 21, 21 - 2*0.75, 0, 75, Memory},
			{"marine riser", 21, 21 - 2*0.875, 0, 75, Memory},
			{"marine riser", 21, 21 - 2*1.0, 0, 75, Memory},
			{"marine riser", 18.625, 17.5, 0, 50, Memory},
		}},
		{"lines", Lines(), []row{
			{"choke line", 5, 3, 15000, 0, Seen},
			{"kill line", 5, 3, 15000, 0, Seen},
			{"booster line", 5, 4, 5000, 0, Seen},
			{"hydraulic conduit", 1.75, 1, 5000, 0, Seen},
			{"choke and kill line", 0, 3, 10000, 0, Memory},
			{"choke and kill line", 0, 4, 15000, 0, Memory},
			{"choke and kill line", 6.5, 4.5, 15000, 0, Memory},
			{"booster line", 0, 4, 7500, 0, Memory},
			{"booster line", 6, 5, 7500, 0, Memory},
		}},
		{"stack bores", StackBores(), []row{
			{"BOP stack bore", 0, 18.75, 0, 0, Memory},
		}},
	} {
		if len(c.got) != len(c.want) {
			t.Errorf("%s: %d, want %d", c.what, len(c.got), len(c.want))
			continue
		}
		for i, want := range c.want {
			l := c.got[i]
			if l.Item != want.item || l.Seen != want.seen ||
				!near(l.OD/inch, want.od, 0) || !near(l.ID/inch, want.id, 0) ||
				!near(l.WorkingPressure/psi, want.pressure, 0) || !near(l.JointLength/foot, want.joint, 0) {
				t.Errorf("%s, row %d: %+v, want %+v", c.what, i, l, want)
			}
		}
	}
}

// 21 in riser of 19-1/2 in bore: 0.3694 bbl/ft, common practice, from memory.
func TestUsualRiserCapacity(t *testing.T) {
	for _, l := range Risers() {
		if l.Use != "usual planning size" {
			continue
		}
		if got, want := capacityOf(l.ID), 0.3694; !near(got, want, 0.00005) {
			t.Errorf("capacity = %.4f bbl/ft, want %.4f", got, want)
		}
		return
	}
	t.Error("no riser is marked as the usual planning size")
}
