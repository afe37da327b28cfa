package kill

import (
	"math"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
	"borewalk/calc/gas"
	"borewalk/calc/state"

	"pgregory.net/rapid"
)

// drawJob draws a kick in a well on land or under the sea, with one choke line or more.
func drawJob(t *rapid.T) Job {
	g, err := gas.Natural(rapid.Float64Range(0.56, 0.8).Draw(t, "gas gravity"), gas.DranchukAbouKassem)
	if err != nil {
		t.Fatal(err)
	}
	stack := rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(50, 2000)).Draw(t, "stack")
	shoe := stack + rapid.Float64Range(300, 2000).Draw(t, "casing")
	end := shoe + rapid.Float64Range(100, 1500).Draw(t, "open hole")
	collars := end - rapid.Float64Range(20, 90).Draw(t, "collars")
	hole := rapid.Float64Range(0.2, 0.4).Draw(t, "hole")
	slant := rapid.Float64Range(0.3, 1).Draw(t, "slant")
	tvd := func(md float64) float64 { return min(md, shoe) + slant*max(md-shoe, 0) }
	mud := rapid.Float64Range(1050, 1500).Draw(t, "mud")
	line := rapid.Float64Range(270, 300).Draw(t, "line temperature")
	j := Job{
		Layout: state.Layout{
			Bore:     bore.Profile{{Top: stack, Bottom: shoe, Diameter: hole * 1.02}, {Top: shoe, Bottom: end, Diameter: hole}},
			String:   []bore.Body{{Bottom: collars, OD: 0.127, ID: 0.1086}, {Top: collars, Bottom: end, OD: 0.165, ID: 0.07}},
			TVD:      tvd,
			Friction: rapid.SampledFrom(friction.Correlations()).Draw(t, "correlation"),
		},
		Mud:     friction.Bingham(mud, 0.02, rapid.Float64Range(0, 10).Draw(t, "yield point")),
		KillMud: friction.Bingham(0, 0.02, 8),
		Kick: Kick{
			Volume: rapid.Float64Range(0.2, 4).Draw(t, "kick"), Gas: g,
			Formation:       mud * rapid.Float64Range(0.98, 1.25).Draw(t, "formation") * gravity * tvd(end),
			Temperature:     func(md float64) float64 { return line + 0.02*md },
			LineTemperature: func(float64) float64 { return line },
		},
		Flow:           rapid.Float64Range(0.002, 0.02).Draw(t, "flow"),
		Overbalance:    rapid.Float64Range(0, 2e6).Draw(t, "overbalance"),
		OneCirculation: rapid.Bool().Draw(t, "one circulation"),
		Steps:          rapid.IntRange(1, 60).Draw(t, "steps"),
		Parcels:        rapid.IntRange(0, 10).Draw(t, "parcels"),
		Places:         []float64{shoe, (shoe + end) / 2, stack},
	}
	j.Layout.Return.MD = stack
	if stack > 0 {
		j.Layout.Return.Line = bore.Profile{{Bottom: stack, Diameter: rapid.Float64Range(0.06, 0.12).Draw(t, "line")}}
		j.Layout.Return.Lines = rapid.IntRange(0, 2).Draw(t, "lines")
		j.Layout.Return.Rub = rapid.SampledFrom([]float64{0, 0.8, 1.5}).Draw(t, "rub")
	}
	return j
}

// TestAnyKick: whatever the job, the bottom is held or the choke is wide open; no gas is made or lost; the pit has gained what
// the gas takes up; what the moments show is what the summary says; and the well is dead at the end.
func TestAnyKick(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		target := max(j.Kick.Formation, j.column(j.Mud.Density)) + j.Overbalance
		var pumped, carried, last float64
		var highest [3]float64
		marked := map[Mark]int{}
		whole := 0.0
		s, err := Run(j, func(m *Moment) {
			if whole == 0 {
				whole = m.MassIn
			}
			if math.Abs(m.MassIn+m.MassOut-whole) > 1e-9*whole {
				t.Fatalf("%v kg in the well and %v out, %v came in", m.MassIn, m.MassOut, whole)
			}
			if math.Abs(m.Gain-m.GasVolume) > 1e-6 {
				t.Fatalf("gas of %v m³, the pit has gained %v", m.GasVolume, m.Gain)
			}
			foot, _ := m.Well.Pressure(state.Annulus, m.Well.End())
			outlet, _ := m.Well.Pressure(state.Annulus, 0)
			if m.Foot != foot || m.Choke != outlet || m.Choke < 0 {
				t.Fatalf("foot %v and choke %v, in the well %v and %v", m.Foot, m.Choke, foot, outlet)
			}
			if m.Stage == First || m.Stage == Second {
				if m.Foot < target-1 || m.Choke > 0 && m.Foot > target+1 {
					t.Fatalf("%v at the bottom with %v on the choke, want %v", m.Foot, m.Choke, target)
				}
			}
			if m.Pumped < pumped {
				t.Fatalf("%v m³ after %v", m.Pumped, pumped)
			}
			carried += m.GasRate * (m.Time - last)
			pumped, last = m.Pumped, m.Time
			marked[m.Mark]++
			for i := range m.At {
				highest[i] = max(highest[i], m.At[i])
			}
			if m.Gas && !(m.GasTop < m.GasBottom) {
				t.Fatalf("gas from %v to %v", m.GasTop, m.GasBottom)
			}
		})
		if err != nil {
			t.Fatal(err)
		}
		for mark := GasAtStack; mark <= KillMudAtChoke; mark++ {
			if marked[mark] != 1 {
				t.Fatalf("%v: %d times", mark, marked[mark])
			}
		}
		if math.Abs(carried-whole) > 1e-6*whole {
			t.Fatalf("%v kg by the rate, %v came in", carried, whole)
		}
		for i := range highest {
			if s.At[i].Value != highest[i] {
				t.Fatalf("peak %v, seen %v", s.At[i].Value, highest[i])
			}
		}
		if !(s.GasAtStack <= s.GasAtChoke && s.GasAtChoke <= s.GasOut) ||
			!(s.KillMudAtBit < s.KillMudAtStack && s.KillMudAtStack <= s.KillMudAtChoke) {
			t.Fatalf("out of order: %+v", s)
		}
	})
}
