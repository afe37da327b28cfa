package kill

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"borewalk/calc/bore"
	"borewalk/calc/friction"
	"borewalk/calc/gas"
	"borewalk/calc/state"
)

const inch = 0.0254

// natural returns the gas of a gravity.
func natural(t testing.TB, gravity float64) gas.Gas {
	t.Helper()
	g, err := gas.Natural(gravity, gas.DranchukAbouKassem)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// subsea is a well of 4200 m under a stack at 915 m, straight down to 1500 m: 9-5/8 in casing to 3000 m, 8-1/2 in hole, one
// choke line of 3 in that lies in cold water. The kick is 5 m³ at 80 kg/m³ over the mud.
func subsea(t testing.TB) Job {
	return Job{
		Layout: state.Layout{
			Bore: bore.Profile{
				{Top: 915, Bottom: 3000, Diameter: 8.535 * inch, Label: "casing"},
				{Top: 3000, Bottom: 4200, Diameter: 8.5 * inch, Label: "open hole"},
			},
			String: []bore.Body{
				{Top: -10, Bottom: 3900, OD: 5 * inch, ID: 4.276 * inch},
				{Top: 3900, Bottom: 4050, OD: 5 * inch, ID: 3 * inch},
				{Top: 4050, Bottom: 4200, OD: 6.5 * inch, ID: 2.8125 * inch},
			},
			Return:   state.Return{MD: 915, Line: bore.Profile{{Top: 0, Bottom: 915, Diameter: 3 * inch}}},
			TVD:      slanted,
			Friction: friction.BinghamSlot{},
		},
		Mud:     friction.Bingham(1350, 0.020, 8),
		KillMud: friction.Bingham(0, 0.022, 8),
		Kick: Kick{
			Volume: 5, Formation: 1430 * gravity * slanted(4200), Gas: natural(t, 0.65),
			Temperature:     func(md float64) float64 { return 283 + 0.025*md },
			LineTemperature: func(md float64) float64 { return 278 },
		},
		Flow: 0.008, Overbalance: 1.5e6, Steps: 40, Places: []float64{3000, 3500},
	}
}

// slanted is the true vertical depth of the well: 37° from 1500 m on.
func slanted(md float64) float64 { return min(md, 1500) + 0.8*max(md-1500, 0) }

// square returns pi/4 (o² - i²) in m² of diameters in inches.
func square(o, i float64) float64 { return math.Pi / 4 * (o*o - i*i) * inch * inch }

func about(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s = %v, want %v", what, got, want)
	}
}

// run runs a job that has to go, and returns its moments as well, each with its own pressures.
func run(t testing.TB, j Job) (Summary, []Moment) {
	t.Helper()
	var list []Moment
	s, err := Run(j, func(m *Moment) {
		kept := *m
		kept.At = append([]float64(nil), m.At...)
		list = append(list, kept)
	})
	if err != nil {
		t.Fatal(err)
	}
	return s, list
}

// marked returns the only moment with a mark, at a place.
func marked(t *testing.T, list []Moment, mark Mark, place int) Moment {
	t.Helper()
	var found []Moment
	for _, m := range list {
		if m.Mark == mark && m.Place == place {
			found = append(found, m)
		}
	}
	if len(found) != 1 {
		t.Fatalf("%v: %d moments", mark, len(found))
	}
	return found[0]
}

// TestVolumesByHand: where the kill mud is follows from what the well holds.
func TestVolumesByHand(t *testing.T) {
	j := subsea(t)
	inside := 3900*square(4.276, 0) + 150*square(3, 0) + 150*square(2.8125, 0)
	open := 2085*square(8.535, 5) + 1050*square(8.5, 5) + 150*square(8.5, 6.5)
	line := 915 * square(3, 0)
	for _, one := range []bool{false, true} {
		j.OneCirculation = one
		from := open + line
		if one {
			from = 0
		}
		s, list := run(t, j)
		about(t, "gas out", s.GasOut, open+line, 1e-9)
		about(t, "kill mud at the bit", s.KillMudAtBit, from+inside, 1e-9)
		about(t, "kill mud at the stack", s.KillMudAtStack, from+inside+open, 1e-9)
		about(t, "kill mud at the choke", s.KillMudAtChoke, from+inside+open+line, 1e-9)
		about(t, "in all", s.Pumped, s.KillMudAtChoke, 0)
		about(t, "time", s.Time, s.Pumped/j.Flow, 1e-6)
		for i, md := range j.Places {
			m := marked(t, list, GasAtPlace, i)
			about(t, "gas top at place", m.GasTop, md, 0.01)
			about(t, "pumped till then", s.GasAtPlace[i], m.Pumped, 0)
		}
		about(t, "gas top at the stack", marked(t, list, GasAtStack, 0).GasTop, 915, 0.01)
		atChoke := marked(t, list, GasAtChoke, 0)
		about(t, "gas top at the choke", atChoke.GasTop, 0, 0.05)
		about(t, "none of it out", atChoke.MassOut, 0, 0.1)
		about(t, "pumped till then", s.GasAtChoke, atChoke.Pumped, 0)
		if m := marked(t, list, GasOut, 0); m.Gas || m.MassIn > 1e-6 {
			t.Errorf("gas out: %+v", m)
		}
		if one != (marked(t, list, KillMudAtBit, 0).Stage == First) || list[len(list)-1].Stage != Done || list[0].Stage != ShutIn {
			t.Error("the stages are wrong")
		}
	}
}

// TestShutInByHand: standpipe and choke with the pumps off.
func TestShutInByHand(t *testing.T) {
	j := subsea(t)
	s, list := run(t, j)
	shut := list[0]
	tvd := 1500 + 0.8*2700
	about(t, "kill mud", s.KillDensity, 1430, 1e-9)
	about(t, "standpipe", s.ShutInStandpipe, 80*gravity*tvd, 1)
	about(t, "bottom", shut.Foot, 1430*gravity*tvd, 1)
	// The kick fills 150 m round the collars and the rest round the pipe above.
	height := 150 + (5-150*square(8.5, 6.5))/square(8.5, 5)
	about(t, "gas top", shut.GasTop, 4200-height, 1e-6)
	about(t, "gas bottom", shut.GasBottom, 4200, 0)
	about(t, "gas", shut.GasVolume, 5, 1e-9)
	density := s.Mass / 5
	about(t, "choke", s.ShutInChoke, 1430*gravity*tvd-1350*gravity*(tvd-0.8*height)-density*gravity*0.8*height, 2000)
	// A gravity of 0.65 at 51.4 MPa and 385 K is at reduced 11.12 and 1.898, by another equation than the job's.
	z, err := gas.HallYarborough.Z(11.12, 1.898)
	if err != nil {
		t.Fatal(err)
	}
	about(t, "density", density, 51.4e6*0.65*0.0289644/(z*gas.R*385), 0.01*density)
	if list[1].Stage != First || list[1].Pumped != 0 {
		t.Errorf("the second moment is %+v", list[1])
	}
	about(t, "bottom with the pumps on", list[1].Foot, shut.Foot+j.Overbalance, 1)
	about(t, "which is held", s.Target, list[1].Foot, 1)
}

// TestBoyle: 2 m³ of light hot gas, which is nearly ideal, rise in a straight well of one size without friction.
func TestBoyle(t *testing.T) {
	const (
		depth, foot, mud = 1500.0, 20e6, 1200.0
		kelvin           = 450.0
		molar            = 0.56 * 0.0289644
	)
	area := math.Pi / 4 * (0.2*0.2 - 0.1*0.1)
	j := Job{
		Layout: state.Layout{
			Bore:   bore.Profile{{Bottom: depth, Diameter: 0.2}},
			String: []bore.Body{{Bottom: depth, OD: 0.1, ID: 0.08}},
			TVD:    func(md float64) float64 { return md },
		},
		Mud: friction.Fluid{Density: mud}, KillMud: friction.Fluid{},
		Kick: Kick{Volume: 2, Formation: foot, Gas: natural(t, 0.56), Temperature: func(float64) float64 { return kelvin }},
		Flow: 0.02, Steps: 40, Places: []float64{0, 700}, Parcels: 20,
	}
	s, list := run(t, j)
	// At the bottom the gas has the foot's pressure less half its weight.
	mass := 2 * molar / (gas.R * kelvin) * (foot + atmosphere)
	weight := mass * gravity / area
	p1 := foot + atmosphere - weight/2
	about(t, "mass", s.Mass, mass, 0.03*mass)
	// At the choke: V2 p2 = V1 p1, and p2 the choke's pressure with half the weight, above which only mud is missing:
	// p2 = foot - weight/2 - mud g (depth - V2/area), quadratic in p2.
	b := foot + atmosphere - weight/2 - mud*gravity*depth
	p2 := b/2 + math.Sqrt(b*b/4+mud*gravity*2*p1/area)
	volume := 2 * p1 / p2
	at := marked(t, list, GasAtChoke, 0)
	about(t, "gas at the choke", at.GasVolume, volume, 0.02*volume)
	about(t, "choke then", at.Choke, p2-weight/2-atmosphere, 0.02*p2)
	about(t, "highest choke", s.Choke.Value, at.Choke, 0)
	about(t, "choke is the first place", s.At[0].Value, s.Choke.Value, 0)
	about(t, "largest gas", s.Gas.Value, at.GasVolume, 0)
	about(t, "stack and choke are one", s.GasAtStack, s.GasAtChoke, 1e-3)
	about(t, "pumped till then", s.GasAtChoke, depth*area-at.GasVolume, 1e-3)
	// With the gas top at 700 m the pressure there is that of the foot less gas and mud below.
	at = marked(t, list, GasAtPlace, 1)
	p2 = foot - weight - mud*gravity*(at.Pumped/area)
	about(t, "pressure at 700 m", at.At[1], p2, 0.002*p2)
	about(t, "which is its peak", s.At[1].Value, at.At[1], 0)
	if last := list[len(list)-1]; last.Choke > 1 || math.Abs(last.Foot-foot) > 1 || last.Standpipe > 1 {
		t.Errorf("dead: %+v", last)
	}
}

// TestWideOpen: a thin line rubs so much that the choke has nothing left to hold; the bottom takes what is too much.
func TestWideOpen(t *testing.T) {
	j := subsea(t)
	j.Overbalance, j.Flow, j.Layout.Return.Rub = 5e5, 0.012, 1.2
	s, list := run(t, j)
	m := marked(t, list, KillMudAtChoke, 0)
	kill := friction.Bingham(1430, 0.022, 8)
	rub := 1.2 * 915 * j.Layout.Friction.Pipe(kill, j.Flow, 3*inch)
	for _, part := range []struct{ length, outer, inner float64 }{{2085, 8.535, 5}, {1050, 8.5, 5}, {150, 8.5, 6.5}} {
		rub += part.length * j.Layout.Friction.Annulus(kill, j.Flow, part.outer*inch, part.inner*inch)
	}
	foot := j.Kick.Formation + rub
	about(t, "choke", m.Choke, 0, 0)
	about(t, "bottom", m.Foot, foot, 2)
	about(t, "highest at the bottom", s.Foot.Value, foot, 2)
	if !(rub > 2*j.Overbalance) {
		t.Fatalf("%v Pa of friction are not worth the test", rub)
	}
	last := list[len(list)-1]
	about(t, "choke when dead", last.Choke, 0, 1)
	about(t, "bottom when dead", last.Foot, j.Kick.Formation, 1)
}

// TestTooLightAKillMud leaves to the choke what it does not hold itself.
func TestTooLightAKillMud(t *testing.T) {
	j := subsea(t)
	j.KillMud = friction.Bingham(1400, 0.022, 8)
	s, list := run(t, j)
	last := list[len(list)-1]
	about(t, "kill mud", s.KillDensity, 1400, 0)
	about(t, "choke when done", last.Choke, 30*gravity*slanted(4200), 1)
	about(t, "standpipe when done", last.Standpipe, last.Choke, 1)
	about(t, "bottom when done", last.Foot, j.Kick.Formation, 1)
}

// TestSwabbed: a kick under a mud that is heavy enough shows on the choke alone.
func TestSwabbed(t *testing.T) {
	j := subsea(t)
	j.Kick.Formation = 1300 * gravity * slanted(4200)
	j.KillMud.Density = 1350
	s, list := run(t, j)
	about(t, "standpipe", s.ShutInStandpipe, 0, 1)
	about(t, "bottom", list[0].Foot, 1350*gravity*slanted(4200), 1)
	if !(s.ShutInChoke > 1e6) {
		t.Errorf("choke %v", s.ShutInChoke)
	}
}

func TestNames(t *testing.T) {
	var got []string
	for s := range Done + 1 {
		got = append(got, s.String())
	}
	for m := range KillMudAtChoke + 1 {
		got = append(got, m.String())
	}
	want := "shut in,first circulation,second circulation,done," +
		",gas at place,gas at stack,gas at choke,gas out,kill mud at bit,kill mud at stack,kill mud at choke"
	if strings.Join(got, ",") != want {
		t.Errorf("%v", got)
	}
}

func TestRefuses(t *testing.T) {
	nan := math.NaN()
	for want, spoil := range map[string]func(j *Job){
		"a kick of NaN":            func(j *Job) { j.Kick.Volume = nan },
		"a kick of 0 m³":           func(j *Job) { j.Kick.Volume = 0 },
		"does not fit":             func(j *Job) { j.Kick.Volume = 80 },
		"formation pressure of -1": func(j *Job) { j.Kick.Formation = -1 },
		"no temperature":           func(j *Job) { j.Kick.Temperature = nil },
		"flow of 0":                func(j *Job) { j.Flow = 0 },
		"overbalance of -1":        func(j *Job) { j.Overbalance = -1 },
		"a mud of 0":               func(j *Job) { j.Mud.Density = 0 },
		"0 steps":                  func(j *Job) { j.Steps = 0 },
		"-1 parcels":               func(j *Job) { j.Parcels = -1 },
		"no annulus at 5000.00 m":  func(j *Job) { j.Places = []float64{5000} },
		"no annulus at NaN":        func(j *Job) { j.Places = []float64{nan} },
		"no true vertical depth":   func(j *Job) { j.Layout.TVD = nil },
		"string has no length":     func(j *Job) { j.Layout.String = nil },
		"no spans":                 func(j *Job) { j.Layout.Bore = nil },
		"kill mud":                 func(j *Job) { j.KillMud.Density = nan },
		"gas at 41": func(j *Job) {
			j.Kick.Temperature = func(float64) float64 { return 150 }
		},
		"temperature NaN": func(j *Job) {
			j.Kick.LineTemperature = func(float64) float64 { return nan }
		},
	} {
		j := subsea(t)
		spoil(&j)
		if s, err := Run(j, nil); err == nil || !strings.Contains(err.Error(), want) || s.Time != 0 {
			t.Errorf("want an error with %q, got %v", want, err)
		}
	}
}

func BenchmarkKill(b *testing.B) {
	for _, steps := range []int{40, 500} {
		b.Run(fmt.Sprint(steps, " steps"), func(b *testing.B) {
			j := subsea(b)
			j.Steps = steps
			b.ReportAllocs()
			highest, moments := 0.0, 0
			for b.Loop() {
				moments = 0
				s, err := Run(j, func(*Moment) { moments++ })
				if err != nil {
					b.Fatal(err)
				}
				highest = s.Choke.Value
			}
			b.ReportMetric(float64(moments), "moments")
			b.ReportMetric(highest/1e5, "bar")
		})
	}
}
