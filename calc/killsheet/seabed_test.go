package killsheet

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewalk/calc/column"
)

// drawSeabed draws a seabed and a depth below it.
func drawSeabed(t *rapid.T) (Seabed, float64) {
	gap := rapid.Float64Range(0, 40).Draw(t, "air gap")
	s := Seabed{gap, gap + rapid.Float64Range(20, 3000).Draw(t, "water"), rapid.Float64Range(1000, 1050).Draw(t, "sea")}
	return s, s.Mudline + rapid.Float64Range(50, 5000).Draw(t, "below")
}

// TestTheSeabedByHand: 25 m of air, 500 m of sea of 1025, mud of 1200 in 1025 m of hole in all.
func TestTheSeabedByHand(t *testing.T) {
	s := Seabed{25, 525, 1025}
	near(t, "lost", must(s.Lost(1200))(t), 9.80665*(1200*525-1025*500), 1e-12)
	near(t, "left", must(s.Left(1200, 1e7, 1025))(t), 5025908.125+9.80665*1200*500-1e7, 1e-12)
	near(t, "density", must(s.DensityWithRiserMargin(1e7, 1025))(t), (1e7-5025908.125)/(9.80665*500), 1e-12)
}

// TestTheMarginHolds: mud with the riser margin has nothing left over the pore pressure when the riser is gone, and the margin is
// what it is above that pressure's own density.
func TestTheMarginHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, tvd := drawSeabed(t)
		pore := column.G * tvd * rapid.Float64Range(1030, 2000).Draw(t, "pore")
		mud := must(s.DensityWithRiserMargin(pore, tvd))(t)
		if !(mud > 0) {
			if column.G*s.Sea*(s.Mudline-s.AirGap) < pore {
				t.Errorf("%v kg/m³ though the sea does not hold it", mud)
			}
			return
		}
		if left := must(s.Left(mud, pore, tvd))(t); math.Abs(left) > 1e-9*pore {
			t.Errorf("%v Pa left", left)
		}
		near(t, "margin", must(s.RiserMargin(pore, tvd))(t), mud-pore/(column.G*tvd), 1e-9)
		near(t, "with the riser", must(s.Left(mud, pore, tvd))(t)+must(s.Lost(mud))(t)+1e9, mud*column.G*tvd-pore+1e9, 1e-9)
	})
}

func (d DynamicKill) deficit() float64 {
	return d.Formation - column.G*(d.Sea.Sea*(d.Sea.Mudline-d.Sea.AirGap)+d.Mud*(d.TVD-d.Sea.Mudline))
}

// TestTheFlowHoldsTheFormation: friction by the square has the flow in closed form, any rising friction is balanced to a pascal,
// and where the most does not hold it, that is told.
func TestTheFlowHoldsTheFormation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, tvd := drawSeabed(t)
		mud := rapid.Float64Range(1030, 1900).Draw(t, "mud")
		d := DynamicKill{Sea: s, Mud: mud, TVD: tvd, Most: rapid.Float64Range(0.01, 0.3).Draw(t, "most")}
		d.Formation = column.G*s.Sea*(s.Mudline-s.AirGap) + column.G*(tvd-s.Mudline)*mud*rapid.Float64Range(0.9, 1.3).Draw(t, "formation")
		factor, power := rapid.Float64Range(1e6, 1e9).Draw(t, "factor"), rapid.Float64Range(1, 2).Draw(t, "power")
		d.Friction = func(q float64) (float64, error) { return factor * math.Pow(q, power), nil }
		flow, enough, err := d.Flow()
		if err != nil {
			t.Fatal(err)
		}
		deficit := d.deficit()
		switch want := math.Pow(max(0, deficit)/factor, 1/power); {
		case deficit <= 0:
			if flow != 0 || !enough {
				t.Errorf("%v, %v though it holds at rest", flow, enough)
			}
		case want > d.Most*(1+1e-6):
			if flow != d.Most || enough {
				t.Errorf("%v, %v though it takes %v", flow, enough, want)
			}
		case want < d.Most*(1-1e-6):
			if over := must(d.Over(flow))(t); !enough || math.Abs(over) > 1.1 {
				t.Errorf("%v, %v is %v Pa over", flow, enough, over)
			}
		}
	})
}

// TestAGelThatHoldsAlone: the friction jumps past what is needed as soon as anything moves.
func TestAGelThatHoldsAlone(t *testing.T) {
	d := DynamicKill{Sea: Seabed{25, 525, 1025}, Mud: 1100, TVD: 825, Most: 0.2}
	d.Formation = d.deficit()*-1 + 1e5 // 1 bar more than the columns
	for _, at := range []float64{0, 0.0734} {
		d.Friction = func(q float64) (float64, error) {
			if q <= at {
				return 0, nil
			}
			return 3e5 + q, nil
		}
		flow, enough, err := d.Flow()
		if err != nil || !enough || !(flow > at && flow < at+1e-6) {
			t.Errorf("a jump at %v: %v, %v, %v", at, flow, enough, err)
		}
		if over := must(d.Over(flow))(t); over < 0 {
			t.Errorf("%v Pa", over)
		}
	}
}

// shallow is a flow that mud alone does not hold.
func shallow() DynamicKill {
	return DynamicKill{Sea: Seabed{25, 525, 1025}, Mud: 1100, TVD: 825, Formation: 9e6, Most: 0.2,
		Friction: func(q float64) (float64, error) { return 1e9 * q * q, nil }}
}

func TestAKillThatIsNone(t *testing.T) {
	lost := errors.New("lost")
	good := shallow()
	if flow, enough, err := good.Flow(); err != nil || !enough || !(flow > 0) {
		t.Fatal(flow, enough, err)
	}
	if over, err := good.Over(-0.1); err == nil {
		t.Errorf("a flow of less than nothing is %v Pa over", over)
	}
	for name, spoil := range map[string]func(d *DynamicKill){
		"no friction":      func(d *DynamicKill) { d.Friction = nil },
		"friction unknown": func(d *DynamicKill) { d.Friction = func(float64) (float64, error) { return math.NaN(), nil } },
		"friction fails":   func(d *DynamicKill) { d.Friction = func(float64) (float64, error) { return 0, lost } },
		"unknown midway": func(d *DynamicKill) {
			d.Friction = func(q float64) (float64, error) {
				if q > 0 && q < 0.2 {
					return 0, lost
				}
				return 1e9 * q * q, nil
			}
		},
		"no mud":              func(d *DynamicKill) { d.Mud = 0 },
		"above the seabed":    func(d *DynamicKill) { d.TVD = 500 },
		"no formation":        func(d *DynamicKill) { d.Formation = 0 },
		"no pump":             func(d *DynamicKill) { d.Most = 0 },
		"a seabed in the air": func(d *DynamicKill) { d.Sea.AirGap = 600 },
	} {
		d := good
		spoil(&d)
		if flow, enough, err := d.Flow(); err == nil || enough {
			t.Errorf("%s: %v, %v", name, flow, enough)
		}
	}
}

// TestAStockByHand: 200 m³ at 100 l/s last 2000 s.
func TestAStockByHand(t *testing.T) {
	near(t, "time", must(Lasts(200, 0.1))(t), 2000, 1e-12)
}

func BenchmarkDynamicKill(b *testing.B) {
	d := shallow()
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := d.Flow(); err != nil {
			b.Fatal(err)
		}
	}
}
