package seats

import (
	"strings"
	"testing"
)

// An invented prognosis: a normally pressured overburden, a ramp from 1600 m, shales that want more than pore pressure from 1900
// to 3200 m; sea from 25 m, the seabed at 368 m, judged from 60 m below it.
func invented(t testing.TB) (Window, Margins) {
	pore := through(t, 368, 955, 450, 970, 650, 987, 900, 999, 1250, 1008, 1600, 1014, 1900, 1070, 2250, 1190, 2600, 1300, 2900, 1370, 3200, 1420, 3500, 1440)
	fracture := table(t, 368, 1000, 450, 1100, 650, 1270, 900, 1400, 1250, 1520, 1600, 1610, 1900, 1690, 2250, 1770, 2600, 1840, 2900, 1890, 3200, 1930, 3500, 1960)
	return Window{Pore: pore, Fracture: fracture.At, Stability: through(t, 1900, 1150, 2250, 1260, 2600, 1360, 2900, 1410, 3200, 1440),
		Riserless: func(tvd float64) (float64, bool) { return 1025 * (tvd - 25) / tvd, true },
		Depths:    fracture.AppendBreaks(nil), Top: 428, Bottom: 3500}, Margins{Trip: 20, Fracture: 60, Kick: 60, Riserless: -5}
}

// TestTheInventedWell: seats found apart from this package, by walking the window in steps of 1 cm.
func TestTheInventedWell(t *testing.T) {
	w, m := invented(t)
	up := must(t)(BottomUp(w, m))
	expect(t, "up", up, 0.011, 428, 656.89, 1720.28, 3500)
	expect(t, "down", must(t)(TopDown(w, m, 428)), 0.02, 428, 1597.80, 3121.98, 3500)
	said := ""
	for _, h := range up.Holes {
		said += h.Stop.Reason.String() + ": " + h.Stop.Needs.By.String() + ", " + h.Stop.Stands.By.String() + "\n"
	}
	if want := "top: nothing, nothing\nwindow closed: pore pressure, kick\nwindow closed: pore pressure, kick\n"; said != want {
		t.Errorf("%s", strings.TrimSpace(said))
	}
	// The last hole: pore pressure at 3500 m, 1440 + 20; fracture pressure at the shoe 1642.07 - 60 - 60 × 3500 / 1720.28.
	if n, s := up.Holes[2].Stop.Needs, up.Holes[2].Stop.Stands; n != (Bound{ByPore, 3500, 1440, 1460}) || !close(s.Value, 1642.07, 0.01) || !close(s.Mud, 1460, 1e-6) {
		t.Errorf("%+v, %+v", n, s)
	}
}

// BenchmarkBothWays proposes seats on a prognosis of 12 rows, up and down. The budget is 1 ms.
func BenchmarkBothWays(b *testing.B) {
	w, m := invented(b)
	b.ReportAllocs()
	for b.Loop() {
		up, err1 := BottomUp(w, m)
		down, err2 := TopDown(w, m, w.Top)
		if err1 != nil || err2 != nil || len(up.Holes) != 3 || len(down.Holes) != 3 {
			b.Fatal(up, down, err1, err2)
		}
	}
}
